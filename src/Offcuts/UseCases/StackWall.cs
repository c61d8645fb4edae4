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
public sealed record StackedWish(string Wall, IReadOnlyList<int> Courses, string? Leg = null, Face? Face = null)
{
    /// <summary>What lies in the course, from the leg's start on, where it was laid otherwise than planned; none where it was laid as planned.</summary>
    public IReadOnlyList<LaidThere>? Laid { get; init; }
}

/// <summary>What stacking did.</summary>
/// <param name="Courses">Courses that stand now.</param>
/// <param name="Carried">What was cut for them.</param>
/// <param name="PlanId">The plan that the filling is kept as.</param>
/// <param name="Kept">How many other courses stay kept as they were filled.</param>
/// <param name="GivenUp">Courses that were kept and can't be carried out any more, with the reason of each.</param>
/// <param name="Open">How many courses neither stand nor are filled now, all that were given up among them.</param>
public sealed record WallStacked(IReadOnlyList<StackedCourse> Courses, CarriedOut Carried, int PlanId, int Kept, IReadOnlyList<LaidCourse> GivenUp, int Open)
{
    /// <summary>What there is to mind of these courses: how they were laid otherwise than planned, and which stretches nothing covers.</summary>
    public IReadOnlyList<string> Mind { get; init; } = [];
}

/// <summary>
/// Marks courses of a wall as stacked, as its kept filling has them. From each piece only the cuts for these courses are made; what is left
/// of it goes back to the yard as one piece or several, each with its own first line. The other courses stay kept as they were filled, from
/// those pieces; given up is what can't be carried out any more. A course may also have been laid otherwise than planned: then the pieces it was laid
/// of are booked instead. All in one change.
/// </summary>
public sealed class StackWall(YardFile yard, DateOnly today, MatchLimits limits)
{
    /// <summary>Stacks them. Nothing changes where anything is refused.</summary>
    public Result<WallStacked> Do(StackedWish wish)
    {
        var found = new ChangeWalls(yard).Laid(wish.Wall).Then<(LaidStageWall Wall, IReadOnlyList<Run> Runs)>(wall => (wall, Chosen(wall.Laid, wish)));
        if (!found.TryGet(out var here)) return Result<WallStacked>.Fail(found.Faults);
        var (fill, wall) = (new FillWall(yard), here.Wall.Kept);
        var standing = fill.Standing(wall);
        var known = standing.Select(course => (course.Run, course.Course)).ToHashSet();
        var named = Asked(here.Runs, wish.Courses);
        // Where a course stands on one leg already, the others are meant.
        var asked = named.Where(course => !known.Contains(course)).ToHashSet();
        // What was cut under a filling that is kept no more waits by itself.
        StackedCourse[] waiting = [.. yard.StackedCourses().Where(course => course.OnlyCut && Same(course.Wall, wall.Sheet.Name))];
        var kept = fill.KeptOf(wall);
        var steps = kept is null ? null : yard.Plan(kept.PlanId);
        if (kept is null && asked.Count > 0 && (wish.Laid is not null || !asked.IsSubsetOf(waiting.Select(course => (course.Run, course.Course))))) return FillFaults.NothingKept(wall.Sheet.Name);
        var faults = Faults((wall, here.Wall.Laid, here.Runs), wish, named, asked, known, waiting, kept, steps).ToArray();
        if (faults.Length > 0) return Result<WallStacked>.Fail(faults);
        StackedCourse[] cut = [.. waiting.Where(course => asked.Contains((course.Run, course.Course))).Select(course => course with { OnlyCut = false })];
        if (kept is null || steps is null) return CutBefore(here.Wall, standing, cut, waiting.Length);
        return wish.Laid is null ? AsPlanned(here.Wall, kept, steps, standing, asked, cut, waiting.Length) : Otherwise(here.Wall, here.Runs, kept, steps, standing, asked, wish.Laid, waiting.Length);
    }

    // No filling is kept, so nothing else changes.
    private Result<WallStacked> CutBefore(LaidStageWall wall, IReadOnlyList<StackedCourse> standing, StackedCourse[] stacked, int waiting) =>
        yard.Change(Told(wall, stacked), work =>
        {
            foreach (var course in stacked) work.Stack(course);
        }).Then<WallStacked>(_ => new WallStacked(stacked, new CarriedOut([], [], []), 0, 0, [], All(wall) - standing.Count - waiting));

    private Result<WallStacked> AsPlanned(LaidStageWall wall, KeptWallPlan kept, KeptPlan steps, IReadOnlyList<StackedCourse> standing, HashSet<(string Run, int Course)> asked, StackedCourse[] cutBefore, int waiting)
    {
        LaidCourse[] courses = [.. kept.Plan.Courses.Where(course => asked.Contains((course.Run, course.Course)))];
        StackedCourse[] stacked = [.. courses.Select(course => StackedCourse.Of(wall.Kept.Sheet.Name, course, kept.Plan)), .. cutBefore];
        var rest = new RestOfFilling(yard, wall.Laid, kept.Plan, steps, [.. standing, .. stacked]);
        var cut = Cut(kept.Plan, steps, rest, courses, asked);
        CutAct[] acts = [.. cut.Select(one => one.Cut.Made.Cuts.Count == kept.Plan.Pieces[one.Piece].Cuts.Count ? new CutAct(one.Piece) : new CutAct(one.Piece) { Really = one.Cut.Made })];
        return new CarryOut(yard, today, limits).Do(kept.PlanId, acts, Told(wall, stacked), (work, came) => Stand(work, wall, stacked, rest, () => rest.After(cut, came, [])))
            .Then<WallStacked>(carried => Outcome(wall, kept, standing, stacked, rest, carried, waiting - cutBefore.Length));
    }

    private Result<WallStacked> Otherwise(LaidStageWall wall, IReadOnlyList<Run> runs, KeptWallPlan kept, KeptPlan steps, IReadOnlyList<StackedCourse> standing, HashSet<(string Run, int Course)> asked, IReadOnlyList<LaidThere> laid, int waiting)
    {
        var (name, number) = asked.Single();
        var run = runs.Single(one => one.Name == name);
        var below = standing.FirstOrDefault(course => course.Run == name && course.Course == number - 1);
        var found = LaidOtherwise.Of(yard, wall, kept.Plan, steps, run, number, laid, below);
        if (!found.TryGet(out var there)) return Result<WallStacked>.Fail(found.Faults);

        var plan = there.Plan;
        var now = steps with { Plan = plan.AsPlan(), Steps = [.. steps.Steps, .. Enumerable.Repeat(PlanStep.Waiting, plan.Pieces.Count - steps.Steps.Count)] };
        StackedCourse[] stacked = [StackedCourse.Of(wall.Kept.Sheet.Name, plan.Courses.Single(course => (course.Run, course.Course) == (name, number)), plan)];
        var rest = new RestOfFilling(yard, wall.Laid, plan, now, [.. standing, .. stacked], (there.Taken, $"{name}, course {number}"));
        return new CarryOut(yard, today, limits).Do(
            now,
            there.Acts,
            Told(wall, stacked),
            work => work.GoOnWithWallPlan(wall.Kept.Sheet.Name, plan, new Dictionary<int, PlanStep>()),
            (work, came) => Stand(work, wall, stacked, rest, () => rest.After([], came, there.Acts.Select(act => act.Index))))
            .Then<WallStacked>(carried => Outcome(wall, kept with { Plan = plan }, standing, stacked, rest, carried, waiting)).Then<WallStacked>(outcome => outcome with { Mind = [.. there.Mind, .. outcome.Mind] });
    }

    private static string Told(LaidStageWall wall, StackedCourse[] stacked) => $"stacked {Words.Count(stacked.Length, "course")} of the wall {wall.Kept.Sheet.Name}";

    private static void Stand(YardChange work, LaidStageWall wall, StackedCourse[] stacked, RestOfFilling rest, Func<(RunPlan Plan, IReadOnlyDictionary<int, PlanStep> Steps)> after)
    {
        foreach (var course in stacked) work.Stack(course);
        if (rest.Kept == 0)
        {
            work.DropWallPlan(wall.Kept.Sheet.Name);
            return;
        }

        var (plan, steps) = after();
        work.GoOnWithWallPlan(wall.Kept.Sheet.Name, plan, steps);
    }

    private static WallStacked Outcome(LaidStageWall wall, KeptWallPlan kept, IReadOnlyList<StackedCourse> standing, StackedCourse[] stacked, RestOfFilling rest, CarriedOut carried, int waiting)
    {
        LaidCourse[] lost = [.. kept.Plan.Courses.Where(course => rest.GivenUp.ContainsKey((course.Run, course.Course))).Select(course => course with { Pieces = [], Reason = rest.GivenUp[(course.Run, course.Course)] })];
        var never = Unfillable.Of(wall.Laid).Where(stretch => stacked.Any(course => course.Run == stretch.Run && stretch.Courses.Contains(course.Course)));
        return new WallStacked(stacked, carried, kept.PlanId, rest.Kept, lost, All(wall) - standing.Count - stacked.Length - rest.Kept - waiting)
        {
            Mind = [.. never.Select(stretch => stretch.Says), .. rest.Begun],
        };
    }

    private static int All(LaidStageWall wall) => wall.Laid.Runs.Concat(wall.Laid.FootingRuns).Sum(run => run.Courses.Count(course => course.Stretches.Count > 0));

    // What is sawn now, piece by piece, with which of its cuts.
    private static IReadOnlyList<(int Piece, PartlyCut Cut, IReadOnlyList<int> Made)> Cut(RunPlan plan, KeptPlan steps, RestOfFilling rest, IReadOnlyList<LaidCourse> courses, HashSet<(string Run, int Course)> asked) =>
    [
        .. from piece in courses.SelectMany(course => course.Pieces).Select(one => one.Piece).Distinct().Order()
           where steps.Steps[piece].State == StepState.Waiting
           let cut = rest.Cut(piece, asked)
           select (piece, cut, (IReadOnlyList<int>)[.. Enumerable.Range(0, plan.Pieces[piece].Cuts.Count).Where(index => cut.Made.Cuts.Contains(plan.Pieces[piece].Cuts[index]))]),
    ];

    /// <summary>The same wish, or which of its courses the wall does not have there, or which one can't stand yet because of what is below it.</summary>
    /// <param name="laid">The wall laid out.</param>
    /// <param name="wish">The wish.</param>
    /// <param name="standing">What of the wall stands; what is only cut among it does not count.</param>
    public static Result<StackedWish> There(LaidWall laid, StackedWish wish, IEnumerable<StackedCourse> standing)
    {
        var runs = Chosen(laid, wish);
        var named = Asked(runs, wish.Courses);
        var known = standing.Where(course => !course.OnlyCut).Select(course => (course.Run, course.Course)).ToHashSet();
        Fault[] faults =
        [
            .. NotThere(wish, named, laid, wish.Wall),
            .. from run in runs from course in run.Courses where named.Contains((run.Name, course.Number)) && !known.Contains((run.Name, course.Number)) && HangsIn(run, course, known, named) select FillFaults.NothingBelow(run.Name, course.Number),
        ];
        return faults.Length > 0 ? Result<StackedWish>.Fail(faults) : wish;
    }

    // A leg that the wall does not have is one slip, however many courses are named.
    private static IEnumerable<Fault> NotThere(StackedWish wish, HashSet<(string Run, int Course)> named, LaidWall laid, string wall)
    {
        string[] legs = [.. laid.Runs.Concat(laid.FootingRuns).Select(run => run.Leg).Distinct()];
        if (wish.Leg is { } leg && !legs.Any(known => Same(known, leg.Trim()))) return [FillFaults.NoLegToStack(wall, leg.Trim(), legs)];
        return wish.Courses.Where(number => named.All(course => course.Course != number)).Select(number => FillFaults.NothingToStack(wall, number));
    }

    // True where some course below it neither stands nor is stacked with it.
    private static bool HangsIn(Run run, Course course, HashSet<(string Run, int Course)> known, HashSet<(string Run, int Course)> asked) =>
        run.Courses.Any(below => below.Number < course.Number && below.Stretches.Count > 0 && !known.Contains((run.Name, below.Number)) && !asked.Contains((run.Name, below.Number)));

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

    private static IEnumerable<Fault> Faults((StageWall Wall, LaidWall Laid, IReadOnlyList<Run> Runs) here, StackedWish wish, HashSet<(string Run, int Course)> named, HashSet<(string Run, int Course)> asked, HashSet<(string Run, int Course)> known, IReadOnlyList<StackedCourse> waiting, KeptWallPlan? kept, KeptPlan? steps)
    {
        foreach (var fault in NotThere(wish, named, here.Laid, here.Wall.Sheet.Name)) yield return fault;
        foreach (var number in wish.Courses.Where(number => asked.All(course => course.Course != number)))
        {
            foreach (var (run, course) in named.Where(course => course.Course == number).Order().Take(1)) yield return FillFaults.StacksAlready(run, course);
        }

        if (wish.Laid is not null && named.Count != 1) yield return FillFaults.LaidOneCourse();
        foreach (var run in here.Runs)
        {
            foreach (var course in run.Courses.Where(course => asked.Contains((run.Name, course.Number))))
            {
                var planned = kept?.Plan.Courses.FirstOrDefault(laid => (laid.Run, laid.Course) == (run.Name, course.Number));
                var cutBefore = waiting.Any(cut => (cut.Run, cut.Course) == (run.Name, course.Number));
                if (cutBefore && wish.Laid is not null) yield return FillFaults.CutBefore(run.Name, course.Number);
                else if (!cutBefore && (planned is null || (wish.Laid is null && !Layable(run, course, planned)))) yield return FillFaults.CourseOpen(run.Name, course.Number);
                else if (!cutBefore && wish.Laid is null && planned!.Pieces.Select(one => steps!.WhyNotMade(one)).FirstOrDefault(reason => reason is not null) is { } reason) yield return FillFaults.NotAsPlanned(run.Name, course.Number, reason);
                else if (HangsIn(run, course, known, asked)) yield return FillFaults.NothingBelow(run.Name, course.Number);
            }
        }
    }

    // What can be laid of it is; what no piece may cover is closed by hand or left, as its builder decides.
    private static bool Layable(Run run, Course course, LaidCourse planned) =>
        planned.Pieces.Count > 0 || course.Stretches.All(stretch => stretch.Length < run.ShortestPiece);

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
