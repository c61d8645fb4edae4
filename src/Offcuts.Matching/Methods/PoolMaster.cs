using Google.OrTools.LinearSolver;

namespace Offcuts.Matching.Methods;

/// <summary>
/// The relaxation over part of a known pool of patterns, with cuts and with what branching asks for. Kept alive from node to node,
/// so that each linear program starts from the last one's basis. Every row may go unmet at a high cost, so that there always is a
/// solution and always are duals; whether a node is ruled out is decided by the exact bound alone.
/// </summary>
internal sealed class PoolMaster : IDisposable
{
    private const int MostIdle = 12;
    private const int WorthRenewing = 40;
    private const int SplitsForeseen = 16;

    private readonly Tier _tier;
    private readonly IReadOnlyList<Pattern> _pool;
    private readonly Solver _solver;
    private readonly MPSolverParameters _parameters = new();
    private readonly Constraint?[] _demand;
    private readonly Constraint[] _supply;
    private readonly Dictionary<int, Constraint> _left = [];
    private readonly Constraint? _spend;
    private readonly Constraint? _rips;
    private readonly List<Variable> _artificial = [];
    private readonly List<(int Demand, Variable Variable)> _unfilled = [];
    private readonly List<(int Pattern, Variable Variable)> _columns = [];
    private readonly Variable?[] _variable;
    private readonly List<Held> _cuts = [];
    private readonly Dictionary<Split, Constraint> _splits = [];
    private readonly Variable _short;
    private readonly Queue<(Variable Short, Variable Beyond)> _ofSplits;
    private double _dear;
    private bool _rowsChanged = true;

    public PoolMaster(Tier tier, IReadOnlyList<Pattern> pool)
        : this(tier, pool, Diving.Dear(tier))
    {
    }

    private PoolMaster(Tier tier, IReadOnlyList<Pattern> pool, double dear)
    {
        (_tier, _pool, _dear) = (tier, pool, dear);
        _solver = Solver.CreateSolver("GLOP") ?? throw new InvalidOperationException("the linear solver is missing");
        _parameters.SetIntegerParam(MPSolverParameters.IntegerParam.PRESOLVE, (int)MPSolverParameters.PresolveValues.PRESOLVE_OFF);
        _variable = new Variable?[pool.Count];
        _demand = [.. tier.DemandCount.Select((count, d) => tier.Active[d] ? _solver.MakeConstraint(count, tier.Covering ? double.PositiveInfinity : count) : null)];
        _supply = [.. tier.SupplyCount.Select(count => _solver.MakeConstraint(double.NegativeInfinity, count))];
        foreach (var (stage, cap) in tier.LeftCap) _left[stage] = _solver.MakeConstraint(double.NegativeInfinity, cap);
        if (tier.SpendCap is { } spend) _spend = _solver.MakeConstraint(double.NegativeInfinity, spend);
        if (tier.RipCap is { } rips) _rips = _solver.MakeConstraint(double.NegativeInfinity, rips);
        for (var d = 0; d < _demand.Length; d++)
        {
            if (_demand[d] is not { } row) continue;
            Unmet(row, 1);
            if (tier.MostLeft[d] == 0) continue;
            var left = _solver.MakeNumVar(0, tier.MostLeft[d], "");
            _solver.Objective().SetCoefficient(left, tier.LeftCost[d]);
            row.SetCoefficient(left, 1);
            if (_left.TryGetValue(tier.Problem.Demands[d].Stage, out var cap)) cap.SetCoefficient(left, 1);
            _unfilled.Add((d, left));
        }

        foreach (var row in _supply) Unmet(row, 1);
        _short = Artificial();
        _ofSplits = new([.. Enumerable.Range(0, SplitsForeseen).Select(_ => (Artificial(), Artificial()))]);
        _solver.Objective().SetMinimization();
    }

    /// <summary>Patterns in use and how often, after <see cref="Solve"/>.</summary>
    public IReadOnlyList<(Pattern Pattern, double Times)> Solution =>
        [.. _columns.Select(column => (_pool[column.Pattern], column.Variable.SolutionValue())).Where(column => column.Item2 > 1e-7)];

    /// <summary>How much of the rows goes unmet.</summary>
    public double Unmet() => _artificial.Sum(variable => variable.SolutionValue());

    /// <summary>Copies of each demand left unfilled.</summary>
    public double[] Unfilled()
    {
        var unfilled = new double[_demand.Length];
        foreach (var (demand, variable) in _unfilled) unfilled[demand] += variable.SolutionValue();
        return unfilled;
    }

    /// <summary>Duals of the cuts: whole multiples of 1/Scale, not negative.</summary>
    public (RankOneCut Cut, long Dual)[] Cuts() => [.. _cuts.Select(held => (held.Cut, Dual(held))).Where(cut => cut.Item2 > 0)];

    /// <summary>The cuts that something has leaned on lately.</summary>
    public IReadOnlyList<RankOneCut> LeantOn => [.. _cuts.Where(held => held.Idle <= MostIdle).Select(held => held.Cut)];

    private long Dual(Held held) => Math.Max(0, OfMany(held.Row, _tier.Problem.MostTakes + 1));

    /// <summary>
    /// The same columns, with those cuts only that something has leaned on lately, and this one disposed of; or this one as it is where few cuts would go. A node asks for new cuts, and
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
        Dispose();
        return renewed;
    }

    /// <summary>Duals of the splits of a node: not negative where there is no upper end, not positive where there is no lower.</summary>
    public long[] SplitDuals(PoolNode node) => [.. node.Splits.Select(split => Math.Clamp(
        OfMany(_splits[split.Split], 1),
        split.Most == int.MaxValue ? 0 : long.MinValue,
        split.Least == 0 ? 0 : long.MaxValue))];

    // A pattern may be in all these rows at once.
    private long OfMany(Constraint row, long coefficient) => Duals.Whole(_tier, row.DualValue(), coefficient * (_cuts.Count + _splits.Count));

    /// <summary>Makes going unmet dearer.</summary>
    public void Raise()
    {
        _dear *= 8;
        foreach (var variable in _artificial) _solver.Objective().SetCoefficient(variable, _dear);
    }

    /// <summary>Lets a pattern in; false where it is in already.</summary>
    public bool Add(int pattern)
    {
        if (_variable[pattern] is not null) return false;
        var entering = _pool[pattern];
        var variable = _solver.MakeNumVar(0, double.PositiveInfinity, "");
        _solver.Objective().SetCoefficient(variable, _tier.Cost(entering));
        foreach (var take in entering.Takes) _demand[take.Demand]!.SetCoefficient(variable, take.Count);
        _supply[entering.Supply].SetCoefficient(variable, 1);
        if (entering.Price > 0) _spend?.SetCoefficient(variable, entering.Price);
        if (entering.Rips > 0) _rips?.SetCoefficient(variable, entering.Rips);
        foreach (var held in _cuts)
        {
            if (held.Cut.Of(entering) is not 0 and var coefficient) held.Row.SetCoefficient(variable, coefficient);
        }

        foreach (var (split, row) in _splits)
        {
            if (split.Holds(entering)) row.SetCoefficient(variable, 1);
        }

        _variable[pattern] = variable;
        _columns.Add((pattern, variable));
        return true;
    }

    /// <summary>Adds a cut over everything that is in.</summary>
    public void Add(RankOneCut cut)
    {
        var row = _solver.MakeConstraint(cut.Least, double.PositiveInfinity);
        foreach (var (pattern, variable) in _columns)
        {
            if (cut.Of(_pool[pattern]) is not 0 and var coefficient) row.SetCoefficient(variable, coefficient);
        }

        foreach (var (demand, variable) in _unfilled)
        {
            if (cut.OfLeft(demand) > 0) row.SetCoefficient(variable, cut.OfLeft(demand));
        }

        row.SetCoefficient(_short, 1);
        _cuts.Add(new Held(cut, row));
        _rowsChanged = true;
    }

    /// <summary>Sets the rows and columns to those of a node.</summary>
    public void Enter(PoolNode node)
    {
        _rowsChanged = true;
        for (var s = 0; s < _supply.Length; s++) _supply[s].SetBounds(node.Least[s] == 0 ? double.NegativeInfinity : node.Least[s], node.Most[s]);
        foreach (var row in _splits.Values) row.SetBounds(double.NegativeInfinity, double.PositiveInfinity);
        foreach (var (split, least, most) in node.Splits)
        {
            if (!_splits.TryGetValue(split, out var row))
            {
                _splits[split] = row = _solver.MakeConstraint(least, most);
                foreach (var (pattern, variable) in _columns)
                {
                    if (split.Holds(_pool[pattern])) row.SetCoefficient(variable, 1);
                }

                var (below, above) = _ofSplits.TryDequeue(out var foreseen) ? foreseen : (Artificial(), Artificial());
                row.SetCoefficient(below, 1);
                row.SetCoefficient(above, -1);
            }

            row.SetBounds(least, most == int.MaxValue ? double.PositiveInfinity : most);
        }

        var allowed = new bool[_pool.Count];
        foreach (var pattern in node.Patterns) allowed[pattern] = true;
        foreach (var (pattern, variable) in _columns) variable.SetUb(allowed[pattern] ? double.PositiveInfinity : 0);
    }

    // Without its presolve the solver starts from the last basis, by the dual method where rows or their ends are new, by the primal one where only columns are;
    // where that leads it astray, once more with it. Rows and columns that come together would make it begin from nothing, so that cuts share what goes short of them, which
    // is as good since they never clash, and splits have columns of their own that stand ready.
    private bool Optimal()
    {
        var method = _rowsChanged ? MPSolverParameters.LpAlgorithmValues.DUAL : MPSolverParameters.LpAlgorithmValues.PRIMAL;
        _parameters.SetIntegerParam(MPSolverParameters.IntegerParam.LP_ALGORITHM, (int)method);
        _rowsChanged = false;
        return _solver.Solve(_parameters) is Solver.ResultStatus.OPTIMAL || _solver.Solve() is Solver.ResultStatus.OPTIMAL;
    }

    /// <summary>Solves; none where the solver does not get there.</summary>
    public Duals? Solve()
    {
        if (!Optimal()) return null;
        foreach (var held in _cuts) held.Idle = Dual(held) > 0 ? 0 : held.Idle + 1;
        return new Duals(
            _tier,
            [.. _demand.Select(row => row?.DualValue() ?? 0)],
            [.. _supply.Select(row => Math.Min(0, row.DualValue()))],
            _left.ToDictionary(pair => pair.Key, pair => pair.Value.DualValue()),
            _spend?.DualValue() ?? 0,
            _rips?.DualValue() ?? 0);
    }

    /// <summary>The supplies' duals of either sign, to tell which patterns are worth letting in.</summary>
    public long[] SupplyDuals() => [.. _supply.Select(row => Duals.Whole(_tier, row.DualValue(), 1))];

    public void Dispose()
    {
        _parameters.Dispose();
        _solver.Dispose();
    }

    private void Unmet(Constraint row, int sign) => row.SetCoefficient(Artificial(), sign);

    private Variable Artificial()
    {
        var variable = _solver.MakeNumVar(0, double.PositiveInfinity, "");
        _solver.Objective().SetCoefficient(variable, _dear);
        _artificial.Add(variable);
        return variable;
    }

    private sealed class Held(RankOneCut cut, Constraint row)
    {
        public RankOneCut Cut { get; } = cut;

        public Constraint Row { get; } = row;

        // Solutions since something leaned on it.
        public int Idle { get; set; }
    }
}
