namespace Offcuts.Matching.Methods;

/// <summary>
/// What leads the proof of a tier: the linear relaxation, or the state-space relaxation where that says more. Its bound, and how dear a
/// pattern may be.
/// </summary>
internal sealed class Guide
{
    private const int MostRounds = 150;
    private const double LeastGain = 0.005;

    private readonly Tier _tier;

    private Guide(Tier tier, Relaxation atDuals, StateSpaceRelaxation? cells, long bound) => (_tier, AtDuals, Cells, Bound) = (tier, atDuals, cells, bound);

    /// <summary>No plan of use costs less, in multiples of 1/<see cref="Tier.Scale"/>.</summary>
    public long Bound { get; }

    /// <summary>The linear bound at the duals that lead; below its best where others do.</summary>
    public Relaxation AtDuals { get; }

    /// <summary>The state-space relaxation at the same duals, where it leads.</summary>
    public StateSpaceRelaxation? Cells { get; }

    /// <summary>The linear relaxation leads.</summary>
    public static Guide Linear(Tier tier, Relaxation linear) => new(tier, linear, null, linear.Bound);

    /// <summary>Which of the two leads.</summary>
    /// <param name="tier">The tier.</param>
    /// <param name="linear">The linear relaxation.</param>
    /// <param name="most">Only plans of at most this cost are of use.</param>
    /// <param name="effort">Limit.</param>
    /// <param name="more">So many times as much work may go into duals.</param>
    public static Guide Of(Tier tier, Relaxation linear, long most, Effort effort, int more = 1)
    {
        // Many copies take coarse cells: what they lose is more than the whole gap, and no ascent makes up for that. Where a search raises the bound meanwhile, it has to be less.
        if (StateSpaceRelaxation.Of(tier, linear, most) is not { } first || PartOfGap(tier) * (Int128)(linear.Bound - first.Bound) > (Int128)most * tier.Scale - linear.Bound) return Linear(tier, linear);

        // In the other tiers it only adds to the bound, which is not worth the ascent.
        var raised = tier.Goal == Goal.GivenUp ? StateSpaceAscent.Raise(tier, first, most, more * MostRounds, effort, LeastGain, more).Best : first;
        if (raised.Bound <= linear.Bound) return Linear(tier, linear);

        // Only here is every part of a pattern listed beside it, and a plan fills what is asked to the copy.
        if (tier.Goal != Goal.GivenUp) return new Guide(tier, linear, null, raised.Bound);
        return By(tier, linear, raised);
    }

    // No more than one of so many parts of the gap may be lost.
    private static int PartOfGap(Tier tier) => LeastBoundSearch.Applies(tier) ? 8 : 1;

    /// <summary>The state-space relaxation leads.</summary>
    public static Guide By(Tier tier, Relaxation linear, StateSpaceRelaxation cells)
    {
        var priced = new PricingKnapsack(tier).Price(cells.Duals);
        var bound = Bounds.Lagrangian(tier, cells.Duals, priced);
        return new Guide(tier, linear with { Duals = cells.Duals, Priced = priced, Bound = bound }, cells, cells.Bound);
    }

    /// <summary>How dear the patterns of a plan of at most this cost may be.</summary>
    public ReducedCostLimits Limits(long most) => Cells is null ? ReducedCostLimits.Of(_tier, AtDuals, most) : ReducedCostLimits.Of(Cells, most);

    /// <summary>At the same duals, for another tier of the same rows and costs, and for plans that may cost more than those which the guide was made for.</summary>
    public Guide For(Tier tier, long most)
    {
        var linear = AtDuals.For(tier);
        return Cells is not null && StateSpaceRelaxation.Of(tier, linear, most) is { } cells ? new Guide(tier, linear, cells, cells.Bound) : Linear(tier, linear);
    }
}
