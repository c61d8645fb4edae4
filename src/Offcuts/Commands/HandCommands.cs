using System.CommandLine;
using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>What goes to another build: the command <c>hand</c>.</summary>
internal static class HandCommands
{
    /// <summary>The command and what is under it.</summary>
    public static IEnumerable<Command> All(CommandContext context)
    {
        yield return context.Command(
            "hand",
            "What can go to a relative's build: find it, load it, hand it over, take it in",
            ["offcuts hand free", "offcuts hand over K7F3MXX --to \"Uncle Jo\" --gift --file jo.offcuts-hand", "offcuts hand take-in jo.offcuts-hand"],
            [Free(context), HandMatchCommand.Of(context), .. LoadCommands.All(context), .. HandOverCommands.All(context)]);
    }

    /// <summary>Seconds an answer takes where nothing is said.</summary>
    internal static Option<double> Time() => new("--time") { Description = "Seconds to look for a proof", HelpName = "SECONDS", DefaultValueFactory = _ => PlanCommand.UsualSeconds };

    /// <summary>The limits of a command with that option, or why it is refused.</summary>
    internal static Result<MatchLimits> Limits(CommandContext context, double seconds, CancellationToken cancel) =>
        !double.IsFinite(seconds) || seconds is <= 0 or > 86_400 ? PlanFaults.TimeUnreadable() : PlanCommand.Limits(context, seconds, cancel);

    private static Command Free(CommandContext context)
    {
        var all = new Option<bool>("--all") { Description = "Also what stays, with the reason" };
        var without = new Option<string[]>("--without") { Description = "Say what it would cost to let this piece go; may be given again", HelpName = "CODE" };
        var time = Time();
        var json = CommandContext.Json();
        var command = context.Command(
            "free",
            "What may go: no stage gets worse without all of it together, in what is filled and what is spent",
            ["offcuts hand free", "offcuts hand free --all", "offcuts hand free --without K7F3MXX", "offcuts hand free --json"],
            all, without, time, json);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            using var cancel = new CancellationTokenSource();
            using var signals = new StopSignals(cancel.Cancel);
            var status = Show(context, yard, parse.GetValue(all), parse.GetValue(without) ?? [], parse.GetValue(json), Limits(context, parse.GetValue(time), cancel.Token));
            return signals.Status ?? status;
        }));
        return command;
    }

    private static int Show(CommandContext context, YardFile yard, bool all, string[] typed, bool json, Result<MatchLimits> read)
    {
        if (!read.TryGet(out var limits)) return context.Refuse(read.Faults);
        var codes = Codes.Read(typed);
        if (!codes.TryGet(out var without)) return context.Refuse(codes.Faults);
        if (without.Where(code => yard.Piece(code) is not { OnHand: true }).Select(code => YardFaults.NoSuchCode(code.ToString())).ToArray() is { Length: > 0 } unknown) return context.Refuse(unknown);
        var share = without.Count == 0 ? limits : limits with { Time = limits.Time / 2 };
        var answer = new FreeToGo(yard).Asked().Answer(share);
        if (!answer.TryGet(out var free)) return context.Refuse(answer.Faults);
        var settings = yard.Settings();
        if (without.Count > 0)
        {
            // Its cuts count as planned while the plan stands, so that nothing could be said of them.
            if (free.Pieces.Where(piece => without.Contains(piece.Piece.Code) && piece.Stays == Stays.Planned).Select(piece => HandFaults.WaitsInPlan(piece.Piece.Code.ToString(), piece.Why)).ToArray() is { Length: > 0 } planned)
                return context.Refuse(planned);
            var other = new FreeToGo(yard).Asked(without).Answer(share);
            if (!other.TryGet(out var rest)) return context.Refuse(other.Faults);
            if (!json) context.Say(FreeText.Cost(free, rest, without, settings));
            free = rest;
        }

        if (json)
        {
            context.World.Out.WriteLine(HandJson.Write(free));
            return Exit.Done;
        }

        foreach (var line in FreeText.Answer(free, settings)) context.Say(line);
        IReadOnlyList<string>[] rows =
        [
            .. free.Pieces.Where(piece => all || piece.IsFree).Select(piece => FreeText.Row(piece, settings)),
            .. free.Bins.Where(bin => all || bin.Free > 0).Select(bin => FreeText.Row(bin, settings)),
        ];
        if (rows.Length > 0)
        {
            context.Say();
            Tables.Write(context.World, FreeText.Headings, rows);
        }

        foreach (var note in free.Notes) context.Say(note);
        return Exit.Done;
    }
}
