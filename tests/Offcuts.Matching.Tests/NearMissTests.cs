using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests;

/// <summary>Reasons at their edges: each yard here would be told another reason if one condition were slightly off.</summary>
public sealed class NearMissTests
{
    private static readonly Hardware Bolt = (Hardware)MaterialReader.ReadCounted("bolt").Value;

    private static string Why(MatchRequest request) => Match(request).Unfilled.Single().Reason;

    private static Piece Reserved(string length, int number, string stage = "roof") => Board(length, number) with { State = PieceState.Reserved, ReservedFor = stage };

    private static Piece InTwo(string length, int number, string from, string to) => Board(length, number) with { BadSpots = [new Span(L(from), L(to))] };

    private static Wishes Spared(params int[] pieces) => new([], [.. pieces.Select(piece => new Spare(CodeOf(piece)))]);

    [Fact]
    public void The_yards_first_piece_can_be_the_pinned_one_without_room() =>
        Why(Request([Board("60\"", 1)], [Cut("48\"", name: "a"), Cut("47\"", name: "b")]) with { Wishes = new Wishes([new Pin(CodeOf(1), "wall", "a"), new Pin(CodeOf(1), "wall", "b")], []) })
            .Should().Be($"it is pinned to {CodeOf(1)}, which has no room for it beside the other cuts");

    [Fact]
    public void What_may_not_be_bought_is_no_longest_length() =>
        Why(Request([Board("8'")], [Cut("100\"")], Price("10'", 500)) with { Buy = false }).Should().Be("too short by 4\": the longest that may serve is 8', needed is 8' 4\"");

    [Fact]
    public void A_new_board_counts_as_stamped_where_it_is_too_short() =>
        Why(Request([Board("90\"")], [Cut("100\"") with { Use = Use.Structural }], Price("8'", 500))).Should().Be("too short by 4\": the longest that may serve is 8', needed is 8' 4\"");

    [Fact]
    public void A_piece_of_exactly_the_length_is_not_too_short() =>
        Why(Request([Board("8'")], [Cut("8'", 2)])).Should().Be("the pieces that would do are taken by other cuts, and 2x4 has no price");

    [Fact]
    public void The_longest_store_length_counts_and_exactly_the_length_will_do()
    {
        const string NoMore = "the pieces that would do are taken by other cuts, and no more can be bought";
        Why(Request([], [Cut("90\"", 2)], Price("6'", 300), Price("8'", 500, limit: 1))).Should().Be(NoMore);
        Why(Request([], [Cut("8'", 2)], Price("8'", 500, limit: 1))).Should().Be(NoMore);
    }

    [Fact]
    public void A_spared_piece_is_the_reason_only_where_it_would_do_with_one_of_its_spans()
    {
        var split = InTwo("100\"", 1, "50\"", "60\"");
        Why(Request([split], [Cut("50\"")]) with { Wishes = Spared(1) }).Should().Be($"what would do is to be left alone: {CodeOf(1)}");
        Why(Request([split with { Condition = Condition.Poor }], [Cut("50\"")]) with { Wishes = Spared(1) })
            .Should().Be("no piece is allowed for nonstructural use: it must be sound or fair, and none can be bought");
    }

    [Fact]
    public void A_reserved_piece_is_the_reason_only_where_it_would_do_with_one_of_its_spans()
    {
        var split = Reserved("100\"", 1) with { BadSpots = [new Span(L("50\""), L("60\""))] };
        Why(Request([Board("30\"", 2), split], [Cut("50\"")])).Should().Be("what would do is reserved for the stage roof");
        Why(Request([Board("30\"", 2), split], [Cut("51\"")])).Should().Be("too short by 1' 9\": the longest that may serve is 2' 6\", needed is 4' 3\"");
        Why(Request([Board("30\"", 2), split with { Condition = Condition.Poor }], [Cut("50\"")])).Should().Be("too short by 1' 8\": the longest that may serve is 2' 6\", needed is 4' 2\"");
    }

    [Fact]
    public void Reserved_is_the_reason_too_where_even_the_reserved_ones_are_too_short() =>
        Why(Request([Reserved("40\"", 1) with { Condition = Condition.Poor }, Reserved("40\"", 2, "floor")], [Cut("50\"")])).Should().Be("what would do is reserved for the stage floor");

    [Fact]
    public void The_treatment_is_the_reason_where_some_piece_would_do_but_for_it() =>
        Why(Request([Board("8'", 1) with { Condition = Condition.Poor }, Board("8'", 2)], [Cut("50\"") with { Treated = TreatedWish.Yes }])).Should().Be("no treated piece may serve, and none can be bought");

    [Fact]
    public void The_treatment_is_the_reason_where_only_the_store_has_the_other() =>
        Why(Request([], [Cut("50\"") with { Treated = TreatedWish.Yes }], Price("8'", 500))).Should().Be("no treated piece may serve, and none can be bought");

    [Fact]
    public void A_wider_board_is_no_board_of_the_material_where_nothing_may_be_ripped() =>
        Why(Request([Board("8'") with { Material = MaterialReader.Read("2x8").Value }], [Cut("50\"")])).Should().Be("no 2x4 in the yard, and it has no price");

    [Fact]
    public void A_reserved_piece_without_the_stamp_would_not_do_for_structural_use() =>
        Why(Request([Reserved("8'", 1)], [Cut("50\"") with { Use = Use.Structural }])).Should().Be("no piece is allowed for structural use: it must be sound and stamped, and none can be bought");

    [Fact]
    public void All_bins_of_a_kind_are_counted() => Why(new MatchRequest
    {
        Bins = [new Bin(CodeOf(1), Bolt, 2), new Bin(CodeOf(2), Bolt, 3)],
        Stages = [new Stage("wall", null, [], [new HardwareNeed("wall", "bolts", Bolt, 9)])],
    }).Should().Be("the yard has 5, and it has no price");

    [Fact]
    public void A_limit_on_hardware_holds_for_all_its_needs_together()
    {
        var needs = Enumerable.Range(1, 3).Select(i => new HardwareNeed("wall", $"bolts {i}", Bolt, 2)).ToArray();
        var plan = Match(new MatchRequest { Stages = [new Stage("wall", null, [], needs)], Prices = new PriceBook([new StorePrice { Material = Bolt, Price = new Money(30), Limit = 3 }]) });

        plan.Hardware.Select(fill => (fill.ToBuy, fill.Unfilled)).Should().Equal((2, 0), (1, 1), (0, 2));
    }

    // B takes the only piece: of the two copies of a, the pinned one has no room and the free one no piece. Rows of one name and reason are one line.
    [Fact]
    public void What_is_unfilled_stands_by_stage_then_by_name_then_by_reason_and_like_lines_are_one()
    {
        var request = Request(
            [Board("60\"", 1)],
            [
                Cut("59\"", stage: "zeal", name: "b"), Cut("50\"", 2, stage: "yurt", name: "a"),
                Cut("55\"", 1, stage: "able", name: "d"), Cut("54\"", 2, stage: "able", name: "d"), Cut("53\"", stage: "able", name: "c"),
            ]) with
        { Wishes = new Wishes([new Pin(CodeOf(1), "zeal", "b"), new Pin(CodeOf(1), "yurt", "a")], []) };

        Match(request).Unfilled.Select(left => (left.Stage, left.Cut, left.Count, left.Reason[..15])).Should().Equal(
            ("yurt", "a", 1, "it is pinned to"), ("yurt", "a", 1, "the pieces that"), ("able", "c", 1, "the pieces that"), ("able", "d", 3, "the pieces that"));
    }

    [Theory]
    [InlineData(false, TreatedWish.No)]
    [InlineData(true, TreatedWish.Yes)]
    [InlineData(true, TreatedWish.Any)]
    public void A_pin_holds_where_one_span_is_exactly_long_enough_and_treated_as_wished(bool treated, TreatedWish wish)
    {
        var request = Request([InTwo("100\"", 1, "48\"", "60\"") with { Treated = treated }], [Cut("48\"") with { Treated = wish }]) with { Buy = false, Wishes = new Wishes([new Pin(CodeOf(1), "wall", "cut")], []) };

        Match(request).Tiers.Unfilled.Should().Be(Figure.Best(0));
    }

    [Fact]
    public void A_wish_for_a_piece_that_is_out_of_the_yard_or_for_a_cut_that_is_not_asked_is_refused()
    {
        var request = Request([Board("60\"", 1), Board("60\"", 2) with { State = PieceState.Missing }], [Cut("48\"")]);

        Problem.Create(request with { Wishes = new Wishes([new Pin(CodeOf(2), "wall", "cut")], []) }).Fault.Sentence.Should().Be($"a wish names {CodeOf(2)}, but no such piece is in the yard; release it");
        Problem.Create(request with { Wishes = new Wishes([], [new Spare(CodeOf(1), "wall", "shelf")]) }).Fault.Sentence.Should().Be($"a wish for {CodeOf(1)} names the cut shelf of wall, but no such cut is to be planned");
        Problem.Create(Request([Board("60\""), Board("50\"") with { Code = default }, Board("50\"") with { Code = default }], [Cut("48\"")]) with { Wishes = Spared(1) })
            .Ok.Should().BeTrue("pieces without a code are not told apart by it");
    }
}
