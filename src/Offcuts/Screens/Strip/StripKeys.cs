namespace Offcuts.Screens;

/// <summary>The keys of the catalogue line.</summary>
internal static class StripKeys
{
    public static IReadOnlyList<KeyUse> Of(StripState state) => All;

    private static readonly KeyUse[] All =
    [
        new("Enter", "save", new Intent.Enter(), "Save the line as it was understood; after a scanned label, wait for the rest of the line"),
        new("Up", "earlier line", new Intent.Recall(-1), "Bring back the line typed before, to change it and save it again"),
        new("Down", "", new Intent.Recall(1), "Back towards the line that was being typed"),
        new("Ctrl+L", "print labels", new Intent.Do(Want.PrintLabels), "Write the labels that wait to a PDF file; print that at 100 %"),
        new("Ctrl+K", "blank labels", new Intent.Do(Want.PrintBlanks), "Write labels with new codes to tie on now and scan later"),
    ];
}
