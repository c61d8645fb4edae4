namespace Offcuts.Screens;

/// <summary>The keys of the place where the yard is counted.</summary>
internal static class CountKeys
{
    public static IReadOnlyList<KeyUse> Of(CountState state) => state.Preview.Count > 0 ? Preview : state.OnLabels && state.Counted is null ? Labels : All;

    private static readonly KeyUse[] Preview =
    [
        new(["Esc", "Enter"], "back", new Intent.Escape(), "Back to the labels"),
        new("Tab", "next layout", new Intent.OtherList(), "The same label on the next kind of paper"),
        new("Up", "", new Intent.Move(-1), "One up"),
        new("Down", "", new Intent.Move(1), "One down"),
        new("PageUp", "", new Intent.Page(-1), "A screenful up"),
        new("PageDown", "", new Intent.Page(1), "A screenful down"),
    ];

    private static readonly KeyUse[] Labels =
    [
        new("Enter", "look at", new Intent.Enter(), "Show the chosen label as it will be printed, to scale"),
        new("Ctrl+L", "print again", new Intent.Do(Want.QueueLabel), "Print the chosen label again with the next sheet: it was lost or is torn"),
        new("Ctrl+O", "open bundle", new Intent.Do(Want.OpenBundle), "Open the chosen bundle: its pieces lie by themselves and their labels wait; asks first"),
        new("Ctrl+D", "void", new Intent.Do(Want.Void), "Make a spoiled label void: a blank, or a place's; asks first"),
        new("Tab", "places", new Intent.OtherList(), "The places and when they were counted"),
        new("Up", "", new Intent.Move(-1), "One up"),
        new("Down", "", new Intent.Move(1), "One down"),
        new("PageUp", "", new Intent.Page(-1), "A screenful up"),
        new("PageDown", "", new Intent.Page(1), "A screenful down"),
        new("Ctrl+Home", "", new Intent.Edge(false), "To the first"),
        new("Ctrl+End", "", new Intent.Edge(true), "To the last"),
    ];

    private static readonly KeyUse[] All =
    [
        new("Enter", "count", new Intent.Enter(), "Read what the line names: pictures, a folder, a scanner's file; with an empty line, begin one for the chosen place"),
        new("Ctrl+K", "accept", new Intent.Do(Want.Keep), "Make the yard what the count says, as one change that ^Z takes back; asks first"),
        new("Ctrl+T", "partly/whole places", new Intent.Do(Want.OtherPage), "Say that no place was counted whole, so that nothing is missing; again, that they were"),
        new("Ctrl+L", "label place", new Intent.Do(Want.QueueLabel), "Give the chosen place a label; it is printed with the next sheet"),
        new("Tab", "labels", new Intent.OtherList(), "The labels: what waits to be printed, bundles, blanks, places; looked at, printed again, made void"),
        new("Ctrl+X", "drop count", new Intent.Do(Want.TakeOff), "Let go of the count; nothing was changed by it"),
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
