using Offcuts.Matching.Methods;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>What a decision leaves of a node's patterns, and what it asks of its rows. A pattern dropped that a plan could have had would make a bound false.</summary>
public sealed class PoolNodeTests
{
    // Demands longest first: 0 is 40 in, 1 is 30 in, 2 is 20 in (twice), each in a stage of its own. Ten feet that cost less than eight make a cut too many no longer free.
    private static MaterialProblem Make(long tenFeet) => MaterialProblem.Of(
        Problem.Create(Request(
            Enumerable.Range(1, 6).Select(number => Board("120\"", number)),
            [Cut("40\"", stage: "one"), Cut("30\"", stage: "two"), Cut("20\"", 2, stage: "three")],
            Price("8'", 500, limit: 1),
            Price("10'", tenFeet, limit: 1))).Value,
        Stud,
        out _);

    // Filled by one plan to the last cut, so that no copy may be left.
    private static Tier Exact(long tenFeet = 300) => Tier.GivenUp(Filling(Make(tenFeet), [1, 1, 2]));

    private static MaterialPlan Filling(MaterialProblem problem, int[] takes) => new(problem, [(Of(problem, takes), 1)]);

    private static Pattern Of(MaterialProblem problem, params int[] takes) => new(
        problem,
        Enumerable.Range(0, problem.Supplies.Count).Single(s => problem.Supplies[s].Bought is null),
        [.. takes.Select((count, d) => new Take(d, count)).Where(take => take.Count > 0)]);

    private static Pattern[] Pool(Tier tier) =>
        [Of(tier.Problem, 1), Of(tier.Problem, 0, 1), Of(tier.Problem, 0, 0, 2), Of(tier.Problem, 1, 1), Of(tier.Problem, 0, 1, 1), Of(tier.Problem, 1, 1, 1)];

    private static PoolNode With(Tier tier, Split split, int least, int most) => PoolNode.Root(tier, 6, 7).With(tier, Pool(tier), split, least, most);

    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 0)]
    public void Where_two_cuts_that_are_asked_for_once_go_together_no_pattern_with_one_of_them_alone_is_left(int first, int second)
    {
        var node = With(Exact(), new Split(first, 1, second, -1), 1, int.MaxValue);

        node.Patterns.Should().Equal(2, 3, 5);
        node.Splits.Should().BeEmpty();
        (node.Depth, node.Bound).Should().Be((1, 7));
    }

    // The second copy may lie elsewhere.
    [Fact]
    public void Where_one_of_them_is_asked_for_twice_every_pattern_is_left_and_their_uses_are_counted()
    {
        Counted(Exact(), new Split(1, 1, 2, -1));
        Counted(Exact(), new Split(2, 1, 1, -1));
    }

    // The plan in hand leaves the cut of 30 in: one that leaves it too has the 40 in by itself.
    [Fact]
    public void Where_one_of_them_may_stay_unfilled_every_pattern_is_left()
    {
        var tier = Tier.GivenUp(Filling(Make(tenFeet: 300), [1, 0, 2]));
        tier.MostLeft.Should().Equal(0, 1, 0);

        Counted(tier, new Split(0, 1, 1, -1));
        Counted(tier, new Split(1, 1, 0, -1));
    }

    // A pattern that holds one of them alone may be used beside the two together.
    [Fact]
    public void Where_cuts_may_be_filled_too_often_every_pattern_is_left()
    {
        var tier = Exact(tenFeet: 900);
        tier.Covering.Should().BeTrue();

        Counted(tier, new Split(0, 1, 1, -1));
    }

    [Fact]
    public void Any_other_family_that_is_used_is_counted()
    {
        var tier = Exact();
        var pool = Pool(tier);

        Counted(tier, new Split(0, 1, -1, -1));
        Counted(tier, new Split(0, 1, 1, pool[0].Supply));
        Counted(tier, new Split(-1, 0, -1, -1, pool[3]));
        Counted(tier, new Split(0, 1, 1, -1, pool[3]));
        Counted(tier, new Split(0, 1, 1, -1), least: 0, most: 1);
        Counted(tier, new Split(0, 1, 1, -1), least: 2);
    }

    private static void Counted(Tier tier, Split split, int least = 1, int most = int.MaxValue)
    {
        var node = With(tier, split, least, most);

        node.Patterns.Should().Equal(0, 1, 2, 3, 4, 5);
        node.Splits.Should().Equal((split, least, most));
        node.Depth.Should().Be(1);
    }

    [Fact]
    public void A_family_that_is_not_used_goes_and_everything_else_stays()
    {
        var node = With(Exact(), new Split(0, 1, 1, -1), 0, 0);

        node.Patterns.Should().Equal(0, 1, 2, 4);
        node.Splits.Should().BeEmpty();
        node.Depth.Should().Be(1);
    }

    [Fact]
    public void A_family_that_is_counted_already_keeps_the_narrower_ends_and_the_other_families_stay()
    {
        var tier = Exact();
        var (some, other) = (new Split(2, 2, -1, -1), new Split(1, 1, 2, -1));
        PoolNode More(PoolNode node, Split split, int least, int most) => node.With(tier, Pool(tier), split, least, most);

        var twice = More(With(tier, some, 2, 5), other, 1, 4);

        More(twice, some, 1, 3).Splits.Should().Equal((other, 1, 4), (some, 2, 3));
        More(twice, some, 3, 9).Splits.Should().Equal((other, 1, 4), (some, 3, 5));
        More(twice, some, 3, 9).Depth.Should().Be(3);
    }

    [Fact]
    public void A_supply_keeps_the_narrower_ends_too()
    {
        var tier = Exact();
        var yard = Pool(tier)[0].Supply;
        var node = PoolNode.Root(tier, 6, 7).With(yard, 2, 4);

        (node.Least[yard], node.Most[yard]).Should().Be((2, 4));
        (node.With(yard, 1, 9).Least[yard], node.With(yard, 1, 9).Most[yard]).Should().Be((2, 4));
        (node.With(yard, 3, 3).Least[yard], node.With(yard, 3, 3).Most[yard]).Should().Be((3, 3));
        node.With(yard, 3, 3).Depth.Should().Be(2);
        node.Patterns.Should().Equal(0, 1, 2, 3, 4, 5);
    }
}
