namespace Offcuts.Core.Faults;

/// <summary>What is said where the program itself fails.</summary>
public static class AppFaults
{
    public static Fault Failed(string what) => new($"offcuts failed and changed nothing more: {TextRules.Harmless(what)}");

    public static Fault ReportLies(string path) => new($"what was saved is whole; where it failed is told in {TextRules.Harmless(path)}");

    public static Fault TypedLies() => new("what was typed and not saved yet stands there too, to be typed again");

    public static Fault TypedWas() => new("what was typed and not saved yet:");

    public static Fault NoReport() => new("what was saved is whole; there was no room for a report of where it failed");

    public static Fault RefusedAfterLeaving(string what, string why) =>
        new($"refused after the screen was left, {TextRules.Harmless(what)}: {TextRules.Harmless(why)}");
}
