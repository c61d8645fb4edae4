using System.CommandLine;
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

/// <summary>Making plans: the command <c>plan</c>.</summary>
internal sealed class PlanCommand
{
    /// <summary>Seconds that a match takes where nothing is said.</summary>
    public const double UsualSeconds = 20;

    /// <summary>Its options behind which a code stands.</summary>
    public static IReadOnlyList<string> OfCodes { get; } = ["--spare", "--release"];

    private readonly CommandContext _context;

    private readonly Argument<string[]> _stages = new("stages") { Description = "Stages to plan together; all if none is named", Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<bool> _save = new("--save") { Description = "Keep the plan in the yard, to be carried out" };
    private readonly Option<bool> _noBuy = new("--no-buy") { Description = "Use only what the yard has; kept with the plan, and holds when the rest is matched again" };
    private readonly Option<bool> _buy = new("--buy") { Description = "Let it buy again where a kept plan bought nothing" };
    private readonly Option<string[]> _pin = Many("--pin", "Take this piece for that cut, like \"K7F 3MXX for blocking\"; may be given again", "PIECE for CUT");
    private readonly Option<string[]> _spare = Many("--spare", "Leave this piece alone, or only \"PIECE for CUT\"; may be given again", "PIECE");
    private readonly Option<string[]> _release = Many("--release", "Let go what an earlier plan keeps of this piece: its pins, its being left alone", "PIECE");
    private readonly Option<string> _explain = new("--explain") { Description = "Say why this cut is filled as it is, and what would have to change where it is not", HelpName = "CUT" };
    private readonly Option<bool> _compare = new("--compare") { Description = "Show three plans side by side: the best, the fewest saw cuts at the same spend, nothing bought" };
    private readonly Option<int?> _take = new("--take") { Description = "With --compare: keep this one of them in the yard", HelpName = "NUMBER" };
    private readonly Option<bool> _json = new("--json") { Description = "Print the plan as JSON" };
    private readonly Option<double> _time = new("--time") { Description = "Seconds to look for a better plan", HelpName = "SECONDS", DefaultValueFactory = _ => UsualSeconds };
    private readonly Option<string> _stock = File("--stock", "Plan from this stock file instead of the yard");
    private readonly Option<string> _cuts = File("--cuts", "The cuts file that goes with it");
    private readonly Option<string> _prices = File("--prices", "The prices file that goes with it");
    private readonly Option<string> _kerf = new("--kerf") { Description = "With files: what one saw cut destroys (1/8 in)", HelpName = "LENGTH" };
    private readonly Option<string> _keep = new("--keep") { Description = "With files: shortest remainder worth a label (12 in)", HelpName = "LENGTH" };

    // The yard's change number when its problem was read.
    private long _seen;

    private PlanCommand(CommandContext context) => _context = context;

    /// <summary>The command.</summary>
    public static Command Of(CommandContext context)
    {
        var plan = new PlanCommand(context);
        var command = context.Command(
            "plan",
            "Find which pieces fill the cuts with the least bought and the least spoiled",
            [
                "offcuts plan",
                "offcuts plan \"footing forms\" walls --no-buy",
                "offcuts plan --save",
                "offcuts plan walls --pin \"K7F 3MXX for blocking\" --spare N4PX7AW",
                "offcuts plan --explain blocking",
                "offcuts plan --compare --take 2",
                "offcuts plan --stock stock.csv --cuts cuts.csv --prices prices.csv --kerf 1/8in --json",
            ],
            plan._stages, plan._save, plan._noBuy, plan._buy, plan._pin, plan._spare, plan._release, plan._explain, plan._compare, plan._take, plan._json, plan._time, plan._stock, plan._cuts, plan._prices, plan._kerf, plan._keep);
        command.SetAction(plan.RunUntilStopped);
        return command;
    }

    /// <summary>Limits by this clock; a stop is heard within half a second, even inside a solver.</summary>
    public static MatchLimits Limits(CommandContext context, double seconds, CancellationToken cancel) =>
        new() { Time = TimeSpan.FromSeconds(seconds), Clock = context.World.Clock, Cancel = cancel, Patience = MatchLimits.UsualPatience };

    // Stopped, it still says the best plan so far, but keeps nothing.
    private int RunUntilStopped(ParseResult parse)
    {
        using var cancel = new CancellationTokenSource();
        using var signals = new StopSignals(cancel.Cancel);
        var status = Run(parse, cancel.Token);
        return signals.Status ?? status;
    }

    private int Run(ParseResult parse, CancellationToken cancel)
    {
        var seconds = parse.GetValue(_time);
        if (!double.IsFinite(seconds) || seconds is <= 0 or > 86_400) return _context.Refuse([PlanFaults.TimeUnreadable()]);
        if (parse.GetValue(_buy) && parse.GetValue(_noBuy)) return _context.Refuse([PlanFaults.BuyOrNot()]);
        if (parse.GetValue(_take) is not null && !parse.GetValue(_compare)) return _context.Refuse([PlanFaults.TakeWithoutCompare()]);
        var limits = Limits(_context, seconds, cancel);
        if (new[] { _stock, _cuts, _prices }.Any(option => parse.GetValue(option) is not null)) return FromFiles(parse, limits);
        if (parse.GetValue(_kerf) is not null || parse.GetValue(_keep) is not null) return _context.Refuse([PlanFaults.OnlyWithFiles()]);
        return _context.WithYard(parse, yard => FromYard(parse, yard, limits));
    }

    private int FromYard(ParseResult parse, YardFile yard, MatchLimits limits)
    {
        _seen = yard.ChangeNumber;
        var wish = Wish(parse, yard);
        if (!wish.TryGet(out var wanted)) return _context.Refuse(wish.Faults);
        var kept = yard.Plans();
        foreach (var code in wanted.Released.Where(code => kept.All(plan => plan.Plan.Wishes.Pins.All(pin => pin.Piece != code) && plan.Plan.Wishes.Spares.All(spare => spare.Piece != code))))
            _context.Complain(PlanFaults.NothingKeptOf(code.ToString()).Sentence);
        var asked = new MatchStages(yard).Problem(wanted);
        if (asked is { Ok: false } && (asked.Fault == PlanFaults.NothingLacking() || asked.Fault == PlanFaults.NoStageYet()))
        {
            _context.Complain(asked.Fault.Sentence);
            return Exit.Done;
        }

        var options = SheetOptions.For(yard, _context.World.Today);
        return asked.TryGet(out var problem) ? Answer(parse, yard, problem, options, code => code.Text, limits) : _context.Refuse(asked.Faults);
    }

    // What is asked about a problem: the plan, why a cut is filled as it is, or several plans side by side.
    private int Answer(ParseResult parse, YardFile? yard, Problem problem, CutSheetOptions options, Func<Code, string> inJson, MatchLimits limits)
    {
        using var watch = new MatchWatch(_context.World, limits, (sofar, took) => ProgressText.Of(sofar, took, options.Settings.CurrencySign));
        if (parse.GetValue(_compare)) return Compare(parse, yard, problem, options, inJson, watch);
        if (parse.GetValue(_explain) is not { } named)
        {
            var found = Matcher.Match(problem, watch.Limits);
            watch.Dispose();
            return Show(parse, yard, found, options, inJson, watch);
        }

        if (parse.GetValue(_save)) return _context.Refuse([PlanFaults.OneQuestion()]);
        var cut = WishWords.Cut(named, problem.Stages);
        if (!cut.TryGet(out var one)) return _context.Refuse(cut.Faults);
        var plan = Matcher.Match(problem, watch.Limits);
        var why = Explainer.Of(problem, plan, one, limits);
        watch.Dispose();
        if (parse.GetValue(_json)) _context.World.Out.WriteLine(WhyJson.Write(why, plan, inJson));
        else foreach (var line in ExplainText.Of(why, plan, options.Settings, options.CodeText, fromFiles: yard is null).Concat(yard is null ? [] : WaitElsewhere.Lines(yard, problem, one))) _context.Say(line);
        return why.Unfilled.Count > 0 ? Exit.Unfilled : Exit.Done;
    }

    private int Compare(ParseResult parse, YardFile? yard, Problem problem, CutSheetOptions options, Func<Code, string> inJson, MatchWatch watch)
    {
        var limits = watch.Limits;
        var take = parse.GetValue(_take);
        if (parse.GetValue(_explain) is not null || parse.GetValue(_save)) return _context.Refuse([PlanFaults.OneQuestion()]);
        if (take is not null && yard is null) return _context.Refuse([PlanFaults.NotWithFiles()]);
        var rivals = Comparison.Of(problem, limits);
        watch.Dispose();
        if (take is < 1 || (take > rivals.Count && !limits.Cancel.IsCancellationRequested)) return _context.Refuse([PlanFaults.NoSuchRival(rivals.Count)]);
        var kept = take is { } number && !limits.Cancel.IsCancellationRequested ? new KeepPlan(yard!).Keep(rivals[number - 1].Plan, _seen) : NotKept;
        if (!kept.TryGet(out var done)) return _context.Refuse(kept.Faults);
        var id = done.Id;
        if (parse.GetValue(_json)) _context.World.Out.WriteLine(WhyJson.Write(rivals, inJson));
        else
        {
            Tables.Write(_context.World, CompareText.Headings(rivals), CompareText.Rows(rivals, options.Settings));
            _context.Say(CompareText.Stages(rivals));
            _context.Say(CompareText.Note(rivals));
            if (CompareText.Wished(rivals) is { Length: > 0 } wished) _context.Say(wished);
            if (limits.Cancel.IsCancellationRequested) _context.Say(CompareText.Stopped);
            if (id > 0) _context.Say($"Kept the {CompareText.Of(rivals[take!.Value - 1].Aim)} plan as plan {id}. Print it with: offcuts sheet {id}");
            else if (yard is not null) _context.Say("Keep one of them with its number: offcuts plan --compare --take 1");
            SayGivenUp(done);
        }

        return rivals[Math.Min(take ?? 1, rivals.Count) - 1].Plan.Unfilled.Count > 0 ? Exit.Unfilled : Exit.Done;
    }

    private int Show(ParseResult parse, YardFile? yard, Plan plan, CutSheetOptions options, Func<Code, string> inJson, MatchWatch watch)
    {
        var stopped = watch.Limits.Cancel.IsCancellationRequested;
        var save = parse.GetValue(_save) && !stopped;
        var kept = save ? new KeepPlan(yard!).Keep(plan, _seen) : NotKept;
        if (!kept.TryGet(out var done)) return _context.Refuse(kept.Faults);
        var id = done.Id;
        // What is said of it is said of what is kept: where the yard changed meanwhile, that it was proven of the one before.
        plan = done.Plan ?? plan;

        if (parse.GetValue(_json)) _context.World.Out.WriteLine(PlanJson.Write(plan, inJson, EndWord(watch.EndOf(plan), plan)));
        else
        {
            // At a tailgate the answer is wanted first; the sheet explains it.
            foreach (var line in PlanInShort.Of(plan, options.Settings)) _context.Say(line);
            if (watch.Told(plan) is { Length: > 0 } ended) _context.Say(ended);
            if (!(stopped && parse.GetValue(_save)))
            {
                // Who stopped what was to be kept wants no sheet of what is not.
                _context.Say();
                _context.World.Out.Write(save ? CutSheet.Text(yard!.Plan(id)!, options) : CutSheet.Text(plan, options));
            }

            if (yard is not null)
            {
                _context.Say();
                SayGivenUp(done);
                _context.Say(save ? $"Kept as plan {id}. Carry it out with: offcuts cut {id} --all" : "Not kept. Keep it with: offcuts plan --save");
            }
        }

        return plan.Unfilled.Count > 0 ? Exit.Unfilled : Exit.Done;
    }

    private static string? EndWord(MatchEnd end, Plan plan) => end switch
    {
        MatchEnd.TimeLimit => "time-limit",
        MatchEnd.Stopped => "stopped",
        _ => plan is { Proven: true, Earlier: false } ? "proof" : null,
    };

    private static Result<PlanKept> NotKept => new PlanKept(0, []);

    private void SayGivenUp(PlanKept kept)
    {
        if (kept.ToText() is { Length: > 0 } text) _context.Say($"{char.ToUpperInvariant(text[0])}{text[1..]}.");
        foreach (var meaning in kept.Meaning()) _context.Say($"{char.ToUpperInvariant(meaning[0])}{meaning[1..]}");
    }

    private Result<MatchWish> Wish(ParseResult parse, YardFile yard)
    {
        var released = Codes.Read(parse.GetValue(_release) ?? []);
        if (!released.TryGet(out var codes)) return Result<MatchWish>.Fail(released.Faults);
        return WishWords.Read(parse.GetValue(_pin) ?? [], parse.GetValue(_spare) ?? [], yard.Stages(), Code.Parse).Then<MatchWish>(wishes =>
            new MatchWish(parse.GetValue(_stages) ?? [], parse.GetValue(_noBuy) ? false : parse.GetValue(_buy) ? true : null) { Wishes = wishes, Released = codes });
    }

    private int FromFiles(ParseResult parse, MatchLimits limits)
    {
        if (parse.GetValue(_cuts) is not { } cutsFile) return _context.Refuse([PlanFaults.CutsFileMissing()]);
        if (parse.GetValue(_stages) is { Length: > 0 } || parse.GetValue(_save) || parse.GetValue(_release) is { Length: > 0 }) return _context.Refuse([PlanFaults.NotWithFiles()]);
        var faults = new List<Fault>();
        var settings = YardSettings.Usual with
        {
            KerfElsewhere = Read(parse.GetValue(_kerf), "--kerf", YardSettings.UsualKerf, faults),
            KeepElsewhere = Read(parse.GetValue(_keep), "--keep", YardSettings.UsualKeep, faults),
        };
        if (faults.Count > 0) return _context.Refuse(faults);

        var stock = parse.GetValue(_stock) is { } stockFile
            ? TextLines.Open(_context.World, stockFile, (stream, name) => StockFile.Read(stream, name, CodePolicy.AsWritten))
            : (Result<Stock>?)null;
        var cuts = TextLines.Open(_context.World, cutsFile, (stream, name) => CutsFile.Read(stream, name));
        var prices = parse.GetValue(_prices) is { } pricesFile
            ? TextLines.Open(_context.World, pricesFile, (stream, name) => PricesFile.Read(stream, name))
            : (Result<PriceBook>?)null;
        var wish = new FilesWish(!parse.GetValue(_noBuy), parse.GetValue(_pin) ?? [], parse.GetValue(_spare) ?? []);
        var files = new PlanFiles(stock, cuts, prices);
        settings = settings with { Unit = MatchFiles.UnitOf(files) };
        var asked = MatchFiles.Problem(files, settings, wish);
        if (!asked.TryGet(out var problem)) return _context.Refuse(asked.Faults);
        Func<Code, string> written = stock is { } read ? read.Value.WrittenCode : code => code.ToString();
        return Answer(parse, null, problem, SheetOptions.For(settings, prices?.Value ?? PriceBook.Empty, _context.World.Today, written), written, limits);
    }

    private static Option<string[]> Many(string name, string description, string helpName) => new(name) { Description = description, HelpName = helpName };

    private static Option<string> File(string name, string description) => new(name) { Description = description, HelpName = "FILE" };

    private static Length Read(string? text, string option, Length usual, List<Fault> faults)
    {
        if (text is null) return usual;
        var read = Length.Parse(text);
        if (read.TryGet(out var length)) return length;
        faults.Add(new Fault($"{option}: {read.Fault.Sentence}"));
        return usual;
    }
}
