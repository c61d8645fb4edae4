using Google.OrTools.Sat;
using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// From what bars are pieces cut whose places are settled: a cutting-stock problem in whole numbers over the ways of cutting that column
/// generation found, with new bars cut into pieces all alike beside them. A piece may be cut from the place of a
/// longer one of its kind.
/// <code>
/// min   spend x range + value given up
/// sum z_p of a bar &lt;= how many there are;    cut + trimmed to it >= asked + trimmed from it, kind by kind
/// </code>
/// CP-SAT with one worker, a fixed seed and a limit of work. It proves nothing.
/// </summary>
internal sealed class PieceCutting
{
    private const double Work = 2;

    private const int MostPatterns = 12_000;

    // Levels of which each counts more than all above it; of higher ones each row counts alike.
    private const int MostLevels = 6;

    private readonly KindTable _table;
    private readonly RunPart _part;
    private readonly List<CutWay> _patterns = [];
    private readonly Dictionary<int, List<Laid>> _asked;

    private PieceCutting(KindTable table, IEnumerable<PairPattern> patterns, IEnumerable<Laid> laid)
    {
        (_table, _part) = (table, table.Part);
        _asked = laid.GroupBy(one => table.NumberOf(one.Kind)).OrderBy(group => group.Key).ToDictionary(group => group.Key, group => group.ToList());
        _patterns.AddRange(patterns.Select(one => new CutWay(one.Cut, one.Kinds, one.Use.SolutionValue())));
        foreach (var bar in _part.Shapes.All.Select(alike => alike.First).Where(bar => bar.Bought is not null))
        {
            foreach (var (kind, pieces) in _asked) AddAlike(bar, kind, pieces.Count);
        }

        foreach (var bar in _part.Shapes.All.Select(alike => alike.First).Where(bar => _part.Rests && bar.Bought is null))
        {
            foreach (var kind in _asked.Keys) AddAlike(bar, kind, 1);
        }

        if (_part.Rests) AddTwos();
    }

    /// <summary>
    /// The filling; none where nothing was found. Rows of which nothing is asked stay open. What the solver has found when it is ended may be far from what it looks for, so where new pieces are had without a limit it is never
    /// worse than <see cref="PlainCutting"/>, which is there however little time is left.
    /// </summary>
    /// <param name="table">Kinds and bars.</param>
    /// <param name="patterns">Ways of cutting of a program that is solved.</param>
    /// <param name="laid">The pieces.</param>
    /// <param name="effort">Limit.</param>
    public static Filling? Of(KindTable table, IEnumerable<PairPattern> patterns, IEnumerable<Laid> laid, Effort effort)
    {
        var cutting = new PieceCutting(table, patterns, laid);
        var solved = effort.Over ? null : cutting.Solve(effort);
        if (table.Part.Rests) return solved;
        // The best that these ways give may be worse than what is cut plainly too: no way that puts two kinds into one bar need be among them.
        return Better(Better(solved, cutting.Plain(shared: true)), cutting.Plain(shared: false));
    }

    private static Filling? Better(Filling? one, Filling? other) => one is null || (other is not null && other.CompareTo(one) < 0) ? other : one;

    private Filling? Plain(bool shared) => PlainCutting.Of(_table, _patterns, _asked.Select(one => (one.Key, one.Value.Count)), shared) is { } uses ? Read(uses, []) : null;

    private void AddAlike(Bar bar, int kind, int most)
    {
        foreach (var way in Cutting.Ways(_table.Kinds[kind].Ends))
        {
            for (var count = 1; count <= most; count++)
            {
                if (BarPattern.Of(_part, new View(bar, false), Enumerable.Repeat((_table.Kinds[kind], way), count)) is not { } pattern) break;
                _patterns.Add(new CutWay(pattern, [.. Enumerable.Repeat(kind, count)], 0));
            }
        }
    }

    // Two pieces from one bar of the yard, which column generation has no reason to look for once it is at its end.
    private void AddTwos()
    {
        var kinds = _asked.Keys.ToArray();
        foreach (var bar in _part.Shapes.All.Select(alike => alike.First).Where(bar => bar.Bought is null))
        {
            for (var a = 0; a < kinds.Length; a++)
            {
                for (var b = a; b < kinds.Length && _patterns.Count < MostPatterns; b++)
                {
                    if (a == b && _asked[kinds[a]].Count < 2) continue;
                    if (_table.Kinds[kinds[a]].Length + _table.Kinds[kinds[b]].Length + _part.Kerf > bar.Length) continue;
                    var placed = View.Of(bar).SelectMany(view => Ways(_table.Kinds[kinds[a]], _table.Kinds[kinds[b]]).Select(cuts => BarPattern.Of(_part, view, cuts))).OfType<BarPattern>().MinBy(one => (one.GivenUp, one.Saws));
                    if (placed is not null) _patterns.Add(new CutWay(placed, [.. placed.Cuts.Select(cut => _table.NumberOf(cut.Kind))], 0));
                }
            }
        }
    }

    private static IEnumerable<(Kind, Ends)[]> Ways(Kind one, Kind other) =>
        from first in Cutting.Ways(one.Ends)
        from second in Cutting.Ways(other.Ends)
        from cuts in ((Kind, Ends)[][])[[(one, first), (other, second)], [(other, second), (one, first)]]
        select cuts;

    private Filling? Solve(Effort effort)
    {
        var model = new CpModel();
        var given = _table.Kinds.Select(_ => LinearExpr.NewBuilder()).ToArray();
        var uses = new IntVar[_patterns.Count];
        var pieces = _asked.Sum(kind => kind.Value.Count);
        foreach (var bar in _patterns.Select((one, p) => (one, p)).GroupBy(one => _part.Shapes[one.one.Cut.Bar]))
        {
            var used = LinearExpr.NewBuilder();
            foreach (var (one, p) in bar)
            {
                uses[p] = model.NewIntVar(0, Math.Min(_part.Shapes.All[bar.Key].Count, pieces), "");
                used.Add(uses[p]);
                foreach (var kind in one.Kinds.GroupBy(kind => kind)) given[kind.Key].AddTerm(uses[p], kind.Count());
            }

            model.Add(used <= _part.Shapes.All[bar.Key].Count);
        }

        var trims = _table.Trims().Select(trim => (trim.From, trim.To, Var: model.NewIntVar(0, pieces, ""))).ToArray();
        foreach (var (from, to, trim) in trims)
        {
            given[from].AddTerm(trim, -1);
            given[to].Add(trim);
        }

        var covered = _part.Rests ? Covered(model) : null;
        for (var k = 0; k < given.Length; k++)
        {
            if (!_asked.TryGetValue(k, out var asked)) model.Add(given[k] >= 0);
            else if (covered is null) model.Add(given[k] >= asked.Count);
            else model.Add(given[k] >= LinearExpr.WeightedSum(asked.Select(one => covered[one.Row]), asked.Select(_ => 1L)));
        }

        if (covered is not null && !Reach(model, covered, effort)) return null;
        model.Minimize(Cost(uses, pieces));
        var solver = new CpSolver { StringParameters = SatSettings.Parameters(Work, effort) };
        using var registration = effort.Cancel.Register(solver.StopSearch);
        if (solver.Solve(model) is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible)) return null;
        foreach (var kind in covered is null ? [] : _asked.Keys.ToArray()) _asked[kind].RemoveAll(one => !solver.BooleanValue(covered![one.Row]));
        return Read(uses.Select(solver.Value).ToArray(), [.. trims.Select(trim => (trim.From, trim.To, solver.Value(trim.Var)))]);
    }

    private Dictionary<Row, BoolVar> Covered(CpModel model)
    {
        var covered = _asked.Values.SelectMany(one => one).Select(one => one.Row).Distinct().OrderBy(row => row.Index).ToDictionary(row => row, _ => model.NewBoolVar(""));
        foreach (var (row, var) in covered)
        {
            if (_part.Under(row) is { } under && covered.TryGetValue(under, out var lower)) model.AddImplication(var, lower);
        }

        return covered;
    }

    // Which rows can be covered at all, the lowest first; they are settled then. False where that was not found out.
    private static bool Reach(CpModel model, Dictionary<Row, BoolVar> covered, Effort effort)
    {
        var levels = covered.Keys.Select(row => row.Number).Distinct().Order().ToList();
        var most = 1 + levels.Max(level => covered.Keys.Count(row => row.Number == level));
        var weights = covered.Keys.Select(row => (long)Math.Pow(most, Math.Max(0, Math.Min(levels.Count, MostLevels) - 1 - levels.IndexOf(row.Number)))).ToArray();
        model.Maximize(LinearExpr.WeightedSum(covered.Values, weights));
        var solver = new CpSolver { StringParameters = SatSettings.Parameters(Work, effort) };
        using var registration = effort.Cancel.Register(solver.StopSearch);
        if (solver.Solve(model) is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible)) return false;
        foreach (var var in covered.Values) model.Add(var == (solver.BooleanValue(var) ? 1 : 0));
        return true;
    }

    // Where stock is limited, saw cuts decide among equals too: there may be no price that does.
    private LinearExpr Cost(IntVar[] uses, int pieces)
    {
        var range = 1 + 2 * _part.Bars.Sum(bar => Math.Min(bar.Count, (long)pieces) * Math.Max(bar.Whole, bar.MostKept));
        var saws = _part.Rests ? 1 + 2L * pieces : 0;
        return LinearExpr.WeightedSum(uses, _patterns.Select(one => (one.Cut.Price * range + one.Cut.GivenUp) * Math.Max(1, saws) + (saws > 0 ? one.Cut.Saws : 0)));
    }

    // A place of a bar from which a piece is cut.
    private sealed class Slot(int bar, int number)
    {
        public int Bar => bar;

        public int Number => number;
    }

    private Filling? Read(long[] uses, (int From, int To, long Count)[] trims)
    {
        var bars = new List<int>();
        var slots = _table.Kinds.Select(_ => new Stack<Slot>()).ToArray();
        for (var p = 0; p < uses.Length; p++)
        {
            for (var times = uses[p]; times > 0; times--)
            {
                for (var cut = 0; cut < _patterns[p].Kinds.Length; cut++) slots[_patterns[p].Kinds[cut]].Push(new Slot(bars.Count, cut));
                bars.Add(p);
            }
        }

        // Longer ones are trimmed before what they are trimmed to is.
        foreach (var (from, to, count) in trims.OrderByDescending(trim => _table.Kinds[trim.From].Length))
        {
            for (var n = 0; n < count; n++) slots[to].Push(slots[from].Pop());
        }

        var cuts = bars.Select(p => new Laid?[_patterns[p].Kinds.Length]).ToArray();
        foreach (var (kind, pieces) in _asked)
        {
            foreach (var piece in pieces)
            {
                var slot = slots[kind].Pop();
                cuts[slot.Bar][slot.Number] = piece;
            }
        }

        var (used, taken) = (new List<UsedBar>(), new int[_part.Bars.Length]);
        for (var b = 0; b < bars.Count; b++)
        {
            Laid[] laid = [.. cuts[b].OfType<Laid>()];
            if (laid.Length == 0) continue;
            var view = _patterns[bars[b]].Cut.View;
            if (_part.Shapes.All[_part.Shapes[view.Bar]].Bars.FirstOrDefault(bar => taken[bar.Index] < bar.Count) is not { } own) return null;
            view = view with { Bar = own };
            taken[view.Bar.Index]++;
            var placed = Ways(laid).Select(ways => BarPattern.Of(_part, view, laid.Zip(ways, (one, way) => (one.Kind, way)))).OfType<BarPattern>().MinBy(one => (one.GivenUp, one.Saws));
            if (placed is null) return null;
            used.Add(new UsedBar(placed, laid));
        }

        var filled = _part.Rows.Select(row => row.Stretches.Length == 0).ToArray();
        foreach (var piece in _asked.Values.SelectMany(one => one)) filled[piece.Row.Index] = true;
        return new Filling(_part, used, filled);
    }

    private static IEnumerable<Ends[]> Ways(Laid[] laid)
    {
        IEnumerable<Ends[]> all = [[]];
        foreach (var one in laid) all = all.SelectMany(done => Cutting.Ways(one.Kind.Ends).Select(way => (Ends[])[.. done, way]));
        return all;
    }
}
