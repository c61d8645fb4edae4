using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// Searches a part of which new pieces can be had without a limit: a first filling is laid by prices, whole runs or pairs of rows or row by row; bounds are added up for what it
/// reaches; then runs, pairs and rows are taken out and laid again, and what is small enough is decided. The phases come one after the other in the same order whatever the limit, and each has
/// a share of the time that is left: each that is there has no less of a longer time, but more time may replace one by another. What one of them finds is gone on from only where it is better.
/// </summary>
internal sealed class PartSearch : IDisposable
{
    private const int QuickRounds = 30;
    private const int RoundsAlone = 3;
    private const int MostFruitless = 20;
    private const int MostFruitlessInTime = 100;
    private const double Slack = 10;
    private const double OfCut = 0.2;
    private const double OfLastCut = 0.6;

    // Cents of value: the program has ties and joints beside them.
    private const double SlackOfValue = 2;
    private const double WorthACut = 8;
    private const double OfValue = 0.4;
    private const double OfShape = 0.6;
    private const double OfLastRows = 0.5;

    private readonly RunPart _part;
    private readonly KindTable? _table;
    private readonly StackModes[] _stacks;
    private readonly Effort _effort;
    private readonly Action<PartOutcome> _better;
    private readonly bool _parted;
    private readonly PairDive? _pairs;
    private readonly StockPrices? _ofDive;
    private readonly StockPrices _prices;
    private readonly LayingSearch _rows;
    private StackDive? _runs;

    private PartSearch(RunPart part, KindTable? table, StackModes[] stacks, Effort effort, Action<PartOutcome> better)
    {
        (_part, _table, _stacks, _effort, _better) = (part, table, stacks, effort, better);
        // Where openings part courses, pairs laid one on the other come to courses that can't be laid: what is listed is laid whole then, at once where that is every run.
        _parted = part.Rows.Any(row => row.Stretches.Length > 1);
        var all = stacks.Sum(stack => stack.Rows.Count) == part.Rows.Count(row => row.Stretches.Length > 0);
        var start = StockRelaxation.Least(part);
        if (table is not null && _parted && all) _runs = StackDive.Begin(table, stacks, start, Filling.Empty(part), effort.Share(0.4));
        if (table is not null && _runs?.First is null) _pairs = PairDive.Begin(table, _parted ? stacks : [], start, effort.Share(0.5));
        _ofDive = _pairs?.Prices ?? _runs?.Prices;
        _prices = _ofDive ?? StockRelaxation.Together(part, effort.Share(0.2));
        _rows = new LayingSearch(part, _prices);
    }

    /// <summary>The best filling found and its bounds.</summary>
    /// <param name="part">The part.</param>
    /// <param name="table">Its kinds, where there are some.</param>
    /// <param name="stacks">Those of its runs that are listed.</param>
    /// <param name="exact">What was found so far, or none.</param>
    /// <param name="effort">Limit.</param>
    /// <param name="better">Told whenever a figure gets better or a bound closer.</param>
    public static PartOutcome Of(RunPart part, KindTable? table, StackModes[] stacks, Filling? exact, Effort effort, Action<PartOutcome> better)
    {
        using var search = new PartSearch(part, table, stacks, effort, better);
        var filling = search.First(exact);
        var known = new KnownBounds(part, table, search._prices, filling, effort.Share(0.4));
        better(known.Of(filling));
        return search.Settled(search.Moved(filling, known), known);
    }

    public void Dispose() => _pairs?.Dispose();

    // What is laid by whole runs, by pairs, or row by row, as far as that goes; the best of what was tried and what was known.
    private Filling First(Filling? exact)
    {
        var filling = (_runs?.First ?? _pairs?.First) is { } dived ? PartDecision.Completed(dived, new WorthTable(_part, _prices), _effort) : _rows.First(_effort);
        if (exact is not null && exact.CompareTo(filling) < 0) filling = exact;
        _better(new PartOutcome(filling, TrivialBounds.Of(_part, filling)));
        if (filling.Filled.Contains(false) && _pairs?.First is not null && _rows.First(_effort) is var other && other.CompareTo(filling) < 0) filling = other;
        if (_stacks.Length == 0 || _parted) return filling;
        // Listed runs beside the others as they are.
        _runs = StackDive.Begin(_table!, _stacks, _prices, filling, _effort.Share(0.3));
        if (_runs.First is { } anew && anew.CompareTo(filling) < 0) _better(new PartOutcome(filling = anew, TrivialBounds.Of(_part, filling)));
        return filling;
    }

    // Whole runs and pairs laid again, for the spend above all.
    private Filling Moved(Filling filling, KnownBounds known)
    {
        if (_stacks.Length > 0) filling = Modes(filling, known, _effort.Share(0.7));
        if (_runs is not null) filling = Relaid(_runs, filling, known, _effort.Share(0.5), _better);
        return _pairs is null ? filling : Valued(_pairs, Changed(_pairs, filling, known, _effort.Share(0.8), _better), known, _effort.Share(OfValue), _better);
    }

    // Rows laid again for the tiers after the spend, and what is left decided where it is small.
    private PartOutcome Settled(Filling filling, KnownBounds known)
    {
        Filling Improved(LayingSearch rows, Filling from, double share, int rounds = int.MaxValue) => rows.Improve(from, known.Of, _effort.Share(share), one => _better(known.Of(one)), rounds);

        var quick = PartDecision.Decided(_part, known, Improved(_rows, filling, 0.2, _part.Rows.Length == 1 ? RoundsAlone : QuickRounds), _effort.Share(0.4));
        _better(quick);
        // Without a price the answer is to give one, not to look any longer for what the yard alone might do.
        if (quick.Proven || (_part.Unpriced && quick.Filling.Filled.Contains(false))) return quick;
        var last = PartDecision.Last(_part, known, quick, _effort);
        _better(last);
        if (last.Proven) return last;
        // What is small enough has been decided by now; the rest is changed a few pieces at a time.
        var shaped = Reshaping.Improve(last.Filling, known.Of, _effort.Share(OfShape), one => _better(known.Of(one)));
        // By what the stock alone is worth this time, where that is not what led so far: other prices lead elsewhere.
        var rows = _ofDive is null ? _rows : new LayingSearch(_part, StockRelaxation.Together(_part, _effort.Share(0.1)));
        var improved = Improved(rows, shaped, OfLastRows);
        return improved.CompareTo(last.Filling) == 0 ? last : PartDecision.Decided(_part, known, improved, _effort);
    }

    // Where the stagger leaves a run few ways to be laid, they are told apart: first for the spend, then for the value.
    private Filling Modes(Filling filling, KnownBounds known, Effort effort)
    {
        if (filling.Filled.Contains(false) || known.Of(filling).Proven || effort.Over) return filling;
        foreach (var goal in new[] { RunGoal.Spend, RunGoal.GivenUp })
        {
            var tier = _part.Levels.Length + (goal == RunGoal.Spend ? 0 : 1);
            if (known.Of(filling).Figure(tier).Proven) continue;
            (filling, var bound) = StackSearch.Solve(_table!, _stacks, goal, goal == RunGoal.Spend ? _prices.OfSpend : known.Given ?? _prices, filling, effort.Share(0.7));
            known.AtLeast(goal, filling, bound);
            _better(known.Of(filling));
            if (!known.Of(filling).Figure(tier).Proven) break;
        }

        return filling;
    }

    // Whole runs are taken out and laid again until the spend is proven.
    private static Filling Relaid(StackDive dive, Filling filling, KnownBounds known, Effort effort, Action<PartOutcome> better)
    {
        var spend = filling.Part.Levels.Length;
        for (var fruitless = 0; fruitless < MostFruitless && !effort.Over && !known.Of(filling).Figure(spend).Proven; fruitless++)
        {
            if (dive.Change(filling.Figures[spend], effort) is not { } next || next.CompareTo(filling) >= 0) continue;
            fruitless = -1;
            better(known.Of(filling = next));
        }

        return filling;
    }

    /// <summary>
    /// Pairs are taken out and laid again until the spend is proven. What is cut from what is decided only where the program says that less is spent: it takes
    /// as long as dozens of moves.
    /// </summary>
    public static Filling Changed(PairDive dive, Filling filling, KnownBounds known, Effort effort, Action<PartOutcome> better)
    {
        if (!dive.CanMove) return filling;
        var (least, spend) = (dive.Cost, filling.Part.Levels.Length);
        for (var fruitless = 0; (fruitless < MostFruitless || !double.IsInfinity(effort.Seconds)) && !effort.Over && !known.Of(filling).Figure(spend).Proven; fruitless++)
        {
            if (!dive.Move(least + Slack, effort)) continue;
            if (dive.Cost < least - Slack) fruitless = -1;
            least = Math.Min(least, dive.Cost);
            if (filling.Part.NextSpend(dive.Spent) >= filling.Figures[spend]) continue;
            // Where nothing less can be spent than the program says now, no move could say more: the time is better spent on finding out.
            var last = filling.Part.NextSpend(dive.Spent) <= known.Of(filling).Figure(spend).Bound;
            if (dive.Cut(effort.Share(last ? OfLastCut : OfCut)) is not { } next || next.CompareTo(filling) >= 0) continue;
            fruitless = -1;
            better(known.Of(filling = next));
        }

        return filling;
    }

    /// <summary>
    /// Pairs are taken out and laid again for the value, once the spend is proven. What is cut from what is decided only where the program says that so much less is given up.
    /// </summary>
    public static Filling Valued(PairDive dive, Filling filling, KnownBounds known, Effort effort, Action<PartOutcome> better)
    {
        var spend = filling.Part.Levels.Length;
        if (!dive.CanMove || !known.Of(filling).Figure(spend).Proven) return filling;
        var (least, cut) = (dive.Cost, dive.Cost);
        var most = double.IsInfinity(effort.Seconds) ? MostFruitless : MostFruitlessInTime;
        for (var fruitless = 0; fruitless < most && !effort.Over && !known.Of(filling).Figure(spend + 1).Proven; fruitless++)
        {
            if (!dive.Move(least + SlackOfValue, effort)) continue;
            least = Math.Min(least, dive.Cost);
            if (dive.Cost > cut - WorthACut) continue;
            (fruitless, cut) = (-1, dive.Cost);
            if (dive.Cut(effort.Share(OfCut)) is { } next && next.CompareTo(filling) < 0) better(known.Of(filling = next));
        }

        return filling;
    }
}
