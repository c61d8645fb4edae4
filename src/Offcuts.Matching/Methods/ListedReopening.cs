namespace Offcuts.Matching.Methods;

/// <summary>
/// A better plan from a good one in the last tier, over lists of the patterns that are nearest to the bound: some of the plan's patterns are taken apart, the dearest of them first by
/// their reduced costs, and their cuts are put anew into what is free, of patterns of a list only, by <see cref="SatMaster"/>; again and again, with more patterns where a try
/// soon says that there is nothing better, and with fewer where it comes to no end. A short list leads to where most plans of least cost are, a long one to what it lacks; in turn with them a few
/// patterns are taken apart over a complete list of their own (<see cref="Reopening"/>), since where most patterns are near the bound no list holds all that fit.
/// Source: large neighbourhood search, Shaw, 1998, its size adapted (from memory).
/// Cost: some hundredths of a second for each try. Never makes a plan worse; proves nothing.
/// </summary>
internal static class ListedReopening
{
    private const int MostTries = 600;
    private const double FirstCopies = 16;
    private const double LeastCopies = 8;
    private const double CopiesOfOwnList = 12;
    private const double Grown = 1.1;
    private const double Shrunk = 0.85;
    private const double Work = 0.06;
    private static readonly int[] Lists = [1_500, 6_000, 20_000];

    /// <summary>A plan that costs no more in this tier.</summary>
    /// <param name="tier">The tier.</param>
    /// <param name="plan">A plan that keeps its rows.</param>
    /// <param name="met">Patterns met so far, which are in every list.</param>
    /// <param name="guide">Tells which patterns are near the bound.</param>
    /// <param name="bound">At this cost it is good enough.</param>
    /// <param name="patience">So many tries one after the other may find nothing.</param>
    /// <param name="effort">Limit.</param>
    /// <param name="seed">What is taken apart is drawn with it.</param>
    public static MaterialPlan Improve(Tier tier, MaterialPlan plan, IReadOnlyList<Pattern> met, Guide guide, long bound, int patience, Effort effort, int seed = 1)
    {
        var lists = Listed(tier, plan, met, guide, bound, effort);
        var random = new Random(seed);
        var copies = lists.Select(_ => FirstCopies).ToArray();
        for (var (tries, left) = (0, patience); tries < MostTries && left > 0 && tier.Value(plan) > bound && !effort.Over; tries++)
        {
            var list = tries % (lists.Length + 1);
            var own = list == lists.Length;
            var (open, closed) = TakenApart(tier, plan, guide, own ? CopiesOfOwnList : copies[list], random);
            var (better, ended) = own ? Reopening.Reopened(tier, open, closed, effort) : Reopened(tier, open, closed, lists[list], effort);
            if (!own) copies[list] = ended ? Math.Min(copies[list] * Grown, tier.Copies) : Math.Max(copies[list] * Shrunk, LeastCopies);
            if (better is not null && tier.Accepts(better) && tier.Value(better) < tier.Value(plan)) (plan, left) = (better, patience);
            else left--;
        }

        return plan;
    }

    private static Pattern[][] Listed(Tier tier, MaterialPlan plan, IReadOnlyList<Pattern> met, Guide guide, long bound, Effort effort) =>
        [.. Lists.Select(most => effort.Over ? null : PatternEnumeration.Widest(tier, guide, Math.Min(bound, Bounds.RoundUp(tier, guide.Bound)), tier.Value(plan) - 1, [most]))
            .OfType<(long Most, IReadOnlyList<Pattern> Patterns)>()
            .DistinctBy(list => list.Most)
            .Select(list => list.Patterns.Concat(met).Distinct().ToArray())];

    // Drawn one after the other, each with the weight of what it costs beyond the bound, and a share for those that cost nothing beyond it.
    private static (List<Pattern> Open, List<Pattern> Closed) TakenApart(Tier tier, MaterialPlan plan, Guide guide, double copies, Random random)
    {
        Pattern[] patterns = [.. plan.Each];
        double[] beyond = [.. patterns.Select(pattern => (double)Beyond(pattern) / tier.Scale)];
        var share = Math.Max(beyond.DefaultIfEmpty().Average(), 1e-3);
        var (open, closed, taken) = (new List<Pattern>(), new List<Pattern>(), 0);
        foreach (var i in Enumerable.Range(0, patterns.Length).OrderBy(i => -Math.Log(1 - random.NextDouble()) / (share + beyond[i])).ToArray())
        {
            (taken < copies ? open : closed).Add(patterns[i]);
            taken += patterns[i].Cuts;
        }

        return (open, closed);

        // By the duals that lead; where what is spent before has narrowed the tier, it can lie below what the bound counted.
        long Beyond(Pattern pattern) => Math.Max(0, PricingKnapsack.ReducedCost(tier, pattern, guide.AtDuals.Duals) - tier.Counted(pattern.Supply, guide.AtDuals.Priced[pattern.Supply].Least));
    }

    // The best plan that keeps the closed patterns, if it is better than the open ones; and whether the solver came to its end.
    private static (MaterialPlan? Plan, bool Ended) Reopened(Tier tier, List<Pattern> open, List<Pattern> closed, Pattern[] list, Effort effort)
    {
        var settled = closed.Select(pattern => (pattern, 1)).ToArray();
        var rest = tier.Rest(settled);
        var part = new MaterialPlan(tier.Problem, open.Select(pattern => (pattern, 1)));
        Pattern[] columns = [.. list.Where(pattern => rest.SupplyCount[pattern.Supply] > 0 && pattern.Takes.All(take => rest.DemandCount[take.Demand] >= take.Count)).Concat(open).Distinct()];
        var found = SatMaster.Solve(rest, columns, rest.Value(part) - 1, covering: false, SatSettings.Unprobed, Work, effort);
        return (found.Plan is { } plan ? new MaterialPlan(tier.Problem, [.. plan.Uses, .. settled]) : null, found.Closed);
    }
}
