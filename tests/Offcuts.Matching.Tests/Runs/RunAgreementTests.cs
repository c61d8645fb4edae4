using Offcuts.Core.Walls;
using Offcuts.Matching.Runs;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>
/// Tiny walls against trying everything. OFFCUTS_RUNS=count[,first] draws that many instead.
/// </summary>
public class RunAgreementTests
{
    [Fact]
    public void Every_tier_is_that_of_trying_everything()
    {
        var asked = Environment.GetEnvironmentVariable("OFFCUTS_RUNS")?.Split(',');
        var count = asked is null ? 60 : int.Parse(asked[0]);
        var first = asked is { Length: 2 } ? int.Parse(asked[1]) : 1;
        var wrong = Enumerable.Range(first, count).Select(Difference).OfType<string>().Take(10).ToArray();
        wrong.Should().BeEmpty();
    }

    private static string? Difference(int seed)
    {
        var problem = RunProblem.Create(DrawnRuns.Draw(seed)).Value;
        var plan = RunFiller.Fill(problem, MatchLimits.None);
        var found = Figures(plan.Tiers);
        var best = RunBruteForce.Best(problem);
        if (!found.SequenceEqual(best)) return $"seed {seed}: found {string.Join(' ', found)}, best {string.Join(' ', best)}";
        return plan.Tiers.Proven ? null : $"seed {seed}: not proven";
    }

    private static long[] Figures(RunTiers tiers) =>
    [
        .. tiers.Unfilled.Select(level => level.Unfilled.Value),
        tiers.Spend.Value, tiers.ValueGivenUp.Value, tiers.ExtraTies.Value, tiers.Joints.Value, tiers.SawCuts.Value,
    ];
}
