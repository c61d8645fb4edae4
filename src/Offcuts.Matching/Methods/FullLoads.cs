namespace Offcuts.Matching.Methods;

/// <summary>
/// A plan that spends no more than the sum of lengths allows: pieces are filled one after the other, each for the longest cut that is
/// still open, so full that what is wasted stays within what such a plan may waste in all.
/// <code>
/// waste of all = level - p sum n_d w_d / c        waste of a piece = its price - p (what is filled of it) / c
/// </code>
/// with price p and capacity c of the supply that costs least for its length; multiplied by c, so that all is whole. <see cref="SubsetSums"/> keep which lengths the
/// cuts that are open still add up to, so that no load is begun that can't be filled. Loads of few and long cuts come first, since many
/// short cuts make up any length in the end; what remains then is searched through, and what came to nothing is not entered again. After some work it begins anew in
/// another order, drawn with a fixed seed. Relaxations say little here: where cuts and pieces are all different, thousands of full loads are equally good to them.
/// Source: filling to the full is the minimum-bin-slack heuristic of bin packing, Gupta and Ho, 1999 (from memory).
/// Cost: cuts x longest capacity / 64 a load, and what it takes to list the loads of a cut; all within a number of steps that grows with the number of supplies.
/// It only finds: that there is no such plan is never claimed.
/// </summary>
internal sealed class FullLoads
{
    private const int LargestCapacity = 1 << 16;
    private const long MostWords = 1 << 23;
    private const int MostCopies = 2_000;
    private const long LeastWork = 5_000_000;
    private const long WorkByCube = 100_000;
    private const int ManySupplies = 20;
    private const long FirstTries = 500;
    private const int FirstLoads = 3;
    private const int MostLoadsAPiece = 200;
    private const int MostLoads = 10_000;
    private const int FewCopies = 26;
    private const int MostFailed = 1 << 18;
    private const int WorkALook = 16;
    private const int WorkALoad = 64;
    private const int LooksATime = 1_024;
    private const double Noise = 0.5;

    private readonly Tier _tier;
    private readonly Effort _effort;
    private readonly Random _random = new(1);
    private readonly int[] _demands;
    private readonly int[] _weights;
    private readonly int[] _left;
    private readonly int[] _supplies;
    private readonly int[] _capacities;
    private readonly int[] _pieces;
    private readonly Int128[] _dearer;
    private readonly Int128 _unitPrice;
    private readonly ulong[] _keys;
    private readonly List<Load> _loads = [];
    private readonly List<SubsetSums> _sums = [];
    private readonly HashSet<ulong> _failed = [];
    private Int128 _waste;
    private int _copies;
    private long _work;
    private long _tries;
    private int _loadsAPiece = FirstLoads;
    private long _looks;
    private long _passedOver;
    private bool _drawn;

    // Lengths in multiples of unit; money times the capacity of the supply that costs least for its length.
    private FullLoads(Tier tier, int[] demands, int[] supplies, int cheapest, long unit, long level, Effort effort)
    {
        var problem = tier.Problem;
        (_tier, _effort, _supplies) = (tier, effort, supplies);
        _demands = [.. demands.OrderByDescending(d => problem.Weights[d])];
        _weights = [.. _demands.Select(d => (int)(problem.Weights[d] / unit))];
        _left = [.. _demands.Select(d => tier.DemandCount[d])];
        _copies = _left.Sum();
        _capacities = [.. supplies.Select(s => (int)(problem.Capacity(s) / unit))];
        _pieces = [.. supplies.Select(s => tier.SupplyCount[s])];
        var (price, capacity) = (problem.Supplies[cheapest].Price, problem.Capacity(cheapest));
        _unitPrice = (Int128)price * unit;
        _dearer = [.. supplies.Select(s => (Int128)problem.Supplies[s].Price * capacity - (Int128)price * problem.Capacity(s))];
        _waste = (Int128)level * capacity - _unitPrice * _weights.Zip(_left, (weight, left) => (long)weight * left).Sum();
        // Of few lengths the relaxation tells more; of many, one of each, it tells next to nothing.
        var many = (long)Math.Min(supplies.Length, ManySupplies);
        _work = Math.Max(LeastWork, WorkByCube * many * many * many);
        _keys = [.. Enumerable.Range(0, _weights.Length + supplies.Length).Select(_ => (ulong)_random.NextInt64())];
    }

    // What is cut from a piece of a supply, and what is left of it.
    private sealed record Load(int Supply, (int Cut, int Times)[] Takes, int Rest, double Rank);

    /// <summary>
    /// A plan that fills all and spends at most <paramref name="level"/>, or none found. None too where the tier is of another kind: where something may stay
    /// unfilled, something is there for nothing, or some supply doesn't give every cut.
    /// </summary>
    /// <param name="tier">The tier of spend.</param>
    /// <param name="level">The spend.</param>
    /// <param name="effort">Limit.</param>
    public static MaterialPlan? Find(Tier tier, long level, Effort effort)
    {
        if (tier.Goal != Goal.Spend || tier.MostLeft.Any(left => left > 0) || tier.SpendCap is not null || tier.SupplyLeast.Any(least => least > 0)) return null;
        var problem = tier.Problem;
        int[] supplies = [.. Enumerable.Range(0, tier.SupplyCount.Length).Where(s => tier.SupplyCount[s] > 0)];
        int[] demands = [.. Enumerable.Range(0, tier.DemandCount.Length).Where(d => tier.Active[d] && tier.DemandCount[d] > 0)];
        if (demands.Length == 0 || supplies.Length == 0) return null;
        if (supplies.Any(s => problem.Supplies[s].Price == 0 || demands.Any(d => !problem.Supplies[s].Allows[d]))) return null;
        var unit = demands.Select(d => problem.Weights[d]).Concat(supplies.Select(problem.Capacity)).Aggregate(Bounds.Gcd);
        var (longest, copies) = (supplies.Max(problem.Capacity) / unit, demands.Sum(d => (long)tier.DemandCount[d]));
        if (longest > LargestCapacity || copies > MostCopies || SubsetSums.Words((int)longest) * (demands.Length + 1) * copies > MostWords) return null;
        var cheapest = supplies.Aggregate((a, b) =>
            (Int128)problem.Supplies[b].Price * problem.Capacity(a) < (Int128)problem.Supplies[a].Price * problem.Capacity(b) ? b : a);
        return new FullLoads(tier, demands, supplies, cheapest, unit, level, effort).Run();
    }

    private MaterialPlan? Run()
    {
        if (_waste < 0) return null;
        for (var most = FirstTries; _work > 0 && !_effort.Over; most += most / 8)
        {
            (_tries, _passedOver) = (most, 0);
            if (Filled(0, 0)) return new MaterialPlan(_tier.Problem, _loads.Select(load => (Pattern(load), 1)));
            var searchedThrough = _tries > 0;
            if (searchedThrough && _passedOver == 0) return null;
            if (searchedThrough) _loadsAPiece = Math.Min(2 * _loadsAPiece, MostLoadsAPiece);
            _drawn = true;
        }

        return null;
    }

    private Pattern Pattern(Load load) =>
        new(_tier.Problem, _supplies[load.Supply], [.. load.Takes.Select(take => new Take(_demands[take.Cut], take.Times))]);

    // True where all that was open is filled; where not, all is as before.
    private bool Filled(int depth, ulong state)
    {
        if (_copies == 0) return true;
        if (_failed.Contains(state)) return false;
        if (--_tries < 0 || _work < 0 || _effort.Over) return false;
        var passedOver = _passedOver;
        var longest = Array.FindIndex(_left, left => left > 0);
        if (_sums.Count == depth) _sums.Add(new SubsetSums(_weights, _capacities.Max()));
        _work -= _sums[depth].Count(_left, longest);
        foreach (var load in Loads(_sums[depth], longest))
        {
            Take(load, 1);
            if (Filled(depth + 1, State(state, load))) return true;
            Take(load, -1);
            if (_tries < 0) return false;
        }

        if (_passedOver == passedOver && _failed.Count < MostFailed) _failed.Add(state);
        return false;
    }

    private void Take(Load load, int sign)
    {
        if (sign > 0) _loads.Add(load);
        else _loads.RemoveAt(_loads.Count - 1);
        _pieces[load.Supply] -= sign;
        _waste -= sign * (_dearer[load.Supply] + load.Rest * _unitPrice);
        foreach (var (cut, times) in load.Takes)
        {
            _left[cut] -= sign * times;
            _copies -= sign * times;
        }
    }

    // The same for the same loads in any order. Two states may be taken for one, at odds of 1 to 2^40 or so: then something is not found.
    private ulong State(ulong state, Load load)
    {
        state += _keys[_weights.Length + load.Supply];
        foreach (var (cut, times) in load.Takes) state += (ulong)times * _keys[cut];
        return state;
    }

    // Loads that hold the longest open cut, best first: all of them once few cuts are open, unless they are very many.
    private List<Load> Loads(SubsetSums sums, int longest)
    {
        var (loads, taken) = (new List<Load>(), new List<(int, int)>());
        for (var supply = 0; supply < _pieces.Length; supply++)
        {
            if (_pieces[supply] == 0 || _dearer[supply] > _waste) continue;
            var spare = (int)Int128.Min((_waste - _dearer[supply]) / _unitPrice, _capacities[supply]);
            var more = Math.Min(_copies <= FewCopies ? int.MaxValue : _loadsAPiece, MostLoads - loads.Count);
            for (var times = Math.Min(_left[longest], _capacities[supply] / _weights[longest]); times > 0; times--)
            {
                taken.Add((longest, times));
                Fill(longest + 1, _capacities[supply] - times * _weights[longest]);
                taken.Clear();
            }

            // What shorter cuts, from one on, are put into the room that is left, so that no more of it is left than may be.
            void Fill(int from, int room)
            {
                if (room <= spare && !sums.Any(from, 1, room))
                {
                    loads.Add(new Load(supply, [.. taken], room, Rank(supply, taken)));
                    _work -= WorkALoad;
                    if (--more == 0) _passedOver++;
                    return;
                }

                for (var cut = from; cut < _weights.Length && more > 0 && Looks(); cut++)
                {
                    if (!sums.Any(cut, room - spare, room)) return;
                    if (LeftOut()) continue;
                    for (var times = Math.Min(_left[cut], room / _weights[cut]); times > 0 && more > 0; times--)
                    {
                        var rest = room - times * _weights[cut];
                        if (!sums.Any(cut + 1, rest - spare, rest)) continue;
                        taken.Add((cut, times));
                        Fill(cut + 1, rest);
                        taken.RemoveAt(taken.Count - 1);
                    }
                }
            }
        }

        loads.Sort((a, b) => b.Rank.CompareTo(a.Rank));
        return loads;
    }

    // Another order is drawn by leaving some cuts out of some loads, as long as many are open.
    private bool LeftOut()
    {
        if (!_drawn || _copies <= FewCopies || _random.NextDouble() >= Noise / 4) return false;
        _passedOver++;
        return true;
    }

    // False once the work is done or it is time to end, so that no list of loads grows beyond that.
    private bool Looks()
    {
        _work -= WorkALook;
        if (++_looks % LooksATime == 0 && _effort.Over) _work = -1;
        if (_work >= 0) return true;
        _passedOver++;
        return false;
    }

    // Higher for loads of few and long cuts.
    private double Rank(int supply, List<(int Cut, int Times)> taken)
    {
        var squares = taken.Sum(take => take.Times * (double)_weights[take.Cut] * _weights[take.Cut]);
        return squares / _capacities[supply] / _capacities[supply] * (_drawn ? 1 - Noise * _random.NextDouble() : 1);
    }
}
