using System.Text.RegularExpressions;
using Offcuts.Print;

namespace Offcuts;

/// <summary>
/// A line as somebody reads it on a terminal: where it is longer than the window it is broken between words, and what goes on stands
/// set in below its text. What goes into a file or another program stays one line.
/// </summary>
internal static partial class TerminalLines
{
    // A first column that reaches further leaves too little for what stands behind it.
    private const int WidestColumn = 30;

    private const int SetIn = 2;

    /// <summary>The lines; the line itself where it fits.</summary>
    /// <param name="line">One line.</param>
    /// <param name="width">Columns of the window.</param>
    public static IReadOnlyList<string> Of(string line, int width)
    {
        if (TextColumns.Width(line) <= width) return [line];
        var blanks = line.Length - line.TrimStart(' ').Length;
        var text = FirstColumn().Match(line) is { Success: true, Length: <= WidestColumn } column ? column.Length : blanks;
        if (text > width / 2) text = blanks = 0;
        var indent = new string(' ', text > blanks ? text : text + SetIn);
        return [.. TextColumns.Wrap(line[text..], Math.Max(2, width - indent.Length)).Select((part, i) => (i == 0 ? line[..text] : indent) + part)];
    }

    // "in 21 days     shed roof: .." or "  2026-11-29 19:52  catalogued ..": up to three words, then a gap.
    [GeneratedRegex("^ *[^ ]+( [^ ]+){0,2} {2,}")]
    private static partial Regex FirstColumn();
}
