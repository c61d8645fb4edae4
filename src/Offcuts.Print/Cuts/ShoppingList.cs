using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;

namespace Offcuts.Print;

/// <summary>One line of a shopping list: so many of one length, or of one counted thing.</summary>
public sealed record ShoppingRow
{
    /// <summary>What to buy.</summary>
    public required Material Material { get; init; }

    /// <summary>Its store length; zero for a counted thing.</summary>
    public Length Length { get; init; }

    /// <summary>True where it is bought treated.</summary>
    public bool Treated { get; init; }

    /// <summary>How many; 1 or more.</summary>
    public required int Count { get; init; }

    /// <summary>What they cost together, without tax.</summary>
    public required Money Cost { get; init; }

    /// <summary>Price of one, supplier, lead time and the day the price was seen; null for hardware that the price book does not know.</summary>
    public StorePrice? Price { get; init; }

    /// <summary>The day the first stage that needs it begins, where known.</summary>
    public DateOnly? Needed { get; init; }

    /// <summary>The last day to order it: <see cref="Needed"/> less its lead time, where both are known.</summary>
    public DateOnly? OrderBy => Needed is { } day && Price?.LeadDays is { } lead && day.DayNumber >= lead ? day.AddDays(-lead) : null;
}

/// <summary>What a plan buys: lengths by material and length, then hardware by name; with the sum and the tax.</summary>
/// <param name="Rows">Lengths first, then counted things.</param>
/// <param name="TaxThousandthsOfPercent">The tax rate.</param>
public sealed record ShoppingList(IReadOnlyList<ShoppingRow> Rows, int TaxThousandthsOfPercent)
{
    /// <summary>What it costs without tax.</summary>
    public Money Cost => Rows.Aggregate(Money.Zero, (sum, row) => sum + row.Cost);

    /// <summary>Tax on all of it together, rounded half up once.</summary>
    public Money Tax => Cost.Share(TaxThousandthsOfPercent);

    /// <summary>With tax.</summary>
    public Money Total => Cost + Tax;

    /// <summary>What these pieces and this hardware of a plan have to be bought.</summary>
    public static ShoppingList Of(IEnumerable<PlannedPiece> pieces, IEnumerable<HardwareFill> hardware, CutSheetOptions options)
    {
        var lengths = pieces
            .Where(piece => piece.Bought is not null)
            .GroupBy(piece => (piece.Material, piece.Length, piece.Bought!.Treated))
            .OrderBy(group => group.Key.Material).ThenBy(group => group.Key.Length).ThenBy(group => group.Key.Treated)
            .Select(group => new ShoppingRow
            {
                Material = group.Key.Material,
                Length = group.Key.Length,
                Treated = group.Key.Treated,
                Count = group.Count(),
                Cost = group.Aggregate(Money.Zero, (sum, piece) => sum + piece.Bought!.Price),
                Price = group.First().Bought,
                Needed = First(group.SelectMany(piece => piece.Cuts).Select(cut => cut.Stage), options),
            });
        var counted = hardware
            .Where(fill => fill.ToBuy > 0)
            .GroupBy(fill => (Material)fill.Need.Hardware)
            .OrderBy(group => group.Key)
            .Select(group => new ShoppingRow
            {
                Material = group.Key,
                Count = group.Sum(fill => fill.ToBuy),
                Cost = group.Aggregate(Money.Zero, (sum, fill) => sum + fill.Price),
                Price = options.Prices.Of((Hardware)group.Key),
                Needed = First(group.Select(fill => fill.Need.Stage), options),
            });
        return new ShoppingList([.. lengths, .. counted], options.Settings.TaxThousandthsOfPercent);
    }

    private static DateOnly? First(IEnumerable<string> stages, CutSheetOptions options) =>
        stages.Distinct().Select(stage => options.StageDates.TryGetValue(stage, out var date) ? date : (DateOnly?)null).Min();
}
