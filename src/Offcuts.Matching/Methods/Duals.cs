namespace Offcuts.Matching.Methods;

/// <summary>
/// Prices of a tier's rows in whole multiples of 1/<see cref="Tier.Scale"/>. Any whole numbers of the right sign give a true
/// bound, so it does not matter that a floating-point solver proposed them.
/// </summary>
internal sealed class Duals
{
    /// <summary>Duals rounded from a solver's; signs that rounding noise turned are set to zero.</summary>
    public Duals(Tier tier, double[] demand, double[] supply, IReadOnlyDictionary<int, double> left, double spend, double rips = 0)
    {
        Demand = Rounded(tier, demand);
        Supply = [.. supply.Select((value, s) => -Whole(-value, tier.SupplyLeast[s] > 0 ? long.MinValue / 4 : 0, tier.Scale))];
        Left = left.ToDictionary(pair => pair.Key, pair => -Whole(-pair.Value, 0, tier.Scale));
        Spend = -Whole(-spend, 0, tier.Scale);
        Rips = -Whole(-rips, 0, tier.Scale);
    }

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
        long Of(Func<Duals, long> figure) => all.Sum(figure) / all.Count;
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

    public long[] Demand { get; }

    /// <summary>Only steers which patterns are worth adding; bounds do without.</summary>
    public long[] Supply { get; }

    public IReadOnlyDictionary<int, long> Left { get; }

    public long Spend { get; }

    public long Rips { get; }

    private static long[] Rounded(Tier tier, double[] demand) =>
        [.. demand.Select((value, d) => tier.Active[d] ? Whole(value, tier.Covering ? 0 : long.MinValue / 4, tier.Scale) : 0)];

    private static long Whole(double value, long least, long scale) =>
        Math.Max(least, (long)Math.Round(Math.Clamp(value, -1e12, 1e12) * scale));
}
