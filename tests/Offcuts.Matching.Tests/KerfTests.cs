using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Tests;

public sealed class KerfTests
{
    private static readonly Material TwoByFour = MaterialReader.Read("2x4").Value;

    [Fact]
    public void Three_inch_eighths_short_a_96_in_board_gives_only_three_of_24_in()
    {
        var request = new MatchRequest
        {
            Pieces = [new Piece { Code = default, Material = TwoByFour, Length = Length.Inches(96) }],
            Stages = [new Stage("wall", null, [new RequiredCut { Stage = "wall", Name = "block", Material = TwoByFour, Shortest = Length.Inches(24), Longest = Length.Inches(24), Count = 4 }], [])],
            Buy = false,
        };

        var plan = Matcher.Match(Problem.Create(request).Value, MatchLimits.None);

        plan.Tiers.Unfilled.Value.Should().Be(1);
        plan.Pieces.Single().Cuts.Select(cut => cut.Start).Should().Equal(Length.Zero, Length.Inches(24.125m), Length.Inches(48.25m));
        plan.Pieces.Single().Remainders.Single().Length.Should().Be(Length.Inches(23.625m));
        plan.Proven.Should().BeTrue();
    }
}
