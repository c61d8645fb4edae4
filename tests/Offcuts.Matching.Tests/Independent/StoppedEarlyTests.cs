using Offcuts.Core.Materials;
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
    [InlineData(51_000, 4)]
    public void No_bound_of_a_match_that_was_stopped_is_above_the_optimum(int first, int materials)
    {
        var (stopped, unproven) = (0, 0);
        foreach (var seed in Enumerable.Range(first, 60))
        {
            var request = materials == 1 ? Agreement.Draw(seed, new Size(12, 9, 1)) : Several(seed);
            var problem = Problem.Create(request).Value;
            var best = Matcher.Match(problem, MatchLimits.None).Tiers;
            foreach (var steps in (int[])(materials == 1 ? [1, 3, 6, 10, 20, 40, 100] : [8, 30, 80, 160, 320, 640, 1_600]))
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
    public void What_begins_with_a_plan_that_came_soon_reaches_the_same_figures()
    {
        var better = 0;
        foreach (var seed in Enumerable.Range(53_000, 300))
        {
            var problem = Problem.Create(Agreement.Draw(seed, new Size(12, 9, 1))).Value;
            var first = MaterialSolver.First(MaterialProblem.Of(problem, problem.Materials[0], out _), problem.Stages.Count);
            var soon = MaterialSolver.Soon(first, new Effort(MatchLimits.None));
            var (alone, begun) = (Solved(first), Solved(soon));
            var because = $"of seed {seed}";

            (begun.Plan.Left.Sum(), begun.Plan.Spend, Last(begun), begun.Proven).Should().Be((alone.Plan.Left.Sum(), alone.Plan.Spend, Last(alone), alone.Proven), because);
            soon.SpendBound.Should().BeLessThanOrEqualTo(alone.Plan.Spend, because);
            if (soon.Plan.Spend == alone.Plan.Spend) soon.LastBound.Should().BeLessThanOrEqualTo(Last(alone), because);
            if (soon.Plan.Spend < first.Plan.Spend || Last(soon) < Last(first)) better++;
        }

        better.Should().BeGreaterThan(15);

        static MaterialOutcome Solved(MaterialOutcome from) => MaterialSolver.Solve(from, new Effort(MatchLimits.None), _ => { });
    }

    [Fact]
    public void What_was_stopped_once_its_fill_was_proven_goes_on_to_the_same_figures_and_no_bound_is_above_them()
    {
        var (unproven, refused, carried) = (0, 0, 0);
        foreach (var seed in Enumerable.Range(52_000, 120))
        {
            var problem = Problem.Create(Agreement.Draw(seed, new Size(12, 9, 1))).Value;
            var first = MaterialSolver.First(MaterialProblem.Of(problem, problem.Materials[0], out _), problem.Stages.Count);
            var best = MaterialSolver.Solve(first, new Effort(MatchLimits.None), _ => { });
            foreach (var steps in (int[])[3, 6, 10, 20, 40])
            {
                Effort Stopping() => new(new MatchLimits { Time = TimeSpan.FromMilliseconds(steps), Clock = new StepClock() });
                var stopped = MaterialSolver.Solve(first, Stopping(), _ => { });
                if (stopped.Proven) continue;
                unproven++;
                if (!stopped.FillProven || stopped.Plan.Problem.MayRip)
                {
                    FluentActions.Invoking(() => MaterialSolver.Again(stopped, Stopping(), _ => { })).Should().Throw<ArgumentException>("more filled for more money: no bound would hold on");
                    refused++;
                    continue;
                }

                var on = MaterialSolver.Again(stopped, Stopping(), _ => { });
                var ended = MaterialSolver.Again(on, new Effort(MatchLimits.None), _ => { });
                var because = $"of seed {seed}, stopped after {steps} steps";

                foreach (var known in (MaterialOutcome[])[stopped, on, ended])
                {
                    known.SpendBound.Should().BeLessThanOrEqualTo(best.Plan.Spend, because);
                    if (known.Plan.Spend == best.Plan.Spend) known.LastBound.Should().BeLessThanOrEqualTo(Last(best), because);
                }

                if (stopped.LastBound > first.LastBound) carried++;
                (ended.Plan.Left.Sum(), ended.Plan.Spend, Last(ended), ended.Proven).Should().Be((best.Plan.Left.Sum(), best.Plan.Spend, Last(best), best.Proven), because);
            }
        }

        unproven.Should().BeGreaterThan(100, "else little was stopped");
        refused.Should().BeGreaterThan(5);
        carried.Should().BeGreaterThan(10, "else there was nothing to go on from");
    }

    private static long Last(MaterialOutcome outcome) => (outcome.Plan.Problem.SawCost * outcome.Plan.SawCuts) + outcome.Plan.GivenUp;

    // Four drawn problems as one, each of a material of its own, so that what one leaves of the time goes to another.
    private static MatchRequest Several(int seed)
    {
        Material[] materials = [.. ((string[])["2x4", "2x6", "2x8", "2x10"]).Select(name => MaterialReader.Read(name).Value)];
        var drawn = materials.Select((_, k) => DrawnYards.Draw(4 * seed + k, new Size(10, 7, 1))).ToArray();
        var hardware = drawn[0].Prices.All.Where(price => price.Material is Hardware);
        return drawn[0] with
        {
            Pieces = [.. drawn.SelectMany((one, k) => one.Pieces.Select(piece => piece with { Material = materials[k] }))],
            Stages =
            [
                .. drawn.SelectMany(one => one.Stages).GroupBy(stage => stage.Name).OrderBy(group => group.Key, StringComparer.Ordinal).Select(group => new Stage(group.Key, null,
                    [.. drawn.SelectMany((one, k) => one.Stages.Where(stage => stage.Name == group.Key).SelectMany(stage => stage.Cuts).Select(cut => cut with { Material = materials[k], Name = $"{cut.Name} of {materials[k]}" }))], [])),
            ],
            Prices = new PriceBook([.. drawn.SelectMany((one, k) => one.Prices.All.Where(price => price.Material is not Hardware).Select(price => price with { Material = materials[k] })), .. hardware]),
            Order = seed % 5 == 0 ? TierOrder.SawCutsFirst : TierOrder.ValueFirst,
        };
    }

    private static IEnumerable<Figure> InOrder(Tiers tiers, TierOrder order)
    {
        var saws = new Figure(tiers.SawCuts, tiers.SawCutsBound ?? 0);
        return tiers.UnfilledByStage.Append(tiers.Spend).Append(tiers.Rips ?? Figure.Best(0))
            .Concat(order == TierOrder.SawCutsFirst ? [saws, tiers.ValueGivenUp] : [tiers.ValueGivenUp, saws]);
    }
}
