namespace Offcuts.Matching.Methods;

/// <summary>
/// What a span may carry in a <see cref="StateSpaceRelaxation"/>: a load is a supply and a number of cells. The least reduced cost of a pattern of each load, at given duals, and the cuts of such
/// a pattern; by a <see cref="CellKnapsack"/> for supplies that are alike to the cuts.
/// </summary>
internal sealed class CellLoads
{
    private const long Never = StateSpaceRelaxation.Never;

    private readonly Tier _tier;
    private readonly int[][] _alike;
    private readonly CellKnapsack?[] _knapsacks;

    /// <summary>All loads, but for those that are of no use.</summary>
    /// <param name="tier">The tier.</param>
    /// <param name="duals">Duals at which reduced costs are meant.</param>
    /// <param name="cells">Cells of a copy of each demand.</param>
    /// <param name="open">Whether a load is of use: its supply, its cells, the least reduced cost of its patterns.</param>
    public CellLoads(Tier tier, Duals duals, int[] cells, Func<int, int, long, bool> open)
        : this(tier, duals, cells, open, null)
    {
    }

    private CellLoads(Tier tier, Duals duals, int[] cells, Func<int, int, long, bool> open, CellLoads? like)
    {
        (_tier, Duals, Cells) = (tier, duals, cells);
        All = cells.Zip(tier.DemandCount, (own, copies) => own * copies).Sum();
        _alike = like?._alike ?? [.. Enumerable.Range(0, tier.SupplyCount.Length).Where(s => tier.SupplyCount[s] > 0).GroupBy(s => PricingKnapsack.Likeness(tier, s)).Select(group => group.ToArray())];
        _knapsacks = Knapsacks(like);
        Left = like?.Left.Where(Unfilled) ?? new CellKnapsack(Copies(d => tier.MostLeft[d], Unfilled), All);
        Least = [.. Enumerable.Range(0, tier.SupplyCount.Length).Select(s => tier.SupplyCount[s] > 0 ? LeastOf(s, like?.OpenCells(s), open) : [])];
    }

    /// <summary>The duals at which reduced costs are meant.</summary>
    public Duals Duals { get; }

    /// <summary>Cells of a copy of each demand.</summary>
    public int[] Cells { get; }

    /// <summary>Cells of all copies that are asked for.</summary>
    public int All { get; }

    /// <summary>By supply and cells, the least reduced cost of a pattern, in multiples of 1/<see cref="Tier.Scale"/>; <see cref="StateSpaceRelaxation.Never"/> where there is none of use.</summary>
    public long[][] Least { get; }

    /// <summary>What copies earn that stay unfilled.</summary>
    public CellKnapsack Left { get; }

    /// <summary>True for a load that is of use.</summary>
    public bool Has(int supply, int cells) => cells < Least[supply].Length && Least[supply][cells] < Never / 2;

    /// <summary>The same loads at other duals, but for those that are of no use.</summary>
    /// <param name="duals">Any.</param>
    /// <param name="open">Whether one of these loads still is: its supply, its cells.</param>
    public CellLoads At(Duals duals, Func<int, int, bool> open) => new(_tier, duals, Cells, (s, cells, _) => open(s, cells), this);

    /// <summary>By cells, the least and the most that a pattern of a supply weighs.</summary>
    public (long[] Lightest, long[] Heaviest) Weighing(int supply) =>
        (Padded(_knapsacks[supply]!.Lightest, Least[supply].Length, Never), Padded(_knapsacks[supply]!.Heaviest, Least[supply].Length, -Never));

    /// <summary>The demands, one for each copy, of a pattern of so many cells that has the least reduced cost.</summary>
    public IEnumerable<int> Best(int supply, int cells)
    {
        foreach (var whole in Wholes(supply))
        {
            if (whole.Cells == cells && whole.Reduced == Least[supply][cells]) return [whole.Demand];
        }

        return _knapsacks[supply]!.Best(cells);
    }

    private static long[] Padded(long[] table, int length, long with) => [.. table, .. Enumerable.Repeat(with, length - table.Length)];

    private IEnumerable<int> OpenCells(int supply) => Enumerable.Range(0, Least[supply].Length).Where(cells => Has(supply, cells));

    private IEnumerable<CellKnapsack.Item> Copies(Func<int, long> copies, Func<int, long> earns) =>
        Enumerable.Range(0, Cells.Length).Where(d => _tier.Active[d] && _tier.DemandCount[d] > 0)
            .SelectMany(d => Enumerable.Repeat(new CellKnapsack.Item(d, Cells[d], _tier.Problem.Weights[d], earns(d)), (int)copies(d)));

    // What a copy earns that stays unfilled.
    private long Unfilled(int demand) =>
        Duals.Demand[demand] + Duals.Left.GetValueOrDefault(_tier.Problem.Demands[demand].Stage) - _tier.LeftCost[demand] * _tier.Scale;

    // One for supplies that are alike to the cuts.
    private CellKnapsack?[] Knapsacks(CellLoads? like)
    {
        var knapsacks = new CellKnapsack?[_tier.SupplyCount.Length];
        foreach (var group in _alike)
        {
            var first = group[0];
            var knapsack = like?._knapsacks[first]!.Where(Earns) ?? Filled(group, Earns);
            foreach (var s in group) knapsacks[s] = knapsack;
            long Earns(int d) => Duals.Demand[d] - PricingKnapsack.SawDualOf(_tier) - _tier.RipCost(first, d, whole: false, Duals.Rips);
        }

        return knapsacks;
    }

    private CellKnapsack Filled(int[] alike, Func<int, long> earns)
    {
        var longest = alike.Max(s => _tier.Problem.Capacity(s));
        CellKnapsack.Item[] items = [.. Copies(d => _tier.Problem.Supplies[alike[0]].Allows[d] ? Math.Min(_tier.DemandCount[d], longest / _tier.Problem.Weights[d]) : 0, earns)];
        return new CellKnapsack(items, MostCellsOf(longest, items));
    }

    // What cells are more than the weight they stand for: at most half a cell a cut.
    private int MostCellsOf(long capacity, CellKnapsack.Item[] items)
    {
        var share = items.Length == 0 ? 0 : items.Max(item => item.Cells / (double)item.Weight);
        return (int)Math.Min(All, Math.Ceiling(share * capacity) + 1);
    }

    // The least reduced cost of a pattern of exactly so many cells, for each number of cells or for some.
    private long[] LeastOf(int supply, IEnumerable<int>? some, Func<int, int, long, bool> open)
    {
        var knapsack = _knapsacks[supply]!;
        var wholes = Wholes(supply).ToArray();
        var least = new long[Math.Max(knapsack.Top.Length - 1, wholes.Select(whole => whole.Cells).DefaultIfEmpty(0).Max()) + 1];
        Array.Fill(least, Never);
        foreach (var c in some ?? [.. Enumerable.Range(1, least.Length - 1)])
        {
            if (c < knapsack.Top.Length && knapsack.Lightest[c] <= _tier.Problem.Capacity(supply))
                least[c] = PricingKnapsack.LoadCost(_tier, supply, Duals, knapsack.Lightest[c], knapsack.Heaviest[c]) - knapsack.Top[c];
            foreach (var whole in wholes)
            {
                if (whole.Cells == c) least[c] = Math.Min(least[c], whole.Reduced);
            }

            if (least[c] < Never / 2 && !open(supply, c, least[c])) least[c] = Never;
        }

        return least;
    }

    private IEnumerable<(int Demand, int Cells, long Reduced)> Wholes(int supply) => Enumerable.Range(0, Cells.Length)
        .Where(d => _tier.Active[d] && _tier.DemandCount[d] > 0 && _tier.Problem.Supplies[supply].Whole[d])
        .Select(d => (d, Cells[d], PricingKnapsack.ReducedCost(_tier, new Pattern(_tier.Problem, supply, [new Take(d, 1)], whole: true), Duals)));
}
