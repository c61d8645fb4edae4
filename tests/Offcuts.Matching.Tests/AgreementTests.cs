namespace Offcuts.Matching.Tests;

/// <summary>Three ways that share no code come to the same figures. A failing problem is drawn again by its seed.</summary>
public sealed class AgreementTests
{
    [Fact]
    public void Exhaustive_search_on_tiny_problems_finds_the_same_figures_in_all_four_tiers()
    {
        for (var seed = 1000; seed < 1120; seed++)
        {
            var request = RandomYards.Draw(seed, mostCuts: 4, mostPieces: 3);
            var plan = Scene.Match(request);
            long[] figures = [.. plan.Tiers.UnfilledByStage.Select(figure => figure.Value), plan.Tiers.Spend.Value, plan.Tiers.ValueGivenUp.Value, plan.Tiers.SawCuts];
            figures.Should().Equal(ExhaustiveSearch.Best(request), $"seed {seed}");
            plan.Proven.Should().BeTrue($"seed {seed} is tiny");
        }
    }

    [Fact]
    public void An_assignment_model_on_small_problems_finds_the_same_figures_in_tiers_1_to_3()
    {
        var compared = 0;
        for (var seed = 2000; seed < 2025; seed++)
        {
            var request = RandomYards.Draw(seed, mostCuts: 7, mostPieces: 5);
            if (AssignmentModel.Solve(request, 2) is not { } expected) continue;
            compared++;
            var plan = Scene.Match(request);
            long[] figures = [.. plan.Tiers.UnfilledByStage.Select(figure => figure.Value), plan.Tiers.Spend.Value, plan.Tiers.ValueGivenUp.Value];
            figures.Should().Equal(expected, $"seed {seed}");
        }

        compared.Should().BeGreaterThan(12, "the model proves most problems of this size");
    }
}
