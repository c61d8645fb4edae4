using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using Xunit.Abstractions;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>
/// The bounds by pairs of courses, asked directly: <see cref="PartFiller"/> decides walls as small as these without them. The optimum is that
/// of <see cref="ExactFill"/>, which <see cref="RunAgreementTests"/> hold against trying everything.
/// </summary>
public class PairRelaxationTests(ITestOutputHelper output)
{
    [Fact]
    public void Its_bounds_are_never_above_the_best_there_is_and_often_meet_it()
    {
        var (reached, tightSpend, tightGiven, worse) = (0, 0, 0, new List<string>());
        var effort = new Effort(MatchLimits.None);
        foreach (var seed in Enumerable.Range(30_000, 220))
        {
            var problem = RunProblem.Create(DrawnRuns.Draw(seed)).Value;
            var part = RunPart.Of(problem, problem.Materials.Single());
            if (part.Rows.Length == 0 || part.Bars.Length == 0) continue;
            var (best, proven) = ExactFill.Solve(part, ExactSize.Usual, effort);
            if (best is null || !proven || part.Rows.Any(row => row.Stretches.Length > 0 && !best.Filled[row.Index])) continue;
            if (part.Rows.All(row => row.Stretches.Length == 0) || KindTable.Of(part, KindTable.Size.Usual, effort) is not { } table) continue;
            var (spend, given) = (best.Figures[part.Levels.Length], best.Figures[part.Levels.Length + 1]);
            var whole = Filling.Empty(part) with { Filled = [.. part.Rows.Select(_ => true)] };
            var start = StockRelaxation.Solve(part, whole, RunGoal.Together, effort).Prices;
            if (PairRelaxation.Solve(table, RunGoal.Spend, spend, start, long.MaxValue, effort) is not { } ofSpend) continue;
            if (PairRelaxation.Solve(table, RunGoal.GivenUp, spend, start, long.MaxValue, effort) is not { } ofGiven) continue;
            reached++;
            if (ofSpend.Bound > spend) worse.Add($"seed {seed}: spend {spend}, bound {ofSpend.Bound}");
            if (ofGiven.Bound > given) worse.Add($"seed {seed}: given up {given}, bound {ofGiven.Bound}");
            if (spend > 0 && ofSpend.Bound == spend) tightSpend++;
            if (given > 0 && ofGiven.Bound == given) tightGiven++;

            // Whatever prices are proposed, what is added up at them is a bound.
            foreach (var (goal, prices, optimum) in new[] { (RunGoal.Spend, ofSpend.Prices, spend), (RunGoal.GivenUp, ofGiven.Prices, given) })
            {
                var bound = PairRelaxation.At(table, goal, spend, Drawn(part, table, prices, seed));
                if (bound > optimum) worse.Add($"seed {seed}: {goal} {optimum}, at drawn prices {bound}");
            }
        }

        output.WriteLine($"{reached} reached, {tightSpend} spends and {tightGiven} values given up met, {worse.Count} too high");
        worse.Should().BeEmpty();
        reached.Should().BeGreaterThanOrEqualTo(100);
        tightSpend.Should().BeGreaterThan(20);
        tightGiven.Should().BeGreaterThan(5);
    }

    // Each price up to a fifth more or less.
    private static StockPrices Drawn(RunPart part, KindTable table, StockPrices prices, int seed)
    {
        var random = new Random(seed);
        return new StockPrices(part)
        {
            ByKind = table.Kinds.ToDictionary(kind => kind, kind => (long)(prices.Of(kind) * (0.8 + 0.4 * random.NextDouble()))),
            Spend = prices.Spend,
            GivenUp = prices.GivenUp,
        };
    }
}
