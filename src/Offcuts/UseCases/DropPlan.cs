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
        var walls = yard.WallPlans().Where(wall => wall.PlanId == planId).Select(wall => yard.Walls().First(one => string.Equals(one.Sheet.Name, wall.Wall, StringComparison.OrdinalIgnoreCase))).ToArray();
        var begun = walls.Select(wall => new BegunAndGivenUp(yard, wall)).ToArray();
        return yard.ChangeSince(seen, $"gave up the rest of plan {planId}", work =>
        {
            work.DropRest(kept);
            foreach (var wall in yard.WallPlans().Where(wall => wall.PlanId == planId).ToArray()) work.DropWallPlan(wall.Wall);
            foreach (var lying in begun) lying.ComeBack(work);
            foreach (var piece in reserved) work.Update(piece with { State = PieceState.InYard, ReservedFor = "" });
        }).Then<string>(entry => entry.What + string.Concat(walls.Zip(begun, (wall, lying) => lying.Told + BegunAndGivenUp.Again(wall))));
    }
}
