using Offcuts.Benchmarks.Measuring;

namespace Offcuts.Benchmarks.Classes;

/// <summary>Several stock lengths in limited numbers, each costing what it is long.</summary>
internal static class SeveralLengths
{
    private const string Goal = "at the optimum and proven in 1 s, in 5 s at least";

    /// <summary>All of them.</summary>
    public static IEnumerable<InstanceClass> All =>
    [
        new("salvaged", "Salvaged bars, one of each, least total length", "Invented: 10 to 60 bars of 500 to 5,000, half of them cut up without waste into parts of 120 at least; the least length is known by construction.",
            Goal, 5, 2, 6, Salvaged),
        new("store-lengths", "Several store lengths in limited number", "In the manner of Monaci 2002 and of Correia, Gouveia and Saldanha-da-Gama 2008, from memory: lengths 150, 120, 100 (and 80, 60), cuts from 1, 20 or 50 to 99, 25 to 200 of them, each length enough for all.",
            Goal, 5, 2, 6, StoreLengths),
        new("few-of-each", "Several store lengths, too few of the best", "Invented: five lengths of 1,000 to 6,000 at prices that favour the longest, of each only enough for a third of the cuts; 40 sizes of 150 to 2,000.",
            "proven in 1 s, in 5 s at least", 5, 1, 4, FewOfEach) { QuickSeconds = 2 },
    ];

    private static Instance Salvaged(int seed)
    {
        var (random, count) = (new Random(seed), ((int[])[10, 20, 40, 60])[(seed - 1) % 4]);
        var bars = new SortedSet<int>();
        while (bars.Count < count) bars.Add(random.Next(500, 5001));
        var used = bars.OrderBy(_ => random.Next()).Take(count / 2).ToArray();
        var cuts = used.SelectMany(bar => Parts(bar, random)).ToArray();
        return new PlainInstance([.. bars.Select(bar => (bar, (int?)1, bar))], PlainInstance.Count(cuts), Known.Proven(used.Sum())).Named($"{count} bars, {cuts.Length} cuts, no {seed}");
    }

    private static IEnumerable<int> Parts(int bar, Random random)
    {
        var left = bar;
        for (var parts = random.Next(2, 5); parts > 1 && left >= 240; parts--)
        {
            var part = random.Next(120, left - 119);
            yield return part;
            left -= part;
        }

        yield return left;
    }

    private static Instance StoreLengths(int seed)
    {
        var (random, count, least) = (new Random(seed), ((int[])[25, 50, 100, 200])[(seed - 1) % 4], ((int[])[1, 20, 50])[(seed - 1) % 3]);
        int[] lengths = seed % 2 == 1 ? [150, 120, 100] : [150, 120, 100, 80, 60];
        var cuts = Enumerable.Range(0, count).Select(_ => random.Next(least, 100)).ToArray();
        // First-fit leaves at most one bin that is not more than half full, so of a length that holds every cut this many are enough.
        return new PlainInstance([.. lengths.Select(length => (length, (int?)(2 * cuts.Sum() / length + 1), length))], PlainInstance.Count(cuts))
            .Named($"{count} cuts from {least}, {lengths.Length} lengths, no {seed}");
    }

    private static Instance FewOfEach(int seed)
    {
        var random = new Random(seed);
        var cuts = Enumerable.Range(0, 40).SelectMany(_ => Enumerable.Repeat(random.Next(150, 2001), random.Next(1, 8))).ToArray();
        int[] lengths = [1000, 2000, 3000, 4500, 6000];
        return new PlainInstance(
            [.. lengths.Select(length => (length, (int?)(cuts.Sum() / 3 / length + 1), length / 10 + 40 - length / 200 + random.Next(10)))],
            PlainInstance.Count(cuts)).Named($"{cuts.Length} cuts, no {seed}");
    }
}
