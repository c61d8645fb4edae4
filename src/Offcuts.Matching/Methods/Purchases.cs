namespace Offcuts.Matching.Methods;

/// <summary>
/// How many of each store length a plan can buy that spends an amount between two ends. Where the ends are close together, few mixtures of
/// lengths have such a sum, and the numbers of some of them are settled by that alone.
/// Cost: the mixtures, each length in turn; gives up above a number of looks.
/// </summary>
internal static class Purchases
{
    private const int MostLooks = 20_000;

    /// <summary>Fewest and most of each supply, as narrow as the sums tell, and how many mixtures are left; none where they were not all looked at.</summary>
    public readonly record struct Ranges(int[] Least, int[] Most, int? Mixtures);

    /// <summary>Of a tier.</summary>
    /// <param name="tier">Its numbers of each supply, as they are.</param>
    /// <param name="from">Cents spent at least.</param>
    /// <param name="to">Cents spent at most.</param>
    public static Ranges Of(Tier tier, long from, long to)
    {
        int[] lengths = [.. Enumerable.Range(0, tier.SupplyCount.Length).Where(s => tier.SupplyCount[s] > 0 && tier.Problem.Supplies[s].Price > 0)
            .OrderByDescending(s => tier.Problem.Supplies[s].Price)];
        var search = new Search(tier, lengths, from, to);
        search.From(0, 0);
        if (search.Looks > MostLooks) return new Ranges(tier.SupplyLeast, tier.SupplyCount, null);
        if (search.Mixtures == 0) return new Ranges(tier.SupplyLeast, tier.SupplyCount, 0);
        var (least, most) = ((int[])tier.SupplyLeast.Clone(), (int[])tier.SupplyCount.Clone());
        for (var i = 0; i < lengths.Length; i++) (least[lengths[i]], most[lengths[i]]) = (search.Least[i], search.Most[i]);
        return new Ranges(least, most, search.Mixtures);
    }

    private sealed class Search(Tier tier, int[] lengths, long from, long to)
    {
        private readonly int[] _at = new int[lengths.Length];
        private readonly long[] _most = Rests(tier, lengths, tier.SupplyCount);
        private readonly long[] _least = Rests(tier, lengths, tier.SupplyLeast);

        public int Looks { get; private set; }

        public int Mixtures { get; private set; }

        public int[] Least { get; } = [.. lengths.Select(_ => int.MaxValue)];

        public int[] Most { get; } = new int[lengths.Length];

        public void From(int i, long spent)
        {
            if (++Looks > MostLooks || spent + _most[i] < from || spent + _least[i] > to) return;
            if (i < lengths.Length)
            {
                var price = tier.Problem.Supplies[lengths[i]].Price;
                for (_at[i] = tier.SupplyLeast[lengths[i]]; _at[i] <= tier.SupplyCount[lengths[i]] && spent + _at[i] * price <= to; _at[i]++) From(i + 1, spent + _at[i] * price);
                return;
            }

            Mixtures++;
            for (var k = 0; k < lengths.Length; k++) (Least[k], Most[k]) = (Math.Min(Least[k], _at[k]), Math.Max(Most[k], _at[k]));
        }

        // What the lengths from each on cost together.
        private static long[] Rests(Tier tier, int[] lengths, int[] times)
        {
            var rests = new long[lengths.Length + 1];
            for (var i = lengths.Length - 1; i >= 0; i--)
            {
                var own = (Int128)tier.Problem.Supplies[lengths[i]].Price * times[lengths[i]];
                rests[i] = (long)Int128.Min(long.MaxValue / 4, rests[i + 1] + own);
            }

            return rests;
        }
    }
}
