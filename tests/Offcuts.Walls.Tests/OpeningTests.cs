using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using static Offcuts.Walls.Tests.Sheets;

namespace Offcuts.Walls.Tests;

/// <summary>One free leg of 20 ft x 8 ft 6 in with every kind of opening; courses of 12 in.</summary>
public sealed class OpeningTests
{
    private static readonly WallSheet Sheet = Wall(Leg(
        "A",
        Ft(20),
        Turn.End,
        new Opening("door", In(24), In(36), In(84), Length.Zero), // courses 1 to 7, 24 to 60
        new Opening("window", In(80), In(40), In(42), In(30)), // 30 to 72: half of course 3, all of 4, 5, 6
        new Opening("vent", In(140), In(16), In(4), In(28)), // 28 to 32: within course 3
        new Opening("slot", In(170), In(12), In(30), In(72)), // 72 to 102: courses 7, 8 and the ripped 9
        new Opening("light", In(200), In(20), In(20), In(50)))) with // 50 to 70: part of 5 and 6, none whole
    { Height = In(102) };

    private static readonly LaidWall Laid = Sheets.Laid(Sheet);

    [Fact]
    public void A_height_that_is_no_multiple_of_the_course_ends_in_a_course_ripped_to_the_rest()
    {
        // 102 = 8 x 12 + 6
        Laid.Courses.Should().Be(9);
        Laid.Runs[0].Courses.Select(course => course.Height).Should().Equal([.. Enumerable.Repeat(In(12), 8), In(6)]);
    }

    [Fact]
    public void An_opening_takes_its_width_out_of_every_course_that_lies_wholly_within_its_height()
    {
        foreach (var face in (string[])["A outside", "A inside"])
        {
            Laid.Inches(face, 1).Should().Equal((0, 24), (60, 240));
            Laid.Inches(face, 3).Should().Equal((0, 24), (60, 240));
            Laid.Inches(face, 4).Should().Equal((0, 24), (60, 80), (120, 240));
            Laid.Inches(face, 6).Should().Equal((0, 24), (60, 80), (120, 240));
            Laid.Inches(face, 7).Should().Equal((0, 24), (60, 170), (182, 240));
            Laid.Inches(face, 8).Should().Equal((0, 170), (182, 240));
            Laid.Inches(face, 9).Should().Equal((0, 170), (182, 240));
        }
    }

    [Fact]
    public void A_course_that_an_opening_only_partly_covers_runs_on_and_is_cut_to_height_there()
    {
        Laid.Notches.Select(notch => (notch.Opening, notch.Course, notch.Where.Start.InInches, notch.Where.End.InInches, notch.Below.InInches, notch.Above.InInches)).Should().BeEquivalentTo(
        [
            ("window", 3, 80m, 120m, 6m, 0m), // 24 to 36 less what is over 30
            ("vent", 3, 140m, 156m, 4m, 4m), // 24 to 28, and 32 to 36
            ("light", 5, 200m, 220m, 2m, 0m), // 48 to 50
            ("light", 6, 200m, 220m, 0m, 2m), // 70 to 72
        ]);
    }

    [Fact]
    public void A_tie_stands_where_both_faces_have_foam_and_not_in_an_opening()
    {
        // 0, 12, .. 240 is 21 places. Course 1: less 36 and 48 within the door; 24 and 60 are at its edges and stay: 19.
        // Course 4: less 84, 96, 108 in the window (80 to 120; 120 stays): 19 - 3 = 16. Course 7: the slot from 170 to 182 takes 180: 18.
        // Courses 2, 3: as 1. Courses 5, 6: as 4. Course 8, 9: 21 - 1 = 20.
        var ties = Takeoff.Of(Laid, "walls").Hardware[0];

        ties.Hardware.Name.Should().Be("panel tie");
        ties.Count.Figure.Should().Be(3 * 19 + 3 * 16 + 18 + 2 * 20);
    }

    [Fact]
    public void The_core_is_counted_without_its_openings()
    {
        // 240 x 102 x 6 = 146,880 in3; openings: (36 x 84 + 40 x 42 + 16 x 4 + 12 x 30 + 20 x 20) x 6 = 5528 x 6 = 33,168 in3.
        var core = Takeoff.Of(Laid, "walls").Concrete.Single();

        core.Net.CubicFeet.Should().BeApproximately((146_880m - 33_168m) / 1728m, 1e-20m);
    }

    [Fact]
    public void The_metric_twin_of_a_wall_with_a_door_and_a_window()
    {
        var wall = Sheets.Laid(
            MetricWall(Leg("A", Mm(6000), Turn.End, new Opening("door", Mm(600), Mm(900), Mm(2100), Length.Zero), new Opening("window", Mm(2000), Mm(1200), Mm(1000), Mm(1000)))) with { Height = Mm(2500) },
            Metric);

        // Courses of 300: 8 whole and one of 100. The window from 1000 to 2000 takes 1200 to 1800 whole: courses 5 and 6.
        wall.Courses.Should().Be(9);
        wall.Runs[0].Courses[8].Height.Should().Be(Mm(100));
        wall.Millimetres("A inside", 7).Should().Equal((0, 600), (1500, 6000));
        wall.Millimetres("A inside", 5).Should().Equal((0, 600), (1500, 2000), (3200, 6000));
        wall.Millimetres("A inside", 8).Should().Equal((0, 6000));
        wall.Notches.Select(notch => (notch.Course, notch.Below.InMillimetres, notch.Above.InMillimetres)).Should().Equal((4, 100, 0), (7, 0, 100));
    }
}
