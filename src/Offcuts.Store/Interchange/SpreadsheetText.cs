namespace Offcuts.Store.Interchange;

/// <summary>
/// Text that a spreadsheet would take for a formula is written with a <c>'</c> before it, and read without it again.
/// For every text, reading what was written gives the text back.
/// </summary>
internal static class SpreadsheetText
{
    private const char Mark = '\'';

    /// <summary>The text as it goes into a cell.</summary>
    public static string Guard(string text) => LooksLikeFormula(text) ? Mark + text : text;

    /// <summary>The text that went into a cell.</summary>
    public static string Unguard(string cell) =>
        cell.Length > 0 && cell[0] == Mark && LooksLikeFormula(cell[1..]) ? cell[1..] : cell;

    // Marks already there are passed over: a text that itself begins with '= gets one more, so that exactly one comes off again.
    private static bool LooksLikeFormula(string text)
    {
        var at = 0;
        while (at < text.Length && text[at] == Mark) at++;
        while (at < text.Length && text[at] == ' ') at++;
        return at < text.Length && text[at] is '=' or '+' or '-' or '@' or '\t' or '\r' or '\n' or '＝' or '＋' or '－' or '＠';
    }
}
