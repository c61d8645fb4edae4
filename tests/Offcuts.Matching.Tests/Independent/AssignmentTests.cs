using Offcuts.Core.Plans;

namespace Offcuts.Matching.Tests.Independent;

/// <summary>On small problems the matcher reaches what an independent formulation, solved by CP-SAT, proves to be the best.</summary>
public sealed class AssignmentTests
{
    /// <summary>Blocks of seeds, so that a failure says which seed and the others still run.</summary>
    public static TheoryData<int> Blocks => [.. Enumerable.Range(0, 2)];

    /// <summary>Five hundred a block; a long run of them is one command of the benchmark project.</summary>
    [Theory]
    [MemberData(nameof(Blocks))]
    public void Every_tier_down_to_the_pieces_carried_is_that_of_the_assignment(int block)
    {
        var counts = Enum.GetValues<Trait>().ToDictionary(trait => trait, _ => 0);
        foreach (var seed in Enumerable.Range(block * 500, 500))
        {
            var request = Agreement.Draw(seed, Agreement.Small);
            var (plan, differences) = Agreement.Compare(request);
            foreach (var trait in Agreement.Traits(request, plan)) counts[trait]++;

            differences.Should().BeEmpty(Because(seed, request));
        }

        foreach (var (trait, count) in counts) count.Should().BeGreaterThanOrEqualTo(5, $"each block has all there is, {trait} too");
    }

    [Theory]
    [InlineData(9)]
    [InlineData(12)]
    public void Larger_ones_agree_too(int copies)
    {
        foreach (var seed in Enumerable.Range(5000, 12))
        {
            var request = Agreement.Draw(seed, new Size(copies, 9, 2));

            Agreement.Compare(request).Differences.Should().BeEmpty(Because(seed, request));
        }
    }

    [Fact]
    public void The_assignment_agrees_with_trying_everything()
    {
        foreach (var seed in Enumerable.Range(6000, 25))
        {
            var request = Agreement.Draw(seed, new Size(4, 4, 2));
            var reached = ExhaustiveSearch.WithHardware(request, AssignmentModel.Best(request).Figures);

            reached.ToString().Should().Be(ExhaustiveSearch.Best(request).ToString(), Because(seed, request));
        }
    }

    // A plan made without the yard's first piece can be carried out with it too, but where the piece is of use it is not the best.
    [Fact]
    public void A_plan_that_is_not_the_best_is_seen()
    {
        var seen = Enumerable.Range(0, 40).Count(seed =>
        {
            var request = Agreement.Draw(seed, Agreement.Small) with { Wishes = Wishes.None };
            var poorer = Matcher.Match(Problem.Create(request with { Pieces = [.. request.Pieces.Skip(1)] }).Value, MatchLimits.None);
            return Agreement.Differences(request, poorer).Count > 0;
        });

        seen.Should().BeGreaterThan(8, "else the comparison sees little");
    }

    private static string Because(int seed, MatchRequest request) => $"of seed {seed}:\n{DrawnYards.Describe(request).Replace("{", "{{").Replace("}", "}}")}\n";
}
