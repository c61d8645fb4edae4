using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>A count in lines, the same on the command line and on the screen.</summary>
public static class CountText
{
    /// <summary>What it says, the places first, then what is otherwise than the yard says.</summary>
    public static IEnumerable<string> Lines(YardCount count, LengthUnit unit)
    {
        yield return Head(count);
        foreach (var place in count.Places) yield return $"  {place.Name}: {place.Seen} of {place.Expected} seen";
        foreach (var place in count.NewPlaces) yield return $"  ! {place.Told}";
        foreach (var line in Under("Elsewhere than the yard says", count.Moved.Select(moved => $"{Line(moved.Piece, unit)}  at {moved.Seen}, not {Where(moved.Piece.Place)}{Bundled(moved)}"))) yield return line;
        foreach (var line in Under("Bins elsewhere", count.BinsMoved.Select(bin => $"{Line(bin.Bin)}  at {bin.Seen}, not {Where(bin.Bin.Place)}"))) yield return line;
        foreach (var line in Under("Missing", count.Missing.Select(missing => $"{Line(missing.Piece, unit)}  {Where(missing.Piece.Place)}{(missing.Piece.State == PieceState.Reserved ? $", {Words.State(missing.Piece)}" : "")}{(missing.Unprinted ? ", its label waits to be printed" : "")}"))) yield return line;
        foreach (var line in Under("Was missing, and is there", count.Found.Select(found => $"{Line(found.Piece, unit)}  {(found.Seen.Length > 0 ? found.Seen : $"{Where(found.Piece.Place)}, as before")}{(found.CutUp ? ", but was cut up" : "")}"))) yield return line;
        foreach (var line in Under("Should be gone, but was seen", count.ShouldBeGone.Select(gone => $"{Line(gone.Piece, unit)}  {Words.Of(gone.Piece.State)}; in {gone.File}{(gone.CutUp ? "; cut up since" : "")}"))) yield return line;
        foreach (var line in Under("Seen at two places, so left as it is", count.Doubtful.Select(piece => $"{Line(piece.Piece, unit)}  {string.Join(" and ", piece.Places)}"))) yield return line;
        foreach (var line in Under("Bins that were not seen, and are left as they are", count.BinsNotSeen.Select(bin => $"{Line(bin.Bin)}  {Where(bin.Bin.Place)}"))) yield return line;
        foreach (var line in Under("Codes that this yard does not know", count.Unknown.Select(one => $"{one.Code}  in {one.File}"))) yield return line;
        foreach (var line in Under("Blank labels that nothing has taken yet", count.Blanks.Select(code => $"{code}"))) yield return line;
        foreach (var line in Under("Void labels: take them off", count.Voids.Select(code => $"{code}"))) yield return line;
        foreach (var line in Under("Could not be read", count.Troubled.Select(file => $"{file.Name} {file.Trouble!.Sentence}"))) yield return line;
        if (Unsure(count) is { Length: > 0 } unsure) yield return unsure;
        foreach (var line in Under("No label could be read in", count.WithoutLabel.Select(file => file.Name))) yield return line;
        foreach (var line in Under("Labels of two places in one picture, so no place was taken from it", count.TwoPlaces)) yield return line;
        if (count.Foreign > 0) yield return count.Foreign == 1 ? "1 QR code or line that is no label of Offcuts, passed over" : $"{count.Foreign} QR codes or lines that are no labels of Offcuts, passed over";
        if (count.SomeWithoutPlace) yield return "Some were seen without saying where: name the folder as the place, have the place's label in the picture, or use --at";
    }

    /// <summary>What accepting it would change, in a few words; empty where nothing.</summary>
    public static string Changes(YardCount count)
    {
        string[] parts =
        [
            Part(count.Moved.Count + count.BinsMoved.Count, "put where it was seen"),
            Part(count.Missing.Count, "marked as missing"),
            Part(count.ComeBack.Count(), "back in the yard"),
            Part(count.PlacesCounted.Count(), count.PlacesCounted.Count() == 1 ? "place counted today" : "places counted today"),
        ];
        return string.Join(", ", parts.Where(part => part.Length > 0));
        static string Part(int number, string what) => number == 0 ? "" : $"{number} {what}";
    }

    private static string Head(YardCount count)
    {
        var (pictures, lists) = (count.Files.Count(file => file is { Trouble: null, IsPicture: true }), count.Files.Count(file => file is { Trouble: null, IsPicture: false }));
        string[] from = [.. pictures > 0 ? [Words.Count(pictures, "picture")] : Array.Empty<string>(), .. lists > 0 ? [Words.Count(lists, "scanned list")] : Array.Empty<string>()];
        var what = count.BinsSeen > 0 ? $"{Words.Count(count.Seen, "piece")} and {Words.Count(count.BinsSeen, "bin")}" : Words.Count(count.Seen, "piece");
        return $"{what} seen in {(from.Length == 0 ? "nothing that could be read" : string.Join(" and ", from))}; {count.Right.Count} as the yard says";
    }

    private static IEnumerable<string> Under(string title, IEnumerable<string> lines)
    {
        var all = lines.ToArray();
        if (all.Length == 0) yield break;
        yield return $"{title}:";
        foreach (var line in all) yield return $"  {line}";
    }

    private static string Unsure(YardCount count)
    {
        if (count.Wish.Partly || !count.Troubled.Any()) return "";
        const string said = "What was not seen may be in what could not be read, so nothing is said to be missing";
        return count.Wish.Whole ? said : count.Unsure.Count == 0 ? "" : $"{said} at {string.Join(", ", count.Unsure)}";
    }

    private static string Line(Piece piece, LengthUnit unit) => $"{piece.Code}  {piece.Material}  {Words.Size(piece, unit)}";

    private static string Line(Bin bin) => $"{bin.Code}  {bin.Hardware.Name}";

    private static string Where(string place) => place.Length > 0 ? place : "no place";

    private static string Bundled(CountedPiece piece) => piece.ByBundle.IsNone ? "" : $", in the bundle {piece.ByBundle}";
}
