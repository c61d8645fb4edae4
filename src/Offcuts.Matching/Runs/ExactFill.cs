using Google.OrTools.Sat;
using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// Small parts, decided tier by tier.
/// <code>
/// f_r          row r is covered
/// x_r,a,b      a piece lies from place a to place b on a stretch of row r, at least the shortest and at most the longest bar long
/// z_p          how often pattern p of its bar is cut, over every pattern that the bar has
///
/// flow:        sum x_.,b into a place = sum x out of it;  out of the left end = f_r = into the right end
/// stagger:     into a + into b &lt;= 1   for places of neighbouring rows nearer than the stagger
/// resting:     f_r &lt;= f of the row below it, where stock is limited
/// ties:        t_k &gt;= into a          for each place a that needs the tie k
/// kinds:       sum x of a kind = sum z_p (how many of it p gives)
/// stock:       sum z_p of a bar &lt;= how many there are
/// min          unfilled rows level by level; then spend; then value given up; then ties; then joints; then saw cuts
/// </code>
/// The arcs are the arc-flow form of a row, the patterns the cutting-stock form of the stock: Gilmore and Gomory 1961, Valerio de
/// Carvalho 1999 (both from memory). Solved by CP-SAT, whose numbers are whole, with one worker and a fixed seed.
/// Cost: arcs are places times places within a bar; patterns multiply with the pieces a bar gives. Gives up, before it starts, above a
/// number of either, or where time is over while they are listed; and at its limit of work with the best so far.
/// </summary>
internal sealed class ExactFill
{
    private const long Largest = 1L << 45;

    private readonly RunPart _part;
    private readonly CpModel _model = new();
    private readonly List<(Laid Laid, BoolVar Var)> _arcs = [];
    private readonly List<(BarPattern Pattern, IntVar Var, int Most)> _cuts = [];
    private readonly BoolVar[] _filled;
    private readonly Dictionary<(int Row, long At), LinearExprBuilder> _joints = [];
    private readonly List<BoolVar> _ties = [];
    private bool _spendOnly;
    private Worthwhile? _within;
    private Func<IntVar, long>? _last;

    private ExactFill(RunPart part) => (_part, _filled) = (part, [.. part.Rows.Select(_ => default(BoolVar)!)]);

    /// <summary>
    /// The best filling where the part is small enough, and whether it is proven in every tier; none where it is too large or nothing
    /// was found in time. Only over the places and bars listed: where joints may lie anywhere, a proof says nothing of other places.
    /// </summary>
    /// <param name="part">The part.</param>
    /// <param name="size">How large it may be.</param>
    /// <param name="effort">Limit.</param>
    /// <param name="spendOnly">True where nothing after the spend is asked.</param>
    public static (Filling? Best, bool Proven) Solve(RunPart part, ExactSize size, Effort effort, bool spendOnly = false)
    {
        var exact = new ExactFill(part) { _spendOnly = spendOnly };
        return !effort.Over && exact.Build(size, effort) ? exact.Decide(size, effort) : (null, false);
    }

    /// <summary>
    /// The best filling among those that cover every row, spend as much as the one known and give up no more value; and whether it is
    /// proven in every tier. To be asked only where the known one covers every row and its spend is proven.
    /// </summary>
    /// <param name="part">The part: joints on lines only.</param>
    /// <param name="within">What is known, and which patterns can be left out therefore.</param>
    /// <param name="size">How large it may be.</param>
    /// <param name="effort">Limit.</param>
    public static (Filling? Best, bool Proven) Solve(RunPart part, Worthwhile within, ExactSize size, Effort effort)
    {
        var exact = new ExactFill(part) { _within = within };
        return !effort.Over && exact.Build(size, effort) ? exact.Decide(size, effort) : (null, false);
    }

    private bool Build(ExactSize size, Effort effort)
    {
        foreach (var row in _part.Rows)
        {
            _filled[row.Index] = _model.NewBoolVar("");
            if (row.Stretches.Length == 0) _model.Add(_filled[row.Index] == 1);
            for (var s = 0; s < row.Stretches.Length; s++)
            {
                if (!AddStretch(row, s, size.Arcs)) return false;
            }
        }

        foreach (var row in _part.Rows.Where(row => row.Below is not null && row.Stagger > 0)) Stagger(row);
        foreach (var row in _part.Rows.Where(row => row.Stretches.Length > 0))
        {
            if (_part.Under(row) is { } under) _model.AddImplication(_filled[row.Index], _filled[under.Index]);
        }

        Ties();
        return AddPatterns(size, effort);
    }

    private bool AddStretch(Row row, int number, int most)
    {
        var stretch = row.Stretches[number];
        var places = Places.Of(_part, row, stretch);
        var into = places.ToDictionary(at => at, _ => LinearExpr.NewBuilder());
        var outOf = places.ToDictionary(at => at, _ => LinearExpr.NewBuilder());
        for (var a = 0; a < places.Length; a++)
        {
            for (var b = a + 1; b < places.Length && places[b] - places[a] <= _part.LongestBar; b++)
            {
                if (places[b] - places[a] < row.Shortest) continue;
                if (_arcs.Count == most) return false;
                var arc = _model.NewBoolVar("");
                _arcs.Add((new Laid(row, number, places[a], places[b], row.KindOf(stretch, places[a], places[b])), arc));
                into[places[b]].Add(arc);
                outOf[places[a]].Add(arc);
            }
        }

        _model.Add(outOf[stretch.From] == _filled[row.Index]);
        _model.Add(into[stretch.To] == _filled[row.Index]);
        foreach (var at in places[1..^1])
        {
            _model.Add(into[at] == outOf[at]);
            _joints[(row.Index, at)] = into[at];
        }

        return true;
    }

    private void Stagger(Row row)
    {
        var below = _joints.Where(joint => joint.Key.Row == row.Below!.Index).OrderBy(joint => joint.Key.At).ToArray();
        foreach (var (key, joint) in _joints.Where(joint => joint.Key.Row == row.Index).OrderBy(joint => joint.Key.At))
        {
            foreach (var (under, other) in below.Where(under => Math.Abs(under.Key.At - key.At) < row.Stagger))
                _model.Add(LinearExpr.Sum([joint, other]) <= 1);
        }
    }

    private void Ties()
    {
        var ties = new Dictionary<TieKey, BoolVar>();
        foreach (var ((row, at), joint) in _joints)
        {
            if (_part.Rows[row].Tie(at) is not { } key) continue;
            if (!ties.TryGetValue(key, out var tie)) ties[key] = tie = _model.NewBoolVar("");
            _model.Add(joint <= tie);
        }

        _ties.AddRange(ties.Values);
    }

    private bool AddPatterns(ExactSize size, Effort effort)
    {
        var asked = _arcs.GroupBy(arc => arc.Laid.Kind).OrderBy(group => group.Key).ToArray();
        var kinds = asked.Select(group => group.Key).ToArray();
        if (kinds.Length > size.Kinds) return false;
        var most = asked.Select(group => MostOf([.. group.Select(arc => arc.Laid)])).ToArray();
        var given = kinds.Select(_ => LinearExpr.NewBuilder()).ToArray();
        var index = Enumerable.Range(0, kinds.Length).ToDictionary(k => kinds[k]);
        var left = new BarPatterns.Room(size.Steps, size.Patterns, effort);
        foreach (var bar in _part.Bars)
        {
            if (effort.Over || BarPatterns.Of(_part, bar, kinds, most, left with { Patterns = size.Patterns - _cuts.Count }, _within) is not var (patterns, steps)) return false;
            left = left with { Steps = steps };
            var used = LinearExpr.NewBuilder();
            foreach (var pattern in patterns)
            {
                var counts = pattern.Cuts.GroupBy(cut => index[cut.Kind]).Select(group => (Kind: group.Key, Count: group.Count())).ToArray();
                var times = Math.Min(bar.Count, counts.Min(one => most[one.Kind] / one.Count));
                if (times == 0) continue;
                var use = _model.NewIntVar(0, times, "");
                _cuts.Add((pattern, use, times));
                used.Add(use);
                foreach (var (kind, count) in counts) given[kind].AddTerm(use, count);
            }

            _model.Add(used <= bar.Count);
        }

        for (var k = 0; k < kinds.Length; k++) _model.Add(LinearExpr.Sum(asked[k].Select(arc => arc.Var)) == given[k]);
        return true;
    }

    // Of one kind, a stretch holds no more than follow each other without overlap.
    private static int MostOf(Laid[] arcs)
    {
        var most = 0;
        foreach (var stretch in arcs.GroupBy(arc => (arc.Row.Index, arc.Stretch)))
        {
            var end = long.MinValue;
            foreach (var arc in stretch.OrderBy(arc => arc.To).Where(arc => arc.From >= end)) (most, end) = (most + 1, arc.To);
        }

        return most;
    }

    private (Filling? Best, bool Proven) Decide(ExactSize size, Effort effort)
    {
        Filling? best = null;
        var proven = !_part.Open;
        if (_within is not null) Start(_within.Known);
        foreach (var (goal, only) in Goals(() => best))
        {
            if (_last is not null) Hint();
            _model.Minimize(goal);
            var solver = new CpSolver { StringParameters = SatSettings.Unprobed(size.Work, effort) };
            using var registration = effort.Cancel.Register(solver.StopSearch);
            var status = effort.Over ? CpSolverStatus.Unknown : solver.Solve(_model);
            if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible)) return (best, false);
            proven &= status == CpSolverStatus.Optimal;
            best = Read(solver);
            _last = solver.Value;
            // The solver tells it as a floating-point number, which may lie a hair below the whole one.
            var reached = (long)Math.Round(solver.ObjectiveValue);
            if (!only || reached == 0) _model.Add(goal <= reached);
        }

        return (best, proven);
    }

    // What is known is where the solver starts, and what it has to reach.
    private void Start(Filling known)
    {
        var laid = known.Bars.SelectMany(bar => bar.Laid).Select(one => (one.Row.Index, one.Stretch, one.From, one.To)).ToHashSet();
        var used = known.Bars.GroupBy(bar => NameOf(bar.Pattern)).ToDictionary(group => group.Key, group => (long)group.Count());
        var values = new Dictionary<int, long>();
        foreach (var (one, arc) in _arcs) values[arc.Index] = laid.Contains((one.Row.Index, one.Stretch, one.From, one.To)) ? 1 : 0;
        foreach (var (pattern, use, _) in _cuts) values[use.Index] = used.GetValueOrDefault(NameOf(pattern));
        _last = variable => values[variable.Index];
        foreach (var row in _part.Rows.Where(row => row.Stretches.Length > 0)) _model.Add(_filled[row.Index] == 1);
        var tier = _part.Levels.Length;
        _model.Add(Spend() <= known.Figures[tier]);
        _model.Add(GivenUp() <= known.Figures[tier + 1]);
    }

    private static string NameOf(BarPattern pattern) =>
        $"{pattern.Bar.Index}:{string.Join(',', pattern.Cuts.Select(cut => cut.Kind).Order().Select(kind => $"{kind.Length}.{(int)kind.Ends}"))}";

    private void Hint()
    {
        _model.ClearHints();
        foreach (var (_, arc) in _arcs) _model.AddHint(arc, _last!(arc));
        foreach (var (_, use, _) in _cuts) _model.AddHint(use, _last!(use));
    }

    private LinearExpr Spend() => LinearExpr.WeightedSum(_cuts.Select(cut => cut.Var), _cuts.Select(cut => cut.Pattern.Price));

    private LinearExpr GivenUp() => LinearExpr.WeightedSum(_cuts.Select(cut => cut.Var), _cuts.Select(cut => cut.Pattern.GivenUp));

    // Tiers are joined into one goal where the numbers stay small: one proof then decides both. The first asks whether all rows can be
    // covered, and says nothing where they can't: the bottom ones count most.
    private IEnumerable<(LinearExpr Goal, bool OnlyNone)> Goals(Func<Filling?> sofar)
    {
        var left = _part.Rows.Where(row => row.Stretches.Length > 0).Select(row => (row.Number, Var: _filled[row.Index])).ToArray();
        if (left.Length > 0 && _within is null)
        {
            yield return (left.Length - LinearExpr.Sum(left.Select(row => row.Var)), true);
            if (sofar()!.Filled.Contains(false))
            {
                foreach (var level in left.GroupBy(row => row.Number).OrderBy(level => level.Key))
                    yield return (level.Count() - LinearExpr.Sum(level.Select(row => row.Var)), false);
            }
        }

        var (spend, given) = (Spend(), GivenUp());
        if (_spendOnly)
        {
            yield return (spend, false);
            yield break;
        }

        // Nothing spends less than what is known.
        if (_within is not null)
        {
            if (!_within.GivenUpProven) yield return (given, false);
        }
        else if (_cuts.Sum(cut => cut.Pattern.Price * cut.Most) < Largest / Range()) yield return (spend * Range() + given, false);
        else
        {
            yield return (spend, false);
            yield return (given, false);
        }

        var saws = _cuts.Select(cut => (long)cut.Pattern.Saws).Concat(_arcs.Select(arc => arc.Laid.Row.Low ? 1L : 0)).ToArray();
        var sawing = LinearExpr.WeightedSum(_cuts.Select(cut => cut.Var).Concat(_arcs.Select(arc => (IntVar)arc.Var)), saws);
        var most = 1 + _cuts.Sum(cut => (long)cut.Pattern.Saws * cut.Most) + _arcs.Count;
        var joints = LinearExpr.WeightedSum(_arcs.Select(arc => arc.Var), _arcs.Select(arc => arc.Laid.To < arc.Laid.Row.Stretches[arc.Laid.Stretch].To ? 1L : 0));
        var mostJoints = 1L + _joints.Count;
        yield return (LinearExpr.Sum(_ties) * (most * mostJoints) + joints * most + sawing, false);
    }

    private long Range() => 1 + 2 * _cuts.Sum(cut => Math.Abs(cut.Pattern.GivenUp) * cut.Most);

    private Filling Read(CpSolver solver)
    {
        var laid = _arcs.Where(arc => solver.BooleanValue(arc.Var)).Select(arc => arc.Laid)
            .GroupBy(one => one.Kind).ToDictionary(group => group.Key, group => new Queue<Laid>(group));
        var bars = new List<UsedBar>();
        foreach (var (pattern, use, _) in _cuts)
        {
            for (var times = solver.Value(use); times > 0; times--) bars.Add(new UsedBar(pattern, [.. pattern.Cuts.Select(cut => laid[cut.Kind].Dequeue())]));
        }

        return new Filling(_part, bars, [.. _filled.Select(row => solver.BooleanValue(row))]);
    }
}
