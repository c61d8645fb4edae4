using System.Text;
using System.Text.Unicode;
using CsvHelper;
using Offcuts.Core.Faults;

namespace Offcuts.Store.Interchange;

/// <summary>
/// Reads a CSV file (RFC 4180, UTF-8) row by row. Spaces around a cell without quotes don't count, nor do empty rows; a quote
/// inside a cell without quotes is itself, so that <c>96"</c> may be typed as it is.
/// </summary>
internal static class CsvTable
{
    /// <summary>
    /// Hands each good row to <paramref name="take"/> and adds every fault to <paramref name="faults"/>. Stops where nothing
    /// sensible can follow: at a faulty header, at text that is not UTF-8, at a row without end, at the size limit.
    /// </summary>
    public static void Read(Stream file, TableShape shape, FileLimits limits, FaultList faults, Action<CsvRow> take)
    {
        var guarded = new GuardedStream(file, limits.MostBytes);
        using var csv = CsvReader.Create(guarded, Options(limits), leaveOpen: true);
        try
        {
            ReadAll(csv, shape, faults, take);
        }
        catch (CsvFormatException endless)
        {
            faults.Add((int)endless.LineNumber, FaultList.WholeRow, FileFaults.RowTooLong());
        }

        if (guarded.OtherEncoding) faults.Only(1, FaultList.WholeRow, FileFaults.NotUtf8());
        else if (guarded.TooLarge) faults.Only(0, "", FileFaults.FileTooLarge(limits.MostBytes));
    }

    private static CsvReaderOptions Options(FileLimits limits) => new()
    {
        Separator = ',',
        HasHeader = false,
        TrimWhitespace = true,
        TrackLineNumbers = true,
        MaxRecordSize = limits.MostRowBytes,
    };

    private static void ReadAll(CsvReader csv, TableShape shape, FaultList faults, Action<CsvRow> take)
    {
        Header? header = null;
        while (csv.Read())
        {
            var line = (int)csv.LineNumber;
            if (!Utf8.IsValid(csv.RawRecord))
            {
                faults.Only(line + LinesBeforeBreak(csv.RawRecord), FaultList.WholeRow, FileFaults.NotUtf8());
                return;
            }

            if (header is null)
            {
                if (BrokenQuote(csv) is { } broken) faults.Add(line, FaultList.WholeRow, broken.Fault);
                else header = shape.Find([.. Cells(csv).Select(cell => cell.Trim())], line, faults);
                if (header is null) return;
            }
            else if (Cells(csv) is var cells && cells.Any(cell => cell.Length > 0))
            {
                if (csv.FieldCount != header.Count) faults.Add(line, FaultList.WholeRow, BrokenQuote(csv)?.Fault ?? FileFaults.RowRagged(csv.FieldCount, header.Count));
                else if (BrokenQuote(csv) is { } broken) faults.Add(line, header.ShownAt(broken.Index), broken.Fault);
                else take(new CsvRow(header, cells, line, faults));
            }
        }

        if (header is null) faults.Add(1, FaultList.WholeRow, FileFaults.NoHeader());
    }

    private static string[] Cells(CsvReader csv)
    {
        var cells = new string[csv.FieldCount];
        for (var i = 0; i < cells.Length; i++) cells[i] = csv.GetString(i);
        return cells;
    }

    private static (int Index, Fault Fault)? BrokenQuote(CsvReader csv)
    {
        for (var i = 0; i < csv.FieldCount; i++)
            if (BrokenQuote(csv.GetRawSpan(i).Trim(" \t"u8)) is { } fault) return (i, fault);
        return null;
    }

    // A cell that opens with a quote must close with one, and every quote between must be doubled.
    private static Fault? BrokenQuote(ReadOnlySpan<byte> raw)
    {
        if (raw.IsEmpty || raw[0] != '"') return null;
        for (var i = 1; i < raw.Length; i++)
        {
            if (raw[i] != '"') continue;
            if (i + 1 == raw.Length) return null;
            if (raw[i + 1] != '"') return FileFaults.TextAfterQuote();
            i++;
        }

        return FileFaults.QuoteNotClosed();
    }

    private static int LinesBeforeBreak(ReadOnlySpan<byte> record)
    {
        var lines = 0;
        for (var at = 0; at < record.Length;)
        {
            if (Rune.DecodeFromUtf8(record[at..], out var rune, out var length) != System.Buffers.OperationStatus.Done) break;
            if (rune.Value == '\n' || (rune.Value == '\r' && (at + 1 >= record.Length || record[at + 1] != '\n'))) lines++;
            at += length;
        }

        return lines;
    }
}
