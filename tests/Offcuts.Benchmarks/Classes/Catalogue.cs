using Offcuts.Benchmarks.Measuring;
using Offcuts.Matching.Tests;
using Offcuts.Matching.Tests.Independent;

namespace Offcuts.Benchmarks.Classes;

/// <summary>Every class, in the order of the results page.</summary>
internal static class Catalogue
{
    private const string Invented = "Invented, drawn from a seed; see `Classes/Yards.cs`.";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<InstanceClass> All { get; } = [.. AllYards, .. AllWalls, .. BinPacking.All, .. SeveralLengths.All];

    private static IEnumerable<InstanceClass> AllYards =>
    [
        Yard("yard-60-buy", "60 cut copies, 40 to 60 pieces, some bought", new YardSize(60, 60, 50, 1, false), 6,
            "tiers 1 to 3 proven in 0.3 s, in 1 s at least", 10),
        Yard("yard-60-enough", "60 cut copies, a yard that holds enough", new YardSize(60, 60, 50, 1, true), 6,
            "proven in 10 s; tier 3 within 0.3 % in 5 s at least", 10),
        Yard("yard-300-buy", "300 cut copies in 40 sizes, 400 pieces, some bought", new YardSize(300, 40, 400, 1, false), 3,
            "proven in 0.5 s, in 3 s at least", 10),
        Yard("yard-300-enough", "300 cut copies in 40 sizes, 400 pieces, enough", new YardSize(300, 40, 400, 1, true), 3,
            "proven in 10 s; tier 3 within 0.05 % at least", 10),
        Yard("yard-2000-buy", "2,000 cut copies in 120 sizes, 3,000 pieces, 12 materials, some bought", new YardSize(2000, 120, 3000, 12, false), 2,
            "proven in 5 s; at least tiers 1 and 2, tier 3 within 0.05 % in 10 s; 500 MB at most", 10),
        Yard("yard-2000-enough", "2,000 cut copies in 120 sizes, 3,000 pieces, 12 materials, enough", new YardSize(2000, 120, 3000, 12, true), 2,
            "tiers 1 and 2 proven, tier 3 within 0.05 % in 10 s; 500 MB at most", 10),
        new("yard-60-rip", "60 cut copies of three widths that may be ripped, 50 pieces, some bought", $"{Invented} Every cut may be ripped; the other two do not rip, so they are left out.",
            "tiers 1 to 3 and the rips proven in 10 s", 10, 2, 4, seed => Yards.Draw(new YardSize(60, 30, 50, 3, false), seed).Ripping()),
        new("yard-25", "25 cut copies, 25 pieces, lengths to 1/16 in", "Invented; see `FullYards` of the matcher's tests.",
            "every one proven", 10, 2, 6, seed => new Instance($"no {seed}", FullYards.Draw(seed))),
        new("yard-any", "Yards of many kinds, up to 60 cut copies and 60 pieces", "Invented; see `RandomYards` of the matcher's tests.",
            "every one proven", 10, 2, 8, seed => new Instance($"no {seed}", RandomYards.Draw(seed, 60, 60))),
    ];

    private static IEnumerable<InstanceClass> AllWalls =>
    [
        Wall("run-corner", "One course from a corner on, 60 offcuts", "every figure proven in 0.1 s", 1, 3, 16, Walls.Corner),
        Wall("run-leg-0", "A leg of 36 ft, 10 courses, both faces, 60 offcuts, no stagger", "new panels proven least in 10 s", 10, 1, 4, seed => Walls.Leg(seed, 0)),
        Wall("run-leg-12", "The same with a stagger of 12 in", "new panels proven least in 10 s", 10, 1, 4, seed => Walls.Leg(seed, 12)),
        Wall("run-leg-24", "The same with a stagger of 24 in", "new panels proven least in 10 s", 10, 1, 4, seed => Walls.Leg(seed, 24)),
        Wall("run-house", "Eight legs, 10 courses, both faces, windows and a door, 300 offcuts, stagger 12 in", "a full plan in 20 s, within one panel in a hundred of the bound in 60 s", 60, 1, 2, seed => Walls.House(seed, 12)) with { QuickSeconds = 2 },
        Wall("run-house-24", "The same with a stagger of half a panel", "a full plan in 20 s, within one panel in a hundred of the bound in 60 s", 60, 1, 2, seed => Walls.House(seed, 24)) with { QuickSeconds = 2 },
        Wall("run-window-24", "A leg of 36 ft and one of 20 ft with windows and doors, 10 courses, both faces, 100 offcuts, stagger 24 in", "new panels within one in a hundred of the bound in 10 s", 10, 1, 4, Walls.Windowed),
        new("run-built", "Walls as they are written on a sheet: a cellar with a tee, a shed, a metric cellar; with doors, windows and leftovers", "Invented; see `Classes/BuiltWalls.cs`. The figures are courses unfilled, cents spent, cents of yard value given up; those after them stand beside it where they are not proven.",
            "spend proven in 20 s, and as few extra ties, joints and saw cuts as can be", 20, 3, 3, BuiltWalls.Draw),
        Wall("run-boards", "Form boards of a footing, joints on stakes, 40 boards on hand", "a full plan, spend proven in 10 s", 10, 1, 3, seed => Walls.Boards(seed, cleats: false)),
        Wall("run-cleats", "The same, joints anywhere with cleats", "a full plan in 10 s", 10, 1, 3, seed => Walls.Boards(seed, cleats: true)),
    ];

    private static InstanceClass Wall(string name, string title, string goal, double seconds, int quick, int full, Func<int, Instance> draw) => new(
        name, title, "Invented, drawn from a seed; see `Classes/Walls.cs`. The figures are courses unfilled, cents spent (foam: 1800 a new panel), cents of yard value given up.",
        goal, seconds, quick, full, draw);

    // Small yards have 40 to 60 pieces, by their seed.
    private static InstanceClass Yard(string name, string title, YardSize size, int full, string goal, double seconds) => new(
        name, title, Invented, goal, seconds, size.Copies < 100 ? 2 : 1, full,
        seed => Yards.Draw(size.Copies == 60 ? size with { Pieces = 40 + seed * 7 % 21 } : size, seed))
    { QuickSeconds = size.Copies < 1000 ? 1 : 2 };
}
