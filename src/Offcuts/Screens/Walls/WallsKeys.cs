namespace Offcuts.Screens;

/// <summary>The keys of the place of the walls.</summary>
internal static class WallsKeys
{
    public static IReadOnlyList<KeyUse> Of(WallsState state) => state.Form is not null ? FormKeys.All : state.Filling ? [Stop, .. All] : All;

    private static readonly KeyUse Stop = new("Esc", "stop filling", new Intent.Escape(), "Stop looking for a better laying; the best so far is taken");

    private static readonly KeyUse[] All =
    [
        new("Enter", "open", new Intent.Enter(), "Open the chosen figure of the takeoff, or close it; edit the chosen system; with a place on the line, find what fits it"),
        new("Tab", "page", new Intent.OtherList(), "The arrows move among the walls, or on the page of the chosen one"),
        new("Up", "", new Intent.Move(-1), "One up"),
        new("Down", "", new Intent.Move(1), "One down"),
        new("PageUp", "", new Intent.Page(-1), "A screenful up"),
        new("PageDown", "", new Intent.Page(1), "A screenful down"),
        new("Ctrl+Home", "", new Intent.Edge(false), "To the beginning"),
        new("Ctrl+End", "", new Intent.Edge(true), "To the end"),
        new("Ctrl+E", "elevation", new Intent.Do(Want.Elevation), "Each row of the wall drawn: courses, joints, ties, openings, and which piece lies where once it is planned"),
        new("Ctrl+T", "takeoff", new Intent.Do(Want.Counts), "What the wall asks for, figure by figure, and whether what is on hand will do"),
        new("Ctrl+D", "staging", new Intent.Do(Want.Staging), "Which pieces go to which leg, by the place where they lie, and what to cut first"),
        new("Ctrl+R", "fill", new Intent.Do(Want.Fill), "Find the best laying of the wall from what is free and what can be bought"),
        new("Ctrl+K", "keep", new Intent.Do(Want.Keep), "Keep the laying that was found, to be cut and stacked"),
        new("Ctrl+O", "stacked", new Intent.Do(Want.Stack), "Say which courses are stacked as the kept laying has them: their cuts are booked, what is left comes back to the yard"),
        new("Ctrl+S", "buying", new Intent.Do(Want.Buying), "The store: allow buying, or fill from the yard alone"),
        new("Ctrl+L", "pdf", new Intent.Do(Want.Sheet), "Write the rows to scale, what goes where and the cautions as a PDF file; with the cut sheet once the wall is filled"),
        new("Ctrl+W", "wall..", new Intent.Do(Want.Sheets), "The sheet of a wall: write a new one, edit, copy, rename, move or drop the chosen one, or enter what it is cut and counted among the needs of its stage; on the page of the systems that of a system"),
        new("Ctrl+B", "systems", new Intent.Do(Want.Systems), "The systems that walls are built of, and their sheets; once more leads back to the wall"),
    ];
}
