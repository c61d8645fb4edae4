using Offcuts.Core.Plans;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests;

/// <summary>Several plans side by side: none of them is beaten in what it is for by one that stands beside it.</summary>
public sealed class ComparisonTests
{
    // The 50 in board gives the cut and no more; the 8 ft board keeps 46 in but is worth more.
    private static Problem Yard => Problem.Create(Request([Board("50\"", 1), Board("8'", 2)], [Cut("48\"")], Price("8'", 500))).Value;

    private static Plan From(int piece, bool buy = true)
    {
        var request = Request([Board("50\"", 1), Board("8'", 2)], [Cut("48\"")], Price("8'", 500)) with
        {
            Buy = buy,
            Wishes = new Wishes([new Pin(CodeOf(piece), "wall", "cut")], []),
        };
        return Match(request) with { Wishes = Wishes.None };
    }

    private static Plan Unproven(Plan plan) => plan with { Tiers = plan.Tiers with { ValueGivenUp = plan.Tiers.ValueGivenUp with { Bound = -10_000 } } };

    [Fact]
    public void Once_it_is_stopped_no_further_plan_is_begun()
    {
        Comparison.Of(Yard, MatchLimits.None).Select(rival => rival.Aim).Should().Equal(Aim.Best, Aim.FewestSawCuts, Aim.NothingBought);
        Comparison.Of(Yard, new MatchLimits { Cancel = new CancellationToken(canceled: true) }).Select(rival => rival.Aim).Should().Equal(Aim.Best);
    }

    [Fact]
    public void A_plan_that_buys_nothing_and_is_better_at_the_same_spend_is_the_best_there_is()
    {
        var (worse, better) = (From(1), From(2, buy: false));
        if (worse.Tiers.ValueGivenUp.Value < better.Tiers.ValueGivenUp.Value) (worse, better) = (From(2), From(1, buy: false));
        worse.Tiers.ValueGivenUp.Value.Should().BeGreaterThan(better.Tiers.ValueGivenUp.Value);

        var taken = Comparison.OrWithoutBuying(Yard, Unproven(worse), better);

        taken.Tiers.ValueGivenUp.Value.Should().Be(better.Tiers.ValueGivenUp.Value);
        taken.Buys.Should().BeTrue("it is the best of all plans, and those may buy");
        taken.Tiers.Spend.Should().Be(worse.Tiers.Spend);
        Matcher.Match(Yard, MatchLimits.None).Tiers.ValueGivenUp.Value.Should().Be(taken.Tiers.ValueGivenUp.Value);
        taken.Tiers.ValueGivenUp.Bound.Should().BeLessThanOrEqualTo(taken.Tiers.ValueGivenUp.Value);
        Comparison.OrWithoutBuying(Yard, better with { Buys = true }, worse with { Buys = false }).Tiers.Should().Be(better.Tiers);
    }

    [Fact]
    public void Saw_cuts_of_a_plan_that_was_made_for_value_are_told_with_what_is_known_of_the_fewest()
    {
        var (first, second) = (From(2), From(2));
        second = second with { Tiers = second.Tiers with { SawCutsBound = 0, SawCuts = second.Tiers.SawCuts + 1 } };

        var fewer = Comparison.FewerSaws(first, second);

        fewer.Tiers.SawCuts.Should().Be(first.Tiers.SawCuts);
        fewer.Tiers.SawCutsBound.Should().Be(0, "none is proven to be the fewest");
        fewer.Proven.Should().BeFalse();
    }

    [Fact]
    public void All_three_are_proven_and_in_order_where_nothing_limits_them()
    {
        var rivals = Comparison.Of(Yard, MatchLimits.None);

        rivals.Select(rival => rival.Aim).Should().Equal(Aim.Best, Aim.FewestSawCuts, Aim.NothingBought);
        rivals.Should().OnlyContain(rival => rival.Plan.Proven);
        rivals[1].Plan.Tiers.SawCutsBound.Should().Be(rivals[1].Plan.Tiers.SawCuts);
        rivals[2].Plan.Tiers.Spend.Value.Should().Be(0);
    }

    // The explained plan takes the worse of the two boards; without that board the better one comes up.
    [Fact]
    public void A_better_plan_that_comes_up_while_explaining_is_told()
    {
        var (worse, better) = (From(1), From(2));
        if (worse.Tiers.ValueGivenUp.Value < better.Tiers.ValueGivenUp.Value) (worse, better) = (better, worse);
        var cut = Yard.Stages[0].Cuts[0];

        Explainer.Of(Yard, worse, cut, MatchLimits.None).Instead.Single().Better.Should().BeTrue();
        Explainer.Of(Yard, better, cut, MatchLimits.None).Instead.Single().Better.Should().BeFalse();
    }
}
