using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Runs;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>A plan of one course, 48 in from a panel and 22 from an offcut, is broken in one place after the other; the checker has to say each.</summary>
public class RunFaultTests
{
    private static readonly RunRequest Wall = Request([Run(70)], Offcut(1, 40)) with { Settings = YardSettings.Usual };
    private static readonly RunProblem Problem = RunProblem.Create(Wall).Value;
    private static readonly RunPlan Right = RunFiller.Fill(Problem, MatchLimits.None);

    [Fact]
    public void The_plan_that_is_broken_is_right()
    {
        RunChecker.Faults(Problem, Right).Should().BeEmpty();
        Right.Pieces.Select(piece => (piece.Source is null, piece.Cuts.Single().Length, piece.SawCuts)).Should().Equal((false, In(22), 1), (true, In(48), 0));
        Right.Pieces[0].Remainders.Should().ContainSingle();
    }

    [Fact]
    public void Courses_that_are_not_asked_for_or_are_missing_are_found()
    {
        Told(Right with { Courses = [] }).Should().Contain("the courses are not the problem's");
        Told(Right with { Courses = [Right.Courses[0] with { Course = 2 }] }).Should().Contain("the courses are not the problem's");
        Told(Right with { Courses = [Right.Courses[0] with { Run = "south outside" }] }).Should().Contain("the courses are not the problem's");
    }

    [Fact]
    public void A_course_said_to_be_what_it_is_not_is_found()
    {
        Told(Laid(pieces => pieces, reason: "open")).Should().Contain("it is laid and said to be unfilled");
        Told(Laid(_ => [])).Should().Contain("nothing is laid and no reason is given");
        var narrow = RunProblem.Create(Wall with { Runs = [Run(1).Over((0, 70), (80, 84))] }).Value;
        Told(Right, narrow).Should().Contain("a stretch shorter than any piece is said to be covered");
        Told(Laid(pieces => pieces, reason: "narrow"), narrow).Should().NotContain("said to be");
    }

    [Fact]
    public void Pieces_beside_their_stretch_or_from_nothing_are_found()
    {
        Told(Laid(pieces => [.. pieces, pieces[1] with { From = In(80), To = In(128) }])).Should().Contain("pieces lie outside its stretches");
        foreach (var (piece, cut) in new[] { (-1, 0), (2, 0), (0, -1), (0, 1) })
            Told(Laid(pieces => [pieces[0] with { Piece = piece, Cut = cut }, pieces[1]])).Should().Contain("piece 1 is cut from nothing");
    }

    [Fact]
    public void A_cut_that_is_not_what_is_laid_is_found()
    {
        var at = Right.Courses[0].Pieces[0].Piece;
        Told(Cut(at, cut => cut with { Length = cut.Length - In(2) })).Should().Contain("lies from");
        Told(Cut(at, cut => cut with { Cut = "north outside, course 2, piece 1" })).Should().Contain("the cut is named");
        Told(Cut(at, cut => cut with { Stage = "roof" })).Should().Contain("the cut is named");
        Told(Cut(at, cut => cut with { Use = Use.Structural })).Should().Contain("the cut serves another use");
        var other = MaterialReader.Read("foam 3-1/2x12").Value;
        var foreign = Problem.Pieces[0] with { Material = other };
        Told(Piece(0, piece => piece with { Source = foreign })).Should().Contain("is laid instead of");
    }

    // The joint lies on a line, every 2 in, so the end of the 22 in cut from the offcut has to lie on one of the offcut's.
    [Fact]
    public void An_end_off_the_pattern_of_its_piece_is_found()
    {
        var off = RunProblem.Create(Wall with { Pieces = [Offcut(1, 40, 1)] }).Value;
        Told(Piece(0, piece => piece with { Source = off.Pieces[0] }), off).Should().Contain("is off the piece's pattern");
        var unknown = RunProblem.Create(Wall with { Pieces = [Offcut(1, 40, null)] }).Value;
        Told(Piece(0, piece => piece with { Source = unknown.Pieces[0] }), unknown).Should().Contain("is off the piece's pattern");
    }

    // A course that stands has one a foot away, or less.
    [Fact]
    public void A_joint_too_near_one_of_a_course_that_stands_is_found()
    {
        var joint = Joints(Right, 0).Single();
        foreach (var (number, at, found) in new[] { (2, 0m, true), (2, 11.875m, true), (2, -11.875m, true), (2, 12m, false), (2, -12m, false), (3, 0m, false) })
        {
            var standing = RunProblem.Create(Wall with { Runs = [Run(70) with { Standing = [new StandingCourse(number, [In(joint + at)])] }] }).Value;
            Told(Right, standing).Contains("lies too near one of a course that stands", StringComparison.Ordinal).Should().Be(found, $"a joint of course {number} at {at}");
        }
    }

    [Fact]
    public void A_bound_above_its_figure_is_found_in_every_tier()
    {
        var tiers = Right.Tiers;
        static Figure Above(Figure figure) => figure with { Bound = figure.Value + 1 };
        Told(Right with { Tiers = tiers with { Unfilled = [.. tiers.Unfilled.Select(level => level with { Unfilled = Above(level.Unfilled) })] } }).Should().Contain("a bound of the unfilled courses is above their number");
        var two = RunProblem.Create(Wall with { Runs = [Run(70, 2)] }).Value;
        var plan = RunFiller.Fill(two, MatchLimits.None);
        Told(plan with { Tiers = plan.Tiers with { Unfilled = [plan.Tiers.Unfilled[0], plan.Tiers.Unfilled[1] with { Unfilled = Above(plan.Tiers.Unfilled[1].Unfilled) }] } }, two).Should().Contain("a bound of the unfilled courses is above their number", "of one of two is enough");
        Told(Right with { Tiers = tiers with { ValueGivenUp = Above(tiers.ValueGivenUp) } }).Should().Contain("the value given up: the bound");
        Told(Right with { Tiers = tiers with { ExtraTies = Above(tiers.ExtraTies) } }).Should().Contain("the extra ties: the bound");
        Told(Right with { Tiers = tiers with { Joints = Above(tiers.Joints) } }).Should().Contain("the joints: the bound");
        Told(Right with { Tiers = tiers with { SawCuts = Above(tiers.SawCuts) } }).Should().Contain("the saw cuts: the bound");
    }

    [Fact]
    public void Stock_that_may_not_be_taken_is_found()
    {
        Told(Piece(0, piece => piece with { Bought = Panel() })).Should().Contain("a piece is either of the yard or bought");
        var kept = RunProblem.Create(Wall with { Pieces = [Offcut(1, 40) with { State = PieceState.Reserved, ReservedFor = "roof" }] }).Value;
        Told(Piece(0, piece => piece with { Source = kept.Pieces[0] }), kept).Should().Contain("is kept for something else");
        var own = RunProblem.Create(Wall with { Pieces = [Offcut(1, 40) with { State = PieceState.Reserved, ReservedFor = "walls" }] }).Value;
        Told(Piece(0, piece => piece with { Source = own.Pieces[0] }), own).Should().BeEmpty();
        Told(Right, RunProblem.Create(Wall with { Buy = false, Pieces = Problem.Pieces }).Value).Should().Contain("something is bought though nothing may be");
        Told(Right with { Pieces = [Right.Pieces[1], Right.Pieces[0]] }).Should().Contain("a yard piece stands after a bought one");
    }

    [Fact]
    public void Cuts_that_no_saw_could_make_are_found()
    {
        Told(Cut(0, cut => cut with { Start = In(20) })).Should().Contain("a cut leaves its span, or there is none");
        Told(Piece(0, piece => piece with { Cuts = [] })).Should().Contain("a cut leaves its span, or there is none");
        var cut = Right.Pieces[0].Cuts[0];
        Told(Piece(0, piece => piece with { Cuts = [cut, cut with { Start = cut.Start + cut.Length, Length = In(8) }] })).Should().Contain("two cuts lie nearer than the kerf");
        Told(Piece(0, piece => piece with { Cuts = [cut, cut with { Start = cut.Start + cut.Length + In(0.125m), Length = In(8) }] })).Should().NotContain("nearer than the kerf");
        Told(Piece(0, piece => piece with { Cuts = [cut with { Start = cut.Start + cut.Length + In(1), Length = In(8) }, cut] })).Should().Contain("cuts are out of order");
        Told(Piece(0, piece => piece with { Untouched = [new Span(Length.Zero, In(4))] })).Should().Contain("the untouched spans are not those without cuts");
        Told(Piece(0, piece => piece with { Remainders = [] })).Should().Contain("the remainders are not what is left");
    }

    private static string Told(RunPlan plan, RunProblem? problem = null) => string.Join("; ", RunChecker.Faults(problem ?? Problem, plan));

    private static RunPlan Laid(Func<IReadOnlyList<LaidPiece>, IReadOnlyList<LaidPiece>> change, string? reason = null) =>
        Right with { Courses = [Right.Courses[0] with { Pieces = change(Right.Courses[0].Pieces), Reason = reason }] };

    private static RunPlan Piece(int number, Func<PlannedPiece, PlannedPiece> change) =>
        Right with { Pieces = [.. Right.Pieces.Select((piece, p) => p == number ? change(piece) : piece)] };

    private static RunPlan Cut(int number, Func<PlannedCut, PlannedCut> change) => Piece(number, piece => piece with { Cuts = [.. piece.Cuts.Select(change)] });
}
