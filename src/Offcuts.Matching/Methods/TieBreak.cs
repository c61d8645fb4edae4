using Google.OrTools.Sat;

namespace Offcuts.Matching.Methods;

/// <summary>
/// The fourth tier, among plans that are equal in the tiers before: fewest saw cuts, then fewest pieces carried, then fewest cuts
/// that take either served by treated wood, then the pieces that come first in the yard's order. Also chooses the spans.
/// Where saw cuts come before value, both are decided already and held together.
/// <code>
/// a plan of the pool with   unfilled, spend, rips and the last tier's figure as reached
/// minimise in turn          A sum saws_p x_p + B pieces + sum anytreated_p x_p   with A, B so large that each decides alone
///                           then use the yard's first piece if that can be, its second, ...
/// </code>
/// The pool holds every pattern of every such plan where the third tier is proven and they are few enough: then this tier is exact
/// too, by <see cref="CountProgram"/> where that ends soon. Else it is the best among the patterns that were met. Solved by CP-SAT with a limit in counted work
/// for that sum and one for the whole order of the pieces: beyond some thirty pieces that order may stay as it was found.
/// Above <see cref="MostPlaces"/> spans the plan stays as it is and takes the first spans of each kind.
/// </summary>
internal sealed class TieBreak
{
    private const int MostPatterns = 4_000;
    private const int MostPlaces = 400;
    private const int PiecesAtOnce = 30;
    private const double Work = 0.25;
    private const double WorkOfOrder = 0.25;
    private const int FewPatterns = 200;
    private const int MostStates = 50_000;
    private const long MostTries = 300_000;

    private readonly MaterialPlan _plan;
    private readonly MaterialProblem _problem;
    private readonly Tier _tier;
    private readonly IReadOnlyList<Pattern> _pool;
    private readonly Effort _effort;
    private readonly CpModel _model = new();
    private readonly IntVar[] _uses;
    private readonly Dictionary<SpanPlace, BoolVar> _lies = [];
    private readonly SortedDictionary<int, BoolVar> _carried = [];
    private readonly IntVar[] _used;

    private TieBreak(MaterialPlan plan, Tier tier, IReadOnlyList<Pattern> pool, Effort effort)
    {
        (_plan, _problem, _tier, _pool, _effort) = (plan, plan.Problem, tier, pool, effort);
        _uses = [.. pool.Select(pattern => (IntVar)_model.NewIntVar(0, tier.MostUses(pattern, covering: false), ""))];
        _used = [.. _problem.Supplies.Select((_, s) => _model.NewIntVar(0, tier.SupplyCount[s], ""))];
        AddRows();
        AddPlaces();
    }

    /// <summary>The outcome with its plan exchanged for the best equal one, and with every pattern at its place.</summary>
    /// <param name="outcome">What was reached.</param>
    /// <param name="last">What solving the last tier gave; what led its proof keeps the pool small.</param>
    /// <param name="effort">Limit.</param>
    public static MaterialOutcome Place(MaterialOutcome outcome, TierOutcome last, Effort effort)
    {
        var plan = outcome.Plan;
        if (plan.Uses.Count == 0) return outcome;
        var places = plan.Problem.Supplies.Sum(supply => supply.Places.Count);
        if (places > MostPlaces || effort.Over) return outcome with { Placed = Greedy(plan) };
        // Spans that must be used are not told apart by their places, so that none is said to be one of them.
        var tier = Tier.GivenUp(plan, 0, outcome.Earlier).Free();
        var relaxation = last.Relaxation?.For(tier) ?? ColumnGeneration.Solve(tier, plan, [], effort);
        IReadOnlyList<Pattern>? pool = null;
        if (outcome.LastProven)
        {
            var guide = last.Guide?.For(tier, tier.Value(plan)) ?? Guide.Linear(tier, relaxation);
            pool = PatternEnumeration.All(tier, guide.Limits(tier.Value(plan)), MostPatterns, 100L * MostPatterns);

            // With cuts the relaxation mostly knows that there are far fewer, and takes less time for that than either of the next would lose over them.
            if (pool is { Count: > FewPatterns }) pool = PoolSearch.Possible(tier, pool, tier.Value(plan), guide.Bound, effort);
            if (pool is not null && CountProgram.Placed(tier, pool, guide, tier.Value(plan), MostStates, MostTries, effort) is { } placed)
                return outcome with { Plan = new MaterialPlan(plan.Problem, placed.Select(at => (at.Pattern, 1))), Placed = placed };
        }

        var patterns = (pool ?? [.. relaxation.Patterns]).Union(plan.Uses.Select(use => use.Pattern)).Order(Comparer<Pattern>.Create(Pattern.Compare)).ToArray();
        return Solved(outcome, tier, patterns, effort);
    }

    /// <summary>The same by the solver, over these patterns.</summary>
    public static MaterialOutcome Solved(MaterialOutcome outcome, Tier tier, IReadOnlyList<Pattern> patterns, Effort effort) =>
        new TieBreak(outcome.Plan, tier, patterns, effort).Run(outcome);

    private MaterialOutcome Run(MaterialOutcome outcome)
    {
        var hint = _plan.Uses.ToDictionary(use => use.Pattern, use => use.Times);
        for (var p = 0; p < _pool.Count; p++) _model.AddHint(_uses[p], hint.GetValueOrDefault(_pool[p]));

        var best = _problem.Order == TierOrder.SawCutsFirst ? Least(Sum(_tier.Cost)) : null;
        best = Least(First()) ?? best;
        var work = WorkOfOrder;
        foreach (var chunk in _carried.Values.Chunk(PiecesAtOnce))
        {
            var late = LinearExpr.NewBuilder();
            for (var i = 0; i < chunk.Length; i++) late.AddTerm(chunk[i], -(1L << (chunk.Length - 1 - i)));
            if (Least(late, work) is not { } sooner) break;
            (best, work) = (sooner, work - (sooner.Response?.DeterministicTime ?? Work));
        }

        return best is null ? outcome with { Placed = Greedy(_plan) } : Placed(outcome, best);
    }

    // Saw cuts, pieces and cuts on treated wood in one sum, each of them more than all the next can make up. Where saw cuts come before value they are decided.
    private LinearExprBuilder First()
    {
        var bought = Enumerable.Range(0, _used.Length).Where(s => _problem.Supplies[s].Bought is not null).ToArray();
        var ofAPiece = 1L + _problem.Copies;
        var ofASawCut = ofAPiece * (1 + _carried.Count + bought.Sum(s => (long)_tier.SupplyCount[s]));
        var sum = Sum(pattern => pattern.AnyOnTreated + (_problem.Order == TierOrder.SawCutsFirst ? 0 : pattern.SawCuts * ofASawCut));
        foreach (var piece in _carried.Values) sum.AddTerm(piece, ofAPiece);
        foreach (var s in bought) sum.AddTerm(_used[s], ofAPiece);
        return sum;
    }

    private LinearExprBuilder Sum(Func<Pattern, long> figure)
    {
        var sum = LinearExpr.NewBuilder();
        for (var p = 0; p < _pool.Count; p++)
        {
            if (figure(_pool[p]) != 0) sum.AddTerm(_uses[p], figure(_pool[p]));
        }

        return sum;
    }

    // Minimises and holds what was reached. None where nothing was found within the limits.
    private CpSolver? Least(LinearExpr objective, double work = Work)
    {
        if (_effort.Over || work <= 0) return null;
        _model.Minimize(objective);
        var solver = new CpSolver { StringParameters = SatSettings.NearRelaxation(Math.Min(Work, work), _effort) };
        using var registration = _effort.Cancel.Register(solver.StopSearch);
        if (solver.Solve(_model) is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible)) return null;
        _model.Add(objective <= (long)Math.Round(solver.ObjectiveValue));
        return solver;
    }

    private void AddRows()
    {
        var (cost, supply) = SatRows.Add(_model, _tier, _pool, _uses, covering: false);
        _model.Add(cost <= _tier.Value(_plan));
        for (var s = 0; s < supply.Length; s++) _model.Add(supply[s] == _used[s]);
    }

    private void AddPlaces()
    {
        for (var s = 0; s < _used.Length; s++)
        {
            if (_problem.Supplies[s].Bought is not null) continue;
            var lying = LinearExpr.NewBuilder();
            foreach (var place in _problem.Supplies[s].Places)
            {
                var lies = _model.NewBoolVar("");
                _lies[place] = lies;
                lying.AddTerm(lies, 1);
                if (!_carried.TryGetValue(place.Piece, out var piece)) _carried[place.Piece] = piece = _model.NewBoolVar("");
                _model.AddImplication(lies, piece);
            }

            _model.Add(lying == _used[s]);
        }

        // A piece of which nothing is cut is not carried.
        foreach (var (piece, carried) in _carried)
        {
            var spans = LinearExpr.NewBuilder();
            foreach (var (place, lies) in _lies)
            {
                if (place.Piece == piece) spans.AddTerm(lies, 1);
            }

            _model.Add(carried <= spans);
        }
    }

    private MaterialOutcome Placed(MaterialOutcome outcome, CpSolver solver)
    {
        var plan = new MaterialPlan(_problem, _pool.Select((pattern, p) => (pattern, (int)solver.Value(_uses[p]))));
        return outcome with { Plan = plan, Placed = Greedy(plan, place => solver.BooleanValue(_lies[place])) };
    }

    // Patterns of a supply in their own order on its spans in the yard's order.
    private static List<(Pattern, SpanPlace?)> Greedy(MaterialPlan plan, Func<SpanPlace, bool>? chosen = null)
    {
        var placed = new List<(Pattern, SpanPlace?)>();
        foreach (var group in plan.Uses.GroupBy(use => use.Pattern.Supply))
        {
            var supply = plan.Problem.Supplies[group.Key];
            var places = new Queue<SpanPlace>(supply.Places.Where(place => chosen is null || chosen(place)));
            foreach (var (pattern, times) in group)
            {
                for (var i = 0; i < times; i++) placed.Add((pattern, supply.Bought is null ? places.Dequeue() : null));
            }
        }

        return placed;
    }
}
