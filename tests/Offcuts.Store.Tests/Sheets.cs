using Offcuts.Core.Measures;
using Offcuts.Core.Walls;

namespace Offcuts.Store.Tests;

/// <summary>A system and a wall, our own invention, for a yard that holds the samples.</summary>
internal static class Sheets
{
    public static SystemSheet System { get; } = SystemSheet.Generic with { Name = "blocks of ours", Notes = ["from Höß, page 3"] };

    public static WallSheet Garage { get; } = new()
    {
        Name = "garage",
        System = System.Name,
        Height = Length.Feet(8),
        CoreWidth = Length.Millimetres(150),
        Legs =
        [
            new Leg { Name = "A", Length = Length.Feet(28), Turn = Turn.Left, Openings = [new Opening("door", Length.Feet(4), Length.Feet(3), Length.Feet(7), Length.Zero)] },
            new Leg { Name = "B", Length = Length.Millimetres(6000.1m), Turn = Turn.End },
        ],
    };

    public static void All(YardChange change)
    {
        change.SetSystem(System);
        change.SetSystem(System with { Name = "unused" });
        change.SetWall(new StageWall("walls", Garage));
    }
}
