using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// The least spend, or with that spend the least value given up, where runs lie each in one of a few modes (<see cref="StackModes"/>): branch and bound on which mode that is, over the linear program of
/// <see cref="PairRelaxation"/> with whole runs as its layouts, and pairs of rows for those runs that are not listed; these stay laid as they are known. At a node's prices every mode of every run has a bound of its own,
/// <code>
/// L(node) - least of the run  +  least of the run in this mode
/// </code>
/// and where that comes to no less than what is known, the mode is struck out of the node: what a program of mixed modes hides is mostly decided so without
/// another program. Where each run has one mode left, what the program uses most is laid, and <see cref="PieceCutting"/> decides what is cut from what.
/// Bounds are added up in whole numbers, as in the relaxation. Source: fixing by reduced costs, Dantzig, Fulkerson and Johnson 1954; branch and price,
/// Barnhart et al. 1998 (both from memory). Cost: a program a node, some tenths of a second, and for each node with one mode a run a second or two more.
/// </summary>
internal sealed class StackSearch
{
    private const int MostNodes = 400;

    // What is laid and cut takes a second or two each; fewer where nobody has said how long it may take.
    private const int MostLaid = 16;
    private const int MostLaidWithoutTime = 4;

    private readonly KindTable _table;
    private readonly StackModes[] _stacks;
    private readonly RunGoal _goal;
    private readonly Effort _effort;
    private readonly long _spent;
    private readonly List<PairPattern> _patterns = [];
    private readonly PriorityQueue<Node, (long, long)> _open = new();
    private Filling _best;
    private long _closed = long.MaxValue;
    private int _number;
    private int _laid;

    private StackSearch(KindTable table, StackModes[] stacks, RunGoal goal, Filling known, Effort effort) =>
        (_table, _stacks, _goal, _best, _effort, _spent) = (table, stacks, goal, known, effort, known.Figures[table.Part.Levels.Length]);

    // Which modes each run may still have; nothing in it costs less than the bound.
    private sealed record Node(int[][] Modes, long Bound, PairPrices Prices);

    /// <summary>
    /// The better of what is known and what was found, and a bound that is true for every filling that covers every row (and, for the value given up, spends no more
    /// than what is known; so it holds too where something is found that spends less).
    /// </summary>
    /// <param name="table">Kinds, rows and bars.</param>
    /// <param name="stacks">The runs of the table.</param>
    /// <param name="goal">Spend, or value given up.</param>
    /// <param name="start">Prices to begin with.</param>
    /// <param name="known">A filling that covers every row.</param>
    /// <param name="effort">Limit.</param>
    public static (Filling Best, long Bound) Solve(KindTable table, StackModes[] stacks, RunGoal goal, StockPrices start, Filling known, Effort effort)
    {
        var search = new StackSearch(table, stacks, goal, known, effort);
        var all = search.AllModes;
        using (var program = search.Program(all)) search.Push(new Node(all, long.MinValue / 8, program.Prices([.. table.Kinds.Select(start.Of)], start.Spend)));
        search.Run();
        return (search._best, search.Bound);
    }

    private int[][] AllModes => [.. _stacks.Select(stack => Enumerable.Range(0, stack.Modes).ToArray())];

    private long Value => _best.Figures[_table.Part.Levels.Length + (_goal == RunGoal.Spend ? 0 : 1)];

    private bool InVain(long bound) => (_goal == RunGoal.Spend ? _table.Part.NextSpend(bound) : bound) >= Value;

    private PairProgram Program(int[][] modes)
    {
        var program = PairRelaxation.Program(_table, _goal, _spent, _stacks.Select((stack, s) => new PairGroup(stack, modes[s])));
        foreach (var pattern in _patterns) program.Add(pattern);
        return program;
    }

    // What was closed because nothing better is in it holds no less than what is known; what is open or could not be settled, no less than its bound.
    private long Bound => Math.Min(Math.Min(_closed, Value), _open.Count > 0 ? _open.Peek().Bound : long.MaxValue);

    private void Push(Node node) => _open.Enqueue(node, (node.Bound, _number++));

    private void Run()
    {
        var most = double.IsInfinity(_effort.Seconds) ? MostLaidWithoutTime : MostLaid;
        for (var n = 0; n < MostNodes && _laid < most && _open.Count > 0 && !InVain(_open.Peek().Bound) && !_effort.Over; n++)
        {
            var node = _open.Peek();
            if (Settle(node) is not { } children) return;
            _open.Dequeue();
            foreach (var child in children) Push(child);
        }
    }

    // What is left of a node; none where time ran out.
    private IReadOnlyList<Node>? Settle(Node node)
    {
        using var program = Program(node.Modes);
        if (PairRelaxation.Solve(_table, program, _goal, _spent, node.Prices, Value, _effort) is not { } solved) return null;
        _patterns.Clear();
        _patterns.AddRange(program.Patterns);
        var bound = Math.Max(node.Bound, solved.Bound);
        if (InVain(bound)) return [];
        // Out of time: the node stays open with what was proven of it.
        if (Left(node with { Bound = bound }, solved.Bound, solved.Prices, out var bounds) is not { } left) return [node with { Bound = bound, Prices = solved.Prices }];
        if (left.Any(modes => modes.Length == 0)) return [];
        if (left.All(modes => modes.Length == 1))
        {
            _laid++;
            // One that spends less may give up more: what was closed before was held against a lower value then, but the bound of this node is lower still, and is noted.
            if (Lay(program) is { } filling && filling.CompareTo(_best) < 0) _best = filling;
            if (!InVain(bound)) _closed = Math.Min(_closed, bound);
            return _effort.Over ? null : [];
        }

        // The run with the fewest modes left of which there are several: the rest of its children are soon closed.
        var branched = Enumerable.Range(0, left.Length).Where(s => left[s].Length > 1).MinBy(s => left[s].Length);
        return [.. left[branched].Select(mode => new Node([.. left.Select((modes, s) => s == branched ? [mode] : modes)], Math.Max(bound, bounds[branched][mode]), solved.Prices))];
    }

    // Which modes are left of a node, run by run, and what each mode of each run costs at least; none where time ran out.
    private int[][]? Left(Node node, long bound, PairPrices prices, out long[][] bounds)
    {
        bounds = new long[_stacks.Length][];
        var left = new int[_stacks.Length][];
        for (var s = 0; s < _stacks.Length; s++)
        {
            if (_effort.Over) return null;
            var (least, own) = (_stacks[s].Least(prices.Kinds), new long[_stacks[s].Modes]);
            var floor = node.Modes[s].Min(mode => least[mode]);
            // Rounded down, and the bound is rounded up: one cent less.
            for (var mode = 0; mode < own.Length; mode++) own[mode] = least[mode] == long.MaxValue ? long.MaxValue : Math.Max(node.Bound, bound + (least[mode] - floor) / StockPrices.Scale - 1);
            left[s] = [.. node.Modes[s].Where(mode => least[mode] < long.MaxValue && !InVain(own[mode]))];
            bounds[s] = own;
        }

        return left;
    }

    private Filling? Lay(PairProgram program)
    {
        var laid = new PairLayout?[_stacks.Length];
        if (_effort.Over || program.Solve() is null || !StackDive.LayAll(program, laid, _effort)) return null;
        return PieceCutting.Of(_table, program.Patterns, StackDive.Pieces(_table, _stacks, laid).Concat(StackDive.Others(_stacks, _best)), _effort);
    }
}
