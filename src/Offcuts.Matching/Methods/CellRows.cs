using System.Numerics;
using System.Runtime.InteropServices;

namespace Offcuts.Matching.Methods;

/// <summary>
/// Rows of figures, one for each number of cells filled, and the steps from one to the next: what a <see cref="StateSpaceRelaxation"/> spends its time with. Figures have 32 bits, of which
/// a processor adds and compares eight at once; in front of each row stand as many that say <see cref="None"/> as a load is long at most, so that no step has to look where a row begins.
/// Benchmark: the class yard-60-enough, where this is a good part of the time; 64 bits and one pass for each load took three times as long.
/// </summary>
internal sealed class CellRows
{
    /// <summary>Stands for what can't be; half of it is beyond any sum of costs, and twice it still fits.</summary>
    public const int None = 1 << 29;

    /// <summary>No sum of costs may be further from 0 than this.</summary>
    public const int LargestSum = None / 4;

    private const int AtOnce = 4;

    private readonly int _front;
    private readonly int _length;

    /// <summary>Rows of one size.</summary>
    /// <param name="all">Most cells that are filled.</param>
    /// <param name="longest">Cells of the longest load.</param>
    public CellRows(int all, int longest) => (All, _front, _length) = (all, Tiles(longest), Tiles(longest) + Tiles(all + 1));

    private static int Tile => AtOnce * Vector<int>.Count;

    /// <summary>Most cells that are filled.</summary>
    public int All { get; }

    /// <summary>A row that says none everywhere but here.</summary>
    /// <param name="figures">By cells; no more than there can be.</param>
    public Row Of(ReadOnlySpan<int> figures)
    {
        var row = Empty();
        figures[..Math.Min(figures.Length, All + 1)].CopyTo(row.AsSpan(_front));
        return new Row(row, _front);
    }

    /// <summary>Each figure the least of those that a load leads to from the row before, and of its own where the step may be passed over.</summary>
    /// <param name="before">The row before.</param>
    /// <param name="loads">The loads.</param>
    /// <param name="must">True where one of the loads has to be taken.</param>
    /// <param name="from">Only figures from so many cells on are asked for; those below may say none.</param>
    /// <param name="to">Only figures up to so many cells are; those above may say none.</param>
    public Row Once(Row before, Loads loads, bool must, int from, int to)
    {
        var after = Empty();
        ref var source = ref MemoryMarshal.GetArrayDataReference(before.Figures);
        ref var target = ref MemoryMarshal.GetArrayDataReference(after);
        var (cells, costs, width, none) = (loads.Cells, loads.Costs, Vector<int>.Count, new Vector<int>(None));
        for (var i = _front + from / Tile * Tile; i <= _front + to; i += Tile)
        {
            var a = must ? none : Vector.LoadUnsafe(ref source, (nuint)i);
            var b = must ? none : Vector.LoadUnsafe(ref source, (nuint)(i + width));
            var c = must ? none : Vector.LoadUnsafe(ref source, (nuint)(i + 2 * width));
            var d = must ? none : Vector.LoadUnsafe(ref source, (nuint)(i + 3 * width));
            for (var l = 0; l < cells.Length; l++)
            {
                var (cost, at) = (new Vector<int>(costs[l]), i - cells[l]);
                a = Vector.Min(a, Vector.LoadUnsafe(ref source, (nuint)at) + cost);
                b = Vector.Min(b, Vector.LoadUnsafe(ref source, (nuint)(at + width)) + cost);
                c = Vector.Min(c, Vector.LoadUnsafe(ref source, (nuint)(at + 2 * width)) + cost);
                d = Vector.Min(d, Vector.LoadUnsafe(ref source, (nuint)(at + 3 * width)) + cost);
            }

            a.StoreUnsafe(ref target, (nuint)i);
            b.StoreUnsafe(ref target, (nuint)(i + width));
            c.StoreUnsafe(ref target, (nuint)(i + 2 * width));
            d.StoreUnsafe(ref target, (nuint)(i + 3 * width));
        }

        return new Row(after, _front);
    }

    /// <summary>The same where loads may be taken any number of times, or none at all.</summary>
    public Row Often(Row before, Loads loads)
    {
        var after = (int[])before.Figures.Clone();
        for (var l = 0; l < loads.Cells.Length; l++)
        {
            var (own, cost) = (loads.Cells[l], loads.Costs[l]);
            var i = _front;

            // What is read was written some places before, so that so many must have been, or none at once.
            for (var add = new Vector<int>(cost); own >= Vector<int>.Count && i < after.Length; i += Vector<int>.Count)
                Vector.Min(new Vector<int>(after, i), new Vector<int>(after, i - own) + add).CopyTo(after, i);
            for (; i < after.Length; i++) after[i] = Math.Min(after[i], after[i - own] + cost);
        }

        return new Row(after, _front);
    }

    /// <summary>For each load, the least of a figure before and one after that fill with it all the cells; without the load's own cost.</summary>
    /// <param name="before">By cells filled by what comes before.</param>
    /// <param name="after">By cells filled by what comes after.</param>
    /// <param name="loads">The loads.</param>
    public int[] Joined(Row before, Row after, Loads loads)
    {
        var backwards = after.Figures.AsSpan(_front, All + 1).ToArray();
        Array.Reverse(backwards);
        var figures = before.Figures.AsSpan(_front, All + 1);
        var joined = new int[loads.Cells.Length];
        for (var l = 0; l < joined.Length; l++)
        {
            var own = loads.Cells[l];
            joined[l] = own > All ? None : LeastSum(figures[..(All - own + 1)], backwards.AsSpan(own));
        }

        return joined;
    }

    private static int LeastSum(ReadOnlySpan<int> a, ReadOnlySpan<int> b)
    {
        var left = MemoryMarshal.Cast<int, Vector<int>>(a);
        var right = MemoryMarshal.Cast<int, Vector<int>>(b);
        var least = new Vector<int>(2 * None);
        for (var i = 0; i < left.Length; i++) least = Vector.Min(least, left[i] + right[i]);
        var sum = 2 * None;
        for (var i = 0; i < Vector<int>.Count; i++) sum = Math.Min(sum, least[i]);
        for (var i = left.Length * Vector<int>.Count; i < a.Length; i++) sum = Math.Min(sum, a[i] + b[i]);
        return sum;
    }

    private static int Tiles(int cells) => (cells + Tile - 1) / Tile * Tile;

    private int[] Empty()
    {
        var row = new int[_length];
        Array.Fill(row, None);
        return row;
    }

    /// <summary>One figure for each number of cells.</summary>
    /// <param name="Figures">With what stands in front.</param>
    /// <param name="Front">So many stand in front.</param>
    internal readonly record struct Row(int[] Figures, int Front)
    {
        public int this[int cells] => Figures[Front + cells];
    }

    /// <summary>What a supply may carry: cells, none of them 0, and costs, one for each.</summary>
    internal readonly record struct Loads(int[] Cells, int[] Costs);
}
