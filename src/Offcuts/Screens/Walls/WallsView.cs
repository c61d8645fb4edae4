using Terminal.Gui.ViewBase;

namespace Offcuts.Screens;

/// <summary>The walls on top, and a page of the chosen one below them.</summary>
internal sealed class WallsView : PlaceView
{
    private readonly LinesTable _walls;
    private readonly RowsView _heading;
    private readonly RowsView _page;
    private IReadOnlyList<int> _starts = [];
    private int _rows;
    private int _top;
    private bool _onPage;

    public WallsView(Palette palette)
    {
        _walls = new LinesTable(palette) { Width = Dim.Fill() };
        _heading = new RowsView(palette) { Width = Dim.Fill(), Height = 1 };
        _page = new RowsView(palette) { Width = Dim.Fill(), Height = Dim.Fill() };
        Add(_walls, _heading, _page);
    }

    public override int PageLines => _onPage ? Math.Max(1, _page.Viewport.Height - 1) : _walls.Lines;

    public override IReadOnlyList<Intent> Pointed(ShellState state, int x, int y)
    {
        var walls = state.Walls;
        if (walls.Form is { } form) return y >= _page.Frame.Top && _top + y - _page.Frame.Top < _rows ? Chosen(_starts.Count(start => start <= _top + y - _page.Frame.Top) - 1, form.At) : [];
        if (y == _heading.Frame.Top) return WallsRows.PageAt(walls, x) is { } wanted ? [new Intent.Do(wanted)] : [];
        if (_walls.RowAt(x, y) is { } wall) return [.. walls.OnPage ? (Intent[])[new Intent.OtherList()] : [], new Intent.Move(wall - walls.Chosen)];
        if (y < _page.Frame.Top) return [];
        Intent[] there = walls.OnPage ? [] : [new Intent.OtherList()];
        var at = _starts.Count(start => start <= _top + y - _page.Frame.Top) - 1;
        return walls.Page switch
        {
            WallPage.Takeoff when at >= 0 => [.. there, new Intent.Move(at - walls.Figure)],
            WallPage.Systems when at >= 0 && at < walls.Yard.Systems.Count => [.. there, new Intent.Move(at - walls.System)],
            _ => there,
        };
    }

    /// <inheritdoc/>
    public override int? Bounded(ShellState state, int by) =>
        state.Walls is { OnPage: true, Form: null, Page: not (WallPage.Takeoff or WallPage.Systems) } walls
            ? Math.Clamp((int)Math.Clamp((long)walls.Top + by, 0, int.MaxValue), 0, Last) - walls.Top
            : null;

    private int Last => Math.Max(0, _rows - _page.Viewport.Height);

    public override void Show(ShellState state)
    {
        var walls = state.Walls;
        _onPage = walls.OnPage;
        _walls.Visible = walls.Form is null;
        if (walls.Form is { } form)
        {
            ShowForm(form);
            return;
        }

        const int heading = 1;
        _heading.Height = heading;
        var lines = WallsRows.WallLines(walls.Yard.Walls.Count, Viewport.Height) + heading;
        _walls.Height = lines;
        _heading.Y = lines;
        _page.Y = lines + heading;
        Layout();
        _walls.Show(WallsRows.Columns, walls.Yard.Walls.Count, (row, column) => WallsRows.Cell(walls, row, column), walls.Chosen);
        _heading.Show([WallsRows.Heading(walls)]);
        var (rows, from, to, starts) = WallsRows.Page(walls, _page.Viewport.Width);
        (_rows, _starts) = (rows.Count, starts);
        if (walls.Page is WallPage.Takeoff or WallPage.Systems) KeepInSight(from, to);
        else _top = Math.Min(walls.Top, Last);
        _page.Show(rows, _top);
    }

    private void ShowForm(SheetForm form)
    {
        _onPage = true;
        var heading = FormRows.Heading(form, Viewport.Width);
        (_heading.Y, _heading.Height, _page.Y) = (0, heading.Count, heading.Count);
        Layout();
        _heading.Show(heading);
        var (rows, from, to, starts) = FormRows.Lines(form, _page.Viewport.Width);
        (_rows, _starts) = (rows.Count, starts);
        KeepInSight(from, to);
        _page.Show(rows, _top);
    }

    private void KeepInSight(int from, int to)
    {
        if (to - _top > _page.Viewport.Height) _top = to - _page.Viewport.Height;
        if (from < _top) _top = from;
        _top = Math.Min(_top, Last);
    }
}
