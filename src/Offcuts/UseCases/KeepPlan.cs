using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>A plan that was kept.</summary>
/// <param name="Id">Its number.</param>
/// <param name="GivenUp">Numbers of the older plans whose waiting rest it takes the place of.</param>
public sealed record PlanKept(int Id, IReadOnlyList<int> GivenUp)
{
    /// <summary>Pieces that the older plans count on for stages which this one does not plan, and that are reserved for them now.</summary>
    public IReadOnlyList<Piece> Reserved { get; init; } = [];

    /// <summary>What those stages had waiting in the older plans and have no longer, stage by stage.</summary>
    public IReadOnlyList<StageUnplanned> Unplanned { get; init; } = [];

    /// <summary>The plan as it is kept: where the yard had changed since it was found, that is said of it. None where nothing was kept.</summary>
    public Plan? Plan { get; init; }

    /// <summary>What became of the older plans, in a few words; empty where there were none.</summary>
    public string ToText() => GivenUp.Count == 0 ? "" : $"what waited in {(GivenUp.Count == 1 ? "plan" : "plans")} {string.Join(", ", GivenUp)} is given up";

    /// <summary>What becomes of plans that are given up, and what these stages have planned no more by it: clauses without a full stop; none where no plan is.</summary>
    public static IEnumerable<string> Told(IReadOnlyList<KeptPlan> given, IEnumerable<Stage> stages, LengthUnit unit)
    {
        var kept = new PlanKept(0, [.. given.Select(plan => plan.Id)]) { Unplanned = [.. stages.Select(stage => StageUnplanned.Of(stage, given, unit)).OfType<StageUnplanned>()] };
        return given.Count == 0 ? [] : [kept.ToText(), .. kept.Meaning()];
    }

    /// <summary>What that means for other stages, a sentence each without a full stop: what is planned no more, what is reserved.</summary>
    public IEnumerable<string> Meaning()
    {
        foreach (var stage in Unplanned)
            yield return $"no longer planned for {stage.Stage}: {string.Join(", ", stage.What)}{(stage.Bought.Count > 0 ? $"; no longer to be bought for it: {string.Join(", ", stage.Bought)}" : "")}";
        foreach (var kept in Reserved.GroupBy(piece => piece.ReservedFor))
            yield return $"reserved for {kept.Key}: {string.Join(", ", kept.Select(piece => piece.Code))}; let go with: offcuts free";
    }
}

/// <summary>What a stage had waiting in plans that are given up.</summary>
/// <param name="Stage">The stage.</param>
/// <param name="What">Its cuts and counted things, each with its number.</param>
/// <param name="Bought">What was to be bought for them.</param>
public sealed record StageUnplanned(string Stage, IReadOnlyList<string> What, IReadOnlyList<string> Bought)
{
    /// <summary>What these plans still had waiting for a stage; nothing where they had nothing.</summary>
    internal static StageUnplanned? Of(Stage stage, IReadOnlyList<KeptPlan> given, LengthUnit unit)
    {
        PlannedPiece[] waiting = [.. given.SelectMany(plan => plan.Plan.Pieces.Zip(plan.Steps).Where(each => each.Second.State == StepState.Waiting).Select(each => each.First))
            .Where(piece => piece.Cuts.Any(cut => cut.Stage == stage.Name))];
        HardwareFill[] counted = [.. given.Where(plan => plan.HardwareWaits).SelectMany(plan => plan.Plan.Hardware).Where(fill => fill.Need.Stage == stage.Name && fill.FromYard + fill.ToBuy > 0)];
        if (waiting.Length + counted.Length == 0) return null;
        return new StageUnplanned(
            stage.Name,
            [
                .. waiting.SelectMany(piece => piece.Cuts).Where(cut => cut.Stage == stage.Name).GroupBy(cut => cut.Cut).Select(same => $"{same.Count()} x {same.Key}"),
                .. counted.GroupBy(fill => fill.Need.Name).Select(same => $"{same.Sum(fill => fill.FromYard + fill.ToBuy)} x {same.Key}"),
            ],
            [
                .. waiting.Where(piece => piece.Bought is not null).GroupBy(piece => (piece.Material, piece.Length, Shared: Shared(piece, stage))).Select(same => $"{same.Count()} of {same.Key.Material} {same.Key.Length.ToText(unit)}{same.Key.Shared}"),
                .. counted.GroupBy(fill => fill.Need.Hardware).Where(same => same.Sum(fill => fill.ToBuy) > 0).Select(same => $"{same.Sum(fill => fill.ToBuy)} of {same.Key}"),
            ]);
    }

    // A new board may have been for several stages.
    private static string Shared(PlannedPiece piece, Stage stage) =>
        piece.Cuts.Select(cut => cut.Stage).Where(name => name != stage.Name).Distinct().ToArray() is { Length: > 0 } others ? $", shared with {string.Join(" and ", others)}" : "";
}

/// <summary>
/// Keeps a plan in the yard. What still waits in an older plan for any of the same stages is dropped in the same change, so
/// that no stage is ever planned twice; what was done under it stays. What the older plan relies on for stages that this one does
/// not plan stays reserved for them (<see cref="LookAhead"/>). How a wall is filled is kept by <see cref="FillWall"/> and stays.
/// </summary>
public sealed class KeepPlan(YardFile yard)
{
    /// <summary>Under which number it is kept, and what it takes the place of. Refused where a piece of it can't be cut as planned any more.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="foundAt">The yard's change number when its match began: where the yard is another by now, what is proven of the plan was proven of the yard before.</param>
    public Result<PlanKept> Keep(Plan plan, long? foundAt = null)
    {
        var id = 0;
        var seen = yard.ChangeNumber;
        if (foundAt is { } at && at != seen) plan = plan with { Earlier = true };
        var plans = yard.Plans();
        var ahead = new LookAhead(plans, yard.Stages());
        var used = plan.Pieces.Select(piece => piece.Source?.Code ?? default).ToHashSet();
        var walls = yard.WallPlans().Select(wall => wall.PlanId).ToHashSet();
        if (NotAsFound(plan, ahead, plans.Where(old => old.Open && (walls.Contains(old.Id) || !old.Plan.Stages.Intersect(plan.Stages).Any()))) is { Length: > 0 } outdated)
            return PlanFaults.Outdated(outdated);
        IReadOnlyList<Stage> stages = yard.Stages();
        var unit = yard.Settings().Unit;
        var reserved = new List<Piece>();
        var older = plans.Where(old => old.Open && !walls.Contains(old.Id) && old.Plan.Stages.Intersect(plan.Stages).Any()).ToArray();
        var change = yard.ChangeSince(seen, $"kept a plan for {string.Join(", ", plan.Stages)}", work =>
        {
            foreach (var piece in yard.Pieces().Where(piece => ahead.GivesWay(piece, plan.Stages)))
                work.Update(piece with { State = PieceState.InYard, ReservedFor = "" });
            // A plan of which nothing waits has nothing to give up, but what was let go of it is planned anew by this one.
            foreach (var old in plans.Where(old => !old.Open && old.LetGo.Count > 0 && old.LetGo.All(cut => plan.Stages.Contains(cut.Stage)))) work.DropRest(old);
            foreach (var old in older)
            {
                reserved.AddRange(ahead.Reserve(work, yard, old, plan.Stages, used));
                work.DropRest(old);
            }

            id = work.KeepPlan(plan);
        });
        return change.Then<PlanKept>(_ => new PlanKept(id, [.. older.Select(old => old.Id)])
        {
            Plan = plan,
            Reserved = [.. reserved.DistinctBy(piece => piece.Code)],
            Unplanned = [.. stages.Where(stage => !plan.Stages.Contains(stage.Name)).Select(stage => StageUnplanned.Of(stage, older, unit)).OfType<StageUnplanned>()],
        });
    }

    // Pieces that the plan cuts and that are gone, changed, or kept for something else by now, each with the reason.
    private (string Code, string Why)[] NotAsFound(Plan plan, LookAhead ahead, IEnumerable<KeptPlan> others)
    {
        var taken = new Promised(others).Pieces.Union(ahead.Held(plan.Stages)).ToHashSet();
        return
        [
            .. plan.Pieces.Where(piece => piece.Source is not null)
                .Select(piece => (Piece: piece, Now: yard.Piece(piece.Source!.Code)))
                .Select(each => (Code: each.Piece.Source!.Code.ToString(), Why: PlanToday.Trouble(each.Piece, each.Now) ?? Otherwise(each.Piece, each.Now!)))
                .Where(each => each.Why is not null).Select(each => (each.Code, each.Why!)),
        ];

        string? Otherwise(PlannedPiece piece, Piece now) =>
            taken.Contains(now.Code) ? "waits for another plan"
            : now.State == PieceState.Reserved && !ahead.GivesWay(now, plan.Stages) && piece.Cuts.Any(cut => cut.Stage != now.ReservedFor) ? $"reserved for {now.ReservedFor}"
            : null;
    }
}
