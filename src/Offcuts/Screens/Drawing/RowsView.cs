using Offcuts.Print;
using Terminal.Gui.ViewBase;

namespace Offcuts.Screens;

/// <summary>Draws lines of text from one of them on. Takes no key: the shell tells it what to show.</summary>
internal sealed class RowsView : View
{
    private readonly Palette _palette;
    private IReadOnlyList<Row> _rows = [];
    private int _top;

    public RowsView(Palette palette)
    {
        _palette = palette;
        CanFocus = false;
    }

    /// <summary>Shows these lines from <paramref name="top"/> on.</summary>
    public void Show(IReadOnlyList<Row> rows, int top = 0)
    {
        (_rows, _top) = (rows, Math.Max(0, top));
        SetNeedsDraw();
    }

    /// <inheritdoc/>
    protected override bool OnDrawingContent(DrawContext? context)
    {
        for (var line = 0; line < Viewport.Height && _top + line < _rows.Count; line++)
        {
            var column = 0;
            foreach (var ink in _rows[_top + line].Inks)
            {
                SetAttribute(_palette.Of(_palette.Ascii && ink.Tone == Tone.Paper ? Tone.Soft : ink.Tone));
                AddStr(column, line, _palette.Ascii && ink.Tone == Tone.Paper ? InsteadOfSymbol(_top + line, ink.Text) : _palette.Drawn(ink.Text));
                column += TextColumns.Width(ink.Text);
            }
        }

        return true;
    }

    // Half a module of a symbol is no letter of ASCII: in its middle stands where else it is to be had.
    private string InsteadOfSymbol(int row, string text)
    {
        var first = row;
        while (first > 0 && _rows[first - 1].Inks.Any(ink => ink.Tone == Tone.Paper)) first--;
        string[] said = ["No symbol in plain letters:", "^L prints it on a label, and", "offcuts show CODE draws it"];
        var line = row - first - (QrRows.Lines / 2) + 1;
        return TextColumns.Fill(line >= 0 && line < said.Length ? " " + said[line] : "", TextColumns.Width(text));
    }
}
