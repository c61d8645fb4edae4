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
        new("PageUp", "", new Intent.Read(-1), "Back in what is told of it"),
        new("PageDown", "", new Intent.Read(1), "On in what is told of it: its family, its history"),
        new("Esc", "back", new Intent.Escape(), "Back to the list"),
    ];

    private static readonly KeyUse[] Acts =
    [
        new("Tab", "mark", new Intent.Do(Want.Mark), "Mark the chosen one, or take its mark off, and go on; what is marked is acted on together, and while anything is, a label that is scanned is marked too"),
        new("Ctrl+W", "all", new Intent.Do(Want.MarkAll), "Mark all that is shown, or take those marks off; Esc lets go of all marks"),
        new("Ctrl+T", "put at..", new Intent.Do(Want.PutAt), "Say where it lies now, or where all that are marked do"),
        new("Ctrl+E", "used..", new Intent.Do(Want.SetState), "Say that a piece, or all that are marked, is used, scrapped, missing, handed over, or back in the yard; strap those that are marked together under one label"),
        new("Ctrl+D", "sound..", new Intent.Do(Want.Judge), "Say how sound it is: sound, fair or poor"),
        new("Ctrl+R", "reserve/free", new Intent.Do(Want.Reserve), "Keep it for one stage; let what is reserved go free"),
        new("Ctrl+L", "label", new Intent.Do(Want.QueueLabel), "Print its label again with the next sheet"),
        new("Ctrl+O", "order", new Intent.Do(Want.SetOrder), "Order the list as entered or by a column; the same column once more turns it round"),
        new("Ctrl+K", "gone", new Intent.Do(Want.ShowGone), "Show used, scrapped, missing and handed-over pieces too, or leave them out"),
    ];
}
