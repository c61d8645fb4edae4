using System.CommandLine;
using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Store.Interchange;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>What new lengths cost.</summary>
internal static class PriceCommands
{
    /// <summary>The command <c>price</c> and what is under it.</summary>
    public static IEnumerable<Command> All(Session session) =>
    [
        session.Command(
            "price",
            "Store lengths and what they cost",
            ["offcuts price list", "offcuts price set \"2x4 8' 3.98\""],
            List(session),
            Set(session),
            Remove(session),
            Import(session),
            Export(session)),
    ];

    private static Command List(Session session)
    {
        var command = session.Command("list", "List the prices; those seen over 90 days ago are marked old", ["offcuts price list"]);
        command.SetAction(parse => session.WithYard(parse, yard =>
        {
            var settings = yard.Settings();
            Tables.Write(
                session.World,
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
                    (price.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "") + (price.IsOld(session.World.Today) ? " old" : ""),
                ]));
            return Exit.Done;
        }));
        return command;
    }

    private static Command Set(Session session)
    {
        var line = new Argument<string[]>("line") { Description = "material length price, then: lead DAYS, limit COUNT, treated, from SUPPLIER", Arity = ArgumentArity.OneOrMore };
        var command = session.Command(
            "set",
            "Set the price of a store length, or of hardware; it is dated today",
            ["offcuts price set \"2x4 8' 3.98\"", "offcuts price set \"2x10 16' 24.50 lead 3 from the mill\"", "offcuts price set \"panel tie 0.62\""],
            line);
        command.SetAction(parse => session.WithYard(parse, yard =>
            session.Tell(new ChangePrices(yard).Set(string.Join(' ', parse.GetValue(line) ?? []), session.World.Today))));
        return command;
    }

    private static Command Remove(Session session)
    {
        var line = new Argument<string[]>("line") { Description = "material and length, and treated if it is", Arity = ArgumentArity.OneOrMore };
        var command = session.Command("remove", "Remove a price", ["offcuts price remove \"2x4 8'\""], line);
        command.SetAction(parse => session.WithYard(parse, yard =>
            session.Tell(new ChangePrices(yard).Remove(string.Join(' ', parse.GetValue(line) ?? [])))));
        return command;
    }

    private static Command Import(Session session)
    {
        var file = new Argument<string>("file") { Description = "A prices file (CSV); - for standard input" };
        var command = session.Command("import", "Take over the prices of a CSV file, all or nothing; undated ones are dated today", ["offcuts price import prices.csv"], file);
        command.SetAction(parse => session.WithYard(parse, yard =>
        {
            var read = TextLines.Open(session.World, parse.GetValue(file)!, (stream, name) => PricesFile.Read(stream, name));
            return read.Ok ? session.Tell(new ChangePrices(yard).Import(read.Value, session.World.Today)) : session.Refuse(read.Faults);
        }));
        return command;
    }

    private static Command Export(Session session)
    {
        var file = new Argument<string>("file") { Description = "Where to write it; - for standard output" };
        var command = session.Command("export", "Write all prices as a CSV file", ["offcuts price export prices.csv"], file);
        command.SetAction(parse => session.WithYard(parse, yard =>
            TextLines.Write(session, parse.GetValue(file)!, writer => PricesFile.Write(yard.Prices(), writer))));
        return command;
    }
}
