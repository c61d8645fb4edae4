namespace Offcuts.Screens;

/// <summary>The keys of the day's place.</summary>
internal static class TodayKeys
{
    public static IReadOnlyList<KeyUse> Of(TodayState state) => All;

    private static readonly KeyUse[] All =
    [
        new("Enter", "go there", new Intent.Enter(), "Go to the place where the chosen matter is dealt with; with words or a code on the line, look for them in the yard"),
        new("Up", "", new Intent.Move(-1), "One up"),
        new("Down", "", new Intent.Move(1), "One down"),
        new("PageUp", "", new Intent.Page(-1), "A few up"),
        new("PageDown", "", new Intent.Page(1), "A few down"),
        new("Ctrl+Home", "", new Intent.Edge(false), "To the first"),
        new("Ctrl+End", "", new Intent.Edge(true), "To the last"),
        // The head of a narrow screen has no room for these two.
        new("F11", "count", new Intent.GoTo(Place.Count), "Count: is it still there"),
        new("F12", "hand over", new Intent.GoTo(Place.Hand), "Hand over: what can go to a relative's build, loads, what is due back"),
    ];
}
