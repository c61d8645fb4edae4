using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>Branching on how many of each store length are bought, on tiers of which every plan is known.</summary>
public sealed class PurchaseBranchingTests
{
    private static readonly Effort None = new(MatchLimits.None);

    [Fact]
    public void It_ends_with_the_best_plan_and_its_bound()
    {
        var proven = 0;
        foreach (var drawn in DrawnTier.Some(5_000, 600))
        {
            var (tier, start) = (drawn.Tier, drawn.Start);
            var relaxation = ColumnGeneration.Solve(tier, start, [], None);
            var least = long.MinValue / 4;

            // What is left where the purchases are whole is decided over every pattern there is.
            var (plan, bound) = PurchaseBranching.Solve(tier, start, least, relaxation, (whole, best, _, _) =>
            {
                Interlocked.Increment(ref proven);
                var (better, closed) = IntegerMaster.Solve(whole, [.. drawn.Patterns.SelectMany(patterns => patterns)], tier.Value(best) - 1, 10_000, None);
                closed.Should().BeTrue($"of {drawn.Name}");
                return (better ?? best, tier.Value(better ?? best));
            }, None, few: 0);

            tier.Accepts(plan).Should().BeTrue($"of {drawn.Name}");
            (tier.Value(plan), bound).Should().Be((drawn.Optimum, drawn.Optimum), $"of {drawn.Name}");
        }

        proven.Should().BeGreaterThan(20, "else next to nothing was left to prove");
    }

    [Fact]
    public void Where_the_proof_of_what_is_left_comes_to_no_end_the_bound_stays_below_what_might_be_found_there()
    {
        var open = 0;
        foreach (var drawn in DrawnTier.Some(5_000, 400))
        {
            var (tier, start) = (drawn.Tier, drawn.Start);

            var (plan, bound) = PurchaseBranching.Solve(tier, start, long.MinValue / 4, ColumnGeneration.Solve(tier, start, [], None), (_, best, least, _) => (best, least), None, few: 0);

            bound.Should().BeLessThanOrEqualTo(drawn.Optimum, $"of {drawn.Name}");
            if (tier.Value(plan) > drawn.Optimum) open++;
        }

        open.Should().BeGreaterThan(2, "else the best is found in any case");
    }

    [Fact]
    public void The_bound_of_a_node_is_not_above_a_plan_that_buys_and_cuts_what_the_node_asks_for()
    {
        var (looked, raised) = (0, 0);
        foreach (var drawn in DrawnTier.Some(5_500, 300))
        {
            var random = new Random(looked);
            for (var draw = 0; draw < 5; draw++)
            {
                if (drawn.Filled(random) is not { } uses) continue;
                var plan = new MaterialPlan(drawn.Tier.Problem, uses.Select(use => (use.Pattern, (int)use.Times)));
                if (!drawn.Tier.Accepts(plan)) continue;
                int[] cut = [.. drawn.Tier.SupplyCount.Select((_, s) => plan.Uses.Where(use => use.Pattern.Supply == s).Sum(use => use.Times))];
                var node = drawn.Tier.Within(
                    [.. cut.Select(times => Math.Max(0, times - random.Next(2)))],
                    [.. cut.Select((times, s) => Math.Min(drawn.Tier.SupplyCount[s], times + random.Next(2)))]);

                var relaxation = ColumnGeneration.Solve(node, drawn.Start, [], None);
                var duals = drawn.Duals(random);
                foreach (var bound in (long[])[relaxation.Bound, Bounds.Lagrangian(node, duals, new PricingKnapsack(node).Price(duals))])
                    Bounds.RoundUp(node, bound).Should().BeLessThanOrEqualTo(Math.Max(node.Value(plan), node.Value(drawn.Start)), $"of {drawn.Name}");

                Bounds.Lagrangian(node, duals, new PricingKnapsack(node).Price(duals)).Should().BeLessThanOrEqualTo(node.Value(plan) * node.Scale, $"of {drawn.Name}");
                looked++;
                if (relaxation.Bound > ColumnGeneration.Solve(drawn.Tier, drawn.Start, [], None).Bound) raised++;
            }
        }

        looked.Should().BeGreaterThan(1_000);
        raised.Should().BeGreaterThan(100, "else the node says no more than the tier");
    }

    [Fact]
    public void A_node_that_no_plan_can_meet_is_closed_by_its_bound()
    {
        var (dear, small) = (0, 0);
        foreach (var (drawn, number) in DrawnTier.Some(5_900, 600).Select((drawn, number) => (drawn, number)))
        {
            var (tier, random) = (drawn.Tier, new Random(number));
            var shut = tier.SupplyCount.Select(count => random.Next(3) == 0 ? 0 : count).ToArray();
            var needed = Enumerable.Range(0, tier.DemandCount.Length).Where(d => tier.Active[d]).Sum(d => Math.Max(0L, tier.DemandCount[d] - tier.MostLeft[d]) * tier.Problem.Weights[d]);
            var room = shut.Select((count, s) => (Int128)count * tier.Problem.Capacity(s)).Aggregate((Int128)0, (sum, one) => sum + one);
            if (room < needed && Closed(tier.Within(tier.SupplyLeast, shut))) small++;

            // Bought until it costs more than may be spent, by a piece or a few.
            if (tier.SpendCap is not { } cap || tier.Value(drawn.Start) == 0) continue;
            var dearest = Enumerable.Range(0, tier.SupplyCount.Length).Where(s => tier.SupplyCount[s] > 0).MaxBy(s => tier.Problem.Supplies[s].Price);
            if (tier.Problem.Supplies[dearest].Price is not (> 0 and var price)) continue;
            var times = (int)Math.Min(tier.Copies, cap / price + 1 + random.Next(3));
            if (times <= cap / price) continue;
            if (Closed(tier.Within([.. tier.SupplyLeast.Select((least, s) => s == dearest ? times : least)], [.. tier.SupplyCount.Select((most, s) => s == dearest ? times : most)]))) dear++;

            bool Closed(Tier node)
            {
                if (tier.Value(drawn.Start) == 0) return false;
                var bound = Bounds.RoundUp(node, ColumnGeneration.Solve(node, drawn.Start, [], None).Bound);
                bound.Should().BeGreaterThanOrEqualTo(tier.Value(drawn.Start), $"of {drawn.Name}");
                return true;
            }
        }

        dear.Should().BeGreaterThan(20);
        small.Should().BeGreaterThan(20);
    }

    [Fact]
    public void Numbers_of_which_no_mixture_has_a_sum_between_two_ends_are_left_out()
    {
        var (narrowed, none, random) = (0, 0, new Random(5_800));
        foreach (var drawn in DrawnTier.Some(5_800, 300))
        {
            var tier = drawn.Tier;
            int[] lengths = [.. Enumerable.Range(0, tier.SupplyCount.Length).Where(s => tier.Problem.Supplies[s].Price > 0)];
            var most = tier.SupplyCount.Select((count, s) => lengths.Contains(s) ? Math.Min(count, 3) : count).ToArray();
            var within = tier.Within(tier.SupplyLeast, most);
            var from = random.Next(4_000);
            var to = from + random.Next(400);
            var mixtures = lengths.Aggregate((IEnumerable<int[]>)[[]], (all, s) => all.SelectMany(mixture => Enumerable.Range(0, most[s] + 1).Select(n => (int[])[.. mixture, n])))
                .Where(mixture => mixture.Zip(lengths).Sum(pair => pair.First * tier.Problem.Supplies[pair.Second].Price) is var sum && sum >= from && sum <= to).ToArray();

            var ranges = Purchases.Of(within, from, to);

            ranges.Mixtures.Should().Be(mixtures.Length, $"of {drawn.Name}");
            if (mixtures.Length == 0) none++;
            for (var i = 0; i < lengths.Length && mixtures.Length > 0; i++)
            {
                (ranges.Least[lengths[i]], ranges.Most[lengths[i]]).Should().Be((mixtures.Min(mixture => mixture[i]), mixtures.Max(mixture => mixture[i])), $"of {drawn.Name}");
                if (ranges.Most[lengths[i]] < most[lengths[i]]) narrowed++;
            }
        }

        narrowed.Should().BeGreaterThan(50);
        none.Should().BeGreaterThan(20);
    }

    // Of one length at 1.00 that is a look before all, and one at each number of it.
    [Fact]
    public void All_mixtures_count_where_there_are_just_so_few_that_each_is_looked_at_and_none_where_there_is_one_more()
    {
        var problem = Problem.Create(Scene.Request([], [Scene.Cut("90\"")], Scene.Price("8'", 100))).Value;
        var tier = Tier.Spend(MaterialSolver.First(MaterialProblem.Of(problem, problem.Materials[0], out _), 1).Plan);

        var whole = Purchases.Of(tier.Within([0], [19_998]), 0, 1_999_800);
        var given = Purchases.Of(tier.Within([0], [19_999]), 1_999_900, 1_999_900);

        (whole.Least[0], whole.Most[0], whole.Mixtures).Should().Be((0, 19_998, 19_999));
        (given.Least[0], given.Most[0], given.Mixtures).Should().Be((0, 19_999, null), "nothing is said of what was not looked at to the end");
    }
}
