using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Print.Tests;

public sealed class PlanInShortTests
{
    [Fact]
    public void What_stays_unfilled_comes_first_with_its_reasons_then_the_figures()
    {
        PlanInShort.Of(Invented.Plan with { Tiers = Invented.Plan.Tiers with { Unfilled = Figure.Best(3) } }, YardSettings.Usual).Should().Equal(
            "Leaves 3 needs unfilled:",
            "  1 x top (bench): the longest 2x12 in the yard is 9' 2\", too short by 10\"",
            "  2 x bolts (bench): no price for carriage bolt 3/8 x 6",
            "Spends $38.90 without tax, gives up $12.34 of yard value, saves $88.85 against all new.",
            "Best found; not proven: at best $11.00 of yard value would be given up.",
            "Takes 5 pieces from the yard and 3 to buy; 21 saw cuts, 3 of them to take bad spots and trimmed ends off.");
    }

    [Fact]
    public void A_proven_plan_that_fills_everything_says_so_in_four_lines()
    {
        var plan = Invented.Plan with
        {
            Tiers = new Tiers(Figure.Best(0), [Figure.Best(0)], Figure.Best(0), Figure.Best(250), SawCuts: 1),
            Pieces = [Invented.Plan.Pieces[1]],
            Unfilled = [],
        };

        PlanInShort.Of(plan, YardSettings.Usual).Should().Equal(
            "Fills everything.",
            "Spends $0.00 without tax, gives up $2.50 of yard value, saves $88.85 against all new.",
            "Proven: no plan does better.",
            "Takes 1 piece from the yard and 0 to buy; 1 saw cut.");
    }

    [Fact]
    public void Value_that_the_yard_gains_is_no_negative_loss()
    {
        var tiers = Invented.Plan.Tiers with { ValueGivenUp = Figure.Best(-1410) };

        PlanInShort.Of(Invented.Plan with { Tiers = tiers }, YardSettings.Usual).Should()
            .Contain("Spends $38.90 without tax, gains the yard $14.10 of value, saves $88.85 against all new.");
    }

    [Fact]
    public void Foam_that_is_bought_while_another_type_lies_in_the_yard_is_pointed_out() =>
        PlanInShort.Of(Invented.Plan with { Near = [new NearFoam("foam 2x12", "foam 2x12 II", 3)] }, YardSettings.Usual).Should()
            .Contain("! foam 2x12 is bought; 3 pieces of foam 2x12 II in the yard would do but for the type: if it may be that, ask for foam 2x12 II.");

    [Fact]
    public void How_far_each_figure_may_be_off_is_told()
    {
        var tiers = Invented.Plan.Tiers with { Unfilled = new Figure(3, 1), Spend = new Figure(3890, 3000), ValueGivenUp = Figure.Best(-5) };

        PlanInShort.Of(Invented.Plan with { Tiers = tiers }, YardSettings.Usual).Should()
            .Contain("Best found; not proven: at best 1 need would stay unfilled, at best $30.00 would be spent.");
    }

    [Fact]
    public void Of_many_kinds_unfilled_six_are_named_and_the_rest_counted()
    {
        var plan = Invented.Plan with { Unfilled = [.. Enumerable.Range(1, 9).Select(i => new Unfilled("bench", $"cut {i}", 1, "none"))] };

        var lines = PlanInShort.Of(plan, YardSettings.Usual).ToArray();

        lines[6].Should().Be("  1 x cut 6 (bench): none");
        lines[7].Should().Be("  and 3 more kinds, in part 5");
    }
}
