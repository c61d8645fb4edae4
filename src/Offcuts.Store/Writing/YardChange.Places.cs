using Offcuts.Core.Faults;
using Offcuts.Core.Yard;

namespace Offcuts.Store;

/// <content>Places with labels, bundles, labels that are void, and printers.</content>
public sealed partial class YardChange
{
    /// <summary>Gives a place a label, where it has none yet, and gives its code. Faults: no name, or one that is too long.</summary>
    public Code LabelPlace(string name)
    {
        if (PlaceRow(name) is not { } place) return default;
        if (place.Code is { } there) return Values.Code(there);
        var code = _yard.NewCode();
        SetPlace(place, place.Name, code.Text, place.CountedOn);
        return code;
    }

    /// <summary>Remembers that a place was counted on this day. Faults as for <see cref="LabelPlace"/>.</summary>
    public void PlaceCounted(string name, DateOnly day)
    {
        if (PlaceRow(name) is { } place) SetPlace(place, place.Name, place.Code, Values.Day(day));
    }

    /// <summary>
    /// Makes a label void, so that nothing ever takes its code: a blank one, or that of a place, which is without a label then. A fault
    /// for the code of a piece, a bin or a bundle, which stays with it.
    /// </summary>
    public void VoidLabel(Code code)
    {
        var owner = Owner(code);
        if (owner == "void") _faults.Add(LabelFaults.VoidAlready(code.ToString()));
        else if (owner is "piece" or "bin" or "bundle") _faults.Add(LabelFaults.StaysWithIts(code.ToString(), $"a {owner}"));
        else if (owner == "nothing") _faults.Add(LabelFaults.NoSuchLabel(code.ToString()));
        if (owner is not ("blank" or "place")) return;

        if (owner == "blank") Database.Run("blank_taken", ("code", code.Text));
        else if (Database.Rows<PlaceRow>("places").FirstOrDefault(row => row.Code == code.Text) is { } place) SetPlace(place, place.Name, null, place.CountedOn);
        LabelsPrinted([code]);
        Database.Run("void_add", ("code", code.Text), ("was", owner), ("day", Values.Day(_yard.Today)));
    }

    /// <summary>
    /// Straps pieces together under one new label and gives its code; they all lie at its place then. Faults: fewer than
    /// <see cref="Bundle.Fewest"/>, a piece that is not on hand or in a bundle already, a name or place that is too long.
    /// </summary>
    public Code AddBundle(string name, string place, IReadOnlyList<Code> pieces)
    {
        var faults = new List<Fault>();
        PieceRules.CheckText(faults, "name", name, PieceRules.LongestName);
        PieceRules.CheckText(faults, "place", place, PieceRules.LongestName);
        if (pieces.Distinct().Count() < Bundle.Fewest) faults.Add(LabelFaults.BundleTooSmall(Bundle.Fewest));
        foreach (var code in pieces.Distinct())
        {
            if (_reader.Piece(code) is not { } piece) faults.Add(YardFaults.NoSuchCode(code.ToString()));
            else if (!piece.OnHand) faults.Add(new Fault($"{code}: {YardFaults.NotOnHand().Sentence}"));
            else if (_reader.Bundles().Find(bundle => bundle.Pieces.Contains(code)) is { } other) faults.Add(LabelFaults.InABundle(code.ToString(), other.Code.ToString()));
        }

        if (Refused(faults)) return default;
        var label = _yard.NewCode();
        var id = Database.Number("bundle_add", ("code", label.Text), ("name", name), ("place", place));
        foreach (var code in pieces.Distinct()) Database.Run("bundle_piece_add", ("bundle", id), ("piece", code.Text));
        PutPieces(pieces, place);
        return label;
    }

    /// <summary>Puts a whole bundle, with everything in it, at another place.</summary>
    public void MoveBundle(Code code, string place)
    {
        if (WholeBundle(code) is not { } row) return;
        var faults = new List<Fault>();
        PieceRules.CheckText(faults, "place", place, PieceRules.LongestName);
        if (Refused(faults)) return;
        var pieces = _reader.Bundles().Single(bundle => bundle.Code == code).Pieces;
        Database.Run("bundle_place", ("place", place), ("id", row.Id));
        PutPieces(pieces, place);
    }

    /// <summary>Opens a bundle: its pieces lie by themselves from then on, where it lay.</summary>
    public void OpenBundle(Code code)
    {
        if (WholeBundle(code) is not { } row) return;
        Database.Run("bundle_pieces_remove", ("bundle", row.Id));
        Database.Run("bundle_open", ("day", Values.Day(_yard.Today)), ("id", row.Id));
        LabelsPrinted([code]);
    }

    /// <summary>Keeps what a printer must be corrected by, in the place of what was kept of it before.</summary>
    public void SetPrinter(PrinterOffset printer)
    {
        var faults = new List<Fault>();
        if (string.IsNullOrWhiteSpace(printer.Name)) faults.Add(LabelFaults.PrinterWithoutName());
        PieceRules.CheckText(faults, "name", printer.Name, PieceRules.LongestName);
        if (Math.Max(Math.Abs(printer.RightUnits), Math.Abs(printer.DownUnits)) > PrinterOffset.MostUnits) faults.Add(LabelFaults.OffsetTooFar());
        if (Refused(faults)) return;
        if (PrinterNamed(printer.Name) is not { } row) Database.Run("printer_add", ("name", printer.Name), ("right", printer.RightUnits), ("down", printer.DownUnits));
        else Database.Run("printer_set", ("name", printer.Name), ("right", printer.RightUnits), ("down", printer.DownUnits), ("id", row.Id));
    }

    /// <summary>Forgets what a printer must be corrected by.</summary>
    public void RemovePrinter(string name)
    {
        if (PrinterNamed(name) is { } row) Database.Run("printer_remove", ("id", row.Id));
        else _faults.Add(LabelFaults.NoSuchPrinter(name, string.Join(", ", _reader.Printers().Select(printer => printer.Name))));
    }

    private PrinterRow? PrinterNamed(string name) => Database.Rows<PrinterRow>("printers").FirstOrDefault(row => Same(row.Name, name));

    // The row of a place; made where there is none yet.
    private PlaceRow? PlaceRow(string name)
    {
        var faults = new List<Fault>();
        if (string.IsNullOrWhiteSpace(name)) faults.Add(LabelFaults.PlaceWithoutName());
        PieceRules.CheckText(faults, "place", name, PieceRules.LongestName);
        if (Refused(faults)) return null;
        if (Find() is { } there) return there;
        Database.Run("place_add", ("name", name), ("code", null), ("counted_on", null));
        return Find();
        PlaceRow? Find() => Database.Rows<PlaceRow>("places").FirstOrDefault(row => Same(row.Name, name));
    }

    private void SetPlace(PlaceRow place, string name, string? code, string? counted) =>
        Database.Run("place_set", ("name", name), ("code", code), ("counted_on", counted), ("id", place.Id));

    private BundleRow? WholeBundle(Code code)
    {
        var row = Database.Rows<BundleRow>("bundles").FirstOrDefault(row => row.Code == code.Text);
        if (row is null) _faults.Add(LabelFaults.NoSuchBundle(code.ToString()));
        else if (row.OpenedOn is not null) _faults.Add(LabelFaults.OpenedAlready(code.ToString()));
        return row is { OpenedOn: null } ? row : null;
    }

    private void PutPieces(IEnumerable<Code> pieces, string place)
    {
        foreach (var code in pieces.Distinct())
            if (_reader.Piece(code) is { } piece && piece.Place != place) Update(piece with { Place = place });
    }

    // A piece that is gone, or that lies elsewhere than its bundle, is in it no more; a bundle without pieces is open.
    private void LeaveBundle(Piece piece)
    {
        if (Database.Run("bundle_piece_leaves", ("code", piece.Code.Text), ("gone", piece.OnHand ? 0 : 1), ("place", piece.Place)) > 0)
            Database.Run("bundle_open_empty", ("day", Values.Day(_yard.Today)));
    }
}
