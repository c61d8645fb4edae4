using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Print;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>
/// Writes labels as a PDF file and then takes them off the queue, in that order: a file that could not be written loses no
/// label.
/// </summary>
public sealed class PrintLabels(YardFile yard, DateOnly today)
{
    /// <summary>The layout taken where none is named.</summary>
    public const string UsualLayout = "letter-10";

    /// <summary>The most blank labels made at once.</summary>
    public const int MostBlanks = 1000;

    /// <summary>The layouts that come with the program: name, what it is, labels a page.</summary>
    public static IEnumerable<IReadOnlyList<string>> Layouts() =>
        LabelLayout.Shipped.Select(layout => (IReadOnlyList<string>)[layout.Name, layout.About, $"{layout.PerPage}"]);

    /// <summary>A label of the queue in a line: what it will say.</summary>
    public static string Line(YardFile yard, Code code, LengthUnit unit) =>
        yard.Piece(code) is { } piece ? $"{code}  {piece.Material}  {Words.Size(piece, unit)}  {piece.Place}"
        : yard.Bin(code) is { } bin ? $"{code}  {bin.Hardware.Name}  {bin.Place}"
        : yard.Bundles().FirstOrDefault(bundle => bundle.Code == code) is { } bundle ? $"{BundleWords.Line(bundle, yard)}  (bundle)"
        : yard.Places().FirstOrDefault(place => place.Code == code) is { } place ? $"{code}  {place.Name}  (place)"
        : $"{code}  blank";

    /// <summary>The labels of these codes, or of all that wait.</summary>
    /// <param name="codes">What to print; null for the queue.</param>
    /// <param name="layout">Name of a layout that ships, or path of a layout file.</param>
    /// <param name="start">First free label of the first sheet, from 1.</param>
    /// <param name="path">Where the PDF is written.</param>
    /// <param name="printer">Name of the printer whose correction is applied; null for none.</param>
    public Result<string> Print(IReadOnlyList<Code>? codes, string layout, int start, string path, string? printer = null)
    {
        var wanted = codes ?? yard.LabelQueue();
        if (wanted.Count == 0) return PrintFaults.NothingWaits();
        var unit = yard.Settings().Unit;
        var faults = new List<Fault>();
        var labels = new List<LabelContent>();
        foreach (var code in wanted)
        {
            if (Content(code, unit) is { } label) labels.Add(label);
            else faults.Add(yard.VoidCodes().Contains(code) ? LabelFaults.IsVoid(code.ToString()) : YardFaults.NoSuchCode(code.ToString()));
        }

        if (faults.Count > 0) return Result<string>.Fail(faults);
        return Write(labels, layout, start, path, printer)
            .Then(_ => yard.Change($"printed {Words.Count(labels.Count, "label")}", work => work.LabelsPrinted(wanted)))
            .Then<string>(entry => $"{entry.What}: wrote {path}; print it at 100 %");
    }

    /// <summary>Labels with new codes whose pieces come later.</summary>
    /// <param name="count">How many.</param>
    /// <param name="layout">As for <see cref="Print"/>.</param>
    /// <param name="start">As for <see cref="Print"/>.</param>
    /// <param name="path">As for <see cref="Print"/>.</param>
    /// <param name="printer">As for <see cref="Print"/>.</param>
    public Result<string> PrintBlanks(int count, string layout, int start, string path, string? printer = null)
    {
        if (count is < 1 or > MostBlanks) return PrintFaults.BlanksOutside(MostBlanks);
        var found = FindLayout(layout);
        if (!found.Ok) return Result<string>.Fail(found.Faults);
        if (start < 1 || start > found.Value.PerPage) return PrintFaults.StartOutsideSheet(start, found.Value.PerPage);
        if (Offset(printer) is { Ok: false } unknown) return Result<string>.Fail(unknown.Faults);
        // Written while the change is still open: a file that can't be written issues no code, and no code is on paper that the
        // yard does not know.
        return yard.Change($"printed {Words.Count(count, "blank label")}", work =>
        {
            var written = Write([.. work.IssueBlanks(count).Select(LabelContent.Blank)], layout, start, path, printer);
            if (!written.Ok) work.Refuse(written.Fault);
        }).Then<string>(entry => $"{entry.What}: wrote {path}; print it at 100 %");
    }

    /// <summary>Writes a page that proves a printer's scale and shows what it is off by.</summary>
    public Result<string> Ruler(string layout, string path, string? printer = null) =>
        FindLayout(layout).Then(found => Offset(printer).Then<string>(offset =>
        {
            WholeFile.Write(path, stream => stream.Write(RulerPage.Pdf(found, today, offset)));
            return $"wrote {path}; print it at 100 % and lay a rule on it: {RulerPage.AcrossMillimetres(found)} mm across, {RulerPage.DownMillimetres(found)} mm down";
        }));

    /// <summary>What a label will look like, as lines of text to scale.</summary>
    public Result<IReadOnlyList<string>> Preview(Code code, string layout, bool ascii) =>
        FindLayout(layout).Then<IReadOnlyList<string>>(found => Content(code, yard.Settings().Unit) is { } label
            ? Result<IReadOnlyList<string>>.Of(LabelPreview.Lines(found, label, ascii))
            : yard.VoidCodes().Contains(code) ? LabelFaults.IsVoid(code.ToString()) : YardFaults.NoSuchCode(code.ToString()));

    /// <summary>What a layout file makes, or everything that is wrong with it.</summary>
    public static Result<IReadOnlyList<string>> Check(string layout) => FindLayout(layout).Then<IReadOnlyList<string>>(found => (string[])
    [
        $"{found.Name}: {found.About}",
        $"{Words.Count(found.PerPage, "label")} a page, each {found.LabelWidth} x {found.LabelHeight}",
        $"a QR module is {found.Module.InMillimetres:0.##} mm wide{(found.Module < LabelLayout.GoodModule ? "; 0.75 mm or more reads well off rough wood" : "")}, the symbol with its quiet zone {found.QrSide.InMillimetres:0.#} mm",
    ]);

    /// <summary>Keeps what a printer must be corrected by: each a distance with its unit, below 0 to the left or up; what is not said stays as it was.</summary>
    public Result<string> SetPrinter(string name, string? right, string? down)
    {
        var before = yard.Printers().FirstOrDefault(known => string.Equals(known.Name, name, StringComparison.OrdinalIgnoreCase)) ?? PrinterOffset.None;
        if (right is null && down is null) return LabelFaults.OffsetMissing();
        var (x, y) = (Distance(right, before.RightUnits), Distance(down, before.DownUnits));
        Fault[] faults = [.. x.Ok ? [] : x.Faults, .. y.Ok ? [] : y.Faults];
        if (faults.Length > 0) return Result<string>.Fail(faults);
        var offset = new PrinterOffset(name.Trim(), x.Value, y.Value);
        return yard.Change($"printer {offset.Name} moves by {Told(offset)}", work => work.SetPrinter(offset)).Then<string>(entry => entry.What);
    }

    /// <summary>Forgets a printer.</summary>
    public Result<string> DropPrinter(string name) => yard.Change($"forgot the printer {name}", work => work.RemovePrinter(name)).Then<string>(entry => entry.What);

    /// <summary>What a printer is moved by, in words.</summary>
    public static string Told(PrinterOffset offset) => $"{Side(offset.RightUnits, "right", "left")} and {Side(offset.DownUnits, "down", "up")}";

    private static string Side(long units, string above, string below) => $"{Length.FromUnits(Math.Abs(units)).InMillimetres:0.##} mm {(units < 0 ? below : above)}";

    private static Result<long> Distance(string? text, long otherwise)
    {
        if (text is null) return otherwise;
        var typed = text.Trim();
        var read = Length.Parse(typed.TrimStart('-', '+').Trim());
        if (!read.Ok) return LabelFaults.OffsetUnreadable(text);
        return typed.StartsWith('-') ? -read.Value.Units : read.Value.Units;
    }

    private Result<PrinterOffset> Offset(string? printer)
    {
        if (printer is null) return PrinterOffset.None;
        var known = yard.Printers();
        return known.FirstOrDefault(one => string.Equals(one.Name, printer.Trim(), StringComparison.OrdinalIgnoreCase)) is { } found
            ? found
            : LabelFaults.NoSuchPrinter(printer, string.Join(", ", known.Select(one => one.Name)));
    }

    private Result<bool> Write(IReadOnlyList<LabelContent> labels, string layout, int start, string path, string? printer) =>
        FindLayout(layout)
            .Then(found => Offset(printer).Then(offset => LabelSheet.Pdf(found, labels, today, start, offset)))
            .Then<bool>(pdf =>
            {
                WholeFile.Write(path, stream => stream.Write(pdf));
                return true;
            });

    private static Result<LabelLayout> FindLayout(string layout) =>
        File.Exists(layout) ? LabelLayout.Read(File.ReadAllText(layout)) : LabelLayout.Find(layout);

    private LabelContent? Content(Code code, LengthUnit unit) =>
        yard.Piece(code) is { } piece ? LabelContent.Of(piece, today, unit)
        : yard.Bin(code) is { } bin ? LabelContent.Of(bin, today, unit)
        : yard.Bundles().FirstOrDefault(bundle => bundle.Code == code) is { } bundle ? LabelContent.Of(bundle, BundleWords.Holds(bundle, yard), today)
        : yard.Places().FirstOrDefault(place => place.Code == code) is { } place ? LabelContent.OfPlace(code, place.Name, today)
        : yard.BlankCodes().Contains(code) ? LabelContent.Blank(code)
        : null;
}
