using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Yard;

/// <summary>
/// A size that is more likely a slip than a board: feet typed for inches, millimetres in a yard of inches, a section that no store
/// keeps. It may be meant, so it is asked about and never refused for good.
/// </summary>
/// <param name="What">What it is, with its size.</param>
/// <param name="Why">Why it is doubted.</param>
public sealed record OddSize(string What, string Why)
{
    /// <summary>4 in: what is shorter is hardly worth a label. Our own choice.</summary>
    private static readonly Length Shortest = Length.Inches(4);

    /// <summary>20: the longest that lumber is commonly sold in feet, by common practice; a longer bare number is hardly meant in feet.</summary>
    private const int MostFeet = 20;

    private const string InInches = "larger than any that is usually sold; a name without units is in inches, millimetres are written behind each number, like 63mm";

    // As commonly stocked: common practice, no published list.
    private static readonly decimal[] Thicknesses = [1, 1.25m, 2, 4, 6, 8];

    private static readonly decimal[] Widths = [2, 3, 4, 6, 8, 10, 12, 14];

    /// <summary>12 in: foam is hardly sold thicker. Common practice; what is thicker is mostly millimetres typed without their unit.</summary>
    private static readonly Length ThickestFoam = Length.Inches(12);

    /// <summary>2 in: boards of wood are hardly sold thicker. Common practice, as above.</summary>
    private static readonly Length ThickestSheet = Length.Inches(2);

    /// <summary>What to say of it, loudly, before it is saved.</summary>
    public string Told => $"UNUSUAL: {What}: {Why}";

    /// <summary>The doubts about these pieces, each once, in their order.</summary>
    /// <param name="pieces">As understood.</param>
    /// <param name="unit">How lengths are written.</param>
    public static IReadOnlyList<OddSize> Among(IEnumerable<PieceDraft> pieces, LengthUnit unit) =>
        [.. pieces.SelectMany(piece => Of(piece.Material, piece.Length, piece.Width, unit)).Distinct()];

    /// <summary>The same of pieces whose size was put right.</summary>
    public static IReadOnlyList<OddSize> Among(IEnumerable<Piece> pieces, LengthUnit unit) =>
        [.. pieces.SelectMany(piece => Of(piece.Material, piece.Length, piece.Width, unit)).Distinct()];

    /// <summary>The doubts about a typed line, each once; a bare 8 that reads as inches and was more likely meant in feet is one.</summary>
    /// <param name="batch">As understood.</param>
    /// <param name="settings">The unit of bare numbers, and the keep lengths.</param>
    public static IReadOnlyList<OddSize> Among(CatalogueBatch batch, YardSettings settings) =>
    [
        .. Among(batch.Pieces, settings.Unit),
        .. batch.BareWhole.Where(length => length >= Shortest).Distinct().Select(length => LikeFeet(batch.Pieces[0].Material, length, settings)).OfType<OddSize>(),
    ];

    /// <summary>The doubt about a need, where it has one: foam or a board thicker than any, or that its bare number was meant in feet.</summary>
    /// <param name="draft">As understood.</param>
    /// <param name="settings">The unit of bare numbers, and the keep lengths.</param>
    public static OddSize? Of(CutDraft draft, YardSettings settings) =>
        TooThick(draft.Material) ?? (draft is { BareWhole: true, Cut: { } cut } ? LikeFeet(cut.Material, cut.Shortest, settings) ?? LikeInches(cut, settings) : null);

    /// <summary>
    /// The doubt about a length typed as a bare whole number: read as inches it is under the keep length, and as feet it would be a length that is
    /// sold. None where it is no such length. Who means inches writes them, or says so once.
    /// </summary>
    /// <param name="of">What it is of.</param>
    /// <param name="length">As it was read.</param>
    /// <param name="settings">The unit of bare numbers, and the keep lengths.</param>
    public static OddSize? LikeFeet(Material of, Length length, YardSettings settings)
    {
        var keep = settings.Keep(of);
        if (settings.Unit != LengthUnit.Inch || length >= keep || length > Length.Inches(MostFeet)) return null;
        return new OddSize(
            $"{TextRules.Harmless(of.Name)} {length.ToText(LengthUnit.Inch)}",
            $"under the keep length of {keep.ToText(LengthUnit.Inch)}; feet are written {(length.Units / Length.PerInch).ToString(CultureInfo.InvariantCulture)}'");
    }

    // In a yard of millimetres: a cut that is shorter than what is worth a label, which as inches would be a length like any.
    private static OddSize? LikeInches(RequiredCut cut, YardSettings settings) =>
        settings.Unit == LengthUnit.Millimetre && cut.Shortest < Shortest
            ? new OddSize(
                $"{TextRules.Harmless(cut.Material.Name)} {cut.Shortest.ToText(LengthUnit.Millimetre)}",
                $"under {Shortest.ToText(LengthUnit.Millimetre)}; inches are written {(cut.Shortest.Units / Length.PerMillimetre).ToString(CultureInfo.InvariantCulture)}\"")
            : null;

    /// <summary>3 ft: nothing is commonly sold shorter by length, so that a shorter one is mostly feet typed without their mark. Common practice.</summary>
    private static readonly Length ShortestSold = Length.Feet(3);

    /// <summary>The doubt about a store length, where it has one: too short or too long to be sold, mostly feet written without their mark; and about a panel or a sheet that is thicker than any. None for what has no length.</summary>
    /// <param name="price">As understood.</param>
    /// <param name="unit">How lengths are written.</param>
    public static OddSize? Of(StorePrice price, LengthUnit unit)
    {
        if (TooThick(price.Material) is { } thick) return thick;
        if (price.Length.IsZero || price.Material.Family is not (MaterialFamily.Lumber or MaterialFamily.Stick or MaterialFamily.Rebar)) return null;
        if (price.Length >= ShortestSold) return Of(price.Material, price.Length, Length.Zero, unit).FirstOrDefault();
        var whole = price.Length.Units % Length.PerInch == 0 && price.Length <= Length.Inches(24);
        return new OddSize(
            $"{TextRules.Harmless(price.Material.Name)} {price.Length.ToText(unit)}",
            $"shorter than anything sold by length{(unit == LengthUnit.Inch && whole ? $"; feet are written {(price.Length.Units / Length.PerInch).ToString(CultureInfo.InvariantCulture)}'" : "")}");
    }

    private static IEnumerable<OddSize> Of(Material of, Length length, Length width, LengthUnit unit)
    {
        var material = TextRules.Harmless(of.Name);
        if (of is Lumber { Thickness.Nominal: var thick, Width.Nominal: var wide } && !(Thicknesses.Contains(thick) && Widths.Contains(wide)))
            yield return new OddSize(material, "no usual size of lumber");
        if (TooThick(of) is { } size) yield return size;
        var longest = Longest(of);
        var sized = $"{material} {length.ToText(unit)}{(width.IsZero ? "" : $" x {width.ToText(unit)}")}";
        if (length > longest || width > longest) yield return new OddSize(sized, $"over {longest.ToText(unit)}, the longest that is usually sold");
        else if (length < Shortest) yield return new OddSize(sized, $"under {Shortest.ToText(unit)}, hardly worth a label");
    }

    private static OddSize? TooThick(Material of) =>
        of is FoamPanel foam && (foam.Thickness > ThickestFoam || foam.Height > Longest(of)) || of is Sheet sheet && sheet.Thickness > ThickestSheet
            ? new OddSize(TextRules.Harmless(of.Name), InInches)
            : null;

    // Common practice: lumber to 24 ft, bars as they come from the mill to 60 ft, panels and sheets to 16 and 12 ft; of sticks nobody
    // knows, so they are taken like bars.
    private static Length Longest(Material material) => Length.Feet(material.Family switch
    {
        MaterialFamily.Lumber => 24,
        MaterialFamily.Foam => 16,
        MaterialFamily.Sheet => 12,
        _ => 60,
    });
}
