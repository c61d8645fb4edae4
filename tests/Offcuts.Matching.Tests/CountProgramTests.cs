using Offcuts.Matching.Methods;
using Offcuts.Matching.Tests.Methods;

namespace Offcuts.Matching.Tests;

/// <summary>The counting and the search are two ways to the same answer over the same patterns.</summary>
public class CountProgramTests
{
    [Fact]
    public void Counting_and_searching_agree_on_what_the_best_plan_gives_up()
    {
        var (compared, better) = (0, 0);
        for (var seed = 0; seed < 150; seed++)
        {
            var problem = Problem.Create(RandomYards.Draw(seed, 10, 10)).Value;
            foreach (var material in problem.Materials)
            {
                var start = MaterialSolver.First(MaterialProblem.Of(problem, material, out _), problem.Stages.Count).Plan;
                var tier = Tier.GivenUp(start);
                var none = new Effort(MatchLimits.None);
                var most = tier.Value(start) - 1;
                var relaxation = ColumnGeneration.Solve(tier, start, [], none);
                if (PatternEnumeration.All(tier, ReducedCostLimits.Of(tier, relaxation, most), 5_000, 1_000_000) is not { } patterns) continue;

                var counted = CountProgram.Solve(tier, patterns, Guide.Linear(tier, relaxation), most, 200_000, 20_000_000, none);
                var search = new PoolSearch(tier, patterns, most, 3_000, none);
                if (!search.Run(relaxation.Bound) || !counted.Closed) continue;

                Value(tier, counted.Plan).Should().Be(Value(tier, search.Best), $"seed {seed}");
                compared++;
                if (search.Best is not null) better++;
            }
        }

        compared.Should().BeGreaterThan(100, "else little was compared");
        better.Should().BeGreaterThan(20, "else there was little to find");
    }

    [Fact]
    public void Counting_gives_up_above_its_limits_and_says_so()
    {
        var problem = Problem.Create(RandomYards.Draw(2, 25, 25)).Value;
        var start = MaterialSolver.First(MaterialProblem.Of(problem, problem.Materials[0], out _), problem.Stages.Count).Plan;
        var tier = Tier.GivenUp(start);
        var none = new Effort(MatchLimits.None);
        var relaxation = ColumnGeneration.Solve(tier, start, [], none);
        var patterns = PatternEnumeration.All(tier, ReducedCostLimits.Of(tier, relaxation, tier.Value(start)), 1_000_000, 100_000_000)!;

        CountProgram.Solve(tier, patterns, Guide.Linear(tier, relaxation), tier.Value(start), 1, 20_000_000, none).Closed.Should().BeFalse("one state is too few");
        CountProgram.Solve(tier, patterns, Guide.Linear(tier, relaxation), tier.Value(start), 200_000, 0, none).Closed.Should().BeFalse("no try is too few");
    }

    [Fact]
    public void However_few_states_and_tries_it_may_take_what_it_says_is_so()
    {
        var (closed, open) = (0, 0);
        var none = new Effort(MatchLimits.None);
        foreach (var drawn in DrawnTier.Some(7_000, 14))
        {
            var (tier, random) = (drawn.Tier, new Random(drawn.Name.Length));
            var guide = Guide.Linear(tier, ColumnGeneration.Solve(tier, drawn.Start, [], none));
            foreach (var level in (long[])[drawn.Optimum - 1, drawn.Optimum, drawn.Optimum + 25])
            {
                var pool = PatternEnumeration.All(tier, guide.Limits(level), 100_000, 10_000_000)!;
                foreach (var states in (int[])[2, 3, 5, 9, 20, 60, 300])
                {
                    var said = CountProgram.Solve(tier, pool, guide, level, states, random.Next(1, 400), none, (SpanOrder)random.Next(2));
                    if (!said.Closed) open++;
                    else Value(tier, said.Plan).Should().Be(level < drawn.Optimum ? null : drawn.Optimum, $"of {drawn.Name} up to {level} with {states} states");
                    if (said.Closed) closed++;
                }
            }
        }

        closed.Should().BeGreaterThan(60);
        open.Should().BeGreaterThan(20);
    }

    private static long? Value(Tier tier, MaterialPlan? plan) => plan is null ? null : tier.Value(plan);
}
