using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using Xunit.Abstractions;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>What is known of every filling of a part, whatever time there was to find it out.</summary>
public class KnownBoundsTests(ITestOutputHelper output)
{
    private static readonly Effort NoLimit = new(MatchLimits.None);

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

    // Held against the best filling, which is decided by a method that knows none of this: what is said beside it, and beside one that is as good up to a tier.
    [Fact]
    public void They_are_never_above_the_best_there_is_whichever_filling_is_asked_first()
    {
        var (compared, met, wrong) = (0, 0, new List<string>());
        foreach (var seed in Enumerable.Range(0, 40))
        {
            var problem = RunProblem.Create(seed % 2 == 0 ? DrawnRuns.Draw(seed) : DrawnRuns.DrawShort(seed)).Value;
            var part = RunPart.Of(problem, problem.Materials[0]);
            if (part.Open || part.Bars.Length == 0 || part.Rows.All(row => row.Stretches.Length == 0)) continue;
            if (ExactFill.Solve(part, ExactSize.Usual, NoLimit) is not ({ } best, true)) continue;
            var (other, table) = (new LayingSearch(part, new StockPrices(part)).First(NoLimit), KindTable.Of(part, KindTable.Size.Usual, NoLimit));
            foreach (var (first, then) in new[] { (best, other), (other, best) })
            {
                var known = new KnownBounds(part, table, StockRelaxation.Least(part), first, NoLimit);
                foreach (var filling in new[] { first, then, first })
                {
                    var bounds = known.Of(filling).Bounds;
                    for (var tier = 0; tier < bounds.Length && filling.Figures[..tier].SequenceEqual(best.Figures[..tier]); tier++)
                        if (bounds[tier] > best.Figures[tier]) wrong.Add($"seed {seed}, tier {tier}: {best.Figures[tier]}, bound {bounds[tier]}");
                    bounds.Should().Equal(new KnownBounds(part, table, StockRelaxation.Least(part), first, NoLimit).Of(filling).Bounds, "of seed {0} it is no matter what was asked before", seed);
                }
            }

            compared++;
            var spend = part.Levels.Length;
            if (best.Figures[spend] > 0 && new KnownBounds(part, table, StockRelaxation.Least(part), other, NoLimit).Of(best).Bounds[spend] == best.Figures[spend]) met++;
        }

        output.WriteLine($"{compared} compared, of {met} the spend met");
        wrong.Should().BeEmpty();
        compared.Should().BeGreaterThan(20);
        met.Should().BeGreaterThan(3);
    }

    // Two courses of 52 in of two pieces of 26, each from a panel of its own; by their length they might be three. Of fillings that leave a course open nothing was said, nor of the value of one that spends more.
    [Fact]
    public void What_was_decided_elsewhere_holds_for_fillings_that_cover_all_and_of_the_value_for_those_that_spend_no_more()
    {
        var part = RunPart.Of(RunProblem.Create(Request([Run(52, 2, stagger: 0) with { ShortestPiece = In(26) }])).Value, Foam);
        var (cheap, spend) = (new LayingSearch(part, StockRelaxation.Least(part)).First(NoLimit), part.Levels.Length);
        var panel = BarPattern.Of(part, new View(part.Bars[^1], Mirrored: false), [(new Kind(In(20).Units, Ends.Free), Ends.Free)])!;
        var (dear, open) = (new Filling(part, [.. cheap.Bars, new UsedBar(panel, [])], [true, true]), new Filling(part, cheap.Bars, [true, false]));
        var known = new KnownBounds(part, null, StockRelaxation.Least(part), cheap, NoLimit);
        var before = (Cheap: known.Of(cheap).Bounds, Dear: known.Of(dear).Bounds, Open: known.Of(open).Bounds);

        known.AtLeast(RunGoal.Spend, cheap, cheap.Figures[spend] - 1);
        known.AtLeast(RunGoal.Spend, cheap, 1);
        known.AtLeast(RunGoal.GivenUp, cheap, cheap.Figures[spend + 1]);

        before.Cheap[spend].Should().BeLessThan(cheap.Figures[spend]);
        known.Of(cheap).Bounds[spend].Should().Be(cheap.Figures[spend], "in whole panels");
        known.Of(cheap).Bounds[spend + 1].Should().Be(cheap.Figures[spend + 1]);
        known.Of(dear).Bounds[spend].Should().Be(cheap.Figures[spend]);
        known.Of(dear).Bounds[spend + 1].Should().Be(before.Dear[spend + 1]);
        known.Of(open).Bounds.Should().Equal(before.Open);
    }

    // As many looks at the clock, and time is over.
    private static Effort Asked(int asks) => new(new MatchLimits { Time = TimeSpan.FromMilliseconds(asks), Clock = new AskedClock() });
}
