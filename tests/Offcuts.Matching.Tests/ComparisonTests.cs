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

    // Of two plans for the same cut the one that gives up less, and the other.
    private static (Plan Better, Plan Worse) Pair()
    {
        var (one, other) = (From(1), From(2));
        return one.Tiers.ValueGivenUp.Value < other.Tiers.ValueGivenUp.Value ? (one, other) : (other, one);
    }

    private static Plan Bounded(Plan plan, long bound) => plan with { Tiers = plan.Tiers with { ValueGivenUp = plan.Tiers.ValueGivenUp with { Bound = bound } } };

    [Fact]
    public void Where_nothing_may_be_bought_no_plan_that_buys_nothing_stands_beside_the_best() =>
        Comparison.Of(Yard.Changed(request => request with { Buy = false }).Value, MatchLimits.None).Select(rival => rival.Aim).Should().Equal(Aim.Best, Aim.FewestSawCuts);

    [Fact]
    public void Of_plans_that_are_equally_good_the_first_stays()
    {
        var (better, _) = Pair();

        Comparison.OrWithoutBuying(Yard, better, better with { Buys = false }).Should().BeSameAs(better);
    }

    [Fact]
    public void Where_something_stays_unfilled_or_costs_nothing_the_first_stays_since_its_bounds_may_not_hold_for_the_other()
    {
        var (better, worse) = Pair();
        Unfilled[] open = [new Unfilled("wall", "cut", 1, "none")];

        Comparison.OrWithoutBuying(Yard, worse with { Unfilled = open }, better).Unfilled.Should().Equal(open);
        Comparison.OrWithoutBuying(Yard, worse, better with { Unfilled = open }).Should().BeSameAs(worse);
        var free = Problem.Create(Request([Board("50\"", 1), Board("8'", 2)], [Cut("48\"")], Price("8'", 500), Price("10'", 0))).Value;
        Comparison.OrWithoutBuying(free, worse, better).Should().BeSameAs(worse);
    }

    // At the same spend both bounds hold for the plan that is taken, and the higher one says more.
    [Theory]
    [InlineData(-10_000, -20_000, -10_000)]
    [InlineData(-20_000, -10_000, -10_000)]
    public void At_the_same_spend_the_higher_of_the_two_bounds_is_told(long first, long second, long told)
    {
        var (better, worse) = Pair();

        Comparison.OrWithoutBuying(Yard, Bounded(worse, first), Bounded(better, second)).Tiers.ValueGivenUp.Should().Be(new Figure(better.Tiers.ValueGivenUp.Value, told));
    }

    // The bound of a plan that spends more speaks of plans that spend as much: of the one that is taken it says nothing.
    [Fact]
    public void At_another_spend_only_the_bound_of_the_plan_that_is_taken_holds()
    {
        var (better, _) = Pair();
        var bought = Match(Request([Board("50\"", 1), Board("8'", 2)], [Cut("48\"")], Price("8'", 500)) with { Wishes = new Wishes([], [new Spare(CodeOf(1)), new Spare(CodeOf(2))]) }) with { Wishes = Wishes.None };
        bought.Tiers.Spend.Value.Should().Be(500);
        bought = bought with { Tiers = bought.Tiers with { Spend = new Figure(500, 0) } };

        var taken = Comparison.OrWithoutBuying(Yard, bought, Bounded(better, -20_000));

        taken.Tiers.Spend.Should().Be(Figure.Best(0));
        taken.Tiers.ValueGivenUp.Should().Be(new Figure(better.Tiers.ValueGivenUp.Value, -20_000));
    }

    // Two wide boards or one of the cuts' own material: two rips or one. What is given up was reckoned for as many rips.
    [Fact]
    public void With_fewer_rips_only_the_bound_of_the_plan_that_is_taken_holds()
    {
        var wide = Core.Materials.MaterialReader.Read("2x8").Value;
        var request = Request(
            [Board("50\"", 1) with { Material = wide }, Board("50\"", 2) with { Material = wide }, Board("50\"", 3)], [Cut("48\"", 2) with { Rip = true }], Price("8'", 500));
        Plan Pinned(int one, int other) => Match(request with { Wishes = new Wishes([new Pin(CodeOf(one), "wall", "cut"), new Pin(CodeOf(other), "wall", "cut")], []) }) with { Wishes = Wishes.None };
        var (two, single) = (Pinned(1, 2), Pinned(1, 3) with { Buys = false });
        two = two with { Tiers = two.Tiers with { Rips = new Figure(2, 1), ValueGivenUp = two.Tiers.ValueGivenUp with { Bound = -10_000 } } };
        single = single with { Tiers = single.Tiers with { Rips = new Figure(1, 0), ValueGivenUp = single.Tiers.ValueGivenUp with { Bound = -20_000 } } };

        var taken = Comparison.OrWithoutBuying(Problem.Create(request).Value, two, single);

        taken.Tiers.Rips.Should().Be(new Figure(1, 1), "at the same spend no plan rips less than the first was told");
        taken.Tiers.ValueGivenUp.Bound.Should().Be(-20_000);
    }

    [Fact]
    public void Of_plans_that_fill_stages_differently_nothing_is_known_of_the_fewest_saw_cuts()
    {
        var (plan, _) = Pair();
        Plan Filled(int later, int saws) => plan with { Tiers = plan.Tiers with { UnfilledByStage = [Figure.Best(0), Figure.Best(later)], SawCuts = saws, SawCutsBound = saws } };

        Comparison.FewerSaws(Filled(0, 2), Filled(1, 2)).Tiers.SawCutsBound.Should().Be(0);
        Comparison.FewerSaws(Filled(0, 2), Filled(0, 2)).Tiers.SawCutsBound.Should().Be(2);
    }

    // Two new boards without a rip, or one rip and nothing bought: how few rips a plan takes that spends as much says nothing of plans that spend less.
    [Fact]
    public void At_another_spend_only_the_rips_of_the_plan_that_is_taken_hold()
    {
        var wide = Core.Materials.MaterialReader.Read("2x8").Value;
        var request = Request([Board("50\"", 1) with { Material = wide }, Board("50\"", 3)], [Cut("48\"", 2) with { Rip = true }], Price("8'", 500));
        var bought = Match(request with { Wishes = new Wishes([], [new Spare(CodeOf(1)), new Spare(CodeOf(3))]) }) with { Wishes = Wishes.None };
        var nothing = Match(request with { Buy = false });
        (bought.Tiers.Spend.Value, nothing.Tiers.Rips).Should().Be((1000, Figure.Best(1)));

        Comparison.OrWithoutBuying(Problem.Create(request).Value, bought with { Tiers = bought.Tiers with { Spend = new Figure(1000, 0) } }, nothing).Tiers.Rips.Should().Be(Figure.Best(1));
    }

    // Found at 50 in first where time is short, and the 8 ft board gives up less: both are plans of the same problem.
    [Fact]
    public void A_plan_with_the_fewest_saw_cuts_that_is_better_in_every_tier_is_the_best_there_is()
    {
        var (better, worse) = Pair();
        var fewest = better with { Tiers = better.Tiers with { SawCutsBound = better.Tiers.SawCuts } };

        var taken = Comparison.OrFewest(Yard, Bounded(worse, -10_000), fewest);

        taken.Tiers.ValueGivenUp.Should().Be(new Figure(better.Tiers.ValueGivenUp.Value, -10_000), "the first's bound is of all plans that fill and spend the same");
        taken.Tiers.SawCutsBound.Should().BeNull("saw cuts come last here");
        Comparison.OrFewest(Yard, better, worse).Should().BeSameAs(better);
        Comparison.OrFewest(Yard, better, fewest).Should().BeSameAs(better, "the first stays among equals");
    }

    // The 8 ft board is worth $5.00, and no plan gains more than what is left of it.
    [Fact]
    public void Where_the_first_plan_spends_more_its_bound_of_what_is_given_up_does_not_hold_for_the_one_that_is_taken()
    {
        var (better, _) = Pair();
        var bought = Match(Request([Board("50\"", 1), Board("8'", 2)], [Cut("48\"")], Price("8'", 500)) with { Wishes = new Wishes([], [new Spare(CodeOf(1)), new Spare(CodeOf(2))]) }) with { Wishes = Wishes.None };
        bought = bought with { Tiers = bought.Tiers with { Spend = new Figure(500, 0), ValueGivenUp = Figure.Best(bought.Tiers.ValueGivenUp.Value) } };

        var taken = Comparison.OrFewest(Yard, bought, better);

        taken.Tiers.Spend.Should().Be(Figure.Best(0));
        taken.Tiers.ValueGivenUp.Bound.Should().BeLessThanOrEqualTo(Matcher.Match(Yard, MatchLimits.None).Tiers.ValueGivenUp.Value);
    }

    // The first match is ended early, the second is not.
    [Theory]
    [InlineData(5)]
    [InlineData(10)]
    [InlineData(20)]
    [InlineData(40)]
    [InlineData(80)]
    public void The_best_is_never_beaten_by_the_fewest_saw_cuts_where_time_is_short(int looks)
    {
        var request = Request(
            [Board("8'", 1), Board("7'", 2), Board("5'", 3), Board("62\"", 4), Board("40\"", 5)],
            [Cut("30\"", 6, name: "a"), Cut("17\"", 5, name: "b"), Cut("41\"", 2, name: "c")],
            Price("8'", 500), Price("12'", 650));

        var rivals = Comparison.Of(Problem.Create(request).Value, new MatchLimits { Time = TimeSpan.FromHours(3), Clock = new HurryingClock(looks) });

        Score.Compare(rivals[0].Plan.Tiers, rivals[1].Plan.Tiers, TierOrder.ValueFirst).Should().BeLessThanOrEqualTo(0);
    }

    // An hour goes by at each of the first looks, then none.
    private sealed class HurryingClock(int looks) : TimeProvider
    {
        private long _looked;

        public override long TimestampFrequency => 1;

        public override long GetTimestamp() => Math.Min(looks, Interlocked.Increment(ref _looked)) * 3600L;
    }
}
