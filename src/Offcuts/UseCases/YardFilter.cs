using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>What to show of the yard. Everything given must hold; words are looked for in all that a line shows.</summary>
/// <param name="Words">Words or parts of words, in either case.</param>
/// <param name="Material">A material by name, or null for all.</param>
/// <param name="Place">A part of a place, or null for all.</param>
/// <param name="AtLeast">Shortest length shown.</param>
public sealed record YardFilter(IReadOnlyList<string> Words, string? Material, string? Place, Length AtLeast)
{
    /// <summary>How sound a piece is, or null for all; a condition leaves bins out.</summary>
    public Condition? Condition { get; init; }

    /// <summary>Only these, like what is in a bundle; null for all.</summary>
    public IReadOnlySet<Code>? Only { get; init; }

    /// <summary>True where the piece is to be shown.</summary>
    public bool Admits(Piece piece, LengthUnit unit) => Admits(piece, Words.Count == 0 ? "" : Line(piece, unit));

    /// <summary>The same with the line at hand, made once by <see cref="Line(Piece, LengthUnit)"/>: for looking through many, again and again.</summary>
    public bool Admits(Piece piece, string line) =>
        piece.Length >= AtLeast
        && (Only is null || Only.Contains(piece.Code))
        && (Condition is null || piece.Condition == Condition)
        && (Material is null || string.Equals(piece.Material.Name, Material, StringComparison.OrdinalIgnoreCase))
        && (Place is null || Has(piece.Place, Place))
        && HasAll(line);

    /// <summary>True where the bin is to be shown; a length or a condition leaves bins out.</summary>
    public bool Admits(Bin bin) => Admits(bin, Words.Count == 0 ? "" : Line(bin));

    /// <summary>The same with the line at hand, made once by <see cref="Line(Bin)"/>.</summary>
    public bool Admits(Bin bin, string line) =>
        AtLeast.IsZero && Condition is null && Only is null
        && (Material is null || string.Equals(bin.Hardware.Name, Material, StringComparison.OrdinalIgnoreCase))
        && (Place is null || Has(bin.Place, Place))
        && HasAll(line);

    /// <summary>What the words are looked for in.</summary>
    public static string Line(Bin bin) => $"{bin.Code} {bin.Code.Text} {bin.Hardware.Name} {bin.Place} {bin.Note}";

    /// <inheritdoc cref="Line(Bin)"/>
    public static string Line(Piece piece, LengthUnit unit) =>
        $"{piece.Code} {piece.Code.Text} {piece.Material.Name} {UseCases.Words.Size(piece, unit)} {UseCases.Words.Marks(piece, unit)} {piece.Place} {piece.FromStage} {UseCases.Words.State(piece)} {piece.Note}";

    private bool HasAll(string line)
    {
        for (var i = 0; i < Words.Count; i++)
            if (!Has(line, Words[i])) return false;
        return true;
    }

    private static bool Has(string text, string part) => text.Contains(part, StringComparison.OrdinalIgnoreCase);
}
