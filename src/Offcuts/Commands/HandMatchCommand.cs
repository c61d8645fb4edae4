using System.CommandLine;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>What of the free things another build can use: <c>hand match</c>.</summary>
internal static class HandMatchCommand
{
    /// <summary>The command.</summary>
    public static Command Of(CommandContext context)
    {
        var cuts = File("--cuts", "What they need, as a cuts file");
        var wall = File("--wall", "A wall they want to build, as a wall sheet");
        var system = File("--system", "The system sheet of that wall, where this yard does not have it");
        var prices = File("--prices", "What things cost where they are, as a prices file; else your prices count");
        var time = HandCommands.Time();
        var json = CommandContext.Json();
        var command = context.Command(
            "match",
            "What of the free things fills another build's needs, and what that saves them; without a list of needs, see: offcuts hand free",
            ["offcuts hand match --cuts theirs.csv", "offcuts hand match --cuts theirs.csv --prices their-prices.csv", "offcuts hand match --wall garage.txt --system ours.txt --json"],
            cuts, wall, system, prices, time, json);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            using var cancel = new CancellationTokenSource();
            using var signals = new StopSignals(cancel.Cancel);
            var limits = HandCommands.Limits(context, parse.GetValue(time), cancel.Token);
            if (!limits.TryGet(out var within)) return context.Refuse(limits.Faults);
            var matched = new TheirFiles(parse.GetValue(cuts), parse.GetValue(wall), parse.GetValue(system), parse.GetValue(prices))
                .Matched(yard, path => TextLines.Stream(context.World, path), within);
            if (!matched.TryGet(out var answer)) return context.Refuse(matched.Faults);
            var (free, found) = answer;
            if (parse.GetValue(json)) context.World.Out.WriteLine(HandJson.Write(found));
            else foreach (var line in TheirText.Lines(found, free, yard)) context.Say(line);
            return signals.Status ?? (found.Unfilled.Count > 0 ? Exit.Unfilled : Exit.Done);
        }));
        return command;
    }

    private static Option<string> File(string name, string description) => new(name) { Description = description, HelpName = "FILE" };
}
