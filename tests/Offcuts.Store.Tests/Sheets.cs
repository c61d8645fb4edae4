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

    /// <summary>One course of the garage laid from the pieces of the sample plan, as nobody would lay it.</summary>
    public static RunPlan Laying { get; } = new()
    {
        Stage = "walls",
        Tiers = new RunTiers([new CourseFigure(1, new(1, 0))], new(1500, 1200), new(10, 10), new(1, 0), new(0, 0), new(2, 1)),
        Courses =
        [
            new LaidCourse("A outside", 1, [new LaidPiece(Length.Zero, Length.Feet(2), 0, 0, Turned: true)], null),
            new LaidCourse("A inside", 1, [], "no panel is long enough"),
        ],
        ExtraTies = [new ExtraTie("A", 1, Length.Inches(14), null), new ExtraTie("A footing", 1, Length.Inches(20), "A footing outside")],
        Pieces = Samples.Plan.Pieces,
        Savings = Samples.Plan.Savings,
        Unpriced = [],
    };

    /// <summary>The garage as it is to be filled, with one course that stands; for a yard that holds <see cref="All"/>.</summary>
    public static void Filled(YardChange change)
    {
        change.KeepWallPlan(Garage.Name, Laying);
        change.Stack(new StackedCourse(Garage.Name, "B inside", 1, [Length.Feet(4), Length.Feet(8)])
        {
            Pieces = [new StoodPiece(Length.Zero, Length.Feet(4), Samples.Long, Turned: true), new StoodPiece(Length.Feet(4), Length.Feet(8), default, Turned: false)],
        });
    }

    public static void All(YardChange change)
    {
        change.SetSystem(System);
        change.SetSystem(System with { Name = "unused" });
        change.SetWall(new StageWall("walls", Garage));
    }
}
