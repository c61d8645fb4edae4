using System.CommandLine;
using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Matching;
using Offcuts.Print;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>A wall's runs filled from the yard, kept, and stacked course by course.</summary>
internal static class WallFillCommands
{
    /// <summary>The command <c>wall fill</c>.</summary>
    public static Command Fill(CommandContext context)
    {
        var name = new Argument<string>("wall") { Description = "Name of the wall" };
        var noBuy = new Option<bool>("--no-buy") { Description = "Use only what the yard has; holds for the next filling too where it is kept" };
        var buy = new Option<bool>("--buy") { Description = "Let it buy again where the filling that is kept bought nothing" };
        var keep = new Option<bool>("--keep") { Description = "Keep it in the yard, to be cut and stacked" };
        var kept = new Option<bool>("--kept") { Description = "Show the one that is kept, and look for no other" };
        var time = new Option<double>("--time") { Description = "Seconds to look for a better one", HelpName = "SECONDS", DefaultValueFactory = _ => PlanCommand.UsualSeconds };
        var elevation = new Option<bool>("--elevation") { Description = "Draw its rows as it is filled, in text" };
        var pdf = new Option<string>("--pdf") { Description = "Write the cut sheet with the rows to scale as a PDF, kept or not", HelpName = "FILE" };
        var json = CommandContext.Json();
        var command = context.Command(
            "fill",
            "Fill a wall's courses from pieces on hand and new ones: what lies where, what to buy, whether what is on hand will do",
            ["offcuts wall fill garage", "offcuts wall fill garage --no-buy --time 60", "offcuts wall fill garage --keep", "offcuts wall fill garage --elevation --pdf garage.pdf"],
            name, noBuy, buy, keep, kept, time, elevation, pdf, json);
        command.SetAction(parse =>
        {
            var seconds = parse.GetValue(time);
            if (!double.IsFinite(seconds) || seconds is <= 0 or > 86_400) return context.Refuse([PlanFaults.TimeUnreadable()]);
            if (parse.GetValue(buy) && parse.GetValue(noBuy)) return context.Refuse([PlanFaults.BuyOrNot()]);
            using var cancel = new CancellationTokenSource();
            using var signals = new StopSignals(cancel.Cancel);
            var status = context.WithYardThere(parse, yard =>
            {
                var fill = new FillWall(yard);
                var found = parse.GetValue(kept) ? fill.Shown(parse.GetValue(name)!) : Watched(context, yard, PlanCommand.Limits(context, seconds, cancel.Token), limits => fill.Fill(parse.GetValue(name)!, parse.GetValue(noBuy) ? false : parse.GetValue(buy) ? true : null, limits));
                if (!found.TryGet(out var filled)) return context.Refuse(found.Faults);
                if (parse.GetValue(keep) && !parse.GetValue(kept) && !cancel.IsCancellationRequested)
                {
                    var done = fill.Keep(filled);
                    if (!done.TryGet(out var id)) return context.Refuse(done.Faults);
                    filled = filled with { PlanId = id };
                }

                Show(context, yard, filled, parse.GetValue(json));
                var picture = filled.PlanId > 0 ? new SeeWall(yard).Of(filled.Kept.Sheet.Name).Value : DrawWall.Of(filled.Kept, filled.Laid, filled.Plan, filled.Stacked) with { Steps = filled.Steps };
                if (parse.GetValue(elevation) && !parse.GetValue(json)) Draw(context, picture, yard.Settings().Unit);
                if (parse.GetValue(pdf) is { } file)
                {
                    WholeFile.Write(file, stream => stream.Write(new SeeWall(yard).Pdf(picture, context.World.Today)));
                    if (!parse.GetValue(json)) context.Say($"Wrote {file}");
                }

                return filled.Plan.Courses.Any(course => course.Unfilled) ? Exit.Unfilled : Exit.Done;
            });
            return signals.Status ?? status;
        });
        return command;
    }

    // Where a person reads along, how far it has come is told while it is looked for.
    private static Result<WallFilled> Watched(CommandContext context, YardFile yard, MatchLimits limits, Func<MatchLimits, Result<WallFilled>> fill)
    {
        using var watch = MatchWatch.OfWall(context.World, limits, yard.Settings().CurrencySign);
        return fill(watch.Limits);
    }

    /// <summary>The command <c>wall stacked</c>.</summary>
    public static Command Stacked(CommandContext context)
    {
        var name = new Argument<string>("wall") { Description = "Name of the wall" };
        var course = new Option<int[]>("--course") { Description = "Numbers of the courses, from 1 at the bottom", HelpName = "NUMBER", Required = true, AllowMultipleArgumentsPerToken = true };
        var leg = new Option<string>("--leg") { Description = "Only of this leg; its footing's boards are a leg named so too, like \"A footing\"", HelpName = "NAME" };
        var face = new Option<string>("--face") { Description = "Only on this face: outside or inside", HelpName = "FACE" };
        var laid = new Option<string>("--laid") { Description = "What lies in one course of one face, where it was laid otherwise than planned: piece by piece from the leg's start: new, the code of a piece of the yard, or cut for a piece that came out as planned; with its length where it is not all of new or a code", HelpName = "PIECES" };
        var command = context.Command(
            "stacked",
            "Say that courses of a wall are stacked as the kept filling has them, or one otherwise: what was cut is booked, what is left of the pieces comes back to the yard, the rest stays kept",
            ["offcuts wall stacked garage --course 1", "offcuts wall stacked garage --course 1 2 --leg A --face inside", "offcuts wall stacked garage --course 3 --leg A --face inside --laid \"new, HNEWPH3 2', new 1' 6\\\"\""],
            name, course, leg, face, laid);
        command.SetAction(parse => context.WithYard(parse, yard =>
        {
            Face? side = null;
            if (parse.GetValue(face) is { } word)
            {
                if (word is not ("outside" or "inside")) return context.Refuse([FillFaults.FaceUnknown(word)]);
                side = word == "outside" ? Face.Outside : Face.Inside;
            }

            int[] numbers = [.. (parse.GetValue(course) ?? []).Distinct()];
            if (numbers.Any(number => number < 1)) return context.Refuse([FillFaults.CourseNotNumber()]);
            var wish = new StackedWish(parse.GetValue(name)!, numbers, parse.GetValue(leg), side);
            if (parse.GetValue(laid) is { } pieces)
            {
                if (numbers.Length != 1 || wish.Leg is null || wish.Face is null) return context.Refuse([FillFaults.LaidOneCourse()]);
                var read = LaidLine.Read(pieces, yard.Settings().Unit);
                if (!read.TryGet(out var there)) return context.Refuse(read.Faults);
                wish = wish with { Laid = there };
            }

            var done = new StackWall(yard, context.World.Today, PlanCommand.Limits(context, PlanCommand.UsualSeconds, CancellationToken.None)).Do(wish);
            if (!done.TryGet(out var stacked)) return context.Refuse(done.Faults);
            foreach (var one in stacked.Courses) context.Say($"stacked: {one.Run}, course {one.Course}");
            PlanCommands.TellDone(context, yard, stacked.Carried);
            foreach (var line in StackedText.Rest(stacked, wish.Wall)) context.Say(line);
            return Exit.Done;
        }));
        return command;
    }

    // So many stand on a screen of 24 lines, where each takes two. The best is first, so that the rest are seldom asked for.
    private const int FirstFits = 8;

    /// <summary>The command <c>find</c>.</summary>
    public static Command Find(CommandContext context)
    {
        var what = new Argument<string[]>("what") { Description = "Material, length, at which end a joint is (joint left, right or both: that end lies on the pattern), and what it is for", Arity = ArgumentArity.OneOrMore };
        var system = new Option<string>("--system") { Description = "The building system whose pattern counts; else the only one there is", HelpName = "NAME" };
        var stage = new Option<string>("--stage") { Description = "The stage it is for, so that what is reserved for it counts", HelpName = "STAGE" };
        var all = new Option<bool>("--all") { Description = "Every piece that fits, not only the first few" };
        var json = CommandContext.Json();
        var command = context.Command(
            "find",
            "Find the piece that fits one place with the least loss: where it lies, and what would be left of it",
            ["offcuts find foam 2-1/2x12 \"1' 7-1/2\\\"\" joint right", "offcuts find 2x4 14-1/2 rough"],
            what, system, stage, all, json);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var sought = string.Join(' ', parse.GetValue(what)!);
            var sheet = Pattern(yard, parse.GetValue(system), sought);
            if (!sheet.TryGet(out var pattern)) return context.Refuse(sheet.Faults);
            if (parse.GetValue(stage) is { } named && yard.Stages().Named(named) is null) return context.Refuse([YardFaults.NoSuchStage(named)]);
            var unit = yard.Settings().Unit;
            var read = FitLine.Read(sought, unit, pattern.Sheet, parse.GetValue(stage) is { } given ? yard.Stages().Named(given)!.Name : "");
            var found = read.Then(need => new FitPlace(yard).Of(need));
            if (!found.TryGet(out var candidates)) return context.Refuse(found.Faults);
            if (parse.GetValue(json))
            {
                context.SayAsItIs(FillJson.Write(candidates));
                return candidates.Count == 0 ? Exit.Unfilled : Exit.Done;
            }

            context.Say(FitText.Of(read.Value, unit));
            if (candidates.Count == 0) context.Say("Nothing in the yard fits.");
            var lines = FitText.Lines(candidates, unit, code => code.ToString(), parse.GetValue(all)).ToArray();
            var shown = parse.GetValue(all) || lines.Length <= FirstFits + 1 ? lines.Length : FirstFits;
            foreach (var (line, _) in lines.Take(shown)) context.Say(line);
            if (shown < lines.Length) context.Say($"{Words.Count(lines.Skip(shown).Sum(one => one.Pieces), "more piece")} would do; --all names them too");
            foreach (var line in LayingFacts.Unlined(new FitPlace(yard).Unlined(read.Value))) context.Say(line);
            return candidates.Count == 0 ? Exit.Unfilled : Exit.Done;
        }));
        return command;
    }

    // The one named, else the one that counts for what is looked for.
    private static Result<PatternOf> Pattern(YardFile yard, string? named, string sought) => named is not null
        ? new ChangeSystems(yard).Find(named).Then<PatternOf>(sheet => new PatternOf(sheet))
        : FitLine.Pattern(sought, yard.Settings().Unit, yard.Systems());

    private static void Draw(CommandContext context, WallPicture picture, LengthUnit unit)
    {
        context.Say();
        foreach (var line in Elevation.Text(picture, new ElevationOptions { Unit = unit }).TrimEnd('\n').Split('\n')) context.SayAsItIs(line);
    }

    private static void Show(CommandContext context, YardFile yard, WallFilled filled, bool json)
    {
        if (json)
        {
            context.SayAsItIs(FillJson.Write(filled));
            return;
        }

        foreach (var line in FillText.Lines(filled, yard.Settings(), context.World.Today, code => code.ToString())) context.Say(line);
        context.Say();
        context.Say(filled.PlanId > 0
            ? $"Kept as plan {filled.PlanId}. Say what is stacked with: offcuts wall stacked {ShellWord.Of(filled.Kept.Sheet.Name)} --course {LeftToLay.NextCourse(filled, filled.Stacked)}"
            : $"Not kept. Keep it with: offcuts wall fill {ShellWord.Of(filled.Kept.Sheet.Name)} --keep");
    }
}
