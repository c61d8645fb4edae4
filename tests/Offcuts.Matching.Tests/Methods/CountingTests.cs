using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>What counting stands on: the table of states, what is passed over, and the fourth tier.</summary>
public class CountingTests
{
    private static readonly Effort None = new(MatchLimits.None);

    [Fact]
    public void A_state_keeps_the_cheapest_way_and_the_number_under_which_it_came()
    {
        var states = StateTable.Start(ties: false).Next(1);
        states.Reach(5, 30, 0, 1);
        states.Reach(9, 10, 0, 2);
        states.Reach(5, 20, 0, 3);
        states.Reach(5, 25, 0, 4);

        states.Keys.Should().Equal(5UL, 9UL);
        states.Costs.Should().Equal(20, 10);
        states.By.Should().Equal(3, 2);
    }

    [Fact]
    public void Of_ways_that_cost_the_same_the_first_stays_unless_the_fourth_tier_prefers_another()
    {
        var states = StateTable.Start(ties: true).Next(1);
        states.Reach(5, 20, 0, 1, new CountTies(3, 0));
        states.Reach(5, 20, 0, 2, new CountTies(3, 0));
        states.By.Should().Equal([1], "nothing tells them apart");

        states.Reach(5, 20, 0, 3, new CountTies(3, 1));
        states.By.Should().Equal([3], "it carries a piece that comes earlier");
        states.Reach(5, 20, 0, 4, new CountTies(2, 0));
        states.By.Should().Equal([4], "it takes less work");
        states.Reach(5, 21, 0, 5, new CountTies(0, 0));
        states.By.Should().Equal([4], "it costs more");
    }

    [Fact]
    public void Before_the_first_span_nothing_is_filled_paid_or_done()
    {
        var start = StateTable.Start(ties: false);

        start.Keys.Should().Equal(0UL);
        start.Costs.Should().Equal(0);
        (start.From.Single(), start.By.Single()).Should().Be((-1, -1), "nothing comes before it");
    }

    [Fact]
    public void The_first_states_that_are_kept_go_on_with_all_that_is_known_of_them()
    {
        var states = StateTable.Start(ties: true).Next(1);
        for (var i = 0; i < 6; i++) states.Reach((ulong)(10 + i), 100 + i, 20 + i, 30 + i, new CountTies(40 + i, 0));

        var odd = states.Where(i => i % 2 == 1, most: 2);

        odd.Keys.Should().Equal(11UL, 13UL);
        odd.Costs.Should().Equal(101, 103);
        odd.From.Should().Equal(21, 23);
        odd.By.Should().Equal(31, 33);
        odd.Ties.Should().Equal(new CountTies(41, 0), new CountTies(43, 0));
        states.Where(_ => true, most: 9).Keys.Should().Equal(states.Keys, "no more than there are");
    }

    [Fact]
    public void The_table_of_states_agrees_with_a_dictionary()
    {
        var random = new Random(3);
        var (states, known) = (StateTable.Start(ties: false).Next(1), new Dictionary<ulong, long>());
        for (var i = 0; i < 60_000; i++)
        {
            var (key, cost) = ((ulong)random.NextInt64(20_000) << random.Next(40), random.NextInt64(1_000));
            states.Reach(key, cost, i, 0);
            known[key] = known.TryGetValue(key, out var before) ? Math.Min(before, cost) : cost;
        }

        states.Count.Should().Be(known.Count);
        states.Keys.Zip(states.Costs).Should().OnlyContain(at => known[at.First] == at.Second);
    }

    [Fact]
    public void The_sieve_passes_over_what_takes_a_filled_cut_is_too_short_or_too_dear_and_nothing_else()
    {
        var random = new Random(5);
        for (var round = 0; round < 200; round++)
        {
            var choices = Enumerable.Range(0, random.Next(0, 40))
                .Select(_ => (Net: random.NextInt64(20), Single: 1UL << random.Next(6), Weight: random.NextInt64(10))).OrderBy(choice => choice.Net).ToArray();
            var (filled, least, most) = ((ulong)random.Next(64), random.NextInt64(-1, 11), random.NextInt64(-1, 21));
            var sieve = new Sieve(choices);

            var end = sieve.Affordable(most);
            var passed = new List<int>();
            for (var c = sieve.Next(0, end, filled, least); c < end; c = sieve.Next(c + 1, end, filled, least)) passed.Add(c);

            passed.Should().Equal(Enumerable.Range(0, choices.Length).Where(c => choices[c].Net <= most && (choices[c].Single & filled) == 0 && choices[c].Weight >= least));
        }
    }

    [Fact]
    public void Counting_and_the_solver_agree_on_the_fourth_tier()
    {
        var compared = 0;
        for (var seed = 0; seed < 120; seed++)
        {
            var problem = Problem.Create(RandomYards.Draw(seed, 8, 8)).Value;
            foreach (var material in problem.Materials)
            {
                var outcome = MaterialSolver.Solve(MaterialSolver.First(MaterialProblem.Of(problem, material, out _), problem.Stages.Count), None, _ => { });
                if (!outcome.LastProven || outcome.Plan.Uses.Count == 0) continue;
                var tier = Tier.GivenUp(outcome.Plan);
                var relaxation = ColumnGeneration.Solve(tier, outcome.Plan, [], None);
                var guide = Guide.Linear(tier, relaxation);
                if (PatternEnumeration.All(tier, guide.Limits(tier.Value(outcome.Plan)), 1_000, 100_000) is not { } pool) continue;
                var patterns = pool.Union(outcome.Plan.Uses.Select(use => use.Pattern)).ToArray();

                var counted = CountProgram.Placed(tier, patterns, guide, tier.Value(outcome.Plan), 100_000, 10_000_000, None);
                var solved = TieBreak.Solved(outcome, tier, patterns, None);

                counted.Should().NotBeNull($"seed {seed} is small");
                Fourth(counted!).Should().Be(Fourth(solved.Placed), $"seed {seed}");
                compared++;
            }
        }

        compared.Should().BeGreaterThan(60, "else little was compared");
    }

    [Fact]
    public void A_beam_that_is_wide_enough_finds_what_counting_finds_and_a_narrow_one_nothing_better()
    {
        var (compared, worse) = (0, 0);
        for (var seed = 0; seed < 80; seed++)
        {
            var problem = Problem.Create(RandomYards.Draw(seed, 12, 12)).Value;
            foreach (var material in problem.Materials)
            {
                var start = MaterialSolver.First(MaterialProblem.Of(problem, material, out _), problem.Stages.Count).Plan;
                var tier = Tier.GivenUp(start);
                var guide = Guide.Linear(tier, ColumnGeneration.Solve(tier, start, [], None));
                var most = tier.Value(start) - 1;
                if (PatternEnumeration.All(tier, guide.Limits(most), 2_000, 200_000) is not { } pool) continue;
                if (CountProgram.Solve(tier, pool, guide, most, 100_000, 20_000_000, None) is not { Closed: true, Plan: { } best }) continue;

                tier.Value(CountProgram.Beam(tier, pool, guide, most, 100_000, None)!).Should().Be(tier.Value(best), $"seed {seed}");
                var narrow = CountProgram.Beam(tier, pool, guide, most, 2, None);
                if (narrow is not null) tier.Value(narrow).Should().BeInRange(tier.Value(best), most, $"seed {seed}");
                if (narrow is null || tier.Value(narrow) > tier.Value(best)) worse++;
                compared++;
            }
        }

        compared.Should().BeGreaterThan(10, "else little was compared");
        worse.Should().BePositive("two states are mostly too few");
    }

    // Saw cuts, pieces carried, cuts that take either served by treated wood, and the yard's pieces from the first on.
    private static (int, int, int, string) Fourth(IReadOnlyList<(Pattern Pattern, SpanPlace? Place)> placed)
    {
        int[] pieces = [.. placed.Where(at => at.Place is not null).Select(at => at.Place!.Value.Piece).Distinct().Order()];
        return (placed.Sum(at => at.Pattern.SawCuts), pieces.Length + placed.Count(at => at.Place is null), placed.Sum(at => at.Pattern.AnyOnTreated), string.Join(" ", pieces));
    }
}
