using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using Offcuts.Core.Faults;
using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;

namespace Offcuts.Print;

/// <summary>The letters of every print: DejaVu Sans, plain and bold, shipped with the program. Sizes and widths are in points.</summary>
internal static class Lettering
{
    /// <summary>Stands for a character the font has no glyph for: an empty square.</summary>
    public const char Missing = '\u25a1';

    /// <summary>Ends a text that was cut.</summary>
    public const string CutMark = "…";

    /// <summary>From the top of a line to its baseline, for a size of 1. Source: the font's own <c>hhea</c> table, 1901/2048.</summary>
    public const double Ascent = 0.928;

    /// <summary>Height of a line, for a size of 1: ascent and descent, (1901 + 483)/2048, and no gap.</summary>
    public const double LineHeight = 1.164;

    private const string Family = "Offcuts";

    private static readonly FontFile Regular = FontFile.Load("DejaVuSans");
    private static readonly FontFile Heavy = FontFile.Load("DejaVuSans-Bold");
    private static readonly ConcurrentDictionary<(double Size, bool Bold), XFont> Fonts = new();
    private static readonly Lock Measuring = new();
    private static readonly XGraphics Ruler;

    static Lettering()
    {
        GlobalFontSettings.FontResolver = new ShippedFonts();
        Ruler = XGraphics.CreateMeasureContext(new XSize(1000, 1000), XGraphicsUnit.Point, XPageDirection.Downwards);
    }

    /// <summary>The font at a size.</summary>
    public static XFont Font(double size, bool bold) =>
        Fonts.GetOrAdd((size, bold), static key => new XFont(
            Family, key.Size, key.Bold ? XFontStyleEx.Bold : XFontStyleEx.Regular, new XPdfFontOptions(PdfFontEncoding.Unicode)));

    /// <summary>The text as it can be printed: accents joined, controls shown harmlessly, what the font lacks as <see cref="Missing"/>.</summary>
    public static string Printable(string text)
    {
        var shown = new StringBuilder(text.Length);
        foreach (var rune in TextRules.Harmless(Accents.Join(text)).EnumerateRunes())
        {
            // An accent with no letter to stand on would reach out of its place.
            if (Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark
                && (shown.Length == 0 || shown[^1] == ' ')) shown.Append(Missing);
            if (rune.Value == '\u00ad' || (Rune.GetUnicodeCategory(rune) == UnicodeCategory.SpaceSeparator && rune.Value != ' ')) shown.Append(' ');
            else if (Regular.Has(rune.Value) && Heavy.Has(rune.Value)) shown.Append(rune);
            else shown.Append(Missing);
        }

        return shown.ToString();
    }

    /// <summary>How wide a printable text is.</summary>
    public static double Width(string text, double size, bool bold)
    {
        if (text.Length == 0) return 0;
        lock (Measuring) return Ruler.MeasureString(text, Font(100, bold)).Width * size / 100;
    }

    /// <summary>The longest beginning of a printable text that fits, with <see cref="CutMark"/> after it; the whole text where it fits.</summary>
    public static string Cut(string text, double size, bool bold, double width)
    {
        if (Width(text, size, bold) <= width) return text;
        var starts = StringInfo.ParseCombiningCharacters(text);
        var (fits, over) = (0, starts.Length);
        while (over - fits > 1)
        {
            var middle = (fits + over) / 2;
            if (Width(text[..starts[middle]].TrimEnd() + CutMark, size, bold) <= width) fits = middle;
            else over = middle;
        }

        return text[..starts[fits]].TrimEnd() + CutMark;
    }

    /// <summary>A printable text in lines that each fit, broken between words, and inside a word only where it alone is wider.</summary>
    public static IReadOnlyList<string> Wrap(string text, double size, bool bold, double width)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > 0 && Width($"{line} {word}", size, bold) <= width)
            {
                line += " " + word;
                continue;
            }

            if (line.Length > 0) lines.Add(line);
            line = word;
            while (Width(line, size, bold) > width && line.Length > 1)
            {
                var starts = StringInfo.ParseCombiningCharacters(line);
                var fits = Enumerable.Range(1, starts.Length - 1).LastOrDefault(count => Width(line[..starts[count]], size, bold) <= width, 1);
                if (starts.Length == 1) break;
                lines.Add(line[..starts[fits]]);
                line = line[starts[fits]..];
            }
        }

        lines.Add(line);
        return lines;
    }

    private sealed class ShippedFonts : IFontResolver
    {
        public FontResolverInfo ResolveTypeface(string familyName, bool isBold, bool isItalic) => new(isBold ? "bold" : "regular");

        public byte[] GetFont(string faceName) => (faceName == "bold" ? Heavy : Regular).Bytes;
    }
}
