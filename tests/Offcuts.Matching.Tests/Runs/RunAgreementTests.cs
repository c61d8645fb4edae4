using System.Globalization;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using Xunit.Abstractions;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>
/// Tiny walls against trying everything. OFFCUTS_RUNS=count[,first] draws that many instead. A wall that takes trying everything too many
/// steps is passed over and counted.
/// </summary>
public class RunAgreementTests(ITestOutputHelper output)
{
    private const long Steps = 400_000;

    [Fact]
    public void Every_tier_is_that_of_trying_everything()
    {
        Compare(60, (problem, best) =>
        {
            var plan = RunFiller.Fill(problem, MatchLimits.None);
            var found = Figures(plan.Tiers);
            if (!found.SequenceEqual(best)) return $"found {Text(found)}, best {Text(best)}";
            return plan.Tiers.Proven ? null : "not proven";
        });
    }

    [Fact]
    public void What_is_searched_is_never_called_better_than_it_can_be()
    {
        Compare(25, (problem, best) =>
        {
            var part = RunPart.Of(problem, problem.Materials.Single());
            if (part.Rows.Length == 0 || part.Bars.Length == 0) return null;
            var outcome = PartFiller.Searched(part, null, new Effort(MatchLimits.None), _ => { });
            for (var tier = 0; tier < best.Length; tier++)
            {
                var figure = outcome.Figure(tier);
                if (figure.Bound > best[tier] || (figure.Proven && figure.Value != best[tier])) return $"tier {tier}: {figure}, best {Text(best)}";
                // A bound holds for plans with the same figures in the tiers before.
                if (figure.Value != best[tier]) return null;
            }

            return null;
        });
    }

    private void Compare(int usual, Func<RunProblem, long[], string?> difference)
    {
        var asked = Environment.GetEnvironmentVariable("OFFCUTS_RUNS")?.Split(',').Select(text => int.Parse(text, CultureInfo.InvariantCulture)).ToArray();
        var (wrong, passed, done) = (new List<string>(), 0, 0);
        foreach (var seed in Enumerable.Range(asked is { Length: 2 } ? asked[1] : 1, asked?[0] ?? usual))
        {
            var problem = RunProblem.Create(DrawnRuns.Draw(seed)).Value;
            if (RunBruteForce.Best(problem, Steps) is not { } best) passed++;
            else if (difference(problem, best) is { } text) wrong.Add($"seed {seed}: {text}");
            else done++;
        }

        output.WriteLine($"{done} agree, {passed} passed over, {wrong.Count} differ: {string.Join("; ", wrong)}");
        wrong.Should().BeEmpty();
        done.Should().BeGreaterThan(passed, "most walls should be small enough");
    }

    private static string Text(long[] figures) => string.Join(' ', figures);

    private static long[] Figures(RunTiers tiers) =>
    [
        .. tiers.Unfilled.Select(level => level.Unfilled.Value),
        tiers.Spend.Value, tiers.ValueGivenUp.Value, tiers.ExtraTies.Value, tiers.Joints.Value, tiers.SawCuts.Value,
    ];
}
