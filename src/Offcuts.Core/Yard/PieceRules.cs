using Offcuts.Core.Faults;
using Offcuts.Core.Materials;

namespace Offcuts.Core.Yard;

/// <summary>What no piece and no bin can be, asked by every way into the yard.</summary>
public static class PieceRules
{
    /// <summary>Most that a bin is said to hold, by hand or in a file.</summary>
    public const int MostInABin = 100_000;

    /// <summary>Longest place, stage, treatment and hardware name.</summary>
    public const int LongestName = 60;

    /// <summary>Longest note.</summary>
    public const int LongestNote = 500;

    /// <summary>The piece itself with its bad spots in order and joined where they touch, or every fault in it.</summary>
    public static Result<Piece> Check(Piece piece)
    {
        var faults = new List<Fault>();
        if (piece.Length.IsZero) faults.Add(YardFaults.PieceWithoutLength());
        if (piece.Material is Hardware hardware) faults.Add(YardFaults.PieceOfHardware(hardware.Name));
        if (piece.Material is Sheet && piece.Width.IsZero) faults.Add(YardFaults.SheetWithoutWidth());
        if (piece.Material is not Sheet && !piece.Width.IsZero) faults.Add(YardFaults.WidthOnlyForSheets());
        foreach (var spot in piece.BadSpots.Where(spot => spot.End > piece.Length))
            faults.Add(YardFaults.BadSpotOutside(spot.End, piece.Length));
        if (piece.TrimLeft.Units + piece.TrimRight.Units >= piece.Length.Units && !piece.Length.IsZero) faults.Add(YardFaults.TrimsEatAll());
        if (piece.FirstLine is { } line)
        {
            if (piece.Material is not FoamPanel) faults.Add(YardFaults.FirstLineOnlyForFoam());
            else if (line > piece.Length) faults.Add(YardFaults.FirstLineOutside());
        }

        if (piece.State == PieceState.Reserved && piece.ReservedFor.Length == 0) faults.Add(YardFaults.ReservedWithoutStage());
        CheckText(faults, "place", piece.Place, LongestName);
        CheckText(faults, "stage", piece.FromStage, LongestName);
        CheckText(faults, "treatment", piece.TreatedWith, LongestName);
        CheckText(faults, "note", piece.Note, LongestNote);
        return faults.Count > 0 ? Result<Piece>.Fail(faults) : piece with { BadSpots = Joined(piece.BadSpots) };
    }

    /// <summary>The bin itself, or every fault in it.</summary>
    public static Result<Bin> Check(Bin bin)
    {
        var faults = new List<Fault>();
        if (bin.Quantity < 0) faults.Add(YardFaults.QuantityNegative());
        CheckText(faults, "place", bin.Place, LongestName);
        CheckText(faults, "note", bin.Note, LongestNote);
        return faults.Count > 0 ? Result<Bin>.Fail(faults) : bin;
    }

    /// <summary>A place as the yard keeps it: it may be written as in a catalogue line, @the barn, and spaces count once.</summary>
    public static string PlaceIn(string text) => string.Join(' ', text.Trim().TrimStart('@').Split(' ', StringSplitOptions.RemoveEmptyEntries));

    /// <summary>Adds a fault where a text is too long or holds a control character or half of a broken pair.</summary>
    public static void CheckText(List<Fault> faults, string what, string text, int longest)
    {
        if (text.Length > longest) faults.Add(YardFaults.TextTooLong(what, longest));
        if (TextRules.FirstRefused(text) >= 0) faults.Add(YardFaults.TextHasControl(what));
    }

    private static List<Span> Joined(IReadOnlyList<Span> spots)
    {
        var joined = new List<Span>();
        foreach (var spot in spots.OrderBy(spot => spot.Start).ThenBy(spot => spot.End))
        {
            if (joined.Count > 0 && spot.Start <= joined[^1].End)
                joined[^1] = new Span(joined[^1].Start, Measures.Length.Max(joined[^1].End, spot.End));
            else joined.Add(spot);
        }

        return joined;
    }
}
