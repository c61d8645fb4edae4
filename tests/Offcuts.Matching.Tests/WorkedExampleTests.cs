using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests;

/// <summary>
/// Published cutting problems with a known optimum. One unit of the source is one millimetre here; no kerf. Where the source counts
/// pieces of stock, each costs one cent, so the spend is their number.
/// </summary>
public sealed class WorkedExampleTests
{
    // The paper-roll example of the encyclopedia article "Cutting stock problem"; a plan of 73 rolls was checked.
    [Fact]
    public void The_paper_rolls_of_the_encyclopedia_take_73() => Spend(
        [(5600, 1, null)],
        [
            (1380, 22), (1520, 25), (1560, 12), (1710, 14), (1820, 18), (1880, 18), (1930, 20), (2000, 10), (2050, 12), (2100, 14),
            (2140, 16), (2150, 18), (2200, 20),
        ]).Should().Be((73, 73));

    // Chvatal, Linear Programming, 1983, ch. 13 (data and relaxation 452.25 read). Rounding the relaxation up piece by piece gives 454.
    [Fact]
    public void The_rolls_of_Chvatal_take_453() =>
        Spend([(100, 1, null)], [(45, 97), (36, 610), (31, 395), (14, 211)]).Should().Be((453, 453));

    // Winston, Operations Research, 17-ft boards (data read, title from memory).
    [Fact]
    public void The_boards_of_Winston_take_19() =>
        Spend([(17, 1, null)], [(3, 25), (5, 20), (9, 15)]).Should().Be((19, 19));

    // Gilmore and Gomory, 1961 (source from memory; optimum proved by dynamic programming): 9 at 10, 6 at 7, 5 at 6.
    // Read as stock lengths 9, 6 and 5 at costs 10, 7 and 6.
    [Fact]
    public void The_stock_of_Gilmore_and_Gomory_costs_170() =>
        Spend([(9, 10, null), (6, 7, null), (5, 6, null)], [(2, 20), (3, 10), (4, 20)]).Should().Be((170, 170));

    // The bin-packing sample of a public solver's documentation (read).
    [Fact]
    public void The_sample_of_a_public_solver_takes_4() =>
        Spend([(100, 1, null)], [(48, 1), (30, 1), (19, 1), (36, 1), (36, 1), (27, 1), (42, 1), (42, 1), (36, 1), (24, 1), (30, 1)]).Should().Be((4, 4));

    // Graham's bin-packing anomaly (from memory): with the 46 and without it 7; first-fit decreasing uses 8 without it.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_bins_of_Graham_take_7_with_the_46_and_without_it(bool with46)
    {
        (int, int)[] cuts = [(442, 1), (252, 7), (127, 5), (106, 4), (85, 1), (84, 1), (37, 2), (12, 3), (10, 6), (9, 2)];
        Spend([(524, 1, null)], with46 ? [.. cuts, (46, 1)] : cuts).Should().Be((7, 7));
    }

    // The same 73 rolls lying in the yard: 73 fill everything, 72 leave something unfilled, and both are proven.
    [Theory]
    [InlineData(73, 0)]
    [InlineData(18, 1)]
    public void A_yard_of_the_same_rolls_needs_as_many(int rolls, int short17)
    {
        var yard = Enumerable.Range(1, rolls).Select(number => Roll(number, rolls == 73 ? 5600 : 17));
        (int, int)[] cuts = rolls == 73
            ?
            [
                (1380, 22), (1520, 25), (1560, 12), (1710, 14), (1820, 18), (1880, 18), (1930, 20), (2000, 10), (2050, 12), (2100, 14),
                (2140, 16), (2150, 18), (2200, 20),
            ]
            : [(3, 25), (5, 20), (9, 15)];
        var plan = Match(Stock(cuts) with { Pieces = [.. yard] });
        plan.Tiers.Unfilled.Should().Be(Core.Plans.Figure.Best(short17));
    }

    private static readonly Material Paper = MaterialReader.Read("paper roll").Value;

    private static Piece Roll(int number, int length) => new() { Code = CodeOf(number), Material = Paper, Length = Length.Millimetres(length) };

    private static MatchRequest Stock((int Length, int Count)[] cuts) => new()
    {
        Stages =
        [
            new Stage("order", null,
            [
                .. cuts.Select((cut, i) => new RequiredCut
                {
                    Stage = "order",
                    Name = $"{cut.Length} no {i}",
                    Material = Paper,
                    Shortest = Length.Millimetres(cut.Length),
                    Longest = Length.Millimetres(cut.Length),
                    Count = cut.Count,
                }),
            ], []),
        ],
        Settings = NoKerf,
    };

    private static (long Value, long Bound) Spend((int Length, int Cents, int? Limit)[] stock, (int Length, int Count)[] cuts)
    {
        var prices = stock.Select(one => new StorePrice
        {
            Material = Paper,
            Length = Length.Millimetres(one.Length),
            Price = new Money(one.Cents),
            Limit = one.Limit,
        });
        var plan = Match(Stock(cuts) with { Prices = new PriceBook(prices) });
        plan.Tiers.Unfilled.Value.Should().Be(0);
        plan.Savings.Saved.Should().Be(Money.Zero);
        return (plan.Tiers.Spend.Value, plan.Tiers.Spend.Bound);
    }
}
