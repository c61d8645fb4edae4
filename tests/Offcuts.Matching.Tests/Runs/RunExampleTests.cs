using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Runs;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>Runs small enough to be reckoned by hand; the sum stands beside each.</summary>
public class RunExampleTests
{
    // Common practice, no source: 36 ft = 432 in = 9 x 48 in, and 24 ft = 6 x 48 in.
    [Theory]
    [InlineData(432, 9)]
    [InlineData(288, 6)]
    public void A_building_side_on_the_panel_takes_whole_panels(int inches, int panels)
    {
        var plan = Fill(Request([Run(inches)]));
        plan.Pieces.Should().HaveCount(panels).And.OnlyContain(piece => piece.SawCuts == 0);
        plan.Tiers.Spend.Should().Be(Figure.Best(panels * 1800));
        plan.Tiers.Joints.Value.Should().Be(panels - 1);
    }

    // 96 in: the first course 48 | 48; the second 24 | 48 | 24, its two ends out of one panel. 96 + 96 = 192 = 4 x 48.
    [Fact]
    public void The_second_course_begins_with_half_a_panel_of_which_the_other_half_ends_it()
    {
        var plan = Fill(Request([Run(96, courses: 2, stagger: 24)]));
        plan.Tiers.Spend.Should().Be(Figure.Best(4 * 1800));
        plan.Tiers.SawCuts.Value.Should().Be(1);
        plan.Courses.Select((_, c) => Joints(plan, c)).Should().BeEquivalentTo([[48m], new[] { 24m, 72m }]);
    }

    // A corner 1.5 in off the lines: 8.5 .. 62.5 holds lines at 10 .. 62. The offcut of 23.5 in with its first line at 1.5 in lies there as it is,
    // up to the line at 32; 30.5 in are left, cut from a new panel with one end on the pattern. Kept: 48 - 30.5 = 17.5 in.
    [Fact]
    public void An_offcut_with_an_odd_end_fits_the_corner_it_was_cut_for()
    {
        var plan = Fill(Request([Run(1).Over((8.5m, 62.5m)) with { ShortestPiece = In(20) }], Offcut(1, 23.5m, 1.5m)));
        plan.Courses[0].Pieces.Select(piece => (piece.From, piece.To)).Should().Equal((In(8.5m), In(32)), (In(32), In(62.5m)));
        plan.Pieces[0].SawCuts.Should().Be(0);
        plan.Tiers.Spend.Should().Be(Figure.Best(1800));
        var rest = plan.Pieces[1].Remainders.Should().ContainSingle().Which;
        rest.Length.Should().Be(In(17.5m));
        plan.Pieces[1].FirstLineOf(rest.Start, rest.Length).Should().Be(plan.Pieces[1].Cuts[0].Start.IsZero ? In(1.5m) : In(0));
    }

    // Its first line 1.5 in from the left, 24 in long: the last line 0.5 in before the right end. As a middle piece 24 - 1.5 - 0.5 = 22 in.
    [Fact]
    public void A_piece_with_both_ends_off_the_pattern_is_trimmed_to_it()
    {
        var run = Run(70) with { ShortestPiece = In(22) };
        var request = Request([run], Offcut(1, 24, 0), Offcut(2, 24, 1.5m), Offcut(3, 24, 0)) with { Buy = false };
        var plan = Fill(request);
        plan.Tiers.UnfilledInAll.Should().Be(Figure.Best(0));
        var middle = plan.Pieces[1];
        middle.Cuts.Should().ContainSingle().Which.Should().Match<PlannedCut>(cut => cut.Start == In(1.5m) && cut.Length == In(22));
        middle.SawCuts.Should().Be(2);
        middle.Remainders.Select(rest => rest.Length).Should().Equal(In(1.5m), In(0.5m));
    }

    [Fact]
    public void A_piece_without_a_known_line_lies_only_where_it_is_alone()
    {
        Fill(Request([Run(20)], Offcut(1, 20, null)) with { Buy = false }).Tiers.UnfilledInAll.Value.Should().Be(0);
        Fill(Request([Run(40)], Offcut(1, 20, null), Offcut(2, 20, null)) with { Buy = false }).Tiers.UnfilledInAll.Value.Should().Be(1);
    }

    // The left end of the offcut is on the pattern, its right end 1.5 in off: as the first piece it has to be turned.
    [Theory]
    [InlineData(true, 0)]
    [InlineData(false, 1)]
    public void A_piece_is_turned_only_where_the_panel_may_be(bool reversible, int unfilled)
    {
        var run = Run(1).Over((8.5m, 50)) with { Reversible = reversible };
        var plan = Fill(Request([run], Offcut(1, 21.5m), Offcut(2, 20)) with { Buy = false });
        plan.Tiers.UnfilledInAll.Should().Be(Figure.Best(unfilled));
        if (reversible) plan.Courses[0].Pieces[0].Turned.Should().BeTrue();
    }

    // 22 + 22 = 44 in: the only joint is at 22, which is no tie (12, 24, 36). Both faces have it at the same place.
    [Fact]
    public void One_extra_tie_serves_both_faces()
    {
        var offcuts = Enumerable.Range(1, 4).Select(number => Offcut(number, 22)).ToArray();
        var plan = Fill(Request([Run(44), Run(44, name: "north inside")], offcuts) with { Buy = false });
        plan.ExtraTies.Should().Equal(new ExtraTie("north", 1, In(22), null));
        plan.Tiers.ExtraTies.Should().Be(Figure.Best(1));
        plan.Tiers.Joints.Should().Be(Figure.Best(2));
    }

    // One panel is cut once across and each of the two pieces once along: 3 saw cuts; the remainder keeps the full height.
    [Fact]
    public void A_course_cut_to_height_takes_one_more_saw_cut_a_piece()
    {
        var run = Run(20, courses: 2, stagger: 0);
        run = run with { Courses = [.. run.Courses.Select(course => course with { Height = In(7) })] };
        var plan = Fill(Request([run]));
        plan.Pieces.Should().ContainSingle();
        plan.Pieces[0].SawCuts.Should().Be(4);
        plan.Tiers.SawCuts.Should().Be(Figure.Best(4));
    }

    [Fact]
    public void The_lower_course_is_filled_first()
    {
        var plan = Fill(Request([Run(40, courses: 2, stagger: 0)], Offcut(1, 40)) with { Buy = false });
        plan.Courses.Select(course => course.Unfilled).Should().Equal(false, true);
        plan.Courses[1].Reason.Should().Be("what is left of foam 2-1/2x12 does not reach, and no more can be bought");
        plan.Tiers.Unfilled.Select(level => level.Unfilled).Should().Equal(Figure.Best(0), Figure.Best(1));
    }

    [Fact]
    public void A_stretch_shorter_than_any_piece_is_named_and_the_rest_of_the_course_laid()
    {
        var plan = Fill(Request([Run(1).Over((0, 6), (30, 78))]));
        plan.Courses[0].Reason.Should().Be("a stretch of 6\" is shorter than the shortest piece, 8\"");
        plan.Courses[0].Pieces.Should().ContainSingle();
        plan.Tiers.UnfilledInAll.Should().Be(Figure.Best(1));
    }

    // 4 ft boards and a stretch of 90 in with stakes every 24 in: 48 | 42, joined on the stake at 48.
    [Fact]
    public void A_form_board_is_joined_on_a_stake()
    {
        var plan = Fill(Boards(90, JointRule.OnLines));
        Joints(plan, 0).Should().Equal(48);
        plan.Tiers.ExtraTies.Value.Should().Be(0);
    }

    // Boards of 50 and 40 in cover 90 in only with a joint at 50 or 40, where no stake stands (24, 48, 72): one cleat.
    [Fact]
    public void Where_cleats_are_allowed_a_board_is_joined_anywhere_with_one()
    {
        var boards = new[] { 50, 40 }.Select((length, n) => new Piece { Code = Scene.CodeOf(n), Material = DrawnRuns.Board, Length = In(length) }).ToArray();
        var plan = Fill(Boards(90, JointRule.Anywhere) with { Pieces = boards, Buy = false });
        plan.Tiers.UnfilledInAll.Value.Should().Be(0);
        plan.ExtraTies.Should().ContainSingle().Which.CleatOn.Should().Be("footing");
        Fill(Boards(90, JointRule.OnLines) with { Pieces = boards, Buy = false }).Tiers.UnfilledInAll.Value.Should().Be(1);
    }

    private static RunRequest Boards(decimal length, JointRule rule) => Request([Run(length, name: "footing") with
    {
        Material = DrawnRuns.Board,
        Lines = new PatternLines(Length.Zero, In(24), In(24)),
        Joints = rule,
        Courses = [new Course(1, In(9.25m), [new Span(Length.Zero, In(length))])],
    }]) with
    {
        Prices = new PriceBook([new StorePrice { Material = DrawnRuns.Board, Length = In(48), Price = new Money(700) }]),
    };
}
