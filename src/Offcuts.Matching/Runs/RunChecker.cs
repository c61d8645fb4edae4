using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Runs;

/// <summary>
/// Derives everything that a run plan claims again, from the problem and the plan alone, and says what is wrong. Shares no code with
/// what fills the runs: only the words of the trade, among them the yard value and the use rules.
/// </summary>
public static class RunChecker
{
    /// <summary>Every fault in the plan, each a sentence for a programmer; empty for a right plan.</summary>
    public static IReadOnlyList<string> Faults(RunProblem problem, RunPlan plan)
    {
        var check = new Check(problem, plan);
        check.Stock();
        check.Courses();
        check.Stagger();
        check.Resting();
        check.Ties();
        check.Tiers();
        return check.Faults;
    }

    private sealed class Check(RunProblem problem, RunPlan plan)
    {
        private readonly Dictionary<(string Run, int Course), List<long>> _joints = [];
        private readonly HashSet<(int Piece, int Cut)> _laid = [];
        private readonly int[] _toHeight = new int[plan.Pieces.Count];
        private readonly Dictionary<int, long> _unfilled = [];
        private RunStockCheck _stock = null!;

        public List<string> Faults { get; } = [];

        private void Say(string fault) => Faults.Add(fault);

        public void Stock() => (_stock = new RunStockCheck(problem, plan, Say)).All();

        public void Courses()
        {
            var expected = problem.Runs.SelectMany(run => run.Courses.Select(course => (run.Name, course.Number))).ToArray();
            if (!plan.Courses.Select(course => (course.Run, course.Course)).SequenceEqual(expected))
            {
                Say("the courses are not the problem's");
                return;
            }

            var laid = plan.Courses.GetEnumerator();
            using (laid)
            {
                foreach (var run in problem.Runs)
                {
                    foreach (var course in run.Courses)
                    {
                        laid.MoveNext();
                        Course(run, course, laid.Current);
                    }
                }
            }

            for (var p = 0; p < plan.Pieces.Count; p++)
            {
                for (var c = 0; c < plan.Pieces[p].Cuts.Count; c++)
                {
                    if (!_laid.Contains((p, c))) Say($"the cut {plan.Pieces[p].Cuts[c].Cut} is laid nowhere");
                }

                if (plan.Pieces[p].SawCuts != _stock.Saws[p] + _toHeight[p]) Say($"{plan.Pieces[p].Material}: its saw cuts are miscounted");
            }
        }

        private void Course(Run run, Course course, LaidCourse laid)
        {
            var where = $"{run.Name}, course {course.Number}";
            var joints = _joints[(run.Name, course.Number)] = [];
            var fits = course.Stretches.Where(stretch => stretch.Length >= run.ShortestPiece).ToArray();
            if (fits.Length < course.Stretches.Count && !laid.Unfilled) Say($"{where}: a stretch shorter than any piece is said to be covered");
            var wanting = (fits.Length < course.Stretches.Count ? 1 : 0) + (fits.Length > 0 && laid.Pieces.Count == 0 ? 1 : 0);
            _unfilled[course.Number] = _unfilled.GetValueOrDefault(course.Number) + wanting;
            if (laid.Pieces.Count == 0)
            {
                if (fits.Length > 0 && !laid.Unfilled) Say($"{where}: nothing is laid and no reason is given");
                return;
            }

            if (fits.Length == course.Stretches.Count && laid.Unfilled) Say($"{where}: it is laid and said to be unfilled");
            var next = 0;
            foreach (var stretch in fits)
            {
                var at = stretch.Start;
                var first = next;
                while (next < laid.Pieces.Count && laid.Pieces[next].From < stretch.End)
                {
                    var piece = laid.Pieces[next++];
                    if (piece.From != at) Say($"{where}: a gap or an overlap at {at}");
                    at = piece.To;
                }

                if (at != stretch.End) Say($"{where}: the stretch {stretch} is covered up to {at}");
                for (var n = first; n < next; n++) Piece(run, course, laid.Pieces[n], where, n == first, n == next - 1, n - first + 1);
                joints.AddRange(laid.Pieces.Skip(first).Take(next - first - 1).Select(piece => piece.To.Units));
            }

            if (next != laid.Pieces.Count) Say($"{where}: pieces lie outside its stretches");
            foreach (var joint in joints.Where(joint => run.Joints != JointRule.Anywhere && !run.Lines.IsLine(Length.FromUnits(joint))))
                Say($"{where}: the joint at {Length.FromUnits(joint)} lies on no line");
        }

        private void Piece(Run run, Course course, LaidPiece laid, string where, bool first, bool last, int position)
        {
            if (laid.Piece < 0 || laid.Piece >= plan.Pieces.Count || laid.Cut < 0 || laid.Cut >= plan.Pieces[laid.Piece].Cuts.Count)
            {
                Say($"{where}: piece {position} is cut from nothing");
                return;
            }

            var stock = plan.Pieces[laid.Piece];
            var cut = stock.Cuts[laid.Cut];
            if (!_laid.Add((laid.Piece, laid.Cut))) Say($"{where}: the cut {cut.Cut} is laid twice");
            if (!stock.Material.Equals(run.Material)) Say($"{where}: {stock.Material} is laid instead of {run.Material}");
            if (laid.To <= laid.From || cut.Length != laid.To - laid.From) Say($"{where}: a piece of {cut.Length} lies from {laid.From} to {laid.To}");
            if (cut.Length < run.ShortestPiece) Say($"{where}: a piece of {cut.Length} is shorter than {run.ShortestPiece}");
            if (cut.Stage != problem.Stage || !cut.Cut.StartsWith($"{run.Name}, course {course.Number}, piece ", StringComparison.Ordinal)) Say($"{where}: the cut is named {cut.Cut}");
            if (cut.Use != problem.UseOf(run.Material)) Say($"{where}: the cut serves another use");
            if (laid.Turned && !run.Reversible) Say($"{where}: a piece that may not be turned is");
            if (course.Height < FullHeight(run)) _toHeight[laid.Piece]++;
            if (run.Joints != JointRule.OnPattern || (first && last)) return;

            // Turned, the end nearer to the marked end points right in the wall.
            if (!first && !OnLine(stock, laid.Turned ? cut.Start + cut.Length : cut.Start, run)) Say($"{where}: the left end at {laid.From} is off the piece's pattern");
            if (!last && !OnLine(stock, laid.Turned ? cut.Start : cut.Start + cut.Length, run)) Say($"{where}: the right end at {laid.To} is off the piece's pattern");
        }

        private static Length FullHeight(Run run) =>
            Core.Materials.Ripping.Width(run.Material) ?? run.Courses.Max(course => course.Height);

        private static bool OnLine(PlannedPiece stock, Length at, Run run)
        {
            var line = stock.Source is { } source ? source.FirstLine : Length.Zero;
            return line is { } known && (at.Units - known.Units) % run.Lines.Interval.Units == 0;
        }

        public void Stagger()
        {
            foreach (var run in problem.Runs)
            {
                foreach (var course in run.Courses)
                {
                    if (!_joints.TryGetValue((run.Name, course.Number), out var laid)) continue;
                    foreach (var joint in laid.Where(joint => run.Standing.Where(other => other.Number == course.Number - 1 || other.Number == course.Number + 1).Any(other => other.Joints.Any(at => Math.Abs(joint - at.Units) < run.Stagger.Units))))
                        Say($"{run.Name}, course {course.Number}: the joint at {Length.FromUnits(joint)} lies too near one of a course that stands");
                }

                for (var c = 1; c < run.Courses.Count; c++)
                {
                    if (run.Standing.Any(other => other.Number > run.Courses[c - 1].Number && other.Number < run.Courses[c].Number)) continue;
                    if (!_joints.TryGetValue((run.Name, run.Courses[c].Number), out var above) || !_joints.TryGetValue((run.Name, run.Courses[c - 1].Number), out var below)) continue;
                    foreach (var joint in above.Where(joint => below.Any(under => Math.Abs(joint - under) < run.Stagger.Units)))
                        Say($"{run.Name}, course {run.Courses[c].Number}: the joint at {Length.FromUnits(joint)} lies too near one below");
                }
            }
        }

        // Where nothing can be bought without a limit, a course lies on one that is covered.
        public void Resting()
        {
            foreach (var run in problem.Runs.Where(run => !problem.Buy || problem.Prices.Of(run.Material).All(price => price.Limit is not null)))
            {
                var laid = plan.Courses.Where(course => course.Run == run.Name).ToDictionary(course => course.Course, course => course.Pieces.Count > 0);
                for (var c = 1; c < run.Courses.Count; c++)
                {
                    var (below, number) = (run.Courses[c - 1], run.Courses[c].Number);
                    if (run.Standing.Any(other => other.Number > below.Number && other.Number < number)) continue;
                    if (laid.GetValueOrDefault(number) && !laid.GetValueOrDefault(below.Number) && below.Stretches.Any(stretch => stretch.Length >= run.ShortestPiece))
                        Say($"{run.Name}, course {number}: it is laid on a course that stays open");
                }
            }
        }

        public void Ties()
        {
            var ties = new HashSet<ExtraTie>();
            foreach (var run in problem.Runs)
            {
                foreach (var course in run.Courses)
                {
                    foreach (var joint in _joints.GetValueOrDefault((run.Name, course.Number), []))
                    {
                        var at = Length.FromUnits(joint);
                        if (!run.Lines.IsTie(at)) ties.Add(new ExtraTie(run.Leg, course.Number, at, run.Lines.IsLine(at) ? null : run.Name));
                    }
                }
            }

            if (!ties.SetEquals(plan.ExtraTies) || ties.Count != plan.ExtraTies.Count) Say("the extra ties are not those of the joints beside the regular ones");
        }

        public void Tiers()
        {
            var tiers = plan.Tiers;
            var levels = problem.Runs.SelectMany(run => run.Courses).Select(course => course.Number).Distinct().Order()
                .Select(number => (number, _unfilled.GetValueOrDefault(number)));
            if (!tiers.Unfilled.Select(level => (level.Course, level.Unfilled.Value)).SequenceEqual(levels)) Say("the unfilled courses are miscounted");
            Figure("spend", tiers.Spend, plan.Pieces.Sum(piece => piece.Bought?.Price.Cents ?? 0));
            Figure("the value given up", tiers.ValueGivenUp, _stock.GivenUp);
            Figure("the extra ties", tiers.ExtraTies, plan.ExtraTies.Count);
            Figure("the joints", tiers.Joints, _joints.Values.Sum(joints => joints.Count));
            Figure("the saw cuts", tiers.SawCuts, _stock.Saws.Sum() + _toHeight.Sum());
            if (tiers.Unfilled.Any(level => level.Unfilled.Bound > level.Unfilled.Value)) Say("a bound of the unfilled courses is above their number");
        }

        private void Figure(string name, Figure said, long derived)
        {
            if (said.Value != derived) Say($"{name} is said to be {said.Value} and is {derived}");
            if (said.Bound > said.Value) Say($"{name}: the bound {said.Bound} is above the value {said.Value}");
        }
    }
}
