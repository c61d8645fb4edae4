using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>A course of a kept filling of which some pieces are cut and others not.</summary>
/// <param name="Run">Its run.</param>
/// <param name="Course">The course itself.</param>
/// <param name="Laid">How the kept filling lays it.</param>
/// <param name="Cut">Which of its pieces are cut.</param>
/// <param name="Waits">Which wait to be cut and still can be, as planned.</param>
/// <param name="Gaps">Where it lacks a piece: what was to lie there did not come out as planned, was given up, or is gone.</param>
internal sealed record BegunCourse(Run Run, Course Course, LaidCourse Laid, IReadOnlyList<LaidPiece> Cut, IReadOnlyList<LaidPiece> Waits, IReadOnlyList<BegunGap> Gaps)
{
    /// <summary>What keeps its place when the wall is filled again.</summary>
    public IEnumerable<LaidPiece> Stays => Cut.Concat(Waits);
}

/// <summary>A stretch of a begun course in which nothing lies any more.</summary>
/// <param name="Where">From end to end on the leg's axis.</param>
/// <param name="Lacking">What was to lie there, from left to right.</param>
internal sealed record BegunGap(Span Where, IReadOnlyList<LaidPiece> Lacking);

/// <summary>
/// What of a kept filling is begun: courses of which pieces are cut, and that are not whole yet. A wall that is filled again keeps them where they
/// are meant to lie, since they are cut for that place and for no other; what else such a course waits for stays too, as far as it is still there.
/// </summary>
/// <param name="Kept">The kept filling.</param>
/// <param name="Steps">How far its pieces have come.</param>
/// <param name="Courses">Its begun courses, in the filling's order.</param>
internal sealed record BegunFilling(KeptWallPlan Kept, KeptPlan Steps, IReadOnlyList<BegunCourse> Courses)
{
    /// <summary>Looks it up; none where no course is begun.</summary>
    /// <param name="yard">The yard.</param>
    /// <param name="runs">All runs of the wall.</param>
    /// <param name="kept">The filling that is kept of it.</param>
    /// <param name="steps">How far its pieces have come.</param>
    /// <param name="settled">Courses that stand, or are cut and wait to be stacked.</param>
    public static BegunFilling? Of(YardFile yard, IEnumerable<Run> runs, KeptWallPlan kept, KeptPlan steps, IReadOnlyList<StackedCourse> settled)
    {
        var named = runs.ToDictionary(run => run.Name);
        var there = settled.Select(course => (course.Run, course.Course)).ToHashSet();
        BegunCourse[] begun =
        [
            .. from laid in kept.Plan.Courses
               where !there.Contains((laid.Run, laid.Course)) && laid.Pieces.Any(steps.IsMade)
               where named.ContainsKey(laid.Run)
               select Of(named[laid.Run], laid, steps, yard.Piece),
        ];
        return begun.Length == 0 ? null : new BegunFilling(kept, steps, begun);
    }

    private static BegunCourse Of(Run run, LaidCourse laid, KeptPlan steps, Func<Code, Piece?> there)
    {
        var gaps = new List<List<LaidPiece>>();
        foreach (var one in laid.Pieces.Where(one => steps.WhyNot(one, there) is not null))
        {
            if (gaps.Count > 0 && gaps[^1][^1].To == one.From) gaps[^1].Add(one);
            else gaps.Add([one]);
        }

        return new BegunCourse(
            run,
            run.Courses.Single(course => course.Number == laid.Course),
            laid,
            [.. laid.Pieces.Where(steps.IsMade)],
            [.. laid.Pieces.Where(one => !steps.IsMade(one) && steps.WhyNot(one, there) is null)],
            [.. gaps.Select(gap => new BegunGap(new Span(gap[0].From, gap[^1].To), gap))]);
    }

    /// <summary>Courses that nothing is laid anew for but in their gaps, as those that stand, so that the others keep the stagger from them.</summary>
    public IEnumerable<StackedCourse> Standing => Courses.Select(course => StackedCourse.Of(Kept.Wall, course.Laid, Kept.Plan));

    /// <summary>Pieces of the yard that wait to be cut for these courses.</summary>
    public IReadOnlySet<Code> Held => Courses.SelectMany(course => course.Waits).Select(one => Kept.Plan.Pieces[one.Piece].Source?.Code).OfType<Code>().ToHashSet();

    /// <summary>True where the filling and how far it has come are still these.</summary>
    public bool IsStill(KeptWallPlan? kept, KeptPlan? steps) =>
        kept?.PlanId == Kept.PlanId && steps is not null && steps.Steps.Select(step => step.State).SequenceEqual(Steps.Steps.Select(step => step.State)) && steps.Plan.Pieces.Count == Steps.Plan.Pieces.Count;
}
