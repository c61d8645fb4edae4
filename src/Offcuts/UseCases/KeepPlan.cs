using Offcuts.Core.Faults;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>A plan that was kept.</summary>
/// <param name="Id">Its number.</param>
/// <param name="GivenUp">Numbers of the older plans whose waiting rest it takes the place of.</param>
public sealed record PlanKept(int Id, IReadOnlyList<int> GivenUp)
{
    /// <summary>What became of the older plans, in a few words; empty where there were none.</summary>
    public string ToText() => GivenUp.Count == 0 ? "" : $"what waited in {(GivenUp.Count == 1 ? "plan" : "plans")} {string.Join(", ", GivenUp)} is given up";
}

/// <summary>
/// Keeps a plan in the yard. What still waits in an older plan for any of the same stages is dropped in the same change, so
/// that no stage is ever planned twice; what was done under it stays. What the older plan relies on for stages that this one does
/// not plan stays reserved for them (<see cref="LookAhead"/>). How a wall is filled is kept by <see cref="FillWall"/> and stays.
/// </summary>
public sealed class KeepPlan(YardFile yard)
{
    /// <summary>Under which number it is kept, and what it takes the place of.</summary>
    public Result<PlanKept> Keep(Plan plan)
    {
        var id = 0;
        var seen = yard.ChangeNumber;
        var plans = yard.Plans();
        var ahead = new LookAhead(plans, yard.Stages());
        var used = plan.Pieces.Select(piece => piece.Source?.Code ?? default).ToHashSet();
        var walls = yard.WallPlans().Select(wall => wall.PlanId).ToHashSet();
        var older = plans.Where(old => old.Open && !walls.Contains(old.Id) && old.Plan.Stages.Intersect(plan.Stages).Any()).ToArray();
        var change = yard.ChangeSince(seen, $"kept a plan for {string.Join(", ", plan.Stages)}", work =>
        {
            foreach (var piece in yard.Pieces().Where(piece => ahead.GivesWay(piece, plan.Stages)))
                work.Update(piece with { State = PieceState.InYard, ReservedFor = "" });
            foreach (var old in older)
            {
                ahead.Reserve(work, yard, old, plan.Stages, used);
                work.DropRest(old);
            }

            id = work.KeepPlan(plan);
        });
        return change.Then<PlanKept>(_ => new PlanKept(id, [.. older.Select(old => old.Id)]));
    }
}
