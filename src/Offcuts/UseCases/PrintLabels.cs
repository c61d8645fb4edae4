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
    public Result<string> Print(IReadOnlyList<Code>? codes, string layout, int start, string path)
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
        return Write(labels, layout, start, path)
            .Then(_ => yard.Change($"printed {Words.Count(labels.Count, "label")}", work => work.LabelsPrinted(wanted)))
            .Then<string>(entry => $"{entry.What}: wrote {path}; print it at 100 %");
    }

    /// <summary>Labels with new codes whose pieces come later.</summary>
    public Result<string> PrintBlanks(int count, string layout, int start, string path)
    {
        if (count is < 1 or > MostBlanks) return PrintFaults.BlanksOutside(MostBlanks);
        var found = FindLayout(layout);
        if (!found.Ok) return Result<string>.Fail(found.Faults);
        if (start < 1 || start > found.Value.PerPage) return PrintFaults.StartOutsideSheet(start, found.Value.PerPage);
        // Written while the change is still open: a file that can't be written issues no code, and no code is on paper that the
        // yard does not know.
        return yard.Change($"printed {Words.Count(count, "blank label")}", work =>
        {
            var written = Write([.. work.IssueBlanks(count).Select(LabelContent.Blank)], layout, start, path);
            if (!written.Ok) work.Refuse(written.Fault);
        }).Then<string>(entry => $"{entry.What}: wrote {path}; print it at 100 %");
    }

    private Result<bool> Write(IReadOnlyList<LabelContent> labels, string layout, int start, string path) =>
        FindLayout(layout)
            .Then(found => LabelSheet.Pdf(found, labels, today, start))
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
