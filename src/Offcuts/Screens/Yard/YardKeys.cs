namespace Offcuts.Screens;

/// <summary>The keys of the yard's place.</summary>
internal static class YardKeys
{
    public static IReadOnlyList<KeyUse> Of(YardState state) => state.Closer ? [.. Closer, .. Acts] : [.. List, .. Acts];

    private static readonly KeyUse[] List =
    [
        new("Enter", "closer", new Intent.Enter(), "Show the chosen one alone, with its QR symbol; after a scan, the one that was scanned"),
        new("Up", "", new Intent.Move(-1), "One up"),
        new("Down", "", new Intent.Move(1), "One down"),
        new("PageUp", "", new Intent.Page(-1), "A screenful up"),
        new("PageDown", "", new Intent.Page(1), "A screenful down"),
        new("Ctrl+Home", "", new Intent.Edge(false), "To the first"),
        new("Ctrl+End", "", new Intent.Edge(true), "To the last"),
    ];

    private static readonly KeyUse[] Closer =
    [
        new("Enter", "list", new Intent.Enter(), "Back to the list"),
        new("Up", "", new Intent.Move(-1), "The one before"),
        new("Down", "", new Intent.Move(1), "The next one"),
        new("Esc", "back", new Intent.Escape(), "Back to the list"),
    ];

    private static readonly KeyUse[] Acts =
    [
        new("Ctrl+E", "used, scrap..", new Intent.Do(Want.SetState), "Say that the piece is used, scrapped, missing, handed over, or back in the yard"),
        new("Ctrl+R", "reserve/free", new Intent.Do(Want.Reserve), "Keep the piece for one stage; let a reserved one go free"),
        new("Ctrl+L", "label", new Intent.Do(Want.QueueLabel), "Print its label again with the next sheet"),
        new("Ctrl+O", "order", new Intent.Do(Want.SetOrder), "Order the list by entry, material, length, place or condition"),
        new("Ctrl+K", "gone ones", new Intent.Do(Want.ShowGone), "Show used, scrapped, missing and handed-over pieces too, or leave them out"),
    ];
}
