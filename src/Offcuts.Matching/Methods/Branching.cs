namespace Offcuts.Matching.Methods;

/// <summary>Chooses what a node of <see cref="PoolSearch"/> is split on: a count that is whole in every plan and is not in the relaxation.</summary>
internal static class Branching
{
    private const double Whole = 1e-5;

    /// <summary>Two nodes that share out the plans of the node; the one to be looked at first comes last.</summary>
    public static IReadOnlyList<PoolNode> Children(
        Tier tier, IReadOnlyList<Pattern> pool, PoolNode node, IReadOnlyList<(Pattern Pattern, double Times)> solution)
    {
        if (Supply(tier, solution) is { } supply)
        {
            var (s, uses) = supply;
            var floor = (int)Math.Floor(uses);
            return [node.With(s, 0, floor), node.With(s, floor + 1, int.MaxValue)];
        }

        var (split, times) = Family(tier, solution);
        var below = (int)Math.Floor(times + Whole);
        return [node.With(tier, pool, split, 0, below), node.With(tier, pool, split, below + 1, int.MaxValue)];
    }

    // What costs money first, then the most undecided.
    private static (int Supply, double Uses)? Supply(Tier tier, IReadOnlyList<(Pattern Pattern, double Times)> solution)
    {
        var uses = new double[tier.SupplyCount.Length];
        foreach (var (pattern, times) in solution) uses[pattern.Supply] += times;
        var best = Enumerable.Range(0, uses.Length)
            .Where(s => Undecided(uses[s]) > Whole)
            .OrderByDescending(s => tier.Problem.Supplies[s].Price > 0)
            .ThenByDescending(s => Math.Round(Undecided(uses[s]), 4))
            .ThenByDescending(s => tier.Problem.Supplies[s].Length)
            .Select(s => (int?)s).FirstOrDefault();
        return best is { } supply ? (supply, uses[supply]) : null;
    }

    private static (Split Split, double Times) Family(Tier tier, IReadOnlyList<(Pattern Pattern, double Times)> solution)
    {
        var demands = Enumerable.Range(0, tier.Active.Length).Where(d => tier.Active[d]).ToArray();
        if (Pair(tier, solution) is { } pair) return pair;
        var counts = demands.SelectMany(i => Enumerable.Range(1, tier.DemandCount[i]).Select(least => new Split(i, least, -1, -1)));
        if (Best(counts, solution) is { } count) return count;
        var ofSupply = solution.SelectMany(column => column.Pattern.Takes.Select(take => new Split(take.Demand, take.Count, -1, column.Pattern.Supply))).Distinct();
        if (Best(ofSupply, solution) is { } own) return own;
        var alone = solution.Select(column => new Split(-1, 0, -1, -1, column.Pattern));
        return Best(alone, solution) ?? Any(solution);
    }

    private static (Split Split, double Times)? Pair(Tier tier, IReadOnlyList<(Pattern Pattern, double Times)> solution)
    {
        (Split, double)? best = null;
        var most = Whole;
        foreach (var (split, times) in Together(tier, solution))
        {
            if (Undecided(times) <= most + 1e-7) continue;
            (best, most) = ((split, times), Undecided(times));
        }

        return best;
    }

    /// <summary>How often any two demands are cut together. Summed up pattern by pattern, since most pairs are in none.</summary>
    public static IEnumerable<(Split Split, double Times)> Together(Tier tier, IReadOnlyList<(Pattern Pattern, double Times)> solution)
    {
        var demands = tier.Active.Length;
        var together = new double[demands * demands];
        foreach (var (pattern, times) in solution)
        {
            for (var i = 0; i < pattern.Takes.Length; i++)
            {
                for (var j = i + 1; j < pattern.Takes.Length; j++) together[pattern.Takes[i].Demand * demands + pattern.Takes[j].Demand] += times;
            }
        }

        for (var at = 0; at < together.Length; at++)
        {
            if (together[at] > Whole) yield return (new Split(at / demands, 1, at % demands, -1), together[at]);
        }
    }

    // All counts are whole and the plan was not good enough to end the node: rule it out, pattern by pattern.
    private static (Split, double) Any(IReadOnlyList<(Pattern Pattern, double Times)> solution) =>
        (new Split(-1, 0, -1, -1, solution[0].Pattern), Math.Max(0, Math.Round(solution[0].Times) - 1));

    private static (Split Split, double Times)? Best(IEnumerable<Split> splits, IReadOnlyList<(Pattern Pattern, double Times)> solution)
    {
        (Split, double)? best = null;
        var most = Whole;
        foreach (var split in splits)
        {
            double times = 0;
            foreach (var column in solution)
            {
                if (split.Holds(column.Pattern)) times += column.Times;
            }

            if (Undecided(times) <= most + 1e-7) continue;
            most = Undecided(times);
            best = (split, times);
        }

        return best;
    }

    private static double Undecided(double value) => Math.Abs(value - Math.Round(value));
}
