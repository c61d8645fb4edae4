using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Matching.Runs;
using Offcuts.Store;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>A wall that is to be filled: everything that filling it depends on, read from the yard at one moment.</summary>
/// <param name="Kept">The wall and its stage.</param>
/// <param name="Laid">The wall laid out.</param>
/// <param name="Stacked">Its courses that stand, and those that are cut and wait to be stacked.</param>
/// <param name="Problem">What is to be filled, and from what.</param>
/// <param name="Begins">The day its stage begins, where known.</param>
/// <param name="Unlined">Panels that can't be joined to others because their first pattern line is not known.</param>
public sealed record WallToFill(StageWall Kept, LaidWall Laid, IReadOnlyList<StackedCourse> Stacked, RunProblem Problem, DateOnly? Begins, IReadOnlyList<Piece> Unlined)
{
    /// <summary>What of the kept filling is begun and keeps its place, with what the other courses are filled from; none where nothing is.</summary>
    internal (BegunFilling Begun, RunRequest Others)? Begun { get; init; }

    /// <summary>What the kept filling takes yet, where it can still be carried out; none where it can't, or none is kept.</summary>
    internal StillTakes? KeptTakes { get; init; }

    /// <summary>The best filling that can be found within the limits; touches no yard, so it may run beside one.</summary>
    public WallFilled Fill(MatchLimits limits)
    {
        var began = limits.Clock?.GetTimestamp();
        var again = Begun is var (begun, others) ? new FillAgain(begun, others, Laid, Stacked).Fill(limits) : null;
        var plan = again is null ? CutToHeight.In(RunFiller.Fill(Problem, limits), Laid.Runs, Problem.Settings, Laid.Notches) : new KeptWallPlan(Kept.Sheet.Name, again.Begun.Kept.PlanId, again.Plan).StillHolds(again.Steps);
        var took = limits.Clock is { } clock ? clock.GetElapsedTime(began!.Value) : TimeSpan.Zero;
        var filled = new WallFilled(Kept, Laid, Stacked, plan, Begins, PlanId: 0) { Unlined = Unlined, TimeUp = limits.Cancel.IsCancellationRequested ? took : took >= NearlyAll * limits.Time ? limits.Time : null, Again = again, KeptTakes = KeptTakes is { } kept && kept.Buys == plan.Buys ? kept : null };
        return again is null ? filled : filled with { Left = LeftToLay.Of(filled, again.Plan, again.Steps, Stacked, there: null) };
    }

    // The search ends a little before its time, where what it would do next takes longer than what is left.
    private const double NearlyAll = 0.9;
}

/// <summary>A wall with how it is filled.</summary>
/// <param name="Kept">The wall and its stage.</param>
/// <param name="Laid">The wall laid out.</param>
/// <param name="Stacked">Its courses that stand, and those that are cut and wait to be stacked.</param>
/// <param name="Plan">What lies where of the others.</param>
/// <param name="Begins">The day its stage begins, where known.</param>
/// <param name="PlanId">Number of the plan it is kept as; 0 where it is not kept.</param>
public sealed record WallFilled(StageWall Kept, LaidWall Laid, IReadOnlyList<StackedCourse> Stacked, RunPlan Plan, DateOnly? Begins, int PlanId)
{
    /// <summary>Panels on hand that can't be joined to others because their first pattern line is not known: a joint might miss its tie.</summary>
    public IReadOnlyList<Piece> Unlined { get; init; } = [];

    /// <summary>How long it was looked for, where that was ended by its time or by somebody; none where the search came to its own end, or it is not known.</summary>
    public TimeSpan? TimeUp { get; init; }

    /// <summary>How far it has come, of a filling that is kept, or that was filled again around what is begun; none of another one that was just found.</summary>
    public LeftToLay? Left { get; init; }

    /// <summary>How it goes on with the filling that is kept, where courses of that are begun and keep their pieces; none where none is.</summary>
    internal FilledAgain? Again { get; init; }

    /// <summary>What the kept filling takes yet, to be held against this one; none where that can't be carried out any more, or buys where this may not.</summary>
    internal StillTakes? KeptTakes { get; init; }

    /// <summary>How far its pieces have come where it goes on with one that is begun; none where all of it is to be cut.</summary>
    public KeptPlan? Steps => Again?.Steps;

    /// <summary>What is to be cut for it yet.</summary>
    public IReadOnlyList<PlannedPiece> ToCut => Left?.Waiting ?? Plan.Pieces;

    /// <summary>What the wall asks for, with the ties of this plan's joints.</summary>
    public Takeoff Takeoff => Takeoff.Of(Laid, Kept.Stage).WithJoints(Plan.ExtraTies.Where(tie => tie.CleatOn is null).Select(tie => (tie.Leg, tie.Course, tie.At)));

    /// <summary>The cleats of joints of form boards between two stakes; none where none is needed.</summary>
    public CutTakeoff? Cleats => Takeoff.Cleats(Kept.Stage, Plan.ExtraTies.Count(tie => tie.CleatOn is not null));

    /// <summary>New pieces by what they are, with how many of each.</summary>
    public IReadOnlyList<(StorePrice Price, int Count)> ToBuy => [.. New(Again is null ? Plan.Pieces : ToCut)];

    /// <summary>Those that are still to be had: of what waits to be cut, where it has come further.</summary>
    public IReadOnlyList<(StorePrice Price, int Count)> ToBuyYet => [.. New(ToCut)];

    /// <summary>So many are still needed at least: once some are cut, those that wait.</summary>
    public long NewYetAtLeast => ToBuyYet.Sum(one => one.Count) is var yet && yet == ToBuy.Sum(one => one.Count) ? NewAtLeast : yet;

    /// <summary>Those of these pieces that are new, by what they are.</summary>
    public static IEnumerable<(StorePrice Price, int Count)> New(IEnumerable<PlannedPiece> pieces) =>
        pieces.Where(piece => piece.Bought is not null).GroupBy(piece => piece.Bought!).Select(same => (same.Key, same.Count()));

    /// <summary>
    /// So many new pieces are needed at least, whatever the plan. No plan spends less than the bound, so it buys no fewer than that at the
    /// highest of the prices; exact where all are of one price and the spend is proven.
    /// </summary>
    public long NewAtLeast => ToBuy.Select(one => one.Price.Price.Cents).DefaultIfEmpty().Max() is > 0 and var most ? (Plan.Tiers.Spend.Bound + most - 1) / most : 0;

    /// <summary>The day to order by, so that the new pieces are there when the stage begins; none where that day or the days of delivery are unknown.</summary>
    public DateOnly? OrderBy => Begins is { } begins && ToBuy.Max(one => one.Price.LeadDays) is { } days && days <= begins.DayNumber ? begins.AddDays(-days) : null;
}

/// <summary>
/// Fills the runs of a wall, foam and form boards alike, from what is free in the yard and what can be bought. Courses that stand or are cut are
/// left as they are, and the stagger is kept from their joints. Pieces that another open plan waits to cut are left to it.
/// </summary>
public sealed class FillWall(YardFile yard)
{
    /// <summary>What filling a wall depends on, or why there is nothing to fill.</summary>
    /// <param name="name">Name of the wall.</param>
    /// <param name="buy">False where nothing may be bought; where nothing is said, as the filling that is kept.</param>
    public Result<WallToFill> Asked(string name, bool? buy = null) => new ChangeWalls(yard).Laid(name).Then(wall => Asked(wall.Kept, wall.Laid, buy));

    /// <summary>The best filling within the limits, or why there is nothing to fill.</summary>
    public Result<WallFilled> Fill(string name, bool? buy, MatchLimits limits) => Asked(name, buy).Then<WallFilled>(wall => wall.Fill(limits));

    /// <summary>The filling that is kept of a wall, or why there is none.</summary>
    public Result<WallFilled> Shown(string name) => new ChangeWalls(yard).Laid(name).Then<WallFilled>(wall => Kept(wall) is { } kept ? kept with { Unlined = Unlined(wall.Kept, wall.Laid), Left = LeftToLay.Of(yard, wall) } : FillFaults.NothingKept(wall.Kept.Sheet.Name));

    /// <summary>The filling that is kept of a wall, or none; of the pieces of the yard it looks only at those it takes, so that it costs little in a large one.</summary>
    public WallFilled? Kept(LaidStageWall wall) =>
        KeptOf(wall.Kept) is { } plan ? new WallFilled(wall.Kept, wall.Laid, StandingOrCut(wall.Kept), StillHolds(wall.Kept)!, Begins(wall.Kept), plan.PlanId) : null;

    /// <summary>
    /// Keeps a filling in the yard, in the place of the one that was kept of the wall before, of which what still waits is given up. Of
    /// that one, courses whose pieces were all cut are remembered and wait to be stacked. The number of the new plan.
    /// </summary>
    public Result<int> Keep(WallFilled filled)
    {
        var id = 0;
        var seen = yard.ChangeNumber;
        var wall = filled.Kept.Sheet.Name;
        if (Stale(filled).ToArray() is { Length: > 0 } stale) return Result<int>.Fail(stale);
        var laid = filled.Plan.Courses.Select(course => (course.Run, course.Course)).ToHashSet();
        if (filled.Again is { } again) return Keep(again, wall, seen);
        if (StandingOrCut(filled.Kept).Any(course => laid.Contains(Key(course))) || Begun(filled.Kept, filled.Laid, StandingOrCut(filled.Kept)) is not null) return StoreFaults.ChangedMeanwhile();
        return yard.ChangeSince(seen, $"kept how the wall {wall} is filled", work => id = work.KeepWallPlan(wall, filled.Plan)).Then<int>(_ => id);
    }

    // Courses are begun: the plan goes on under its number, so that what is cut for them stays what it is.
    private Result<int> Keep(FilledAgain again, string wall, long seen)
    {
        var id = again.Begun.Kept.PlanId;
        if (!again.Begun.IsStill(yard.WallPlans().FirstOrDefault(plan => Same(plan.Wall, wall)), yard.Plan(id))) return StoreFaults.ChangedMeanwhile();
        return yard.ChangeSince(seen, $"filled the wall {wall} again around what is begun", work => work.GoOnWithWallPlan(wall, again.Plan, again.GivenUp.ToDictionary(piece => piece, _ => PlanStep.Dropped))).Then<int>(_ => id);
    }

    // What the filling rests on: the sheet, and pieces that no other plan has taken meanwhile.
    private IEnumerable<Fault> Stale(WallFilled filled)
    {
        var name = filled.Kept.Sheet.Name;
        if (yard.Walls().FirstOrDefault(wall => Same(wall.Sheet.Name, name)) is not { } now || WallText.Write(now.Sheet) != WallText.Write(filled.Kept.Sheet))
        {
            yield return FillFaults.OtherSheet(name);
            yield break;
        }

        var own = KeptOf(filled.Kept)?.PlanId;
        var promised = new Promised(yard.Plans().Where(plan => plan.Open && plan.Id != own)).Pieces;
        foreach (var source in filled.ToCut.Select(piece => piece.Source).OfType<Piece>())
        {
            var there = yard.Piece(source.Code);
            if (there is null || !there.StillServesAs(source) || (there.State == PieceState.Reserved && there.ReservedFor != now.Stage) || promised.Contains(source.Code))
                yield return FillFaults.PieceNotFree(name, source.Code.ToString());
        }
    }

    /// <summary>Courses of a wall that stand: somebody said that they are stacked.</summary>
    public IReadOnlyList<StackedCourse> Standing(StageWall wall) => [.. StackedOf(wall).Where(course => !course.OnlyCut)];

    /// <summary>Courses of a wall for which nothing is to be cut any more: those that stand, and those that are cut and wait to be stacked.</summary>
    public IReadOnlyList<StackedCourse> StandingOrCut(StageWall wall)
    {
        var stacked = StackedOf(wall);
        if (KeptOf(wall) is not { } kept || yard.Plan(kept.PlanId) is not { } steps) return stacked;
        return [.. stacked, .. kept.Cut(steps).Where(course => !stacked.Any(course.IsSame))];
    }

    /// <summary>The kept filling of a wall as far as it still holds, or none.</summary>
    internal RunPlan? StillHolds(StageWall wall) => KeptOf(wall) is not { } kept ? null : yard.Plan(kept.PlanId) is { } steps ? kept.StillHolds(steps, yard.Piece, StandingOrCut(wall)) : kept.Plan;

    /// <summary>The filling of a wall that is kept, or none.</summary>
    internal KeptWallPlan? KeptOf(StageWall wall) => yard.WallPlans().FirstOrDefault(plan => Same(plan.Wall, wall.Sheet.Name));

    private IReadOnlyList<StackedCourse> StackedOf(StageWall wall) => [.. yard.StackedCourses().Where(course => Same(course.Wall, wall.Sheet.Name))];

    /// <summary>What filling a wall depends on as a request, so that it may be filled from fewer pieces than the yard has; or why there is nothing to fill.</summary>
    internal Result<RunRequest> Request(string name) => new ChangeWalls(yard).Laid(name).Then(wall => Request(wall.Kept, wall.Laid, StandingOrCut(wall.Kept), buy: null));

    private Result<WallToFill> Asked(StageWall kept, LaidWall laid, bool? buy)
    {
        var standing = StandingOrCut(kept);
        var begun = Begun(kept, laid, standing);
        var asked = Request(kept, laid, [.. standing, .. begun?.Standing ?? []], buy, begun);
        return asked.Then(RunProblem.Create).Then<WallToFill>(problem => new WallToFill(kept, laid, standing, problem, Begins(kept), Unlined(kept, laid)) { Begun = begun is null ? null : (begun, asked.Value), KeptTakes = StillTakes.Of(yard, new LaidStageWall(kept, laid)) });
    }

    private BegunFilling? Begun(StageWall kept, LaidWall laid, IReadOnlyList<StackedCourse> standing) =>
        KeptOf(kept) is { } own && yard.Plan(own.PlanId) is { } steps ? BegunFilling.Of(yard, laid.Runs.Concat(laid.FootingRuns), own, steps, standing) : null;

    private IReadOnlyList<Piece> Unlined(StageWall kept, LaidWall laid)
    {
        var onPattern = laid.Runs.Where(run => run.Joints == JointRule.OnPattern).Select(run => run.Material).ToHashSet();
        return [.. yard.Pieces().Where(piece => piece is { OnHand: true, FirstLine: null } && onPattern.Contains(piece.Material) && (piece.State != PieceState.Reserved || Same(piece.ReservedFor, kept.Stage)))];
    }

    private Result<RunRequest> Request(StageWall kept, LaidWall laid, IReadOnlyList<StackedCourse> standing, bool? buy, BegunFilling? begun = null)
    {
        Run[] runs = [.. laid.Runs.Concat(laid.FootingRuns).Select(run => Without(run, standing)).Where(run => run.Courses.Count > 0)];
        if (runs.Length == 0 && begun is not null && begun.Courses.All(course => course.Gaps.Count == 0)) return FillFaults.AllBegun(kept.Sheet.Name);
        if (runs.Length == 0 && begun is null) return standing.Any(course => course.OnlyCut) ? FillFaults.AllStandsOrIsCut(kept.Sheet.Name) : FillFaults.AllStands(kept.Sheet.Name);
        var own = KeptOf(kept);
        var promised = new Promised(yard.Plans().Where(plan => plan.Open && plan.Id != own?.PlanId)).Pieces;
        return new RunRequest
        {
            Stage = kept.Stage,
            Runs = runs,
            Pieces = [.. yard.Pieces().Where(piece => !promised.Contains(piece.Code) && begun?.Held.Contains(piece.Code) is not true)],
            Prices = yard.Prices(),
            Settings = yard.Settings(),
            Buy = buy ?? own?.Plan.Buys ?? true,
            Uses = laid.FootingRuns.Select(run => run.Material).Distinct().ToDictionary(material => material, _ => Use.Rough),
        };
    }

    private static Run Without(Run run, IReadOnlyList<StackedCourse> standing)
    {
        var there = standing.Where(course => course.Run == run.Name).ToArray();
        return run with
        {
            Courses = [.. run.Courses.Where(course => there.All(stacked => stacked.Course != course.Number) && course.Stretches.Count > 0)],
            Standing = [.. there.Select(stacked => new StandingCourse(stacked.Course, stacked.Joints))],
        };
    }

    private DateOnly? Begins(StageWall kept) => yard.Stages().Named(kept.Stage)?.Date;

    private static (string Run, int Course) Key(StackedCourse course) => (course.Run, course.Course);

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
