namespace Offcuts.Matching.Methods;

/// <summary>What column generation leaves behind.</summary>
/// <param name="Patterns">Patterns it met.</param>
/// <param name="Fractional">The relaxation's last solution.</param>
/// <param name="Duals">The duals of the best bound.</param>
/// <param name="Priced">What pricing found at them.</param>
/// <param name="Bound">The best bound, in multiples of 1/<see cref="Tier.Scale"/>.</param>
internal sealed record Relaxation(
    IReadOnlyList<Pattern> Patterns, IReadOnlyList<(Pattern Pattern, double Times)> Fractional, Duals Duals, Priced[] Priced, long Bound);

/// <summary>
/// Solves the relaxation of a tier: solve the master over the known patterns, price, add what pricing finds, until nothing is
/// found or the bound meets the best plan. Source: Gilmore and Gomory, 1961.
/// Cost: some dozen to some hundred rounds of one linear program and one knapsack. Gives up at the limit with the best bound so far.
/// </summary>
internal static class ColumnGeneration
{
    private const int MostRounds = 2000;

    public static Relaxation Solve(Tier tier, MaterialPlan incumbent, IEnumerable<Pattern> start, Effort effort)
    {
        using var master = new RestrictedMaster(tier);
        foreach (var (pattern, _) in incumbent.Uses)
            if (Stripped(tier, pattern) is { } active) master.Add(active);
        foreach (var pattern in start)
            if (Stripped(tier, pattern) is { } active) master.Add(active);

        var knapsack = new PricingKnapsack(tier);
        var duals = Duals.Zero(tier);
        var priced = knapsack.Price(duals);
        var best = new Relaxation([], [], duals, priced, Bounds.Lagrangian(tier, duals, priced));
        var target = tier.Value(incumbent);
        IReadOnlyList<(Pattern, double)> fractional = [];
        for (var round = 0; round < MostRounds && !effort.Over && Bounds.RoundUp(tier, best.Bound) < target; round++)
        {
            if (master.Solve() is not { } next) break;
            fractional = [.. master.Solution.Where(column => column.Times > 1e-9)];
            duals = next;
            priced = knapsack.Price(duals);
            var bound = Bounds.Lagrangian(tier, duals, priced);
            if (bound > best.Bound) best = best with { Duals = duals, Priced = priced, Bound = bound };
            var added = false;
            for (var s = 0; s < priced.Length; s++)
            {
                if (priced[s].Best is { } pattern && priced[s].ReducedCost - duals.Supply[s] < -Noise(tier)) added |= master.Add(pattern);
            }

            if (!added) break;
        }

        return best with { Patterns = [.. master.Patterns], Fractional = fractional };
    }

    // Below a hundred-thousandth of a cent a gain is rounding noise of the linear solver.
    private static long Noise(Tier tier) => tier.Scale / 100_000;

    private static Pattern? Stripped(Tier tier, Pattern pattern)
    {
        if (pattern.Takes.All(take => tier.Active[take.Demand])) return pattern;
        var takes = pattern.Takes.Where(take => tier.Active[take.Demand]).ToArray();
        return takes.Length > 0 ? new Pattern(tier.Problem, pattern.Supply, takes, pattern.Whole) : null;
    }
}
