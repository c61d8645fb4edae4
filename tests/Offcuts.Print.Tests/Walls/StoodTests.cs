using Offcuts.Core.Walls;
using static Offcuts.Print.Tests.InventedWall;

namespace Offcuts.Print.Tests.Walls;

/// <summary>Courses that stand, drawn with what they were really laid from. The wall is our own invention.</summary>
public sealed class StoodTests
{
    private static readonly StackedCourse Stood = new("garage", "A outside", 2, [In(38), In(120), In(168)])
    {
        Pieces =
        [
            new(In(0), In(38), Offcut.Code, Turned: false), new(In(38), In(60), Rest.Code, Turned: true),
            new(In(96), In(120), default, Turned: false), new(In(120), In(168), default, Turned: false), new(In(168), In(192), default, Turned: false),
        ],
    };

    [Fact]
    public void A_course_that_stands_is_drawn_with_its_own_pieces_when_its_plan_is_gone()
    {
        var text = Elevation.Text(InventedWall.Picture with { Plan = null, Stacked = [Stood] }, new ElevationOptions { Width = 100 });

        text.Should().Contain($"course 2, stacked: S 3' 2\" ({Offcut.Code}), S 1' 10\" ({Rest.Code}, turned), N 2', N 4', N 2'\n")
            .And.Contain("course 1: not planned yet\n");
        text.Should().MatchRegex("2s │[░ ]*S " + Offcut.Code + ".*│");
        // The joint at 38 in lies beside the ties, a foot apart; those at 120 and 168 in lie on one.
        var ties = text.Split('\n').SkipWhile(line => !line.StartsWith("2s ", StringComparison.Ordinal)).Skip(1).First();
        ties.Count(sign => sign == '*').Should().Be(1);
        ties.Count(sign => sign == '┴').Should().Be(2);
    }

    [Fact]
    public void A_course_that_is_cut_is_told_from_one_that_stands_by_its_letter()
    {
        var text = Elevation.Text(InventedWall.Picture with { Stacked = [Stood with { OnlyCut = true }] }, new ElevationOptions { Width = 100 });

        text.Should().Contain("course 2, cut, waits to be stacked: S5A").And.MatchRegex("\n2c │").And.NotMatchRegex("\n2s ");
    }

    [Fact]
    public void While_its_plan_is_there_the_numbers_of_the_cut_sheet_stay() =>
        Elevation.Text(InventedWall.Picture with { Stacked = [Stood] }, new ElevationOptions { Width = 100 }).Should().Contain($"course 2, stacked: S5A 3' 2\" ({Offcut.Code})");
}
