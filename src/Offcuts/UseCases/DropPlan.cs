using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>Gives up what still waits in a kept plan, so that its pieces and hardware are free again, those too that it had reserved for later stages; what was done stays.</summary>
public sealed class DropPlan(YardFile yard)
{
    /// <summary>What was done, in a few words.</summary>
    public Result<string> Drop(int planId)
    {
        var seen = yard.ChangeNumber;
        if (yard.Plan(planId) is not { } kept) return PlanFaults.NoSuchPlan(planId);
        if (!kept.Open) return PlanFaults.NothingWaits(planId);
        var reserved = new LookAhead(yard.Plans(), yard.Stages()).ReservedBy(kept, yard.Pieces()).ToArray();
        return yard.ChangeSince(seen, $"gave up the rest of plan {planId}", work =>
        {
            work.DropRest(kept);
            foreach (var wall in yard.WallPlans().Where(wall => wall.PlanId == planId).ToArray()) work.DropWallPlan(wall.Wall);
            foreach (var piece in reserved) work.Update(piece with { State = PieceState.InYard, ReservedFor = "" });
        }).Then<string>(entry => entry.What);
    }
}
