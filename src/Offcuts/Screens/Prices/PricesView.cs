using Terminal.Gui.ViewBase;

namespace Offcuts.Screens;

/// <summary>The prices in columns.</summary>
internal sealed class PricesView : PlaceView
{
    private readonly RowsView _heading;
    private readonly LinesTable _list;

    public PricesView(Palette palette)
    {
        _heading = new RowsView(palette) { Width = Dim.Fill(), Height = 1 };
        _list = new LinesTable(palette) { Y = 1, Width = Dim.Fill(), Height = Dim.Fill() };
        Add(_heading, _list);
    }

    public override int PageLines => _list.Lines;

    public override IReadOnlyList<Intent> Pointed(ShellState state, int x, int y) => Chosen(_list.RowAt(x, y), state.Prices.Chosen);

    public override Intent? Opening(ShellState state) => state.Prices.Line.Text.Length == 0 ? new Intent.Do(Want.ChangeLine) : null;

    public override void Show(ShellState state)
    {
        var prices = state.Prices;
        Layout();
        var wide = _list.Viewport.Width >= PricesRows.WideFrom;
        _heading.Show([PricesRows.Heading(prices)]);
        _list.Visible = prices.Yard.Prices.Count > 0;
        _list.Show(PricesRows.Columns(_list.Viewport.Width), prices.Yard.Prices.Count, (row, column) => PricesRows.Cell(prices, row, column, wide), prices.Chosen);
    }
}
