using Google.OrTools.Sat;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Tests.Independent;

/// <summary>What the best plan is, down to which pieces are carried.</summary>
/// <param name="Figures">Its tiers, saw cuts among them.</param>
/// <param name="Pieces">Pieces carried, of the yard and bought.</param>
/// <param name="AnyOnTreated">Cuts that take either, made of treated wood.</param>
/// <param name="Carried">The yard's pieces that are carried, in the yard's order.</param>
internal sealed record Settled(Reached Figures, long Pieces, long AnyOnTreated, IReadOnlyList<Code> Carried)
{
    public override string ToString() => $"{Figures}, {Pieces} pieces, {AnyOnTreated} any on treated, carried {string.Join(" ", Carried)}";
}

/// <summary>
/// The matching problem as an assignment that CP-SAT solves, tier by tier:
/// <code>
/// x(i,j) = 1   copy j is made on stretch i            w(i,j) = 1   copy j takes stretch i whole
/// sum over i of x(i,j) + w(i,j) + f(j) = 1            f(j) = 1     copy j is left out
/// L(i) = sum over j of (length j + kerf) x(i,j)  &lt;=  usable i + kerf,   and 0 where stretch i is taken whole
/// given up(i) = table(i)[L(i)] + value i * sum over j of w(i,j) - value of the strips beside what is ripped
/// saw cuts(i) = sum over j of x(i,j) - e(i) + those along it   e(i) = 1     only where L(i) = usable i + kerf
/// carried(p)  &gt;= x(i,j), w(i,j)                       for each stretch i of piece p
/// </code>
/// A new piece is a stretch that is paid for when used; there is one for each copy that it may serve, up to the limit, the fuller ones first.
/// The tables are over the grid of the drawn problems; nothing here is shared with the program but the types of the trade.
/// Hardware is not counted here.
/// </summary>
internal sealed class AssignmentModel
{
    private readonly MatchRequest _request;
    private readonly CpModel _model = new();
    private readonly (RequiredCut Cut, Code Pinned)[] _copies;
    private readonly List<LinearExpr>[] _served;
    private readonly List<LinearExpr> _spend = [];
    private readonly List<LinearExpr> _given = [];
    private readonly List<LinearExpr> _rips = [];
    private readonly List<LinearExpr> _saws = [];
    private readonly List<LinearExpr> _bought = [];
    private readonly List<BoolVar> _anyOnTreated = [];
    private readonly Dictionary<Code, BoolVar> _carried = [];

    private AssignmentModel(MatchRequest request)
    {
        _request = request;
        _copies = [.. request.Stages.SelectMany(stage => stage.Cuts).SelectMany(cut => Definition.Copies(request, cut))];
        _served = [.. _copies.Select(_ => new List<LinearExpr>())];
    }

    /// <summary>The best that any plan reaches, in every tier; proven by the solver, or it throws.</summary>
    public static Settled Best(MatchRequest request) => Of(request).Solve();

    /// <summary>The least that must be spent to leave no more unfilled than any plan must.</summary>
    public static long LeastSpend(MatchRequest request)
    {
        var model = Of(request);
        model.Fill();
        return model.Least(LinearExpr.Sum(model._spend));
    }

    private static AssignmentModel Of(MatchRequest request)
    {
        var model = new AssignmentModel(request);
        foreach (var stretch in Definition.Yard(request)) model.AddStretch(stretch);
        if (request.Buy)
        {
            foreach (var price in request.Prices.All.Where(price => price.Material is not Core.Materials.Hardware)) model.AddNew(price);
        }

        return model;
    }

    private void AddNew(Core.Materials.StorePrice price)
    {
        var stretch = Definition.New(price);
        var most = Math.Min(price.Limit ?? int.MaxValue, _copies.Count(copy => Serves(stretch, copy) && copy.Cut.Shortest <= price.Length));
        LinearExpr? before = null;
        for (var i = 0; i < most; i++)
        {
            var fill = AddStretch(stretch);
            if (before is not null) _model.Add(before >= fill);
            before = fill;
        }
    }

    // Adds one stretch and hands back how full it is.
    private LinearExpr AddStretch(Stretch stretch)
    {
        var kerf = _request.Settings.Kerf(stretch.Material).Units;
        List<BoolVar> made = [], whole = [];
        List<long> weights = [];
        for (var j = 0; j < _copies.Length; j++)
        {
            var cut = _copies[j].Cut;
            if (!Serves(stretch, _copies[j])) continue;
            if (cut.Shortest.Units <= stretch.Length)
            {
                made.Add(_model.NewBoolVar("x"));
                if (stretch.Treated && cut.Treated == TreatedWish.Any) _anyOnTreated.Add(made[^1]);
                weights.Add(Steps(cut.Shortest.Units + kerf));
                _served[j].Add(made[^1]);
                AddRip(made[^1], stretch, cut, cut.Shortest.Units);
            }

            if (cut.Shortest.Units < stretch.Length && stretch.Length <= cut.Longest.Units)
            {
                whole.Add(_model.NewBoolVar("w"));
                if (stretch.Treated && cut.Treated == TreatedWish.Any) _anyOnTreated.Add(whole[^1]);
                _served[j].Add(whole[^1]);
                AddRip(whole[^1], stretch, cut, stretch.Length);
            }
        }

        var capacity = Steps(stretch.Length + kerf);
        var load = _model.NewIntVar(0, capacity, "L");
        _model.Add(load == LinearExpr.WeightedSum(made, weights));
        var used = stretch.Price is null ? Carried(stretch.Piece) : _model.NewBoolVar("used");
        var taken = LinearExpr.Sum(whole);
        _model.Add(load + capacity * taken <= capacity * LinearExpr.Sum([used]));
        if (stretch.Price is { } price)
        {
            _spend.Add(used * price.Price.Cents);
            _bought.Add(used);
        }

        var exact = _model.NewBoolVar("e");
        _model.Add(load >= capacity * LinearExpr.Sum([exact]));
        _saws.Add(LinearExpr.Sum(made) - exact);

        var before = stretch.Price is null ? Definition.Value(stretch, stretch.Length, _request) : 0;
        var table = Enumerable.Range(0, (int)capacity + 1)
            .Select(steps => steps == 0 ? 0 : before - Definition.Value(stretch, Math.Max(0, stretch.Length - steps * DrawnYards.Grid), _request))
            .ToArray();
        var given = _model.NewIntVar(table.Min(), table.Max(), "given");
        _model.AddElement(load, table, given);
        _given.Add(given + before * taken);
        return load + capacity * taken;
    }

    private void AddRip(BoolVar made, Stretch stretch, RequiredCut cut, long length)
    {
        var rip = Lengthwise.Of(stretch, cut, length, _request);
        if (rip.Rips == 0) return;
        _rips.Add(made * 1);
        _given.Add(made * -rip.StripValue);
        _saws.Add(made * rip.SawCuts);
    }

    private bool Serves(Stretch stretch, (RequiredCut Cut, Code Pinned) copy) =>
        Definition.MayServe(stretch, copy.Cut)
        && (copy.Pinned.IsNone || copy.Pinned == stretch.Piece)
        && !Definition.Spared(_request, stretch, copy.Cut);

    private BoolVar Carried(Code piece)
    {
        if (!_carried.TryGetValue(piece, out var carried)) _carried[piece] = carried = _model.NewBoolVar("carried");
        return carried;
    }

    private Settled Solve()
    {
        var left = Fill();
        var spend = Least(LinearExpr.Sum(_spend));
        var rips = Least(LinearExpr.Sum(_rips));
        var (given, saws) = (LinearExpr.Sum(_given), LinearExpr.Sum(_saws));
        long givenUp, sawCuts;
        if (_request.Order == TierOrder.SawCutsFirst) (sawCuts, givenUp) = (Least(saws), Least(given));
        else (givenUp, sawCuts) = (Least(given), Least(saws));
        var pieces = Least(LinearExpr.Sum([.. _carried.Values, .. _bought]));
        var treated = Least(LinearExpr.Sum(_anyOnTreated));

        // The yard's first piece if that can be, then its second, and so on: one number of which each piece is a digit.
        var yard = _request.Pieces.Where(piece => _carried.ContainsKey(piece.Code)).Select(piece => piece.Code).ToArray();
        var digits = Least(LinearExpr.WeightedSum(yard.Select(code => _carried[code]), yard.Select((_, i) => -(1L << (yard.Length - 1 - i)))));
        return new Settled(
            new Reached(left, spend, givenUp, sawCuts) { Rips = rips }, pieces, treated,
            [.. yard.Where((_, i) => (-digits >> (yard.Length - 1 - i) & 1) == 1)]);
    }

    private long[] Fill()
    {
        var stages = _request.Stages.Select(stage => stage.Name).ToArray();
        var left = stages.Select(_ => new List<BoolVar>()).ToArray();
        for (var j = 0; j < _copies.Length; j++)
        {
            var leftOut = _model.NewBoolVar("f");
            left[Array.IndexOf(stages, _copies[j].Cut.Stage)].Add(leftOut);
            _model.Add(LinearExpr.Sum([.. _served[j], leftOut]) == 1);
        }

        return [.. left.Select(copies => Least(LinearExpr.Sum(copies)))];
    }

    // The least that a figure can be, which is then held for the figures after it.
    private long Least(LinearExpr figure)
    {
        _model.Minimize(figure);
        // Without presolve: with it OR-Tools 9.15 called 5 saw cuts the least where 4 are possible (Agreement, seed 9001183).
        using var solver = new CpSolver { StringParameters = "num_workers:1 random_seed:1 linearization_level:2 cp_model_presolve:false max_deterministic_time:60" };
        var status = solver.Solve(_model);
        if (status != CpSolverStatus.Optimal) throw new InvalidOperationException($"the assignment was not solved to the end: {status}");
        var least = (long)Math.Round(solver.ObjectiveValue);
        _model.Add(figure == least);
        return least;
    }

    private static long Steps(long units)
    {
        var (steps, rest) = Math.DivRem(units, DrawnYards.Grid);
        return rest == 0 ? steps : throw new ArgumentException($"{Length.FromUnits(units)} is off the grid", nameof(units));
    }
}
