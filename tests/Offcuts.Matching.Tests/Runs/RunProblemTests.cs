using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Runs;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>What is refused before anything is filled, a sentence each, and what may be laid.</summary>
public class RunProblemTests
{
    private static readonly Material Board = DrawnRuns.Board;

    [Fact]
    public void A_wall_with_nothing_wrong_is_taken() => Faults(Request([Run(60, 2)], Offcut(1, 20))).Should().BeEmpty();

    [Fact]
    public void A_stage_and_names_of_runs_are_needed_and_no_name_stands_twice()
    {
        Faults(Request([Run(60)]) with { Stage = "" }).Should().Equal("the runs of a wall belong to a stage");
        Faults(Request([Run(60, name: "")])).Should().Equal("a run has a name");
        Faults(Request([Run(60, name: "a"), Run(60, name: "b"), Run(60, name: "a")])).Should().Equal("two runs are named a");
    }

    [Fact]
    public void Only_what_is_laid_end_to_end_makes_a_run_and_only_foam_has_lines()
    {
        Faults(Request([Run(60) with { Material = MaterialReader.Read("osb 7/16").Value, Joints = JointRule.OnLines }])).Should().ContainSingle().Which.Should().EndWith("is not laid end to end");
        Faults(Request([Run(60) with { Material = Board }])).Should().ContainSingle().Which.Should().Contain("only foam has pattern lines");
        Faults(Request([Run(60) with { Material = Board, Joints = JointRule.Anywhere }])).Should().BeEmpty();
        Faults(Request([Run(60) with { Material = Board, Joints = JointRule.Anywhere, ShortestPiece = Length.Zero }])).Should().ContainSingle().Which.Should().Contain("a shortest piece is needed");
    }

    [Theory]
    [InlineData(0, 0, 12, "do not fall on lines")]
    [InlineData(0, 2, 0, "do not fall on lines")]
    [InlineData(0, 5, 12, "do not fall on lines")]
    [InlineData(12, 2, 12, "the first tie lies within one spacing")]
    [InlineData(11, 2, 12, null)]
    [InlineData(0, 12, 12, null)]
    public void Ties_fall_on_lines_and_the_first_lies_within_one_spacing(int first, int interval, int spacing, string? fault)
    {
        var told = Faults(Request([Run(60) with { Lines = new PatternLines(In(first), In(interval), In(spacing)) }]));

        if (fault is null) told.Should().BeEmpty();
        else told.Should().ContainSingle().Which.Should().Contain(fault);
    }

    [Fact]
    public void Courses_go_up_one_by_one_beside_those_that_stand()
    {
        static Run Of(params int[] numbers) => Run(60) with { Courses = [.. numbers.Select(number => new Course(number, In(12), [new Span(Length.Zero, In(60))]))] };

        Faults(Request([Of(1, 2, 4)])).Should().BeEmpty();
        Faults(Request([Of(1, 3, 2, 1)])).Should().Equal("north outside: its courses do not go up one by one");
        Faults(Request([Of(1, 1)])).Should().Equal("north outside: its courses do not go up one by one");
        Faults(Request([Of(1, 2) with { Standing = [new StandingCourse(3, [])] }])).Should().BeEmpty();
        Faults(Request([Of(1, 2) with { Standing = [new StandingCourse(3, []), new StandingCourse(2, [])] }])).Should().Equal("north outside, course 2: it stands already and can't be filled too");
    }

    [Fact]
    public void A_course_is_as_high_as_its_panel_at_most()
    {
        static Run High(decimal inches) => Run(60) with { Courses = [new Course(1, In(inches), [new Span(Length.Zero, In(60))])] };

        Faults(Request([High(12)])).Should().BeEmpty();
        Faults(Request([High(12.25m)])).Should().ContainSingle().Which.Should().EndWith("and the panel is 12\"");
        Faults(Request([High(0)])).Should().Equal("north outside, course 1: a course has a height");
    }

    [Fact]
    public void Stretches_lie_apart_from_left_to_right_and_are_not_endless()
    {
        Faults(Request([Run(1).Over((0, 20), (21, 40), (50, 60))])).Should().BeEmpty();
        Faults(Request([Run(1).Over((0, 20), (20, 40), (40, 60))])).Should().Equal("north outside, course 1: its stretches touch or are out of order");
        Faults(Request([Run(1).Over((30, 50), (0, 20))])).Should().Equal("north outside, course 1: its stretches touch or are out of order");
        Faults(Request([Run(2m * RunProblem.MostLines)])).Should().BeEmpty();
        Faults(Request([Run(2m * RunProblem.MostLines + 2)])).Should().Equal("north outside: more than 20000 lines in one run; part it");
    }

    [Fact]
    public void Faces_of_a_leg_share_their_lines_and_a_material_has_them_at_one_interval()
    {
        var (run, shifted) = (Run(60), new PatternLines(In(1), In(2), In(12)));
        var other = new PatternLines(Length.Zero, In(4), In(12));

        Faults(Request([run, run with { Name = "north inside", Lines = shifted }])).Should().Equal("north inside and north outside are faces of north but do not share their lines");
        Faults(Request([run, run with { Name = "east outside", Leg = "east", Lines = shifted }])).Should().BeEmpty();
        Faults(Request([run, run with { Name = "east outside", Leg = "east", Lines = other }])).Should().ContainSingle().Which.Should().EndWith("but have lines at different intervals");
        Faults(Request([run, run with { Name = "east outside", Leg = "east", Lines = other, Material = MaterialReader.Read("foam 3-1/2x12").Value }])).Should().BeEmpty();
    }

    [Fact]
    public void Two_pieces_of_one_code_and_prices_without_sense_are_refused()
    {
        Faults(Request([Run(60)], Offcut(1, 20), Offcut(1, 24))).Should().ContainSingle();
        Faults(Request([Run(60)], Offcut(1, 20), Offcut(1, 24) with { State = PieceState.Used })).Should().BeEmpty("one of them is gone");
        Faults(Request([Run(60)]) with { Prices = new PriceBook([Panel() with { Length = Length.Zero }]) }).Should().ContainSingle();
        Faults(Request([Run(60)]) with { Prices = new PriceBook([Panel(-1)]) }).Should().ContainSingle();
        Faults(Request([Run(60)]) with { Prices = new PriceBook([Panel(0)]) }).Should().BeEmpty("something may be had for nothing");
    }

    [Fact]
    public void A_piece_is_laid_that_is_on_hand_and_kept_for_nothing_else()
    {
        var problem = RunProblem.Create(Request([Run(60)])).Value;

        problem.Allows(Offcut(1, 20)).Should().BeTrue();
        problem.Allows(Offcut(1, 20) with { State = PieceState.Reserved, ReservedFor = "walls" }).Should().BeTrue();
        problem.Allows(Offcut(1, 20) with { State = PieceState.Reserved, ReservedFor = "roof" }).Should().BeFalse();
        problem.Allows(Offcut(1, 20) with { State = PieceState.Used }).Should().BeFalse();
        problem.Allows(Offcut(1, 20) with { Condition = Condition.Poor }).Should().BeFalse();
    }

    // Joints that may lie anywhere in one run: what is known of all places says nothing of those.
    [Fact]
    public void A_part_is_open_as_soon_as_joints_of_one_run_may_lie_anywhere()
    {
        RunPart Part(params JointRule[] rules) => RunPart.Of(RunProblem.Create(Request([.. rules.Select((rule, n) => Run(60, name: $"{n}") with { Joints = rule })])).Value, Foam);

        Part(JointRule.OnPattern, JointRule.OnLines).Open.Should().BeFalse();
        Part(JointRule.OnPattern, JointRule.Anywhere).Open.Should().BeTrue();
        Part(JointRule.Anywhere).Open.Should().BeTrue();
    }

    private static string[] Faults(RunRequest request) => [.. RunProblem.Create(request).Faults.Select(fault => fault.Sentence)];
}
