using Terminal.Gui.ViewBase;

namespace Offcuts.Screens;

/// <summary>The places in columns, or a count line by line.</summary>
internal sealed class CountView : PlaceView
{
    private readonly RowsView _heading;
    private readonly LinesTable _places;
    private readonly RowsView _count;

    public CountView(Palette palette)
    {
        _heading = new RowsView(palette) { Width = Dim.Fill(), Height = 1 };
        _places = new LinesTable(palette) { Y = 1, Width = Dim.Fill(), Height = Dim.Fill() };
        _count = new RowsView(palette) { Y = 1, Width = Dim.Fill(), Height = Dim.Fill() };
        Add(_heading, _places, _count);
    }

    public override int PageLines => Math.Max(1, _count.Viewport.Height - 1);

    public override IReadOnlyList<Intent> Pointed(ShellState state, int x, int y) => state.Count is { Counted: null, Preview.Count: 0 } ? Chosen(_places.RowAt(x, y), state.Count.Chosen) : [];

    public override Intent? Opening(ShellState state) => state.Count is { Counted: null, Line.Text.Length: 0 } ? new Intent.Enter() : null;

    public override void Show(ShellState state)
    {
        var count = state.Count;
        Layout();
        _heading.Show([CountRows.Heading(count)]);
        var preview = count.Preview.Count > 0;
        var labels = count.OnLabels && count.Counted is null;
        _places.Visible = count.Counted is null && !preview && (labels ? count.Labels.Count : count.Yard.CountedPlaces.Count) > 0;
        _count.Visible = count.Counted is not null || preview;
        if (preview) _count.Show(CountRows.Preview(count));
        else if (labels) _places.Show(CountRows.LabelColumns, count.Labels.Count, (row, column) => CountRows.LabelCell(count, row, column), count.Chosen);
        else if (count.Counted is not null) _count.Show(CountRows.Counted(count, _count.Viewport.Width));
        else _places.Show(CountRows.Columns(_places.Viewport.Width), count.Yard.CountedPlaces.Count, (row, column) => CountRows.Cell(count, row, column), count.Chosen);
    }
}
