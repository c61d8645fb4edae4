using System.CommandLine;
using Offcuts.Store.Interchange;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>What it saved.</summary>
internal static class LedgerCommands
{
    /// <summary>The command <c>ledger</c>.</summary>
    public static IEnumerable<Command> All(Session session)
    {
        var lines = new Option<bool>("--lines") { Description = "Every line, not only the sums" };
        var json = new Option<bool>("--json") { Description = "Print the lines as JSON" };
        var export = new Option<string>("--csv") { Description = "Write the lines as a CSV file; - for standard output", HelpName = "FILE" };
        var command = session.Command("ledger", "What has been saved by what was done, by stage and in all", ["offcuts ledger", "offcuts ledger --json"], lines, json, export);
        command.SetAction(parse => session.WithYard(parse, yard =>
        {
            var all = yard.Ledger();
            if (parse.GetValue(json))
            {
                session.World.Out.WriteLine(YardJson.Write(all));
                return Exit.Done;
            }

            if (parse.GetValue(export) is { } path) return TextLines.Write(session, path, writer => LedgerFile.Write(all, writer));
            foreach (var line in LedgerText.Of(yard, session.World.Today, parse.GetValue(lines))) session.Say(line);
            return Exit.Done;
        }));
        yield return command;
    }
}
