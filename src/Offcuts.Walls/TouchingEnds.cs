using Offcuts.Core.Measures;
using Offcuts.Core.Walls;

namespace Offcuts.Walls;

/// <summary>
/// Free ends that lie flat on the side of another leg. Such an end is built as a free one, with nothing that ties it there: mostly a tee was meant and
/// the line that says so forgotten.
/// </summary>
internal static class TouchingEnds
{
    /// <summary>A sentence for each.</summary>
    /// <param name="placed">The legs on the ground.</param>
    /// <param name="whole">Thickness of the wall.</param>
    /// <param name="unit">In which unit a place is told.</param>
    public static IEnumerable<string> Of(IReadOnlyList<PlacedLeg> placed, long whole, LengthUnit unit)
    {
        foreach (var leg in placed)
        {
            if (leg.Start == LegEnd.Free && Touched(placed, leg, leg.At, (leg.Direction + 2) % 4, whole) is { } start) yield return $"! Leg {leg.Leg.Name} starts at the {start}: is it a tee? Then write below it: starts at {Where(start, unit)}.";
            if (leg.End == LegEnd.Free && Touched(placed, leg, leg.Finish, leg.Direction, whole) is { } end) yield return $"! Leg {leg.Leg.Name} ends at the {end}: is it a tee? Then write below it: ends at {Where(end, unit)}.";
        }
    }

    private static string Where(Side side, LengthUnit unit) => $"{LengthText.OnTape(side.Offset, unit)} {WallWords.Of(side.Face)} of {side.Leg}";

    // The leg whose side this end lies on with some of its thickness, seen along the way that leads out of the end.
    private static Side? Touched(IReadOnlyList<PlacedLeg> placed, PlacedLeg leg, Point at, int outward, long whole)
    {
        var middle = at + Point.Along(leg.Inward) * whole;
        foreach (var other in placed.Where(other => other != leg && (other.Direction + outward) % 2 == 1))
        {
            var face = outward == other.Inward ? Face.Outside : Face.Inside;
            var from = middle - other.OnFace(face, Length.Zero, whole);
            var along = from.In(other.Direction);
            if (from.In(outward) == 0 && along + whole > 0 && along - whole < 2 * other.Leg.Length.Units && along >= 0) return new Side(other.Leg.Name, face, Length.FromUnits(along / 2));
        }

        return null;
    }

    private sealed record Side(string Leg, Face Face, Length Offset)
    {
        public override string ToString() => $"{WallWords.Of(Face)} of leg {Leg}";
    }
}
