using Offcuts.Print;
using Terminal.Gui.Drawing;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;

namespace Offcuts.Screens;

/// <summary>A list in columns that asks for a cell only when it draws it. Takes no key: the shell tells it what is chosen.</summary>
internal sealed class LinesTable : TableView
{
    private const int LeastWidth = 4;

    private readonly Palette _palette;

    public LinesTable(Palette palette)
    {
        _palette = palette;
        CanFocus = false;
        FullRowSelect = true;
        MultiSelect = false;
        Style.AlwaysShowHeaders = true;
        Style.ShowHeaders = true;
        Style.ShowHorizontalHeaderOverline = false;
        Style.ShowHorizontalHeaderUnderline = false;
        Style.ShowHorizontalBottomLine = false;
        Style.ShowVerticalCellLines = false;
        Style.ShowVerticalHeaderLines = false;
        Style.ShowVerticalCellLineForFirstColumn = false;
        Style.ShowVerticalCellLineForLastColumn = false;
        Style.ExpandLastColumn = true;
        Style.HeaderScheme = new Scheme(palette.Of(Tone.Soft)) { HotNormal = palette.Of(Tone.Soft) };
        SeparatorSymbol = ' ';
    }

    /// <summary>How many rows lie above what is shown.</summary>
    public int Above => Table is null ? 0 : RowOffset;

    /// <summary>How many rows lie below what is shown.</summary>
    public int Below => Table is { } table ? Math.Max(0, table.Rows - RowOffset - Lines) : 0;

    /// <summary>Lines that fit below the heading.</summary>
    public int Lines => Math.Max(1, Viewport.Height - 1);

    /// <summary>The row at a point of the place that this table lies in; none where it lies elsewhere or is not shown.</summary>
    public int? RowAt(int x, int y)
    {
        if (!Visible || x < Frame.Left || x >= Frame.Right || y <= Frame.Top || y >= Frame.Bottom) return null;
        var row = RowOffset + y - Frame.Top - 1;
        return Table is { } table && row < table.Rows ? row : null;
    }

    /// <summary>Shows these columns; every cell is cut or filled to its column, so that none moves another.</summary>
    /// <param name="columns">Headings and widths; a width of 0 takes what is left.</param>
    /// <param name="rows">How many rows.</param>
    /// <param name="cell">The text of a cell by row and column.</param>
    /// <param name="chosen">The chosen row; none where negative.</param>
    public void Show(IReadOnlyList<(string Heading, int Width)> columns, int rows, Func<int, int, string> cell, int chosen)
    {
        var widths = Fitted(columns);
        for (var i = 0; i < widths.Length; i++)
        {
            var style = Style.GetOrCreateColumnStyle(i);
            (style.MinWidth, style.MaxWidth, style.MinAcceptableWidth) = (widths[i], widths[i], widths[i]);
        }

        MaxCellWidth = Math.Max(1, widths.Max());
        Table = new Source([.. columns.Select((column, i) => _palette.Drawn(TextColumns.Fill(column.Heading, widths[i])))], rows, (row, column) => _palette.Drawn(TextColumns.Fill(cell(row, column), widths[column])));
        if (rows > 0 && chosen >= 0)
        {
            SetSelection(0, Math.Min(chosen, rows - 1), false, null);
            EnsureCursorIsVisible();
        }

        SetNeedsDraw();
    }

    private int[] Fitted(IReadOnlyList<(string Heading, int Width)> columns)
    {
        var gaps = columns.Count;
        var left = Viewport.Width - gaps - columns.Sum(column => column.Width);
        return [.. columns.Select(column => column.Width > 0 ? column.Width : Math.Max(LeastWidth, left))];
    }

    private sealed class Source(string[] headings, int rows, Func<int, int, string> cell) : ITableSource
    {
        public string[] ColumnNames => headings;

        public int Columns => headings.Length;

        public int Rows => rows;

        public object this[int row, int col] => cell(row, col);
    }
}
