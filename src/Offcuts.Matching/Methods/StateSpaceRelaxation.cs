using System.Numerics;
using System.Runtime.InteropServices;

namespace Offcuts.Matching.Methods;

/// <summary>
/// A bound that sees what the linear relaxation does not: that spans are used whole or not at all, and that together they hold exactly
/// what is asked. The set of cuts filled, which is the state of a dynamic program over the spans, is replaced by one figure, how many
/// cells it fills:
/// <code>
/// f_0(0) = 0     f_k(c) = min over the patterns p of span k, and none   f_(k-1)(c - cells_p) + reducedcost_p
/// bound = sum n_d u_d + sum U t + S v + R w + f_K(all)
/// </code>
/// Each demand has a whole number of cells, about in proportion to its weight; whatever the numbers are, the bound is true. The least
/// reduced cost of a pattern of so many cells comes from a <see cref="CellKnapsack"/>. The paths that are left once one pattern is taken
/// tell how dear that pattern may be, and a load (a supply and a number of cells) that no plan of use can have is left out for good.
/// Source: Christofides, Mingozzi and Toth, state-space relaxation, 1981 (from memory).
/// Cost: cells x loads, three times.
/// </summary>
internal sealed class StateSpaceRelaxation
{
    /// <summary>Stands for what can't be; half of it is still far beyond any sum of costs.</summary>
    public const long Never = long.MaxValue / 8;

    private const double MostWork = 4e7;
    private const int MostTable = 1 << 23;
    private const int MostCells = 1 << 16;
    private const int LeastCells = 256;

    private readonly Tier _tier;
    private readonly Duals _duals;
    private readonly int[] _cells;
    private readonly int _all;
    private readonly Step[] _order;
    private readonly IReadOnlyList<int[]> _alike;
    private readonly CellKnapsack?[] _knapsacks;
    private readonly CellKnapsack _left;
    private readonly long[][] _least;
    private readonly long[][] _forward;
    private readonly Lazy<long[]?[]> _others;

    private StateSpaceRelaxation(Tier tier, Duals duals, int[] cells, IReadOnlyList<int[]> alike, Func<int, int, long, bool> open)
    {
        (_tier, _duals, _cells, _alike) = (tier, duals, cells, alike);
        _all = cells.Zip(tier.DemandCount, (own, copies) => own * copies).Sum();
        _order = [.. Steps(tier)];
        _knapsacks = Knapsacks();
        _left = new CellKnapsack(
            Copies(d => tier.MostLeft[d], d => duals.Demand[d] + duals.Left.GetValueOrDefault(tier.Problem.Demands[d].Stage) - tier.LeftCost[d] * tier.Scale), _all);
        _least = [.. Enumerable.Range(0, tier.SupplyCount.Length).Select(s => tier.SupplyCount[s] > 0 ? Least(s, open) : [])];
        _forward = new long[_order.Length + 1][];
        _others = new Lazy<long[]?[]>(Others);
    }

    /// <summary>No plan of the loads that are open costs less, in multiples of 1/<see cref="Tier.Scale"/>.</summary>
    public long Bound { get; private set; }

    /// <summary>Work that one such relaxation takes, in additions.</summary>
    public double Work => (double)_all * _order.Sum(step => Loads(step.Supply));

    /// <summary>
    /// The relaxation at the duals of the linear one, in as fine cells as are affordable; none where cuts are too unlike in length, or duals so large that a path's cost would not fit.
    /// </summary>
    /// <param name="tier">The tier.</param>
    /// <param name="relaxation">Duals and bound.</param>
    /// <param name="most">Only plans of at most this cost are of use.</param>
    public static StateSpaceRelaxation? Of(Tier tier, Relaxation relaxation, long most)
    {
        var demands = Enumerable.Range(0, tier.DemandCount.Length).Where(d => tier.Active[d] && tier.DemandCount[d] > 0).ToArray();
        if (demands.Length == 0 || !relaxation.SumsFit(tier)) return null;
        var weight = demands.Sum(d => tier.DemandCount[d] * tier.Problem.Weights[d]);
        var grid = demands.Select(d => tier.Problem.Weights[d]).Aggregate(0L, Bounds.Gcd);
        var steps = 1 + Steps(tier).Count();
        var alike = Alike(tier);
        for (var fineness = Math.Min(MostCells, MostTable / steps); fineness >= LeastCells; fineness /= 2)
        {
            var cell = Math.Max(grid, weight / fineness + 1);
            int[] cells = [.. Enumerable.Range(0, tier.DemandCount.Length).Select(d => demands.Contains(d) ? (int)((tier.Problem.Weights[d] + cell / 2) / cell) : 0)];
            if (demands.Any(d => cells[d] == 0)) return null;
            var state = new StateSpaceRelaxation(tier, relaxation.Duals, cells, alike, (s, _, least) =>
                least <= (Int128)most * tier.Scale - relaxation.Bound + tier.Counted(s, relaxation.Priced[s].Least));
            if (state.Work <= MostWork) return state.Run();
        }

        return null;
    }

    /// <summary>The same at other duals.</summary>
    /// <param name="duals">Any.</param>
    /// <param name="most">Only plans of at most this cost are of use; where given, loads that none of them can have are left out.</param>
    public StateSpaceRelaxation At(Duals duals, long? most = null) => new StateSpaceRelaxation(_tier, duals, _cells, _alike, (s, cells, _) =>
        cells < _least[s].Length && _least[s][cells] < Never / 2 && (most is not { } cost || _least[s][cells] <= Limit(s, cells, cost))).Run();

    /// <summary>The same for a tier within this one, with the loads that are open here.</summary>
    public StateSpaceRelaxation Within(Tier tier) => new StateSpaceRelaxation(tier, _duals, _cells, Alike(tier), (s, cells, _) =>
        cells < _least[s].Length && _least[s][cells] < Never / 2).Run();

    /// <summary>The tier of which it is.</summary>
    public Tier Tier => _tier;

    /// <summary>The duals at which it is.</summary>
    public Duals Duals => _duals;

    /// <summary>Cells of a copy of each demand.</summary>
    public IReadOnlyList<int> Cells => _cells;

    /// <summary>Limits for the patterns of a supply that are part of a plan of at most so much.</summary>
    public LoadLimits Limits(int supply, long most) => new(
        _cells,
        [.. Enumerable.Range(0, _least[supply].Length).Select(c => c == 0 ? -Never : Limit(supply, c, most))],
        Padded(_knapsacks[supply]!.Lightest, _least[supply].Length, Never),
        Padded(_knapsacks[supply]!.Heaviest, _least[supply].Length, -Never));

    /// <summary>The most that a pattern's reduced cost can be in a plan of at most so much; below any where it is in none.</summary>
    /// <param name="supply">The pattern's supply.</param>
    /// <param name="cells">Cells of all its cuts.</param>
    /// <param name="most">Most that the plan may cost.</param>
    public long Limit(int supply, int cells, long most) =>
        _others.Value[supply] is { } others && cells < others.Length && others[cells] < Never / 2
            ? (long)Int128.Clamp((Int128)most * _tier.Scale - Bounds.Rows(_tier, _duals) - others[cells], -Never, Never)
            : -Never;

    /// <summary>What the least path takes; none where there is no path.</summary>
    public CellPath? LeastPath()
    {
        if (_forward[^1][_all] >= Never / 2) return null;
        var (takes, uses) = (new int[_cells.Length], new int[_least.Length]);
        int[][] from = [.. _least.Select(_ => new int[_cells.Length])];
        var c = _all;
        for (var k = _order.Length; k > 0; k--)
        {
            var (s, use) = _order[k - 1];
            var before = use == Use.Often ? _forward[k] : _forward[k - 1];
            while (use == Use.Once || _forward[k][c] != _forward[k - 1][c])
            {
                var own = Enumerable.Range(1, Math.Min(c, _least[s].Length - 1)).First(own => _least[s][own] < Never / 2 && before[c - own] + _least[s][own] == _forward[k][c]);
                foreach (var d in Best(s, own)) (takes[d], from[s][d]) = (takes[d] + 1, from[s][d] + 1);
                uses[s]++;
                c -= own;
                if (use != Use.Often) break;
            }
        }

        foreach (var d in _left.Best(c)) takes[d]++;
        return new CellPath(takes, uses, from);
    }

    /// <summary>
    /// For spans in this order, the least that those from each on cost where so many cells are still open, at reduced costs and with none
    /// of them used counted as nothing.
    /// </summary>
    public long[][] Completion(IReadOnlyList<(int Supply, bool Must)> order)
    {
        var rest = new long[order.Count + 1][];
        rest[^1] = [.. _left.Top.Select(earns => -earns)];
        for (var k = order.Count - 1; k >= 0; k--) rest[k] = Stepped(rest[k + 1], Step.Of(_tier, order[k].Supply, order[k].Must));
        return rest;
    }

    private static long[] Padded(long[] table, int length, long with) => [.. table, .. Enumerable.Repeat(with, length - table.Length)];

    private static int[][] Alike(Tier tier) => [.. Enumerable.Range(0, tier.SupplyCount.Length).Where(s => tier.SupplyCount[s] > 0)
        .GroupBy(s => PricingKnapsack.Likeness(tier, s)).Select(group => group.ToArray())];

    private enum Use { AtMostOnce, Once, Often }

    // A store length without a limit is one step that may be taken any number of times.
    private readonly record struct Step(int Supply, Use Use)
    {
        public static Step Of(Tier tier, int supply, bool must) => new(
            supply, must ? Use.Once : tier.SupplyCount[supply] > 1 && tier.SupplyCount[supply] >= tier.Copies ? Use.Often : Use.AtMostOnce);
    }

    // Those that must be taken come last among their supply's.
    private static IEnumerable<Step> Steps(Tier tier)
    {
        for (var s = 0; s < tier.SupplyCount.Length; s++)
        {
            var free = Step.Of(tier, s, must: false);
            var times = tier.SupplyCount[s] - tier.SupplyLeast[s];
            for (var i = 0; i < (free.Use == Use.Often ? 1 : times); i++) yield return free;
            for (var i = 0; i < tier.SupplyLeast[s]; i++) yield return free with { Use = Use.Once };
        }
    }

    private StateSpaceRelaxation Run()
    {
        _forward[0] = [.. _left.Top.Select(earns => -earns)];
        for (var k = 0; k < _order.Length; k++) _forward[k + 1] = Stepped(_forward[k], _order[k]);
        Bound = (long)Int128.Clamp((Int128)Bounds.Rows(_tier, _duals) + _forward[^1][_all], -Never, Never);
        return this;
    }

    private int Loads(int supply) => _least[supply].Count(cost => cost < Never / 2);

    private IEnumerable<CellKnapsack.Item> Copies(Func<int, long> copies, Func<int, long> earns) =>
        Enumerable.Range(0, _cells.Length).Where(d => _tier.Active[d] && _tier.DemandCount[d] > 0)
            .SelectMany(d => Enumerable.Repeat(new CellKnapsack.Item(d, _cells[d], _tier.Problem.Weights[d], earns(d)), (int)copies(d)));

    // One for supplies that are alike to the cuts.
    private CellKnapsack?[] Knapsacks()
    {
        var knapsacks = new CellKnapsack?[_tier.SupplyCount.Length];
        foreach (var group in _alike)
        {
            var longest = group.Max(s => _tier.Problem.Capacity(s));
            var items = Copies(
                d => _tier.Problem.Supplies[group[0]].Allows[d] ? Math.Min(_tier.DemandCount[d], longest / _tier.Problem.Weights[d]) : 0,
                d => _duals.Demand[d] - PricingKnapsack.SawDualOf(_tier) - _tier.RipCost(group[0], d, whole: false, _duals.Rips)).ToArray();
            var knapsack = new CellKnapsack(items, MostCellsOf(longest, items));
            foreach (var s in group) knapsacks[s] = knapsack;
        }

        return knapsacks;
    }

    // What cells are more than the weight they stand for: at most half a cell a cut.
    private int MostCellsOf(long capacity, CellKnapsack.Item[] items)
    {
        var share = items.Length == 0 ? 0 : items.Max(item => item.Cells / (double)item.Weight);
        return (int)Math.Min(_all, Math.Ceiling(share * capacity) + 1);
    }

    // The least reduced cost of a pattern of exactly so many cells.
    private long[] Least(int supply, Func<int, int, long, bool> open)
    {
        var knapsack = _knapsacks[supply]!;
        var wholes = Wholes(supply).ToArray();
        var least = new long[Math.Max(knapsack.Top.Length - 1, wholes.Select(whole => whole.Cells).DefaultIfEmpty(0).Max()) + 1];
        Array.Fill(least, Never);
        for (var c = 1; c < knapsack.Top.Length; c++)
        {
            if (knapsack.Lightest[c] > _tier.Problem.Capacity(supply)) continue;
            least[c] = PricingKnapsack.LoadCost(_tier, supply, _duals, knapsack.Lightest[c], knapsack.Heaviest[c]) - knapsack.Top[c];
        }

        foreach (var (d, cells, reduced) in wholes) least[cells] = Math.Min(least[cells], reduced);
        for (var c = 1; c < least.Length; c++)
        {
            if (least[c] < Never / 2 && !open(supply, c, least[c])) least[c] = Never;
        }

        return least;
    }

    private IEnumerable<(int Demand, int Cells, long Reduced)> Wholes(int supply) => Enumerable.Range(0, _cells.Length)
        .Where(d => _tier.Active[d] && _tier.DemandCount[d] > 0 && _tier.Problem.Supplies[supply].Whole[d])
        .Select(d => (d, _cells[d], PricingKnapsack.ReducedCost(_tier, new Pattern(_tier.Problem, supply, [new Take(d, 1)], whole: true), _duals)));

    private IEnumerable<int> Best(int supply, int cells)
    {
        foreach (var whole in Wholes(supply))
        {
            if (whole.Cells == cells && whole.Reduced == _least[supply][cells]) return [whole.Demand];
        }

        return _knapsacks[supply]!.Best(cells);
    }

    private long[] Stepped(long[] before, Step step)
    {
        var (after, least) = ((long[])before.Clone(), _least[step.Supply]);
        if (step.Use == Use.Once) Array.Fill(after, Never);
        var endless = step.Use == Use.Often;
        for (var own = 1; own < least.Length; own++)
        {
            if (least[own] >= Never / 2) continue;
            if (!endless) Lower(after.AsSpan(own), before.AsSpan(0, before.Length - own), least[own]);
            else if (own >= Vector<long>.Count) Lower(after.AsSpan(own), after.AsSpan(0, after.Length - own), least[own]);
            else for (var c = own; c < after.Length; c++) after[c] = Math.Min(after[c], after[c - own] + least[own]);
        }

        return after;
    }

    // after = min(after, before + cost), place by place and from the first on: what is read may be what was written some places before.
    private static void Lower(Span<long> after, ReadOnlySpan<long> before, long cost)
    {
        var to = MemoryMarshal.Cast<long, Vector<long>>(after);
        var from = MemoryMarshal.Cast<long, Vector<long>>(before);
        var add = new Vector<long>(cost);
        for (var i = 0; i < to.Length; i++) to[i] = Vector.Min(to[i], from[i] + add);
        for (var i = to.Length * Vector<long>.Count; i < after.Length; i++) after[i] = Math.Min(after[i], before[i] + cost);
    }

    // For each supply and each number of cells, the least that all else costs where one of its patterns takes so many.
    private long[]?[] Others()
    {
        var others = new long[]?[_tier.SupplyCount.Length];
        var after = new long[_all + 1];
        Array.Fill(after, Never);
        after[0] = 0;
        for (var k = _order.Length - 1; k >= 0; k--)
        {
            var (s, use) = _order[k];
            others[s] ??= Joined(use == Use.Often ? _forward[k + 1] : _forward[k], after, _least[s]);
            after = Stepped(after, _order[k]);
        }

        return others;
    }

    private long[] Joined(long[] before, long[] after, long[] loads)
    {
        var joined = new long[loads.Length];
        var backwards = after.Reverse().ToArray();
        for (var own = 0; own < joined.Length; own++)
        {
            joined[own] = Never;
            if (own > _all || loads[own] >= Never / 2) continue;
            joined[own] = LeastSum(before.AsSpan(0, _all - own + 1), backwards.AsSpan(own));
        }

        return joined;
    }

    private static long LeastSum(ReadOnlySpan<long> a, ReadOnlySpan<long> b)
    {
        var left = MemoryMarshal.Cast<long, Vector<long>>(a);
        var right = MemoryMarshal.Cast<long, Vector<long>>(b);
        var least = new Vector<long>(2 * Never);
        for (var i = 0; i < left.Length; i++) least = Vector.Min(least, left[i] + right[i]);
        var sum = 2 * Never;
        for (var i = 0; i < Vector<long>.Count; i++) sum = Math.Min(sum, least[i]);
        for (var i = left.Length * Vector<long>.Count; i < a.Length; i++) sum = Math.Min(sum, a[i] + b[i]);
        return sum;
    }
}

/// <summary>A path of a <see cref="StateSpaceRelaxation"/>. Where it takes what is asked, it is a plan.</summary>
/// <param name="Takes">Copies of each demand, those left unfilled too.</param>
/// <param name="Uses">How often each supply is cut.</param>
/// <param name="From">By supply, the copies of each demand taken from it.</param>
internal sealed record CellPath(int[] Takes, int[] Uses, int[][] From);
