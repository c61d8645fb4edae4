using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>Bounds of a part's fillings: the relaxations are solved once; the prices that gave the best bound give one for every other filling too.</summary>
internal sealed class KnownBounds
{
    private readonly RunPart _part;
    private readonly Filling _first;
    private readonly Effort _effort;
    private readonly KindTable? _table;
    private readonly (long Bound, bool Early)? _pairSpend;
    private readonly (StockPrices Prices, bool Early)? _pairGiven;
    private readonly (int[] Open, long[] Bounds) _reach = ([], []);
    private readonly (long Joints, long Saws)? _later;
    private readonly TieBounds? _ties;
    private readonly StockPrices? _ofSpend;
    private StockPrices? _spend;
    private StockPrices? _given;
    private PartOutcome? _last;
    private long _least;
    private (long Spent, long Bound) _leastGiven = (long.MinValue, 0);

    /// <summary>Solves what bounds are reckoned from.</summary>
    /// <param name="part">The part.</param>
    /// <param name="table">Its kinds, where there are some.</param>
    /// <param name="start">Prices for spend and value in one sum to begin with.</param>
    /// <param name="filling">Which rows are covered, and the spend.</param>
    /// <param name="effort">Limit; a share of what is left of it where prices of the stock are needed for a bound.</param>
    public KnownBounds(RunPart part, KindTable? table, StockPrices start, Filling filling, Effort effort)
    {
        (_part, _table, _first, _effort) = (part, table, filling, effort);
        if (part.Rests && !part.Open && filling.Filled.Contains(false)) _reach = (Opened(filling), ReachBounds.Of(part, filling, effort.Share(0.4)));
        if (table is null || filling.Filled.Contains(false)) return;
        var (spend, given) = (filling.Figures[part.Levels.Length], filling.Figures[part.Levels.Length + 1]);
        if (PairRelaxation.Solve(table, RunGoal.Spend, spend, start.OfSpend, spend, effort.Share(0.5)) is { } ofSpend)
        {
            _ofSpend = ofSpend.Prices;
            _pairSpend = (part.NextSpend(ofSpend.Bound) < spend ? Math.Max(ofSpend.Bound, PairRelaxation.LeastSpend(table, ofSpend.Prices, effort)) : ofSpend.Bound, ofSpend.Early);
        }

        if (PairRelaxation.Solve(table, RunGoal.GivenUp, spend, start, given, effort.Share(0.8)) is { } ofGiven) _pairGiven = (ofGiven.Prices, ofGiven.Early);
        _later = LaterBounds.Of(table, effort);
        _ties = TieBounds.Of(table, OfPairs(), effort.Share(0.5));
    }

    // The prices that gave the bounds of spend and value, which leave those who would save a tie least to pay it from.
    private IEnumerable<StockPrices> OfPairs() => new[] { _ofSpend, _pairGiven?.Prices }.OfType<StockPrices>();

    /// <summary>Prices of the value given up, where pairs of rows gave some.</summary>
    public StockPrices? Given => _pairGiven?.Prices;

    /// <summary>No filling that covers every row comes to less; for the value, none that spends no more than this one.</summary>
    public void AtLeast(RunGoal goal, Filling filling, long bound)
    {
        if (goal == RunGoal.Spend) _least = Math.Max(_least, bound);
        else _leastGiven = (filling.Figures[_part.Levels.Length], bound);
        _last = null;
    }

    /// <summary>Which patterns are left beside a filling; prices of the stock that are not known yet are solved within a share of this limit.</summary>
    public Worthwhile Left(Filling filling, Effort effort)
    {
        var prices = ForValue(effort);
        return new(filling, new WorthTable(_part, prices), StockRelaxation.At(_part, filling, RunGoal.GivenUp, prices));
    }

    public PartOutcome Of(Filling filling)
    {
        var spend = _part.Levels.Length;
        if (_last is not null && _last.Filling.Figures[..(spend + 1)].SequenceEqual(filling.Figures[..(spend + 1)])) return _last = new PartOutcome(filling, WithTies(_last.Bounds, filling));
        var bounds = TrivialBounds.Of(_part, filling);
        // Pairs of rows know all that the stock alone knows, and more; but only of fillings that cover every row, and where they were priced to the end.
        var whole = !filling.Filled.Contains(false);
        if (!whole || _pairSpend is not { Early: false }) bounds[spend] = Math.Max(bounds[spend], _part.NextSpend(StockRelaxation.At(_part, filling, RunGoal.Spend, _spend ??= Stock(RunGoal.Spend, _effort))));
        if (!whole || _pairGiven is not { Early: false }) bounds[spend + 1] = Math.Max(bounds[spend + 1], StockRelaxation.At(_part, filling, RunGoal.GivenUp, ForValue(_effort)));
        if (_reach.Open.Length > 0 && Opened(filling).SequenceEqual(_reach.Open))
        {
            for (var level = 0; level < spend; level++) bounds[level] = Math.Max(bounds[level], _reach.Bounds[level]);
        }

        if (whole)
        {
            bounds[spend] = Math.Max(bounds[spend], _part.NextSpend(_least));
            if (filling.Figures[spend] <= _leastGiven.Spent) bounds[spend + 1] = Math.Max(bounds[spend + 1], _leastGiven.Bound);
            if (_later is var (joints, saws)) (bounds[^2], bounds[^1]) = (Math.Max(bounds[^2], joints), Math.Max(bounds[^1], saws));
            if (_pairSpend is { } least) bounds[spend] = Math.Max(bounds[spend], _part.NextSpend(least.Bound));
            if (_pairGiven is { } prices) bounds[spend + 1] = Math.Max(bounds[spend + 1], PairRelaxation.At(_table!, RunGoal.GivenUp, filling.Figures[spend], prices.Prices));
        }

        return _last = new PartOutcome(filling, WithTies(bounds, filling));
    }

    // Those of the ties are the only ones that ask what value is given up, so that those of another filling say nothing here.
    private long[] WithTies(long[] bounds, Filling filling)
    {
        if (_ties is null || filling.Filled.Contains(false)) return bounds;
        long[] own = [.. bounds];
        own[^3] = _ties.Least(filling.Figures[_part.Levels.Length], filling.Figures[_part.Levels.Length + 1]);
        return own;
    }

    private StockPrices ForValue(Effort effort) => _given ??= Stock(RunGoal.GivenUp, effort);

    private StockPrices Stock(RunGoal goal, Effort effort) => StockRelaxation.Solve(_part, _first, goal, effort.Share(0.3)).Prices;

    // At what level rows stay open first: what was said of how many there holds for every filling that covers all below.
    private static int[] Opened(Filling filling) => [.. filling.Part.Levels.Where(level => filling.Part.Rows.Any(row => row.Number == level && !filling.Filled[row.Index])).Take(1)];
}
