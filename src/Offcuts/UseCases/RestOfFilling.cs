using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>
/// What a kept filling still is after some of its courses were stacked: the others stay as they were laid, from what is put aside of the
/// pieces that were cut. Given up is only what can't be carried out any more, course by course, with its reason.
/// </summary>
internal sealed class RestOfFilling
{
    private readonly YardFile _yard;
    private readonly LaidWall _laid;
    private readonly RunPlan _plan;
    private readonly KeptPlan _steps;
    private readonly HashSet<(string Run, int Course)> _standing;
    private readonly (IReadOnlySet<Code> Codes, string Where)? _taken;
    private readonly ILookup<int, (LaidPiece Laid, string Run, int Course)> _laidOf;

    /// <summary>Looks it up.</summary>
    /// <param name="yard">The yard before anything is changed.</param>
    /// <param name="laid">The wall laid out.</param>
    /// <param name="plan">The kept filling.</param>
    /// <param name="steps">How far its pieces have come.</param>
    /// <param name="standing">All courses that stand once those are stacked.</param>
    /// <param name="taken">Pieces of the yard that are laid now otherwise than planned, and in which course.</param>
    public RestOfFilling(YardFile yard, LaidWall laid, RunPlan plan, KeptPlan steps, IReadOnlyList<StackedCourse> standing, (IReadOnlySet<Code> Codes, string Where)? taken = null)
    {
        _taken = taken;
        (_yard, _laid, _plan, _steps) = (yard, laid, plan, steps);
        _standing = [.. standing.Select(course => (course.Run, course.Course))];
        Begun = [.. BegunToMind(standing)];
        GivenUp = Lost(standing).ToDictionary(lost => (lost.Run, lost.Course), lost => lost.Reason);
        _laidOf = plan.Courses.Where(course => !GivenUp.ContainsKey((course.Run, course.Course)))
            .SelectMany(course => course.Pieces.Select(one => (one, course.Run, course.Course))).ToLookup(one => one.one.Piece);
    }

    /// <summary>Courses that are given up, with the reason of each.</summary>
    public IReadOnlyDictionary<(string Run, int Course), string> GivenUp { get; }

    /// <summary>What there is to mind of courses of which pieces are cut: they are kept even where they lack one, so that what is cut for them keeps its place when the wall is filled again.</summary>
    public IReadOnlyList<string> Begun { get; }

    /// <summary>How many courses are still laid and do not stand.</summary>
    public int Kept => _plan.Courses.Count(course => course.Pieces.Count > 0 && !GivenUp.ContainsKey((course.Run, course.Course)) && !_standing.Contains((course.Run, course.Course)));

    /// <summary>What is cut now of a piece of which these courses take something, and what is put aside of it for the others.</summary>
    public PartlyCut Cut(int piece, IReadOnlySet<(string Run, int Course)> courses)
    {
        var of = _laidOf[piece].ToArray();
        int[] now = [.. of.Where(one => courses.Contains((one.Run, one.Course))).Select(one => one.Laid.Cut).Order()];
        return Partly(piece, now, [.. of.Select(one => one.Laid.Cut).Except(now)]);
    }

    /// <summary>
    /// The filling as it is kept from now on, and how far its pieces have come where that is another than it was.
    /// </summary>
    /// <param name="cut">Pieces that were cut now: what was made of each, and which of its cuts.</param>
    /// <param name="came">What came back of each.</param>
    /// <param name="otherwise">Pieces that were laid otherwise than planned: they are cut already.</param>
    public (RunPlan Plan, IReadOnlyDictionary<int, PlanStep> Steps) After(IReadOnlyList<(int Piece, PartlyCut Cut, IReadOnlyList<int> Made)> cut, ILookup<int, CameOf> came, IEnumerable<int> otherwise)
    {
        var steps = new Dictionary<int, PlanStep>();
        var parted = new List<PartedPiece>();
        foreach (var (piece, partly, made) in cut)
        {
            parted.Add(new PartedPiece(piece, partly.Made, made, [.. partly.Aside.Select(aside => Later(piece, aside, came[piece].Single(one => one.Start == aside.Stretch.Start && one.Piece.Length == aside.Stretch.Length).Piece))]));
            steps[piece] = PlanStep.Done;
        }

        // What waits and was to serve a course that is given up serves the others alone, or nothing.
        var now = cut.Select(one => one.Piece).Concat(otherwise).ToHashSet();
        for (var piece = 0; piece < _plan.Pieces.Count; piece++)
        {
            if (now.Contains(piece) || _steps.Steps[piece].State != StepState.Waiting) continue;
            int[] left = [.. _laidOf[piece].Select(one => one.Laid.Cut).Order()];
            if (left.Length == 0) steps[piece] = PlanStep.Dropped;
            else if (left.Length < _plan.Pieces[piece].Cuts.Count) parted.Add(new PartedPiece(piece, Partly(piece, left, []).Made, left, []));
        }

        return (_plan.GivenUp(GivenUp, _laid.Runs.Concat(_laid.FootingRuns)).Parted(parted), steps);
    }

    private (PlannedPiece Piece, IReadOnlyList<int> Cuts) Later(int piece, PutAside aside, Piece there)
    {
        var planned = _plan.Pieces[piece];
        var moved = planned with
        {
            Source = there,
            Bought = null,
            Cuts = [.. aside.Cuts.Select(cut => planned.Cuts[cut] with { Start = planned.Cuts[cut].Start - aside.Stretch.Start })],
            StripsLeft = [.. planned.StripsLeft.Where(strip => strip.Start >= aside.Stretch.Start && strip.Start + strip.Length <= aside.Stretch.End).Select(strip => strip with { Start = strip.Start - aside.Stretch.Start })],
        };
        var settings = _yard.Settings();
        int[] all = [.. Enumerable.Range(0, aside.Cuts.Count)];
        return (PartlyCut.Of(moved, all, [], settings.Kerf(planned.Material), settings.Keep(planned.Material), ToHeight(piece, aside.Cuts)).Made, aside.Cuts);
    }

    private PartlyCut Partly(int piece, IReadOnlyList<int> made, IReadOnlyList<int> later)
    {
        var (planned, settings) = (_plan.Pieces[piece], _yard.Settings());
        return PartlyCut.Of(planned, made, later, settings.Kerf(planned.Material), settings.Keep(planned.Material), ToHeight(piece, made));
    }

    // One more saw cut for each piece that is laid in a course cut to height.
    private int ToHeight(int piece, IReadOnlyList<int> cuts) =>
        _laidOf[piece].Count(one => cuts.Contains(one.Laid.Cut) && IsCutToHeight(one.Run, one.Course));

    private bool IsCutToHeight(string name, int number) =>
        _laid.Runs.Concat(_laid.FootingRuns).FirstOrDefault(run => run.Name == name) is { } run
        && run.Courses.First(course => course.Number == number).Height < (Ripping.Width(run.Material) ?? run.Courses.Max(course => course.Height));

    private IEnumerable<(string Run, int Course, string Reason)> Lost(IReadOnlyList<StackedCourse> standing)
    {
        foreach (var course in _plan.Courses.Where(course => course.Pieces.Count > 0 && !_standing.Contains((course.Run, course.Course))))
        {
            // What is cut waits to be stacked, whatever stands below it by now.
            if (course.Pieces.Any(_steps.IsMade)) continue;
            if (Lacks(course) is { } gone) yield return (course.Run, course.Course, gone);
            else if (TooNear(course, standing) is { } below) yield return (course.Run, course.Course, below);
        }
    }

    private IEnumerable<string> BegunToMind(IReadOnlyList<StackedCourse> standing)
    {
        foreach (var course in _plan.Courses.Where(course => !_standing.Contains((course.Run, course.Course)) && course.Pieces.Any(_steps.IsMade) && !course.Pieces.All(_steps.IsMade)))
        {
            if (Lacks(course) is { } gone) yield return $"{course.Run}, course {course.Course} is begun and lacks a piece: {gone}; what is cut for it keeps its place when the wall is filled again";
            else if (TooNear(course, standing) is { } below) yield return $"{course.Run}, course {course.Course} is begun, and {below}: look at it before more is cut for it";
        }
    }

    private string? Lacks(LaidCourse course) => course.Pieces.Select(one => Taken(one) ?? _steps.WhyNot(one, _yard.Piece)).FirstOrDefault(reason => reason is not null);

    private string? Taken(LaidPiece one) =>
        _taken is { } taken && _steps.Steps[one.Piece].State == StepState.Waiting && _plan.Pieces[one.Piece].Source is { } source && taken.Codes.Contains(source.Code)
            ? $"{source.Code} was laid in {taken.Where}"
            : null;

    private string? TooNear(LaidCourse course, IReadOnlyList<StackedCourse> standing)
    {
        var stagger = _laid.Runs.Concat(_laid.FootingRuns).FirstOrDefault(run => run.Name == course.Run)?.Stagger ?? Length.Zero;
        foreach (var other in standing.Where(other => other.Run == course.Run && Math.Abs(other.Course - course.Course) == 1))
        {
            if (course.Joints.Any(joint => other.Joints.Any(at => Math.Abs(at.Units - joint.Units) < stagger.Units)))
                return $"a joint of it would lie too near one of course {other.Course} as that stands";
        }

        return null;
    }
}
