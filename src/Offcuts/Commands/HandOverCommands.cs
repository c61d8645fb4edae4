using System.CommandLine;
using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>Handing over, confirming, coming back and taking in: what stands under <c>hand</c> and changes the yard.</summary>
internal static class HandOverCommands
{
    /// <summary>These commands.</summary>
    public static IEnumerable<Command> All(CommandContext context) => [Over(context), List(context), Sheet(context), File(context), Confirm(context), Back(context), Settle(context), TakeIn(context)];

    private static Command Over(CommandContext context)
    {
        var codes = new Argument<string[]>("codes") { Description = "Codes of what goes", Arity = ArgumentArity.ZeroOrMore };
        var count = Many("--count", "Counted things that go, like \"panel tie x40\"; may be given again", "WHAT xCOUNT");
        var free = new Option<bool>("--free") { Description = "Everything that is free" };
        var to = Text("--to", "To whom it goes", "NAME");
        var gift = new Option<bool>("--gift") { Description = "For good, and for nothing" };
        var loan = new Option<bool>("--loan") { Description = "To come back" };
        var sale = Text("--sale", "For money", "PRICE");
        var due = Text("--due", "With --loan: the day by which it is due back", "DAY");
        var agreed = Text("--agreed", "With --loan: what else is due back or agreed", "TEXT");
        var anyway = new Option<bool>("--anyway") { Description = "Also what is not free" };
        var time = HandCommands.Time();
        var file = FileOptions();
        var command = context.Command(
            "over",
            "Hand pieces and counted things over: as a gift, a loan or a sale, with a file for the other side; undo takes it back until they confirm",
            [
                "offcuts hand over K7F3MXX N4PX7AW --to \"Uncle Jo\" --gift",
                "offcuts hand over --free --to Ann --loan --due 2026-09-30 --file ann.offcuts-hand",
                "offcuts hand over K7F3MXX --count \"panel tie x40\" --to Ann --sale 25",
            ],
            [codes, count, free, to, gift, loan, sale, due, agreed, anyway, time, .. file.All]);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var read = Codes.Read(parse.GetValue(codes) ?? []);
            if (!read.TryGet(out var named)) return context.Refuse(read.Faults);
            var terms = Terms(yard, parse.GetValue(to), parse.GetValue(gift), parse.GetValue(loan), parse.GetValue(sale), parse.GetValue(due), parse.GetValue(agreed));
            if (!terms.TryGet(out var agreedOn)) return context.Refuse(terms.Faults);
            if (parse.GetValue(file.File) is null && (parse.GetValue(file.Notes) || parse.GetValue(file.Prices) || parse.GetValue(file.From) is not null)) return context.Refuse([HandFaults.FileMissing()]);

            WhatIsFree? known = null;
            if (!parse.GetValue(anyway) || parse.GetValue(free))
            {
                using var cancel = new CancellationTokenSource();
                using var signals = new StopSignals(cancel.Cancel);
                var limits = HandCommands.Limits(context, parse.GetValue(time), cancel.Token);
                if (!limits.TryGet(out var within)) return context.Refuse(limits.Faults);
                var answer = new FreeToGo(yard).Asked().Answer(within);
                if (signals.Status is { } stopped) return stopped;
                if (!answer.TryGet(out known)) return context.Refuse(answer.Faults);
            }

            var counted = Counted(yard, parse.GetValue(count) ?? [], bin => known?.Bins.FirstOrDefault(one => one.Bin.Code == bin.Code)?.Free ?? bin.Quantity);
            if (!counted.TryGet(out var bins)) return context.Refuse(counted.Faults);
            var all = parse.GetValue(free);
            var wish = new HandWish(
                all ? [.. named.Union(known!.Free.Select(piece => piece.Piece.Code))] : named,
                all ? [.. bins.Concat(known!.Bins.Where(bin => bin.Free > 0 && bins.All(one => one.Bin != bin.Bin.Code)).Select(bin => new Counted(bin.Bin.Code, bin.Free)))] : bins,
                agreedOn,
                file.Of(parse));
            var done = new HandOverPieces(yard).Do(wish, parse.GetValue(anyway) && !all ? null : known);
            if (!done.TryGet(out var gone)) return context.Refuse(done.Faults);
            context.Say($"{char.ToUpperInvariant(gone.What[0])}{gone.What[1..]}: hand-over {gone.Id}");
            if (gone.Remark.Length > 0) context.Say(char.ToUpperInvariant(gone.Remark[0]) + gone.Remark[1..]);
            if (known is { Proven: false } && !parse.GetValue(anyway)) foreach (var line in FreeText.Answer(known, yard.Settings()).Skip(1)) context.Say(line);
            if (wish.File.Path is { } path) context.Say($"Wrote {path}; they take it in with: offcuts hand take-in {path}");
            context.Say("Until they confirm it, undo takes it back.");
            return Exit.Done;
        }));
        return command;
    }

    private static Command List(CommandContext context)
    {
        var json = CommandContext.Json();
        var command = context.Command("list", "What went to other builds, what is due back, what is confirmed, and what is borrowed from them", ["offcuts hand list", "offcuts hand list --json"], json);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var (all, settings, today) = (yard.HandOvers(), yard.Settings(), context.World.Today);
            var borrowed = Borrowed.In(yard, all);
            if (parse.GetValue(json))
            {
                context.World.Out.WriteLine(HandJson.Write(all, borrowed, today));
                return Exit.Done;
            }

            if (all.Count + borrowed.Count == 0) context.Say("Nothing was handed over yet.");
            foreach (var one in all)
            {
                context.Say(HandOverText.Line(one, settings, today));
                foreach (var line in HandOverText.Items(one, yard, settings.Unit)) context.Say(line);
            }

            foreach (var line in borrowed.SelectMany(one => one.Lines(today, settings.Unit))) context.Say(line);

            return Exit.Done;
        }));
        return command;
    }

    private static Command Sheet(CommandContext context)
    {
        var number = new Argument<int>("number") { Description = "Number of the hand-over" };
        var path = new Argument<string>("file") { Description = "PDF file to write" };
        var command = context.Command("sheet", "Print the list of a hand-over as a PDF, every code to be ticked off; with its loads by: offcuts hand load", ["offcuts hand sheet 3 ann.pdf"], number, path);
        command.SetAction(parse => context.WithYardThere(parse, yard => context.Tell(HandSheet.Write(parse.GetValue(path)!, yard, parse.GetValue(number), context.World.Today))));
        return command;
    }

    private static Command File(CommandContext context)
    {
        var number = new Argument<int>("number") { Description = "Number of the hand-over" };
        var path = new Argument<string>("file") { Description = "The file to write" };
        var options = FileOptions();
        var command = context.Command("file", "Write the file of a hand-over again", ["offcuts hand file 3 ann.offcuts-hand"], number, path, options.From, options.Notes, options.Prices);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
            context.Tell(new HandOverPieces(yard).WriteAgain(parse.GetValue(number), new FileWish(parse.GetValue(path), parse.GetValue(options.From)?.Trim() ?? "", parse.GetValue(options.Notes), parse.GetValue(options.Prices))))));
        return command;
    }

    private static Command Confirm(CommandContext context)
    {
        var receipt = new Argument<string>("receipt") { Description = "The receipt that their program showed, or with --by-word the number of the hand-over" };
        var byWord = new Option<bool>("--by-word") { Description = "They said so, without a receipt" };
        var command = context.Command("confirm", "Say that the other side has it; from then on it is not taken back", ["offcuts hand confirm R-K7F-3MXX", "offcuts hand confirm 3 --by-word"], receipt, byWord);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var typed = parse.GetValue(receipt)!;
            if (!parse.GetValue(byWord)) return context.Tell(new HandOverPieces(yard).Confirm(typed));
            return int.TryParse(typed, NumberStyles.None, CultureInfo.InvariantCulture, out var id)
                ? context.Tell(new HandOverPieces(yard).ConfirmByWord(id))
                : context.Refuse([CommandFaults.NoNumber(typed, "the hand-over", whole: true)]);
        }));
        return command;
    }

    private static Command Back(CommandContext context)
    {
        var codes = new Argument<string[]>("codes") { Description = "Codes of what is back", Arity = ArgumentArity.ZeroOrMore };
        var count = Many("--count", "Counted things that are back, like \"panel tie x40\"", "WHAT xCOUNT");
        var at = Text("--at", "Where they lie now; as before where nothing is said", "PLACE");
        var command = context.Command("back", "Say that something lent is back", ["offcuts hand back K7F3MXX --at barn", "offcuts hand back --count \"panel tie x40\""], codes, count, at);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var read = Codes.Read(parse.GetValue(codes) ?? []);
            if (!read.TryGet(out var named)) return context.Refuse(read.Faults);
            var away = yard.HandOvers().Where(one => one.Terms.Kind == HandOverKind.Loan).SelectMany(one => one.Items).ToLookup(item => item.Code, item => item.Away);
            var counted = Counted(yard, parse.GetValue(count) ?? [], bin => away[bin.Code].Sum());
            return counted.TryGet(out var bins) ? context.Tell(new HandOverPieces(yard).Back(named, bins, parse.GetValue(at))) : context.Refuse(counted.Faults);
        }));
        return command;
    }

    private static Command Settle(CommandContext context)
    {
        var codes = new Argument<string[]>("codes") { Description = "Codes of what does not come back as it went", Arity = ArgumentArity.ZeroOrMore };
        var count = Many("--count", "Counted things that don't come back, like \"panel tie x12\"", "WHAT xCOUNT");
        var nothing = new Option<bool>("--nothing") { Description = "Nothing came in its place" };
        var instead = Many("--instead", "What came in the place of the one piece: a line as for add, or the code of a piece; may be given again", "LINE");
        var at = Text("--at", "Where that lies now", "PLACE");
        var isNew = CommandContext.NewNames();
        var yes = new Option<bool>("--yes") { Description = "Sizes that look like a slip are meant" };
        var command = context.Command(
            "settle",
            "End a loan of what was cut up, used or lost over there, and catalogue what came in its place",
            ["offcuts hand settle K7F3MXX --nothing", "offcuts hand settle K7F3MXX --instead \"2x4 5', 3'\" --at barn", "offcuts hand settle --count \"panel tie x12\" --nothing"],
            codes, count, nothing, instead, at, isNew, yes);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var read = Codes.Read(parse.GetValue(codes) ?? []);
            if (!read.TryGet(out var named)) return context.Refuse(read.Faults);
            var came = parse.GetValue(instead) ?? [];
            if (parse.GetValue(nothing) == (came.Length > 0)) return context.Refuse([HandFaults.SettledHow()]);
            var away = yard.HandOvers().Where(one => one.Terms.Kind == HandOverKind.Loan).SelectMany(one => one.Items).ToLookup(item => item.Code, item => item.Away);
            var counted = Counted(yard, parse.GetValue(count) ?? [], bin => away[bin.Code].Sum());
            if (!counted.TryGet(out var bins)) return context.Refuse(counted.Faults);
            var done = new SettleLoan(yard).Do(new SettleWish(named, bins, came), parse.GetValue(at) ?? "", newNames: parse.GetValue(isNew), oddSizes: parse.GetValue(yes));
            if (!done.TryGet(out var settled)) return context.Refuse(done.Faults);
            context.Say(char.ToUpperInvariant(settled.What[0]) + settled.What[1..]);
            if (settled.Added.Count > 0) context.Say($"{Words.Count(settled.Added.Count, "piece")} catalogued");
            return Exit.Done;
        }));
        return command;
    }

    private static Command TakeIn(CommandContext context)
    {
        var path = new Argument<string>("file") { Description = "The file from the other yard; - for standard input" };
        var at = Text("--at", "Where everything lies now", "PLACE");
        var command = context.Command("take-in", "Take a hand-over of another yard in; a second time it changes nothing", ["offcuts hand take-in ann.offcuts-hand --at \"north rack\""], path, at);
        command.SetAction(parse => context.WithYard(parse, yard =>
        {
            var taken = TextLines.Open(context.World, parse.GetValue(path)!, (stream, _) => new TakeIn(yard).From(stream, parse.GetValue(at) ?? ""));
            if (!taken.TryGet(out var told)) return context.Refuse(taken.Faults);
            context.Say(char.ToUpperInvariant(told.What[0]) + told.What[1..]);
            foreach (var (was, now) in told.Renamed) context.Say($"{was} is another thing's code here: the piece that came is {now} from now on; its new label waits");
            foreach (var (code, there) in told.CameHome) context.Say(there == code ? $"{code} was lent from here and is back" : $"{code} is back; over there it was {there}: its label waits");
            foreach (var (code, state) in told.Stayed) context.Say($"{code} went from here and is {state} already: nothing was changed of it");
            if (told.ToPrint > 0) context.Say($"{Words.Count(told.ToPrint, "label")} to print");
            context.Say($"Receipt, for the other side to confirm it with: {told.Receipt}");
            return Exit.Done;
        }));
        return command;
    }

    private static Result<Terms> Terms(YardFile yard, string? to, bool gift, bool loan, string? sale, string? due, string? agreed)
    {
        if ((gift ? 1 : 0) + (loan ? 1 : 0) + (sale is null ? 0 : 1) != 1) return HandFaults.OneKind();
        Money? price = null;
        if (sale is not null)
        {
            var sign = yard.Settings().CurrencySign;
            var money = Money.Parse(sale.StartsWith(sign, StringComparison.Ordinal) ? sale[sign.Length..] : sale);
            if (!money.Ok) return Result<Terms>.Fail([.. money.Faults.Select(fault => fault with { File = "--sale", Column = 0 })]);
            price = money.Value;
        }

        DateOnly? day = null;
        if (due is not null)
        {
            if (!DateOnly.TryParseExact(due, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var read)) return CommandFaults.DayUnreadable(due);
            day = read;
        }

        var terms = new Terms(to?.Trim() ?? "", gift ? HandOverKind.Gift : loan ? HandOverKind.Loan : HandOverKind.Sale, price, day, agreed?.Trim() ?? "");
        return terms.Faults() is { Count: > 0 } faults ? Result<Terms>.Fail(faults) : terms;
    }

    internal static Result<IReadOnlyList<Counted>> Counted(YardFile yard, string[] typed, Func<Bin, int> most)
    {
        var (all, faults, bins) = (new List<Counted>(), new List<Fault>(), yard.Bins());
        foreach (var one in typed)
        {
            var read = CountedWords.Read(one, bins, most);
            if (read.TryGet(out var counted)) all.AddRange(counted);
            else faults.AddRange(read.Faults);
        }

        return faults.Count > 0 ? Result<IReadOnlyList<Counted>>.Fail(faults) : all;
    }

    private static Option<string> Text(string name, string description, string helpName) => new(name) { Description = description, HelpName = helpName };

    private static Option<string[]> Many(string name, string description, string helpName) => new(name) { Description = description, HelpName = helpName };

    private static FileParts FileOptions() => new(
        Text("--file", "Write the file that their Offcuts takes in", "FILE"),
        Text("--from", "With --file: your name, as they are to see it", "NAME"),
        new("--notes") { Description = "With --file: notes go along" },
        new("--prices") { Description = "With --file: what it is worth, and a sale's price, go along" });

    private sealed record FileParts(Option<string> File, Option<string> From, Option<bool> Notes, Option<bool> Prices)
    {
        public IEnumerable<Symbol> All => [File, From, Notes, Prices];

        public FileWish Of(ParseResult parse) => new(parse.GetValue(File), parse.GetValue(From)?.Trim() ?? "", parse.GetValue(Notes), parse.GetValue(Prices));
    }
}
