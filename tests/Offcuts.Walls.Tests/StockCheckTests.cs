using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using static Offcuts.Walls.Tests.Sheets;

namespace Offcuts.Walls.Tests;

/// <summary>What a wall needs against what is on hand, figures by hand beside them. Stock and prices are our own invention.</summary>
public sealed class StockCheckTests
{
    private static readonly DateOnly Begins = new(2026, 6, 10);

    private static readonly Code Any = Code.Parse("Y4MNV9W").Value;

    // 36 ft, 2 ft high: 4 rows of 36 ft = 144 ft of foam, 74 ties. Braces 6 ft apart: 36 / 6 + 1 = 7 uprights of 2 ft and 7 kickers of
    // sqrt(12^2 + 12^2) = 16.97 in, up to 17 in.
    private static readonly Takeoff Wall = Takeoff.Of(
        Laid(Wall(Leg("A", Ft(36), Turn.End)) with { Braces = new Braces(Material("2x4"), Ft(6), Ft(1), Ft(1)) }),
        "walls");

    [Fact]
    public void Panels_are_short_by_at_least_the_length_that_is_lacking()
    {
        // 144 - 40 = 104 ft lacking, by 4 ft: 26 panels. 7 days to deliver before 10 June.
        var line = Line("foam 2-1/2x12", [Panel(Ft(40))]);

        (line.NeededLength, line.OnHandLength, line.Verdict, line.ShortBy, line.NewLength).Should().Be((Ft(144), Ft(40), StockVerdict.Short, 26L, Ft(4)));
        line.OrderBy.Should().Be(new DateOnly(2026, 6, 3));
    }

    [Fact]
    public void As_much_foam_as_is_needed_is_perhaps_enough_and_never_called_enough() =>
        Line("foam 2-1/2x12", [Panel(Ft(144))]).Verdict.Should().Be(StockVerdict.PerhapsEnough);

    [Fact]
    public void What_may_not_serve_does_not_count()
    {
        Line("foam 2-1/2x12", [Panel(Ft(40)) with { Condition = Condition.Poor }]).OnHandLength.Should().Be(Length.Zero);
        Line("foam 2-1/2x12", [Panel(Ft(40)) with { State = PieceState.Reserved, ReservedFor = "roof" }]).OnHandLength.Should().Be(Length.Zero);
        Line("foam 2-1/2x12", [Panel(Ft(40)) with { State = PieceState.Reserved, ReservedFor = "walls" }]).OnHandLength.Should().Be(Ft(40));
        Line("foam 2-1/2x12", [Panel(Ft(40)) with { BadSpots = [new Span(Ft(10), Ft(11))] }]).OnHandLength.Should().Be(Ft(39));
        Line("2x4", [Board(Ft(20)) with { Condition = Condition.Fair }]).OnHandLength.Should().Be(Length.Zero, "a brace is cut from sound wood");
    }

    [Fact]
    public void Cuts_that_fit_no_stretch_are_lacking_however_much_there_is()
    {
        // 7 x 24 + 7 x 17 = 287 in. Twenty pieces of 20 in are 400 in, but none gives an upright: 7 lack; of a new 8 ft piece come 4: 2.
        var line = Line("2x4", [.. Enumerable.Range(0, 20).Select(_ => Board(In(20)))]);

        (line.NeededCount, line.NeededLength, line.OnHandLength, line.Verdict, line.ShortBy, line.NewLength)
            .Should().Be((14L, In(287), In(400), StockVerdict.Short, 2L, Ft(8)));
    }

    [Fact]
    public void Counted_things_are_told_exactly_but_ties_that_a_plan_may_add_to()
    {
        var ties = Line("panel tie", [], Bin("panel tie", 74));
        (ties.NeededCount, ties.OnHandCount, ties.Verdict, ties.AtLeast).Should().Be((74L, 74L, StockVerdict.PerhapsEnough, true));
        Line("panel tie", [], Bin("panel tie", 70), Bin("panel tie", 3)).ShortBy.Should().Be(1);

        // 2 free ends x 2 courses x 2 = 8.
        Line("end bracket", [], Bin("end bracket", 8)).Verdict.Should().Be(StockVerdict.Enough);
        Line("end bracket", [], Bin("end bracket", 7)).Should().BeEquivalentTo(new { NeededCount = 8L, OnHandCount = 7L, Verdict = StockVerdict.Short, ShortBy = 1L });
    }

    [Fact]
    public void What_else_the_stage_needs_comes_off_what_is_on_hand()
    {
        // 74 ties and 10 for another need, of 80: 4 lack. The wall alone would have enough.
        var stock = Stock([], [Bin("panel tie", 80)]);
        StockLine Ties(StockOnHand of) => StockCheck.Of(Wall, of).Single(line => line.Material.Name == "panel tie");
        Ties(stock).ShortBy.Should().Be(0);
        Ties(stock with { OtherHardware = [new HardwareNeed("walls", "gate", (Hardware)MaterialReader.ReadCounted("panel tie").Value, 10)] })
            .Should().BeEquivalentTo(new { NeededCount = 74L, OnHandCount = 80L, OtherCount = 10L, Verdict = StockVerdict.Short, ShortBy = 4L });
    }

    // Two walls of one stage, read one after the other, would else be ordered twice: what the others lack is told apart.
    [Fact]
    public void A_wall_is_never_short_by_more_than_it_needs()
    {
        StockLine Of(string material, StockOnHand stock) => StockCheck.Of(Wall, stock).Single(line => line.Material.Name == material);
        // 74 and 1063 of 100: 1037 lack in all, 74 of them here.
        var ties = Of("panel tie", Stock([], [Bin("panel tie", 100)]) with { OtherHardware = [new HardwareNeed("walls", "house / panel tie", (Hardware)MaterialReader.ReadCounted("panel tie").Value, 1063)] });
        (ties.ShortBy, ties.ShortWithOthers).Should().Be((74, 1037));

        // Braces: 287 in, of 8 ft boards 4 uprights or 5 kickers each; 7 uprights take 2 at least, and all of them 3 (287 / 96). With 40 rails of 8 ft 43 or more.
        var rails = new RequiredCut { Stage = "walls", Name = "rails", Material = Material("2x4"), Shortest = Ft(8), Longest = Ft(8), Count = 40, Use = Use.Rough };
        var boards = Of("2x4", Stock([], []) with { OtherCuts = [rails] });
        (boards.ShortBy, boards.ShortWithOthers).Should().Be((3, 43));
    }

    [Fact]
    public void Cuts_that_the_stage_needs_beside_the_wall_are_to_come_from_the_same_boards()
    {
        // Braces take 287 in (above). Of 480 in that will do; with 3 rough cuts of 8 ft, 288 in, 95 in lack: one of 8 ft more.
        var others = new[] { new RequiredCut { Stage = "walls", Name = "rails", Material = Material("2x4"), Shortest = Ft(8), Longest = Ft(8), Count = 3, Use = Use.Rough } };
        StockLine Boards(params Piece[] pieces) => StockCheck.Of(Wall, Stock(pieces, []) with { OtherCuts = others }).Single(line => line.Material.Name == "2x4");
        Boards(Board(Ft(40))).Should().BeEquivalentTo(new { NeededLength = In(287), OnHandLength = Ft(40), OtherCount = 3L, OtherLength = Ft(24), Verdict = StockVerdict.Short, ShortBy = 1L });

        // A poor board may serve a rough cut and no brace: 25 ft sound for the one, 30 ft poor for the other, and nothing is known to lack.
        Boards(Board(Ft(25)), Board(Ft(30)) with { Condition = Condition.Poor }).Verdict.Should().Be(StockVerdict.PerhapsEnough);
    }

    [Fact]
    public void Without_a_day_or_days_of_delivery_no_day_to_order_by_is_told()
    {
        StockCheck.Of(Wall, Stock([], []) with { Begins = null }).Should().OnlyContain(line => line.OrderBy == null);
        Line("end bracket", []).OrderBy.Should().BeNull("it has no price");
    }

    private static StockLine Line(string material, Piece[] pieces, params Bin[] bins) =>
        StockCheck.Of(Wall, Stock(pieces, bins)).Single(line => line.Material.Name == material);

    private static StockOnHand Stock(Piece[] pieces, Bin[] bins) => new(
        pieces,
        bins,
        new PriceBook(
        [
            new StorePrice { Material = Material("foam 2-1/2x12"), Length = Ft(4), Price = new Money(1500), LeadDays = 7 },
            new StorePrice { Material = Material("2x4"), Length = Ft(8), Price = new Money(400), LeadDays = 1 },
        ]),
        UseRules.Usual,
        "walls",
        Begins);

    private static Piece Panel(Length length) => new() { Code = Any, Material = Material("foam 2-1/2x12"), Length = length };

    private static Piece Board(Length length) => new() { Code = Any, Material = Material("2x4"), Length = length };

    private static Bin Bin(string name, int count) => new(Any, (Hardware)MaterialReader.ReadCounted(name).Value, count);
}
