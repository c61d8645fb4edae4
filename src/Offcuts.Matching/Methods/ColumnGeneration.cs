namespace Offcuts.Matching.Methods;

/// <summary>What column generation leaves behind.</summary>
/// <param name="Patterns">Patterns it met.</param>
/// <param name="Fractional">The relaxation's last solution.</param>
/// <param name="Duals">The duals of the best bound.</param>
/// <param name="Priced">What pricing found at them.</param>
/// <param name="Bound">The best bound, in multiples of 1/<see cref="Tier.Scale"/>.</param>
internal sealed record Relaxation(
    IReadOnlyList<Pattern> Patterns, IReadOnlyList<(Pattern Pattern, double Times)> Fractional, Duals Duals, Priced[] Priced, long Bound)
{
    /// <summary>The bound of the same duals in another tier of the same rows and costs.</summary>
    public Relaxation For(Tier tier)
    {
        var priced = new PricingKnapsack(tier).Price(Duals);
        return this with { Priced = priced, Bound = Bounds.Lagrangian(tier, Duals, priced) };
    }

    /// <summary>
    /// True where sums of reduced costs over all spans of a plan stay whole numbers of 64 bits. Duals that grew without end, as they do where the relaxation
    /// has no solution, are of no use to what adds up such sums.
    /// </summary>
    public bool SumsFit(Tier tier) =>
        Duals.Reach(tier) + Priced.Select((priced, s) => -Math.Min(0, (double)priced.Least) * Math.Min(tier.SupplyCount[s], tier.Copies)).Sum() < Tier.LargestSum;
}

/// <summary>
/// Solves the relaxation of a tier: solve the master over the known patterns, price, add what pricing finds, until nothing is
/// found or the bound meets the best plan. Pricing is asked at duals between those of the best bound and the master's, which jump
/// about less from round to round; where that finds nothing, at the master's.
/// Source: Gilmore and Gomory, 1961; the smoothing of duals, Wentges, 1997 (from memory).
/// Cost: some dozen to some hundred rounds of one linear program and one knapsack. Gives up at the limit with the best bound so far.
/// </summary>
internal static class ColumnGeneration
{
    private const int MostRounds = 2000;
    private const double TowardsMaster = 0.4;
    private const double NearEnough = 0.25;
    private const int Corners = 8;
    private const int LeastLoss = 100;

    /// <summary>Solves.</summary>
    /// <param name="tier">The tier.</param>
    /// <param name="incumbent">A plan that keeps its rows; its patterns come first.</param>
    /// <param name="start">Further patterns.</param>
    /// <param name="effort">Limit.</param>
    /// <param name="known">
    /// Where a figure is given that no plan is below: ends as soon as the rounded bound is this or cannot get better any more, although
    /// the duals still might. None to go on to the end.
    /// </param>
    /// <param name="loosening">As for <see cref="RevisedSimplex"/>.</param>
    public static Relaxation Solve(Tier tier, MaterialPlan incumbent, IEnumerable<Pattern> start, Effort effort, long? known = null, Random? loosening = null)
    {
        var master = new RestrictedMaster(tier, loosening: loosening);
        foreach (var (pattern, _) in incumbent.Uses)
            if (Stripped(tier, pattern) is { } active && tier.MayHold(active)) master.Add(active);
        foreach (var pattern in start)
            if (Stripped(tier, pattern) is { } active && tier.MayHold(active)) master.Add(active);

        var knapsack = new PricingKnapsack(tier);
        var duals = loosening is null && tier.Goal == Goal.Spend && Bounds.Lengths(tier).Supply is { } supply ? Duals.ByLength(tier, supply) : Duals.Zero(tier);
        var priced = knapsack.Price(duals);
        var best = new Relaxation([], [], duals, priced, Bounds.Lagrangian(tier, duals, priced));
        var target = tier.Value(incumbent);
        IReadOnlyList<(Pattern, double)> fractional = [];
        for (var round = 0; round < MostRounds && !effort.Over && Bounds.RoundUp(tier, best.Bound) < target; round++)
        {
            if (master.Solve() is not { } next) break;
            fractional = [.. master.Solution.Where(column => column.Times > 1e-9)];
            if (known is { } least && Settled(tier, Math.Max(least, Bounds.RoundUp(tier, best.Bound)), master.Objective)) break;
            var near = master.Objective * tier.Scale - best.Bound < NearEnough * Math.Abs(master.Objective) * tier.Scale;
            if (!Priced(near ? Duals.Between(best.Duals, next, TowardsMaster) : next, next) && !(near && Priced(next, next))) break;
        }

        return best with { Patterns = [.. master.Patterns], Fractional = fractional };

        // Prices at some duals; true where a pattern came that the master has a use for.
        bool Priced(Duals at, Duals masters)
        {
            var found = knapsack.Price(at);
            var bound = Bounds.Lagrangian(tier, at, found);
            if (bound > best.Bound) best = best with { Duals = at, Priced = found, Bound = bound };
            var added = false;
            for (var s = 0; s < found.Length; s++)
            {
                if (found[s].Best is { } pattern && PricingKnapsack.ReducedCost(tier, pattern, masters) - masters.Supply[s] < -Noise(tier)) added |= master.Add(pattern);
            }

            return added;
        }
    }

    /// <summary>
    /// The same relaxation with duals from the middle: the mean of several that are equally good. A pattern that any of them rules out
    /// has a reduced cost there too, so that fewer patterns remain within a gap. The old one where the mean is no better than that.
    /// </summary>
    public static Relaxation Centred(Tier tier, MaterialPlan incumbent, Relaxation relaxation, Effort effort)
    {
        var random = new Random(1);
        var (patterns, duals) = (relaxation.Patterns, new List<Duals> { relaxation.Duals });
        for (var i = 1; i < Corners && !effort.Over; i++)
        {
            var corner = Solve(tier, incumbent, patterns, effort, null, random);
            if (relaxation.Bound - corner.Bound > tier.Scale / LeastLoss) continue;
            patterns = corner.Patterns;
            duals.Add(corner.Duals);
        }

        var middle = Duals.Mean(duals);
        var priced = new PricingKnapsack(tier).Price(middle);
        var bound = Bounds.Lagrangian(tier, middle, priced);
        return relaxation.Bound - bound > tier.Scale / LeastLoss ? relaxation : relaxation with { Patterns = patterns, Duals = middle, Priced = priced, Bound = bound };
    }

    // The master only gets cheaper, and the bound never passes it.
    private static bool Settled(Tier tier, long bound, double objective) =>
        Bounds.RoundUp(tier, (long)Math.Ceiling((objective - 1e-6) * tier.Scale)) <= bound;

    // Below a hundred-thousandth of a cent a gain is rounding noise of the linear solver.
    private static long Noise(Tier tier) => tier.Scale / 100_000;

    private static Pattern? Stripped(Tier tier, Pattern pattern)
    {
        if (pattern.Takes.All(take => tier.Active[take.Demand])) return pattern;
        var takes = pattern.Takes.Where(take => tier.Active[take.Demand]).ToArray();
        return takes.Length > 0 ? new Pattern(tier.Problem, pattern.Supply, takes, pattern.Whole) : null;
    }
}
