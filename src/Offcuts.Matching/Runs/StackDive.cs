using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// Fillings of a part whose runs are listed (<see cref="StackModes"/>): the linear program with whole runs as layouts is solved, the runs of which it is sure are laid, and it is
/// solved again for what is left; what is cut from what decides <see cref="PieceCutting"/>. Then some runs are taken out and laid again in the same way. As <see cref="PairDive"/> does with
/// pairs of rows; here nothing is ever left open, since a run that is laid as a whole keeps its stagger by itself. It proves nothing.
/// </summary>
internal sealed class StackDive
{
    private const int Rounds = 3;
    private const int LastRounds = 6;
    private const double Sure = 0.8;
    private const double Slack = 10;
    private const int MostPatterns = 4000;
    private const int MostKnown = 60;

    private readonly KindTable _table;
    private readonly StackModes[] _stacks;
    private readonly Laid[] _others;
    private readonly List<PairLayout>[] _known;
    private readonly Random _random = new(12);
    private List<PairPattern> _patterns = [];
    private PairLayout[] _laid = [];
    private double _cost;

    private StackDive(KindTable table, StackModes[] stacks, Filling known)
    {
        (_table, _stacks, _known) = (table, stacks, [.. stacks.Select(_ => new List<PairLayout>())]);
        _others = [.. Others(stacks, known)];
    }

    /// <summary>What was laid first; none where time ran out before.</summary>
    public Filling? First { get; private set; }

    /// <summary>What kinds of pieces are worth, spend and value in one sum; none where time ran out before.</summary>
    public StockPrices? Prices { get; private set; }

    /// <summary>Lays the listed runs of a part for the first time; what else is laid of it stays.</summary>
    /// <param name="table">Kinds, rows and bars.</param>
    /// <param name="stacks">Its listed runs, one at least.</param>
    /// <param name="start">Prices to begin with.</param>
    /// <param name="known">How the rows of its other runs are laid.</param>
    /// <param name="effort">Limit.</param>
    public static StackDive Begin(KindTable table, StackModes[] stacks, StockPrices start, Filling known, Effort effort)
    {
        var dive = new StackDive(table, stacks, known);
        using var program = dive.Program();
        var prices = program.Prices([.. table.Kinds.Select(start.Of)], 0);
        if (PairRelaxation.Solve(table, program, RunGoal.Together, 0, prices, long.MaxValue, effort.Share(0.4)) is not { } solved) return dive;
        dive.Prices = PairRelaxation.Of(table, solved.Prices);
        if (program.Solve() is not null)
            dive.First = dive.Lay(program, new PairLayout?[stacks.Length], (double.PositiveInfinity, long.MaxValue), effort);
        return dive;
    }

    /// <summary>
    /// Takes some runs out of what it laid last and lays them again, where the program says that it costs hardly more; else all lies as before. A filling
    /// where it says too that less than so much is spent: what is cut from what takes long to decide.
    /// </summary>
    public Filling? Change(long spend, Effort effort)
    {
        if (_laid.Length == 0) return null;
        using var program = Program();
        var kept = _laid.Select(one => (PairLayout?)one).ToArray();
        foreach (var s in Enumerable.Range(0, _stacks.Length).OrderBy(_ => _random.Next()).Take(1 + _random.Next(Math.Min(4, _stacks.Length)))) kept[s] = null;
        for (var s = 0; s < kept.Length; s++)
        {
            if (kept[s] is { } fast) Fix(program, s, fast);
            else foreach (var layout in _known[s]) program.AddLayout(program.Groups[s], layout);
        }

        return program.Generate(Rounds, effort) && !effort.Over ? Lay(program, kept, (_cost + Slack, spend), effort) : null;
    }

    private PairProgram Program()
    {
        var program = PairRelaxation.Program(_table, RunGoal.Together, 0, _stacks.Select(stack => new PairGroup(stack)));
        foreach (var pattern in _patterns) program.Add(pattern);
        return program;
    }

    private Filling? Lay(PairProgram program, PairLayout?[] laid, (double Cost, long Spend) most, Effort effort)
    {
        if (!LayAll(program, laid, effort.Share(0.6)) || program.Cost > most.Cost) return null;
        for (var s = 0; s < _stacks.Length; s++)
        {
            _known[s] = [.. program.Groups[s].Layouts.Append(laid[s]!).Concat(_known[s]).DistinctBy(KnownLayouts.NameOf).Take(MostKnown)];
        }

        _patterns = [.. program.Patterns.TakeLast(MostPatterns)];
        (_laid, _cost) = ([.. laid.Select(one => one!)], program.Cost);
        if (most.Spend < long.MaxValue && _table.Part.NextSpend(program.Spent) >= most.Spend) return null;
        return PieceCutting.Of(_table, program.Patterns, Pieces(_table, _stacks, laid).Concat(_others), effort);
    }

    /// <summary>Lays the runs of a program that are not laid yet, those that it is surest of first; once time is over all that are left. False where it can't be solved.</summary>
    /// <param name="program">The program with these runs as its first groups, with columns, solved.</param>
    /// <param name="laid">How they are laid; what is not is filled in.</param>
    /// <param name="effort">Limit.</param>
    public static bool LayAll(PairProgram program, PairLayout?[] laid, Effort effort)
    {
        while (laid.Contains(null))
        {
            var open = Enumerable.Range(0, laid.Length).Where(s => laid[s] is null && program.Groups[s].Layouts.Count > 0).Select(s => (Stack: s, Best: program.Groups[s].Layouts.MaxBy(layout => layout.Use.SolutionValue())!))
                .Select(one => (one.Stack, one.Best, Share: one.Best.Use.SolutionValue())).OrderByDescending(one => one.Share).ToArray();
            if (open.Length == 0) return false;
            foreach (var (stack, best, share) in open.Where((one, n) => n <= open.Length / 4 || one.Share >= Sure || effort.Over)) Fix(program, stack, laid[stack] = best);
            if (!program.Generate(laid.Contains(null) ? Rounds : LastRounds, effort)) return false;
        }

        return true;
    }

    private static void Fix(PairProgram program, int stack, PairLayout layout)
    {
        program.SetCount(program.Groups[stack], 0);
        foreach (var kind in layout.Kinds.GroupBy(kind => kind)) program.Demand(kind.Key, kind.Count());
    }

    /// <summary>The pieces of runs that are laid whole.</summary>
    public static IEnumerable<Laid> Pieces(KindTable table, StackModes[] stacks, PairLayout?[] laid) =>
        stacks.Zip(laid).SelectMany(one => one.Second!.Rows.SelectMany((row, r) => table.Laid(one.First.Rows[r], table.Rows[one.First.Rows[r].Index], row.Arcs)));

    /// <summary>What is laid in rows of other runs.</summary>
    public static IEnumerable<Laid> Others(StackModes[] stacks, Filling known)
    {
        var listed = stacks.SelectMany(stack => stack.Rows).ToHashSet();
        return known.Bars.SelectMany(bar => bar.Laid).Where(one => !listed.Contains(one.Row));
    }
}
