using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>Gives up what still waits in a kept plan, so that its pieces and hardware are free again, those too that it had reserved for later stages; what was done stays.</summary>
public sealed class DropPlan(YardFile yard, LongWork? work = null)
{
    /// <summary>What was done, in a few words.</summary>
    public Result<string> Drop(int planId)
    {
        var seen = yard.ChangeNumber;
        if (yard.Plan(planId) is not { } kept) return PlanFaults.NoSuchPlan(planId);
        if (!kept.Open) return PlanFaults.NothingWaits(planId);
        var reserved = new LookAhead(yard.Plans(), yard.Stages()).ReservedBy(kept, yard.Pieces()).ToArray();
        var walls = yard.WallPlans().Where(wall => wall.PlanId == planId).Select(wall => yard.Walls().First(one => string.Equals(one.Sheet.Name, wall.Wall, StringComparison.OrdinalIgnoreCase))).ToArray();
        var begun = new BegunAndGivenUp(yard, walls);
        var takenBack = begun.TakenBack(work ?? LongWork.Unheard);
        return yard.ChangeSince(seen, $"gave up the rest of plan {planId}", change =>
        {
            change.DropRest(kept);
            foreach (var wall in yard.WallPlans().Where(wall => wall.PlanId == planId).ToArray()) change.DropWallPlan(wall.Wall);
            begun.ComeBack(change, takenBack);
            foreach (var piece in reserved) change.Update(piece with { State = PieceState.InYard, ReservedFor = "" });
        }).Then<string>(entry => entry.What + begun.Told + string.Concat(walls.Select(BegunAndGivenUp.Again)));
    }
}
