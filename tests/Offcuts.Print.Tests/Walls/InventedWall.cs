using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Print.Tests;

/// <summary>
/// A leg of 16 ft with four courses, of our own invention: a door of 3 ft, a window over two and a half courses, a leg that meets its inside at 2 ft, an
/// extra tie, and a stretch that stays open. Every place is written out.
/// </summary>
internal static class InventedWall
{
    private static readonly PatternLines Lines = new(Length.Zero, In(2), In(12));

    public static Run Outside { get; } = Face("A outside", [
        [Of(0, 60), Of(96, 192)], [Of(0, 60), Of(96, 192)], [Of(0, 60), Of(96, 132), Of(168, 192)], [Of(0, 192)]]);

    public static Run Inside { get; } = Face("A inside", [
        [Of(8.5m, 21), Of(27, 60), Of(96, 183.5m)], [Of(8.5m, 21), Of(27, 60), Of(96, 183.5m)],
        [Of(8.5m, 21), Of(27, 60), Of(96, 132), Of(168, 183.5m)], [Of(8.5m, 21), Of(27, 183.5m)]]);

    // A door from 5' to 8', 3' high; a window from 11' to 14', 1' 6" high from 2' on: it takes the third course and half of the fourth.
    private static readonly WallHole[] Holes =
    [
        new("door", Of(60, 96), Length.Zero, In(36)),
        new("window", Of(132, 168), In(24), In(42)),
    ];

    public static Piece Offcut { get; } = new()
    {
        Code = Invented.Code("RKDHKXJ"),
        Material = Invented.Material("foam 2-1/2x12 II"),
        Length = In(40),
        FirstLine = In(0),
        Place = "invented loft",
    };

    public static Piece Rest { get; } = Offcut with { Code = Invented.Code("43HTX4K"), Length = In(24), Place = "under the tarp" };

    public static RunPlan Plan { get; } = new()
    {
        Stage = "stem wall",
        Tiers = new RunTiers([], Figure.Best(0), Figure.Best(0), Figure.Best(1), Figure.Best(0), Figure.Best(0)),
        Courses =
        [
            new("A outside", 1, [Laid(0, 48, 0, 0), Laid(48, 60, 1, 0), Laid(96, 144, 2, 0), Laid(144, 192, 3, 0)], null),
            new("A outside", 2, [Laid(0, 38, 4, 0), Laid(38, 60, 5, 0, turned: true), Laid(96, 120, 1, 1), Laid(120, 168, 6, 0), Laid(168, 192, 7, 0)], null),
            new("A outside", 3, [Laid(0, 48, 8, 0), Laid(48, 60, 7, 1)], "no price for foam 2-1/2x12 II"),
            new("A outside", 4, [], "no price for foam 2-1/2x12 II"),
        ],
        ExtraTies = [new("A", 2, In(38), null)],
        Pieces =
        [
            New([0, 48]), New([0, 12], [12, 24]), New([0, 48]), New([0, 48]), Used(Offcut, [0, 38]), Used(Rest, [0, 22]), New([0, 48]), New([0, 24], [24, 12]), New([0, 48]),
        ],
        Savings = new PlanSavings(new Money(0), new Money(0), AllNewProven: true, Unpriced: []),
        Unpriced = [],
    };

    public static WallPicture Picture { get; } = new()
    {
        Wall = "garage",
        Stage = "stem wall",
        Rows =
        [
            new WallRow { Run = Outside, SeenFrom = "outside", Holes = Holes },
            new WallRow { Run = Inside, SeenFrom = "inside", StartAtRight = true, Holes = Holes },
        ],
        Plan = Plan,
        Stacked = [new StackedCourse("bench", "A outside", 1, [])],
        Steel = true,
    };

    public static Length In(decimal inches) => Length.Inches(inches);

    public static Span Of(decimal from, decimal to) => new(In(from), In(to));

    private static Run Face(string name, Span[][] courses) => new()
    {
        Name = name,
        Leg = "A",
        Material = Invented.Material("foam 2-1/2x12 II"),
        Lines = Lines,
        Joints = JointRule.OnPattern,
        Stagger = In(12),
        ShortestPiece = In(6),
        Reversible = false,
        Courses = [.. courses.Select((stretches, i) => new Course(i + 1, In(12), stretches))],
    };

    private static LaidPiece Laid(decimal from, decimal to, int piece, int cut, bool turned = false) => new(In(from), In(to), piece, cut, turned);

    private static PlannedPiece Used(Piece source, params decimal[][] cuts) => new() { Source = source, Cuts = Cuts(cuts), Remainders = [], SawCuts = cuts.Length };

    private static PlannedPiece New(params decimal[][] cuts) => new()
    {
        Bought = new StorePrice { Material = Invented.Material("foam 2-1/2x12 II"), Length = In(48), Price = new Money(1450), Date = Invented.Day },
        Cuts = Cuts(cuts),
        Remainders = [],
        // The last cut needs no saw where it ends with the panel.
        SawCuts = cuts.Sum(cut => cut[1]) == 48 ? cuts.Length - 1 : cuts.Length,
    };

    private static IReadOnlyList<PlannedCut> Cuts(decimal[][] cuts) => [.. cuts.Select(cut => new PlannedCut("stem wall", "A outside", In(cut[0]), In(cut[1]), Use.Nonstructural))];
}
