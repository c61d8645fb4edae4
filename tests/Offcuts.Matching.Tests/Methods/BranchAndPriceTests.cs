using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>Branch and price on how often a supply is cut and which cut comes from which, on last tiers of which every plan is known.</summary>
public sealed class BranchAndPriceTests
{
    private const long Nothing = long.MinValue / 4;

    private static readonly Effort None = new(MatchLimits.None);

    // Lists at the nodes mostly end such small tiers at once, so they are left out in the second: what remains is the bounds of nodes and how they are divided.
    [Theory]
    [InlineData(12_000)]
    [InlineData(0)]
    public void It_ends_with_the_best_plan_and_its_bound(int few)
    {
        var (ended, open) = (0, 0);
        foreach (var (drawn, relaxation) in Drawn(9_000, 160))
        {
            var (plan, bound) = BranchAndPrice.Solve(drawn.Tier, drawn.Start, Nothing, relaxation, 200, None, few);

            drawn.Tier.Accepts(plan).Should().BeTrue($"of {drawn.Name}");
            bound.Should().BeLessThanOrEqualTo(drawn.Optimum, $"of {drawn.Name}");
            if (bound == drawn.Tier.Value(plan)) ended++;
            else open++;
        }

        ended.Should().BeGreaterThan(20, $"else little is said: {open} stayed open");
        if (few > 0) open.Should().Be(0, "all patterns of these are few enough");
    }

    [Fact]
    public void Every_plan_is_in_one_of_the_two_parts_that_a_tier_is_divided_into()
    {
        var (bySupply, byPair) = (0, 0);
        foreach (var (drawn, relaxation) in Drawn(9_200, 2_500))
        {
            if (BranchAndPrice.Children(drawn.Tier, relaxation) is not { Count: 2 } children) continue;

            children.Where(child => !child.Impossible).Min(child => drawn.Part(child).Optimum).Should().Be(drawn.Optimum, $"of {drawn.Name}");
            if (children[0].SupplyCount.Sum() < drawn.Tier.SupplyCount.Sum()) bySupply++;
            else byPair++;
        }

        (bySupply > 5, byPair > 3).Should().Be((true, true), $"else little was divided: {bySupply} and {byPair}");
    }

    [Fact]
    public void Where_it_is_stopped_its_bound_is_true_all_the_same()
    {
        foreach (var (drawn, relaxation) in Drawn(9_600, 100))
        {
            for (var nodes = 0; nodes < 7; nodes += 2)
            {
                var (plan, bound) = BranchAndPrice.Solve(drawn.Tier, drawn.Start, Nothing, relaxation, nodes, None, few: 0);

                bound.Should().BeLessThanOrEqualTo(drawn.Optimum, $"of {drawn.Name}, after {nodes} nodes");
                drawn.Tier.Value(plan).Should().BeInRange(drawn.Optimum, drawn.Tier.Value(drawn.Start), $"of {drawn.Name}, after {nodes} nodes");
            }
        }
    }

    // Those that the relaxation does not settle.
    private static IEnumerable<(DrawnTier Drawn, Relaxation Relaxation)> Drawn(int first, int problems) =>
        from drawn in DrawnTier.Some(first, problems)
        where drawn.Tier.Goal == Goal.GivenUp
        let relaxation = ColumnGeneration.Solve(drawn.Tier, drawn.Start, [], None)
        where drawn.Tier.Value(drawn.Start) > Bounds.RoundUp(drawn.Tier, relaxation.Bound)
        select (drawn, relaxation);
}
