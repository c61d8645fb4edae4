namespace Offcuts.Matching.Runs;

/// <summary>
/// Rows that stay open however a part is laid: with half a panel of stagger, what is possible beside a window is settled from below and above, and some course may be left no way at
/// all. Found from the bottom of a run up: the row with which all below it can't be laid stays open where they are laid, and above it everything begins anew, since the stagger
/// speaks of neighbours alone. Whatever leaves no more rows open than these, level by level from the bottom, leaves open these and no others: were one covered, some row below
/// would not be. So the rest is a part of its own, and what is proven of its fillings that cover all of it holds for every filling of the whole that leaves no more open.
/// </summary>
internal sealed class RowsLeftOpen
{
    private readonly RunPart _part;
    private readonly HashSet<Row> _open;

    /// <summary>The rest of a part beside these rows.</summary>
    /// <param name="part">The part, in which new pieces can be had without a limit.</param>
    /// <param name="open">Rows as they are found by <see cref="Among"/>.</param>
    public RowsLeftOpen(RunPart part, IEnumerable<Row> open)
    {
        (_part, _open) = (part, [.. open]);
        (Rest, Origin) = part.Only([.. part.Rows.Select(row => !_open.Contains(row))]);
    }

    /// <summary>All other rows, which lie on each other as they did but over these.</summary>
    public RunPart Rest { get; }

    /// <summary>Which row of the whole each row of the rest is.</summary>
    public Row[] Origin { get; }

    /// <summary>Those rows of a run that can't be laid whole, as far as its layouts tell.</summary>
    /// <param name="rows">The run from the bottom up.</param>
    /// <param name="cells">Lists of its part.</param>
    public static IReadOnlyList<Row> Among(IReadOnlyList<Row> rows, StackCells cells)
    {
        var (open, from) = (new List<Row>(), 0);
        for (var r = 0; r < rows.Count; r++)
        {
            // A few courses may have too many layouts where more of them have few: what is not known of those is no reason to stop.
            if (!cells.Of([.. rows.Skip(from).Take(r + 1 - from)]).Impossible) continue;
            open.Add(rows[r]);
            from = r + 1;
        }

        return open;
    }

    /// <summary>What is left of a run between such rows, from the bottom up.</summary>
    public static IEnumerable<Row[]> Between(IReadOnlyList<Row> rows, IReadOnlyList<Row> open)
    {
        var between = new List<Row>();
        foreach (var row in rows)
        {
            if (!open.Contains(row))
            {
                between.Add(row);
                continue;
            }

            if (between.Count > 0) yield return [.. between];
            between.Clear();
        }

        if (between.Count > 0) yield return [.. between];
    }

    /// <summary>A filling of the whole, and how many rows are open at least: these and no fewer up to the first level where others are open than these.</summary>
    public PartOutcome Of(Filling filling)
    {
        var bounds = TrivialBounds.Of(_part, filling);
        foreach (var (level, rows) in LevelsThatHold(filling))
            bounds[level] = Math.Max(bounds[level], rows.Count(_open.Contains) + rows.Count(row => row.Gaps.Length > 0));
        return new PartOutcome(filling, bounds);
    }

    /// <summary>A filling of the rest as one of the whole, with what its bounds say of that: of how many rows are open as above, of the figures after them where no other is.</summary>
    /// <param name="rest">A filling of the rest with bounds that hold for the rest.</param>
    public PartOutcome Whole(PartOutcome rest)
    {
        var outcome = Of(rest.Filling.In(_part, Origin));
        var (bounds, levels) = (outcome.Bounds, _part.Levels.Length);
        foreach (var (level, rows) in LevelsThatHold(outcome.Filling))
        {
            if (Array.IndexOf(Rest.Levels, _part.Levels[level]) is >= 0 and var own)
                bounds[level] = Math.Max(bounds[level], rest.Bounds[own] + rows.Count(_open.Contains) + rows.Count(row => row.Gaps.Length > 0));
        }

        if (rest.Filling.Filled.Contains(false)) return outcome;
        for (var tier = levels; tier < bounds.Length; tier++) bounds[tier] = Math.Max(bounds[tier], rest.Bounds[tier - levels + Rest.Levels.Length]);
        return outcome;
    }

    // Above a level where another row is open, these need not be.
    private IEnumerable<(int Level, Row[] Rows)> LevelsThatHold(Filling filling)
    {
        for (var level = 0; level < _part.Levels.Length; level++)
        {
            var rows = _part.Rows.Where(row => row.Number == _part.Levels[level]).ToArray();
            yield return (level, rows);
            if (rows.Any(row => filling.Filled[row.Index] == _open.Contains(row))) yield break;
        }
    }

    /// <summary>What a filling of the whole lays in the rest; none where it lays something in one of these rows.</summary>
    public Filling? InRest(Filling whole)
    {
        if (_open.Any(row => whole.Filled[row.Index])) return null;
        var number = Origin.Select((row, n) => (row, n)).ToDictionary(one => one.row, one => Rest.Rows[one.n]);
        return new Filling(Rest, [.. whole.Bars.Select(bar => bar with { Laid = [.. bar.Laid.Select(one => one with { Row = number[one.Row] })] })], [.. Origin.Select(row => whole.Filled[row.Index])]);
    }
}
