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

    // Rows of splits serve one split after the other, and each node begins where its parent ended.
    [Fact]
    public void Whatever_nodes_were_solved_before_a_node_costs_what_it_costs_alone()
    {
        var (splits, random) = (0, new Random(5));
        foreach (var drawn in DrawnTier.Some(1, 60).Where(drawn => drawn.Tier.Active.Count(active => active) >= 3))
        {
            Pattern[] pool = [.. drawn.Patterns.SelectMany(patterns => patterns)];
            var master = Filled(drawn.Tier, pool, drawn.Optimum);
            var open = new List<PoolNode> { PoolNode.Root(drawn.Tier, pool.Length, 0) };
            for (var turn = 0; turn < 30 && open.Count > 0; turn++)
            {
                var node = open[random.Next(open.Count)];
                open.Remove(node);
                master.Enter(node);
                var cost = Solved(drawn.Tier, master).Cost;
                if (master.Unmet() > 1e-6) break;
                splits = Math.Max(splits, node.Splits.Count);
                var alone = new PoolMaster(drawn.Tier, pool);
                for (var p = 0; p < pool.Length; p++) alone.Add(p);
                alone.Enter(node with { Basis = null });
                cost.Should().BeApproximately(Solved(drawn.Tier, alone).Cost, 1e-5 * (1 + Math.Abs(cost)), $"of {drawn.Name}, turn {turn}");

                var (basis, loose) = (master.Basis(), master.Solution.FirstOrDefault(use => Math.Abs(use.Times - Math.Round(use.Times)) > 1e-5));
                if (loose.Pattern is null) continue;
                var family = random.Next(2) == 0 ? new Split(-1, 0, -1, -1, loose.Pattern) : new Split(loose.Pattern.Takes[0].Demand, 1, -1, loose.Pattern.Supply);
                open.Add(node.With(drawn.Tier, pool, family, 0, random.Next(2)) with { Basis = basis });
                open.Add(node.With(drawn.Tier, pool, family, 1, int.MaxValue) with { Basis = basis });
                if (random.Next(3) == 0) master.Tried(open[^1], None);
            }
        }

        splits.Should().BeGreaterThan(2, "else few rows were needed");
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
        master.Solve(None).Should().NotBeNull();
        for (var raised = 0; master.Unmet() > 1e-6 && raised < 6; raised++)
        {
            master.Raise();
            master.Solve(None).Should().NotBeNull();
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
