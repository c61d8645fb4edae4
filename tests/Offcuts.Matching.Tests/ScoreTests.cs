using Offcuts.Core.Plans;

namespace Offcuts.Matching.Tests;

/// <summary>Which of two plans is better: the first tier in which they differ decides.</summary>
public sealed class ScoreTests
{
    // Unfilled of the first and the later stage, spend, rips, value given up, saw cuts.
    private static Tiers Of(IReadOnlyList<int> figures) =>
        new(Figure.Best(figures[0] + figures[1]), [Figure.Best(figures[0]), Figure.Best(figures[1])], Figure.Best(figures[2]), Figure.Best(figures[4]), figures[5]) { Rips = Figure.Best(figures[3]) };

    [Theory]
    [InlineData(TierOrder.ValueFirst, new[] { 0, 1, 2, 3, 4, 5 })]
    [InlineData(TierOrder.SawCutsFirst, new[] { 0, 1, 2, 3, 5, 4 })]
    public void A_plan_that_is_better_in_one_tier_is_better_however_much_worse_it_is_in_those_behind(TierOrder order, int[] tiers)
    {
        int[] one = [1, 1, 100, 1, 50, 4];
        for (var t = 0; t < tiers.Length; t++)
        {
            var other = (int[])one.Clone();
            other[tiers[t]]--;
            foreach (var behind in tiers[(t + 1)..]) other[behind] += 10;

            Score.Compare(Of(other), Of(one), order).Should().BeNegative($"tier {tiers[t]} is better");
            Score.Compare(Of(one), Of(other), order).Should().BePositive();
        }

        Score.Compare(Of(one), Of(one), order).Should().Be(0);
    }

    [Fact]
    public void Where_nothing_may_be_ripped_no_rips_are_as_good_as_none() =>
        Score.Compare(Of([0, 0, 100, 0, 50, 4]) with { Rips = null }, Of([0, 0, 100, 0, 50, 4]), TierOrder.ValueFirst).Should().Be(0);
}
