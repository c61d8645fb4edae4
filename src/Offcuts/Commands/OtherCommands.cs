using System.CommandLine;
using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.Store.Interchange;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>Files in and out, history, cautions, the demo and shell completions.</summary>
internal static class OtherCommands
{
    /// <summary>The rest of the commands.</summary>
    public static IEnumerable<Command> All(CommandContext context) =>
        [Import(context), Export(context), History(context), Undo(context), Redo(context), CautionsOf(context), Demo(context), Complete(context)];

    private static Command Import(CommandContext context)
    {
        var file = new Argument<string>("file") { Description = "A stock file (CSV); - for standard input" };
        var isNew = CommandContext.NewNames();
        var command = context.Command("import", "Take the pieces and hardware of a CSV file into the yard, all or nothing", ["offcuts import stock.csv", "offcuts import stock.csv --new"], file, isNew);
        command.SetAction(parse => context.WithYard(parse, yard => context.Tell(
            TextLines.Open(context.World, parse.GetValue(file)!, (stream, name) => new ImportStock(yard).Import(stream, name, parse.GetValue(isNew))))));
        return command;
    }

    private static Command Export(CommandContext context)
    {
        var file = new Argument<string>("file") { Description = "Where to write it; - for standard output" };
        var gone = new Option<bool>("--gone") { Description = "Also what is used, handed over, scrapped or missing" };
        var command = context.Command("export", "Write the yard's pieces and hardware as a CSV file", ["offcuts export stock.csv"], file, gone);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
            TextLines.Write(context, parse.GetValue(file)!, writer => StockFile.Write(yard.Pieces(!parse.GetValue(gone)), yard.Bins(), writer))));
        return command;
    }

    private static Command History(CommandContext context)
    {
        var code = new Argument<string[]>("code") { Description = "Only what touched this piece or bin", Arity = new ArgumentArity(0, 2) };
        var most = new Option<int>("--most") { Description = "How many entries, newest first", DefaultValueFactory = _ => 30 };
        var json = CommandContext.Json();
        var command = context.Command("history", "What was done to the yard, newest first", ["offcuts history", "offcuts history K7F3MXX", "offcuts history --most 1 --json"], code, most, json);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            IReadOnlyList<HistoryEntry> entries;
            if (parse.GetValue(code) is { Length: > 0 } text)
            {
                var read = Codes.One(text);
                if (!read.TryGet(out var one)) return context.Refuse(read.Faults);
                entries = yard.HistoryOf(one);
            }
            else entries = yard.History(Math.Clamp(parse.GetValue(most), 1, 100_000));

            if (parse.GetValue(json)) context.World.Out.WriteLine(ListJson.OfHistory(entries));
            else if (entries.Count == 0) context.Say("Nothing was done to this yard yet");
            else Tables.Write(context.World, [">No", "When", "What", ""], entries.Select(entry => (IReadOnlyList<string>)
            [
                entry.Number.ToString(CultureInfo.InvariantCulture),
                entry.At.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture),
                entry.What,
                entry.Undone ? "taken back" : "",
            ]));
            return Exit.Done;
        }));
        return command;
    }

    private static Command Undo(CommandContext context)
    {
        var command = context.Command("undo", "Take back the last change whole; again for the one before", ["offcuts undo"]);
        command.SetAction(parse => context.WithYard(parse, yard => context.Tell(yard.Undo().Then<string>(entry => entry.What))));
        return command;
    }

    private static Command Redo(CommandContext context)
    {
        var command = context.Command("redo", "Do again what the last undo took back, where nothing new was done since; again for the one before", ["offcuts redo"]);
        command.SetAction(parse => context.WithYard(parse, yard => context.Tell(yard.Redo().Then<string>(entry => entry.What))));
        return command;
    }

    private static Command CautionsOf(CommandContext context)
    {
        var command = context.Command("cautions", "What can hurt somebody in this work, with the source of each", ["offcuts cautions"]);
        command.SetAction(parse =>
        {
            foreach (var caution in Cautions.All)
            {
                context.Say($"{caution.Topic}:");
                context.Say($"  {caution}");
            }

            context.Say(Cautions.Closing);
            return Exit.Done;
        });
        return command;
    }

    private static Command Demo(CommandContext context)
    {
        var folder = new Option<string>("--into") { Description = "Folder for the demo's yard and prints; a new one if left out", HelpName = "FOLDER" };
        var command = context.Command("demo", "Make a yard of invented data and run the whole job on it, from stripped form to savings", ["offcuts demo", "offcuts demo --into orchard"], folder);
        command.SetAction(parse => new RunDemo(context.World).Run(parse.GetValue(folder)) is var told && told.Ok ? Exit.Done : context.Refuse(told.Faults));
        return command;
    }

    private static Command Complete(CommandContext context)
    {
        var shell = new Argument<string>("shell") { Description = "bash, zsh, fish or pwsh", HelpName = "shell" };
        shell.AcceptOnlyFromAmong("bash", "zsh", "fish", "pwsh");
        var command = context.Command("complete", "Print a script that completes commands in your shell", ["source <(offcuts complete bash)"], shell);
        command.SetAction(parse =>
        {
            context.World.Out.WriteLine(CompletionScripts.Of(parse.GetValue(shell)!));
            return Exit.Done;
        });
        return command;
    }
}
