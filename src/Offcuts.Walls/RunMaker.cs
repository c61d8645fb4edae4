using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Walls;

/// <summary>Makes the runs of a wall: one for each face of each leg. Both faces share the lines, counted from the leg's start.</summary>
internal static class RunMaker
{
    /// <summary>Runs of panels.</summary>
    public static IReadOnlyList<Run> Foam(LaidWall wall) =>
    [
        .. from leg in wall.Foam.Legs
           let layers = wall.Layers.Select(layer => (layer.Number, Height: layer.Top - layer.Bottom, Rows: wall.RowsOf(leg, layer))).ToArray()
           let shift = LaidWall.Shift(wall.Foam, leg)
           from face in (Face[])[Face.Outside, Face.Inside]
           select new Run
           {
               Name = $"{leg.Name} {WallWords.Of(face)}",
               Leg = leg.Name,
               Material = wall.System.Panel,
               Lines = Lines(shift, wall.System.Interval, wall.System.TieSpacing),
               Joints = JointRule.OnPattern,
               Stagger = wall.System.Stagger,
               ShortestPiece = wall.System.ShortestPiece,
               Reversible = wall.System.Reversible,
               Courses = [.. layers.Select(layer => new Course(layer.Number, Length.FromUnits(layer.Height), Along(layer.Rows[face], shift)))],
           },
    ];

    /// <summary>Runs of form boards: one course of boards along each side of the footing, which meet at stakes.</summary>
    public static IReadOnlyList<Run> Footing(LaidWall wall, Frame boards) =>
    [
        .. from leg in boards.Legs
           let rows = FootingRows(boards, leg)
           let shift = LaidWall.Shift(boards, leg)
           from face in (Face[])[Face.Outside, Face.Inside]
           let stretches = Along(rows[face], shift)
           select new Run
           {
               Name = $"{leg.Name} footing {WallWords.Of(face)}",
               Leg = $"{leg.Name} footing",
               Material = wall.Sheet.Footing!.Board,
               Lines = Lines(shift, wall.Sheet.Footing.Spacing, wall.Sheet.Footing.Spacing),
               Joints = wall.System.BoardJoints,
               Stagger = Length.Zero,
               ShortestPiece = stretches.Select(stretch => stretch.Length).Append(ShortestBoard(wall.System)).Min(),
               Reversible = true,
               Courses = [new Course(1, wall.Sheet.Footing.Board.Width.Dry, stretches)],
           },
    ];

    /// <summary>What the boards of a leg's footing cover.</summary>
    public static Rows FootingRows(Frame boards, FrameLeg leg) => Rows.Of(boards, leg, leg.First, []);

    // Where boards may meet anywhere and nothing is said, none is shorter than the cleat behind its joint.
    private static Length ShortestBoard(SystemSheet system) => system.ShortestBoard.IsZero && system.Cleat is { } cleat ? cleat.Length : system.ShortestBoard;

    private static PatternLines Lines(long shift, Length interval, Length ties) => new(Length.FromUnits(shift % ties.Units), interval, ties);

    private static IReadOnlyList<Span> Along(IReadOnlyList<(long From, long To)> row, long shift) =>
        [.. row.Select(stretch => new Span(Length.FromUnits(stretch.From + shift), Length.FromUnits(stretch.To + shift)))];
}
