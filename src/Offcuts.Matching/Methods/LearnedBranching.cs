namespace Offcuts.Matching.Methods;

/// <summary>
/// Chooses what a node is split on by what splits have gained so far (<see cref="Pseudocosts"/>): how often a supply is used, or a <see cref="WideFamily"/>, or whether two demands go
/// together. What it has learned from one list of patterns holds for the next.
/// </summary>
internal sealed class LearnedBranching(Tier tier)
{
    private const double Whole = 1e-4;

    private readonly IReadOnlyList<WideFamily> _wide = WideFamily.Of(tier.Problem);

    public Pseudocosts Costs { get; } = new();

    /// <summary>Two nodes that share out the plans of the node, or none where all that it looks at is whole; the one to be looked at first comes last.</summary>
    public IReadOnlyList<PoolNode>? Children(IReadOnlyList<Pattern> pool, PoolNode node, IReadOnlyList<(Pattern Pattern, double Times)> solution)
    {
        (Split Split, double Times)? best = null;
        var most = 0.0;
        foreach (var (split, times) in Counts(solution))
        {
            if (Math.Abs(times - Math.Round(times)) < Whole || Costs.Score(split, times) is var score && score <= most) continue;
            (best, most) = ((split, times), score);
        }

        if (best is not { } found) return null;
        var floor = (int)Math.Floor(found.Times);
        return
        [
            Child(pool, node, found.Split, 0, floor) with { Made = new Decision(found.Split, false, found.Times - floor, node.Bound) },
            Child(pool, node, found.Split, floor + 1, int.MaxValue) with { Made = new Decision(found.Split, true, floor + 1 - found.Times, node.Bound) },
        ];
    }

    // A supply's count has a row of its own already.
    private PoolNode Child(IReadOnlyList<Pattern> pool, PoolNode node, Split split, int least, int most) =>
        split.Supply >= 0 ? node.With(split.Supply, least, most) : node.With(tier, pool, split, least, most);

    private IEnumerable<(Split Split, double Times)> Counts(IReadOnlyList<(Pattern Pattern, double Times)> solution)
    {
        var uses = new double[tier.SupplyCount.Length];
        foreach (var (pattern, times) in solution) uses[pattern.Supply] += times;
        for (var s = 0; s < uses.Length; s++) yield return (Split.Of(s), uses[s]);
        foreach (var (pair, times) in Branching.Together(tier, solution)) yield return (pair, times);
        foreach (var wide in _wide) yield return (Split.Of(wide), solution.Where(column => wide.Holds(column.Pattern)).Sum(column => column.Times));
    }
}
