using Google.OrTools.LinearSolver;
using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// The linear program of <see cref="PairRelaxation"/> with its columns: what is cut, what is laid, and how both are priced. Shared by the
/// relaxation, which adds up bounds from it, and by <see cref="PairDive"/>, which lays pairs one after the other by it.
/// </summary>
internal sealed class PairProgram : IDisposable
{
    private const double Dear = 1e6;
    private const double Least = 1e-3;
    private const long MostPrice = 1L << 52;

    private readonly RunPart _part;
    private readonly KindTable _table;
    private readonly RunGoal _goal;
    private readonly PairPricing _pricing;
    private readonly long _saw;
    private readonly HashSet<string> _columns = [];
    private readonly Solver _solver = Solver.CreateSolver("GLOP");
    private readonly Constraint[] _kinds;
    private readonly Constraint[] _stock;
    private readonly Constraint? _spend;
    private readonly List<Variable> _missing = [];
    private double[]? _stockDuals;
    private PairPrices? _duals;

    public PairProgram(KindTable table, RunGoal goal, long spent)
    {
        (_part, _table, _goal, _pricing) = (table.Part, table, goal, new PairPricing(table));
        _saw = goal == RunGoal.Together ? LaterPrices.Of(_part).Saw : 0;
        _kinds = [.. table.Kinds.Select(_ =>
        {
            // What cannot be had is paid dearly, so that the program always has an answer.
            var row = _solver.MakeConstraint(0, double.PositiveInfinity);
            var missing = _solver.MakeNumVar(0, double.PositiveInfinity, "");
            row.SetCoefficient(missing, 1);
            _missing.Add(missing);
            _solver.Objective().SetCoefficient(missing, Dear);
            return row;
        })];
        foreach (var (from, to) in table.Trims())
        {
            var trim = _solver.MakeNumVar(0, double.PositiveInfinity, "");
            _kinds[from].SetCoefficient(trim, -1);
            _kinds[to].SetCoefficient(trim, 1);
        }

        _stock = [.. _part.Shapes.All.Select(alike => _solver.MakeConstraint(double.NegativeInfinity, alike.Count))];
        if (goal == RunGoal.GivenUp) _spend = _solver.MakeConstraint(double.NegativeInfinity, spent);
    }

    public List<PairGroup> Groups { get; } = [];

    public List<PairPattern> Patterns { get; } = [];

    /// <summary>Cost of the program as it was solved last.</summary>
    public double Cost => _solver.Objective().Value();

    /// <summary>Cents spent, as it was solved last, rounded up; parts of pieces may be bought. No bound: what the solver is out by is let go.</summary>
    public long Spent => (long)Math.Ceiling(Math.Min(Patterns.Where(one => one.Bar.Price > 0).Sum(one => one.Bar.Price * one.Use.SolutionValue()), 1e15) - Least);

    /// <summary>How many pieces could not be had, as it was solved last, in parts of pieces.</summary>
    public double Missing => _missing.Sum(one => one.SolutionValue());

    public void Dispose() => _solver.Dispose();

    public PairGroup Add(PairGroup group)
    {
        group.Convex = _solver.MakeConstraint(group.Count, group.Count);
        Groups.Add(group);
        return group;
    }

    /// <summary>So many pairs are laid from a group.</summary>
    public void SetCount(PairGroup group, int count)
    {
        group.Count = count;
        group.Convex.SetBounds(count, count);
    }

    /// <summary>Pieces that have to be cut whatever else is laid.</summary>
    public void Demand(int kind, int more) => _kinds[kind].SetLb(_kinds[kind].Lb() + more);

    /// <summary>Solves it, and hands back its prices; none where it could not be solved.</summary>
    public PairPrices? Solve()
    {
        if (_solver.Solve() != Solver.ResultStatus.OPTIMAL)
        {
            // Now and then the basis it starts from leads nowhere; from the beginning it does.
            _solver.Reset();
            if (_solver.Solve() != Solver.ResultStatus.OPTIMAL) return null;
        }

        static long Whole(double dual) => (long)Math.Clamp(Math.Round(Math.Abs(dual) * StockPrices.Scale), 0, MostPrice);
        // Read before columns are added: the solver forgets them then.
        _stockDuals = [.. _stock.Select(row => -row.DualValue())];
        foreach (var group in Groups) group.Dual = group.Convex.DualValue();
        return _duals = Prices([.. _kinds.Select(row => Whole(row.DualValue()))], _spend is null ? 0 : Whole(_spend.DualValue()));
    }

    /// <summary>Solves it and adds the best columns so many times, or until none pays. It is left solved; false where it could not be.</summary>
    public bool Generate(int rounds, Effort effort)
    {
        if (Solve() is not { } prices) return false;
        for (var round = 0; round < rounds && !effort.Over; round++)
        {
            if (Price(prices, effort) is { Added: false }) break;

            // Where time has ended it, something may have been added too; of a program that has changed no solution is known.
            if (Solve() is not { } next) return false;
            prices = next;
        }

        return true;
    }

    /// <summary>Prices of kinds with those of money that the goal asks for.</summary>
    public PairPrices Prices(long[] kinds, long spend) => _goal switch
    {
        RunGoal.Spend => new PairPrices(kinds, StockPrices.Scale, 0),
        RunGoal.GivenUp => new PairPrices(kinds, spend, StockPrices.Scale),
        RunGoal.Reach => new PairPrices(kinds, 0, 0),
        _ => new PairPrices(kinds, StockPrices.CentSpent * StockPrices.Scale, StockPrices.Scale),
    };

    /// <summary>
    /// The best columns at these prices. Those that pay at the prices of the last solution are added, all of them where there is none yet.
    /// </summary>
    /// <param name="prices">Prices of kinds and of money.</param>
    /// <param name="effort">Limit.</param>
    /// <returns>
    /// What all pairs cost at least less what all bars earn at most; none where a pair can't be laid at all, or where time ran out before
    /// everything was priced. For spend and value in one sum it is no bound: that a piece which is no new one as it is bought takes a saw cut is only mostly so.
    /// </returns>
    public (Int128 Sum, bool Added)? Price(PairPrices prices, Effort effort)
    {
        Int128 sum = 0;
        var added = false;
        foreach (var group in Groups.Where(group => group.Count > 0))
        {
            if (group.Stack is { } stack)
            {
                if (effort.Over || stack.Cheapest(prices.Kinds, group.Modes) is not { } best) return null;
                sum += best.Least;
                added |= AddStack(group, best.Rows);
                continue;
            }

            if (effort.Over || _pricing.Lay(group.Pair, prices.Kinds) is not { } path) return null;
            sum += (Int128)group.Count * path.Least;
            added |= AddLayout(group, path.Lower, path.Upper);
        }

        var cutting = _saw == 0 ? prices : prices with { Kinds = [.. prices.Kinds.Select((price, k) => _part.BoughtLengths.Contains(_table.Kinds[k].Length) ? price : Math.Max(0, price - _saw))] };
        var whole = _pricing.EachBar(cutting, effort, (alike, cut) =>
        {
            sum -= alike.Count * Int128.Max(0, cut.Earned);
            added |= AddPattern(alike.First, cut.Seen, cut.Cuts);
        });
        return whole ? (sum, added) : null;
    }

    /// <summary>Adds the best layout of one group at the prices of the last solution; false where it can't be laid at all.</summary>
    public bool AddBest(PairGroup group)
    {
        group.Dual = double.PositiveInfinity;
        if (group.Stack is { } stack) return stack.Cheapest(_duals!.Kinds, group.Modes) is { } best && (AddStack(group, best.Rows) || group.Layouts.Count > 0);
        if (_pricing.Lay(group.Pair, _duals!.Kinds) is not { } path) return false;
        return AddLayout(group, path.Lower, path.Upper) || group.Layouts.Count > 0;
    }

    private bool AddStack(PairGroup group, RowLayout[] rows)
    {
        var layout = PairLayout.Of(rows);
        if (_duals is not null && PriceOf(layout) > group.Dual - Least) return false;
        if (!_columns.Add($"{Groups.IndexOf(group)}|{string.Join('|', rows.Select(row => string.Join(',', row.Arcs)))}")) return false;
        Add(group, layout);
        return true;
    }

    /// <summary>A layout of a group, known from elsewhere.</summary>
    public void AddLayout(PairGroup group, PairLayout known)
    {
        Add(group, known with { New = false });
    }

    /// <summary>Of which kinds a piece more could not be had, as it was solved last.</summary>
    public bool[] Lacking => [.. _duals!.Kinds.Select(price => price >= Dear / 2 * StockPrices.Scale)];

    /// <summary>What a layout costs at the prices of the last solution.</summary>
    public double PriceOf(PairLayout layout) => layout.Extra + layout.Kinds.Sum(kind => (double)_duals!.Kinds[kind]) / StockPrices.Scale;

    private void Add(PairGroup group, PairLayout found)
    {
        var layout = found with { Use = _solver.MakeNumVar(0, double.PositiveInfinity, "") };
        _solver.Objective().SetCoefficient(layout.Use, layout.Extra);
        group.Convex.SetCoefficient(layout.Use, 1);
        foreach (var kind in layout.Kinds.GroupBy(kind => kind)) _kinds[kind.Key].SetCoefficient(layout.Use, -kind.Count());
        group.Layouts.Add(layout);
    }

    private bool AddLayout(PairGroup group, int[] lower, int[] upper)
    {
        var layout = PairLayout.Of(group.Pair, lower, upper);
        if (_duals is not null && PriceOf(layout) > group.Dual - Least) return false;
        if (!_columns.Add($"{Groups.IndexOf(group)}|{string.Join(',', lower)}|{string.Join(',', upper)}")) return false;
        Add(group, layout);
        return true;
    }

    private bool AddPattern(Bar bar, View view, (int Kind, Ends Way)[] cuts)
    {
        var pattern = BarPattern.Of(_part, view, cuts.Select(cut => (_table.Kinds[cut.Kind], cut.Way)))!;
        if (_duals is { } duals)
        {
            var earned = cuts.Sum(cut => (double)duals.Kinds[cut.Kind]) - (double)duals.Spend * bar.Price - (double)duals.GivenUp * pattern.GivenUp - (double)_saw * pattern.Saws;
            if (earned / StockPrices.Scale < _stockDuals![_part.Shapes[bar]] + Least) return false;
        }

        if (_columns.Contains(NameOf(bar, [.. cuts.Select(cut => cut.Kind)]))) return false;
        Add(new PairPattern(bar, pattern, [.. cuts.Select(cut => cut.Kind)], null!));
        return true;
    }

    /// <summary>A way to cut a bar, known from elsewhere.</summary>
    public void Add(PairPattern known)
    {
        var bar = known.Bar;
        var use = _solver.MakeNumVar(0, double.PositiveInfinity, "");
        _columns.Add(NameOf(bar, known.Kinds));
        _stock[_part.Shapes[bar]].SetCoefficient(use, 1);
        _spend?.SetCoefficient(use, bar.Price);
        _solver.Objective().SetCoefficient(use, _goal switch
        {
            RunGoal.Spend => bar.Price,
            RunGoal.GivenUp => known.Cut.GivenUp,
            RunGoal.Reach => 0,
            _ => (double)StockPrices.CentSpent * bar.Price + known.Cut.GivenUp + (double)_saw * known.Cut.Saws / StockPrices.Scale,
        });
        foreach (var group in known.Kinds.GroupBy(kind => kind)) _kinds[group.Key].SetCoefficient(use, group.Count());
        Patterns.Add(known with { Use = use });
    }

    private string NameOf(Bar bar, int[] kinds) => $"{_part.Shapes[bar]}:{string.Join(',', kinds.Order())}";
}
