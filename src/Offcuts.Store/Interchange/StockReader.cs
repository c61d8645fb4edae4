using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Interchange;

/// <summary>Makes pieces and bins of the rows of a stock file.</summary>
internal sealed class StockReader(CodePolicy policy, NameCheck names)
{
    private readonly StockCodes _codes = new(policy);
    private readonly List<StockRow<Piece>> _pieces = [];
    private readonly List<StockRow<Bin>> _bins = [];

    /// <summary>Everything taken so far.</summary>
    public Stock ToStock() => new(_pieces, _bins, _codes.Written);

    /// <summary>Takes one row: hardware where it has no length, else a piece.</summary>
    public void Take(CsvRow row)
    {
        var counted = row.Empty("length");
        var material = row.Material("material", counted, counted ? Unit(row) : "", names);
        if (counted && (material is Hardware || (material is null && !row.Empty("qty")))) TakeBin(row, material as Hardware);
        else TakePiece(row, material);
    }

    private static string Unit(CsvRow row) => row.Name("unit") is { Length: > 0 } unit ? unit : "each";

    private void TakeBin(CsvRow row, Hardware? hardware)
    {
        var code = _codes.Read(row, ofBin: true);
        if (row.Empty("qty")) row.Refuse("qty", FileFaults.QuantityMissing());
        var quantity = row.Whole("qty", 0, PieceRules.MostInABin) ?? 0;
        RefuseWhatOnlyPiecesHave(row);
        var (place, note) = (row.Text("place", PieceRules.LongestName), row.Text("note", PieceRules.LongestNote));
        if (!row.Good) return;

        var checkedBin = PieceRules.Check(new Bin(code, hardware!, quantity, place, note));
        if (checkedBin.TryGet(out var bin)) _bins.Add(new StockRow<Bin>(bin, row.Line));
        foreach (var fault in checkedBin.Faults) row.Refuse(FaultList.WholeRow, fault);
    }

    // A word that says what every bin is anyway does no harm: scripts fill whole columns with it.
    private static void RefuseWhatOnlyPiecesHave(CsvRow row)
    {
        if (row.OneOf("condition", CellWords.Condition, YardFaults.ConditionUnknown) != Condition.Sound) row.Refuse("condition", FileFaults.OnlyForPieces());
        if (row.OneOf("state", CellWords.State, FileFaults.StateUnknown) != PieceState.InYard) row.Refuse("state", FileFaults.OnlyForPieces());
        foreach (var column in (string[])["treated", "stamped", "nails", "concrete", "oiled"])
            if (row.YesNo(column)) row.Refuse(column, FileFaults.OnlyForPieces());
        foreach (var column in (string[])["bad", "trim", "width", "treated_with", "from_stage", "cut_from", "first_line", "reserved_for"])
            if (!row.Empty(column)) row.Refuse(column, FileFaults.OnlyForPieces());
    }

    private void TakePiece(CsvRow row, Material? material)
    {
        var code = _codes.Read(row, ofBin: false);
        if (row.Empty("length") && !row.Empty("qty") && material is not null) row.Refuse("qty", FileFaults.CutNotCounted(material.Name));
        else if (row.Whole("qty", 0, PieceRules.MostInABin) is not (null or 1)) row.Refuse("qty", FileFaults.CountedAndMeasured());
        if (!row.Empty("unit")) row.Refuse("unit", FileFaults.OnlyForHardware());

        var length = row.NeededLength("length");
        var (left, right) = Trims(row);
        var (state, reservedFor) = State(row);
        var condition = row.OneOf("condition", CellWords.Condition, YardFaults.ConditionUnknown);
        var (treated, stamped) = (row.YesNo("treated"), row.YesNo("stamped"));
        var (nails, concrete, oiled) = (row.YesNo("nails"), row.YesNo("concrete"), row.YesNo("oiled"));
        var (bad, width) = (BadSpots(row), row.Length("width"));
        var (place, note) = (row.Text("place", PieceRules.LongestName), row.Text("note", PieceRules.LongestNote));
        var (treatedWith, fromStage) = (row.Text("treated_with", PieceRules.LongestName), row.Name("from_stage"));
        var cutFrom = _codes.ReadParent(row);
        Length? firstLine = row.Empty("first_line") ? null : row.Length("first_line");
        if (!row.Good) return;

        var checkedPiece = PieceRules.Check(new Piece
        {
            Code = code,
            Material = material!,
            Length = length,
            Width = width,
            Condition = condition,
            BadSpots = bad,
            TrimLeft = left,
            TrimRight = right,
            Treated = treated,
            TreatedWith = treatedWith,
            Stamped = stamped,
            Nails = nails,
            Concrete = concrete,
            Oiled = oiled,
            Place = place,
            FromStage = fromStage,
            CutFrom = cutFrom,
            FirstLine = firstLine,
            Note = note,
            State = state,
            ReservedFor = reservedFor,
        });
        if (checkedPiece.TryGet(out var piece)) _pieces.Add(new StockRow<Piece>(piece, row.Line));
        foreach (var fault in checkedPiece.Faults)
            row.Refuse(ColumnOf(fault, bad, length), fault == YardFaults.SheetWithoutWidth() ? FileFaults.OtherSideMissing() : fault);
    }

    private static List<Span> BadSpots(CsvRow row)
    {
        var spots = new List<Span>();
        foreach (var part in row.Text("bad", int.MaxValue).Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (row.Lengths("bad", part, "..", 2, FileFaults.BadSpotUnreadable()) is not [var start, var end]) continue;
            if (end > start) spots.Add(new Span(start, end));
            else row.Refuse("bad", YardFaults.BadSpotBackwards());
        }

        return spots;
    }

    private static (Length Left, Length Right) Trims(CsvRow row) =>
        !row.Empty("trim") && row.Lengths("trim", row.Text("trim", int.MaxValue), ";", 2, YardFaults.TrimUnreadable()) is [var left, var right]
            ? (left, right)
            : default;

    private static (PieceState State, string ReservedFor) State(CsvRow row)
    {
        var stage = row.Name("reserved_for");
        var state = row.OneOf("state", CellWords.State, FileFaults.StateUnknown, stage.Length > 0 ? PieceState.Reserved : PieceState.InYard);
        if (state != PieceState.Reserved && stage.Length > 0) row.Refuse("reserved_for", FileFaults.ReservedButNot());
        return (state, stage);
    }

    // The rules speak of a piece, not of a file; this finds the column each of their sentences is about.
    private static string ColumnOf(Fault fault, List<Span> bad, Length length) =>
        fault == YardFaults.SheetWithoutWidth() || fault == YardFaults.WidthOnlyForSheets() ? "width"
        : fault == YardFaults.TrimsEatAll() ? "trim"
        : fault == YardFaults.FirstLineOutside() || fault == YardFaults.FirstLineOnlyForFoam() ? "first_line"
        : fault == YardFaults.ReservedWithoutStage() ? "reserved_for"
        : bad.Any(spot => fault == YardFaults.BadSpotOutside(spot.End, length)) ? "bad"
        : FaultList.WholeRow;
}
