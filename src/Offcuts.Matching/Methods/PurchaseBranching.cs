namespace Offcuts.Matching.Methods;

/// <summary>
/// Branch and price on how many of each store length are bought. The relaxation buys parts of boards and mixes purchases that no plan
/// mixes; once the numbers are whole, its bound is mostly close.
/// <code>
/// each node     least_s &lt;= sum of x_p of store length s &lt;= most_s        branches   at most k; at least k + 1
/// </code>
/// Next is the number that is least clear. Each node keeps only the numbers of which some mixture has a sum between what is spent at least
/// and at most (<see cref="Purchases"/>). A node is closed by its bound, or over all patterns within its gap where those are few. What is
/// left where all numbers are whole (after spend is decided and few mixtures are left: settled) is proven as a tier of its own, once nothing
/// else is open.
/// Source: branching on the rows of the master, Barnhart and others, 1998 (from memory).
/// Cost: a column generation a node, from its parent's patterns on, and a dive where its numbers are whole and at every third depth. Gives up above some nodes.
/// </summary>
internal sealed class PurchaseBranching
{
    private const int MostNodes = 400;
    private const int FewPatterns = 4_000;
    private const int FewMixtures = 64;
    private const double Clear = 1e-6;

    // Dives take most of a node's time, and most find nothing; where all numbers are whole they mostly do.
    private const int DiveEach = 3;
    private static readonly PoolWork AtANode = new(30, 20_000, 300_000, 60);

    private readonly Tier _tier;
    private readonly Proof _proof;
    private readonly Effort _effort;
    private readonly int _few;

    private PurchaseBranching(Tier tier, Proof proof, Effort effort, int few) => (_tier, _proof, _effort, _few) = (tier, proof, effort, few);

    /// <summary>Proves a tier whose relaxation buys whole pieces only: the best plan known in the end, and a bound that no plan of it is below.</summary>
    public delegate (MaterialPlan Plan, long Bound) Proof(Tier tier, MaterialPlan best, long bound, Relaxation relaxation);

    // Whole: the relaxation, where it buys whole pieces only.
    private sealed record Node(Tier Tier, IReadOnlyList<Pattern> Patterns, long Bound, int Depth = 0, Relaxation? Whole = null);

    /// <summary>
    /// True where more than one length can be bought: of a single one the bound of the spend is rounded up to a whole number anyway. Once the spend is decided, what a node does first
    /// mostly ends the tier, whatever is bought.
    /// </summary>
    public static bool Applies(Tier tier) =>
        Enumerable.Range(0, tier.SupplyCount.Length).Count(s => tier.SupplyCount[s] > 0 && tier.Problem.Supplies[s].Price > 0) > (tier.Goal == Goal.Spend ? 1 : 0);

    /// <summary>True where how many of each length are bought is settled: there is nothing to branch on, and the first node is the whole tier.</summary>
    public static bool Settled(Tier tier) =>
        Enumerable.Range(0, tier.SupplyCount.Length).All(s => tier.Problem.Supplies[s].Price == 0 || tier.SupplyLeast[s] == tier.SupplyCount[s]);

    /// <summary>The best plan known in the end, and a bound that no plan is below.</summary>
    /// <param name="tier">The tier.</param>
    /// <param name="best">A plan that keeps its rows.</param>
    /// <param name="bound">No plan is below it.</param>
    /// <param name="relaxation">The relaxation without branches.</param>
    /// <param name="proof">For what is left to be proven.</param>
    /// <param name="effort">Limit.</param>
    /// <param name="few">So many patterns are few enough to decide over at a node.</param>
    /// <param name="told">Told of every better plan, with what bound there is then.</param>
    public static (MaterialPlan Plan, long Bound) Solve(
        Tier tier, MaterialPlan best, long bound, Relaxation relaxation, Proof proof, Effort effort, int few = FewPatterns, Action<MaterialPlan, long>? told = null)
    {
        var branching = new PurchaseBranching(tier, proof, effort, few);
        var search = new BestFirst<Node>(tier, node => (node.Whole is not null, node.Bound), branching.Explore, effort);
        return search.Run(new Node(tier, relaxation.Patterns, bound), best, bound, MostNodes, told);
    }

    private Explored<Node> Explore(Node node, MaterialPlan best) =>
        node.Whole is { } whole ? Proven(node, best, whole) : Divided(node, best);

    private Explored<Node> Proven(Node node, MaterialPlan best, Relaxation whole)
    {
        var (plan, bound) = _proof(node.Tier, best, node.Bound, whole);
        plan = plan.In(_tier.Problem);
        return new Explored<Node>(plan, [], bound < _tier.Value(plan) ? bound : long.MaxValue);
    }

    private Explored<Node> Divided(Node node, MaterialPlan best)
    {
        var value = _tier.Value(best);
        var mixtures = Mixtures(node, value);
        if (mixtures is { Mixtures: 0 }) return new Explored<Node>(null, []);
        var tier = mixtures is { } left ? node.Tier.Within(left.Least, left.Most) : node.Tier;
        if (tier.Impossible) return new Explored<Node>(null, []);
        var relaxation = ColumnGeneration.Solve(tier, best, node.Patterns, _effort);
        var bound = Math.Max(node.Bound, Bounds.RoundUp(_tier, relaxation.Bound));
        if (bound >= value) return new Explored<Node>(null, []);
        var (plan, closed) = PoolDecision.OverAll(tier, relaxation, value - 1, _few, AtANode, _effort);
        if (closed) return new Explored<Node>(plan, []);
        var settles = _tier.Goal != Goal.Spend && mixtures is { Mixtures: <= FewMixtures };
        var unclear = Unclear(tier, relaxation);
        if (unclear is null || node.Depth % DiveEach == 0) plan ??= Diving.Dive(tier, relaxation.Patterns, value - 1, 0, _effort);
        if ((unclear ?? (settles ? Unsettled(tier, relaxation) : null)) is { } branch)
            return new Explored<Node>(plan, [.. tier.SplitAt(branch.Supply, branch.Most).Select(part => new Node(part, relaxation.Patterns, bound, node.Depth + 1))]);
        return new Explored<Node>(plan, [new Node(tier, relaxation.Patterns, bound, node.Depth, relaxation)]);
    }

    // What may be bought by its sum alone; nothing is known of that before the tier of spend.
    private Purchases.Ranges? Mixtures(Node node, long value) => _tier.Goal == Goal.Spend
        ? Purchases.Of(node.Tier, node.Bound, value - 1)
        : _tier.SpendCap is { } cap ? Purchases.Of(node.Tier, _tier.SpendLeast, cap) : null;

    // A store length of which the relaxation buys a whole number, but plans may buy others.
    private static (int Supply, int Most)? Unsettled(Tier tier, Relaxation relaxation)
    {
        var bought = Bought(tier, relaxation);
        for (var s = 0; s < bought.Length; s++)
        {
            if (tier.Problem.Supplies[s].Price > 0 && tier.SupplyLeast[s] < tier.SupplyCount[s])
                return (s, Math.Clamp((int)Math.Round(bought[s]), tier.SupplyLeast[s], tier.SupplyCount[s] - 1));
        }

        return null;
    }

    private static double[] Bought(Tier tier, Relaxation relaxation)
    {
        var bought = new double[tier.SupplyCount.Length];
        foreach (var (pattern, times) in relaxation.Fractional) bought[pattern.Supply] += pattern.Price > 0 ? times : 0;
        return bought;
    }

    // The store length whose number is least clear, and that number rounded down; none where all are whole.
    private static (int Supply, int Most)? Unclear(Tier tier, Relaxation relaxation)
    {
        var uses = Bought(tier, relaxation);
        var apart = uses.Select((times, s) => tier.SupplyLeast[s] < tier.SupplyCount[s] ? Math.Abs(times - Math.Round(times)) : 0).ToArray();
        var supply = Array.IndexOf(apart, apart.Max());
        return apart[supply] > Clear ? (supply, (int)Math.Floor(uses[supply])) : null;
    }
}
