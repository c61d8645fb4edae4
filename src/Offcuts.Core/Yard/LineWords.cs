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
            .Select(candidate => (candidate, slips: Slips(lower, candidate.TrimEnd(':'))))
            .Where(pair => pair.slips <= allowed)
            .OrderBy(pair => pair.slips)
            .Select(pair => pair.candidate)
            .FirstOrDefault("");
    }

    // The optimal string alignment distance.
    private static int Slips(string a, string b)
    {
        var table = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++) table[i, 0] = i;
        for (var j = 0; j <= b.Length; j++) table[0, j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var wrong = table[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                table[i, j] = Math.Min(wrong, Math.Min(table[i - 1, j], table[i, j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    table[i, j] = Math.Min(table[i, j], table[i - 2, j - 2] + 1);
            }
        }

        return table[a.Length, b.Length];
    }
}
