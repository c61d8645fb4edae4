using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.HandOvers;

/// <summary>A piece on its way from one yard to another.</summary>
/// <param name="Piece">The piece as it was there, free, with no place; its note is empty unless it was asked for.</param>
/// <param name="LabelWaits">True where it has no label on it yet.</param>
/// <param name="History">What was done to it, oldest first.</param>
public sealed record TransferPiece(Piece Piece, bool LabelWaits, IReadOnlyList<PastEntry> History)
{
    /// <summary>The hand-over by which it had come to the yard that sends it; empty where it was catalogued there.</summary>
    public string CameBy { get; init; } = "";

    /// <summary>Its code in the yard it had come from then.</summary>
    public Code Was { get; init; }

    /// <summary>By what it had gone before that, oldest first, so that every yard it was in knows it again.</summary>
    public IReadOnlyList<Origin> Earlier { get; init; } = [];

    /// <summary>All of them, oldest first.</summary>
    public IEnumerable<Origin> Origins => CameBy.Length > 0 ? Earlier.Append(new Origin(CameBy, Was)) : Earlier;

    /// <summary>Its value in the yard that sends it, where prices were asked for.</summary>
    public Money? Worth { get; init; }
}

/// <summary>Counted things on their way from one yard to another.</summary>
/// <param name="Hardware">What.</param>
/// <param name="Count">How many; 1 or more.</param>
public sealed record TransferHardware(Hardware Hardware, int Count);

/// <summary>What a hand-over file tells.</summary>
public sealed record Transfer
{
    /// <summary>The name by which both yards know the hand-over.</summary>
    public required string Name { get; init; }

    /// <summary>Who hands over; may be empty.</summary>
    public string From { get; init; } = "";

    /// <summary>The day it was handed over.</summary>
    public required DateOnly Day { get; init; }

    /// <summary>On what terms, and to whom; a sale's price only where prices were asked for.</summary>
    public required Terms Terms { get; init; }

    /// <summary>The pieces, each after what it was cut from.</summary>
    public required IReadOnlyList<TransferPiece> Pieces { get; init; }

    /// <summary>The counted things.</summary>
    public required IReadOnlyList<TransferHardware> Hardware { get; init; }
}
