using System.Globalization;
using System.Text;
using Wcwidth;

namespace Offcuts.Print;

/// <summary>
/// Text in terminal columns: a wide letter takes two, an accent that joins the letter before it takes none. Works on text without
/// control characters.
/// </summary>
public static class TextColumns
{
    /// <summary>Columns that a text takes.</summary>
    public static int Width(string text) => text.EnumerateRunes().Sum(RuneWidth);

    /// <summary>The text and as many blanks as fill the width; a text that is too wide is cut with a mark, which then ends it.</summary>
    public static string Fill(string text, int width)
    {
        var cut = Cut(text, width);
        return cut + new string(' ', width - Width(cut));
    }

    /// <summary>As <see cref="Fill"/>, blanks first.</summary>
    public static string FillLeft(string text, int width)
    {
        var cut = Cut(text, width);
        return new string(' ', width - Width(cut)) + cut;
    }

    /// <summary>The text where it fits, else the longest beginning of it that leaves one column for <c>…</c>. Letters are never split.</summary>
    public static string Cut(string text, int width)
    {
        if (Width(text) <= width) return text;
        if (width <= 1) return width == 1 ? "…" : "";
        var (head, _) = Head(text, width - 1);
        return head.TrimEnd() + "…";
    }

    /// <summary>The text in lines of at most so many columns, broken between words, and inside a word only where it alone is wider.</summary>
    /// <param name="text">Any text; an empty one gives one empty line.</param>
    /// <param name="width">2 columns or more.</param>
    public static IReadOnlyList<string> Wrap(string text, int width)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(width, 2);
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > 0 && Width(line) + 1 + Width(word) <= width)
            {
                line += " " + word;
                continue;
            }

            if (line.Length > 0) lines.Add(line);
            line = word;
            while (Width(line) > width)
            {
                var (head, rest) = Head(line, width);
                lines.Add(head);
                line = rest;
            }
        }

        lines.Add(line);
        return lines;
    }

    private static (string Head, string Tail) Head(string text, int width)
    {
        var head = new StringBuilder();
        var taken = 0;
        var letters = StringInfo.GetTextElementEnumerator(text);
        while (letters.MoveNext())
        {
            var letter = letters.GetTextElement();
            if (head.Length > 0 && taken + Width(letter) > width) return (head.ToString(), text[letters.ElementIndex..]);
            taken += Width(letter);
            head.Append(letter);
        }

        return (text, "");
    }

    private static int RuneWidth(Rune rune) => rune.Value is >= 0x20 and < 0x7f ? 1 : Math.Max(0, UnicodeCalculator.GetWidth(rune));
}
