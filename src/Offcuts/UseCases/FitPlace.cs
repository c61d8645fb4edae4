using Offcuts.Core.Faults;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Matching.Runs;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>Which piece of the yard fits one place.</summary>
public sealed class FitPlace(YardFile yard)
{
    /// <summary>The candidates, the one that loses least first, or why there can be none. What waits in a kept plan comes after all that is free, and says so.</summary>
    public Result<IReadOnlyList<OneOffCandidate>> Of(OneOffNeed need) =>
        OneOffSearch.Find(need, yard.Pieces(), yard.Prices(), yard.Settings()).Then<IReadOnlyList<OneOffCandidate>>(found =>
        {
            var waits = Waiting(yard.Plans());
            OneOffCandidate[] all = [.. found.Select(one => waits.TryGetValue(one.Piece.Code, out var plan) ? one with { WaitsInPlan = plan } : one)];
            return Result<IReadOnlyList<OneOffCandidate>>.Of([.. all.OrderBy(one => one.WaitsInPlan is not null)]);
        });

    // By code the plan that is to cut a piece.
    private static Dictionary<Code, int> Waiting(IReadOnlyList<KeptPlan> plans)
    {
        var waits = new Dictionary<Code, int>();
        foreach (var plan in plans.Where(plan => plan.Open))
        {
            foreach (var (planned, step) in plan.Plan.Pieces.Zip(plan.Steps))
                if (step.State == StepState.Waiting && planned.Source is { } source) waits[source.Code] = plan.Id;
        }

        return waits;
    }

    /// <summary>Panels that might fit, but can't be told to, because their first pattern line is not known.</summary>
    public IReadOnlyList<Piece> Unlined(OneOffNeed need) => need.LeftOnPattern || need.RightOnPattern
        ? [.. yard.Pieces().Where(piece => piece is { OnHand: true, FirstLine: null } && piece.Material.Equals(need.Material) && (piece.State != PieceState.Reserved || piece.ReservedFor == need.Stage) && piece.Spans().Any(span => span.Length >= need.Length))]
        : [];
}
