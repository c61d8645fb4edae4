using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// How few extra ties a filling has that covers every row, spends no more than so much and gives up no more than so much: neighbouring rows laid two by two as in <see cref="PairRelaxation"/>,
/// a tie having a price m beside those of kinds pi and of money. Whatever the prices,
/// <code>
/// m ties  >=  sum over pairs of the least they cost with their ties  -  sum over bars  count x max(0, the most it earns)  -  v_spend x spend  -  v_value x value given up
/// </code>
/// since all that is laid at pi is cut from bars. One tie serves all faces that have a joint there, so in a row it costs m shared out over the rows of its leg and course. Prices that are near
/// to a bound of the spend or of the value leave those who would save a tie little to pay it from; prices of nothing say what stagger and panels ask for whatever is spent.
/// Source: Lagrangian relaxation, Held and Karp 1970 (from memory). Cost: for each price every pair laid once and every shape of bars cut once.
/// </summary>
internal sealed class TieBounds
{
    private const int OfTie = 2;

    // From this part of the cheapest panel down, by steps.
    private const int Steps = 6;
    private const int Step = 4;

    private readonly List<Line> _lines = [];

    // Sum of the least of pairs less the most of bars, and what money and a tie cost in it.
    private readonly record struct Line(Int128 Sum, PairPrices Prices, long Tie);

    private TieBounds()
    {
    }

    /// <summary>Reckons them at these prices, as far as there is time.</summary>
    /// <param name="table">Kinds, rows and bars.</param>
    /// <param name="prices">Prices of kinds and of money.</param>
    /// <param name="effort">Limit, asked before each pair and each shape of bars.</param>
    public static TieBounds Of(KindTable table, IEnumerable<StockPrices> prices, Effort effort)
    {
        var (bounds, pricing, part) = (new TieBounds(), new PairPricing(table), table.Part);
        var rows = part.Rows.Where(row => row.Stretches.Length > 0).CountBy(row => (row.Of.Leg, row.Number)).ToDictionary();
        var pairs = PairRelaxation.Pairs(table).GroupBy(pair => (new PairGroup(pair.Of, 1).Shape, Sharing: Math.Max(Sharing(pair.Lower), Sharing(pair.Upper ?? pair.Lower))))
            .Select(same => (same.First().Of, same.Key.Sharing, Count: same.Count())).ToArray();
        var cheapest = Math.Max(1, part.Bars.Where(bar => bar.Price > 0).Select(bar => bar.Price).DefaultIfEmpty(1).Min());
        var ties = Enumerable.Range(0, Steps).Select(n => (long)(StockPrices.Scale * cheapest / (OfTie * Math.Pow(Step, n)))).Where(tie => tie > 0).ToArray();
        bounds.Add(pricing, pairs, new PairPrices(new long[table.Kinds.Count], 0, 0), [StockPrices.Scale], effort);
        foreach (var one in prices) bounds.Add(pricing, pairs, new PairPrices([.. table.Kinds.Select(one.Of)], one.Spend, one.GivenUp), ties, effort);
        return bounds;

        int Sharing(Row row) => rows[(row.Of.Leg, row.Number)];
    }

    /// <summary>No filling that covers every row and comes to no more of both has fewer extra ties.</summary>
    /// <param name="spend">What is spent, in cents.</param>
    /// <param name="givenUp">The value given up, in cents.</param>
    public long Least(long spend, long givenUp)
    {
        Int128 least = 0;
        foreach (var (sum, prices, tie) in _lines)
        {
            var lacking = sum - (Int128)prices.Spend * spend - (Int128)prices.GivenUp * givenUp;
            if (lacking > 0) least = Int128.Max(least, (lacking + tie - 1) / tie);
        }

        return (long)least;
    }

    // Nothing is said where time ran out, or where a pair can't be laid at all.
    private void Add(PairPricing pricing, (CoursePair Of, int Sharing, int Count)[] pairs, PairPrices prices, IEnumerable<long> ties, Effort effort)
    {
        if (pricing.Earned(prices, effort) is not { } earned) return;
        foreach (var tie in ties)
        {
            if (pricing.Rows(pairs.Select(pair => (pair.Of with { Tie = tie / pair.Sharing }, pair.Count)), prices.Kinds, effort) is { } rows) _lines.Add(new Line(rows - earned, prices, tie));
        }
    }
}
