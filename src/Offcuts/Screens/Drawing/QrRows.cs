using Offcuts.Core.Yard;
using Offcuts.Print;

namespace Offcuts.Screens;

/// <summary>A code's QR symbol as lines of the screen, its quiet zone around it.</summary>
internal static class QrRows
{
    public static int Columns => QrText.Columns;

    public static int Lines => QrText.Lines;

    public static IEnumerable<Row> Of(Code code) => QrText.HalfBlocks(code).Select(line => Row.Of(line, Tone.Paper));

    /// <summary>The symbol on the left, text beside it.</summary>
    public static IEnumerable<Row> Beside(Code code, IReadOnlyList<Row> text)
    {
        var symbol = Of(code).ToArray();
        for (var i = 0; i < Math.Max(symbol.Length, text.Count); i++)
        {
            var left = i < symbol.Length ? symbol[i].Inks[0] : new Ink(new string(' ', Columns));
            yield return i < text.Count ? new Row([left, "  ", .. text[i].Inks]) : Row.Of(left);
        }
    }
}
