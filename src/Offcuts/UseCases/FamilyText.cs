using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>A family of pieces as an indented tree, the first piece on top.</summary>
public static class FamilyText
{
    /// <summary>A line a piece: its code, its length and where it is in its life.</summary>
    public static IEnumerable<string> Of(FamilyTree family, LengthUnit unit) =>
        family.InOrder().Select(member =>
            $"{new string(' ', 2 * member.Depth)}{member.Piece.Code}  {Words.Size(member.Piece, unit)}  {Words.State(member.Piece)}");
}
