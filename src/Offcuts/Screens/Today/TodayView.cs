namespace Offcuts.Screens;

/// <summary>What matters today, one matter under the other.</summary>
internal sealed class TodayView : PlaceView
{
    private const int MattersAPage = 5;

    private readonly PartsView _page;

    public TodayView(Palette palette)
    {
        _page = new PartsView(palette);
        Add(_page);
    }

    public override int PageLines => MattersAPage;

    public override IReadOnlyList<Intent> Pointed(ShellState state, int x, int y) => Chosen(_page.PartAt(y), state.Today.Chosen);

    public override Intent? Opening(ShellState state) => state.Today.Line.Text.Length == 0 ? new Intent.Enter() : null;

    public override void Show(ShellState state)
    {
        Layout();
        _page.Show(TodayRows.Parts(state.Today, Viewport.Width), state.Today.Chosen, anew: false);
    }
}
