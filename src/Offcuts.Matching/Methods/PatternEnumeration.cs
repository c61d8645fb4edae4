namespace Offcuts.Matching.Methods;

/// <summary>
/// Every pattern that a plan of at most a given cost can contain.
/// <code>
/// pattern p of supply s can be in such a plan only if   L + reducedcost_p - min(0, least_s) &lt;= cost
/// </code>
/// where L is the bound and least_s the least reduced cost of the supply: using p once replaces one use that L counted at least_s.
/// So once all of them are known, the integer master over them alone decides the tier ("reduced-cost fixing" of columns).
/// A depth-first search over the demands, longest first. It turns back where even the best completion is too dear; the completion
/// comes from a table over (demand, used weight), whose weights are rounded down into cells, so that it never claims too much. Where saw
/// cuts have a cost, each cut earns less by it, and what may end exactly with the span earns it back once.
/// In tiers where cutting more from a piece costs nothing, only patterns to which nothing can be added are listed; ripping more does
/// cost something where rips are counted.
/// Cost: the number of patterns, times the demands. Gives up above the limits and says so.
/// </summary>
internal sealed class PatternEnumeration
{
    private const int Cells = 16384;

    private readonly Tier _tier;
    private readonly MaterialProblem _problem;
    private readonly Duals _duals;
    private readonly int _mostPatterns;
    private readonly List<Pattern> _found = [];
    private long _steps;

    // Of the supply being searched.
    private int _supply;
    private int[] _demands = [];
    private int[] _most = [];
    private int[] _takes = [];
    private long[] _dual = [];
    private bool[] _free = [];
    private long[] _fill = [];
    private long[][] _completion = [];
    private long _cell;
    private long _start;
    private long _limit;

    private PatternEnumeration(Tier tier, Duals duals, int mostPatterns, long mostSteps) =>
        (_tier, _problem, _duals, _mostPatterns, _steps) = (tier, tier.Problem, duals, mostPatterns, mostSteps);

    /// <summary>The patterns, or none where there are too many.</summary>
    /// <param name="tier">The tier.</param>
    /// <param name="relaxation">Duals and bound.</param>
    /// <param name="cost">The most a plan may cost.</param>
    /// <param name="mostPatterns">More than this is too many.</param>
    /// <param name="mostSteps">Most steps of the search.</param>
    public static IReadOnlyList<Pattern>? All(Tier tier, Relaxation relaxation, long cost, int mostPatterns, long mostSteps)
    {
        var search = new PatternEnumeration(tier, relaxation.Duals, mostPatterns, mostSteps);
        var gap = (Int128)cost * tier.Scale - relaxation.Bound;
        if (gap < 0) return [];
        for (var s = 0; s < tier.Problem.Supplies.Count; s++)
        {
            if (tier.SupplyCount[s] == 0) continue;
            if (!search.Supply(s, (long)gap + Math.Min(0, relaxation.Priced[s].Least))) return null;
        }

        search._found.Sort(Pattern.Compare);
        return search._found;
    }

    private bool Supply(int supply, long limit)
    {
        var from = _problem.Supplies[supply];
        _supply = supply;
        _limit = limit;
        _start = PricingKnapsack.BaseCost(_tier, supply, _duals);
        for (var d = 0; d < from.Whole.Length; d++)
        {
            if (!_tier.Active[d] || !from.Whole[d]) continue;
            var whole = new Pattern(_problem, supply, [new Take(d, 1)], whole: true);
            if (PricingKnapsack.ReducedCost(_tier, whole, _duals) <= limit) _found.Add(whole);
        }

        _demands = [.. Enumerable.Range(0, from.Allows.Length)
            .Where(d => _tier.Active[d] && from.Allows[d] && _problem.Demands[d].Length <= from.Length)
            .OrderByDescending(d => _problem.Weights[d])];
        if (_demands.Length == 0) return true;
        _most = [.. _demands.Select(d => (int)Math.Min(_tier.DemandCount[d], _problem.Capacity(supply) / _problem.Weights[d]))];
        _takes = new int[_demands.Length];
        _dual = [.. _demands.Select(d => _duals.Demand[d] - PricingKnapsack.SawDualOf(_tier) - _tier.RipCost(supply, d, whole: false, _duals.Rips))];
        _free = [.. _demands.Select(d => _tier.Goal != Goal.Rips || from.Rip(d, whole: false).Count == 0)];
        _fill = new long[_demands.Length + 1];
        for (var i = _demands.Length - 1; i >= 0; i--) _fill[i] = _fill[i + 1] + _most[i] * _problem.Weights[_demands[i]];
        Complete();
        return Search(0, 0, 0, long.MaxValue);
    }

    // The most that (sum of duals - cost) can become from demand i on, with at least so much weight used before.
    private void Complete()
    {
        var from = _problem.Supplies[_supply];
        var capacity = _problem.Capacity(_supply);
        var grid = _demands.Select(d => _problem.Weights[d]).Aggregate(Bounds.Gcd);
        _cell = Math.Max(grid, capacity / Cells + 1);
        if (capacity / grid < 2 * Cells) _cell = grid;
        var cells = (int)(capacity / _cell) + 1;
        var rounded = _cell == grid ? 0 : (_demands.Max(d => capacity / _problem.Weights[d]) + 1) * _cell;
        _completion = new long[_demands.Length + 1][];
        var last = new long[cells];
        for (var c = 0; c < cells; c++)
        {
            last[c] = -_start;
            if (_tier.Goal != Goal.GivenUp) continue;
            var rest = Math.Max(0, from.Length - c * _cell);
            last[c] -= _tier.Scale * (Score.GivenUp(from.ValueBefore, from.Value.At(rest)) - from.Value.LargestDrop);
            if (capacity - c * _cell <= rounded) last[c] += PricingKnapsack.SawDualOf(_tier);
        }

        _completion[^1] = last;
        for (var i = _demands.Length - 1; i >= 0; i--)
        {
            var row = (long[])_completion[i + 1].Clone();
            var step = (int)(_problem.Weights[_demands[i]] / _cell);
            var dual = _dual[i];
            for (var copy = 0; copy < _most[i]; copy++)
            {
                for (var c = 0; c + step < cells; c++) row[c] = Math.Max(row[c], dual + row[c + step]);
            }

            _completion[i] = row;
        }
    }

    private bool Search(int i, long weight, long dual, long shortestSkipped)
    {
        if (--_steps < 0) return false;
        if (-(dual + _completion[i][weight / _cell]) > _limit) return true;
        var room = _problem.Capacity(_supply) - weight;
        var maximal = _tier.Goal != Goal.GivenUp;
        if (maximal && shortestSkipped != long.MaxValue && room - _fill[i] >= shortestSkipped) return true;
        if (i == _demands.Length) return weight == 0 || Emit();

        var own = _problem.Weights[_demands[i]];
        var most = (int)Math.Min(_most[i], room / own);
        for (var count = most; count >= 0; count--)
        {
            _takes[i] = count;
            var skipped = count < _most[i] && _free[i] ? Math.Min(shortestSkipped, own) : shortestSkipped;
            if (!Search(i + 1, weight + count * own, dual + count * _dual[i], skipped)) return false;
        }

        _takes[i] = 0;
        return true;
    }

    private bool Emit()
    {
        var takes = new List<Take>();
        for (var i = 0; i < _demands.Length; i++)
        {
            if (_takes[i] > 0) takes.Add(new Take(_demands[i], _takes[i]));
        }

        var pattern = new Pattern(_problem, _supply, takes);
        if (PricingKnapsack.ReducedCost(_tier, pattern, _duals) > _limit) return true;
        _found.Add(pattern);
        return _found.Count <= _mostPatterns;
    }
}
