using System.Globalization;

namespace Offcuts.Benchmarks.Measuring;

/// <summary>What one contender reached on a whole class.</summary>
internal sealed record Sums(
    int Proven, int ProvenSpend, int AsGood, double Median, double Worst, double? WorstFirst, double? WorstGood, string WorstGaps, double PeakMegabytes)
{
    /// <summary>The sums of one contender, of which the others say what the best plan was.</summary>
    public static Sums Of(IReadOnlyList<Outcome> mine, IReadOnlyDictionary<Contender, IReadOnlyList<Outcome>> all)
    {
        var seconds = mine.Select(outcome => outcome.Seconds).Order().ToArray();
        return new Sums(
            mine.Count(outcome => outcome.Proven),
            mine.Count(outcome => outcome.ProvenSpend),
            mine.Where((outcome, i) => all.Values.All(others => !Better(others[i], outcome))).Count(),
            (seconds[(seconds.Length - 1) / 2] + seconds[seconds.Length / 2]) / 2,
            seconds[^1],
            mine.Max(outcome => outcome.FirstPlan),
            mine.Max(outcome => outcome.GoodPlan),
            $"{Widest(mine, outcome => outcome.SpendGap)} / {Widest(mine, outcome => outcome.GivenUpGap)}",
            mine.Max(outcome => outcome.PeakBytes) / 1e6);
    }

    private static string Widest(IReadOnlyList<Outcome> outcomes, Func<Outcome, double?> gap) => outcomes.Any(outcome => !outcome.HasPlan || gap(outcome) is null)
        ? "?"
        : string.Create(CultureInfo.InvariantCulture, $"{outcomes.Max(gap):0.###}");

    // True where the first plan is better by the tiers; one without a third figure stands behind one that has it.
    private static bool Better(Outcome a, Outcome b)
    {
        if (!a.HasPlan || !b.HasPlan) return a.HasPlan;
        foreach (var (mine, theirs) in Tiers(a).Zip(Tiers(b)))
        {
            if (mine != theirs) return mine < theirs;
        }

        return false;
    }

    private static IEnumerable<long> Tiers(Outcome outcome) =>
        [.. outcome.Unfilled.Select(stage => stage.Value), outcome.Spend.Value, outcome.GivenUp?.Value ?? long.MaxValue];
}
