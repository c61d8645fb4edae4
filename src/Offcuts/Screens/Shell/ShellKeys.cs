namespace Offcuts.Screens;

/// <summary>
/// The keys that work now, from the one list each place declares: what is bound, what stands at the foot, and what the help
/// explains.
/// </summary>
internal static class ShellKeys
{
    /// <summary>The keys that work at every place.</summary>
    public static IReadOnlyList<KeyUse> Everywhere { get; } =
    [
        new(["F1", "Ctrl+G"], "help", new Intent.Help(), "What can be done at the place you are in"),
        new("Ctrl+F", "code", new Intent.Jump(), "Go to a code: scan or type it, from wherever you are, and what it hangs on is shown"),
        new(["F10", "Ctrl+A"], "", new Intent.GoTo(Place.Today), "Today: what matters now"),
        new("F2", "", new Intent.GoTo(Place.Yard), "The yard: everything that lies in it"),
        new("F3", "", new Intent.GoTo(Place.Strip), "Strip: catalogue what comes off a form, print labels"),
        new("F4", "", new Intent.GoTo(Place.Stages), "The stages and what they need"),
        new("F5", "", new Intent.GoTo(Place.Plan), "The plan: what is cut from what"),
        new("F6", "", new Intent.GoTo(Place.Walls), "The walls: their rows drawn, what they ask for, what fits a place"),
        new("F7", "", new Intent.GoTo(Place.Ledger), "The ledger: what was saved, along time and by stage"),
        new("F8", "", new Intent.GoTo(Place.Prices), "The prices of new lengths"),
        new("F9", "", new Intent.GoTo(Place.Settings), "The settings: unit, kerf, keep lengths, rules of use, money, foam in the sun"),
        new("F11", "", new Intent.GoTo(Place.Count), "Count: is it still there; where the terminal keeps F11 for itself, ^P from Today"),
        new("F12", "", new Intent.GoTo(Place.Hand), "Hand over: what can go to a relative's build, loads, what is due back; where the terminal keeps F12 for itself, ^P from Today"),
        new("Ctrl+N", "", new Intent.Along(1), "The next place"),
        new("Ctrl+P", "", new Intent.Along(-1), "The place before"),
        new("Ctrl+Z", "undo", new Intent.TakeBack(), "Take back the last change of the yard, again and again"),
        new("Ctrl+Y", "redo", new Intent.DoAgain(), "Do again what was taken back last, where nothing new was done since"),
        new(["Ctrl+Q", "Ctrl+C"], "leave", new Intent.Leave(), "Leave the program; asks first where something would be lost"),
    ];

    private static readonly KeyUse Back = new("Esc", "back", new Intent.Escape(), "One step back; on a line that holds something, a second press clears it");

    /// <summary>Works on every line, and while an answer is written.</summary>
    public static KeyUse Clear { get; } = new(
        "Ctrl+U",
        "clear",
        new Intent.Type(""),
        "Clear the line. An answer that is offered stands marked: typing takes its place, an arrow, Home, End or Backspace keeps it to be changed");

    private static readonly KeyUse[] Reading =
    [
        new(["Esc", "F1", "Ctrl+G", "Enter"], "back", new Intent.Escape(), "Back to the place"),
        new("Up", "scroll", new Intent.Move(-1), "Up"),
        new("Down", "", new Intent.Move(1), "Down"),
        new("PageUp", "", new Intent.Page(-1), "A screenful up"),
        new("PageDown", "", new Intent.Page(1), "A screenful down"),
    ];

    private static readonly KeyUse[] Writing =
    [
        new("Enter", "take it", new Intent.Enter(), "Take the answer"),
        Clear,
        Back,
    ];

    /// <summary>The keys of a place.</summary>
    public static IReadOnlyList<KeyUse> OfPlace(ShellState state) => state.Place switch
    {
        Place.Today => TodayKeys.Of(state.Today),
        Place.Ledger => LedgerKeys.Of(state.Ledger),
        Place.Prices => PricesKeys.Of(state.Prices),
        Place.Settings => SettingsKeys.Of(state.Settings),
        Place.Hand => HandKeys.Of(state.Hand),
        Place.Count => CountKeys.Of(state.Count),
        Place.Yard => YardKeys.Of(state.Yard),
        Place.Strip => StripKeys.Of(state.Strip),
        Place.Stages => StagesKeys.Of(state.Stages),
        Place.Walls => WallsKeys.Of(state.Walls),
        _ => PlanKeys.Of(state.Plan),
    };

    /// <summary>The keys that work now, in the order in which they are looked up and shown.</summary>
    public static IReadOnlyList<KeyUse> Now(ShellState state)
    {
        if (state.Unread) return [.. Everywhere.Where(key => key.Means is Intent.Leave)];
        if (Asking(state) is { } ask) return [.. ask.Choices.Select(choice => new KeyUse(choice.Letter.ToString(), choice.Says, new Intent.Answer(choice.Letter), choice.Says)), Back];
        if (state.Helping) return Reading;
        if (state.Line.Ask is Ask.Write { Topic: Topic.Correct } && state.Jump is null) return [.. StripKeys.Correcting, Clear, Back, .. Everywhere];
        if (state.Line.Ask is Ask.Write) return [.. Writing, .. Everywhere];
        return [.. OfPlace(state), .. Beside(state), Clear with { Says = "" }, Back with { Says = "" }];
    }

    /// <summary>The keys that work at every place, less those that the place has taken for something of its own.</summary>
    public static IReadOnlyList<KeyUse> Beside(ShellState state)
    {
        var taken = OfPlace(state).SelectMany(use => use.Chords).ToHashSet();
        return [.. Everywhere.Where(use => !use.Chords.Any(taken.Contains))];
    }

    /// <summary>The question that a letter answers now, if any.</summary>
    public static Ask.Choose? Asking(ShellState state) => state.Ask ?? (state.Helping ? null : state.Line.Ask as Ask.Choose);
}
