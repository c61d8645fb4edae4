using Offcuts.Core.Faults;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Store;
using Offcuts.Walls;

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
/// <param name="PlanId">The plan that the filling is kept as.</param>
/// <param name="Kept">How many other courses stay kept as they were filled.</param>
/// <param name="GivenUp">Courses that were kept and can't be carried out any more, with the reason of each.</param>
/// <param name="Open">How many courses neither stand nor are filled now, all that were given up among them.</param>
public sealed record WallStacked(IReadOnlyList<StackedCourse> Courses, CarriedOut Carried, int PlanId, int Kept, IReadOnlyList<LaidCourse> GivenUp, int Open);

/// <summary>
/// Marks courses of a wall as stacked, as its kept filling has them. From each piece only the cuts for these courses are made; what is left
/// of it goes back to the yard as one piece or several, each with its own first line. The other courses stay kept as they were filled, from
/// those pieces; given up is what can't be carried out any more. All in one change.
/// </summary>
public sealed class StackWall(YardFile yard, DateOnly today, MatchLimits limits)
{
    /// <summary>Stacks them. Nothing changes where anything is refused.</summary>
    public Result<WallStacked> Do(StackedWish wish)
    {
        var found = new ChangeWalls(yard).Laid(wish.Wall).Then<(LaidStageWall Wall, IReadOnlyList<Run> Runs)>(wall => (wall, Chosen(wall.Laid, wish)));
        if (!found.TryGet(out var here)) return Result<WallStacked>.Fail(found.Faults);
        var (fill, wall) = (new FillWall(yard), here.Wall.Kept);
        if (fill.KeptOf(wall) is not { } kept || yard.Plan(kept.PlanId) is not { } steps) return FillFaults.NothingKept(wall.Sheet.Name);

        var standing = fill.Standing(wall);
        var known = standing.Select(course => (course.Run, course.Course)).ToHashSet();
        var named = Asked(here.Runs, wish.Courses);
        // Where a course stands on one leg already, the others are meant.
        var asked = named.Where(course => !known.Contains(course)).ToHashSet();
        var faults = Faults((wall, here.Runs), wish, named, asked, known, kept, steps).ToArray();
        if (faults.Length > 0) return Result<WallStacked>.Fail(faults);

        LaidCourse[] courses = [.. kept.Plan.Courses.Where(course => asked.Contains((course.Run, course.Course)))];
        StackedCourse[] stacked = [.. courses.Select(course => StackedCourse.Of(wall.Sheet.Name, course, kept.Plan))];
        var rest = new RestOfFilling(yard, here.Wall.Laid, kept.Plan, steps, [.. standing, .. stacked]);
        var cut = Cut(kept.Plan, steps, rest, courses, asked);
        CutAct[] acts = [.. cut.Select(one => one.Cut.Made.Cuts.Count == kept.Plan.Pieces[one.Piece].Cuts.Count ? new CutAct(one.Piece) : new CutAct(one.Piece) { Really = one.Cut.Made })];
        var told = $"stacked {Words.Count(stacked.Length, "course")} of the wall {wall.Sheet.Name}";
        return new CarryOut(yard, today, limits).Do(kept.PlanId, acts, told, (work, came) =>
        {
            foreach (var course in stacked) work.Stack(course);
            if (rest.Kept == 0)
            {
                work.DropWallPlan(wall.Sheet.Name);
                return;
            }

            var (plan, now) = rest.After(cut, came);
            work.GoOnWithWallPlan(wall.Sheet.Name, plan, now);
        }).Then<WallStacked>(carried =>
        {
            var all = here.Wall.Laid.Runs.Concat(here.Wall.Laid.FootingRuns).Sum(run => run.Courses.Count(course => course.Stretches.Count > 0));
            LaidCourse[] lost = [.. kept.Plan.Courses.Where(course => rest.GivenUp.ContainsKey((course.Run, course.Course))).Select(course => course with { Pieces = [], Reason = rest.GivenUp[(course.Run, course.Course)] })];
            return new WallStacked(stacked, carried, kept.PlanId, rest.Kept, lost, all - standing.Count - stacked.Length - rest.Kept);
        });
    }

    // What is sawn now, piece by piece, with which of its cuts.
    private static IReadOnlyList<(int Piece, PartlyCut Cut, IReadOnlyList<int> Made)> Cut(RunPlan plan, KeptPlan steps, RestOfFilling rest, IReadOnlyList<LaidCourse> courses, HashSet<(string Run, int Course)> asked) =>
    [
        .. from piece in courses.SelectMany(course => course.Pieces).Select(one => one.Piece).Distinct().Order()
           where steps.Steps[piece].State == StepState.Waiting
           let cut = rest.Cut(piece, asked)
           select (piece, cut, (IReadOnlyList<int>)[.. Enumerable.Range(0, plan.Pieces[piece].Cuts.Count).Where(index => cut.Made.Cuts.Contains(plan.Pieces[piece].Cuts[index]))]),
    ];

    /// <summary>The same wish, or which of its courses the wall does not have there.</summary>
    public static Result<StackedWish> There(LaidWall laid, StackedWish wish)
    {
        var named = Asked(Chosen(laid, wish), wish.Courses);
        Fault[] faults = [.. wish.Courses.Where(number => named.All(course => course.Course != number)).Select(number => FillFaults.NothingToStack(wish.Wall, number))];
        return faults.Length > 0 ? Result<StackedWish>.Fail(faults) : wish;
    }

    private static IReadOnlyList<Run> Chosen(LaidWall laid, StackedWish wish) =>
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

    private static IEnumerable<Fault> Faults((StageWall Wall, IReadOnlyList<Run> Runs) here, StackedWish wish, HashSet<(string Run, int Course)> named, HashSet<(string Run, int Course)> asked, HashSet<(string Run, int Course)> known, KeptWallPlan kept, KeptPlan steps)
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
                if (kept.Plan.Courses.FirstOrDefault(laid => (laid.Run, laid.Course) == (run.Name, course.Number)) is not { Unfilled: false } planned) yield return FillFaults.CourseOpen(run.Name, course.Number);
                else if (planned.Pieces.Select(one => steps.WhyNotMade(one)).FirstOrDefault(reason => reason is not null) is { } reason) yield return FillFaults.NotAsPlanned(run.Name, course.Number, reason);
                else if (run.Courses.Any(below => below.Number < course.Number && below.Stretches.Count > 0 && !known.Contains((run.Name, below.Number)) && !asked.Contains((run.Name, below.Number)))) yield return FillFaults.NothingBelow(run.Name, course.Number);
            }
        }
    }

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
