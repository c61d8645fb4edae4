using System.Numerics;
using System.Runtime.InteropServices;

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
    private readonly Lazy<bool[][]> _taken;

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
        : this([.. items], new long[most + 1], new long[most + 1])
    {
        Array.Fill(Lightest, Never, 1, most);
        Array.Fill(Heaviest, -Never, 1, most);
        foreach (var item in _items)
        {
            for (var c = most; c >= item.Cells; c--)
            {
                if (Lightest[c - item.Cells] >= Never) continue;
                Lightest[c] = Math.Min(Lightest[c], Lightest[c - item.Cells] + item.Weight);
                Heaviest[c] = Math.Max(Heaviest[c], Heaviest[c - item.Cells] + item.Weight);
            }
        }
    }

    private CellKnapsack(Item[] items, long[] lightest, long[] heaviest)
    {
        (_items, Lightest, Heaviest) = (items, lightest, heaviest);
        Top = Earned();
        _taken = new Lazy<bool[][]>(Taken);
    }

    /// <summary>The same copies where they earn otherwise. Much cheaper: what they weigh is known.</summary>
    /// <param name="earns">What a copy of a demand earns.</param>
    public CellKnapsack Where(Func<int, long> earns) => new([.. _items.Select(item => item with { Earns = earns(item.Demand) })], Lightest, Heaviest);

    /// <summary>The most that exactly so many cells earn; far below nothing where no cuts fill them.</summary>
    public long[] Top { get; }

    /// <summary>The least that exactly so many cells weigh; far too much where no cuts fill them.</summary>
    public long[] Lightest { get; }

    /// <summary>The most that exactly so many cells weigh; far below nothing where no cuts fill them.</summary>
    public long[] Heaviest { get; }

    /// <summary>The demands, one for each copy, that earn the most at exactly so many cells.</summary>
    public IEnumerable<int> Best(int cells)
    {
        for (var i = _items.Length - 1; i >= 0 && cells > 0; i--)
        {
            if (!_taken.Value[i][cells]) continue;
            cells -= _items[i].Cells;
            yield return _items[i].Demand;
        }
    }

    private long[] Earned()
    {
        var (top, before, reach) = (Start(), new long[Lightest.Length], 0);
        foreach (var item in _items)
        {
            var length = Math.Min(reach, top.Length - 1 - item.Cells) + 1;
            if (length <= 0) continue;
            top.AsSpan(0, length).CopyTo(before);
            Raise(top.AsSpan(item.Cells, length), before, item.Earns);
            reach = Math.Min(reach + item.Cells, top.Length - 1);
        }

        for (var c = 0; c < top.Length; c++)
        {
            if (top[c] < -Never / 2) top[c] = -Never;
        }

        return top;
    }

    // By copy and cells, whether the best choice from the copies up to this one takes it.
    private bool[][] Taken()
    {
        var (top, taken) = (Start(), new bool[_items.Length][]);
        for (var i = 0; i < taken.Length; i++)
        {
            taken[i] = new bool[top.Length];
            var (own, earns) = (_items[i].Cells, _items[i].Earns);
            for (var c = top.Length - 1; c >= own; c--)
            {
                if (top[c - own] <= -Never / 2 || top[c - own] + earns <= top[c]) continue;
                (top[c], taken[i][c]) = (top[c - own] + earns, true);
            }
        }

        return taken;
    }

    private long[] Start()
    {
        var top = new long[Lightest.Length];
        Array.Fill(top, -Never, 1, top.Length - 1);
        return top;
    }

    // to = max(to, from + by), place by place.
    private static void Raise(Span<long> to, ReadOnlySpan<long> from, long by)
    {
        var raised = MemoryMarshal.Cast<long, Vector<long>>(to);
        var with = MemoryMarshal.Cast<long, Vector<long>>(from);
        var add = new Vector<long>(by);
        for (var i = 0; i < raised.Length; i++) raised[i] = Vector.Max(raised[i], with[i] + add);
        for (var i = raised.Length * Vector<long>.Count; i < to.Length; i++) to[i] = Math.Max(to[i], from[i] + by);
    }
}
