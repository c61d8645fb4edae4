namespace Offcuts.Screens;

/// <summary>The keys of the prices' place.</summary>
internal static class PricesKeys
{
    public static IReadOnlyList<KeyUse> Of(PricesState state) => All;

    private static readonly KeyUse[] All =
    [
        new("Enter", "set", new Intent.Enter(), "Set the price that the line says, dated today; one of the same thing is replaced"),
        new("Ctrl+E", "change", new Intent.Do(Want.ChangeLine), "Put the chosen price on the line, to be changed"),
        new("Ctrl+T", "still so", new Intent.Do(Want.StillSo), "The chosen price was seen again today, as it stands"),
        new("Ctrl+X", "drop", new Intent.Do(Want.TakeOff), "Drop the chosen price; asks first"),
        new("Up", "", new Intent.Move(-1), "One up"),
        new("Down", "", new Intent.Move(1), "One down"),
        new("PageUp", "", new Intent.Page(-1), "A screenful up"),
        new("PageDown", "", new Intent.Page(1), "A screenful down"),
        new("Ctrl+Home", "", new Intent.Edge(false), "To the first"),
        new("Ctrl+End", "", new Intent.Edge(true), "To the last"),
        new("Ctrl+Up", "", new Intent.Recall(-1), "Bring back the line typed before"),
        new("Ctrl+Down", "", new Intent.Recall(1), "Back towards the line that was being typed"),
    ];
}
