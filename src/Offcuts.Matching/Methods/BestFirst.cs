namespace Offcuts.Matching.Methods;

/// <summary>What looking at a node gave.</summary>
/// <param name="Plan">A better plan, if one was met.</param>
/// <param name="Open">The nodes that it is divided into; none where it is closed.</param>
/// <param name="Undecided">Its bound, where it can be neither closed nor divided; else far beyond any.</param>
internal sealed record Explored<TNode>(MaterialPlan? Plan, IReadOnlyList<TNode> Open, long Undecided = long.MaxValue);

/// <summary>
/// Branch and bound, best bound first. Nodes are looked at side by side, always so many, so that what is found does not depend on the machine.
/// </summary>
/// <param name="tier">The tier.</param>
/// <param name="place">When a node's turn comes, and a bound that no plan of it is below: the early ones first, of these the lowest bound.</param>
/// <param name="explore">Looks at a node; the best plan known is given. Called from two threads.</param>
/// <param name="effort">Limit.</param>
internal sealed class BestFirst<TNode>(
    Tier tier, Func<TNode, (bool Late, long Bound)> place, Func<TNode, MaterialPlan, Explored<TNode>> explore, Effort effort)
    where TNode : class
{
    private const int SideBySide = 2;

    private readonly PriorityQueue<TNode, (bool Late, long Bound, int Number)> _open = new();
    private int _made;

    /// <summary>The best plan known in the end, and a bound that no plan is below.</summary>
    /// <param name="root">The node that holds all plans.</param>
    /// <param name="best">A plan that keeps the rows of the tier.</param>
    /// <param name="bound">No plan is below it.</param>
    /// <param name="mostNodes">Where so many did not settle it, what is then open says how far the bound has come.</param>
    /// <param name="told">Told of every better plan, with what bound there is then.</param>
    public (MaterialPlan Plan, long Bound) Run(TNode root, MaterialPlan best, long bound, int mostNodes, Action<MaterialPlan, long>? told = null)
    {
        // Kept once it is known; asked for here, since nodes are looked at side by side.
        _ = tier.Drop;
        Open(root);
        var undecided = long.MaxValue;
        for (var nodes = 0; nodes < mostNodes && !effort.Over; nodes += SideBySide)
        {
            var now = Next(tier.Value(best));
            if (now.Count == 0) break;
            var (explored, known) = (new Explored<TNode>[now.Count], best);
            Parallel.For(0, now.Count, new ParallelOptions { MaxDegreeOfParallelism = SideBySide }, i => explored[i] = explore(now[i], known));
            foreach (var of in explored)
            {
                if (of.Plan?.In(tier.Problem) is { } plan && tier.Value(plan) < tier.Value(best)) best = plan;
                undecided = Math.Min(undecided, of.Undecided);
            }

            foreach (var node in explored.SelectMany(of => of.Open)) Open(node);
            if (tier.Value(best) < tier.Value(known)) told?.Invoke(best, Bound());
        }

        return (best, Bound());

        long Bound() => Math.Max(bound, Math.Min(tier.Value(best), Math.Min(undecided, _open.UnorderedItems.Select(open => open.Priority.Bound).DefaultIfEmpty(long.MaxValue).Min())));
    }

    private void Open(TNode node)
    {
        var (late, bound) = place(node);
        _open.Enqueue(node, (late, bound, -_made++));
    }

    private List<TNode> Next(long value)
    {
        var now = new List<TNode>();
        while (now.Count < SideBySide && _open.TryDequeue(out var node, out var at))
        {
            if (at.Bound < value) now.Add(node);
        }

        return now;
    }
}
