namespace Offcuts.Matching.Methods;

/// <summary>
/// How dear a pattern may be, at given duals, that is part of a plan of at most a given cost. It may depend on how many cells the pattern
/// fills: whole numbers for each demand, which add up.
/// </summary>
internal abstract class ReducedCostLimits
{
    private protected ReducedCostLimits(Tier tier, Duals duals) => (Tier, Duals) = (tier, duals);

    /// <summary>The tier in whose costs reduced costs are meant.</summary>
    public Tier Tier { get; }

    /// <summary>The duals at which reduced costs are meant.</summary>
    public Duals Duals { get; }

    /// <summary>
    /// By the linear relaxation: using pattern p once replaces one use that the bound L counted at the least reduced cost of the supply (<see cref="Tier.Counted"/>), so
    /// <code>
    /// L + reducedcost_p - counted_s &lt;= cost
    /// </code>
    /// </summary>
    public static ReducedCostLimits Of(Tier tier, Relaxation relaxation, long most) => new Linear(tier, relaxation, most);

    /// <summary>By the state-space relaxation.</summary>
    public static ReducedCostLimits Of(StateSpaceRelaxation relaxation, long most) => new StateSpace(relaxation, most);

    /// <summary>The same limits for one supply, by cells.</summary>
    public abstract LoadLimits Of(int supply);

    private sealed class Linear(Tier tier, Relaxation relaxation, long most) : ReducedCostLimits(tier, relaxation.Duals)
    {
        private const int Cells = 16384;

        public override LoadLimits Of(int supply)
        {
            var capacity = Tier.Problem.Capacity(supply);
            var allows = Tier.Problem.Supplies[supply].Allows;
            var grid = Enumerable.Range(0, allows.Length).Where(d => Tier.Active[d] && allows[d]).Select(d => Tier.Problem.Weights[d]).Aggregate(0L, Bounds.Gcd);
            var cell = grid > 0 && capacity / grid < 2 * Cells ? grid : Math.Max(grid, capacity / Cells + 1);
            var rounded = cell == grid ? 0 : (Tier.Problem.Weights.Max(weight => capacity / weight) + 1) * cell;
            int[] cells = [.. Tier.Problem.Weights.Select(weight => (int)(weight / cell))];
            var limit = (Int128)most * Tier.Scale - relaxation.Bound + Tier.Counted(supply, relaxation.Priced[supply].Least);
            var count = (int)(capacity / cell) + 1;
            return new LoadLimits(
                cells,
                [.. Enumerable.Repeat((long)Int128.Clamp(limit, -StateSpaceRelaxation.Never, StateSpaceRelaxation.Never), count)],
                [.. Enumerable.Range(0, count).Select(c => c * cell)],
                [.. Enumerable.Range(0, count).Select(c => c * cell + rounded)]);
        }
    }

    private sealed class StateSpace(StateSpaceRelaxation relaxation, long most) : ReducedCostLimits(relaxation.Tier, relaxation.Duals)
    {
        public override LoadLimits Of(int supply) => relaxation.Limits(supply, most);
    }
}

/// <summary>Limits for the patterns of one supply.</summary>
/// <param name="Cells">Cells of a copy of each demand.</param>
/// <param name="Most">By cells of a pattern, the most that its reduced cost may be.</param>
/// <param name="Lightest">By cells, the least that the cuts can weigh.</param>
/// <param name="Heaviest">By cells, the most that they can weigh.</param>
internal sealed record LoadLimits(int[] Cells, long[] Most, long[] Lightest, long[] Heaviest);
