using Terminal.Gui.ViewBase;

namespace Offcuts.Screens;

/// <summary>Handing over: the list in columns, or the loads or what went as parts.</summary>
internal sealed class HandView : PlaceView
{
    private const int PartsAPage = 3;

    private readonly RowsView _heading;
    private readonly LinesTable _list;
    private readonly PartsView _parts;
    private HandPage _page;

    public HandView(Palette palette)
    {
        _heading = new RowsView(palette) { Width = Dim.Fill(), Height = 1 };
        _list = new LinesTable(palette) { Y = 1, Width = Dim.Fill(), Height = Dim.Fill() };
        _parts = new PartsView(palette) { Y = 1 };
        Add(_heading, _list, _parts);
    }

    public override int PageLines => _page == HandPage.Free ? _list.Lines : PartsAPage;

    public override IReadOnlyList<Intent> Pointed(ShellState state, int x, int y) =>
        Chosen(state.Hand.Page == HandPage.Free ? _list.RowAt(x, y) : _parts.PartAt(y), state.Hand.Chosen);

    public override Intent? Opening(ShellState state) => state.Hand is { Page: HandPage.Free, Free: not null } ? new Intent.Enter() : null;

    public override void Show(ShellState state)
    {
        var hand = state.Hand;
        Layout();
        _heading.Show([HandRows.Heading(hand)]);
        (_list.Visible, _parts.Visible) = (hand.Page == HandPage.Free && hand.Shown.Count > 0, hand.Page != HandPage.Free);
        var wide = _list.Viewport.Width >= HandRows.WideFrom;
        if (_list.Visible) _list.Show(HandRows.Columns(_list.Viewport.Width), hand.Shown.Count, (row, column) => HandRows.Cell(hand, row, column, wide), hand.Chosen);
        if (_parts.Visible) _parts.Show(HandRows.Parts(hand, Viewport.Width), hand.Chosen, anew: _page != hand.Page);
        _page = hand.Page;
    }
}
