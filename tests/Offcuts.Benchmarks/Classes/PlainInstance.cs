using System.Globalization;
using Offcuts.Benchmarks.Measuring;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Matching;

namespace Offcuts.Benchmarks.Classes;

/// <summary>Stock lengths in what number and at what cost; cut lengths in what number.</summary>
/// <param name="Stock">Length, how many there are (none for no limit), cost of one.</param>
/// <param name="Items">Length and demand.</param>
/// <param name="Known">What is known of the least cost.</param>
internal sealed record PlainInstance(
    IReadOnlyList<(int Length, int? Count, int Cost)> Stock, IReadOnlyList<(int Length, int Demand)> Items, Known? Known = null)
{
    private static readonly Material Stick = MaterialReader.Read("stick").Value;

    /// <summary>Bin packing: one stock length without limit that costs 1.</summary>
    public static PlainInstance Bins(int bin, IEnumerable<int> lengths, Known? known = null) => new([(bin, null, 1)], Count(lengths), known);

    /// <summary>Equal lengths counted.</summary>
    public static IReadOnlyList<(int Length, int Demand)> Count(IEnumerable<int> lengths) =>
        [.. lengths.GroupBy(length => length).Select(group => (group.Key, group.Count())).OrderByDescending(item => item.Key)];

    /// <summary>
    /// Reads lines of <c>stock LENGTH COUNT|inf COST</c>, <c>item LENGTH DEMAND</c>, <c>best VALUE [LOWER BOUND]</c>; a line
    /// that starts with # is passed over. None where a line is of another form, as in instances of two directions.
    /// </summary>
    public static PlainInstance? Read(IEnumerable<string> lines)
    {
        var stock = new List<(int, int?, int)>();
        var items = new List<(int, int)>();
        Known? known = null;
        foreach (var line in lines.Where(line => !line.StartsWith('#') && line.Trim().Length > 0))
        {
            var words = line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
            var numbers = words.Skip(1).Select(word => int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : (int?)null).ToArray();
            switch (words[0], numbers)
            {
                case ("stock", [{ } length, { } count, { } cost]): stock.Add((length, count, cost)); break;
                case ("stock", [{ } length, null, { } cost]) when words[2] == "inf": stock.Add((length, null, cost)); break;
                case ("item", [{ } length, { } demand]): items.Add((length, demand)); break;
                case ("best", [{ } best]): known = Known.Proven(best); break;
                case ("best", [{ } best, { } bound]): known = new Known(best, bound); break;
                default: return null;
            }
        }

        return stock.Count > 0 && items.Count > 0 ? new PlainInstance(stock, Count(items.SelectMany(item => Enumerable.Repeat(item.Item1, item.Item2))), known) : null;
    }

    /// <summary>
    /// The same as a match without a yard: cuts of a stick without kerf, stock as store lengths with price and limit, and a keep
    /// length above every stock length, so that no remainder has value and tier 3 is 0. The least spend is then the least cost.
    /// Two stock rows of one length and cost are one store length; of one length and two costs there can be none.
    /// </summary>
    public Instance Named(string name)
    {
        var prices = Stock.GroupBy(stock => (stock.Length, stock.Cost)).Select(group => new StorePrice
        {
            Material = Stick,
            Length = Length.Millimetres(group.Key.Length),
            Price = new Money(group.Key.Cost),
            Limit = group.Any(stock => stock.Count is null) ? null : group.Sum(stock => stock.Count),
        });
        var cuts = Items.Select(item => new RequiredCut
        {
            Stage = "all",
            Name = $"{item.Length}",
            Material = Stick,
            Shortest = Length.Millimetres(item.Length),
            Longest = Length.Millimetres(item.Length),
            Count = item.Demand,
        });
        var settings = YardSettings.Usual with
        {
            Kerfs = YardSettings.Usual.Kerfs.Add(MaterialFamily.Stick, Length.Zero),
            KeepElsewhere = Length.Millimetres(Stock.Max(stock => stock.Length) + 1),
        };
        return new Instance(name, new MatchRequest { Stages = [new Stage("all", null, [.. cuts], [])], Prices = new PriceBook(prices), Settings = settings }, Known);
    }
}
