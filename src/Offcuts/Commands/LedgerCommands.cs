using System.CommandLine;
using Offcuts.Store.Interchange;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>What it saved.</summary>
internal static class LedgerCommands
{
    /// <summary>The command <c>ledger</c>.</summary>
    public static IEnumerable<Command> All(CommandContext context)
    {
        var lines = new Option<bool>("--lines") { Description = "Every line, not only the sums" };
        var json = new Option<bool>("--json") { Description = "Print the lines as JSON" };
        var export = new Option<string>("--csv") { Description = "Write the lines as a CSV file; - for standard output", HelpName = "FILE" };
        var command = context.Command("ledger", "What has been saved by what was done, by stage and in all", ["offcuts ledger", "offcuts ledger --json"], lines, json, export);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var all = yard.Ledger();
            if (parse.GetValue(json))
            {
                context.World.Out.WriteLine(YardJson.Write(all, HandJson.Nodes(yard.HandOvers(), context.World.Today)));
                return Exit.Done;
            }

            if (parse.GetValue(export) is { } path) return TextLines.Write(context, path, writer => LedgerFile.Write(all, yard.HandOvers(), code => yard.Piece(code) is not null, writer));
            foreach (var line in LedgerText.Of(yard, context.World.Today, parse.GetValue(lines))) context.Say(line);
            return Exit.Done;
        }));
        yield return command;
    }
}
