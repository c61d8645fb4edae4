namespace Offcuts.Matching.Methods;

/// <summary>
/// First plans, fast: cuts in a fixed order, each to where it costs least at that moment (best-fit decreasing, where "best" may be
/// the tightest span or the least value given up). Source: best-fit decreasing, Johnson, 1973 (from memory).
/// Cost: copies x open spans. Never fails; leaves unfilled what finds no place.
/// </summary>
internal static class BestInsertion
{
    /// <summary>The best of all orders and all meanings of "best".</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="active">Demands to fill.</param>
    /// <param name="start">Patterns to start from; their supplies are taken and can take more.</param>
    public static MaterialPlan Best(MaterialProblem problem, bool[] active, MaterialPlan? start = null)
    {
        MaterialPlan? best = null;
        foreach (var shortFirst in (bool[])[false, true])
        {
            foreach (var tight in (bool[])[true, false])
            {
                foreach (var thrifty in (bool[])[false, true])
                {
                    var plan = new Run(problem, active, start, tight, thrifty).Fill(Order(problem, active, shortFirst));
                    if (best is null || Better(plan, best)) best = plan;
                }
            }
        }

        return best!;
    }

    /// <summary>True where <paramref name="a"/> goes before <paramref name="b"/> by the tiers.</summary>
    public static bool Better(MaterialPlan a, MaterialPlan b)
    {
        foreach (var stage in a.Problem.Demands.Select(demand => demand.Stage).Distinct().Order())
        {
            var order = a.LeftIn(stage).CompareTo(b.LeftIn(stage));
            if (order != 0) return order < 0;
        }

        if ((a.Spend, a.Rips) != (b.Spend, b.Rips)) return (a.Spend, a.Rips).CompareTo((b.Spend, b.Rips)) < 0;
        return a.Problem.Order == TierOrder.SawCutsFirst
            ? (a.SawCuts, a.GivenUp).CompareTo((b.SawCuts, b.GivenUp)) < 0
            : (a.GivenUp, a.SawCuts).CompareTo((b.GivenUp, b.SawCuts)) < 0;
    }

    // Longest first, or shortest first within each stage, which fills more cuts when there is too little of everything.
    // What the fewest supplies can give goes before what many can.
    private static IEnumerable<int> Order(MaterialProblem problem, bool[] active, bool shortFirst)
    {
        var demands = Enumerable.Range(0, problem.Demands.Count).Where(d => active[d]);
        return shortFirst
            ? demands.OrderBy(d => problem.Demands[d].Stage).ThenBy(d => problem.Demands[d].Length)
            : demands.OrderBy(d => problem.AlwaysFilled(d)).ThenBy(d => problem.Demands[d].Stage).ThenByDescending(d => problem.Demands[d].Length);
    }

    private sealed class Open(int supply, long rest)
    {
        public int Supply { get; } = supply;

        public long Rest { get; set; } = rest;

        public bool Whole { get; set; }

        public SortedDictionary<int, int> Takes { get; } = [];
    }

    private sealed class Run
    {
        private readonly MaterialProblem _problem;
        private readonly bool[] _active;
        private readonly bool _tight;
        private readonly bool _thrifty;
        private readonly int[] _left;
        private readonly int[] _wanting;
        private readonly List<Open> _open = [];

        public Run(MaterialProblem problem, bool[] active, MaterialPlan? start, bool tight, bool thrifty)
        {
            (_problem, _active, _tight, _thrifty) = (problem, active, tight, thrifty);
            _left = [.. problem.Supplies.Select(supply => supply.Count)];
            _wanting = [.. problem.Demands.Select(demand => demand.Count)];
            foreach (var (pattern, times) in start?.Uses ?? [])
            {
                for (var i = 0; i < times; i++)
                {
                    var open = new Open(pattern.Supply, problem.Capacity(pattern.Supply) - pattern.Weight) { Whole = pattern.Whole };
                    foreach (var take in pattern.Takes)
                    {
                        open.Takes[take.Demand] = take.Count;
                        _wanting[take.Demand] -= take.Count;
                    }

                    _open.Add(open);
                    _left[pattern.Supply]--;
                }
            }
        }

        public MaterialPlan Fill(IEnumerable<int> order)
        {
            foreach (var demand in order)
            {
                while (_wanting[demand] > 0 && Place(demand)) _wanting[demand]--;
            }

            return new MaterialPlan(_problem, _open.Select(open => (Cheapest(open), 1)));
        }

        private bool Place(int demand)
        {
            var weight = _problem.Weights[demand];
            (long, long, long, long) best = (long.MaxValue, 0, 0, 0);
            Action? place = null;
            foreach (var open in _open)
            {
                if (open.Whole || open.Rest < weight || !_problem.Supplies[open.Supply].Allows[demand]) continue;
                var rank = Rank(0, open.Supply, demand, false, Left(open.Supply, open.Rest) - Left(open.Supply, open.Rest - weight), open.Rest - weight);
                if (rank.CompareTo(best) >= 0) continue;
                best = rank;
                place = () => Put(open, demand, weight);
            }

            for (var s = 0; s < _left.Length; s++)
            {
                if (_left[s] == 0) continue;
                var supply = _problem.Supplies[s];
                var capacity = _problem.Capacity(s);
                var price = _thrifty && supply.Price > 0 ? supply.Price * 1_000_000 / supply.Length : supply.Price;
                var at = s;
                if (supply.Allows[demand] && weight <= capacity)
                {
                    var rank = Rank(price, s, demand, false, supply.ValueBefore - Left(s, capacity - weight), capacity - weight);
                    if (rank.CompareTo(best) < 0)
                    {
                        best = rank;
                        place = () => Put(OpenNew(at), demand, weight);
                    }
                }

                if (supply.Whole[demand])
                {
                    var rank = Rank(price, s, demand, true, supply.ValueBefore, capacity - weight);
                    if (rank.CompareTo(best) >= 0) continue;
                    best = rank;
                    place = () =>
                    {
                        var open = OpenNew(at);
                        open.Whole = true;
                        open.Takes[demand] = 1;
                    };
                }
            }

            place?.Invoke();
            return place is not null;
        }

        private (long, long, long, long) Rank(long price, int supply, int demand, bool whole, long givenUp, long rest)
        {
            var rip = _problem.Supplies[supply].Rip(demand, whole);
            givenUp -= rip.StripValue;
            return _tight ? (price, rip.Count, rest, givenUp) : (price, rip.Count, givenUp, rest);
        }

        private long Left(int supply, long rest) =>
            _problem.Supplies[supply].Value.At(Math.Max(0, rest - _problem.Kerf));

        private Open OpenNew(int supply)
        {
            var open = new Open(supply, _problem.Capacity(supply));
            _open.Add(open);
            _left[supply]--;
            return open;
        }

        private static void Put(Open open, int demand, long weight)
        {
            open.Rest -= weight;
            open.Takes[demand] = open.Takes.GetValueOrDefault(demand) + 1;
        }

        // A bought piece is exchanged for the cheapest store length that holds the same cuts.
        private Pattern Cheapest(Open open)
        {
            var takes = open.Takes.Select(pair => new Take(pair.Key, pair.Value)).ToArray();
            var best = new Pattern(_problem, open.Supply, takes, open.Whole);
            if (best.Price == 0 || open.Whole) return best;
            for (var s = 0; s < _left.Length; s++)
            {
                var supply = _problem.Supplies[s];
                if (_left[s] == 0 || supply.Price == 0 || supply.Price >= best.Price || best.Weight > _problem.Capacity(s)) continue;
                if (takes.All(take => supply.Allows[take.Demand])) best = new Pattern(_problem, s, takes);
            }

            if (best.Supply != open.Supply)
            {
                _left[best.Supply]--;
                _left[open.Supply]++;
            }

            return best;
        }
    }
}
