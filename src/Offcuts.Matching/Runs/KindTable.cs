using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// Every kind of piece that the rows of a part can be laid from, numbered, with what each row and each bar can do with them. Not for rows
/// whose joints may lie anywhere, for there the kinds cannot be listed.
/// </summary>
internal sealed class KindTable
{
    private readonly Dictionary<Kind, int> _number = [];
    private readonly List<Kind> _kinds = [];
    private readonly Dictionary<(long Length, long? Line, bool Mirrored), BarGraph> _graphs = [];

    private KindTable(RunPart part) => Part = part;

    /// <summary>How large a table may be. Beyond that it is given up, before memory or time run out.</summary>
    /// <param name="Kinds">Most kinds of pieces.</param>
    /// <param name="Arcs">Most arcs of all different rows, and most arcs and places of all different bars.</param>
    /// <param name="PairSteps">Most steps of laying one pair of rows.</param>
    public sealed record Size(int Kinds, int Arcs, long PairSteps)
    {
        /// <summary>Some hundred megabytes at most, and a tenth of a second or so to price everything once.</summary>
        public static Size Usual { get; } = new(3000, 4_000_000, 60_000_000);
    }

    /// <summary>Kerf and interval.</summary>
    public RunPart Part { get; }

    /// <summary>The kinds.</summary>
    public IReadOnlyList<Kind> Kinds => _kinds;

    /// <summary>Row by row what it can be laid from.</summary>
    public RowGraph[] Rows { get; private set; } = [];

    /// <summary>Arcs and places of all different bars.</summary>
    public int BarArcs { get; private set; }

    /// <summary>The table of a part, or none where it would be too large or would not be ready in time.</summary>
    /// <param name="part">The part: joints on lines only.</param>
    /// <param name="size">How large it may be.</param>
    /// <param name="effort">Limit.</param>
    public static KindTable? Of(RunPart part, Size size, Effort effort)
    {
        var table = new KindTable(part);
        var known = new Dictionary<string, RowGraph>();
        var rows = new List<RowGraph>();
        foreach (var row in part.Rows)
        {
            // Rows that look alike share one: the same stretches on the same lines, by the same rules, beside the same standing joints.
            var lines = row.Of.Lines;
            var name = $"{string.Join(',', row.Stretches.Select(at => $"{at.From}-{at.To}"))}|{lines.FirstTie.Units}|{lines.TieSpacing.Units}|{row.Interval}|{row.Shortest}|{row.Of.Joints}|{row.Of.Reversible}|{string.Join(',', row.Standing)}|{row.Stagger}";
            if (!known.TryGetValue(name, out var graph))
            {
                if (effort.Over || RowGraph.Of(table, row, known.Count, size.Arcs - known.Values.Sum(one => one.Kind.Length)) is not { } drawn) return null;
                graph = known[name] = drawn;
            }

            rows.Add(graph);
            if (table._kinds.Count > size.Kinds) return null;
        }

        table.Rows = [.. rows];
        if (PairRelaxation.Pairs(table).Any(pair => CoursePairs.Steps(pair.Of) > size.PairSteps)) return null;
        return table.DrawBars(size, effort) ? table : null;
    }

    // All at once, so that a table that is handed out holds all it will ever hold.
    private bool DrawBars(Size size, Effort effort)
    {
        foreach (var view in Part.Bars.SelectMany(View.Of))
        {
            if (_graphs.ContainsKey(KeyOf(view))) continue;
            if (BarGraph.Of(this, view, size.Arcs - BarArcs, effort) is not { } graph) return false;
            _graphs[KeyOf(view)] = graph;
            BarArcs += graph.Size;
        }

        return true;
    }

    /// <summary>The number of a kind, which is given where it has none yet.</summary>
    public int NumberOf(Kind kind)
    {
        if (_number.TryGetValue(kind, out var number)) return number;
        _kinds.Add(kind);
        return _number[kind] = _kinds.Count - 1;
    }

    /// <summary>The ways to cut a bar from one of its ends; shared by bars of one shape.</summary>
    public BarGraph Graph(View view) => _graphs[KeyOf(view)];

    /// <summary>The pieces of a row that is laid along these arcs of its graph, from its beginning on, each with the stretch that it lies in.</summary>
    public IEnumerable<Laid> Laid(Row row, RowGraph graph, IEnumerable<int> arcs)
    {
        var stretch = 0;
        foreach (var arc in arcs)
        {
            var (from, to) = (graph.At[graph.From[arc]], graph.At[graph.To[arc]]);
            while (row.Stretches[stretch].To < to) stretch++;
            yield return new Laid(row, stretch, from, to, _kinds[graph.Kind[arc]]);
        }
    }

    private static (long Length, long? Line, bool Mirrored) KeyOf(View view) => (view.Bar.Length, view.Bar.Line, view.Mirrored);

    /// <summary>Of which kind a piece can be trimmed to which other, one step each.</summary>
    public IEnumerable<(int From, int To)> Trims()
    {
        foreach (var group in _kinds.Where(kind => kind.Ends != Ends.Both).GroupBy(kind => (kind.Ends, kind.Ends == Ends.Free ? 0 : kind.Length % Part.Interval)))
        {
            var chain = group.Order().ToArray();
            for (var k = 1; k < chain.Length; k++) yield return (_number[chain[k]], _number[chain[k - 1]]);
        }

        var both = _kinds.Where(kind => kind.Ends == Ends.Both).Order().ToArray();
        for (var k = 1; k < both.Length; k++) yield return (_number[both[k]], _number[both[k - 1]]);
        foreach (var odd in _kinds.Where(kind => kind.Ends is Ends.One or Ends.Left or Ends.Right))
        {
            if (Array.Find(both, kind => kind.Length >= odd.Length) is { Length: > 0 } longer) yield return (_number[longer], _number[odd]);
        }
    }
}

/// <summary>A row as a graph: its places from left to right, and what a piece between two of them is.</summary>
internal sealed class RowGraph
{
    private RowGraph(int shape, long[] at, bool[] joint, bool[] tie, long[] turn, int[] first, (int From, int To, int Kind)[] arcs)
    {
        (Shape, At, Joint, Tie, Turn, First) = (shape, at, joint, tie, turn, first);
        (From, To, Kind) = ([.. arcs.Select(arc => arc.From)], [.. arcs.Select(arc => arc.To)], [.. arcs.Select(arc => arc.Kind)]);
    }

    /// <summary>Rows of one shape have one graph.</summary>
    public int Shape { get; }

    /// <summary>Where each place lies.</summary>
    public long[] At { get; }

    /// <summary>True where it is a joint, false at the ends of a stretch.</summary>
    public bool[] Joint { get; }

    /// <summary>True where a joint there needs a tie of its own.</summary>
    public bool[] Tie { get; }

    /// <summary>By which place it is its turn to be gone on from: a little before it at the left end of a stretch.</summary>
    public long[] Turn { get; }

    /// <summary>From which number on the arcs of each place stand; one more at the end.</summary>
    public int[] First { get; }

    /// <summary>The place each arc begins at.</summary>
    public int[] From { get; }

    /// <summary>The place each arc leads to.</summary>
    public int[] To { get; }

    /// <summary>The kind of the piece, or -1 for the leap to the next stretch.</summary>
    public int[] Kind { get; }

    public int Count => At.Length;

    /// <summary>
    /// Its stretches each by itself, from left to right: what is a joint, a tie, a kind there is the same. And the number of each one's first arc in this row; they
    /// stand there in the same order.
    /// </summary>
    /// <param name="shape">The number of the shape of each.</param>
    public IEnumerable<(RowGraph Graph, int FirstArc)> Stretches(Func<int, int> shape)
    {
        var (from, number) = (0, 0);
        for (var at = 0; at < Count; at++)
        {
            // The end of a stretch has the arc of no kind, and no other.
            if (at < Count - 1 && (First[at + 1] == First[at] || Kind[First[at]] >= 0)) continue;
            var (lowest, arcs) = (First[from], First[at] - First[from]);
            yield return (new RowGraph(
                shape(number++), At[from..(at + 1)], Joint[from..(at + 1)], Tie[from..(at + 1)], Turn[from..(at + 1)],
                [.. First[from..(at + 1)].Append(First[at]).Select(one => one - lowest)],
                [.. Enumerable.Range(lowest, arcs).Select(arc => (From[arc] - from, To[arc] - from, Kind[arc]))]), lowest);
            from = at + 1;
        }
    }

    /// <summary>The graph of a row; none where it has more than so many arcs.</summary>
    public static RowGraph? Of(KindTable table, Row row, int shape, int most)
    {
        var (at, joint, tie, turn, arcs) = (new List<long>(), new List<bool>(), new List<bool>(), new List<long>(), new List<List<(int To, int Kind)>>());
        foreach (var stretch in row.Stretches)
        {
            if (arcs.Count > 0) arcs[^1].Add((arcs.Count, -1));
            var (places, first) = (Places.Of(table.Part, row, stretch), arcs.Count);
            for (var a = 0; a < places.Length; a++)
            {
                at.Add(places[a]);
                joint.Add(a > 0 && a < places.Length - 1);
                tie.Add(joint[^1] && !row.IsTie(places[a]));
                turn.Add(a == 0 ? places[a] + row.Shortest - row.Stagger : places[a]);
                var from = new List<(int, int)>();
                for (var b = a + 1; b < places.Length && places[b] - places[a] <= table.Part.LongestBar; b++)
                {
                    if (places[b] - places[a] >= row.Shortest) from.Add((first + b, table.NumberOf(row.KindOf(stretch, places[a], places[b]))));
                }

                arcs.Add(from);
                if ((most -= from.Count) < 0) return null;
            }
        }

        var start = new int[arcs.Count + 1];
        for (var a = 0; a < arcs.Count; a++) start[a + 1] = start[a] + arcs[a].Count;
        return new RowGraph(shape, [.. at], [.. joint], [.. tie], [.. turn], start, [.. arcs.SelectMany((one, a) => one.Select(arc => (a, arc.To, arc.Kind)))]);
    }
}

/// <summary>
/// A bar as a graph, cut from one of its ends: where a cut may end, and by which cut one gets from such a place to the next. The most it
/// earns is then a longest path.
/// </summary>
internal sealed class BarGraph
{
    private readonly long[] _rest;
    private readonly int[] _first;
    private readonly (int To, int Kind, long Trim, Ends Way)[] _arcs;

    private BarGraph(long[] rest, int[] first, (int To, int Kind, long Trim, Ends Way)[] arcs) => (_rest, _first, _arcs) = (rest, first, arcs);

    /// <summary>Arcs and places.</summary>
    public int Size => _arcs.Length + _rest.Length;

    /// <summary>
    /// The graph of a bar seen from one end; none where it has more than so many arcs and places, or where time runs out before it is drawn.
    /// Where lengths have no step in common every sum of them is a place, and there may be very many.
    /// </summary>
    public static BarGraph? Of(KindTable table, View view, int most, Effort effort)
    {
        var (part, kerf) = (table.Part, table.Part.Kerf);
        var ends = new SortedSet<long> { -1 };
        var found = new SortedDictionary<long, List<(long To, int Kind, long Trim, Ends Way)>>();
        while (ends.Count > 0)
        {
            if (effort.Over) return null;
            var at = ends.Min;
            ends.Remove(at);
            var arcs = found[at] = [];
            for (var k = 0; k < table.Kinds.Count; k++)
            {
                foreach (var way in Cutting.Ways(table.Kinds[k].Ends))
                {
                    if (Cutting.Start(view, part, at, table.Kinds[k].Length, way) is not { } x) continue;
                    var to = x + table.Kinds[k].Length;
                    arcs.Add((to, k, Cutting.Before(at, x, kerf).Left, way));
                    if (!found.ContainsKey(to)) ends.Add(to);
                }
            }

            if ((most -= arcs.Count + 1) < 0) return null;
        }

        var number = found.Keys.Select((at, n) => (at, n)).ToDictionary(one => one.at, one => one.n);
        long[] rest = [.. found.Keys.Select(at => at < 0 ? 0 : Cutting.After(at, view.Bar.Length, kerf).Left)];
        var first = new int[found.Count + 1];
        var all = new List<(int, int, long, Ends)>();
        foreach (var (at, arcs) in found)
        {
            all.AddRange(arcs.Select(arc => (number[arc.To], arc.Kind, arc.Trim, arc.Way)));
            first[number[at] + 1] = all.Count;
        }

        return new BarGraph(rest, first, [.. all]);
    }

    /// <summary>
    /// The most that one bar of this shape earns at prices of kinds and of a cent kept, cut at least once, and its cuts in order; none where
    /// no cut fits.
    /// </summary>
    public (long Most, (int Kind, Ends Way)[] Cuts)? Best(Bar bar, long[] prices, long cent)
    {
        var most = new long[_rest.Length];
        var next = new int[_rest.Length];
        for (var n = _rest.Length - 1; n >= 0; n--)
        {
            var (best, by) = (n == 0 ? long.MinValue : cent * bar.Value(_rest[n]), -1);
            for (var a = _first[n]; a < _first[n + 1]; a++)
            {
                var arc = _arcs[a];
                var worth = most[arc.To] + prices[arc.Kind];
                if (cent > 0 && arc.Trim > 0) worth += cent * bar.Value(arc.Trim);
                if (worth > best) (best, by) = (worth, a);
            }

            (most[n], next[n]) = (best, by);
        }

        if (next[0] < 0) return null;
        var cuts = new List<(int, Ends)>();
        for (var n = 0; next[n] >= 0; n = _arcs[next[n]].To) cuts.Add((_arcs[next[n]].Kind, _arcs[next[n]].Way));
        return (most[0], [.. cuts]);
    }
}
