using Offcuts.Core.Measures;

namespace Offcuts.Print.Tests;

public sealed class StagingListTests
{
    private static readonly StagingList List = StagingList.Of(InventedWall.Picture with { Stacked = [] }, LengthUnit.Inch);

    [Fact]
    public void What_the_bottom_courses_need_is_cut_first()
    {
        List.Cuts.Select(cut => cut.Course).Should().BeInAscendingOrder();
        List.Cuts.Select(cut => cut.Numbers[0]).Should().Equal([1, 2, 5, 6, 7, 8, 9], "1 to 4 are for the first course; in the second the loft comes before the tarp and the store");
    }

    [Fact]
    public void New_panels_alike_that_go_whole_stand_together_with_their_count()
    {
        // 1, 3, 4 and 7 and 9 are whole; 2 and 8 are cut.
        List.Groups.Single(group => group.Place == StagingList.Store).Pieces.Select(piece => (string.Join(' ', piece.Numbers), piece.Code, piece.Goes)).Should().Equal(
            ("1 3 4 7 9", "5 new", "A outside 1: no. 1, 3, 4; A outside 2: no. 7; A outside 3: no. 9"),
            ("2", "new", "A: A outside 1; B: A outside 2"),
            ("8", "new", "A: A outside 2; B: A outside 3"));
        List.Cuts.Where(cut => cut.Course == 1).Select(cut => (cut.Code, cut.Goes)).Should().Equal(
            ("3 new", "A outside 1: no. 1, 3, 4"),
            ("new", "A: A outside 1; B: A outside 2"));
    }

    [Fact]
    public void New_panels_of_two_lengths_do_not_stand_together()
    {
        var longer = InventedWall.Plan.Pieces[2] with { Bought = InventedWall.Plan.Pieces[2].Bought! with { Length = InventedWall.In(96) } };
        var picture = InventedWall.Picture with { Stacked = [], Plan = InventedWall.Plan with { Pieces = [.. InventedWall.Plan.Pieces.Select((piece, i) => i == 2 ? longer : piece)] } };

        StagingList.Of(picture, LengthUnit.Inch).Cuts.Where(cut => cut.Course == 1).Select(cut => (cut.Code, cut.Length)).Should().Equal(("2 new", "4'"), ("new", "4'"), ("new", "8'"));
    }

    [Fact]
    public void A_piece_is_cut_once_for_its_lowest_course_and_says_where_all_its_cuts_go() =>
        List.Cuts.Single(cut => cut.Numbers[0] == 2).Goes.Should().Be("A: A outside 1; B: A outside 2");

    [Fact]
    public void What_stands_is_brought_nowhere_any_more()
    {
        // The first course outside stands: 1, 3 and 4 went into it, and of 2 the other cut is left.
        var left = StagingList.Of(InventedWall.Picture, LengthUnit.Inch);

        left.Cuts.SelectMany(cut => cut.Numbers).Should().Equal([5, 6, 2, 7, 8, 9]);
        left.Cuts.Single(cut => cut.Numbers[0] == 2).Goes.Should().Be("B: A outside 2");
    }

    [Fact]
    public void Places_come_by_name_and_the_store_last() =>
        List.Groups.Select(group => group.Place).Should().Equal("invented loft", "under the tarp", StagingList.Store);

    [Fact]
    public void The_print_is_as_it_was_looked_at() => Golden.Compare("staging.txt", List.Text(80));

    [Theory]
    [InlineData(60)]
    [InlineData(80)]
    [InlineData(120)]
    public void No_line_is_wider_than_asked_for(int width) => List.Text(width).Split('\n').Should().OnlyContain(line => TextColumns.Width(line) <= width);

    [Fact]
    public void A_wall_without_a_plan_stages_nothing() =>
        StagingList.Of(InventedWall.Picture with { Plan = null }, LengthUnit.Inch).Text(80).Should().Contain("  nothing");
}
