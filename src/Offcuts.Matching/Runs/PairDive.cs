using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// Fillings of a part that is too large to be decided: the linear program of <see cref="PairRelaxation"/> is solved, the layouts that it
/// uses most are laid, from the bottom of each run up, and it is solved again for what is left, the stagger to what has been laid now kept
/// in full. Once all joints lie fast, what is to be cut from what is a cutting-stock problem, which <see cref="PieceCutting"/> decides among
/// the ways of cutting found. Then some pairs are taken out and laid again in the same way, and what is better is kept.
/// Source: diving, a rounding of column generation, Joncour et al. 2010; ruin and recreate, Schrimpf et al. 2000 (both from memory).
/// Cost: some dozen solutions for the first filling, a few for each change. It proves nothing.
/// </summary>
internal sealed class PairDive : IDisposable
{
    private const int FirstRounds = 80;
    private const int Rounds = 5;
    private const int LastRounds = 30;
    private const double Sure = 0.8;
    private const int MostKnown = 60;
    private const int MostPatterns = 4000;
    private const int MostLearnt = 500;

    // Little against a cent of value, so that ties and joints decide among equals.
    private const long TieCost = StockPrices.Scale;
    private const long JointCost = StockPrices.Scale / 4;

    private readonly KindTable _table;
    private PairProgram _program;
    private readonly List<Position> _positions = [];
    private readonly Dictionary<(int, int?, long), KnownLayouts> _known = [];
    private readonly Random _random = new(11);
    private Effort _effort;

    private PairDive(KindTable table, Effort effort) => (_table, _program, _effort) = (table, new PairProgram(table, RunGoal.Together, 0), effort);

    // A pair of rows: what it may be laid from, what is laid.
    private sealed class Position(Row lower, Row? upper, CoursePair pair)
    {
        public Row Lower => lower;

        public Row? Upper => upper;

        public CoursePair Pair => pair;

        public PairGroup Group { get; set; } = null!;

        public Position? Below { get; set; }

        public Position? Above { get; set; }

        public PairLayout? Laid { get; set; }

        // Nothing can be laid on what lies below it.
        public bool Left { get; set; }

        public bool Open => Laid is null && !Left;

        public bool Next => Open && Below is not { Open: true };
    }

    /// <summary>What was laid first; rows for which nothing was found are left open. None where that took too long.</summary>
    public Filling? First { get; private set; }

    /// <summary>Lays a part for the first time.</summary>
    /// <param name="table">Kinds, rows and bars.</param>
    /// <param name="start">Prices to begin with.</param>
    /// <param name="effort">Limit.</param>
    public static PairDive Begin(KindTable table, StockPrices start, Effort effort)
    {
        var dive = new PairDive(table, effort);
        dive.AddPositions();
        var prices = dive._program.Prices([.. table.Kinds.Select(start.Of)], 0);
        if (dive._program.Price(prices, add: true, effort) is not null && dive._program.Generate(FirstRounds, effort) && dive.LayAll(double.PositiveInfinity))
        {
            dive.Keep();
            dive.First = dive.Cut(effort);
        }

        return dive;
    }

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

    /// <summary>A filling of what lies since the last move: it is decided what is cut from what. None where that took too long.</summary>
    public Filling? Cut(Effort effort) => PieceCutting.Of(_table, _program.Patterns, Laid(), effort);

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
            var key = (group.Pair.Lower.Shape, group.Pair.Upper?.Shape, group.Pair.Stagger);
            if (!_known.TryGetValue(key, out var known)) _known[key] = known = new KnownLayouts(MostLearnt);
            foreach (var layout in group.Layouts.Where(layout => layout.New)) known.Add(layout);
        }
    }

    /// <summary>What the program costs with everything laid as it lies, whatever was tried and refused since: 8 times the spend and the value given up, pieces shared out in parts.</summary>
    public double Cost { get; private set; }

    /// <summary>What of that is spent, in cents, rounded up.</summary>
    public long Spent { get; private set; }

    private bool LayAll(double most)
    {
        while (_positions.Exists(one => one.Open))
        {
            if (_effort.Over || _program.Cost > most) return false;
            LayMost();
            if (!_program.Generate(Rounds, _effort)) return false;
        }

        return _program.Generate(LastRounds, _effort) && _program.Cost <= most;
    }

    private void Keep() => (Cost, Spent) = (_program.Cost, _program.Spent);

    private void AddPositions()
    {
        var groups = new Dictionary<(int, int?, long), PairGroup>();
        foreach (var (lower, upper, of) in PairRelaxation.Pairs(_table))
        {
            var pair = of with { Joint = JointCost, Tie = TieCost };
            var key = (pair.Lower.Shape, pair.Upper?.Shape, pair.Stagger);
            if (!groups.TryGetValue(key, out var group)) groups[key] = group = new PairGroup(pair, 0);
            group.Count++;
            var position = new Position(lower, upper, pair) { Group = group };
            if (_positions.Count > 0 && lower.Stagger > 0 && lower.Below is { } below && below == (_positions[^1].Upper ?? _positions[^1].Lower))
                (_positions[^1].Above, position.Below) = (position, _positions[^1]);
            _positions.Add(position);
        }

        foreach (var group in groups.Values) _program.Add(group);
    }

    // Of the positions whose turn it is, those of which the program is sure, and in any case the surest quarter.
    private void LayMost()
    {
        var share = new Dictionary<PairLayout, double>(ReferenceEqualityComparer.Instance);
        var found = new List<(Position Position, PairLayout Layout, double Share)>();
        var next = _positions.Where(one => one.Next).ToArray();
        foreach (var position in next)
        {
            foreach (var layout in position.Group.Layouts.Where(layout => !share.ContainsKey(layout))) share[layout] = layout.Use.SolutionValue();
            var best = position.Group.Layouts.Where(layout => Keeps(position, layout)).MaxBy(layout => share[layout]);
            if (best is null) continue;
            found.Add((position, best, share[best]));
            share[best] -= 1;
        }

        foreach (var position in next.Where(position => !found.Exists(one => one.Position == position))) Leave(position);
        var rank = 0;
        foreach (var (position, layout, sure) in found.OrderByDescending(one => one.Share))
        {
            if (position.Open && (rank++ <= found.Count / 4 || sure >= Sure)) Fix(position, layout);
        }
    }

    // The shortest path does not see all of the stagger where there are openings.
    private static bool Keeps(Position position, PairLayout layout)
    {
        if (position.Upper is null) return true;
        return CoursePair.Keeps([.. Joints(position.Pair.Lower, layout.Lower)], [.. Joints(position.Pair.Upper!, layout.Upper)], position.Pair.Stagger);
    }

    private static IEnumerable<long> Joints(RowGraph row, int[] arcs) => arcs.Where(arc => row.Joint[row.To[arc]]).Select(arc => row.At[row.To[arc]]);

    private void Fix(Position position, PairLayout layout)
    {
        _program.SetCount(position.Group, position.Group.Count - 1);
        Set(position, layout);
        if (position.Above is { Open: true } above) Regroup(above);
    }

    private void Set(Position position, PairLayout layout)
    {
        position.Laid = layout;
        foreach (var kind in layout.Kinds.GroupBy(kind => kind)) _program.Demand(kind.Key, kind.Count());
    }

    private void TakeOut(Position position)
    {
        foreach (var kind in position.Laid!.Kinds.GroupBy(kind => kind)) _program.Demand(kind.Key, -kind.Count());
        position.Laid = null;
    }

    // An open position beside one that is laid has layouts of its own.
    private void Regroup(Position position)
    {
        var (old, pair) = (position.Group, position.Pair);
        if (_program.Groups.Contains(old) && old.Count > 0) _program.SetCount(old, old.Count - 1);
        var (below, above) = (Barred(pair.Lower, position.Below, top: true), Barred(pair.Upper ?? pair.Lower, position.Above, top: false));
        if (pair.Upper is null && above is not null) (below, above) = (below is null ? above : [.. below.Zip(above, (a, b) => a || b)], null);
        position.Group = _program.Add(new PairGroup(pair with { Below = below, Above = above }, 1));
        IEnumerable<PairLayout> learnt = _known.TryGetValue((pair.Lower.Shape, pair.Upper?.Shape, pair.Stagger), out var kept) ? kept.All : [];
        var known = learnt.Concat(old.Layouts).DistinctBy(KnownLayouts.NameOf)
            .Where(one => !one.Lower.Any(arc => below?[pair.Lower.To[arc]] ?? false) && !one.Upper.Any(arc => above?[pair.Upper!.To[arc]] ?? false));
        foreach (var one in known.OrderBy(_program.PriceOf).Take(MostKnown).ToArray()) _program.AddLayout(position.Group, one);
        if (!_program.AddBest(position.Group)) Leave(position);
    }

    private static bool[]? Barred(RowGraph row, Position? beside, bool top)
    {
        if (beside?.Laid is not { } laid) return null;
        var upper = top && beside.Pair.Upper is not null;
        long[] joints = [.. Joints(upper ? beside.Pair.Upper! : beside.Pair.Lower, upper ? laid.Upper : laid.Lower)];
        return [.. row.At.Select((at, n) => row.Joint[n] && joints.Any(joint => Math.Abs(joint - at) < beside.Pair.Stagger))];
    }

    private void Leave(Position position)
    {
        for (var one = position; one is { Open: true }; one = one.Above)
        {
            one.Left = true;
            _program.SetCount(one.Group, one.Group.Count - 1);
        }
    }

    // Neighbours in one run, or any few.
    private List<Position> Chosen()
    {
        var chosen = new HashSet<Position>();
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

    private IEnumerable<Laid> Laid()
    {
        foreach (var position in _positions.Where(one => one.Laid is not null))
        {
            foreach (var one in _table.Laid(position.Lower, position.Pair.Lower, position.Laid!.Lower)) yield return one;
            if (position.Upper is null) continue;
            foreach (var one in _table.Laid(position.Upper, position.Pair.Upper!, position.Laid!.Upper)) yield return one;
        }
    }
}
