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
        Demand = [.. demand.Select((value, d) => tier.Active[d] ? Whole(value, tier.Covering ? 0 : long.MinValue / 4, tier.Scale) : 0)];
        Supply = [.. supply.Select(value => -Whole(-value, 0, tier.Scale))];
        Left = left.ToDictionary(pair => pair.Key, pair => -Whole(-pair.Value, 0, tier.Scale));
        Spend = -Whole(-spend, 0, tier.Scale);
        Rips = -Whole(-rips, 0, tier.Scale);
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

    private static long Whole(double value, long least, long scale) =>
        Math.Max(least, (long)Math.Round(Math.Clamp(value, -1e12, 1e12) * scale));
}
