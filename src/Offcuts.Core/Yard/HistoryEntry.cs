namespace Offcuts.Core.Yard;

/// <summary>One change of the yard, as the history keeps it.</summary>
/// <param name="Number">Its number, from 1, never used again.</param>
/// <param name="At">When it was made.</param>
/// <param name="What">What was done, in a few words: <c>catalogued 12 pieces</c>.</param>
/// <param name="Undoes">The entry it took back; 0 where it is no undo.</param>
/// <param name="Undone">True where a later entry took it back.</param>
public sealed record HistoryEntry(long Number, DateTimeOffset At, string What, long Undoes, bool Undone);
