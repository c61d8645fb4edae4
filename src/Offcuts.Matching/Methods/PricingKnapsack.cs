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
/// less: what is left over never loses by being longer (<see cref="Tier.Drop"/> tells by how much it may, where a
/// longer store length costs less). Where saw cuts have a cost, each cut's dual is less by it, and labels that end exactly at a span's
/// end earn it back once: a label is only dropped for one that earns so much more, unless no further cuts can bring it to such an end
/// (by the greatest common divisor of their weights). Likewise a ripped cut's dual is less by what ripping costs (<see cref="Tier.RipCost"/>).
/// One list serves all supplies with the same permissions and the same rips; each then adds its own cost.
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

    // Of the labels being made: what the next cut earns for its weight, and below what they are of no use.
    private double _earning;
    private (long Capacity, double Least)[] _least = [];

    // Of each supply, what was best when it was asked last.
    private readonly Pattern?[] _last;

    // How much more than its label says a set of cuts can weigh, once labels were rounded down.
    private long _slack;

    public PricingKnapsack(Tier tier)
    {
        _tier = tier;
        _problem = tier.Problem;
        _last = new Pattern?[_problem.Supplies.Count];
        _groups = Enumerable.Range(0, _problem.Supplies.Count)
            .GroupBy(s => Likeness(tier, s))
            .Select(group => new Group(
                [.. group],
                [.. Enumerable.Range(0, _problem.Demands.Count).Where(d => tier.Active[d] && _problem.Supplies[group.First()].Allows[d])],
                group.Where(s => tier.SupplyCount[s] > 0).Select(s => _problem.Capacity(s)).DefaultIfEmpty().Max()))
            .ToList();
    }

    /// <summary>Equal for supplies that serve the same demands, and rip them alike.</summary>
    public static string Likeness(Tier tier, int supply)
    {
        var from = tier.Problem.Supplies[supply];
        var allowed = string.Concat(from.Allows.Select((allowed, d) => allowed && tier.Active[d] ? '1' : '0'));
        return from.Rips is { } rips ? $"{allowed} {string.Join(' ', rips)}" : allowed;
    }

    /// <summary>Prices every supply.</summary>
    public Priced[] Price(Duals duals)
    {
        var found = new Priced[_problem.Supplies.Count];
        foreach (var group in _groups)
        {
            var count = BuildLabels(group, [.. duals.Demand.Select((dual, d) => dual - SawDual - _tier.RipCost(group.Supplies[0], d, whole: false, duals.Rips))], duals);
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

    /// <summary>
    /// The least that a pattern costs before its cuts earn anything, where all that is known of them is what they weigh at least and at most:
    /// its base cost, what it gives up of the span, and a saw cut less where it may end with the span.
    /// </summary>
    public static long LoadCost(Tier tier, int supply, Duals duals, long lightest, long heaviest)
    {
        var from = tier.Problem.Supplies[supply];
        var cost = BaseCost(tier, supply, duals);
        if (heaviest >= tier.Problem.Capacity(supply)) cost -= SawDualOf(tier);
        if (tier.Goal != Goal.GivenUp) return cost;
        return cost + tier.Scale * Score.GivenUp(from.ValueBefore, from.Value.Most(Math.Max(0, from.Length - heaviest), Math.Max(0, from.Length - lightest)));
    }

    /// <summary>What each cut of a pattern earns less for the saw, and a pattern that ends with its span earns back once.</summary>
    public static long SawDualOf(Tier tier) => tier.Goal == Goal.GivenUp ? tier.Problem.SawCost * tier.Scale : 0;

    private long SawDual => SawDualOf(_tier);

    private int BuildLabels(Group group, long[] dual, Duals duals)
    {
        _stepCount = 0;
        _slack = 0;
        _labels[0] = new Label(0, 0, 0, -1);
        var count = 1;
        var drop = _tier.Covering ? 0 : _tier.Drop * _tier.Scale;
        var demands = group.Demands.Where(d => dual[d] + SawDual > 0 || !_tier.Covering).ToArray();
        var bound = _tier.Goal == Goal.GivenUp ? null : Bound(group, dual, duals, ref demands);
        var later = LaterWeights(demands);
        for (var i = 0; i < demands.Length; i++)
        {
            var d = demands[i];
            var left = (int)Math.Min(_tier.DemandCount[d], group.Capacity / _problem.Weights[d]);
            for (var chunk = 1; left > 0; chunk *= 2)
            {
                chunk = Math.Min(chunk, left);
                left -= chunk;
                var ends = Ends(group, left > 0 ? Bounds.Gcd(later[i + 1], _problem.Weights[d]) : later[i + 1]);
                var next = left > 0 ? i : i + 1;
                _earning = next < demands.Length ? dual[demands[next]] / (double)_problem.Weights[demands[next]] : 0;
                _least = bound?.Least(_earning) ?? [];
                count = Merge(count, d, chunk, chunk * _problem.Weights[d], chunk * dual[d], group.Capacity, drop, ends);
                if (bound is not null && _slack == 0) Learn(bound, count);
                if (count > MostLabels) count = Coarsen(count, group.Capacity);
            }
        }

        return count;
    }

    // Where value plays no part: cuts that earn most for their weight first, so that labels which can't become the best any more are seen.
    private KnapsackBound Bound(Group group, long[] dual, Duals duals, ref int[] demands)
    {
        demands = [.. demands.OrderByDescending(d => dual[d] / (double)_problem.Weights[d]).ThenBy(d => d)];
        return new KnapsackBound(
            group.Supplies.Where(s => _tier.SupplyCount[s] > 0).Select(s => (_problem.Capacity(s), Known(s))),
            [.. demands.Select(d => (_problem.Weights[d], dual[d], _tier.DemandCount[d]))]);

        // Duals change little from one time to the next, and what was best then is mostly good now.
        long Known(int supply) => _last[supply] is { } last ? BaseCost(_tier, supply, duals) - ReducedCost(_tier, last, duals) : 0;
    }

    private void Learn(KnapsackBound bound, int count)
    {
        var at = 0;
        for (var i = 1; i < count; i++) at = bound.Passed(at, _labels[i].Weight, _labels[i - 1].Dual);
        bound.Passed(at, long.MaxValue, _labels[count - 1].Dual);
    }

    // Of each demand and all after it, the greatest common divisor of the weights; 0 of none.
    private long[] LaterWeights(int[] demands)
    {
        var later = new long[demands.Length + 1];
        for (var i = demands.Length - 1; i >= 0; i--) later[i] = Bounds.Gcd(later[i + 1], _problem.Weights[demands[i]]);
        return later;
    }

    // The weights from which steps of so much can lead exactly to the end of some span; none where that earns nothing.
    private SpanEnds? Ends(Group group, long step)
    {
        if (SawDual == 0) return null;
        var capacities = group.Supplies.Where(s => _tier.SupplyCount[s] > 0).Select(_problem.Capacity);
        return new SpanEnds(step, [.. capacities.Select(capacity => step == 0 ? capacity : capacity % step)]);
    }

    // What the loop asks of each label stands before it: it is where most of the time of column generation goes.
    private int Merge(int count, int demand, int chunk, long weight, long dual, long capacity, long drop, SpanEnds? ends)
    {
        if (_merged.Length < 2 * count) Array.Resize(ref _merged, Math.Max(2 * count, 2 * _merged.Length));
        if (_steps.Length < _stepCount + count) Array.Resize(ref _steps, Math.Max(_stepCount + count, 2 * _steps.Length));
        var (labels, merged, least, earning) = (_labels, _merged, _least, _earning);
        var (saw, emptyCounts) = (SawDual, _tier.Covering && SawDual == 0);
        int a = 0, b = 0, kept = 0, span = 0;
        var best = long.MinValue;
        while (a < count || b < count)
        {
            var shifted = b < count ? labels[b].Weight + weight : long.MaxValue;
            if (shifted > capacity)
            {
                b = count;
                if (a >= count) break;
                shifted = long.MaxValue;
            }

            var takeOld = a < count && (labels[a].Weight < shifted || (labels[a].Weight == shifted && labels[a].Dual >= labels[b].Dual + dual));
            var from = takeOld ? a++ : b++;
            var (weighs, earns) = takeOld ? (labels[from].Weight, labels[from].Dual) : (shifted, labels[from].Dual + dual);
            while (span < least.Length && least[span].Capacity < weighs) span++;
            if (kept > 0 && ((span < least.Length && earns - earning * weighs < least[span].Least) || (merged[kept - 1].Weight == weighs && earns <= merged[kept - 1].Dual) || Beaten())) continue;
            if (takeOld) merged[kept++] = labels[from];
            else
            {
                _steps[_stepCount] = new Step(labels[from].Step, demand, chunk);
                merged[kept++] = new Label(weighs, labels[from].Real + weight, earns, _stepCount++);
            }

            if (emptyCounts || weighs > 0) best = Math.Max(best, earns);

            bool Beaten() => earns + drop <= best && (ends is null || earns + drop + saw <= best || (_slack == 0 && !ends.Reached(weighs)));
        }

        (_labels, _merged) = (merged, labels);
        return kept;
    }

    // One label a cell: the least weight and the largest dual of those that fall in it. No real label is better than its cell's.
    private int Coarsen(int count, long capacity)
    {
        var cell = capacity / (MostLabels / 8) + 1;
        _slack += cell;
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
            if (from.Bought is not null && _tier.Covering && SawDual == 0) (least, lone) = Lone(supply, start, duals);
            var floor = long.MinValue;
            var drop = from.LargestDrop * _tier.Scale;
            for (var i = 1; i < count && _labels[i].Weight <= capacity; i++)
            {
                var earned = capacity - _labels[i].Weight <= _slack ? _labels[i].Dual + SawDual : _labels[i].Dual;
                if (floor != long.MinValue && floor - drop - earned >= least) continue;
                floor = start + _tier.Scale * Score.GivenUp(from.ValueBefore, from.Value.At(Math.Max(0, from.Length - _labels[i].Weight)));
                if (floor - earned < least) (least, at, lone) = (floor - earned, i, -1);
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
            var reduced = start + (_tier.Goal == Goal.GivenUp ? _tier.Scale * from.ValueBefore : 0) - duals.Demand[d] + _tier.RipCost(supply, d, whole: true, duals.Rips);
            if (reduced < least) (least, whole) = (reduced, d);
        }

        // Where it must be used, the best may be a cut that earns nothing, which has no label.
        if (_tier.SupplyLeast[supply] > 0) least = Math.Min(least, LeastUnlabelled(supply, duals));

        var pattern = whole >= 0 ? new Pattern(_problem, supply, [new Take(whole, 1)], whole: true)
            : lone >= 0 ? new Pattern(_problem, supply, [new Take(lone, 1)])
            : at >= 0 && _labels[at].Real <= capacity ? Read(supply, _labels[at].Step)
            : null;
        if (pattern is { Whole: false }) _last[supply] = pattern;
        return new Priced(least, pattern, pattern is null ? long.MaxValue : ReducedCost(_tier, pattern, duals));
    }

    // A bought piece cannot stay uncut for the sake of its value, but the label without cuts hides those whose cuts earn nothing.
    // The best of these has one cut. (Where a longer length may be worth less, the label without cuts hides nothing. Where a saw cut
    // costs more than any piece is worth, the label without cuts hides nothing either, and cuts that earn nothing never pay.)
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

    // Of cuts that earn nothing one alone is the best, since another one only costs more.
    private long LeastUnlabelled(int supply, Duals duals)
    {
        var from = _problem.Supplies[supply];
        var least = long.MaxValue;
        for (var d = 0; d < from.Allows.Length && _tier.Covering; d++)
        {
            if (!from.Allows[d] || !_tier.Active[d] || duals.Demand[d] > _tier.RipCost(supply, d, whole: false, duals.Rips) || _problem.Demands[d].Length > from.Length) continue;
            least = Math.Min(least, ReducedCost(_tier, new Pattern(_problem, supply, [new Take(d, 1)]), duals));
        }

        return least;
    }

    /// <summary>The exact reduced cost of a pattern.</summary>
    public static long ReducedCost(Tier tier, Pattern pattern, Duals duals)
    {
        var cost = tier.Cost(pattern) * tier.Scale - duals.Spend * pattern.Price - duals.Rips * pattern.Rips;
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

    private sealed record SpanEnds(long Step, HashSet<long> Rests)
    {
        public bool Reached(long weight) => Rests.Contains(Step == 0 ? weight : weight % Step);
    }

    private sealed record Group(int[] Supplies, int[] Demands, long Capacity);

    private readonly record struct Label(long Weight, long Real, long Dual, int Step);

    private readonly record struct Step(int Parent, int Demand, int Count);
}
