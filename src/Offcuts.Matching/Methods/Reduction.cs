using System.Numerics;

namespace Offcuts.Matching.Methods;

/// <summary>
/// The reduction procedure of bin packing, where all is cut from one store length: loads that may be settled beforehand, because a plan of so
/// many pieces can be made to have them. What such a plan may waste is known, so only loads that waste no more count:
/// <code>
/// waste of all = pieces x capacity - sum n_d w_d        a load with a has, beside it, between  capacity - a - waste  and  capacity - a
/// </code>
/// The load {a} with T beside it (nothing, one cut b, or two cuts b and c) dominates every other set S beside a, if S can be
/// exchanged part by part against what is no shorter in T: where S is no longer than b; where S holds b, and the rest of it is no longer than c;
/// or the other way round. Where every S within the waste is so, {a} with T may be settled, and the same is asked of what remains. Where
/// there is no S at all, no plan of so many pieces is.
/// Sums of cuts are counted modulo 2^64 to pass over what can't be quickly; what is claimed is worked out without loss.
/// Source: Martello and Toth, reduction procedure MTRP, 1990 (from memory); that waste narrows the loads is ours.
/// Cost: copies x capacity / greatest common divisor, for each load that is settled; gives up above a number of steps with what it has.
/// </summary>
internal sealed class Reduction
{
    private const long MostSteps = 20_000_000;

    private readonly long[] _weights;
    private readonly SortedDictionary<int, int> _copies = [];
    private readonly int _capacity;
    private readonly int[] _demands;
    private readonly Dictionary<int, ulong[]> _factors = [];
    private ulong[] _sums = [];
    private long _waste;
    private long _steps = MostSteps;

    private Reduction(Tier tier, int supply, int[] demands, long unit, long pieces)
    {
        _capacity = (int)(tier.Problem.Capacity(supply) / unit);
        _weights = [.. tier.Problem.Weights.Select(weight => weight / unit)];
        _demands = demands;
        foreach (var d in demands) _copies[(int)_weights[d]] = _copies.GetValueOrDefault((int)_weights[d]) + tier.DemandCount[d];
        _waste = pieces * _capacity - _copies.Sum(pair => (long)pair.Key * pair.Value);
    }

    /// <summary>
    /// Loads that may be settled if the tier is to cost no more than <paramref name="level"/>, and whether that is ruled out. No loads where the tier is of
    /// another kind.
    /// </summary>
    public static (IReadOnlyList<Pattern> Settled, bool RuledOut) Of(Tier tier, long level)
    {
        if (tier.Goal != Goal.Spend || tier.MostLeft.Any(left => left > 0) || tier.SpendCap is not null) return ([], false);
        int[] supplies = [.. Enumerable.Range(0, tier.SupplyCount.Length).Where(s => tier.SupplyCount[s] > 0)];
        int[] demands = [.. Enumerable.Range(0, tier.DemandCount.Length).Where(d => tier.Active[d] && tier.DemandCount[d] > 0)];
        if (supplies is not [var supply] || tier.Problem.Supplies[supply] is not { Price: > 0 } from || demands.Length == 0) return ([], false);
        if (demands.Any(d => !from.Allows[d] || tier.Problem.Weights[d] > tier.Problem.Capacity(supply))) return ([], false);
        var unit = demands.Select(d => tier.Problem.Weights[d]).Aggregate(Bounds.Gcd);
        if (tier.Problem.Capacity(supply) / unit * tier.Copies > MostSteps / 2) return ([], false);
        var reduction = new Reduction(tier, supply, demands, unit, Math.Min(tier.SupplyCount[supply], level / from.Price));
        var loads = new List<int[]>();
        var ruledOut = reduction.Run(loads);
        return (reduction.Patterns(tier, supply, loads), ruledOut);
    }

    // True where it turns out that no plan wastes so little. Loads of two cuts only where no other is found: they are there in plenty, and
    // what they take may be what another cut needs.
    private bool Run(List<int[]> loads)
    {
        _sums = Sums();
        while (_waste >= 0 && _copies.Count > 0)
        {
            if (Settled(loads, two: false) is not { } found) return true;
            if (!found && Settled(loads, two: true) is false or null) return false;
        }

        return _waste < 0;
    }

    // True where some loads were settled; none where some cut can't be completed.
    private bool? Settled(List<int[]> loads, bool two)
    {
        var before = loads.Count;
        foreach (var a in _copies.Keys.Reverse().ToArray())
        {
            while (_copies.ContainsKey(a) && _waste >= 0)
            {
                Take(a);
                var load = two ? OneBeside(a) : TwoBeside(a);
                if (load is null)
                {
                    var never = !two && Never(a);
                    Return(a);
                    if (never) return null;
                    if (_steps < 0) return loads.Count > before;
                    break;
                }

                foreach (var beside in load.Skip(1)) Take(beside);
                _waste -= _capacity - load.Sum();
                loads.Add(load);
                if (two) return true;
            }
        }

        return loads.Count > before;
    }

    private bool Never(int a) =>
        Low(a) > 0 && _sums.AsSpan(Low(a), _capacity - a - Low(a) + 1).IndexOfAnyExcept(0UL) < 0 && !Reaches(Low(a), _capacity - a, [], []);

    private void Take(int weight)
    {
        if (--_copies[weight] == 0) _copies.Remove(weight);
        for (var sum = weight; sum <= _capacity; sum++) _sums[sum] -= _sums[sum - weight];
        _steps -= _capacity;
    }

    private void Return(int weight)
    {
        _copies[weight] = _copies.GetValueOrDefault(weight) + 1;
        for (var sum = _capacity; sum >= weight; sum--) _sums[sum] += _sums[sum - weight];
        _steps -= _capacity;
    }

    // The least that lies beside a cut.
    private int Low(int a) => (int)Math.Max(0, _capacity - a - _waste);

    // Nothing or one cut.
    private int[]? OneBeside(int a)
    {
        var (room, least) = (_capacity - a, Shortest);
        if (room < least) return room <= _waste ? [a] : null;
        var most = (int)Math.Min(_waste, least - 1);
        foreach (var b in _copies.Keys.Where(b => room - b >= 0 && room - b <= most))
        {
            if (!Reaches(Math.Max(b + 1, Low(a)), room, [b], [])) return [a, b];
        }

        return null;
    }

    private int[]? TwoBeside(int a)
    {
        var (room, most) = (_capacity - a, (int)Math.Min(_waste, Shortest - 1));
        int[] weights = [.. _copies.Keys];
        for (var i = weights.Length - 1; i >= 0; i--)
        {
            var b = weights[i];
            var from = Array.BinarySearch(weights, room - b - most);
            for (var j = from < 0 ? ~from : from; j <= i && weights[j] <= room - b; j++)
            {
                if (i == j && _copies[b] < 2) continue;
                if (--_steps < 0) return null;
                if (Dominates(room, Math.Max(b + 1, Low(a)), b, weights[j])) return [a, b, weights[j]];
            }
        }

        return null;
    }

    private int Shortest => _copies.Count == 0 ? _capacity + 1 : _copies.Keys.First();

    // Two cuts b >= c beside the longest, in a room that they leave less of than any cut takes.
    private bool Dominates(int room, int low, int b, int c)
    {
        for (var sum = low; sum <= room; sum++)
        {
            if (Count(sum, b, c) != 0) return false;
        }

        var rest = room - b - c;
        return !Reaches(low, room, [b, c], [])
            && !Reaches(c + 1, c + rest, [c], [b])
            && (b == c || !Reaches(b + 1, b + rest, [b], [c]));
    }

    // Whether cuts, without any of some lengths and without one of some others, add up to something from low to high.
    private bool Reaches(int low, int high, int[] none, int[] oneLess)
    {
        if (low > high) return false;
        var sums = BigInteger.One;
        foreach (var (weight, copies) in _copies)
        {
            if (none.Contains(weight) || weight > high) continue;
            var more = Math.Min(copies - oneLess.Count(one => one == weight), high / weight);
            for (var copy = 0; copy < more; copy++) sums |= sums << weight;
        }

        _steps -= high;
        return !(sums >> low & ((BigInteger.One << (high - low + 1)) - 1)).IsZero;
    }

    // Of each length, how many sets of copies have it, modulo 2^64.
    private ulong[] Sums()
    {
        var sums = new ulong[_capacity + 1];
        sums[0] = 1;
        foreach (var (weight, copies) in _copies)
        {
            for (var copy = 0; copy < copies; copy++)
            {
                for (var sum = _capacity; sum >= weight; sum--) sums[sum] += sums[sum - weight];
            }

            _steps -= (long)copies * (_capacity - weight);
        }

        return sums;
    }

    // How many sets without any b and any c have a length, modulo 2^64.
    private ulong Count(int sum, int b, int c)
    {
        if (b == c) return CountWithout(sum, c);
        var factors = Factors(_copies[b], _capacity / b);
        ulong count = 0;
        for (var (k, at) = (0, sum); at >= 0; k++, at -= b) count += factors[k] * CountWithout(at, c);
        return count;
    }

    private ulong CountWithout(int sum, int weight)
    {
        var factors = Factors(_copies[weight], _capacity / weight);
        ulong count = 0;
        for (var (k, at) = (0, sum); at >= 0; k++, at -= weight) count += factors[k] * _sums[at];
        _steps -= sum / weight + 1;
        return count;
    }

    // The power series of 1 / (1 + x)^n up to some power, modulo 2^64.
    private ulong[] Factors(int n, int last)
    {
        if (_factors.TryGetValue(n, out var known) && known.Length > last) return known;
        var factors = new ulong[last + 1];
        factors[0] = 1;
        for (var division = 0; division < n; division++)
        {
            for (var k = 1; k <= last; k++) factors[k] -= factors[k - 1];
        }

        return _factors[n] = factors;
    }

    private List<Pattern> Patterns(Tier tier, int supply, List<int[]> loads)
    {
        var left = (int[])tier.DemandCount.Clone();
        return [.. loads.Select(load => new Pattern(tier.Problem, supply, [.. load.Select(Demand).GroupBy(d => d).Select(group => new Take(group.Key, group.Count()))]))];

        int Demand(int weight)
        {
            var demand = _demands.First(d => _weights[d] == weight && left[d] > 0);
            left[demand]--;
            return demand;
        }
    }
}
