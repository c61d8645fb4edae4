using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Walls;

/// <summary>A part of a cut where an opening takes some of its course's height.</summary>
/// <param name="Piece">Which of the plan's pieces it is cut from, from 0.</param>
/// <param name="Cut">Which of that piece's cuts, from 0.</param>
/// <param name="From">Where the part begins, from the end of the cut that is nearer to the piece's marked end.</param>
/// <param name="To">Where it ends, measured alike.</param>
/// <param name="Notch">What is left of the course there.</param>
public sealed record NotchedPart(int Piece, int Cut, Length From, Length To, Notch Notch)
{
    /// <summary>How long what is sawn out there is, the saw taken off where it goes through beside it; zero where nothing is left of it.</summary>
    public Length OutLength { get; init; }

    /// <summary>How high it is, the saw taken off under and over it where something stays.</summary>
    public Length OutHeight { get; init; }

    /// <summary>What the plan keeps it as; none where it is scrap.</summary>
    public Material? KeptAs { get; init; }
}

/// <summary>
/// What is sawn lengthwise of the pieces of a wall: those of a course that is lower than a panel, and those that run on under or over an
/// opening. The filler spends every piece at its full height; what stands here says how it is brought to its own.
/// </summary>
public static class CutToHeight
{
    /// <summary>
    /// The same plan, in which each piece of a course that is lower than its panel says how high it is sawn and what becomes of the strip: it is
    /// kept, as foam of its own height, where it is as long as what is worth a label and no lower than it is thick; else it is scrap. So is what
    /// is sawn out of a piece that runs on under or over an opening. A plan that says so already comes back the same.
    /// </summary>
    /// <param name="plan">The plan.</param>
    /// <param name="runs">The runs of the wall.</param>
    /// <param name="settings">What the saw takes and what is worth a label.</param>
    /// <param name="notches">Where openings take a part of a course's height; none where there are no such.</param>
    public static RunPlan In(RunPlan plan, IReadOnlyList<Run> runs, YardSettings settings, IReadOnlyList<Notch>? notches = null)
    {
        var sawnOut = Parts(plan, runs, notches ?? [], settings).ToLookup(part => part.Piece, part => Kept(plan, part, settings));
        var heights = runs.SelectMany(run => run.Courses.Select(course => (Key: (run.Name, course.Number), course.Height))).ToDictionary(one => one.Key, one => one.Height);
        var low = new Dictionary<(int Piece, int Cut), Length>();
        foreach (var course in plan.Courses)
        {
            foreach (var one in course.Pieces)
            {
                if (heights.TryGetValue((course.Run, course.Course), out var height) && plan.Pieces[one.Piece].Material is FoamPanel panel && height < panel.Height)
                    low[(one.Piece, one.Cut)] = height;
            }
        }

        if (low.Count == 0 && sawnOut.Count == 0) return plan;
        return plan with
        {
            Pieces =
            [
                .. plan.Pieces.Select((piece, p) => piece with
                {
                    StripsLeft = [.. sawnOut[p].OfType<KeptStrip>()],
                    Cuts = [.. piece.Cuts.Select((cut, c) => low.TryGetValue((p, c), out var height) ? cut with { Rip = Rip((FoamPanel)piece.Material, cut.Length, height, settings) } : cut)],
                }),
            ],
        };
    }

    /// <summary>What a piece is once it is cut for a course: foam of the course's height where that is lower than its panel, else what it was.</summary>
    /// <param name="material">What it was cut from.</param>
    /// <param name="course">How high the course is.</param>
    public static Material AsCut(Material material, Length course) => material is FoamPanel panel && course < panel.Height ? new FoamPanel(panel.Thickness, course, panel.Type) : material;

    /// <summary>The parts of a plan's cuts that run on under or over an opening, piece by piece and from the marked end on.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="runs">The runs of the wall.</param>
    /// <param name="notches">Where its openings take a part of a course's height.</param>
    /// <param name="settings">What the saw takes.</param>
    public static IReadOnlyList<NotchedPart> Parts(RunPlan plan, IReadOnlyList<Run> runs, IReadOnlyList<Notch> notches, YardSettings settings)
    {
        var legs = runs.GroupBy(run => run.Name).ToDictionary(same => same.Key, same => same.First().Leg);
        var heights = runs.SelectMany(run => run.Courses.Select(course => (Key: (run.Name, course.Number), course.Height))).DistinctBy(one => one.Key).ToDictionary(one => one.Key, one => one.Height);
        return
        [
            .. from course in plan.Courses
               where legs.ContainsKey(course.Run)
               from one in course.Pieces
               from notch in notches
               where notch.Leg == legs[course.Run] && notch.Course == course.Course
               let begin = Max(one.From, notch.Where.Start)
               let end = Min(one.To, notch.Where.End)
               where begin < end
               let part = one.Turned ? (From: one.To - end, To: one.To - begin) : (From: begin - one.From, To: end - one.From)
               orderby one.Piece, one.Cut, part.From
               select SawnOut(new NotchedPart(one.Piece, one.Cut, part.From, part.To, notch), plan, heights.GetValueOrDefault((course.Run, course.Course)), settings),
        ];
    }

    private static NotchedPart SawnOut(NotchedPart part, RunPlan plan, Length course, YardSettings settings)
    {
        var piece = plan.Pieces[part.Piece];
        var (cut, kerf) = (piece.Cuts[part.Cut], settings.Kerf(piece.Material));
        Length Saw(bool goes) => goes ? kerf : Length.Zero;
        var high = course.LessAtMost(part.Notch.Below + part.Notch.Above).LessAtMost(Saw(!part.Notch.Below.IsZero)).LessAtMost(Saw(!part.Notch.Above.IsZero));
        var length = (part.To - part.From).LessAtMost(Saw(!part.From.IsZero)).LessAtMost(Saw(part.To < cut.Length));
        return part with
        {
            OutHeight = high,
            OutLength = length,
            KeptAs = piece.StripsLeft.FirstOrDefault(strip => strip.Start == cut.Start + part.From && strip.Length == length)?.Material,
        };
    }

    private static KeptStrip? Kept(RunPlan plan, NotchedPart part, YardSettings settings) =>
        plan.Pieces[part.Piece] is { Material: FoamPanel panel } piece && part.OutHeight >= panel.Thickness && part.OutLength >= settings.Keep(panel) && !part.OutLength.IsZero
            ? new KeptStrip(new FoamPanel(panel.Thickness, part.OutHeight, panel.Type), piece.Cuts[part.Cut].Start + part.From, part.OutLength)
            : null;

    // Its own material stands for what it becomes: new, it would be sawn from a whole panel too, and that is what it is reckoned at.
    private static PlannedRip Rip(FoamPanel panel, Length length, Length height, YardSettings settings)
    {
        var strip = (panel.Height - height).LessAtMost(settings.Kerf(panel));
        var kept = strip >= panel.Thickness && length >= settings.Keep(panel) ? new FoamPanel(panel.Thickness, strip, panel.Type) : null;
        return new PlannedRip(panel, height, strip, kept);
    }

    private static Length Max(Length a, Length b) => a > b ? a : b;

    private static Length Min(Length a, Length b) => a < b ? a : b;
}
