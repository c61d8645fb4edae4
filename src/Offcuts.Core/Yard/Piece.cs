using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Yard;

/// <summary>How much of its strength and shape a piece has left, as the person judged it.</summary>
public enum Condition
{
    /// <summary>As good as new for its section.</summary>
    Sound,

    /// <summary>Worn: fit for what carries no load.</summary>
    Fair,

    /// <summary>Fit for stakes and packing.</summary>
    Poor,
}

/// <summary>Where a piece is in its life.</summary>
public enum PieceState
{
    /// <summary>Lies in the yard, free.</summary>
    InYard,

    /// <summary>Lies in the yard, kept for one stage.</summary>
    Reserved,

    /// <summary>Built in or cut up.</summary>
    Used,

    /// <summary>Given to somebody else.</summary>
    HandedOver,

    /// <summary>Thrown away.</summary>
    Scrapped,

    /// <summary>Should lie in the yard and was not found.</summary>
    Missing,
}

/// <summary>A stretch of a piece, from the marked end. Start is before the end.</summary>
public readonly record struct Span
{
    /// <summary>A stretch. Throws where <paramref name="end"/> is not after <paramref name="start"/>.</summary>
    public Span(Length start, Length end)
    {
        if (end <= start) throw new ArgumentException($"a span ends after it starts, not {start}..{end}", nameof(end));
        (Start, End) = (start, end);
    }

    /// <summary>Where it starts, from the marked end.</summary>
    public Length Start { get; }

    /// <summary>Where it ends, from the marked end.</summary>
    public Length End { get; }

    /// <summary>How long it is.</summary>
    public Length Length => End - Start;

    /// <summary><c>start..end</c>, exact.</summary>
    public override string ToString() => $"{Start}..{End}";
}

/// <summary>
/// One thing in the yard with its own label. What cannot be is found by <see cref="PieceRules"/>, which every way into the yard asks; changed by <c>with</c>
/// followed by the same check.
/// </summary>
public sealed record Piece
{
    /// <summary>What its label says.</summary>
    public required Code Code { get; init; }

    /// <summary>What it is. Never hardware: that lies in a <see cref="Bin"/>.</summary>
    public required Material Material { get; init; }

    /// <summary>Its full length, bad spots and trims included; over 0.</summary>
    public required Length Length { get; init; }

    /// <summary>The other side of a sheet; zero for everything else.</summary>
    public Length Width { get; init; }

    /// <summary>As judged.</summary>
    public Condition Condition { get; init; }

    /// <summary>Stretches that nothing may be cut from: inside the piece, in order, apart from each other.</summary>
    public IReadOnlyList<Span> BadSpots { get; init; } = [];

    /// <summary>What must come off the marked end before it is used.</summary>
    public Length TrimLeft { get; init; }

    /// <summary>What must come off the other end.</summary>
    public Length TrimRight { get; init; }

    /// <summary>Holds preservative.</summary>
    public bool Treated { get; init; }

    /// <summary>Which preservative, where known; else empty.</summary>
    public string TreatedWith { get; init; } = "";

    /// <summary>Carries a grade stamp that can be read.</summary>
    public bool Stamped { get; init; }

    /// <summary>Nails are still in it.</summary>
    public bool Nails { get; init; }

    /// <summary>Concrete clings to it.</summary>
    public bool Concrete { get; init; }

    /// <summary>Form oil was on it.</summary>
    public bool Oiled { get; init; }

    /// <summary>Where it lies, in the user's words.</summary>
    public string Place { get; init; } = "";

    /// <summary>The stage it came off; empty where none.</summary>
    public string FromStage { get; init; } = "";

    /// <summary>The piece it was cut from; <see cref="Code.IsNone"/> where none.</summary>
    public Code CutFrom { get; init; }

    /// <summary>Foam only: from its marked end to its first pattern line, where known.</summary>
    public Length? FirstLine { get; init; }

    /// <summary>Whatever else the user wrote.</summary>
    public string Note { get; init; } = "";

    /// <summary>Where it is in its life.</summary>
    public PieceState State { get; init; }

    /// <summary>The stage it is reserved for; empty unless <see cref="State"/> is <see cref="PieceState.Reserved"/>.</summary>
    public string ReservedFor { get; init; } = "";

    /// <summary>True while it lies in the yard, free or reserved.</summary>
    public bool OnHand => State is PieceState.InYard or PieceState.Reserved;

    /// <summary>
    /// True while it can be cut as it was planned: on hand, as long, bad where it was and no worse, its lines where they were. What only
    /// has to be cleaned off it, its place and its note are no matter.
    /// </summary>
    /// <param name="planned">The piece as it was when the plan was made.</param>
    public bool StillServesAs(Piece planned) =>
        OnHand && Material.Equals(planned.Material) && Length == planned.Length && Spans().SequenceEqual(planned.Spans()) && FirstLine == planned.FirstLine
        && Condition <= planned.Condition && Treated == planned.Treated && (Stamped || !planned.Stamped);

    /// <summary>What lies between the stretches that can be used, from the marked end on: bad spots and trimmed ends, joined where they touch.</summary>
    public IReadOnlyList<Span> Unusable()
    {
        var stretches = new List<Span>();
        var at = Measures.Length.Zero;
        foreach (var span in Spans())
        {
            if (span.Start > at) stretches.Add(new Span(at, span.Start));
            at = span.End;
        }

        if (at < Length) stretches.Add(new Span(at, Length));
        return stretches;
    }

    /// <summary>The stretches that can be used: what lies between the bad spots, after the trims, from the marked end on.</summary>
    public IReadOnlyList<Span> Spans()
    {
        var spans = new List<Span>();
        var from = TrimLeft;
        var to = Length.LessAtMost(TrimRight);
        foreach (var bad in BadSpots)
        {
            var end = Length.Min(bad.Start, to);
            if (end > from) spans.Add(new Span(from, end));
            from = Length.Max(from, bad.End);
        }

        if (to > from) spans.Add(new Span(from, to));
        return spans;
    }
}

/// <summary>A heap of one kind of hardware at one place, with its own label and a count that is never negative.</summary>
/// <param name="Code">What its label says.</param>
/// <param name="Hardware">What lies in it.</param>
/// <param name="Quantity">How many; 0 or more.</param>
/// <param name="Place">Where it stands.</param>
/// <param name="Note">Whatever else the user wrote.</param>
public sealed record Bin(Code Code, Hardware Hardware, int Quantity, string Place = "", string Note = "");
