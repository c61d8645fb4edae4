namespace Offcuts.Matching.Methods;

/// <summary>
/// Duals at which a <see cref="StateSpaceRelaxation"/> is better than at those of the linear relaxation: its least path takes some
/// demands too often and some too seldom, and their prices are moved against that.
/// <code>
/// u_d := u_d + step (n_d - takes_d)       step = part (cost of the best plan - bound) / sum (n_d - takes_d)^2
/// </code>
/// Source: the subgradient method, Held, Wolfe and Crowder, 1974 (from memory).
/// Cost: one relaxation a round, until the bound meets the best plan, stays where it is, or the work is done.
/// </summary>
internal static class StateSpaceAscent
{
    private const double MostWork = 1e9;
    private const int MostRounds = 150;
    private const int Patience = 3;
    private const int FixEvery = 10;
    private const double FirstPart = 0.5;
    private const double LargestSum = 1L << 56;
    private const double LeastPart = 0.02;

    /// <summary>The best relaxation met, its loads reduced to those that plans of use can have.</summary>
    public static StateSpaceRelaxation Raise(Tier tier, StateSpaceRelaxation first, Duals duals, long most, Effort effort)
    {
        var prices = duals.Demand.Select(price => price / (double)tier.Scale).ToArray();
        var (best, at, part, since, work) = (first, first, FirstPart, 0, 0.0);
        for (var round = 1; round <= MostRounds && part >= LeastPart && work < MostWork && !effort.Over; round++)
        {
            if (Bounds.RoundUp(tier, best.Bound) > most) return best;
            var takes = at.Takes();
            var norm = takes.Zip(tier.DemandCount, (taken, asked) => (double)(asked - taken) * (asked - taken)).Sum();
            if (norm == 0) return best;
            var step = part * (most + 1 - at.Bound / (double)tier.Scale) / norm;
            for (var d = 0; d < prices.Length; d++)
            {
                if (tier.Active[d]) prices[d] += step * (tier.DemandCount[d] - takes[d]);
            }

            if (prices.Zip(tier.DemandCount, (price, copies) => Math.Abs(price) * copies).Sum() * tier.Scale > LargestSum) return best;
            at = at.At(duals.With(tier, prices), round % FixEvery == 1 ? most : null);
            work += at.Work;
            if (at.Bound > best.Bound) (best, since) = (at, 0);
            else if (++since == Patience) (part, since) = (part / 1.5, 0);
        }

        return best;
    }
}
