namespace Offcuts.Screens;

/// <summary>The keys of the ledger's place.</summary>
internal static class LedgerKeys
{
    public static IReadOnlyList<KeyUse> Of(LedgerState state) => All;

    private static readonly KeyUse[] All =
    [
        new("Tab", "over time/by stage", new Intent.OtherList(), "Show the money saved along time, or stage by stage"),
        new("Enter", "its plan", new Intent.Enter(), "Go to the plan of the last act of the chosen stage or time"),
        new("Up", "", new Intent.Move(-1), "One up"),
        new("Down", "", new Intent.Move(1), "One down"),
        new("PageUp", "", new Intent.Page(-1), "A few up"),
        new("PageDown", "", new Intent.Page(1), "A few down"),
        new("Ctrl+Home", "", new Intent.Edge(false), "To the first"),
        new("Ctrl+End", "", new Intent.Edge(true), "To the last"),
    ];
}
