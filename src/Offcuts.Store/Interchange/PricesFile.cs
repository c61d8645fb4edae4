using System.Globalization;
using System.Text;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Store.Interchange;

/// <summary>
/// The prices file: one row a store length, or one of a counted thing. All or nothing: with any fault, nothing is handed back
/// but every fault.
/// </summary>
public static class PricesFile
{
    private const int MostDays = 3650;
    private const int MostOfOne = 100_000;

    internal static TableShape Shape { get; } = new(
        new("material", Required: true),
        new("length", Required: true, Measured: true),
        new("price", Required: true),
        new("treated"),
        new("lead_days"),
        new("limit"),
        new("supplier"),
        new("date"));

    /// <summary>Reads a prices file, or every fault in it.</summary>
    /// <param name="file">UTF-8, with or without its mark; read to its end, left open.</param>
    /// <param name="fileName">How faults call it.</param>
    /// <param name="limits">How much is taken in; <see cref="FileLimits.Usual"/> where none is given.</param>
    /// <param name="known">Names that are known: any other name of the user's own is refused. Null where any will do.</param>
    public static Result<PriceBook> Read(Stream file, string fileName, FileLimits? limits = null, Core.Yard.KnownNames? known = null)
    {
        limits ??= FileLimits.Usual;
        var faults = new FaultList(fileName, limits.MostFaults);
        var prices = new List<StorePrice>();
        var lines = new Dictionary<(Material, Length, bool), int>();
        var names = new NameCheck(known);
        CsvTable.Read(file, Shape, limits, faults, row => Take(row, prices, lines, names));
        return faults.Or(() => new PriceBook(prices));
    }

    /// <summary>The same from a text already in memory.</summary>
    public static Result<PriceBook> ReadText(string text, string fileName) =>
        Read(new MemoryStream(Encoding.UTF8.GetBytes(text)), fileName);

    /// <summary>Writes every price of a book; reading it back gives the same.</summary>
    public static void Write(PriceBook book, TextWriter to)
    {
        using var sheet = new CsvSheet(to, Shape);
        foreach (var price in book.All)
        {
            sheet.Row(
                price.Material.Name,
                CsvSheet.Measure(price.Length),
                price.Price.ToString(),
                CellWords.YesNo.Of(price.Treated),
                price.LeadDays?.ToString(CultureInfo.InvariantCulture) ?? "",
                price.Limit?.ToString(CultureInfo.InvariantCulture) ?? "",
                price.Supplier,
                price.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "");
        }
    }

    private static void Take(CsvRow row, List<StorePrice> prices, Dictionary<(Material, Length, bool), int> lines, NameCheck names)
    {
        var counted = row.Empty("length");
        var material = row.Material("material", counted, "each", names);
        var length = counted && material is Hardware or null ? default : row.NeededLength("length");
        var price = row.NeededMoney("price");
        var treated = row.YesNo("treated");
        if (treated && material is Hardware) row.Refuse("treated", FileFaults.TreatedHardware());
        var (leadDays, limit) = (row.Whole("lead_days", 0, MostDays), row.Whole("limit", 0, MostOfOne));
        var (supplier, date) = (row.Text("supplier", Core.Yard.PieceRules.LongestName), row.Day("date"));
        if (!row.Good) return;

        if (!lines.TryAdd((material!, length, treated), row.Line))
        {
            row.Refuse("material", FileFaults.PriceTwice(Named(material!, length, treated), lines[(material!, length, treated)]));
            return;
        }

        prices.Add(new StorePrice
        {
            Material = material!,
            Length = length,
            Treated = treated,
            Price = price,
            LeadDays = leadDays,
            Limit = limit,
            Supplier = supplier,
            Date = date,
        });
    }

    private static string Named(Material material, Length length, bool treated) =>
        $"{material.Name}{(length.IsZero ? "" : $" {length}")}{(treated ? " treated" : "")}";
}
