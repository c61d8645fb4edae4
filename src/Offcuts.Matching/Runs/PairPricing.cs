using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>What rows cost at least and bars earn at most, at prices of kinds: all that a bound needs, without a linear program.</summary>
/// <param name="table">Kinds, rows and bars.</param>
internal sealed class PairPricing(KindTable table)
{
    private readonly CoursePairs _paths = new();

    /// <summary>The least that a pair of rows costs, and the arcs of each from left to right; none where it can't be laid at all.</summary>
    public (long Least, int[] Lower, int[] Upper)? Lay(CoursePair pair, long[] prices) => _paths.Cheapest(pair, prices);

    /// <summary>The most that one bar earns beyond what it costs, cut at least once, and how; none where no cut fits.</summary>
    public BestCut? Cut(Bar bar, PairPrices prices)
    {
        (long Most, View Seen, (int Kind, Ends Way)[] Cuts)? best = null;
        foreach (var view in View.Of(bar))
        {
            if (table.Graph(view).Best(bar, prices.Kinds, prices.GivenUp) is { } one && (best is null || one.Most > best.Value.Most)) best = (one.Most, view, one.Cuts);
        }

        return best is var (most, seen, cuts) ? new BestCut(most - (Int128)prices.Spend * bar.Price - (Int128)prices.GivenUp * bar.Whole, seen, cuts) : null;
    }

    /// <summary>Tells of each shape of bars how one of it earns most; false where time ran out before all were asked. What no cut fits is not told.</summary>
    /// <param name="prices">Prices of kinds and of money.</param>
    /// <param name="effort">Limit, asked before each shape.</param>
    /// <param name="told">Told the bars and the cut.</param>
    public bool EachBar(PairPrices prices, Effort effort, Action<AlikeBars, BestCut> told)
    {
        foreach (var alike in table.Part.Shapes.All)
        {
            if (effort.Over) return false;
            if (Cut(alike.First, prices) is { } cut) told(alike, cut);
        }

        return true;
    }

    /// <summary>What rows cost at least; none where a pair can't be laid at all, or time ran out before all were asked.</summary>
    /// <param name="pairs">Pairs of rows, and how often each is laid.</param>
    /// <param name="prices">By number of kind.</param>
    /// <param name="effort">Limit, asked before each pair.</param>
    public Int128? Rows(IEnumerable<(CoursePair Of, int Count)> pairs, long[] prices, Effort effort)
    {
        Int128 sum = 0;
        foreach (var (pair, count) in pairs)
        {
            if (effort.Over || Lay(pair, prices) is not { } path) return null;
            sum += (Int128)count * path.Least;
        }

        return sum;
    }

    /// <summary>
    /// The least that must be spent on whole pieces where prices of kinds are known, by <see cref="SpendCover"/>; 0 where a pair can't be laid at all, or time ran out before everything was priced.
    /// </summary>
    /// <param name="prices">Prices of kinds and of money; value is not asked.</param>
    /// <param name="effort">Limit.</param>
    public long LeastSpend(PairPrices prices, Effort effort)
    {
        if (Rows(Pairs, prices.Kinds, effort) is not { } lacking) return 0;
        var bought = new List<(long, Int128)>();
        var whole = EachBar(prices, effort, (alike, cut) =>
        {
            if (alike.First.Bought is null) lacking -= alike.Count * Int128.Max(0, cut.Earned);
            else bought.Add((alike.First.Price, cut.Earned + (Int128)prices.Spend * alike.First.Price));
        });
        return whole ? SpendCover.Least(lacking, bought) : 0;
    }

    /// <summary>What all pairs of rows cost at least less what all bars earn at most; none where a pair can't be laid at all, or time ran out before everything was priced.</summary>
    /// <param name="prices">Prices of kinds and of money.</param>
    /// <param name="effort">Limit.</param>
    public Int128? Sum(PairPrices prices, Effort effort) => Rows(Pairs, prices.Kinds, effort) is { } rows && Earned(prices, effort) is { } earned ? rows - earned : null;

    /// <summary>The most that all bars earn together; none where time ran out before all were asked.</summary>
    /// <param name="prices">Prices of kinds and of money.</param>
    /// <param name="effort">Limit.</param>
    public Int128? Earned(PairPrices prices, Effort effort)
    {
        Int128 sum = 0;
        return EachBar(prices, effort, (alike, cut) => sum += alike.Count * Int128.Max(0, cut.Earned)) ? sum : null;
    }

    private IEnumerable<(CoursePair Of, int Count)> Pairs => PairRelaxation.Groups(table).Select(group => (group.Pair, group.Count));
}

/// <summary>How a bar is cut at some prices.</summary>
/// <param name="Earned">What it earns beyond what it costs.</param>
/// <param name="Seen">From which end.</param>
/// <param name="Cuts">Numbers of kinds in order, and which ends lie on lines.</param>
internal readonly record struct BestCut(Int128 Earned, View Seen, (int Kind, Ends Way)[] Cuts);
