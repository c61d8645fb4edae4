using Offcuts.Core.Faults;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What can be done with the sheets of walls and systems: pure. Writing one opens its form.</summary>
internal static class SheetsModel
{
    /// <summary>True for what is wanted of a sheet.</summary>
    public static bool IsAbout(Want want) => want is Want.Sheets or Want.Systems or Want.NewSheet or Want.EditSheet or Want.CopySheet or Want.RenameSheet or Want.EnterSheet or Want.MoveSheet or Want.DropSheet;

    /// <summary>What to say where another program has dropped or renamed what was asked about; nothing where it is there.</summary>
    public static Notice? Gone(WallsState state, NamedSheet? about) => about switch
    {
        { Kind: SheetKind.Wall } wall when state.WallNamed(wall.Name) is null => Notice.Of([WallFaults.SheetGone("wall", wall.Name)]),
        { Kind: SheetKind.System } system when state.SystemNamed(system.Name) is null => Notice.Of([WallFaults.SheetGone("system", system.Name)]),
        _ => null,
    };

    /// <summary>The next state, and what is asked of the shell.</summary>
    /// <param name="state">The place.</param>
    /// <param name="want">What is wanted.</param>
    /// <param name="about">The sheet that was asked about; else it is the chosen one.</param>
    public static Turn<WallsState> Wanted(WallsState state, Want want, NamedSheet? about = null)
    {
        if (want == Want.Systems) return new(state with { Page = state.Page == WallPage.Systems ? WallPage.Elevation : WallPage.Systems, OnPage = state.Page != WallPage.Systems, Top = 0 });
        if (want == Want.NewSheet) return New(state);
        if (Gone(state, about) is { } gone) return new(state, Notice: gone);
        var system = about is null ? state.Page == WallPage.Systems ? state.ChosenSystem : null : about.Kind == SheetKind.System ? state.SystemNamed(about.Name) : null;
        if (system is not null) return OfSystem(state, system, want);
        if (want == Want.Sheets) return Asked(state, FormAsks.Wall(state.Wall?.Sheet.Name));
        return (about is null ? state.Wall : state.WallNamed(about.Name)) is { } wall ? OfWall(state, wall, want) : new(state, Notice: new Notice(WallsRows.NoWall));
    }

    /// <summary>The answer to a question about a sheet that is there: it goes to that one, whichever is chosen by now.</summary>
    public static Turn<WallsState> Answered(WallsState state, Topic topic, NamedSheet about, string text)
    {
        var closed = state with { Line = state.Line.Close() };
        if (topic == Topic.SheetName) return Renamed(state, closed, about, text);
        if (state.Yard.Stages.Named(text) is not { } stage) return NoStage(state, text);
        return state.WallNamed(about.Name) is { } wall && wall.Stage != stage.Name ? new(closed, new Errand.MoveWall(wall.Sheet.Name, stage.Name)) : new(closed);
    }

    /// <summary>The answer in which stage a new wall is built.</summary>
    public static Turn<WallsState> StageAnswered(WallsState state, string text) =>
        state.Yard.Stages.Named(text) is { } stage ? new(FormModel.Open(state with { Line = state.Line.Close() }, NewWall(state, stage.Name))) : NoStage(state, text);

    private static Turn<WallsState> NoStage(WallsState state, string text) => new(state, Notice: Notice.Of([YardFaults.NoSuchStage(text)]));

    private static Turn<WallsState> OfWall(WallsState state, StageWall wall, Want want)
    {
        var (name, text) = (wall.Sheet.Name, WallText.Write(wall.Sheet));
        var kept = state.Yard.WallPlans.Any(plan => plan.Wall == name);
        return want switch
        {
            Want.EditSheet => new(FormModel.Open(state, SheetForm.With(SheetKind.Wall, text, name, wall.Stage))),
            Want.CopySheet => new(FormModel.Open(state, SheetForm.With(SheetKind.Wall, WallText.Write(wall.Sheet with { Name = FreeName(state, name) }), stage: wall.Stage, isNew: true))),
            Want.RenameSheet => Asked(state, FormAsks.Rename(new(SheetKind.Wall, name)), name),
            Want.EnterSheet => new(state, new Errand.AskToEnter(name)),
            Want.MoveSheet => Asked(state, FormAsks.Move(name, state.Yard.Stages), wall.Stage),
            Want.DropSheet => Asked(state, FormAsks.DropWall(name, state.Yard.Stacked.Count(course => course.Wall == name), kept)),
            _ => new(state),
        };
    }

    private static Turn<WallsState> OfSystem(WallsState state, SystemSheet system, Want want)
    {
        var text = SystemText.Write(system);
        return want switch
        {
            Want.Sheets => Asked(state, FormAsks.System(system.Name)),
            Want.EditSheet => new(FormModel.Open(state, SheetForm.With(SheetKind.System, text, system.Name))),
            Want.CopySheet => new(FormModel.Open(state, SheetForm.With(SheetKind.System, SystemText.Write(system with { Name = FreeSystem(state, system.Name) }), isNew: true))),
            Want.RenameSheet => Asked(state, FormAsks.Rename(new(SheetKind.System, system.Name)), system.Name),
            Want.DropSheet => Asked(state, FormAsks.DropSystem(system.Name)),
            _ => new(state),
        };
    }

    private static Turn<WallsState> New(WallsState state) => state.Yard.Stages.Count switch
    {
        0 => new(state, Notice: new Notice("a wall is built in a stage; enter one first (F4, ^K)")),
        1 => new(FormModel.Open(state, NewWall(state, state.Yard.Stages[0].Name))),
        _ => Asked(state, FormAsks.Stage(state.Yard.Stages), state.Wall?.Stage ?? state.Yard.Stages[0].Name),
    };

    // A single leg, so that there is something to go on from; every figure of it is to be changed.
    private static SheetForm NewWall(WallsState state, string stage)
    {
        var system = state.Wall?.Sheet.System ?? state.ChosenSystem?.Name ?? SystemSheet.Generic.Name;
        var named = $"wall             {FreeName(state, "new wall")}\nsystem           {system}\n";
        var rest = RoundLengths.In(state.Yard.Unit, "height           8'\ncore             6\"\nclosed           no\nleg A: 12' end\n");
        return SheetForm.With(SheetKind.Wall, named + rest, stage: stage, isNew: true);
    }

    private static Turn<WallsState> Renamed(WallsState state, WallsState closed, NamedSheet about, string name)
    {
        Errand.SaveSheet? save = null;
        if (about.Kind == SheetKind.System && state.SystemNamed(about.Name) is { } system)
            save = name == system.Name ? null : new Errand.SaveSheet(SheetKind.System, "", new SheetEdit(SystemText.Write(system with { Name = name }), system.Name, SystemText.Write(system)));
        else if (state.WallNamed(about.Name) is { } wall)
            save = name == wall.Sheet.Name ? null : new Errand.SaveSheet(SheetKind.Wall, wall.Stage, new SheetEdit(WallText.Write(wall.Sheet with { Name = name }), wall.Sheet.Name, WallText.Write(wall.Sheet)));
        return name.Length == 0 ? new(state, Notice: new Notice("write a name", Tone.Fault)) : new(closed, save, Notice.None);
    }

    private static string FreeName(WallsState state, string name) => Free(name, SheetNames.Longest, one => state.Yard.Walls.Any(wall => Same(wall.Sheet.Name, one)));

    private static string FreeSystem(WallsState state, string name) => Free(name, SheetNames.LongestSystem, one => state.Yard.Systems.Any(system => Same(system.Name, one)));

    // The name where nothing has it, else with a number behind it that leaves it short enough.
    private static string Free(string name, int longest, Func<string, bool> taken) =>
        Enumerable.Range(1, 10_000).Select(number => number == 1 ? name : $"{name[..Math.Min(name.Length, longest - 5)].TrimEnd()} {number}").First(one => !taken(one));

    private static Turn<WallsState> Asked(WallsState state, Ask ask, string given = "") => new(state with { Line = state.Line.Open(ask, given) });

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
