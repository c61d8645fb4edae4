using Offcuts.Core.Measures;

namespace Offcuts.Print.Tests;

public sealed class StagingListTests
{
    private static readonly StagingList List = StagingList.Of(InventedWall.Picture with { Stacked = [] }, LengthUnit.Inch);

    [Fact]
    public void What_the_bottom_courses_need_is_cut_first()
    {
        List.Cuts.Select(cut => cut.Course).Should().BeInAscendingOrder();
        List.Cuts.Select(cut => cut.Number).Should().Equal([1, 2, 3, 4, 5, 6, 7, 8, 9], "1 to 4 are for the first course; in the second the loft comes before the tarp and the store");
    }

    [Fact]
    public void A_piece_is_cut_once_for_its_lowest_course_and_says_where_all_its_cuts_go() =>
        List.Cuts.Single(cut => cut.Number == 2).Goes.Should().Be("A: A outside 1; B: A outside 2");

    [Fact]
    public void What_stands_is_brought_nowhere_any_more()
    {
        // The first course outside stands: 1, 3 and 4 went into it, and of 2 the other cut is left.
        var left = StagingList.Of(InventedWall.Picture, LengthUnit.Inch);

        left.Cuts.Select(cut => cut.Number).Should().Equal([5, 6, 2, 7, 8, 9]);
        left.Cuts.Single(cut => cut.Number == 2).Goes.Should().Be("B: A outside 2");
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
