namespace Offcuts.Matching.Runs;

/// <summary>
/// What must be bought in whole pieces where prices of kinds are known: all that rows cost at those prices has to be earned, the yard's bars earn no more than they can, and
/// each new piece no more than one of its length can. So
/// <code>
/// min  sum price_j n_j     sum earned_j n_j  >=  what the rows cost - what the yard earns at most,     n_j whole
/// </code>
/// is a bound of the spend. Where new pieces of several lengths share no large step of price it is above the sum of prices that is next to the linear program: six boards of 12 ft
/// and no mixture that is cheaper has the length. Solved by counting the most that each sum of prices can earn. Limits of the store are relaxed.
/// </summary>
internal static class SpendCover
{
    // Beyond such a table the linear program alone speaks.
    private const long Longest = 1 << 20;

    /// <summary>The least spend in cents at which the new pieces can earn so much; 0 where that can't be said.</summary>
    /// <param name="lacking">What new pieces have to earn.</param>
    /// <param name="pieces">Of each new piece its price in cents, and the most that it earns.</param>
    public static long Least(Int128 lacking, IReadOnlyList<(long Price, Int128 Earned)> pieces)
    {
        if (lacking <= 0 || !pieces.Any(piece => piece.Earned > 0) || pieces.Any(piece => piece.Price <= 0 && piece.Earned > 0)) return 0;
        var step = pieces.Where(piece => piece.Earned > 0).Aggregate(0L, (sum, piece) => Bounds.Gcd(sum, piece.Price));
        var steps = pieces.Where(piece => piece.Earned > 0).Select(piece => (Price: (int)Math.Min(piece.Price / step, int.MaxValue), piece.Earned)).ToArray();
        var most = new List<Int128> { 0 };
        for (var spend = 1; spend < Longest; spend++)
        {
            var best = most[spend - 1];
            foreach (var (price, earned) in steps)
            {
                if (price <= spend) best = Int128.Max(best, most[spend - price] + earned);
            }

            if (best >= lacking) return spend * step;
            most.Add(best);
        }

        return 0;
    }
}
