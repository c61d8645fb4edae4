using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Walls;

/// <summary>Whether what is on hand will do.</summary>
public enum StockVerdict
{
    /// <summary>It will do.</summary>
    Enough,

    /// <summary>There is as much on hand, but whether it can be cut so, a plan must tell.</summary>
    PerhapsEnough,

    /// <summary>It won't.</summary>
    Short,
}

/// <summary>One material of a wall against what is on hand.</summary>
public sealed record StockLine
{
    /// <summary>What.</summary>
    public required Material Material { get; init; }

    /// <summary>True where a plan may still ask for more than <see cref="NeededCount"/> or <see cref="NeededLength"/>.</summary>
    public required bool AtLeast { get; init; }

    /// <summary>How many are needed: counted things, or cuts.</summary>
    public required long NeededCount { get; init; }

    /// <summary>How much is needed, laid end to end; zero for counted things.</summary>
    public Length NeededLength { get; init; }

    /// <summary>How many are on hand: counted things, or pieces that may serve.</summary>
    public required long OnHandCount { get; init; }

    /// <summary>Usable length on hand; zero for counted things.</summary>
    public Length OnHandLength { get; init; }

    /// <summary>How many of it other needs of the stage still ask for: counted things, or cuts.</summary>
    public long OtherCount { get; init; }

    /// <summary>How much of it other needs of the stage still ask for, laid end to end; zero for counted things.</summary>
    public Length OtherLength { get; init; }

    /// <summary>Whether it will do.</summary>
    public required StockVerdict Verdict { get; init; }

    /// <summary>
    /// How many more this wall needs at least: counted things, or new pieces of <see cref="NewLength"/>, or, where that is zero, cuts. Never more than it
    /// needs in all, so that what other needs of the stage lack is not ordered once for each wall.
    /// </summary>
    public long ShortBy { get; init; }

    /// <summary>How many are lacking at least together with the other needs of the stage; no fewer than <see cref="ShortBy"/>.</summary>
    public long ShortWithOthers { get; init; }

    /// <summary>Number of the kept plan that tells whether it will do; 0 where none does.</summary>
    public int ByPlan { get; init; }

    /// <summary>The longest that can be bought, or a whole panel; zero where nothing is known.</summary>
    public Length NewLength { get; init; }

    /// <summary>The day to order by, so that it is there when the stage begins; none where the day or the days of delivery are unknown.</summary>
    public DateOnly? OrderBy { get; init; }
}

/// <summary>What there is to compare with.</summary>
/// <param name="Pieces">Pieces of the yard.</param>
/// <param name="Bins">Bins of the yard.</param>
/// <param name="Prices">What can be bought, with days of delivery.</param>
/// <param name="Rules">Which pieces may serve which use.</param>
/// <param name="Stage">The stage: a piece reserved for another doesn't count.</param>
/// <param name="Begins">The day the stage begins, where known.</param>
public sealed record StockOnHand(IReadOnlyList<Piece> Pieces, IReadOnlyList<Bin> Bins, PriceBook Prices, UseRules Rules, string Stage, DateOnly? Begins)
{
    /// <summary>Cuts that the stage needs beside this wall and that no plan makes yet: they are to come from the same pieces.</summary>
    public IReadOnlyList<RequiredCut> OtherCuts { get; init; } = [];

    /// <summary>Counted things that the stage needs beside this wall and that no plan counts out yet.</summary>
    public IReadOnlyList<HardwareNeed> OtherHardware { get; init; } = [];
}

/// <summary>
/// Compares a wall with the yard, a line a material. Counted things are told exactly. Of what is cut, two sums are asked that no
/// plan can get around: all lengths together, and for each length the cuts that long or longer against how often it goes into each
/// usable stretch. The same is asked of the wall together with the other needs of its stage, from all that may serve either. Where all
/// of it holds a plan may still find too little, so that is never called enough.
/// </summary>
public static class StockCheck
{
    /// <summary>A line for each material: panels and form boards, then cuts, then counted things.</summary>
    public static IReadOnlyList<StockLine> Of(Takeoff takeoff, StockOnHand stock)
    {
        var runs = takeoff.Runs.ToLookup(run => run.Material);
        var cuts = takeoff.Cuts.ToLookup(cut => cut.Cut.Material, cut => cut.Cut);
        return
        [
            .. runs.Select(same => same.Key).Concat(cuts.Select(same => same.Key)).Distinct().Select(material => Cut(material, runs[material].ToArray(), cuts[material].ToArray(), stock)),
            .. takeoff.Hardware.Where(hardware => hardware.Count.Figure > 0).Select((hardware, i) => Counted(hardware, atLeast: hardware.Hardware.Equals(takeoff.Wall.System.Tie), stock)),
        ];
    }

    private static StockLine Cut(Material material, RunTakeoff[] runs, RequiredCut[] cuts, StockOnHand stock)
    {
        var whole = runs.Select(run => run.Whole).Append(stock.Prices.Of(material).Select(price => price.Length).DefaultIfEmpty().Max()).Max();
        var spans = Usable(material, runs, cuts, stock);
        var needed = runs.Sum(run => run.Total.Units) + cuts.Sum(cut => cut.Shortest.Units * cut.Count);
        var onHand = spans.Sum(span => span.Units);
        RequiredCut[] others = [.. stock.OtherCuts.Where(cut => cut.Material.Equals(material))], all = [.. cuts, .. others];
        var allSpans = others.Length == 0 ? spans : Usable(material, runs, all, stock);
        var other = others.Sum(cut => cut.Shortest.Units * cut.Count);
        var lackingLength = Math.Max(0, Math.Max(needed - onHand, needed + other - allSpans.Sum(span => span.Units)));
        var lackingCuts = Math.Max(LackingCuts(cuts, spans), LackingCuts(all, allSpans));
        var shortBy = whole.IsZero ? lackingCuts : Math.Max(Divided(lackingLength, whole.Units), Math.Max(NewFor(cuts, spans, whole), NewFor(all, allSpans, whole)));
        var together = lackingLength > 0 || lackingCuts > 0 ? Math.Max(1, shortBy) : 0;
        var fromNothing = whole.IsZero ? LackingCuts(cuts, []) : Math.Max(Divided(needed, whole.Units), NewFor(cuts, [], whole));
        return new StockLine
        {
            Material = material,
            AtLeast = true,
            NeededCount = cuts.Sum(cut => (long)cut.Count) + runs.Sum(run => run.AtLeast ?? 0),
            NeededLength = Length.FromUnits(needed),
            OnHandCount = spans.Count,
            OnHandLength = Length.FromUnits(onHand),
            OtherCount = others.Sum(cut => (long)cut.Count),
            OtherLength = Length.FromUnits(other),
            Verdict = lackingLength > 0 || lackingCuts > 0 ? StockVerdict.Short : StockVerdict.PerhapsEnough,
            ShortBy = Math.Min(together, Math.Max(1, fromNothing)),
            ShortWithOthers = together,
            NewLength = whole,
            OrderBy = OrderBy(material, stock),
        };
    }

    // Stretches that may serve something of this wall. Foam and form boards of a run are asked for like a nonstructural or a rough cut.
    private static List<Length> Usable(Material material, RunTakeoff[] runs, RequiredCut[] cuts, StockOnHand stock)
    {
        var asked = cuts.ToList();
        if (runs.Length > 0) asked.Add(OfRun(material, stock));
        return
        [
            .. from piece in stock.Pieces
               where piece.Material.Equals(material)
               let may = asked.Where(cut => stock.Rules.Allows(piece, cut)).ToArray()
               where may.Length > 0
               let shortest = may.Min(cut => cut.Shortest)
               from span in piece.Spans()
               where span.Length >= shortest
               select span.Length,
        ];
    }

    /// <summary>True where a piece may lie in a run of its own material, as far as that hangs on the piece: its state, its condition, its use.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="stock">Stage and rules.</param>
    public static bool MayServeRun(Piece piece, StockOnHand stock) => stock.Rules.Allows(piece, OfRun(piece.Material, stock)) && piece.Spans().Any();

    private static RequiredCut OfRun(Material material, StockOnHand stock) => new()
    {
        Stage = stock.Stage,
        Name = "run",
        Material = material,
        Shortest = Length.FromUnits(1),
        Longest = Length.FromUnits(1),
        Count = 1,
        Use = material is FoamPanel ? Use.Nonstructural : Use.Rough,
    };

    // For each length, cuts of it and longer against how often it goes into each stretch, kerf left out: a bound from below.
    private static long LackingCuts(RequiredCut[] cuts, List<Length> spans) => cuts.Select(cut => Lacking(cuts, spans, cut.Shortest)).DefaultIfEmpty().Max();

    private static long Lacking(RequiredCut[] cuts, List<Length> spans, Length length) =>
        Math.Max(0, cuts.Where(other => other.Shortest >= length).Sum(other => (long)other.Count) - spans.Sum(span => span.Units / length.Units));

    // A new piece gives a length so often at most; a cut longer than any new piece can't be bought at all and is left to the plan to tell.
    private static long NewFor(RequiredCut[] cuts, List<Length> spans, Length whole) =>
        cuts.Where(cut => cut.Shortest <= whole).Select(cut => Divided(Lacking(cuts, spans, cut.Shortest), whole.Units / cut.Shortest.Units)).DefaultIfEmpty().Max();

    private static StockLine Counted(HardwareTakeoff needed, bool atLeast, StockOnHand stock)
    {
        var onHand = stock.Bins.Where(bin => bin.Hardware.Equals(needed.Hardware)).Sum(bin => (long)bin.Quantity);
        var other = stock.OtherHardware.Where(need => need.Hardware.Equals(needed.Hardware)).Sum(need => (long)need.Count);
        var lacking = Math.Max(0, needed.Count.Figure + other - onHand);
        return new StockLine
        {
            Material = needed.Hardware,
            AtLeast = atLeast,
            NeededCount = needed.Count.Figure,
            OnHandCount = onHand,
            OtherCount = other,
            Verdict = lacking > 0 ? StockVerdict.Short : atLeast ? StockVerdict.PerhapsEnough : StockVerdict.Enough,
            ShortBy = Math.Min(lacking, needed.Count.Figure),
            ShortWithOthers = lacking,
            OrderBy = OrderBy(needed.Hardware, stock),
        };
    }

    // By the slowest of its prices: which length is bought, a plan must tell.
    private static DateOnly? OrderBy(Material material, StockOnHand stock) =>
        stock.Begins is { } begins && stock.Prices.Of(material).Max(price => price.LeadDays) is { } days && days <= begins.DayNumber ? begins.AddDays(-days) : null;

    private static long Divided(long units, long by) => (units + by - 1) / by;
}
