using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>Counting that is led by the state-space relaxation, on last tiers of which the best plan is known.</summary>
public sealed class CountedByCellsTests
{
    private static readonly Effort None = new(MatchLimits.None);

    [Fact]
    public void It_finds_the_best_plan_up_to_a_level_and_rules_out_the_level_below_in_either_order_of_the_spans()
    {
        var (found, ruledOut) = (0, 0);
        foreach (var (drawn, guide) in Led(6_000, 24))
        {
            foreach (var level in (long[])[drawn.Optimum - 1, drawn.Optimum, drawn.Optimum + 25])
            {
                var pool = PatternEnumeration.All(drawn.Tier, guide.Limits(level), 100_000, 10_000_000)!;
                foreach (var order in (SpanOrder[])[SpanOrder.FewPatternsFirst, SpanOrder.ManyPatternsFirst])
                {
                    var (plan, closed) = CountProgram.Solve(drawn.Tier, pool, guide, level, 1_000_000, 100_000_000, None, order);

                    closed.Should().BeTrue($"of {drawn.Name}");
                    (plan is null ? null : (long?)drawn.Tier.Value(plan)).Should().Be(level < drawn.Optimum ? null : drawn.Optimum, $"of {drawn.Name} up to {level}");
                    if (plan is not null) drawn.Tier.Accepts(plan).Should().BeTrue($"of {drawn.Name}");
                    if (plan is not null) found++;
                    else if (guide.Bound <= level * drawn.Tier.Scale) ruledOut++;
                }
            }
        }

        found.Should().BeGreaterThan(10);
        ruledOut.Should().BePositive("else the bound alone ruled out all");
    }

    [Fact]
    public void It_places_a_plan_that_is_as_good_in_the_fourth_tier_as_what_the_linear_relaxation_leads_to()
    {
        var compared = 0;
        foreach (var (drawn, guide) in Led(6_300, 12))
        {
            var tier = drawn.Tier;
            var linear = Guide.Linear(tier, ColumnGeneration.Solve(tier, drawn.Start, [], None));
            IReadOnlyList<(Pattern Pattern, SpanPlace? Place)>? By(Guide one) =>
                CountProgram.Placed(tier, PatternEnumeration.All(tier, one.Limits(drawn.Optimum), 100_000, 10_000_000)!, one, drawn.Optimum, 1_000_000, 100_000_000, None);

            Fourth(By(guide)!).Should().Be(Fourth(By(linear)!), $"of {drawn.Name}");
            compared++;
        }

        compared.Should().BeGreaterThan(4);
    }

    [Fact]
    public void A_wide_beam_finds_the_best_plan_and_a_narrow_one_nothing_better()
    {
        var narrow = 0;
        foreach (var (drawn, guide) in Led(6_500, 10))
        {
            var level = drawn.Optimum + 25;
            var pool = PatternEnumeration.All(drawn.Tier, guide.Limits(level), 100_000, 10_000_000)!;

            drawn.Tier.Value(CountProgram.Beam(drawn.Tier, pool, guide, level, 100_000, None)!).Should().Be(drawn.Optimum, $"of {drawn.Name}");
            if (CountProgram.Beam(drawn.Tier, pool, guide, level, 1, None) is not { } found) continue;
            drawn.Tier.Value(found).Should().BeInRange(drawn.Optimum, level, $"of {drawn.Name}");
            narrow++;
        }

        narrow.Should().BePositive();
    }

    // Saw cuts, pieces carried, cuts that take either served by treated wood, and the yard's pieces from the first on.
    private static (int, int, int, string) Fourth(IReadOnlyList<(Pattern Pattern, SpanPlace? Place)> placed)
    {
        int[] pieces = [.. placed.Where(at => at.Place is not null).Select(at => at.Place!.Value.Piece).Distinct().Order()];
        return (placed.Sum(at => at.Pattern.SawCuts), pieces.Length + placed.Count(at => at.Place is null), placed.Sum(at => at.Pattern.AnyOnTreated), string.Join(" ", pieces));
    }

    // At the duals of the linear relaxation or somewhat beside them.
    private static IEnumerable<(DrawnTier Drawn, Guide Guide)> Led(int first, int problems)
    {
        foreach (var (drawn, i) in DrawnTier.Some(first, problems).Where(drawn => drawn.Tier.Goal == Goal.GivenUp).Select((drawn, i) => (drawn, i)))
        {
            var random = new Random(first + i);
            var linear = ColumnGeneration.Solve(drawn.Tier, drawn.Start, [], None);
            if (StateSpaceRelaxation.Of(drawn.Tier, linear, drawn.Optimum + 25) is not { } cells) continue;
            if (random.Next(2) == 0) cells = cells.At(linear.Duals.With(drawn.Tier, [.. linear.Duals.Demand.Select(dual => dual / (double)drawn.Tier.Scale * (0.9 + 0.2 * random.NextDouble()))]));
            yield return (drawn, Guide.By(drawn.Tier, linear, cells));
        }
    }
}
