using System.Globalization;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Yard;

/// <summary>What one catalogue line makes: either 1 to 1000 pieces alike but for their sides, or one heap of hardware.</summary>
/// <param name="Pieces">The pieces in the order typed; empty where it is hardware.</param>
/// <param name="Bin">The hardware; none where it is pieces.</param>
public sealed record CatalogueBatch(IReadOnlyList<PieceDraft> Pieces, BinDraft? Bin)
{
    /// <summary>True where somebody said that the first pattern line is not known, though a piece be as long as a whole panel.</summary>
    public bool NoFirstLine { get; init; }

    /// <summary>Lengths that were typed as bare whole numbers, without a unit; of sheets none are told.</summary>
    public IReadOnlyList<Length> BareWhole { get; init; } = [];

    /// <summary>
    /// The reading in plain words, for a person to agree to before it is saved: how many of what, each length, each mark, and how
    /// much it is. Three or more equal lengths in a row are counted. Every text in it is shown without harm.
    /// </summary>
    /// <param name="unit">The unit lengths are shown in.</param>
    public string ReadBack(LengthUnit unit) => Bin is null ? OfPieces(unit) : OfBin(Bin);

    private static string OfBin(BinDraft bin) =>
        ReadBackText.Join([$"hardware: {bin.Quantity} of {bin.Hardware.Name}", ReadBackText.Place(bin.Place), ReadBackText.Note(bin.Note)]);

    private string OfPieces(LengthUnit unit)
    {
        var first = Pieces[0];
        return ReadBackText.Join(
        [
            $"{ReadBackText.Counted(Pieces.Count, first.Material)}: {Sizes(unit)}",
            MarkWords.Of(first.Condition),
            .. MarkWords.OnIt(first.Nails, first.Concrete, first.Oiled, first.Stamped),
            !first.Treated ? "" : first.TreatedWith.Length == 0 ? "treated" : $"treated with {first.TreatedWith}",
            BadSpots(unit),
            Trims(first, unit),
            PatternLine(unit),
            ReadBackText.Place(first.Place),
            first.FromStage.Length == 0 ? "" : $"from stage {first.FromStage}",
            ReadBackText.Note(first.Note),
            Amount(unit),
        ]);
    }

    // Whole panels have it at their end; of an offcut nobody knows it who does not look.
    private string PatternLine(LengthUnit unit)
    {
        if (Pieces[0].Material is not FoamPanel) return "";
        var unknown = Pieces.Count(piece => piece.FirstLine is null);
        var known = Pieces.FirstOrDefault(piece => piece.FirstLine is not null)?.FirstLine is { } line ? $"first pattern line at {line.ToText(unit)}" : "";
        return unknown == 0 ? known : unknown == Pieces.Count ? "first pattern line not known" : $"{known} of {Pieces.Count - unknown}, not known of {unknown}";
    }

    private string Sizes(LengthUnit unit)
    {
        var shown = new List<string>();
        for (var i = 0; i < Pieces.Count;)
        {
            var run = 1;
            while (i + run < Pieces.Count && Pieces[i + run].Length == Pieces[i].Length && Pieces[i + run].Width == Pieces[i].Width) run++;
            var size = Pieces[i].Width.IsZero
                ? Pieces[i].Length.ToText(unit)
                : $"{Pieces[i].Length.ToText(unit)} x {Pieces[i].Width.ToText(unit)}";
            shown.AddRange(run > 2 ? [$"{size} x{run}"] : Enumerable.Repeat(size, run));
            i += run;
        }

        return string.Join(", ", shown);
    }

    // A bad spot may run to the end of each piece, so pieces of different lengths can differ in it.
    private string BadSpots(LengthUnit unit)
    {
        var each = Pieces
            .Select(piece => string.Join(", ", piece.BadSpots.Select(spot => $"{spot.Start.ToText(unit)}..{spot.End.ToText(unit)}")))
            .Distinct()
            .ToArray();
        return each is [""] ? "" : "bad " + string.Join(" or ", each);
    }

    private static string Trims(PieceDraft piece, LengthUnit unit) => (piece.TrimLeft.IsZero, piece.TrimRight.IsZero) switch
    {
        (true, true) => "",
        (false, true) => $"trim {piece.TrimLeft.ToText(unit)} off the marked end",
        (true, false) => $"trim {piece.TrimRight.ToText(unit)} off the far end",
        _ => $"trim {piece.TrimLeft.ToText(unit)} off the marked end and {piece.TrimRight.ToText(unit)} off the far end",
    };

    private string Amount(LengthUnit unit)
    {
        var material = Pieces[0].Material;
        switch (material)
        {
            case Lumber:
                var feet = Pieces.Aggregate(default(BoardFeet), (sum, piece) => sum + Quantities.BoardFeetOf(material, piece.Length)!.Value);
                return feet.ToString();
            case FoamPanel or Sheet:
                var face = Pieces.Aggregate(default(Area), (sum, piece) => sum + Quantities.FaceAreaOf(material, piece.Length, piece.Width)!.Value);
                var volume = Pieces.Aggregate(default(Volume), (sum, piece) => sum + Quantities.VolumeOf(material, piece.Length, piece.Width)!.Value);
                return material is FoamPanel ? $"{face.ToText(unit)}, {volume.ToText(unit)}" : face.ToText(unit);
            default:
                var (total, name) = unit == LengthUnit.Millimetre ? (Pieces.Sum(piece => piece.Length.InMillimetres) / 1000, "m") : (Pieces.Sum(piece => piece.Length.InFeet), "ft");
                return $"{total.ToString("0.0", CultureInfo.InvariantCulture)} {name} in all";
        }
    }
}
