using Terminal.Gui.Input;

namespace Offcuts.Screens;

/// <summary>What a click or a turn of the wheel means: the same as a key, never more. Nothing needs it.</summary>
/// <param name="foot">The line at which the keys begin, from the top.</param>
/// <param name="body">The line at which the place begins.</param>
internal readonly struct ShellMouse(ShellState state, PlaceView place, int width, int body, int foot)
{
    private const int WheelLines = 3;

    private const MouseFlags Left = MouseFlags.LeftButtonPressed | MouseFlags.LeftButtonReleased | MouseFlags.LeftButtonClicked | MouseFlags.LeftButtonDoubleClicked | MouseFlags.LeftButtonTripleClicked;

    /// <summary>True where the terminal library is to have it: the left button on the typed line, where it puts the cursor. Another button would open its menu.</summary>
    public static bool IsForLine(Mouse mouse, int lineRow) => (mouse.Flags & Left) != 0 && mouse.ScreenPosition.Y == lineRow;

    /// <summary>What it means, one after the other; nothing where it hits nothing.</summary>
    public IReadOnlyList<Intent> Meant(Mouse mouse)
    {
        var (x, y) = (mouse.ScreenPosition.X, mouse.ScreenPosition.Y);
        if (mouse.Flags.HasFlag(MouseFlags.WheeledUp)) return Wheeled(-WheelLines);
        if (mouse.Flags.HasFlag(MouseFlags.WheeledDown)) return Wheeled(WheelLines);
        if (mouse.Flags.HasFlag(MouseFlags.LeftButtonDoubleClicked)) return y >= body && y < foot && Listens ? Opened(x, y) : [];
        if (!mouse.Flags.HasFlag(MouseFlags.LeftButtonClicked)) return [];
        if (y >= foot) return ShellRows.KeyAt(state, width, y - foot, x) is { } key ? [key.Means] : [];
        if (y == 0) return ShellKeys.Asking(state) is null && !state.Unread && ShellRows.PlaceAt(state, width, x) is { } wanted ? [new Intent.GoTo(wanted)] : [];
        return y >= body && Listens ? place.Pointed(state, x, y - body) : [];
    }

    // While something is asked, the list stands still under it.
    private bool Listens => state is { Unread: false, Helping: false, Ask: null, Jump: null } && state.PlaceLine.Ask is null;

    private IReadOnlyList<Intent> Wheeled(int lines) =>
        state.Helping ? [new Intent.Move(lines)] : Listens ? [place.Wheeled(state, lines)] : [];

    private IReadOnlyList<Intent> Opened(int x, int y) =>
        place.Pointed(state, x, y - body) is { Count: > 0 } rows && place.Opening(state) is { } opening ? [.. rows, opening] : [];
}
