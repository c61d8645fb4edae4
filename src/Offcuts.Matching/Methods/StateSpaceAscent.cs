namespace Offcuts.Matching.Methods;

/// <summary>
/// Duals at which a <see cref="StateSpaceRelaxation"/> is better than at those of the linear relaxation: its least path takes some
/// demands too often and some too seldom, and their prices are moved against that.
/// <code>
/// u_d := u_d + step (n_d - takes_d)       step = part (cost of the best plan - bound) / sum (n_d - takes_d)^2
/// </code>
/// Source: the subgradient method, Held, Wolfe and Crowder, 1974 (from memory).
/// Cost: one relaxation a round, until the bound meets the best plan, gains too little for what that takes, or the work is done.
/// </summary>
internal static class StateSpaceAscent
{
    private const double MostWork = 1e10;
    private const int Patience = 3;
    private const int FixEvery = 10;
    private const double FirstPart = 0.5;
    private const double LargestSum = 1L << 56;
    private const double LeastPart = 0.02;
    private const double AskedFirst = 1.5e9;

    /// <summary>The best relaxation met, its loads reduced to those that plans of use can have, and what its last paths took.</summary>
    /// <param name="tier">The tier.</param>
    /// <param name="first">Where it begins.</param>
    /// <param name="most">Only plans of at most this cost are of use.</param>
    /// <param name="rounds">Most rounds.</param>
    /// <param name="effort">Limit.</param>
    /// <param name="leastGain">This part of the gap has to be gained by some work, and again whenever the work has doubled, else it ends.</param>
    /// <param name="more">So many times as much work may be done.</param>
    public static (StateSpaceRelaxation Best, PathMean Paths) Raise(Tier tier, StateSpaceRelaxation first, long most, int rounds, Effort effort, double leastGain = 0, int more = 1)
    {
        var prices = first.Duals.Demand.Select(price => price / (double)tier.Scale).ToArray();
        var (best, at, part, since, work) = (first, first, FirstPart, 0, 0.0);
        var (before, asked) = (first.Bound, AskedFirst);
        var paths = new PathMean(tier.SupplyCount.Length, tier.DemandCount.Length);
        for (var round = 1; round <= rounds && part >= LeastPart && work < more * MostWork && !effort.Over; round++)
        {
            if (work >= asked)
            {
                if (best.Bound - before < leastGain * ((most + 1) * (double)tier.Scale - best.Bound)) break;
                (before, asked) = (best.Bound, 2 * work);
            }

            if (Bounds.RoundUp(tier, best.Bound) > most || at.LeastPath() is not { } path) break;
            paths.Add(path);
            var wanting = tier.DemandCount.Zip(path.Takes, (copies, taken) => copies - taken).ToArray();
            var norm = wanting.Sum(by => (double)by * by);
            if (norm == 0) break;
            var step = part * (most + 1 - at.Bound / (double)tier.Scale) / norm;
            for (var d = 0; d < prices.Length; d++) prices[d] += tier.Active[d] ? step * wanting[d] : 0;
            if (prices.Zip(tier.DemandCount, (price, copies) => Math.Abs(price) * copies).Sum() * tier.Scale > LargestSum) break;
            at = at.At(first.Duals.With(tier, prices), round % FixEvery == 1 ? most : null);
            work += at.Work;
            if (at.Bound > best.Bound) (best, since) = (at, 0);
            else if (++since == Patience) (part, since) = (part / 1.5, 0);
        }

        return (best, paths);
    }
}

/// <summary>What the paths met in an ascent took, in the mean; the latest count most. It comes near to a mixture of plans that costs the bound.</summary>
internal sealed class PathMean(int supplies, int demands)
{
    private const double Memory = 0.9;

    private bool _begun;

    /// <summary>How often each supply was cut.</summary>
    public double[] Uses { get; } = new double[supplies];

    /// <summary>By supply, the copies of each demand taken from it.</summary>
    public double[][] From { get; } = [.. Enumerable.Range(0, supplies).Select(_ => new double[demands])];

    /// <summary>One more path.</summary>
    public void Add(CellPath path)
    {
        var kept = _begun ? Memory : 0;
        _begun = true;
        Mix(Uses, path.Uses);
        for (var s = 0; s < From.Length; s++) Mix(From[s], path.From[s]);

        void Mix(double[] mean, int[] now)
        {
            for (var i = 0; i < mean.Length; i++) mean[i] = kept * mean[i] + (1 - kept) * now[i];
        }
    }
}
