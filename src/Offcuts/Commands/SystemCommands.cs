using System.CommandLine;
using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>System sheets: the numbers of a way to build walls of foam.</summary>
internal static class SystemCommands
{
    /// <summary>The command <c>system</c> and what is under it.</summary>
    public static IEnumerable<Command> All(CommandContext context) =>
    [
        context.Command(
            "system",
            "Sheets of building systems: panels, ties, corners, as your supplier's paper has them",
            ["offcuts system show > ours.txt", "offcuts system import ours.txt"],
            List(context),
            Show(context),
            Import(context),
            Export(context),
            Drop(context)),
    ];

    private static Command List(CommandContext context)
    {
        var command = context.Command("list", "List the systems", ["offcuts system list"]);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var unit = yard.Settings().Unit;
            var walls = yard.Walls();
            Tables.Write(context.World, ["System", "Panel", ">Interval", ">Ties every", "Walls"], new ChangeSystems(yard).All().Select(sheet => (IReadOnlyList<string>)
            [
                sheet.Name,
                $"{sheet.PanelLength.ToText(unit)} x {sheet.PanelHeight.ToText(unit)} x {sheet.Thickness.ToText(unit)}",
                sheet.Interval.ToText(unit),
                sheet.TieSpacing.ToText(unit),
                string.Join(", ", walls.Where(wall => string.Equals(wall.Sheet.System, sheet.Name, StringComparison.OrdinalIgnoreCase)).Select(wall => wall.Sheet.Name)),
            ]));
            return Exit.Done;
        }));
        return command;
    }

    private static Command Show(CommandContext context)
    {
        var name = Optional();
        var json = CommandContext.Json();
        var command = context.Command("show", "Show a system's sheet as its file has it", ["offcuts system show", "offcuts system show \"generic, invented\" --json"], name, json);
        // The sheet that ships is there before any yard is: it is what one begins from.
        command.SetAction(parse => context.WithYard(parse, yard =>
        {
            var found = One(new ChangeSystems(yard), parse.GetValue(name));
            if (!found.TryGet(out var sheet)) return context.Refuse(found.Faults);
            context.SayAsItIs(parse.GetValue(json) ? WallJson.Write(sheet) : SystemText.Write(sheet).TrimEnd());
            return Exit.Done;
        }));
        return command;
    }

    private static Command Import(CommandContext context)
    {
        var file = new Argument<string>("file") { Description = "A system sheet (text); - for standard input" };
        var (replace, yes) = (CommandContext.Replace(), CommandContext.GiveUp());
        var command = context.Command("import", "Take a system's sheet in from a file, whole or not at all", ["offcuts system import ours.txt", "offcuts system import ours.txt --replace"], file, replace, yes);
        command.SetAction(parse => context.WithYard(parse, yard => context.Tell(
            TextLines.Open(context.World, parse.GetValue(file)!, (stream, name) => new ChangeSystems(yard).Import(stream, name, parse.GetValue(replace), parse.GetValue(yes))))));
        return command;
    }

    private static Command Export(CommandContext context)
    {
        var name = new Argument<string>("system") { Description = "Name of the system" };
        var file = new Argument<string>("file") { Description = "Where to write it; - for standard output" };
        var command = context.Command("export", "Write a system's sheet to a file", ["offcuts system export \"generic, invented\" ours.txt"], name, file);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var found = new ChangeSystems(yard).Find(parse.GetValue(name)!);
            return found.TryGet(out var sheet) ? TextLines.Write(context, parse.GetValue(file)!, writer => writer.Write(SystemText.Write(sheet))) : context.Refuse(found.Faults);
        }));
        return command;
    }

    private static Command Drop(CommandContext context)
    {
        var name = new Argument<string>("system") { Description = "Name of the system" };
        var command = context.Command("drop", "Drop a system's sheet of which no wall is built", ["offcuts system drop ours"], name);
        command.SetAction(parse => context.WithYard(parse, yard => context.Tell(new ChangeSystems(yard).Drop(parse.GetValue(name)!))));
        return command;
    }

    private static Argument<string?> Optional() => new("system") { Description = "Name of the system; none where there is only one", Arity = ArgumentArity.ZeroOrOne };

    private static Result<SystemSheet> One(ChangeSystems systems, string? name) =>
        name is not null ? systems.Find(name) : systems.All() is [var only] ? only : WallFaults.ManySystems();
}
