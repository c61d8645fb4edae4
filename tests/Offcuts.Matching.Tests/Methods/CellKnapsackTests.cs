using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>The knapsack whose cells are all to be filled, against trying every choice of cuts.</summary>
public sealed class CellKnapsackTests
{
    [Fact]
    public void For_each_number_of_cells_it_knows_the_most_earned_and_the_least_and_most_weight()
    {
        foreach (var (items, most, byCells) in Drawn(200))
        {
            var knapsack = new CellKnapsack(items, most);
            for (var cells = 0; cells <= most; cells++)
            {
                var choices = byCells[cells].ToArray();
                var expected = choices.Length == 0
                    ? (-StateSpaceRelaxation.Never, StateSpaceRelaxation.Never, -StateSpaceRelaxation.Never)
                    : (choices.Max(one => one.Earns), choices.Min(one => one.Weight), choices.Max(one => one.Weight));

                (knapsack.Top[cells], knapsack.Lightest[cells], knapsack.Heaviest[cells]).Should().Be(expected, $"{cells} cells of {string.Join(", ", items)}");
            }
        }
    }

    [Fact]
    public void The_cuts_it_names_fill_exactly_the_cells_and_earn_the_most()
    {
        var named = 0;
        foreach (var (items, most, byCells) in Drawn(200))
        {
            var knapsack = new CellKnapsack(items, most);
            for (var cells = 0; cells <= most; cells++)
            {
                if (!byCells[cells].Any()) continue;
                int[] best = [.. knapsack.Best(cells)];
                named += best.Length;

                best.Should().OnlyHaveUniqueItems("each copy is there once");
                best.Sum(demand => items[demand].Cells).Should().Be(cells);
                best.Sum(demand => items[demand].Earns).Should().Be(knapsack.Top[cells]);
            }
        }

        named.Should().BeGreaterThan(500, "else little was named");
    }

    // A few copies, each with a number of its own, and what every choice of them fills, weighs and earns. Some earn less than nothing.
    private static IEnumerable<(CellKnapsack.Item[] Items, int Most, ILookup<int, (long Weight, long Earns)> ByCells)> Drawn(int draws)
    {
        for (var seed = 0; seed < draws; seed++)
        {
            var random = new Random(seed);
            CellKnapsack.Item[] items = [.. Enumerable.Range(0, random.Next(8)).Select(i => new CellKnapsack.Item(i, random.Next(1, 6), random.Next(1, 40), random.Next(-10, 30)))];
            var choices = Enumerable.Range(0, 1 << items.Length).Select(set => items.Where((_, i) => (set >> i & 1) != 0).ToArray());
            yield return (items, random.Next(1, 16), choices.ToLookup(chosen => chosen.Sum(item => item.Cells), chosen => (chosen.Sum(item => item.Weight), chosen.Sum(item => item.Earns))));
        }
    }
}
