using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>Which pieces can come back into the yard: those that are away, and of which nothing was cut.</summary>
public sealed class ComingHome(YardFile yard)
{
    /// <summary>Why a piece that is not on hand can't come back whole; none where it can: it was handed over, or is missing.</summary>
    public Fault? Refusal(Piece piece) =>
        HasChildren(piece) ? YardFaults.CutUp() with { Sentence = $"{piece.Code}: {YardFaults.CutUp().Sentence}" }
        : piece.State is PieceState.HandedOver or PieceState.Missing ? null
        : HandFaults.NotAway(piece.Code.ToString(), Words.Of(piece.State));

    /// <summary>True where something that was cut from it is catalogued: a piece that came back beside it would be counted twice.</summary>
    public bool HasChildren(Piece piece) =>
        yard.Family(piece.Code)!.InOrder().Any(member => member.Piece.CutFrom == piece.Code && member.Piece.State != PieceState.Scrapped);
}
