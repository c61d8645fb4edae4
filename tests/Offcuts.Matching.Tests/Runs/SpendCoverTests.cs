using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using Xunit.Abstractions;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>How little any filling that covers every course spends in whole new pieces of several lengths. The optimum is that of <see cref="ExactFill"/>, which <see cref="RunAgreementTests"/> hold against trying everything.</summary>
public class SpendCoverTests(ITestOutputHelper output)
{
    private static readonly ExactSize Decided = ExactSize.Usual with { Work = 0.3 };

    private static readonly Effort NoLimit = new(MatchLimits.None);

    // Three of 12 ft and two of 16 ft cost 84.60 and are too short for 70 ft; six of 12 ft cost 85.20.
    [Fact]
    public void Whole_boards_have_to_have_the_length_together()
    {
        SpendCover.Least(840, [(1420, 144), (2100, 192)]).Should().Be(8520);
        SpendCover.Least(816, [(1420, 144), (2100, 192)]).Should().Be(8460);
        SpendCover.Least(0, [(1420, 144)]).Should().Be(0);
        SpendCover.Least(10, []).Should().Be(0, "nothing is said where nothing can be bought");
        SpendCover.Least(10, [(0, 5)]).Should().Be(0, "nor where something costs nothing");
        SpendCover.Least(10, [(0, 5), (3, 4)]).Should().Be(0, "whatever else there is");
    }

    // What takes more than a million steps of price is left to the linear program: nothing is claimed. A piece whose price is beyond that is no piece that could cost little.
    [Fact]
    public void Beyond_the_sums_that_are_counted_nothing_is_said()
    {
        SpendCover.Least(1 << 20, [(1, 1)]).Should().Be(0);
        SpendCover.Least(10, [(2, 5), ((1L << 32) + 1, 1000)]).Should().Be(4);
        SpendCover.Least(10, [(1L << 32, 1000), ((1L << 33) + 3, 1000)]).Should().Be(0, "the step is a cent, and both are far beyond");
    }

    // A piece that earns nothing buys nothing, whatever it costs, and has no say in the steps of price.
    [Fact]
    public void What_earns_nothing_is_passed_over()
    {
        SpendCover.Least(10, [(300, 5), (7, 0)]).Should().Be(600);
        SpendCover.Least(10, [(300, 5), (0, 0)]).Should().Be(600);
        SpendCover.Least(10, [(300, 5), (7, -5)]).Should().Be(600);
        SpendCover.Least(10, [(300, 0)]).Should().Be(0, "nothing is said where nothing earns anything");
    }

    [Fact]
    public void It_is_the_least_sum_of_prices_that_earns_enough_by_trying_every_number_of_each()
    {
        foreach (var seed in Enumerable.Range(0, 200))
        {
            var draw = new Random(seed);
            (long Price, Int128 Earned)[] pieces = [.. Enumerable.Range(0, 1 + draw.Next(3)).Select(_ => ((long)(1 + draw.Next(40)) * (1 + draw.Next(3)), (Int128)draw.Next(60)))];
            var lacking = 1 + draw.Next(250);
            if (pieces.All(piece => piece.Earned == 0)) continue;

            SpendCover.Least(lacking, pieces).Should().Be(Tried(lacking, pieces), $"seed {seed}");
        }
    }

    private static long Tried(Int128 lacking, ReadOnlySpan<(long Price, Int128 Earned)> pieces)
    {
        if (lacking <= 0) return 0;
        if (pieces.Length == 0) return long.MaxValue / 4;
        var (least, rest) = (long.MaxValue / 4, lacking);
        for (var n = 0L; ; n++)
        {
            least = Math.Min(least, n * pieces[0].Price + Tried(rest, pieces[1..]));
            if (rest <= 0 || pieces[0].Earned == 0) return least;
            rest -= pieces[0].Earned;
        }
    }

    // A cheap and a dear length, so that what is spent is seldom a number of either.
    [Fact]
    public void It_is_never_above_the_least_there_is_to_be_spent_and_often_meets_it()
    {
        var (reached, met, raised, over, wrong) = (0, 0, 0, 0, new List<string>());
        foreach (var seed in Enumerable.Range(0, 80))
        {
            var part = RunPart.Of(RunProblem.Create(Drawn(seed)).Value, Foam);
            if (part.Bars.Length == 0 || KindTable.Of(part, KindTable.Size.Usual, NoLimit) is not { } table) continue;
            if (ExactFill.Solve(part, Decided, NoLimit, spendOnly: true) is not ({ } best, true) || best.Filled.Contains(false)) continue;
            var spend = best.Figures[part.Levels.Length];
            if (PairRelaxation.Solve(table, RunGoal.Spend, spend, StockRelaxation.Least(part), long.MaxValue, NoLimit) is not { } solved) continue;
            reached++;
            var least = PairRelaxation.LeastSpend(table, solved.Prices, NoLimit);
            var raw = PairRelaxation.LeastSpend(table, Otherwise(part, table, solved.Prices, seed), NoLimit);
            if (Math.Max(least, raw) > spend) wrong.Add($"seed {seed}: spend {spend}, bound {least}, at drawn prices {raw}");
            if (spend > 0 && least == spend) met++;
            if (part.NextSpend(least) > part.NextSpend(solved.Bound)) raised++;
            if (PairRelaxation.LeastSpend(table, solved.Prices, new Effort(new MatchLimits { Cancel = new CancellationToken(canceled: true) })) == 0) over++;
        }

        output.WriteLine($"{reached} reached, {met} met, {raised} above the next sum of prices");
        wrong.Should().BeEmpty();
        reached.Should().BeGreaterThan(30);
        met.Should().BeGreaterThan(10);
        raised.Should().BeGreaterThan(1, "else it says nothing that was not known");
        over.Should().Be(reached, "nothing is said once time is over");
    }

    // Each price up to a fifth more or less.
    private static StockPrices Otherwise(RunPart part, KindTable table, StockPrices prices, int seed)
    {
        var random = new Random(seed);
        return new StockPrices(part) { ByKind = table.Kinds.ToDictionary(kind => kind, kind => (long)(prices.Of(kind) * (0.8 + 0.4 * random.NextDouble()))), Spend = prices.Spend, GivenUp = prices.GivenUp };
    }

    private static RunRequest Drawn(int seed)
    {
        var draw = new Random(seed);
        var run = Run(34 + 2 * draw.Next(26), 1 + draw.Next(2), stagger: 4 * draw.Next(4)) with { Lines = new PatternLines(Length.Zero, In(4), In(12)) };
        var shorter = new StorePrice { Material = Foam, Length = In(28 + 2 * draw.Next(8)), Price = new Money(40 + draw.Next(900)), Limit = draw.Next(4) == 0 ? 1 + draw.Next(2) : null };
        return Request([run], [.. Enumerable.Range(1, draw.Next(3)).Select(number => Offcut(number, 10 + 2 * draw.Next(15)))]) with
        {
            Prices = new PriceBook([Panel(cents: 100 + draw.Next(1000)), shorter]),
            Settings = YardSettings.Usual with { KerfElsewhere = In(draw.Next(3) == 0 ? 0 : 0.125m) },
        };
    }
}
