using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>What a span may carry, by cells, against every pattern of it; with numbers of cells drawn at will, since whatever they are, a bound made of them has to be true.</summary>
public sealed class CellLoadsTests
{
    private const long Never = StateSpaceRelaxation.Never;

    [Fact]
    public void No_pattern_costs_less_than_its_load_is_said_to_nor_weighs_less_or_more()
    {
        var looked = 0;
        foreach (var (drawn, loads, _) in Drawn(1, 60))
        {
            for (var s = 0; s < drawn.Patterns.Length; s++)
            {
                if (drawn.Tier.SupplyCount[s] == 0) continue;
                var (lightest, heaviest) = loads.Weighing(s);
                (lightest.Length, heaviest.Length).Should().Be((loads.Least[s].Length, loads.Least[s].Length));
                foreach (var pattern in drawn.Patterns[s])
                {
                    var cells = pattern.Takes.Sum(take => take.Count * loads.Cells[take.Demand]);
                    looked++;
                    loads.Has(s, cells).Should().BeTrue($"of {drawn.Name}, supply {s}, {cells} cells");
                    loads.Least[s][cells].Should().BeLessThanOrEqualTo(drawn.Reduced(pattern, loads.Duals), $"of {drawn.Name}, supply {s}, {cells} cells");
                    if (!pattern.Whole) pattern.Weight.Should().BeInRange(lightest[cells], heaviest[cells], $"of {drawn.Name}");
                }
            }
        }

        looked.Should().BeGreaterThan(1000);
    }

    [Fact]
    public void Where_one_choice_of_cuts_alone_fills_the_cells_the_load_costs_what_that_pattern_does()
    {
        var alone = 0;
        foreach (var (drawn, loads, _) in Drawn(100, 60))
        {
            for (var s = 0; s < drawn.Patterns.Length; s++)
            {
                if (drawn.Tier.SupplyCount[s] == 0) continue;
                var choices = Choices(drawn.Tier, d => drawn.Tier.Problem.Supplies[s].Allows[d] ? drawn.Tier.DemandCount[d] : 0).ToLookup(counts => CellsOf(counts, loads));
                var patterns = drawn.Patterns[s].ToLookup(pattern => pattern.Takes.Sum(take => take.Count * loads.Cells[take.Demand]));
                foreach (var choice in choices.Where(choice => choice.Key > 0 && choice.Count() == 1))
                {
                    if (!patterns.Contains(choice.Key))
                    {
                        loads.Has(s, choice.Key).Should().BeFalse($"no pattern has {choice.Key} cells, of {drawn.Name}, supply {s}");
                        continue;
                    }

                    alone++;
                    loads.Least[s][choice.Key].Should().Be(patterns[choice.Key].Min(pattern => drawn.Reduced(pattern, loads.Duals)), $"of {drawn.Name}, supply {s}, {choice.Key} cells");
                }

                for (var cells = 0; cells <= loads.Least[s].Length; cells++)
                    if (cells == 0 || !choices.Contains(cells)) loads.Has(s, cells).Should().BeFalse($"no cuts have {cells} cells, of {drawn.Name}, supply {s}");
            }
        }

        alone.Should().BeGreaterThan(300);
    }

    [Fact]
    public void The_cuts_that_it_names_fill_the_cells_and_are_no_dearer_than_the_load()
    {
        var (named, taken) = (0, 0);
        foreach (var (drawn, loads, _) in Drawn(200, 60))
        {
            for (var s = 0; s < loads.Least.Length; s++)
            {
                for (var cells = 1; cells < loads.Least[s].Length; cells++)
                {
                    if (!loads.Has(s, cells)) continue;
                    int[] best = [.. loads.Best(s, cells)];
                    named++;
                    best.Sum(d => loads.Cells[d]).Should().Be(cells, $"of {drawn.Name}");
                    best.GroupBy(d => d).Should().OnlyContain(group => group.Count() <= drawn.Tier.DemandCount[group.Key], $"of {drawn.Name}");
                    var whole = drawn.Patterns[s].Where(pattern => pattern.Whole && drawn.Reduced(pattern, loads.Duals) == loads.Least[s][cells] && loads.Cells[pattern.Takes[0].Demand] == cells).ToArray();
                    if (whole.Length == 0) continue;
                    taken++;
                    best.Should().Equal([whole[0].Takes[0].Demand], $"a cut that takes the span whole costs as little, of {drawn.Name}");
                }
            }
        }

        named.Should().BeGreaterThan(300);
        taken.Should().BePositive();
    }

    [Fact]
    public void What_stays_unfilled_earns_its_prices_less_what_it_costs()
    {
        var some = 0;
        foreach (var (drawn, loads, _) in Drawn(300, 120).Where(one => one.Drawn.Tier.MostLeft.Any(left => left > 0)))
        {
            var (tier, duals) = (drawn.Tier, loads.Duals);
            long Earns(int d) => duals.Demand[d] + duals.Left.GetValueOrDefault(tier.Problem.Demands[d].Stage) - tier.LeftCost[d] * tier.Scale;
            var most = Choices(tier, d => tier.MostLeft[d]).GroupBy(counts => CellsOf(counts, loads)).ToDictionary(group => group.Key, group => group.Max(counts => counts.Select((count, d) => count * Earns(d)).Sum()));
            some++;
            for (var cells = 0; cells <= loads.All; cells++) loads.Left.Top[cells].Should().Be(most.GetValueOrDefault(cells, -Never), $"of {drawn.Name}, {cells} cells");
        }

        some.Should().BeGreaterThan(15);
    }

    [Fact]
    public void At_other_duals_the_loads_that_are_of_use_cost_what_they_do_there()
    {
        foreach (var (drawn, loads, random) in Drawn(400, 40))
        {
            var duals = Fitting(drawn, random);
            bool Open(int s, int cells) => (s + cells) % 3 > 0;
            var (some, all) = (loads.At(duals, Open), new CellLoads(drawn.Tier, duals, loads.Cells, (_, _, _) => true));

            some.Left.Top.Should().Equal(all.Left.Top, $"of {drawn.Name}");
            for (var s = 0; s < all.Least.Length; s++)
                some.Least[s].Should().Equal(all.Least[s].Select((least, cells) => Open(s, cells) ? least : Never), $"of {drawn.Name}, supply {s}");
        }
    }

    [Fact]
    public void A_load_is_asked_for_by_what_it_costs_at_least()
    {
        foreach (var (drawn, loads, _) in Drawn(500, 20))
        {
            long[] costs = [.. loads.Least.SelectMany(least => least.Where(cost => cost < Never / 2))];
            if (costs.Length == 0) continue;
            var middle = costs.Order().ElementAt(costs.Length / 2);
            var cheap = new CellLoads(drawn.Tier, loads.Duals, loads.Cells, (_, _, least) => least <= middle);

            for (var s = 0; s < loads.Least.Length; s++)
                cheap.Least[s].Should().Equal(loads.Least[s].Select(least => least <= middle ? least : Never), $"of {drawn.Name}, supply {s}");
        }
    }

    private static int CellsOf(int[] counts, CellLoads loads) => counts.Select((count, d) => count * loads.Cells[d]).Sum();

    // Every choice of so many copies of each demand at most.
    private static IEnumerable<int[]> Choices(Tier tier, Func<int, int> most) => Enumerable.Range(0, tier.DemandCount.Length).Aggregate(
        (IEnumerable<int[]>)[[]],
        (choices, d) => choices.SelectMany(choice => Enumerable.Range(0, tier.Active[d] ? most(d) + 1 : 1).Select(count => (int[])[.. choice, count])));

    // What adds up costs is asked for such duals only.
    private static Duals Fitting(DrawnTier drawn, Random random)
    {
        var duals = drawn.Duals(random);
        return new Relaxation([], [], duals, new PricingKnapsack(drawn.Tier).Price(duals), 0).SumsFit(drawn.Tier) ? duals : Duals.Zero(drawn.Tier);
    }

    private static IEnumerable<(DrawnTier Drawn, CellLoads Loads, Random Random)> Drawn(int first, int problems)
    {
        foreach (var (drawn, i) in DrawnTier.Some(first, problems).Select((drawn, i) => (drawn, i)))
        {
            var random = new Random(first + i);
            int[] cells = [.. drawn.Tier.DemandCount.Select((_, d) => drawn.Tier.Active[d] ? random.Next(1, 12) : 0)];
            yield return (drawn, new CellLoads(drawn.Tier, Fitting(drawn, random), cells, (_, _, _) => true), random);
        }
    }
}
