using System.Runtime.InteropServices;

namespace Offcuts.Matching.Methods;

/// <summary>Which spans come first in a <see cref="CountProgram"/>.</summary>
internal enum SpanOrder
{
    /// <summary>They tell states apart least, and the bound of what is to come knows the others.</summary>
    FewPatternsFirst,

    /// <summary>Most cuts are settled soon, and what is left of the spans can serve few of the others.</summary>
    ManyPatternsFirst,
}

/// <summary>
/// Exact dynamic programming: the state is how many of each demand have been filled (and what has been spent and ripped), the steps are the spans
/// one after the other.
/// <code>
/// f_0(0) = 0      f_k(v + a_p) = min( f_(k-1)(v) + excess_p )   over the patterns p of span k, and f_(k-1)(v) + idle_k for leaving it alone
/// excess_p = reduced cost of p - min(0, least reduced cost of its supply)        idle_k = - min(0, least reduced cost of the supply)
/// </code>
/// What a plan costs is the bound plus all its excesses, so a state is dropped once its excess, and the least that its open demands
/// will still add to it, are beyond what the plan may cost; likewise where the open demands are longer than the spans to come. Plans
/// that cut the same from different spans become one state: that is where branch and bound has to fight one span after the other.
/// Source: dynamic programming with state-space reduction by bounds, Martello and Toth, 1990 (from memory).
/// Cost: states times the patterns that still fit; gives up above a number of states and says so.
/// </summary>
internal sealed class CountProgram
{
    private readonly Tier _tier;
    private readonly IReadOnlyList<Pattern> _pool;
    private readonly Relaxation _relaxation;
    private readonly StateSpaceRelaxation? _cells;
    private readonly long _budget;
    private readonly long _most;
    private readonly int[] _demands;
    private readonly int[] _offset;
    private readonly ulong[] _mask;
    private readonly long[] _needs;
    private readonly int _ripOffset;
    private readonly ulong _ripMask;
    private readonly int _spendOffset;
    private readonly long _spendUnit = 1;
    private readonly int _bits;
    private long _tries;

    // In the last tier the pool holds every part of its patterns too, so each demand can be filled to the copy.
    private readonly bool _exact;
    private readonly SpanOrder _order;

    private CountProgram(Tier tier, IReadOnlyList<Pattern> pool, Relaxation relaxation, StateSpaceRelaxation? cells, long most, SpanOrder order)
    {
        (_tier, _pool, _relaxation, _cells, _most, _order) = (tier, pool, relaxation, cells, most, order);
        _exact = tier.Goal == Goal.GivenUp;
        _budget = most * tier.Scale - relaxation.Bound;
        _demands = [.. Enumerable.Range(0, tier.DemandCount.Length).Where(d => tier.Active[d] && tier.DemandCount[d] > 0)];
        (_offset, _mask) = (new int[tier.DemandCount.Length], new ulong[tier.DemandCount.Length]);
        _needs = [.. Enumerable.Range(0, tier.DemandCount.Length).Select(d => tier.MostLeft[d] > 0 ? 0 : tier.Problem.Weights[d])];
        foreach (var d in _demands)
        {
            (_offset[d], _mask[d]) = (_bits, (1UL << Width(tier.DemandCount[d])) - 1);
            _bits += Width(tier.DemandCount[d]);
        }

        // Two patterns that are each within the cap never add up to more than its double.
        (_ripOffset, _ripMask) = (_bits, (1UL << Width(2L * (tier.RipCap ?? 0))) - 1);
        _bits += Width(2L * (tier.RipCap ?? 0));
        _spendOffset = _bits;
        if (tier.SpendCap is not > 0) return;
        _spendUnit = pool.Select(pattern => pattern.Price).Where(price => price > 0).Aggregate(0L, Bounds.Gcd);
        if (_spendUnit > 0) _bits += Width(tier.SpendCap.Value / _spendUnit);
    }

    /// <summary>The best plan made of the pool, if there is one of at most that cost; and whether the search came to its end.</summary>
    /// <param name="tier">Rows and costs.</param>
    /// <param name="pool">All patterns of all plans that cost at most <paramref name="most"/>.</param>
    /// <param name="relaxation">Duals and bound.</param>
    /// <param name="cells">The state-space relaxation at the same duals, where there is one.</param>
    /// <param name="most">Only plans of at most this cost are looked for.</param>
    /// <param name="mostStates">More states than this after one span are too many.</param>
    /// <param name="mostTries">Most patterns that are tried on states.</param>
    /// <param name="effort">Limit.</param>
    /// <param name="order">Which spans come first.</param>
    public static IntegerOutcome Solve(
        Tier tier, IReadOnlyList<Pattern> pool, Relaxation relaxation, StateSpaceRelaxation? cells, long most, int mostStates, long mostTries, Effort effort,
        SpanOrder order = SpanOrder.FewPatternsFirst)
    {
        var program = new CountProgram(tier, pool, relaxation, cells, most, order) { _tries = mostTries };

        // One bit stays free, so that adding what is too dear can't be lost before it is seen to be.
        return program._bits > 63 ? new IntegerOutcome(null, false) : program.Run(mostStates, effort);
    }

    private static int Width(long most) => 64 - (int)long.LeadingZeroCount(most);

    // One span: its patterns, what it costs to leave it alone, and whether that is ruled out.
    private sealed record Step(int Supply, Choice[] Choices, long Idle, bool Must);

    // A pattern: what it adds to the state, what it costs beyond the bound, and the cuts of which there is only one.
    private readonly record struct Choice(int Pattern, ulong Adds, long Excess, ulong Single, Take[] Counted, long Weight, int Cells);

    private sealed record Layer(int[] From, int[] Pattern);

    private IntegerOutcome Run(int mostStates, Effort effort)
    {
        if (_budget < 0) return new IntegerOutcome(null, true);
        var steps = Steps();
        var (shares, rooms) = StillToCome(steps);
        var rest = _exact && _cells is not null ? Completion(steps) : null;
        var layers = new List<Layer>();
        var keys = new List<ulong> { 0 };
        var excess = new List<long> { 0 };
        var total = 1L;
        for (var k = 0; k < steps.Length; k++)
        {
            if (effort.Over) return new IntegerOutcome(null, false);
            (keys, excess, var layer) = Advance(steps[k], shares[k + 1], rooms[k + 1], rest?[k + 1], keys, excess, mostStates);
            layers.Add(layer);
            total += keys.Count;
            if (keys.Count >= mostStates || total > 4L * mostStates || _tries < 0) return new IntegerOutcome(null, false);
        }

        return new IntegerOutcome(End(layers, keys), true);
    }

    private Step[] Steps()
    {
        var bySupply = _pool.Select((pattern, p) => (pattern, p)).ToLookup(at => at.pattern.Supply);
        var steps = new List<Step>();
        for (var s = 0; s < _tier.SupplyCount.Length; s++)
        {
            var counted = Math.Min(0, _relaxation.Priced[s].Least);
            var choices = bySupply[s].Where(at => _tier.RipCap is null || at.pattern.Rips <= _tier.RipCap).Select(at => Chosen(at.pattern, at.p, counted)).ToArray();
            var least = _tier.SupplyLeast[s];
            if (choices.Length == 0 && counted == 0 && least == 0) continue;
            steps.AddRange(Enumerable.Repeat(new Step(s, choices, -counted, true), least));
            steps.AddRange(Enumerable.Repeat(new Step(s, choices, -counted, false), Math.Min(_tier.Copies, _tier.SupplyCount[s]) - least));
        }

        return _order == SpanOrder.FewPatternsFirst ? [.. steps.OrderBy(step => step.Choices.Length)] : [.. steps.OrderByDescending(step => step.Choices.Length)];
    }

    private Choice Chosen(Pattern pattern, int number, long counted)
    {
        ulong adds = 0, single = 0;
        var several = new List<Take>();
        foreach (var take in pattern.Takes)
        {
            adds += (ulong)take.Count << _offset[take.Demand];
            if (_tier.DemandCount[take.Demand] == 1) single |= 1UL << _offset[take.Demand];
            else several.Add(take);
        }

        if (_tier.RipCap > 0) adds += (ulong)pattern.Rips << _ripOffset;
        if (_tier.SpendCap is > 0 && _spendUnit > 0) adds += (ulong)(pattern.Price / _spendUnit) << _spendOffset;
        var excess = PricingKnapsack.ReducedCost(_tier, pattern, _relaxation.Duals) - counted;
        return new Choice(number, adds, excess, single, [.. several], pattern.Weight,
            _cells is null ? 0 : pattern.Takes.Sum(take => take.Count * _cells.Cells[take.Demand]));
    }

    // From each step on: the least excess that a copy of each demand adds, and how long the spans are together.
    private (long[][] Shares, long[] Rooms) StillToCome(Step[] steps)
    {
        var shares = new long[steps.Length + 1][];
        var rooms = new long[steps.Length + 1];
        shares[^1] = [.. Enumerable.Range(0, _tier.DemandCount.Length).Select(d => _tier.MostLeft[d] > 0 ? Math.Min(Leaving(d), _budget + 1) : _budget + 1)];
        for (var k = steps.Length - 1; k >= 0; k--)
        {
            shares[k] = (long[])shares[k + 1].Clone();
            foreach (var choice in steps[k].Choices)
            {
                var pattern = _pool[choice.Pattern];
                foreach (var take in pattern.Takes) shares[k][take.Demand] = Math.Min(shares[k][take.Demand], choice.Excess / pattern.Cuts);
            }

            rooms[k] = rooms[k + 1] + _tier.Problem.Capacity(steps[k].Supply);
        }

        return (shares, rooms);
    }

    // What a copy left unfilled costs beyond the bound.
    private long Leaving(int demand) => Math.Max(0, _tier.LeftCost[demand] * _tier.Scale
        - _relaxation.Duals.Demand[demand] - _relaxation.Duals.Left.GetValueOrDefault(_tier.Problem.Demands[demand].Stage));

    // By open cells, the least excess of the spans from each step on.
    private long[][] Completion(Step[] steps)
    {
        var rest = _cells!.Completion([.. steps.Select(step => (step.Supply, step.Must))]);
        var idle = 0L;
        for (var k = steps.Length - 1; k >= 0; k--)
        {
            idle += steps[k].Idle;
            for (var c = 0; c < rest[k].Length; c++) rest[k][c] += idle;
        }

        return rest;
    }

    private (List<ulong> Keys, List<long> Excess, Layer Layer) Advance(
        Step step, long[] share, long room, long[]? rest, List<ulong> keys, List<long> excess, int mostStates)
    {
        // Sorted by what they leave of the budget, so that the first that is too dear ends the row.
        var choices = step.Choices
            .Select(choice => (Choice: choice, Net: choice.Excess - _pool[choice.Pattern].Takes.Sum(take => take.Count * share[take.Demand])))
            .OrderBy(at => at.Net).ThenBy(at => at.Choice.Pattern).ToArray();
        var index = new Dictionary<ulong, int>(keys.Count);
        var (nextKeys, nextExcess, from, pattern) = (new List<ulong>(keys.Count), new List<long>(keys.Count), new List<int>(keys.Count), new List<int>(keys.Count));
        for (var i = 0; i < keys.Count && nextKeys.Count < mostStates && _tries >= 0; i++)
        {
            _tries--;
            var (open, weight, cells) = Open(keys[i], share);
            var before = excess[i] + open;
            if (!step.Must && before + step.Idle <= _budget && (!_exact || weight <= room) && Least(excess[i] + step.Idle, cells) <= _budget) Reach(keys[i], excess[i] + step.Idle, i, -1);
            foreach (var (choice, net) in choices)
            {
                if (before + net > _budget) break;
                _tries--;
                if (_exact)
                {
                    if ((keys[i] & choice.Single) != 0 || weight - choice.Weight > room || !Fits(keys[i], choice)) continue;
                    if (Least(excess[i] + choice.Excess, cells - choice.Cells) > _budget) continue;
                    Reach(keys[i] + choice.Adds, excess[i] + choice.Excess, i, choice.Pattern);
                }
                else Covered(choice, i);
            }
        }

        return (nextKeys, nextExcess, new Layer([.. from], [.. pattern]));

        long Least(long cost, int open) => rest is null ? cost : cost + rest[open];

        void Reach(ulong key, long cost, int before, int by)
        {
            ref var at = ref CollectionsMarshal.GetValueRefOrAddDefault(index, key, out var known);
            if (!known)
            {
                at = nextKeys.Count;
                nextKeys.Add(key);
                nextExcess.Add(cost);
                from.Add(before);
                pattern.Add(by);
            }
            else if (cost < nextExcess[at]) (nextExcess[at], from[at], pattern[at]) = (cost, before, by);
        }

        // A pattern's cut beyond the need costs what the bound thought it earned.
        void Covered(Choice choice, int before)
        {
            var (key, cost) = (keys[before], excess[before] + choice.Excess);
            foreach (var take in _pool[choice.Pattern].Takes)
            {
                var added = Math.Min(take.Count, _tier.DemandCount[take.Demand] - Filled(key, take.Demand));
                key += (ulong)added << _offset[take.Demand];
                cost += (take.Count - added) * _relaxation.Duals.Demand[take.Demand];
            }

            if (key == keys[before]) return;
            if (_spendOffset < _bits) key += choice.Adds >> _spendOffset << _spendOffset;
            if (Affords(key) && cost + Open(key, share).Excess <= _budget) Reach(key, cost, before, choice.Pattern);
        }
    }

    private (long Excess, long Weight, int Cells) Open(ulong key, long[] share)
    {
        var (excess, weight, cells) = (0L, 0L, 0);
        foreach (var d in _demands)
        {
            var open = _tier.DemandCount[d] - Filled(key, d);
            if (open == 0) continue;
            excess = Math.Min(_budget + 1, excess + open * share[d]);
            weight += open * _needs[d];
            if (_cells is not null) cells += open * _cells.Cells[d];
        }

        return (excess, weight, cells);
    }

    private int Filled(ulong key, int demand) => (int)((key >> _offset[demand]) & _mask[demand]);

    private bool Fits(ulong key, Choice choice)
    {
        foreach (var take in choice.Counted)
        {
            if (Filled(key, take.Demand) + take.Count > _tier.DemandCount[take.Demand]) return false;
        }

        if (_tier.RipCap > 0 && (long)(((key + choice.Adds) >> _ripOffset) & _ripMask) > _tier.RipCap) return false;
        return Affords(key + choice.Adds);
    }

    private bool Affords(ulong key) => _spendOffset == _bits || (long)(key >> _spendOffset) * _spendUnit <= _tier.SpendCap;

    private MaterialPlan? End(List<Layer> layers, List<ulong> keys)
    {
        MaterialPlan? best = null;
        for (var end = 0; end < keys.Count; end++)
        {
            var plan = IntegerMaster.Trimmed(_tier, Chosen(layers, end));
            if (_tier.Accepts(plan) && _tier.Value(plan) <= _most && (best is null || _tier.Value(plan) < _tier.Value(best))) best = plan;
        }

        return best;
    }

    private IEnumerable<(Pattern Pattern, int Times)> Chosen(List<Layer> layers, int end)
    {
        for (var l = layers.Count - 1; l >= 0; end = layers[l].From[end], l--)
        {
            if (layers[l].Pattern[end] >= 0) yield return (_pool[layers[l].Pattern[end]], 1);
        }
    }
}
