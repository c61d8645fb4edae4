using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>Backups, going back to one, and looking whether a yard is whole.</summary>
internal static class SafetyCommands
{
    /// <summary>The commands that keep a yard safe.</summary>
    public static IEnumerable<Command> All(CommandContext context) => [Backup(context), Restore(context), Check(context)];

    private static Command Backup(CommandContext context)
    {
        var file = new Argument<string>("file") { Description = "Where to make it, a file that is not there yet; else among the yard's own backups", Arity = ArgumentArity.ZeroOrOne };
        var list = new Option<bool>("--list") { Description = "Only list what there is" };
        var json = CommandContext.Json();
        json.Description = "List as JSON";
        var command = context.Command("backup", "Make a backup of the yard, opened and checked; one is made by itself before the first change of each day, and ten of each kind are kept",
            ["offcuts backup", "offcuts backup /media/stick/yard.offcuts", "offcuts backup --list"], file, list, json);
        command.SetAction(parse => context.WithPath(parse, path =>
        {
            var use = new BackUpYard(path, context.World.Today);
            if (parse.GetValue(json)) context.World.Out.WriteLine(YardJson.List("backups", use.All().Select(one => new JsonObject
            {
                ["number"] = one.Number,
                ["day"] = one.Day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                ["kind"] = one.Kind.ToString().ToLowerInvariant(),
                ["bytes"] = one.Bytes,
                ["path"] = one.Path,
            })));
            else if (parse.GetValue(list))
            {
                var all = use.All();
                if (all.Count == 0) context.Say("No backup yet; the first change of tomorrow makes one, and offcuts backup makes one now.");
                else Tables.Write(context.World, [">No", "Day", ">Size", "Made"], all.Select(one => (IReadOnlyList<string>)
                    [one.Number.ToString(CultureInfo.InvariantCulture), one.Day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), BackUpYard.Size(one.Bytes), BackUpYard.Of(one.Kind)]));
            }
            else return context.Tell(use.Make(parse.GetValue(file)));
            return Exit.Done;
        }));
        return command;
    }

    private static Command Restore(CommandContext context)
    {
        var which = new Argument<string>("backup") { Description = "The number of a backup, or a file", Arity = ArgumentArity.ZeroOrOne };
        var yes = new Option<bool>("--yes") { Description = "Without asking" };
        var command = context.Command("restore", "Go back to a backup; what is there now is kept as a backup of its own first", ["offcuts restore 12", "offcuts restore /media/stick/yard.offcuts"], which, yes);
        command.SetAction(parse => context.WithPath(parse, path =>
        {
            var use = new GoBack(path, context.World.Today);
            var found = use.Find(parse.GetValue(which));
            if (!found.TryGet(out var file)) return context.Refuse(found.Faults);
            if (!parse.GetValue(yes) && !context.Agreed($"Go back to {file}? What is there now is kept as a backup.", enterMeansYes: false))
            {
                context.Say("Nothing done.");
                return Exit.Done;
            }

            return context.Tell(use.To(file));
        }));
        return command;
    }

    private static Command Check(CommandContext context)
    {
        var save = new Option<string>("--save") { Description = "Save all that can be read into this folder, new or empty: a new yard, and each table as CSV", HelpName = "FOLDER" };
        var json = CommandContext.Json();
        json.Description = "As JSON";
        var command = context.Command("check", "Look whether the yard is whole, row by row against its history; changes nothing", ["offcuts check", "offcuts check --save rescued"], save, json);
        command.SetAction(parse => context.WithPath(parse, path =>
        {
            var use = new CheckYard(path, context.World.Clock);
            if (parse.GetValue(save) is { Length: > 0 } folder)
            {
                var saved = use.Save(folder);
                if (!saved.TryGet(out var done)) return context.Refuse(saved.Faults);
                foreach (var line in CheckYard.Told(done)) context.Say(line);
                return Exit.Done;
            }

            var found = use.Check();
            if (parse.GetValue(json)) context.World.Out.WriteLine(YardJson.Write(new JsonObject
            {
                ["schema"] = 1,
                ["whole"] = found.Whole,
                ["version"] = found.Version,
                ["pieces"] = found.Pieces,
                ["entries"] = found.Entries,
                ["wrong"] = new JsonArray([.. found.Wrong.Select(fault => (JsonNode)fault.Sentence)]),
            }));
            else foreach (var line in use.Told(found)) context.Say(line);
            return found.Whole ? Exit.Done : Exit.YardUnavailable;
        }));
        return command;
    }
}
