namespace Offcuts.Screens;

/// <summary>The keys of the settings' place.</summary>
internal static class SettingsKeys
{
    public static IReadOnlyList<KeyUse> Of(SettingsState state) => All;

    private static readonly KeyUse[] All =
    [
        new("Enter", "set", new Intent.Enter(), "Set what the line says; on an empty line, put the chosen setting there to be changed"),
        new("Ctrl+E", "change", new Intent.Do(Want.ChangeLine), "Put the chosen setting on the line, to be changed"),
        new("Ctrl+X", "as usual", new Intent.Do(Want.TakeOff), "Take back a kerf, a keep length or a cover of its own, so that what holds for all others holds again; asks first"),
        new("Up", "", new Intent.Move(-1), "One up"),
        new("Down", "", new Intent.Move(1), "One down"),
        new("PageUp", "", new Intent.Page(-1), "A few up"),
        new("PageDown", "", new Intent.Page(1), "A few down"),
        new("Ctrl+Home", "", new Intent.Edge(false), "To the first"),
        new("Ctrl+End", "", new Intent.Edge(true), "To the last"),
        new("Ctrl+Up", "", new Intent.Recall(-1), "Bring back the line typed before"),
        new("Ctrl+Down", "", new Intent.Recall(1), "Back towards the line that was being typed"),
    ];
}
