using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using static Offcuts.Walls.Tests.Sheets;

namespace Offcuts.Walls.Tests;

/// <summary>Rows of panels against hand calculations, which stand beside them. t = 2-1/2, c = 6, W = 6 + 2 x 2-1/2 = 11, in inches.</summary>
public sealed class CornerTests
{
    [Theory]
    // 28 ft = 336. Outer: 336; 336 - 2 x 2.5 = 331. Inner: 336 - 2 x 11 + 2 x 2.5 = 319; 336 - 2 x 11 = 314.
    [InlineData("A outside", 336, 331)]
    [InlineData("A inside", 319, 314)]
    // 20 ft = 240. Outer: 240; 235. Inner: 240 - 22 + 5 = 223; 218. The short legs butt in the first course.
    [InlineData("B outside", 235, 240)]
    [InlineData("B inside", 218, 223)]
    [InlineData("C outside", 336, 331)]
    [InlineData("C inside", 319, 314)]
    [InlineData("D outside", 235, 240)]
    [InlineData("D inside", 218, 223)]
    public void The_rectangle_worked_by_hand(string run, decimal first, decimal second)
    {
        var wall = Laid(Rectangle);

        Length(wall, run, 1).Should().Be(first);
        Length(wall, run, 2).Should().Be(second);
    }

    [Fact]
    public void With_lap_same_every_course_is_laid_like_the_first()
    {
        var wall = Laid(Rectangle with { Lap = Lap.Same });

        Length(wall, "A inside", 2).Should().Be(319);
        Length(wall, "B outside", 2).Should().Be(235);
    }

    [Fact]
    public void The_inside_row_of_the_long_leg_that_runs_by_starts_one_and_a_half_inches_before_its_first_line()
    {
        // It starts at 11 - 2.5 = 8.5; lines lie at 0, 2, 4, .. from the leg's start, so the next is 10 = 8.5 + 1.5.
        var wall = Laid(Rectangle);
        var run = wall.Runs.Single(run => run.Name == "A inside");
        var start = run.Courses[0].Stretches[0].Start;

        start.Should().Be(In(8.5m));
        run.Lines.IsLine(start + In(1.5m)).Should().BeTrue();
        Enumerable.Range(0, 12).Select(eighth => In(eighth / 8m)).Should().OnlyContain(before => !run.Lines.IsLine(start + before));
        run.Lines.IsTie(In(12)).Should().BeTrue("ties lie every foot from the leg's start");
    }

    [Fact]
    public void The_same_rectangle_walked_the_other_way_has_the_same_rows()
    {
        var wall = Laid(Rectangle with { Legs = [.. Rectangle.Legs.Select(leg => leg with { Turn = Turn.Right })] });

        wall.Legs[0].Outside.Should().Be(Hand.Left);
        Length(wall, "A inside", 1).Should().Be(319);
        Length(wall, "D outside", 1).Should().Be(235);
    }

    [Theory]
    [InlineData(6)]
    [InlineData(8)]
    [InlineData(10)]
    [InlineData(12)]
    public void Sides_of_36_and_24_feet_fall_on_the_pattern_with_any_core(int core)
    {
        // That such sides fall on a 2 in interval, and these cores: common practice, no source.
        var wall = Laid(Wall(Leg("A", Ft(36), Turn.Left), Leg("B", Ft(24), Turn.Left), Leg("C", Ft(36), Turn.Left), Leg("D", Ft(24), Turn.Left)) with { Closed = true, CoreWidth = In(core) });

        foreach (var (run, course) in new[] { ("A outside", 1), ("B outside", 2) })
        {
            var outside = wall.Runs.Single(one => one.Name == run);
            var stretch = outside.Courses[course - 1].Stretches.Single();
            outside.Lines.IsTie(stretch.Start).Should().BeTrue();
            outside.Lines.IsTie(stretch.End).Should().BeTrue();
        }

        // Inside, running by: 432 - 2 (c + 5) + 5.
        Length(wall, "A inside", 1).Should().Be(427 - 2 * core);
    }

    [Fact]
    public void An_L_with_its_lengths_given_on_the_outer_side()
    {
        // 20 ft = 240 and 12 ft = 144, one outside corner. A runs by in the first course.
        var wall = Laid(Wall(Leg("A", Ft(20), Turn.Left), Leg("B", Ft(12), Turn.End)));

        wall.Inches("A outside", 1).Should().Equal((0, 240));
        wall.Inches("A inside", 1).Should().Equal((0, 231.5m)); // 240 - 11 + 2.5
        wall.Inches("B outside", 1).Should().Equal((2.5m, 144));
        wall.Inches("B inside", 1).Should().Equal((11, 144));
        wall.Inches("A outside", 2).Should().Equal((0, 237.5m)); // 240 - 2.5
        wall.Inches("A inside", 2).Should().Equal((0, 229)); // 240 - 11
        wall.Inches("B outside", 2).Should().Equal((0, 144));
        wall.Inches("B inside", 2).Should().Equal((8.5m, 144)); // 11 - 2.5
    }

    [Fact]
    public void The_same_L_with_its_lengths_given_on_the_inner_side_has_an_inside_corner()
    {
        var wall = Laid(Wall(Leg("A", Ft(20), Turn.Left) with { Outside = Hand.Left }, Leg("B", Ft(12), Turn.End)));

        wall.Legs[0].End.Should().Be(LegEnd.InsideCorner);
        wall.Inches("A outside", 1).Should().Equal((0, 242.5m)); // 240 + 2.5
        wall.Inches("A inside", 1).Should().Equal((0, 251)); // 240 + 11
        wall.Inches("B outside", 1).Should().Equal((0, 144));
        wall.Inches("B inside", 1).Should().Equal((-8.5m, 144)); // -(11 - 2.5)
        wall.Inches("A outside", 2).Should().Equal((0, 240));
        wall.Inches("A inside", 2).Should().Equal((0, 248.5m)); // 240 + 11 - 2.5
        wall.Inches("B outside", 2).Should().Equal((-2.5m, 144));
        wall.Inches("B inside", 2).Should().Equal((-11, 144));
    }

    [Fact]
    public void An_axis_begins_before_a_leg_that_starts_at_an_inside_corner_and_its_lines_stay_where_they_were()
    {
        var wall = Laid(Wall(Leg("A", Ft(20), Turn.Left) with { Outside = Hand.Left }, Leg("B", Ft(12), Turn.End)));
        var run = wall.Runs.Single(run => run.Name == "B inside");

        wall.Legs[1].AxisBefore.Should().Be(In(11));
        run.Courses[1].Stretches[0].Start.Should().Be(In(0));
        run.Lines.IsTie(In(11)).Should().BeTrue("the leg's start");
        run.Lines.IsTie(In(23)).Should().BeTrue("a foot from it");
        run.Lines.IsLine(In(9)).Should().BeTrue("two inches before it");
        run.Lines.IsLine(In(10)).Should().BeFalse();
    }

    [Fact]
    public void A_free_leg_covers_what_is_given_on_both_faces()
    {
        var wall = Laid(Wall(Leg("A", Ft(36), Turn.End)));

        wall.Inches("A outside", 1).Should().Equal((0, 432));
        wall.Inches("A inside", 2).Should().Equal((0, 432));
    }

    [Fact]
    public void A_free_leg_in_metric_covers_what_is_given_on_both_faces()
    {
        var wall = Laid(MetricWall(Leg("A", Mm(10_800), Turn.End)), Metric);

        wall.Millimetres("A outside", 1).Should().Equal((0, 10_800));
        wall.Millimetres("A inside", 2).Should().Equal((0, 10_800));
        wall.Runs[0].Lines.IsLine(Mm(10_750)).Should().BeTrue();
    }

    [Fact]
    public void A_tee_leaves_a_gap_as_wide_as_the_core_in_the_near_row_and_the_far_row_goes_on()
    {
        // Centre at 10 ft = 120, core 6: from 117 to 123.
        var wall = Laid(Wall(
            Leg("A", Ft(20), Turn.End),
            Leg("T", Ft(8), Turn.End) with { Start = new Junction("A", Ft(10), Face.Inside) }));

        wall.Inches("A outside", 1).Should().Equal((0, 240));
        wall.Inches("A inside", 1).Should().Equal((0, 117), (123, 240));
        wall.Inches("T outside", 1).Should().Equal((0, 96));
        wall.Inches("T inside", 1).Should().Equal((0, 96));
        wall.Runs[1].Lines.Should().Be(wall.Runs[0].Lines, "the near row takes its pattern up again on the same lines");
    }

    [Fact]
    public void A_leg_between_two_tees_leaves_a_gap_in_each()
    {
        // Inside of the rectangle: 240 - 2 x 11 = 218 from face to face.
        var wall = Laid(Rectangle with
        {
            Legs = [.. Rectangle.Legs, Leg("P", In(218), Turn.End) with { Start = new Junction("A", Ft(14), Face.Inside), Finish = new Junction("C", Ft(14), Face.Inside) }],
        });

        wall.Inches("C inside", 2).Should().Equal((11, 165), (171, 325)); // 168 - 3 and 168 + 3; 336 - 11
        wall.Inches("P inside", 1).Should().Equal((0, 218));
    }

    [Fact]
    public void The_metric_rectangle_worked_by_hand()
    {
        // 8400 x 6000 outside, t = 60, c = 150, W = 270.
        var wall = Laid(MetricWall(Leg("A", Mm(8400), Turn.Left), Leg("B", Mm(6000), Turn.Left), Leg("C", Mm(8400), Turn.Left), Leg("D", Mm(6000), Turn.Left)) with { Closed = true }, Metric);

        wall.Millimetres("A outside", 1).Should().Equal((0, 8400));
        wall.Millimetres("A outside", 2).Should().Equal((60, 8340));
        wall.Millimetres("A inside", 1).Should().Equal((210, 8190)); // 270 - 60; 8400 - 210
        wall.Millimetres("A inside", 2).Should().Equal((270, 8130));
        wall.Millimetres("B outside", 1).Should().Equal((60, 5940));
        wall.Millimetres("B inside", 2).Should().Equal((210, 5790));
    }

    [Fact]
    public void The_metric_L_and_T_worked_by_hand()
    {
        var wall = Laid(
            MetricWall(
                Leg("A", Mm(6000), Turn.Right) with { Outside = Hand.Right },
                Leg("B", Mm(3600), Turn.End),
                Leg("T", Mm(2400), Turn.End) with { Start = new Junction("B", Mm(1800), Face.Outside) }),
            Metric);

        wall.Millimetres("A inside", 1).Should().Equal((0, 6270)); // inside corner: + W
        wall.Millimetres("A outside", 1).Should().Equal((0, 6060)); // + t
        wall.Millimetres("B inside", 1).Should().Equal((-210, 3600)); // + W - t
        wall.Millimetres("B outside", 1).Should().Equal((0, 1725), (1875, 3600)); // 1800 - 75, 1800 + 75
        wall.Millimetres("B inside", 2).Should().Equal((-270, 3600));
        wall.Millimetres("T outside", 1).Should().Equal((0, 2400));
    }

    private static decimal Length(LaidWall wall, string run, int course)
    {
        var (from, to) = wall.Inches(run, course).Single();
        return to - from;
    }
}
