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
    /// <summary>True where the piece is to be shown.</summary>
    public bool Admits(Piece piece, LengthUnit unit) =>
        piece.Length >= AtLeast
        && (Material is null || string.Equals(piece.Material.Name, Material, StringComparison.OrdinalIgnoreCase))
        && (Place is null || Has(piece.Place, Place))
        && (Words.Count == 0 || Words.All(word => Has(Line(piece, unit), word)));

    /// <summary>True where the bin is to be shown; a length leaves bins out.</summary>
    public bool Admits(Bin bin) =>
        AtLeast.IsZero
        && (Material is null || string.Equals(bin.Hardware.Name, Material, StringComparison.OrdinalIgnoreCase))
        && (Place is null || Has(bin.Place, Place))
        && Words.All(word => Has($"{bin.Code} {bin.Code.Text} {bin.Hardware.Name} {bin.Place} {bin.Note}", word));

    private static string Line(Piece piece, LengthUnit unit) =>
        $"{piece.Code} {piece.Code.Text} {piece.Material.Name} {UseCases.Words.Size(piece, unit)} {UseCases.Words.Marks(piece)} {piece.Place} {piece.FromStage} {UseCases.Words.State(piece)} {piece.Note}";

    private static bool Has(string text, string part) => text.Contains(part, StringComparison.OrdinalIgnoreCase);
}
