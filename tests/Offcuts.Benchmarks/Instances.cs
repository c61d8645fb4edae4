using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Matching.Tests;

namespace Offcuts.Benchmarks;

/// <summary>Instances drawn by published procedures, or invented, each from its seed alone.</summary>
internal static class Instances
{
    private static readonly Material Stick = MaterialReader.Read("stick").Value;

    /// <summary>
    /// Falkenauer's triplets (Falkenauer, 1996, procedure from memory): bins of 1000, each filled exactly by three cuts, the first
    /// of 380 to 490, the second from 250 to half the rest; so the best number of bins is a third of the cuts.
    /// </summary>
    public static MatchRequest Triplets(int cuts, int seed)
    {
        var random = new Random(seed);
        var lengths = new List<int>();
        while (lengths.Count < cuts)
        {
            var first = random.Next(380, 491);
            var second = random.Next(250, (1000 - first) / 2 + 1);
            lengths.AddRange([first, second, 1000 - first - second]);
        }

        return Bins(lengths, 1000);
    }

    /// <summary>Falkenauer's uniform class (Falkenauer, 1996, procedure from memory): bins of 150, cuts of 20 to 100.</summary>
    public static MatchRequest Uniform(int cuts, int seed)
    {
        var random = new Random(seed);
        return Bins(Enumerable.Range(0, cuts).Select(_ => random.Next(20, 101)), 150);
    }

    /// <summary>A yard of many kinds (invented).</summary>
    public static MatchRequest Yard(int cuts, int pieces, int seed) => RandomYards.Draw(seed, cuts, pieces);

    private static MatchRequest Bins(IEnumerable<int> lengths, int bin) => new()
    {
        Stages =
        [
            new Stage("all", null,
            [
                .. lengths.GroupBy(length => length).Select(group => new RequiredCut
                {
                    Stage = "all",
                    Name = $"{group.Key}",
                    Material = Stick,
                    Shortest = Length.Millimetres(group.Key),
                    Longest = Length.Millimetres(group.Key),
                    Count = group.Count(),
                }),
            ], []),
        ],
        Prices = new PriceBook([new StorePrice { Material = Stick, Length = Length.Millimetres(bin), Price = new Money(1) }]),
        Settings = YardSettings.Usual with { Kerfs = YardSettings.Usual.Kerfs.Add(MaterialFamily.Stick, Length.Zero) },
    };
}
