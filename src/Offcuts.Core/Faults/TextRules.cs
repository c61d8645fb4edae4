using System.Globalization;
using System.Text;

namespace Offcuts.Core.Faults;

/// <summary>What free text may hold, and how text that holds more is shown without harm.</summary>
public static class TextRules
{
    /// <summary>
    /// True for a character that could steer a terminal or hide text: C0 and C1 controls, line and paragraph separators,
    /// the marks that turn the direction of writing, and spaces without width. The joiners that some scripts need stay allowed.
    /// </summary>
    public static bool IsControl(char character) =>
        char.IsControl(character)
        || char.GetUnicodeCategory(character) is UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
        || character is (>= '\u202a' and <= '\u202e') or (>= '\u2066' and <= '\u2069') or '\u200e' or '\u200f' or '\u061c' or '\ufeff'
            or '\u200b' or (>= '\u2060' and <= '\u2064') or (>= '\ufff9' and <= '\ufffb');

    /// <summary>
    /// JSON in which nothing steers a terminal or turns its line around: such characters, which can stand only in its texts, are written by
    /// their numbers, and every reader gets the same texts.
    /// </summary>
    /// <param name="json">Written well; line breaks between its parts stay.</param>
    public static string HarmlessJson(string json)
    {
        if (!json.Any(Steers)) return json;
        var shown = new StringBuilder();
        foreach (var c in json)
        {
            if (Steers(c)) shown.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}");
            else shown.Append(c);
        }

        return shown.ToString();
        static bool Steers(char character) => character is not ('\n' or '\r') && IsControl(character);
    }

    /// <summary>Index of the first character that no free text may hold: a control character or half of a broken pair; -1 where there is none.</summary>
    public static int FirstRefused(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (IsControl(text[i])) return i;
            if (!char.IsSurrogate(text[i])) continue;
            if (i + 1 >= text.Length || !char.IsSurrogatePair(text[i], text[i + 1])) return i;
            i++;
        }

        return -1;
    }

    /// <summary>The text with every such character, and every half of a broken pair, shown as <c>\u001b</c> and the like. Never longer than six times the text.</summary>
    public static string Harmless(string text)
    {
        if (!text.Any(c => IsControl(c) || char.IsSurrogate(c))) return text;
        var shown = new StringBuilder();
        for (var i = 0; i < text.Length; i++)
        {
            if (i + 1 < text.Length && char.IsSurrogatePair(text[i], text[i + 1])) shown.Append(text[i]).Append(text[++i]);
            else if (IsControl(text[i]) || char.IsSurrogate(text[i])) shown.Append(CultureInfo.InvariantCulture, $"\\u{(int)text[i]:x4}");
            else shown.Append(text[i]);
        }

        return shown.ToString();
    }
}
