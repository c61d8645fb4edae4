using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>
/// Tells whether a typed line begins with the code of a label: <c>K7F 3MXX 2x10 ..</c>, <c>k7f3mxx: 2x10 ..</c>,
/// <c>OFFCUTS:K7F3MXX ..</c> as a scanner types it.
/// </summary>
/// <remarks>
/// A line that begins with a material is never taken for one (<c>2x4 2476</c>, <c>#4 20'</c>), unless that would be a section that
/// nobody saws and its seven characters are a code (<c>4444X45</c> is the label <c>444 4X45</c> typed without its gap). Else seven letters and digits at the
/// start are a code where the check character fits. Where it does not, they are a code with a slip in it, and are refused, when
/// a material follows them or they hold both a digit and a letter as codes do; six or eight before a material are one with a
/// character missing or doubled. So no mistyped code turns into the name of a thing.
/// </remarks>
internal static class LabelAtLineStart
{
    /// <summary>The code and the index after it; no code where the line does not begin with one.</summary>
    public static (Result<Code>? Code, int End) Find(string line)
    {
        var start = line.Length - line.TrimStart().Length;
        var scanned = line[start..].StartsWith(Code.QrPrefix, StringComparison.OrdinalIgnoreCase);
        var from = scanned ? start + Code.QrPrefix.Length : start;
        if (!scanned && MaterialReader.ReadStart(line[start..]) is { } begun)
        {
            if (begun.Material.Ok || Run(line, from, Code.BodyLength + 1) is not { } ends || !Code.Parse(line[start..ends]).TryGet(out var code)) return (null, 0);
            return (code, AfterGap(line, ends));
        }

        foreach (var length in (int[])[Code.BodyLength + 1, Code.BodyLength + 2, Code.BodyLength])
        {
            if (Run(line, from, length) is not { } end) continue;
            var read = Code.Parse(line[start..end]);
            if (read.Ok) return (read, AfterGap(line, end));
            if (scanned || (LooksDrawn(line[from..end]) && (length == Code.BodyLength + 1 || MaterialFollows(line, end)))) return (read, 0);
        }

        if (scanned) return (MeasureFaults.CodeLength(), 0);
        return (null, 0);
    }

    /// <summary>The line without the label before it.</summary>
    public static string Behind(string line) => Find(line) is ({ Ok: true }, var end) ? line[end..] : line;

    // So many letters and digits, in one run or in a group of three and a rest, with something else behind them.
    private static int? Run(string line, int start, int count)
    {
        var (at, seen) = (start, 0);
        while (at < line.Length && seen < count)
        {
            if (seen == 3 && line[at] is ' ' or '-' && char.IsAsciiLetterOrDigit(line[at - 1])) at++;
            else if (char.IsAsciiLetterOrDigit(line[at])) (at, seen) = (at + 1, seen + 1);
            else return null;
        }

        return seen == count && (at == line.Length || line[at] is ' ' or ':' or ',') ? at : null;
    }

    private static bool LooksDrawn(string text) => text.Any(char.IsAsciiDigit) && text.Any(char.IsAsciiLetter);

    private static bool MaterialFollows(string line, int end) => MaterialReader.ReadStart(line[AfterGap(line, end)..]) is not null;

    private static int AfterGap(string line, int at)
    {
        while (at < line.Length && line[at] is ' ' or ':' or ',') at++;
        return at;
    }
}
