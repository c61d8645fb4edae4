using System.Numerics;

namespace Offcuts.Matching.Methods;

/// <summary>
/// Every pattern that a plan of at most a given cost can contain: those within <see cref="ReducedCostLimits"/>. Once all of them are
/// known, the integer master over them alone decides the tier ("reduced-cost fixing" of columns).
/// A depth-first search over the demands, longest first. It turns back where even the best completion is too dear; the completion comes
/// from a table over (demand, cells filled), in which so many cells weigh the least that they can, so that it never claims too much. Where
/// saw cuts have a cost, each cut earns less by it, and what may end exactly with the span earns it back once.
/// In tiers where cutting more from a piece costs nothing, only patterns to which nothing can be added are listed; ripping more does
/// cost something where rips are counted.
/// Cost: the number of patterns, times the demands. Above the limits it gives up and says so, or leaves out the dearest and says how far the list reaches.
/// </summary>
internal sealed class PatternEnumeration
{
    /// <summary>Steps of the search that one pattern may take.</summary>
    public const long StepsAPattern = 80;

    private const int MostRenewals = 3;
    private const int NearerEachTime = 8;

    private readonly Tier _tier;
    private readonly MaterialProblem _problem;
    private readonly Limit[] _limits;
    private readonly int _mostPatterns;
    private readonly long _mostSteps;

    // The dearest first, each with the least cost of a plan that can have it.
    private readonly PriorityQueue<Pattern, long> _found = new(Comparer<long>.Create((one, other) => other.CompareTo(one)));
    private readonly long _least;
    private long _dearest;
    private long _steps;
    private int _renewals;

    // Of the supply being searched.
    private int _supply;
    private int[] _demands = [];
    private int[] _most = [];
    private int[] _takes = [];
    private bool[] _free = [];
    private long[] _fill = [];

    private PatternEnumeration(Tier tier, ReducedCostLimits limits, long least, long most, int mostPatterns, long mostSteps)
    {
        (_tier, _problem, _least, _dearest, _mostPatterns, _mostSteps, _steps) = (tier, tier.Problem, least, most, mostPatterns, mostSteps, mostSteps);
        _limits = [.. tier.Earlier.Select(bound => bound.Limits).Prepend(limits).Select(one => new Limit(one))];
    }

    /// <summary>The patterns, or none where there are too many.</summary>
    /// <param name="tier">The tier.</param>
    /// <param name="limits">How dear the patterns may be.</param>
    /// <param name="mostPatterns">More than this is too many.</param>
    /// <param name="mostSteps">Most steps of the search.</param>
    public static IReadOnlyList<Pattern>? All(Tier tier, ReducedCostLimits limits, int mostPatterns, long mostSteps) =>
        new PatternEnumeration(tier, limits, 0, 0, mostPatterns, mostSteps).Listed();

    /// <summary>
    /// The patterns of plans of at most as much as can be listed: the optimum is mostly close to the bound, and patterns multiply with the
    /// gap. None where even those at the bound are too many.
    /// </summary>
    /// <param name="tier">The tier.</param>
    /// <param name="guide">Tells how dear they may be.</param>
    /// <param name="bound">The least that a plan may cost.</param>
    /// <param name="most">The most that it may.</param>
    /// <param name="limits">How many patterns are not too many; the next is tried where there are more at the bound, or where the level is not worth a decision.</param>
    /// <param name="worthwhile">The least level that is worth one.</param>
    public static (long Most, IReadOnlyList<Pattern> Patterns)? Widest(
        Tier tier, Guide guide, long bound, long most, IEnumerable<int> limits, long worthwhile = long.MinValue)
    {
        (long Most, IReadOnlyList<Pattern> Patterns)? widest = null;
        foreach (var limit in limits)
        {
            var search = new PatternEnumeration(tier, guide.Limits(most), Math.Min(bound, most), most, limit, StepsAPattern * limit + 500_000);
            if (search.Listed() is { } patterns && (widest is null || search._dearest > widest.Value.Most)) widest = (search._dearest, patterns);
            if (widest is { } found && found.Most >= worthwhile) break;
        }

        return widest;
    }

    private IReadOnlyList<Pattern>? Listed()
    {
        for (var s = 0; s < _problem.Supplies.Count; s++)
        {
            if (_tier.SupplyCount[s] > 0 && !Supply(s)) return null;
        }

        Pattern[] found = [.. _found.UnorderedItems.Select(one => one.Element)];
        Array.Sort(found, Pattern.Compare);
        return found;
    }

    // What costs more than this is no longer looked for. False where less than the bound would be left.
    private bool Narrowed(long most)
    {
        if (most < _least) return false;
        _limits[0].Narrow(_dearest - most);
        _dearest = most;
        while (_found.TryPeek(out _, out var level) && level > most) _found.Dequeue();
        return true;
    }

    private bool Supply(int supply)
    {
        var from = _problem.Supplies[supply];
        _supply = supply;
        foreach (var limit in _limits) limit.Enter(supply);
        for (var d = 0; d < from.Whole.Length; d++)
        {
            if (!_tier.Active[d] || !from.Whole[d]) continue;
            var whole = new Pattern(_problem, supply, [new Take(d, 1)], whole: true);
            if (!Found(whole)) return false;
        }

        _demands = [.. Enumerable.Range(0, from.Allows.Length)
            .Where(d => _tier.Active[d] && from.Allows[d] && _problem.Demands[d].Length <= from.Length)
            .OrderByDescending(d => _problem.Weights[d])];
        if (_demands.Length == 0) return true;
        _most = [.. _demands.Select(d => (int)Math.Min(_tier.DemandCount[d], _problem.Capacity(supply) / _problem.Weights[d]))];
        _takes = new int[_demands.Length];
        _free = [.. _demands.Select(d => _tier.Goal != Goal.Rips || from.Rip(d, whole: false).Count == 0)];
        _fill = new long[_demands.Length + 1];
        for (var i = _demands.Length - 1; i >= 0; i--) _fill[i] = _fill[i + 1] + _most[i] * _problem.Weights[_demands[i]];
        foreach (var limit in _limits) limit.Complete(_demands, _most);
        return Search(0, 0, long.MaxValue);
    }

    private bool Search(int i, long weight, long shortestSkipped)
    {
        if (--_steps < 0)
        {
            if (_dearest <= _least || ++_renewals > MostRenewals || !Narrowed(_least + (_dearest - _least) / NearerEachTime)) return false;
            _steps = _mostSteps;
        }

        foreach (var limit in _limits)
        {
            if (limit.TooDear(i)) return true;
        }

        var room = _problem.Capacity(_supply) - weight;
        var maximal = _tier.Goal != Goal.GivenUp;
        if (maximal && shortestSkipped != long.MaxValue && room - _fill[i] >= shortestSkipped) return true;
        if (i == _demands.Length) return weight == 0 || Emit();

        var own = _problem.Weights[_demands[i]];
        var most = (int)Math.Min(_most[i], room / own);
        for (var count = most; count >= 0; count--)
        {
            _takes[i] = count;
            foreach (var limit in _limits) limit.Take(i, count);
            var skipped = count < _most[i] && _free[i] ? Math.Min(shortestSkipped, own) : shortestSkipped;
            if (!Search(i + 1, weight + count * own, skipped)) return false;
        }

        _takes[i] = 0;
        return true;
    }

    private bool Emit()
    {
        var takes = new Take[_takes.Count(count => count > 0)];
        for (int i = 0, at = 0; i < _demands.Length; i++)
        {
            if (_takes[i] > 0) takes[at++] = new Take(_demands[i], _takes[i]);
        }

        return Found(new Pattern(_problem, _supply, takes));
    }

    // One that is too dear is left out. Where it is one too many, those that are dearest go.
    private bool Found(Pattern pattern)
    {
        var spare = _limits[0].Spare(pattern);
        for (var i = 0; i < _limits.Length; i++)
        {
            if ((i == 0 ? spare : _limits[i].Spare(pattern)) < 0) return true;
        }

        _found.Enqueue(pattern, _dearest - spare / _tier.Scale);
        return _found.Count <= _mostPatterns || (_found.TryPeek(out _, out var dearest) && Narrowed(dearest - 1));
    }

    // How dear a pattern may be by one relaxation, for the supply being searched.
    private sealed class Limit(ReducedCostLimits limits)
    {
        private readonly Duals _duals = limits.Duals;
        private LoadLimits _load = new([], [], [], []);
        private int _supply;
        private int[] _step = [];
        private long[] _dual = [];
        private readonly List<long[]> _completion = [];
        private int _count;

        // So much less than the limits say is the most.
        private long _below;

        // Cells filled and sum of duals before each demand.
        private int[] _cells = [];
        private long[] _sum = [];

        public void Enter(int supply) => (_supply, _load) = (supply, limits.Of(supply));

        // The most that (limit + sum of duals - cost) can become from demand i on, with so many cells filled before.
        public void Complete(int[] demands, int[] most)
        {
            var tier = limits.Tier;
            _dual = [.. demands.Select(d => _duals.Demand[d] - PricingKnapsack.SawDualOf(tier) - tier.RipCost(_supply, d, whole: false, _duals.Rips))];
            _step = [.. demands.Select(d => _load.Cells[d])];
            (_cells, _sum) = (new int[demands.Length + 1], new long[demands.Length + 1]);
            var capacity = tier.Problem.Capacity(_supply);
            _count = _load.Most.Length;
            while (_completion.Count <= demands.Length) _completion.Add([]);
            var last = Row(demands.Length);
            for (var c = 0; c < _count; c++)
            {
                last[c] = _load.Lightest[c] > capacity || _load.Most[c] <= -StateSpaceRelaxation.Never / 2
                    ? -StateSpaceRelaxation.Never
                    : _load.Most[c] - PricingKnapsack.LoadCost(tier, _supply, _duals, _load.Lightest[c], _load.Heaviest[c]);
            }

            for (var i = demands.Length - 1; i >= 0; i--)
            {
                var row = Row(i);
                _completion[i + 1].AsSpan(0, _count).CopyTo(row);
                for (var copy = 0; copy < most[i]; copy++) Extend(row.AsSpan(0, _count), _step[i], _dual[i]);
            }
        }

        // Used for one supply after the other: there are many, and each takes hundreds of kilobytes.
        private long[] Row(int i) => _completion[i].Length >= _count ? _completion[i] : _completion[i] = new long[_count];

        // Each cell becomes the better of itself and one copy more; what lies further on is still as it was when a cell is reached.
        private static void Extend(Span<long> row, int step, long dual)
        {
            var c = 0;
            var added = new Vector<long>(dual);
            for (; step >= Vector<long>.Count && c + step + Vector<long>.Count <= row.Length; c += Vector<long>.Count)
                Vector.Max(new Vector<long>(row[c..]), new Vector<long>(row[(c + step)..]) + added).CopyTo(row[c..]);
            for (; c + step < row.Length; c++) row[c] = Math.Max(row[c], dual + row[c + step]);
        }

        public void Take(int i, int count) => (_cells[i + 1], _sum[i + 1]) = (_cells[i] + count * _step[i], _sum[i] + count * _dual[i]);

        public bool TooDear(int i) => _cells[i] >= _count || _sum[i] + _completion[i][_cells[i]] < _below;

        public void Narrow(long by) => _below += by * limits.Tier.Scale;

        // By so much may a plan with the pattern cost less than the most, in multiples of 1/Scale; below 0 where it costs more.
        public long Spare(Pattern pattern)
        {
            var cells = 0;
            foreach (var take in pattern.Takes) cells += take.Count * _load.Cells[take.Demand];
            return cells < _load.Most.Length ? _load.Most[cells] - PricingKnapsack.ReducedCost(limits.Tier, pattern, _duals) - _below : long.MinValue;
        }
    }
}
