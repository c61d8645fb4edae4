using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;

namespace Offcuts.Walls;

/// <summary>A leg where it stands on the ground. Points are in half units of length, on the outside face of the leg.</summary>
/// <param name="Leg">The leg.</param>
/// <param name="Place">Its place in its chain, from 0.</param>
/// <param name="Outside">On which hand its outside lies.</param>
/// <param name="Start">What it starts at.</param>
/// <param name="End">What it ends at.</param>
/// <param name="Direction">Quarter turns to the left from the direction of the wall's first leg.</param>
/// <param name="At">Where its outside face starts.</param>
internal sealed record PlacedLeg(Leg Leg, int Place, Hand Outside, LegEnd Start, LegEnd End, int Direction, Point At)
{
    /// <summary>Where its outside face ends.</summary>
    public Point Finish => At + Point.Along(Direction) * (2 * Leg.Length.Units);

    /// <summary>The direction from its outside face to its inside face.</summary>
    public int Inward => (Direction + (Outside == Hand.Right ? 1 : 3)) % 4;

    /// <summary>A point on one of its faces; whole is the thickness of the wall.</summary>
    public Point OnFace(Face face, Length offset, long whole) =>
        At + Point.Along(Direction) * (2 * offset.Units) + (face == Face.Inside ? Point.Along(Inward) * (2 * whole) : default);
}

/// <summary>A point on the ground or a way between two, in half units.</summary>
internal readonly record struct Point(long X, long Y)
{
    /// <summary>One half unit in a direction, by quarter turns to the left from X.</summary>
    public static Point Along(int direction) => direction switch { 0 => new(1, 0), 1 => new(0, 1), 2 => new(-1, 0), _ => new(0, -1) };

    public static Point operator +(Point a, Point b) => new(a.X + b.X, a.Y + b.Y);

    public static Point operator -(Point a, Point b) => new(a.X - b.X, a.Y - b.Y);

    public static Point operator *(Point a, long times) => new(a.X * times, a.Y * times);

    /// <summary>How far it goes in a direction.</summary>
    public long In(int direction) => X * Along(direction).X + Y * Along(direction).Y;
}

/// <summary>
/// Puts the legs of a wall on the ground, chain by chain: the first at the origin, going along X; a chain that starts in a tee once
/// the leg that it starts from stands.
/// </summary>
internal sealed class Chains
{
    private readonly WallSheet _wall;
    private readonly long _whole;
    private readonly List<Fault> _faults;
    private readonly Dictionary<string, PlacedLeg> _placed = new(StringComparer.OrdinalIgnoreCase);

    private Chains(WallSheet wall, long whole, List<Fault> faults) => (_wall, _whole, _faults) = (wall, whole, faults);

    /// <summary>The legs in the order of the sheet; adds faults where they can't stand. The sheet's own structure must be sound.</summary>
    public static IReadOnlyList<PlacedLeg> Of(WallSheet wall, long whole, List<Fault> faults) => new Chains(wall, whole, faults).PlaceAll();

    private List<PlacedLeg> PlaceAll()
    {
        var waiting = Split(_wall.Legs);
        PlaceFirst(waiting[0]);
        waiting.RemoveAt(0);
        while (waiting.Count > 0)
        {
            var next = waiting.FindIndex(chain => _placed.ContainsKey(chain[0].Start!.Leg));
            if (next < 0)
            {
                _faults.Add(WallFaults.TeeInCircle(waiting[0][0].Name));
                return [];
            }

            PlaceBranch(waiting[next]);
            waiting.RemoveAt(next);
        }

        return [.. _wall.Legs.Select(leg => _placed[leg.Name])];
    }

    private static List<IReadOnlyList<Leg>> Split(IReadOnlyList<Leg> legs)
    {
        var chains = new List<List<Leg>>();
        foreach (var leg in legs)
        {
            if (chains.Count == 0 || leg.Start is not null) chains.Add([]);
            chains[^1].Add(leg);
        }

        return [.. chains];
    }

    private void PlaceFirst(IReadOnlyList<Leg> chain)
    {
        var outside = OutsideOf(chain);
        if (_wall.Closed && Net(chain) is var net && Math.Abs(net) != 4) _faults.Add(WallFaults.TurnsDontClose(net));
        else if (_wall.Closed && chain[0].Outside is { } said && said != ByTurns(chain)) _faults.Add(WallFaults.OutsideOfClosed(chain[0].Name, WallWords.Of(ByTurns(chain))));

        var end = Walk(chain, outside, 0, default, LegEnd.Free);
        if (!_wall.Closed || _faults.Count > 0) return;
        var first = chain[0].Name;
        if (end != default) _faults.Add(WallFaults.DoesNotClose(chain[^1].Name, first, Missed(end.X, by => WallFaults.Along(first, by, end.X > 0)), Missed(end.Y, by => WallFaults.Across(first, by, end.Y > 0))));
    }

    private void PlaceBranch(IReadOnlyList<Leg> chain)
    {
        var start = chain[0].Start!;
        var through = _placed[start.Leg];
        var outside = OutsideOf(chain);
        var direction = start.Face == Face.Inside ? through.Inward : (through.Inward + 2) % 4;
        var toOutside = Point.Along((direction + (outside == Hand.Right ? 3 : 1)) % 4);
        Walk(chain, outside, direction, through.OnFace(start.Face, start.Offset, _whole) + toOutside * _whole, LegEnd.Tee);
    }

    // Places one leg after the other and gives where the last one ends.
    private Point Walk(IReadOnlyList<Leg> chain, Hand outside, int direction, Point at, LegEnd start)
    {
        var closed = _wall.Closed && start != LegEnd.Tee;
        for (var i = 0; i < chain.Count; i++)
        {
            var leg = chain[i];
            var before = i > 0 ? Corner(chain[i - 1].Turn, outside) : closed ? Corner(chain[^1].Turn, outside) : start;
            var after = leg.Turn != Turn.End ? Corner(leg.Turn, outside) : leg.Finish is null ? LegEnd.Free : LegEnd.Tee;
            var placed = new PlacedLeg(leg, i, outside, before, after, direction, at);
            _placed.Add(leg.Name, placed);
            at = placed.Finish;
            direction = (direction + (leg.Turn == Turn.Left ? 1 : leg.Turn == Turn.Right ? 3 : 0)) % 4;
        }

        return at;
    }

    private static LegEnd Corner(Turn turn, Hand outside) =>
        (turn == Turn.Left) == (outside == Hand.Right) ? LegEnd.OutsideCorner : LegEnd.InsideCorner;

    private static int Net(IReadOnlyList<Leg> chain) => chain.Count(leg => leg.Turn == Turn.Left) - chain.Count(leg => leg.Turn == Turn.Right);

    private static Hand OutsideOf(IReadOnlyList<Leg> chain) => chain[0].Outside ?? ByTurns(chain);

    private static Hand ByTurns(IReadOnlyList<Leg> chain) => Net(chain) < 0 ? Hand.Left : Hand.Right;

    // Along outside faces every way is a whole number of units; the halves come from tees only.
    private static string Missed(long halves, Func<Length, string> told) => halves == 0 ? "" : told(Length.FromUnits(Math.Abs(halves) / 2));
}
