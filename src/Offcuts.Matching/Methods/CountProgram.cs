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
/// <para>
/// Where the least cost is known, the fourth tier is decided in the same way: of the ways to a state that cost the least, the one that is best
/// in <see cref="CountTies"/> is kept. A way that costs more is no part of a plan of least cost.
/// </para>
/// Source: dynamic programming with state-space reduction by bounds, Martello and Toth, 1990 (from memory).
/// Cost: states times the patterns that still fit; gives up above a number of states and says so.
/// </summary>
internal sealed class CountProgram
{
    // By how much a beam may widen over one span.
    private const int MostInBeam = 4;

    private readonly Tier _tier;
    private readonly IReadOnlyList<Pattern> _pool;
    private readonly Relaxation _relaxation;
    private readonly StateSpaceRelaxation? _cells;
    private readonly CountKey _key;
    private readonly long _budget;
    private readonly long _most;
    private readonly long[] _needs;

    // In the last tier the pool holds every part of its patterns too, so each demand can be filled to the copy.
    private readonly bool _exact;

    // Counts of copies fit the key, and sums of reduced costs a number.
    private readonly bool _holds;
    private long _tries;

    private CountProgram(Tier tier, IReadOnlyList<Pattern> pool, Guide guide, long most, long mostTries, bool carried)
    {
        (_tier, _pool, _relaxation, _cells, _most, _tries) = (tier, pool, guide.AtDuals, guide.Cells, most, mostTries);
        _key = new CountKey(tier, pool, carried);
        _holds = _key.Holds && guide.AtDuals.SumsFit(tier);
        _exact = tier.Goal == Goal.GivenUp;
        _budget = most * tier.Scale - guide.AtDuals.Bound;
        _needs = [.. Enumerable.Range(0, tier.DemandCount.Length).Select(d => tier.MostLeft[d] > 0 ? 0 : tier.Problem.Weights[d])];
    }

    /// <summary>The best plan made of the pool, if there is one of at most that cost; and whether the search came to its end.</summary>
    /// <param name="tier">Rows and costs.</param>
    /// <param name="pool">All patterns of all plans that cost at most <paramref name="most"/>.</param>
    /// <param name="guide">Duals and bound, with the state-space relaxation where that leads.</param>
    /// <param name="most">Only plans of at most this cost are looked for.</param>
    /// <param name="mostStates">More states than this after one span are too many.</param>
    /// <param name="mostTries">Most patterns that are tried on states.</param>
    /// <param name="effort">Limit.</param>
    /// <param name="order">Which spans come first.</param>
    public static IntegerOutcome Solve(
        Tier tier, IReadOnlyList<Pattern> pool, Guide guide, long most, int mostStates, long mostTries, Effort effort, SpanOrder order = SpanOrder.FewPatternsFirst)
    {
        var program = new CountProgram(tier, pool, guide, most, mostTries, carried: false);
        if (program._budget < 0) return new IntegerOutcome(null, true);
        if (!program._holds || program.Run(program.Steps.InOrder(order), mostStates, effort) is not { } run) return new IntegerOutcome(null, false);
        return new IntegerOutcome(program.Best(run), true);
    }

    /// <summary>
    /// A plan made of the pool of at most that cost, or none: counting that after each span goes on with the states of least promised cost only, so it
    /// proves nothing. Source: beam search, Lowerre, 1976 (from memory).
    /// </summary>
    /// <param name="tier">Rows and costs.</param>
    /// <param name="pool">Patterns.</param>
    /// <param name="guide">Duals and bound, with the state-space relaxation where that leads.</param>
    /// <param name="most">Only plans of at most this cost are looked for.</param>
    /// <param name="width">So many states go on.</param>
    /// <param name="effort">Limit.</param>
    public static MaterialPlan? Beam(Tier tier, IReadOnlyList<Pattern> pool, Guide guide, long most, int width, Effort effort)
    {
        var program = new CountProgram(tier, pool, guide, most, long.MaxValue, carried: false);
        if (program._budget < 0 || !program._holds) return null;
        return program.Run(program.Steps.InOrder(SpanOrder.FewPatternsFirst), MostInBeam * width, effort, width) is { } run ? program.Best(run) : null;
    }

    /// <summary>
    /// Of the plans of least cost, the best in the fourth tier, with the place of each pattern; none where that takes too much, or more than
    /// <see cref="CountTies.MostPieces"/> pieces may be carried.
    /// </summary>
    /// <param name="tier">Rows and costs: the last tier.</param>
    /// <param name="pool">All patterns of all plans that cost at most <paramref name="least"/>.</param>
    /// <param name="guide">Duals and bound, with the state-space relaxation where that leads.</param>
    /// <param name="least">No plan costs less, and some plan costs this.</param>
    /// <param name="mostStates">More states than this after one span are too many.</param>
    /// <param name="mostTries">Most patterns that are tried on states.</param>
    /// <param name="effort">Limit.</param>
    public static IReadOnlyList<(Pattern Pattern, SpanPlace? Place)>? Placed(
        Tier tier, IReadOnlyList<Pattern> pool, Guide guide, long least, int mostStates, long mostTries, Effort effort)
    {
        var program = new CountProgram(tier, pool, guide, least, mostTries, carried: true);
        if (!program._exact || program._budget < 0 || !program._holds) return null;
        var steps = program.Steps.ByPiece();
        if (steps.Any(step => step.Piece >= CountTies.MostPieces) || program.Run(steps, mostStates, effort) is not { } run) return null;
        return program.BestPlaced(run);
    }

    private CountSteps Steps => new(_tier, _pool, _relaxation, _cells, _key);

    private sealed record Layer(int[] From, int[] Pattern);

    private sealed record Finished(CountStep[] Steps, List<Layer> Layers, StateTable States);

    // None where it takes too much.
    private Finished? Run(CountStep[] steps, int mostStates, Effort effort, int? width = null)
    {
        var (shares, rooms) = StillToCome(steps);
        var rest = _exact && _cells is not null ? Completion(steps) : null;
        var layers = new List<Layer>();
        var states = StateTable.Start(_key.Carried != 0);
        var total = 1L;
        for (var k = 0; k < steps.Length; k++)
        {
            if (effort.Over) return null;
            var ahead = new Ahead(shares[k + 1], rooms[k + 1], rest?[k + 1]);
            states = Advance(steps[k], ahead, states, mostStates);
            if (states.Count > width) states = Promising(states, ahead, width.Value);
            layers.Add(new Layer(states.From, states.By));
            total += states.Count;
            if (width is not null) continue;
            if (states.Count >= mostStates || total > 4L * mostStates || _tries < 0) return null;
        }

        return new Finished(steps, layers, states);
    }

    // What is known of the steps still to come: the least excess that a copy of each demand adds, how long the spans are together, and by
    // open cells the least excess of all.
    private sealed record Ahead(long[] Share, long Room, long[]? Rest)
    {
        public long Least(long cost, int open) => Rest is null ? cost : cost + Rest[open];
    }

    private (long[][] Shares, long[] Rooms) StillToCome(CountStep[] steps)
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
    private long[][] Completion(CountStep[] steps)
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

    private StateTable Advance(CountStep step, Ahead ahead, StateTable states, int mostStates)
    {
        // Sorted by what they leave of the budget, so that the first that is too dear ends the row.
        var choices = step.Choices
            .Select(choice => (Choice: choice, Net: choice.Excess - _pool[choice.Pattern].Takes.Sum(take => take.Count * ahead.Share[take.Demand])))
            .OrderBy(at => at.Net).ThenBy(at => at.Choice.Pattern).ToArray();
        var sieve = new Sieve([.. choices.Select(at => (at.Net, at.Choice.Single, at.Choice.Weight))]);
        var next = states.Next(states.Count);
        for (var i = 0; i < states.Count && next.Count < mostStates && _tries >= 0; i++)
        {
            var (key, excess) = (states.Keys[i], states.Costs[i]);
            var (open, weight, cells) = Open(key, ahead.Share);
            var affordable = sieve.Affordable(_budget - excess - open);
            _tries -= 1 + affordable;
            if (!step.Must && excess + open + step.Idle <= _budget && (!_exact || weight <= ahead.Room) && ahead.Least(excess + step.Idle, cells) <= _budget)
                Reach(key, step.Idle, i, null);
            if (!_exact)
            {
                for (var c = 0; c < affordable; c++) Covered(choices[c].Choice, i);
                continue;
            }

            for (var c = sieve.Next(0, affordable, key, weight - ahead.Room); c < affordable; c = sieve.Next(c + 1, affordable, key, weight - ahead.Room))
            {
                ref readonly var choice = ref choices[c].Choice;
                if (_key.Fits(key, choice.Adds, choice.Counted) && ahead.Least(excess + choice.Excess, cells - choice.Cells) <= _budget)
                    Reach(key + choice.Adds, choice.Excess, i, choice.Pattern);
            }
        }

        return next;

        void Reach(ulong key, long cost, int from, int? by)
        {
            if (_key.Carried == 0)
            {
                next.Reach(key, states.Costs[from] + cost, from, by ?? -1);
                return;
            }

            var ties = states.Ties[from];
            var carried = (key & _key.Carried) != 0;
            if (by is { } pattern) ties = ties.Plus(_pool[pattern], sawCuts: _tier.Problem.SawCost == 0, carries: !carried, step.Piece);
            var carries = !step.EndsPiece && (carried || by is not null);
            next.Reach(carries ? key | _key.Carried : key & ~_key.Carried, states.Costs[from] + cost, from, by ?? -1, ties);
        }

        // A pattern's cut beyond the need costs what the bound thought it earned.
        void Covered(CountChoice choice, int from)
        {
            var (key, cost) = (states.Keys[from], choice.Excess);
            foreach (var take in _pool[choice.Pattern].Takes)
            {
                var added = Math.Min(take.Count, _tier.DemandCount[take.Demand] - _key.Filled(key, take.Demand));
                key += _key.Adds(take with { Count = added });
                cost += (take.Count - added) * _relaxation.Duals.Demand[take.Demand];
            }

            if (key == states.Keys[from]) return;
            key += _key.SpendOf(choice.Adds);
            if (_key.Affords(key) && states.Costs[from] + cost + Open(key, ahead.Share).Excess <= _budget) Reach(key, cost, from, choice.Pattern);
        }
    }

    // Those that cost the least together with what is known of their end; of equal ones the first.
    private StateTable Promising(StateTable states, Ahead ahead, int width)
    {
        var promised = new long[states.Count];
        for (var i = 0; i < promised.Length; i++)
        {
            var (open, _, cells) = Open(states.Keys[i], ahead.Share);
            promised[i] = Math.Max(states.Costs[i] + open, ahead.Least(states.Costs[i], cells));
        }

        var last = promised.Order().ElementAt(width - 1);
        return states.Where(i => promised[i] <= last, width);
    }

    private (long Excess, long Weight, int Cells) Open(ulong key, long[] share)
    {
        var (excess, weight, cells) = (0L, 0L, 0);
        foreach (var d in _key.Demands)
        {
            var open = _tier.DemandCount[d] - _key.Filled(key, d);
            if (open == 0) continue;
            excess = Math.Min(_budget + 1, excess + open * share[d]);
            weight += open * _needs[d];
            if (_cells is not null) cells += open * _cells.Cells[d];
        }

        return (excess, weight, cells);
    }

    private MaterialPlan? Best(Finished run)
    {
        MaterialPlan? best = null;
        for (var end = 0; end < run.States.Count; end++)
        {
            var plan = IntegerMaster.Trimmed(_tier, Chosen(run, end).Select(at => (at.Pattern, 1)));
            if (_tier.Accepts(plan) && _tier.Value(plan) <= _most && (best is null || _tier.Value(plan) < _tier.Value(best))) best = plan;
        }

        return best;
    }

    // Several ends there are only where some cuts may be left unfilled.
    private List<(Pattern, SpanPlace?)>? BestPlaced(Finished run)
    {
        var best = -1;
        for (var end = 0; end < run.States.Count; end++)
        {
            if (best >= 0 && run.States.Ties[end].CompareTo(run.States.Ties[best]) >= 0) continue;
            var plan = new MaterialPlan(_tier.Problem, Chosen(run, end).Select(at => (at.Pattern, 1)));
            if (_tier.Accepts(plan) && _tier.Value(plan) <= _most) best = end;
        }

        return best < 0 ? null : [.. Chosen(run, best)];
    }

    private IEnumerable<(Pattern Pattern, SpanPlace? Place)> Chosen(Finished run, int end)
    {
        for (var k = run.Steps.Length - 1; k >= 0; end = run.Layers[k].From[end], k--)
        {
            if (run.Layers[k].Pattern[end] >= 0) yield return (_pool[run.Layers[k].Pattern[end]], run.Steps[k].Place);
        }
    }
}
