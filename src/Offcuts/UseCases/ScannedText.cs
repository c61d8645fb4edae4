using System.Text;
using Offcuts.Core.Faults;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>
/// What a hand scanner or a scanning program wrote down: a label a line, with whatever else stands in the line behind a comma, a
/// semicolon or a tab (the moment, say). A line <c>@north rack</c> says where the following ones were scanned.
/// </summary>
public static class ScannedText
{
    /// <summary>Most bytes, in millions: half a million labels.</summary>
    public const int MostMegabytes = 10;

    private static readonly char[] Between = [',', ';', '\t'];

    /// <summary>The labels in their order and how many other lines there are, or why this is no such file.</summary>
    /// <param name="begin">The bytes that were read of it already.</param>
    /// <param name="rest">The rest.</param>
    public static Result<(IReadOnlyList<ScannedLabel> Labels, int Foreign)> Read(ReadOnlySpan<byte> begin, Stream rest)
    {
        if (rest.Length > MostMegabytes * 1_000_000L) return CountFaults.ScannedTooLarge(MostMegabytes);
        // A device, and a file that is still being written, have more in them than they say.
        var bytes = new byte[Math.Max(rest.Length, begin.Length)];
        begin.CopyTo(bytes);
        rest.ReadExactly(bytes.AsSpan(begin.Length));
        if (bytes.AsSpan().Contains((byte)0)) return CountFaults.ScannedNotText();
        return Lines(Encoding.UTF8.GetString(bytes));
    }

    private static (IReadOnlyList<ScannedLabel> Labels, int Foreign) Lines(string text)
    {
        var labels = new List<ScannedLabel>();
        var (foreign, place, named) = (0, "", 0);
        foreach (var line in text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (line.StartsWith('@')) (place, named) = (PieceRules.PlaceIn(line), named + 1);
            else if (Found(line) is { } code) labels.Add(new ScannedLabel(code, place, named));
            else foreign++;
        }

        return (labels, foreign);
    }

    private static Code? Found(string line)
    {
        foreach (var cell in line.Split(Between, 20))
            if (Code.Parse(cell.Trim().Trim('"')).TryGet(out var code)) return code;
        return null;
    }
}
