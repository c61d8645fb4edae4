using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>Which courses were stacked.</summary>
/// <param name="Wall">Name of the wall.</param>
/// <param name="Courses">Their numbers.</param>
/// <param name="Leg">Only of this leg, in either case; none for all.</param>
/// <param name="Face">Only on this face; none for both.</param>
public sealed record StackedWish(string Wall, IReadOnlyList<int> Courses, string? Leg = null, Face? Face = null);

/// <summary>What stacking did.</summary>
/// <param name="Courses">Courses that stand now.</param>
/// <param name="Carried">What was cut for them.</param>
/// <param name="Rest">True where the rest of the wall has to be filled again, from what is left now.</param>
public sealed record WallStacked(IReadOnlyList<StackedCourse> Courses, CarriedOut Carried, bool Rest);

/// <summary>
/// Marks courses of a wall as stacked, as its kept filling has them. From each piece only the cuts for these courses are made; what is left
/// of it goes back to the yard as one piece or several, each with its own first line. What was planned for the other courses is given up,
/// for they are to be filled again from what is really left. All in one change.
/// </summary>
public sealed class StackWall(YardFile yard, DateOnly today, MatchLimits limits)
{
    /// <summary>Stacks them. Nothing changes where anything is refused.</summary>
    public Result<WallStacked> Do(StackedWish wish)
    {
        var found = new ChangeWalls(yard).Laid(wish.Wall).Then<(StageWall Wall, IReadOnlyList<Run> Runs)>(wall => (wall.Kept, Chosen(wall.Laid, wish)));
        if (!found.TryGet(out var here)) return Result<WallStacked>.Fail(found.Faults);
        var fill = new FillWall(yard);
        if (fill.KeptOf(here.Wall) is not { } kept || yard.Plan(kept.PlanId) is not { } steps) return FillFaults.NothingKept(here.Wall.Sheet.Name);

        var standing = fill.Standing(here.Wall);
        var known = standing.Select(course => (course.Run, course.Course)).ToHashSet();
        var named = Asked(here.Runs, wish.Courses);
        // Where a course stands on one leg already, the others are meant.
        var asked = named.Where(course => !known.Contains(course)).ToHashSet();
        var faults = Faults(here, wish, named, asked, known, kept).ToArray();
        if (faults.Length > 0) return Result<WallStacked>.Fail(faults);

        LaidCourse[] courses = [.. kept.Plan.Courses.Where(course => asked.Contains((course.Run, course.Course)))];
        var acts = courses.SelectMany(course => course.Pieces)
            .GroupBy(one => one.Piece)
            .Where(same => steps.Steps[same.Key].State == StepState.Waiting)
            .OrderBy(same => same.Key)
            .Select(same => Act(kept.Plan.Pieces[same.Key], same.Key, [.. same.Select(one => one.Cut)]))
            .ToArray();
        StackedCourse[] stacked = [.. courses.Select(course => StackedCourse.Of(here.Wall.Sheet.Name, course, kept.Plan))];
        var rest = kept.Plan.Courses.Any(course => !asked.Contains((course.Run, course.Course)) && !known.Contains((course.Run, course.Course)));
        var told = $"stacked {Words.Count(stacked.Length, "course")} of the wall {here.Wall.Sheet.Name}";
        return new CarryOut(yard, today, limits).Do(kept.PlanId, acts, told, work =>
        {
            foreach (var course in stacked) work.Stack(course);
            work.DropWallPlan(here.Wall.Sheet.Name);
        }).Then<WallStacked>(carried => new WallStacked(stacked, carried, rest));
    }

    /// <summary>The same wish, or which of its courses the wall does not have there.</summary>
    public static Result<StackedWish> There(Offcuts.Walls.LaidWall laid, StackedWish wish)
    {
        var named = Asked(Chosen(laid, wish), wish.Courses);
        Fault[] faults = [.. wish.Courses.Where(number => named.All(course => course.Course != number)).Select(number => FillFaults.NothingToStack(wish.Wall, number))];
        return faults.Length > 0 ? Result<StackedWish>.Fail(faults) : wish;
    }

    private static IReadOnlyList<Run> Chosen(Offcuts.Walls.LaidWall laid, StackedWish wish) =>
    [
        .. from run in laid.Runs.Select((run, i) => (Run: run, Face: i % 2)).Concat(laid.FootingRuns.Select((run, i) => (Run: run, Face: i % 2)))
           where wish.Leg is not { } leg || Same(run.Run.Leg, leg.Trim())
           where wish.Face is not { } face || (run.Face == 0 ? Face.Outside : Face.Inside) == face
           where wish.Leg is not null || laid.Runs.Contains(run.Run)
           select run.Run,
    ];

    // Of each run the courses of these numbers that it has; a number that no run has is told by the faults.
    private static HashSet<(string Run, int Course)> Asked(IReadOnlyList<Run> runs, IReadOnlyList<int> numbers) =>
        [.. from run in runs from course in run.Courses where course.Stretches.Count > 0 && numbers.Contains(course.Number) select (run.Name, course.Number)];

    private static IEnumerable<Fault> Faults((StageWall Wall, IReadOnlyList<Run> Runs) here, StackedWish wish, HashSet<(string Run, int Course)> named, HashSet<(string Run, int Course)> asked, HashSet<(string Run, int Course)> known, KeptWallPlan kept)
    {
        foreach (var number in wish.Courses.Where(number => named.All(course => course.Course != number)))
            yield return FillFaults.NothingToStack(here.Wall.Sheet.Name, number);
        foreach (var number in wish.Courses.Where(number => asked.All(course => course.Course != number)))
        {
            foreach (var (run, course) in named.Where(course => course.Course == number).Order().Take(1)) yield return FillFaults.StacksAlready(run, course);
        }

        foreach (var run in here.Runs)
        {
            foreach (var course in run.Courses.Where(course => asked.Contains((run.Name, course.Number))))
            {
                if (kept.Plan.Courses.FirstOrDefault(laid => (laid.Run, laid.Course) == (run.Name, course.Number)) is not { Unfilled: false }) yield return FillFaults.CourseOpen(run.Name, course.Number);
                else if (run.Courses.Any(below => below.Number < course.Number && below.Stretches.Count > 0 && !known.Contains((run.Name, below.Number)) && !asked.Contains((run.Name, below.Number)))) yield return FillFaults.NothingBelow(run.Name, course.Number);
            }
        }
    }

    private CutAct Act(PlannedPiece planned, int index, IReadOnlyList<int> made) =>
        made.Count == planned.Cuts.Count ? new CutAct(index) : new CutAct(index) { Really = Partly(planned, made) };

    // What lies between the cuts that are made is one stretch, less a kerf at each end where the saw goes through.
    private PlannedPiece Partly(PlannedPiece planned, IReadOnlyList<int> made)
    {
        var settings = yard.Settings();
        var (kerf, keep) = (settings.Kerf(planned.Material), settings.Keep(planned.Material));
        var cuts = made.Order().Select(cut => planned.Cuts[cut]).ToArray();
        var (left, untouched, saws) = (new List<PlannedRemainder>(), new List<Span>(), 0);
        foreach (var span in planned.Source?.Spans() ?? [new Span(Length.Zero, planned.Length)])
        {
            var inside = cuts.Where(cut => span.Start <= cut.Start && cut.Start + cut.Length <= span.End).OrderBy(cut => cut.Start).ToArray();
            if (inside.Length == 0)
            {
                untouched.Add(span);
                continue;
            }

            var (from, at) = (span.Start, span.Start);
            foreach (var cut in inside)
            {
                saws += Rest(left, from, cut.Start.Units - (cut.Start > at ? kerf.Units : 0), keep, cut.Start > from);
                at = from = cut.Start + cut.Length;
                if (from < span.End) from = Length.FromUnits(Math.Min(span.End.Units, from.Units + kerf.Units));
            }

            saws += Rest(left, from, span.End.Units, keep, at < span.End);
        }

        return planned with { Cuts = cuts, Remainders = left, Untouched = untouched, SawCuts = Math.Min(planned.SawCuts, saws) };
    }

    private static int Rest(List<PlannedRemainder> left, Length from, long to, Length keep, bool cut)
    {
        if (to > from.Units) left.Add(new PlannedRemainder(from, Length.FromUnits(to - from.Units), to - from.Units >= keep.Units));
        return cut ? 1 : 0;
    }

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
