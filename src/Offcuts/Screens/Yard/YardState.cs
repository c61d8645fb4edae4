using Offcuts.Core.Yard;

namespace Offcuts.Screens;

/// <summary>How the list of the yard is ordered.</summary>
internal enum YardOrder
{
    /// <summary>As entered.</summary>
    Entry,

    /// <summary>By material, then length, longest first.</summary>
    Material,

    /// <summary>Longest first.</summary>
    Length,

    /// <summary>By place, then material.</summary>
    Place,

    /// <summary>The soundest first.</summary>
    Condition,
}

/// <summary>The yard on the screen.</summary>
internal sealed record YardState
{
    public required YardSnapshot Yard { get; init; }

    public EntryLine Line { get; init; } = new();

    public YardQuery Query { get; init; } = YardQuery.All;

    public YardOrder Order { get; init; }

    /// <summary>True where used, scrapped, handed over and missing pieces are shown too.</summary>
    public bool Gone { get; init; }

    /// <summary>All that could be shown, in order, as places in the yard's list.</summary>
    public IReadOnlyList<int> Ordered { get; init; } = [];

    /// <summary>What the line lets through of it.</summary>
    public IReadOnlyList<int> Shown { get; init; } = [];

    /// <summary>Which of <see cref="Shown"/> is chosen.</summary>
    public int Chosen { get; init; }

    /// <summary>History and family of the chosen one, once they are read.</summary>
    public PieceCard? Card { get; init; }

    /// <summary>True while the chosen one fills the screen, with its QR symbol.</summary>
    public bool Closer { get; init; }

    /// <summary>The chosen piece or bin, or nothing.</summary>
    public YardEntry? Entry => Chosen < Shown.Count ? Yard.Entries[Shown[Chosen]] : null;

    /// <summary>Its code.</summary>
    public Code Code => Entry?.Code ?? default;
}
