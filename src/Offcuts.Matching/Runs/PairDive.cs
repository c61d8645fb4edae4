using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// Fillings of a part that is too large to be decided: the linear program of <see cref="PairRelaxation"/> is solved, the layouts that it
/// uses most are laid, from the bottom of each run up, and it is solved again for what is left, the stagger to what has been laid now kept
/// in full. Runs of which all layouts are listed (<see cref="StackModes"/>) are laid whole beside the pairs of the others, and a run of which some pair finds no way on
/// is laid anew by <see cref="RunLaying"/>. Once all joints lie fast, what is to be cut from what is a cutting-stock problem, which <see cref="PieceCutting"/> decides among
/// the ways of cutting found. Then some pairs are taken out and laid again in the same way, and what is better is kept.
/// Source: diving, a rounding of column generation, Joncour et al. 2010; ruin and recreate, Schrimpf et al. 2000 (both from memory).
/// Cost: some dozen solutions for the first filling, a few for each change. It proves nothing.
/// </summary>
internal sealed class PairDive : IDisposable
{
    private const int Rounds = 5;
    private const int LastRounds = 30;
    private const double Sure = 0.8;
    private const int MostKnown = 60;
    private const int MostPatterns = 4000;
    private const int MostLearnt = 500;
    private const double OfLaying = 0.8;
    private const double OfFirstRounds = 0.5;
    private const double OfRun = 0.3;

    // What is cut from what is mostly found soon to a bar or two, and the rest of the time would go into the last of them: layings that the program finds better gain more.
    private const double OfFirstCut = 0.3;

    private readonly KindTable _table;
    private PairProgram _program;
    private readonly List<PairPosition> _positions = [];
    private readonly Dictionary<PairShape, KnownLayouts> _known = [];
    private readonly Random _random = new(11);
    private readonly Effort _first;
    private Effort _effort;
    private bool _begun;

    private PairDive(KindTable table, Effort first)
    {
        (_table, _program) = (table, new PairProgram(table, RunGoal.Together, 0));
        (_first, _effort) = (first, first.Share(OfLaying));
    }

    /// <summary>What was laid first; rows for which nothing was found are left open. None where the program was not priced in time, or stock is limited and nothing was cut in time.</summary>
    public Filling? First { get; private set; }

    /// <summary>What kinds of pieces are worth, spend and value in one sum; none where time ran out before.</summary>
    public StockPrices? Prices { get; private set; }

    /// <summary>Lays a part for the first time.</summary>
    /// <param name="table">Kinds, rows and bars.</param>
    /// <param name="stacks">Runs that are laid whole; all others are laid by pairs.</param>
    /// <param name="start">Prices to begin with.</param>
    /// <param name="effort">Limit.</param>
    public static PairDive Begin(KindTable table, StackModes[] stacks, StockPrices start, Effort effort)
    {
        var (dive, forCutting) = (new PairDive(table, effort), effort.Seconds * (1 - OfLaying));
        dive.AddPositions(stacks);
        var prices = dive._program.Prices([.. table.Kinds.Select(start.Of)], 0);
        if (PairRelaxation.Solve(table, dive._program, RunGoal.Together, 0, prices, long.MaxValue, dive._effort.Share(OfFirstRounds)) is not { } solved) return dive;
        dive.Prices = PairRelaxation.Of(table, solved.Prices);
        if (dive._program.Solve() is not null && dive.LayAll(double.PositiveInfinity))
        {
            dive._begun = true;
            dive.Keep();
            dive.First = dive.Cut(effort.Share(OfFirst(table.Part, forCutting, effort.Seconds)));
        }

        return dive;
    }

    // All that is left where stock is limited: nothing stands behind the solver there.
    private static double OfFirst(RunPart part, double reserved, double left) => part.Rests || !(reserved < left) ? 1 : Math.Max(OfFirstCut, reserved / left);

    public void Dispose() => _program.Dispose();

    /// <summary>
    /// False where nothing was laid, or some pair could not be: it stays so, and no move comes to anything. Whoever moves until time is over has to ask first.
    /// </summary>
    public bool CanMove => First is not null && _positions.Count > 0 && _positions.TrueForAll(one => one.Laid is not null);

    /// <summary>
    /// Takes some pairs out of what it laid last and lays them again: a filling where that comes to no more than so much, by the program's
    /// own sum; else everything lies as before.
    /// </summary>
    public Filling? Change(double most, Effort effort) => Move(most, effort) ? Cut(effort) : null;

    /// <summary>The same, but nothing is cut: true where it lies otherwise now.</summary>
    public bool Move(double most, Effort effort)
    {
        if (!CanMove) return false;
        _effort = effort;
        var before = _positions.Select(one => one.Laid).ToArray();
        Renew();
        foreach (var position in Chosen()) TakeOut(position);
        var laid = false;
        if (_program.Solve() is not null)
        {
            foreach (var position in _positions.Where(one => one.Open)) Regroup(position);
            laid = _program.Generate(Rounds, _effort) && LayAll(most);
        }

        if (laid && !_positions.Exists(one => one.Left))
        {
            Keep();
            return true;
        }

        for (var p = 0; p < before.Length; p++) (_positions[p].Laid, _positions[p].Left) = (before[p], false);
        return false;
    }

    /// <summary>A filling of what lies since the last move: it is decided what is cut from what. None where stock is limited and nothing was found in time; else there is always one.</summary>
    public Filling? Cut(Effort effort) => PieceCutting.Of(_table, _program.Patterns, _positions.SelectMany(one => one.Pieces(_table)), effort);

    // A new program with what is laid as it is and the patterns found so far, or it would grow with every change.
    private void Renew()
    {
        Learn();
        var patterns = _program.Patterns;
        _program.Dispose();
        _program = new PairProgram(_table, RunGoal.Together, 0);
        foreach (var pattern in patterns.TakeLast(MostPatterns)) _program.Add(pattern);
        foreach (var position in _positions) Set(position, position.Laid!);
    }

    private void Learn()
    {
        foreach (var group in _program.Groups)
        {
            if (!_known.TryGetValue(group.Shape, out var known)) _known[group.Shape] = known = new KnownLayouts(MostLearnt);
            foreach (var layout in group.Layouts.Where(layout => layout.New)) known.Add(layout);
        }
    }

    /// <summary>What the program costs with everything laid as it lies, whatever was tried and refused since: 8 times the spend, the value given up, and the little that ties, joints and saw cuts come to (<see cref="LaterPrices"/>); pieces shared out in parts.</summary>
    public double Cost { get; private set; }

    /// <summary>What of that is spent, in cents, rounded up.</summary>
    public long Spent { get; private set; }

    private bool LayAll(double most)
    {
        while (_positions.Exists(one => one.Open))
        {
            // Where time runs out before all is laid for the first time, the rest is laid as the program stands; what lies already has only to stay as it is.
            if (_effort.Cancel.IsCancellationRequested || (_begun && _effort.Over) || _program.Cost > most) return false;
            LayMost();
            if (!_program.Generate(Rounds, _effort)) return false;
        }

        return _program.Generate(LastRounds, _effort) && _program.Cost <= most;
    }

    private void Keep() => (Cost, Spent) = (_program.Cost, _program.Spent);

    private void AddPositions(StackModes[] stacks)
    {
        var groups = new Dictionary<PairShape, PairGroup>();
        var whole = stacks.SelectMany(stack => stack.Rows).ToHashSet();
        var later = LaterPrices.Of(_table.Part);
        foreach (var (lower, upper, of) in PairRelaxation.Pairs(_table).Where(pair => !whole.Contains(pair.Lower)))
        {
            var pair = of with { Joint = later.Joint, Tie = later.Tie };
            var own = new PairGroup(pair, 0);
            if (!groups.TryGetValue(own.Shape, out var group)) groups[own.Shape] = group = own;
            group.Count++;
            var position = new PairPosition(lower, upper, pair) { Group = group };
            if (_positions.Count > 0 && lower.Stagger > 0 && lower.Below is { } below && below == (_positions[^1].Upper ?? _positions[^1].Lower))
                (_positions[^1].Above, position.Below) = (position, _positions[^1]);
            _positions.Add(position);
        }

        foreach (var group in groups.Values) _program.Add(group);
        foreach (var stack in stacks) _positions.Add(new PairPosition(stack.Rows[0], null, default) { Group = _program.Add(new PairGroup(stack)) });
    }

    // Of the positions whose turn it is, those of which the program is sure, and in any case the surest quarter; once time is over all.
    private void LayMost()
    {
        var share = new Dictionary<PairLayout, double>(ReferenceEqualityComparer.Instance);
        var found = new List<(PairPosition Position, PairLayout Layout, double Share)>();
        var next = _positions.Where(one => one.Next).ToArray();
        foreach (var position in next)
        {
            foreach (var layout in position.Group.Layouts.Where(layout => !share.ContainsKey(layout))) share[layout] = layout.Use.SolutionValue();
            var best = position.Group.Layouts.Where(position.Keeps).MaxBy(layout => share[layout]);
            if (best is null) continue;
            found.Add((position, best, share[best]));
            share[best] -= 1;
        }

        foreach (var position in next.Where(position => position.Open && !found.Exists(one => one.Position == position))) LeaveOrRelay(position);
        var rank = 0;
        foreach (var (position, layout, sure) in found.OrderByDescending(one => one.Share))
        {
            if (position.Open && (rank++ <= found.Count / 4 || sure >= Sure || _effort.Over)) Fix(position, layout);
        }
    }

    private void Fix(PairPosition position, PairLayout layout)
    {
        _program.SetCount(position.Group, position.Group.Count - 1);
        Set(position, layout);
        if (position.Above is { Open: true } above) Regroup(above);
    }

    private void Set(PairPosition position, PairLayout layout)
    {
        position.Laid = layout;
        foreach (var kind in layout.Kinds.GroupBy(kind => kind)) _program.Demand(kind.Key, kind.Count());
    }

    private void TakeOut(PairPosition position)
    {
        foreach (var kind in position.Laid!.Kinds.GroupBy(kind => kind)) _program.Demand(kind.Key, -kind.Count());
        position.Laid = null;
    }

    // An open position beside one that is laid has layouts of its own.
    private void Regroup(PairPosition position)
    {
        var (old, pair) = (position.Group, position.Pair);
        if (_program.Groups.Contains(old) && old.Count > 0) _program.SetCount(old, old.Count - 1);
        if (position.Group.Stack is { } stack)
        {
            position.Group = _program.Add(new PairGroup(stack));
            AddKnown(position, old, _ => true);
            return;
        }

        var (below, above) = (position.Below?.Barred(pair.Lower, top: true), position.Above?.Barred(pair.Upper ?? pair.Lower, top: false));
        if (pair.Upper is null && above is not null) (below, above) = (below is null ? above : [.. below.Zip(above, (a, b) => a || b)], null);
        position.Group = _program.Add(new PairGroup(pair with { Below = below, Above = above }, 1));
        AddKnown(position, old, one => !one.Lower.Any(arc => below?[pair.Lower.To[arc]] ?? false) && !one.Upper.Any(arc => above?[pair.Upper!.To[arc]] ?? false));
    }

    private void AddKnown(PairPosition position, PairGroup old, Func<PairLayout, bool> fits)
    {
        IEnumerable<PairLayout> learnt = _known.TryGetValue(position.Group.Shape, out var kept) ? kept.All : [];
        var known = learnt.Concat(old.Layouts).DistinctBy(KnownLayouts.NameOf).Where(fits);
        foreach (var one in known.OrderBy(_program.PriceOf).Take(MostKnown).ToArray()) _program.AddLayout(position.Group, one);
        if (!_program.AddBest(position.Group)) LeaveOrRelay(position);
    }

    // A pair that finds no way on over what lies below it: its run is laid anew as a whole. Later, when something lies that keeps the rules, it stays as it was instead.
    private void LeaveOrRelay(PairPosition position)
    {
        if (_begun || _table.Part.Rests || !Relay(position)) Leave(position);
    }

    private bool Relay(PairPosition position)
    {
        var lowest = position;
        while (lowest.Below is { } below) lowest = below;
        var run = new List<PairPosition>();
        for (var one = lowest; one is not null; one = one.Above) run.Add(one);
        RowGraph[] rows = [.. run.SelectMany(one => new[] { one.Pair.Lower, one.Pair.Upper }).OfType<RowGraph>()];
        if (rows.Length < 2 || RunLaying.Of(rows, position.Pair.Stagger, position.Lower.Shortest, _program.Lacking, _first.Share(OfRun)) is not { } laid) return false;
        var r = 0;
        foreach (var one in run)
        {
            if (one.Laid is not null) TakeOut(one);
            else if (!one.Left) _program.SetCount(one.Group, one.Group.Count - 1);
            one.Left = false;
            Set(one, PairLayout.Of(one.Pair, laid[r++], one.Pair.Upper is null ? [] : laid[r++]));
        }

        return true;
    }

    private void Leave(PairPosition position)
    {
        for (var one = position; one is { Open: true }; one = one.Above)
        {
            one.Left = true;
            _program.SetCount(one.Group, one.Group.Count - 1);
        }
    }

    // Neighbours in one run, or any few.
    private List<PairPosition> Chosen()
    {
        var chosen = new HashSet<PairPosition>();
        var most = Math.Min(_positions.Count, 2 + _random.Next(Math.Max(2, Math.Min(8, _positions.Count / 3))));
        var one = _positions[_random.Next(_positions.Count)];
        var along = _random.Next(2) == 0;
        while (chosen.Count < most)
        {
            chosen.Add(one);
            one = along && one.Above is { } above ? above : _positions[_random.Next(_positions.Count)];
        }

        return [.. chosen];
    }
}
