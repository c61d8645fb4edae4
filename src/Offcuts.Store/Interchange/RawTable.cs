using System.Globalization;
using CsvHelper;
using Offcuts.Core.Faults;

namespace Offcuts.Store.Interchange;

/// <summary>Rows of a damaged yard as they stand, for a person and a spreadsheet: control characters are shown and formulas marked, as in every file.</summary>
internal static class RawTable
{
    /// <summary>Writes a heading and the rows; nothing is an empty cell, bytes are written as hexadecimal digits.</summary>
    public static void Write(TextWriter to, IReadOnlyList<string> columns, IEnumerable<IEnumerable<object?>> rows)
    {
        using var csv = CsvWriter.Create(to, new() { NewLine = "\r\n", Quoting = CsvQuoting.WhenNeededOrWhitespace }, leaveOpen: true);
        foreach (var column in columns) csv.WriteField(column);
        csv.EndRecord();
        foreach (var row in rows)
        {
            foreach (var cell in row) csv.WriteField(Cell(cell));
            csv.EndRecord();
        }
    }

    private static string Cell(object? value) => value switch
    {
        null => "",
        byte[] bytes => Convert.ToHexString(bytes),
        string text => SpreadsheetText.Guard(TextRules.Harmless(text)),
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        _ => value.ToString() ?? "",
    };
}
