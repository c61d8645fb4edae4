using Terminal.Gui.ViewBase;

namespace Offcuts.Screens;

/// <summary>The catalogue line: what was understood in large, how many labels wait, the last pieces with their codes, and what to mind.</summary>
internal sealed class StripView : PlaceView
{
    private const int RoomyFrom = 14;

    private readonly RowsView _large;
    private readonly RowsView _labels;
    private readonly LinesTable _last;
    private readonly RowsView _mind;

    public StripView(Palette palette)
    {
        _large = new RowsView(palette) { Width = Dim.Fill(), Height = 0 };
        _labels = new RowsView(palette) { Width = Dim.Fill(), Height = 1 };
        _last = new LinesTable(palette) { Width = Dim.Fill() };
        _mind = new RowsView(palette) { Width = Dim.Fill() };
        Add(_large, _labels, _last, _mind);
    }

    public override int PageLines => _last.Lines;

    public override void Show(ShellState state)
    {
        var strip = state.Strip;
        var large = StripRows.Large(strip, Viewport.Width, roomy: Viewport.Height >= RoomyFrom && !state.Ascii);
        var mind = StripRows.Mind(strip, Viewport.Width, (Viewport.Height - large.Count) / 3);
        _large.Height = large.Count;
        (_labels.Y, _last.Y) = (large.Count, large.Count + 1);
        var room = mind.Count;
        _last.Height = Dim.Fill(room);
        (_mind.Y, _mind.Height) = (Pos.AnchorEnd(room), room);
        Layout();

        var last = StripRows.Last(strip);
        _large.Show(large);
        _labels.Show([StripRows.Labels(strip)]);
        _last.Show(StripRows.Columns(_last.Viewport.Width), last.Count, (row, column) => StripRows.Cell(strip.Yard, strip.Yard.Entries[last[row]], column), StripRows.CorrectedAt(strip, last));
        _mind.Show(mind);
    }
}
