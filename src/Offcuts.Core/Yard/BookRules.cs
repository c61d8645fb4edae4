using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Savings;

namespace Offcuts.Core.Yard;

/// <summary>What no price, no settings and no line of the ledger can be, asked before they enter a yard.</summary>
public static class BookRules
{
    /// <summary>Longest sign of currency.</summary>
    public const int LongestCurrencySign = 10;

    /// <summary>Every fault in a price.</summary>
    public static IReadOnlyList<Fault> Faults(StorePrice price)
    {
        var faults = new List<Fault>();
        var counted = price.Material is Hardware;
        if (counted && !price.Length.IsZero) faults.Add(StoreFaults.PriceWithLength(price.Material.Name));
        if (!counted && price.Length.IsZero) faults.Add(StoreFaults.PriceWithoutLength(price.Material.Name));
        if (price.Price < Money.Zero) faults.Add(MeasureFaults.MoneyNegative(0));
        if (price.Price > Money.Largest) faults.Add(MeasureFaults.MoneyAbsurd(0));
        if (price.LeadDays < 0 || price.Limit < 0) faults.Add(YardFaults.QuantityNegative());
        PieceRules.CheckText(faults, "supplier", price.Supplier, PieceRules.LongestName);
        return faults;
    }

    /// <summary>Every fault in settings.</summary>
    public static IReadOnlyList<Fault> Faults(YardSettings settings)
    {
        var faults = new List<Fault>();
        if (settings.TaxThousandthsOfPercent < 0) faults.Add(StoreFaults.AmountNegative());
        PieceRules.CheckText(faults, "currency sign", settings.CurrencySign, LongestCurrencySign);
        foreach (var place in settings.Covered) PieceRules.CheckText(faults, "place", place, PieceRules.LongestName);
        foreach (var material in settings.Keeps.Keys.Concat(settings.KeepBacks.Keys)) PieceRules.CheckText(faults, "material", material, PieceRules.LongestName);
        return faults;
    }

    /// <summary>Every fault in a line of the ledger. Money may be negative, and so may a measure, where the line takes back what came back; counted things never do.</summary>
    public static IReadOnlyList<Fault> Faults(LedgerLine line)
    {
        var faults = new List<Fault>();
        if (line.HardwareUsed < 0) faults.Add(StoreFaults.AmountNegative());
        PieceRules.CheckText(faults, "stage", line.Stage, PieceRules.LongestName);
        return faults;
    }
}
