using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>The proof level by level, on tiers of which the best plan is known.</summary>
public sealed class LevelsTests
{
    private static readonly Effort None = new(MatchLimits.None);

    private static readonly PoolWork Nothing = new(0, 0, 0, 0);

    private static readonly PoolWork Enough = new(int.MaxValue, 100_000, 10_000_000, 300);

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void Going_up_ends_with_the_best_plan_and_its_bound(int part)
    {
        var raised = 0;
        foreach (var (drawn, guide) in Drawn(5_000, 60))
        {
            var levels = new Levels(drawn.Tier, drawn.Start, long.MinValue / 4, Enough, 100, None);
            levels.Climb(guide, part, 3, Levels.Few);

            (drawn.Tier.Value(levels.Best), levels.Bound, levels.Closed).Should().Be((drawn.Optimum, drawn.Optimum, true), $"of {drawn.Name}");
            drawn.Tier.Accepts(levels.Best).Should().BeTrue($"of {drawn.Name}");
            if (Bounds.RoundUp(drawn.Tier, guide.Bound) < drawn.Optimum) raised++;
        }

        raised.Should().BeGreaterThan(1, "else the guide alone says all");
    }

    [Fact]
    public void Creeping_up_ends_with_the_best_plan_and_its_bound()
    {
        foreach (var (drawn, guide) in Drawn(5_200, 60))
        {
            var levels = new Levels(drawn.Tier, drawn.Start, long.MinValue / 4, Enough, 0, None);
            levels.Creep(guide).Should().BeTrue($"of {drawn.Name}");

            (drawn.Tier.Value(levels.Best), levels.Bound).Should().Be((drawn.Optimum, drawn.Optimum), $"of {drawn.Name}");
        }
    }

    [Fact]
    public void A_level_that_is_not_decided_raises_nothing_and_its_bound_stays_that_of_the_guide()
    {
        foreach (var (drawn, guide) in Drawn(5_400, 12))
        {
            var known = Math.Min(drawn.Tier.Value(drawn.Start), Bounds.RoundUp(drawn.Tier, guide.Bound));
            var (climbed, crept) = (new Levels(drawn.Tier, drawn.Start, long.MinValue / 4, Nothing, 0, None), new Levels(drawn.Tier, drawn.Start, long.MinValue / 4, Nothing, 0, None));
            climbed.Climb(guide, 1, 3, Levels.Few);
            crept.Creep(guide).Should().BeTrue($"what is too much is listed all the same, of {drawn.Name}");

            foreach (var levels in new[] { climbed, crept })
            {
                levels.Bound.Should().Be(known, $"of {drawn.Name}");
                drawn.Tier.Value(levels.Best).Should().BeInRange(drawn.Optimum, drawn.Tier.Value(drawn.Start), $"of {drawn.Name}");
            }
        }
    }

    [Fact]
    public void What_the_decision_leaves_open_the_integer_master_decides()
    {
        foreach (var (drawn, guide) in Drawn(5_900, 25))
        {
            var levels = new Levels(drawn.Tier, drawn.Start, long.MinValue / 4, Nothing, 1_000, None);
            levels.Climb(guide, 1, 3, Levels.Few);

            (drawn.Tier.Value(levels.Best), levels.Bound).Should().Be((drawn.Optimum, drawn.Optimum), $"of {drawn.Name}");
        }
    }

    // Few states and tries: some levels are decided and some are not, with a bound from outside that may be anywhere below the best.
    [Fact]
    public void However_little_work_there_is_no_bound_is_above_the_best_plan()
    {
        var (some, all, climbed, seed) = (0, 0, 0, 0);
        foreach (var (drawn, guide) in Drawn(5_600, 90))
        {
            var random = new Random(++seed);
            var work = new PoolWork(random.Next(6), random.Next(2, 40), random.Next(2, 200), random.Next(3));
            var levels = new Levels(drawn.Tier, drawn.Start, drawn.Optimum - random.Next(100), work, random.Next(2), None);
            var climbing = random.Next(2) == 0;
            if (climbing) levels.Climb(guide, random.Next(1, 4), random.Next(1, 4), Levels.Few);
            else levels.Creep(guide);
            if (climbing) climbed++;

            levels.Bound.Should().BeLessThanOrEqualTo(drawn.Optimum, $"of {drawn.Name}");
            drawn.Tier.Value(levels.Best).Should().BeInRange(drawn.Optimum, drawn.Tier.Value(drawn.Start), $"of {drawn.Name}");
            drawn.Tier.Accepts(levels.Best).Should().BeTrue($"of {drawn.Name}");
            if (levels.Closed) all++;
            else some++;
        }

        all.Should().BeGreaterThan(15);
        some.Should().BePositive();
        climbed.Should().BeInRange((all + some) / 4, 3 * (all + some) / 4, "else one of both is hardly tried");
    }

    [Fact]
    public void Where_even_at_the_bound_there_are_too_many_patterns_nothing_is_decided()
    {
        var (drawn, guide) = Drawn(5_800, 60).First(one => one.Drawn.Tier.Value(one.Drawn.Start) > Bounds.RoundUp(one.Drawn.Tier, one.Guide.Bound));
        var levels = new Levels(drawn.Tier, drawn.Start, long.MinValue / 4, Enough, 100, None);

        levels.Climb(guide, 1, 3, new Levels.Lists([0])).Should().BeFalse("more work would change nothing");

        levels.Best.Should().BeSameAs(drawn.Start);
        levels.Bound.Should().Be(Bounds.RoundUp(drawn.Tier, guide.Bound));
        levels.Closed.Should().BeFalse();
    }

    private static IEnumerable<(DrawnTier Drawn, Guide Guide)> Drawn(int first, int problems) =>
        from drawn in DrawnTier.Some(first, problems)
        select (drawn, Guide.Linear(drawn.Tier, ColumnGeneration.Solve(drawn.Tier, drawn.Start, [], None)));
}
