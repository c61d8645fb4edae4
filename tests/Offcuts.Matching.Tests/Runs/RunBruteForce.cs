using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Runs;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>
/// The best figures of tiny runs by trying everything: every set of joints of every course, every way to cut the pieces that it needs.
/// Written from the definition alone; shares no code with the filler. Joints on lines only.
/// </summary>
internal sealed class RunBruteForce
{
    // Every length of the drawn walls is a whole number of quarter inches.
    private const long Grain = Length.PerInch / 4;

    private readonly RunProblem _problem;
    private readonly long _kerf;
    private readonly List<Source> _sources = [];
    private readonly Dictionary<string, long[]?> _cheapest = [];
    private readonly List<Line> _lines = [];
    private readonly int[] _numbers;
    private readonly bool _rests;
    private long[]? _best;
    private long _steps;

    private RunBruteForce(RunProblem problem)
    {
        _problem = problem;
        var material = problem.Materials.Single();
        _kerf = problem.Settings.Kerf(material).Units;
        foreach (var piece in problem.Pieces.Where(piece => piece.Material.Equals(material) && problem.Settings.Rules.Allows(
            piece.Condition, piece.Stamped, piece.Treated, Use.Nonstructural, TreatedWish.Any)))
        {
            foreach (var span in piece.Spans()) _sources.Add(new Source(span.Start.Units, span.End.Units, piece.FirstLine?.Units, 0, 1, piece.Condition, false));
        }

        foreach (var price in problem.Buy ? problem.Prices.Of(material) : [])
            _sources.Add(new Source(0, price.Length.Units, 0, price.Price.Cents, price.Limit ?? 99, Condition.Sound, true));
        // Nothing is laid on an open course where no stock is without a limit.
        _rests = !problem.Buy || problem.Prices.Of(material).All(price => price.Limit is not null);
        foreach (var run in problem.Runs)
        {
            for (var c = 0; c < run.Courses.Count; c++) _lines.Add(new Line(run, c));
        }

        _numbers = [.. _lines.Select(line => line.Number).Distinct().Order()];
    }

    private sealed record Source(long Start, long End, long? Line, long Price, int Count, Condition Condition, bool Bought);

    private sealed record Line(Run Run, int Index)
    {
        public int Number => Run.Courses[Index].Number;
    }

    // A piece that is needed; whether its left or right end has to be on the pattern.
    private sealed record Need(long Length, bool Left, bool Right, bool MayTurn);

    // Joints of one course, with the pieces; no joints and no pieces where it stays unfilled.
    private sealed record Layout(bool Filled, long[] Joints, Need[] Needs);

    /// <summary>
    /// The figures of the best plan: unfilled by course number, spend, value given up, extra ties, joints, saw cuts. None where that takes
    /// more steps than allowed.
    /// </summary>
    public static long[]? Best(RunProblem problem, long steps)
    {
        var force = new RunBruteForce(problem) { _steps = steps };
        force.Choose([]);
        return force._steps < 0 ? null : force._best!;
    }

    private void Choose(List<Layout> chosen)
    {
        if (--_steps < 0) return;
        if (chosen.Count == _lines.Count)
        {
            Judge(chosen);
            return;
        }

        var line = _lines[chosen.Count];
        foreach (var layout in Layouts(line))
        {
            var below = line.Index > 0 ? chosen[^1] : null;
            if (below is not null && layout.Joints.Any(joint => below.Joints.Any(under => Math.Abs(under - joint) < line.Run.Stagger.Units))) continue;
            if (_rests && below is { Filled: false } && layout.Needs.Length > 0) continue;
            chosen.Add(layout);
            Choose(chosen);
            chosen.RemoveAt(chosen.Count - 1);
        }
    }

    private static IEnumerable<Layout> Layouts(Line line)
    {
        var stretches = line.Run.Courses[line.Index].Stretches.Where(stretch => stretch.Length >= line.Run.ShortestPiece).ToArray();
        foreach (var all in Product([.. stretches.Select(stretch => Splits(line.Run, stretch).ToArray())]))
            yield return new Layout(true, [.. all.SelectMany(one => one.Joints)], [.. all.SelectMany(one => one.Needs)]);
        if (stretches.Length > 0) yield return new Layout(false, [], []);
    }

    private static IEnumerable<Layout[]> Product(Layout[][] choices)
    {
        IEnumerable<Layout[]> all = [[]];
        foreach (var next in choices) all = all.SelectMany(done => next.Select(one => (Layout[])[.. done, one]));
        return all;
    }

    private static IEnumerable<Layout> Splits(Run run, Span stretch)
    {
        var places = new List<long>();
        for (var at = stretch.Start.Units + Grain; at < stretch.End.Units; at += Grain)
        {
            if (run.Lines.IsLine(Length.FromUnits(at))) places.Add(at);
        }

        for (var subset = 0; subset < 1 << places.Count; subset++)
        {
            long[] ends = [stretch.Start.Units, .. places.Where((_, p) => (subset & (1 << p)) != 0), stretch.End.Units];
            var needs = new List<Need>();
            for (var e = 1; e < ends.Length; e++)
            {
                var pattern = run.Joints == JointRule.OnPattern && ends.Length > 2;
                needs.Add(new Need(ends[e] - ends[e - 1], pattern && e > 1, pattern && e < ends.Length - 1, run.Reversible));
            }

            if (needs.TrueForAll(need => need.Length >= run.ShortestPiece.Units)) yield return new Layout(true, ends[1..^1], [.. needs]);
        }
    }

    private void Judge(List<Layout> chosen)
    {
        var needs = chosen.SelectMany(layout => layout.Needs).ToList();
        var unfilled = _numbers.Select(number => Enumerable.Range(0, _lines.Count).Where(l => _lines[l].Number == number)
            .Sum(l => (chosen[l].Filled ? 0L : 1) + (Short(_lines[l]) ? 1 : 0))).ToArray();
        if (_best is not null && Compare(unfilled, _best[..unfilled.Length]) > 0) return;
        if (Cheapest(0, needs) is not { } cost) return;
        var ties = new HashSet<(string, int, long)>();
        long joints = 0, low = 0;
        for (var l = 0; l < _lines.Count; l++)
        {
            var course = _lines[l].Run.Courses[_lines[l].Index];
            joints += chosen[l].Joints.Length;
            if (course.Height < (_lines[l].Run.Joints == JointRule.OnPattern ? Length.Inches(12) : Length.Inches(9.25m))) low += chosen[l].Needs.Length;
            foreach (var joint in chosen[l].Joints.Where(joint => !_lines[l].Run.Lines.IsTie(Length.FromUnits(joint)))) ties.Add((_lines[l].Run.Leg, course.Number, joint));
        }

        long[] figures = [.. unfilled, cost[0], cost[1], ties.Count, joints, cost[2] + low];
        if (_best is null || Compare(figures, _best) < 0) _best = figures;
    }

    private static bool Short(Line line) => line.Run.Courses[line.Index].Stretches.Any(stretch => stretch.Length < line.Run.ShortestPiece);

    private static int Compare(long[] a, long[] b)
    {
        for (var i = 0; i < a.Length; i++)
        {
            if (a[i] != b[i]) return a[i].CompareTo(b[i]);
        }

        return 0;
    }

    // Spend, value given up and saw cuts of cutting these needs from the sources from a number on; none where they don't suffice.
    private long[]? Cheapest(int source, List<Need> needs) =>
        needs.Count == 0 ? [0, 0, 0] : source == _sources.Count ? null : Known(source, Math.Min(needs.Count, _sources[source].Count), needs);

    private long[]? Known(int source, int copies, List<Need> needs)
    {
        var ordered = needs.OrderBy(need => need.Length).ThenBy(need => need.Left).ThenBy(need => need.Right).ToList();
        var key = $"{source}:{copies}:" + string.Join(",", ordered.Select(need => $"{need.Length}{need.Left}{need.Right}{need.MayTurn}"));
        if (_cheapest.TryGetValue(key, out var known)) return known;
        var best = Several(source, copies, ordered);
        _cheapest[key] = best;
        return best;
    }

    private long[]? Several(int source, int copies, List<Need> needs)
    {
        var best = Cheapest(source + 1, needs);
        if (copies == 0 || needs.Count == 0) return best;
        // The first need of all is cut from this copy or from none of them: copies are alike.
        foreach (var fromLeft in new[] { true, false }) Cut(_sources[source], fromLeft, null, 0, 0, needs, []);
        return best;

        void Cut(Source from, bool left, long? at, long kept, long saws, List<Need> rest, List<Need> cut)
        {
            if (--_steps < 0) return;
            if (cut.Count > 0)
            {
                var (lastKept, lastSaws) = End(from, left, at!.Value);
                var given = (from.Bought ? 0 : Value(from, from.End - from.Start)) - kept - lastKept;
                if ((rest.Count == 0 ? [0, 0, 0] : Known(source, copies - 1, rest)) is { } others)
                {
                    long[] all = [others[0] + from.Price, others[1] + given, others[2] + saws + lastSaws];
                    if (best is null || Compare(all, best) < 0) best = all;
                }
            }

            foreach (var need in rest.Distinct().ToArray())
            {
                foreach (var turned in need.MayTurn && need.Left != need.Right ? new[] { false, true } : [false])
                {
                    var (onLeft, onRight) = turned ? (need.Right, need.Left) : (need.Left, need.Right);
                    if (Place(from, left, at, need.Length, onLeft, onRight) is not { } start) continue;
                    var (gapKept, gapSaws) = Gap(from, left, at, start, need.Length);
                    var others = rest.ToList();
                    others.Remove(need);
                    Cut(from, left, left ? start + need.Length : start, kept + gapKept, saws + gapSaws, others, [.. cut, need]);
                }
            }
        }
    }

    // Walks along the piece to the nearest place that will do.
    private long? Place(Source from, bool left, long? at, long length, bool onLeft, bool onRight)
    {
        var interval = _problem.Runs[0].Lines.Interval.Units;
        var start = left ? (at is { } end ? end + _kerf : from.Start) : (at is { } begin ? begin - _kerf : from.End) - length;
        if (onLeft || onRight)
        {
            if (from.Line is not { } line) return null;
            while ((start + (onLeft ? 0 : length) - line) % interval != 0) start += left ? Grain : -Grain;
            if (onLeft && onRight && length % interval != 0) return null;
        }

        return start < from.Start || start + length > from.End ? null : start;
    }

    private (long Kept, long Saws) Gap(Source from, bool left, long? at, long start, long length)
    {
        var gap = left ? start - (at ?? from.Start) : (at ?? from.End) - (start + length);
        if (at is null) return gap == 0 ? (0, 0) : (Value(from, gap - _kerf), 1);
        return gap == _kerf ? (0, 1) : (Value(from, gap - 2 * _kerf), 2);
    }

    private (long Kept, long Saws) End(Source from, bool left, long at)
    {
        var gap = left ? from.End - at : at - from.Start;
        return gap == 0 ? (0, 0) : (Value(from, gap - _kerf), 1);
    }

    private long Value(Source from, long length)
    {
        var material = _problem.Materials.Single();
        return length <= 0 ? 0 : YardValue.Of(Length.FromUnits(length), from.Condition, _problem.Prices.ForValue(material, false), _problem.Settings.Keep(material)).Cents;
    }
}
