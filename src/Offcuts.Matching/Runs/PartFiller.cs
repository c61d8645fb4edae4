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
    private const int RoundsAlone = 3;
    private const int MostFruitless = 20;
    private const int MostTurns = 2;
    private const double Slack = 10;
    private const double OfCut = 0.2;
    private const double OfLastCut = 0.6;

    /// <summary>
    /// What needs no time to speak of and no solver: a row alone is decided, and where stock is limited it is laid from the bottom up. Else nothing.
    /// </summary>
    /// <param name="part">The part.</param>
    /// <param name="effort">Limit; where it is over already it is laid all the same, a very large wall as far as haste comes.</param>
    public static PartOutcome AtOnce(RunPart part, Effort effort)
    {
        if (part.Rows.Length == 0 || part.Bars.Length == 0) return PartOutcome.Best(Filling.Empty(part));
        if (AloneFill.Solve(part) is { } alone) return PartOutcome.Best(alone);
        if (!part.Rests || part.Open) return PartOutcome.First(part);
        var plain = PlainLaying.Of(part, effort);
        return new PartOutcome(plain, TrivialBounds.Of(part, plain));
    }

    /// <summary>The best filling found and its bounds; never worse than what is known.</summary>
    /// <param name="part">The part.</param>
    /// <param name="known">What was made at once.</param>
    /// <param name="effort">Limit.</param>
    /// <param name="better">Told whenever a figure gets better or a bound closer.</param>
    public static PartOutcome Fill(RunPart part, PartOutcome known, Effort effort, Action<PartOutcome> better)
    {
        if (known.Proven) return known;
        var laid = known.Filling.Bars.Count > 0 ? known.Filling : null;
        if (laid is not null && effort.Over) return known;
        var (exact, proven) = ExactFill.Solve(part, ExactSize.Usual, effort);
        if (laid is null) return exact is not null && proven ? PartOutcome.Best(exact) : Searched(part, exact, effort, better);
        var (best, sure) = Better(laid, exact, proven);
        return sure ? PartOutcome.Best(best) : Searched(part, best, effort, better);
    }

    /// <summary>Laid once by the prices of the stock, nothing looked for beyond it; its bounds need no program.</summary>
    /// <param name="part">A part of which nothing is laid at once.</param>
    /// <param name="effort">Limit; where it is over already it is laid all the same.</param>
    public static PartOutcome Laid(RunPart part, Effort effort)
    {
        var filling = new LayingSearch(part, StockRelaxation.Together(part, effort)).First(effort);
        return new PartOutcome(filling, TrivialBounds.Of(part, filling));
    }

    /// <summary>The same for parts that are not decided at once.</summary>
    /// <param name="part">The part, with rows and bars.</param>
    /// <param name="exact">What was found so far, or none.</param>
    /// <param name="effort">Limit.</param>
    /// <param name="better">Told whenever a figure gets better or a bound closer.</param>
    public static PartOutcome Searched(RunPart part, Filling? exact, Effort effort, Action<PartOutcome> better)
    {
        // A row alone has no neighbours to be told of by pairs, and is decided once it is laid fairly well.
        var alone = part.Rows.Length == 1;
        if (part.Rests && !part.Open && !alone) return FromBelow(part, exact, effort, better);
        var table = part.Open || alone ? null : KindTable.Of(part, KindTable.Size.Usual, effort.Share(0.2));
        var (stacks, open) = table is null ? ([], []) : StackModes.Listed(table, effort.Share(0.3));
        return open.Length == 0 ? Searched(part, table, stacks, exact, effort, better) : Rest(table!, stacks, open, exact, effort, better);
    }

    // What stays open however it is laid is left out, and the rest is a part of its own.
    private static PartOutcome Rest(KindTable table, StackModes[] stacks, Row[] open, Filling? exact, Effort effort, Action<PartOutcome> better)
    {
        var (part, left) = (table.Part, new RowsLeftOpen(table.Part, open));
        var outcome = OfRest(left, table, stacks, exact, effort, one => better(left.Whole(one)));
        var whole = left.Whole(outcome);
        if (outcome.Filling.Filled.Contains(false))
        {
            // Where others stay open too, what is proven of the rest says nothing of the spend.
            var start = StockRelaxation.Least(part);
            var more = Whole(whole.Filling, new WorthTable(part, start), effort);
            if (more.CompareTo(whole.Filling) < 0) whole = left.Of(more);
            whole = whole.With(new KnownBounds(part, null, start, whole.Filling, effort).Of(whole.Filling).Bounds);
        }

        return exact is not null && exact.CompareTo(whole.Filling) < 0 ? left.Of(exact) : whole;
    }

    private static PartOutcome OfRest(RowsLeftOpen left, KindTable table, StackModes[] stacks, Filling? exact, Effort effort, Action<PartOutcome> better)
    {
        if (left.Rest.Rows.Length == 0) return PartOutcome.Best(Filling.Empty(left.Rest));
        var rows = left.Origin.Zip(left.Rest.Rows).ToDictionary(one => one.First, one => one.Second);
        var ofRest = table.Only(left.Rest, left.Origin, KindTable.Size.Usual);
        StackModes[] listed = ofRest is null ? [] : [.. stacks.Select(stack => stack.In(rows))];
        return Searched(left.Rest, ofRest, listed, exact is null ? null : left.InRest(exact), effort, better);
    }

    // The table, where there is one, and those of the runs that are listed.
    private static PartOutcome Searched(RunPart part, KindTable? table, StackModes[] stacks, Filling? exact, Effort effort, Action<PartOutcome> better)
    {
        var alone = part.Rows.Length == 1;
        // Where openings part courses, pairs laid one on the other come to courses that can't be laid: what is listed is laid whole then, at once where that is every run.
        var (parted, all) = (part.Rows.Any(row => row.Stretches.Length > 1), stacks.Sum(stack => stack.Rows.Count) == part.Rows.Count(row => row.Stretches.Length > 0));
        var atOnce = table is not null && parted && all;
        var start = StockRelaxation.Least(part);
        var whole = atOnce ? StackDive.Begin(table!, stacks, start, Filling.Empty(part), effort.Share(0.4)) : null;
        using var dive = table is null || whole?.First is not null ? null : PairDive.Begin(table, parted ? stacks : [], start, effort.Share(0.5));
        var ofDive = dive?.Prices ?? whole?.Prices;
        var prices = ofDive ?? StockRelaxation.Together(part, effort.Share(0.2));
        var search = new LayingSearch(part, prices);
        var filling = (whole?.First ?? dive?.First) is { } dived ? Whole(dived, new WorthTable(part, prices), effort) : search.First(effort);
        if (exact is not null && exact.CompareTo(filling) < 0) filling = exact;
        better(new PartOutcome(filling, TrivialBounds.Of(part, filling)));
        if (filling.Filled.Contains(false) && dive?.First is not null && search.First(effort) is var other && other.CompareTo(filling) < 0) filling = other;
        if (stacks.Length > 0 && !parted)
        {
            // Beside the others as they are.
            whole = StackDive.Begin(table!, stacks, prices, filling, effort.Share(0.3));
            if (whole.First is { } anew && anew.CompareTo(filling) < 0) better(new PartOutcome(filling = anew, TrivialBounds.Of(part, filling)));
        }

        var known = new KnownBounds(part, table, prices, filling, effort.Share(0.4));
        better(known.Of(filling));
        if (stacks.Length > 0) filling = Modes(table!, stacks, prices, filling, known, effort.Share(0.7), better);
        if (whole is not null) filling = Relaid(whole, filling, known, effort.Share(0.5), better);
        if (dive is not null) filling = Changed(dive, filling, known, effort.Share(0.8), better);
        var quick = search.Improve(filling, known.Of, effort.Share(0.2), one => better(known.Of(one)), alone ? RoundsAlone : QuickRounds);
        var outcomeOfQuick = Decided(part, known, quick, effort.Share(0.4));
        better(outcomeOfQuick);
        // Without a price the answer is to give one, not to look any longer for what the yard alone might do.
        if (outcomeOfQuick.Proven || (part.Unpriced && outcomeOfQuick.Filling.Filled.Contains(false))) return outcomeOfQuick;
        var last = Last(part, known, outcomeOfQuick, effort);
        better(last);
        if (last.Proven) return last;
        // By what the stock alone is worth this time, where that is not what led so far: other prices lead elsewhere.
        if (ofDive is not null) search = new LayingSearch(part, StockRelaxation.Together(part, effort.Share(0.1)));
        var improved = search.Improve(last.Filling, known.Of, effort.Share(0.8), one => better(known.Of(one)));
        return improved.CompareTo(last.Filling) == 0 ? last : Decided(part, known, improved, effort);
    }

    // Stock is limited: the rows that it may reach for are laid first, then the others as far as it goes; and pairs and rows are laid again by turns.
    private static PartOutcome FromBelow(RunPart part, Filling? exact, Effort effort, Action<PartOutcome> better)
    {
        using var bottom = BottomUp.Begin(part, effort.Share(0.4));
        var (worth, search) = (new WorthTable(part, bottom.Prices), new LayingSearch(part, bottom.Prices));
        var filling = bottom.First is { } first ? Whole(first, worth, effort) : exact ?? search.First(effort.Share(0.3));
        if (exact is not null && exact.CompareTo(filling) < 0) filling = exact;
        better(new PartOutcome(filling, TrivialBounds.Of(part, filling)));
        // What a shorter time falls back on is tried in a longer one too: which of both lays more can't be known beforehand.
        if (bottom.First is not null && filling.Filled.Contains(false) && !effort.Over && search.First(effort.Share(0.2)) is var other && other.CompareTo(filling) < 0) better(new PartOutcome(filling = other, TrivialBounds.Of(part, filling)));
        var known = new KnownBounds(part, null, bottom.Prices, filling, effort.Share(0.2));
        better(known.Of(filling));
        var endless = double.IsInfinity(effort.Seconds);
        for (var fruitless = 0; fruitless < (endless ? MostTurns : int.MaxValue) && !effort.Over && !known.Of(filling).Proven; fruitless++)
        {
            var before = filling;
            var turn = effort.Share(0.2);
            for (var n = 0; n < MostFruitless && !turn.Over; n++)
            {
                if (bottom.Change(turn) is { } next && Whole(next, worth, turn) is var whole && whole.CompareTo(filling) < 0) better(known.Of(filling = whole));
            }

            filling = search.Improve(filling, known.Of, effort.Share(0.2), one => better(known.Of(one)), QuickRounds, seed: fruitless);
            if (filling.CompareTo(before) < 0) fruitless = -1;
        }

        var outcome = Decided(part, known, filling, effort.Share(0.4));
        return outcome.Proven ? outcome : Last(part, known, outcome, effort);
    }

    // Rows that were left open are laid as far as what is left of the stock reaches.
    private static Filling Whole(Filling filling, WorthTable worth, Effort effort)
    {
        var site = Site.Of(filling, worth, new Random(9), effort);
        foreach (var row in filling.Part.Rows.Where(row => !filling.Filled[row.Index])) site.LayFirmly(row, 24);
        // A row that is laid by laying those below anew may leave one of them open.
        return site.Filling() is var whole && whole.CompareTo(filling) < 0 ? whole : filling;
    }

    // Where the stagger leaves a run few ways to be laid, they are told apart: first for the spend, then for the value.
    private static Filling Modes(KindTable table, StackModes[] stacks, StockPrices prices, Filling filling, KnownBounds known, Effort effort, Action<PartOutcome> better)
    {
        if (filling.Filled.Contains(false) || known.Of(filling).Proven || effort.Over) return filling;
        foreach (var goal in new[] { RunGoal.Spend, RunGoal.GivenUp })
        {
            var tier = table.Part.Levels.Length + (goal == RunGoal.Spend ? 0 : 1);
            if (known.Of(filling).Figure(tier).Proven) continue;
            (filling, var bound) = StackSearch.Solve(table, stacks, goal, goal == RunGoal.Spend ? prices.OfSpend : known.Given ?? prices, filling, effort.Share(0.7));
            known.AtLeast(goal, filling, bound);
            better(known.Of(filling));
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

    // Pairs are taken out and laid again until the spend is proven. What is cut from what is decided only where the program says that less is spent: it takes
    // as long as dozens of moves.
    internal static Filling Changed(PairDive dive, Filling filling, KnownBounds known, Effort effort, Action<PartOutcome> better)
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

    // A small part that was not decided at once for its many ways to cut: with more time it is, or it is too large to begin with. What
    // is found but not proven is gone on from where it is better.
    private static PartOutcome Last(RunPart part, KnownBounds known, PartOutcome outcome, Effort effort)
    {
        if (part.Open || part.Bars.Length > ExactSize.LastBars) return outcome;
        var (best, proven) = ExactFill.Solve(part, ExactSize.Last, effort.Share(0.5));
        return Joined(known, outcome, best, proven, again: effort);
    }

    private static PartOutcome Joined(KnownBounds known, PartOutcome outcome, Filling? best, bool proven, Effort? again = null)
    {
        var (better, sure) = Better(outcome.Filling, best, proven);
        if (sure) return PartOutcome.Best(better);
        if (ReferenceEquals(better, outcome.Filling)) return outcome;
        return again is null ? known.Of(better) : Decided(better.Part, known, better, again.Share(0.4));
    }

    /// <summary>
    /// The better of what is known and what was decided, and whether it is proven. Throws where something is said to be the best that
    /// is worse than what is known: one of the two is wrong then, and nothing that is proven could be believed.
    /// </summary>
    internal static (Filling Best, bool Proven) Better(Filling known, Filling? decided, bool proven)
    {
        if (decided is null) return (known, false);
        var compared = decided.CompareTo(known);
        if (proven && compared > 0)
            throw new InvalidOperationException($"proven is {string.Join(' ', decided.Figures)}, but known is {string.Join(' ', known.Figures)}");
        return compared < 0 || proven ? (decided, proven) : (known, false);
    }

    // Where every row is covered and the spend is proven, the tiers after it are decided among the patterns that the bound leaves.
    private static PartOutcome Decided(RunPart part, KnownBounds known, Filling filling, Effort effort)
    {
        var outcome = known.Of(filling);
        if (part.Open || outcome.Proven || filling.Filled.Contains(false) || !outcome.Figure(part.Levels.Length).Proven) return outcome;
        var (best, proven) = ExactFill.Solve(part, known.Left(filling, effort), ExactSize.Within, effort);
        return Joined(known, outcome, best, proven);
    }

    /// <summary>The least cost of covering rows from new pieces alone, and whether it is proven.</summary>
    public static (long Cost, bool Proven) AllNew(RunPart part, bool[] filled, IReadOnlyList<StorePrice> prices, Effort effort)
    {
        var fresh = part.FromStore(filled, prices);
        if (AloneFill.LeastSpend(fresh) is { } least) return (least, true);
        var (exact, proven) = ExactFill.Solve(fresh, ExactSize.Usual, effort, spendOnly: true);
        var spend = fresh.Levels.Length;
        if (exact is not null && proven) return (exact.Figures[spend], true);
        var filling = new LayingSearch(fresh, StockRelaxation.Solve(fresh, Filling.Covered(fresh), RunGoal.Spend, effort).Prices).First(effort);
        var bound = StockRelaxation.Solve(fresh, filling, RunGoal.Spend, effort).Bound;
        return (filling.Figures[spend], fresh.NextSpend(bound) == filling.Figures[spend]);
    }
}
