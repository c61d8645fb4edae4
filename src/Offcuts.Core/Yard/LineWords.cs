namespace Offcuts.Core.Yard;

/// <summary>
/// The words that one kind of typed line knows. A word ends a free text (a place, a stage, a name) wherever it stands, but only in
/// its full form: a measured word with a figure behind it, a speaking word with its colon.
/// </summary>
/// <param name="Plain">Words that say all by themselves: <c>fair</c>.</param>
/// <param name="Measured">Words that a figure follows: <c>trim 1/2</c>.</param>
/// <param name="Speaking">Words that a colon and free text follow: <c>note: split at one end</c>.</param>
/// <param name="TakesPlace">True where <c>@</c> begins a place.</param>
/// <param name="Example">A line of this kind, for who wrote none.</param>
internal sealed record LineWords(
    IReadOnlyList<string> Plain, IReadOnlyList<string> Measured, IReadOnlyList<string> Speaking, bool TakesPlace, string Example)
{
    /// <summary>The known word nearest to a misspelt one, as it is written; empty where none is near.</summary>
    public string NearestTo(string word) =>
        Nearest(word, Plain.Concat(Measured).Concat(Speaking.Select(speaking => speaking + ":")));

    /// <summary>
    /// The candidate fewest slips away from <paramref name="word"/>: one slip for words of three or four letters, two for longer
    /// ones. A slip is a letter too many, missing, wrong, or swapped with its neighbour.
    /// </summary>
    public static string Nearest(string word, IEnumerable<string> candidates)
    {
        if (word.Length is < 3 or > 20) return "";
        var lower = word.ToLowerInvariant();
        var allowed = word.Length <= 4 ? 1 : 2;
        return candidates
            .Select(candidate => (candidate, slips: Slips.Between(lower, candidate.TrimEnd(':'))))
            .Where(pair => pair.slips <= allowed)
            .OrderBy(pair => pair.slips)
            .Select(pair => pair.candidate)
            .FirstOrDefault("");
    }
}
