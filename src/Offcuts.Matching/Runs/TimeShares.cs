namespace Offcuts.Matching.Runs;

/// <summary>
/// How materials share the time of a filling: one after the other, small ones first, each by its rows among those that are left, but none less than a quarter of what it had if all had alike: a few rows
/// may be the hardest.
/// </summary>
internal static class TimeShares
{
    // The rest is for what is saved to be reckoned and the plan to be written.
    private const double OfAll = 0.95;
    private const double Floor = 0.25;

    /// <summary>Where no more than this of the whole time is left, nothing is begun again.</summary>
    public const double WorthARound = 0.1;

    /// <summary>Of a share that is used no more than this is left.</summary>
    public const double Used = 0.5;

    /// <summary>The parts in the order in which they are filled.</summary>
    /// <param name="rows">How many rows each has.</param>
    public static int[] Order(int[] rows) => [.. Enumerable.Range(0, rows.Length).OrderBy(part => rows[part])];

    /// <summary>What the first of these parts has of the time that is left.</summary>
    /// <param name="rows">How many rows it and those after it have.</param>
    public static double First(ReadOnlySpan<int> rows)
    {
        var sum = 0L;
        foreach (var one in rows) sum += one;
        return OfAll * Math.Max(rows[0] / (double)Math.Max(1, sum), rows.Length == 1 ? 1 : Floor / rows.Length);
    }
}
