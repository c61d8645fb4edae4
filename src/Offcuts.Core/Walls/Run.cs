using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Walls;

/// <summary>Where two pieces of a course may meet.</summary>
public enum JointRule
{
    /// <summary>On a pattern line of the run, with both pieces cut on lines of their own: moulded foam.</summary>
    OnPattern,

    /// <summary>On a line of the run, wherever the pieces are cut: form boards that meet at a stake.</summary>
    OnLines,

    /// <summary>Anywhere; a joint off the lines costs a cleat: form boards where the sheet allows cleats.</summary>
    Anywhere,
}

/// <summary>
/// Where the pattern lines of a leg lie along its axis: at <see cref="FirstTie"/> plus or minus whole multiples of
/// <see cref="Interval"/>; the regular ties at <see cref="FirstTie"/> plus or minus whole multiples of <see cref="TieSpacing"/>.
/// Both faces of a leg share one of these, or no tie would go across square.
/// </summary>
/// <param name="FirstTie">The first regular tie on the axis; shorter than <see cref="TieSpacing"/>.</param>
/// <param name="Interval">From line to line; over 0, and <see cref="TieSpacing"/> is a whole multiple of it.</param>
/// <param name="TieSpacing">From regular tie to regular tie.</param>
public sealed record PatternLines(Length FirstTie, Length Interval, Length TieSpacing)
{
    /// <summary>True where a line lies at this point of the axis.</summary>
    public bool IsLine(Length at) => (at.Units - FirstTie.Units) % Interval.Units == 0;

    /// <summary>True where a regular tie lies at this point of the axis.</summary>
    public bool IsTie(Length at) => (at.Units - FirstTie.Units) % TieSpacing.Units == 0;

    /// <summary>How far it is from a place on to the next line; nothing on a line.</summary>
    public Length ToLine(Length at) => Length.FromUnits(Over(FirstTie.Units - at.Units));

    /// <summary>How far it is from a place back to the line before; nothing on a line.</summary>
    public Length FromLine(Length at) => Length.FromUnits(Over(at.Units - FirstTie.Units));

    private long Over(long units) => ((units % Interval.Units) + Interval.Units) % Interval.Units;
}

/// <summary>One row of pieces of a run: what it covers, end to end.</summary>
/// <param name="Number">Counted from 1 at the bottom, the same on both faces of a leg.</param>
/// <param name="Height">How high it is; less than the material's where it is cut to height.</param>
/// <param name="Stretches">What must be covered, from left to right along the leg's axis, apart from each other: openings and tees lie between.</param>
public sealed record Course(int Number, Length Height, IReadOnlyList<Span> Stretches);

/// <summary>A course of a run that stands already and is not to be filled any more.</summary>
/// <param name="Number">Its number.</param>
/// <param name="Joints">Where its pieces meet, on the leg's axis: the courses next to it keep the stagger from these too.</param>
public sealed record StandingCourse(int Number, IReadOnlyList<Length> Joints);

/// <summary>
/// One face of one leg, to be filled course by course with pieces laid end to end. Positions are measured along the leg's axis, which
/// begins at or left of everything that any of its courses covers.
/// </summary>
public sealed record Run
{
    /// <summary>What people call it: <c>north outside</c>. Unique within a wall.</summary>
    public required string Name { get; init; }

    /// <summary>The leg it is a face of: a tie serves both faces of a leg, so extra ties of runs of one leg at one place of one course count once.</summary>
    public required string Leg { get; init; }

    /// <summary>What is laid.</summary>
    public required Material Material { get; init; }

    /// <summary>Where its lines lie; the same for both faces of a leg.</summary>
    public required PatternLines Lines { get; init; }

    /// <summary>Where pieces may meet.</summary>
    public required JointRule Joints { get; init; }

    /// <summary>The least distance between a joint and every joint of the course below and of the course above; zero for none.</summary>
    public required Length Stagger { get; init; }

    /// <summary>No piece of the run is shorter; a shorter stretch cannot be filled.</summary>
    public required Length ShortestPiece { get; init; }

    /// <summary>True where a piece may be turned end for end.</summary>
    public required bool Reversible { get; init; }

    /// <summary>What is to be filled, from the bottom up. Neighbours in the list lie on each other, but where a course that stands lies between.</summary>
    public required IReadOnlyList<Course> Courses { get; init; }

    /// <summary>What of the run stands already; none of these numbers is among <see cref="Courses"/>.</summary>
    public IReadOnlyList<StandingCourse> Standing { get; init; } = [];

    /// <summary>Joints of standing courses right below or above the course of a number.</summary>
    public IEnumerable<Length> StandingJoints(int number) => Standing.Where(course => Math.Abs(course.Number - number) == 1).SelectMany(course => course.Joints);

    /// <summary>True where a course that stands lies between these two.</summary>
    public bool Parted(int below, int above) => Standing.Any(course => below < course.Number && course.Number < above);
}
