using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.Store.Interchange;

namespace Offcuts.UseCases;

/// <summary>Changes the prices of store lengths and hardware.</summary>
public sealed class ChangePrices(YardFile yard)
{
    /// <summary>Sets one price from a typed line, dated today; tells how it was understood. A name that is new is refused unless it is meant, and so is a length that nothing is sold in.</summary>
    public Result<string> Set(string line, DateOnly today, bool newNames = false, bool oddSizes = false)
    {
        var settings = yard.Settings();
        var read = PriceLine.Read(line, settings.Unit, today);
        if (!read.TryGet(out var price)) return Result<string>.Fail(read.Faults);
        if (!newNames && yard.Names().NewAmong([price.Material]) is [var name]) return CommandFaults.NameIsNew(name);
        if (!oddSizes && OddSize.Of(price, settings.Unit) is { } odd) return CommandFaults.SizeIsOdd(odd);
        return yard.Change($"set the price of {price.NameIn(settings.Unit)}", work => work.SetPrice(price))
            .Then<string>(entry => $"{entry.What}\n  {PriceLine.ReadBack(price, settings.Unit, settings.CurrencySign)}");
    }

    /// <summary>Dates a price that somebody looks at today; refused where it is not there any more as they saw it.</summary>
    public Result<string> StillSo(StorePrice price, DateOnly today) => AsSeen(price, "set", work => work.SetPrice(price with { Date = today }));

    /// <summary>Removes one price, named as the list shows it: material, length where it has one, and treated where it is.</summary>
    public Result<string> Remove(string line)
    {
        var unit = yard.Settings().Unit;
        var words = line.Trim();
        var treated = words.EndsWith(" treated", StringComparison.OrdinalIgnoreCase);
        if (treated) words = words[..^" treated".Length].TrimEnd();
        var found = yard.Prices().All.FirstOrDefault(price => price.Treated == treated && IsNamed(price, words, unit));
        return found is null
            ? YardFaults.NoSuchPrice(unit)
            : yard.Change($"removed the price of {found.NameIn(unit)}", work => work.RemovePrice(found.Material, found.Length, found.Treated))
                .Then<string>(entry => entry.What);
    }

    /// <summary>Removes a price that somebody looks at; refused where it is not there any more as they saw it.</summary>
    public Result<string> Remove(StorePrice price) => AsSeen(price, "removed", work => work.RemovePrice(price.Material, price.Length, price.Treated));

    private Result<string> AsSeen(StorePrice price, string done, Action<YardChange> work)
    {
        var seen = yard.ChangeNumber;
        if (yard.Prices().Of(price.Material).All(one => one != price)) return StoreFaults.ChangedMeanwhile();
        return yard.ChangeSince(seen, $"{done} the price of {price.NameIn(yard.Settings().Unit)}", work).Then<string>(entry => entry.What);
    }

    private static bool IsNamed(StorePrice price, string words, LengthUnit unit) =>
        words.StartsWith(price.Material.Name, StringComparison.OrdinalIgnoreCase)
        && words[price.Material.Name.Length..].Trim() is var rest
        && (price.Length.IsZero ? rest.Length == 0 : Length.Parse(rest, unit) is { Ok: true } length && length.Value == price.Length);

    /// <summary>Takes over the prices of a prices file, as below; a name that is new is refused in its row unless it is meant.</summary>
    public Result<string> Import(Stream file, string fileName, DateOnly today, bool newNames) =>
        PricesFile.Read(file, fileName, known: newNames ? null : yard.Names()).Then(book => book.All.Any() ? Import(book, today) : FileFaults.NoRows().At(fileName, 1));

    /// <summary>Takes over the prices of a file; those without a date are dated today. Prices it does not name stay.</summary>
    public Result<string> Import(PriceBook book, DateOnly today)
    {
        var prices = book.All.ToArray();
        return yard.Change($"imported {Words.Count(prices.Length, "price")}", work =>
        {
            foreach (var price in prices) work.SetPrice(price with { Date = price.Date ?? today });
        }).Then<string>(entry => entry.What);
    }
}
