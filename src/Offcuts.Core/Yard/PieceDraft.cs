using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Yard;

/// <summary>A piece that has no label yet: everything a <see cref="Piece"/> has but its code.</summary>
public sealed record PieceDraft
{
    /// <inheritdoc cref="Piece.Material"/>
    public required Material Material { get; init; }

    /// <inheritdoc cref="Piece.Length"/>
    public required Length Length { get; init; }

    /// <inheritdoc cref="Piece.Width"/>
    public Length Width { get; init; }

    /// <inheritdoc cref="Piece.Condition"/>
    public Condition Condition { get; init; }

    /// <inheritdoc cref="Piece.BadSpots"/>
    public IReadOnlyList<Span> BadSpots { get; init; } = [];

    /// <inheritdoc cref="Piece.TrimLeft"/>
    public Length TrimLeft { get; init; }

    /// <inheritdoc cref="Piece.TrimRight"/>
    public Length TrimRight { get; init; }

    /// <inheritdoc cref="Piece.Treated"/>
    public bool Treated { get; init; }

    /// <inheritdoc cref="Piece.TreatedWith"/>
    public string TreatedWith { get; init; } = "";

    /// <inheritdoc cref="Piece.Stamped"/>
    public bool Stamped { get; init; }

    /// <inheritdoc cref="Piece.Nails"/>
    public bool Nails { get; init; }

    /// <inheritdoc cref="Piece.Concrete"/>
    public bool Concrete { get; init; }

    /// <inheritdoc cref="Piece.Oiled"/>
    public bool Oiled { get; init; }

    /// <inheritdoc cref="Piece.Place"/>
    public string Place { get; init; } = "";

    /// <inheritdoc cref="Piece.FromStage"/>
    public string FromStage { get; init; } = "";

    /// <inheritdoc cref="Piece.CutFrom"/>
    public Code CutFrom { get; init; }

    /// <inheritdoc cref="Piece.FirstLine"/>
    public Length? FirstLine { get; init; }

    /// <inheritdoc cref="Piece.Note"/>
    public string Note { get; init; } = "";

    /// <inheritdoc cref="Piece.State"/>
    public PieceState State { get; init; }

    /// <inheritdoc cref="Piece.ReservedFor"/>
    public string ReservedFor { get; init; } = "";

    /// <summary>The piece, under a label.</summary>
    public Piece ToPiece(Code code) => new()
    {
        Code = code,
        Material = Material,
        Length = Length,
        Width = Width,
        Condition = Condition,
        BadSpots = BadSpots,
        TrimLeft = TrimLeft,
        TrimRight = TrimRight,
        Treated = Treated,
        TreatedWith = TreatedWith,
        Stamped = Stamped,
        Nails = Nails,
        Concrete = Concrete,
        Oiled = Oiled,
        Place = Place,
        FromStage = FromStage,
        CutFrom = CutFrom,
        FirstLine = FirstLine,
        Note = Note,
        State = State,
        ReservedFor = ReservedFor,
    };
}

/// <summary>A heap of hardware that has no label yet.</summary>
/// <param name="Hardware">What lies in it.</param>
/// <param name="Quantity">How many; 1 or more.</param>
/// <param name="Place">Where it stands.</param>
/// <param name="Note">Whatever else the user wrote.</param>
public sealed record BinDraft(Hardware Hardware, int Quantity, string Place = "", string Note = "")
{
    /// <summary>The bin, under a label.</summary>
    public Bin ToBin(Code code) => new(code, Hardware, Quantity, Place, Note);
}
