using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Walls;

/// <summary>How a wall of the yard is to be filled, as it is kept.</summary>
/// <param name="Wall">Name of the wall.</param>
/// <param name="PlanId">Number of the kept plan that its pieces are cut under.</param>
/// <param name="Plan">What lies where.</param>
public sealed record KeptWallPlan(string Wall, int PlanId, RunPlan Plan)
{
    /// <summary>
    /// Courses of which every piece was made and that wait to be stacked: nothing is to be cut for them any more. A stretch that no piece may cover
    /// keeps none from that: what can be laid of its course is.
    /// </summary>
    /// <param name="steps">The plan that its pieces are cut under.</param>
    public IEnumerable<StackedCourse> Cut(KeptPlan steps) =>
        from course in Plan.Courses
        where course.Pieces.Count > 0 && course.Pieces.All(steps.IsMade)
        select StackedCourse.Of(Wall, course, Plan) with { OnlyCut = true };

    /// <summary>
    /// The filling as far as it still holds: what did not come out as planned, was given up, or was to be cut of what is not there any more lies nowhere, and
    /// its course is open for that reason and counted so. Its other figures stay those of the day it was found.
    /// </summary>
    /// <param name="steps">The plan that its pieces are cut under.</param>
    /// <param name="there">The yard's piece of a code, none where it has no such one; none at all where all that waits is known to be there.</param>
    /// <param name="settled">Courses that stand, or are cut and wait to be stacked: whatever they were planned of, they are not open.</param>
    public RunPlan StillHolds(KeptPlan steps, Func<Code, Piece?>? there = null, IEnumerable<StackedCourse>? settled = null)
    {
        var done = (settled ?? []).Select(course => (course.Run, course.Course)).ToHashSet();
        var courses = Plan.Courses.Select(Now).ToArray();
        return Plan with
        {
            Courses = courses,
            Tiers = there is null ? Plan.Tiers : Plan.Tiers with
            {
                Unfilled = [.. Plan.Tiers.Unfilled.Select(level => level with { Unfilled = level.Unfilled with { Value = Math.Max(level.Unfilled.Value, courses.Count(course => course.Course == level.Course && course.Unfilled && !done.Contains((course.Run, course.Course)))) } })],
            },
        };

        LaidCourse Now(LaidCourse course)
        {
            string? Why(LaidPiece one) => there is null || done.Contains((course.Run, course.Course)) ? steps.WhyNotMade(one) : steps.WhyNot(one, there);
            var lacking = course.Pieces.Select(one => (one, Why: Why(one))).Where(each => each.Why is not null).ToArray();
            return lacking.Length == 0 ? course : course with { Pieces = [.. course.Pieces.Except(lacking.Select(each => each.one))], Reason = lacking[0].Why };
        }
    }
}

/// <summary>A course of a wall that stands, or of which all is cut and waits to be stacked: nothing is planned for it any more.</summary>
/// <param name="Wall">Name of the wall.</param>
/// <param name="Run">Name of the run.</param>
/// <param name="Course">Number of the course.</param>
/// <param name="Joints">Where its pieces meet, on the leg's axis, from left to right.</param>
public sealed record StackedCourse(string Wall, string Run, int Course, IReadOnlyList<Length> Joints)
{
    /// <summary>What it is laid from, from left to right; empty where that is not known.</summary>
    public IReadOnlyList<StoodPiece> Pieces { get; init; } = [];

    /// <summary>True while it is cut and waits to be stacked: its pieces are there, and what is set as it is stacked, like ties, is still to be had.</summary>
    public bool OnlyCut { get; init; }

    /// <summary>A laid course as one that stands: its joints are where two pieces touch.</summary>
    /// <param name="wall">Name of the wall.</param>
    /// <param name="course">The course.</param>
    /// <param name="plan">The filling that it is of.</param>
    public static StackedCourse Of(string wall, LaidCourse course, RunPlan plan) => new(
        wall,
        course.Run,
        course.Course,
        [.. course.Joints])
    {
        Pieces = [.. course.Pieces.Select(one => new StoodPiece(one.From, one.To, plan.Pieces[one.Piece].Source?.Code ?? default, one.Turned))],
    };

    /// <summary>True where this is that course of that wall, in whatever case its name is written.</summary>
    public bool IsSame(StackedCourse other) => string.Equals(Wall, other.Wall, StringComparison.OrdinalIgnoreCase) && (Run, Course) == (other.Run, other.Course);
}

/// <summary>One piece of a course that stands.</summary>
/// <param name="From">Its left end on the leg's axis.</param>
/// <param name="To">Its right end.</param>
/// <param name="Code">The code of the yard's piece it was cut from; none where it was bought.</param>
/// <param name="Turned">True where it lies turned end for end.</param>
public sealed record StoodPiece(Length From, Length To, Code Code, bool Turned);
