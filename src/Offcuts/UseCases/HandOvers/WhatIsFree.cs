using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>Why a piece stays, or that it may go.</summary>
public enum Stays
{
    /// <summary>It may go.</summary>
    Free,

    /// <summary>The best plan of all that is lacking cuts it.</summary>
    Needed,

    /// <summary>It is reserved for a stage.</summary>
    Reserved,

    /// <summary>It waits in a kept plan.</summary>
    Planned,

    /// <summary>Somebody pinned it, or said that it is to be left alone.</summary>
    Wished,

    /// <summary>So much of its material always stays.</summary>
    KeptBack,

    /// <summary>Nothing says whether a stage needs it: sheets are not matched.</summary>
    NotKnown,
}

/// <summary>A piece of the yard, and whether it may go.</summary>
/// <param name="Piece">The piece.</param>
/// <param name="Worth">Its yard value.</param>
/// <param name="Stays">Whether it may go, or why not.</param>
/// <param name="Why">The same in a few words; empty where it may go.</param>
public sealed record PieceToGo(Piece Piece, Money Worth, Stays Stays, string Why)
{
    /// <summary>True where it may go.</summary>
    public bool IsFree => Stays == Stays.Free;
}

/// <summary>A bin of the yard, and how many out of it may go.</summary>
/// <param name="Bin">The bin.</param>
/// <param name="Free">How many may go.</param>
/// <param name="Worth">What those cost new; zero without a price.</param>
/// <param name="Why">What becomes of the others, in a few words.</param>
public sealed record BinToGo(Bin Bin, int Free, Money Worth, string Why);

/// <summary>What can go to another build, all of it together, with no stage of this one any worse off in what is filled and what is spent.</summary>
/// <param name="Pieces">Every piece on hand: what may go first, of the highest value first, then the others in the yard's order.</param>
/// <param name="Bins">Every bin in the yard's order.</param>
/// <param name="Unfilled">What of all that is lacking stays unfilled, without what may go.</param>
/// <param name="Spend">What is spent, without what may go.</param>
/// <param name="Doubts">Why it is not proven, in sentences; empty where it is.</param>
/// <param name="Notes">What else there is to know, in sentences.</param>
public sealed record WhatIsFree(IReadOnlyList<PieceToGo> Pieces, IReadOnlyList<BinToGo> Bins, long Unfilled, Money Spend, IReadOnlyList<string> Doubts, IReadOnlyList<string> Notes)
{
    /// <summary>The number of the yard's last change when it was asked.</summary>
    public long Seen { get; init; }

    /// <summary>The pieces that may go, of the highest value first.</summary>
    public IEnumerable<PieceToGo> Free => Pieces.Where(piece => piece.IsFree);

    /// <summary>False where time ended before each piece that is needed was tried without: with more, more may be free.</summary>
    public bool AllTried { get; init; } = true;

    /// <summary>True where no plan of all that is lacking is better in fill or spend, with all that may go or without.</summary>
    public bool Proven => Doubts.Count == 0;
}
