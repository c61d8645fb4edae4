using System.Globalization;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using Xunit.Abstractions;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>
/// Tiny walls against trying everything or, where that takes too many steps, against a plain model proven by CP-SAT; some against both.
/// OFFCUTS_RUNS=count[,first] draws that many instead.
/// </summary>
public class RunAgreementTests(ITestOutputHelper output)
{
    private const long Steps = 4_000_000;
    private const double Work = 30;

    // Too large for that: by trying everything with three thousand million steps, which took some minutes.
    private static readonly (int Seed, long[] Figures) TriedOnce = (2_200_408, [0, 0, 0, 1269, 0, 0, 0, 3]);

    [Fact]
    public void Every_tier_is_that_of_trying_everything() => Compare(60, DrawnRuns.Draw, Difference);

    [Fact]
    public void So_it_is_for_single_runs_with_more_pieces() => Compare(60, DrawnRuns.DrawSingle, Difference);

    [Fact]
    public void So_it_is_where_nothing_may_be_bought() => Compare(60, DrawnRuns.DrawShort, Difference);

    [Theory]
    [InlineData(2_000_052, "more ways to cut a bar than are listed at first")]
    [InlineData(2_000_229, "more ways to cut a bar than are listed at first")]
    [InlineData(2_200_408, "still more ways to cut a bar, of a small stock")]
    [InlineData(2_000_180, "spend and value in one sum, which the solver tells as 2563592.9999999995")]
    public void A_small_wall_is_said_to_be_proven(int seed, string since)
    {
        var problem = RunProblem.Create(DrawnRuns.Draw(seed)).Value;
        var tiers = RunFiller.Fill(problem, MatchLimits.None).Tiers;
        tiers.Proven.Should().BeTrue(since);
        Figures(tiers).Should().Equal(seed == TriedOnce.Seed ? TriedOnce.Figures : RunBruteForce.Best(problem, Steps) ?? RunModel.Best(problem, Work), "a proof that is wrong is worse than none");
    }

    private static string? Difference(RunProblem problem, long[] best)
    {
        var plan = RunFiller.Fill(problem, MatchLimits.None);
        var found = Figures(plan.Tiers);
        if (!found.SequenceEqual(best)) return $"found {Text(found)}, best {Text(best)}";
        return plan.Tiers.Proven ? null : "not proven";
    }

    [Fact]
    public void What_is_searched_is_never_called_better_than_it_can_be() => Compare(25, DrawnRuns.Draw, Overstated);

    [Fact]
    public void So_it_is_of_walls_that_stay_open() => Compare(25, DrawnRuns.DrawShort, Overstated);

    private static string? Overstated(RunProblem problem, long[] best)
    {
        var part = RunPart.Of(problem, problem.Materials.Single());
        if (part.Rows.Length == 0 || part.Bars.Length == 0) return null;
        var outcome = PartFiller.Searched(part, null, new Effort(MatchLimits.None), _ => { });
        for (var tier = 0; tier < best.Length; tier++)
        {
            var figure = outcome.Figure(tier);
            if (outcome.Bounds[tier] > best[tier] || (figure.Proven && figure.Value != best[tier])) return $"tier {tier}: {figure}, best {Text(best)}";
            // A bound holds for plans with the same figures in the tiers before.
            if (figure.Value != best[tier]) return null;
        }

        return null;
    }

    private void Compare(int usual, Func<int, RunRequest> draw, Func<RunProblem, long[], string?> difference)
    {
        var asked = Environment.GetEnvironmentVariable("OFFCUTS_RUNS")?.Split(',').Select(text => int.Parse(text, CultureInfo.InvariantCulture)).ToArray();
        var (wrong, passed, tried, modelled) = (new List<string>(), 0, 0, 0);
        foreach (var seed in Enumerable.Range(asked is { Length: 2 } ? asked[1] : 1, asked?[0] ?? usual))
        {
            var problem = RunProblem.Create(draw(seed)).Value;
            var best = RunBruteForce.Best(problem, Steps);
            var model = best is null || seed % 5 == 0 ? RunModel.Best(problem, Work) : null;
            if (best is not null && model is not null && !best.SequenceEqual(model)) wrong.Add($"seed {seed}: tried {Text(best)}, modelled {Text(model)}");
            if ((best ?? model) is not { } sure) passed++;
            else if (difference(problem, sure) is { } text) wrong.Add($"seed {seed}: {text}");
            if (best is not null) tried++;
            if (model is not null) modelled++;
        }

        output.WriteLine($"{tried} by trying everything, {modelled} by a model, {passed} passed over, {wrong.Count} differ: {string.Join("; ", wrong)}");
        wrong.Should().BeEmpty();
        passed.Should().Be(0, "one of the two decides every wall that is drawn");
        tried.Should().BeGreaterThan(usual / 2);
        modelled.Should().BeGreaterThan(0);
    }

    private static string Text(long[] figures) => string.Join(' ', figures);

    private static long[] Figures(RunTiers tiers) =>
    [
        .. tiers.Unfilled.Select(level => level.Unfilled.Value),
        tiers.Spend.Value, tiers.ValueGivenUp.Value, tiers.ExtraTies.Value, tiers.Joints.Value, tiers.SawCuts.Value,
    ];
}
