using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;

namespace Offcuts.Print;

/// <summary>A part of a cut that is brought to a height of its own under or over an opening.</summary>
internal sealed record PartRow(string Number, string Code, string Cut, string Part, string Stays, string Out);

/// <summary>What a sheet says of pieces that are cut to the height of their course.</summary>
internal static class HeightRows
{
    /// <summary>What stands above the list of pieces of a course that is lower than a panel.</summary>
    public const string Lead =
        "Each is sawn lengthwise to the height of its course, out of its stretch above. Cut that off first, so that the panel keeps its full height elsewhere.";

    /// <summary>What stands above the list of pieces that run on under or over an opening.</summary>
    public const string PartLead =
        "These run on under or over an opening: only so much of their height stays there. Parts are measured from that end of the cut that was nearer to the marked end. What is sawn out is kept, as foam of its own height, where it is long and high enough to be worth a label.";

    /// <summary>The parts of the pieces that wait.</summary>
    /// <param name="parts">All parts.</param>
    /// <param name="waits">True for a piece that waits, by its index.</param>
    /// <param name="codeOf">The code of a piece, by its index.</param>
    /// <param name="unit">Unit of lengths.</param>
    public static IReadOnlyList<PartRow> Of(IReadOnlyList<NotchedPart> parts, Func<int, bool> waits, Func<int, string> codeOf, LengthUnit unit) =>
    [
        .. from part in parts
           where waits(part.Piece)
           let stays = ((string[])[part.Notch.Below.IsZero ? "" : $"{part.Notch.Below.ToText(unit)} under it", part.Notch.Above.IsZero ? "" : $"{part.Notch.Above.ToText(unit)} over it"]).Where(side => side.Length > 0)
           select new PartRow(
               (part.Piece + 1).ToString(CultureInfo.InvariantCulture),
               codeOf(part.Piece),
               PieceBar.Letter(part.Cut).ToString(),
               $"{part.From.ToText(unit)} to {part.To.ToText(unit)}",
               $"{string.Join(" and ", stays)} ({TextRules.Harmless(part.Notch.Opening)})",
               part.KeptAs is { } kept ? $"keep {part.OutLength.ToText(unit)} as {TextRules.Harmless(kept.Name)}, new label" : part.OutLength.IsZero || part.OutHeight.IsZero ? "" : "scrap"),
    ];

    /// <summary>True where a cut is brought to the height of its course, and does not become another material.</summary>
    public static bool IsToHeight(PlannedPiece piece, PlannedCut cut) => cut.Rip is { } rip && rip.Into.Equals(piece.Material);
}
