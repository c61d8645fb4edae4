using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// Rows that stay open however a part is laid: with half a panel of stagger, what is possible beside a window is settled from below and above, and some course may be left no way at
/// all. Found from the bottom of a run up: the row with which all below it can't be laid stays open where they are laid, and above it everything begins anew, since the stagger
/// speaks of neighbours alone. Whatever leaves no more rows open than these, level by level from the bottom, leaves open these and no others: were one covered, some row below
/// would not be. So the spend of such a filling is bounded by that of a part without these rows, all of it covered, where pairs of rows know more than stock alone.
/// </summary>
internal sealed class RowsLeftOpen
{
    // Of the time left when it is asked for. Where that does not suffice again and again, the search needs the rest more.
    private const double OfSpend = 0.2;
    private const int MostAsked = 3;

    private readonly RunPart _part;
    private readonly HashSet<Row> _open;
    private readonly Effort _effort;
    private readonly KindTable? _rest;
    private long? _least;
    private int _asked;

    /// <summary>Bounds of a part beside which these rows stay open.</summary>
    /// <param name="part">The part, in which new pieces can be had without a limit.</param>
    /// <param name="open">Rows as they are found by <see cref="Of"/>.</param>
    /// <param name="effort">Limit of the whole search: shares of it are taken whenever something is solved.</param>
    public RowsLeftOpen(RunPart part, IEnumerable<Row> open, Effort effort)
    {
        (_part, _open, _effort) = (part, [.. open], effort);
        _rest = KindTable.Of(part.Only([.. part.Rows.Select(row => !_open.Contains(row))]).Part, KindTable.Size.Usual, effort.Share(0.1));
    }

    /// <summary>Those rows of a run that can't be laid whole, as far as its layouts tell.</summary>
    /// <param name="rows">The run from the bottom up.</param>
    /// <param name="cells">Lists of its part.</param>
    public static IReadOnlyList<Row> Of(IReadOnlyList<Row> rows, StackCells cells)
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

    /// <summary>Raises bounds of a filling by what is known of these rows: how many are open, from the bottom up to the first level where others are, and the spend where there is none.</summary>
    /// <param name="filling">A filling of the part.</param>
    /// <param name="bounds">Its bounds, one for each of its figures.</param>
    public void Raise(Filling filling, long[] bounds)
    {
        for (var level = 0; level < _part.Levels.Length; level++)
        {
            var rows = _part.Rows.Where(row => row.Number == _part.Levels[level]).ToArray();
            bounds[level] = Math.Max(bounds[level], rows.Count(_open.Contains) + rows.Count(row => row.Gaps.Length > 0));
            // Above a level where another row is open, these need not be.
            if (rows.Any(row => filling.Filled[row.Index] == _open.Contains(row))) return;
        }

        var spend = _part.Levels.Length;
        if (Least(filling.Figures[spend]) is { } least) bounds[spend] = Math.Max(bounds[spend], _part.NextSpend(least));
    }

    // Solved once: it does not depend on the filling. What time alone left undone is asked for again.
    private long? Least(long known)
    {
        if (_rest is null || _least is not null || _asked >= MostAsked || _effort.Over) return _least;
        var share = _effort.Share(OfSpend);
        var start = StockRelaxation.Solve(_rest.Part, Filling.Empty(_rest.Part) with { Filled = [.. _rest.Part.Rows.Select(_ => true)] }, RunGoal.Spend, share.Share(0.3)).Prices;
        _least = PairRelaxation.Solve(_rest, RunGoal.Spend, 0, start, known, share)?.Bound;
        _asked = share.Over ? _asked + 1 : MostAsked;
        return _least;
    }
}
