using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Tests.Facts;

/// <summary>
/// An ordinary circular-saw blade takes about 1/8 in: common practice, no source. With it a 96 in board does not give four
/// 24 in pieces: 4 x 24 + 3 x 1/8 = 96-3/8.
/// </summary>
public sealed class KerfFacts
{
    private static readonly Material Board = MaterialReader.Read("2x4").Value;

    [Fact]
    public void The_usual_kerf_is_an_eighth() => YardSettings.Usual.Kerf(Board).Should().Be(Length.Inches(0.125m));

    [Fact]
    public void The_fourth_24_in_piece_of_a_96_in_board_is_short_by_three_eighths()
    {
        var plan = FourOf24(Length.Inches(96), Length.Inches(0.125m));

        plan.Tiers.Unfilled.Should().Be(Figure.Best(1));
        plan.Pieces.Single().Cuts.Should().HaveCount(3);
        (Length.Inches(24) - plan.Pieces.Single().Remainders.Single().Length).Should().Be(Length.Inches(0.375m));
    }

    [Theory]
    [InlineData(96.375, 4, 3)]
    [InlineData(96.359375, 3, 3)]
    [InlineData(96.4375, 4, 4)]
    [InlineData(97, 4, 4)]
    public void Three_kerfs_more_than_96_in_are_just_enough(double inches, int cuts, int sawCuts)
    {
        var plan = FourOf24(Length.Inches((decimal)inches), Length.Inches(0.125m));

        plan.Pieces.Single().Cuts.Should().HaveCount(cuts);
        plan.Tiers.SawCuts.Should().Be(sawCuts, "the last cut needs no saw where it ends at the board's end, and one anywhere else");
    }

    [Fact]
    public void A_blade_that_takes_nothing_gets_four_out_of_96_in()
    {
        var plan = FourOf24(Length.Inches(96), Length.Zero);

        plan.Tiers.Unfilled.Should().Be(Figure.Best(0));
        plan.Tiers.SawCuts.Should().Be(3);
        plan.Pieces.Single().Remainders.Should().BeEmpty();
    }

    private static Plan FourOf24(Length board, Length kerf) => Matcher.Match(
        Problem.Create(new MatchRequest
        {
            Pieces = [new Piece { Code = default, Material = Board, Length = board }],
            Stages =
            [
                new Stage("wall", null,
                    [new RequiredCut { Stage = "wall", Name = "block", Material = Board, Shortest = Length.Inches(24), Longest = Length.Inches(24), Count = 4 }], []),
            ],
            Settings = YardSettings.Usual with { KerfElsewhere = kerf },
            Buy = false,
        }).Value,
        MatchLimits.None);
}
