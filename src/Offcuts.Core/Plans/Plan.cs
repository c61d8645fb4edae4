using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Plans;

/// <summary>A figure reached, and the best that any plan could reach.</summary>
/// <param name="Value">What this plan reaches.</param>
/// <param name="Bound">No plan is below this.</param>
public readonly record struct Figure(long Value, long Bound)
{
    /// <summary>True where the two meet.</summary>
    public bool Proven => Value == Bound;

    /// <summary>A figure that is known to be the best.</summary>
    public static Figure Best(long value) => new(value, value);
}

/// <summary>The tiers of a plan. Each is decided before the next is looked at.</summary>
/// <param name="Unfilled">Required cuts left unfilled, of all stages together.</param>
/// <param name="UnfilledByStage">The same, stage by stage in the stages' order: what the first tier compares.</param>
/// <param name="Spend">Cents for bought pieces and hardware.</param>
/// <param name="ValueGivenUp">Cents of yard value used up, less that of the kept remainders.</param>
/// <param name="SawCuts">How many times the saw goes through, across and lengthwise.</param>
public sealed record Tiers(Figure Unfilled, IReadOnlyList<Figure> UnfilledByStage, Figure Spend, Figure ValueGivenUp, int SawCuts)
{
    /// <summary>
    /// Where saw cuts were decided before value: no plan with the same fill and spend has fewer. Else none, since no bound is claimed.
    /// </summary>
    public int? SawCutsBound { get; init; }

    /// <summary>Cuts that are ripped out of a wider piece: decided right after the spend. None where no cut may be.</summary>
    public Figure? Rips { get; init; }

    /// <summary>True where fill, spend, rips and value given up are each proven, and saw cuts where those come before value.</summary>
    public bool Proven => Unfilled.Proven && Spend.Proven && (Rips?.Proven ?? true) && ValueGivenUp.Proven && (SawCutsBound is null || SawCutsBound == SawCuts);
}

/// <summary>One cut at its place on a piece.</summary>
/// <param name="Stage">Stage it serves.</param>
/// <param name="Cut">Name of the required cut.</param>
/// <param name="Start">Where it starts, from the piece's marked end.</param>
/// <param name="Length">How long it is; a whole span taken as it is may be longer than the shortest that would do.</param>
/// <param name="Use">What it is for.</param>
public sealed record PlannedCut(string Stage, string Cut, Length Start, Length Length, Use Use)
{
    /// <summary>How it is ripped out of a wider piece; none where the piece is of its own material.</summary>
    public PlannedRip? Rip { get; init; }
}

/// <summary>How a cut is sawn lengthwise out of a wider piece. What is left beside it is a strip as long as the cut.</summary>
/// <param name="Into">The cut's own material.</param>
/// <param name="Width">How wide it is sawn.</param>
/// <param name="Strip">How wide the strip is; zero where less than a kerf is left.</param>
/// <param name="KeptAs">What the strip is kept as, brought to that width where it is wider; none where it is scrap.</param>
public sealed record PlannedRip(Material Into, Length Width, Length Strip, Material? KeptAs)
{
    /// <summary>How wide the kept strip is in the end; none where it is scrap.</summary>
    public Length? KeptWidth => KeptAs is null ? null : Ripping.Width(KeptAs);

    /// <summary>How many times the saw goes through lengthwise: once, and once more where the strip has to be brought to width.</summary>
    public int SawCuts => KeptWidth < Strip ? 2 : 1;
}

/// <summary>What is left of a span.</summary>
/// <param name="Start">Where it starts, from the piece's marked end.</param>
/// <param name="Length">How long it is; over 0.</param>
/// <param name="Kept">True from the keep length up: it gets a label. Else scrap.</param>
public sealed record PlannedRemainder(Length Start, Length Length, bool Kept);

/// <summary>A strip worth a label that is left beside a ripped cut.</summary>
/// <param name="Material">What it is.</param>
/// <param name="Start">Where it starts, from the piece's marked end.</param>
/// <param name="Length">How long it is.</param>
public sealed record KeptStrip(Material Material, Length Start, Length Length);

/// <summary>One piece that the plan cuts, and how.</summary>
public sealed record PlannedPiece
{
    /// <summary>The yard's piece, or none where it is bought.</summary>
    public Piece? Source { get; init; }

    /// <summary>The price at which it is bought, or none where the yard has it.</summary>
    public StorePrice? Bought { get; init; }

    /// <summary>Its cuts, from the marked end on.</summary>
    public required IReadOnlyList<PlannedCut> Cuts { get; init; }

    /// <summary>What is left of the spans it cuts into, from the marked end on.</summary>
    public required IReadOnlyList<PlannedRemainder> Remainders { get; init; }

    /// <summary>Spans that the plan leaves alone, from the marked end on: neither used nor a remainder.</summary>
    public IReadOnlyList<Span> Untouched { get; init; } = [];

    /// <summary>How many times the saw goes through, across and lengthwise.</summary>
    public required int SawCuts { get; init; }

    /// <summary>From one pattern line of it to the next, where the plan knows that; over 0. None for what has no pattern.</summary>
    public Length? LineSpacing { get; init; }

    /// <summary>
    /// From the start of a stretch of it to the first pattern line on that stretch; none where no line lies there or it is not known.
    /// A bought piece comes with a line at its marked end.
    /// </summary>
    /// <param name="start">Where the stretch starts, from the marked end.</param>
    /// <param name="length">How long it is.</param>
    public Length? FirstLineOf(Length start, Length length)
    {
        var known = Source is null ? (LineSpacing is null ? null : Length.Zero) : Source.FirstLine;
        if (known is not { } line) return null;
        if (LineSpacing is not { } spacing) return line >= start && line <= start + length ? line - start : null;
        var first = ((line.Units - start.Units) % spacing.Units + spacing.Units) % spacing.Units;
        return first <= length.Units ? Length.FromUnits(first) : null;
    }

    /// <summary>Strips that are left of it otherwise than beside its cuts: what is sawn out of them under or over an opening, and narrower boards where it was not cut as planned.</summary>
    public IReadOnlyList<KeptStrip> StripsLeft { get; init; } = [];

    /// <summary>All strips worth a label: those beside its cuts, then those left otherwise.</summary>
    public IEnumerable<KeptStrip> Strips =>
        Cuts.Where(cut => cut.Rip?.KeptAs is not null).Select(cut => new KeptStrip(cut.Rip!.KeptAs!, cut.Start, cut.Length)).Concat(StripsLeft);

    /// <summary>What a cut of it becomes: its own material, or what it is ripped to.</summary>
    public Material MaterialOf(PlannedCut cut) => cut.Rip?.Into ?? Material;

    /// <summary>True where some of it can't be used: a bad spot, or an end that is trimmed off.</summary>
    public bool HasUnusable => Source is { } source && (source.BadSpots.Count > 0 || !source.TrimLeft.IsZero || !source.TrimRight.IsZero);

    /// <summary>What it is.</summary>
    public Material Material => Source?.Material ?? Bought!.Material;

    /// <summary>Its full length.</summary>
    public Length Length => Source?.Length ?? Bought!.Length;
}

/// <summary>How one need for hardware is met.</summary>
/// <param name="Need">The need.</param>
/// <param name="FromYard">How many the bins give.</param>
/// <param name="ToBuy">How many are bought.</param>
/// <param name="Price">What those cost together.</param>
public sealed record HardwareFill(HardwareNeed Need, int FromYard, int ToBuy, Money Price)
{
    /// <summary>How many are still wanting.</summary>
    public int Unfilled => Need.Count - FromYard - ToBuy;
}

/// <summary>A need that the plan leaves unfilled, and why.</summary>
/// <param name="Stage">Its stage.</param>
/// <param name="Cut">Its name.</param>
/// <param name="Count">How many are wanting.</param>
/// <param name="Reason">Why, in a sentence.</param>
public sealed record Unfilled(string Stage, string Cut, int Count, string Reason);

/// <summary>Pieces that would serve a cut but for being of another foam type, or of none that is known.</summary>
/// <param name="Asked">The foam that is asked for.</param>
/// <param name="There">The foam that lies in the yard, as thick and as high.</param>
/// <param name="Pieces">How many pieces of it would serve one of the cuts.</param>
public sealed record NearFoam(string Asked, string There, int Pieces);

/// <summary>What the plan saves, measured against the same cuts bought entirely new at their own best plan.</summary>
/// <param name="AllNew">What that would cost; counts only needs this plan fills.</param>
/// <param name="Spend">What this plan spends.</param>
/// <param name="AllNewProven">True where the all-new plan is proven the cheapest.</param>
/// <param name="Unpriced">Materials that can't be bought, so that nothing was counted for them.</param>
public sealed record PlanSavings(Money AllNew, Money Spend, bool AllNewProven, IReadOnlyList<string> Unpriced)
{
    /// <summary>The difference.</summary>
    public Money Saved => AllNew - Spend;
}

/// <summary>What to cut from what. Immutable; checked against its problem before anyone sees it.</summary>
public sealed record Plan
{
    /// <summary>The stages it serves, in order.</summary>
    public required IReadOnlyList<string> Stages { get; init; }

    /// <summary>What it reaches, tier by tier.</summary>
    public required Tiers Tiers { get; init; }

    /// <summary>Pieces of the yard in the yard's order, then bought pieces by material and length.</summary>
    public required IReadOnlyList<PlannedPiece> Pieces { get; init; }

    /// <summary>Needs for hardware, in the stages' order.</summary>
    public required IReadOnlyList<HardwareFill> Hardware { get; init; }

    /// <summary>What is left unfilled.</summary>
    public required IReadOnlyList<Unfilled> Unfilled { get; init; }

    /// <summary>What it saves.</summary>
    public required PlanSavings Savings { get; init; }

    /// <summary>Materials used or needed that have no price: their value counts as 0 and they can't be bought.</summary>
    public required IReadOnlyList<string> Unpriced { get; init; }

    /// <summary>Foam that is bought while the yard has the same of another type; none where nothing of the kind is.</summary>
    public IReadOnlyList<NearFoam> Near { get; init; } = [];

    /// <summary>What was said of single pieces before it was made; it keeps to that.</summary>
    public Wishes Wishes { get; init; } = Wishes.None;

    /// <summary>False where it was made from the yard alone, because somebody wished that nothing is bought.</summary>
    public bool Buys { get; init; } = true;

    /// <summary>True where the yard had changed between the matching and the keeping: what is proven was proven of the yard as it was before.</summary>
    public bool Earlier { get; init; }

    /// <summary>Which of its pieces, by number from 0, are given up since what they were to be cut from was let go; none where nothing was, or where the rest was matched again since.</summary>
    public IReadOnlyList<int> LetGo { get; init; } = [];

    /// <summary>True where all of tiers 1 to 3 are proven, and saw cuts where those come before value.</summary>
    public bool Proven => Tiers.Proven;
}
