using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>What of a wall is still to be laid, and whether what is on hand will do: told at any moment while it is stacked.</summary>
/// <param name="Standing">Courses that stand or are cut for, all faces counted.</param>
/// <param name="Courses">All of them.</param>
/// <param name="Kept">How the others are filled, as it is kept; none where it is not.</param>
/// <param name="Waiting">Pieces that wait to be cut for it.</param>
/// <param name="Gone">Codes of pieces that it counts on and that are no longer there as they were.</param>
public sealed record LeftToLay(int Standing, int Courses, WallFilled? Kept, IReadOnlyList<PlannedPiece> Waiting, IReadOnlyList<Code> Gone)
{
    /// <summary>Pieces of the yard that wait to be cut for it.</summary>
    public int FromYard => Waiting.Count(piece => piece.Source is not null);

    /// <summary>New pieces that wait to be cut for it.</summary>
    public int ToBuy => Waiting.Count(piece => piece.Source is null);

    /// <summary>Looks it up for a wall that is laid out.</summary>
    public static LeftToLay Of(YardFile yard, LaidStageWall wall)
    {
        var fill = new FillWall(yard);
        var courses = wall.Laid.Runs.Concat(wall.Laid.FootingRuns).Sum(run => run.Courses.Count(course => course.Stretches.Count > 0));
        var standing = fill.Standing(wall.Kept).Count;
        if (fill.Kept(wall) is not { } kept || yard.Plan(kept.PlanId) is not { } steps) return new LeftToLay(standing, courses, null, [], []);
        PlannedPiece[] waiting = [.. kept.Plan.Pieces.Zip(steps.Steps).Where(piece => piece.Second.State == StepState.Waiting).Select(piece => piece.First)];
        return new LeftToLay(
            standing,
            courses,
            kept,
            waiting,
            [.. waiting.Select(piece => piece.Source).OfType<Piece>().Where(source => yard.Piece(source.Code)?.StillServesAs(source) is not true).Select(source => source.Code)]);
    }

    /// <summary>The same in words: the count, what the kept filling takes, whether what is on hand will do.</summary>
    /// <param name="unit">Unit of lengths.</param>
    /// <param name="today">The day it is: an order that is late is told so.</param>
    public IEnumerable<string> Lines(LengthUnit unit, DateOnly today)
    {
        var of = $"{Standing} of {Words.Count(Courses, "course")}";
        if (Kept is null)
        {
            yield return Standing == Courses ? $"all {Words.Count(Courses, "course")} stand, all faces counted" : $"{of} stand, all faces counted";
            yield break;
        }

        yield return $"{of} stand or are cut, all faces counted; to cut yet by plan {Kept.PlanId}: {Words.Count(FromYard, "piece")} of the yard, {ToBuy} new. {FillText.WillDo(this, Kept, unit, today)}";
        if (Gone.Count > 0)
            yield return $"! not as planned any more: {string.Join(", ", Gone.Take(4))}{(Gone.Count > 4 ? $" and {Gone.Count - 4} more" : "")}; fill it again";
    }
}
