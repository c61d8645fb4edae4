using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;

namespace Offcuts.Walls;

/// <summary>Makes the frame of a wall's foam, and from it that of the form boards of its footing.</summary>
internal static class FrameMaker
{
    /// <summary>Foam on both sides of the core. A leg runs by in the first course where its place in its chain is odd: the first, the third.</summary>
    public static Frame Foam(IReadOnlyList<PlacedLeg> placed, long thickness, long core) => new(thickness, core,
    [
        .. placed.Select(leg => new FrameLeg(leg.Leg.Name, leg.Leg.Length.Units, leg.Start, leg.End, leg.Place % 2 == 0, TeesOn(placed, leg.Leg.Name))),
    ]);

    /// <summary>
    /// Boards on both sides of the footing, which goes beyond the wall on both sides. It is a wall of its own: the boards are its
    /// faces, as thick as the lumber is dressed and dry, and what is poured between them its core.
    /// </summary>
    public static Frame Boards(FootingForms footing, Frame foam)
    {
        var thickness = footing.Board.Thickness.Dry.Units;
        var beyond = footing.Beyond.Units;
        long Change(LegEnd end) => end switch
        {
            LegEnd.OutsideCorner => beyond + thickness,
            LegEnd.Free => beyond,
            _ => -(beyond + thickness),
        };

        return new Frame(thickness, foam.Whole + 2 * beyond,
        [
            .. foam.Legs.Select(leg => leg with
            {
                Length = leg.Length + Change(leg.Start) + Change(leg.End),
                Tees = [.. leg.Tees.Select(tee => tee with { Offset = tee.Offset + Change(leg.Start) })],
            }),
        ]);
    }

    /// <summary>Legs between which there is no room for the boards of the footing.</summary>
    public static IEnumerable<Fault> Faults(Frame boards) =>
        from leg in boards.Legs
        let shortest = ((Face[])[Face.Outside, Face.Inside]).Select(face => (Face: face, Row: boards.Row(leg, face, leg.First))).MinBy(row => row.Row.To - row.Row.From)
        where shortest.Row.To <= shortest.Row.From
        select WallFaults.LegEatenUp(leg.Name, $"{WallWords.Of(shortest.Face)} footing", Length.FromUnits(shortest.Row.From - shortest.Row.To));

    private static List<Tee> TeesOn(IReadOnlyList<PlacedLeg> placed, string leg) =>
    [
        .. from other in placed
           from junction in new[] { other.Leg.Start, other.Leg.Finish }.OfType<Junction>()
           where string.Equals(junction.Leg, leg, StringComparison.OrdinalIgnoreCase)
           orderby junction.Offset
           select new Tee(other.Leg.Name, junction.Offset.Units, junction.Face),
    ];
}
