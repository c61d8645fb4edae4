using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>A wall taken off, with what is on hand for it.</summary>
/// <param name="Kept">The wall and its stage.</param>
/// <param name="Takeoff">What it asks for, with the ties of the joints that stand or are cut for and of those that its kept filling plans.</param>
/// <param name="Left">What of it stands, and how the rest is filled, as it is kept.</param>
/// <param name="Stock">What it still needs of each material, and what is on hand.</param>
/// <param name="LeftOut">What the comparison with what is on hand takes off and leaves out, in sentences.</param>
public sealed record WallTakenOff(StageWall Kept, Takeoff Takeoff, LeftToLay Left, IReadOnlyList<StockLine> Stock, IReadOnlyList<string> LeftOut)
{
    /// <summary>What of it is still to be done: without the courses that stand, the panels and boards that are cut, what was made or counted out, and what an open plan is to make.</summary>
    public required Takeoff Still { get; init; }

    /// <summary>
    /// Its hardware as needs of its stage: what is left to get, and what plans have counted out for it or are to. What went into courses that stand
    /// without a plan is asked for no more.
    /// </summary>
    public IReadOnlyList<HardwareNeed> Needs =>
    [
        .. from need in Takeoff.HardwareNeeds(Kept.Stage)
           let count = LeftOf(need) + Math.Min(need.Count, Planned(need.Name, need.Hardware))
           where count > 0
           select need with { Count = count },
    ];

    /// <summary>How many counted things stand in courses and are therefore not among <see cref="Needs"/>.</summary>
    public int InPlace => Takeoff.HardwareNeeds(Kept.Stage).Sum(need => need.Count) - Needs.Sum(need => need.Count);

    /// <summary>How many of a need were counted out already, or are to be by a plan, by its name and what it is of.</summary>
    public required Func<string, Material, int> Planned { get; init; }

    /// <summary>What its stage has of it otherwise than it would be entered now; nothing where nothing is entered yet.</summary>
    public required IReadOnlyList<ChangedNeed> Changed { get; init; }

    private int LeftOf(HardwareNeed need) => (int)Still.Hardware.Where(one => one.Hardware.Equals(need.Hardware)).Sum(one => one.Count.Figure);
}

/// <summary>Takes off a wall of the yard: what it asks for, and whether what is on hand will do for what is left of it.</summary>
public sealed class TakeOffWall(YardFile yard)
{
    /// <summary>The wall of a name taken off, or why it can't be.</summary>
    /// <param name="name">The name, in either case.</param>
    /// <param name="plan">How its runs are to be filled, so that its joints are counted; none takes what is kept of it.</param>
    public Result<WallTakenOff> Of(string name, RunPlan? plan = null) => new ChangeWalls(yard).Laid(name).Then<WallTakenOff>(wall => Of(wall, plan));

    private WallTakenOff Of(LaidStageWall wall, RunPlan? plan)
    {
        var (kept, laid) = wall;
        var left = LeftToLay.Of(yard, wall);
        var standing = new FillWall(yard).StandingOrCut(kept);
        var stands = standing.Where(course => !course.OnlyCut).Select(course => (course.Run, course.Course)).ToHashSet();
        var filled = plan is null ? left.Kept : new WallFilled(kept, laid, standing, plan, Begins: null, PlanId: 0);
        var takeoff = WithPlan(Takeoff.Of(laid, kept.Stage), filled, standing, stands);

        // What waits in the wall's own filling is its own; what waits in other plans is theirs, and what they make of this wall is planned.
        var plans = yard.Plans();
        var others = new Promised(plans.Where(plan => plan.Open && plan.Id != left.Kept?.PlanId));
        var own = new Stage(kept.Stage, null, [.. takeoff.Cuts.Select(cut => cut.Cut)], takeoff.HardwareNeeds(kept.Stage));
        var undone = StageNeeds.Unplanned(own, plans);
        var asked = Counts(own);
        var lacking = Counts(undone);
        var stage = yard.Stages().Named(kept.Stage)!;
        bool Beside(string need) => !need.StartsWith(Takeoff.NeedPrefix(kept.Sheet.Name), StringComparison.OrdinalIgnoreCase);
        var unplanned = StageNeeds.Unplanned(stage, plans);
        var stock = new StockOnHand([.. yard.Pieces().Where(piece => !others.Pieces.Contains(piece.Code))], others.Left(yard.Bins()), yard.Prices(), yard.Settings().Rules, kept.Stage, stage.Date)
        {
            OtherCuts = [.. unplanned.Cuts.Where(cut => Beside(cut.Name))],
            OtherHardware = [.. unplanned.Hardware.Where(need => Beside(need.Name))],
        };
        int Planned(string need, Material of) => asked.GetValueOrDefault((need, of)) - lacking.GetValueOrDefault((need, of));
        var still = takeoff.Left(stands, Planned, CutFor(laid, left.Kept, standing));
        StockLine[] lines = [.. StockCheck.Of(still, stock).Select(line => ByPlan(line, still, plan is null ? left : null))];
        var taken = new WallTakenOff(kept, takeoff, left, lines, [.. OtherTypes(still, stock, lines), .. LeftOut(kept)]) { Still = still, Planned = Planned, Changed = [] };
        var whole = own with { Cuts = [.. own.Cuts, .. CleatsThere(takeoff, kept.Stage, standing)] };
        return taken with { Changed = ChangedNeed.Of(stage, Takeoff.NeedPrefix(kept.Sheet.Name), own with { Hardware = taken.Needs }, whole) };
    }

    // What sums leave open the kept filling tells, as long as all of it can still be carried out and nothing else asks for the material.
    private static StockLine ByPlan(StockLine line, Takeoff still, LeftToLay? left)
    {
        if (left is not { Kept: { } kept, Lacking.Count: 0, Gone.Count: 0 }) return line;
        if (line.Material.Equals(still.Wall.System.Tie) && !LayingFacts.Unfilled(kept).Any())
            return line with { ByPlan = kept.PlanId, AtLeast = false, Verdict = line.Verdict == StockVerdict.Short ? StockVerdict.Short : StockVerdict.Enough };
        if (line.OtherCount > 0 || still.Cuts.Any(cut => cut.Cut.Material.Equals(line.Material))) return line;
        var runs = kept.Laid.Runs.Concat(kept.Laid.FootingRuns).Where(run => run.Material.Equals(line.Material)).Select(run => run.Name).ToHashSet();
        if (runs.Count == 0 || LayingFacts.Unfilled(kept).Any(course => runs.Contains(course.Run))) return line;
        PlannedPiece[] bought = [.. left.Waiting.Where(piece => piece.Bought is not null && piece.Material.Equals(line.Material))];
        if (bought.Any(piece => piece.Length != line.NewLength)) return line;
        return line with { ByPlan = kept.PlanId, AtLeast = false, Verdict = bought.Length > 0 ? StockVerdict.Short : StockVerdict.Enough, ShortBy = bought.Length, ShortWithOthers = bought.Length };
    }

    // How much of courses that do not stand is cut for them: all of one that only waits to be stacked, of others what was made so far.
    private Dictionary<(string Run, int Course), Length> CutFor(LaidWall laid, WallFilled? filled, IReadOnlyList<StackedCourse> standing)
    {
        var whole = standing.Where(course => course.OnlyCut).Select(course => (course.Run, course.Course)).ToHashSet();
        var cut = (
            from run in laid.Runs.Concat(laid.FootingRuns)
            from course in run.Courses
            where whole.Contains((run.Name, course.Number))
            select (Key: (run.Name, course.Number), Units: course.Stretches.Sum(stretch => stretch.Length.Units))).ToDictionary(one => one.Key, one => Length.FromUnits(one.Units));
        if (filled is null || yard.Plan(filled.PlanId) is not { } steps) return cut;
        foreach (var course in filled.Plan.Courses.Where(course => standing.All(stood => (stood.Run, stood.Course) != (course.Run, course.Course))))
        {
            var made = course.Pieces.Where(steps.IsMade).Sum(piece => (piece.To - piece.From).Units);
            if (made > 0) cut[(course.Run, course.Course)] = Length.FromUnits(made);
        }

        return cut;
    }

    // Joints that stand or are cut for have their ties; the others as the kept filling has them. Cleats come with their joints.
    private static Takeoff WithPlan(Takeoff takeoff, WallFilled? filled, IReadOnlyList<StackedCourse> standing, HashSet<(string Run, int Course)> stands)
    {
        var legs = takeoff.Wall.Runs.ToDictionary(run => run.Name, run => run.Leg);
        var there = standing.Where(course => legs.ContainsKey(course.Run)).SelectMany(course => course.Joints.Select(at => (legs[course.Run], course.Course, at)));
        var planned = (filled?.Plan.ExtraTies ?? []).Where(tie => tie.CleatOn is null).Select(tie => (tie.Leg, tie.Course, tie.At));
        var full = takeoff.WithJoints(there.Concat(planned));
        var cleats = filled is null ? null : takeoff.Cleats(filled.Kept.Stage, filled.Plan.ExtraTies.Count(tie => tie.CleatOn is { } run && !stands.Contains((run, tie.Course))));
        return cleats is null ? full : full with { Cuts = [.. full.Cuts, cleats] };
    }

    // The cleats of form boards that stand or are cut, one a joint at most.
    private static IEnumerable<RequiredCut> CleatsThere(Takeoff takeoff, string stage, IReadOnlyList<StackedCourse> standing)
    {
        var boards = takeoff.Wall.FootingRuns.Select(run => run.Name).ToHashSet();
        return takeoff.Cleats(stage, standing.Where(course => boards.Contains(course.Run)).Sum(course => course.Joints.Count)) is { } cleats ? [cleats.Cut] : [];
    }

    // By name and what they are of: a cut and a counted thing may share a name.
    private static Dictionary<(string Name, Material Of), int> Counts(Stage stage) =>
        stage.Cuts.Select(cut => (Key: (cut.Name, Of: cut.Material), cut.Count)).Concat(stage.Hardware.Select(need => (Key: (need.Name, Of: (Material)need.Hardware), need.Count)))
            .GroupBy(need => need.Key).ToDictionary(same => same.Key, same => same.Sum(need => need.Count));

    private bool Stands(StageWall wall) =>
        new ChangeWalls(yard).Laid(wall.Sheet.Name).TryGet(out var there) && LeftToLay.Of(yard, there) is var left && left.Standing + left.Cut == left.Courses;

    // A panel's type says how strong it is, so that the wall is laid of no other; but who named it on one paper alone sees why too little is on hand.
    private static IEnumerable<string> OtherTypes(Takeoff still, StockOnHand stock, IReadOnlyList<StockLine> lines) =>
        still.Runs.Select(run => run.Material).OfType<FoamPanel>().Distinct().Where(panel => lines.Any(line => line.Material.Equals(panel) && line.Verdict == StockVerdict.Short)).SelectMany(panel =>
            from piece in stock.Pieces
            where piece.Material is FoamPanel foam && !foam.Equals(panel) && (foam.Thickness, foam.Height) == (panel.Thickness, panel.Height) && StockCheck.MayServeRun(piece, stock)
            group piece by (FoamPanel)piece.Material into alike
            let sheet = alike.Key.Type is { } type ? $"foam type {type.Name}" : "no foam type"
            select $"{Words.Count(alike.Count(), "piece")} of {alike.Key} would do but for the type of foam: if the wall may be of it, its system sheet says {sheet}.");

    private IEnumerable<string> LeftOut(StageWall kept)
    {
        var plans = yard.WallPlans().Select(plan => plan.Wall).ToHashSet();
        var walls = yard.Walls().Where(wall => wall.Sheet.Name != kept.Sheet.Name && !plans.Contains(wall.Sheet.Name) && !Stands(wall)).Select(wall => wall.Sheet.Name).ToArray();
        yield return $"On hand leaves out what is reserved for other stages and what waits in other plans; what else the stage {kept.Stage} needs comes off it. What other stages need and nobody has planned or reserved yet does not.";
        if (walls.Length > 0) yield return $"Not counted: what {string.Join(", ", walls)} {(walls.Length == 1 ? "takes" : "take")} of panels and boards, of which no filling is kept.";
    }
}
