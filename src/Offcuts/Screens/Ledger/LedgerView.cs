using Terminal.Gui.ViewBase;

namespace Offcuts.Screens;

/// <summary>The ledger: what the view shows and its scale, and below it the parts.</summary>
internal sealed class LedgerView : PlaceView
{
    private const int PartsAPage = 5;

    private readonly RowsView _heading;
    private readonly PartsView _page;
    private bool _overTime;

    public LedgerView(Palette palette)
    {
        _heading = new RowsView(palette) { Width = Dim.Fill() };
        _page = new PartsView(palette);
        Add(_heading, _page);
    }

    public override int PageLines => PartsAPage;

    public override IReadOnlyList<Intent> Pointed(ShellState state, int x, int y) => Chosen(_page.PartAt(y), state.Ledger.Chosen);

    public override Intent? Opening(ShellState state) => state.Ledger.Line.Text.Length == 0 ? new Intent.Enter() : null;

    public override void Show(ShellState state)
    {
        var ledger = state.Ledger;
        var heading = LedgerRows.Heading(ledger, Viewport.Width);
        _heading.Height = heading.Count;
        (_page.Y, _page.Height) = (heading.Count, Dim.Fill());
        Layout();
        _heading.Show(heading);
        _page.Show(LedgerRows.Parts(ledger, Viewport.Width), ledger.Chosen, anew: _overTime != ledger.OverTime);
        _overTime = ledger.OverTime;
    }
}
