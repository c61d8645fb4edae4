using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Runs;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>A right plan is broken in one place; the checker has to say where.</summary>
public class RunCheckerTests
{
    private static readonly RunProblem Problem = RunProblem.Create(Request(
        [Run(1, courses: 2).Over((8.5m, 80)), Run(100, courses: 2, name: "north inside")], Offcut(1, 23.5m, 1.5m), Offcut(2, 30), Offcut(3, 40, 1))).Value;

    private static readonly RunPlan Right = RunFiller.Fill(Problem, MatchLimits.None);

    [Fact]
    public void A_right_plan_has_no_fault() => RunChecker.Faults(Problem, Right).Should().BeEmpty();

    [Fact]
    public void A_gap_between_pieces_is_found() =>
        Told(Course(0, pieces => [pieces[0] with { To = pieces[0].To - In(1) }, .. pieces.Skip(1)])).Should().Contain("a gap or an overlap");

    [Fact]
    public void A_stretch_not_covered_to_its_end_is_found() =>
        Told(Course(0, pieces => [.. pieces.SkipLast(1)])).Should().Contain("is covered up to");

    [Fact]
    public void Laying_a_cut_twice_is_found() =>
        Told(Course(0, pieces => [.. pieces.Select(piece => piece with { Piece = pieces[0].Piece, Cut = pieces[0].Cut })])).Should().Contain("is laid twice");

    [Fact]
    public void A_cut_that_is_laid_nowhere_is_found() =>
        Told(Course(0, _ => [], "left")).Should().Contain("is laid nowhere");

    [Fact]
    public void A_joint_off_the_lines_is_found() => Told(Course(1, pieces =>
    [
        pieces[0] with { To = pieces[0].To + In(0.5m) }, pieces[1] with { From = pieces[1].From + In(0.5m) }, .. pieces.Skip(2),
    ])).Should().Contain("lies on no line");

    [Fact]
    public void A_cut_off_the_pattern_of_its_piece_is_found() =>
        Told(Right with { Pieces = [.. Right.Pieces.Select(piece => piece.Source is null ? piece : piece with { Cuts = [.. piece.Cuts.Select(Moved)] })] })
            .Should().Contain("off the piece's pattern");

    [Fact]
    public void Joints_nearer_than_the_stagger_are_found()
    {
        var strict = RunProblem.Create(Request([.. Problem.Runs.Select(run => run with { Stagger = In(46) })], [.. Problem.Pieces])).Value;
        string.Join("; ", RunChecker.Faults(strict, Right)).Should().Contain("lies too near one below");
    }

    [Fact]
    public void A_piece_shorter_than_allowed_is_found()
    {
        var strict = RunProblem.Create(Request([.. Problem.Runs.Select(run => run with { ShortestPiece = In(45) })], [.. Problem.Pieces])).Value;
        string.Join("; ", RunChecker.Faults(strict, Right)).Should().Contain("is shorter than 45\"");
    }

    [Fact]
    public void A_piece_turned_that_may_not_be_is_found()
    {
        var strict = RunProblem.Create(Request([.. Problem.Runs.Select(run => run with { Reversible = false })], [.. Problem.Pieces])).Value;
        var turned = Course(0, pieces => [.. pieces.Select(piece => piece with { Turned = true })]);
        string.Join("; ", RunChecker.Faults(strict, turned)).Should().Contain("a piece that may not be turned is");
    }

    [Fact]
    public void A_forgotten_tie_is_found() =>
        Told(Right with { ExtraTies = [.. Right.ExtraTies.Append(new ExtraTie("north", 1, In(2), null))] }).Should().Contain("the extra ties");

    [Fact]
    public void A_piece_that_is_not_on_hand_is_found() =>
        Told(Piece(0, piece => piece with { Source = Offcut(9, 23.5m, 1.5m) })).Should().Contain("is not on hand");

    [Fact]
    public void A_piece_used_twice_is_found() =>
        Told(Right with { Pieces = [Right.Pieces[0], .. Right.Pieces] }).Should().Contain("is used twice or out of the yard's order");

    [Fact]
    public void A_wrong_remainder_is_found() => Told(Right with
    {
        Pieces = [.. Right.Pieces.Select(piece => piece with { Remainders = [.. piece.Remainders.Select(rest => rest with { Kept = !rest.Kept })] })],
    }).Should().Contain("the remainders are not what is left");

    [Fact]
    public void Lines_at_another_spacing_are_found() =>
        Told(Piece(0, piece => piece with { LineSpacing = In(3) })).Should().Contain("its lines are not those of its runs");

    [Fact]
    public void Miscounted_saw_cuts_are_found() =>
        Told(Piece(0, piece => piece with { SawCuts = 7 })).Should().Contain("its saw cuts are miscounted");

    [Fact]
    public void Buying_more_than_there_is_is_found()
    {
        var few = RunProblem.Create(Request(Problem.Runs, [.. Problem.Pieces]) with { Prices = new PriceBook([Panel(limit: 1)]) }).Value;
        string.Join("; ", RunChecker.Faults(few, Right)).Should().Contain("is not in the price book");
        string.Join("; ", RunChecker.Faults(few, Right with { Pieces = [.. Right.Pieces.Select(piece => piece.Bought is null ? piece : piece with { Bought = Panel(limit: 1) })] }))
            .Should().Contain("is bought than can be had");
    }

    [Fact]
    public void A_piece_of_poor_foam_is_found()
    {
        var poor = Problem.Pieces.Select(piece => piece with { Condition = Condition.Poor }).ToArray();
        var worse = RunProblem.Create(Request(Problem.Runs, poor)).Value;
        var plan = Right with { Pieces = [.. Right.Pieces.Select(piece => piece.Source is null ? piece : piece with { Source = worse.Pieces.First(one => one.Code == piece.Source.Code) })] };
        string.Join("; ", RunChecker.Faults(worse, plan)).Should().Contain("is not allowed for its use");
    }

    [Fact]
    public void Every_wrong_tier_is_found()
    {
        var tiers = Right.Tiers;
        static Figure More(Figure figure) => Figure.Best(figure.Value + 1);
        Told(Right with { Tiers = tiers with { Unfilled = [.. tiers.Unfilled.Select(level => level with { Unfilled = More(level.Unfilled) })] } }).Should().Contain("unfilled courses are miscounted");
        Told(Right with { Tiers = tiers with { Spend = More(tiers.Spend) } }).Should().Contain("spend is said");
        Told(Right with { Tiers = tiers with { ValueGivenUp = More(tiers.ValueGivenUp) } }).Should().Contain("the value given up is said");
        Told(Right with { Tiers = tiers with { ExtraTies = More(tiers.ExtraTies) } }).Should().Contain("the extra ties is said");
        Told(Right with { Tiers = tiers with { Joints = More(tiers.Joints) } }).Should().Contain("the joints is said");
        Told(Right with { Tiers = tiers with { SawCuts = More(tiers.SawCuts) } }).Should().Contain("the saw cuts is said");
        Told(Right with { Tiers = tiers with { Spend = tiers.Spend with { Bound = tiers.Spend.Value + 1 } } }).Should().Contain("is above the value");
    }

    private static string Told(RunPlan plan) => string.Join("; ", RunChecker.Faults(Problem, plan));

    private static RunPlan Course(int number, Func<IReadOnlyList<LaidPiece>, IReadOnlyList<LaidPiece>> change, string? reason = null) => Right with
    {
        Courses = [.. Right.Courses.Select((course, c) => c == number ? course with { Pieces = change(course.Pieces), Reason = reason } : course)],
    };

    private static RunPlan Piece(int number, Func<PlannedPiece, PlannedPiece> change) =>
        Right with { Pieces = [.. Right.Pieces.Select((piece, p) => p == number ? change(piece) : piece)] };

    private static PlannedCut Moved(PlannedCut cut) => cut with { Start = cut.Start + In(0.25m) };
}
