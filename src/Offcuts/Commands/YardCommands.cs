using System.CommandLine;
using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Print;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>Cataloguing what comes off a form, finding it again, and putting it right.</summary>
internal static class YardCommands
{
    /// <summary>The commands that work on pieces and bins.</summary>
    public static IEnumerable<Command> All(CommandContext context) =>
        [Add(context), List(context), Show(context), Change(context), Mark(context), Reserve(context), Free(context)];

    private static Command Add(CommandContext context)
    {
        var line = new Argument<string[]>("line")
        {
            Description = "[CODE] material, lengths, count, then plain words in any order: sound, fair, poor, nails, concrete, oiled, stamped, treated (treated: ACQ), bad 30..36, trim 1/2; 2, line 2 (of an offcut of foam: from its marked end to the first line of its pattern; a whole panel has it at its end; line none where it is not known), @place, from: stage; note: takes the rest of the line. A panel's type stands behind its size: foam 2-1/2x12 II",
            Arity = ArgumentArity.ZeroOrMore,
        };
        var file = new Option<string>("--lines") { Description = "A text file of such lines, all or nothing; - for standard input", HelpName = "FILE" };
        var look = new Option<bool>("--look") { Description = "Only show how the line is understood" };
        var yes = new Option<bool>("--yes") { Description = "Save without asking, sizes that look like a slip too" };
        var isNew = CommandContext.NewNames();
        var command = context.Command(
            "add",
            "Catalogue pieces as they come off a form, one line a batch",
            [
                "offcuts add \"2x10 11'4, 11'4, 9'2-1/2 fair nails @north rack\"",
                "offcuts add \"K7F 3MXX 2x4 92-5/8 stamped\"",
                "offcuts add --new \"panel tie x140 @shed\"",
                "offcuts add --lines stripped.txt",
            ],
            line, file, look, yes, isNew);
        command.SetAction(parse => context.WithYard(parse, yard =>
        {
            var typed = parse.GetValue(line) ?? [];
            var fromFile = TextLines.Read(context.World, parse.GetValue(file));
            if (!fromFile.TryGet(out var more)) return context.Refuse(fromFile.Faults);
            string[] lines = [.. typed.Length > 0 ? [string.Join(' ', typed)] : Array.Empty<string>(), .. more];
            var catalogue = new CataloguePieces(yard);
            var read = catalogue.Read(lines);
            if (!read.TryGet(out var batches)) return context.RefuseTyped(lines, read.Faults);
            var unit = yard.Settings().Unit;
            foreach (var batch in batches) context.Say(batch.ReadBack(unit));
            var names = catalogue.NewNames(batches);
            foreach (var name in names) context.Say($"  ! {name.Told}");
            var odd = catalogue.OddSizes(batches);
            foreach (var size in odd) context.Say($"  ! {size.Told}");
            foreach (var place in catalogue.NewPlaces(batches)) context.Say($"  ! {place.Told}");
            if (parse.GetValue(look)) return Exit.Done;
            var asks = !parse.GetValue(yes) && context.World.InIsTerminal;
            var newName = names.Count > 0 && !parse.GetValue(isNew);
            var doubtful = newName || odd.Count > 0;
            if (asks && !context.Agreed(newName ? "Save, with the new name?" : doubtful ? "Save, unusual as it is?" : "Save?", enterMeansYes: !doubtful))
            {
                context.Say("Nothing saved.");
                return Exit.Done;
            }

            var saved = catalogue.Save(batches, newNames: parse.GetValue(isNew) || asks, oddSizes: parse.GetValue(yes) || asks);
            if (!saved.TryGet(out var done)) return context.Refuse(saved.Faults);
            foreach (var piece in done.Pieces) context.Say($"{piece.Code}  {piece.Material}  {Words.Size(piece, unit)}");
            foreach (var bin in done.Bins) context.Say($"{bin.Code}  {bin.Hardware.Name}  {bin.Quantity}");
            context.Say(done.ToPrint == 0 ? done.What : $"{done.What}; {Words.Count(done.ToPrint, "label")} to print");
            return Exit.Done;
        }));
        return command;
    }

    private static Command List(CommandContext context)
    {
        var words = new Argument<string[]>("words") { Description = "Show only what has all these words in it; @place for what lies there", Arity = ArgumentArity.ZeroOrMore };
        var material = new Option<string>("--material") { Description = "Only this material", HelpName = "MATERIAL" };
        var atLeast = new Option<string>("--at-least") { Description = "Only lengths from this on", HelpName = "LENGTH" };
        var place = new Option<string>("--place") { Description = "Only what lies here", HelpName = "PLACE" };
        var condition = new Option<string>("--condition") { Description = "Only pieces that are sound, fair or poor", HelpName = "CONDITION" };
        var gone = new Option<bool>("--gone") { Description = "Also what is used, handed over, scrapped or missing" };
        var json = new Option<bool>("--json") { Description = "Print as JSON" };
        var command = context.Command(
            "list",
            "List what the yard has",
            ["offcuts list", "offcuts list 2x10 north --at-least \"6'\"", "offcuts list --gone --json"],
            words, material, atLeast, place, condition, gone, json);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var unit = yard.Settings().Unit;
            var least = parse.GetValue(atLeast) is { } text ? Length.Parse(text, unit) : Length.Zero;
            if (!least.TryGet(out var shortest)) return context.Refuse(least.Faults);
            var judged = parse.GetValue(condition) is { } how ? FactReader.Condition(how).Then<Condition?>(read => Result<Condition?>.Of(read)) : Result<Condition?>.Of(null);
            if (!judged.Ok) return context.Refuse(judged.Faults);
            var typed = parse.GetValue(words) ?? [];
            var here = parse.GetValue(place) ?? typed.FirstOrDefault(word => word.StartsWith('@'))?[1..];
            var filter = new YardFilter([.. typed.Where(word => !word.StartsWith('@'))], parse.GetValue(material), here, shortest) { Condition = judged.Value };
            var pieces = yard.Pieces(!parse.GetValue(gone)).Where(piece => filter.Admits(piece, unit)).ToArray();
            var bins = yard.Bins().Where(filter.Admits).ToArray();
            if (parse.GetValue(json))
            {
                context.World.Out.WriteLine(YardJson.Write(pieces, bins, yard.Settings().Species));
                return Exit.Done;
            }

            if (pieces.Length + bins.Length > 0) Tables.Write(
                context.World,
                ["Code", "Material", ">Length", "Marks", "Place", "State"],
                pieces.Select(piece => (IReadOnlyList<string>)[piece.Code.ToString(), piece.Material.Name, Words.Size(piece, unit), Words.Marks(piece, unit), piece.Place, Words.State(piece)])
                    .Concat(bins.Select(bin => (IReadOnlyList<string>)[bin.Code.ToString(), bin.Hardware.Name, $"{bin.Quantity} {bin.Hardware.Unit}", "", bin.Place, ""])));
            context.Say(Found(pieces.Length, bins.Length));
            if (pieces.Length + bins.Length == 0) context.Say(NothingFound(yard, filter, unit));
            return Exit.Done;
        }));
        return command;
    }

    private static string Found(int pieces, int bins) => $"{Words.Count(pieces, "piece")}, {Words.Count(bins, "bin")}";

    // An empty list leaves a person wondering: is it the filter, is it all gone, or is nothing there yet?
    private static string NothingFound(YardFile yard, YardFilter filter, LengthUnit unit)
    {
        var (all, bins) = (yard.Pieces(onHandOnly: false), yard.Bins());
        var here = all.Count(piece => piece.OnHand);
        var gone = all.Count(piece => !piece.OnHand && filter.Admits(piece, unit));
        if (all.Count + bins.Count == 0) return $"The yard is empty. Begin with: offcuts add \"{LineExamples.Batch(unit)}\"";
        var without = here + bins.Count > 0 ? $"The yard has {Found(here, bins.Count)}: offcuts list shows them all." : "Nothing is left in the yard.";
        return gone > 0 ? $"{without} {Words.Count(gone, "piece")} of this kind left it: add --gone." : without;
    }

    private static Command Show(CommandContext context)
    {
        var code = new Argument<string[]>("code") { Description = "Code on the label", Arity = new ArgumentArity(1, 2) };
        var json = new Option<bool>("--json") { Description = "Print as JSON" };
        var command = context.Command("show", "Show one piece or bin, a place or a bundle: its QR code, what belongs to it, its history", ["offcuts show \"K7F 3MXX\""], code, json);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var read = Codes.One(parse.GetValue(code)!);
            if (!read.TryGet(out var one)) return context.Refuse(read.Faults);
            var (piece, bin) = (yard.Piece(one), yard.Bin(one));
            if (piece is null && bin is null) return PlaceCommands.Show(context, yard, one, parse.GetValue(json));
            if (parse.GetValue(json)) context.World.Out.WriteLine(YardJson.Write(piece is null ? [] : [piece], bin is null ? [] : [bin], yard.Settings().Species));
            else Show(context, yard, piece, bin);
            return Exit.Done;
        }));
        return command;
    }

    private static void Show(CommandContext context, YardFile yard, Piece? piece, Bin? bin)
    {
        var code = piece?.Code ?? bin!.Code;
        Symbol(context, code);
        var details = piece is not null ? Details.Of(piece, yard.Settings()) : Details.Of(bin!);
        foreach (var line in details) context.Say(line);
        if (piece is not null)
        {
            var family = FamilyText.Of(yard.Family(code)!, yard.Settings().Unit).ToArray();
            if (family.Length > 1)
            {
                context.Say("Family:");
                foreach (var line in family) context.Say("  " + line);
            }
        }

        context.Say("History:");
        foreach (var line in Details.History(yard, code)) context.Say("  " + line);
    }

    /// <summary>The QR symbol of a code.</summary>
    internal static void Symbol(CommandContext context, Code code)
    {
        // Black on white is what makes it scan on any theme, so it is no decoration that NO_COLOR could turn off.
        var symbol = (context.World.OutIsTerminal, context.World.Ascii) switch
        {
            (true, true) => QrText.ColouredAscii(code),
            (true, false) => QrText.ColouredHalfBlocks(code),
            _ => QrText.HalfBlocks(code),
        };
        foreach (var line in symbol) context.World.Out.WriteLine(line);
    }

    private static Command Change(CommandContext context)
    {
        var codes = new Argument<string[]>("codes") { Description = "Codes on the labels", Arity = ArgumentArity.OneOrMore };
        Option<string> Text(string name, string description, string helpName) => new(name) { Description = description, HelpName = helpName };
        var options = new ChangeOptions(
            Text("--material", "What it is", "MATERIAL"),
            Text("--length", "Its full length", "LENGTH"),
            Text("--condition", "sound, fair or poor", "CONDITION"),
            Text("--nails", "Whether nails are in it", "yes|no"),
            Text("--concrete", "Whether concrete clings to it", "yes|no"),
            Text("--oiled", "Whether form oil was on it", "yes|no"),
            Text("--stamped", "Whether a grade stamp can be read", "yes|no"),
            Text("--treated", "Whether it is treated: yes, no, or with what", "yes|no|WHAT"),
            Text("--bad", "Bad spots from the marked end, or none", "START..END"),
            Text("--trim", "End trims, left; right", "LENGTHS"),
            Text("--line", "Foam: from the marked end to the first pattern line, or none", "LENGTH"),
            Text("--place", "Where it lies", "PLACE"),
            Text("--from", "The stage it came off", "STAGE"),
            Text("--note", "Whatever else there is to say", "TEXT"),
            Text("--qty", "Bins: how many lie in it", "COUNT"),
            CommandContext.NewNames(),
            new("--yes") { Description = "Without asking: sizes that look like a slip are meant" });
        var command = context.Command(
            "change",
            "Correct or move what is catalogued: pieces, one bin, or a bundle as a whole",
            ["offcuts change K7F3MXX --nails no --place \"south rack\"", "offcuts change K7F3MXX --bad 30..36 --condition fair", "offcuts change N4PX7AW --qty 128"],
            [codes, .. options.All]);
        command.SetAction(parse => context.WithYard(parse, yard =>
        {
            var read = Codes.Read(parse.GetValue(codes) ?? []);
            if (!read.TryGet(out var list)) return context.Refuse(read.Faults);
            return context.Tell(options.Apply(parse, yard, list, context.World.InIsTerminal ? Meant : null));

            bool Meant(IReadOnlyList<OddSize> odd)
            {
                foreach (var size in odd) context.Say($"  ! {size.Told}");
                return context.Agreed("Change, unusual as it is?", enterMeansYes: false);
            }
        }));
        return command;
    }

    private static Command Mark(CommandContext context)
    {
        var state = new Argument<string>("what") { Description = "used, scrapped, handed-over, missing or back", HelpName = "what" };
        state.AcceptOnlyFromAmong("used", "scrapped", "handed-over", "missing", "back");
        var codes = new Argument<string[]>("codes") { Description = "Codes on the labels", Arity = ArgumentArity.OneOrMore };
        var command = context.Command("mark", "Say that pieces left the yard, or are back in it", ["offcuts mark scrapped K7F3MXX", "offcuts mark back K7F3MXX"], state, codes);
        command.SetAction(parse => context.WithYard(parse, yard =>
        {
            var read = Codes.Read(parse.GetValue(codes) ?? []);
            if (!read.TryGet(out var list)) return context.Refuse(read.Faults);
            return context.Tell(new ChangePieces(yard).Mark(list, parse.GetValue(state) switch
            {
                "used" => PieceState.Used,
                "scrapped" => PieceState.Scrapped,
                "handed-over" => PieceState.HandedOver,
                "missing" => PieceState.Missing,
                _ => PieceState.InYard,
            }));
        }));
        return command;
    }

    private static Command Reserve(CommandContext context)
    {
        var stage = new Argument<string>("stage") { Description = "Name of the stage" };
        var codes = new Argument<string[]>("codes") { Description = "Codes on the labels", Arity = ArgumentArity.OneOrMore };
        var command = context.Command("reserve", "Keep pieces for one stage alone", ["offcuts reserve \"stem wall\" K7F3MXX"], stage, codes);
        command.SetAction(parse => context.WithYard(parse, yard =>
        {
            var read = Codes.Read(parse.GetValue(codes) ?? []);
            return read.TryGet(out var list) ? context.Tell(new ChangePieces(yard).Reserve(list, parse.GetValue(stage)!)) : context.Refuse(read.Faults);
        }));
        return command;
    }

    private static Command Free(CommandContext context)
    {
        var codes = new Argument<string[]>("codes") { Description = "Codes on the labels", Arity = ArgumentArity.ZeroOrMore };
        var stage = new Option<string>("--stage") { Description = "All that is reserved for this stage", HelpName = "STAGE" };
        var command = context.Command("free", "Let any stage have pieces that were reserved", ["offcuts free K7F3MXX", "offcuts free --stage \"stem wall\""], codes, stage);
        command.SetAction(parse => context.WithYard(parse, yard =>
        {
            var read = Codes.Read(parse.GetValue(codes) ?? []);
            if (!read.TryGet(out var list)) return context.Refuse(read.Faults);
            if (list.Count > 0 == parse.GetValue(stage) is not null) return context.Refuse([YardFaults.FreeWhat()]);
            return context.Tell(parse.GetValue(stage) is { } name ? new ChangePieces(yard).FreeAll(name) : new ChangePieces(yard).Free(list));
        }));
        return command;
    }
}
