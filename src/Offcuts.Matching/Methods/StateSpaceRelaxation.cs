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

    private const double MostWork = 7e8;
    private const int MostTable = 1 << 23;
    private const int MostCells = 1 << 16;
    private const int LeastCells = 256;

    private readonly Tier _tier;
    private readonly CellLoads _loads;
    private readonly int _all;
    private readonly Step[] _order;
    private readonly CellRows _rows;
    private readonly CellRows.Loads[] _open;
    private readonly long _unit;
    private readonly Lazy<long[]?[]> _others;
    private CellRows.Row[]? _forward;

    private StateSpaceRelaxation(Tier tier, CellLoads loads)
    {
        (_tier, _loads, _all) = (tier, loads, loads.All);
        _order = [.. Steps(tier)];
        _rows = new CellRows(_all, loads.Least.Select(least => least.Length).DefaultIfEmpty(0).Max());
        _unit = (long)(Reach() / CellRows.LargestSum) + 1;
        _open = [.. loads.Least.Select(Open)];
        _others = new Lazy<long[]?[]>(Others);
    }

    /// <summary>No plan of the loads that are open costs less, in multiples of 1/<see cref="Tier.Scale"/>.</summary>
    public long Bound { get; private set; }

    /// <summary>Work that one such relaxation takes, in additions.</summary>
    public double Work => (double)_all * _order.Sum(step => _open[step.Supply].Cells.Length);

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
        for (var fineness = Math.Min(MostCells, MostTable / steps); fineness >= LeastCells; fineness /= 2)
        {
            var cell = Math.Max(grid, weight / fineness + 1);
            int[] cells = [.. Enumerable.Range(0, tier.DemandCount.Length).Select(d => demands.Contains(d) ? (int)((tier.Problem.Weights[d] + cell / 2) / cell) : 0)];
            if (demands.Any(d => cells[d] == 0)) return null;
            var state = new StateSpaceRelaxation(tier, new CellLoads(tier, relaxation.Duals, cells, (s, _, least) =>
                least <= (Int128)most * tier.Scale - relaxation.Bound + tier.Counted(s, relaxation.Priced[s].Least)));
            if (state.Work <= MostWork) return state.Run();
        }

        return null;
    }

    /// <summary>The same at other duals.</summary>
    /// <param name="duals">Any.</param>
    /// <param name="most">Only plans of at most this cost are of use; where given, loads that none of them can have are left out.</param>
    public StateSpaceRelaxation At(Duals duals, long? most = null) =>
        new StateSpaceRelaxation(_tier, _loads.At(duals, (s, cells) => most is not { } cost || _loads.Least[s][cells] <= Limit(s, cells, cost))).Run();

    /// <summary>The same for a tier within this one, with the loads that are open here. Its rows are reckoned again when they are asked for: many of these wait at once.</summary>
    public StateSpaceRelaxation Within(Tier tier)
    {
        var within = new StateSpaceRelaxation(tier, new CellLoads(tier, Duals, _loads.Cells, (s, cells, _) => _loads.Has(s, cells))).Run();
        within._forward = null;
        return within;
    }

    /// <summary>The tier of which it is.</summary>
    public Tier Tier => _tier;

    /// <summary>The duals at which it is.</summary>
    public Duals Duals => _loads.Duals;

    /// <summary>Cells of a copy of each demand.</summary>
    public IReadOnlyList<int> Cells => _loads.Cells;

    /// <summary>Limits for the patterns of a supply that are part of a plan of at most so much.</summary>
    public LoadLimits Limits(int supply, long most)
    {
        var (lightest, heaviest) = _loads.Weighing(supply);
        return new LoadLimits(_loads.Cells, [.. Enumerable.Range(0, _loads.Least[supply].Length).Select(c => c == 0 ? -Never : Limit(supply, c, most))], lightest, heaviest);
    }

    /// <summary>The most that a pattern's reduced cost can be in a plan of at most so much; below any where it is in none.</summary>
    /// <param name="supply">The pattern's supply.</param>
    /// <param name="cells">Cells of all its cuts.</param>
    /// <param name="most">Most that the plan may cost.</param>
    public long Limit(int supply, int cells, long most) =>
        _others.Value[supply] is { } others && cells < others.Length && others[cells] < Never / 2
            ? (long)Int128.Clamp((Int128)most * _tier.Scale - Bounds.Rows(_tier, Duals) - others[cells], -Never, Never)
            : -Never;

    /// <summary>What the least path takes; none where there is no path.</summary>
    public CellPath? LeastPath()
    {
        var forward = Forward();
        if (forward[^1][_all] >= CellRows.None / 2) return null;
        var (takes, uses) = (new int[_loads.Cells.Length], new int[_loads.Least.Length]);
        int[][] from = [.. _loads.Least.Select(_ => new int[_loads.Cells.Length])];
        var c = _all;
        for (var k = _order.Length; k > 0; k--)
        {
            var (s, use) = _order[k - 1];
            var before = use == Use.Often ? forward[k] : forward[k - 1];
            while (use == Use.Once || forward[k][c] != forward[k - 1][c])
            {
                var (own, _) = _open[s].Cells.Zip(_open[s].Costs).First(load => load.First <= c && before[c - load.First] + load.Second == forward[k][c]);
                foreach (var d in _loads.Best(s, own)) (takes[d], from[s][d]) = (takes[d] + 1, from[s][d] + 1);
                uses[s]++;
                c -= own;
                if (use != Use.Often) break;
            }
        }

        foreach (var d in _loads.Left.Best(c)) takes[d]++;
        return new CellPath(takes, uses, from);
    }

    /// <summary>
    /// For spans in this order, the least that those from each on cost where so many cells are still open, at reduced costs and with none
    /// of them used counted as nothing.
    /// </summary>
    public long[][] Completion(IReadOnlyList<(int Supply, bool Must)> order)
    {
        var row = Start();
        var rest = new long[order.Count + 1][];
        rest[^1] = Exactly(row);
        for (var k = order.Count - 1; k >= 0; k--)
        {
            row = Stepped(row, Step.Of(_tier, order[k].Supply, order[k].Must), 0, _all);
            rest[k] = Exactly(row);
        }

        return rest;
    }

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
        var least = Forward()[^1][_all];
        Bound = least >= CellRows.None / 2 ? Never : (long)Int128.Clamp(Bounds.Rows(_tier, Duals) + (Int128)least * _unit, -Never, Never);
        return this;
    }

    // The least cost of the spans before each, by the cells that they and what stays unfilled fill.
    private CellRows.Row[] Forward()
    {
        if (_forward is { } known) return known;

        // No path of use is below the one or above the other, since the spans before and after hold no more.
        var rest = _order.Sum(Longest);
        var to = (long)Array.FindLastIndex(_loads.Left.Top, earns => earns > -Never / 2);
        var forward = new CellRows.Row[_order.Length + 1];
        forward[0] = Start();
        for (var k = 0; k < _order.Length; k++)
        {
            rest -= Longest(_order[k]);
            to = Math.Min(_all, to + Longest(_order[k]));
            forward[k + 1] = Stepped(forward[k], _order[k], (int)Math.Max(0, _all - rest), (int)to);
        }

        return _forward = forward;
    }

    // The most cells that a step fills.
    private long Longest(Step step) => step.Use == Use.Often ? _all : _open[step.Supply].Cells is [.., var longest] ? longest : 0;

    private CellRows.Row Start() => _rows.Of([.. _loads.Left.Top.Select(earns => earns <= -Never / 2 ? CellRows.None : Rounded(-earns))]);

    private CellRows.Row Stepped(CellRows.Row before, Step step, int from, int to) =>
        step.Use == Use.Often ? _rows.Often(before, _open[step.Supply]) : _rows.Once(before, _open[step.Supply], step.Use == Use.Once, from, to);

    // What a path can cost at most, with either sign, before its rows. What may be taken any number of times is, until all cells are filled.
    private Int128 Reach() => _order.Aggregate(
        (Int128)Largest(_loads.Left.Top.Where(earns => earns > -Never / 2)),
        (sum, step) => sum + (step.Use == Use.Often
            ? _loads.Least[step.Supply].Select((cost, cells) => cost >= Never / 2 ? 0 : (Int128)Math.Abs(cost) * (_all / cells + 1)).DefaultIfEmpty().Max()
            : Largest(_loads.Least[step.Supply].Where(cost => cost < Never / 2))));

    private static long Largest(IEnumerable<long> costs) => costs.Select(Math.Abs).DefaultIfEmpty(0).Max();

    private CellRows.Loads Open(long[] least)
    {
        int[] cells = [.. Enumerable.Range(0, least.Length).Where(c => least[c] < Never / 2)];
        return new CellRows.Loads(cells, [.. cells.Select(c => Rounded(least[c]))]);
    }

    // Never more than it is, so that bounds stay true.
    private int Rounded(long cost) => (int)(cost >= 0 ? cost / _unit : -((-cost + _unit - 1) / _unit));

    private long[] Exactly(CellRows.Row row) => [.. Enumerable.Range(0, _all + 1).Select(c => row[c] >= CellRows.None / 2 ? Never : row[c] * _unit)];

    // For each supply and each number of cells, the least that all else costs where one of its patterns takes so many.
    private long[]?[] Others()
    {
        var others = new long[]?[_tier.SupplyCount.Length];
        var (forward, after, to) = (Forward(), _rows.Of([0]), 0L);
        for (var k = _order.Length - 1; k >= 0; k--)
        {
            var (s, use) = _order[k];
            others[s] ??= Joined(s, use == Use.Often ? forward[k + 1] : forward[k], after);
            to = Math.Min(_all, to + Longest(_order[k]));
            after = Stepped(after, _order[k], 0, (int)to);
        }

        return others;
    }

    private long[] Joined(int supply, CellRows.Row before, CellRows.Row after)
    {
        var others = new long[_loads.Least[supply].Length];
        Array.Fill(others, Never);
        foreach (var (cells, least) in _open[supply].Cells.Zip(_rows.Joined(before, after, _open[supply])))
        {
            if (least < CellRows.None / 2) others[cells] = least * _unit;
        }

        return others;
    }
}

/// <summary>A path of a <see cref="StateSpaceRelaxation"/>. Where it takes what is asked, it is a plan.</summary>
/// <param name="Takes">Copies of each demand, those left unfilled too.</param>
/// <param name="Uses">How often each supply is cut.</param>
/// <param name="From">By supply, the copies of each demand taken from it.</param>
internal sealed record CellPath(int[] Takes, int[] Uses, int[][] From);
