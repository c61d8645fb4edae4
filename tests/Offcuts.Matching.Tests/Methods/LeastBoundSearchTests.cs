using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>Branch and bound that raises the bound, on tiers of which the best plan is known.</summary>
public sealed class LeastBoundSearchTests
{
    private const long Enough = long.MaxValue / 8;
    private const long OneNode = 1;

    private static readonly Effort None = new(MatchLimits.None);

    [Theory]
    [InlineData(1_000, 100)]
    [InlineData(3, 100)]
    [InlineData(1, 2)]
    [InlineData(1_000, 1)]
    public void However_long_the_lists_and_however_soon_one_is_followed_by_a_nearer_it_ends_with_the_best_plan_and_its_bound(int few, int patience)
    {
        var raised = 0;
        foreach (var (drawn, guide, least) in Drawn(6_000, 80))
        {
            using var search = new LeastBoundSearch(drawn.Tier, guide, few, 1_000, patience);
            var (plan, bound) = search.Raise(drawn.Start, least, Enough, None);

            (drawn.Tier.Value(plan), bound).Should().Be((drawn.Optimum, drawn.Optimum), $"of {drawn.Name}");
            drawn.Tier.Accepts(plan).Should().BeTrue($"of {drawn.Name}");
            if (least < drawn.Optimum) raised++;
        }

        raised.Should().BeGreaterThan(5, "else the relaxation alone says all");
    }

    [Theory]
    [InlineData(1_000, 100)]
    [InlineData(4, 100)]
    [InlineData(4, 1)]
    public void Gone_on_with_node_by_node_no_bound_falls_or_is_above_the_best_plan_until_they_meet(int few, int patience)
    {
        var goneOn = 0;
        foreach (var (drawn, guide, least) in Drawn(6_200, 120))
        {
            using var search = new LeastBoundSearch(drawn.Tier, guide, few, 1_000, patience);
            var (plan, bound, turns) = (drawn.Start, least, 0);
            for (; turns < 1_000 && drawn.Tier.Value(plan) > bound; turns++)
            {
                var (better, raised) = search.Raise(plan, bound, OneNode, None);

                raised.Should().BeInRange(bound, drawn.Optimum, $"of {drawn.Name}");
                drawn.Tier.Value(better).Should().BeInRange(drawn.Optimum, drawn.Tier.Value(plan), $"of {drawn.Name}");
                (plan, bound) = (better, raised);
            }

            bound.Should().Be(drawn.Optimum, $"of {drawn.Name}");
            if (turns > 2) goneOn++;
        }

        goneOn.Should().BeGreaterThan(3, "else no search is gone on with");
    }

    [Fact]
    public void What_is_known_from_elsewhere_meanwhile_is_not_undone()
    {
        foreach (var (drawn, guide, least) in Drawn(6_400, 60))
        {
            using var search = new LeastBoundSearch(drawn.Tier, guide);
            search.Raise(drawn.Start, least, OneNode, None);
            var best = new Levels(drawn.Tier, drawn.Start, least, new PoolWork(int.MaxValue, 100_000, 10_000_000, 300), 100, None);
            best.Climb(guide, 1, 3, Levels.Few);

            var (plan, bound) = search.Raise(best.Best, drawn.Optimum - 1, OneNode, None);

            drawn.Tier.Value(plan).Should().Be(drawn.Optimum, $"of {drawn.Name}");
            bound.Should().BeInRange(drawn.Optimum - 1, drawn.Optimum, $"of {drawn.Name}");
        }
    }

    [Fact]
    public void Stopped_by_time_wherever_that_is_it_hands_back_a_true_bound_and_goes_on_when_there_is_more()
    {
        var stopped = 0;
        foreach (var ((drawn, guide, least), looks) in Drawn(6_500, 60).SelectMany(one => Enumerable.Range(1, 6).Select(looks => (one, looks))))
        {
            using var search = new LeastBoundSearch(drawn.Tier, guide);
            var soon = new Effort(new MatchLimits { Time = TimeSpan.FromMilliseconds(looks), Clock = new AskedClock() });
            var (plan, bound) = search.Raise(drawn.Start, least, Enough, soon);

            bound.Should().BeInRange(least, drawn.Optimum, $"of {drawn.Name}");
            drawn.Tier.Accepts(plan).Should().BeTrue($"of {drawn.Name}");
            if (drawn.Tier.Value(plan) > bound) stopped++;
            (plan, bound) = search.Raise(plan, bound, Enough, None);
            (drawn.Tier.Value(plan), bound).Should().Be((drawn.Optimum, drawn.Optimum), $"of {drawn.Name}");
        }

        stopped.Should().BeGreaterThan(10, "else none is stopped");
    }

    [Fact]
    public void Where_even_at_the_bound_there_are_too_many_patterns_nothing_is_changed()
    {
        var (drawn, guide, least) = Drawn(6_600, 60).First(one => one.Drawn.Tier.Value(one.Drawn.Start) > one.Least);
        using var search = new LeastBoundSearch(drawn.Tier, guide, few: 1, most: 0);

        search.Raise(drawn.Start, least, Enough, None).Should().Be((drawn.Start, least));
    }

    private static IEnumerable<(DrawnTier Drawn, Guide Guide, long Least)> Drawn(int first, int problems) =>
        from drawn in DrawnTier.Some(first, problems)
        where LeastBoundSearch.Applies(drawn.Tier)
        let guide = Guide.Linear(drawn.Tier, ColumnGeneration.Solve(drawn.Tier, drawn.Start, [], None))
        select (drawn, guide, Math.Min(drawn.Tier.Value(drawn.Start), Bounds.RoundUp(drawn.Tier, guide.Bound)));
}
