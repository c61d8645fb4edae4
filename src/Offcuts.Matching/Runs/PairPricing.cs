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
    public (Int128 Earned, View Seen, (int Kind, Ends Way)[] Cuts)? Cut(Bar bar, PairPrices prices)
    {
        (long Most, View Seen, (int Kind, Ends Way)[] Cuts)? best = null;
        foreach (var view in View.Of(bar))
        {
            if (table.Graph(view).Best(bar, prices.Kinds, prices.GivenUp) is { } one && (best is null || one.Most > best.Value.Most)) best = (one.Most, view, one.Cuts);
        }

        return best is var (most, seen, cuts) ? (most - (Int128)prices.Spend * bar.Price - (Int128)prices.GivenUp * bar.Whole, seen, cuts) : null;
    }

    /// <summary>
    /// The least that must be spent on whole pieces where prices of kinds are known, by <see cref="SpendCover"/>; 0 where a pair can't be laid at all, or time ran out before everything was priced.
    /// </summary>
    /// <param name="prices">Prices of kinds and of money; value is not asked.</param>
    /// <param name="effort">Limit, asked before each pair and each shape of bars.</param>
    public long LeastSpend(PairPrices prices, Effort effort)
    {
        Int128 lacking = 0;
        foreach (var group in PairRelaxation.Groups(table))
        {
            if (effort.Over || Lay(group.Pair, prices.Kinds) is not { } path) return 0;
            lacking += (Int128)group.Count * path.Least;
        }

        var bought = new List<(long, Int128)>();
        foreach (var alike in table.Part.Shapes.All)
        {
            if (effort.Over) return 0;
            if (Cut(alike.First, prices) is not { } cut) continue;
            if (alike.First.Bought is null) lacking -= alike.Count * Int128.Max(0, cut.Earned);
            else bought.Add((alike.First.Price, cut.Earned + (Int128)prices.Spend * alike.First.Price));
        }

        return SpendCover.Least(lacking, bought);
    }

    /// <summary>What all pairs of rows cost at least less what all bars earn at most; none where a pair can't be laid at all.</summary>
    public Int128? Sum(PairPrices prices)
    {
        Int128 sum = 0;
        foreach (var group in PairRelaxation.Groups(table))
        {
            if (Lay(group.Pair, prices.Kinds) is not { } path) return null;
            sum += (Int128)group.Count * path.Least;
        }

        foreach (var alike in table.Part.Shapes.All)
        {
            if (Cut(alike.First, prices) is { } cut) sum -= alike.Count * Int128.Max(0, cut.Earned);
        }

        return sum;
    }
}
