using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>
/// The state-space relaxation on tiers of which every pattern and the best plan are known: its bound and its limits against every path of loads (<see cref="CellLoadsTests"/>), in long
/// numbers and one figure after the other.
/// </summary>
public sealed class CellBoundTests
{
    private const long Never = StateSpaceRelaxation.Never;

    private static readonly Effort None = new(MatchLimits.None);

    [Fact]
    public void Its_bound_is_the_least_path_of_loads_and_never_above_the_best_plan()
    {
        var near = 0;
        foreach (var (drawn, relaxation) in Relaxed(200, 7))
        {
            var (tier, loads) = (drawn.Tier, new CellLoads(drawn.Tier, relaxation.Duals, [.. relaxation.Cells], (_, _, _) => true));
            var least = Bounds.Rows(tier, relaxation.Duals) + Paths(loads, Steps(tier))[loads.All];

            relaxation.Bound.Should().BeLessThanOrEqualTo(drawn.Optimum * tier.Scale, $"of {drawn.Name}");
            ((Int128)relaxation.Bound <= least).Should().BeTrue($"{relaxation.Bound} is above {least}, of {drawn.Name}");
            (least - relaxation.Bound <= Slack(loads, Steps(tier))).Should().BeTrue($"{relaxation.Bound} is far below {least}, of {drawn.Name}");
            if (Bounds.RoundUp(tier, relaxation.Bound) == drawn.Optimum) near++;
        }

        near.Should().BeGreaterThan(2, "some bounds say all");
    }

    [Fact]
    public void Where_spans_must_be_cut_it_is_the_least_path_that_cuts_them()
    {
        var musts = 0;
        foreach (var (drawn, relaxation) in Whole(300, 8))
        {
            var random = new Random(2);
            var (best, used) = (TierSolver.Solve(drawn.Tier, drawn.Start, long.MinValue / 4, None).Plan.Uses, new int[drawn.Tier.SupplyCount.Length]);
            foreach (var (pattern, times) in best) used[pattern.Supply] += times;
            var tier = drawn.Tier.Within([.. used.Select(times => random.Next(times + 1))], [.. used.Select((times, s) => random.Next(times, drawn.Tier.SupplyCount[s] + 1))]);
            var (within, loads) = (relaxation.Within(tier), new CellLoads(tier, relaxation.Duals, [.. relaxation.Cells], (_, _, _) => true));
            var least = Bounds.Rows(tier, relaxation.Duals) + Paths(loads, Steps(tier))[loads.All];
            musts += tier.SupplyLeast.Sum();

            within.Bound.Should().BeLessThanOrEqualTo(drawn.Optimum * tier.Scale, $"of {drawn.Name}");
            ((Int128)within.Bound <= least && least - within.Bound <= Slack(loads, Steps(tier))).Should().BeTrue($"{within.Bound} for {least}, of {drawn.Name}");
            foreach (var (pattern, _) in best)
                within.Limit(pattern.Supply, CellsOf(pattern, within), drawn.Optimum).Should().BeGreaterThanOrEqualTo(drawn.Reduced(pattern, within.Duals), $"the best plan cuts as many as that, of {drawn.Name}");
        }

        musts.Should().BeGreaterThan(3);
    }

    [Fact]
    public void With_only_the_loads_that_plans_of_the_best_cost_can_have_it_is_still_not_above_that()
    {
        foreach (var drawn in DrawnTier.Some(400, 7))
        {
            var linear = ColumnGeneration.Solve(drawn.Tier, drawn.Start, [], None);
            if (StateSpaceRelaxation.Of(drawn.Tier, linear, drawn.Optimum) is not { } first) continue;
            first.Bound.Should().BeLessThanOrEqualTo(drawn.Optimum * drawn.Tier.Scale, $"of {drawn.Name}");
            var random = new Random(1);
            var at = first;
            for (var round = 0; round < 3; round++)
            {
                at = at.At(first.Duals.With(drawn.Tier, [.. first.Duals.Demand.Select(dual => dual / (double)drawn.Tier.Scale * (0.8 + 0.4 * random.NextDouble()))]), drawn.Optimum);
                at.Bound.Should().BeLessThanOrEqualTo(drawn.Optimum * drawn.Tier.Scale, $"of {drawn.Name}");
            }
        }
    }

    [Fact]
    public void A_limit_is_what_the_cheapest_path_of_all_else_leaves()
    {
        var limits = 0;
        foreach (var (drawn, relaxation) in Relaxed(600, 6))
        {
            var (tier, loads) = (drawn.Tier, new CellLoads(drawn.Tier, relaxation.Duals, [.. relaxation.Cells], (_, _, _) => true));
            var steps = Steps(tier);
            var (most, slack) = (drawn.Optimum + 50, Slack(loads, steps));
            for (var s = 0; s < loads.Least.Length; s++)
            {
                if (tier.SupplyCount[s] == 0) continue;
                var without = steps.FindLastIndex(step => step.Supply == s && step.Must) is var must and >= 0 ? must : steps.FindLastIndex(step => step.Supply == s);
                var others = Paths(loads, steps[without].Often ? steps : [.. steps.Where((_, k) => k != without)]);
                for (var cells = 1; cells < loads.Least[s].Length; cells++)
                {
                    if (!loads.Has(s, cells)) continue;
                    var limit = relaxation.Limit(s, cells, most);
                    if (cells > loads.All || others[loads.All - cells] >= Never / 2)
                    {
                        limit.Should().Be(-Never, $"of {drawn.Name}: nothing else fills the other cells");
                        continue;
                    }

                    var left = (Int128)most * tier.Scale - Bounds.Rows(tier, relaxation.Duals) - others[loads.All - cells];
                    limits++;
                    ((Int128)limit >= left).Should().BeTrue($"{limit} loses what {left} allows, of {drawn.Name}");
                    ((Int128)limit - left <= slack).Should().BeTrue($"{limit} is far beyond {left}, of {drawn.Name}");
                }
            }
        }

        limits.Should().BeGreaterThan(20);
    }

    [Fact]
    public void Every_pattern_of_the_best_plan_is_within_the_limits_at_its_cost()
    {
        var looked = 0;
        foreach (var (drawn, relaxation) in Whole(800, 14))
        {
            var best = TierSolver.Solve(drawn.Tier, drawn.Start, long.MinValue / 4, None).Plan;
            foreach (var (pattern, _) in best.Uses)
            {
                looked++;
                var limits = ReducedCostLimits.Of(relaxation, drawn.Optimum).Of(pattern.Supply);
                drawn.Reduced(pattern, relaxation.Duals).Should().BeLessThanOrEqualTo(limits.Most[CellsOf(pattern, relaxation)], $"of {drawn.Name}");
            }
        }

        looked.Should().BeGreaterThan(10);
    }

    [Fact]
    public void Spans_in_any_order_cost_from_each_on_what_the_cheapest_of_them_do()
    {
        foreach (var (drawn, relaxation) in Relaxed(900, 4))
        {
            var loads = new CellLoads(drawn.Tier, relaxation.Duals, [.. relaxation.Cells], (_, _, _) => true);
            var steps = Steps(drawn.Tier);
            new Random(1).Shuffle(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(steps));
            var (slack, rest) = (Slack(loads, steps), relaxation.Completion([.. steps.Select(step => (step.Supply, step.Must))]));

            for (var k = 0; k <= steps.Count; k++)
            {
                var expected = Paths(loads, steps[k..]);
                for (var cells = 0; cells <= loads.All; cells++)
                {
                    if (expected[cells] >= Never / 2) rest[k][cells].Should().Be(Never, $"of {drawn.Name}");
                    else ((Int128)rest[k][cells] <= expected[cells] && expected[cells] - rest[k][cells] <= slack).Should().BeTrue($"{rest[k][cells]} for {expected[cells]}, of {drawn.Name}");
                }
            }
        }
    }

    [Fact]
    public void Cuts_that_the_tier_does_not_look_at_fill_no_cells()
    {
        var looked = 0;
        foreach (var drawn in DrawnTier.Some(1_000, 60).Where(drawn => drawn.Tier.Active.Contains(false) && drawn.Tier.Copies > 0).Take(8))
        {
            var linear = ColumnGeneration.Solve(drawn.Tier, drawn.Start, [], None);
            if (StateSpaceRelaxation.Of(drawn.Tier, linear, drawn.Optimum + 100) is not { } relaxation) continue;
            looked++;

            for (var d = 0; d < drawn.Tier.Active.Length; d++) (relaxation.Cells[d] > 0).Should().Be(drawn.Tier.Active[d], $"of {drawn.Name}");
            relaxation.Bound.Should().BeLessThanOrEqualTo(drawn.Optimum * drawn.Tier.Scale, $"of {drawn.Name}");
        }

        looked.Should().BeGreaterThan(3);
    }

    // 40 x 100 in are 32,512,000 units of 1/320 mm; shared out to 65,536 cells, a cut of 1/64 in, 127 units, fills less than half of one.
    [Fact]
    public void Where_a_cut_is_too_short_beside_the_others_to_fill_a_cell_nothing_is_said()
    {
        var tier = Bought(Scene.Cut("100\"", 40), Scene.Cut("1/64\"", name: "chip"));
        StateSpaceRelaxation.Of(tier, ColumnGeneration.Solve(tier, MaterialSolver.First(tier.Problem, 1).Plan, [], None), 1_000_000).Should().BeNull();

        tier = Bought(Scene.Cut("100\"", 40), Scene.Cut("1\"", name: "block"));
        StateSpaceRelaxation.Of(tier, ColumnGeneration.Solve(tier, MaterialSolver.First(tier.Problem, 1).Plan, [], None), 1_000_000).Should().NotBeNull();
    }

    [Fact]
    public void Where_prices_are_too_large_for_their_sums_to_be_numbers_nothing_is_said()
    {
        var tier = Bought(Scene.Cut("40\"", 2), Scene.Cut("30\"", 3, name: "other"));
        Relaxation At(double price)
        {
            var duals = Duals.Zero(tier).With(tier, [price, price]);
            return new Relaxation([], [], duals, new PricingKnapsack(tier).Price(duals), 0);
        }

        StateSpaceRelaxation.Of(tier, At(100), 1_000_000).Should().NotBeNull();
        StateSpaceRelaxation.Of(tier, At(1e30), 1_000_000).Should().BeNull();
    }

    // What stays unfilled costs 2^22 each in the finest multiples: 300 of them are beyond what a row of 32 bits holds, but for the unit that the figures are rounded to.
    [Theory]
    [InlineData(2)]
    [InlineData(300)]
    public void However_many_cuts_stay_unfilled_each_of_them_counts(int copies)
    {
        var problem = Problem.Create(Scene.Request([Scene.Board("50\"")], [Scene.Cut("40\"", copies)]) with { Buy = false }).Value;
        var plan = MaterialSolver.First(MaterialProblem.Of(problem, problem.Materials[0], out _), 1).Plan;
        var tier = Tier.Fill(plan.Problem, [true], 0, plan);
        var (duals, priced) = (Duals.Zero(tier), new PricingKnapsack(tier).Price(Duals.Zero(tier)));

        var relaxation = StateSpaceRelaxation.Of(tier, new Relaxation([], [], duals, priced, Bounds.Lagrangian(tier, duals, priced)), copies)!;

        Bounds.RoundUp(tier, relaxation.Bound).Should().Be(copies - 1);
    }

    // 300 cuts at 3.00 each, two of which a board at 5.00 gives: 150 boards earn 1.00 each.
    [Fact]
    public void However_often_a_store_length_is_cut_each_use_counts()
    {
        var tier = Bought(Scene.Cut("40\"", 300));
        var duals = Duals.Zero(tier).With(tier, [300]);
        var priced = new PricingKnapsack(tier).Price(duals);

        var relaxation = StateSpaceRelaxation.Of(tier, new Relaxation([], [], duals, priced, Bounds.Lagrangian(tier, duals, priced)), 1_000_000)!;

        Bounds.RoundUp(tier, relaxation.Bound).Should().Be(75_000);
    }

    private static Tier Bought(params Core.Yard.RequiredCut[] cuts)
    {
        var problem = Problem.Create(Scene.Request([], cuts, Scene.Price("100\"", 500)) with { Settings = Scene.NoKerf }).Value;
        return Tier.Spend(MaterialSolver.First(MaterialProblem.Of(problem, problem.Materials[0], out _), 1).Plan);
    }

    private readonly record struct Step(int Supply, bool Must, bool Often);

    // What has as many pieces as there are copies is as good as without end.
    private static List<Step> Steps(Tier tier)
    {
        var steps = new List<Step>();
        for (var s = 0; s < tier.SupplyCount.Length; s++)
        {
            var often = tier.SupplyCount[s] > 1 && tier.SupplyCount[s] >= tier.Copies;
            for (var i = tier.SupplyLeast[s]; i < (often ? tier.SupplyLeast[s] + 1 : tier.SupplyCount[s]); i++) steps.Add(new Step(s, false, often));
            for (var i = 0; i < tier.SupplyLeast[s]; i++) steps.Add(new Step(s, true, false));
        }

        return steps;
    }

    // By cells, the least that what stays unfilled and the loads of these spans cost together.
    private static Int128[] Paths(CellLoads loads, IEnumerable<Step> steps)
    {
        var row = new Int128[loads.All + 1];
        for (var cells = 0; cells < row.Length; cells++) row[cells] = loads.Left.Top[cells] > -Never / 2 ? -(Int128)loads.Left.Top[cells] : Never;
        foreach (var step in steps)
        {
            var next = step.Must ? [.. Enumerable.Repeat((Int128)Never, row.Length)] : (Int128[])row.Clone();
            var own = Enumerable.Range(1, Math.Max(0, loads.Least[step.Supply].Length - 1)).Where(cells => loads.Has(step.Supply, cells)).ToArray();
            for (var cells = 0; cells < row.Length; cells++)
            {
                var from = step.Often ? next[cells] : row[cells];
                if (from >= Never / 2) continue;
                foreach (var load in own.TakeWhile(load => cells + load < row.Length)) next[cells + load] = Int128.Min(next[cells + load], from + loads.Least[step.Supply][load]);
            }

            row = next;
        }

        return row;
    }

    // Each load is rounded down to a unit of which so many as a row can hold are more than all that a path costs.
    private static Int128 Slack(CellLoads loads, List<Step> steps)
    {
        Int128 Largest(IEnumerable<long> costs) => costs.Where(cost => Math.Abs(cost) < Never / 2).Select(cost => (Int128)Math.Abs(cost)).DefaultIfEmpty().Max();
        var reach = Largest(loads.Left.Top) + steps.Aggregate((Int128)0, (sum, step) => sum + Largest(loads.Least[step.Supply]) * (step.Often ? loads.All + 1 : 1));
        return (reach / CellRows.LargestSum + 1) * (steps.Count + 2 + (steps.Any(step => step.Often) ? loads.All : 0));
    }

    private static int CellsOf(Pattern pattern, StateSpaceRelaxation relaxation) => pattern.Takes.Sum(take => take.Count * relaxation.Cells[take.Demand]);

    // Those that look at every cut: in the others a plan has cuts besides that no cell stands for.
    private static IEnumerable<(DrawnTier Drawn, StateSpaceRelaxation Relaxation)> Whole(int first, int problems) =>
        Relaxed(first, problems).Where(one => one.Drawn.Tier.Active.All(active => active));

    // Relaxations at any duals, with all their loads.
    private static IEnumerable<(DrawnTier Drawn, StateSpaceRelaxation Relaxation)> Relaxed(int first, int problems)
    {
        foreach (var (drawn, i) in DrawnTier.Some(first, problems).Select((drawn, i) => (drawn, i)))
        {
            var random = new Random(first + i);
            var linear = ColumnGeneration.Solve(drawn.Tier, drawn.Start, [], None);
            if (StateSpaceRelaxation.Of(drawn.Tier, linear, drawn.Optimum + 10_000_000) is not { } relaxation) continue;
            var duals = drawn.Duals(random);
            var priced = new PricingKnapsack(drawn.Tier).Price(duals);
            if (!new Relaxation([], [], duals, priced, 0).SumsFit(drawn.Tier)) duals = linear.Duals;
            yield return (drawn, relaxation.At(duals));
        }
    }
}
