using System.CommandLine;
using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Print;
using Offcuts.Store;
using Offcuts.Store.Interchange;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>Making plans, printing them and carrying them out.</summary>
internal static class PlanCommands
{
    private const double UsualSeconds = 20;

    /// <summary>The commands <c>plan</c>, <c>plans</c>, <c>sheet</c>, <c>cut</c> and <c>drop</c>.</summary>
    public static IEnumerable<Command> All(CommandContext context) => [Plan(context), Plans(context), Sheet(context), Cut(context), Drop(context)];

    private static Command Plan(CommandContext context)
    {
        var stages = new Argument<string[]>("stages") { Description = "Stages to plan together; all if none is named", Arity = ArgumentArity.ZeroOrMore };
        var save = new Option<bool>("--save") { Description = "Keep the plan in the yard, to be carried out" };
        var noBuy = new Option<bool>("--no-buy") { Description = "Use only what the yard has" };
        var json = new Option<bool>("--json") { Description = "Print the plan as JSON" };
        var time = new Option<double>("--time") { Description = "Seconds to look for a better plan", HelpName = "SECONDS", DefaultValueFactory = _ => UsualSeconds };
        var stock = new Option<string>("--stock") { Description = "Plan from this stock file instead of the yard", HelpName = "FILE" };
        var cuts = new Option<string>("--cuts") { Description = "The cuts file that goes with it", HelpName = "FILE" };
        var prices = new Option<string>("--prices") { Description = "The prices file that goes with it", HelpName = "FILE" };
        var kerf = new Option<string>("--kerf") { Description = "With files: what one saw cut destroys (1/8 in)", HelpName = "LENGTH" };
        var keep = new Option<string>("--keep") { Description = "With files: shortest remainder worth a label (12 in)", HelpName = "LENGTH" };
        var command = context.Command(
            "plan",
            "Find which pieces fill the cuts with the least bought and the least spoiled",
            [
                "offcuts plan",
                "offcuts plan \"footing forms\" walls --no-buy",
                "offcuts plan --save",
                "offcuts plan --stock stock.csv --cuts cuts.csv --prices prices.csv --kerf 1/8in --json",
            ],
            stages, save, noBuy, json, time, stock, cuts, prices, kerf, keep);
        command.SetAction((parse, cancel) => Task.FromResult(Run(parse, cancel)));
        return command;

        int Run(ParseResult parse, CancellationToken cancel)
        {
            var seconds = parse.GetValue(time);
            if (!double.IsFinite(seconds) || seconds is <= 0 or > 86_400) return context.Refuse([PlanFaults.TimeUnreadable()]);
            var limits = Limits(context, seconds, cancel);
            var buy = !parse.GetValue(noBuy);
            var files = new[] { stock, cuts, prices }.Any(option => parse.GetValue(option) is not null);
            if (files)
            {
                if (parse.GetValue(cuts) is not { } cutsFile) return context.Refuse([PlanFaults.CutsFileMissing()]);
                if (parse.GetValue(stages) is { Length: > 0 } || parse.GetValue(save)) return context.Refuse([PlanFaults.NotWithFiles()]);
                return FromFiles(context, new FileNames(parse.GetValue(stock), cutsFile, parse.GetValue(prices)), parse.GetValue(kerf), parse.GetValue(keep), buy, parse.GetValue(json), limits);
            }

            if (parse.GetValue(kerf) is not null || parse.GetValue(keep) is not null) return context.Refuse([PlanFaults.OnlyWithFiles()]);
            return context.WithYard(parse, yard =>
                FromYard(context, yard, new MatchWish(parse.GetValue(stages) ?? [], buy), parse.GetValue(save), parse.GetValue(json), limits));
        }
    }

    private static int FromYard(CommandContext context, YardFile yard, MatchWish wish, bool save, bool json, MatchLimits limits)
    {
        var matched = new MatchStages(yard).Match(wish, limits);
        if (matched is { Ok: false } && matched.Fault == PlanFaults.NothingLacking())
        {
            context.World.Error.WriteLine(matched.Fault.Sentence);
            return Exit.Done;
        }

        if (!matched.TryGet(out var plan)) return context.Refuse(matched.Faults);
        var kept = save ? new KeepPlan(yard).Keep(plan) : Result<int>.Of(0);
        if (!kept.TryGet(out var id)) return context.Refuse(kept.Faults);

        if (json) context.World.Out.WriteLine(PlanJson.Write(plan, code => code.Text));
        else
        {
            var options = SheetOptions.For(yard, context.World.Today);
            SayInShort(context, plan, options);
            context.World.Out.Write(save ? CutSheet.Text(yard.Plan(id)!, options) : CutSheet.Text(plan, options));
            context.Say();
            context.Say(save ? $"Kept as plan {id}. Carry it out with: offcuts cut {id} --all" : "Not kept. Keep it with: offcuts plan --save");
        }

        return plan.Unfilled.Count > 0 ? Exit.Unfilled : Exit.Done;
    }

    private static int FromFiles(CommandContext context, FileNames files, string? kerf, string? keep, bool buy, bool json, MatchLimits limits)
    {
        var faults = new List<Fault>();
        var settings = YardSettings.Usual with
        {
            KerfElsewhere = Read(kerf, "--kerf", YardSettings.UsualKerf, faults),
            KeepElsewhere = Read(keep, "--keep", YardSettings.UsualKeep, faults),
        };
        if (faults.Count > 0) return context.Refuse(faults);

        var stock = files.Stock is { } stockFile
            ? TextLines.Open(context.World, stockFile, (stream, name) => StockFile.Read(stream, name, CodePolicy.AsWritten))
            : (Result<Stock>?)null;
        var cuts = TextLines.Open(context.World, files.Cuts, (stream, name) => CutsFile.Read(stream, name));
        var prices = files.Prices is { } pricesFile
            ? TextLines.Open(context.World, pricesFile, (stream, name) => PricesFile.Read(stream, name))
            : (Result<PriceBook>?)null;
        var matched = MatchFiles.Match(new PlanFiles(stock, cuts, prices), settings, buy, limits);
        if (!matched.TryGet(out var plan)) return context.Refuse(matched.Faults);
        Func<Code, string> written = stock is { } read ? read.Value.WrittenCode : code => code.ToString();
        if (json) context.World.Out.WriteLine(PlanJson.Write(plan, written));
        else
        {
            var options = SheetOptions.For(settings, prices?.Value ?? PriceBook.Empty, context.World.Today, written);
            SayInShort(context, plan, options);
            context.World.Out.Write(CutSheet.Text(plan, options));
        }

        return plan.Unfilled.Count > 0 ? Exit.Unfilled : Exit.Done;
    }

    // At a tailgate the answer is wanted first; the sheet explains it.
    private static void SayInShort(CommandContext context, Plan plan, CutSheetOptions options)
    {
        foreach (var line in PlanInShort.Of(plan, options.Settings.CurrencySign)) context.Say(line);
        context.Say();
    }

    private sealed record FileNames(string? Stock, string Cuts, string? Prices);

    private static Command Plans(CommandContext context)
    {
        var command = context.Command("plans", "List the plans that are kept, and how far each has come", ["offcuts plans"]);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var plans = yard.Plans();
            if (plans.Count == 0)
            {
                context.Say(PlanFaults.NoPlan().Sentence);
                return Exit.Done;
            }

            var sign = yard.Settings().CurrencySign;
            Tables.Write(context.World, [">Plan", "Made", "Stages", ">Pieces", ">Waiting", ">To buy", "Best?"], plans.Select(kept => (IReadOnlyList<string>)
            [
                Number(kept.Id),
                kept.Made.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                string.Join(", ", kept.Plan.Stages),
                Number(kept.Plan.Pieces.Count),
                Number(kept.Steps.Count(step => step.State == StepState.Waiting)),
                new Money(kept.Plan.Tiers.Spend.Value).ToText(sign),
                kept.Plan.Proven ? "proven" : "best found",
            ]));
            return Exit.Done;
        }));
        return command;
    }

    private static Command Sheet(CommandContext context)
    {
        var id = PlanNumber();
        var json = new Option<bool>("--json") { Description = "Print the plan as JSON" };
        var pdf = new Option<string>("--pdf") { Description = "Write the sheet as a PDF file instead", HelpName = "FILE" };
        var command = context.Command(
            "sheet",
            "Print the cut sheet of a kept plan: what to fetch, what to cut, what to buy",
            ["offcuts sheet", "offcuts sheet 3 --pdf sheet.pdf"],
            id, pdf, json);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            if (Find(yard, parse.GetValue(id)) is not { } kept) return context.Refuse([Missing(parse.GetValue(id))]);
            var options = SheetOptions.For(yard, context.World.Today);
            if (parse.GetValue(json))
            {
                context.World.Out.WriteLine(PlanJson.Write(kept.Plan, code => code.Text));
                return Exit.Done;
            }

            if (parse.GetValue(pdf) is not { } path)
            {
                context.World.Out.Write(CutSheet.Text(kept, options));
                return Exit.Done;
            }

            WholeFile.Write(path, stream => stream.Write(CutSheet.Pdf(kept, options)));
            context.Say($"Wrote {path}");
            return Exit.Done;
        }));
        return command;
    }

    private static Command Cut(CommandContext context)
    {
        var id = PlanNumber();
        var codes = new Option<string[]>("--piece") { Description = "A piece that was cut, by its code or its number on the sheet", HelpName = "PIECE", AllowMultipleArgumentsPerToken = true };
        var all = new Option<bool>("--all") { Description = "Everything that still waits was done as planned" };
        var hardware = new Option<bool>("--hardware") { Description = "The hardware was counted out" };
        var made = new Option<string[]>("--made") { Description = "With one piece: only these of its cuts came out right", HelpName = "CUT", AllowMultipleArgumentsPerToken = true };
        var nothing = new Option<bool>("--spoilt") { Description = "With one piece: none of its cuts came out right" };
        var left = new Option<string[]>("--left") { Description = "With --made or --spoilt: lengths that are left and worth keeping", HelpName = "LENGTH", AllowMultipleArgumentsPerToken = true };
        var command = context.Command(
            "cut",
            "Say what was cut: the source leaves the yard, remainders come in, the ledger is written",
            [
                "offcuts cut 3 --all",
                "offcuts cut 3 --piece \"K7F 3MXX\"",
                "offcuts cut 3 --piece K7F3MXX --made brace --left 40 22-1/2",
            ],
            id, codes, all, hardware, made, nothing, left);
        command.SetAction(parse => context.WithYard(parse, yard =>
        {
            if (Find(yard, parse.GetValue(id)) is not { } kept) return context.Refuse([Missing(parse.GetValue(id))]);
            var acts = CutActs.Read(kept, new CutWords(
                parse.GetValue(codes) ?? [],
                parse.GetValue(all),
                parse.GetValue(made) ?? [],
                parse.GetValue(nothing),
                parse.GetValue(left) ?? []), yard.Settings().Unit);
            if (!acts.TryGet(out var list)) return context.Refuse(acts.Faults);
            var counted = parse.GetValue(hardware) || (parse.GetValue(all) && kept.HardwareWaits && kept.Plan.Hardware.Count > 0);
            var done = new CarryOut(yard, context.World.Today, Limits(context, UsualSeconds, CancellationToken.None)).Do(kept.Id, list, counted);
            if (!done.TryGet(out var result)) return context.Refuse(done.Faults);
            var after = yard.Plan(kept.Id)!;
            foreach (var act in list) context.Say(TellAct(after, act.Index));
            TellDone(context, yard, result);
            return Exit.Done;
        }));
        return command;
    }

    private static string TellAct(KeptPlan kept, int index)
    {
        var piece = kept.Steps[index].Actual ?? kept.Plan.Pieces[index];
        var name = piece.Source?.Code.ToString() ?? $"bought {piece.Material} {piece.Length}";
        var how = kept.Steps[index].State == StepState.Done ? "cut as planned" : "cut otherwise";
        var scrap = piece.Remainders.Where(left => !left.Kept).Aggregate(Length.Zero, (sum, left) => sum + left.Length);
        return $"{name}: {how}, {Words.Count(piece.Cuts.Count, "cut")}{(scrap.IsZero ? "" : $", {scrap} of scrap")}";
    }

    private static void TellDone(CommandContext context, YardFile yard, CarriedOut done)
    {
        var settings = yard.Settings();
        foreach (var piece in done.NewPieces)
            context.Say($"new {piece.Code}: {piece.Material} {piece.Length.ToText(settings.Unit)} at {(piece.Place.Length > 0 ? piece.Place : "no place yet")}; its label waits to be printed");
        if (done.NewPieces.Any(piece => piece.Material is Lumber))
            context.Say("A cut can take the grade stamp off: where it still shows on a new piece, mark it stamped.");
        foreach (var line in done.Lines)
            context.Say($"{line.Stage}: all new {line.AllNew.ToText(settings.CurrencySign)}, spent {line.Spent.ToText(settings.CurrencySign)}, saved {line.Saved.ToText(settings.CurrencySign)}");
        if (PriceBook.OldSentence(yard.Prices().Old(context.World.Today)) is { } old) context.Say(old);
    }

    private static Command Drop(CommandContext context)
    {
        var id = new Argument<int>("plan") { Description = "Number of the plan" };
        var command = context.Command("drop", "Give up what still waits in a kept plan: its pieces and hardware are free again", ["offcuts drop 3"], id);
        command.SetAction(parse => context.WithYard(parse, yard => context.Tell(new DropPlan(yard).Drop(parse.GetValue(id)))));
        return command;
    }

    private static Argument<int> PlanNumber() =>
        new("plan") { Description = "Number of the plan; the newest if left out", Arity = ArgumentArity.ZeroOrOne };

    private static KeptPlan? Find(YardFile yard, int id) => id == 0 ? yard.Plans().LastOrDefault() : yard.Plan(id);

    private static Fault Missing(int id) => id == 0 ? PlanFaults.NoPlan() : PlanFaults.NoSuchPlan(id);

    private static MatchLimits Limits(CommandContext context, double seconds, CancellationToken cancel) =>
        new() { Time = TimeSpan.FromSeconds(seconds), Clock = context.World.Clock, Cancel = cancel };

    private static Length Read(string? text, string option, Length usual, List<Fault> faults)
    {
        if (text is null) return usual;
        var read = Length.Parse(text);
        if (read.TryGet(out var length)) return length;
        faults.Add(read.Fault with { Sentence = $"{option}: {read.Fault.Sentence}" });
        return usual;
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
