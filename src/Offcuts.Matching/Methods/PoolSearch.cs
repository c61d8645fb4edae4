namespace Offcuts.Matching.Methods;

/// <summary>
/// The integer master over a pool that is known to hold every pattern of every plan up to a given cost: branch and bound, with
/// <see cref="RankOneCut"/>s at the root, and with patterns dropped wherever the bound of a node rules them out (reduced-cost fixing).
/// Branches on how often a supply is used, those that cost money first, then on <see cref="Split"/>s, or as <see cref="LearnedBranching"/> says. All bounds are computed in
/// whole numbers over the whole pool. The newest node first, with cuts, soon finds or rules out one level; the node with the least bound first raises the bound of all that is open
/// (with cuts at the root alone: elsewhere more nodes gain as much in the same time). Gives up above a number of nodes, says so, and can go on from there.
/// </summary>
internal sealed class PoolSearch
{
    /// <summary>With the least bound first, open nodes hold no more numbers of patterns than this together: about 50 MB.</summary>
    public const long MostHeld = 12_000_000;

    private const int MostEntering = 60;
    private const int MostRaises = 6;
    private const int MostStalls = 3;
    private const int MostCutRounds = 60;
    private const int CutRoundsOfRoot = 3;

    private readonly Tier _tier;
    private readonly IReadOnlyList<Pattern> _pool;
    private readonly HashSet<string> _seen = [];
    private readonly PriorityQueue<PoolNode, (long Bound, int Number)> _open = new();
    private readonly NodeOrder _order;
    private readonly long _mostHeld;
    private readonly LearnedBranching? _learned;
    private PoolMaster _master;

    // Of the patterns of the node being solved, used again from one to the next, since those of long lists are large: reduced costs, those worth letting in, those that are kept.
    private readonly long[] _reduced;
    private readonly List<(long Cost, int Index)> _worthwhile = [];
    private readonly int[] _kept;

    private Effort _effort;
    private int _made;
    private int _cutRounds;
    private long _held;

    // Equal plans are of use too, so that one that is found rules nothing out.
    private bool _wantsAll;

    // The least bound of the nodes that a solver could not settle.
    private long _aside = long.MaxValue;

    /// <summary>A search.</summary>
    /// <param name="tier">Rows and costs.</param>
    /// <param name="pool">All patterns of all plans that cost at most <paramref name="most"/>.</param>
    /// <param name="most">Only plans of at most this cost are looked for.</param>
    /// <param name="nodes">Most nodes.</param>
    /// <param name="effort">Limit.</param>
    /// <param name="order">Which node is next.</param>
    /// <param name="cuts">Cuts of the tier that are known from another list.</param>
    /// <param name="mostHeld">How many numbers of patterns the open nodes may hold together, where the least bound comes first.</param>
    /// <param name="begun">Patterns that the first relaxation begins with, as far as they are of the pool; any others come in when they are worth it.</param>
    /// <param name="learned">Chooses what nodes are split on, and learns from it; none where that goes by how undecided things are.</param>
    public PoolSearch(
        Tier tier, IReadOnlyList<Pattern> pool, long most, int nodes, Effort effort, NodeOrder order = NodeOrder.NewestFirst, IReadOnlyList<RankOneCut>? cuts = null, long mostHeld = MostHeld,
        LearnedBranching? learned = null, IEnumerable<Pattern>? begun = null)
    {
        (_tier, _pool, Most, NodesLeft, _effort, _order, _mostHeld, _learned) = (tier, pool, most, nodes, effort, order, mostHeld, learned);
        (_master, _reduced, _kept) = (new PoolMaster(tier, pool), new long[pool.Count], new int[pool.Count]);
        if (begun is not null)
        {
            HashSet<Pattern> first = [.. begun];
            for (var p = 0; p < pool.Count; p++)
            {
                if (first.Contains(pool[p])) _master.Add(p);
            }
        }

        foreach (var cut in cuts ?? [])
        {
            _master.Add(cut);
            _seen.Add(cut.Key);
        }
    }

    /// <summary>The cuts that something has leaned on lately: they hold for any other list of the tier too.</summary>
    public IReadOnlyList<RankOneCut> Cuts => _master.LeantOn;

    /// <summary>The patterns that were of use somewhere.</summary>
    public IReadOnlyList<Pattern> Met => _master.Met;

    /// <summary>The best plan found, or none.</summary>
    public MaterialPlan? Best { get; private set; }

    /// <summary>The patterns left at the root: all that a plan of at most <see cref="Most"/> can have.</summary>
    public IReadOnlyList<Pattern> RootPatterns { get; private set; } = [];

    /// <summary>Only plans of at most this cost are still looked for.</summary>
    public long Most { get; private set; }

    /// <summary>
    /// No plan of the pool that costs at most <see cref="Most"/> is below it, in multiples of 1/<see cref="Tier.Scale"/>; beyond any where nothing is open.
    /// </summary>
    public long Bound => _open.UnorderedItems.Select(open => open.Element.Bound).Append(_aside).Min();

    /// <summary>Nodes that it may still look at.</summary>
    public int NodesLeft { get; private set; }

    /// <summary>
    /// Of a pool, what plans of at most this cost can have, all of them, as far as a root with its cuts tells: for whoever chooses among equal plans.
    /// </summary>
    /// <param name="tier">Rows and costs.</param>
    /// <param name="pool">All patterns of all plans that cost at most <paramref name="most"/>.</param>
    /// <param name="most">The most that a plan may cost.</param>
    /// <param name="bound">No plan is below it, in multiples of 1/<see cref="Tier.Scale"/>.</param>
    /// <param name="effort">Limit.</param>
    public static IReadOnlyList<Pattern> Possible(Tier tier, IReadOnlyList<Pattern> pool, long most, long bound, Effort effort)
    {
        var search = new PoolSearch(tier, pool, most, 1, effort) { _wantsAll = true };
        search.Run(bound);
        return search.RootPatterns;
    }

    /// <summary>True where the search came to its end: no plan of the pool is better than <see cref="Best"/>, or none costs so little.</summary>
    public bool Run(long bound)
    {
        RootPatterns = _pool;
        Open(PoolNode.Root(_tier, _pool.Count, bound));
        return Ended();
    }

    /// <summary>Goes on where <see cref="Run"/> ended for want of nodes, for so many more; true where it came to its end now.</summary>
    public bool GoOn(int nodes, Effort effort)
    {
        (NodesLeft, _effort) = (nodes, effort);
        return Ended();
    }

    /// <summary>Only better plans than this one are of use from now on.</summary>
    public void Hear(MaterialPlan plan)
    {
        if (Best is null || _tier.Value(plan) < _tier.Value(Best)) Best = plan;
        Most = Math.Min(Most, _tier.Value(plan) - 1);
    }

    private bool Ended()
    {
        while (_open.TryPeek(out var node, out _))
        {
            if (Bounds.RoundUp(_tier, node.Bound) <= Most)
            {
                if (NodesLeft == 0 || TooMuchHeld || NoneEnds || _effort.Over) return false;
                NodesLeft--;
                Divide(Taken());
            }
            else Taken();
        }

        return _aside == long.MaxValue;
    }

    // With the newest first one level is to be ruled out, and a node that is not settled leaves it open whatever comes of the others.
    private bool NoneEnds => _order == NodeOrder.NewestFirst && _aside < long.MaxValue;

    // Each node holds the numbers of its patterns. With the newest first few are open at once; with the least first thousands of a long list can be.
    private bool TooMuchHeld => _order == NodeOrder.LeastBoundFirst && _held > _mostHeld;

    private void Open(PoolNode node)
    {
        _held += node.Patterns.Length;
        _open.Enqueue(node, (_order == NodeOrder.LeastBoundFirst ? node.Bound : 0, -_made++));
    }

    private PoolNode Taken()
    {
        var node = _open.Dequeue();
        _held -= node.Patterns.Length;
        return node;
    }

    private void Divide(PoolNode node)
    {
        var result = Solve(node);
        Learn(node, result);
        if (result is not { } solved) return;
        if (solved.Solution is not { } solution)
        {
            if (_effort.Over) Open(solved.Node);
            else _aside = Math.Min(_aside, solved.Node.Bound);
            return;
        }

        if (node.Depth == 0) RootPatterns = [.. solved.Node.Patterns.Select(p => _pool[p])];
        var basis = _master.Basis();
        var children = _learned?.Children(_pool, solved.Node, solution, Gain(solved.Node, basis)) ?? Branching.Children(_tier, _pool, solved.Node with { Made = null }, solution);
        foreach (var child in children) Open(child with { Basis = basis });
    }

    // How far a child's relaxation over the patterns that are in lies above its parent's, in units of the tier's cost; no further than what is of use.
    private Func<PoolNode, double?> Gain(PoolNode parent, NodeBasis basis)
    {
        var (from, most) = (_master.Objective, Math.Max(0, Most + 1 - (double)parent.Bound / _tier.Scale));
        return child => _effort.Over || _master.Tried(child with { Basis = basis }, _effort) is not { } cost ? null : Math.Clamp(cost - from, 0, most);
    }

    // A node that was given up says nothing; one that holds nothing of use is raised beyond what is.
    private void Learn(PoolNode node, Solved? result)
    {
        if (_learned is null || node.Made is not { } made || result is { Solution: null }) return;
        var bound = result?.Node.Bound ?? Math.Max(node.Bound, (Most + 1) * _tier.Scale);
        _learned.Costs.Learn(made, (double)(bound - made.Bound) / _tier.Scale);
    }

    private sealed record Solved(PoolNode Node, IReadOnlyList<(Pattern Pattern, double Times)>? Solution);

    // None where the node holds nothing better; a fractional solution where it has to be split; no solution where the solver failed.
    private Solved? Solve(PoolNode node)
    {
        _master = _master.Renewed(out var dropped);
        foreach (var cut in dropped) _seen.Remove(cut.Key);
        _master.Enter(node);
        var stalls = 0;
        var raised = 0;
        while (!_effort.Over)
        {
            if (_master.Solve(_effort) is not { } duals) return new Solved(node, null);
            var cuts = _master.Cuts();
            var scan = Scan(node, duals, cuts, _master.SplitDuals(node));
            var before = node.Bound;
            node = Fixed(node with { Bound = Math.Max(node.Bound, scan.Bound) }, scan);
            if (Bounds.RoundUp(_tier, node.Bound) > MostOf(node)) return null;
            if (scan.Entering.Count > 0 && scan.Entering.Count(_master.Add) > 0) continue;
            if (_master.Unmet() > 1e-6)
            {
                if (++raised > MostRaises) return new Solved(node, null);
                _master.Raise();
                continue;
            }

            var solution = _master.Solution;
            if (Whole(solution) is { } plan)
            {
                if (_wantsAll) return new Solved(node, solution);
                Hear(plan);
                if (Bounds.RoundUp(_tier, node.Bound) > Most) return null;
                return new Solved(node, solution);
            }

            if (_cutRounds > CutRoundsAt(node)) return new Solved(node, solution);
            stalls = node.Bound - before < _tier.Scale / 100 ? stalls + 1 : 0;
            var violated = stalls > MostStalls ? [] : CutSeparation.Violated(_tier, solution, _master.Unfilled(), _seen);
            if (violated.Count == 0) return new Solved(node, solution);
            _cutRounds++;
            foreach (var cut in violated) _master.Add(cut);
        }

        return new Solved(node, null);
    }

    private int CutRoundsAt(PoolNode node) => _order == NodeOrder.NewestFirst ? MostCutRounds : node.Depth == 0 ? CutRoundsOfRoot - 1 : -1;

    // What a plan of this node can cost at most, and still be of use.
    private long MostOf(PoolNode node)
    {
        if (_tier.Goal != Goal.Spend) return Most;
        long most = 0;
        for (var s = 0; s < node.Most.Length; s++) most += node.Most[s] * _tier.Problem.Supplies[s].Price;
        return Math.Min(Most, most);
    }

    private MaterialPlan? Whole(IReadOnlyList<(Pattern Pattern, double Times)> solution)
    {
        if (solution.Any(column => Math.Abs(column.Times - Math.Round(column.Times)) > 1e-5)) return null;
        // A solver's figures are believed in nothing: neither that a span is cut once.
        (Pattern Pattern, int Times)[] uses = [.. solution.Select(column => (column.Pattern, (int)Math.Round(column.Times)))];
        if (uses.GroupBy(use => use.Pattern.Supply).Any(own => own.Sum(use => use.Times) > _tier.SupplyCount[own.Key])) return null;
        var plan = IntegerMaster.Trimmed(_tier, uses);
        return _tier.Accepts(plan) && _tier.Value(plan) <= Most ? plan : null;
    }

    private sealed record Scanned(long Bound, long[] Least, List<int> Entering);

    // Exact reduced costs of the node's patterns, and the Lagrangian bound that follows.
    private Scanned Scan(PoolNode node, Duals duals, (RankOneCut Cut, long Dual)[] cuts, long[] splits)
    {
        var reduced = _reduced.AsSpan(0, node.Patterns.Length);
        var least = new long[_tier.SupplyCount.Length];
        Array.Fill(least, long.MaxValue);
        var prices = new CutPrices(_tier, cuts);
        for (var i = 0; i < reduced.Length; i++)
        {
            var pattern = _pool[node.Patterns[i]];
            var cost = PricingKnapsack.ReducedCost(_tier, pattern, duals) - prices.Of(pattern);
            for (var k = 0; k < splits.Length; k++)
            {
                if (splits[k] != 0 && node.Splits[k].Split.Holds(pattern)) cost -= splits[k];
            }

            reduced[i] = cost;
            least[pattern.Supply] = Math.Min(least[pattern.Supply], cost);
        }

        var supply = _master.SupplyDuals();
        _worthwhile.Clear();
        for (var i = 0; i < reduced.Length; i++)
        {
            var cost = reduced[i] - supply[_pool[node.Patterns[i]].Supply];
            if (cost < -_tier.Scale / 100_000) _worthwhile.Add((cost, i));
        }

        _worthwhile.Sort();
        var entering = _worthwhile.Take(MostEntering).Select(one => node.Patterns[one.Index]).ToList();
        return new Scanned(Bounds.Lagrangian(_tier, duals, node, least, cuts, splits), least, entering);
    }

    // Drops what no plan of this node that is still of use can contain.
    private PoolNode Fixed(PoolNode node, Scanned scan)
    {
        var gap = (Int128)MostOf(node) * _tier.Scale - scan.Bound;
        if (gap < 0) return node;
        var kept = 0;
        for (var i = 0; i < node.Patterns.Length; i++)
        {
            var supply = _pool[node.Patterns[i]].Supply;
            var counted = node.Least[supply] > 0 || scan.Least[supply] < 0 ? scan.Least[supply] : 0;
            if ((Int128)_reduced[i] - counted <= gap) _kept[kept++] = node.Patterns[i];
        }

        return kept == node.Patterns.Length ? node : node with { Patterns = _kept[..kept] };
    }
}
