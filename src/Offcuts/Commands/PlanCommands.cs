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
    /// <summary>The commands <c>plan</c>, <c>plans</c>, <c>sheet</c>, <c>cut</c> and <c>drop</c>.</summary>
    public static IEnumerable<Command> All(CommandContext context) => [PlanCommand.Of(context), Plans(context), Sheet(context), Cut(context), Drop(context)];

    private static Command Plans(CommandContext context)
    {
        var json = CommandContext.Json();
        var command = context.Command("plans", "List the plans that are kept, and how far each has come", ["offcuts plans", "offcuts plans --json"], json);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var plans = yard.Plans();
            if (parse.GetValue(json))
            {
                context.World.Out.WriteLine(ListJson.OfPlans(plans));
                return Exit.Done;
            }

            if (plans.Count == 0)
            {
                context.Say(PlanFaults.NoPlan().Sentence);
                return Exit.Done;
            }

            var sign = yard.Settings().CurrencySign;
            Tables.Write(context.World, [">Plan", "Made", "Stages", ">To cut", ">Cut", ">Given up", ">To buy yet", "Best?"], plans.Select(kept => (IReadOnlyList<string>)
            [
                Number(kept.Id),
                kept.Made.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                string.Join(", ", kept.Plan.Stages),
                Number(kept.Count(StepState.Waiting)),
                Number(kept.Count(StepState.Done) + kept.Count(StepState.DoneOtherwise)),
                Number(kept.Count(StepState.Dropped)),
                kept.ToBuyYet.ToText(sign),
                !kept.Plan.Proven ? "best found" : kept.Plan.Earlier ? "was proven" : "proven",
            ]));
            foreach (var line in PlanWords.Columns) context.Say(line);
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
            var options = SheetOptions.For(yard, kept, context.World.Today);
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
        var stage = new Option<string>("--stage") { Description = "What waits for this stage was done as planned; what the plan relies on for others is reserved for them", HelpName = "STAGE" };
        var hardware = new Option<bool>("--hardware") { Description = "The hardware was counted out" };
        var made = new Option<string[]>("--made") { Description = "With one piece: only these of its cuts came out right", HelpName = "CUT", AllowMultipleArgumentsPerToken = true };
        var nothing = new Option<bool>("--spoilt") { Description = "With one piece: none of its cuts came out right" };
        var left = new Option<string[]>("--left") { Description = "With --made or --spoilt: lengths that are left and worth keeping; a strip with what it is, like \"2x4 48\"; where it is bad, like 40 bad 10..14, or clean; of foam where its first pattern line is, like 20 line 0", HelpName = "LENGTH", AllowMultipleArgumentsPerToken = true };
        var command = context.Command(
            "cut",
            "Say what was cut: the source leaves the yard, remainders come in, the ledger is written",
            [
                "offcuts cut 3 --all",
                "offcuts cut 3 --stage \"footing forms\"",
                "offcuts cut 3 --piece \"K7F 3MXX\"",
                "offcuts cut 3 --piece K7F3MXX --made brace --left 40 22-1/2",
                "offcuts cut 3 --piece K7F3MXX --spoilt --left \"40 bad 10..14\" \"22-1/2 clean\"",
                "offcuts cut 3 --piece HNEWPH3 --spoilt --left \"20 line 0\"",
            ],
            id, codes, all, stage, hardware, made, nothing, left);
        command.SetAction(parse => context.WithYard(parse, yard =>
        {
            if (Find(yard, parse.GetValue(id)) is not { } kept) return context.Refuse([Missing(parse.GetValue(id))]);
            var acts = CutActs.Read(kept, new CutWords(
                parse.GetValue(codes) ?? [],
                parse.GetValue(all),
                parse.GetValue(made) ?? [],
                parse.GetValue(nothing),
                parse.GetValue(left) ?? [],
                parse.GetValue(stage)), yard.Settings(), yard.Bins());
            if (!acts.TryGet(out var list)) return context.Refuse(acts.Faults);
            var counted = parse.GetValue(hardware) || (parse.GetValue(all) && kept.HardwareWaits && kept.Plan.Hardware.Count > 0);
            var done = new CarryOut(yard, context.World.Today, PlanCommand.Limits(context, PlanCommand.UsualSeconds, CancellationToken.None)).Do(kept.Id, list, counted);
            if (!done.TryGet(out var result)) return context.Refuse(done.Faults);
            var after = yard.Plan(kept.Id)!;
            foreach (var act in list) context.Say(TellAct(after, act.Index, yard.Settings().Unit));
            if (counted) context.Say($"counted out: {string.Join(", ", after.Plan.Hardware.Select(fill => $"{fill.FromYard + fill.ToBuy} {fill.Need.Hardware}"))}");
            TellDone(context, yard, result);
            foreach (var line in CutText.Next(result, yard.WallPlans().FirstOrDefault(plan => plan.PlanId == kept.Id)?.Wall)) context.Say(line);
            return Exit.Done;
        }));
        return command;
    }

    private static string TellAct(KeptPlan kept, int index, LengthUnit unit)
    {
        var piece = kept.Steps[index].Actual ?? kept.Plan.Pieces[index];
        var name = piece.Source?.Code.ToString() ?? $"bought {piece.Material} {piece.Length.ToText(unit)}";
        var planned = kept.Plan.Pieces[index].Cuts.Count;
        var asPlanned = kept.Steps[index].State == StepState.Done;
        var scrap = piece.Remainders.Where(left => !left.Kept).Aggregate(Length.Zero, (sum, left) => sum + left.Length);
        var toHeight = piece.Cuts.Count(cut => cut.Rip?.Into.Equals(piece.Material) is true);
        var ripped = piece.Cuts.Count(cut => cut.Rip is not null) - toHeight;
        var how = asPlanned ? $"cut as planned, {Words.Count(piece.Cuts.Count, "cut")}" : $"cut otherwise, {piece.Cuts.Count} of {Words.Count(planned, "cut")} came out right";
        return $"{name}: {how}{(ripped > 0 ? $", {ripped} of them ripped" : "")}{(toHeight > 0 ? $", {toHeight} of them cut to height" : "")}{(scrap.IsZero ? "" : $", {scrap.ToText(unit)} of scrap")}";
    }

    /// <summary>Says what carrying out did.</summary>
    internal static void TellDone(CommandContext context, YardFile yard, CarriedOut done)
    {
        var settings = yard.Settings();
        foreach (var line in CutText.Nails(done)) context.Say(line);
        foreach (var piece in done.NewPieces)
            context.Say($"new {piece.Code}: {piece.Material} {piece.Length.ToText(settings.Unit)}{Words.Line(piece, settings.Unit)} at {(piece.Place.Length > 0 ? piece.Place : "no place yet")}; its label waits to be printed");
        if (done.NewPieces.Any(piece => piece.Material is Lumber))
            context.Say("A cut can take the grade stamp off: where it still shows on a new piece, mark it stamped.");
        foreach (var kept in done.Reserved.GroupBy(piece => piece.ReservedFor))
            context.Say($"reserved for {kept.Key}: {string.Join(", ", kept.Select(piece => piece.Code))}; let go with: offcuts free");
        foreach (var line in CutText.Gained(done, settings.CurrencySign)) context.Say(line);
        if (PriceBook.OldSentence(yard.Prices().Old(context.World.Today, unit: settings.Unit)) is { } old) context.Say(old);
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

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
