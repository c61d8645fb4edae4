using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>What is known of every filling of a part, whatever time there was to find it out.</summary>
public class KnownBoundsTests
{
    // Four courses of 36 ft are 36 panels by their length, less what the offcuts are worth. Pairs of courses say more, but from prices of nothing they begin at nothing.
    [Fact]
    public void Where_time_ends_the_pricing_of_pairs_early_what_the_stock_alone_must_cost_is_said_all_the_same()
    {
        var part = RunPart.Of(RunProblem.Create(Request([Run(432, 4)], [.. Enumerable.Range(1, 10).Select(number => Offcut(number, 14 + 2 * number))])).Value, Foam);
        var (table, spend, free) = (KindTable.Of(part, KindTable.Size.Usual, new Effort(MatchLimits.None))!, part.Levels.Length, new StockPrices(part));
        var filling = new LayingSearch(part, StockRelaxation.Least(part)).First(new Effort(MatchLimits.None));
        filling.Filled.Should().NotContain(false);
        var alone = part.NextSpend(StockRelaxation.Solve(part, filling, RunGoal.Spend, Asked(0)).Bound);
        var early = 0;
        foreach (var asks in Enumerable.Range(1, 60))
        {
            if (PairRelaxation.Solve(table, RunGoal.Spend, filling.Figures[spend], free, filling.Figures[spend], Asked(asks)) is { Early: true } pairs && part.NextSpend(pairs.Bound) < alone) early++;

            new KnownBounds(part, table, free, filling, Asked(2 * asks)).Of(filling).Bounds[spend].Should().BeInRange(alone, filling.Figures[spend], $"after {asks} looks at the clock");
        }

        alone.Should().BeGreaterThan(25 * 1800);
        early.Should().BeGreaterThan(2, "else pairs know it anyway");
    }

    // As many looks at the clock, and time is over.
    private static Effort Asked(int asks) => new(new MatchLimits { Time = TimeSpan.FromMilliseconds(asks), Clock = new AskedClock() });
}
