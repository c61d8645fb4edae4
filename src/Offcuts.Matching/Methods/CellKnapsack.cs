namespace Offcuts.Matching.Methods;

/// <summary>
/// A knapsack in which every cell is to be filled: for each number of cells the most that cuts of exactly so many can earn, and the
/// least and the most that any such cuts weigh. Each copy is an item of its own; cells are whole numbers, whatever a cut really weighs.
/// Dynamic programming, the bounded knapsack of the textbook. Cost: copies x cells.
/// </summary>
internal sealed class CellKnapsack
{
    private const long Never = StateSpaceRelaxation.Never;

    private readonly Item[] _items;

    /// <summary>One copy of a demand.</summary>
    /// <param name="Demand">Which.</param>
    /// <param name="Cells">How many cells it fills; at least one.</param>
    /// <param name="Weight">What it really weighs.</param>
    /// <param name="Earns">What it earns.</param>
    public readonly record struct Item(int Demand, int Cells, long Weight, long Earns);

    /// <summary>Fills the tables.</summary>
    /// <param name="items">The copies there are.</param>
    /// <param name="most">Most cells that are asked for.</param>
    public CellKnapsack(IEnumerable<Item> items, int most)
    {
        _items = [.. items];
        (Top, Lightest, Heaviest) = (new long[most + 1], new long[most + 1], new long[most + 1]);
        Array.Fill(Top, -Never, 1, most);
        Array.Fill(Lightest, Never, 1, most);
        Array.Fill(Heaviest, -Never, 1, most);
        foreach (var item in _items)
        {
            for (var c = most; c >= item.Cells; c--)
            {
                if (Lightest[c - item.Cells] >= Never) continue;
                Top[c] = Math.Max(Top[c], Top[c - item.Cells] + item.Earns);
                Lightest[c] = Math.Min(Lightest[c], Lightest[c - item.Cells] + item.Weight);
                Heaviest[c] = Math.Max(Heaviest[c], Heaviest[c - item.Cells] + item.Weight);
            }
        }
    }

    /// <summary>The most that exactly so many cells earn; far below nothing where no cuts fill them.</summary>
    public long[] Top { get; }

    /// <summary>The least that exactly so many cells weigh; far too much where no cuts fill them.</summary>
    public long[] Lightest { get; }

    /// <summary>The most that exactly so many cells weigh; far below nothing where no cuts fill them.</summary>
    public long[] Heaviest { get; }

    /// <summary>The demands, one for each copy, that earn the most at exactly so many cells.</summary>
    public IEnumerable<int> Best(int cells)
    {
        var table = new long[_items.Length + 1][];
        table[0] = new long[cells + 1];
        Array.Fill(table[0], -Never);
        table[0][0] = 0;
        for (var i = 0; i < _items.Length; i++)
        {
            var (item, row) = (_items[i], (long[])table[i].Clone());
            for (var c = item.Cells; c <= cells; c++)
            {
                if (table[i][c - item.Cells] > -Never / 2) row[c] = Math.Max(row[c], table[i][c - item.Cells] + item.Earns);
            }

            table[i + 1] = row;
        }

        for (var i = _items.Length; i > 0; i--)
        {
            if (table[i][cells] == table[i - 1][cells]) continue;
            cells -= _items[i - 1].Cells;
            yield return _items[i - 1].Demand;
        }
    }
}
