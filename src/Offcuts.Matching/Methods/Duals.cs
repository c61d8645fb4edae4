namespace Offcuts.Matching.Methods;

/// <summary>
/// Prices of a tier's rows in whole multiples of 1/<see cref="Tier.Scale"/>. Any whole numbers of the right sign give a true
/// bound, so it does not matter that a floating-point solver proposed them, nor that very large ones are made smaller: where a relaxation
/// has no solution they grow without end, and a sum that leaves 64 bits would turn a bound into a lie (<see cref="Tier.MostDual"/>). Those of
/// <see cref="RestrictedMaster"/> are made smaller all alike, since it is their proportion that proves that there is no solution. The duals of cuts
/// and splits beside them (<see cref="PoolMaster"/>) are still cut down one by one by <see cref="Whole"/>: true as well, but a weaker bound.
/// </summary>
internal sealed class Duals
{
    /// <summary>Duals rounded from a solver's; signs that rounding noise turned are set to zero.</summary>
    public Duals(Tier tier, double[] demand, double[] supply, IReadOnlyDictionary<int, double> left, double spend, double rips = 0)
    {
        var (price, takes) = (tier.Problem.LargestPrice, tier.Problem.MostTakes);
        var share = 1 / Math.Max(1, demand.Select(value => Excess(tier, value, takes))
            .Concat(supply.Concat(left.Values).Select(value => Excess(tier, value, 1)))
            .Append(Excess(tier, spend, price)).Append(Excess(tier, rips, takes)).Max());
        Demand = Rounded(tier, share < 1 ? [.. demand.Select(value => value * share)] : demand);
        Supply = [.. supply.Select((value, s) => tier.SupplyLeast[s] > 0 ? Whole(tier, value * share, 1) : Math.Min(0, Whole(tier, value * share, 1)))];
        Left = left.ToDictionary(pair => pair.Key, pair => Math.Min(0, Whole(tier, pair.Value * share, 1)));
        Spend = Math.Min(0, Whole(tier, spend * share, price));
        Rips = Math.Min(0, Whole(tier, rips * share, takes));
    }

    // How many times as large it is as it may be.
    private static double Excess(Tier tier, double value, long coefficient) => Math.Abs(value) * tier.Scale / tier.MostDual(coefficient);

    private Duals(long[] demand, long[] supply, IReadOnlyDictionary<int, long> left, long spend, long rips) =>
        (Demand, Supply, Left, Spend, Rips) = (demand, supply, left, spend, rips);

    /// <summary>Each demand in proportion to its weight, so that a full piece of the supply earns its price: those of <see cref="Bounds.Lengths"/>.</summary>
    public static Duals ByLength(Tier tier, int supply)
    {
        var problem = tier.Problem;
        var price = (Int128)problem.Supplies[supply].Price * tier.Scale;
        return new Duals(
            [.. problem.Weights.Select((weight, d) => tier.Active[d] ? (long)(price * weight / problem.Capacity(supply)) : 0)],
            new long[problem.Supplies.Count], tier.LeftCap.ToDictionary(pair => pair.Key, _ => 0L), 0, 0);
    }

    /// <summary>The same with other prices of the demands, in cost.</summary>
    public Duals With(Tier tier, double[] demand) => new(Rounded(tier, demand), Supply, Left, Spend, Rips);

    /// <summary>Between two: <paramref name="part"/> of the way from one to the other.</summary>
    public static Duals Between(Duals from, Duals to, double part)
    {
        long Mixed(long a, long b) => a + (long)Math.Round((b - a) * part);
        return new Duals(
            [.. from.Demand.Zip(to.Demand, Mixed)],
            [.. from.Supply.Zip(to.Supply, Mixed)],
            to.Left.ToDictionary(pair => pair.Key, pair => Mixed(from.Left.GetValueOrDefault(pair.Key), pair.Value)),
            Mixed(from.Spend, to.Spend),
            Mixed(from.Rips, to.Rips));
    }

    /// <summary>The mean of several.</summary>
    public static Duals Mean(IReadOnlyList<Duals> all)
    {
        long Of(Func<Duals, long> figure) => (long)(all.Aggregate((Int128)0, (sum, duals) => sum + figure(duals)) / all.Count);
        return new Duals(
            [.. Enumerable.Range(0, all[0].Demand.Length).Select(d => Of(duals => duals.Demand[d]))],
            [.. Enumerable.Range(0, all[0].Supply.Length).Select(s => Of(duals => duals.Supply[s]))],
            all[0].Left.Keys.ToDictionary(stage => stage, stage => Of(duals => duals.Left[stage])),
            Of(duals => duals.Spend),
            Of(duals => duals.Rips));
    }

    /// <summary>No prices at all: the first, weakest bound.</summary>
    public static Duals Zero(Tier tier) =>
        new(tier, new double[tier.Problem.Demands.Count], new double[tier.Problem.Supplies.Count], tier.LeftCap.ToDictionary(pair => pair.Key, _ => 0.0), 0);

    /// <summary>No sum of reduced costs over the spans of a plan is further from the plan's own cost than this, in multiples of 1/<see cref="Tier.Scale"/>.</summary>
    public double Reach(Tier tier) =>
        Demand.Zip(tier.DemandCount, (price, copies) => Math.Abs((double)price) * copies).Sum()
        + Math.Abs((double)Spend) * tier.SupplyCount.Select((count, s) => (double)count * tier.Problem.Supplies[s].Price).Sum()
        + Math.Abs((double)Rips) * tier.Copies
        + Left.Sum(pair => Math.Abs((double)pair.Value) * tier.Copies);

    public long[] Demand { get; }

    /// <summary>Only steers which patterns are worth adding; bounds do without.</summary>
    public long[] Supply { get; }

    public IReadOnlyDictionary<int, long> Left { get; }

    public long Spend { get; }

    public long Rips { get; }

    /// <summary>A solver's dual in whole multiples of 1/<see cref="Tier.Scale"/>, as far as its row lets it be so large.</summary>
    /// <param name="tier">The row's tier.</param>
    /// <param name="value">The dual, in cost.</param>
    /// <param name="coefficient">The largest coefficient of a pattern in the row.</param>
    public static long Whole(Tier tier, double value, long coefficient)
    {
        var most = tier.MostDual(coefficient);
        return (long)Math.Clamp(Math.Round(value * tier.Scale), -most, most);
    }

    private static long[] Rounded(Tier tier, double[] demand) =>
        [.. demand.Select((value, d) => !tier.Active[d] ? 0 : tier.Covering ? Math.Max(0, Whole(tier, value, tier.Problem.MostTakes)) : Whole(tier, value, tier.Problem.MostTakes))];
}
