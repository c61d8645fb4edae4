using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests;

/// <summary>How a plan is laid out, where cuts are alike and could lie anywhere.</summary>
public sealed class PlanWriterTests
{
    private static IEnumerable<string> Laid(Plan plan) => plan.Pieces.Select(piece => string.Join(" ", piece.Cuts.Select(cut => $"{cut.Stage}/{cut.Cut}")));

    [Fact]
    public void Cuts_that_are_alike_go_to_the_pieces_by_stage_and_then_by_name()
    {
        Piece[] yard = [Board("50\"", 3), Board("50\"", 1), Board("50\"", 2)];

        Laid(Match(Request(yard, [Cut("48\"", stage: "zeal", name: "b"), Cut("48\"", stage: "zeal", name: "a"), Cut("48\"", stage: "able", name: "c")])))
            .Should().Equal("zeal/a", "zeal/b", "able/c");
    }

    [Fact]
    public void On_one_piece_cuts_lie_by_stage_then_longest_first_then_by_name() =>
        Laid(Match(Request(
            [Board("16'")],
            [Cut("20\"", stage: "zeal", name: "b"), Cut("20\"", stage: "zeal", name: "a"), Cut("30\"", stage: "zeal", name: "c"), Cut("40\"", stage: "able", name: "d")])))
            .Should().Equal("zeal/c zeal/a zeal/b able/d");

    [Fact]
    public void Of_rows_that_are_alike_the_later_ones_are_left_short()
    {
        var plan = Match(Request([Board("50\"", 1), Board("50\"", 2), Board("50\"", 3)], [Cut("48\"", 2, name: "b"), Cut("48\"", 2, name: "a"), Cut("48\"", 2, name: "c")]));

        Laid(plan).Should().Equal("wall/a", "wall/a", "wall/b");
        plan.Unfilled.Select(left => (left.Cut, left.Count)).Should().Equal(("b", 1), ("c", 2));
    }

    [Fact]
    public void Two_rows_of_one_name_and_stage_are_both_made() =>
        Match(Request([Board("16'")], [Cut("20\"", 2), Cut("30\"", 1)])).Pieces.Single().Cuts.Select(cut => cut.Length).Should().Equal(L("30\""), L("20\""), L("20\""));

    // 36 1/8 - 24 - 1/8 = 12 in, the usual keep length: kept, and worth 8.00 x (12/96)^2 = 0.125, rounded 0.13.
    [Fact]
    public void A_remainder_of_exactly_the_keep_length_is_kept_and_valued()
    {
        var plan = Match(Request([Board("36 1/8\"")], [Cut("24\"")], Price("8'", 800)));

        plan.Pieces.Single().Remainders.Should().Equal(new PlannedRemainder(L("24 1/8\""), L("12\""), Kept: true));
        plan.Tiers.ValueGivenUp.Should().Be(Figure.Best(113 - 13), "36 1/8 in is worth 8.00 x (36.125/96)^2 = 1.133");
    }

    [Fact]
    public void Exactly_a_kerf_left_over_is_no_remainder()
    {
        var piece = Match(Request([Board("24 1/8\"")], [Cut("24\"")])).Pieces.Single();

        piece.Remainders.Should().BeEmpty();
        piece.SawCuts.Should().Be(1);
    }

    [Fact]
    public void Bought_pieces_stand_by_length() =>
        Match(Request([], [Cut("118\"", name: "long"), Cut("90\"", 2)], Price("8'", 500), Price("10'", 900))).Pieces.Select(piece => piece.Length).Should().Equal(L("8'"), L("8'"), L("10'"));

    // A 2x8 ripped to a 2x4 leaves a 2x4 beside it; what may be ripped in one stage needs no word in the other.
    [Fact]
    public void A_strip_of_exactly_the_keep_length_is_kept()
    {
        var wide = Board("13\"") with { Material = Core.Materials.MaterialReader.Read("2x8").Value };
        var cut = Match(Request([wide], [Cut("12\"") with { Rip = true }, Cut("300\"", stage: "roof")]) with { Buy = false }).Pieces.Single().Cuts.Single();

        cut.Rip!.KeptAs.Should().Be(Stud);
    }

    [Fact]
    public void Materials_without_a_price_are_named_in_order()
    {
        var cuts = new[] { "2x8", "2x4", "2x6" }.Select(name => Cut("20\"", name: name) with { Material = Core.Materials.MaterialReader.Read(name).Value });
        var problem = Problem.Create(Request([], cuts)).Value;

        problem.Materials.Select(material => material.Name).Should().Equal("2x4", "2x6", "2x8");
        Matcher.Match(problem, MatchLimits.None).Unpriced.Should().Equal("2x4", "2x6", "2x8");
    }

    [Fact]
    public void The_plan_that_buys_nothing_takes_the_yard_alone()
    {
        var rivals = Comparison.Of(Problem.Create(Request([Board("30\"")], [Cut("24\""), Cut("48\"", name: "long")], Price("8'", 400))).Value, MatchLimits.None);

        rivals.Select(rival => (rival.Aim, rival.Plan.Tiers.Spend.Value, rival.Plan.Tiers.Unfilled.Value)).Should().Equal(
            (Aim.Best, 400, 0), (Aim.FewestSawCuts, 400, 0), (Aim.NothingBought, 0, 1));
    }

    // As a limit of time may leave them: what comes first in the tiers decides, then saw cuts, then value.
    [Theory]
    [InlineData(1, 9, 9, 9, 2, 0, 0, 0, true)]
    [InlineData(2, 0, 0, 0, 1, 9, 9, 9, false)]
    [InlineData(1, 5, 9, 9, 1, 6, 0, 0, true)]
    [InlineData(1, 6, 0, 0, 1, 5, 9, 9, false)]
    [InlineData(1, 5, 2, 9, 1, 5, 3, 0, true)]
    [InlineData(1, 5, 3, 0, 1, 5, 2, 9, false)]
    [InlineData(1, 5, 2, 7, 1, 5, 2, 8, true)]
    [InlineData(1, 5, 2, 8, 1, 5, 2, 7, false)]
    [InlineData(1, 5, 2, 8, 1, 5, 2, 8, true)]
    public void Of_two_plans_for_the_fewest_saw_cuts_the_better_is_shown(
        int left, int spend, int saws, int given, int otherLeft, int otherSpend, int otherSaws, int otherGiven, bool first)
    {
        Plan Of(int unfilled, int cents, int sawCuts, int value) => Match(Request([], [Cut("24\"")])) with
        {
            Tiers = new Tiers(Figure.Best(unfilled), [Figure.Best(unfilled)], Figure.Best(cents), Figure.Best(value), sawCuts),
        };
        var (a, b) = (Of(left, spend, saws, given), Of(otherLeft, otherSpend, otherSaws, otherGiven));

        // The plan may be told with another bound of saw cuts: what is left unfilled tells whose it is.
        Comparison.FewerSaws(a, b).Unfilled.Should().BeSameAs((first ? a : b).Unfilled);
    }

    [Theory]
    [InlineData(5, 3, 3)]
    [InlineData(5, 9, 4)]
    [InlineData(6, 3, 0)]
    public void A_bound_of_saw_cuts_that_was_reckoned_for_another_plan_holds_where_both_spend_as_much(int otherSpend, int otherBound, int bound)
    {
        Plan Of(int cents, int sawCuts, int? least) => Match(Request([], [Cut("24\"")])) with
        {
            Tiers = new Tiers(Figure.Best(0), [Figure.Best(0)], Figure.Best(cents), Figure.Best(0), sawCuts) { SawCutsBound = least },
        };

        Comparison.FewerSaws(Of(5, 4, null), Of(otherSpend, 10, otherBound)).Tiers.SawCutsBound.Should().Be(bound);
    }

    [Fact]
    public void Of_two_plans_for_the_fewest_saw_cuts_the_one_that_rips_less_comes_first()
    {
        Plan Of(long rips, int saws) => Match(Request([], [Cut("24\"")])) with
        {
            Tiers = new Tiers(Figure.Best(0), [Figure.Best(0)], Figure.Best(5), Figure.Best(0), saws) { Rips = Figure.Best(rips) },
        };
        var (more, less) = (Of(2, 1), Of(1, 3));

        Comparison.FewerSaws(more, less).Unfilled.Should().BeSameAs(less.Unfilled);
        Comparison.FewerSaws(less, more).Unfilled.Should().BeSameAs(less.Unfilled);
    }
}
