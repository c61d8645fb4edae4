using Offcuts.Core.Faults;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>A wall taken off, with what is on hand for it.</summary>
/// <param name="Kept">The wall and its stage.</param>
/// <param name="Takeoff">What it asks for.</param>
/// <param name="Stock">A line a material.</param>
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
            var stock = new StockOnHand(yard.Pieces(), yard.Bins(), yard.Prices(), yard.Settings().Rules, kept.Stage, stage?.Date);
            return new WallTakenOff(kept, takeoff, StockCheck.Of(takeoff, stock));
        }));
    }
}
