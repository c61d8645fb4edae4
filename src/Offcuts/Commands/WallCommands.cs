using System.CommandLine;
using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Walls;
using Offcuts.UseCases;
using Offcuts.Walls;

namespace Offcuts.Commands;

/// <summary>Walls of stages: their sheets, their runs, and what they ask for.</summary>
internal static class WallCommands
{
    /// <summary>The command <c>wall</c> and what is under it.</summary>
    public static IEnumerable<Command> All(CommandContext context) =>
    [
        context.Command(
            "wall",
            "The walls of the stages: what they are made of and what they ask for",
            ["offcuts wall import walls garage.txt", "offcuts wall takeoff garage"],
            List(context),
            Show(context),
            Import(context),
            Export(context),
            Drop(context),
            TakeOff(context),
            Runs(context),
            WallDrawCommand.Of(context),
            WallFillCommands.Fill(context),
            WallFillCommands.Stacked(context),
            Enter(context)),
    ];

    private static Argument<string> WallName() => new("wall") { Description = "Name of the wall" };

    private static Command List(CommandContext context)
    {
        var command = context.Command("list", "List the walls", ["offcuts wall list"]);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var unit = yard.Settings().Unit;
            var walls = yard.Walls();
            if (walls.Count == 0) context.Say("No wall yet. Write its sheet, then: offcuts wall import STAGE FILE");
            else
                Tables.Write(context.World, ["Wall", "Stage", "System", ">Legs", ">Height", ">Core"], walls.Select(wall => (IReadOnlyList<string>)
                [
                    wall.Sheet.Name,
                    wall.Stage,
                    wall.Sheet.System,
                    wall.Sheet.Legs.Count.ToString(CultureInfo.InvariantCulture),
                    wall.Sheet.Height.ToText(unit),
                    wall.Sheet.CoreWidth.ToText(unit),
                ]));
            return Exit.Done;
        }));
        return command;
    }

    private static Command Show(CommandContext context)
    {
        var name = WallName();
        var json = CommandContext.Json();
        var command = context.Command("show", "Show a wall's sheet as its file has it, and what to mind", ["offcuts wall show garage"], name, json);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var found = new ChangeWalls(yard).Find(parse.GetValue(name)!);
            if (!found.TryGet(out var wall)) return context.Refuse(found.Faults);
            var lies = new ChangeWalls(yard).Lay(wall.Sheet).TryGet(out var laid);
            if (parse.GetValue(json)) context.SayAsItIs(WallJson.Write(wall, [.. lies ? Unfillable.Of(laid!) : []]));
            else
            {
                context.SayAsItIs(WallText.Write(wall.Sheet));
                if (lies) SayAll(context, laid!.ToLookAt);
                SayAll(context, TakeoffText.Cautions(wall.Sheet.Steel is not null));
            }

            return Exit.Done;
        }));
        return command;
    }

    private static Command Import(CommandContext context)
    {
        var stage = new Argument<string>("stage") { Description = "Name of the stage it is built in" };
        var file = new Argument<string>("file") { Description = "A wall sheet (text); - for standard input" };
        var (replace, yes) = (CommandContext.Replace(), CommandContext.GiveUp());
        var command = context.Command(
            "import",
            "Take a wall in from a file, whole or not at all; one that can't be built is refused with the place",
            ["offcuts wall import walls garage.txt", "offcuts wall import walls garage.txt --replace"],
            stage, file, replace, yes);
        command.SetAction(parse => context.WithYard(parse, yard =>
        {
            var taken = TextLines.Open(context.World, parse.GetValue(file)!, (stream, name) => new ChangeWalls(yard).Take(parse.GetValue(stage)!, stream, name, parse.GetValue(replace), parse.GetValue(yes)));
            var exit = context.Tell(taken.Then<string>(one => one.Told));
            if (taken.TryGet(out var wall)) SayAll(context, wall.ToLookAt);
            return exit;
        }));
        return command;
    }

    private static Command Export(CommandContext context)
    {
        var name = WallName();
        var file = new Argument<string>("file") { Description = "Where to write it; - for standard output" };
        var command = context.Command("export", "Write a wall's sheet to a file", ["offcuts wall export garage garage.txt"], name, file);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var found = new ChangeWalls(yard).Find(parse.GetValue(name)!);
            if (!found.TryGet(out var wall)) return context.Refuse(found.Faults);
            var written = TextLines.Write(context, parse.GetValue(file)!, writer => writer.Write(WallText.Write(wall.Sheet)));
            // On standard output nothing but the sheet may stand, so that it can be read back.
            if (parse.GetValue(file) != "-") SayAll(context, TakeoffText.Cautions(wall.Sheet.Steel is not null));
            return written;
        }));
        return command;
    }

    private static Command Drop(CommandContext context)
    {
        var name = WallName();
        var command = context.Command("drop", "Drop a wall; what it entered among the needs of its stage stays", ["offcuts wall drop garage"], name);
        command.SetAction(parse => context.WithYard(parse, yard => context.Tell(new ChangeWalls(yard).Drop(parse.GetValue(name)!))));
        return command;
    }

    private static Command TakeOff(CommandContext context)
    {
        var name = WallName();
        var open = new Option<bool>("--open") { Description = "Open every figure: what it is made of" };
        var json = CommandContext.Json();
        var command = context.Command(
            "takeoff",
            "What a wall asks for, whether what is on hand will do, and what to order by when",
            ["offcuts wall takeoff garage", "offcuts wall takeoff garage --open", "offcuts wall takeoff garage --json"],
            name, open, json);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var found = new TakeOffWall(yard).Of(parse.GetValue(name)!);
            if (!found.TryGet(out var taken)) return context.Refuse(found.Faults);
            if (parse.GetValue(json)) context.SayAsItIs(WallJson.Write(taken));
            else SayAll(context, TakeoffText.Lines(taken, yard.Settings().Unit, context.World.Today, parse.GetValue(open)));
            return Exit.Done;
        }));
        return command;
    }

    private static Command Runs(CommandContext context)
    {
        var name = WallName();
        var json = CommandContext.Json();
        var command = context.Command("runs", "What is to be covered: by leg, row and course, with offsets", ["offcuts wall runs garage", "offcuts wall runs garage --json"], name, json);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var found = new ChangeWalls(yard).Laid(parse.GetValue(name)!);
            if (!found.TryGet(out var wall)) return context.Refuse(found.Faults);
            if (parse.GetValue(json)) context.SayAsItIs(WallJson.Write(wall.Kept, wall.Laid));
            else SayAll(context, TakeoffText.Runs(wall.Kept, wall.Laid, yard.Settings().Unit));
            return Exit.Done;
        }));
        return command;
    }

    private static Command Enter(CommandContext context)
    {
        var name = WallName();
        var isNew = CommandContext.NewNames();
        var command = context.Command(
            "enter",
            "Enter what a wall is cut and counted among the needs of its stage, in the place of what it entered before",
            ["offcuts wall enter garage", "offcuts wall enter garage --new"],
            name, isNew);
        command.SetAction(parse => context.WithYard(parse, yard => context.Tell(new ChangeWalls(yard).Enter(parse.GetValue(name)!, parse.GetValue(isNew)).Then<string>(entered => entered.ToString()))));
        return command;
    }

    private static void SayAll(CommandContext context, IEnumerable<string> lines)
    {
        foreach (var line in lines) context.Say(line);
    }
}
