using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// Every kind of piece that the rows of a part can be laid from, numbered, with what each row and each bar can do with them. Not for rows
/// whose joints may lie anywhere, for there the kinds cannot be listed.
/// </summary>
internal sealed class KindTable
{
    private readonly Dictionary<Kind, int> _number;
    private readonly List<Kind> _kinds;
    private readonly Dictionary<(long Length, long? Line, bool Mirrored), BarGraph> _graphs;

    private KindTable(RunPart part) => (Part, _number, _kinds, _graphs) = (part, [], [], []);

    private KindTable(KindTable whole, RunPart some, Row[] origin)
    {
        (Part, _number, _kinds, _graphs, BarArcs) = (some, whole._number, whole._kinds, whole._graphs, whole.BarArcs);
        Rows = [.. origin.Select(row => whole.Rows[row.Index])];
    }

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
        return table.PairsFit(size) && table.DrawBars(size, effort) ? table : null;
    }

    /// <summary>
    /// The same for some of its rows and the same bars: a row can be laid from the same wherever it lies. None where its pairs of rows, which are others, would take too long.
    /// </summary>
    /// <param name="some">A part with some of the rows.</param>
    /// <param name="origin">Which row of this table's part each of them is.</param>
    /// <param name="size">How large it may be.</param>
    public KindTable? Only(RunPart some, Row[] origin, Size size) => new KindTable(this, some, origin) is var table && table.PairsFit(size) ? table : null;

    private bool PairsFit(Size size) => !PairRelaxation.Pairs(this).Any(pair => CoursePairs.Steps(pair.Of) > size.PairSteps);

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
