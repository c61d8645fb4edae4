using System.Globalization;
using System.Text;
using Offcuts.Print;

namespace Offcuts.Screens;

/// <summary>
/// Text in nothing but ASCII, column for column as wide as before: for a terminal that draws no lines or is not set to UTF-8. A letter
/// loses its accent; what has no like becomes a question mark.
/// </summary>
internal static class PlainLetters
{
    // One under the other: a sign and what stands for it. Those of a drawn wall are the ones that its ASCII form has.
    private const string Drawn = "─│┴┬╱█░·…✓✗▸↑↓’‘′“”″–−×€£";
    private const string Plain = "-|++/#:.~+x>^v'''\"\"\"--xEL";

    // A letter and its accented forms. A table of our own, since the program runs without the tables of any country.
    private static readonly string[] Accented =
    [
        "AÀÁÂÃÄÅĀĂĄǍ", "CÇĆĈĊČ", "DĎĐ", "EÈÉÊËĒĔĖĘĚẼ", "GĜĞĠĢǦǴ", "HĤ", "IÌÍÎÏĨĪĬĮİ", "JĴ", "KĶ", "LĹĻĽŁ", "NÑŃŅŇǸ", "OÒÓÔÕÖØŌŎŐ", "RŔŖŘ",
        "SŚŜŞŠȘ", "TŢŤȚ", "UÙÚÛÜŨŪŬŮŰŲ", "WŴẀẂẄ", "YÝŶŸỲỸ", "ZŹŻŽ",
        "aàáâãäåāăąǎ", "cçćĉċč", "dďđ", "eèéêëēĕėęěẽ", "gĝğġģǧǵ", "hĥ", "iìíîïĩīĭįı", "jĵ", "kķ", "lĺļľł", "nñńņňǹ", "oòóôõöøōŏő", "rŕŗř",
        "sśŝşšș", "tţťț", "uùúûüũūŭůűų", "wŵẁẃẅ", "yýŷÿỳỹ", "zźżž",
    ];

    private static readonly Dictionary<char, char> Letters = Drawn.Zip(Plain)
        .Concat(Accented.SelectMany(forms => forms.Skip(1).Select(form => (form, forms[0]))))
        .ToDictionary(pair => pair.Item1, pair => pair.Item2);

    /// <summary>The text, as many columns wide.</summary>
    public static string Of(string text)
    {
        if (text.All(char.IsAscii)) return text;
        var plain = new StringBuilder(text.Length);
        var graphemes = StringInfo.GetTextElementEnumerator(text);
        while (graphemes.MoveNext()) plain.Append(Letter(graphemes.GetTextElement()));
        return plain.ToString();
    }

    // Accents that follow their letter go; a letter of two columns has no like of one.
    private static string Letter(string grapheme)
    {
        if (grapheme.All(char.IsAscii)) return grapheme;
        var width = TextColumns.Width(grapheme);
        var letter = grapheme[0];
        var rest = grapheme.Skip(1).All(c => CharUnicodeInfo.GetUnicodeCategory(c) == UnicodeCategory.NonSpacingMark);
        if (width != 1 || !rest) return new string('?', width);
        return char.IsAscii(letter) ? letter.ToString() : Letters.TryGetValue(letter, out var plain) ? plain.ToString() : "?";
    }
}
