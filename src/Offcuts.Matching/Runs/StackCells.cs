using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>One stretch of one row of a run, by itself.</summary>
/// <param name="Row">Number of the row in the run, from the bottom up.</param>
/// <param name="Graph">What it can be laid from.</param>
/// <param name="FirstArc">Number of its first arc in the graph of its row.</param>
internal sealed record StackCell(int Row, RowGraph Graph, int FirstArc)
{
    /// <summary>Every way to lay it that its neighbours leave.</summary>
    public RowLayout[] Layouts { get; set; } = [];
}

/// <summary>Two cells of neighbouring rows whose joints may come too near to each other, and which of their layouts fit.</summary>
/// <param name="A">Number of the lower cell.</param>
/// <param name="B">Number of the upper one.</param>
/// <param name="Pairs">Numbers of layouts that keep the stagger.</param>
internal sealed record CellFit(int A, int B, (int OfA, int OfB)[] Pairs);

/// <summary>What listing a run came to.</summary>
/// <param name="Cells">Its stretches with their layouts; none where it is not listed.</param>
/// <param name="Fits">How they fit.</param>
/// <param name="Impossible">True where it is not listed since it can't be laid; false where there are too many layouts, or time ran out.</param>
internal readonly record struct CellList(StackCell[] Cells, CellFit[] Fits, bool Impossible)
{
    /// <summary>True where all layouts are there.</summary>
    public bool Listed => Cells.Length > 0;

    /// <summary>Nothing is known.</summary>
    public static CellList Unknown => new([], [], Impossible: false);

    /// <summary>Some stretch has no layout that fits on any of its neighbours'.</summary>
    public static CellList CannotBeLaid => new([], [], Impossible: true);
}

/// <summary>
/// The stretches of a run with all ways to lay them, where the stagger leaves few. A stretch is listed by itself where it has few layouts, else with a stretch above or below it:
/// what fits on no layout of that is left out. Then which layouts fit on each other is looked up, and what fits nowhere is struck out until all that is left has
/// something under it and on it. Stretches of one course know of each other only by the courses below and above, for no joint lies in an opening. Cost: pairs of layouts listed
/// times their joints.
/// </summary>
internal sealed class StackCells
{
    // With more a run is not of the kind that is listed here.
    private const int MostAlone = 2000;
    private const int MostPairs = 20_000;
    private const int MostFits = 400_000;
    private const long MostTried = 60_000_000;

    private readonly KindTable _table;
    private readonly Effort _effort;
    private readonly Dictionary<int, (RowGraph Graph, int FirstArc)[]> _graphs = [];
    private readonly Dictionary<(int, int, long), (RowLayout[] Lower, RowLayout[] Upper)?> _pairs = [];
    private readonly Dictionary<int, RowLayout[]?> _alone = [];
    private readonly Dictionary<(int Shape, string Arcs), RowLayout> _known = [];
    private readonly Dictionary<(RowLayout[], RowLayout[], long), (int, int)[]?> _fits = [];
    private int _shapes;

    /// <summary>Lists of the runs of a table; runs that look alike are listed once.</summary>
    /// <param name="table">Kinds, rows and bars.</param>
    /// <param name="effort">Limit.</param>
    public StackCells(KindTable table, Effort effort) => (_table, _effort) = (table, effort);

    /// <summary>The stretches of a run and how they fit.</summary>
    /// <param name="rows">Its rows from the bottom up, or some of them that lie on each other.</param>
    public CellList Of(IReadOnlyList<Row> rows)
    {
        var cells = rows.SelectMany((row, r) => Graphs(_table.Rows[row.Index]).Select(one => new StackCell(r, one.Graph, one.FirstArc))).ToArray();
        var stagger = rows[0].Stagger;
        (int A, int B)[] near =
        [
            .. from a in Enumerable.Range(0, cells.Length)
               from b in Enumerable.Range(a, cells.Length - a)
               where cells[b].Row == cells[a].Row + 1 && Near(cells[a].Graph, cells[b].Graph, stagger)
               select (a, b),
        ];
        // The longest first: where there are too many layouts, it is that one which has them.
        foreach (var c in Enumerable.Range(0, cells.Length).OrderByDescending(c => cells[c].Graph.At[^1] - cells[c].Graph.At[0]))
        {
            if (_effort.Over || Listed(cells, near, c, rows[0]) is not { } listed) return CellList.Unknown;
            if (listed.Length == 0) return CellList.CannotBeLaid;
            cells[c].Layouts = listed;
        }

        var fits = new List<CellFit>();
        foreach (var (a, b) in near)
        {
            if (_effort.Over || Fitting(cells[a], cells[b], stagger) is not { } pairs) return CellList.Unknown;
            if (pairs.Length == 0) return CellList.CannotBeLaid;
            fits.Add(new CellFit(a, b, pairs));
        }

        return Supported(cells, fits);
    }

    private (RowGraph Graph, int FirstArc)[] Graphs(RowGraph row) =>
        _graphs.TryGetValue(row.Shape, out var known) ? known : _graphs[row.Shape] = [.. row.Stretches(_ => _shapes++)];

    private static bool Near(RowGraph a, RowGraph b, long stagger)
    {
        if (!a.Joint.Contains(true) || !b.Joint.Contains(true)) return false;
        static (long First, long Last) Ends(RowGraph graph) => (graph.At[Array.IndexOf(graph.Joint, true)], graph.At[Array.LastIndexOf(graph.Joint, true)]);
        var ((fromA, toA), (fromB, toB)) = (Ends(a), Ends(b));
        return fromB - toA < stagger && fromA - toB < stagger;
    }

    private RowLayout[]? Listed(StackCell[] cells, (int A, int B)[] near, int cell, Row rules)
    {
        if (Alone(cells[cell].Graph) is { } alone) return alone;
        RowLayout[]? best = null;
        foreach (var (a, b) in near.Where(one => one.A == cell || one.B == cell))
        {
            if (Pairs(cells[a].Graph, cells[b].Graph, rules) is not { } pairs) continue;
            var own = a == cell ? pairs.Lower : pairs.Upper;
            if (best is null || own.Length < best.Length) best = own;
        }

        return best;
    }

    private RowLayout[]? Alone(RowGraph graph)
    {
        if (_alone.TryGetValue(graph.Shape, out var known)) return known;
        return _alone[graph.Shape] = AloneLayouts.Of(graph, MostAlone) is { } all ? [.. all.Select(arcs => Known(graph, arcs))] : null;
    }

    private RowLayout Known(RowGraph graph, int[] arcs)
    {
        var name = (graph.Shape, string.Join(',', arcs));
        return _known.TryGetValue(name, out var layout) ? layout : _known[name] = new RowLayout(graph, arcs);
    }

    private (RowLayout[] Lower, RowLayout[] Upper)? Pairs(RowGraph lower, RowGraph upper, Row rules)
    {
        var key = (lower.Shape, upper.Shape, rules.Stagger);
        if (_pairs.TryGetValue(key, out var known)) return known;
        var found = Many(lower, upper, rules) ? null : PairLayouts.Of(new CoursePair(lower, upper, rules.Stagger), MostPairs, _known, _effort);
        return _pairs[key] = found is null ? null : ([.. found.Select(one => one.Lower).Distinct()], [.. found.Select(one => one.Upper).Distinct()]);
    }

    // So many ways are seen without counting, which takes long where they are many: where both rows lie, from joint to joint of a course it may be anything from twice the stagger to
    // the longest piece, with the joint of the other course between; where only one lies, anything a piece may be long.
    private bool Many(RowGraph lower, RowGraph upper, Row rules)
    {
        var (longest, interval) = (_table.Part.LongestBar, rules.Interval);
        var (between, alone) = (1 + Math.Max(0, longest - 2 * rules.Stagger) / interval, 1 + Math.Max(0, longest - rules.Shortest) / interval);
        var (from, to) = (Math.Max(lower.At[0], upper.At[0]), Math.Min(lower.At[^1], upper.At[^1]));
        var (left, right) = (from - Math.Min(lower.At[0], upper.At[0]), Math.Max(lower.At[^1], upper.At[^1]) - to);
        double Ways(long choices, long length) => Math.Pow(choices, Math.Max(0, length / longest - 1));
        return Ways(between, to - from) * Ways(alone, left) * Ways(alone, right) > MostPairs;
    }

    // By the places that the joints of an upper layout bar in the lower row, a bit each.
    private (int, int)[]? Fitting(StackCell lower, StackCell upper, long stagger)
    {
        var key = (lower.Layouts, upper.Layouts, stagger);
        if (_fits.TryGetValue(key, out var known)) return known;
        if ((long)lower.Layouts.Length * upper.Layouts.Length > MostTried) return null;
        var places = lower.Graph.At.Select((at, n) => (at, n)).ToDictionary(one => one.at, one => one.n);
        var words = places.Count / 64 + 1;
        ulong[] Bits(IEnumerable<int> set)
        {
            var bits = new ulong[words];
            foreach (var n in set) bits[n / 64] |= 1UL << (n % 64);
            return bits;
        }

        var joints = lower.Layouts.Select(one => Bits(one.Joints.Select(at => places[at]))).ToArray();
        var barred = upper.Layouts.Select(one => Bits(one.Joints.SelectMany(at => Near(lower.Graph.At, at, stagger)))).ToArray();
        var pairs = new List<(int, int)>();
        for (var a = 0; a < joints.Length && pairs.Count <= MostFits && !_effort.Over; a++)
        {
            for (var b = 0; b < barred.Length; b++)
            {
                var clear = true;
                for (var w = 0; w < words && clear; w++) clear = (joints[a][w] & barred[b][w]) == 0;
                if (clear) pairs.Add((a, b));
            }
        }

        if (_effort.Over) return null;
        return _fits[key] = pairs.Count > MostFits ? null : [.. pairs];
    }

    // The places nearer than the stagger to a joint; places lie from left to right.
    private static IEnumerable<int> Near(long[] at, long joint, long stagger)
    {
        var first = Array.BinarySearch(at, joint - stagger + 1);
        for (var n = first < 0 ? ~first : first; n < at.Length && at[n] < joint + stagger; n++) yield return n;
    }

    // What has nothing under it or on it, where something must lie, is struck out.
    private static CellList Supported(StackCell[] cells, List<CellFit> fits)
    {
        var alive = cells.Select(cell => cell.Layouts.Select(_ => true).ToArray()).ToArray();
        for (var changed = true; changed;)
        {
            changed = false;
            foreach (var fit in fits)
            {
                var (ofA, ofB) = (new bool[alive[fit.A].Length], new bool[alive[fit.B].Length]);
                foreach (var (a, b) in fit.Pairs)
                {
                    if (alive[fit.A][a] && alive[fit.B][b]) ofA[a] = ofB[b] = true;
                }

                foreach (var (own, supported) in new[] { (alive[fit.A], ofA), (alive[fit.B], ofB) })
                {
                    for (var l = 0; l < own.Length; l++)
                    {
                        if (!own[l] || supported[l]) continue;
                        own[l] = false;
                        changed = true;
                    }
                }
            }
        }

        if (alive.Any(own => !own.Contains(true))) return CellList.CannotBeLaid;
        var number = alive.Select(own =>
        {
            var next = 0;
            return own.Select(one => one ? next++ : -1).ToArray();
        }).ToArray();
        for (var c = 0; c < cells.Length; c++) cells[c].Layouts = [.. cells[c].Layouts.Where((_, l) => alive[c][l])];
        return new CellList(cells, [.. fits.Select(fit => fit with { Pairs = [.. fit.Pairs.Where(one => alive[fit.A][one.OfA] && alive[fit.B][one.OfB]).Select(one => (number[fit.A][one.OfA], number[fit.B][one.OfB]))] })], Impossible: false);
    }
}

/// <summary>Every way to lay one stretch, whatever lies under and on it.</summary>
internal static class AloneLayouts
{
    /// <summary>The arcs of each; none where there are more than so many.</summary>
    public static IReadOnlyList<int[]>? Of(RowGraph graph, int most)
    {
        var ways = new int[graph.Count];
        ways[^1] = 1;
        for (var at = graph.Count - 2; at >= 0; at--)
        {
            var sum = 0L;
            for (var arc = graph.First[at]; arc < graph.First[at + 1]; arc++) sum += ways[graph.To[arc]];
            ways[at] = (int)Math.Min(sum, most + 1L);
        }

        if (ways[0] > most) return null;
        var (found, arcs) = (new List<int[]>(), new List<int>());
        From(0);
        return found;

        void From(int at)
        {
            if (at == graph.Count - 1) found.Add([.. arcs]);
            for (var arc = graph.First[at]; arc < graph.First[at + 1]; arc++)
            {
                if (ways[graph.To[arc]] == 0) continue;
                arcs.Add(arc);
                From(graph.To[arc]);
                arcs.RemoveAt(arcs.Count - 1);
            }
        }
    }
}
