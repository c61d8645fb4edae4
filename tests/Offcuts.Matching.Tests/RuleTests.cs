using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests;

/// <summary>One rule of the matching problem each, with one example in sight.</summary>
public sealed class RuleTests
{
    // Common practice: a circular-saw blade takes about 1/8 in. 4 x 24 + 3 x 1/8 = 96 3/8: short by 3/8 in.
    [Fact]
    public void Three_eighths_short_a_96_in_board_gives_only_three_of_24_in()
    {
        var plan = Match(Request([Board("96\"")], [Cut("24\"", 4)]) with { Buy = false });
        plan.Tiers.Unfilled.Should().Be(Figure.Best(1));
        plan.Pieces.Single().Cuts.Select(cut => cut.Start).Should().Equal(Length.Zero, L("24 1/8\""), L("48 1/4\""));
        plan.Pieces.Single().Remainders.Should().Equal(new PlannedRemainder(L("72 3/8\""), L("23 5/8\""), Kept: true));
        plan.Pieces.Single().SawCuts.Should().Be(3);
    }

    [Fact]
    public void Kerf_is_taken_only_between_cuts_so_the_last_may_end_at_the_boards_end()
    {
        var plan = Match(Request([Board("96 3/8\"")], [Cut("24\"", 4)]));
        plan.Tiers.Unfilled.Value.Should().Be(0);
        plan.Pieces.Single().SawCuts.Should().Be(3, "the last cut ends where the board does");
        plan.Pieces.Single().Remainders.Should().BeEmpty();
    }

    [Fact]
    public void Less_than_a_kerf_left_over_still_takes_a_saw_cut_and_leaves_no_remainder()
    {
        var piece = Match(Request([Board("24 1/16\"")], [Cut("24\"")])).Pieces.Single();
        piece.SawCuts.Should().Be(1);
        piece.Remainders.Should().BeEmpty();
    }

    [Fact]
    public void A_range_takes_a_whole_span_uncut()
    {
        var plan = Match(Request([Board("94\"")], [Cut("92\"", longest: "96\"")], Price("8'", 500)));
        plan.Pieces.Single().Cuts.Single().Length.Should().Be(L("94\""));
        plan.Tiers.SawCuts.Should().Be(0);
    }

    [Fact]
    public void No_cut_touches_a_bad_spot_and_each_span_is_cut_from_its_own_start()
    {
        var board = Board("100\"") with { BadSpots = [new Span(L("40\""), L("50\""))], TrimLeft = L("1\"") };
        var piece = Match(Request([board], [Cut("38\""), Cut("45\"", name: "other")]) with { Buy = false }).Pieces.Single();
        piece.Cuts.Select(cut => (cut.Start, cut.Length)).Should().Equal((L("1\""), L("38\"")), (L("50\""), L("45\"")));
        piece.Remainders.Should().Equal(
            new PlannedRemainder(L("39 1/8\""), L("7/8\""), Kept: false),
            new PlannedRemainder(L("95 1/8\""), L("4 7/8\""), Kept: false));
    }

    [Fact]
    public void A_span_that_is_left_alone_is_untouched_and_no_remainder()
    {
        var board = Board("100\"") with { BadSpots = [new Span(L("40\""), L("50\""))] };
        var piece = Match(Request([board], [Cut("38\"")], Price("8'", 500))).Pieces.Single();
        piece.Untouched.Should().Equal(new Span(L("50\""), L("100\"")));
    }

    [Fact]
    public void A_reserved_piece_serves_only_its_stage()
    {
        var board = Board("60\"") with { State = PieceState.Reserved, ReservedFor = "roof" };
        Match(Request([board], [Cut("50\"", stage: "wall")]) with { Buy = false }).Tiers.Unfilled.Value.Should().Be(1);
        Match(Request([board], [Cut("50\"", stage: "roof")]) with { Buy = false }).Tiers.Unfilled.Value.Should().Be(0);
    }

    [Fact]
    public void A_piece_that_is_not_on_hand_serves_nothing() =>
        Match(Request([Board("60\"") with { State = PieceState.Missing }], [Cut("50\"")]) with { Buy = false }).Tiers.Unfilled.Value.Should().Be(1);

    [Theory]
    [InlineData(true, Condition.Sound, 0)]
    [InlineData(false, Condition.Sound, 1)]
    [InlineData(true, Condition.Fair, 1)]
    public void Structural_use_needs_a_stamp_and_a_sound_piece(bool stamped, Condition condition, int unfilled) =>
        Match(Request([Board("60\"") with { Stamped = stamped, Condition = condition }], [Cut("50\"") with { Use = Use.Structural }]) with { Buy = false })
            .Tiers.Unfilled.Value.Should().Be(unfilled);

    [Fact]
    public void A_bought_piece_counts_as_sound_and_stamped() =>
        Match(Request([], [Cut("50\"") with { Use = Use.Structural }], Price("8'", 500))).Tiers.Spend.Should().Be(Figure.Best(500));

    [Fact]
    public void A_cut_that_wants_treated_wood_takes_only_treated()
    {
        var plan = Match(Request([Board("60\"")], [Cut("50\"") with { Treated = TreatedWish.Yes }], Price("8'", 500), Price("8'", 900, treated: true)));
        plan.Pieces.Single().Bought!.Treated.Should().BeTrue();
        plan.Tiers.Spend.Value.Should().Be(900);
    }

    [Fact]
    public void Among_equals_untreated_goes_first()
    {
        Piece[] yard = [Board("50\"", 1) with { Treated = true }, Board("50\"", 2)];
        Match(Request(yard, [Cut("50\"")])).Pieces.Single().Source!.Treated.Should().BeFalse();
    }

    [Fact]
    public void Among_equals_the_piece_that_comes_first_in_the_yard_is_taken()
    {
        Piece[] yard = [Board("50\"", 3), Board("50\"", 1), Board("50\"", 2)];
        Match(Request(yard, [Cut("50\"", 2)])).Pieces.Select(piece => piece.Source!.Code).Should().Equal(yard[0].Code, yard[1].Code);
    }

    [Fact]
    public void Fewer_pieces_are_carried_where_nothing_else_differs()
    {
        var yard = new[] { Board("60\"", 1), Board("61\"", 2), Board("130\"", 3) with { BadSpots = [new Span(L("60\""), L("69\""))] } };
        var plan = Match(Request(yard, [Cut("60\""), Cut("61\"", name: "other")]));
        plan.Pieces.Single().Source!.Code.Should().Be(yard[2].Code, "its two spans give both cuts");
    }

    // The second stage needs the only long board; a short one would do for the first.
    [Fact]
    public void A_board_that_a_later_stage_cannot_do_without_is_kept_out_of_the_first_stages_saw()
    {
        Piece[] yard = [Board("120\"", 1), Board("50\"", 2) with { BadSpots = [new Span(L("48\""), L("49\""))] }];
        var plan = Match(Request(yard, [Cut("48\"", stage: "wall"), Cut("118\"", stage: "roof", name: "ridge")], Price("8'", 500)));
        plan.Tiers.Unfilled.Value.Should().Be(0);
        plan.Tiers.Spend.Value.Should().Be(0);
    }

    [Fact]
    public void An_earlier_stage_is_never_left_short_to_serve_a_later_one()
    {
        var plan = Match(Request([Board("96\"")], [Cut("90\"", stage: "first"), Cut("30\"", 3, stage: "second", name: "block")]) with { Buy = false });
        plan.Tiers.UnfilledByStage.Should().Equal(Figure.Best(0), Figure.Best(3));
    }

    [Fact]
    public void The_short_piece_is_taken_first_and_the_long_one_left_whole()
    {
        Piece[] yard = [Board("90\"", 1), Board("30\"", 2)];
        Match(Request(yard, [Cut("28\"")], Price("8'", 800))).Pieces.Single().Source!.Code.Should().Be(yard[1].Code);
    }

    [Fact]
    public void No_more_is_bought_than_can_be_had()
    {
        var plan = Match(Request([], [Cut("90\"", 3)], Price("8'", 500, limit: 1), Price("10'", 900, limit: 1)));
        plan.Tiers.Unfilled.Should().Be(Figure.Best(1));
        plan.Tiers.Spend.Should().Be(Figure.Best(1400));
    }

    [Fact]
    public void Nothing_is_bought_where_nothing_may_be()
    {
        var plan = Match(Request([], [Cut("90\"")], Price("8'", 500)) with { Buy = false });
        plan.Pieces.Should().BeEmpty();
        plan.Tiers.Spend.Should().Be(Figure.Best(0));
    }

    // Two of 47 in come out of one 8 ft at $5; one 10 ft at $7 would do too.
    [Fact]
    public void The_cheapest_store_lengths_are_bought_and_the_rest_is_kept()
    {
        var plan = Match(Request([], [Cut("47\"", 2)], Price("8'", 500), Price("10'", 700)));
        plan.Pieces.Single().Bought!.Length.Should().Be(L("8'"));
        plan.Tiers.Spend.Should().Be(Figure.Best(500));
        plan.Savings.Should().BeEquivalentTo(new { AllNew = new Money(500), Spend = new Money(500), AllNewProven = true });
    }

    [Fact]
    public void Savings_are_measured_against_the_best_all_new_plan_of_what_is_filled()
    {
        var plan = Match(Request([Board("50\"")], [Cut("47\"", 2)], Price("8'", 500)));
        plan.Tiers.Spend.Value.Should().Be(500);
        plan.Savings.AllNew.Should().Be(new Money(500), "both come out of one new board");
        Match(Request([Board("96\"")], [Cut("47\"", 2)], Price("8'", 500))).Savings.Saved.Should().Be(new Money(500));
    }

    [Fact]
    public void All_new_ignores_limits_and_names_what_has_no_price()
    {
        var bolt = (Hardware)MaterialReader.ReadCounted("bolt").Value;
        var book = new PriceBook([Price("8'", 500, limit: 1)]);
        var (cost, proven, unpriced) = Matcher.AllNew(
            [Cut("90\"", 3), Cut("110\"", name: "too long")], [new HardwareNeed("wall", "bolts", bolt, 9)], book, YardSettings.Usual, MatchLimits.None);
        cost.Should().Be(new Money(1500));
        proven.Should().BeTrue();
        unpriced.Should().Equal("2x4", "bolt");
    }

    [Fact]
    public void Hardware_comes_from_the_bins_first_and_the_rest_is_bought()
    {
        var bolt = (Hardware)MaterialReader.ReadCounted("bolt").Value;
        var request = new MatchRequest
        {
            Bins = [new Bin(CodeOf(1), bolt, 5), new Bin(CodeOf(2), bolt, 2)],
            Stages = [new Stage("wall", null, [], [new HardwareNeed("wall", "bolts", bolt, 4)]), new Stage("roof", null, [], [new HardwareNeed("roof", "bolts", bolt, 6)])],
            Prices = new PriceBook([new StorePrice { Material = bolt, Price = new Money(30) }]),
        };
        var plan = Match(request);
        plan.Hardware.Select(fill => (fill.FromYard, fill.ToBuy, fill.Price.Cents)).Should().Equal((4, 0, 0), (3, 3, 90));
        plan.Tiers.Spend.Should().Be(Figure.Best(90));
    }

    [Fact]
    public void Time_limits_need_a_clock()
    {
        var match = () => Match(Request([], [Cut("1\"")]), new MatchLimits { Time = TimeSpan.FromSeconds(1) });
        match.Should().Throw<ArgumentException>().WithMessage("a time limit needs a clock*");
    }

    // 8' costs 9.60. The sound 24 in is worth 9.60 x (24/96)^2 = 0.60 and takes no saw cut; the fair 26 in is worth
    // 9.60 x (26/96)^2 x 0.7 = 0.49 and takes one, and what remains of it is scrap.
    [Theory]
    [InlineData(TierOrder.ValueFirst, 49, 1)]
    [InlineData(TierOrder.SawCutsFirst, 60, 0)]
    public void Fewer_saw_cuts_may_cost_yard_value_where_they_come_first(TierOrder order, long givenUp, int sawCuts)
    {
        var yard = new[] { Board("24\""), Board("26\"", 2) with { Condition = Condition.Fair } };
        var plan = Match(Request(yard, [Cut("24\"")], Price("8'", 960)) with { Order = order });

        plan.Tiers.SawCuts.Should().Be(sawCuts);
        plan.Tiers.ValueGivenUp.Should().Be(Figure.Best(givenUp));
        plan.Tiers.SawCutsBound.Should().Be(order == TierOrder.SawCutsFirst ? sawCuts : null, "a bound is claimed only where saw cuts come first");
        plan.Proven.Should().BeTrue();
    }

    // A new board of 24 in would cost 5.00 and take no saw cut.
    [Fact]
    public void No_money_is_spent_to_spare_a_saw_cut()
    {
        var yard = new[] { Board("26\"") };
        var plan = Match(Request(yard, [Cut("24\"")], Price("24\"", 500)) with { Order = TierOrder.SawCutsFirst });

        plan.Tiers.Spend.Should().Be(Figure.Best(0));
        plan.Tiers.SawCuts.Should().Be(1);
    }

    // 48 1/8 in gives two of 24 in with one saw cut, since the last cut ends with the board; two boards of 24 1/16 in take one each,
    // but are worth half as much together, since value grows with the square of the length.
    [Fact]
    public void Comparing_shows_the_plan_of_the_fewest_saw_cuts_beside_the_best()
    {
        var yard = new[] { Board("48 1/8\""), Board("24 1/16\"", 2), Board("24 1/16\"", 3) };
        var rivals = Comparison.Of(Problem.Create(Request(yard, [Cut("24\"", 2)], Price("8'", 960))).Value, MatchLimits.None);

        rivals.Select(rival => (rival.Aim, rival.Plan.Tiers.SawCuts, rival.Plan.Proven)).Should().Equal(
            (Aim.Best, 2, true), (Aim.FewestSawCuts, 1, true), (Aim.NothingBought, 2, true));
        rivals[1].Plan.Pieces.Single().Length.Should().Be(L("48 1/8\""));
    }

    // V(24 1/8) = 9.60 x (24 1/8 / 96)^2 = 0.606 and V(12) = 9.60 x (12/96)^2 = 0.15; the keep length is 12 in, the default.
    [Fact]
    public void What_is_exactly_as_long_as_the_keep_length_is_kept()
    {
        var plan = Match(Request([Board("24 1/8\"")], [Cut("12\"")], Price("8'", 960)));

        plan.Pieces.Single().Remainders.Should().Equal(new PlannedRemainder(L("12 1/8\""), L("12\""), Kept: true));
        plan.Tiers.ValueGivenUp.Should().Be(Figure.Best(61 - 15));
    }
}
