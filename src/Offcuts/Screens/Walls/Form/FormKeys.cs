namespace Offcuts.Screens;

/// <summary>The keys of the form of a sheet.</summary>
internal static class FormKeys
{
    public static IReadOnlyList<KeyUse> All { get; } =
    [
        new("Enter", "next line", new Intent.Enter(), "On to the next line; behind the last one, an empty line more"),
        new("Tab", "next fault", new Intent.OtherList(), "To the next line where something is wrong"),
        new("Up", "", new Intent.Move(-1), "One line up"),
        new("Down", "", new Intent.Move(1), "One line down"),
        new("PageUp", "", new Intent.Page(-1), "A screenful up"),
        new("PageDown", "", new Intent.Page(1), "A screenful down"),
        new("Ctrl+Home", "", new Intent.Edge(false), "To the first line"),
        new("Ctrl+End", "", new Intent.Edge(true), "To the last line"),
        new("Ctrl+O", "add..", new Intent.Do(Want.AddLine), "Add a leg, a tee, a door, a window or whatever else the sheet may tell, filled in to be changed"),
        new("Ctrl+D", "double", new Intent.Do(Want.DoubleLine), "The chosen line once more; a leg with all that stands below it"),
        new("Ctrl+X", "drop", new Intent.Do(Want.DropLine), "Drop the chosen line; a leg with all that stands below it"),
        new("Ctrl+Up", "", new Intent.Recall(-1), "Move the chosen line, or leg, up"),
        new("Ctrl+Down", "", new Intent.Recall(1), "Move the chosen line, or leg, down"),
        new("Ctrl+Z", "undo", new Intent.Do(Want.StepBack), "Take back the last step in the form, again and again"),
        new("Ctrl+Y", "redo", new Intent.Do(Want.StepAhead), "Do again what was taken back last in the form"),
        new("Ctrl+K", "save", new Intent.Do(Want.Keep), "Save the sheet: one entry in the yard's history"),
        new("Esc", "leave form", new Intent.Escape(), "Leave the form; asks first where something typed would be lost"),
    ];
}
