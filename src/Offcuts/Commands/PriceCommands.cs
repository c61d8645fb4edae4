using System.CommandLine;
using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Yard;
using Offcuts.Store.Interchange;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>What new lengths cost.</summary>
internal static class PriceCommands
{
    /// <summary>The command <c>price</c> and what is under it.</summary>
    public static IEnumerable<Command> All(CommandContext context) =>
    [
        context.Command(
            "price",
            "Store lengths and what they cost",
            ["offcuts price list", "offcuts price set \"2x4 8' 3.98\""],
            List(context),
            Set(context),
            Remove(context),
            Import(context),
            Export(context)),
    ];

    private static Command List(CommandContext context)
    {
        var json = CommandContext.Json();
        var command = context.Command("list", "List the prices; those seen over 90 days ago are marked old", ["offcuts price list", "offcuts price list --json"], json);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var settings = yard.Settings();
            if (parse.GetValue(json)) context.World.Out.WriteLine(ListJson.OfPrices(yard.Prices().All, context.World.Today));
            else if (!yard.Prices().All.Any()) context.Say($"No price yet. Begin with: offcuts price set \"{LineExamples.Price(settings.Unit)}\"");
            else Tables.Write(
                context.World,
                ["Material", ">Length", ">Price", "Treated", ">Limit", ">Lead days", "Supplier", "Seen"],
                yard.Prices().All.Select(price => (IReadOnlyList<string>)
                [
                    price.Material.Name,
                    price.Length.IsZero ? "" : price.Length.ToText(settings.Unit),
                    price.Price.ToText(settings.CurrencySign),
                    price.Treated ? "treated" : "",
                    price.Limit?.ToString(CultureInfo.InvariantCulture) ?? "",
                    price.LeadDays?.ToString(CultureInfo.InvariantCulture) ?? "",
                    price.Supplier,
                    (price.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "") + (price.IsOld(context.World.Today) ? " old" : ""),
                ]));
            return Exit.Done;
        }));
        return command;
    }

    private static Command Set(CommandContext context)
    {
        var line = new Argument<string[]>("line") { Description = "material length price, then: lead DAYS, limit COUNT, treated, from SUPPLIER", Arity = ArgumentArity.OneOrMore };
        var isNew = CommandContext.NewNames();
        var yes = new Option<bool>("--yes") { Description = "A length that looks like a slip is meant: a bare 8 is 8 inches" };
        var command = context.Command(
            "set",
            "Set the price of a store length, or of hardware; it is dated today",
            ["offcuts price set \"2x4 8' 3.98\"", "offcuts price set \"2x10 16' 24.50 lead 3 from the mill\"", "offcuts price set --new \"panel tie 0.62\""],
            line, isNew, yes);
        command.SetAction(parse => context.WithYard(parse, yard =>
        {
            var typed = string.Join(' ', parse.GetValue(line) ?? []);
            var set = new ChangePrices(yard).Set(typed, context.World.Today, parse.GetValue(isNew), parse.GetValue(yes));
            return set.Ok ? context.Tell(set) : context.RefuseTyped([typed], set.Faults);
        }));
        return command;
    }

    private static Command Remove(CommandContext context)
    {
        var line = new Argument<string[]>("line") { Description = "material and length, and treated if it is", Arity = ArgumentArity.OneOrMore };
        var command = context.Command("remove", "Remove a price", ["offcuts price remove \"2x4 8'\""], line);
        command.SetAction(parse => context.WithYard(parse, yard =>
            context.Tell(new ChangePrices(yard).Remove(string.Join(' ', parse.GetValue(line) ?? [])))));
        return command;
    }

    private static Command Import(CommandContext context)
    {
        var file = new Argument<string>("file") { Description = "A prices file (CSV); - for standard input" };
        var isNew = CommandContext.NewNames();
        var command = context.Command("import", "Take over the prices of a CSV file, all or nothing; undated ones are dated today", ["offcuts price import prices.csv", "offcuts price import prices.csv --new"], file, isNew);
        command.SetAction(parse => context.WithYard(parse, yard => context.Tell(
            TextLines.Open(context.World, parse.GetValue(file)!, (stream, name) => new ChangePrices(yard).Import(stream, name, context.World.Today, parse.GetValue(isNew))))));
        return command;
    }

    private static Command Export(CommandContext context)
    {
        var file = new Argument<string>("file") { Description = "Where to write it; - for standard output" };
        var command = context.Command("export", "Write all prices as a CSV file", ["offcuts price export prices.csv"], file);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
            TextLines.Write(context, parse.GetValue(file)!, writer => PricesFile.Write(yard.Prices(), writer))));
        return command;
    }
}
