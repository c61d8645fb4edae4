using System.Globalization;
using System.Text.RegularExpressions;
using Offcuts.Core.Faults;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Print;

/// <summary>Pieces alike that no saw touches, told together.</summary>
/// <param name="Indexes">Their indexes in the plan, from 0.</param>
/// <param name="Head">How many of what they are, and their numbers.</param>
/// <param name="Goes">Where they go, a line each.</param>
internal sealed record AsTheyAre(IReadOnlyList<int> Indexes, string Head, IReadOnlyList<string> Goes);

/// <summary>
/// Finds pieces that are alike and used as they are. Drawn one by one they would fill pages with bars of which each says the same: a wall is
/// mostly whole panels. Only one of its kind is drawn as all others are.
/// </summary>
internal static partial class UsedAsTheyAre
{
    private const string Piece = "piece";

    /// <summary>The groups, each of two pieces or more, by the number of its first.</summary>
    /// <param name="pieces">Pieces that wait, with their indexes.</param>
    /// <param name="words">How material, length and code of a piece are written.</param>
    /// <param name="parts">Pieces with a part cut to height are sawn, so that they stand in none.</param>
    /// <param name="settings">Tells which cuts free a piece of what is bad.</param>
    public static IReadOnlyList<AsTheyAre> Of(
        IEnumerable<(PlannedPiece Piece, int Index)> pieces, (Func<PlannedPiece, string> Named, Func<PlannedPiece, string> Code) words, IReadOnlyList<NotchedPart> parts, YardSettings settings) =>
    [
        .. from one in pieces
           where IsUntouched(one.Piece, settings) && parts.All(part => part.Piece != one.Index)
           group one by (What: words.Named(one.Piece), one.Piece.Length, New: one.Piece.Source is null) into alike
           where alike.Count() > 1
           let all = alike.ToArray()
           select new AsTheyAre(
               [.. all.Select(one => one.Index)],
               $"{Numbers(all.Select(one => one.Index + 1))}: {all.Length} of {alike.Key.What}, {alike.Key.Length.ToText(settings.Unit)}{(alike.Key.New ? ", new" : "")}",
               alike.Key.New ? Places(all.Select(one => one.Piece.Cuts[0])) : [.. all.Select(one => $"{one.Index + 1}: {words.Code(one.Piece)}{At(one.Piece)}: {TextRules.Harmless(one.Piece.Cuts[0].Cut)} ({TextRules.Harmless(one.Piece.Cuts[0].Stage)})")]),
    ];

    /// <summary>Numbers in short: 1 to 3, 5.</summary>
    public static string Numbers(IEnumerable<int> numbers)
    {
        var told = new List<string>();
        foreach (var stretch in numbers.Order().Select((number, i) => (number, Of: number - i)).GroupBy(one => one.Of, one => one.number))
        {
            var (first, last) = (stretch.First(), stretch.Last());
            if (last - first > 1) told.Add($"{Text(first)} to {Text(last)}");
            else told.AddRange(stretch.Select(Text));
        }

        return string.Join(", ", told);
    }

    // What has to be done to it, or stands noted of it, is told at a drawing of its own.
    private static bool IsUntouched(PlannedPiece piece, YardSettings settings) =>
        piece is { SawCuts: 0, Cuts: [{ Rip: null }], Remainders.Count: 0, Untouched.Count: 0, HasUnusable: false }
        && FreeingCuts.Of(piece, settings).Count == 0
        && piece.Source is not { Nails: true } and not { Concrete: true } and not { Treated: true } and not { Note.Length: > 0 } and not { FirstLine.IsZero: false };

    // A cut of a wall is named after its run, course and place there: places of one course stand together.
    private static IReadOnlyList<string> Places(IEnumerable<PlannedCut> cuts) =>
    [
        .. from cut in cuts
           let name = PlaceForm().Match(cut.Cut)
           group (Number: name.Success ? int.Parse(name.Groups["n"].Value, CultureInfo.InvariantCulture) : 0, cut) by (cut.Stage, Row: name.Success ? name.Groups["row"].Value : cut.Cut, Wall: name.Success) into row
           select $"{TextRules.Harmless(row.Key.Row)}{(row.Key.Wall ? $", {Piece}{(row.Count() == 1 ? "" : "s")} {Numbers(row.Select(one => one.Number))}" : row.Count() == 1 ? "" : $": {Text(row.Count())} of them")} ({TextRules.Harmless(row.Key.Stage)})",
    ];

    private static string At(PlannedPiece piece) => piece.Source is { Place.Length: > 0 } source ? $", at {TextRules.Harmless(source.Place)}" : "";

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^(?<row>.+), " + Piece + @" (?<n>[0-9]{1,8})$")]
    private static partial Regex PlaceForm();
}
