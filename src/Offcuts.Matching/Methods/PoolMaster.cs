namespace Offcuts.Matching.Methods;

/// <summary>
/// The relaxation over part of a known pool of patterns, with cuts and with what branching asks for. Kept alive from node to node,
/// so that each linear program starts from the last one's basis. Every row may go unmet at a high cost, so that there always is a
/// solution and always are duals; whether a node is ruled out is decided by the exact bound alone.
/// </summary>
internal sealed class PoolMaster
{
    private const int MostIdle = 12;
    private const int WorthRenewing = 40;
    private const int FewSteps = 500;

    private readonly Tier _tier;
    private readonly IReadOnlyList<Pattern> _pool;
    private readonly BoundedSimplex _program = new();
    private readonly int[] _demand;
    private readonly int[] _supply;
    private readonly Dictionary<int, int> _left = [];
    private readonly int? _spend;
    private readonly int? _rips;
    private readonly List<int> _artificial = [];
    private readonly List<(int Demand, int Column)> _unfilled = [];
    private readonly List<(int Pattern, int Column)> _columns = [];
    private readonly int[] _column;
    private readonly bool[] _allowed;
    private readonly List<Held> _cuts = [];
    private readonly Dictionary<Split, int> _splits = [];
    private readonly Dictionary<int, (int Below, int Above)> _unmetOf = [];
    private readonly object _mark = new();
    private NodeBasis? _last;
    private double _dear;

    public PoolMaster(Tier tier, IReadOnlyList<Pattern> pool)
        : this(tier, pool, Diving.Dear(tier))
    {
    }

    private PoolMaster(Tier tier, IReadOnlyList<Pattern> pool, double dear)
    {
        (_tier, _pool, _dear) = (tier, pool, dear);
        (_column, _allowed) = (new int[pool.Count], new bool[pool.Count]);
        Array.Fill(_column, -1);
        _demand = [.. tier.DemandCount.Select((count, d) => tier.Active[d] ? Row(count, tier.Covering ? double.PositiveInfinity : count) : -1)];
        _supply = [.. tier.SupplyCount.Select(count => Row(double.NegativeInfinity, count))];
        foreach (var (stage, cap) in tier.LeftCap) _left[stage] = Row(double.NegativeInfinity, cap);
        if (tier.SpendCap is { } spend) _spend = Row(double.NegativeInfinity, spend);
        if (tier.RipCap is { } rips) _rips = Row(double.NegativeInfinity, rips);
        for (var d = 0; d < _demand.Length; d++)
        {
            var row = _demand[d];
            if (row < 0) continue;
            Unmet((row, 1));
            if (tier.MostLeft[d] == 0) continue;
            var left = _program.AddColumn(tier.LeftCost[d], _left.TryGetValue(tier.Problem.Demands[d].Stage, out var cap) ? [(row, 1), (cap, 1)] : [(row, 1)]);
            _program.AddRow(double.NegativeInfinity, tier.MostLeft[d], [(left, 1)]);
            _unfilled.Add((d, left));
        }

        foreach (var row in _supply) Unmet((row, 1));
    }

    /// <summary>Patterns in use and how often, after <see cref="Solve"/>.</summary>
    public IReadOnlyList<(Pattern Pattern, double Times)> Solution =>
        [.. _columns.Select(column => (_pool[column.Pattern], _program.Value(column.Column))).Where(column => column.Item2 > 1e-7)];

    /// <summary>Patterns that are in: those that were worth it at some node.</summary>
    public IReadOnlyList<Pattern> Met => [.. _columns.Select(column => _pool[column.Pattern])];

    /// <summary>What the solution costs, after <see cref="Solve"/>.</summary>
    public double Objective => _program.Objective;

    /// <summary>How much of the rows goes unmet.</summary>
    public double Unmet() => _artificial.Sum(_program.Value);

    /// <summary>Copies of each demand left unfilled.</summary>
    public double[] Unfilled()
    {
        var unfilled = new double[_demand.Length];
        foreach (var (demand, column) in _unfilled) unfilled[demand] += _program.Value(column);
        return unfilled;
    }

    /// <summary>Duals of the cuts: whole multiples of 1/Scale, not negative.</summary>
    public (RankOneCut Cut, long Dual)[] Cuts() => [.. _cuts.Select(held => (held.Cut, Dual(held))).Where(cut => cut.Item2 > 0)];

    /// <summary>The cuts that something has leaned on lately.</summary>
    public IReadOnlyList<RankOneCut> LeantOn => [.. _cuts.Where(held => held.Idle <= MostIdle).Select(held => held.Cut)];

    private long Dual(Held held) => Math.Max(0, OfMany(held.Row, _tier.Problem.MostTakes + 1));

    /// <summary>
    /// The same columns, with those cuts only that something has leaned on lately; or this one as it is where few cuts would go. A node asks for new cuts, and
    /// with hundreds of rows that nothing leans on any more a solution took three times as long.
    /// </summary>
    /// <param name="dropped">The cuts that are gone.</param>
    public PoolMaster Renewed(out IReadOnlyList<RankOneCut> dropped)
    {
        dropped = [.. _cuts.Select(held => held.Cut).Except(LeantOn)];
        if (dropped.Count < WorthRenewing)
        {
            dropped = [];
            return this;
        }

        var renewed = new PoolMaster(_tier, _pool, _dear);
        foreach (var (pattern, _) in _columns) renewed.Add(pattern);
        foreach (var cut in LeantOn) renewed.Add(cut);
        return renewed;
    }

    /// <summary>Duals of the splits of a node: not negative where there is no upper end, not positive where there is no lower.</summary>
    public long[] SplitDuals(PoolNode node) => [.. node.Splits.Select(split => Math.Clamp(
        OfMany(_splits[split.Split], 1),
        split.Most == int.MaxValue ? 0 : long.MinValue,
        split.Least == 0 ? 0 : long.MaxValue))];

    // A pattern may be in all these rows at once.
    private long OfMany(int row, long coefficient) => Duals.Whole(_tier, _program.Dual(row), coefficient * (_cuts.Count + _splits.Count));

    /// <summary>Makes going unmet dearer.</summary>
    public void Raise()
    {
        _dear *= 8;
        foreach (var column in _artificial) _program.SetCost(column, _dear);
    }

    /// <summary>Lets a pattern in; false where it is in already.</summary>
    public bool Add(int pattern)
    {
        if (_column[pattern] >= 0) return false;
        var entering = _pool[pattern];
        var entries = new List<(int Row, double Coefficient)>();
        foreach (var take in entering.Takes) entries.Add((_demand[take.Demand], take.Count));
        entries.Add((_supply[entering.Supply], 1));
        if (entering.Price > 0 && _spend is { } spend) entries.Add((spend, entering.Price));
        if (entering.Rips > 0 && _rips is { } rips) entries.Add((rips, entering.Rips));
        foreach (var held in _cuts)
        {
            if (held.Cut.Of(entering) is not 0 and var coefficient) entries.Add((held.Row, coefficient));
        }

        foreach (var (split, row) in _splits)
        {
            if (split.Holds(entering)) entries.Add((row, 1));
        }

        _column[pattern] = _program.AddColumn(_tier.Cost(entering), [.. entries]);
        _columns.Add((pattern, _column[pattern]));
        return true;
    }

    /// <summary>Adds a cut over everything that is in.</summary>
    public void Add(RankOneCut cut)
    {
        var row = Row(cut.Least, double.PositiveInfinity,
            [.. _columns.Select(column => (column.Column, (double)cut.Of(_pool[column.Pattern]))).Concat(_unfilled.Select(left => (left.Column, (double)cut.OfLeft(left.Demand)))).Where(entry => entry.Item2 != 0)]);
        Unmet((row, 1));
        _cuts.Add(new Held(cut, row));
    }

    /// <summary>Sets the rows and columns to those of a node.</summary>
    public void Enter(PoolNode node)
    {
        for (var s = 0; s < _supply.Length; s++) _program.SetRow(_supply[s], node.Least[s] == 0 ? double.NegativeInfinity : node.Least[s], node.Most[s]);
        var replaced = Rows(node);
        Array.Clear(_allowed);
        foreach (var pattern in node.Patterns) _allowed[pattern] = true;
        foreach (var (pattern, column) in _columns) _program.SetOpen(column, _allowed[pattern]);
        if (node.Basis is not { } basis || basis.Of != _mark || (basis == _last && !replaced)) return;
        _program.Restore(basis.Columns, basis.Rows.Concat(basis.Splits.Where(_splits.ContainsKey).Select(split => _splits[split])));
    }

    // Rows for the splits of a node: those of splits that it does not have serve those that have none.
    private bool Rows(PoolNode node)
    {
        var spare = new Queue<Split>(_splits.Keys.Except(node.Splits.Select(split => split.Split)).ToArray());
        var replaced = false;
        foreach (var (split, least, most) in node.Splits)
        {
            var end = most == int.MaxValue ? double.PositiveInfinity : most;
            if (_splits.TryGetValue(split, out var row))
            {
                _program.SetRow(row, least, end);
                continue;
            }

            var entries = _columns.Where(column => split.Holds(_pool[column.Pattern])).Select(column => (column.Column, 1.0));
            if (spare.TryDequeue(out var old))
            {
                _splits.Remove(old, out row);
                var (below, above) = _unmetOf[row];
                _program.ReplaceRow(row, least, end, [.. entries, (below, 1), (above, -1)]);
                replaced = true;
            }
            else
            {
                row = Row(least, end, [.. entries]);
                _unmetOf[row] = (Unmet((row, 1)), Unmet((row, -1)));
            }

            _splits[split] = row;
        }

        foreach (var split in spare) _program.SetRow(_splits[split], double.NegativeInfinity, double.PositiveInfinity);
        return replaced;
    }

    /// <summary>Where the last solution ended, for a node that comes from it.</summary>
    public NodeBasis Basis()
    {
        var (columns, rows) = _program.Basis();
        var splits = _splits.Where(split => rows.Contains(split.Value)).Select(split => split.Key).ToArray();
        return _last = new NodeBasis(_mark, columns, [.. rows.Except(_splits.Values)], splits);
    }

    /// <summary>Solves; none where the solver does not get there, or where it is time to end.</summary>
    public Duals? Solve(Effort effort)
    {
        _last = null;
        if (!_program.Solve(new StepLimit(BoundedSimplex.MostSteps, () => effort.Over))) return null;
        foreach (var held in _cuts) held.Idle = Dual(held) > 0 ? 0 : held.Idle + 1;
        return new Duals(
            _tier,
            [.. _demand.Select(row => row >= 0 ? _program.Dual(row) : 0)],
            [.. _supply.Select(row => Math.Min(0, _program.Dual(row)))],
            _left.ToDictionary(pair => pair.Key, pair => _program.Dual(pair.Value)),
            _spend is { } spend ? _program.Dual(spend) : 0,
            _rips is { } rips ? _program.Dual(rips) : 0);
    }

    /// <summary>What a node's relaxation over the patterns that are in costs, where that is found in few steps.</summary>
    public double? Tried(PoolNode node, Effort effort)
    {
        Enter(node);
        _last = null;
        return _program.Solve(new StepLimit(FewSteps, () => effort.Over)) ? _program.Objective : null;
    }

    /// <summary>The supplies' duals of either sign, to tell which patterns are worth letting in.</summary>
    public long[] SupplyDuals() => [.. _supply.Select(row => Duals.Whole(_tier, _program.Dual(row), 1))];

    private int Row(double least, double most, params (int Column, double Coefficient)[] entries) => _program.AddRow(least, most, entries);

    private int Unmet((int Row, double Coefficient) of)
    {
        _artificial.Add(_program.AddColumn(_dear, [of]));
        return _artificial[^1];
    }

    private sealed class Held(RankOneCut cut, int row)
    {
        public RankOneCut Cut { get; } = cut;

        public int Row { get; } = row;

        // Solutions since something leaned on it.
        public int Idle { get; set; }
    }
}

/// <summary>Where a node's relaxation was solved: what its children begin with.</summary>
/// <param name="Of">Stands for the linear program, since the numbers mean nothing in another one.</param>
/// <param name="Columns">Those in the basis.</param>
/// <param name="Rows">Those whose slack is not in it, but for rows of splits.</param>
/// <param name="Splits">The same of splits, whose rows differ from node to node.</param>
internal sealed record NodeBasis(object Of, int[] Columns, int[] Rows, Split[] Splits);
