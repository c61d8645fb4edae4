using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// What a part must cost at least where every row is covered, with the stagger: neighbouring rows are taken two by two from the bottom of
/// their run, each pair laid in whole numbers, each bar cut as it really can be; only how pairs and bars share out the pieces is relaxed, and
/// the stagger between one pair and the next. Where courses are alike, or alike by turns, that loses nothing: what is best for two can be
/// laid on itself again.
/// <code>
/// min   sum cost_p z_p
/// kinds      sum of those p gives  -  sum of those layout q takes >= 0     dual pi >= 0
/// pairs      sum y_q of the layouts of a shape of pairs  =  how many pairs have it
/// stock      sum z_p of a bar &lt;= how many there are
/// spend      sum price_p z_p &lt;= what the filling spends (for the value alone)      dual -v
/// trims      a piece serves for the next shorter one of its kind
/// </code>
/// Solved by column generation: GLOP proposes duals, <see cref="CoursePairs"/> and <see cref="BarGraph"/> price exactly. As in
/// <see cref="StockRelaxation"/> the bound is added up in whole numbers at rounded duals, whatever the linear program did:
/// <code>
/// L = sum over pairs of the least they cost to lay  -  sum over bars  count x max(0, the most it earns)  -  v x spend
/// </code>
/// Source: Gilmore and Gomory 1961; Lasdon 1970; smoothing of duals, Wentges 1997 (all from memory). Cost: some dozen rounds over all shapes
/// of pairs and bars.
/// </summary>
internal sealed class PairRelaxation
{
    // How much of the best prices so far is kept in those that are tried next.
    private const double Kept = 0.6;

    private static readonly Effort Unlimited = new(MatchLimits.None);

    private readonly KindTable _table;
    private readonly RunGoal _goal;
    private readonly long _spent;
    private readonly PairProgram _program;

    private PairRelaxation(KindTable table, RunGoal goal, long spent, PairProgram? program = null)
    {
        (_table, _goal, _spent, _program) = (table, goal, spent, program ?? Program(table, goal, spent));
    }

    /// <summary>The linear program of a goal with all pairs of rows, and no column yet.</summary>
    public static PairProgram Program(KindTable table, RunGoal goal, long spent) => Program(table, goal, spent, []);

    /// <summary>The same with these runs each as one, and pairs of the rows of all others; the runs come first.</summary>
    public static PairProgram Program(KindTable table, RunGoal goal, long spent, IEnumerable<PairGroup> runs)
    {
        var program = new PairProgram(table, goal, spent);
        var whole = new HashSet<Row>();
        foreach (var run in runs)
        {
            whole.UnionWith(run.Stack!.Rows);
            program.Add(run);
        }

        foreach (var group in Groups(table, whole)) program.Add(group);
        return program;
    }

    /// <summary>The pairs of rows of a table, those that can be laid alike as one; but those of these rows.</summary>
    public static IEnumerable<PairGroup> Groups(KindTable table, IReadOnlySet<Row>? but = null) => Pairs(table).Where(pair => but is null || !but.Contains(pair.Lower))
        .Select(pair => new PairGroup(pair.Of, 1)).GroupBy(group => group.Shape).Select(same => new PairGroup(same.First().Pair, same.Count()));

    /// <summary>A bound that is true for every filling that covers every row (and spends no more than so much), and the prices that gave it.</summary>
    /// <param name="table">Kinds, rows and bars.</param>
    /// <param name="goal">What is bounded.</param>
    /// <param name="spent">What the filling spends, for the bound of the value.</param>
    /// <param name="start">Prices to begin with.</param>
    /// <param name="known">A value that is known to be reached: nothing has to be proven above it.</param>
    /// <param name="effort">Limit.</param>
    /// <returns>
    /// None where some row can't be covered at all, or where time ran out before everything was priced once. Early where time ended it later: with more of it the bound may be closer, and
    /// what the stock alone knows may be above it.
    /// </returns>
    public static (long Bound, StockPrices Prices, bool Early)? Solve(KindTable table, RunGoal goal, long spent, StockPrices start, long known, Effort effort)
    {
        var relaxation = new PairRelaxation(table, goal, spent);
        using var program = relaxation._program;
        return relaxation.Generate(program.Prices([.. table.Kinds.Select(start.Of)], start.Spend), known, effort) is { } best ? (best.Bound, Of(table, best.Prices), best.Early) : null;
    }

    /// <summary>The same of a program of that goal that has its groups already.</summary>
    public static (long Bound, PairPrices Prices, bool Early)? Solve(KindTable table, PairProgram program, RunGoal goal, long spent, PairPrices start, long known, Effort effort) =>
        new PairRelaxation(table, goal, spent, program).Generate(start, known, effort);

    /// <summary>The bound that these prices give for a filling that covers every row.</summary>
    public static long At(KindTable table, RunGoal goal, long spent, StockPrices prices)
    {
        var given = new PairPrices([.. table.Kinds.Select(prices.Of)], prices.Spend, prices.GivenUp);
        return new PairPricing(table).Sum(given, Unlimited) is { } sum ? Bound(given, sum, goal, spent) : long.MinValue / 8;
    }

    /// <summary>What every filling that covers every row spends at least, in whole new pieces: by prices that gave a bound of the spend, and by length alone. 0 where time runs out before.</summary>
    /// <param name="table">Kinds, rows and bars.</param>
    /// <param name="prices">Prices of kinds and of money.</param>
    /// <param name="effort">Limit.</param>
    public static long LeastSpend(KindTable table, StockPrices prices, Effort effort)
    {
        var pricing = new PairPricing(table);
        return Math.Max(
            pricing.LeastSpend(new PairPrices([.. table.Kinds.Select(prices.Of)], prices.Spend, GivenUp: 0), effort),
            pricing.LeastSpend(new PairPrices([.. table.Kinds.Select(kind => kind.Length)], Spend: 0, GivenUp: 0), effort));
    }

    /// <summary>Neighbouring rows two by two from the bottom of each run; what is left over, alone.</summary>
    public static IEnumerable<(Row Lower, Row? Upper, CoursePair Of)> Pairs(KindTable table)
    {
        foreach (var bottom in table.Part.Rows.Where(row => row.Stretches.Length > 0 && row.Below is not { Stretches.Length: > 0 }))
        {
            for (var row = bottom; row is { Stretches.Length: > 0 };)
            {
                var above = row.Above is { Stretches.Length: > 0 } one && row.Stagger > 0 ? one : null;
                yield return (row, above, new CoursePair(table.Rows[row.Index], above is null ? null : table.Rows[above.Index], row.Stagger));
                row = above is null ? row.Above : above.Above;
            }
        }
    }

    private (long Bound, PairPrices Prices, bool Early)? Generate(PairPrices start, long known, Effort effort)
    {
        var center = start;
        if (_program.Price(center, effort) is not { } first) return null;
        var best = Bound(center, first.Sum, _goal, _spent);
        while (!effort.Over && _program.Solve() is { } duals)
        {
            if (Reached(best, known)) return (best, center, Early: false);
            var added = false;
            foreach (var kept in new[] { Kept, 0 })
            {
                long Between(long a, long b) => kept == 0 ? b : (long)(kept * a + (1 - kept) * b);
                var prices = duals with { Kinds = [.. duals.Kinds.Select((dual, k) => Between(center.Kinds[k], dual))], Spend = _goal == RunGoal.GivenUp ? Between(center.Spend, duals.Spend) : duals.Spend };
                if (_program.Price(prices, effort) is not { } priced) return (best, center, Early: true);
                if (Bound(prices, priced.Sum, _goal, _spent) is var bound && bound > best) (best, center) = (bound, prices);
                added = priced.Added;
                if (added) break;
            }

            if (!added) return (best, center, Early: false);
        }

        return (best, center, Early: true);
    }

    // Nothing beyond what the linear program itself costs can be proven.
    private bool Reached(long bound, long known)
    {
        var least = (long)Math.Floor(Math.Clamp(_program.Cost, -1e15, 1e15));
        return _goal == RunGoal.Spend ? _table.Part.NextSpend(bound) >= Math.Min(known, _table.Part.NextSpend(least)) : bound >= Math.Min(known, least);
    }

    private static long Bound(PairPrices prices, Int128 sum, RunGoal goal, long spent)
    {
        if (goal == RunGoal.GivenUp) sum -= (Int128)prices.Spend * spent;
        var whole = sum / StockPrices.Scale + (sum > 0 && sum % StockPrices.Scale != 0 ? 1 : 0);
        return (long)Int128.Clamp(whole, long.MinValue / 8, long.MaxValue / 8);
    }

    /// <summary>Prices of a program as those of stock.</summary>
    public static StockPrices Of(KindTable table, PairPrices prices) => new(table.Part)
    {
        ByKind = Enumerable.Range(0, prices.Kinds.Length).ToDictionary(k => table.Kinds[k], k => prices.Kinds[k]),
        Spend = prices.Spend,
        GivenUp = prices.GivenUp,
    };
}
