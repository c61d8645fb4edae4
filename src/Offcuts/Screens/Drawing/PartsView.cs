using Terminal.Gui.ViewBase;

namespace Offcuts.Screens;

/// <summary>A page of parts, one of them chosen, scrolled so that the chosen one is seen whole as far as it fits.</summary>
internal sealed class PartsView : View
{
    private readonly RowsView _page;
    private readonly List<int> _starts = [];
    private int _top;
    private int _lines;

    public PartsView(Palette palette)
    {
        CanFocus = false;
        (Width, Height) = (Dim.Fill(), Dim.Fill());
        _page = new RowsView(palette) { Width = Dim.Fill(), Height = Dim.Fill() };
        Add(_page);
    }

    /// <summary>The part at a line of the place that this page lies in; none where there is none.</summary>
    public int? PartAt(int y)
    {
        var line = _top + y - Frame.Top;
        return Visible && y >= Frame.Top && y < Frame.Bottom && line < _lines ? _starts.FindLastIndex(start => start <= line) : null;
    }

    /// <summary>Shows the parts.</summary>
    /// <param name="parts">The lines of each part.</param>
    /// <param name="chosen">The chosen part.</param>
    /// <param name="anew">True where it is another page than before, which is read from its beginning.</param>
    public void Show(IReadOnlyList<IReadOnlyList<Row>> parts, int chosen, bool anew)
    {
        if (anew) _top = 0;
        var rows = new List<Row>();
        _starts.Clear();
        for (var i = 0; i < parts.Count; i++)
        {
            var start = rows.Count;
            _starts.Add(start);
            rows.AddRange(parts[i]);
            if (i != chosen) continue;
            if (rows.Count - _top > Viewport.Height) _top = rows.Count - Viewport.Height;
            if (start < _top) _top = start;
        }

        _lines = rows.Count;
        _top = Math.Clamp(_top, 0, Math.Max(0, rows.Count - Viewport.Height));
        _page.Show(rows, _top);
    }
}
