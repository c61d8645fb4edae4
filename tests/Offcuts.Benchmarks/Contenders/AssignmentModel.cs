using System.Diagnostics;
using Google.OrTools.Sat;
using Offcuts.Benchmarks.Measuring;
using Offcuts.Core.Materials;
using Offcuts.Core.Yard;
using Offcuts.Matching;

namespace Offcuts.Benchmarks.Contenders;

/// <summary>
/// The first three tiers as a plain assignment model for CP-SAT, as a competent engineer writes it in a day:
/// <code>
/// x(i,r)        copies of row r that are made on span i              whole number, 0 .. what fits
/// w(i,r) = 1    a copy of row r takes span i whole
/// f(r)          copies of row r left unfilled
/// sum over i of x(i,r) + w(i,r) + f(r) = copies of r
/// L(i) = sum over r of (length r + kerf) x(i,r)  &lt;=  (length i + kerf) used(i),   0 where span i is taken whole
/// spend = sum of price used(i)                                       given up(i) = a table over L(i)
/// </code>
/// A store length is as many spans as may be bought: no more than best-fit decreasing could pay for, where that fills everything.
/// Written apart from the matcher: no patterns, no grouping of spans. One tier after the other, each from the solution of the one
/// before and with its figures as rows; a tier may take half of the time that is left, the last one all of it.
/// </summary>
internal sealed class AssignmentModel
{
    private const long MostTableEntries = 20_000_000;

    private readonly MatchRequest _request;
    private readonly RequiredCut[] _rows;
    private readonly CpModel _model = new();
    private readonly List<LinearExpr>[] _served;
    private readonly List<LinearExpr> _spend = [];
    private readonly List<LinearExpr> _given = [];
    private readonly Dictionary<Material, YardTable> _tables;
    private long _tableEntries;

    private AssignmentModel(MatchRequest request)
    {
        _request = request;
        _rows = [.. request.Stages.SelectMany(stage => stage.Cuts)];
        _served = [.. _rows.Select(_ => new List<LinearExpr>())];
        _tables = _rows.GroupBy(cut => cut.Material).ToDictionary(group => group.Key, group => new YardTable(request, group.Key, [.. group]));
    }

    /// <summary>Solves one instance within so many seconds, building the model included.</summary>
    public static Outcome Run(Instance instance, double seconds)
    {
        var watch = Stopwatch.StartNew();
        var model = new AssignmentModel(instance.Request);
        foreach (var piece in instance.Request.Pieces.Where(piece => piece.OnHand && model._tables.ContainsKey(piece.Material)))
        {
            foreach (var span in piece.Spans()) model.AddSpan(piece, null, span.Length.Units);
        }

        model.AddStore();
        var tiers = model.Tiers();
        var valued = model._tableEntries <= MostTableEntries;
        if (valued && model._given.Count > 0) tiers.Add(LinearExpr.Sum(model._given));
        return model.Solve(instance, tiers, valued, seconds, watch);
    }

    private void AddStore()
    {
        if (!_request.Buy) return;
        var hand = ByHand.Plan(_request);
        foreach (var price in _request.Prices.All.Where(price => _tables.ContainsKey(price.Material)))
        {
            var most = (long)Enumerable.Range(0, _rows.Length).Where(r => MayServe(null, price, _rows[r], price.Length.Units)).Sum(r => _rows[r].Count);
            if (price.Limit is { } limit) most = Math.Min(most, limit);
            if (hand.Unfilled.Sum() == 0 && price.Price.Cents > 0) most = Math.Min(most, hand.Spend / price.Price.Cents);
            BoolVar? before = null;
            for (var i = 0L; i < most; i++)
            {
                var used = AddSpan(null, price, price.Length.Units);
                if (before is not null) _model.AddImplication(used, before);
                before = used;
            }
        }
    }

    private BoolVar AddSpan(Piece? piece, StorePrice? price, long length)
    {
        var table = _tables[piece?.Material ?? price!.Material];
        var capacity = (length + table.Kerf) / table.Grid;
        var (used, whole) = (_model.NewBoolVar(""), new List<BoolVar>());
        var (made, weights) = (new List<IntVar>(), new List<long>());
        for (var r = 0; r < _rows.Length; r++)
        {
            if (!MayServe(piece, price, _rows[r], length)) continue;
            var weight = (_rows[r].Shortest.Units + table.Kerf) / table.Grid;
            made.Add(_model.NewIntVar(0, Math.Min(_rows[r].Count, capacity / weight), ""));
            weights.Add(weight);
            _served[r].Add(made[^1]);
            if (_rows[r].Shortest.Units == length || length > _rows[r].Longest.Units) continue;
            whole.Add(_model.NewBoolVar(""));
            _served[r].Add(whole[^1]);
        }

        var load = LinearExpr.WeightedSum(made, weights);
        if (whole.Count > 0) load += capacity * LinearExpr.Sum(whole);
        _model.Add(load <= capacity * used);
        if (price is not null) _spend.Add(used * price.Price.Cents);
        var costs = table.GivenUp(piece, price, length, capacity);
        if (costs.Any(cost => cost != 0)) Value(costs, capacity, made, weights, whole, table.Before(piece, length));
        return used;
    }

    private void Value(long[] costs, long capacity, List<IntVar> made, List<long> weights, List<BoolVar> whole, long before)
    {
        _tableEntries += costs.Length;
        if (_tableEntries > MostTableEntries) return;
        var load = _model.NewIntVar(0, capacity, "");
        _model.Add(load == LinearExpr.WeightedSum(made, weights));
        var given = _model.NewIntVar(costs.Min(), costs.Max(), "");
        _model.AddElement(load, costs, given);
        _given.Add(whole.Count == 0 ? given : given + before * LinearExpr.Sum(whole));
    }

    private List<LinearExpr> Tiers()
    {
        var left = _request.Stages.ToDictionary(stage => stage.Name, _ => new List<IntVar>());
        for (var r = 0; r < _rows.Length; r++)
        {
            var unfilled = _model.NewIntVar(0, _rows[r].Count, "");
            left[_rows[r].Stage].Add(unfilled);
            _model.Add(LinearExpr.Sum([.. _served[r], unfilled]) == _rows[r].Count);
        }

        return [.. _request.Stages.Select(stage => LinearExpr.Sum(left[stage.Name])), LinearExpr.Sum(_spend)];
    }

    private Outcome Solve(Instance instance, List<LinearExpr> tiers, bool valued, double seconds, Stopwatch watch)
    {
        var bounds = new long?[tiers.Count];
        long[]? values = null;
        for (var t = 0; t < tiers.Count; t++)
        {
            var left = seconds - watch.Elapsed.TotalSeconds;
            if (left < 0.02) break;
            var time = t == tiers.Count - 1 ? left : left / 2;
            using var solver = new CpSolver { StringParameters = FormattableString.Invariant($"random_seed:7 max_time_in_seconds:{time} num_workers:{Environment.ProcessorCount}") };
            _model.Minimize(tiers[t]);
            var status = solver.Solve(_model);
            if (status == CpSolverStatus.Infeasible) throw new InvalidOperationException("a plan that leaves everything unfilled is always there");
            if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible)) break;
            values = [.. tiers.Select(tier => solver.Value(tier))];
            bounds[t] = status == CpSolverStatus.Optimal ? values[t] : (long)Math.Ceiling(solver.BestObjectiveBound - 1e-6);
            if (t <= _request.Stages.Count) bounds[t] = Math.Max(0, bounds[t] ?? 0);
            _model.Add(tiers[t] <= values[t]);
            _model.Model.SolutionHint = Hint(solver);
        }

        if (values is null) return Outcome.Nothing(instance.Name, watch.Elapsed.TotalSeconds, "no plan at its limit");
        var stages = _request.Stages.Count;
        return new Outcome(
            instance.Name, [.. Enumerable.Range(0, stages).Select(At)], At(stages),
            !valued ? null : _given.Count == 0 ? new Reached(0, 0) : At(stages + 1),
            watch.Elapsed.TotalSeconds, null, null, 0, valued ? "" : "too many table entries for tier 3");

        Reached At(int t) => new(values[t], bounds[t]);
    }

    private static PartialVariableAssignment Hint(CpSolver solver)
    {
        var hint = new PartialVariableAssignment();
        hint.Values.AddRange(solver.Response!.Solution);
        hint.Vars.AddRange(Enumerable.Range(0, hint.Values.Count));
        return hint;
    }

    private bool MayServe(Piece? piece, StorePrice? price, RequiredCut cut, long length) => cut.Shortest.Units <= length && (piece is not null
        ? _request.Settings.Rules.Allows(piece, cut)
        : price!.Material.Equals(cut.Material) && _request.Settings.Rules.Allows(Condition.Sound, true, price.Treated, cut.Use, cut.Treated));
}
