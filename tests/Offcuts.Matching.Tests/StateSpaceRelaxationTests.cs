using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests;

/// <summary>The state-space relaxation never says more than is true, and says more than the linear one where spans are all or nothing.</summary>
public class StateSpaceRelaxationTests
{
    private static readonly Effort None = new(MatchLimits.None);

    [Fact]
    public void Its_bound_is_never_above_the_best_plan_and_mostly_above_the_linear_one()
    {
        var (compared, better) = (0, 0);
        foreach (var (seed, tier, best, linear) in Solved(40))
        {
            if (StateSpaceRelaxation.Of(tier, linear, best) is not { } first) continue;
            var raised = StateSpaceAscent.Raise(tier, first, best, 150, None).Best;

            Bounds.RoundUp(tier, raised.Bound).Should().BeLessThanOrEqualTo(best, $"seed {seed} has a plan of that cost");
            compared++;
            if (raised.Bound > linear.Bound + tier.Scale / 2) better++;
        }

        compared.Should().BeGreaterThan(15, "else little was compared");
        better.Should().BeGreaterThan(4, "else it says no more than the linear one");
    }

    [Fact]
    public void Patterns_of_the_best_plan_are_within_its_limits()
    {
        var compared = 0;
        foreach (var (seed, tier, best, linear) in Solved(40))
        {
            if (StateSpaceRelaxation.Of(tier, linear, best) is not { } first) continue;
            var raised = StateSpaceAscent.Raise(tier, first, best, 150, None).Best;
            if (PatternEnumeration.All(tier, ReducedCostLimits.Of(raised, best), 20_000, 4_000_000) is not { } patterns) continue;
            var search = new PoolSearch(tier, patterns, best, 3_000, None);
            if (!search.Run(raised.Bound)) continue;

            search.Best.Should().NotBeNull($"seed {seed} has a plan of {best}, and all its patterns are in the pool");
            tier.Value(search.Best!).Should().Be(best, $"seed {seed}");
            compared++;
        }

        compared.Should().BeGreaterThan(15, "else little was compared");
    }

    [Fact]
    public void A_span_used_in_part_counts_as_used()
    {
        // Two cuts fit a board. Of one and a half boards, as the linear relaxation has it, each half loses half of what a board does;
        // a plan takes the third cut from a board of its own, which loses more.
        var boards = Enumerable.Range(1, 3).Select(number => Scene.Board("96\"", number));
        var problem = Problem.Create(Scene.Request(boards, [Scene.Cut("40\"", 3)], Scene.Price("8'", 400))).Value;
        var plan = MaterialSolver.First(MaterialProblem.Of(problem, problem.Materials[0], out _), 1).Plan;
        var tier = Tier.GivenUp(plan);
        var linear = ColumnGeneration.Solve(tier, plan, [], None);

        linear.Bound.Should().BeLessThan(tier.Value(plan) * tier.Scale);
        Bounds.RoundUp(tier, StateSpaceRelaxation.Of(tier, linear, tier.Value(plan))!.Bound).Should().Be(tier.Value(plan));
    }

    [Fact]
    public void A_board_that_must_be_cut_and_one_that_must_not_raise_the_bound()
    {
        // The three cuts of the test before, from two boards at least: with one, none can be; with three, a third board loses more.
        var boards = Enumerable.Range(1, 3).Select(number => Scene.Board("96\"", number));
        var problem = Problem.Create(Scene.Request(boards, [Scene.Cut("40\"", 3)], Scene.Price("8'", 400))).Value;
        var plan = MaterialSolver.First(MaterialProblem.Of(problem, problem.Materials[0], out _), 1).Plan;
        var tier = Tier.GivenUp(plan);
        var linear = ColumnGeneration.Solve(tier, plan, [], None);
        var relaxation = StateSpaceRelaxation.Of(tier, linear, 10_000)!;

        relaxation.Within(tier.Within([0, .. tier.SupplyLeast[1..]], [1, .. tier.SupplyCount[1..]])).LeastPath().Should().BeNull("two of 40\" and a kerf fill a board");
        var two = relaxation.Within(tier.Within([2, .. tier.SupplyLeast[1..]], tier.SupplyCount));
        two.LeastPath()!.Uses[0].Should().Be(2);
        two.Limit(0, 2 * two.Cells[0], tier.Value(plan)).Should().BeGreaterThan(-StateSpaceRelaxation.Never / 2, "a board with two of them and one with the third are the two that must be cut");
        var three = relaxation.Within(tier.Within([3, .. tier.SupplyLeast[1..]], tier.SupplyCount));
        three.LeastPath()!.Uses[0].Should().Be(3);
        Bounds.RoundUp(tier, three.Bound).Should().BeGreaterThan(tier.Value(plan));
    }

    // Small problems whose last tier is solved and proven, with that tier, its figure and its linear relaxation.
    private static IEnumerable<(int Seed, Tier Tier, long Best, Relaxation Linear)> Solved(int seeds)
    {
        for (var seed = 0; seed < seeds; seed++)
        {
            var problem = Problem.Create(RandomYards.Draw(seed, 10, 10)).Value;
            foreach (var material in problem.Materials)
            {
                var first = MaterialSolver.First(MaterialProblem.Of(problem, material, out _), problem.Stages.Count);
                var solved = MaterialSolver.Solve(first, None, _ => { });
                if (!solved.LastProven || solved.Plan.Uses.Count == 0) continue;
                var tier = Tier.GivenUp(solved.Plan);
                yield return (seed, tier, tier.Value(solved.Plan), ColumnGeneration.Solve(tier, solved.Plan, [], None));
            }
        }
    }
}
