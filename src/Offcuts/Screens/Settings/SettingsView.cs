namespace Offcuts.Screens;

/// <summary>The settings, one under the other.</summary>
internal sealed class SettingsView : PlaceView
{
    private const int SettingsAPage = 5;

    private readonly PartsView _page;

    public SettingsView(Palette palette)
    {
        _page = new PartsView(palette);
        Add(_page);
    }

    public override int PageLines => SettingsAPage;

    public override IReadOnlyList<Intent> Pointed(ShellState state, int x, int y) => Chosen(_page.PartAt(y), state.Settings.Chosen);

    public override Intent? Opening(ShellState state) => state.Settings.Line.Text.Length == 0 ? new Intent.Do(Want.ChangeLine) : null;

    public override void Show(ShellState state)
    {
        Layout();
        _page.Show(SettingsRows.Parts(state.Settings, Viewport.Width), state.Settings.Chosen, anew: false);
    }
}
