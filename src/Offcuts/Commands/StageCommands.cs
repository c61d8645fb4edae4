using System.CommandLine;
using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.Store.Interchange;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>Stages and what they need.</summary>
internal static class StageCommands
{
    /// <summary>The command <c>stage</c> and what is under it.</summary>
    public static IEnumerable<Command> All(CommandContext context) =>
    [
        context.Command(
            "stage",
            "The stages of the build, in order, and what each needs",
            ["offcuts stage list", "offcuts stage need \"footing forms\" \"stakes: 2x4 24 x16 rough\""],
            List(context),
            Show(context),
            New(context),
            Need(context),
            Drop(context),
            Date(context),
            Move(context),
            Rename(context),
            Remove(context),
            Import(context),
            Export(context)),
    ];

    private static Argument<string> StageName() => new("stage") { Description = "Name of the stage" };

    private static Command List(CommandContext context)
    {
        var json = CommandContext.Json();
        var command = context.Command("list", "List the stages, and how much each still lacks", ["offcuts stage list", "offcuts stage list --json"], json);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var stages = StageInShort.Of(yard);
            if (parse.GetValue(json)) context.World.Out.WriteLine(ListJson.OfStages(stages));
            else if (stages.Count == 0) context.Say("No stage yet. Begin with: offcuts stage new \"footing forms\"");
            else
                Tables.Write(context.World, ["Stage", "Date", ">Needs", ">Lacks", ">Reserved"], stages.Select(stage => (IReadOnlyList<string>)
                [
                    stage.Stage.Name,
                    stage.Stage.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "",
                    Number(stage.Needs),
                    Number(stage.Lacks),
                    stage.Reserved > 0 ? Number(stage.Reserved) : "",
                ]));
            return Exit.Done;
        }));
        return command;
    }

    private static Command Show(CommandContext context)
    {
        var name = StageName();
        var command = context.Command("show", "Show what one stage needs and still lacks", ["offcuts stage show \"footing forms\""], name);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            if (Find(yard, parse.GetValue(name)!) is not { } stage) return context.Refuse([yard.Stages().NoneNamed(parse.GetValue(name)!)]);
            var unit = yard.Settings().Unit;
            var lacking = StageNeeds.Lacking(stage, yard.Plans());
            var rows = stage.Cuts.Select(cut => (IReadOnlyList<string>)
                [
                    cut.Name,
                    cut.Material.Name,
                    cut.Longest > cut.Shortest ? $"{cut.Shortest.ToText(unit)} to {cut.Longest.ToText(unit)}" : cut.Shortest.ToText(unit),
                    Number(cut.Count),
                    Number(lacking.Cuts.FirstOrDefault(left => left.Name == cut.Name)?.Count ?? 0),
                    Words.Of(cut),
                ])
                .Concat(stage.Hardware.Select(need => (IReadOnlyList<string>)
                [
                    need.Name,
                    need.Hardware.Name,
                    "",
                    Number(need.Count),
                    Number(lacking.Hardware.FirstOrDefault(left => left.Name == need.Name)?.Count ?? 0),
                    "",
                ]));
            var reserved = yard.Pieces().Where(piece => piece.State == PieceState.Reserved && piece.ReservedFor == stage.Name).ToArray();
            Tables.Write(context.World, ["Cut", "Material", ">Length", ">Needs", ">Lacks", "For"], rows);
            if (reserved.Length > 0) context.Say("Reserved for it; let go with: offcuts free");
            foreach (var piece in reserved) context.Say($"  {piece.Code}  {piece.Material}  {Words.Size(piece, unit)}{(piece.Place.Length > 0 ? $"  @{piece.Place}" : "")}");
            return Exit.Done;
        }));
        return command;
    }

    private static Command New(CommandContext context)
    {
        var name = StageName();
        var date = new Option<string>("--date") { Description = "The day it begins, as 2026-05-31", HelpName = "DAY" };
        var command = context.Command("new", "Add a stage at the end", ["offcuts stage new \"stem wall\" --date 2026-05-31"], name, date);
        command.SetAction(parse => context.WithYard(parse, yard =>
        {
            var day = ReadDay(parse.GetValue(date));
            return day.Ok
                ? context.Tell(new ChangeStages(yard).Add(parse.GetValue(name)!.Trim(), day.Value))
                : context.Refuse(day.Faults);
        }));
        return command;
    }

    private static Command Need(CommandContext context)
    {
        var name = StageName();
        var line = new Argument<string[]>("line") { Description = "name: material length xCOUNT use, in this order. The use is structural, nonstructural (where none is said), bracing or rough; treated or untreated may follow, and rip where a wider board may be sawn to it. Two lengths, 7'..8', are the shortest and the longest that will do. Counted things: panel tie x40", Arity = ArgumentArity.ZeroOrMore };
        var file = new Option<string>("--lines") { Description = "A text file of such lines; - for standard input", HelpName = "FILE" };
        var isNew = CommandContext.NewNames();
        var yes = new Option<bool>("--yes") { Description = "Sizes that look like a slip are meant: a bare 8 is 8 inches" };
        var command = context.Command(
            "need",
            "Add to what a stage needs, one line a cut",
            ["offcuts stage need walls \"blocking: 2x4 14-1/2 x12\"", "offcuts stage need walls \"braces: 2x4 7'..8' x6 bracing\"", "offcuts stage need walls \"nailers: 2x4 30 x8 rip\"", "offcuts stage need walls \"panel tie x40\" --new", "offcuts stage need walls --lines cuts.txt"],
            name, line, file, isNew, yes);
        command.SetAction(parse => context.WithYard(parse, yard =>
        {
            var fromFile = TextLines.Read(context.World, parse.GetValue(file));
            if (!fromFile.TryGet(out var more)) return context.Refuse(fromFile.Faults);
            string[] lines = [.. parse.GetValue(line) ?? [], .. more];
            var stages = new ChangeStages(yard);
            var added = stages.AddNeeds(parse.GetValue(name)!, lines, parse.GetValue(isNew), parse.GetValue(yes));
            if (!added.Ok) return context.RefuseTyped(lines, added.Faults);
            foreach (var understood in stages.Understood(parse.GetValue(name)!, lines)) context.Say(understood);
            return context.Tell(added);
        }));
        return command;
    }

    private static Command Drop(CommandContext context)
    {
        var name = StageName();
        var cut = new Argument<string>("cut") { Description = "Name of the cut or hardware" };
        var command = context.Command("drop", "Take one line off what a stage needs", ["offcuts stage drop walls blocking"], name, cut);
        command.SetAction(parse => context.WithYard(parse, yard =>
            context.Tell(new ChangeStages(yard).DropNeed(parse.GetValue(name)!, parse.GetValue(cut)!))));
        return command;
    }

    private static Command Date(CommandContext context)
    {
        var name = StageName();
        var date = new Argument<string>("day") { Description = "The day it begins, as 2026-05-31, or none" };
        var command = context.Command("date", "Set the day a stage begins", ["offcuts stage date walls 2026-05-31"], name, date);
        command.SetAction(parse => context.WithYard(parse, yard =>
        {
            var day = parse.GetValue(date) == "none" ? Result<DateOnly?>.Of(null) : ReadDay(parse.GetValue(date));
            return day.Ok
                ? context.Tell(new ChangeStages(yard).SetDate(parse.GetValue(name)!, day.Value))
                : context.Refuse(day.Faults);
        }));
        return command;
    }

    private static Command Move(CommandContext context)
    {
        var name = StageName();
        var position = new Argument<int>("position") { Description = "1 for the first" };
        var command = context.Command("move", "Put a stage at another place in the order", ["offcuts stage move walls 1"], name, position);
        command.SetAction(parse => context.WithYard(parse, yard =>
            context.Tell(new ChangeStages(yard).Move(parse.GetValue(name)!, parse.GetValue(position)))));
        return command;
    }

    private static Command Rename(CommandContext context)
    {
        var name = StageName();
        var to = new Argument<string>("new-name") { Description = "Its new name" };
        var command = context.Command("rename", "Give a stage another name", ["offcuts stage rename walls \"stem wall\""], name, to);
        command.SetAction(parse => context.WithYard(parse, yard =>
            context.Tell(new ChangeStages(yard).Rename(parse.GetValue(name)!, parse.GetValue(to)!.Trim()))));
        return command;
    }

    private static Command Remove(CommandContext context)
    {
        var name = StageName();
        var command = context.Command("remove", "Remove a stage; pieces reserved for it become free", ["offcuts stage remove walls"], name);
        command.SetAction(parse => context.WithYard(parse, yard => context.Tell(new ChangeStages(yard).Remove(parse.GetValue(name)!))));
        return command;
    }

    private static Command Import(CommandContext context)
    {
        var file = new Argument<string>("file") { Description = "A cuts file (CSV); - for standard input" };
        var isNew = CommandContext.NewNames();
        var command = context.Command("import", "Add the stages and cuts of a CSV file, all or nothing", ["offcuts stage import cuts.csv", "offcuts stage import cuts.csv --new"], file, isNew);
        command.SetAction(parse => context.WithYard(parse, yard => context.Tell(
            TextLines.Open(context.World, parse.GetValue(file)!, (stream, name) => new ChangeStages(yard).Import(stream, name, parse.GetValue(isNew))))));
        return command;
    }

    private static Command Export(CommandContext context)
    {
        var file = new Argument<string>("file") { Description = "Where to write it; - for standard output" };
        var command = context.Command("export", "Write all stages and cuts as a CSV file", ["offcuts stage export cuts.csv"], file);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
            TextLines.Write(context, parse.GetValue(file)!, writer => CutsFile.Write(yard.Stages(), writer))));
        return command;
    }

    private static Stage? Find(YardFile yard, string name) => yard.Stages().Named(name);

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static Result<DateOnly?> ReadDay(string? text)
    {
        if (text is null) return Result<DateOnly?>.Of(null);
        return DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
            ? Result<DateOnly?>.Of(day)
            : CommandFaults.DayUnreadable(text);
    }
}
