namespace Offcuts.Matching.Tests.Independent;

/// <summary>On small problems the matcher reaches what an independent formulation, solved by CP-SAT, proves to be the best.</summary>
public sealed class AssignmentTests
{
    /// <summary>Blocks of seeds, so that a failure says which seed and the others still run.</summary>
    public static TheoryData<int> Blocks => [.. Enumerable.Range(0, 4)];

    [Theory]
    [MemberData(nameof(Blocks))]
    public void Fill_spend_and_value_given_up_are_those_of_the_assignment(int block)
    {
        foreach (var seed in Enumerable.Range(5000 + block * 15, 6))
        {
            var request = WithoutHardware(DrawnYards.Draw(seed, new Size(11, 8, 2)));
            var plan = Matcher.Match(Problem.Create(request).Value, MatchLimits.None);
            var because = $"of seed {seed}:\n{DrawnYards.Describe(request)}\n";

            (ExhaustiveTests.Of(plan.Tiers) with { SawCuts = 0 }).ToString().Should().Be(AssignmentModel.Best(request).ToString(), because);
            plan.Proven.Should().BeTrue(because);
        }
    }

    [Fact]
    public void The_assignment_agrees_with_trying_everything()
    {
        foreach (var seed in Enumerable.Range(6000, 25))
        {
            var request = WithoutHardware(DrawnYards.Draw(seed, new Size(4, 4, 2)));

            AssignmentModel.Best(request).ToString().Should().Be((ExhaustiveSearch.Best(request) with { SawCuts = 0 }).ToString(), $"of seed {seed}");
        }
    }

    private static MatchRequest WithoutHardware(MatchRequest request) =>
        request with { Stages = [.. request.Stages.Select(stage => stage with { Hardware = [] })] };
}
