using Google.OrTools.LinearSolver;

namespace Offcuts.Matching.Methods;

/// <summary>
/// The relaxation of a <see cref="Tier"/> over the patterns known so far, solved by GLOP (the simplex method of OR-Tools).
/// Only its duals are used, rounded to whole numbers: nothing is believed because it says so.
/// </summary>
internal sealed class RestrictedMaster : IDisposable
{
    private readonly Tier _tier;
    private readonly Solver _solver;
    private readonly Constraint?[] _demand;
    private readonly Constraint[] _supply;
    private readonly Dictionary<int, Constraint> _left = [];
    private readonly Constraint? _spend;
    private readonly Constraint? _rips;
    private readonly HashSet<Pattern> _known = [];
    private readonly List<(Pattern Pattern, Variable Variable)> _columns = [];

    /// <summary>An empty master.</summary>
    /// <param name="tier">Rows and costs.</param>
    /// <param name="artificial">Cost at which a demand may go without a pattern, so that there always is a solution; none where patterns make one.</param>
    public RestrictedMaster(Tier tier, double? artificial = null)
    {
        _tier = tier;
        _solver = Solver.CreateSolver("GLOP") ?? throw new InvalidOperationException("the linear solver is missing");
        var problem = tier.Problem;
        _demand = [.. tier.DemandCount.Select((count, d) => tier.Active[d]
            ? _solver.MakeConstraint(count, tier.Covering ? double.PositiveInfinity : count)
            : null)];
        _supply = [.. tier.SupplyCount.Select(count => _solver.MakeConstraint(double.NegativeInfinity, count))];
        foreach (var (stage, cap) in tier.LeftCap) _left[stage] = _solver.MakeConstraint(double.NegativeInfinity, cap);
        if (tier.SpendCap is { } spend) _spend = _solver.MakeConstraint(double.NegativeInfinity, spend);
        if (tier.RipCap is { } rips) _rips = _solver.MakeConstraint(double.NegativeInfinity, rips);
        for (var d = 0; d < tier.MostLeft.Length; d++)
        {
            if (tier.MostLeft[d] == 0) continue;
            var left = _solver.MakeNumVar(0, tier.MostLeft[d], "");
            _solver.Objective().SetCoefficient(left, tier.LeftCost[d]);
            _demand[d]!.SetCoefficient(left, 1);
            if (_left.TryGetValue(problem.Demands[d].Stage, out var row)) row.SetCoefficient(left, 1);
        }

        foreach (var row in _demand)
        {
            if (artificial is not { } dear || row is null) continue;
            var missing = _solver.MakeNumVar(0, double.PositiveInfinity, "");
            _solver.Objective().SetCoefficient(missing, dear);
            row.SetCoefficient(missing, 1);
        }

        _solver.Objective().SetMinimization();
    }

    /// <summary>The patterns known, in the order in which they came.</summary>
    public IEnumerable<Pattern> Patterns => _columns.Select(column => column.Pattern);

    /// <summary>How often the relaxation uses each pattern, after <see cref="Solve"/>.</summary>
    public IEnumerable<(Pattern Pattern, double Times)> Solution => _columns.Select(column => (column.Pattern, column.Variable.SolutionValue()));

    /// <summary>Adds a pattern; false where it is known already.</summary>
    public bool Add(Pattern pattern)
    {
        if (!_known.Add(pattern)) return false;
        var variable = _solver.MakeNumVar(0, double.PositiveInfinity, "");
        _solver.Objective().SetCoefficient(variable, _tier.Cost(pattern));
        foreach (var take in pattern.Takes) _demand[take.Demand]?.SetCoefficient(variable, take.Count);
        _supply[pattern.Supply].SetCoefficient(variable, 1);
        if (pattern.Price > 0) _spend?.SetCoefficient(variable, pattern.Price);
        if (pattern.Rips > 0) _rips?.SetCoefficient(variable, pattern.Rips);
        _columns.Add((pattern, variable));
        return true;
    }

    /// <summary>Solves the relaxation over the known patterns; none where the solver does not get there.</summary>
    public Duals? Solve()
    {
        if (_solver.Solve() is not Solver.ResultStatus.OPTIMAL) return null;
        return new Duals(
            _tier,
            [.. _demand.Select(row => row?.DualValue() ?? 0)],
            [.. _supply.Select(row => row.DualValue())],
            _left.ToDictionary(pair => pair.Key, pair => pair.Value.DualValue()),
            _spend?.DualValue() ?? 0,
            _rips?.DualValue() ?? 0);
    }

    public void Dispose() => _solver.Dispose();
}
