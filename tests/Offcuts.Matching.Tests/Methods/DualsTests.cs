using Offcuts.Matching.Methods;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>Prices of the rows of a tier, in whole numbers of the right sign.</summary>
public sealed class DualsTests
{
    // Two lengths of cuts from two lengths of new boards; of the long ones there is one, so one long cut may stay unfilled.
    private static Tier TwoCuts(bool given = false)
    {
        var problem = Problem.Create(Request([Board("90\"")], [Cut("50\"", 3), Cut("100\"", 2, name: "long")], Price("8'", 500), Price("10'", 900, limit: 1)) with { Settings = NoKerf }).Value;
        var start = MaterialSolver.First(MaterialProblem.Of(problem, Stud, out _), 1).Plan;
        return given ? Tier.GivenUp(start) : Tier.Spend(start);
    }

    private static Duals Of(Tier tier, double[] demand, double supply, double left, double spend, double rips) =>
        new(tier, demand, [.. tier.SupplyCount.Select(_ => supply)], tier.LeftCap.ToDictionary(pair => pair.Key, _ => left), spend, rips);

    [Fact]
    public void They_are_rounded_to_whole_multiples_and_signs_that_noise_turned_are_nothing()
    {
        var tier = TwoCuts();
        var scale = (double)tier.Scale;

        var right = Of(tier, [2.6 / scale, 7.4 / scale], -1.6 / scale, -2.6 / scale, -3.6 / scale, -4.6 / scale);
        right.Demand.Should().Equal(3, 7);
        right.Supply.Should().OnlyContain(price => price == -2);
        right.Left.Should().Equal(new Dictionary<int, long> { [0] = -3 });
        (right.Spend, right.Rips).Should().Be((-4, -5));

        var turned = Of(tier, [-2 / scale, -7 / scale], 1 / scale, 2 / scale, 3 / scale, 4 / scale);
        turned.Demand.Should().Equal([0, 0], "a cut too many can be dropped");
        turned.Supply.Should().OnlyContain(price => price == 0);
        turned.Left.Should().Equal(new Dictionary<int, long> { [0] = 0 });
        (turned.Spend, turned.Rips).Should().Be((0, 0));
    }

    [Fact]
    public void Where_a_supply_must_be_cut_its_price_may_have_either_sign()
    {
        var tier = TwoCuts();
        var must = tier.Within([.. tier.SupplyCount.Select((_, s) => s == 0 ? 1 : 0)], tier.SupplyCount);

        Of(must, [0, 0], 5.0 / tier.Scale, 0, 0, 0).Supply.Should().Equal(tier.SupplyCount.Select((_, s) => s == 0 ? 5L : 0));
    }

    // The largest row takes the most copies of a pattern, so its prices have the least room; the proportion is what a proof rests on.
    [Fact]
    public void Such_as_are_too_large_are_made_smaller_all_alike()
    {
        var tier = TwoCuts();
        var most = tier.MostDual(tier.Problem.MostTakes);

        var large = Of(tier, [1e30, 4e30], -2e30, -1e30, -1e25, -5e29);
        large.Demand[1].Should().BeCloseTo(most, (ulong)most / 1_000_000);
        large.Demand.Should().OnlyContain(price => price <= most);
        (large.Demand[0] / (double)large.Demand[1]).Should().BeApproximately(0.25, 1e-6);
        (large.Supply[0] / (double)large.Demand[1]).Should().BeApproximately(-0.5, 1e-6);
        (large.Left[0] / (double)large.Demand[1]).Should().BeApproximately(-0.25, 1e-6);
        (large.Spend / (double)large.Demand[1]).Should().BeApproximately(-2.5e-6, 1e-9);
        (large.Rips / (double)large.Demand[1]).Should().BeApproximately(-0.125, 1e-6);

        // Whichever of them is too large, the others shrink with it, here to nothing.
        void Shrunk(Duals duals, long price, long coefficient)
        {
            price.Should().BeCloseTo(-tier.MostDual(coefficient), (ulong)tier.MostDual(coefficient) / 1_000_000);
            duals.Demand.Should().OnlyContain(one => one == 0);
        }

        var (supply, left, spend, rips) = (Of(tier, [1, 1], -1e30, 0, 0, 0), Of(tier, [1, 1], 0, -1e30, 0, 0), Of(tier, [1, 1], 0, 0, -1e30, 0), Of(tier, [1, 1], 0, 0, 0, -1e30));
        Shrunk(supply, supply.Supply[0], 1);
        Shrunk(left, left.Left[0], 1);
        Shrunk(spend, spend.Spend, 900);
        Shrunk(rips, rips.Rips, tier.Problem.MostTakes);
    }

    [Fact]
    public void A_supply_that_must_be_cut_shrinks_with_the_others()
    {
        var tier = TwoCuts();
        var must = tier.Within([.. tier.SupplyCount.Select((_, s) => s == 0 ? 1 : 0)], tier.SupplyCount);

        var large = Of(must, [4e30, 4e30], 1e30, 0, 0, 0);
        (large.Supply[0] / (double)large.Demand[0]).Should().BeApproximately(0.25, 1e-6);
    }

    // Of 10 ft there is less to pay than of 8 ft, so a longer remainder can be worth less and a cut too many may cost something.
    [Fact]
    public void Where_a_longer_length_may_be_worth_less_prices_of_cuts_may_have_either_sign()
    {
        var problem = Problem.Create(Request([Board("120\"")], [Cut("20\"")], Price("8'", 900), Price("10'", 500))).Value;
        var tier = Tier.GivenUp(MaterialSolver.First(MaterialProblem.Of(problem, Stud, out _), 1).Plan);

        tier.Covering.Should().BeFalse();
        Of(tier, [-5], 0, 0, 0, 0).Demand.Should().Equal(-5 * tier.Scale);
    }

    [Theory]
    [InlineData(2.4, 2)]
    [InlineData(2.6, 3)]
    [InlineData(-2.6, -3)]
    public void One_alone_is_rounded(double multiples, long whole) => Duals.Whole(TwoCuts(), multiples / TwoCuts().Scale, 1).Should().Be(whole);

    [Fact]
    public void One_alone_is_cut_down_to_what_its_row_has_room_for()
    {
        var tier = TwoCuts();
        Duals.Whole(tier, 1e30, 4).Should().Be(tier.MostDual(4));
        Duals.Whole(tier, -1e30, 4).Should().Be(-tier.MostDual(4));
    }

    [Fact]
    public void Between_two_and_the_mean_of_several_are_taken_price_by_price()
    {
        var tier = TwoCuts();
        var unit = 1.0 / tier.Scale;
        var (a, b) = (Of(tier, [10 * unit, 20 * unit], -4 * unit, -8 * unit, -12 * unit, -16 * unit), Of(tier, [30 * unit, 60 * unit], -8 * unit, -16 * unit, -20 * unit, 0));

        var quarter = Duals.Between(a, b, 0.25);
        quarter.Demand.Should().Equal(15, 30);
        quarter.Supply.Should().OnlyContain(price => price == -5);
        quarter.Left[0].Should().Be(-10);
        (quarter.Spend, quarter.Rips).Should().Be((-14, -12));

        var mean = Duals.Mean([a, b, b]);
        mean.Demand.Should().Equal(70 / 3, 140 / 3);
        mean.Supply.Should().OnlyContain(price => price == -20 / 3);
        mean.Left[0].Should().Be(-40 / 3);
        (mean.Spend, mean.Rips).Should().Be((-52 / 3, -16 / 3));
    }

    [Fact]
    public void By_length_a_full_piece_earns_its_price()
    {
        var tier = TwoCuts();
        var by = Enumerable.Range(0, tier.SupplyCount.Length).Single(s => tier.Problem.Supplies[s].Price == 900);
        var duals = Duals.ByLength(tier, by);

        // 9.00 for 120 in: 7.50 for 100 in and 3.75 for 50 in. The longer cut comes first.
        duals.Demand.Should().Equal(750 * tier.Scale, 375 * tier.Scale);
        duals.Supply.Should().OnlyContain(price => price == 0);
        duals.Left.Should().Equal(new Dictionary<int, long> { [0] = 0 });
        (duals.Spend, duals.Rips).Should().Be((0, 0));
    }

    [Fact]
    public void A_demand_that_the_tier_does_not_look_at_has_no_price()
    {
        var start = MaterialPlan.Empty(TwoCuts().Problem);
        var tier = Tier.Fill(start.Problem, [true, false], 0, start);

        Of(tier, [5, 5], 0, 0, 0, 0).Demand.Should().Equal(5 * tier.Scale, 0);
        Duals.ByLength(tier, Enumerable.Range(0, tier.SupplyCount.Length).First(s => tier.Problem.Supplies[s].Price == 900)).Demand.Should().Equal(750 * tier.Scale, 0);
    }

    [Fact]
    public void No_prices_are_nothing_everywhere()
    {
        var zero = Duals.Zero(TwoCuts(given: true));

        zero.Demand.Concat(zero.Supply).Concat(zero.Left.Values).Append(zero.Spend).Append(zero.Rips).Should().OnlyContain(price => price == 0);
        zero.Left.Keys.Should().Equal(0);
    }

    [Fact]
    public void Reduced_costs_of_a_plan_add_up_to_no_further_from_its_cost_than_they_reach()
    {
        var (looked, near) = (0, 0);
        foreach (var (drawn, seed) in DrawnTier.Some(7_600, 150).Select((drawn, i) => (drawn, i)))
        {
            var (tier, random) = (drawn.Tier, new Random(seed));
            if (drawn.Filled(random) is not { } uses) continue;
            var duals = drawn.Duals(random);
            var off = uses.Sum(use => use.Times * (drawn.Reduced(use.Pattern, duals) - (double)(tier.Cost(use.Pattern) * tier.Scale)));

            Math.Abs(off).Should().BeLessThanOrEqualTo(duals.Reach(tier) * (1 + 1e-9), $"of {drawn.Name}");
            looked++;
            if (Math.Abs(off) > duals.Reach(tier) / 2) near++;
        }

        looked.Should().BeGreaterThan(50);
        near.Should().BeGreaterThan(20, "else it says little");
    }

    // 3 copies at 10, 2 at 20; a board of the yard, five of 8 ft and one of 10 ft, five being all the copies; what is left, for each copy.
    [Fact]
    public void How_far_they_reach_is_the_sum_of_every_row_at_its_most()
    {
        var tier = TwoCuts();
        var unit = 1.0 / tier.Scale;
        var price = tier.SupplyCount.Select((count, s) => count * tier.Problem.Supplies[s].Price).Sum();

        Of(tier, [20 * unit, 10 * unit], 0, 0, 0, 0).Reach(tier).Should().Be(2 * 20 + 3 * 10);
        Of(tier, [0, 0], 0, 0, -2 * unit, 0).Reach(tier).Should().Be(2 * price);
        Of(tier, [0, 0], 0, 0, 0, -2 * unit).Reach(tier).Should().Be(2 * 5);
        Of(tier, [0, 0], 0, -3 * unit, 0, 0).Reach(tier).Should().Be(3 * 5);
        price.Should().Be(5 * 500 + 900);
    }
}
