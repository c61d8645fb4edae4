using System.Collections.Immutable;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Savings;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Tests;

/// <summary>A little of everything a yard can hold. Our own invention; no figure here means anything.</summary>
internal static class Samples
{
    public static readonly Code Bin = Yards.CodeNumber(501);
    public static readonly Code Long = Yards.CodeNumber(502);
    public static readonly Code Rest = Yards.CodeNumber(503);
    public static readonly Code Panel = Yards.CodeNumber(504);

    public static readonly StorePrice Stud = new()
    {
        Material = Yards.Material("2x4"),
        Length = Yards.In(96),
        Price = new Money(425),
        LeadDays = 2,
        Limit = 40,
        Supplier = "Sägewerk Höß",
        Date = new DateOnly(2026, 11, 1),
    };

    public static readonly StorePrice Tie = new() { Material = Yards.Hardware("snap tie", "box"), Price = new Money(1990) };

    public static readonly Stage Walls = new(
        "walls",
        new DateOnly(2027, 3, 1),
        [
            new RequiredCut { Stage = "walls", Name = "stud", Material = Yards.Material("2x4"), Shortest = Yards.In(92.625m), Longest = Yards.In(93), Count = 12, Use = Use.Structural, Treated = TreatedWish.No },
            new RequiredCut { Stage = "walls", Name = "brace", Material = Yards.Material("2x10"), Shortest = Yards.In(40), Longest = Yards.In(40), Count = 2, Use = Use.Bracing, Rip = true },
        ],
        [new HardwareNeed("walls", "ties", Yards.Hardware("snap tie", "box"), 3)]);

    public static readonly YardSettings Settings = new()
    {
        Unit = LengthUnit.Millimetre,
        CurrencySign = "€",
        TaxThousandthsOfPercent = 8250,
        KerfElsewhere = Length.Millimetres(3.2m),
        KeepElsewhere = Length.Millimetres(300),
        Kerfs = ImmutableSortedDictionary<MaterialFamily, Length>.Empty.Add(MaterialFamily.Rebar, Length.Zero).Add(MaterialFamily.Foam, Length.Millimetres(0.1m)),
        Keeps = ImmutableSortedDictionary.Create<string, Length>(StringComparer.OrdinalIgnoreCase).Add("2x10", Yards.In(24)),
        KeepBacks = ImmutableSortedDictionary.Create<string, KeepBack>(StringComparer.OrdinalIgnoreCase).Add("2x4", new KeepBack(Yards.In(480), 0)).Add("snap tie", new KeepBack(Length.Zero, 20)),
        Rules = UseRules.Usual.With(new UseRule(Use.Rough, Condition.Fair, NeedsStamp: true)),
        Species = new Species("larch from our own wood", 0.55m),
    };

    public static readonly LedgerLine Saved = new()
    {
        Day = new DateOnly(2026, 11, 25),
        Stage = "walls",
        AllNew = new Money(1250),
        Spent = new Money(425),
        BoardFeet = new BoardFeet(16m / 3),
        PanelFace = new Area(92903.04m),
        Weight = new Weight(12.5m),
        WoodWeight = new Weight(9.5m),
        PiecesUsed = 3,
        HardwareUsed = 7,
    };

    public static Piece LongBoard => new()
    {
        Code = Long,
        Material = Yards.Material("2x10"),
        Length = Yards.In(136),
        BadSpots = [new Span(Yards.In(30), Yards.In(36))],
        Place = "north rack",
    };

    public static Piece RestOfIt => new()
    {
        Code = Rest,
        Material = Yards.Material("2x10"),
        Length = Yards.In(40),
        CutFrom = Long,
        State = PieceState.Reserved,
        ReservedFor = "walls",
        Note = "from the garden wall",
    };

    public static Piece FoamPanel => new()
    {
        Code = Panel,
        Material = Yards.Material("foam 2-1/2x12 II"),
        Length = Yards.In(96),
        FirstLine = Yards.In(4),
        FromStage = "footing",
    };

    /// <summary>A plan with something in each of its fields.</summary>
    public static Plan Plan => new()
    {
        Stages = ["walls", "porch"],
        Tiers = new Tiers(new Figure(2, 1), [new Figure(2, 1), Figure.Best(0)], new Figure(425, 400), new Figure(-120, -130), 5),
        Pieces =
        [
            new PlannedPiece
            {
                Source = LongBoard with { State = PieceState.Reserved, ReservedFor = "walls", Nails = true, TrimLeft = Yards.In(0.5m), FromStage = "walls" },
                Cuts = [new PlannedCut("walls", "stud", Yards.In(0.5m), Yards.In(29), Use.Structural)],
                Remainders = [new PlannedRemainder(Yards.In(29.625m), Length.Millimetres(9.5m), Kept: false)],
                Untouched = [new Span(Yards.In(36), Yards.In(136))],
                SawCuts = 2,
            },
            new PlannedPiece
            {
                Bought = Stud with { Treated = true },
                Cuts = [new PlannedCut("walls", "brace", Length.Zero, Yards.In(40), Use.Bracing), new PlannedCut("porch", "post", Yards.In(40.125m), Yards.In(30), Use.Nonstructural)],
                Remainders = [new PlannedRemainder(Yards.In(70.25m), Yards.In(25.75m), Kept: true)],
                SawCuts = 2,
            },
        ],
        Hardware = [new HardwareFill(Walls.Hardware[0], FromYard: 1, ToBuy: 1, new Money(1990))],
        Unfilled = [new Unfilled("walls", "stud", 2, "no 2x4 is long enough: the longest is short by 4\"")],
        Savings = new PlanSavings(new Money(5100), new Money(2415), AllNewProven: false, ["#4"]),
        Unpriced = ["#4", "Kantholz »schräg«"],
        Near = [new NearFoam("foam 2x12", "foam 2x12 II", 3)],
        Wishes = new Wishes([new Pin(Long, "walls", "stud")], [new Spare(Long, "porch", "post"), new Spare(Long)]),
    };

    /// <summary>What was really cut of the plan's first piece.</summary>
    public static PlannedPiece Actual => Plan.Pieces[0] with
    {
        Cuts = [],
        Remainders = [new PlannedRemainder(Length.Zero, Yards.In(20), Kept: true)],
        Untouched = [],
        SawCuts = 1,
    };

    public const string Transfer = "2222222222222222";

    public static readonly Bed Trailer = new("utility trailer", Yards.In(120), 1_200_000, 80_000);

    public static readonly Terms Lent = new("Jürgen", HandOverKind.Loan, DueOn: new DateOnly(2027, 2, 1), Due: "and a box of nails");

    public static Brought History => new(Panel, "3333333333333333", Yards.CodeNumber(505), [new PastEntry(new DateTimeOffset(2026, 3, 1, 8, 0, 0, TimeSpan.FromHours(1)), "catalogued 12 pieces")])
    {
        Earlier = [new Origin("4444444444444444", Yards.CodeNumber(506))],
    };

    public static void Everything(YardChange change)
    {
        change.AddStage(new Stage("footing", null, [], []));
        change.AddStage(Walls);
        change.Put(new Bin(Bin, Yards.Hardware("snap tie", "box"), 5, "shed", "half of them bent"));
        change.Add(LongBoard);
        change.Add(RestOfIt);
        change.Add(FoamPanel);
        change.IssueBlanks(1);
        change.QueueLabels([Rest, Bin]);
        change.SetPrice(Stud);
        change.SetPrice(Tie);
        change.SetSettings(Settings);
        var plan = change.KeepPlan(Plan);
        change.SetStep(plan, 1, PlanStep.Done);
        change.AddLedgerLine(Saved with { PlanId = plan });
        change.SetBed(Trailer);
        change.AddHandOver(Transfer, Lent, new Money(850), 21_300, [new HandOverItem(Long), new HandOverItem(Bin, 3)]);
        change.AddTakenIn("3333333333333333", Lent);
        change.SetBrought(History);
    }
}
