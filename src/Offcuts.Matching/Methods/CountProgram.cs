namespace Offcuts.Matching.Methods;

/// <summary>
/// Exact dynamic programming for few kinds of cuts: the state is how many of each demand have been filled, the steps are the spans
/// one after the other.
/// <code>
/// f_0(0) = 0      f_s(min(n, v + a_p)) = min( f_(s-1)(v) + cost_p )   over the patterns p of span s, and over leaving it alone
/// </code>
/// Needs no bound and no luck where branch and bound has to fight many spans that are nearly alike.
/// Cost: product of (n_d + 1) states, times the patterns of every span. Gives up above <see cref="MostSteps"/>.
/// </summary>
internal static class CountProgram
{
    private const double MostSteps = 6e7;
    private const double MostChoices = 1e7;

    /// <summary>True where the pool is small enough.</summary>
    public static bool Fits(Tier tier, IReadOnlyList<Pattern> pool)
    {
        var states = States(tier);
        var uses = Uses(tier, pool);
        return states * uses.Sum(use => (double)use.Value * pool.Count(pattern => pattern.Supply == use.Key)) <= MostSteps
            && states * uses.Values.Sum() <= MostChoices;
    }

    /// <summary>How many states there are.</summary>
    public static double States(Tier tier) => Active(tier).Aggregate(1.0, (product, d) => product * (tier.DemandCount[d] + 1));

    /// <summary>The best plan made of the pool, or none where there is none.</summary>
    public static MaterialPlan? Best(Tier tier, IReadOnlyList<Pattern> pool, Effort effort)
    {
        var demands = Active(tier);
        var strides = new int[tier.DemandCount.Length];
        var states = 1;
        foreach (var d in demands)
        {
            strides[d] = states;
            states *= tier.DemandCount[d] + 1;
        }

        var bySupply = pool.Select((pattern, p) => (pattern, p)).ToLookup(at => at.pattern.Supply);
        var layers = new List<Layer>();
        var cost = new long[states];
        Array.Fill(cost, long.MaxValue);
        cost[0] = 0;
        foreach (var (supply, uses) in Uses(tier, pool).OrderBy(use => use.Key))
        {
            for (var use = 0; use < uses; use++)
            {
                if (effort.Over) return null;
                layers.Add(Step(tier, strides, [.. bySupply[supply]], ref cost));
            }
        }

        var end = End(tier, demands, strides, cost);
        if (end < 0) return null;

        // The least spend of the pool comes out first: where it is too much, no plan of the pool will do.
        var plan = IntegerMaster.Trimmed(tier, Chosen(pool, layers, end));
        return tier.Accepts(plan) ? plan : null;
    }

    // Spending comes first in the sum where a tier above has already found the least: a cent of it outweighs all that the tier can cost.
    private static long Cost(Tier tier, Pattern pattern) => tier.SpendCap is null
        ? tier.Cost(pattern)
        : pattern.Price * ((1L << 32) + tier.Problem.SawCost * (tier.Problem.Copies + 1)) + tier.Cost(pattern);

    private static int[] Active(Tier tier) => [.. Enumerable.Range(0, tier.DemandCount.Length).Where(d => tier.Active[d] && tier.DemandCount[d] > 0)];

    // No supply is used more often than there are cuts.
    private static Dictionary<int, int> Uses(Tier tier, IReadOnlyList<Pattern> pool)
    {
        var copies = Active(tier).Sum(d => tier.DemandCount[d]);
        return pool.Select(pattern => pattern.Supply).Distinct().ToDictionary(supply => supply, supply => Math.Min(copies, tier.SupplyCount[supply]));
    }

    // For each state the pattern by which it was reached, -1 for none, and the state before.
    private sealed record Layer(int[] Pattern, int[] From);

    private static Layer Step(Tier tier, int[] strides, (Pattern Pattern, int Number)[] patterns, ref long[] cost)
    {
        var next = (long[])cost.Clone();
        var layer = new Layer(new int[cost.Length], new int[cost.Length]);
        Array.Fill(layer.Pattern, -1);
        foreach (var (pattern, number) in patterns)
        {
            var own = Cost(tier, pattern);
            for (var state = 0; state < cost.Length; state++)
            {
                if (cost[state] == long.MaxValue) continue;
                var to = Reached(tier, strides, state, pattern);
                if (to < 0 || to == state || cost[state] + own >= next[to]) continue;
                next[to] = cost[state] + own;
                (layer.Pattern[to], layer.From[to]) = (number, state);
            }
        }

        cost = next;
        return layer;
    }

    // A pattern's cut beyond the need is not counted.
    private static int Reached(Tier tier, int[] strides, int state, Pattern pattern)
    {
        var to = state;
        foreach (var take in pattern.Takes)
        {
            var most = tier.DemandCount[take.Demand];
            var filled = state / strides[take.Demand] % (most + 1);
            if (filled + take.Count > most && !tier.Covering) return -1;
            to += (Math.Min(most, filled + take.Count) - filled) * strides[take.Demand];
        }

        return to;
    }

    private static int End(Tier tier, int[] demands, int[] strides, long[] cost)
    {
        var (best, end) = (long.MaxValue, -1);
        for (var state = 0; state < cost.Length; state++)
        {
            if (cost[state] == long.MaxValue) continue;
            var total = cost[state];
            var left = new Dictionary<int, int>();
            var allowed = true;
            foreach (var d in demands)
            {
                var wanting = tier.DemandCount[d] - state / strides[d] % (tier.DemandCount[d] + 1);
                if (wanting == 0) continue;
                allowed &= wanting <= tier.MostLeft[d];
                total += (long)tier.LeftCost[d] * wanting;
                var stage = tier.Problem.Demands[d].Stage;
                left[stage] = left.GetValueOrDefault(stage) + wanting;
            }

            if (!allowed || total >= best || tier.LeftCap.Any(cap => left.GetValueOrDefault(cap.Key) > cap.Value)) continue;
            (best, end) = (total, state);
        }

        return end;
    }

    private static IEnumerable<(Pattern Pattern, int Times)> Chosen(IReadOnlyList<Pattern> pool, List<Layer> layers, int end)
    {
        var state = end;
        for (var l = layers.Count - 1; l >= 0; l--)
        {
            if (layers[l].Pattern[state] < 0) continue;
            yield return (pool[layers[l].Pattern[state]], 1);
            state = layers[l].From[state];
        }
    }
}
