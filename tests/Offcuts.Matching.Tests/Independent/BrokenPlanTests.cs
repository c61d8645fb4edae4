using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Tests.Independent;

/// <summary>
/// One good plan, broken in one way at a time: the program's checker must see each, and so must the review of these tests.
/// </summary>
/// <remarks>
/// The problem: kerf 1 in, keep 10 in. A, 60 in with a bad spot at 40..44, gives two of 12 in and one of 10 in, then takes its
/// second span whole; B, 30 in, is reserved for the later stage; C is missing; D, 50 in, has no stamp; E, 50 in, is poor. A 48 in board is bought for the structural cut.
/// </remarks>
public sealed class BrokenPlanTests
{
    private static readonly Material TwoByFour = MaterialReader.Read("2x4").Value;

    private static readonly Hardware Tie = (Hardware)MaterialReader.ReadCounted("wedge tie").Value;

    private static readonly Piece A = Board(2, 60) with { BadSpots = [new Span(Length.Inches(40), Length.Inches(44))] };

    private static readonly Piece B = Board(3, 30) with { State = PieceState.Reserved, ReservedFor = "roof" };

    private static readonly Piece C = Board(4, 30) with { State = PieceState.Missing };

    private static readonly Piece D = Board(5, 50);

    private static readonly Piece E = Board(7, 50) with { Condition = Condition.Poor };

    private static readonly StorePrice Long = new() { Material = TwoByFour, Length = Length.Inches(48), Price = new Money(600), Limit = 1 };

    private static readonly MatchRequest Request = new()
    {
        Pieces = [A, B, C, D, E],
        Bins = [new Bin(default, Tie, 3)],
        Stages =
        [
            new Stage("wall", null,
                [Cut("wall", "block", 12, 12, 2), Cut("wall", "nailer", 10, 10, 1), Cut("wall", "filler", 14, 16, 1), Cut("wall", "post", 40, 40, 1, Use.Structural)],
                [new HardwareNeed("wall", "ties", Tie, 5)]),
            new Stage("roof", null, [Cut("roof", "lath", 20, 20, 1, Use.Rough), Cut("roof", "ridge", 120, 120, 1)], []),
        ],
        Prices = new PriceBook([Long, new StorePrice { Material = Tie, Price = new Money(35), Limit = 1 }]),
        Settings = YardSettings.Usual with { KerfElsewhere = Length.Inches(1), KeepElsewhere = Length.Inches(10) },
    };

    private static readonly Problem TheProblem = Problem.Create(Request).Value;

    // V(40) = 6.00 x (40/48)^2 = 4.1667, V(16) = 0.6667, V(30) = 2.3438: A gives up 4.17 + 0.67 and keeps nothing (3 in are scrap);
    // B gives up 2.34, 9 in are scrap; the new board keeps nothing (7 in).
    private static readonly Plan Good = new()
    {
        Stages = ["wall", "roof"],
        Pieces =
        [
            new PlannedPiece
            {
                Source = A,
                Cuts =
                [
                    new PlannedCut("wall", "block", Length.Zero, Length.Inches(12), Use.Nonstructural),
                    new PlannedCut("wall", "block", Length.Inches(13), Length.Inches(12), Use.Nonstructural),
                    new PlannedCut("wall", "nailer", Length.Inches(26), Length.Inches(10), Use.Nonstructural),
                    new PlannedCut("wall", "filler", Length.Inches(44), Length.Inches(16), Use.Nonstructural),
                ],
                Remainders = [new PlannedRemainder(Length.Inches(37), Length.Inches(3), false)],
                SawCuts = 3,
            },
            new PlannedPiece
            {
                Source = B,
                Cuts = [new PlannedCut("roof", "lath", Length.Zero, Length.Inches(20), Use.Rough)],
                Remainders = [new PlannedRemainder(Length.Inches(21), Length.Inches(9), false)],
                SawCuts = 1,
            },
            new PlannedPiece
            {
                Bought = Long,
                Cuts = [new PlannedCut("wall", "post", Length.Zero, Length.Inches(40), Use.Structural)],
                Remainders = [new PlannedRemainder(Length.Inches(41), Length.Inches(7), false)],
                SawCuts = 1,
            },
        ],
        Hardware = [new HardwareFill(Request.Stages[0].Hardware[0], 3, 1, new Money(35))],
        Unfilled = [new Unfilled("wall", "ties", 1, "only 1 can be bought"), new Unfilled("roof", "ridge", 1, "too short")],
        Tiers = new Tiers(Figure.Best(2), [Figure.Best(1), Figure.Best(1)], Figure.Best(635), Figure.Best(417 + 67 + 234), 5),
        Savings = new PlanSavings(new Money(1200), new Money(635), true, []),
        Unpriced = [],
    };

    private static readonly Dictionary<string, Func<Plan, Plan>> Ways = new()
    {
        ["cuts overlap"] = plan => Recut(plan, 0, 1, cut => cut with { Start = Length.Inches(11) }),
        ["no kerf between two cuts"] = plan => Recut(plan, 0, 1, cut => cut with { Start = Length.Inches(12) }),
        ["half a kerf between two cuts"] = plan => Recut(plan, 0, 1, cut => cut with { Start = Length.Inches(12.5m) }),
        ["a cut into a bad spot"] = plan => Recut(plan, 0, 2, cut => cut with { Start = Length.Inches(31) }),
        ["a cut across a bad spot"] = plan => Recut(plan, 0, 3, cut => cut with { Start = Length.Inches(43) }),
        ["a cut beyond the end"] = plan => Recut(plan, 0, 3, cut => cut with { Start = Length.Inches(45) }),
        ["a cut too short"] = plan => Recut(plan, 0, 2, cut => cut with { Length = Length.Inches(9) }),
        ["a cut too long"] = plan => Recut(plan, 0, 2, cut => cut with { Length = Length.Inches(11) }),
        ["within the range but not the whole span"] = plan => Recut(plan, 0, 3, cut => cut with { Length = Length.Inches(15) }),
        ["a whole span that is longer than the longest"] = plan => Recut(plan, 0, 3, cut => cut with { Cut = "block" }),
        ["a cut made once too often"] = plan => Recut(plan, 1, 0, cut => cut with { Stage = "wall", Cut = "block", Length = Length.Inches(12) }),
        ["a cut that nobody asked for"] = plan => Recut(plan, 0, 2, cut => cut with { Cut = "shelf" }),
        ["a cut of another stage"] = plan => Recut(plan, 0, 2, cut => cut with { Stage = "roof" }),
        ["another use"] = plan => Recut(plan, 0, 2, cut => cut with { Use = Use.Rough }),
        // A keeps 14 in, worth 0.51; B keeps 19 in, worth 0.94.
        ["a piece reserved for another stage"] = plan => plan with
        {
            Pieces = [WithoutNailer(plan.Pieces[0]), Nailer(B, 19), plan.Pieces[2]],
            Unfilled = [plan.Unfilled[0], new Unfilled("roof", "lath", 1, "none left"), plan.Unfilled[1]],
            Tiers = plan.Tiers with { Unfilled = Figure.Best(3), UnfilledByStage = [Figure.Best(1), Figure.Best(2)], ValueGivenUp = Figure.Best(417 + 67 - 51 + 234 - 94), SawCuts = 4 },
        },
        ["a piece that is missing"] = plan => Repiece(plan, 1, piece => piece with { Source = C }),
        ["a piece that the yard does not have"] = plan => Repiece(plan, 1, piece => piece with { Source = Board(6, 30) }),
        ["a piece longer than the yard has it"] = plan => Repiece(plan, 1, piece => piece with { Source = B with { Length = Length.Inches(31) } }),
        // 50 in poor are worth 6.25 x 0.4 = 2.50, 39 in of it 6.00 x (39/48)^2 x 0.4 = 1.58.
        ["a piece too worn for the use"] = plan => plan with
        {
            Pieces = [WithoutNailer(plan.Pieces[0]), plan.Pieces[1], Nailer(E, 39), plan.Pieces[2]],
            Tiers = plan.Tiers with { ValueGivenUp = Figure.Best(417 + 67 - 51 + 234 + 250 - 158) },
        },
        ["a piece without a stamp for a structural cut"] = plan => Repiece(plan, 2, piece => piece with
        {
            Bought = null,
            Source = D,
            Remainders = [new PlannedRemainder(Length.Inches(41), Length.Inches(9), false)],
        }) with
        {
            Tiers = plan.Tiers with { Spend = Figure.Best(35), ValueGivenUp = Figure.Best(718 + 625) },
            Savings = plan.Savings with { Spend = new Money(35) },
        },
        ["one piece twice"] = plan => plan with { Pieces = [plan.Pieces[0], plan.Pieces[1], plan.Pieces[1], plan.Pieces[2]] },
        ["out of the yard's order"] = plan => plan with { Pieces = [plan.Pieces[1], plan.Pieces[0], plan.Pieces[2]] },
        ["a piece that nothing is cut from"] = plan => plan with { Pieces = [.. plan.Pieces.Take(2), new PlannedPiece { Source = D, Cuts = [], Remainders = [], SawCuts = 0, Untouched = D.Spans() }, plan.Pieces[2]] },
        ["more bought than can be had"] = plan => plan with
        {
            Pieces = [plan.Pieces[0], plan.Pieces[2] with { Cuts = [new PlannedCut("roof", "lath", Length.Zero, Length.Inches(20), Use.Rough)], Remainders = [new PlannedRemainder(Length.Inches(21), Length.Inches(27), true)] }, plan.Pieces[2]],
            Tiers = plan.Tiers with { Spend = Figure.Best(1235), ValueGivenUp = Figure.Best(417 + 67 - 190) },
            Savings = plan.Savings with { Spend = new Money(1235) },
        },
        ["bought at a price that is not in the book"] = plan => Repiece(plan, 2, piece => piece with { Bought = Long with { Price = new Money(500) } }) with
        {
            Tiers = plan.Tiers with { Spend = Figure.Best(535) },
            Savings = plan.Savings with { Spend = new Money(535) },
        },
        ["neither of the yard nor bought"] = plan => Repiece(plan, 2, piece => piece with { Source = D }),
        ["a remainder too long"] = plan => Repiece(plan, 0, piece => piece with { Remainders = [new PlannedRemainder(Length.Inches(36), Length.Inches(4), false)] }),
        ["a remainder too short"] = plan => Repiece(plan, 0, piece => piece with { Remainders = [new PlannedRemainder(Length.Inches(37), Length.Inches(2), false)] }),
        ["a remainder in two stretches"] = plan => Repiece(plan, 1, piece => piece with
        {
            Remainders = [new PlannedRemainder(Length.Inches(21), Length.Inches(4), false), new PlannedRemainder(Length.Inches(25), Length.Inches(5), false)],
        }),
        ["no remainder where there is one"] = plan => Repiece(plan, 1, piece => piece with { Remainders = [] }),
        ["scrap that is said to be kept"] = plan => Repiece(plan, 1, piece => piece with { Remainders = [piece.Remainders[0] with { Kept = true }] }),
        ["a cut span that is said to be untouched"] = plan => Repiece(plan, 0, piece => piece with { Untouched = [new Span(Length.Inches(44), Length.Inches(60))] }),
        ["a saw cut of a piece forgotten"] = plan => Repiece(plan, 0, piece => piece with { SawCuts = 2 }),
        ["saw cuts in all"] = plan => plan with { Tiers = plan.Tiers with { SawCuts = 4 } },
        ["a cut left out without a word"] = plan => Repiece(plan, 0, piece => piece with { Cuts = [.. piece.Cuts.Take(3)], Untouched = [new Span(Length.Inches(44), Length.Inches(60))] }) with
        {
            Tiers = plan.Tiers with { ValueGivenUp = Figure.Best(417 + 234) },
        },
        ["unfilled that is filled"] = plan => plan with { Unfilled = [.. plan.Unfilled, new Unfilled("wall", "block", 1, "none")] },
        ["unfilled that is not said"] = plan => plan with { Unfilled = [plan.Unfilled[0]] },
        ["unfilled without a reason"] = plan => plan with { Unfilled = [plan.Unfilled[0], plan.Unfilled[1] with { Reason = "" }] },
        ["unfilled of a stage"] = plan => plan with { Tiers = plan.Tiers with { UnfilledByStage = [Figure.Best(0), Figure.Best(2)] } },
        ["unfilled in all"] = plan => plan with { Tiers = plan.Tiers with { Unfilled = Figure.Best(1) } },
        ["spend"] = plan => plan with { Tiers = plan.Tiers with { Spend = Figure.Best(600) } },
        ["value given up"] = plan => plan with { Tiers = plan.Tiers with { ValueGivenUp = Figure.Best(717) } },
        ["a bound above its value"] = plan => plan with { Tiers = plan.Tiers with { ValueGivenUp = new Figure(718, 719) } },
        ["what the savings are measured against"] = plan => plan with { Savings = plan.Savings with { Spend = new Money(600) } },
        ["more hardware than the bins hold"] = plan => plan with { Hardware = [plan.Hardware[0] with { FromYard = 4 }], Unfilled = [plan.Unfilled[1]], Tiers = plan.Tiers with { Unfilled = Figure.Best(1), UnfilledByStage = [Figure.Best(0), Figure.Best(1)] } },
        ["more hardware than can be bought"] = plan => plan with
        {
            Hardware = [plan.Hardware[0] with { ToBuy = 2, Price = new Money(70) }],
            Unfilled = [plan.Unfilled[1]],
            Tiers = plan.Tiers with { Unfilled = Figure.Best(1), UnfilledByStage = [Figure.Best(0), Figure.Best(1)], Spend = Figure.Best(670) },
            Savings = plan.Savings with { Spend = new Money(670) },
        },
        ["hardware at another price"] = plan => plan with { Hardware = [plan.Hardware[0] with { Price = new Money(30) }] },
        ["hardware forgotten"] = plan => plan with { Hardware = [] },
        ["other stages"] = plan => plan with { Stages = ["roof", "wall"] },
    };

    /// <summary>Their names.</summary>
    public static TheoryData<string> Names => [.. Ways.Keys];

    [Fact]
    public void The_good_plan_has_no_fault()
    {
        PlanChecker.Faults(TheProblem, Good).Should().BeEmpty();
        PlanReview.Faults(Request, Good).Should().BeEmpty();
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_broken_plan_is_seen(string way)
    {
        var broken = Ways[way](Good);

        PlanChecker.Faults(TheProblem, broken).Should().NotBeEmpty();
        PlanReview.Faults(Request, broken).Should().NotBeEmpty();
    }

    // Alone: what is left after the kerf is nothing either way, so that only the lengths are at fault.
    [Theory]
    [InlineData("filler", 15)]
    [InlineData("lath", 29)]
    public void A_length_that_will_not_do_is_the_only_fault(string name, int inches)
    {
        var (piece, at) = name == "filler" ? (0, 3) : (1, 0);
        var saws = name == "filler" ? 1 : 0;
        var broken = Repiece(Recut(Good, piece, at, cut => cut with { Length = Length.Inches(inches) }), piece, old => old with
        {
            Remainders = [.. old.Remainders.Where(rest => piece == 0)],
            SawCuts = old.SawCuts + saws,
        });

        PlanChecker.Faults(TheProblem, broken with { Tiers = Good.Tiers with { SawCuts = Good.Tiers.SawCuts + saws } })
            .Should().Equal($"the cuts {name} of {(piece == 0 ? "wall" : "roof")} do not fit what was asked");
    }

    // So that the three ways in which a piece may not serve are seen for that alone: with the rule loosened, the same plan is good.
    [Theory]
    [InlineData("a piece reserved for another stage")]
    [InlineData("a piece too worn for the use")]
    [InlineData("a piece without a stamp for a structural cut")]
    [InlineData("a piece that is missing")]
    public void What_may_not_serve_is_the_only_fault(string way) => PlanReview.Faults(
        Request with
        {
            Pieces = [A, way.Contains("reserved") ? Free(B) : B, Free(C), D with { Stamped = true }, E],
            Stages = [Request.Stages[0] with { Cuts = [.. Request.Stages[0].Cuts.Select(cut => cut.Name == "nailer" && way.Contains("worn") ? cut with { Use = Use.Rough } : cut)] }, Request.Stages[1]],
        },
        Loosened(Ways[way](Good), way)).Should().BeEmpty();

    private static Piece Free(Piece piece) => piece with { State = PieceState.InYard, ReservedFor = "" };

    private static Plan Loosened(Plan plan, string way) => plan with
    {
        Pieces =
        [
            .. plan.Pieces.Select(piece => piece with
            {
                Source = piece.Source is not { } source ? null : source == C || (source == B && way.Contains("reserved")) ? Free(source) : source == D ? D with { Stamped = true } : source,
                Cuts = [.. piece.Cuts.Select(cut => cut.Cut == "nailer" && way.Contains("worn") ? cut with { Use = Use.Rough } : cut)],
            }),
        ],
    };

    [Fact]
    public void Buying_where_nothing_may_be_bought_is_seen()
    {
        var request = Request with { Buy = false };

        PlanChecker.Faults(Problem.Create(request).Value, Good).Should().NotBeEmpty();
        PlanReview.Faults(request, Good).Should().NotBeEmpty();
    }

    private static PlannedPiece WithoutNailer(PlannedPiece a) => a with
    {
        Cuts = [a.Cuts[0], a.Cuts[1], a.Cuts[3]],
        Remainders = [new PlannedRemainder(Length.Inches(26), Length.Inches(14), true)],
        SawCuts = 2,
    };

    private static PlannedPiece Nailer(Piece source, int left) => new()
    {
        Source = source,
        Cuts = [new PlannedCut("wall", "nailer", Length.Zero, Length.Inches(10), Use.Nonstructural)],
        Remainders = [new PlannedRemainder(Length.Inches(11), Length.Inches(left), true)],
        SawCuts = 1,
    };

    private static Plan Recut(Plan plan, int piece, int at, Func<PlannedCut, PlannedCut> change) => Repiece(plan, piece, old => old with
    {
        Cuts = [.. old.Cuts.Select((cut, i) => i == at ? change(cut) : cut)],
    });

    private static Plan Repiece(Plan plan, int at, Func<PlannedPiece, PlannedPiece> change) => plan with
    {
        Pieces = [.. plan.Pieces.Select((piece, i) => i == at ? change(piece) : piece)],
    };

    private static Piece Board(int number, int inches)
    {
        var random = new Random(number);
        return new Piece { Code = Code.Draw(random.Next), Material = TwoByFour, Length = Length.Inches(inches) };
    }

    private static RequiredCut Cut(string stage, string name, int shortest, int longest, int count, Use use = Use.Nonstructural) => new()
    {
        Stage = stage,
        Name = name,
        Material = TwoByFour,
        Shortest = Length.Inches(shortest),
        Longest = Length.Inches(longest),
        Count = count,
        Use = use,
    };
}
