using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Matching;

namespace Offcuts.UseCases;

/// <summary>
/// What was said of single pieces when the newest plan of a stage was made: matched again, it still holds until it is released.
/// What has met its end is left out: a piece that is gone, copies that are made.
/// </summary>
public static class KeptWishes
{
    /// <summary>The wishes that still bind these stages.</summary>
    /// <param name="plans">All plans of the yard, oldest first.</param>
    /// <param name="lacking">What is to be planned.</param>
    /// <param name="pieces">The pieces that may be planned with.</param>
    public static Wishes Of(IReadOnlyList<KeptPlan> plans, IReadOnlyList<Stage> lacking, IReadOnlyList<Piece> pieces)
    {
        var there = pieces.Where(piece => piece.OnHand).Select(piece => piece.Code).ToHashSet();
        var (pins, spares) = (new List<Pin>(), new List<Spare>());
        foreach (var stage in lacking)
        {
            if (plans.LastOrDefault(plan => plan.Plan.Stages.Contains(stage.Name)) is not { } newest) continue;
            foreach (var cut in stage.Cuts)
                pins.AddRange(newest.Plan.Wishes.Pins.Where(pin => pin.Stage == stage.Name && pin.Cut == cut.Name && there.Contains(pin.Piece)).Take(cut.Count));
            spares.AddRange(newest.Plan.Wishes.Spares.Where(spare => there.Contains(spare.Piece)
                && (spare.Wholly || (spare.Stage == stage.Name && stage.Cuts.Any(cut => cut.Name == spare.Cut)))));
        }

        return new Wishes(pins, [.. spares.Distinct()]);
    }

    /// <summary>False where each of these stages was planned last from the yard alone, as somebody wished.</summary>
    public static bool BuyOf(IReadOnlyList<KeptPlan> plans, IReadOnlyList<Stage> lacking) =>
        lacking.Any(stage => plans.LastOrDefault(plan => plan.Plan.Stages.Contains(stage.Name)) is not { Plan.Buys: false });

    /// <summary>What came first after fill and spend when these stages were planned last; where they differ, the usual order.</summary>
    public static TierOrder OrderOf(IReadOnlyList<KeptPlan> plans, IReadOnlyList<Stage> lacking)
    {
        var newest = lacking.Select(stage => plans.LastOrDefault(plan => plan.Plan.Stages.Contains(stage.Name))).OfType<KeptPlan>().ToArray();
        // Only where saw cuts come first is their bound a part of the plan.
        return newest.Length > 0 && newest.All(kept => kept.Plan.Tiers.SawCutsBound is not null) ? TierOrder.SawCutsFirst : TierOrder.ValueFirst;
    }

    /// <summary>Both together; what stands in both is not meant twice.</summary>
    public static Wishes Joined(Wishes kept, Wishes said)
    {
        var more = said.Pins.GroupBy(pin => pin).SelectMany(same => same.Skip(kept.Pins.Count(pin => pin == same.Key)));
        return kept.And(new Wishes([.. more], said.Spares));
    }
}
