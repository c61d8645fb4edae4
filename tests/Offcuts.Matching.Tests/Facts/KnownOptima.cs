using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Tests.Facts;

/// <summary>
/// Cutting problems whose optimum is known from elsewhere. No kerf, no yard; one unit is 1 in, or 1 mm where the source counts
/// in thousands. The keep length is longer than any stock, so that no remainder has a value and only the spend counts.
/// "Read" means that the figures were read in a copy of the source named, "memory" that they were not.
/// </summary>
public sealed class KnownOptima
{
    private static readonly Material Bar = MaterialReader.Read("#4").Value;

    [Fact]
    public void Paper_rolls_of_5600_need_73()
    {
        // The paper-roll example of the encyclopedia article "Cutting stock problem": data and optimum read.
        (int Length, int Count)[] cuts =
        [
            (1380, 22), (1520, 25), (1560, 12), (1710, 14), (1820, 18), (1880, 18), (1930, 20), (2000, 10), (2050, 12), (2100, 14),
            (2140, 16), (2150, 18), (2200, 20),
        ];

        Bought(Length.Millimetres(1), [(5600, 1, null)], cuts).Should().Be(Figure.Best(73));
    }

    [Fact]
    public void Raws_of_100_need_453_where_rounding_the_relaxation_up_gives_454()
    {
        // Chvatal, Linear Programming, 1983, ch. 13: data and the relaxation's 452.25 read; so 453 is the least whole number it allows.
        Bought(Length.Inches(1), [(100, 1, null)], [(45, 97), (36, 610), (31, 395), (14, 211)]).Should().Be(Figure.Best(453));
    }

    [Fact]
    public void Boards_of_17_ft_need_19()
    {
        // Winston, Operations Research, 17-ft boards: data read, title from memory. 75 + 100 + 135 = 310 ft need more than 18 boards by length alone.
        Bought(Length.Feet(1), [(17, 1, null)], [(3, 25), (5, 20), (9, 15)]).Should().Be(Figure.Best(19));
    }

    [Fact]
    public void Three_stock_lengths_at_10_and_7_and_6_cost_170()
    {
        // Gilmore and Gomory 1961: source from memory. That 170 is least was proved by dynamic programming over all that is still wanted;
        // one way there: 10 of 9 cut 4 + 3 + 2, then 10 of 6 cut 4 + 2.
        Bought(Length.Feet(1), [(9, 10, null), (6, 7, null), (5, 6, null)], [(2, 20), (3, 10), (4, 20)]).Should().Be(Figure.Best(170));
    }

    [Theory]
    [InlineData(10, 170)]
    [InlineData(9, 171)]
    [InlineData(4, 173)]
    [InlineData(0, 175)]
    public void Three_stock_lengths_cost_more_where_the_longest_is_limited(int nines, int cost)
    {
        // The same data with a limit of our own on the longest; least costs by the same dynamic programming with the nines counted.
        Bought(Length.Feet(1), [(9, 10, nines), (6, 7, null), (5, 6, null)], [(2, 20), (3, 10), (4, 20)]).Should().Be(Figure.Best(cost));
    }

    [Fact]
    public void Eleven_items_need_4_bins_of_100()
    {
        // The bin-packing sample of a public solver's documentation: read. They sum up to 370, so 4 is also the least by length alone.
        int[] items = [48, 30, 19, 36, 36, 27, 42, 42, 36, 24, 30];
        Bought(Length.Inches(1), [(100, 1, null)], [.. items.Select(item => (item, 1))]).Should().Be(Figure.Best(4));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Bins_of_524_are_7_with_the_46_and_without_it(bool with46)
    {
        // Graham's bin-packing anomaly, from memory. With the 46 they sum up to 3668 = 7 x 524, so 7 leaves nothing over;
        // without it first-fit decreasing, which is no optimum, uses 8.
        (int Length, int Count)[] cuts =
        [
            (442, 1), (252, 7), (127, 5), (106, 4), (85, 1), (84, 1), (46, 1), (37, 2), (12, 3), (10, 6), (9, 2),
        ];

        Bought(Length.Millimetres(1), [(524, 1, null)], [.. cuts.Where(cut => with46 || cut.Length != 46)]).Should().Be(Figure.Best(7));
    }

    // What the best plan spends; one cent is one unit of cost.
    private static Figure Bought(Length unit, (int Length, int Cost, int? Limit)[] stock, (int Length, int Count)[] cuts)
    {
        var request = new MatchRequest
        {
            Stages =
            [
                new Stage("all", null, [.. cuts.Select((cut, i) => new RequiredCut
                {
                    Stage = "all",
                    Name = $"{cut.Length} ({i})",
                    Material = Bar,
                    Shortest = unit * cut.Length,
                    Longest = unit * cut.Length,
                    Count = cut.Count,
                })], []),
            ],
            Prices = new PriceBook(stock.Select(one => new StorePrice
            {
                Material = Bar,
                Length = unit * one.Length,
                Price = new Money(one.Cost),
                Limit = one.Limit,
            })),
            Settings = YardSettings.Usual with { KerfElsewhere = Length.Zero, KeepElsewhere = Length.Longest },
        };

        var plan = Matcher.Match(Problem.Create(request).Value, MatchLimits.None);

        plan.Tiers.Unfilled.Should().Be(Figure.Best(0));
        plan.Tiers.ValueGivenUp.Should().Be(Figure.Best(0));
        plan.Pieces.Sum(piece => piece.Cuts.Count).Should().Be(cuts.Sum(cut => cut.Count));
        return plan.Tiers.Spend;
    }
}
