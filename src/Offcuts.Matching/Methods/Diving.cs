namespace Offcuts.Matching.Methods;

/// <summary>
/// A plan from the relaxation: settle the patterns that it uses whole, else the one it uses most; generate patterns anew for what
/// remains; repeat. The patterns fit what is left at every step, which rounding over the first patterns alone cannot do.
/// Source: diving with column generation, Sadykov et al., 2019 (from memory).
/// Cost: at most one short column generation for each piece cut. Never fails; may find nothing better.
/// </summary>
internal static class Diving
{
    private const int MostRounds = 30;

    /// <summary>The plan reached, or none where it does not keep the rows.</summary>
    /// <param name="tier">The tier.</param>
    /// <param name="patterns">Patterns to start from.</param>
    /// <param name="avoid">Skips that many of the first choices, so that another dive ends elsewhere.</param>
    /// <param name="effort">Limit.</param>
    public static MaterialPlan? Dive(Tier tier, IReadOnlyList<Pattern> patterns, int avoid, Effort effort)
    {
        var settled = new List<(Pattern Pattern, int Times)>();
        var known = patterns.ToList();
        while (!effort.Over)
        {
            var rest = tier.Rest(settled);
            if (Enumerable.Range(0, rest.Active.Length).All(d => !rest.Active[d] || rest.DemandCount[d] == 0)) break;
            var fractional = Relax(rest, known, effort);
            var choices = fractional
                .Where(column => Useful(rest, column.Pattern))
                .OrderByDescending(column => column.Times - Math.Floor(column.Times + 1e-6) > 1e-6 ? column.Times : column.Times + 1000)
                .ThenBy(column => column.Pattern, Comparer<Pattern>.Create(Pattern.Compare))
                .ToArray();
            if (choices.Length == 0) break;
            var whole = choices.Where(column => column.Times >= 1 - 1e-6).ToArray();
            if (whole.Length > 0)
            {
                foreach (var column in whole) settled.Add((column.Pattern, Fitting(tier.Rest(settled), column.Pattern, (int)Math.Floor(column.Times + 1e-6))));
                if (settled[^1].Times == 0 && whole.Length == 1) break;
                continue;
            }

            var choice = choices[Math.Min(avoid, choices.Length - 1)];
            if (avoid > 0) avoid--;
            settled.Add((choice.Pattern, 1));
        }

        var plan = IntegerMaster.Trimmed(tier, settled);
        if (!tier.Accepts(plan)) plan = BestInsertion.Best(tier.Problem, tier.Active, plan);
        return tier.Accepts(plan) ? plan : null;
    }

    // A pattern may hold more of a demand than is left only where the surplus can be dropped.
    private static bool Useful(Tier rest, Pattern pattern) =>
        rest.SupplyCount[pattern.Supply] > 0 && pattern.Takes.All(take => rest.DemandCount[take.Demand] >= take.Count);

    private static int Fitting(Tier rest, Pattern pattern, int times) => Math.Min(
        times,
        Math.Min(rest.SupplyCount[pattern.Supply], pattern.Takes.Min(take => rest.DemandCount[take.Demand] / take.Count)));

    private static List<(Pattern Pattern, double Times)> Relax(Tier rest, List<Pattern> known, Effort effort)
    {
        using var master = new RestrictedMaster(rest, Dear(rest));
        foreach (var pattern in known)
        {
            if (Useful(rest, pattern)) master.Add(pattern);
        }

        var knapsack = new PricingKnapsack(rest);
        for (var round = 0; round < MostRounds && !effort.Over; round++)
        {
            if (master.Solve() is not { } duals) break;
            var priced = knapsack.Price(duals);
            var added = false;
            for (var s = 0; s < priced.Length; s++)
            {
                if (rest.SupplyCount[s] == 0 || priced[s].Best is not { } pattern || priced[s].ReducedCost - duals.Supply[s] >= -rest.Scale / 1000) continue;
                if (!master.Add(pattern)) continue;
                known.Add(pattern);
                added = true;
            }

            if (!added) break;
        }

        _ = master.Solve();
        return [.. master.Solution.Where(column => column.Times > 1e-6)];
    }

    /// <summary>A cost above that of any one pattern and its like, at which going without is the last resort.</summary>
    public static double Dear(Tier tier)
    {
        double most = 1;
        foreach (var supply in tier.Problem.Supplies) most = Math.Max(most, 4.0 * (supply.Price + tier.Problem.SawCost + supply.Value.At(supply.Length) + supply.Value.LargestDrop + (tier.Goal == Goal.Rips ? 1 : 0)));
        return most;
    }
}
