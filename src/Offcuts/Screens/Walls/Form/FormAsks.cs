using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Screens;

/// <summary>The questions of the form of a sheet, and those that lead to it.</summary>
internal static class FormAsks
{
    public static Ask Add(SheetForm form, LengthUnit unit) => new Ask.Choose("What is added?", [.. FormAdds.Of(form, unit).Select(add => new Choice(add.Letter, add.Says) { Add = add })]);

    public static Ask Leave(SheetForm form) => new Ask.Choose(
        $"Leave the sheet{(form.Of is { } of ? $" of {of}" : "")}? What was typed is not saved",
        [new('s', "save it", Want: Want.Keep), new('d', "drop what was typed", Want: Want.LeaveForm)]);

    public static Ask Stale(SheetForm form, bool gone) => new Ask.Choose(
        gone ? $"Another program has dropped {form.Of} since it was opened here. What is done with what was typed?" : $"Another program has changed {form.Of} since it was opened here. What is done with what was typed?",
        gone
            ? [new('s', "save it as a new one", Want: Want.SaveOver)]
            : [new('s', "save it over the other", Want: Want.SaveOver), new('o', "take up the other; undo brings this back", Want: Want.TakeOther)]);

    public static Ask GiveUp(string what) => new Ask.Choose($"Save it? {what}", [new('y', "save it", Want: Want.SaveAnyway)]);

    /// <summary>What can be done with the sheet of the chosen wall.</summary>
    public static Ask Wall(string? chosen) => new Ask.Choose(
        chosen is null ? "The sheet of a wall" : $"The sheet of the wall {chosen}",
        [
            new('n', "write a new one", Want: Want.NewSheet),
            .. chosen is null ? Array.Empty<Choice>() :
            [
                new('e', "edit it", Want: Want.EditSheet), new('c', "write a copy", Want: Want.CopySheet), new('r', "rename it", Want: Want.RenameSheet),
                new('s', "enter its cuts in its stage", Want: Want.EnterSheet), new('m', "build it in another stage", Want: Want.MoveSheet), new('d', "drop it", Want: Want.DropSheet),
            ],
        ])
    { About = chosen is null ? null : new(SheetKind.Wall, chosen) };

    /// <summary>What can be done with the chosen system's sheet.</summary>
    public static Ask System(string chosen) => new Ask.Choose(
        $"The sheet of the system {chosen}",
        [
            new('e', "edit it", Want: Want.EditSheet), new('c', "write a copy", Want: Want.CopySheet), new('r', "rename it", Want: Want.RenameSheet), new('d', "drop it", Want: Want.DropSheet),
        ])
    { About = new(SheetKind.System, chosen) };

    public static Ask Rename(NamedSheet sheet) =>
        new Ask.Write($"What is the {(sheet.Kind == SheetKind.Wall ? "wall" : "system")} {sheet.Name} to be called? What is kept of it follows", Topic.SheetName, "name") { About = sheet };

    public static Ask Stage(IReadOnlyList<Stage> stages) =>
        new Ask.Write($"In which stage is the new wall built? {string.Join(", ", stages.Select(stage => stage.Name))}", Topic.WallStage, "stage");

    public static Ask Move(string wall, IReadOnlyList<Stage> stages) =>
        new Ask.Write($"In which stage is {wall} built? {string.Join(", ", stages.Select(stage => stage.Name))}; how it was to be filled is given up", Topic.WallMove, "stage") { About = new(SheetKind.Wall, wall) };

    public static Ask DropWall(string wall, int stacked, bool kept) => new Ask.Choose(
        $"Drop the wall {wall}?{(kept ? " How it was to be filled is given up." : "")}{(stacked > 0 ? $" {stacked} of its courses are stacked or cut." : "")} What it entered among the needs of its stage stays",
        [new('y', "drop it", new Errand.DropWall(wall))]);

    public static Ask DropSystem(string system) => new Ask.Choose($"Drop the sheet of the system {system}?", [new('y', "drop it", new Errand.DropSystem(system))]);
}
