using System.Collections.Immutable;
using Offcuts.Core.Materials;
using Offcuts.Core.Yard;
using Offcuts.Print;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>What a cut sheet is printed with.</summary>
public static class SheetOptions
{
    /// <summary>For a plan of this yard.</summary>
    public static CutSheetOptions For(YardFile yard, DateOnly today) => new()
    {
        Printed = today,
        Settings = yard.Settings(),
        Prices = yard.Prices(),
        StageDates = yard.Stages()
            .Where(stage => stage.Date is not null)
            .ToImmutableDictionary(stage => stage.Name, stage => stage.Date!.Value),
    };

    /// <summary>For a plan without a yard.</summary>
    public static CutSheetOptions For(YardSettings settings, PriceBook prices, DateOnly today, Func<Code, string> writtenCode) =>
        new() { Printed = today, Settings = settings, Prices = prices, CodeText = writtenCode };
}
