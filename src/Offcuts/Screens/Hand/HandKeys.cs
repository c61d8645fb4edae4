namespace Offcuts.Screens;

/// <summary>The keys of the hand-over's place.</summary>
internal static class HandKeys
{
    public static IReadOnlyList<KeyUse> Of(HandState state) => All;

    private static readonly KeyUse[] All =
    [
        new("Ctrl+R", "free", new Intent.Do(Want.Match), "Look what may go: no stage gets worse without all of it together, in what is filled and what is spent"),
        new("Enter", "mark", new Intent.Enter(), "Mark the chosen one to go, or take the mark off; before it was looked up, look what is free"),
        new("Ctrl+W", "all", new Intent.Do(Want.MarkAll), "Mark all that is shown and free; pressed again, none of it"),
        new("Ctrl+L", "loads", new Intent.Do(Want.Loads), "Make up loads of what is marked for your beds: the fewest trips"),
        new("Ctrl+O", "theirs..", new Intent.Do(Want.Theirs), "Match what is free against their list of cuts or their wall, and say what that saves them; what serves is marked"),
        new("Ctrl+B", "bed..", new Intent.Do(Want.SetBed), "Describe a bed or trailer, or describe one of that name anew"),
        new("Ctrl+X", "weigh..", new Intent.Do(Want.Weigh), "Say what one of something weighs that nothing tells the weight of, for the loads"),
        new("Ctrl+D", "pdf", new Intent.Do(Want.ListFile), "Write the list as a PDF: of the chosen hand-over, or of what is marked, with the loads on their page"),
        new("Ctrl+K", "hand over..", new Intent.Do(Want.HandOver), "Hand over what is marked: a gift, a loan or a sale, with a file for their Offcuts"),
        new("Ctrl+E", "confirm..", new Intent.Do(Want.Confirm), "On the page of what went: the other side has it, by its receipt or by word"),
        new("Ctrl+T", "back..", new Intent.Do(Want.ComeBack), "On the page of what went: the chosen loan is back, whole or in part, or settled because it does not come back as it went"),
        new("Tab", "page", new Intent.OtherList(), "What is free, the loads, what went, what serves them"),
        new("Up", "", new Intent.Move(-1), "One up"),
        new("Down", "", new Intent.Move(1), "One down"),
        new("PageUp", "", new Intent.Page(-1), "A screenful up"),
        new("PageDown", "", new Intent.Page(1), "A screenful down"),
        new("Ctrl+Home", "", new Intent.Edge(false), "To the first"),
        new("Ctrl+End", "", new Intent.Edge(true), "To the last"),
    ];
}
