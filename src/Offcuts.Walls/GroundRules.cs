using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;

namespace Offcuts.Walls;

/// <summary>What can't be built where the legs stand: legs too short, openings and tees out of place, legs through one another.</summary>
internal static class GroundRules
{
    /// <summary>Every fault of the wall on the ground.</summary>
    public static List<Fault> Faults(WallSheet wall, SystemSheet system, IReadOnlyList<PlacedLeg> placed, Frame foam)
    {
        var faults = new List<Fault>();
        for (var i = 0; i < placed.Count; i++)
        {
            CheckRows(faults, foam, foam.Legs[i], wall.Lap ?? system.Lap, system.ShortestPiece);
            CheckOpenings(faults, wall, foam, foam.Legs[i], placed[i].Leg);
            CheckTees(faults, foam, foam.Legs[i], placed[i].Leg);
            CheckFinish(faults, placed, placed[i], foam.Whole);
        }

        CheckCrossings(faults, placed, foam.Whole);
        return faults;
    }

    /// <summary>What is wrong with openings by their legs alone, wherever those stand.</summary>
    public static List<Fault> OpeningsOf(WallSheet wall)
    {
        var faults = new List<Fault>();
        foreach (var leg in wall.Legs)
        {
            foreach (var opening in leg.Openings)
            {
                CheckOut(faults, opening, leg, "at the leg's end", opening.End.Units - leg.Length.Units);
                CheckOut(faults, opening, leg, "at the top of the wall", opening.Top.Units - wall.Height.Units);
            }

            CheckOverlaps(faults, leg);
        }

        return faults;
    }

    // Only the shortest of a leg's rows is told; the others follow from it.
    private static void CheckRows(List<Fault> faults, Frame foam, FrameLeg leg, Lap lap, Length shortest)
    {
        var rows =
            from course in lap == Lap.Same ? (int[])[1] : [1, 2]
            from face in (Face[])[Face.Outside, Face.Inside]
            let row = foam.Row(leg, face, leg.RunsBy(course, lap))
            orderby row.To - row.From
            select (Name: WallWords.Of(face), Length: row.To - row.From);
        var (name, length) = rows.First();
        if (length < 0) faults.Add(WallFaults.LegEatenUp(leg.Name, name, Length.FromUnits(-length)));
        else if (length < Math.Max(1, shortest.Units)) faults.Add(WallFaults.LegTooShort(leg.Name, name, Length.FromUnits(length), shortest));
    }

    private static void CheckOpenings(List<Fault> faults, WallSheet wall, Frame foam, FrameLeg frame, Leg leg)
    {
        var (from, to) = (Clear(frame.Start, foam.Whole), leg.Length.Units - Clear(frame.End, foam.Whole));
        foreach (var opening in leg.Openings)
        {
            CheckOut(faults, opening, leg, from > 0 ? "into the corner at the leg's start" : "at the leg's start", from - opening.Offset.Units);
            CheckOut(faults, opening, leg, to < leg.Length.Units ? "into the corner at the leg's end" : "at the leg's end", opening.End.Units - to);
            CheckOut(faults, opening, leg, "at the top of the wall", opening.Top.Units - wall.Height.Units);
        }

        CheckOverlaps(faults, leg);
    }

    private static void CheckOut(List<Fault> faults, Opening opening, Leg leg, string where, long by)
    {
        if (by > 0) faults.Add(WallFaults.OpeningSticksOut(opening.Name, leg.Name, where, Length.FromUnits(by)));
    }

    private static void CheckOverlaps(List<Fault> faults, Leg leg)
    {
        for (var i = 0; i < leg.Openings.Count; i++)
        {
            for (var j = i + 1; j < leg.Openings.Count; j++)
            {
                var (one, other) = (leg.Openings[i], leg.Openings[j]);
                var wide = Math.Min(one.End.Units, other.End.Units) - Math.Max(one.Offset.Units, other.Offset.Units);
                var high = Math.Min(one.Top.Units, other.Top.Units) - Math.Max(one.Sill.Units, other.Sill.Units);
                if (wide > 0 && high > 0) faults.Add(WallFaults.OpeningsOverlap(one.Name, other.Name, leg.Name, Length.FromUnits(wide)));
            }
        }
    }

    // Where the inside of a corner begins: nothing can go square through the wall before it.
    private static long Clear(LegEnd end, long whole) => end == LegEnd.OutsideCorner ? whole : 0;

    private static void CheckTees(List<Fault> faults, Frame foam, FrameLeg frame, Leg leg)
    {
        (long From, long To) Room(Tee tee) => (tee.Offset - foam.Whole / 2, tee.Offset - foam.Whole / 2 + foam.Whole);
        for (var i = 0; i < frame.Tees.Count; i++)
        {
            var tee = frame.Tees[i];
            var (from, to) = Room(tee);
            var (first, last) = Side(foam, frame, tee.Face);
            if (from < first) faults.Add(WallFaults.TeeSticksOut(tee.Branch, leg.Name, "at the leg's start", Length.FromUnits(first - from)));
            if (to > last) faults.Add(WallFaults.TeeSticksOut(tee.Branch, leg.Name, "at the leg's end", Length.FromUnits(to - last)));
            foreach (var opening in leg.Openings.Where(opening => opening.Offset.Units < to && from < opening.End.Units))
                faults.Add(WallFaults.TeeInOpening(tee.Branch, opening.Name, leg.Name));
            foreach (var other in frame.Tees.Skip(i + 1).Where(other => other.Face == tee.Face && Math.Abs(other.Offset - tee.Offset) < foam.Whole))
                faults.Add(WallFaults.TeesOverlap(tee.Branch, other.Branch, leg.Name));
        }
    }

    // The stretch of a side that one can touch, from corner to corner.
    internal static (long From, long To) Side(Frame foam, FrameLeg leg, Face face)
    {
        long Back(LegEnd end) => face == Face.Outside ? 0 : end == LegEnd.OutsideCorner ? foam.Whole : end == LegEnd.InsideCorner ? -foam.Whole : 0;
        return (Back(leg.Start), leg.Length - Back(leg.End));
    }

    private static void CheckFinish(List<Fault> faults, IReadOnlyList<PlacedLeg> placed, PlacedLeg leg, long whole)
    {
        if (leg.Leg.Finish is not { } finish) return;
        var other = placed.First(one => string.Equals(one.Leg.Name, finish.Leg, StringComparison.OrdinalIgnoreCase));
        var comesFrom = finish.Face == Face.Inside ? other.Inward : (other.Inward + 2) % 4;
        if (leg.Direction != (comesFrom + 2) % 4)
        {
            faults.Add(WallFaults.FinishNotSquare(leg.Leg.Name, other.Leg.Name));
            return;
        }

        var middle = leg.Finish + Point.Along(leg.Inward) * whole;
        var missed = middle - other.OnFace(finish.Face, finish.Offset, whole);
        var (past, further) = (missed.In(leg.Direction), missed.In(other.Direction));
        if (past == 0 && further == 0) return;
        faults.Add(WallFaults.FinishElsewhere(
            leg.Leg.Name,
            other.Leg.Name,
            past == 0 ? "" : WallFaults.FromFace(Whole(past), past > 0),
            further == 0 ? "" : WallFaults.FromOffset(Whole(further), further > 0)));
    }

    // A half unit more or less is no matter of a tape; it is told as the whole unit above.
    private static Length Whole(long halves) => Length.FromUnits((Math.Abs(halves) + 1) / 2);

    private static void CheckCrossings(List<Fault> faults, IReadOnlyList<PlacedLeg> placed, long whole)
    {
        for (var i = 0; i < placed.Count; i++)
        {
            for (var j = i + 1; j < placed.Count; j++)
            {
                if (!ShareCorner(placed, i, j) && Overlap(Ground(placed[i], whole), Ground(placed[j], whole)))
                    faults.Add(WallFaults.LegsCross(placed[i].Leg.Name, placed[j].Leg.Name));
            }
        }
    }

    // Two legs of one corner both cover it.
    private static bool ShareCorner(IReadOnlyList<PlacedLeg> placed, int one, int other) =>
        Follows(placed[one], placed[other]) || Follows(placed[other], placed[one]);

    private static bool Follows(PlacedLeg leg, PlacedLeg next) => leg.Leg.Turn != Turn.End && next.At == leg.Finish;

    private static (long Left, long Low, long Right, long High) Ground(PlacedLeg leg, long whole)
    {
        var (one, other) = (leg.At, leg.Finish + Point.Along(leg.Inward) * (2 * whole));
        return (Math.Min(one.X, other.X), Math.Min(one.Y, other.Y), Math.Max(one.X, other.X), Math.Max(one.Y, other.Y));
    }

    private static bool Overlap((long Left, long Low, long Right, long High) one, (long Left, long Low, long Right, long High) other) =>
        one.Left < other.Right && other.Left < one.Right && one.Low < other.High && other.Low < one.High;
}
