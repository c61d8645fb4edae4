namespace Offcuts.Matching.Methods;

/// <summary>
/// Chooses what a node is split on by what splits have gained so far (<see cref="Pseudocosts"/>): how often a supply is used, or a <see cref="WideFamily"/>, or whether two demands go
/// together. Of those that promise most, what has not been seen often enough is tried first: both sides are solved over the patterns that are in. What it has learned from one list of
/// patterns holds for the next.
/// Source: reliability branching, Achterberg, Koch and Martin, 2005 (from memory).
/// </summary>
internal sealed class LearnedBranching(Tier tier)
{
    private const double Whole = 1e-4;
    private const int MostLookedAt = 8;
    private const int SeenEnough = 4;
    private const int Patience = 4;

    private readonly IReadOnlyList<(WideFamily Family, Split Split)> _wide = [.. WideFamily.Of(tier.Problem).Select(family => (family, Split.Of(family)))];
    private readonly int[] _byLength = [.. Enumerable.Range(0, tier.SupplyCount.Length).OrderBy(s => tier.Problem.Supplies[s].Length)];

    public Pseudocosts Costs { get; } = new();

    /// <summary>Two nodes that share out the plans of the node, or none where all that it looks at is whole; the one to be looked at first comes last.</summary>
    /// <param name="pool">All patterns.</param>
    /// <param name="node">The node.</param>
    /// <param name="solution">Its relaxation.</param>
    /// <param name="gain">By how much a child's relaxation lies above the node's, in units of the tier's cost; none where that is not found.</param>
    public IReadOnlyList<PoolNode>? Children(IReadOnlyList<Pattern> pool, PoolNode node, IReadOnlyList<(Pattern Pattern, double Times)> solution, Func<PoolNode, double?> gain)
    {
        var open = Counts(solution).Where(count => Math.Abs(count.Times - Math.Round(count.Times)) >= Whole)
            .OrderByDescending(count => Costs.Score(count.Split, count.Times)).Take(MostLookedAt).ToArray();
        ((Split Split, double Times)? best, var most, var without) = (null, double.NegativeInfinity, 0);
        foreach (var count in open)
        {
            var seen = Costs.Seen(count.Split) >= SeenEnough;
            if (!seen && without >= Patience) continue;
            var score = seen ? Costs.Score(count.Split, count.Times) : Tried(pool, node, count, gain);
            without = score > most || seen ? without : without + 1;
            if (score > most) (best, most) = (count, score);
        }

        if (best is not { } found) return null;
        var (below, above) = Sides(pool, node, found);
        return [below, above];
    }

    // How good it is by what both sides gain, which is learned too; where that is not found, as good as was learned before.
    private double Tried(IReadOnlyList<Pattern> pool, PoolNode node, (Split Split, double Times) count, Func<PoolNode, double?> gain)
    {
        var (below, above) = Sides(pool, node, count);
        if (gain(below) is not { } down || gain(above) is not { } up) return Costs.Score(count.Split, count.Times);
        Costs.Learn(below.Made!, down);
        Costs.Learn(above.Made!, up);
        return Pseudocosts.Score(down, up);
    }

    private (PoolNode Below, PoolNode Above) Sides(IReadOnlyList<Pattern> pool, PoolNode node, (Split Split, double Times) count)
    {
        var floor = (int)Math.Floor(count.Times);
        return (
            Child(pool, node, count.Split, 0, floor) with { Made = new Decision(count.Split, false, count.Times - floor, node.Bound) },
            Child(pool, node, count.Split, floor + 1, int.MaxValue) with { Made = new Decision(count.Split, true, floor + 1 - count.Times, node.Bound) });
    }

    // A supply's count has a row of its own already.
    private PoolNode Child(IReadOnlyList<Pattern> pool, PoolNode node, Split split, int least, int most) =>
        split.Supply >= 0 ? node.With(split.Supply, least, most) : node.With(tier, pool, split, least, most);

    private IEnumerable<(Split Split, double Times)> Counts(IReadOnlyList<(Pattern Pattern, double Times)> solution)
    {
        var uses = new double[tier.SupplyCount.Length];
        foreach (var (pattern, times) in solution) uses[pattern.Supply] += times;
        for (var s = 0; s < uses.Length; s++) yield return (Split.Of(s), uses[s]);
        foreach (var together in Branching.Together(tier, solution)) yield return together;
        var (shortest, at) = (0.0, 0);
        foreach (var (family, split) in _wide)
        {
            // From the shortest to the longest, each with all that are shorter.
            for (; family.Kind == WideKind.Shortest && at < uses.Length && tier.Problem.Supplies[_byLength[at]].Length <= family.Longest; at++) shortest += uses[_byLength[at]];
            yield return (split, family.Kind == WideKind.Shortest ? shortest : solution.Where(column => family.Holds(column.Pattern)).Sum(column => column.Times));
        }
    }
}
