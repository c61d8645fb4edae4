using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>Plans of the last tier that are taken apart in part, on tiers so small that every plan is tried.</summary>
public sealed class ListedReopeningTests
{
    private static readonly Effort None = new(MatchLimits.None);

    private const int Patience = 18;

    [Fact]
    public void A_plan_taken_apart_in_part_keeps_its_rows_and_gets_no_dearer_and_mostly_becomes_the_best()
    {
        var (worse, best) = (0, 0);
        foreach (var (drawn, guide) in Last(1, 400))
        {
            var better = ListedReopening.Improve(drawn.Tier, drawn.Start, [], guide, drawn.Optimum, Patience, None);

            drawn.Tier.Accepts(better).Should().BeTrue($"of {drawn.Name}");
            drawn.Tier.Value(better).Should().BeInRange(drawn.Optimum, drawn.Tier.Value(drawn.Start), $"of {drawn.Name}");
            if (drawn.Tier.Value(drawn.Start) == drawn.Optimum) continue;
            worse++;
            if (drawn.Tier.Value(better) == drawn.Optimum) best++;
        }

        worse.Should().BeGreaterThan(20, "else there was little to make better");
        best.Should().BeGreaterThan(worse * 9 / 10);
    }

    [Fact]
    public void The_same_plan_becomes_the_same_better_one_each_time()
    {
        foreach (var (drawn, guide) in Last(300, 60))
        {
            var (one, two) = (ListedReopening.Improve(drawn.Tier, drawn.Start, [], guide, drawn.Optimum - 1, Patience, None), ListedReopening.Improve(drawn.Tier, drawn.Start, [], guide, drawn.Optimum - 1, Patience, None));
            one.Uses.Should().Equal(two.Uses, $"of {drawn.Name}");
        }
    }

    [Fact]
    public void A_plan_that_costs_the_bound_is_left_as_it_is()
    {
        var (drawn, guide) = Last(400, 60).First(one => one.Drawn.Tier.Value(one.Drawn.Start) > one.Drawn.Optimum);
        ListedReopening.Improve(drawn.Tier, drawn.Start, [], guide, drawn.Tier.Value(drawn.Start), Patience, None).Should().BeSameAs(drawn.Start);
    }

    [Fact]
    public void Once_it_is_stopped_the_plan_is_left_as_it_is()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        var (drawn, guide) = Last(400, 60).First(one => one.Drawn.Tier.Value(one.Drawn.Start) > one.Drawn.Optimum);
        ListedReopening.Improve(drawn.Tier, drawn.Start, [], guide, drawn.Optimum, Patience, None.Until(stop.Token)).Should().BeSameAs(drawn.Start);
    }

    [Fact]
    public void What_is_made_better_beside_a_proof_is_taken_only_where_it_is_better()
    {
        var better = 0;
        foreach (var (drawn, guide) in Last(500, 120))
        {
            using var meanwhile = new Meanwhile(drawn.Tier, drawn.Start, [], guide, drawn.Optimum, 2, Patience, None);
            var soon = meanwhile.Soon(drawn.Start);
            var taken = meanwhile.Better(drawn.Start);

            drawn.Tier.Value(soon).Should().BeInRange(drawn.Tier.Value(taken), drawn.Tier.Value(drawn.Start), $"what comes soon is gone on with, of {drawn.Name}");
            drawn.Tier.Value(taken).Should().BeInRange(drawn.Optimum, drawn.Tier.Value(drawn.Start), $"of {drawn.Name}");
            if (drawn.Tier.Value(taken) == drawn.Tier.Value(drawn.Start)) taken.Should().BeSameAs(drawn.Start, $"of {drawn.Name}");
            else better++;
            meanwhile.Better(taken).Should().BeSameAs(taken, $"the other is no better, of {drawn.Name}");
        }

        better.Should().BeGreaterThan(10);
    }

    // Where something is bought, the proof is left to itself.
    private static IEnumerable<(DrawnTier Drawn, Guide Guide)> Last(int first, int problems) =>
        from drawn in DrawnTier.Some(first, problems)
        where drawn.Tier.Goal == Goal.GivenUp && drawn.Tier.Earlier.Count == 0
        select (drawn, Guide.Linear(drawn.Tier, ColumnGeneration.Solve(drawn.Tier, drawn.Start, [], None)));
}
