using System.Collections.Immutable;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Print.Tests;

/// <summary>Pieces, a plan and prices of our own invention: no real yard, job, store or price.</summary>
internal static class Invented
{
    public const string Note = "Sample print. Every piece, price and stage on it is invented.";

    public static DateOnly Day { get; } = new(2026, 11, 25);

    public static Code Code(string text) => Core.Yard.Code.Parse(text).Value;

    public static Length In(decimal inches) => Length.Inches(inches);

    public static Material Material(string name) => MaterialReader.Read(name).Value;

    public static Hardware Hardware(string name, string unit = "each") => (Hardware)MaterialReader.ReadCounted(name, unit).Value;

    /// <summary>The largest label the yard allows: every mark, and every text as long as it may be.</summary>
    public static Piece Crowded { get; } = new()
    {
        Code = Code("T9F3VRJ"),
        Material = Material("Old threshing-floor beam, oak, hewn on three sides, 8x9 low"),
        Length = Length.FromUnits(142 * Length.PerInch + 5),
        Condition = Condition.Poor,
        Nails = true,
        Treated = true,
        TreatedWith = "copper azole brushed on, twice, by whoever had it before us",
        Oiled = true,
        Concrete = true,
        Stamped = true,
        BadSpots = [new(In(20), In(22)), new(In(40), In(42)), new(In(60), In(62)), new(In(80), In(82)), new(In(100), In(102))],
        TrimLeft = In(0.5m),
        TrimRight = In(1.25m),
        Place = "Žluťoučký kůň shed, behind the łódź, second shelf up",
    };

    public static IReadOnlyList<LabelContent> Labels { get; } =
    [
        LabelContent.Of(Waler, Day, LengthUnit.Inch),
        LabelContent.Of(Sill, Day, LengthUnit.Inch),
        LabelContent.Of(Stud, Day, LengthUnit.Inch),
        LabelContent.Of(Bar, Day, LengthUnit.Inch),
        LabelContent.Of(Panel, Day, LengthUnit.Inch),
        LabelContent.Of(
            new Piece { Code = Code("YJ9JVWC"), Material = Material("plywood 3/4"), Length = In(96), Width = In(48), Condition = Condition.Fair, Oiled = true, Place = "invented stack" },
            Day, LengthUnit.Inch),
        LabelContent.Of(new Bin(Code("7YNN53D"), Hardware("form tie 8 in"), 24, "invented drawer"), Day, LengthUnit.Inch),
        LabelContent.Of(Crowded, Day, LengthUnit.Inch),
        LabelContent.Blank(Code("43HTX4K")),
        LabelContent.Blank(Code("HNCF4YW")),
    ];

    /// <summary>A label of each kind for the layouts that are made for one of them.</summary>
    public static IReadOnlyList<LabelContent> OtherLabels { get; } =
    [
        LabelContent.Of(Waler, Day, LengthUnit.Inch),
        LabelContent.Of(Panel, Day, LengthUnit.Inch),
        LabelContent.Of(new Bin(Code("7YNN53D"), Hardware("form tie 8 in"), 24, "invented drawer"), Day, LengthUnit.Inch),
        LabelContent.Of(new Bundle(Code("43HTX4K"), "studs, invented west wall", "invented trailer", [Code("C99MFXY"), Code("6P7RX46"), Code("3XNHY6H")], null), "3 x 2x4", Day),
        LabelContent.OfPlace(Code("HNCF4YW"), "invented north rack", Day),
    ];

    public static Piece Waler => new()
    {
        Code = Code("C99MFXY"),
        Material = Material("2x10"),
        Length = In(136),
        Nails = true,
        Oiled = true,
        Concrete = true,
        BadSpots = [new(In(30), In(36))],
        TrimLeft = In(0.5m),
        Place = "invented rack",
        FromStage = "garden wall",
        Note = "slight crook",
    };

    public static Piece Sill => new()
    {
        Code = Code("6P7RX46"),
        Material = Material("2x4"),
        Length = In(96),
        Treated = true,
        TreatedWith = "ACQ",
        Stamped = true,
        Place = "Jiří's invented 木 shed",
    };

    public static Piece Stud => new()
    {
        Code = Code("3XNHY6H"),
        Material = Material("2x4"),
        Length = In(92.625m),
        Stamped = true,
        Place = "invented rack",
    };

    public static Piece Bar => new()
    {
        Code = Code("69EFEPJ"),
        Material = Material("#4"),
        Length = In(240),
    };

    public static Piece Panel => new()
    {
        Code = Code("RKDHKXJ"),
        Material = Material("foam 2-1/2x12 II"),
        Length = In(48),
        FirstLine = In(3),
        Place = "invented loft",
    };

    private static StorePrice Board => new()
    {
        Material = Material("2x4"),
        Length = In(96),
        Price = new Money(435),
        LeadDays = 4,
        Supplier = "the yard by the bridge",
        Date = new DateOnly(2026, 11, 2),
    };

    private static StorePrice TreatedBoard => new()
    {
        Material = Material("2x6"),
        Length = In(120),
        Treated = true,
        Price = new Money(1180),
        Date = new DateOnly(2026, 8, 26),
    };

    /// <summary>16 ties are bought at 1.15 each: 18.40. With 2 boards at 4.35 and 1 treated at 11.80 the plan spends 38.90.</summary>
    public static Plan Plan { get; } = new()
    {
        Stages = ["footing", "bench"],
        Tiers = new Tiers(Figure.Best(1), [Figure.Best(0), Figure.Best(1)], Figure.Best(3890), new Figure(1234, 1100), SawCuts: 18),
        Pieces =
        [
            new PlannedPiece
            {
                // 36 + 48 = 84; 84 + 1/8 + 48 = 132-1/8; then 1/8 of kerf leaves 3-3/4 up to 136.
                Source = Waler,
                Cuts = [Cut("footing", "waler", 36, 48, Use.Bracing), Cut("footing", "waler", 84.125m, 48, Use.Bracing)],
                Remainders = [Rest(132.25m, 3.75m, kept: false)],
                Untouched = [new(In(0.5m), In(30))],
                SawCuts = 3,
            },
            new PlannedPiece
            {
                Source = Sill,
                Cuts = [Cut("footing", "sill plate", 0, 92.625m, Use.Structural)],
                Remainders = [Rest(92.75m, 3.25m, kept: false)],
                SawCuts = 1,
            },
            new PlannedPiece { Source = Stud, Cuts = [Cut("bench", "leg, přední", 0, 92.625m, Use.Nonstructural)], Remainders = [], SawCuts = 0 },
            new PlannedPiece
            {
                Source = Bar,
                Cuts = [Cut("footing", "dowel", 0, 72, Use.Nonstructural), Cut("footing", "dowel", 72, 72, Use.Nonstructural), Cut("footing", "dowel", 144, 72, Use.Nonstructural)],
                Remainders = [Rest(216, 24, kept: true)],
                SawCuts = 3,
            },
            new PlannedPiece
            {
                Source = Panel,
                Cuts = [Cut("footing", "end panel", 0, 30, Use.Nonstructural)],
                Remainders = [Rest(30, 18, kept: true)],
                SawCuts = 1,
            },
            Blocking,
            Blocking,
            new PlannedPiece
            {
                Bought = TreatedBoard,
                Cuts = [Cut("bench", "ledger", 0, 120, Use.Structural)],
                Remainders = [],
                SawCuts = 0,
            },
        ],
        Hardware =
        [
            new HardwareFill(new HardwareNeed("footing", "ties", Hardware("form tie 8 in"), 40), FromYard: 24, ToBuy: 16, new Money(1840)),
            new HardwareFill(new HardwareNeed("bench", "bolts", Hardware("carriage bolt 3/8 x 6"), 8), FromYard: 6, ToBuy: 0, Money.Zero),
        ],
        Unfilled =
        [
            new Unfilled("bench", "top", 1, "the longest 2x12 in the yard is 9' 2\", too short by 10\""),
            new Unfilled("bench", "bolts", 2, "no price for carriage bolt 3/8 x 6"),
        ],
        Savings = new PlanSavings(new Money(12775), new Money(3890), AllNewProven: true, Unpriced: ["foam 2-1/2x12 II"]),
        Unpriced = ["carriage bolt 3/8 x 6", "foam 2-1/2x12 II"],
    };

    public static CutSheetOptions Options { get; } = new()
    {
        Printed = Day,
        Title = "Orchard bench and its footing",
        Note = Note,
        Settings = YardSettings.Usual with { TaxThousandthsOfPercent = 8250 },
        StageDates = ImmutableDictionary<string, DateOnly>.Empty.Add("footing", new DateOnly(2026, 11, 28)).Add("bench", new DateOnly(2026, 12, 12)),
        Prices = new PriceBook([new StorePrice { Material = Hardware("form tie 8 in"), Price = new Money(115), LeadDays = 1, Date = new DateOnly(2026, 8, 27) }]),
    };

    private static PlannedPiece Blocking => new()
    {
        // Five of 14-1/2 and five kerfs: 73-1/8; 22-7/8 is left.
        Bought = Board,
        Cuts = [.. Enumerable.Range(0, 5).Select(i => Cut(i < 2 ? "footing" : "bench", "blocking", i * 14.625m, 14.5m, Use.Nonstructural))],
        Remainders = [Rest(73.125m, 22.875m, kept: true)],
        SawCuts = 5,
    };

    private static PlannedCut Cut(string stage, string name, decimal start, decimal length, Use use) => new(stage, name, In(start), In(length), use);

    private static PlannedRemainder Rest(decimal start, decimal length, bool kept) => new(In(start), In(length), kept);
}
