using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// All ways to lay the rows of one run on each other, where the stagger leaves few. With a stagger of half a panel every joint stands over the middle of a
/// whole panel, so that where one joint lies settles all others but those near the ends. A mode is what such a run can be laid in without ever
/// coming to another: layouts of neighbouring rows that fit on each other, joined as far as that leads. A run lies in one mode, where the linear
/// program of <see cref="PairRelaxation"/> mixes several.
/// <code>
/// least(layout of a row) = its price + min over layouts of the row below that fit under it of least(that layout)
/// </code>
/// The stagger is kept in full, at openings too; but where an opening parts a course into stretches each of which may begin anywhere, their layouts multiply and
/// are mostly too many to be listed. One run that can't be listed leaves the whole part without. Cost of a price: layouts times pieces, and pairs of layouts that fit.
/// </summary>
internal sealed class StackModes
{
    // With more pairs of layouts a run is not of the kind that is listed here.
    private const int MostPairs = 20_000;

    // So many pieces at the highest of prices are still a number.
    private const int MostPieces = 1000;

    private readonly RowLayout[][] _layouts;
    private readonly (int Lower, int Upper)[][] _fits;
    private readonly int[][] _mode;
    private readonly long[][] _cost;
    private readonly int[][] _under;

    private StackModes(Row[] rows, RowLayout[][] layouts, (int Lower, int Upper)[][] fits)
    {
        (Rows, _layouts, _fits) = (rows, layouts, fits);
        (_mode, Modes) = Joined(layouts, fits);
        _cost = [.. layouts.Select(row => new long[row.Length])];
        _under = [.. layouts.Select(row => new int[row.Length])];
    }

    /// <summary>The rows from the bottom up.</summary>
    public IReadOnlyList<Row> Rows { get; }

    /// <summary>How many modes there are.</summary>
    public int Modes { get; }

    /// <summary>The runs of a part, each with its modes; none where one of them has too many layouts to be listed or is a course alone, where one can't be laid, where all have but one mode, or where time ran out.</summary>
    /// <param name="table">Kinds, rows and bars.</param>
    /// <param name="effort">Limit.</param>
    public static StackModes[]? Of(KindTable table, Effort effort)
    {
        var stacks = new List<StackModes>();
        var (pairs, layouts) = (new Dictionary<(int, int, long), IReadOnlyList<(RowLayout, RowLayout)>?>(), new Dictionary<(int, string), RowLayout>());
        foreach (var bottom in table.Part.Rows.Where(row => row.Stretches.Length > 0 && (row.Stagger == 0 || row.Below is not { Stretches.Length: > 0 })))
        {
            var rows = new List<Row> { bottom };
            while (rows[^1] is { Stagger: > 0, Above: { Stretches.Length: > 0 } above }) rows.Add(above);
            if (Of([.. rows], Fits) is not { } stack) return null;
            stacks.Add(stack);
        }

        return stacks.TrueForAll(stack => stack.Modes == 1) ? null : [.. stacks];

        IReadOnlyList<(RowLayout, RowLayout)>? Fits(Row row, Row above)
        {
            var (lower, upper) = (table.Rows[row.Index], table.Rows[above.Index]);
            var key = (lower.Shape, upper.Shape, row.Stagger);
            return pairs.TryGetValue(key, out var found) ? found : pairs[key] = PairLayouts.Of(new CoursePair(lower, upper, row.Stagger), MostPairs, layouts, effort);
        }
    }

    private static StackModes? Of(Row[] rows, Func<Row, Row, IReadOnlyList<(RowLayout Lower, RowLayout Upper)>?> pairs)
    {
        if (rows.Length < 2) return null;
        var numbers = rows.Select(_ => new Dictionary<RowLayout, int>()).ToArray();
        var fits = new (int, int)[rows.Length - 1][];
        for (var r = 0; r + 1 < rows.Length; r++)
        {
            if (pairs(rows[r], rows[r + 1]) is not { Count: > 0 } found) return null;
            fits[r] = [.. found.Select(one => (NumberOf(r, one.Lower), NumberOf(r + 1, one.Upper)))];
        }

        RowLayout[][] layouts = [.. numbers.Select(row => row.OrderBy(one => one.Value).Select(one => one.Key).ToArray())];
        return layouts.Sum(row => row.Max(one => one.Arcs.Length)) > MostPieces ? null : new StackModes(rows, layouts, fits);

        int NumberOf(int row, RowLayout layout)
        {
            if (!numbers[row].TryGetValue(layout, out var number)) numbers[row][layout] = number = numbers[row].Count;
            return number;
        }
    }

    /// <summary>What the run is made of at least in each mode, at prices of kinds not below 0; the highest number where it can't be laid in it.</summary>
    public long[] Least(long[] prices)
    {
        var price = new Dictionary<RowLayout, long>(ReferenceEqualityComparer.Instance);
        for (var r = 0; r < _layouts.Length; r++)
        {
            Array.Fill(_cost[r], r == 0 ? 0 : long.MaxValue);
            foreach (var (lower, upper) in r == 0 ? [] : _fits[r - 1])
            {
                if (_cost[r - 1][lower] < _cost[r][upper]) (_cost[r][upper], _under[r][upper]) = (_cost[r - 1][lower], lower);
            }

            for (var l = 0; l < _layouts[r].Length; l++)
            {
                if (_cost[r][l] == long.MaxValue) continue;
                if (!price.TryGetValue(_layouts[r][l], out var own)) price[_layouts[r][l]] = own = _layouts[r][l].Kinds.Sum(kind => prices[kind]);
                _cost[r][l] += own;
            }
        }

        var least = new long[Modes];
        Array.Fill(least, long.MaxValue);
        for (var l = 0; l < _cost[^1].Length; l++) least[_mode[^1][l]] = Math.Min(least[_mode[^1][l]], _cost[^1][l]);
        return least;
    }

    /// <summary>The layouts, from the bottom up, that gave the least of a mode when it was asked last.</summary>
    public RowLayout[] Cheapest(int mode)
    {
        var (rows, best) = (new RowLayout[_layouts.Length], -1);
        for (var l = 0; l < _cost[^1].Length; l++)
        {
            if (_mode[^1][l] == mode && (best < 0 || _cost[^1][l] < _cost[^1][best])) best = l;
        }

        for (var r = rows.Length - 1; r >= 0; best = _under[r--][best]) rows[r] = _layouts[r][best];
        return rows;
    }

    // Numbers what is joined by fitting on each other.
    private static (int[][] Mode, int Modes) Joined(RowLayout[][] layouts, (int Lower, int Upper)[][] fits)
    {
        var mode = layouts.Select(row => Enumerable.Repeat(-1, row.Length).ToArray()).ToArray();
        var beside = layouts.Select(row => row.Select(_ => new List<(int Row, int Layout)>()).ToArray()).ToArray();
        for (var r = 0; r < fits.Length; r++)
        {
            foreach (var (lower, upper) in fits[r])
            {
                beside[r][lower].Add((r + 1, upper));
                beside[r + 1][upper].Add((r, lower));
            }
        }

        var modes = 0;
        for (var r = 0; r < layouts.Length; r++)
        {
            for (var l = 0; l < layouts[r].Length; l++)
            {
                if (mode[r][l] >= 0) continue;
                var open = new Stack<(int Row, int Layout)>([(r, l)]);
                mode[r][l] = modes;
                while (open.TryPop(out var at))
                {
                    foreach (var next in beside[at.Row][at.Layout].Where(next => mode[next.Row][next.Layout] < 0))
                    {
                        mode[next.Row][next.Layout] = modes;
                        open.Push(next);
                    }
                }

                modes++;
            }
        }

        return (mode, modes);
    }
}
