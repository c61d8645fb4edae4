namespace Offcuts.Core.Yard;

/// <summary>One change of the yard, as the history keeps it.</summary>
/// <param name="Number">Its number, from 1, never used again.</param>
/// <param name="At">When it was made.</param>
/// <param name="What">What was done, in a few words: <c>catalogued 12 pieces</c>.</param>
/// <param name="Undoes">The entry it took back: a change, or an undo where it does that change again; 0 where it is a change.</param>
/// <param name="Undone">True where a later entry took it back.</param>
public sealed record HistoryEntry(long Number, DateTimeOffset At, string What, long Undoes, bool Undone);
