namespace Offcuts.Matching.Tests.Independent;

/// <summary>With ripping too the matcher reaches what trying everything reaches. (<see cref="AssignmentTests"/> has ripping among all else.)</summary>
public sealed class RippingTests
{
    /// <summary>Blocks of seeds, so that a failure says which seed and the others still run.</summary>
    public static TheoryData<int> Blocks => [.. Enumerable.Range(0, 8)];

    [Theory]
    [MemberData(nameof(Blocks))]
    public void Every_tier_is_that_of_trying_everything(int block)
    {
        var ripped = 0;
        foreach (var seed in Enumerable.Range(30_000 + block * 50, 50))
        {
            var request = RippingYards.Draw(seed, new Size(5, 4, 1)) with { Order = seed % 3 == 0 ? TierOrder.SawCutsFirst : TierOrder.ValueFirst };
            var plan = Matcher.Match(Problem.Create(request).Value, MatchLimits.None);
            var because = $"of seed {seed}:\n{DrawnYards.Describe(request)}\n";

            Reached.By(plan.Tiers).ToString().Should().Be(ExhaustiveSearch.Best(request).ToString(), because);
            plan.Proven.Should().BeTrue(because);
            PlanReview.Faults(request, plan).Should().BeEmpty(because);
            if (plan.Tiers.Rips?.Value > 0) ripped++;
        }

        ripped.Should().BeGreaterThan(5, "else little was ripped");
    }
}
