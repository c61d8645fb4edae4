namespace Offcuts.Matching.Runs;

/// <summary>Two neighbouring rows, or one alone.</summary>
/// <param name="Lower">The lower row.</param>
/// <param name="Upper">The row on it, or none.</param>
/// <param name="Stagger">How far their joints lie from each other.</param>
internal readonly record struct CoursePair(RowGraph Lower, RowGraph? Upper, long Stagger)
{
    /// <summary>Places of the lower row where no joint may lie, for what has been laid below it; none where all are free.</summary>
    public bool[]? Below { get; init; }

    /// <summary>The same of the upper row, for what has been laid above it.</summary>
    public bool[]? Above { get; init; }

    /// <summary>What a joint costs beside its pieces; in a bound only where joints or ties are bounded.</summary>
    public long Joint { get; init; }

    /// <summary>What a tie of its own costs.</summary>
    public long Tie { get; init; }

    /// <summary>True where it is the lower row that goes on from these places: the one that stands farther left does.</summary>
    public bool LowerGoesOn(int lower, int upper) =>
        Upper is null || upper == Upper.Count - 1 || (lower < Lower.Count - 1 && Lower.Turn[lower] <= Upper.Turn[upper]);

    /// <summary>True where no joint of one row lies nearer than the stagger to one of the other.</summary>
    public static bool Keeps(IReadOnlyList<long> joints, IReadOnlyList<long> others, long stagger)
    {
        foreach (var at in joints)
        {
            foreach (var other in others)
            {
                if (Math.Abs(at - other) < stagger) return false;
            }
        }

        return true;
    }
}

/// <summary>
/// What two neighbouring rows are made of at least, at prices of kinds. Shortest path over pairs of places, the row that stands farther left
/// going on, so that a new joint has to keep its distance only from the place at which the other row stands:
/// <code>
/// cost(a, b) -> cost(a', b) + price of the piece from a to a'    where a' and b are not both joints nearer than the stagger
/// </code>
/// What a row has left behind at the edge of an opening is no longer seen: there two rows may come out with joints too near to each other,
/// which only makes the price less. Cost: pairs of places within two pieces' length times pieces from each.
/// </summary>
internal sealed class CoursePairs
{
    private long[] _cost = [];
    private int[] _by = [];

    /// <summary>How many steps laying a pair takes at most: pairs of places, and arcs from them.</summary>
    public static long Steps(CoursePair pair)
    {
        var (lower, upper) = (pair.Lower, pair.Upper);
        if (upper is null) return lower.Count + lower.Kind.Length;
        return (long)lower.Count * upper.Count + (long)lower.Kind.Length * upper.Count + (long)upper.Kind.Length * lower.Count;
    }

    /// <summary>The least price of laying both, and the arcs of each from left to right; none where it can't be done.</summary>
    /// <param name="pair">The rows, each with at least one stretch.</param>
    /// <param name="prices">By number of kind; not below 0.</param>
    public (long Least, int[] Lower, int[] Upper)? Cheapest(CoursePair pair, long[] prices)
    {
        var (lower, upper) = (pair.Lower, pair.Upper);
        var (a, b) = (lower.Count, upper?.Count ?? 1);
        if (_cost.Length < a * b) (_cost, _by) = (new long[a * b], new int[a * b]);
        Array.Fill(_cost, long.MaxValue, 0, a * b);
        _cost[0] = 0;
        for (var i = 0; i < a; i++)
        {
            for (var j = 0; j < b; j++)
            {
                var state = i * b + j;
                if (_cost[state] == long.MaxValue) continue;
                if (pair.LowerGoesOn(i, j))
                    GoOn(pair, new Move(lower, i, upper, j, state - i * b, b, Upper: false), _cost[state], prices);
                else
                    GoOn(pair, new Move(upper!, j, lower, i, state - j, 1, Upper: true), _cost[state], prices);
            }
        }

        return _cost[a * b - 1] == long.MaxValue ? null : (_cost[a * b - 1], Arcs(pair, wanted: false), Arcs(pair, wanted: true));
    }

    // Which row goes on from where, where the other one stands, and how the number of the next state is made: base + place x step.
    private readonly record struct Move(RowGraph Row, int At, RowGraph? Other, int Beside, int Base, int Step, bool Upper);

    // An arc of the upper row is noted as its complement.
    private void GoOn(in CoursePair pair, in Move move, long cost, long[] prices)
    {
        var row = move.Row;
        var barred = move.Upper ? pair.Above : pair.Below;
        var near = pair.Stagger > 0 && move.Other is { } other && other.Joint[move.Beside];
        var place = near ? move.Other!.At[move.Beside] : 0;
        for (var arc = row.First[move.At]; arc < row.First[move.At + 1]; arc++)
        {
            var to = row.To[arc];
            if (barred is not null && barred[to]) continue;
            if (near && row.Joint[to] && Math.Abs(row.At[to] - place) < pair.Stagger) continue;
            var all = cost + (row.Kind[arc] < 0 ? 0 : prices[row.Kind[arc]]) + (row.Joint[to] ? pair.Joint : 0) + (row.Tie[to] ? pair.Tie : 0);
            var state = move.Base + to * move.Step;
            if (all >= _cost[state]) continue;
            _cost[state] = all;
            _by[state] = move.Upper ? ~arc : arc;
        }
    }

    private int[] Arcs(CoursePair pair, bool wanted)
    {
        var arcs = new List<int>();
        var b = pair.Upper?.Count ?? 1;
        var (i, j) = (pair.Lower.Count - 1, b - 1);
        while (i > 0 || j > 0)
        {
            var by = _by[i * b + j];
            var (upper, arc) = (by < 0, by < 0 ? ~by : by);
            var row = upper ? pair.Upper! : pair.Lower;
            if (upper == wanted && row.Kind[arc] >= 0) arcs.Add(arc);
            if (upper) j = row.From[arc];
            else i = row.From[arc];
        }

        arcs.Reverse();
        return [.. arcs];
    }
}
