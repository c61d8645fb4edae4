using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// Fills one part, from top to bottom: a small one is decided exactly; else it is searched, by <see cref="PartSearch"/> or, where stock is limited, by <see cref="LimitedSearch"/>;
/// courses that stay open however it is laid are left out of that first.
/// </summary>
internal static class PartFiller
{
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
        var (best, sure) = PartDecision.Better(laid, exact, proven);
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
        if (part.Rests && !part.Open && !alone) return LimitedSearch.Of(part, exact, effort, better);
        var table = part.Open || alone ? null : KindTable.Of(part, KindTable.Size.Usual, effort.Share(0.2));
        var (stacks, open) = table is null ? ([], []) : StackModes.Listed(table, effort.Share(0.3));
        return open.Length == 0 ? PartSearch.Of(part, table, stacks, exact, effort, better) : Rest(table!, stacks, open, exact, effort, better);
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
            var more = PartDecision.Completed(whole.Filling, new WorthTable(part, start), effort);
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
        return PartSearch.Of(left.Rest, ofRest, listed, exact is null ? null : left.InRest(exact), effort, better);
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
