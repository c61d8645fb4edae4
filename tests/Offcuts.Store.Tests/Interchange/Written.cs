using CsCheck;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Tests.Interchange;

/// <summary>
/// Everything a file can hold, drawn by chance. Lengths fall on both of the grids a length may fall on; texts hold accents,
/// quotes, commas, letters beyond the first plane, and the beginnings that a spreadsheet would run.
/// </summary>
internal static class Written
{
    private static readonly string[] Starts = ["", "", "=", "+", "-", "@", "'", "'=", "''-", "' @", " =", "\"", "="];

    private static readonly Gen<string> Body = Gen.Char["abcxyzéèüñßø ,;\"'=+-@.0123456789#/½〆木"].Array[0, 20].Select(chars => new string(chars));

    /// <summary>Any text of one line, spaces at its ends included.</summary>
    public static Gen<string> Text { get; } = Gen.Select(Gen.OneOf(Starts), Body, Gen.OneOf("", "", "🪵", " ")).Select((start, body, end) => start + body + end);

    /// <summary>A text without spaces at its ends; may be empty.</summary>
    public static Gen<string> Trimmed { get; } = Text.Select(text => text.Trim());

    /// <summary>A text without spaces at its ends and never empty.</summary>
    public static Gen<string> Name { get; } = Trimmed.Select(text => text.Length == 0 ? "x" : text);

    public static Gen<Length> Length { get; } = Gen.OneOf(
        Gen.Int[1, 30_000].Select(sixtyFourths => Core.Measures.Length.FromUnits(sixtyFourths * 127L)),
        Gen.Int[1, 120_000].Select(tenths => Core.Measures.Length.FromUnits(tenths * 32L)),
        Gen.Int[1, 4_000_000].Select(units => Core.Measures.Length.FromUnits(units)));

    public static Gen<Code> Code { get; } = Gen.Int[0, int.MaxValue - 1].Select(seed => Core.Yard.Code.Draw(new Random(seed).Next));

    public static Gen<Material> Material { get; } = Gen.OneOf(
        Measured("2x4"), Measured("5/4x6"), Measured("#4"), Measured("foam 2-1/2x12 II"), Measured("foam 63.5 mm x 300 mm"),
        Measured("plywood 3/4"), Measured("crown moulding"), Measured("-edge, 1/4\""), Measured("@ftertreated"), Measured("'=x"));

    public static Gen<Hardware> Hardware { get; } = Gen.Select(Gen.OneOf("hex bolt 1/2", "joist hanger", "=tie", "+washer \"M8\"", "'-clip"), Name)
        .Select((name, unit) => (Hardware)MaterialReader.ReadCounted(name, unit).Value);

    public static Gen<DateOnly?> Day { get; } = Gen.Int[-200, 4000].Select(day => day < 0 ? (DateOnly?)null : new DateOnly(2020, 1, 1).AddDays(day));

    public static Gen<Piece> Piece { get; } =
        Gen.Select(Marks, Texts, Length, Material, Code, Gen.Select(Code, Gen.Bool)).Select((marks, texts, length, material, code, parent) =>
        {
            var state = texts.ReservedFor.Length > 0 && marks.State == PieceState.InYard ? PieceState.Reserved : marks.State;
            return PieceRules.Check(new Piece
            {
                Code = code,
                Material = material,
                Length = length,
                Width = material is Sheet ? Core.Measures.Length.Inches(48) : default,
                Condition = marks.Condition,
                BadSpots = [.. Spots(length, marks.Cuts)],
                TrimLeft = marks.Trimmed ? Core.Measures.Length.FromUnits(length.Units / 9) : default,
                TrimRight = marks.Trimmed ? Core.Measures.Length.FromUnits(length.Units / 7) : default,
                Treated = marks.Treated,
                TreatedWith = texts.TreatedWith,
                Stamped = marks.Stamped,
                Nails = marks.Nails,
                Concrete = !marks.Nails,
                Oiled = marks.Oiled,
                Place = texts.Place,
                FromStage = texts.FromStage,
                CutFrom = parent.Item2 ? parent.Item1 : default,
                FirstLine = material is FoamPanel ? Core.Measures.Length.FromUnits(length.Units * marks.Cuts[0] / 2000) : null,
                Note = texts.Note,
                State = state == PieceState.Reserved && texts.ReservedFor.Length == 0 ? PieceState.Missing : state,
                ReservedFor = state == PieceState.Reserved ? texts.ReservedFor : "",
            }).Value;
        });

    public static Gen<Bin> Bin { get; } = Gen.Select(Code, Hardware, Gen.Int[0, 100_000], Text, Text)
        .Select((code, hardware, quantity, place, note) => new Bin(code, hardware, quantity, place, note));

    private static Gen<(Condition Condition, PieceState State, bool Treated, bool Stamped, bool Nails, bool Oiled, bool Trimmed, int[] Cuts)> Marks =>
        Gen.Select(Gen.Enum<Condition>(), Gen.Enum<PieceState>(), Gen.Bool.Array[5], Gen.Int[0, 1000].Array[1, 7])
            .Select((condition, state, flags, cuts) => (condition, state, flags[0], flags[1], flags[2], flags[3], flags[4], cuts));

    private static Gen<(string Place, string Note, string TreatedWith, string FromStage, string ReservedFor)> Texts =>
        Gen.Select(Text, Text, Text, Trimmed, Trimmed);

    private static IEnumerable<Span> Spots(Length length, int[] thousandths)
    {
        var ends = thousandths.Select(part => length.Units * part / 1000).ToArray();
        for (var i = 0; i + 1 < ends.Length; i += 2)
            if (ends[i] != ends[i + 1])
                yield return new Span(Core.Measures.Length.FromUnits(Math.Min(ends[i], ends[i + 1])), Core.Measures.Length.FromUnits(Math.Max(ends[i], ends[i + 1])));
    }

    private static Material Measured(string text) => MaterialReader.Read(text).Value;
}
