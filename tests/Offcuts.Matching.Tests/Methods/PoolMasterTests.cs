using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>The linear program of a search, which lets go of cuts that nothing leans on.</summary>
public sealed class PoolMasterTests
{
    private static readonly Effort None = new(MatchLimits.None);

    [Fact]
    public void Letting_go_of_cuts_that_nothing_leans_on_leaves_the_relaxation_as_it_was()
    {
        var renewed = 0;
        foreach (var drawn in DrawnTier.Some(1, 60).Where(drawn => drawn.Tier.Active.Count(active => active) >= 3))
        {
            Pattern[] pool = [.. drawn.Patterns.SelectMany(patterns => patterns)];
            var master = Filled(drawn.Tier, pool, drawn.Optimum);
            var cuts = Cuts(drawn.Tier).ToArray();
            foreach (var cut in cuts) master.Add(cut);
            (double Cost, RankOneCut[] Leaned) before = default;
            for (var solved = 0; solved < 20; solved++) before = Solved(drawn.Tier, master);

            var after = master.Renewed(out var dropped);
            dropped.Should().NotIntersectWith(before.Leaned, $"of {drawn.Name}");
            if (dropped.Count == 0) after.Should().BeSameAs(master, $"of {drawn.Name}");
            else renewed++;
            after.Enter(PoolNode.Root(drawn.Tier, pool.Length, 0));
            Solved(drawn.Tier, after).Cost.Should().BeApproximately(before.Cost, 1e-4 * (1 + Math.Abs(before.Cost)), $"of {drawn.Name}");
        }

        renewed.Should().BeGreaterThan(20, "else too few cuts went");
    }

    [Fact]
    public void A_cut_that_has_just_come_stays()
    {
        var drawn = DrawnTier.Some(1, 60).First(drawn => Cuts(drawn.Tier).Count() > 60);
        var master = Filled(drawn.Tier, [.. drawn.Patterns.SelectMany(patterns => patterns)], drawn.Optimum);
        foreach (var cut in Cuts(drawn.Tier)) master.Add(cut);
        for (var solved = 0; solved < 5; solved++) Solved(drawn.Tier, master);

        master.Renewed(out var dropped).Should().BeSameAs(master);
        dropped.Should().BeEmpty();
    }

    private static PoolMaster Filled(Tier tier, Pattern[] pool, long bound)
    {
        var master = new PoolMaster(tier, pool);
        for (var p = 0; p < pool.Length; p++) master.Add(p);
        master.Enter(PoolNode.Root(tier, pool.Length, bound));
        return master;
    }

    private static (double Cost, RankOneCut[] Leaned) Solved(Tier tier, PoolMaster master)
    {
        master.Solve().Should().NotBeNull();
        for (var raised = 0; master.Unmet() > 1e-6 && raised < 6; raised++)
        {
            master.Raise();
            master.Solve().Should().NotBeNull();
        }

        return (master.Solution.Sum(use => use.Times * tier.Cost(use.Pattern)) + master.Unfilled().Select((left, d) => left * tier.LeftCost[d]).Sum(), [.. master.Cuts().Select(cut => cut.Cut)]);
    }

    // Every one of up to three rows, with denominators up to thirteen.
    private static IEnumerable<RankOneCut> Cuts(Tier tier)
    {
        var rows = Enumerable.Range(0, tier.Active.Length).Where(d => tier.Active[d] && tier.DemandCount[d] > 0).ToArray();
        return from denominator in Enumerable.Range(2, 12)
               from chosen in Enumerable.Range(1, (1 << Math.Min(rows.Length, 5)) - 1)
               let of = rows.Where((_, i) => i < 5 && (chosen >> i & 1) == 1).ToArray()
               where of.Length <= 3
               select new RankOneCut(tier, of, [.. of.Select(_ => 1)], denominator);
    }
}
