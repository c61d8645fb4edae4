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
            Layouts(context),
            Check(context),
            Preview(context),
            Ruler(context),
            Printer(context),
            Unused(context),
            Void(context)),
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

    private static Option<string> OfPrinter() => new("--printer") { Description = "Correct the print by what is kept of this printer; see: offcuts label printer", HelpName = "NAME" };

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
        var (layout, start, printer) = (Layout(), Start(), OfPrinter());
        var command = context.Command(
            "print",
            "Write the labels that wait as a PDF, true to size: print it at 100 %",
            ["offcuts label print labels.pdf", "offcuts label print labels.pdf --layout a4-14 --start 5", "offcuts label print lost.pdf --code K7F3MXX", "offcuts label print labels.pdf --printer kitchen"],
            file, codes, layout, start, printer);
        command.SetAction(parse => context.WithYard(parse, yard =>
        {
            var read = Codes.Read(parse.GetValue(codes) ?? []);
            if (!read.TryGet(out var list)) return context.Refuse(read.Faults);
            return context.Tell(new PrintLabels(yard, context.World.Today).Print(
                list.Count > 0 ? list : null, parse.GetValue(layout)!, parse.GetValue(start), parse.GetValue(file)!, parse.GetValue(printer)));
        }));
        return command;
    }

    private static Command Blank(CommandContext context)
    {
        var count = new Argument<int>("count") { Description = "How many" };
        var file = new Argument<string>("file") { Description = "PDF file to write" };
        var (layout, start, printer) = (Layout(), Start(), OfPrinter());
        var command = context.Command(
            "blank",
            "Write labels with codes whose pieces come later: tie one on, scan it, type the line",
            ["offcuts label blank 20 blanks.pdf"],
            count, file, layout, start, printer);
        command.SetAction(parse => context.WithYard(parse, yard => context.Tell(new PrintLabels(yard, context.World.Today).PrintBlanks(
            parse.GetValue(count), parse.GetValue(layout)!, parse.GetValue(start), parse.GetValue(file)!, parse.GetValue(printer)))));
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

    private static Command Check(CommandContext context)
    {
        var layout = new Argument<string>("layout") { Description = "Name of a layout, or a layout file of your own" };
        var command = context.Command("check", "Check a layout file: can it be printed, and how large are its QR codes", ["offcuts label check mine.json"], layout);
        command.SetAction(parse =>
        {
            var check = PrintLabels.Check(parse.GetValue(layout)!);
            if (!check.TryGet(out var lines)) return context.Refuse(check.Faults);
            foreach (var line in lines) context.Say(line);
            return Exit.Done;
        });
        return command;
    }

    private static Command Preview(CommandContext context)
    {
        var code = new Argument<string[]>("code") { Description = "Whose label", Arity = new ArgumentArity(1, 2) };
        var layout = Layout();
        var command = context.Command("preview", "Show a label before it is printed, to scale", ["offcuts label preview K7F3MXX", "offcuts label preview K7F 3MXX --layout lumber-end"], code, layout);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var shown = Codes.One(parse.GetValue(code)!).Then(one => new PrintLabels(yard, context.World.Today).Preview(one, parse.GetValue(layout)!, context.World.Ascii));
            if (!shown.TryGet(out var lines)) return context.Refuse(shown.Faults);
            foreach (var line in lines) context.Say(line);
            return Exit.Done;
        }));
        return command;
    }

    private static Command Ruler(CommandContext context)
    {
        var file = new Argument<string>("file") { Description = "PDF file to write" };
        var (layout, printer) = (Layout(), OfPrinter());
        var command = context.Command(
            "ruler",
            "Write a page that proves a printer's scale, with the outlines of all labels",
            ["offcuts label ruler ruler.pdf", "offcuts label ruler ruler.pdf --layout a4-14 --printer kitchen"],
            file, layout, printer);
        command.SetAction(parse => context.WithYard(parse, yard => context.Tell(new PrintLabels(yard, context.World.Today).Ruler(parse.GetValue(layout)!, parse.GetValue(file)!, parse.GetValue(printer)))));
        return command;
    }

    private static Command Printer(CommandContext context)
    {
        var name = new Argument<string>("name") { Description = "What you call the printer; left out, all are listed", Arity = ArgumentArity.ZeroOrOne };
        var right = new Option<string>("--right") { Description = "Move its prints to the right, or left below 0", HelpName = "DISTANCE" };
        var down = new Option<string>("--down") { Description = "Move its prints down, or up below 0", HelpName = "DISTANCE" };
        var drop = new Option<bool>("--drop") { Description = "Forget the printer" };
        var command = context.Command(
            "printer",
            "What a printer must be corrected by, so that labels lie where the sheet has them",
            ["offcuts label printer", "offcuts label printer kitchen --right 1.5mm --down=-1mm", "offcuts label printer kitchen --drop"],
            name, right, down, drop);
        command.SetAction(parse => context.WithYard(parse, yard =>
        {
            var print = new PrintLabels(yard, context.World.Today);
            if (parse.GetValue(name) is { } named) return context.Tell(parse.GetValue(drop) ? print.DropPrinter(named) : print.SetPrinter(named, parse.GetValue(right), parse.GetValue(down)));
            var printers = yard.Printers();
            foreach (var printer in printers) context.Say($"{printer.Name}  {PrintLabels.Told(printer)}");
            if (printers.Count == 0) context.Say("Nothing is kept of any printer; a ruler page shows what it is off by: offcuts label ruler ruler.pdf");
            return Exit.Done;
        }));
        return command;
    }

    private static Command Unused(CommandContext context)
    {
        var json = new Option<bool>("--json") { Description = "As JSON" };
        var command = context.Command("unused", "List labels that were printed and that nothing has taken yet, with the day", ["offcuts label unused", "offcuts label unused --json"], json);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var labels = yard.UnusedLabels();
            if (parse.GetValue(json))
            {
                context.World.Out.WriteLine(YardJson.List("labels", labels.Select(label => new System.Text.Json.Nodes.JsonObject { ["code"] = label.Code.Text, ["printed"] = ListJson.Day(DateOnly.FromDateTime(label.Printed.DateTime)) })));
                return Exit.Done;
            }

            foreach (var label in labels) context.Say($"{label.Code}  printed {label.Printed:yyyy-MM-dd}");
            context.Say($"{Words.Count(labels.Count, "label")} printed and not yet used{(labels.Count > 0 ? "; one that is spoiled: offcuts label void CODE" : "")}");
            return Exit.Done;
        }));
        return command;
    }

    private static Command Void(CommandContext context)
    {
        var codes = new Argument<string[]>("codes") { Description = "Codes of the labels", Arity = ArgumentArity.OneOrMore };
        var command = context.Command(
            "void",
            "Make spoiled labels void: a blank that must never be taken, or that of a place, which gets another; a piece keeps its code, print its label again",
            ["offcuts label void K7F3MXX", "offcuts label print again.pdf --code K7F3MXX"],
            codes);
        command.SetAction(parse => context.WithYard(parse, yard =>
        {
            var read = Codes.Read(parse.GetValue(codes) ?? []);
            return read.TryGet(out var list) ? context.Tell(new ChangeLabels(yard).Void(list)) : context.Refuse(read.Faults);
        }));
        return command;
    }
}
