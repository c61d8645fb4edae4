namespace Offcuts.Matching.Runs;

/// <summary>
/// What one bar can give to a row alone. First, by dynamic programming over places on the bar and whatever has been cut up to there, the least
/// value given up for each sum of intervals and odd ends:
/// <code>
/// reached(at, n, ends) = least value given up so far;  least(n, ends) = min over at of  reached(at, n, ends) - kept(rest after at)
/// </code>
/// Then, for the sums that are wanted, the ways to cut at exactly that value, told apart by what matters to the ties (<see cref="AloneKey"/>), each with
/// the fewest pieces and then saw cuts. Cost: places times pieces times sums that differ at one place, which are few but for kerf.
/// </summary>
internal sealed class AloneCuts
{
    /// <summary>What can't be.</summary>
    public const long Never = long.MaxValue / 4;

    private readonly AloneRow _row;
    private readonly Bar _bar;
    private readonly int _width;
    private readonly View[] _views;
    private readonly SortedList<long, long[]>[] _reached;

    /// <summary>Works out <see cref="Least"/>.</summary>
    public AloneCuts(AloneRow row, Bar bar)
    {
        (_row, _bar) = (row, bar);
        _width = 4 * (1 + (int)Math.Min(row.Intervals, bar.Length / row.Row.Interval));
        Least = Nothing();
        // Here and in what is like it there are loops where a query would do: the first answer of a program waits for the compiler otherwise.
        _views = View.Of(bar);
        _reached = new SortedList<long, long[]>[_views.Length];
        for (var v = 0; v < _views.Length; v++) _reached[v] = Reach(_views[v]);
        Sums = Found(Least);
    }

    /// <summary>By 4 x intervals + ends: the least value given up where the bar is cut for that; <see cref="Never"/> where it can't be.</summary>
    public long[] Least { get; }

    /// <summary>Where that is less than never.</summary>
    public int[] Sums { get; }

    /// <summary>True where another bar gives the same.</summary>
    public bool Like(Bar bar) => bar.Length == _bar.Length && bar.Line == _bar.Line && bar.Bought is null == _bar.Bought is null && bar.Value.Equals(_bar.Value);

    private long[] Nothing()
    {
        var sums = new long[_width];
        Array.Fill(sums, Never);
        return sums;
    }

    private static int[] Found(long[] sums)
    {
        var found = new List<int>();
        for (var sum = 0; sum < sums.Length; sum++)
        {
            if (sums[sum] < Never) found.Add(sum);
        }

        return [.. found];
    }

    private SortedList<long, long[]> Reach(View view)
    {
        var reached = new SortedList<long, long[]> { [-1] = Nothing() };
        reached[-1][0] = _bar.Whole;
        // Places that are reached lie behind the one they are reached from.
        for (var p = 0; p < reached.Count; p++)
        {
            var (at, given) = (reached.Keys[p], reached.Values[p]);
            var sums = Found(given);
            if (at >= 0)
            {
                var rest = _bar.Value(Cutting.After(at, _bar.Length, _row.Part.Kerf).Left);
                foreach (var sum in sums) Least[sum] = Math.Min(Least[sum], given[sum] - rest);
            }

            foreach (var (piece, _, end, kept, _) in Next(view, at))
            {
                if (!reached.TryGetValue(end, out var next)) reached[end] = next = Nothing();
                foreach (var sum in sums)
                {
                    if (Add(sum, piece) is >= 0 and var after) next[after] = Math.Min(next[after], given[sum] - kept);
                }
            }
        }

        return reached;
    }

    // What can be cut next, and what is kept of the trim before it.
    private IEnumerable<(AlonePiece Piece, Ends Way, long End, long Kept, int Saws)> Next(View view, long at)
    {
        foreach (var piece in _row.Pieces)
        {
            if (piece.Kind.Length > _bar.Length - Math.Max(0, at)) continue;
            foreach (var way in Cutting.Ways(piece.Kind.Ends))
            {
                if (Cutting.Start(view, _row.Part, at, piece.Kind.Length, way) is not { } x) continue;
                var before = Cutting.Before(at, x, _row.Part.Kerf);
                yield return (piece, way, x + piece.Kind.Length, _bar.Value(before.Left), before.Saws);
            }
        }
    }

    private int Add(int sum, AlonePiece piece)
    {
        if ((sum & piece.End) != 0) return -1;
        var after = sum + 4 * piece.Intervals + piece.End;
        return after < _width ? after : -1;
    }

    /// <summary>The ways to cut the bar at the least value, for the sums that are wanted; none where that takes more steps than are left.</summary>
    /// <param name="wanted">Which sums.</param>
    /// <param name="mostOdd">No more pieces than this that end on another line round from tie to tie than they began.</param>
    /// <param name="steps">Steps that are left; less by those taken.</param>
    public AloneWay[]? Ways(bool[] wanted, int mostOdd, ref long steps)
    {
        var ways = new Dictionary<AloneKey, AloneWay>();
        for (var v = 0; v < _views.Length; v++)
        {
            var (view, reached) = (_views[v], _reached[v]);
            var useful = Useful(view, reached, wanted);
            var laid = new SortedList<long, Dictionary<AloneKey, AloneWay>> { [-1] = new() { [AloneKey.None] = new AloneWay(view, AloneKey.None, null, Ends.Free, 0, null) } };
            for (var p = 0; p < laid.Count; p++)
            {
                var (at, here) = (laid.Keys[p], laid.Values[p]);
                var given = reached[at];
                var after = Cutting.After(at, _bar.Length, _row.Part.Kerf);
                var rest = _bar.Value(after.Left);
                foreach (var way in here.Values)
                {
                    if (at >= 0 && wanted[way.Key.Sum] && given[way.Key.Sum] - rest == Least[way.Key.Sum]) Keep(ways, way with { Cost = way.Cost + after.Saws });
                }

                foreach (var (piece, turned, end, kept, saws) in Next(view, at))
                {
                    foreach (var way in here.Values)
                    {
                        if (Add(way.Key.Sum, piece) is not (>= 0 and var sum) || !useful[end][sum] || given[way.Key.Sum] - kept != reached[end][sum]) continue;
                        if (--steps < 0) return null;
                        if (way.Key.And(piece) is not { } key || key.Odd > mostOdd) continue;
                        if (!laid.TryGetValue(end, out var there)) laid[end] = there = [];
                        Keep(there, new AloneWay(view, key, piece, turned, way.Cost + AloneWay.OnePiece + saws, way.Cost == 0 ? null : way));
                    }
                }
            }
        }

        return [.. ways.Values];
    }

    private static void Keep(Dictionary<AloneKey, AloneWay> known, AloneWay way)
    {
        if (!known.TryGetValue(way.Key, out var other) || way.Cost < other.Cost) known[way.Key] = way;
    }

    // From which places and sums one that is wanted is still come to at the least value.
    private Dictionary<long, bool[]> Useful(View view, SortedList<long, long[]> reached, bool[] wanted)
    {
        var useful = new Dictionary<long, bool[]>();
        for (var p = reached.Count - 1; p >= 0; p--)
        {
            var (at, given) = (reached.Keys[p], reached.Values[p]);
            var here = useful[at] = new bool[_width];
            var rest = _bar.Value(Cutting.After(at, _bar.Length, _row.Part.Kerf).Left);
            var sums = Found(given);
            foreach (var sum in sums) here[sum] = at >= 0 && wanted[sum] && given[sum] - rest == Least[sum];
            foreach (var (piece, _, end, kept, _) in Next(view, at))
            {
                foreach (var sum in sums)
                {
                    if (!here[sum] && Add(sum, piece) is >= 0 and var after && useful[end][after] && given[sum] - kept == reached[end][after]) here[sum] = true;
                }
            }
        }

        return useful;
    }
}

/// <summary>The cuts of a bar, the last one first.</summary>
/// <param name="View">The bar.</param>
/// <param name="Key">What they are to the row.</param>
/// <param name="Piece">The last piece; none where nothing is cut yet.</param>
/// <param name="Turned">How it lies.</param>
/// <param name="Cost">Pieces times <see cref="OnePiece"/>, and saw cuts.</param>
/// <param name="Before">What was cut before it.</param>
internal sealed record AloneWay(View View, AloneKey Key, AlonePiece? Piece, Ends Turned, int Cost, AloneWay? Before)
{
    /// <summary>Counts more than any saw cuts.</summary>
    public const int OnePiece = 1 << 16;
}
