using System.Collections.Immutable;
using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Print;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>What a cut sheet is printed with.</summary>
public static class SheetOptions
{
    /// <summary>For a plan of this yard.</summary>
    public static CutSheetOptions For(YardFile yard, DateOnly today) => new()
    {
        Printed = today,
        Settings = yard.Settings(),
        Prices = yard.Prices(),
        StageDates = yard.Stages()
            .Where(stage => stage.Date is not null)
            .ToImmutableDictionary(stage => stage.Name, stage => stage.Date!.Value),
    };

    /// <summary>For a kept plan of this yard: with the new labels of what came back of the pieces that are cut.</summary>
    public static CutSheetOptions For(YardFile yard, KeptPlan kept, DateOnly today) => For(yard, today) with
    {
        Now = yard.Piece,
        NotAsked = yard.WallPlans().Any(wall => wall.PlanId == kept.Id) ? "" : CutText.Lacking(StageNeeds.NotAsked(kept, yard.Stages(), yard.Plans())),
        CameBack = kept.Plan.Pieces
            .Select((piece, index) => (piece.Source, Index: index))
            .Where(each => each.Source is not null && kept.Steps[each.Index].State is StepState.Done or StepState.DoneOtherwise)
            .ToImmutableDictionary(each => each.Index, each => CutFrom(yard, each.Source!.Code)),
        Filled = yard.WallPlans().FirstOrDefault(wall => wall.PlanId == kept.Id) is { } filled ? OnSheet(yard, filled.Wall, filled.Plan) : null,
    };

    /// <summary>What a sheet says of a wall beside its pieces; none where the wall can't be laid out any more.</summary>
    /// <param name="yard">The yard.</param>
    /// <param name="wall">Name of the wall.</param>
    /// <param name="plan">How its runs are filled.</param>
    public static WallOnSheet? OnSheet(YardFile yard, string wall, RunPlan plan) => new TakeOffWall(yard).Of(wall, plan).TryGet(out var taken)
        ? new WallOnSheet(
            taken.Kept.Sheet.Name,
            CutToHeight.Parts(plan, taken.Takeoff.Wall.Runs, taken.Takeoff.Wall.Notches, yard.Settings()),
            [.. taken.Stock.Where(line => line.Material is Hardware).Select(line => new WallHardware(line.Material.Name, line.NeededCount, Math.Min(line.NeededCount, line.OnHandCount)))])
        : null;

    // In the order in which they were entered, which is the order along the piece.
    private static ImmutableArray<Piece> CutFrom(YardFile yard, Code code) =>
        yard.Family(code) is { } family ? [.. family.InOrder().Select(member => member.Piece).Where(piece => piece.CutFrom == code)] : [];

    /// <summary>For a plan without a yard.</summary>
    public static CutSheetOptions For(YardSettings settings, PriceBook prices, DateOnly today, Func<Code, string> writtenCode) =>
        new() { Printed = today, Settings = settings, Prices = prices, CodeText = writtenCode };
}
