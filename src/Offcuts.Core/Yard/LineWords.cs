using Offcuts.Core.Measures;

namespace Offcuts.Core.Yard;

/// <summary>
/// The words that one kind of typed line knows. A word ends a free text (a place, a stage, a name) wherever it stands, but only in
/// its full form: a measured word with a figure behind it, a speaking word with its colon.
/// </summary>
/// <param name="Plain">Words that say all by themselves: <c>fair</c>.</param>
/// <param name="Measured">Words that a figure follows: <c>trim 1/2</c>.</param>
/// <param name="Speaking">Words that a colon and free text follow: <c>note: split at one end</c>.</param>
/// <param name="TakesPlace">True where <c>@</c> begins a place.</param>
/// <param name="Example">A line of this kind in a unit, for who wrote none.</param>
internal sealed record LineWords(
    IReadOnlyList<string> Plain, IReadOnlyList<string> Measured, IReadOnlyList<string> Speaking, bool TakesPlace, Func<LengthUnit, string> Example)
{
    /// <summary>The known word nearest to a misspelt one, as it is written; empty where none is near.</summary>
    public string NearestTo(string word) =>
        NearWord.To(word, Plain.Concat(Measured).Concat(Speaking.Select(speaking => speaking + ":")));
}
