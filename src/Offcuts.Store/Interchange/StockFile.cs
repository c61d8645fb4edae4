using System.Text;
using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Interchange;

/// <summary>
/// The stock file: one row a piece, or a bin of hardware. A row without a length is hardware. All or nothing: with any fault,
/// nothing is handed back but every fault.
/// </summary>
public static class StockFile
{
    internal static TableShape Shape { get; } = new(
        new("code", Required: true),
        new("material", Required: true),
        new("length", Required: true, Measured: true),
        new("qty"),
        new("condition"),
        new("treated"),
        new("stamped"),
        new("bad", Measured: true),
        new("trim", Measured: true),
        new("place"),
        new("note"),
        new("width", Measured: true),
        new("unit"),
        new("treated_with"),
        new("nails"),
        new("concrete"),
        new("oiled"),
        new("from_stage"),
        new("cut_from"),
        new("first_line", Measured: true),
        new("state"),
        new("reserved_for"));

    /// <summary>Reads a stock file, or every fault in it.</summary>
    /// <param name="file">UTF-8, with or without its mark; read to its end, left open.</param>
    /// <param name="fileName">How faults call it.</param>
    /// <param name="codes">What may stand for a code.</param>
    /// <param name="limits">How much is taken in; <see cref="FileLimits.Usual"/> where none is given.</param>
    /// <param name="known">Names that are known: any other name of the user's own is refused. Null where any will do.</param>
    public static Result<Stock> Read(Stream file, string fileName, CodePolicy codes, FileLimits? limits = null, KnownNames? known = null)
    {
        limits ??= FileLimits.Usual;
        var faults = new FaultList(fileName, limits.MostFaults);
        var reader = new StockReader(codes, new NameCheck(known));
        CsvTable.Read(file, Shape, limits, faults, reader.Take);
        return faults.Or(reader.ToStock);
    }

    /// <summary>The same from a text already in memory.</summary>
    public static Result<Stock> ReadText(string text, string fileName, CodePolicy codes) =>
        Read(new MemoryStream(Encoding.UTF8.GetBytes(text)), fileName, codes);

    /// <summary>Writes everything there is to know of these pieces and bins; reading it back gives the same.</summary>
    public static void Write(IEnumerable<Piece> pieces, IEnumerable<Bin> bins, TextWriter to)
    {
        using var sheet = new CsvSheet(to, Shape);
        foreach (var piece in pieces) sheet.Row(Cells(piece));
        foreach (var bin in bins) sheet.Row(Cells(bin));
    }

    private static string[] Cells(Piece piece) =>
    [
        piece.Code.ToString(),
        piece.Material.Name,
        piece.Length.ToString(),
        "",
        CellWords.Condition.Of(piece.Condition),
        CellWords.YesNo.Of(piece.Treated),
        CellWords.YesNo.Of(piece.Stamped),
        string.Join("; ", piece.BadSpots),
        piece.TrimLeft.IsZero && piece.TrimRight.IsZero ? "" : $"{piece.TrimLeft}; {piece.TrimRight}",
        piece.Place,
        piece.Note,
        CsvSheet.Measure(piece.Width),
        "",
        piece.TreatedWith,
        CellWords.YesNo.Of(piece.Nails),
        CellWords.YesNo.Of(piece.Concrete),
        CellWords.YesNo.Of(piece.Oiled),
        piece.FromStage,
        piece.CutFrom.ToString(),
        piece.FirstLine?.ToString() ?? "",
        CellWords.State.Of(piece.State),
        piece.ReservedFor,
    ];

    private static string[] Cells(Bin bin)
    {
        var cells = Enumerable.Repeat("", Shape.Columns.Count).ToArray();
        Put("code", bin.Code.ToString());
        Put("material", bin.Hardware.Name);
        Put("qty", bin.Quantity.ToString(System.Globalization.CultureInfo.InvariantCulture));
        Put("place", bin.Place);
        Put("note", bin.Note);
        Put("unit", bin.Hardware.Unit);
        return cells;

        void Put(string column, string cell) =>
            cells[Shape.Columns.ToList().FindIndex(known => known.Name == column)] = cell;
    }
}
