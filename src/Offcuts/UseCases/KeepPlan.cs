using Offcuts.Core.Faults;
using Offcuts.Core.Plans;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>
/// Keeps a plan in the yard. What still waits in an older plan for any of the same stages is dropped in the same change, so
/// that no stage is ever planned twice; what was done under it stays.
/// </summary>
public sealed class KeepPlan(YardFile yard)
{
    /// <summary>The number of the kept plan.</summary>
    public Result<int> Keep(Plan plan)
    {
        var id = 0;
        var seen = yard.ChangeNumber;
        var older = yard.Plans().Where(old => old.Open && old.Plan.Stages.Intersect(plan.Stages).Any()).ToArray();
        var change = yard.ChangeSince(seen, $"kept a plan for {string.Join(", ", plan.Stages)}", work =>
        {
            foreach (var old in older) work.DropRest(old);
            id = work.KeepPlan(plan);
        });
        return change.Then<int>(_ => id);
    }
}
