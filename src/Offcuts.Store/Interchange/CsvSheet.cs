using CsvHelper;
using Offcuts.Core.Faults;
using Offcuts.Core.Measures;

namespace Offcuts.Store.Interchange;

/// <summary>Writes rows under a header: RFC 4180, each line ended by CR LF, every cell but a plain number guarded against spreadsheets that would run it; a control character, which only a yard altered by hand can hold, is shown as <c>\u001b</c>.</summary>
internal sealed class CsvSheet : IDisposable
{
    private static readonly CsvWriterOptions Options = new() { NewLine = "\r\n", Quoting = CsvQuoting.WhenNeededOrWhitespace };

    private readonly TableShape _shape;
    private readonly CsvWriter _csv;

    public CsvSheet(TextWriter to, TableShape shape)
    {
        _shape = shape;
        _csv = CsvWriter.Create(to, Options, leaveOpen: true);
        Row([.. shape.Columns.Select(column => column.Name)]);
    }

    /// <summary>One row, a cell for each column.</summary>
    public void Row(params string[] cells)
    {
        foreach (var (cell, column) in cells.Zip(_shape.Columns)) _csv.WriteField(column.Number ? cell : SpreadsheetText.Guard(TextRules.Harmless(cell)));
        _csv.EndRecord();
    }

    /// <summary>A length that reads back the same; empty for zero.</summary>
    public static string Measure(Length length) => length.IsZero ? "" : length.ToString();

    /// <inheritdoc/>
    public void Dispose() => _csv.Dispose();
}
