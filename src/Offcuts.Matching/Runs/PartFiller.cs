using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// Fills one part, from top to bottom: a small one is decided exactly; else the relaxation prices the stock, a first filling is laid by
/// those prices, bounds are added up for what it reaches, and rows are taken out and laid again until the limits.
/// </summary>
internal static class PartFiller
{
    private const int QuickRounds = 30;

    /// <summary>The best filling found and its bounds.</summary>
    /// <param name="part">The part.</param>
    /// <param name="effort">Limit.</param>
    /// <param name="better">Told whenever a figure gets better or a bound closer.</param>
    public static PartOutcome Fill(RunPart part, Effort effort, Action<PartOutcome> better)
    {
        var outcome = PartOutcome.First(part);
        if (part.Rows.Length == 0 || part.Bars.Length == 0) return PartOutcome.Best(outcome.Filling);
        var (exact, proven) = ExactFill.Solve(part, ExactFill.Size.Usual, effort);
        return exact is not null && proven ? PartOutcome.Best(exact) : Searched(part, exact, effort, better);
    }

    /// <summary>The same for parts that are not decided at once.</summary>
    /// <param name="part">The part, with rows and bars.</param>
    /// <param name="exact">What was found so far, or none.</param>
    /// <param name="effort">Limit.</param>
    /// <param name="better">Told whenever a figure gets better or a bound closer.</param>
    public static PartOutcome Searched(RunPart part, Filling? exact, Effort effort, Action<PartOutcome> better)
    {
        var prices = StockRelaxation.Solve(part, Whole(part), RunGoal.Together, effort.Share(0.3)).Prices;
        var search = new LayingSearch(part, prices);
        var filling = search.First(effort);
        if (exact is not null && exact.CompareTo(filling) < 0) filling = exact;
        var known = new KnownBounds(part, filling, effort.Share(0.4));
        better(known.Of(filling));
        var quick = search.Improve(filling, known.Of, effort.Share(0.2), one => better(known.Of(one)), QuickRounds);
        var outcomeOfQuick = Decided(part, known, quick, effort.Share(0.4));
        better(outcomeOfQuick);
        if (outcomeOfQuick.Proven) return outcomeOfQuick;
        var improved = search.Improve(outcomeOfQuick.Filling, known.Of, effort.Share(0.8), one => better(known.Of(one)));
        return improved.CompareTo(quick) == 0 ? outcomeOfQuick : Decided(part, known, improved, effort);
    }

    // Where every row is covered and the spend is proven, the tiers after it are decided among the patterns that the bound leaves.
    private static PartOutcome Decided(RunPart part, KnownBounds known, Filling filling, Effort effort)
    {
        var outcome = known.Of(filling);
        if (part.Open || outcome.Proven || filling.Filled.Contains(false) || !outcome.Figure(part.Levels.Length).Proven) return outcome;
        var (best, proven) = ExactFill.Solve(part, known.Left(filling), ExactFill.Size.Within, effort);
        if (best is null) return outcome;
        return proven ? PartOutcome.Best(best) : best.CompareTo(filling) < 0 ? known.Of(best) : outcome;
    }

    /// <summary>The least cost of covering rows from new pieces alone, and whether it is proven.</summary>
    public static (long Cost, bool Proven) AllNew(RunPart part, bool[] filled, IReadOnlyList<StorePrice> prices, Effort effort)
    {
        var fresh = part.FromStore(filled, prices);
        var (exact, proven) = ExactFill.Solve(fresh, ExactFill.Size.Usual, effort, spendOnly: true);
        var spend = fresh.Levels.Length;
        if (exact is not null && proven) return (exact.Figures[spend], true);
        var filling = new LayingSearch(fresh, StockRelaxation.Solve(fresh, Whole(fresh), RunGoal.Spend, effort).Prices).First(effort);
        var bound = StockRelaxation.Solve(fresh, filling, RunGoal.Spend, effort).Bound;
        return (filling.Figures[spend], RoundedUp(fresh, bound) == filling.Figures[spend]);
    }

    // The relaxation is solved once; the prices that gave the best bound give one for every other filling too.
    private sealed class KnownBounds
    {
        private readonly RunPart _part;
        private readonly StockPrices _spend;
        private readonly StockPrices _given;
        private PartOutcome? _last;

        public KnownBounds(RunPart part, Filling filling, Effort effort)
        {
            _part = part;
            _spend = StockRelaxation.Solve(part, filling, RunGoal.Spend, effort.Share(0.5)).Prices;
            _given = StockRelaxation.Solve(part, filling, RunGoal.GivenUp, effort).Prices;
        }

        /// <summary>Which patterns are left beside a filling.</summary>
        public Worthwhile Left(Filling filling) =>
            new(filling, new WorthTable(_part, _given), StockRelaxation.At(_part, filling, RunGoal.GivenUp, _given));

        public PartOutcome Of(Filling filling)
        {
            var spend = _part.Levels.Length;
            if (_last is not null && _last.Filling.Figures[..(spend + 1)].SequenceEqual(filling.Figures[..(spend + 1)])) return _last = new PartOutcome(filling, _last.Bounds);
            var bounds = TrivialBounds.Of(_part, filling);
            bounds[spend] = Math.Max(bounds[spend], RoundedUp(_part, StockRelaxation.At(_part, filling, RunGoal.Spend, _spend)));
            bounds[spend + 1] = Math.Max(bounds[spend + 1], StockRelaxation.At(_part, filling, RunGoal.GivenUp, _given));
            return _last = new PartOutcome(filling, bounds);
        }
    }

    // A spend is a sum of prices.
    private static long RoundedUp(RunPart part, long bound) =>
        Bounds.NextSum([.. part.Bars.Select(bar => bar.Price).Where(price => price > 0).Distinct()], Math.Max(0, bound));

    private static Filling Whole(RunPart part) => Filling.Empty(part) with { Filled = [.. part.Rows.Select(_ => true)] };
}
