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
                SetAttribute(_palette.Of(ink.Tone));
                AddStr(column, line, ink.Text);
                column += Print.TextColumns.Width(ink.Text);
            }
        }

        return true;
    }
}
