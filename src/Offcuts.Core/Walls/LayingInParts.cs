using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Walls;

/// <summary>A planned piece of a laying that is cut at several times: some of its cuts, and the others of what was put aside.</summary>
/// <param name="Piece">Which of the laying's pieces, from 0.</param>
/// <param name="Made">The same with the cuts that are made of it at once.</param>
/// <param name="Cuts">Which of its planned cuts those are, in order.</param>
/// <param name="Later">Pieces that were put aside, with their cuts, and which of its planned cuts those are, in order.</param>
public sealed record PartedPiece(int Piece, PlannedPiece Made, IReadOnlyList<int> Cuts, IReadOnlyList<(PlannedPiece Piece, IReadOnlyList<int> Cuts)> Later);

/// <summary>Changes a laying that is being carried out without laying anything anew: what is covered by which cut stays as it was found.</summary>
public static class LayingInParts
{
    /// <summary>
    /// The same laying with pieces cut at several times. Pieces that were put aside stand behind all others, so that the numbers of those stay
    /// as they are; so do the figures, which tell what was found.
    /// </summary>
    public static RunPlan Parted(this RunPlan plan, IReadOnlyList<PartedPiece> parted)
    {
        var pieces = plan.Pieces.ToList();
        var now = new Dictionary<(int Piece, int Cut), (int Piece, int Cut)>();
        foreach (var one in parted)
        {
            pieces[one.Piece] = one.Made;
            for (var c = 0; c < one.Cuts.Count; c++) now[(one.Piece, one.Cuts[c])] = (one.Piece, c);
            foreach (var (aside, cuts) in one.Later)
            {
                for (var c = 0; c < cuts.Count; c++) now[(one.Piece, cuts[c])] = (pieces.Count, c);
                pieces.Add(aside);
            }
        }

        LaidPiece Now(LaidPiece laid) => now.TryGetValue((laid.Piece, laid.Cut), out var at) ? laid with { Piece = at.Piece, Cut = at.Cut } : laid;
        return plan with { Pieces = pieces, Courses = [.. plan.Courses.Select(course => course with { Pieces = [.. course.Pieces.Select(Now)] })] };
    }

    /// <summary>Why a laid piece is not there and will not be: it was not made, or what it was to be cut of is no longer as it was; none where nothing is in its way.</summary>
    /// <param name="steps">The plan that its pieces are cut under.</param>
    /// <param name="laid">The laid piece.</param>
    /// <param name="there">The yard's piece of a code; none where it has no such one.</param>
    public static string? WhyNot(this KeptPlan steps, LaidPiece laid, Func<Code, Piece?> there) =>
        steps.WhyNotMade(laid)
        ?? (steps.Steps[laid.Piece].State == StepState.Waiting && steps.Plan.Pieces[laid.Piece].Source is { } source && there(source.Code)?.StillServesAs(source) is not true
            ? $"{source.Code} is not there any more as planned"
            : null);

    /// <summary>True where a laid piece was made, whatever else came of what it was cut from.</summary>
    /// <param name="steps">The plan that its pieces are cut under.</param>
    /// <param name="laid">The laid piece.</param>
    public static bool IsMade(this KeptPlan steps, LaidPiece laid) => steps.Steps[laid.Piece].State != StepState.Waiting && steps.WhyNotMade(laid) is null;

    /// <summary>Why a laid piece was not made: its piece came out otherwise, or was given up; none where it was made or waits to be.</summary>
    /// <param name="steps">The plan that its pieces are cut under.</param>
    /// <param name="laid">The laid piece.</param>
    public static string? WhyNotMade(this KeptPlan steps, LaidPiece laid)
    {
        var cut = steps.Plan.Pieces[laid.Piece].Cuts[laid.Cut];
        return steps.Steps[laid.Piece].State switch
        {
            StepState.Dropped => "a piece of it was given up",
            StepState.DoneOtherwise when steps.NotMadeOf(laid.Piece).Any(lacking => (lacking.Stage, lacking.Cut) == (cut.Stage, cut.Cut)) => "a piece of it did not come out as planned",
            _ => null,
        };
    }

    /// <summary>
    /// The same laying without some of its courses, which are open then for these reasons. Ties go with their joints; of the figures only the
    /// number of open courses follows, the others tell what was found.
    /// </summary>
    /// <param name="plan">The laying.</param>
    /// <param name="reasons">Why each is given up, by run and course.</param>
    /// <param name="runs">All runs of the wall.</param>
    public static RunPlan GivenUp(this RunPlan plan, IReadOnlyDictionary<(string Run, int Course), string> reasons, IEnumerable<Run> runs)
    {
        if (reasons.Count == 0) return plan;
        LaidCourse[] courses = [.. plan.Courses.Select(course => reasons.TryGetValue((course.Run, course.Course), out var reason) ? course with { Pieces = [], Reason = reason } : course)];
        return (plan with
        {
            Courses = courses,
            Tiers = plan.Tiers with
            {
                Unfilled = [.. plan.Tiers.Unfilled.Select(level => level with { Unfilled = level.Unfilled with { Value = level.Unfilled.Value + reasons.Keys.Count(course => course.Course == level.Course) } })],
            },
        }).TiesOfJoints(runs);
    }

    /// <summary>The same laying with only those ties and cleats beside the regular ones that a joint of it stands on.</summary>
    /// <param name="plan">The laying.</param>
    /// <param name="runs">All runs of the wall.</param>
    public static RunPlan TiesOfJoints(this RunPlan plan, IEnumerable<Run> runs)
    {
        var named = runs.ToDictionary(run => run.Name);
        var joints = plan.Courses.Where(course => named.ContainsKey(course.Run)).SelectMany(course => course.Joints.Select(at => (Run: named[course.Run], course.Course, At: at))).ToArray();
        return plan with
        {
            ExtraTies = [.. plan.ExtraTies.Where(tie => joints.Any(joint => joint.Course == tie.Course && joint.At == tie.At && (tie.CleatOn is { } run ? joint.Run.Name == run : joint.Run.Leg == tie.Leg)))],
        };
    }
}
