namespace Offcuts.Matching.Methods;

/// <summary>
/// Branch and price on what the relaxation of the last tier is not clear about: how often a supply is cut, then from which supply a cut comes of which there is one. Each node has a column generation of
/// its own, so that nothing has to be listed beforehand: where even at the bound of the whole tier there are too many patterns for any list, there are mostly few at a node some branches down.
/// <code>
/// each node     least_s &lt;= sum of x_p of supply s &lt;= most_s        branches   at most k; at least k + 1
///               no pattern of supply s takes demand d, for some pairs   branches   not d from s; d from nothing but s
/// </code>
/// Next is that which lies nearest to the middle. Best bound first; a node is closed by its bound, or over all patterns within its gap where those are few.
/// Where each branch changes next to nothing it goes on and on, so it is given few nodes, and what is open then says how far the bound has come.
/// Source: Barnhart and others, 1998; branching on single assignments, as in the generalised assignment problem, Savelsbergh, 1997 (both from memory).
/// Cost: a column generation and a list of patterns a node, two nodes at a time.
/// </summary>
internal sealed class BranchAndPrice
{
    private const int FewPatterns = 12_000;
    private const double Clear = 1e-6;

    // Dives take as long as all the rest of a node.
    private const int DiveEach = 4;
    private static readonly PoolWork AtANode = new(30, 20_000, 300_000, 30, 0.05);

    private readonly Tier _tier;
    private readonly Effort _effort;
    private readonly int _few;

    private BranchAndPrice(Tier tier, Effort effort, int few) => (_tier, _effort, _few) = (tier, effort, few);

    private sealed record Node(Tier Tier, IReadOnlyList<Pattern> Patterns, long Bound, int Depth = 0);

    /// <summary>The best plan known in the end, and a bound that no plan is below.</summary>
    /// <param name="tier">The tier: the last one, since only there cuts are filled exactly and every part of a pattern is listed beside it.</param>
    /// <param name="best">A plan that keeps its rows.</param>
    /// <param name="bound">No plan is below it.</param>
    /// <param name="relaxation">The relaxation without branches.</param>
    /// <param name="nodes">Most nodes.</param>
    /// <param name="effort">Limit.</param>
    /// <param name="few">So many patterns are few enough to decide over at a node.</param>
    public static (MaterialPlan Plan, long Bound) Solve(Tier tier, MaterialPlan best, long bound, Relaxation relaxation, int nodes, Effort effort, int few = FewPatterns)
    {
        var branching = new BranchAndPrice(tier, effort, few);
        var search = new BestFirst<Node>(tier, node => (false, node.Bound), branching.Explore, effort);
        return search.Run(new Node(tier, relaxation.Patterns, bound), best, bound, nodes);
    }

    private Explored<Node> Explore(Node node, MaterialPlan best)
    {
        var (tier, value) = (node.Tier, _tier.Value(best));
        if (tier.Impossible) return new Explored<Node>(null, []);
        var relaxation = ColumnGeneration.Solve(tier, best, node.Patterns.Where(pattern => Fits(tier, pattern)), _effort);
        var bound = Math.Max(node.Bound, Bounds.RoundUp(_tier, relaxation.Bound));
        if (bound >= value) return new Explored<Node>(null, []);
        var (plan, closed) = PoolDecision.OverAll(tier, relaxation, value - 1, _few, AtANode, _effort);
        if (closed) return new Explored<Node>(plan, []);
        var children = Children(tier, relaxation);
        if (node.Depth % DiveEach == 0 || children.Count == 0) plan ??= Diving.Dive(tier, relaxation.Patterns, value - 1, 0, _effort);
        return new Explored<Node>(plan, [.. children.Select(child => new Node(child, relaxation.Patterns, bound, node.Depth + 1))], children.Count == 0 ? bound : long.MaxValue);
    }

    private static bool Fits(Tier tier, Pattern pattern) => pattern.Takes.All(take => tier.Problem.Fits(pattern.Supply, take.Demand));

    /// <summary>The tier in two, of which every plan is in one; none where the relaxation is clear about everything that can be branched on.</summary>
    internal static IReadOnlyList<Tier> Children(Tier tier, Relaxation relaxation)
    {
        var uses = new double[tier.SupplyCount.Length];
        var pairs = new Dictionary<(int Supply, int Demand), double>();
        foreach (var (pattern, times) in relaxation.Fractional)
        {
            uses[pattern.Supply] += times;
            foreach (var take in pattern.Takes.Where(take => tier.DemandCount[take.Demand] == 1))
            {
                var pair = (pattern.Supply, take.Demand);
                pairs[pair] = pairs.GetValueOrDefault(pair) + times;
            }
        }

        var open = Enumerable.Range(0, uses.Length).Where(s => tier.SupplyLeast[s] < tier.SupplyCount[s] && Apart(uses[s]) > Clear).ToArray();
        if (open.Length > 0)
        {
            var supply = open.MaxBy(s => Apart(uses[s]));
            return [.. tier.SplitAt(supply, Math.Clamp((int)Math.Floor(uses[supply]), tier.SupplyLeast[supply], tier.SupplyCount[supply] - 1))];
        }

        var unclear = pairs.Where(pair => Apart(pair.Value) > Clear).ToArray();
        if (unclear.Length == 0) return [];
        var (from, demand) = unclear.MaxBy(pair => Apart(pair.Value)).Key;
        return [tier.Without((s, d) => d == demand && s == from), tier.Without((s, d) => d == demand && s != from)];
    }

    private static double Apart(double times) => Math.Abs(times - Math.Round(times));
}
