using Offcuts.Matching.Methods;
using Offcuts.Matching.Tests.Independent;

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
        var (raised, left) = (0, 0);
        foreach (var (drawn, guide, least) in Drawn(6_000, 80))
        {
            var search = new LeastBoundSearch(drawn.Tier, guide, new LeastBoundSearch.Lists(few, 1_000), patience);
            var (plan, bound) = search.Raise(drawn.Start, least, Enough, None);

            (drawn.Tier.Value(plan), bound).Should().Be((drawn.Optimum, drawn.Optimum), $"of {drawn.Name}");
            drawn.Tier.Accepts(plan).Should().BeTrue($"of {drawn.Name}");
            if (least < drawn.Optimum) raised++;
            left += search.Left;
        }

        raised.Should().BeGreaterThan(5, "else the relaxation alone says all");
        if (patience == 1) left.Should().BeGreaterThan(5, "else none is followed by a nearer one");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(10)]
    public void Where_open_nodes_hold_more_than_they_may_it_goes_nearer_and_ends_with_a_true_bound(long held)
    {
        var left = 0;
        foreach (var (drawn, guide, least) in Drawn(6_700, 80))
        {
            var search = new LeastBoundSearch(drawn.Tier, guide, mostHeld: held);
            var (plan, bound) = search.Raise(drawn.Start, least, Enough, None);

            bound.Should().BeInRange(least, drawn.Optimum, $"of {drawn.Name}");
            drawn.Tier.Accepts(plan).Should().BeTrue($"of {drawn.Name}");
            left += search.Left;
        }

        left.Should().BeGreaterThan(3, "else nothing is too much");
    }

    // What is known of a short list goes on to the next: a cut has to hold for every plan of the tier, also for those of which the list has no pattern.
    [Fact]
    public void A_cut_found_over_a_short_list_holds_for_plans_that_the_list_does_not_have()
    {
        var (held, strange) = (0, 0);
        foreach (var seed in Enumerable.Range(1, 12))
        {
            var problem = Problem.Create(FullYards.Draw(seed)).Value;
            var material = MaterialProblem.Of(problem, [.. problem.Materials.Take(1)], out _);
            var start = MaterialSolver.First(material, problem.Stages.Count).Plan;
            var tier = Tier.GivenUp(start);
            var relaxation = ColumnGeneration.Solve(tier, start, [], None);
            var guide = Guide.Linear(tier, relaxation);
            var bound = Bounds.RoundUp(tier, guide.Bound);
            if (PatternEnumeration.Widest(tier, guide, bound, tier.Value(start) - 1, [300]) is not { } level) continue;
            var search = new PoolSearch(tier, level.Patterns, level.Most, 20, None);
            search.Run(guide.AtDuals.Bound);
            var listed = level.Patterns.ToHashSet();
            foreach (var plan in new[] { start, TierSolver.Soon(tier, start, bound, 3, None).Plan })
            {
                if (plan.Uses.Any(use => !listed.Contains(use.Pattern))) strange++;
                foreach (var cut in search.Cuts)
                {
                    var left = plan.Uses.Sum(use => use.Times * cut.Of(use.Pattern)) + plan.Left.Select((count, d) => count * cut.OfLeft(d)).Sum();
                    left.Should().BeGreaterThanOrEqualTo(cut.Least, $"of seed {seed}, {cut.Key}");
                    held++;
                }
            }
        }

        (held > 50, strange > 3).Should().Be((true, true), $"else nothing is said: {held} cuts, {strange} plans");
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
            var search = new LeastBoundSearch(drawn.Tier, guide, new LeastBoundSearch.Lists(few, 1_000), patience);
            var (plan, bound, turns) = (drawn.Start, least, 0);
            for (; turns < 1_000 && drawn.Tier.Value(plan) > bound; turns++)
            {
                var (better, raised) = search.Raise(plan, bound, OneNode, None);

                raised.Should().BeInRange(bound, drawn.Optimum, $"of {drawn.Name}");
                drawn.Tier.Value(better).Should().BeInRange(drawn.Optimum, drawn.Tier.Value(plan), $"of {drawn.Name}");
                (plan, bound) = (better, raised);
            }

            bound.Should().Be(drawn.Optimum, $"of {drawn.Name}");
            if (few == 1_000 && turns > 2) goneOn++;
        }

        if (few == 1_000) goneOn.Should().BeGreaterThan(3, "else no search is gone on with");
    }

    [Fact]
    public void What_is_known_from_elsewhere_meanwhile_is_not_undone()
    {
        foreach (var (drawn, guide, least) in Drawn(6_400, 60))
        {
            var search = new LeastBoundSearch(drawn.Tier, guide);
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
            var search = new LeastBoundSearch(drawn.Tier, guide);
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
        var (drawn, guide, least) = Drawn(6_600, 60).First(one => one.Drawn.Tier.Value(one.Drawn.Start) > one.Least
            && PatternEnumeration.Widest(one.Drawn.Tier, one.Guide, one.Least, one.Least, [1]) is null);
        var search = new LeastBoundSearch(drawn.Tier, guide, new LeastBoundSearch.Lists(1, 1));

        search.Raise(drawn.Start, least, Enough, None).Should().Be((drawn.Start, least));
    }

    private static IEnumerable<(DrawnTier Drawn, Guide Guide, long Least)> Drawn(int first, int problems) =>
        from drawn in DrawnTier.Some(first, problems)
        where LeastBoundSearch.Applies(drawn.Tier)
        let guide = Guide.Linear(drawn.Tier, ColumnGeneration.Solve(drawn.Tier, drawn.Start, [], None))
        select (drawn, guide, Math.Min(drawn.Tier.Value(drawn.Start), Bounds.RoundUp(drawn.Tier, guide.Bound)));
}
