namespace Offcuts.Core.Yard;

/// <summary>Finds what a misspelt word was meant to be.</summary>
public static class NearWord
{
    /// <summary>
    /// The candidate fewest slips away from <paramref name="word"/>: one slip for words of three or four letters, two for longer
    /// ones. A slip is a letter too many, missing, wrong, or swapped with its neighbour.
    /// </summary>
    public static string To(string word, IEnumerable<string> candidates)
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
