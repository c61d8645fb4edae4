using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Print;

/// <summary>What one label says, in the words that are printed. Where there is too little room, <see cref="Details"/> go first.</summary>
public sealed record LabelContent
{
    private LabelContent()
    {
    }

    /// <summary>The code: as a QR symbol and in two groups.</summary>
    public required Code Code { get; init; }

    /// <summary>What it is: <c>2x10</c>; empty on a blank label.</summary>
    public string Material { get; private init; } = "";

    /// <summary>How long it is, both sides of a sheet, the unit of a counted thing; empty on a blank label.</summary>
    public string Measure { get; private init; } = "";

    /// <summary>What matters for safety or use: <c>NAILS</c>, <c>TREATED ACQ</c>; see <see cref="MarksOf"/>. Never left out.</summary>
    public IReadOnlyList<string> Marks { get; private init; } = [];

    /// <summary>The preservative where its name is too long for a mark; else empty. Never left out, but may be cut.</summary>
    public string Treatment { get; private init; } = "";

    /// <summary>Bad spots, end trims and foam's first pattern line, where there are any.</summary>
    public IReadOnlyList<string> Details { get; private init; } = [];

    /// <summary>Where it lies.</summary>
    public string Place { get; private init; } = "";

    /// <summary>The day the label was made; empty on a blank label.</summary>
    public string Date { get; private init; } = "";

    /// <summary>True for a label that is printed before its piece exists: lines to write on instead of words.</summary>
    public bool IsBlank { get; private init; }

    /// <summary>True for a bin: on a layout for it, counts are written on by hand.</summary>
    public bool IsCounted { get; private init; }

    /// <summary>The label of a piece.</summary>
    public static LabelContent Of(Piece piece, DateOnly date, LengthUnit unit) => new()
    {
        Code = piece.Code,
        Material = piece.Material.Name,
        Measure = piece.Material is Sheet ? $"{piece.Length.ToText(unit)} x {piece.Width.ToText(unit)}" : piece.Length.ToText(unit),
        Marks = [.. MarksOf(piece)],
        Treatment = TreatmentOf(piece),
        Details = [.. DetailsOf(piece, unit)],
        Place = piece.Place,
        Date = Day(date),
    };

    /// <summary>The label of a bin. It bears no count: that changes, the label does not.</summary>
    public static LabelContent Of(Bin bin, DateOnly date, LengthUnit unit) => new()
    {
        Code = bin.Code,
        Material = bin.Hardware.Name,
        Measure = bin.Hardware.Unit == "each" ? "" : $"by the {bin.Hardware.Unit}",
        IsCounted = true,
        Place = bin.Place,
        Date = Day(date),
    };

    /// <summary>The label of a place: its name, large.</summary>
    public static LabelContent OfPlace(Code code, string name, DateOnly date) => new() { Code = code, Material = name, Measure = "place", Date = Day(date) };

    /// <summary>The label of a bundle: what it is called, what is in it, where it lies.</summary>
    /// <param name="bundle">The bundle.</param>
    /// <param name="holds">What is in it, in a few words: <c>12 x 2x4</c>.</param>
    /// <param name="date">The day.</param>
    public static LabelContent Of(Bundle bundle, string holds, DateOnly date) => new()
    {
        Code = bundle.Code,
        Material = bundle.Name.Length > 0 ? bundle.Name : "bundle",
        Measure = $"{bundle.Pieces.Count} pieces",
        Details = [holds],
        Place = bundle.Place,
        Date = Day(date),
    };

    /// <summary>A label whose piece does not exist yet: the code and lines to write on.</summary>
    public static LabelContent Blank(Code code) => new() { Code = code, IsBlank = true };

    /// <summary>Labels with every mark at once: a long preservative, and one as wide as a mark may be.</summary>
    internal static IReadOnlyList<LabelContent> Fullest { get; } =
    [
        new() { Code = default, Material = "2x10", Measure = LongMeasure, Marks = ["NAILS", "TREATED", "OILED", "CONCRETE", "STAMPED", "SOUND"], Treatment = "treated with" },
        new() { Code = default, Material = "2x10", Measure = LongMeasure, Marks = ["NAILS", "TREATED WWWWW", "OILED", "CONCRETE", "STAMPED", "SOUND"] },
    ];

    private const string LongMeasure = "~100' 11-15/16\"";

    /// <summary>
    /// What matters for safety or use, in capitals, the most dangerous first; the condition comes last and always. A
    /// preservative stands behind <c>TREATED</c> where it is short, like <c>ACQ</c>. Lists and screens show the same words as labels.
    /// </summary>
    public static IEnumerable<string> MarksOf(Piece piece)
    {
        if (piece.Nails) yield return "NAILS";
        if (piece.Treated) yield return FitsMark(piece.TreatedWith) ? $"TREATED {TextRules.Harmless(piece.TreatedWith)}".TrimEnd() : "TREATED";
        if (piece.Oiled) yield return "OILED";
        if (piece.Concrete) yield return "CONCRETE";
        if (piece.Stamped) yield return "STAMPED";
        yield return MarkWords.Of(piece.Condition).ToUpperInvariant();
    }

    /// <summary>The preservative in words where it is too long for a mark; else empty.</summary>
    internal static string TreatmentOf(Piece piece) =>
        piece.Treated && !FitsMark(piece.TreatedWith) ? $"treated with {TextRules.Harmless(piece.TreatedWith)}" : "";

    private static bool FitsMark(string treatment) => treatment.Length <= 5;

    private static IEnumerable<string> DetailsOf(Piece piece, LengthUnit unit)
    {
        if (piece.BadSpots.Count > 0)
            yield return "bad " + string.Join(", ", piece.BadSpots.Select(spot => $"{spot.Start.ToText(unit)} to {spot.End.ToText(unit)}"));
        if (!piece.TrimLeft.IsZero) yield return $"trim {piece.TrimLeft.ToText(unit)} here";
        if (!piece.TrimRight.IsZero) yield return $"trim {piece.TrimRight.ToText(unit)} at far end";
        if (piece.FirstLine is { } line) yield return $"first line {line.ToText(unit)}";
    }

    private static string Day(DateOnly date) => date.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
