using Offcuts.Core.Materials;

namespace Offcuts.Matching.Methods;

/// <summary>One span in the yard: which piece, and which of its spans.</summary>
/// <param name="Piece">Number of the piece in the problem.</param>
/// <param name="Span">Number of the span on the piece.</param>
internal readonly record struct SpanPlace(int Piece, int Span);

/// <summary>What a cut adds by being ripped out of a wider span. <c>default</c> is a cut that is not ripped.</summary>
/// <param name="SawCuts">Saw cuts lengthwise: 1, or 2 where the strip is brought to width; 0 where nothing is ripped.</param>
/// <param name="StripValue">Cents that the kept strip is worth.</param>
internal readonly record struct Ripped(int SawCuts, long StripValue)
{
    /// <summary>1 where it is ripped, else 0: what it adds to the tier of rips.</summary>
    public int Count => SawCuts > 0 ? 1 : 0;
}

/// <summary>
/// Spans, or store pieces, that are alike in all that matters: length, value, and what they may serve.
/// </summary>
internal sealed record Supply
{
    private long? _largestDrop;

    /// <summary>Usable length, in units.</summary>
    public required long Length { get; init; }

    /// <summary>How many there are; of an unlimited store length as many as there are cuts.</summary>
    public required int Count { get; init; }

    /// <summary>Cents; 0 in the yard.</summary>
    public long Price => Bought?.Price.Cents ?? 0;

    /// <summary>The price it is bought at, or none in the yard.</summary>
    public StorePrice? Bought { get; init; }

    /// <summary>True for a store length without a limit.</summary>
    public bool Unlimited { get; init; }

    /// <summary>Where the spans lie, in the yard's order; empty for a store length.</summary>
    public IReadOnlyList<SpanPlace> Places { get; init; } = [];

    /// <summary>Holds preservative.</summary>
    public required bool Treated { get; init; }

    /// <summary>What a usable length of it is worth.</summary>
    public required ValueCurve Value { get; init; }

    /// <summary>See <see cref="ValueCurve.LargestDrop"/>, of what can be left of it.</summary>
    public long LargestDrop => _largestDrop ??= Value.LargestDrop(Length);

    /// <summary>Cents that the yard owns before anything is cut: 0 for a store length.</summary>
    public required long ValueBefore { get; init; }

    /// <summary>Which demands may be cut from it.</summary>
    public required bool[] Allows { get; init; }

    /// <summary>Which demands it may serve as it is, uncut.</summary>
    public required bool[] Whole { get; init; }

    /// <summary>What each demand adds that is ripped out of it, cut to its length; none where nothing may be.</summary>
    public Ripped[]? Rips { get; init; }

    /// <summary>The same where the demand takes the span whole.</summary>
    public Ripped[]? WholeRips { get; init; }

    /// <summary>What a demand adds by being ripped out of it.</summary>
    public Ripped Rip(int demand, bool whole) => (whole ? WholeRips : Rips)?[demand] ?? default;

    /// <summary>
    /// The same where no more than so much can be left of it, in units. The largest drop stays that of the whole curve, which is no smaller: what leaves
    /// labels out by it leaves out none that it may not.
    /// </summary>
    public Supply Leaving(long longest) => this with { Value = Value.UpTo(longest), _largestDrop = LargestDrop };

    /// <summary>The same where some demands may no longer be taken from it.</summary>
    public Supply Without(Func<int, bool> demand) => this with
    {
        Allows = [.. Allows.Select((allowed, d) => allowed && !demand(d))],
        Whole = [.. Whole.Select((allowed, d) => allowed && !demand(d))],
    };
}
