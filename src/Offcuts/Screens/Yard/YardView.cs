using Terminal.Gui.ViewBase;

namespace Offcuts.Screens;

/// <summary>The yard: the list on the left, the chosen one beside it; or the chosen one alone.</summary>
internal sealed class YardView : PlaceView
{
    private const int SidePercent = 35;
    private const int LeastSide = 31;
    private const int MostSide = 60;

    private readonly LinesTable _list;
    private readonly RowsView _side;
    private readonly RowsView _closer;

    public YardView(Palette palette)
    {
        _list = new LinesTable(palette) { Height = Dim.Fill() };
        _side = new RowsView(palette) { X = Pos.Right(_list) + 1, Width = Dim.Fill(), Height = Dim.Fill() };
        _closer = new RowsView(palette) { Width = Dim.Fill(), Height = Dim.Fill(), Visible = false };
        Add(_list, _side, _closer);
    }

    public override int PageLines => _list.Lines;

    public override IReadOnlyList<Intent> Pointed(ShellState state, int x, int y) => state.Yard.Closer ? [] : Chosen(_list.RowAt(x, y), state.Yard.Chosen);

    public override Intent? Opening(ShellState state) => new Intent.Enter();

    public override Intent Wheeled(ShellState state, int lines)
    {
        if (!state.Yard.Closer) return new Intent.Move(lines);
        var last = LastTop(state.Yard);
        return new Intent.Read(Math.Clamp(Math.Min(state.Yard.CloserTop, last) + lines, 0, last) - state.Yard.CloserTop);
    }

    /// <inheritdoc/>
    public override int ReadOn(ShellState state, int pages)
    {
        var (top, last) = (Math.Min(state.Yard.CloserTop, LastTop(state.Yard)), LastTop(state.Yard));
        return Math.Clamp(top + pages * Math.Max(1, _closer.Viewport.Height - 1), 0, last) - state.Yard.CloserTop;
    }

    public override void Show(ShellState state)
    {
        var yard = state.Yard;
        (_list.Visible, _side.Visible, _closer.Visible) = (!yard.Closer, !yard.Closer, yard.Closer);
        if (yard.Closer)
        {
            _closer.Show(YardRows.Closer(yard, _closer.Viewport.Width), Math.Min(yard.CloserTop, LastTop(yard)));
            return;
        }

        _list.Width = Viewport.Width - Math.Clamp(Viewport.Width * SidePercent / 100, LeastSide, MostSide) - 1;
        Layout();
        var wide = _list.Viewport.Width >= YardRows.WideFrom;
        _list.Show(YardRows.Columns(yard, _list.Viewport.Width), yard.Shown.Count, (row, column) => YardRows.Cell(yard, row, column, wide), yard.Chosen);
        _side.Show(YardRows.Side(yard, _side.Viewport.Width, _side.Viewport.Height));
    }

    private int LastTop(YardState yard) => Math.Max(0, YardRows.Closer(yard, _closer.Viewport.Width).Count - _closer.Viewport.Height);
}
