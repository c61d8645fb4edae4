using System.Globalization;
using System.Reflection;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Print;
using Offcuts.Store;
using Offcuts.Store.Interchange;

namespace Offcuts.UseCases;

/// <summary>
/// Runs the whole job on invented data, by the same use cases that the commands and screens call, and tells each step: strip
/// and catalogue, label, enter needs, match, cut (with one cut that goes wrong), and what it saved.
/// </summary>
public sealed class RunDemo(Surroundings world)
{
    private const string YardName = "demo-yard.offcuts";

    /// <summary>Runs it in a folder of its own; refuses one that holds a demo already.</summary>
    /// <param name="folder">Where the yard and the prints go; null for a new folder among the temporary files.</param>
    public Result<string> Run(string? folder)
    {
        var place = folder is { Length: > 0 } ? folder : Path.Combine(Path.GetTempPath(), $"offcuts-demo-{world.Clock.GetLocalNow().ToString("yyyyMMdd-HHmmss", CultureInfo.InvariantCulture)}");
        var path = Path.Combine(place, YardName);
        if (File.Exists(place)) return CommandFaults.IsFile(place);
        if (File.Exists(path)) return CommandFaults.DemoFolderInUse(place);
        Directory.CreateDirectory(place);
        using var yard = YardFile.Open(path, world.Clock);

        Say("Everything in this demo is invented: the orchard workshop, the cousin's cabin, the boards and the prices.");
        Strip(yard);
        Label(yard, place);
        Need(yard);
        var plan = Match(yard, place);
        Cut(yard, plan);
        Save(yard);
        Say();
        Say($"Look around in it with: offcuts --yard {ShellWord.Of(path)}");
        return path;
    }

    private void Strip(YardFile yard)
    {
        Step("1. Strip the forms and catalogue what comes off");
        Must(yard.Change("set the demo's settings", work => work.SetSettings(Settings)));
        var catalogue = new CataloguePieces(yard);
        var lines = Lines("stripped.txt");
        var read = Must(catalogue.Read(lines));
        Say($"   > {lines[2]}");
        Say($"     {read[2].ReadBack(Settings.Unit)}");
        var saved = Must(catalogue.Save(read, newNames: true));
        var feet = saved.Pieces.Select(piece => Quantities.BoardFeetOf(piece.Material, piece.Length) ?? default).Aggregate((a, b) => a + b);
        Say($"   {saved.Pieces.Count} pieces ({feet}) and {saved.Bins.Count} bins of hardware in {lines.Count} lines");
        Warn(Cautions.PuttingAway);
    }

    private void Label(YardFile yard, string place)
    {
        Step("2. Print their labels, and a sheet of blank ones for the next form");
        var print = new PrintLabels(yard, world.Today);
        Say("   " + Must(print.Print(null, PrintLabels.UsualLayout, 1, Path.Combine(place, "labels.pdf"))));
        Say("   " + Must(print.PrintBlanks(10, PrintLabels.UsualLayout, 1, Path.Combine(place, "blanks.pdf"))));
        var blank = yard.BlankCodes()[0];
        var catalogue = new CataloguePieces(yard);
        var typed = Must(catalogue.Read([$"{blank} 2x4 9'1 stamped @east bay"]));
        Must(catalogue.Save(typed));
        Say($"   one more board turned up: blank label {blank} tied on, scanned, catalogued as 2x4 9' 1\"");
    }

    private void Need(YardFile yard)
    {
        Step("3. Enter what the next stages need, and what new lengths cost");
        Must(new ChangePrices(yard).Import(Must(Read("prices.csv", (stream, file) => PricesFile.Read(stream, file))), world.Today));
        Must(new ChangeStages(yard).Import(Must(Read("cuts.csv", (stream, file) => CutsFile.Read(stream, file)))));
        var day = world.Today;
        foreach (var stage in yard.Stages())
        {
            day = day.AddDays(14);
            Must(new ChangeStages(yard).SetDate(stage.Name, day));
            Say($"   {stage.Name}, {day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}: {stage.Cuts.Sum(cut => cut.Count)} cuts in {stage.Cuts.Count} sizes, {stage.Hardware.Sum(need => need.Count)} counted things");
        }
    }

    private KeptPlan Match(YardFile yard, string place)
    {
        Step("4. Match all three stages at once");
        var plan = Must(new MatchStages(yard).Match(new MatchWish([]), Limits));
        var id = Must(new KeepPlan(yard).Keep(plan)).Id;
        var kept = yard.Plan(id)!;
        Say($"   {plan.Pieces.Count(piece => piece.Source is not null)} pieces from the yard, {plan.Pieces.Count(piece => piece.Bought is not null)} to buy for {Money(plan.Tiers.Spend.Value)}; {Words.Standing(plan)}");
        Say($"   all new it would cost {plan.Savings.AllNew.ToText("$")}, so the plan saves {plan.Savings.Saved.ToText("$")}");
        foreach (var unfilled in plan.Unfilled) Say($"   unfilled: {unfilled.Count} {unfilled.Cut}: {unfilled.Reason}");
        var sheet = Path.Combine(place, "cut-sheet.pdf");
        WholeFile.Write(sheet, stream => stream.Write(CutSheet.Pdf(kept, SheetOptions.For(yard, world.Today))));
        Say($"   wrote {sheet}");
        Say("   What to mind:");
        foreach (var caution in Cautions.ForPlan(plan)) Say($"   ! {caution.Caution}");
        Say($"   {Cautions.Closing}");
        return kept;
    }

    private void Cut(YardFile yard, KeptPlan kept)
    {
        Step("5. Cut once; one board splits, and the rest is matched again");
        var carry = new CarryOut(yard, world.Today, Limits);
        var first = FirstOf(kept, piece => piece.Source is not null && piece.Cuts.Count >= 2);
        var split = FirstOf(kept, piece => piece.Source is { Material: Lumber } && piece.Cuts.Count >= 2, after: first);
        Must(carry.Do(kept.Id, [new CutAct(first)], hardware: false));
        Say($"   cut {kept.Plan.Pieces[first].Source!.Code} as planned: {kept.Plan.Pieces[first].Cuts.Count} cuts");
        var broken = kept.Plan.Pieces[split];
        Must(carry.Do(kept.Id, [new CutAct(split, new WhatHappened([0], []))], hardware: false));
        Say($"   {broken.Source!.Code} split: only its {broken.Cuts[0].Cut} came out right, the rest of it is scrap");

        var again = Must(new MatchStages(yard).Match(new MatchWish([]), Limits));
        var id = Must(new KeepPlan(yard).Keep(again)).Id;
        var rest = yard.Plan(id)!;
        Say($"   matched the rest again: {again.Pieces.Count} pieces, {Money(again.Tiers.Spend.Value)} to spend, {Words.Standing(again)}");
        var done = Must(carry.Do(id, [.. Enumerable.Range(0, rest.Steps.Count).Select(index => new CutAct(index))], hardware: true));
        Say($"   cut all of it; {done.NewPieces.Count} remainders went back to the yard and wait for their labels");
    }

    private void Save(YardFile yard)
    {
        Step("6. What it saved");
        foreach (var line in LedgerText.Of(yard, world.Today, everyLine: false)) Say(line.Length > 0 ? "   " + line : "");
        Say($"   {yard.Pieces().Count} pieces are left in the yard for the next job");
    }

    private static int FirstOf(KeptPlan kept, Func<PlannedPiece, bool> wanted, int after = -1) =>
        Enumerable.Range(0, kept.Plan.Pieces.Count).First(index => index > after && wanted(kept.Plan.Pieces[index]));

    // A shear cuts bars and a knife cuts foam: neither loses anything. Common practice.
    private static YardSettings Settings { get; } = YardSettings.Usual with
    {
        TaxThousandthsOfPercent = 6500,
        Kerfs = YardSettings.Usual.Kerfs.SetItem(MaterialFamily.Rebar, Length.Zero).SetItem(MaterialFamily.Foam, Length.Zero),
        Keeps = YardSettings.Usual.Keeps.SetItem("#4", Length.Inches(24)),
    };

    private MatchLimits Limits => new() { Clock = world.Clock };

    private void Step(string title)
    {
        Say();
        Say(title);
    }

    private void Say(string line = "")
    {
        foreach (var part in world.OutIsTerminal ? TerminalLines.Of(TextRules.Harmless(line), world.Width) : [TextRules.Harmless(line)]) world.Out.WriteLine(part);
    }

    private void Warn(Caution caution) => Say($"   ! {caution} {Cautions.Closing}");

    private static string Money(long cents) => new Money(cents).ToText("$");

    private static T Must<T>(Result<T> result) =>
        result.TryGet(out var value) ? value : throw new InvalidOperationException($"the demo can't go on: {result.Fault}");

    private static IReadOnlyList<string> Lines(string name)
    {
        using var reader = new StreamReader(Open(name));
        return reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
    }

    private static Result<T> Read<T>(string name, Func<Stream, string, Result<T>> read)
    {
        using var stream = Open(name);
        return read(stream, name);
    }

    private static Stream Open(string name) =>
        Assembly.GetExecutingAssembly().GetManifestResourceStream("Offcuts.Demo." + name)
        ?? throw new InvalidOperationException($"the demo's {name} is not in the program");
}
