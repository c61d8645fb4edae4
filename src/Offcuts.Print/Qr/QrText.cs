using System.Text;
using Offcuts.Core.Yard;

namespace Offcuts.Print;

/// <summary>
/// A code's QR symbol as lines of text, with its quiet zone of 4 modules. A reader wants it dark on light, so what shows it
/// paints dark characters on a light ground whatever the theme; the coloured forms bring their own colours.
/// </summary>
public static class QrText
{
    /// <summary>Columns of <see cref="HalfBlocks"/>.</summary>
    public const int Columns = QrSymbol.FullSize;

    /// <summary>Lines of <see cref="HalfBlocks"/>: the last holds one row of modules and a light half.</summary>
    public const int Lines = (QrSymbol.FullSize + 1) / 2;

    // Numbers 16 and 231 of the fixed colour cube: black and white that no theme changes.
    private const string BlackOnWhite = "\u001b[38;5;16;48;5;231m";
    private const string OnBlack = "\u001b[48;5;16m";
    private const string OnWhite = "\u001b[48;5;231m";
    private const string Plain = "\u001b[0m";

    /// <summary>
    /// Fifteen lines of 29 characters, two modules a character, one above the other: full block, upper half, lower half, blank.
    /// To be painted dark on light.
    /// </summary>
    public static IReadOnlyList<string> HalfBlocks(Code code)
    {
        var symbol = QrSymbol.Of(code);
        return [.. Enumerable.Range(0, Lines).Select(line => string.Concat(
            Places().Select(column => (symbol[Top(line), column], symbol[Top(line) + 1, column]) switch
            {
                (true, true) => '█',
                (true, false) => '▀',
                (false, true) => '▄',
                _ => ' ',
            })))];
    }

    /// <summary><see cref="HalfBlocks"/> with escape sequences that paint it black on white.</summary>
    public static IReadOnlyList<string> ColouredHalfBlocks(Code code) =>
        [.. HalfBlocks(code).Select(line => BlackOnWhite + line + Plain)];

    /// <summary>
    /// Twenty-nine lines of 58 ASCII characters, two characters a module: <c>##</c> dark, blanks light. For a printer or a
    /// terminal with a light ground that knows no Unicode.
    /// </summary>
    public static IReadOnlyList<string> Ascii(Code code)
    {
        var symbol = QrSymbol.Of(code);
        return [.. Places().Select(row => string.Concat(Places().Select(column => symbol[row, column] ? "##" : "  ")))];
    }

    /// <summary><see cref="Ascii"/> painted by the ground behind blanks, so that it is black on white on any terminal with colours.</summary>
    public static IReadOnlyList<string> ColouredAscii(Code code)
    {
        var symbol = QrSymbol.Of(code);
        return [.. Places().Select(row =>
        {
            var line = new StringBuilder();
            bool? last = null;
            foreach (var column in Places())
            {
                if (symbol[row, column] != last) line.Append(symbol[row, column] ? OnBlack : OnWhite);
                last = symbol[row, column];
                line.Append("  ");
            }

            return line.Append(Plain).ToString();
        })];
    }

    private static int Top(int line) => 2 * line - QrSymbol.QuietZone;

    private static IEnumerable<int> Places() => Enumerable.Range(-QrSymbol.QuietZone, QrSymbol.FullSize);
}
