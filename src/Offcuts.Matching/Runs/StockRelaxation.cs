using Google.OrTools.LinearSolver;
using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>Which figure is bounded.</summary>
internal enum RunGoal
{
    /// <summary>Cents spent.</summary>
    Spend,

    /// <summary>Cents of yard value given up, with the spend not above the filling's.</summary>
    GivenUp,

    /// <summary>Nothing: whether the stock reaches at all. A bound above 0 says that it does not.</summary>
    Reach,

    /// <summary>Both in one sum, a cent spent counting eight times: prices for the search, no bound.</summary>
    Together,
}

/// <summary>
/// What the stock must give at least, whatever the rows look like: so many intervals in all, so many odd ends of each length, pieces for the
/// stretches that one piece covers, so many units of board. Which piece lies where, the shortest piece in a row and the stagger are
/// relaxed; how each bar is really cut is not.
/// <code>
/// min   sum cost_p z_p
/// intervals     sum of those p gives + sum over stretches covered by one piece of theirs  >= all intervals     dual pi
/// odd ends      the same for each odd length                                                                   dual sigma
/// alone         sum of those p gives - stretches of that length covered by one piece  >= 0                     dual alpha
/// lengths       sum of units p gives  >= all units                                                             dual phi
/// stock         sum z_p of a bar &lt;= how many there are
/// spend         sum price_p z_p &lt;= what the filling spends (for the value alone)                               dual -v
/// </code>
/// Solved by column generation: GLOP proposes duals, <see cref="BarWorth"/> prices every bar exactly. The duals are rounded to whole
/// numbers and the bound is added up in whole numbers, so it holds whatever the linear program did:
/// <code>
/// L = sum over rows of what they need, at those prices (of each level the dearest rows left out, as many as the filling leaves out)
///   - sum over bars  count x max(0, the most it earns)  - v x spend
/// </code>
/// Source: Gilmore and Gomory 1961; the Lagrangian bound, Lasdon 1970 (both from memory). Cost: some dozen rounds over all bars.
/// </summary>
internal sealed class StockRelaxation
{
    private const int MostRounds = 120;
    private const double Missing = 1e7;
    private const double MostPrice = 1e17;

    private readonly RunPart _part;
    private readonly Filling _filling;
    private readonly RunGoal _goal;
    private readonly Kinds _kinds;
    private readonly StretchNeed[][] _needs;
    private readonly HashSet<string> _columns = [];
    private Solver _solver = null!;
    private Constraint? _intervals;
    private Constraint? _lengths;
    private Constraint? _spend;
    private Dictionary<Kind, Constraint> _odd = [];
    private Dictionary<long, Constraint> _alone = [];
    private Constraint[] _stock = [];

    private StockRelaxation(RunPart part, Filling filling, RunGoal goal)
    {
        (_part, _filling, _goal, _kinds) = (part, filling, goal, new Kinds(part));
        _needs = [.. part.Rows.Select(row => row.Stretches.Select(stretch => StretchNeed.Of(row, stretch, part)).ToArray())];
    }

    /// <summary>A bound that is true for every filling that leaves as many rows of each level as this one (and spends as much), and the prices that gave it.</summary>
    /// <param name="part">Rows and bars.</param>
    /// <param name="filling">Which rows are left, and the spend.</param>
    /// <param name="goal">What is bounded.</param>
    /// <param name="effort">Limit.</param>
    public static (long Bound, StockPrices Prices) Solve(RunPart part, Filling filling, RunGoal goal, Effort effort)
    {
        var relaxation = new StockRelaxation(part, filling, goal);
        using var solver = relaxation._solver = Solver.CreateSolver("GLOP");
        relaxation.AddRows();
        return relaxation.Generate(effort);
    }

    /// <summary>The bound that these prices give for another filling.</summary>
    public static long At(RunPart part, Filling filling, RunGoal goal, StockPrices prices) => new StockRelaxation(part, filling, goal).Price(prices, null).Bound;

    private long LongestPiece => Math.Max(1, Math.Max(_part.LongestBar, _part.Rows.SelectMany(row => row.Stretches).Select(stretch => stretch.Length).DefaultIfEmpty().Max()));

    private long Spent => _filling.Figures[_part.Levels.Length];

    private void AddRows()
    {
        var rows = _part.Rows.Where(row => _filling.Filled[row.Index]).SelectMany(row => _needs[row.Index].Zip(row.Stretches)).ToArray();
        double Sum(Func<StretchNeed, long> of) => rows.Sum(at => (double)of(at.First));
        _intervals = AtLeast(Sum(need => Math.Max(0, need.Intervals)));
        _lengths = AtLeast(Sum(need => need.Length), Missing / _part.Interval);
        _odd = rows.SelectMany(at => at.First.Odd).GroupBy(odd => odd).ToDictionary(group => group.Key, group => AtLeast(group.Count()));
        _alone = _kinds.Alone.ToDictionary(length => length, _ => AtLeast(0));
        _stock = [.. _part.Shapes.All.Select(alike => _solver.MakeConstraint(double.NegativeInfinity, alike.Count))];
        if (_goal == RunGoal.GivenUp) _spend = _solver.MakeConstraint(double.NegativeInfinity, Spent);
        foreach (var group in rows.Where(at => at.First.Alone).GroupBy(at => (at.Second.Length, at.First.Intervals, string.Join(";", at.First.Odd))))
        {
            var need = group.First().First;
            // Without a line on it a stretch is covered by one piece or not at all.
            var single = _solver.MakeNumVar(need.Intervals < 0 ? group.Count() : 0, group.Count(), "");
            _intervals.SetCoefficient(single, Math.Max(0, need.Intervals));
            foreach (var odd in need.Odd.GroupBy(odd => odd)) _odd[odd.Key].SetCoefficient(single, odd.Count());
            _alone[group.Key.Length].SetCoefficient(single, -1);
        }
    }

    // What cannot be had is paid dearly, so that the program always has an answer; a unit of length by its share of an interval, so that
    // no length at that price is beyond what a long holds.
    private Constraint AtLeast(double amount, double price = Missing)
    {
        var row = _solver.MakeConstraint(amount, double.PositiveInfinity);
        var missing = _solver.MakeNumVar(0, double.PositiveInfinity, "");
        row.SetCoefficient(missing, 1);
        _solver.Objective().SetCoefficient(missing, price);
        return row;
    }

    private (long Bound, StockPrices Prices) Generate(Effort effort)
    {
        // By the length at the least price of the store: where time runs out early, better than the first duals of the program.
        var least = Least();
        var best = (Bound: Price(least, [.. _stock.Select(_ => double.NegativeInfinity)]).Bound, Prices: least);
        for (var round = 0; round < MostRounds; round++)
        {
            if (_solver.Solve() != Solver.ResultStatus.OPTIMAL) break;
            var prices = Prices();
            // Read before columns are added: the solver forgets them then.
            var duals = _stock.Select(row => -row.DualValue() * StockPrices.Scale).ToArray();
            var (bound, added) = Price(prices, duals);
            if (bound > best.Bound) best = (bound, prices);
            if (!added || effort.Over) break;
        }

        return best;
    }

    /// <summary>What the stock is worth for spend and value in one sum, where every row is covered.</summary>
    public static StockPrices Together(RunPart part, Effort effort) => Solve(part, Filling.Covered(part), RunGoal.Together, effort).Prices;

    /// <summary>Every length at its share of the new piece that costs least for its length, for spend and value in one sum: where to begin, without a solver.</summary>
    public static StockPrices Least(RunPart part) => new StockRelaxation(part, Filling.Empty(part), RunGoal.Together).Least();

    // Every length at its share of the new piece that costs least for its length.
    private StockPrices Least()
    {
        var weight = _goal switch { RunGoal.Spend => 1, RunGoal.Together => StockPrices.CentSpent, _ => 0 };
        var unit = weight * _part.Bars.Where(bar => bar.Price > 0).Select(bar => (double)bar.Price / bar.Length).DefaultIfEmpty().Min();
        return ByLength(unit, weight * StockPrices.Scale, _goal is RunGoal.GivenUp or RunGoal.Together ? StockPrices.Scale : 0);
    }

    /// <summary>Every length at so many cents a unit: what is laid by these prices wastes little, whatever stock is worth. They need no solver, and give no bound.</summary>
    public static StockPrices ByLength(RunPart part, double unit) =>
        new StockRelaxation(part, Filling.Empty(part), RunGoal.Together).ByLength(unit, StockPrices.CentSpent * StockPrices.Scale, StockPrices.Scale);

    private StockPrices ByLength(double unit, long spend, long given)
    {
        long Worth(long length) => (long)Math.Min(unit * StockPrices.Scale * length, MostPrice);
        return new StockPrices(_part)
        {
            Interval = Worth(_part.Interval),
            Unit = _kinds.AnyLength ? Math.Min(Worth(1), StockPrices.MostEarned / LongestPiece) : 0,
            Odd = _needs.SelectMany(row => row).SelectMany(need => need.Odd).Distinct().ToDictionary(kind => kind, kind => Worth(kind.Length)),
            Alone = _kinds.Alone.ToDictionary(length => length, Worth),
            Spend = spend,
            GivenUp = given,
        };
    }

    private StockPrices Prices()
    {
        static long Whole(Constraint? row) => row is null ? 0 : (long)Math.Clamp(Math.Round(Math.Abs(row.DualValue()) * StockPrices.Scale), 0, MostPrice);
        var (spend, given) = _goal switch
        {
            RunGoal.Spend => (StockPrices.Scale, 0L),
            RunGoal.GivenUp => (Whole(_spend), StockPrices.Scale),
            RunGoal.Reach => (0L, 0L),
            _ => (StockPrices.CentSpent * StockPrices.Scale, StockPrices.Scale),
        };
        var (interval, odds) = (Whole(_intervals), _odd.ToDictionary(row => row.Key, row => Whole(row.Value)));
        return new StockPrices(_part)
        {
            Interval = interval,
            // A row that asks for nothing may have any dual.
            Unit = _kinds.AnyLength ? Math.Min(Whole(_lengths), StockPrices.MostEarned / LongestPiece) : 0,
            Odd = odds,
            Alone = _alone.ToDictionary(row => row.Key, row => (long)Int128.Min(Whole(row.Value), MostAlone(row.Key, interval, odds))),
            Spend = spend,
            GivenUp = given,
        };
    }

    // A piece alone in its stretch need not be worth more than several there: no bound gets better by that, and where nothing asks for it,
    // its dual may be so high that a new piece for it seems to cost nothing.
    private Int128 MostAlone(long length, long interval, Dictionary<Kind, long> odds) => _part.Rows
        .SelectMany(row => _needs[row.Index].Zip(row.Stretches)).Where(at => at.First.Alone && at.Second.Length == length)
        .Select(at => at.First.Intervals < 0 ? Int128.MaxValue : (Int128)interval * at.First.Intervals + at.First.Odd.Sum(odd => odds.GetValueOrDefault(odd)))
        .Max();

    // With what the program already thinks each bar earns; without it, no column is added.
    private (long Bound, bool Added) Price(StockPrices prices, double[]? duals)
    {
        var sum = Needed(prices) - (Int128)(_goal == RunGoal.GivenUp ? prices.Spend : 0) * (_goal == RunGoal.GivenUp ? Spent : 0);
        var added = false;
        foreach (var alike in _part.Shapes.All)
        {
            var bar = alike.First;
            var best = View.Of(bar).Select(view => new BarWorth(_kinds, prices, view)).MaxBy(worth => worth.Whole)!;
            sum -= (Int128)alike.Count * Math.Max(0, best.Whole);
            if (duals is not null && best.Whole > duals[_part.Shapes[bar]] + StockPrices.Scale / 1000) added |= AddColumn(bar, [.. best.Cuts()]);
        }

        var whole = sum / StockPrices.Scale + (sum > 0 && sum % StockPrices.Scale != 0 ? 1 : 0);
        return ((long)Int128.Clamp(whole, long.MinValue / 4, long.MaxValue / 4), added);
    }

    private Int128 Needed(StockPrices prices)
    {
        Int128 sum = 0;
        foreach (var level in _part.Rows.GroupBy(row => row.Number))
        {
            var left = level.Count(row => !_filling.Filled[row.Index]);
            var worth = level.Select(row => Worth(row, prices)).Order().ToArray();
            for (var r = 0; r < worth.Length - left; r++) sum += worth[r];
        }

        return sum;
    }

    private Int128 Worth(Row row, StockPrices prices)
    {
        Int128 sum = 0;
        for (var s = 0; s < row.Stretches.Length; s++)
        {
            var need = _needs[row.Index][s];
            var several = need.Intervals < 0 ? Int128.MaxValue
                : (Int128)prices.Interval * need.Intervals + need.Odd.Sum(odd => prices.Odd.GetValueOrDefault(odd)) + (Int128)prices.Unit * need.Length;
            var single = need.Alone ? prices.Alone.GetValueOrDefault(row.Stretches[s].Length) : Int128.MaxValue;
            var least = Int128.Min(several, single);
            if (least != Int128.MaxValue) sum += least;
        }

        return sum;
    }

    private bool AddColumn(Bar bar, (Kind Kind, Ends Way)[] cuts)
    {
        if (!_columns.Add($"{bar.Index}:{string.Join(',', cuts.Select(cut => $"{cut.Kind.Length}.{(int)cut.Kind.Ends}.{(int)cut.Way}"))}")) return false;
        var pattern = View.Of(bar).Select(view => BarPattern.Of(_part, view, cuts)).OfType<BarPattern>().MinBy(one => one.GivenUp)!;
        var use = _solver.MakeNumVar(0, double.PositiveInfinity, "");
        _stock[_part.Shapes[bar]].SetCoefficient(use, 1);
        _spend?.SetCoefficient(use, bar.Price);
        _solver.Objective().SetCoefficient(use, _goal switch
        {
            RunGoal.Spend => bar.Price,
            RunGoal.GivenUp => pattern.GivenUp,
            RunGoal.Reach => 0,
            _ => (double)StockPrices.CentSpent * bar.Price + pattern.GivenUp,
        });
        foreach (var group in cuts.Where(cut => cut.Kind.Ends != Ends.Free && cut.Kind.Length % _part.Interval > 0)
            .GroupBy(cut => new Kind(cut.Kind.Length % _part.Interval, cut.Kind.Ends)))
        {
            if (_odd.TryGetValue(group.Key, out var row)) row.SetCoefficient(use, group.Count());
        }

        _intervals!.SetCoefficient(use, cuts.Where(cut => cut.Kind.Ends != Ends.Free).Sum(cut => cut.Kind.Length / _part.Interval));
        foreach (var group in cuts.Where(cut => cut.Kind.Ends == Ends.Free).GroupBy(cut => cut.Kind.Length))
        {
            if (_alone.TryGetValue(group.Key, out var row)) row.SetCoefficient(use, group.Count());
        }

        if (_kinds.AnyLength) _lengths!.SetCoefficient(use, cuts.Where(cut => cut.Kind.Ends == Ends.Free).Sum(cut => cut.Kind.Length));
        return true;
    }
}
