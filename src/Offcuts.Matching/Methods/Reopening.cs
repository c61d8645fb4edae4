namespace Offcuts.Matching.Methods;

/// <summary>
/// A better plan from a good one: take a few of its patterns apart, leave the others as they are, and solve the small problem that
/// this makes, of those cuts and all free spans, over its own complete list of patterns; repeat with other patterns until nothing
/// gives any more. Which patterns are taken apart is drawn with a fixed seed.
/// Source: large neighbourhood search, Shaw, 1998 (from memory).
/// Cost: for each try a short column generation and a search of at most <see cref="MostNodes"/> nodes. Never makes a plan worse.
/// </summary>
internal static class Reopening
{
    private const int LeastOpen = 3;
    private const int MostOpen = 6;
    private const int MostTries = 240;
    private const int Patience = 60;
    private const int PatienceLostOnLongLists = 6;
    private const int MostPatterns = 1_500;
    private const long MostSteps = PatternEnumeration.StepsAPattern * MostPatterns;
    private const int MostNodes = 60;
    private const int Seed = 1;

    /// <summary>A plan that costs no more in this tier.</summary>
    /// <param name="tier">The tier.</param>
    /// <param name="plan">A plan that keeps its rows.</param>
    /// <param name="bound">At this cost it is good enough.</param>
    /// <param name="effort">Limit.</param>
    public static MaterialPlan Improve(Tier tier, MaterialPlan plan, long bound, Effort effort)
    {
        var random = new Random(Seed);
        var patience = Patience;
        for (var tries = 0; tries < MostTries && patience > 0 && tier.Value(plan) > bound && !effort.Over; tries++)
        {
            var patterns = plan.Each.ToArray();
            random.Shuffle(patterns);
            var open = Math.Min(patterns.Length, LeastOpen + tries % (MostOpen - LeastOpen + 1));
            var (better, listed) = Reopened(tier, patterns[..open], patterns[open..], effort);
            if (better is not null && tier.Accepts(better) && tier.Value(better) < tier.Value(plan)) (plan, patience) = (better, Patience);
            else patience -= listed ? 1 : PatienceLostOnLongLists;
        }

        return plan;
    }

    /// <summary>The best plan that is found with the closed patterns, if it is better than the open ones; and whether the list of patterns was short enough.</summary>
    /// <param name="tier">The tier.</param>
    /// <param name="open">Patterns of a plan that are taken apart.</param>
    /// <param name="closed">The others.</param>
    /// <param name="effort">Limit.</param>
    public static (MaterialPlan? Plan, bool Listed) Reopened(Tier tier, IReadOnlyList<Pattern> open, IReadOnlyList<Pattern> closed, Effort effort)
    {
        var settled = closed.Select(pattern => (pattern, 1)).ToArray();
        var rest = tier.Rest(settled);
        var part = new MaterialPlan(tier.Problem, open.Select(pattern => (pattern, 1)));
        var most = rest.Value(part) - 1;
        var relaxation = ColumnGeneration.Solve(rest, part, [], effort);
        if (Bounds.RoundUp(rest, relaxation.Bound) > most) return (null, true);
        if (PatternEnumeration.All(rest, ReducedCostLimits.Of(rest, relaxation, most), MostPatterns, MostSteps) is not { } patterns) return (null, false);
        var search = new PoolSearch(rest, patterns, most, MostNodes, effort);
        search.Run(relaxation.Bound);
        return (search.Best is { } found ? new MaterialPlan(tier.Problem, [.. found.Uses, .. settled]) : null, true);
    }
}
