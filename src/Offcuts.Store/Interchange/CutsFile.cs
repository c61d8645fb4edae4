using System.Globalization;
using System.Text;
using Offcuts.Core.Faults;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Interchange;

/// <summary>
/// The cuts file: one row a need of a stage. A row without a length is a need for hardware. All or nothing: with any fault,
/// nothing is handed back but every fault.
/// </summary>
public static class CutsFile
{
    internal static TableShape Shape { get; } = new(
        new("stage", Required: true),
        new("cut", Required: true),
        new("material", Required: true),
        new("length", Required: true, Measured: true),
        new("qty", Required: true),
        new("longest", Measured: true),
        new("use"),
        new("treated"),
        new("rip"),
        new("date"));

    /// <summary>Reads a cuts file: the stages in the order of their first rows, each with its needs in the order of theirs.</summary>
    /// <param name="file">UTF-8, with or without its mark; read to its end, left open.</param>
    /// <param name="fileName">How faults call it.</param>
    /// <param name="limits">How much is taken in; <see cref="FileLimits.Usual"/> where none is given.</param>
    /// <param name="known">Names that are known: any other name of the user's own is refused. Null where any will do.</param>
    public static Result<IReadOnlyList<Stage>> Read(Stream file, string fileName, FileLimits? limits = null, KnownNames? known = null)
    {
        limits ??= FileLimits.Usual;
        var faults = new FaultList(fileName, limits.MostFaults);
        var reader = new CutsReader(new NameCheck(known));
        CsvTable.Read(file, Shape, limits, faults, reader.Take);
        return faults.Or(reader.ToStages);
    }

    /// <summary>The same from a text already in memory: pasted, or typed.</summary>
    public static Result<IReadOnlyList<Stage>> ReadText(string text, string fileName) =>
        Read(new MemoryStream(Encoding.UTF8.GetBytes(text)), fileName);

    /// <summary>
    /// Writes the needs of these stages, lengths before hardware. Reading it back gives the same stages, but for those without
    /// any need: a row is a need, so they have none.
    /// </summary>
    public static void Write(IEnumerable<Stage> stages, TextWriter to)
    {
        using var sheet = new CsvSheet(to, Shape);
        foreach (var stage in stages)
        {
            var date = stage.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "";
            foreach (var cut in stage.Cuts)
            {
                sheet.Row(
                    stage.Name,
                    cut.Name,
                    cut.Material.Name,
                    cut.Shortest.ToString(),
                    cut.Count.ToString(CultureInfo.InvariantCulture),
                    cut.Longest == cut.Shortest ? "" : cut.Longest.ToString(),
                    CellWords.Use.Of(cut.Use),
                    CellWords.Treated.Of(cut.Treated),
                    CellWords.YesNo.Of(cut.Rip),
                    date);
            }

            foreach (var need in stage.Hardware)
                sheet.Row(stage.Name, need.Name, need.Hardware.Name, "", need.Count.ToString(CultureInfo.InvariantCulture), "", "", "", "", date);
        }
    }
}
