using Offcuts.Core.Faults;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>A wall taken off, with what is on hand for it.</summary>
/// <param name="Kept">The wall and its stage.</param>
/// <param name="Takeoff">What it asks for.</param>
/// <param name="Stock">What it still needs of each material, and what is on hand.</param>
public sealed record WallTakenOff(StageWall Kept, Takeoff Takeoff, IReadOnlyList<StockLine> Stock);

/// <summary>Takes off a wall of the yard: what it asks for, and whether what is on hand will do.</summary>
public sealed class TakeOffWall(YardFile yard)
{
    /// <summary>The wall of a name taken off, or why it can't be.</summary>
    public Result<WallTakenOff> Of(string name)
    {
        var walls = new ChangeWalls(yard);
        return walls.Find(name).Then(kept => walls.Lay(kept.Sheet).Then<WallTakenOff>(laid =>
        {
            var takeoff = Takeoff.Of(laid, kept.Stage);
            var stage = yard.Stages().Named(kept.Stage);
            var plans = yard.Plans();
            var needs = new Stage(kept.Stage, null, [.. takeoff.Cuts.Select(cut => cut.Cut)], takeoff.HardwareNeeds(kept.Stage));
            var lacking = StageNeeds.Lacking(needs, plans);
            int Done(string need) =>
                needs.Cuts.Where(cut => cut.Name == need).Sum(cut => cut.Count) + needs.Hardware.Where(one => one.Name == need).Sum(one => one.Count)
                - lacking.Cuts.Where(cut => cut.Name == need).Sum(cut => cut.Count) - lacking.Hardware.Where(one => one.Name == need).Sum(one => one.Count);
            var stock = new StockOnHand(yard.Pieces(), yard.Bins(), yard.Prices(), yard.Settings().Rules, kept.Stage, stage?.Date);
            return new WallTakenOff(kept, takeoff, StockCheck.Of(takeoff.Still(Done), stock));
        }));
    }
}
