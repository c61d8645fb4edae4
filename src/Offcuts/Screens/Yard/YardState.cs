using System.Collections.Immutable;
using Offcuts.Core.Yard;

namespace Offcuts.Screens;

/// <summary>How the list of the yard is ordered: as entered, or by one of its columns.</summary>
internal enum YardOrder
{
    /// <summary>As entered.</summary>
    Entry,

    /// <summary>By code.</summary>
    Code,

    /// <summary>By material, then length, longest first.</summary>
    Material,

    /// <summary>Longest first.</summary>
    Length,

    /// <summary>The soundest first, those that are gone last.</summary>
    Condition,

    /// <summary>Those with most marks first.</summary>
    Marks,

    /// <summary>By place, then material.</summary>
    Place,
}

/// <summary>The yard on the screen.</summary>
internal sealed record YardState
{
    public required YardSnapshot Yard { get; init; }

    public EntryLine Line { get; init; } = new();

    /// <summary>What another program changed of what an open question is about; told before the answer is taken. Empty where nothing was.</summary>
    public string Overtaken { get; init; } = "";

    public YardQuery Query { get; init; } = YardQuery.All;

    public YardOrder Order { get; init; }

    /// <summary>True where it is ordered the other way round.</summary>
    public bool Turned { get; init; }

    /// <summary>True where used, scrapped, handed over and missing pieces are shown too.</summary>
    public bool Gone { get; init; }

    /// <summary>All that could be shown, in order, as places in the yard's list.</summary>
    public IReadOnlyList<int> Ordered { get; init; } = [];

    /// <summary>What the line lets through of it.</summary>
    public IReadOnlyList<int> Shown { get; init; } = [];

    /// <summary>Which of <see cref="Shown"/> is chosen.</summary>
    public int Chosen { get; init; }

    /// <summary>What is marked, to be acted on together, whether it is shown or not.</summary>
    public IReadOnlySet<Code> Marked { get; init; } = ImmutableHashSet<Code>.Empty;

    /// <summary>What the marked ones come to, in words; empty where nothing is marked.</summary>
    public string MarkedTold { get; init; } = "";

    /// <summary>True after a first Esc that would let go of the marks.</summary>
    public bool LettingGo { get; init; }

    /// <summary>What an open question is about: it stays so, whatever is chosen or changed by another program meanwhile.</summary>
    public IReadOnlyList<Code> About { get; init; } = [];

    /// <summary>The place where something was put last.</summary>
    public string LastPlace { get; init; } = "";

    /// <summary>History and family of the chosen one, once they are read.</summary>
    public PieceCard? Card { get; init; }

    /// <summary>True while the chosen one fills the screen, with its QR symbol.</summary>
    public bool Closer { get; init; }

    /// <summary>First line of it that is shown.</summary>
    public int CloserTop { get; init; }

    /// <summary>The chosen piece or bin, or nothing.</summary>
    public YardEntry? Entry => Chosen < Shown.Count ? Yard.Entries[Shown[Chosen]] : null;

    /// <summary>Its code.</summary>
    public Code Code => Entry?.Code ?? default;

    /// <summary>The same with nothing marked.</summary>
    public YardState Unmarked() => this with { Marked = ImmutableHashSet<Code>.Empty, MarkedTold = "", LettingGo = false };

    /// <summary>The same with what is marked in the other.</summary>
    public YardState MarkedAs(YardState other) => this with { Marked = other.Marked, MarkedTold = other.MarkedTold };

    /// <summary>What a key acts on: the marked ones in the yard's own order, else the chosen one.</summary>
    public IReadOnlyList<YardEntry> Meant => Marked.Count > 0
        ? [.. Marked.Select(code => Yard.Index[code]).Order().Select(i => Yard.Entries[i])]
        : Entry is { } entry ? [entry] : [];
}
