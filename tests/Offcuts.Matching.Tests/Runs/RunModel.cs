using Google.OrTools.Sat;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Runs;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>
/// Runs as a plain model for CP-SAT, written from the definition alone; shares no code with the filler. Joints on lines only.
/// <code>
/// a row is a path     over its ends and lines; an arc is a piece; neighbours' joints nearer than the stagger exclude each other
/// a bar is a path     over the places where a cut may end, from either end; an arc is a cut with the trim before it, a last arc the rest
/// pieces of a kind    laid = cut
/// </code>
/// All tiers: unfilled courses level by level, spend, yard value given up, extra ties, joints, saw cuts.
/// </summary>
internal sealed class RunModel
{
    private readonly RunProblem _problem;
    private readonly long _kerf;
    private readonly long _interval;
    private readonly Dictionary<Need, List<(IntVar Var, int Sign)>> _balance = [];
    private readonly List<(IntVar Var, long Spend, long Given, long Saws)> _costs = [];
    private readonly Dictionary<(Run Run, int Course), BoolVar> _filled = [];
    private readonly Dictionary<(string, int, long), BoolVar> _ties = [];
    private readonly List<(Run Run, int Course, long At, BoolVar Var)> _joints = [];

    private RunModel(RunProblem problem)
    {
        _problem = problem;
        _kerf = problem.Settings.Kerf(problem.Materials.Single()).Units;
        _interval = problem.Runs[0].Lines.Interval.Units;
    }

    // What is asked of a piece; one that may be turned is asked for as its right end lay on the pattern.
    private readonly record struct Need(long Length, bool Left, bool Right, bool MayTurn);

    private readonly record struct Source(long Start, long End, long? Line, long Price, int Count, Condition Condition, bool Bought);

    /// <summary>What CP-SAT solves.</summary>
    public CpModel Model { get; } = new();

    /// <summary>What is minimised, one after the other.</summary>
    public List<LinearExpr> Tiers { get; } = [];

    /// <summary>How many course numbers there are: the first tiers.</summary>
    public int Levels { get; private set; }

    /// <summary>The whole model.</summary>
    public static RunModel Of(RunProblem problem) => Of(problem, () => false)!;

    /// <summary>The same; none where it gets late before it is whole.</summary>
    public static RunModel? Of(RunProblem problem, Func<bool> late)
    {
        var model = new RunModel(problem);
        foreach (var run in problem.Runs)
        {
            for (var c = 0; c < run.Courses.Count; c++)
            {
                model.AddCourse(run, c);
                if (late()) return null;
            }

            for (var c = 1; c < run.Courses.Count; c++)
            {
                model.AddStagger(run, c);
                if (late()) return null;
            }

            if (problem.Buy && problem.Prices.Of(run.Material).Any(price => price.Limit is null)) continue;
            for (var c = 1; c < run.Courses.Count; c++) model.AddResting(run, c);
        }

        foreach (var source in model.Sources())
        {
            model.AddSource(source);
            if (late()) return null;
        }

        foreach (var balance in model._balance.Values) model.Model.Add(LinearExpr.WeightedSum(balance.Select(one => one.Var), balance.Select(one => one.Sign)) == 0);
        model.AddTiers();
        return late() ? null : model;
    }

    /// <summary>The figures of the best plan, tier by tier; none where some tier is not decided within so much work.</summary>
    public static long[]? Best(RunProblem problem, double work)
    {
        var model = Of(problem);
        var figures = new List<long>();
        foreach (var tier in model.Tiers)
        {
            model.Model.Minimize(tier);
            using var solver = new CpSolver { StringParameters = FormattableString.Invariant($"num_workers:1 max_deterministic_time:{work}") };
            if (solver.Solve(model.Model) != CpSolverStatus.Optimal) return null;
            figures.Add((long)Math.Round(solver.ObjectiveValue));
            model.Model.Add(tier == figures[^1]);
        }

        return [.. figures];
    }

    private IEnumerable<Source> Sources()
    {
        var material = _problem.Materials.Single();
        foreach (var piece in _problem.Pieces.Where(piece => piece.Material.Equals(material) && _problem.Settings.Rules.Allows(
            piece.Condition, piece.Stamped, piece.Treated, Use.Nonstructural, TreatedWish.Any)))
        {
            foreach (var span in piece.Spans()) yield return new Source(span.Start.Units, span.End.Units, piece.FirstLine?.Units, 0, 1, piece.Condition, false);
        }

        var most = (int)_problem.Runs.Sum(run => run.Courses.Sum(course => course.Stretches.Sum(stretch => 2 + stretch.Length.Units / _interval)));
        foreach (var price in _problem.Buy ? _problem.Prices.Of(material) : [])
            yield return new Source(0, price.Length.Units, 0, price.Price.Cents, Math.Min(price.Limit ?? most, most), Condition.Sound, true);
    }

    private static Span[] Open(Run run, int course) => [.. run.Courses[course].Stretches.Where(stretch => stretch.Length >= run.ShortestPiece)];

    private void AddCourse(Run run, int index)
    {
        var filled = _filled[(run, index)] = Model.NewBoolVar("");
        var stretches = Open(run, index);
        if (stretches.Length == 0) Model.Add(filled == 1);
        foreach (var stretch in stretches)
        {
            var (from, to) = (stretch.Start.Units, stretch.End.Units);
            var places = new List<long> { from };
            for (var at = from + 1 + Off(run.Lines.FirstTie.Units - from - 1); at < to; at += _interval) places.Add(at);
            places.Add(to);
            var (into, outOf) = (places.ToDictionary(at => at, _ => LinearExpr.NewBuilder()), places.ToDictionary(at => at, _ => LinearExpr.NewBuilder()));
            foreach (var (a, b) in places.SelectMany(a => places.Where(b => b > a && b - a >= run.ShortestPiece.Units).Select(b => (a, b))))
            {
                var pattern = run.Joints == JointRule.OnPattern && !(a == from && b == to);
                var arc = Model.NewBoolVar("");
                Balance(new Need(b - a, pattern && a > from, pattern && b < to, run.Reversible), arc, 1);
                _costs.Add((arc, 0, 0, run.Courses[index].Height < Full(run) ? 1 : 0));
                into[b].Add(arc);
                outOf[a].Add(arc);
            }

            Model.Add(outOf[from] == filled);
            Model.Add(into[to] == filled);
            foreach (var at in places[1..^1])
            {
                var joint = Model.NewBoolVar("");
                Model.Add(into[at] == joint);
                Model.Add(outOf[at] == joint);
                _joints.Add((run, index, at, joint));
                if (run.Lines.IsTie(Length.FromUnits(at))) continue;
                var key = (run.Leg, run.Courses[index].Number, at);
                if (!_ties.TryGetValue(key, out var tie)) _ties[key] = tie = Model.NewBoolVar("");
                Model.AddImplication(joint, tie);
            }
        }
    }

    private static Length Full(Run run) => run.Joints == JointRule.OnPattern ? Length.Inches(12) : Length.Inches(9.25m);

    private void AddStagger(Run run, int course)
    {
        foreach (var upper in _joints.Where(joint => joint.Run == run && joint.Course == course).ToArray())
        {
            foreach (var lower in _joints.Where(joint => joint.Run == run && joint.Course == course - 1 && Math.Abs(joint.At - upper.At) < run.Stagger.Units))
                Model.AddBoolOr([upper.Var.Not(), lower.Var.Not()]);
        }
    }

    // Nothing is laid on an open course where no stock is without a limit.
    private void AddResting(Run run, int course)
    {
        if (Open(run, course).Length > 0) Model.AddImplication(_filled[(run, course)], _filled[(run, course - 1)]);
    }

    private void AddSource(Source source)
    {
        var whole = source.Bought ? 0 : Value(source, source.End - source.Start);
        var starts = new List<IntVar>();
        foreach (var fromLeft in new[] { true, false })
        {
            // Places are measured from the end that cutting starts at.
            var length = source.End - source.Start;
            long? line = source.Line is { } at ? Off(fromLeft ? at - source.Start : source.End - at) : null;
            var flows = new SortedDictionary<long, (LinearExprBuilder In, LinearExprBuilder Out)> { [-1] = (LinearExpr.NewBuilder(), LinearExpr.NewBuilder()) };
            var todo = new SortedSet<long> { -1 };
            while (todo.Count > 0)
            {
                var end = todo.Min;
                todo.Remove(end);
                foreach (var need in _balance.Keys.ToArray())
                {
                    foreach (var (near, far) in Ways(need, fromLeft).Distinct())
                    {
                        var earliest = end < 0 ? 0 : end + _kerf;
                        if ((near || far) && line is null) continue;
                        var start = near || far ? earliest + Off(line!.Value - (near ? earliest : earliest + need.Length)) : earliest;
                        if (start + need.Length > length || (near && far && need.Length % _interval != 0)) continue;
                        var cut = Model.NewIntVar(0, source.Count, "");
                        var trim = end < 0 ? start - _kerf : start - end - 2 * _kerf;
                        var saws = end < 0 ? (start > 0 ? 1 : 0) : start == end + _kerf ? 1 : 2;
                        _costs.Add((cut, end < 0 ? source.Price : 0, (end < 0 ? whole : 0) - Value(source, trim), saws));
                        Balance(need, cut, -1);
                        if (end < 0) starts.Add(cut);
                        if (!flows.ContainsKey(start + need.Length)) flows[start + need.Length] = (LinearExpr.NewBuilder(), LinearExpr.NewBuilder());
                        flows[start + need.Length].In.Add(cut);
                        flows[end].Out.Add(cut);
                        todo.Add(start + need.Length);
                    }
                }
            }

            foreach (var (end, flow) in flows.Where(flow => flow.Key >= 0))
            {
                var last = Model.NewIntVar(0, source.Count, "");
                _costs.Add((last, 0, -Value(source, length - end - _kerf), end < length ? 1 : 0));
                Model.Add(flow.In == flow.Out + last);
            }
        }

        Model.Add(LinearExpr.Sum(starts) <= source.Count);
    }

    // Whether the end nearer to where cutting starts, and the one farther off, lie on the pattern.
    private static IEnumerable<(bool Near, bool Far)> Ways(Need need, bool fromLeft)
    {
        var (near, far) = fromLeft ? (need.Left, need.Right) : (need.Right, need.Left);
        yield return (near, far);
        if (need.MayTurn) yield return (far, near);
    }

    private void Balance(Need need, IntVar var, int sign)
    {
        if (need.MayTurn && need.Left != need.Right) need = need with { Left = false, Right = true };
        if (!_balance.TryGetValue(need, out var list)) _balance[need] = list = [];
        list.Add((var, sign));
    }

    private void AddTiers()
    {
        var courses = _filled.Keys.ToLookup(key => key.Run.Courses[key.Course].Number);
        Levels = courses.Count;
        foreach (var level in courses.OrderBy(level => level.Key))
        {
            var gaps = level.Count(key => Open(key.Run, key.Course).Length < key.Run.Courses[key.Course].Stretches.Count);
            Tiers.Add(gaps + level.Count() - LinearExpr.Sum(level.Select(key => _filled[key])));
        }

        Tiers.Add(LinearExpr.WeightedSum(_costs.Select(cost => cost.Var), _costs.Select(cost => cost.Spend)));
        Tiers.Add(LinearExpr.WeightedSum(_costs.Select(cost => cost.Var), _costs.Select(cost => cost.Given)));
        Tiers.Add(LinearExpr.Sum(_ties.Values));
        Tiers.Add(LinearExpr.Sum(_joints.Select(joint => joint.Var)));
        Tiers.Add(LinearExpr.WeightedSum(_costs.Select(cost => cost.Var), _costs.Select(cost => cost.Saws)));
    }

    private long Off(long value) => (value % _interval + _interval) % _interval;

    private long Value(Source source, long length)
    {
        var material = _problem.Materials.Single();
        return length <= 0 ? 0 : YardValue.Of(Length.FromUnits(length), source.Condition, _problem.Prices.ForValue(material, false), _problem.Settings.Keep(material)).Cents;
    }
}
