using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>Branching on how many of each supply are cut, and which cut comes from which, on tiers of which every plan is known.</summary>
public sealed class SupplyBranchingTests
{
    private static readonly Effort None = new(MatchLimits.None);

    [Fact]
    public void It_ends_with_the_best_plan_and_its_bound()
    {
        var branched = 0;
        foreach (var drawn in DrawnTier.Some(3_000, 200).Where(drawn => drawn.Tier.Goal == Goal.GivenUp))
        {
            var (tier, start) = (drawn.Tier, drawn.Start);
            var linear = ColumnGeneration.Solve(tier, start, [], None);
            if (StateSpaceRelaxation.Of(tier, linear, tier.Value(start) - 1) is null || tier.Value(start) == drawn.Optimum) continue;
            var (plan, bound) = SupplyBranching.Solve(tier, start, long.MinValue / 4, Guide.Linear(tier, linear), None, 1_000);

            tier.Accepts(plan).Should().BeTrue($"of {drawn.Name}");
            tier.Value(plan).Should().Be(drawn.Optimum, $"of {drawn.Name}");
            bound.Should().Be(drawn.Optimum, $"of {drawn.Name}");
            branched++;
        }

        branched.Should().BeGreaterThan(15, "else little was branched on");
    }

    [Fact]
    public void Where_it_is_stopped_its_bound_is_true_all_the_same()
    {
        var raised = 0;
        foreach (var drawn in DrawnTier.Some(4_000, 120).Where(drawn => drawn.Tier.Goal == Goal.GivenUp))
        {
            var linear = ColumnGeneration.Solve(drawn.Tier, drawn.Start, [], None);
            for (var nodes = 0; nodes < 4; nodes++)
            {
                var (plan, bound) = SupplyBranching.Solve(drawn.Tier, drawn.Start, long.MinValue / 4, Guide.Linear(drawn.Tier, linear), None, nodes);

                bound.Should().BeLessThanOrEqualTo(drawn.Optimum, $"of {drawn.Name}, after {nodes} nodes");
                drawn.Tier.Value(plan).Should().BeInRange(drawn.Optimum, drawn.Tier.Value(drawn.Start), $"of {drawn.Name}, after {nodes} nodes");
                if (bound > Bounds.RoundUp(drawn.Tier, linear.Bound)) raised++;
            }
        }

        raised.Should().BeGreaterThan(20, "else it says no more than the relaxation");
    }
}
