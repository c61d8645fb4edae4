using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// All ways to lay the rows of one run on each other, where the stagger leaves few. With a stagger of half a panel every joint stands over the middle of a
/// whole panel, so that where one joint lies settles all others but those near the ends. What such a run is made of at least is reckoned over the layouts of
/// its stretches (<see cref="StackCells"/>), with the stagger in full, at openings too: stretch by stretch is put away, those with the fewest neighbours first,
/// <code>
/// one neighbour      least(y)     +=  min over x that fit y of            price(x) + least so far(x)
/// two neighbours     least(y, z)  +=  min over x that fit both y and z of the same
/// </code>
/// until only the longest one is left, the trunk. Without openings that is a shortest path from the bottom up; where windows part courses into stretches side by side, those
/// hang between the courses below and above. A mode is what the trunk can be laid in without ever coming to another: layouts that fit on each other, joined as far as
/// that leads, through stretches at least half as long. A run lies in one mode, where the linear program of <see cref="PairRelaxation"/> mixes several.
/// Source: elimination of variables, Bertele and Brioschi 1972 (from memory). Cost of a price: the fits, and for two neighbours triples of layouts.
/// </summary>
internal sealed class StackModes
{
    // So many pieces at the highest of prices are still a number.
    private const int MostPieces = 1000;

    private readonly StackCell[] _cells;
    private readonly StackOrder _order;
    private readonly int[] _mode;

    private StackModes(IReadOnlyList<Row> rows, StackCell[] cells, StackOrder order, (int[] Mode, int Modes) joined)
    {
        (Rows, _cells, _order) = (rows, cells, order);
        (_mode, Modes) = joined;
    }

    /// <summary>The rows from the bottom up.</summary>
    public IReadOnlyList<Row> Rows { get; }

    /// <summary>How many modes there are.</summary>
    public int Modes { get; }

    /// <summary>
    /// Those runs of a part whose layouts can be listed; all others are laid by pairs. Not listed are a course alone, courses without a stagger, runs of too many layouts, runs that can't be laid, and
    /// what time did not suffice for. And the rows that stay open however those are laid that can't be laid whole (<see cref="RowsLeftOpen"/>), as far as that was found out.
    /// </summary>
    /// <param name="table">Kinds, rows and bars.</param>
    /// <param name="effort">Limit.</param>
    public static (StackModes[] Stacks, Row[] Open) Listed(KindTable table, Effort effort)
    {
        var (stacks, open, cells) = (new List<StackModes>(), new List<Row>(), new StackCells(table, effort));
        var free = new long[table.Kinds.Count];
        foreach (var rows in Runs(table.Part))
        {
            if (effort.Over) break;
            Add(rows);
        }

        return ([.. stacks], [.. open]);

        void Add(Row[] rows)
        {
            if (rows.Length < 2) return;
            var listed = cells.Of(rows);
            if (listed.Listed && Of(rows, listed, free, effort) is { } stack) stacks.Add(stack);
            if (!listed.Impossible) return;
            var left = RowsLeftOpen.Among(rows, cells);
            open.AddRange(left);
            foreach (var between in RowsLeftOpen.Between(rows, left).Where(between => between.Length < rows.Length)) Add(between);
        }
    }

    /// <summary>The same of rows that stand for these in another part.</summary>
    public StackModes In(IReadOnlyDictionary<Row, Row> rows) => new([.. Rows.Select(row => rows[row])], _cells, _order, (_mode, Modes));

    // What lies on each other with a stagger, from the bottom up; a row may lie alone.
    private static IEnumerable<Row[]> Runs(RunPart part)
    {
        foreach (var bottom in part.Rows.Where(row => row.Stretches.Length > 0 && (row.Stagger == 0 || row.Below is not { Stretches.Length: > 0 })))
        {
            var rows = new List<Row> { bottom };
            while (rows[^1] is { Stagger: > 0, Above: { Stretches.Length: > 0 } above }) rows.Add(above);
            yield return [.. rows];
        }
    }

    private static StackModes? Of(Row[] rows, CellList listed, long[] free, Effort effort)
    {
        var (cells, fits) = (listed.Cells, listed.Fits);
        if (cells.Sum(cell => cell.Layouts.Max(one => one.Arcs.Length)) > MostPieces) return null;
        var trunk = Enumerable.Range(0, cells.Length).MaxBy(c => cells[c].Graph.At[^1] - cells[c].Graph.At[0]);
        if (StackOrder.Of(cells, fits, trunk, effort) is not { } order || order.Least(free).All(least => least == long.MaxValue)) return null;
        return Joined(cells, fits, trunk, effort) is { } joined ? new StackModes(rows, cells, order, joined) : null;
    }

    /// <summary>What the run is made of at least in each mode, at prices of kinds not below 0; the highest number where it can't be laid in it.</summary>
    public long[] Least(long[] prices)
    {
        var (own, of) = (_order.Least(prices), new long[Modes]);
        Array.Fill(of, long.MaxValue);
        for (var l = 0; l < own.Length; l++) of[_mode[l]] = Math.Min(of[_mode[l]], own[l]);
        return of;
    }

    /// <summary>The least that the run is made of in one of these modes, and how its rows lie then, from the bottom up; none where it can't be laid in any.</summary>
    /// <param name="prices">Of kinds, not below 0.</param>
    /// <param name="modes">One mode at least.</param>
    public (long Least, RowLayout[] Rows)? Cheapest(long[] prices, IReadOnlyCollection<int> modes)
    {
        var (own, may) = (_order.Least(prices), new bool[Modes]);
        foreach (var mode in modes) may[mode] = true;
        var best = Enumerable.Range(0, own.Length).Where(l => may[_mode[l]]).MinBy(l => own[l]);
        if (own[best] == long.MaxValue) return null;
        var chosen = _order.Chosen(best);
        return (own[best],
        [
            .. Enumerable.Range(0, Rows.Count).Select(r => RowLayout.Of(
                Enumerable.Range(0, _cells.Length).Where(c => _cells[c].Row == r).Select(c => (_cells[c].Layouts[chosen[c]], _cells[c].FirstArc)))),
        ]);
    }

    // Numbers what is joined in the trunk by fitting on each other; none where time ran out.
    private static (int[] Mode, int Modes)? Joined(StackCell[] cells, CellFit[] fits, int trunk, Effort effort)
    {
        long Of(int cell) => cells[cell].Graph.At[^1] - cells[cell].Graph.At[0];
        var beside = cells.Select(cell => cell.Layouts.Select(_ => new List<(int Cell, int Layout)>()).ToArray()).ToArray();
        foreach (var fit in fits.Where(fit => 2 * Of(fit.A) >= Of(trunk) && 2 * Of(fit.B) >= Of(trunk)))
        {
            if (effort.Over) return null;
            foreach (var (a, b) in fit.Pairs)
            {
                beside[fit.A][a].Add((fit.B, b));
                beside[fit.B][b].Add((fit.A, a));
            }
        }

        var (mode, modes) = (cells.Select(cell => Enumerable.Repeat(-1, cell.Layouts.Length).ToArray()).ToArray(), 0);
        for (var l = 0; l < mode[trunk].Length; l++)
        {
            if (mode[trunk][l] >= 0) continue;
            if (effort.Over) return null;
            var open = new Stack<(int Cell, int Layout)>([(trunk, l)]);
            mode[trunk][l] = modes;
            while (open.TryPop(out var at))
            {
                foreach (var next in beside[at.Cell][at.Layout].Where(next => mode[next.Cell][next.Layout] < 0))
                {
                    mode[next.Cell][next.Layout] = modes;
                    open.Push(next);
                }
            }

            modes++;
        }

        return (mode[trunk], modes);
    }
}
