using System.CommandLine;
using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>Beds and loads: what stands under <c>hand</c> and says how it is driven.</summary>
internal static class LoadCommands
{
    /// <summary>These commands.</summary>
    public static IEnumerable<Command> All(CommandContext context) => [Bed(context), Load(context)];

    private static Command Bed(CommandContext context)
    {
        var line = new Argument<string[]>("bed") { Description = "NAME: LONGEST PIECE, WEIGHT it may carry, and VOLUME that fits if you know it; without it, all are listed", Arity = ArgumentArity.ZeroOrMore };
        var drop = new Option<string>("--drop") { Description = "Drop the bed of this name", HelpName = "NAME" };
        var command = context.Command(
            "bed",
            "Describe a bed or trailer by what it takes",
            ["offcuts hand bed", "offcuts hand bed \"utility trailer: 10' 1200 lb 80 cu ft\"", "offcuts hand bed \"pickup: 2.4 m 600 kg\"", "offcuts hand bed --drop pickup"],
            line, drop);
        command.SetAction(parse => context.WithYard(parse, yard =>
        {
            if (parse.GetValue(drop) is { } name) return context.Tell(new MakeLoads(yard).DropBed(name));
            if (parse.GetValue(line) is { Length: > 0 } typed) return context.Tell(new MakeLoads(yard).SetBed(string.Join(' ', typed)));
            var beds = yard.Beds();
            if (beds.Count == 0) context.Say($"{char.ToUpperInvariant(HandFaults.NoBed().Sentence[0])}{HandFaults.NoBed().Sentence[1..]}");
            foreach (var bed in beds) context.Say(BedText.Line(bed, yard.Settings().Unit));
            return Exit.Done;
        }));
        return command;
    }

    private static Command Load(CommandContext context)
    {
        var codes = new Argument<string[]>("codes") { Description = "Codes of what is driven; without any, everything that is free", Arity = ArgumentArity.ZeroOrMore };
        var over = new Option<int?>("--hand-over") { Description = "What went, or is to go, with this hand-over", HelpName = "NUMBER" };
        var count = new Option<string[]>("--count") { Description = "Counted things, like \"panel tie x40\"; may be given again", HelpName = "WHAT xCOUNT" };
        var bed = new Option<string[]>("--bed") { Description = "Only with this bed; may be given again", HelpName = "NAME" };
        var weigh = new Option<string[]>("--weigh") { Description = "What one of it weighs, like \"panel tie 0.1 lb\" or \"K7F3MXX 18 kg\"; may be given again", HelpName = "WHAT WEIGHT" };
        var time = HandCommands.Time();
        var pdf = new Option<string>("--pdf") { Description = "Write the list of what goes, with its loads, as a PDF file", HelpName = "FILE" };
        var json = CommandContext.Json();
        var command = context.Command(
            "load",
            "Loads for a bed or several: the fewest trips, each in the order in which it is put on",
            ["offcuts hand load", "offcuts hand load K7F3MXX N4PX7AW --bed \"utility trailer\"", "offcuts hand load --hand-over 3 --weigh \"panel tie 0.1 lb\" --pdf loads.pdf"],
            codes, over, count, bed, weigh, time, pdf, json);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            using var cancel = new CancellationTokenSource();
            using var signals = new StopSignals(cancel.Cancel);
            var limits = HandCommands.Limits(context, parse.GetValue(time), cancel.Token);
            if (!limits.TryGet(out var within)) return context.Refuse(limits.Faults);
            var make = new MakeLoads(yard);
            var (beds, weights) = (make.Beds(parse.GetValue(bed) ?? []), MakeLoads.ReadWeights(parse.GetValue(weigh) ?? []));
            if (!beds.Ok || !weights.Ok) return context.Refuse([.. beds.Ok ? [] : beds.Faults, .. weights.Ok ? [] : weights.Faults]);
            var read = Codes.Read(parse.GetValue(codes) ?? []);
            if (!read.TryGet(out var typed)) return context.Refuse(read.Faults);
            var named = StrappedTogether.Pieces(yard, typed);
            var counted = HandOverCommands.Counted(yard, parse.GetValue(count) ?? [], each => each.Quantity);
            if (!counted.TryGet(out var bins)) return context.Refuse(counted.Faults);

            HandOver? gone = null;
            if (parse.GetValue(over) is { } number)
            {
                gone = yard.HandOvers().FirstOrDefault(one => one.Id == number);
                if (gone is null) return context.Refuse([HandFaults.NoSuchHandOver(number)]);
                named = [.. gone.Items.Select(item => item.Code).Where(code => yard.Piece(code) is not null)];
                bins = [.. gone.Items.Where(item => yard.Bin(item.Code) is not null).Select(item => new Counted(item.Code, item.Count))];
            }
            else if (named.Count + bins.Count == 0)
            {
                var answer = new FreeToGo(yard).Asked().Answer(within);
                if (!answer.TryGet(out var free)) return context.Refuse(answer.Faults);
                (named, bins) = ([.. free.Free.Select(piece => piece.Piece.Code)], [.. free.Bins.Where(each => each.Free > 0).Select(each => new Counted(each.Bin.Code, each.Free))]);
            }

            Fault[] unknown = [.. named.Where(code => yard.Piece(code) is null).Select(code => YardFaults.NoSuchCode(code.ToString())), .. gone is null ? MakeLoads.TooMany(bins, yard.Bins()) : []];
            if (unknown.Length > 0) return context.Refuse(unknown);
            var things = make.Things(named.Select(code => yard.Piece(code)!), bins, weights.Value);
            var lists = MakeLoads.Of(things, beds.Value, within);
            if (parse.GetValue(json)) context.World.Out.WriteLine(HandJson.Write(lists));
            else foreach (var line in LoadText.Lines(lists, yard.Settings().Unit)) context.Say(line);
            if (parse.GetValue(pdf) is { } path)
            {
                HandSheet.Write(path, yard, gone, things, lists, context.World.Today);
                if (!parse.GetValue(json)) context.Say($"Wrote {path}");
            }

            return signals.Status ?? (lists.Left.Count > 0 ? Exit.Unfilled : Exit.Done);
        }));
        return command;
    }
}
