using Offcuts.Matching.Methods;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>How a bound is rounded up to what a figure can be.</summary>
public sealed class RoundedBoundTests
{
    [Theory]
    [InlineData(0, 0)]
    [InlineData(1, 300)]
    [InlineData(300, 300)]
    [InlineData(301, 500)]
    [InlineData(501, 600)]
    [InlineData(701, 800)]
    [InlineData(1001, 1100)]
    public void A_spend_is_a_sum_of_prices(long least, long sum) => new PriceSums([300, 500]).Next(least).Should().Be(sum, "sums of 3.00 and 5.00");

    [Fact]
    public void Sums_asked_for_one_after_another_are_those_asked_for_alone()
    {
        var sums = new PriceSums([1703, 1799, 1703]);
        long[] asked = [40_000, 1, 0, -5, 1704, 90_001, 90_001, 3503, 2_000_000, 40_000];
        asked.Select(sums.Next).Should().Equal(asked.Select(least => new PriceSums([1799, 1703]).Next(least)));
        new[] { 1L, 1704, 1800, 3407, 3503 }.Select(sums.Next).Should().Equal(1703, 1799, 3406, 3502, 3598);
    }

    [Fact]
    public void Beyond_any_table_a_spend_is_at_least_a_multiple_of_what_all_prices_share()
    {
        new PriceSums([6, 10]).Next(1_000_000_000_001).Should().Be(1_000_000_000_002);
        new PriceSums([4_000_000, 6_000_001]).Next(4_000_001).Should().Be(4_000_001, "the table would be too long to be worth while");
        new PriceSums([3_000_000, 6_000_000]).Next(4_000_001).Should().Be(6_000_000, "two steps of 3,000,000");
        new PriceSums([]).Next(17).Should().Be(17, "where nothing can be bought nothing is known of sums");
        new PriceSums([2_000_000, 2_000_001]).Next(2_100_000).Should().Be(4_000_000, "the longest table that is made");
    }

    [Theory]
    [InlineData(12, 18, 6)]
    [InlineData(7, 0, 7)]
    [InlineData(0, 7, 7)]
    [InlineData(9, 4, 1)]
    public void Greatest_common_divisor(long a, long b, long divisor) => Bounds.Gcd(a, b).Should().Be(divisor);

    // Both boards are worth 9.60 x (24/96)^2 = 0.60 whole. Where saw cuts come first, a saw cut costs more than both are worth.
    [Fact]
    public void Where_saw_cuts_come_first_a_bound_between_two_numbers_of_them_is_raised_to_the_next()
    {
        var problem = Problem.Create(Request([Board("24\"", 1), Board("24\"", 2)], [Cut("10\"", 2)], Price("8'", 960)) with { Order = TierOrder.SawCutsFirst, Buy = false }).Value;
        var tier = Tier.GivenUp(MaterialSolver.First(MaterialProblem.Of(problem, Stud, out _), 1).Plan);
        var material = tier.Problem;

        (material.MostGivenUp, material.LeastGivenUp, material.SawCost).Should().Be((120, 0, 121));
        Bounds.SawCuts(material, 120).Should().Be(0);
        Bounds.SawCuts(material, 121).Should().Be(1, "120 cents are the most that can be given up without a saw cut");
        Bounds.SawCuts(material, 241).Should().Be(1);
        Bounds.SawCuts(material, 242).Should().Be(2);
        Bounds.SawCuts(material, -5).Should().Be(0);
        Bounds.RoundUp(tier, 120 * tier.Scale + 1).Should().Be(121);
        Bounds.RoundUp(tier, 241 * tier.Scale + 1).Should().Be(242);
        Bounds.NextAbove(tier, 241).Should().Be(242);
        Bounds.RoundUp(tier, 300 * tier.Scale).Should().Be(300);
        Bounds.RoundUp(tier, -5 * tier.Scale).Should().Be(0, "no plan takes fewer saw cuts than none and gives up less than nothing");
    }

    [Fact]
    public void Value_may_be_lost_where_something_lies_there_or_a_remainder_is_worth_something()
    {
        // Nothing shorter than 12 in is kept: of 24 in, 14 are left, and of 11 in nothing is.
        bool MayLoseValue(MatchRequest asked) => MaterialProblem.Of(Problem.Create(asked).Value, Stud, out _).MayLoseValue;
        var kept = NoKerf with { KeepElsewhere = L("12\"") };

        MayLoseValue(Request([Board("24\"", 1)], [Cut("10\"")], Price("24\"", 300)) with { Settings = kept }).Should().BeTrue();
        MayLoseValue(Request([], [Cut("10\"")], Price("24\"", 300)) with { Settings = kept }).Should().BeTrue();
        MayLoseValue(Request([], [Cut("10\"")], Price("11\"", 300)) with { Settings = kept }).Should().BeFalse();
    }

    [Fact]
    public void A_figure_is_rounded_up_to_the_next_whole_one_and_fill_and_spend_are_never_below_nothing()
    {
        var problem = Problem.Create(Request([Board("24\"", 1)], [Cut("10\"", 2)], Price("8'", 960))).Value;
        var material = MaterialProblem.Of(problem, Stud, out _);
        var start = MaterialSolver.First(material, 1).Plan;
        var (fill, spend, given) = (Tier.Fill(material, [true], 0, start), Tier.Spend(start), Tier.GivenUp(start));

        Bounds.RoundUp(fill, fill.Scale + 1).Should().Be(2);
        Bounds.RoundUp(fill, 2 * fill.Scale).Should().Be(2);
        Bounds.RoundUp(fill, -fill.Scale).Should().Be(0);
        Bounds.RoundUp(spend, 1).Should().Be(960);
        Bounds.RoundUp(spend, -1).Should().Be(0);
        Bounds.RoundUp(given, -5 * given.Scale - 1).Should().Be(-5);
        Bounds.RoundUp(given, -5 * given.Scale + 1).Should().Be(-4);
        Bounds.NextAbove(given, 7).Should().Be(8);
        Bounds.NextAbove(spend, 0).Should().Be(960);
    }
}
