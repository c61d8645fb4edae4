using System.Collections.Immutable;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Materials;

/// <summary>What one length, or one of a counted thing, costs new.</summary>
public sealed record StorePrice
{
    /// <summary>What is sold.</summary>
    public required Material Material { get; init; }

    /// <summary>The store length; zero for hardware.</summary>
    public Length Length { get; init; }

    /// <summary>True where it is sold treated.</summary>
    public bool Treated { get; init; }

    /// <summary>Price of one, tax not included.</summary>
    public required Money Price { get; init; }

    /// <summary>Days from order to delivery, where known.</summary>
    public int? LeadDays { get; init; }

    /// <summary>How many can be had, where there is a limit.</summary>
    public int? Limit { get; init; }

    /// <summary>Whom to buy it from, in the user's words.</summary>
    public string Supplier { get; init; } = "";

    /// <summary>The day the price was seen, where known.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>What is sold, in a few words: <c>treated 2x4 8'</c>, <c>panel tie</c>.</summary>
    public string Name => NameIn(LengthUnit.Inch);

    /// <summary>The same with its length in the user's unit.</summary>
    public string NameIn(LengthUnit unit) => $"{(Treated ? "treated " : "")}{Material}{(Length.IsZero ? "" : $" {Length.ToText(unit)}")}";

    /// <summary>True where the price was seen more than <see cref="PriceBook.OldAfterDays"/> days before <paramref name="today"/>.</summary>
    public bool IsOld(DateOnly today) => Date is { } seen && today.DayNumber - seen.DayNumber > PriceBook.OldAfterDays;
}

/// <summary>
/// Everything that can be bought, one price for each material, length and treatment.
/// Lists come by length, untreated before treated.
/// </summary>
public sealed class PriceBook
{
    /// <summary>A price older than this many days is marked as old in every report that uses it.</summary>
    public const int OldAfterDays = 90;

    private readonly ImmutableSortedDictionary<Material, ImmutableArray<StorePrice>> _byMaterial;

    /// <summary>A book of these prices. Throws where two are for the same material, length and treatment.</summary>
    public PriceBook(IEnumerable<StorePrice> prices)
    {
        _byMaterial = prices
            .GroupBy(price => price.Material)
            .ToImmutableSortedDictionary(
                group => group.Key,
                group => group.OrderBy(price => price.Length).ThenBy(price => price.Treated).ToImmutableArray());
        if (_byMaterial.Values.Any(list => list.DistinctBy(price => (price.Length, price.Treated)).Count() < list.Length))
            throw new ArgumentException("two prices for one length of one material", nameof(prices));
    }

    /// <summary>A book without prices.</summary>
    public static PriceBook Empty { get; } = new([]);

    /// <summary>Every price, by material and length.</summary>
    public IEnumerable<StorePrice> All => _byMaterial.Values.SelectMany(list => list);

    /// <summary>The prices of one material; empty where it can't be bought.</summary>
    public IReadOnlyList<StorePrice> Of(Material material) => _byMaterial.GetValueOrDefault(material, []);

    /// <summary>The price of one of a counted thing, or none.</summary>
    public StorePrice? Of(Hardware hardware) => Of((Material)hardware).FirstOrDefault();

    /// <summary>Prices by which a piece is valued: those of its own treatment, else the others.</summary>
    public IReadOnlyList<StorePrice> ForValue(Material material, bool treated)
    {
        var all = Of(material);
        var own = all.Where(price => price.Treated == treated).ToArray();
        return own.Length > 0 ? own : all;
    }

    /// <summary>
    /// Prices of these materials, or of all, that were seen too long ago to be relied on, as names: <c>2x4 8'</c>. Every report
    /// that rests on prices says them.
    /// </summary>
    public IReadOnlyList<string> Old(DateOnly today, IReadOnlySet<Material>? of = null, LengthUnit unit = LengthUnit.Inch) =>
    [
        .. All.Where(price => price.IsOld(today) && (of is null || of.Contains(price.Material)))
            .Select(price => price.NameIn(unit)),
    ];

    /// <summary>The sentence that marks old prices; none where none is old.</summary>
    public static string? OldSentence(IReadOnlyList<string> old) =>
        old.Count == 0 ? null : $"OLD PRICES, seen over {OldAfterDays} days ago: {string.Join(", ", old)}. What rests on them may be off.";
}
