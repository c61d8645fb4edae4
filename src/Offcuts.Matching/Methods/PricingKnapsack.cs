namespace Offcuts.Matching.Methods;

/// <summary>What pricing found for one supply.</summary>
/// <param name="Least">No pattern of the supply has a reduced cost below this, in multiples of 1/<see cref="Tier.Scale"/>.</param>
/// <param name="Best">A pattern that is as good as was found, or none.</param>
/// <param name="ReducedCost">Its reduced cost.</param>
internal readonly record struct Priced(long Least, Pattern? Best, long ReducedCost);

/// <summary>
/// The pricing problem of column generation: for each supply the pattern of least reduced cost.
/// <code>
/// reduced cost of pattern p = cost_p - spenddual price_p - sum dual_d a_dp
/// </code>
/// A bounded knapsack by dynamic programming over labels (used weight, sum of duals), kept sparse because units are so small
/// (1/320 mm) that a table over all weights would not fit. Label a is dropped for label b when b uses no more and earns no
/// less: what is left over never loses by being longer (<see cref="MaterialProblem.Drop"/> tells by how much it may, where a
/// longer store length costs less). One list serves all supplies with the same permissions; each then adds its own cost.
/// Source: Gilmore and Gomory (1961, 1963) for the scheme; dominance of labels as in resource-constrained shortest paths.
/// Cost: labels x demand copies (in binary chunks). Above <see cref="MostLabels"/> labels are rounded down into a grid: the
/// bound stays true and gets weaker.
/// </summary>
internal sealed class PricingKnapsack
{
    /// <summary>Labels kept before rounding sets in.</summary>
    public const int MostLabels = 300_000;

    private readonly Tier _tier;
    private readonly MaterialProblem _problem;
    private readonly List<Group> _groups;

    // Reused between calls: a run of column generation asks some hundred times.
    private Label[] _labels = new Label[1024];
    private Label[] _merged = new Label[1024];
    private Step[] _steps = new Step[4096];
    private int _stepCount;

    public PricingKnapsack(Tier tier)
    {
        _tier = tier;
        _problem = tier.Problem;
        _groups = Enumerable.Range(0, _problem.Supplies.Count)
            .GroupBy(s => string.Concat(_problem.Supplies[s].Allows.Select((allowed, d) => allowed && tier.Active[d] ? '1' : '0')))
            .Select(group => new Group(
                [.. group],
                [.. Enumerable.Range(0, _problem.Demands.Count).Where(d => group.Key[d] == '1')],
                group.Max(s => _problem.Capacity(s))))
            .ToList();
    }

    /// <summary>Prices every supply.</summary>
    public Priced[] Price(Duals duals)
    {
        var found = new Priced[_problem.Supplies.Count];
        foreach (var group in _groups)
        {
            var count = BuildLabels(group, duals.Demand);
            foreach (var supply in group.Supplies)
                found[supply] = _tier.SupplyCount[supply] > 0 ? Evaluate(supply, count, duals) : new Priced(0, null, long.MaxValue);
        }

        return found;
    }

    /// <summary>Cost of a supply before any cut is looked at: its price, in this tier and in the spend row.</summary>
    public static long BaseCost(Tier tier, int supply, Duals duals)
    {
        var price = tier.Problem.Supplies[supply].Price;
        return (tier.Goal == Goal.Spend ? price * tier.Scale : 0) - duals.Spend * price;
    }

    private int BuildLabels(Group group, long[] dual)
    {
        _stepCount = 0;
        _labels[0] = new Label(0, 0, 0, -1);
        var count = 1;
        var drop = _tier.Covering ? 0 : _problem.Drop * _tier.Scale;
        foreach (var d in group.Demands)
        {
            if (dual[d] <= 0 && _tier.Covering) continue;
            var left = (int)Math.Min(_tier.DemandCount[d], group.Capacity / _problem.Weights[d]);
            for (var chunk = 1; left > 0; chunk *= 2)
            {
                chunk = Math.Min(chunk, left);
                left -= chunk;
                count = Merge(count, d, chunk, chunk * _problem.Weights[d], chunk * dual[d], group.Capacity, drop);
                if (count > MostLabels) count = Coarsen(count, group.Capacity);
            }
        }

        return count;
    }

    private int Merge(int count, int demand, int chunk, long weight, long dual, long capacity, long drop)
    {
        if (_merged.Length < 2 * count) Array.Resize(ref _merged, Math.Max(2 * count, 2 * _merged.Length));
        if (_steps.Length < _stepCount + count) Array.Resize(ref _steps, Math.Max(_stepCount + count, 2 * _steps.Length));
        int a = 0, b = 0, kept = 0;
        var best = long.MinValue;
        while (a < count || b < count)
        {
            var shifted = b < count ? _labels[b].Weight + weight : long.MaxValue;
            if (shifted > capacity)
            {
                b = count;
                if (a >= count) break;
                shifted = long.MaxValue;
            }

            var takeOld = a < count && (_labels[a].Weight < shifted || (_labels[a].Weight == shifted && _labels[a].Dual >= _labels[b].Dual + dual));
            var label = takeOld
                ? _labels[a++]
                : new Label(shifted, _labels[b].Real + weight, _labels[b].Dual + dual, -2);
            var parent = takeOld ? -2 : _labels[b++].Step;
            if (kept > 0 && (label.Dual + drop <= best || (label.Weight == _merged[kept - 1].Weight && label.Dual <= _merged[kept - 1].Dual))) continue;
            if (!takeOld)
            {
                _steps[_stepCount] = new Step(parent, demand, chunk);
                label = label with { Step = _stepCount++ };
            }

            _merged[kept++] = label;
            if (_tier.Covering || label.Weight > 0) best = Math.Max(best, label.Dual);
        }

        (_labels, _merged) = (_merged, _labels);
        return kept;
    }

    // One label a cell: the least weight and the largest dual of those that fall in it. No real label is better than its cell's.
    private int Coarsen(int count, long capacity)
    {
        var cell = capacity / (MostLabels / 8) + 1;
        var kept = 0;
        for (var i = 1; i < count; i++)
        {
            if (kept > 0 && _labels[i].Weight / cell == _labels[kept].Weight / cell)
            {
                if (_labels[i].Dual > _labels[kept].Dual) _labels[kept] = _labels[i] with { Weight = _labels[kept].Weight };
            }
            else _labels[++kept] = _labels[i];
        }

        return kept + 1;
    }

    private Priced Evaluate(int supply, int count, Duals duals)
    {
        var from = _problem.Supplies[supply];
        var capacity = _problem.Capacity(supply);
        var start = BaseCost(_tier, supply, duals);
        var least = long.MaxValue;
        int at = -1, lone = -1, whole = -1;
        if (_tier.Goal == Goal.GivenUp)
        {
            if (from.Bought is not null && _tier.Covering) (least, lone) = Lone(supply, start, duals);
            var floor = long.MinValue;
            var drop = from.Value.LargestDrop * _tier.Scale;
            for (var i = 1; i < count && _labels[i].Weight <= capacity; i++)
            {
                if (floor != long.MinValue && floor - drop - _labels[i].Dual >= least) continue;
                floor = start + _tier.Scale * Score.GivenUp(from.ValueBefore, from.Value.At(Math.Max(0, from.Length - _labels[i].Weight)));
                if (floor - _labels[i].Dual < least) (least, at, lone) = (floor - _labels[i].Dual, i, -1);
            }
        }
        else
        {
            for (var i = 1; i < count && _labels[i].Weight <= capacity; i++)
            {
                if (start - _labels[i].Dual < least) (least, at) = (start - _labels[i].Dual, i);
            }
        }

        for (var d = 0; d < from.Whole.Length; d++)
        {
            if (!from.Whole[d] || !_tier.Active[d]) continue;
            var reduced = start + (_tier.Goal == Goal.GivenUp ? _tier.Scale * from.ValueBefore : 0) - duals.Demand[d];
            if (reduced < least) (least, whole) = (reduced, d);
        }

        var pattern = whole >= 0 ? new Pattern(_problem, supply, [new Take(whole, 1)], whole: true)
            : lone >= 0 ? new Pattern(_problem, supply, [new Take(lone, 1)])
            : at >= 0 && _labels[at].Real <= capacity ? Read(supply, _labels[at].Step)
            : null;
        return new Priced(least, pattern, pattern is null ? long.MaxValue : ReducedCost(_tier, pattern, duals));
    }

    // A bought piece cannot stay uncut for the sake of its value, but the label without cuts hides those whose cuts earn nothing.
    // The best of these has one cut. (Where a longer length may be worth less, the label without cuts hides nothing.)
    private (long Least, int Demand) Lone(int supply, long start, Duals duals)
    {
        var from = _problem.Supplies[supply];
        var (least, demand) = (long.MaxValue, -1);
        for (var d = 0; d < from.Allows.Length; d++)
        {
            if (!from.Allows[d] || !_tier.Active[d] || duals.Demand[d] > 0 || _problem.Demands[d].Length > from.Length) continue;
            var left = Score.Remainder(from.Length, _problem.Demands[d].Length, 1, _problem.Kerf);
            var reduced = start + _tier.Scale * Score.GivenUp(0, from.Value.At(left)) - duals.Demand[d];
            if (reduced < least) (least, demand) = (reduced, d);
        }

        return (least, demand);
    }

    /// <summary>The exact reduced cost of a pattern.</summary>
    public static long ReducedCost(Tier tier, Pattern pattern, Duals duals)
    {
        var cost = tier.Cost(pattern) * tier.Scale - duals.Spend * pattern.Price;
        foreach (var take in pattern.Takes) cost -= take.Count * duals.Demand[take.Demand];
        return cost;
    }

    private Pattern Read(int supply, int step)
    {
        var takes = new Dictionary<int, int>();
        for (; step >= 0; step = _steps[step].Parent)
            takes[_steps[step].Demand] = takes.GetValueOrDefault(_steps[step].Demand) + _steps[step].Count;
        return new Pattern(_problem, supply, [.. takes.Select(pair => new Take(pair.Key, pair.Value))]);
    }

    private sealed record Group(int[] Supplies, int[] Demands, long Capacity);

    private readonly record struct Label(long Weight, long Real, long Dual, int Step);

    private readonly record struct Step(int Parent, int Demand, int Count);
}
