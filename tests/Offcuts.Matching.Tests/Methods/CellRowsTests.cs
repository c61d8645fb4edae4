using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>Steps over rows of cells, against the same in 64 bits, one figure after the other.</summary>
public sealed class CellRowsTests
{
    [Fact]
    public void A_step_gives_for_each_number_of_cells_the_least_of_what_a_load_leads_to()
    {
        foreach (var drawn in Drawn(300))
        {
            var after = drawn.Rows.Once(drawn.Rows.Of(drawn.Before), drawn.Loads, must: false, 0, drawn.Rows.All);

            Figures(drawn.Rows, after).Should().Equal(Stepped(drawn, drawn.Before), $"of {drawn.Name}");
        }
    }

    [Fact]
    public void A_step_that_must_be_taken_keeps_nothing_of_the_row_before()
    {
        foreach (var drawn in Drawn(300))
        {
            var after = drawn.Rows.Once(drawn.Rows.Of(drawn.Before), drawn.Loads, must: true, 0, drawn.Rows.All);

            Figures(drawn.Rows, after).Should().Equal(Stepped(drawn, [.. drawn.Before.Select(_ => CellRows.None)]), $"of {drawn.Name}");
        }
    }

    [Fact]
    public void Where_only_some_cells_are_asked_for_those_are_as_they_were()
    {
        foreach (var drawn in Drawn(300))
        {
            var (from, to) = (drawn.Rows.All / 3, drawn.Rows.All / 2);
            var all = drawn.Rows.Once(drawn.Rows.Of(drawn.Before), drawn.Loads, must: false, 0, drawn.Rows.All);
            var some = drawn.Rows.Once(drawn.Rows.Of(drawn.Before), drawn.Loads, must: false, from, to);

            Figures(drawn.Rows, some)[from..(to + 1)].Should().Equal(Figures(drawn.Rows, all)[from..(to + 1)], $"of {drawn.Name}");
        }
    }

    [Fact]
    public void Loads_that_may_be_taken_often_are_taken_as_often_as_there_are_cells()
    {
        foreach (var drawn in Drawn(300))
        {
            var row = drawn.Before.Select(figure => (long)figure).ToArray();
            for (var cells = 0; cells < row.Length; cells++)
            {
                foreach (var (own, cost) in drawn.Each.Where(load => load.Cells <= cells)) row[cells] = Math.Min(row[cells], row[cells - own] + cost);
            }

            Figures(drawn.Rows, drawn.Rows.Often(drawn.Rows.Of(drawn.Before), drawn.Loads)).Should().Equal(row.Select(Told), $"of {drawn.Name}");
        }
    }

    [Fact]
    public void Before_and_after_a_load_fill_with_it_all_cells_at_the_least_cost()
    {
        foreach (var drawn in Drawn(300))
        {
            var other = drawn.Before.Reverse().ToArray();
            var joined = drawn.Rows.Joined(drawn.Rows.Of(drawn.Before), drawn.Rows.Of(other), drawn.Loads);

            joined.Select(sum => Told(sum)).Should().Equal(
                drawn.Each.Select(load => load.Cells > drawn.Rows.All
                    ? CellRows.None
                    : Enumerable.Range(0, drawn.Rows.All - load.Cells + 1).Min(cells => Told((long)drawn.Before[cells] + other[drawn.Rows.All - load.Cells - cells]))),
                $"of {drawn.Name}");
        }
    }

    private static int[] Figures(CellRows rows, CellRows.Row row) => [.. Enumerable.Range(0, rows.All + 1).Select(cells => Told(row[cells]))];

    // From half of it on, a figure says none.
    private static int Told(long figure) => figure >= CellRows.None / 2 ? CellRows.None : checked((int)figure);

    private static int[] Stepped(Draw drawn, int[] passedOver)
    {
        var after = passedOver.Select(figure => (long)figure).ToArray();
        for (var cells = 0; cells < after.Length; cells++)
        {
            foreach (var (own, cost) in drawn.Each.Where(load => load.Cells <= cells)) after[cells] = Math.Min(after[cells], (long)drawn.Before[cells - own] + cost);
        }

        return [.. after.Select(Told)];
    }

    private sealed record Draw(string Name, CellRows Rows, int[] Before, CellRows.Loads Loads)
    {
        public IEnumerable<(int Cells, int Cost)> Each => Loads.Cells.Zip(Loads.Costs);
    }

    // Short rows and long ones, loads of one cell and of all, figures that say none here and there.
    private static IEnumerable<Draw> Drawn(int draws)
    {
        for (var seed = 0; seed < draws; seed++)
        {
            var random = new Random(seed);
            var all = random.Next(1, 200);
            int[] cells = [.. Enumerable.Range(1, all).Where(_ => random.Next(6) == 0)];
            if (cells.Length == 0) cells = [1];
            int[] before = [.. Enumerable.Range(0, all + 1).Select(_ => random.Next(3) == 0 ? CellRows.None : random.Next(-100_000, 100_000))];
            yield return new Draw($"{seed}", new CellRows(all, all), before, new CellRows.Loads(cells, [.. cells.Select(_ => random.Next(-50_000, 50_000))]));
        }
    }
}
