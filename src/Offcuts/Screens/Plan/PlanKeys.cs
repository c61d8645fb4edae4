namespace Offcuts.Screens;

/// <summary>The keys of the plan's place.</summary>
internal static class PlanKeys
{
    public static IReadOnlyList<KeyUse> Of(PlanState state) =>
        state.Aside is { } aside ? aside.Order is null ? Reading : [.. Reading, Order with { Says = aside.Order switch { PlanOrder.Elevation => "by place", PlanOrder.ByPlace => "by cut", _ => "by piece" } }] : state.Matching ? [Stop, .. Lists, .. Acts] : [.. Lists, .. Acts];

    private static readonly KeyUse Stop = new("Esc", "stop matching", new Intent.Escape(), "Stop looking for a better plan; the best so far is taken");

    private static readonly KeyUse Order = new("Ctrl+D", "order", new Intent.Do(Want.OtherPage), "The plan by the places where its pieces are fetched, then by the cuts that come of them, then by piece again; of a plan that fills a wall first the wall's elevation");

    private static readonly KeyUse[] Reading =
    [
        new(["Esc", "Enter"], "back to the plan", new Intent.Escape(), "Back to the plan"),
        new("Up", "scroll", new Intent.Move(-1), "Up"),
        new("Down", "", new Intent.Move(1), "Down"),
        new("PageUp", "", new Intent.Page(-1), "A screenful up"),
        new("PageDown", "", new Intent.Page(1), "A screenful down"),
    ];

    private static readonly KeyUse[] Lists =
    [
        new("Enter", "cut", new Intent.Enter(), "Say that the chosen piece is cut; with a code or number on the line, go to that piece"),
        new("Up", "", new Intent.Move(-1), "The piece before"),
        new("Down", "", new Intent.Move(1), "The next piece, then what to buy, what is unfilled and what to mind"),
        new("PageUp", "", new Intent.Page(-1), "Several pieces up"),
        new("PageDown", "", new Intent.Page(1), "Several pieces down"),
        new("Ctrl+Home", "", new Intent.Edge(false), "To the first piece"),
        new("Ctrl+End", "", new Intent.Edge(true), "To the end"),
    ];

    private static readonly KeyUse[] Acts =
    [
        new("Ctrl+E", "otherwise", new Intent.Do(Want.CutOtherwise), "Say what really came of the chosen piece: which cuts came out right, what is left"),
        new("Ctrl+O", "all", new Intent.Do(Want.CutAll), "Say that everything that waits is cut as planned"),
        new("Ctrl+R", "match", new Intent.Do(Want.Match), "Find the best plan for what is still lacking"),
        new("Ctrl+S", "buy", new Intent.Do(Want.Buying), "The store: allow buying, or match from the yard alone"),
        new("Ctrl+K", "keep", new Intent.Do(Want.Keep), "Keep the plan that was found, so that it can be carried out"),
        new("Ctrl+L", "sheet", new Intent.Do(Want.Sheet), "Write the cut sheet as a PDF file"),
        new("Ctrl+W", "why", new Intent.Do(Want.Why), "Say why a cut (by name, of the chosen piece, or unfilled) is filled as it is, and what would change that"),
        new("Ctrl+B", "compare", new Intent.Do(Want.Compare), "Three plans side by side to pick from: the best, the fewest saw cuts at the same spend, nothing bought"),
        new("Ctrl+T", "pin..", new Intent.Do(Want.Wish), "Pin a piece to a cut, leave one alone, or let it go again; the next match keeps to it"),
        Order,
        new("Ctrl+X", "give up", new Intent.Do(Want.TakeOff), "Give up what still waits in the plan: its pieces and hardware are free again, what is cut stays done; asks first"),
        new("Tab", "other plan", new Intent.Do(Want.OtherPlan), "Another plan that the yard keeps"),
    ];
}
