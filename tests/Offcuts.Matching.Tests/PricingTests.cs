using Offcuts.Matching.Methods;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests;

/// <summary>Pricing against trying every pattern, and what rests on it.</summary>
public class PricingTests
{
    private static double[] Earned(Tier tier, Random random) => [.. tier.DemandCount.Select(_ => random.Next(3) * 100.0 + random.Next(200))];

    private static Duals At(Tier tier, double[] earned) => new(tier, earned, new double[tier.SupplyCount.Length], tier.LeftCap.ToDictionary(pair => pair.Key, _ => 0.0), 0);

    private static long LeastOfEvery(Tier tier, int supply, Duals duals) =>
        Every(tier, supply).Select(pattern => PricingKnapsack.ReducedCost(tier, pattern, duals)).DefaultIfEmpty(long.MaxValue).Min();

    [Fact]
    public void The_least_reduced_cost_is_that_of_trying_every_pattern()
    {
        var (compared, bought) = (0, 0);
        for (var seed = 0; seed < 200; seed++)
        {
            foreach (var (tier, _) in Tiers(seed))
            {
                var random = new Random(seed);
                var duals = At(tier, Earned(tier, random));
                var priced = new PricingKnapsack(tier).Price(duals);
                for (var s = 0; s < priced.Length; s++)
                {
                    if (tier.SupplyCount[s] == 0 || LeastOfEvery(tier, s, duals) is var least && least >= 0) continue;
                    priced[s].Least.Should().Be(least, $"seed {seed}, supply {s}");
                    priced[s].ReducedCost.Should().Be(least, "the pattern handed back is the one that was meant");
                    compared++;
                    if (tier.Problem.Supplies[s].Price > 0) bought++;
                }
            }
        }

        compared.Should().BeGreaterThan(300, "else little was compared");
        bought.Should().BeGreaterThan(100);
    }

    // As column generation asks: one after the other, each time about what was asked last, and now and then something else. What was best last time leaves out what can't be the best now.
    [Fact]
    public void Asked_again_at_other_duals_the_least_reduced_cost_is_still_that_of_trying_every_pattern()
    {
        var (compared, changed) = (0, 0);
        for (var seed = 0; seed < 200; seed++)
        {
            foreach (var (tier, _) in Tiers(seed))
            {
                var random = new Random(seed);
                var pricing = new PricingKnapsack(tier);
                var earned = Earned(tier, random);
                var before = new Pattern?[tier.SupplyCount.Length];
                for (var asked = 0; asked < 5; asked++)
                {
                    var duals = At(tier, earned);
                    var priced = pricing.Price(duals);
                    for (var s = 0; s < priced.Length; s++)
                    {
                        if (tier.SupplyCount[s] == 0 || LeastOfEvery(tier, s, duals) is var least && least >= 0) continue;
                        priced[s].Least.Should().Be(least, $"seed {seed}, supply {s}, asked {asked} times before");
                        priced[s].ReducedCost.Should().Be(least);
                        if (asked > 0) compared++;
                        if (asked > 0 && !Equals(before[s], priced[s].Best)) changed++;
                        before[s] = priced[s].Best;
                    }

                    // A little for all, much for one, and sometimes nothing for one.
                    earned = [.. earned.Select(each => Math.Max(0, each + random.Next(-20, 21)))];
                    earned[random.Next(earned.Length)] *= random.Next(3);
                }
            }
        }

        compared.Should().BeGreaterThan(1_000, "else little was compared");
        changed.Should().BeGreaterThan(200, "else what was best last time always is");
    }

    // Whole inches, so that many patterns end exactly with their span, which spares a saw cut. What a cut earns is a part of what its saw cut costs, and a little
    // more the longer it is: there a pattern that earns less can be the best because it ends so. In every other yard a longer store length costs less, so that
    // what is left over can be worth less for being longer.
    [Fact]
    public void With_saw_cuts_first_a_pattern_that_ends_with_its_span_is_priced_with_the_saw_cut_that_it_spares()
    {
        var (compared, ending) = (0, 0);
        for (var seed = 0; seed < 1_500; seed++)
        {
            var random = new Random(seed);
            var request = Request(
                Enumerable.Range(1, random.Next(1, 4)).Select(i => Board($"{random.Next(8, 25)}\"", i)),
                Enumerable.Range(0, random.Next(1, 5)).Select(i => Cut($"{random.Next(2, 9)}\"", random.Next(1, 5), name: $"{i}")),
                seed % 2 == 0 ? [Price("24\"", 900)] : [Price("24\"", 900), Price("36\"", 500)]) with
            {
                Order = TierOrder.SawCutsFirst,
                Buy = random.Next(2) == 0,
                Settings = NoKerf with { Kerfs = NoKerf.Kerfs.SetItem(Core.Materials.MaterialFamily.Lumber, L($"{random.Next(2)}\"")), KeepElsewhere = L($"{random.Next(1, 13)}\"") },
            };
            var material = MaterialProblem.Of(Problem.Create(request).Value, Stud, out _);
            if (material.Copies == 0) continue;
            var tier = Tier.GivenUp(MaterialSolver.First(material, 1).Plan);
            double[] earned = [.. material.Weights.Select(weight => tier.Problem.SawCost * (0.6 + 0.5 * random.NextDouble()) + 3.0 * weight / Core.Measures.Length.PerInch)];
            var duals = At(tier, earned);
            var priced = new PricingKnapsack(tier).Price(duals);
            for (var s = 0; s < priced.Length; s++)
            {
                if (tier.SupplyCount[s] == 0 || Every(tier, s).MinBy(pattern => PricingKnapsack.ReducedCost(tier, pattern, duals)) is not { } best) continue;
                var least = PricingKnapsack.ReducedCost(tier, best, duals);
                if (least >= 0) continue;
                priced[s].Least.Should().Be(least, $"seed {seed}, supply {s}");
                priced[s].ReducedCost.Should().Be(least, "the pattern handed back is the one that was meant");
                compared++;
                if (!best.Whole && best.SawCuts < best.Cuts) ending++;
            }
        }

        compared.Should().BeGreaterThan(300, "else little was compared");
        ending.Should().BeGreaterThan(100);
    }

    // Elsewhere nothing at all is the best where no cut earns its place; a span that must be cut is priced at its best pattern, dear as it may be.
    [Fact]
    public void A_span_that_must_be_cut_is_priced_at_its_best_pattern_though_that_earns_nothing()
    {
        var (compared, dear) = (0, 0);
        foreach (var drawn in Methods.DrawnTier.Some(8_300, 150))
        {
            var random = new Random(compared);
            int[] least = [.. drawn.Tier.SupplyCount.Select(count => Math.Min(count, random.Next(2)))];
            var (tier, duals) = (drawn.Tier.Within(least, drawn.Tier.SupplyCount), drawn.Duals(random));
            var priced = new PricingKnapsack(tier).Price(duals);
            for (var s = 0; s < priced.Length; s++)
            {
                if (least[s] == 0 || drawn.Patterns[s].Count == 0) continue;
                var best = drawn.Patterns[s].Min(pattern => drawn.Reduced(pattern, duals));
                priced[s].Least.Should().Be(best, $"of {drawn.Name}, supply {s}");
                compared++;
                if (best > 0) dear++;
            }
        }

        compared.Should().BeGreaterThan(100);
        dear.Should().BeGreaterThan(30, "else the best always earns something");
    }

    // 30 cuts that earn as much as they weigh, from one piece of 60 ft: every sum of lengths is a label of its own, and there are too many. Lengths to the unit, since
    // on the 64th of an inch too many sets are equally long.
    [Fact]
    public void Where_labels_are_too_many_the_bound_is_still_below_every_pattern_and_not_far()
    {
        var random = new Random(1);
        var request = Request([Board("720\"")], Enumerable.Range(0, 30).Select(i => OfLength(Core.Measures.Length.FromUnits(random.NextInt64(40 * Core.Measures.Length.PerInch, 90 * Core.Measures.Length.PerInch)), i))) with { Buy = false };
        var material = MaterialProblem.Of(Problem.Create(request).Value, Stud, out _);
        var tier = Tier.GivenUp(MaterialSolver.First(material, 1).Plan);
        var duals = At(tier, [.. material.Weights.Select(weight => weight / 100.0)]);

        var sums = new HashSet<long> { 0 };
        foreach (var weight in material.Weights.TakeWhile(_ => sums.Count <= PricingKnapsack.MostLabels)) sums.UnionWith([.. sums.Select(sum => sum + weight).Where(sum => sum <= material.Capacity(0))]);
        sums.Count.Should().BeGreaterThan(PricingKnapsack.MostLabels, "else they are not too many");

        var priced = new PricingKnapsack(tier).Price(duals)[0];

        var full = material.Capacity(0) / 100.0 * tier.Scale;
        ((double)priced.Least).Should().BeInRange(-full * 1.002, -full * 0.999, "cuts fill the piece nearly, and rounding adds less than an inch or two");
        for (var draw = 0; draw < 2_000; draw++)
        {
            var (room, takes) = (material.Capacity(0), new List<Take>());
            foreach (var d in Enumerable.Range(0, material.Demands.Count).OrderBy(_ => random.Next()))
            {
                if (takes.Sum(take => take.Count) >= material.Copies || material.Weights[d] > room) continue;
                takes.Add(new Take(d, 1));
                room -= material.Weights[d];
            }

            PricingKnapsack.ReducedCost(tier, new Pattern(material, 0, takes), duals).Should().BeGreaterThanOrEqualTo(priced.Least);
        }

        if (priced.Best is { } pattern) PricingKnapsack.ReducedCost(tier, pattern, duals).Should().Be(priced.ReducedCost);
    }

    private static Core.Yard.RequiredCut OfLength(Core.Measures.Length length, int number) => Cut("1\"", name: $"{number}") with { Shortest = length, Longest = length };

    [Fact]
    public void Duals_from_the_middle_bound_no_worse_than_by_a_hundredth_and_leave_no_pattern_of_the_best_plan_out()
    {
        var fewer = 0;
        for (var seed = 0; seed < 60; seed++)
        {
            foreach (var (tier, plan) in Tiers(seed))
            {
                var none = new Effort(MatchLimits.None);
                var best = TierSolver.Solve(tier, plan, 0, none);
                if (tier.Value(best.Plan) != best.Bound) continue;
                var relaxation = ColumnGeneration.Solve(tier, plan, [], none);
                var middle = ColumnGeneration.Centred(tier, plan, relaxation, none);
                (relaxation.Bound - middle.Bound).Should().BeLessThanOrEqualTo(tier.Scale / 100, $"seed {seed}");
                Bounds.RoundUp(tier, middle.Bound).Should().BeLessThanOrEqualTo(best.Bound, $"seed {seed}");
                if (PatternEnumeration.All(tier, ReducedCostLimits.Of(tier, relaxation, best.Bound), 20_000, 2_000_000) is not { } before) continue;
                if (PatternEnumeration.All(tier, ReducedCostLimits.Of(tier, middle, best.Bound), 20_000, 2_000_000) is not { } after) continue;
                if (after.Count < before.Count) fewer++;
                var search = new PoolSearch(tier, after, best.Bound, 3_000, none);
                if (search.Run(middle.Bound)) search.Best.Should().NotBeNull($"seed {seed}: a plan of {best.Bound} is among them");
            }
        }

        fewer.Should().BeGreaterThan(5, "else it is of no use");
    }

    [Fact]
    public void Counting_and_searching_decide_alike_where_one_of_them_is_told_to_keep_out()
    {
        var compared = 0;
        for (var seed = 0; seed < 110; seed++)
        {
            foreach (var (tier, plan) in Tiers(seed))
            {
                var none = new Effort(MatchLimits.None);
                var relaxation = ColumnGeneration.Solve(tier, plan, [], none);
                var most = tier.Value(plan);
                if (PatternEnumeration.All(tier, ReducedCostLimits.Of(tier, relaxation, most), 3_000, 500_000) is not { } patterns) continue;
                var counted = PoolDecision.Solve(tier, patterns, Guide.Linear(tier, relaxation), most, new PoolWork(100, 200_000, 20_000_000, 0), none);
                var searched = PoolDecision.Solve(tier, patterns, Guide.Linear(tier, relaxation), most, new PoolWork(0, 0, 0, 3_000), none);
                if (!counted.Closed || !searched.Closed) continue;
                tier.Value(counted.Plan!).Should().Be(tier.Value(searched.Plan!), $"seed {seed}");
                compared++;
            }
        }

        compared.Should().BeGreaterThan(40, "else little was compared");
    }

    private static IEnumerable<(Tier Tier, MaterialPlan Plan)> Tiers(int seed)
    {
        var problem = Problem.Create(RandomYards.Draw(seed, 8, 6)).Value;
        foreach (var material in problem.Materials)
        {
            var plan = MaterialSolver.First(MaterialProblem.Of(problem, material, out _), problem.Stages.Count).Plan;
            if (plan.Spend > 0) yield return (Tier.Spend(plan), plan);
        }
    }

    // Every pattern of a supply, none longer than it and none with more of a cut than is asked for.
    private static IEnumerable<Pattern> Every(Tier tier, int supply)
    {
        var problem = tier.Problem;
        var from = problem.Supplies[supply];
        var sets = new List<Take[]> { Array.Empty<Take>() };
        for (var d = 0; d < problem.Demands.Count; d++)
        {
            if (!from.Allows[d]) continue;
            var demand = d;
            sets = [.. sets.SelectMany(set => Enumerable.Range(0, tier.DemandCount[demand] + 1)
                .Select(count => count == 0 ? set : [.. set, new Take(demand, count)])
                .Where(takes => takes.Sum(take => take.Count * problem.Weights[take.Demand]) <= problem.Capacity(supply)))];
        }

        foreach (var set in sets.Where(set => set.Length > 0)) yield return new Pattern(problem, supply, set);
        for (var d = 0; d < problem.Demands.Count; d++)
        {
            if (from.Whole[d]) yield return new Pattern(problem, supply, [new Take(d, 1)], whole: true);
        }
    }
}
