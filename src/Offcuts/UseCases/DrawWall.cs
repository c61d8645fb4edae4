using System.Collections.Immutable;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Print;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>Makes a laid wall ready to be drawn, each row as somebody sees it who stands before it.</summary>
public static class DrawWall
{
    /// <summary>The picture of a wall.</summary>
    /// <param name="kept">The wall and its stage.</param>
    /// <param name="wall">The wall laid out.</param>
    /// <param name="plan">How its runs are filled; none draws them empty.</param>
    /// <param name="stacked">Courses that stand already.</param>
    public static WallPicture Of(StageWall kept, LaidWall wall, RunPlan? plan = null, IReadOnlyList<StackedCourse>? stacked = null) => new()
    {
        Wall = kept.Sheet.Name,
        Stage = kept.Stage,
        Rows = [.. wall.Runs.Select((run, i) => Row(wall, run, i)), .. wall.FootingRuns.Select((run, i) => Footing(wall, run, i))],
        Plan = plan,
        Stacked = stacked ?? [],
        Steel = kept.Sheet.Steel is not null,
        Never = [.. Unfillable.Of(wall).Select(stretch => stretch.Says)],
    };

    // Runs come two a leg: outside, then inside.
    private static WallRow Row(LaidWall wall, Run run, int index)
    {
        var leg = wall.Legs[index / 2];
        return new WallRow
        {
            Run = run,
            SeenFrom = Side(index),
            StartAtRight = StartAtRight(leg, index),
            LegStart = leg.AxisBefore,
            Holes = [.. leg.Leg.Openings.Select(opening => new WallHole(
                opening.Name, new Span(leg.AxisBefore + opening.Offset, leg.AxisBefore + opening.End), opening.Sill, opening.Top))],
        };
    }

    private static WallRow Footing(LaidWall wall, Run run, int index) => new()
    {
        Run = run,
        SeenFrom = Side(index),
        StartAtRight = StartAtRight(wall.Legs[index / 2], index),
        MeasuredFrom = "the start of its boards' axis",
    };

    private static string Side(int index) => WallWords.Of(index % 2 == 0 ? Face.Outside : Face.Inside);

    // Who walks along the leg with the outside at the right is seen from there to go from left to right.
    private static bool StartAtRight(LaidLeg leg, int index) => (leg.Outside == Hand.Left) == (index % 2 == 0);
}
