using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>What a search over a list says of itself where it comes to no end.</summary>
public sealed class PoolSearchTests
{
    private static readonly Effort None = new(MatchLimits.None);

    // Where plans may cost so much that going without cuts is not too dear, the linear program has neither a solution that keeps its rows nor a bound that rules the node out.
    [Fact]
    public void A_node_that_is_neither_solved_nor_ruled_out_leaves_the_search_open()
    {
        foreach (var order in (NodeOrder[])[NodeOrder.NewestFirst, NodeOrder.LeastBoundFirst])
        {
            var drawn = DrawnTier.Some(6_000, 60).First(drawn => drawn.Tier.Goal == Goal.GivenUp && drawn.Tier.MostLeft.All(left => left == 0) && drawn.Tier.Copies > 1);
            var pattern = drawn.Patterns.SelectMany(patterns => patterns).First(pattern => pattern.Cuts == 1);
            var search = new PoolSearch(drawn.Tier, [pattern], 1L << 45, 10, None, order);

            search.Run(bound: 5).Should().BeFalse();
            search.Bound.Should().BeInRange(5, long.MaxValue / 4, "that of the node, which is still to be settled");
            search.Best.Should().BeNull();
            search.GoOn(10, None).Should().BeFalse("more nodes do not settle it");
        }
    }

    // What is heard of elsewhere is as good as found: the level falls below it, and a dearer plan that comes later changes nothing.
    [Fact]
    public void A_plan_that_is_heard_of_is_the_best_until_there_is_a_better_one()
    {
        var drawn = DrawnTier.Some(6_000, 80).First(drawn => drawn.Tier.Goal == Goal.GivenUp && drawn.Tier.Value(drawn.Start) > drawn.Optimum);
        Pattern[] pool = [.. drawn.Patterns.SelectMany(patterns => patterns)];
        MaterialPlan Best()
        {
            var finding = new PoolSearch(drawn.Tier, pool, drawn.Optimum, 1_000, None);
            finding.Run(long.MinValue / 4).Should().BeTrue();
            return finding.Best!;
        }

        var best = Best();
        var search = new PoolSearch(drawn.Tier, pool, drawn.Tier.Value(drawn.Start) + 10, 1_000, None);

        search.Hear(drawn.Start);
        (search.Best, search.Most).Should().Be((drawn.Start, drawn.Tier.Value(drawn.Start) - 1));
        search.Hear(best);
        (search.Best, search.Most).Should().Be((best, drawn.Optimum - 1));
        search.Hear(drawn.Start);
        (search.Best, search.Most).Should().Be((best, drawn.Optimum - 1));
        search.Run(long.MinValue / 4).Should().BeTrue("nothing is better");
        search.Best.Should().BeSameAs(best);
    }

    // By trying everything: what is dropped is in no plan that costs so little, and something is dropped.
    [Fact]
    public void What_equal_plans_can_have_stays_possible_and_much_else_does_not()
    {
        var (kept, all) = (0, 0);
        foreach (var drawn in DrawnTier.Some(8_000, 60).Where(drawn => drawn.Tier.Goal == Goal.GivenUp))
        {
            foreach (var most in (long[])[drawn.Optimum, drawn.Optimum + 7])
            {
                Pattern[] pool = [.. drawn.Patterns.SelectMany(patterns => patterns)];
                var possible = PoolSearch.Possible(drawn.Tier, pool, most, long.MinValue / 4, None).ToHashSet();
                foreach (var pattern in pool.Where(pattern => !possible.Contains(pattern)))
                    drawn.LeastWith(pattern).Should().BeGreaterThan(most, $"{drawn.Name}, {most}: it was dropped");
                (kept, all) = (kept + possible.Count, all + pool.Length);
            }
        }

        (5 * kept).Should().BeLessThan(3 * all, "of problems as small as these nearly half of the patterns are in no such plan");
    }
}
