namespace Offcuts.Screens;

/// <summary>The keys of the catalogue line.</summary>
internal static class StripKeys
{
    public static IReadOnlyList<KeyUse> Of(StripState state) => [.. All, state.OnQueue ? LastPieces : PrintQueue];

    private static readonly KeyUse PrintQueue = new("Tab", "print queue", new Intent.OtherList(), "The labels that wait, in the order in which they will be printed, instead of the last pieces; and back");

    private static readonly KeyUse LastPieces = PrintQueue with { Says = "last pieces" };

    private static readonly KeyUse[] All =
    [
        new("Enter", "save", new Intent.Enter(), "Save the line as it was understood; after a scanned label, wait for the rest of the line"),
        new("Up", "earlier line", new Intent.Recall(-1), "Bring back the line typed before, to change it and save it again"),
        new("Down", "", new Intent.Recall(1), "Back towards the line that was being typed"),
        new("Ctrl+E", "correct", new Intent.Do(Want.Correct), "Correct the line saved last, or one before it: its pieces keep their codes and labels, and what stands on the line waits"),
        new("Ctrl+L", "print labels", new Intent.Do(Want.PrintLabels), "Write the labels that wait to a PDF file; print that at 100 %"),
        new("Ctrl+K", "blank labels", new Intent.Do(Want.PrintBlanks), "Write labels with new codes to tie on now and scan later"),
    ];

    /// <summary>The keys while a saved line is corrected.</summary>
    public static IReadOnlyList<KeyUse> Correcting { get; } =
    [
        new("Enter", "correct it", new Intent.Enter(), "Save what the line should have said"),
        new(["Up", "Ctrl+E"], "line before", new Intent.Recall(-1), "The line saved before that one"),
        new("Down", "line after", new Intent.Recall(1), "The line saved after that one"),
    ];
}
