using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;

namespace Offcuts.Walls.Tests;

/// <summary>What tests are made of. Every wall here is our own invention, but the rectangle of 28 ft x 20 ft, which is worked by hand.</summary>
internal static class Sheets
{
    /// <summary>Foam of 2-1/2", so that with a core of 6" a wall is 11" thick. Panel, interval and ties: common practice, no source.</summary>
    public static SystemSheet System { get; } = SystemSheet.Generic with { ShortestPiece = Length.Zero, Stagger = Length.Zero };

    /// <summary>The same in round millimetres: foam 60, so that with a core of 150 a wall is 270 thick.</summary>
    public static SystemSheet Metric { get; } = System with
    {
        Name = "metric",
        PanelLength = Mm(1200),
        PanelHeight = Mm(300),
        Thickness = Mm(60),
        Interval = Mm(50),
        TieSpacing = Mm(300),
    };

    public static Length In(decimal inches) => Length.Inches(inches);

    public static Length Ft(decimal feet) => Length.Feet(feet);

    public static Length Mm(decimal millimetres) => Length.Millimetres(millimetres);

    public static Material Material(string name) => MaterialReader.Read(name).Value;

    public static Leg Leg(string name, Length length, Turn turn, params Opening[] openings) =>
        new() { Name = name, Length = length, Turn = turn, Openings = openings };

    public static WallSheet Wall(params Leg[] legs) => new()
    {
        Name = "wall",
        System = System.Name,
        Height = Ft(2),
        CoreWidth = In(6),
        Legs = legs,
    };

    public static WallSheet MetricWall(params Leg[] legs) => Wall(legs) with { System = Metric.Name, Height = Mm(600), CoreWidth = Mm(150) };

    public static WallSheet Rectangle { get; } =
        Wall(Leg("A", Ft(28), Turn.Left), Leg("B", Ft(20), Turn.Left), Leg("C", Ft(28), Turn.Left), Leg("D", Ft(20), Turn.Left)) with { Closed = true };

    public static LaidWall Laid(WallSheet wall, SystemSheet? system = null, LengthUnit unit = LengthUnit.Inch)
    {
        var laid = LaidWall.Of(wall, system ?? System, unit);
        laid.Faults.Select(fault => fault.Sentence).Should().BeEmpty();
        return laid.Value;
    }

    public static string[] Refusals(WallSheet wall, SystemSheet? system = null) =>
        [.. LaidWall.Of(wall, system ?? System, LengthUnit.Inch).Faults.Select(fault => fault.Sentence)];

    /// <summary>What a run covers in a course, in inches from the leg's start on its outside face.</summary>
    public static (decimal From, decimal To)[] Inches(this LaidWall wall, string run, int course) =>
        wall.Along(run, course, units => units / (decimal)Length.PerInch);

    /// <summary>The same in millimetres.</summary>
    public static (decimal From, decimal To)[] Millimetres(this LaidWall wall, string run, int course) =>
        wall.Along(run, course, units => units / (decimal)Length.PerMillimetre);

    private static (decimal From, decimal To)[] Along(this LaidWall wall, string name, int course, Func<long, decimal> as_)
    {
        var run = wall.Runs.Concat(wall.FootingRuns).Single(run => run.Name == name);
        var before = wall.Legs.First(leg => run.Leg.StartsWith(leg.Leg.Name, StringComparison.Ordinal)).AxisBefore.Units;
        return [.. run.Courses[course - 1].Stretches.Select(stretch => (as_(stretch.Start.Units - before), as_(stretch.End.Units - before)))];
    }
}
