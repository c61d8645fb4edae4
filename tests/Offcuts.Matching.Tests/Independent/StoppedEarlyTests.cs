using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests.Independent;

/// <summary>A match that is stopped at any moment hands back a whole plan whose bounds are true.</summary>
public sealed class StoppedEarlyTests
{
    /// <summary>A clock that goes on by a millisecond whenever it is asked, so that a limit ends a match at the same step every time.</summary>
    private sealed class StepClock : TimeProvider
    {
        private long _asked;

        public override long TimestampFrequency => 1000;

        public override long GetTimestamp() => Interlocked.Increment(ref _asked);
    }

    // A bound speaks of all plans that have this plan's figures in the tiers before it: of the optimum as far as the two agree.
    [Theory]
    [InlineData(50_000, 1)]
    [InlineData(51_000, 2)]
    public void No_bound_of_a_match_that_was_stopped_is_above_the_optimum(int first, int materials)
    {
        var (stopped, unproven) = (0, 0);
        foreach (var seed in Enumerable.Range(first, 60))
        {
            var request = Agreement.Draw(seed, new Size(12, 9, materials));
            var problem = Problem.Create(request).Value;
            var best = Matcher.Match(problem, MatchLimits.None).Tiers;
            foreach (var steps in (int[])[1, 3, 6, 10, 20, 40, 100])
            {
                var plan = Matcher.Match(problem, new MatchLimits { Time = TimeSpan.FromMilliseconds(steps), Clock = new StepClock() });
                var because = $"of seed {seed}, stopped after {steps} steps:\n{DrawnYards.Describe(request)}\n".Replace("{", "{{").Replace("}", "}}");
                stopped++;
                if (!plan.Proven) unproven++;

                PlanReview.Faults(request, plan).Should().BeEmpty(because);
                Reached.By(plan.Tiers).CompareTo(Reached.By(best), request.Order).Should().BeGreaterThanOrEqualTo(0, because);
                foreach (var (reached, optimum) in InOrder(plan.Tiers, request.Order).Zip(InOrder(best, request.Order)))
                {
                    reached.Bound.Should().BeLessThanOrEqualTo(optimum.Value, because);
                    if (reached.Value != optimum.Value) break;
                }
            }
        }

        unproven.Should().BeInRange(stopped / 10, stopped * 9 / 10, "some were stopped before they were done, some after");
    }

    [Fact]
    public void What_was_stopped_goes_on_to_the_same_figures_and_no_bound_gets_worse()
    {
        var unproven = 0;
        foreach (var seed in Enumerable.Range(52_000, 60))
        {
            var problem = Problem.Create(Agreement.Draw(seed, new Size(12, 9, 1))).Value;
            var first = MaterialSolver.First(MaterialProblem.Of(problem, problem.Materials[0], out _), problem.Stages.Count);
            var best = MaterialSolver.Solve(first, new Effort(MatchLimits.None), _ => { });
            foreach (var steps in (int[])[3, 6, 10, 20, 40])
            {
                var stopped = MaterialSolver.Solve(first, new Effort(new MatchLimits { Time = TimeSpan.FromMilliseconds(steps), Clock = new StepClock() }), _ => { });
                if (stopped.Proven) continue;
                unproven++;

                var ended = MaterialSolver.Solve(stopped, new Effort(MatchLimits.None), _ => { });

                ended.LeftBound.Zip(stopped.LeftBound).Should().OnlyContain(bounds => bounds.First >= bounds.Second, $"of seed {seed}, stopped after {steps} steps");
                ended.SpendBound.Should().BeGreaterThanOrEqualTo(stopped.SpendBound, $"of seed {seed}, stopped after {steps} steps");
                (ended.Plan.Left.Sum(), ended.Plan.Spend, ended.Plan.Rips, ended.Plan.GivenUp + (ended.Plan.Problem.SawCost * ended.Plan.SawCuts), ended.Proven)
                    .Should().Be((best.Plan.Left.Sum(), best.Plan.Spend, best.Plan.Rips, best.Plan.GivenUp + (best.Plan.Problem.SawCost * best.Plan.SawCuts), best.Proven), $"of seed {seed}, stopped after {steps} steps");
            }
        }

        unproven.Should().BeGreaterThan(60, "else little was stopped");
    }

    private static IEnumerable<Figure> InOrder(Tiers tiers, TierOrder order)
    {
        var saws = new Figure(tiers.SawCuts, tiers.SawCutsBound ?? 0);
        return tiers.UnfilledByStage.Append(tiers.Spend).Append(tiers.Rips ?? Figure.Best(0))
            .Concat(order == TierOrder.SawCutsFirst ? [saws, tiers.ValueGivenUp] : [tiers.ValueGivenUp, saws]);
    }
}
