using Offcuts.Core.Measures;
using Offcuts.Core.Plans;

namespace Offcuts.Core.Walls;

/// <summary>One piece where it lies in a course.</summary>
/// <param name="From">Its left end on the leg's axis.</param>
/// <param name="To">Its right end.</param>
/// <param name="Piece">Which of the plan's pieces it is cut from, from 0.</param>
/// <param name="Cut">Which of that piece's cuts, from 0.</param>
/// <param name="Turned">True where it lies turned end for end: what points to the marked end lies on the right.</param>
public sealed record LaidPiece(Length From, Length To, int Piece, int Cut, bool Turned);

/// <summary>A course as it is laid.</summary>
/// <param name="Run">The run.</param>
/// <param name="Course">Its number.</param>
/// <param name="Pieces">From left to right; empty where the course stays unfilled.</param>
/// <param name="Reason">Why something of it stays unfilled, in a sentence without a full stop; none where it is whole.</param>
public sealed record LaidCourse(string Run, int Course, IReadOnlyList<LaidPiece> Pieces, string? Reason)
{
    /// <summary>True where some stretch of it stays uncovered.</summary>
    public bool Unfilled => Reason is not null;

    /// <summary>Where two of its pieces touch, on the leg's axis, from left to right.</summary>
    public IEnumerable<Length> Joints => Pieces.Zip(Pieces.Skip(1)).Where(pair => pair.First.To == pair.Second.From).Select(pair => pair.First.To);
}

/// <summary>A tie that is needed because a joint lies beside the regular ones, or a cleat where the joint lies on no line at all.</summary>
/// <param name="Leg">The leg it holds together.</param>
/// <param name="Course">Number of the course.</param>
/// <param name="At">Where on the leg's axis.</param>
/// <param name="CleatOn">For a cleat the run whose boards it joins; none for a tie, which serves both faces.</param>
public sealed record ExtraTie(string Leg, int Course, Length At, string? CleatOn);

/// <summary>
/// How many courses of one number stay unfilled, all runs together. A stretch that is too short for any piece counts for its course even
/// where the rest is laid, and a course with such a stretch of which nothing is laid counts twice: what can be laid is.
/// </summary>
/// <param name="Course">The number.</param>
/// <param name="Unfilled">How many, and how few are possible.</param>
public sealed record CourseFigure(int Course, Figure Unfilled);

/// <summary>
/// The tiers of a run plan, each decided before the next is looked at. A bound holds for every plan that has this plan's figures in
/// all tiers before it.
/// </summary>
/// <param name="Unfilled">Courses of each number that stay unfilled, from the bottom up.</param>
/// <param name="Spend">Cents for new pieces.</param>
/// <param name="ValueGivenUp">Cents of yard value used up, less that of the kept remainders.</param>
/// <param name="ExtraTies">Ties beside the regular ones, and cleats.</param>
/// <param name="Joints">Where two pieces meet.</param>
/// <param name="SawCuts">How many times the saw goes through, across and to height.</param>
public sealed record RunTiers(
    IReadOnlyList<CourseFigure> Unfilled, Figure Spend, Figure ValueGivenUp, Figure ExtraTies, Figure Joints, Figure SawCuts)
{
    /// <summary>All unfilled courses together.</summary>
    public Figure UnfilledInAll => new(Unfilled.Sum(level => level.Unfilled.Value), Unfilled.Sum(level => level.Unfilled.Bound));

    /// <summary>True where each tier is proven.</summary>
    public bool Proven => Unfilled.All(level => level.Unfilled.Proven)
        && Spend.Proven && ValueGivenUp.Proven && ExtraTies.Proven && Joints.Proven && SawCuts.Proven;
}

/// <summary>How the runs of a wall are filled. Immutable; checked against its problem before anyone sees it.</summary>
public sealed record RunPlan
{
    /// <summary>The stage it serves.</summary>
    public required string Stage { get; init; }

    /// <summary>What it reaches, tier by tier.</summary>
    public required RunTiers Tiers { get; init; }

    /// <summary>Every course of every run, run by run in the problem's order and from the bottom up.</summary>
    public required IReadOnlyList<LaidCourse> Courses { get; init; }

    /// <summary>Ties and cleats beside the regular ones, by leg, course and place.</summary>
    public required IReadOnlyList<ExtraTie> ExtraTies { get; init; }

    /// <summary>
    /// What is cut from what: pieces of the yard in the yard's order, then bought ones by material and length. Each cut is named after
    /// run, course and position. See <see cref="PlannedPiece.FirstLineOf"/> for the first line of a remainder.
    /// </summary>
    public required IReadOnlyList<PlannedPiece> Pieces { get; init; }

    /// <summary>What it saves against filling the same courses from new pieces alone.</summary>
    public required PlanSavings Savings { get; init; }

    /// <summary>Materials without a price: their value counts as 0 and they can't be bought.</summary>
    public required IReadOnlyList<string> Unpriced { get; init; }

    /// <summary>
    /// How many of its courses its figures are of, where it was filled again around courses that were begun; none where they are of all of them.
    /// </summary>
    public int? Anew { get; init; }

    /// <summary>False where it was made from the yard alone, because somebody wished that nothing is bought.</summary>
    public bool Buys { get; init; } = true;

    /// <summary>
    /// The same as an ordinary plan, which the yard can keep, print and carry out piece by piece. Its saw cuts are those across; what is cut to
    /// height is counted with them, as in <see cref="Pieces"/>.
    /// </summary>
    public Plan AsPlan()
    {
        var unfilled = Courses.Where(course => course.Unfilled)
            .Select(course => new Unfilled(Stage, $"{course.Run}, course {course.Course}", 1, course.Reason!)).ToArray();
        var inAll = Tiers.UnfilledInAll;
        return new Plan
        {
            Stages = [Stage],
            Tiers = new Tiers(inAll, [inAll], Tiers.Spend, Tiers.ValueGivenUp, (int)Tiers.SawCuts.Value),
            Pieces = Pieces,
            Hardware = [],
            Unfilled = unfilled,
            Savings = Savings,
            Unpriced = Unpriced,
            Buys = Buys,
        };
    }
}
