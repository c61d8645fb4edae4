using System.CommandLine;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.Store.Interchange;
using Offcuts.UseCases;
using Offcuts.Walls;

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
            var needs = Needs(context, yard, parse.GetValue(cuts), parse.GetValue(wall), parse.GetValue(system), parse.GetValue(prices));
            if (!needs.TryGet(out var theirs)) return context.Refuse(needs.Faults);
            var half = within with { Time = within.Time / 2 };
            var answer = new FreeToGo(yard).Asked().Answer(half);
            if (!answer.TryGet(out var free)) return context.Refuse(answer.Faults);
            var match = MatchTheirs.Of(free, theirs, yard.Prices(), yard.Settings(), half);
            if (!match.TryGet(out var found)) return context.Refuse(match.Faults);
            if (parse.GetValue(json)) context.World.Out.WriteLine(HandJson.Write(found));
            else foreach (var line in TheirText.Lines(found, free, yard)) context.Say(line);
            return signals.Status ?? (found.Unfilled.Count > 0 ? Exit.Unfilled : Exit.Done);
        }));
        return command;
    }

    private static Result<TheirNeeds> Needs(CommandContext context, YardFile yard, string? cuts, string? wall, string? system, string? prices)
    {
        if (cuts is null && wall is null) return HandFaults.NeedsMissing();
        if (system is not null && wall is null) return HandFaults.SystemWithoutWall();
        var world = context.World;
        var read = cuts is null ? Result<IReadOnlyList<Stage>>.Of([]) : TextLines.Open(world, cuts, (stream, name) => CutsFile.Read(stream, name));
        var book = prices is null ? Result<PriceBook?>.Of(null) : TextLines.Open(world, prices, (stream, name) => PricesFile.Read(stream, name)).Then<PriceBook?>(known => Result<PriceBook?>.Of(known));
        var laid = wall is null ? Result<LaidWall?>.Of(null) : TextLines.Open(world, wall, (stream, name) => SheetFile.ReadWall(stream, name)).Then(placed => Laid(world, yard, placed.Sheet, system));
        Fault[] faults = [.. read.Ok ? [] : read.Faults, .. book.Ok ? [] : book.Faults, .. laid.Ok ? [] : laid.Faults];
        return faults.Length > 0 ? Result<TheirNeeds>.Fail(faults) : new TheirNeeds(read.Value, laid.Value, book.Value);
    }

    private static Result<LaidWall?> Laid(Surroundings world, YardFile yard, WallSheet sheet, string? system)
    {
        var of = system is null ? new ChangeSystems(yard).Find(sheet.System) : TextLines.Open(world, system, (stream, name) => SheetFile.ReadSystem(stream, name));
        return of.Then(known => LaidWall.Of(sheet, known)).Then<LaidWall?>(wall => Result<LaidWall?>.Of(wall));
    }

    private static Option<string> File(string name, string description) => new(name) { Description = description, HelpName = "FILE" };
}
