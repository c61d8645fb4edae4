using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests;

/// <summary>A good plan is spoilt in one way at a time; the checker must see each.</summary>
public sealed class PlanCheckerTests
{
    private static readonly Problem Yard = Make();
    private static readonly Plan Good = Matcher.Match(Yard, MatchLimits.None);

    // A board with a bad spot, a reserved one, a poor one, a bought one, hardware from bin and store, and one cut that nothing gives.
    private static Problem Make()
    {
        var ties = new Core.Materials.StorePrice { Material = Core.Materials.MaterialReader.ReadCounted("tie").Value, Price = new Money(50), Limit = 5 };
        var tie = (Core.Materials.Hardware)ties.Material;
        var yard = new[]
        {
            Board("100\"", 1) with { BadSpots = [new Span(L("40\""), L("50\""))] },
            Board("60\"", 2) with { State = PieceState.Reserved, ReservedFor = "roof" },
            Board("30\"", 3) with { Condition = Condition.Poor },
        };
        var request = Request(yard, [Cut("30\"", 2), Cut("55\"", 1, "roof", "rafter"), Cut("90\"", 1, "wall", "long"), Cut("300\"", 1, "wall", "endless")], Price("8'", 500), Price("10'", 700, limit: 1));
        return Problem.Create(request with
        {
            Bins = [new Bin(CodeOf(50), tie, 3)],
            Stages = [.. request.Stages.Select(stage => stage.Name == "wall" ? stage with { Hardware = [new HardwareNeed("wall", "ties", tie, 7)] } : stage)],
            Prices = new Core.Materials.PriceBook([.. request.Prices.All, ties]),
        }).Value;
    }

    [Fact]
    public void The_good_plan_has_no_fault_and_uses_all_that_is_spoilt_below()
    {
        PlanChecker.Faults(Yard, Good).Should().BeEmpty();
        Good.Pieces.Should().HaveCountGreaterThan(2);
        Good.Pieces.Should().Contain(piece => piece.Bought != null);
        Good.Hardware.Single().Should().Be(new HardwareFill(Yard.Stages[0].Hardware[0], 3, 4, new Money(200)));
    }

    public static TheoryData<string, string> Spoilt => new()
    {
        { "shift a cut", "not right after the one before" },
        { "lengthen a cut", "leaves its span" },
        { "cut through the bad spot", "leaves its span" },
        { "drop a remainder", "the remainders are not what is left" },
        { "flip a kept flag", "the remainders are not what is left" },
        { "forget an untouched span", "the untouched spans are not those without cuts" },
        { "one saw cut too many", "saw cuts are said" },
        { "use a piece twice", "used twice or out of the yard's order" },
        { "use a piece that is gone", "is not on hand" },
        { "use a poor piece", "do not fit what was asked" },
        { "use a reserved piece", "do not fit what was asked" },
        { "swap the order", "stands after a bought one" },
        { "invent a price", "is not in the price book" },
        { "the longer bought piece first", "bought pieces are not by material and length" },
        { "buy over the limit", "is bought than can be had" },
        { "both bought and owned", "either of the yard or bought" },
        { "a cut nobody asked for", "nobody asked for the cut" },
        { "another use", "do not fit what was asked" },
        { "fill a cut twice", "do not fit what was asked" },
        { "hide what is unfilled", "are unfilled" },
        { "unfilled without a reason", "without a count or a reason" },
        { "more ties than the bin", "than the bins hold" },
        { "ties over the limit", "is bought than can be had" },
        { "ties for nothing", "the price is not that of" },
        { "forget the ties", "the hardware is not what was asked" },
        { "unfilled tier", "unfilled:" },
        { "stage tier", "the tier says otherwise" },
        { "spend tier", "spend:" },
        { "value tier", "value given up:" },
        { "saw tier", "saw cuts:" },
        { "a bound above", "is above the value" },
        { "a bound of saw cuts above", "is above the value" },
        { "savings of another spend", "savings' spend" },
        { "unpriced material", "without a price are not named right" },
        { "other stages", "the stages are not the problem's" },
        { "an empty piece", "has no cut" },
        { "cuts out of order", "cuts are out of order" },
        { "something else unfilled", "nobody asked for what is unfilled: ghost of wall" },
        { "less than none from the bin", "ties: a count is negative" },
        { "less than none bought", "ties: a count is negative" },
        { "more than are needed", "ties: a count is negative" },
        { "a stage without its tier", "roof: 0 are unfilled, the tier says otherwise" },
        { "spend, as the savings have it", "spend: 1 is said" },
        { "a bought piece that leaves its span", "the bought 2x4 96\": the cut long" },
    };

    [Theory]
    [MemberData(nameof(Spoilt))]
    public void Each_way_to_spoil_a_plan_is_seen(string how, string fault) =>
        PlanChecker.Faults(Yard, Spoil(how)).Should().Contain(sentence => sentence.Contains(fault), how);

    private static Plan Spoil(string how)
    {
        var first = Good.Pieces[0];
        var cut = first.Cuts[0];
        var rest = first.Remainders[0];
        var bought = Good.Pieces.ToList().FindIndex(piece => piece.Bought is not null);
        var tiers = Good.Tiers;
        var fill = Good.Hardware[0];
        return how switch
        {
            "shift a cut" => With(0, first with { Cuts = [cut with { Start = cut.Start + L("1/8\"") }, .. first.Cuts.Skip(1)] }),
            "lengthen a cut" => With(0, first with { Cuts = [cut with { Length = cut.Length + L("50\"") }, .. first.Cuts.Skip(1)] }),
            "cut through the bad spot" => With(0, first with { Cuts = [cut with { Start = L("35\"") }, .. first.Cuts.Skip(1)] }),
            "drop a remainder" => With(0, first with { Remainders = [.. first.Remainders.Skip(1)] }),
            "flip a kept flag" => With(0, first with { Remainders = [rest with { Kept = !rest.Kept }, .. first.Remainders.Skip(1)] }),
            "forget an untouched span" => With(0, first with { Untouched = first.Untouched.Count > 0 ? [] : [new Span(L("1\""), L("2\""))] }),
            "one saw cut too many" => With(0, first with { SawCuts = first.SawCuts + 1 }),
            "use a piece twice" => Good with { Pieces = [first, .. Good.Pieces] },
            "use a piece that is gone" => With(0, first with { Source = first.Source! with { Code = CodeOf(77) } }),
            "use a poor piece" => Good with { Pieces = [Good.Pieces[0], Good.Pieces[1], Plain(Yard.Pieces[2], "wall", "cut", L("30\"")), .. Good.Pieces.Skip(2)] },
            "use a reserved piece" => With(1, Plain(Yard.Pieces[1], "wall", "cut", L("30\""))),
            "swap the order" => Good with { Pieces = [.. Good.Pieces.Reverse()] },
            "invent a price" => With(bought, Good.Pieces[bought] with { Bought = Good.Pieces[bought].Bought! with { Price = new Money(1) } }),
            "the longer bought piece first" => Good with
            {
                Pieces = [.. Good.Pieces.Take(bought), Good.Pieces[bought] with { Bought = Yard.Prices.All.Single(price => price.Length == L("10'")) }, .. Good.Pieces.Skip(bought)],
            },
            "buy over the limit" => Good with { Pieces = [.. Good.Pieces, Good.Pieces[bought] with { Bought = Yard.Prices.All.Single(price => price.Length == L("10'")) }, Good.Pieces[bought] with { Bought = Yard.Prices.All.Single(price => price.Length == L("10'")) }] },
            "both bought and owned" => With(0, first with { Bought = Good.Pieces[bought].Bought }),
            "a cut nobody asked for" => With(0, first with { Cuts = [cut with { Cut = "ghost" }, .. first.Cuts.Skip(1)] }),
            "another use" => With(0, first with { Cuts = [cut with { Use = Use.Rough }, .. first.Cuts.Skip(1)] }),
            "fill a cut twice" => Good with { Pieces = [.. Good.Pieces, Good.Pieces[bought]] },
            "hide what is unfilled" => Good with { Unfilled = [] },
            "unfilled without a reason" => Good with { Unfilled = [Good.Unfilled[0] with { Reason = "" }, .. Good.Unfilled.Skip(1)] },
            "more ties than the bin" => Good with { Hardware = [fill with { FromYard = 4, ToBuy = 3, Price = new Money(150) }] },
            "ties over the limit" => Good with { Hardware = [fill with { FromYard = 0, ToBuy = 7, Price = new Money(350) }] },
            "ties for nothing" => Good with { Hardware = [fill with { Price = Money.Zero }] },
            "forget the ties" => Good with { Hardware = [] },
            "unfilled tier" => Good with { Tiers = tiers with { Unfilled = Figure.Best(0) } },
            "stage tier" => Good with { Tiers = tiers with { UnfilledByStage = [Figure.Best(5), .. tiers.UnfilledByStage.Skip(1)] } },
            "spend tier" => Good with { Tiers = tiers with { Spend = Figure.Best(1) } },
            "value tier" => Good with { Tiers = tiers with { ValueGivenUp = Figure.Best(tiers.ValueGivenUp.Value + 1) } },
            "saw tier" => Good with { Tiers = tiers with { SawCuts = tiers.SawCuts + 1 } },
            "a bound above" => Good with { Tiers = tiers with { Spend = new Figure(tiers.Spend.Value, tiers.Spend.Value + 1) } },
            "a bound of saw cuts above" => Good with { Tiers = tiers with { SawCutsBound = tiers.SawCuts + 1 } },
            "savings of another spend" => Good with { Savings = Good.Savings with { Spend = Money.Zero } },
            "unpriced material" => Good with { Unpriced = ["2x4"] },
            "other stages" => Good with { Stages = ["wall"] },
            "an empty piece" => With(0, first with { Cuts = [] }),
            "cuts out of order" => With(0, first with { Cuts = [.. first.Cuts.Reverse()] }),
            "something else unfilled" => Good with { Unfilled = [.. Good.Unfilled, Good.Unfilled[0] with { Stage = "wall", Cut = "ghost" }] },
            "less than none from the bin" => Good with { Hardware = [fill with { FromYard = -1, ToBuy = 5, Price = new Money(250) }] },
            "less than none bought" => Good with { Hardware = [fill with { FromYard = 3, ToBuy = -1, Price = new Money(-50) }] },
            "more than are needed" => Good with { Hardware = [fill with { FromYard = 3, ToBuy = 5, Price = new Money(250) }] },
            "a stage without its tier" => Good with { Tiers = tiers with { UnfilledByStage = [.. tiers.UnfilledByStage.Take(1)] } },
            "spend, as the savings have it" => Good with { Tiers = tiers with { Spend = Figure.Best(1) }, Savings = Good.Savings with { Spend = new Money(1) } },
            "a bought piece that leaves its span" => With(bought, Good.Pieces[bought] with { Cuts = [Good.Pieces[bought].Cuts[0] with { Start = L("95\"") }] }),
            _ => throw new ArgumentException("no such way", nameof(how)),
        };
    }

    // Two needs of 2 from a bin of 3 and a store of 1: each is within the bin and the limit, both together are not.
    [Theory]
    [InlineData(2, 0, 2, 0, "more of bolt is taken than the bins hold")]
    [InlineData(1, 1, 1, 1, "more of bolt is bought than can be had")]
    public void Needs_for_the_same_hardware_are_added_up(int first, int firstBought, int second, int secondBought, string fault)
    {
        var bolt = (Core.Materials.Hardware)Core.Materials.MaterialReader.ReadCounted("bolt").Value;
        HardwareNeed[] needs = [new("wall", "a", bolt, 2), new("wall", "b", bolt, 2)];
        var problem = Problem.Create(new MatchRequest
        {
            Bins = [new Bin(CodeOf(1), bolt, 3)],
            Stages = [new Stage("wall", null, [], needs)],
            Prices = new Core.Materials.PriceBook([new Core.Materials.StorePrice { Material = bolt, Price = new Money(30), Limit = 1 }]),
        }).Value;
        var plan = Matcher.Match(problem, MatchLimits.None);
        var (spend, bought) = (new Money(30 * (firstBought + secondBought)), new[] { firstBought, secondBought });
        var wrong = plan with
        {
            Hardware = [new HardwareFill(needs[0], first, firstBought, new Money(30 * firstBought)), new HardwareFill(needs[1], second, secondBought, new Money(30 * secondBought))],
            Tiers = plan.Tiers with { Spend = Figure.Best(spend.Cents) },
            Savings = plan.Savings with { Spend = spend },
        };

        PlanChecker.Faults(problem, plan).Should().BeEmpty();
        PlanChecker.Faults(problem, wrong).Should().Equal(fault);
    }

    [Theory]
    [InlineData(false, true)]
    [InlineData(true, false)]
    public void Hardware_is_not_bought_where_nothing_may_be_or_without_a_price(bool buy, bool priced)
    {
        var bolt = (Core.Materials.Hardware)Core.Materials.MaterialReader.ReadCounted("bolt").Value;
        var need = new HardwareNeed("wall", "bolts", bolt, 2);
        var problem = Problem.Create(new MatchRequest
        {
            Stages = [new Stage("wall", null, [], [need])],
            Prices = priced ? new Core.Materials.PriceBook([new Core.Materials.StorePrice { Material = bolt, Price = Money.Zero }]) : Core.Materials.PriceBook.Empty,
            Buy = buy,
        }).Value;
        var plan = Matcher.Match(problem, MatchLimits.None);
        var wrong = plan with
        {
            Hardware = [new HardwareFill(need, 0, 2, Money.Zero)],
            Unfilled = [],
            Tiers = plan.Tiers with { Unfilled = Figure.Best(0), UnfilledByStage = [Figure.Best(0)] },
        };

        PlanChecker.Faults(problem, plan).Should().BeEmpty();
        PlanChecker.Faults(problem, wrong).Should().Equal("bolts can't be bought");
    }

    private static Plan With(int index, PlannedPiece piece) =>
        Good with { Pieces = [.. Good.Pieces.Select((old, i) => i == index ? piece : old)] };

    private static PlannedPiece Plain(Piece source, string stage, string name, Length length) => new()
    {
        Source = source,
        Cuts = [new PlannedCut(stage, name, Length.Zero, length, Use.Nonstructural)],
        Remainders = [],
        SawCuts = 1,
    };
}
