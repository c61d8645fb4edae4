using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>What of a wall is still to be laid, and whether what is on hand will do: told at any moment while it is stacked.</summary>
/// <param name="Standing">Courses that stand, all faces counted.</param>
/// <param name="Courses">All of them.</param>
/// <param name="Kept">How the others are filled, as it is kept; none where it is not.</param>
/// <param name="Waiting">Pieces that wait to be cut for it and can be.</param>
/// <param name="Gone">Codes of pieces that it counts on and that are no longer there as they were.</param>
public sealed record LeftToLay(int Standing, int Courses, WallFilled? Kept, IReadOnlyList<PlannedPiece> Waiting, IReadOnlyList<Code> Gone)
{
    /// <summary>Courses of which all is cut and that wait to be stacked, all faces counted.</summary>
    public int Cut { get; init; }

    /// <summary>How far the pieces of the kept filling have come; none where none is kept.</summary>
    public KeptPlan? Steps { get; init; }

    /// <summary>Courses of the kept filling that lack a piece: it did not come out as planned, was given up, or was to be cut of what is gone. What takes its place is not known yet.</summary>
    public IReadOnlyList<LaidCourse> Lacking { get; init; } = [];

    /// <summary>Pieces of the yard that wait to be cut for it.</summary>
    public int FromYard => Waiting.Count(piece => piece.Source is not null);

    /// <summary>New pieces that wait to be cut for it.</summary>
    public int ToBuy => Waiting.Count(piece => piece.Source is null);

    /// <summary>Looks it up for a wall that is laid out.</summary>
    public static LeftToLay Of(YardFile yard, LaidStageWall wall)
    {
        var fill = new FillWall(yard);
        var settled = fill.StandingOrCut(wall.Kept);
        if (fill.Kept(wall) is not { } kept || yard.Plan(kept.PlanId) is not { } steps || fill.KeptOf(wall.Kept) is not { } planned)
            return new LeftToLay(settled.Count(course => !course.OnlyCut), All(wall.Laid), null, [], []) { Cut = settled.Count(course => course.OnlyCut) };
        return Of(kept, planned.Plan, steps, settled, yard.Piece);
    }

    /// <summary>The lowest course that does not stand, cut or not: the one to be stacked next.</summary>
    /// <param name="kept">How the rest is filled, as it is kept.</param>
    /// <param name="there">Courses that stand, or are cut and wait to be stacked.</param>
    public static int NextCourse(WallFilled? kept, IReadOnlyList<StackedCourse> there) =>
        (kept?.Plan.Courses.Where(course => !there.Any(stood => !stood.OnlyCut && (stood.Run, stood.Course) == (course.Run, course.Course))) ?? []).Select(course => course.Course)
            .Concat(there.Where(course => course.OnlyCut).Select(course => course.Course)).DefaultIfEmpty(1).Min();

    /// <summary>True where each course of a wall stands that covers anything.</summary>
    internal static bool AllStand(LaidWall laid, IEnumerable<StackedCourse> there) => there.Count(course => !course.OnlyCut) == All(laid);

    private static int All(LaidWall laid) => laid.Runs.Concat(laid.FootingRuns).Sum(run => run.Courses.Count(course => course.Stretches.Count > 0));

    /// <summary>The same of a filling.</summary>
    /// <param name="kept">The wall with it, as far as it still holds.</param>
    /// <param name="plan">The filling as it was planned.</param>
    /// <param name="steps">How far its pieces have come.</param>
    /// <param name="settled">Courses that stand, or are cut and wait to be stacked.</param>
    /// <param name="there">The yard's piece of a code; none at all where all that waits is known to be there.</param>
    internal static LeftToLay Of(WallFilled kept, RunPlan plan, KeptPlan steps, IReadOnlyList<StackedCourse> settled, Func<Code, Piece?>? there)
    {
        // A piece is looked up once, however many cuts are laid of it.
        var known = new Dictionary<Code, Piece?>();
        Piece? There(Code code) => known.TryGetValue(code, out var piece) ? piece : known[code] = there!(code);
        bool IsGone(PlannedPiece piece) => there is not null && piece.Source is { } source && There(source.Code)?.StillServesAs(source) is not true;
        var (standing, cut) = (settled.Count(course => !course.OnlyCut), settled.Count(course => course.OnlyCut));
        var lacking = plan.Courses.Where(course => course.Pieces.Any(one => (there is null ? steps.WhyNotMade(one) : steps.WhyNot(one, There)) is not null) && !settled.Any(stood => (stood.Run, stood.Course) == (course.Run, course.Course)));
        PlannedPiece[] planned = [.. kept.Plan.Pieces.Zip(steps.Steps).Where(piece => piece.Second.State == StepState.Waiting).Select(piece => piece.First)];
        return new LeftToLay(
            standing,
            All(kept.Laid),
            kept,
            [.. planned.Where(piece => !IsGone(piece))],
            [.. planned.Where(IsGone).Select(piece => piece.Source!.Code)])
        {
            Cut = cut,
            Lacking = [.. lacking],
            Steps = steps,
        };
    }

    /// <summary>How many are cut and wait to be stacked, as it is said behind those that stand; empty where none does.</summary>
    public string Waits => Cut == 0 ? "" : $", {Cut} {(Cut == 1 ? "is cut and waits" : "are cut and wait")} to be stacked";

    /// <summary>The same in words: the count, what the kept filling takes, whether what is on hand will do.</summary>
    /// <param name="unit">Unit of lengths.</param>
    /// <param name="today">The day it is: an order that is late is told so.</param>
    public IEnumerable<string> Lines(LengthUnit unit, DateOnly today)
    {
        var of = Standing == Courses && Kept is null ? $"all {Words.Count(Courses, "course")} stand, all faces counted" : $"{Standing} of {Words.Count(Courses, "course")} {(Standing == 1 ? "stands" : "stand")}{Waits}, all faces counted";
        if (Kept is null)
        {
            yield return of;
            yield break;
        }

        yield return $"{of}; to cut yet by plan {Kept.PlanId}: {Words.Count(FromYard, "piece")} of the yard, {ToBuy} new. {FillText.WillDo(this, Kept, unit, today)}";
        if (Gone.Count > 0)
            yield return $"! not as planned any more: {string.Join(", ", Gone.Take(4))}{(Gone.Count > 4 ? $" and {Gone.Count - 4} more" : "")}; fill it again";
    }
}
