using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// Bounds of the tiers after the value where every row is covered: neighbouring rows laid two by two with their stagger, as in <see cref="PairRelaxation"/>, but whatever that costs.
/// <code>
/// joints    the fewest that each pair has
/// saw cuts  pi for each piece of a pair that is no new piece as it is bought    -  1 for each piece of the yard that its cuts may use up  +  1 for each piece of a low course
/// </code>
/// A bar that gives k pieces takes k saw cuts, or one less where nothing is left of it. No new piece can be used up so by fewer than k pieces, told by the step that all lengths
/// share; then pi = (k - 1) / k, or 1 where there is no such k. Cost: laying every pair twice at fixed prices, no program.
/// </summary>
internal static class LaterBounds
{
    /// <summary>The fewest joints and saw cuts of any filling that covers every row; none where a pair can't be laid at all, or time ran out before all were.</summary>
    /// <param name="table">Kinds, rows and bars.</param>
    /// <param name="effort">Limit, asked before each pair.</param>
    public static (long Joints, long Saws)? Of(KindTable table, Effort effort)
    {
        if (table.Kinds.Count == 0) return null;
        var (joints, pieces) = (0L, (Int128)0);
        var (pricing, part) = (new PairPricing(table), table.Part);
        var bought = part.BoughtLengths;
        var step = table.Kinds.Aggregate(0L, (sum, kind) => Bounds.Gcd(sum, kind.Length));
        var shortest = table.Kinds.Select(kind => kind.Length).Min();
        long? fewest = bought.Select(length => UsedUp(length, part.Kerf, step, shortest)).Min();
        var piece = fewest is { } k ? StockPrices.Scale * (k - 1) / k : StockPrices.Scale;
        var (none, cut) = (new long[table.Kinds.Count], table.Kinds.Select(kind => bought.Contains(kind.Length) ? 0 : piece).ToArray());
        foreach (var group in PairRelaxation.Groups(table))
        {
            if (effort.Over) return null;
            if (pricing.Lay(group.Pair with { Joint = 1 }, none) is not { } joined || pricing.Lay(group.Pair, cut) is not { } sawn) return null;
            joints += group.Count * joined.Least;
            pieces += (Int128)group.Count * sawn.Least;
        }

        var lengths = table.Kinds.Select(kind => kind.Length).ToHashSet();
        var yard = part.Bars.Where(bar => !bought.Contains(bar.Length) && (lengths.Contains(bar.Length) || UsedUp(bar.Length, part.Kerf, step, shortest) is not null)).Sum(bar => (long)bar.Count);
        var saws = pieces - (Int128)yard * StockPrices.Scale;
        var low = part.Rows.Where(row => row.Low).Sum(row => TrivialBounds.LeastPieces(part, row));
        return (joints, low + (saws > 0 ? (long)((saws + StockPrices.Scale - 1) / StockPrices.Scale) : 0));
    }

    // By how few pieces a bar can be used up to its end; none where no number of them does that.
    private static long? UsedUp(long length, long kerf, long step, long shortest)
    {
        for (var k = 2L; k * shortest + (k - 1) * kerf <= length; k++)
        {
            if ((length - (k - 1) * kerf) % step == 0) return k;
        }

        return null;
    }
}
