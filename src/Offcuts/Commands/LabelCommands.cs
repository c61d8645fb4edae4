using System.CommandLine;
using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>Labels, before the pieces exist or after.</summary>
internal static class LabelCommands
{
    /// <summary>The command <c>label</c> and what is under it.</summary>
    public static IEnumerable<Command> All(CommandContext context) =>
    [
        context.Command(
            "label",
            "QR labels: what waits to be printed, sheets of blank ones, and their layouts",
            ["offcuts label print labels.pdf", "offcuts label blank 20 blanks.pdf"],
            Waiting(context),
            Print(context),
            Blank(context),
            Layouts(context)),
    ];

    private static Option<string> Layout() => new("--layout")
    {
        Description = "Name of a layout, or a layout file of your own",
        HelpName = "LAYOUT",
        DefaultValueFactory = _ => PrintLabels.UsualLayout,
    };

    private static Option<int> Start() => new("--start")
    {
        Description = "First free label of a part-used sheet",
        HelpName = "NUMBER",
        DefaultValueFactory = _ => 1,
    };

    private static Command Waiting(CommandContext context)
    {
        var json = CommandContext.Json();
        var command = context.Command("list", "List the labels that wait to be printed", ["offcuts label list", "offcuts label list --json"], json);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            if (parse.GetValue(json))
            {
                context.World.Out.WriteLine(ListJson.OfLabels(yard));
                return Exit.Done;
            }

            var unit = yard.Settings().Unit;
            var queue = yard.LabelQueue();
            foreach (var code in queue) context.Say(PrintLabels.Line(yard, code, unit));
            context.Say($"{Words.Count(queue.Count, "label")} to print; {Words.Count(yard.BlankCodes().Count, "blank label")} printed and not yet used");
            return Exit.Done;
        }));
        return command;
    }

    private static Command Print(CommandContext context)
    {
        var file = new Argument<string>("file") { Description = "PDF file to write" };
        var codes = new Option<string[]>("--code") { Description = "Print these instead of those that wait", HelpName = "CODE", AllowMultipleArgumentsPerToken = true };
        var (layout, start) = (Layout(), Start());
        var command = context.Command(
            "print",
            "Write the labels that wait as a PDF, true to size: print it at 100 %",
            ["offcuts label print labels.pdf", "offcuts label print labels.pdf --layout a4-14 --start 5", "offcuts label print one.pdf --code K7F3MXX"],
            file, codes, layout, start);
        command.SetAction(parse => context.WithYard(parse, yard =>
        {
            var read = Codes.Read(parse.GetValue(codes) ?? []);
            if (!read.TryGet(out var list)) return context.Refuse(read.Faults);
            return context.Tell(new PrintLabels(yard, context.World.Today).Print(
                list.Count > 0 ? list : null, parse.GetValue(layout)!, parse.GetValue(start), parse.GetValue(file)!));
        }));
        return command;
    }

    private static Command Blank(CommandContext context)
    {
        var count = new Argument<int>("count") { Description = "How many" };
        var file = new Argument<string>("file") { Description = "PDF file to write" };
        var (layout, start) = (Layout(), Start());
        var command = context.Command(
            "blank",
            "Write labels with codes whose pieces come later: tie one on, scan it, type the line",
            ["offcuts label blank 20 blanks.pdf"],
            count, file, layout, start);
        command.SetAction(parse => context.WithYard(parse, yard => context.Tell(new PrintLabels(yard, context.World.Today).PrintBlanks(
            parse.GetValue(count), parse.GetValue(layout)!, parse.GetValue(start), parse.GetValue(file)!))));
        return command;
    }

    private static Command Layouts(CommandContext context)
    {
        var command = context.Command("layouts", "List the layouts that come with the program", ["offcuts label layouts"]);
        command.SetAction(parse =>
        {
            Tables.Write(context.World, ["Layout", "What it is", ">Labels a page"], PrintLabels.Layouts());
            return Exit.Done;
        });
        return command;
    }
}
