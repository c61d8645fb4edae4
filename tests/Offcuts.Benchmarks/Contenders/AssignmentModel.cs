using Google.OrTools.Sat;
using Offcuts.Core.Materials;
using Offcuts.Core.Yard;
using Offcuts.Matching;

namespace Offcuts.Benchmarks.Contenders;

/// <summary>
/// The first three tiers as a plain assignment model for CP-SAT, as a competent engineer writes it in a day:
/// <code>
/// x(i,r)        copies of row r that are made on span i              whole number, 0 .. what fits
/// w(i,r) = 1    a copy of row r takes span i whole
/// f(r)          copies of row r left unfilled
/// sum over i of x(i,r) + w(i,r) + f(r) = copies of r
/// L(i) = sum over r of (length r + kerf) x(i,r)  &lt;=  (length i + kerf) used(i),   0 where span i is taken whole
/// spend = sum of price used(i)                                       given up(i) = a table over L(i)
/// </code>
/// A store length is as many spans as may be bought: no more than the money that best-fit decreasing pays for its material, where
/// that fills everything. Written apart from the matcher: no patterns, no grouping of spans. Every variable has a value to start
/// from, at first that of best-fit decreasing.
/// </summary>
internal sealed class AssignmentModel
{
    private const long MostTableEntries = 4_000_000;

    // Once it has begun, the solver reads all tables before it looks at its limit: 450,000 to 800,000 entries took it 2 to 5 s of processor time.
    private const long EntriesASecond = 250_000;

    private readonly MatchRequest _request;
    private readonly RequiredCut[] _rows;
    private readonly List<IntVar>[] _served;
    private readonly List<LinearExpr> _spend = [];
    private readonly List<Valued> _valued = [];
    private readonly Dictionary<Material, YardTable> _tables;

    /// <summary>A model without spans; see <see cref="Build"/>.</summary>
    public AssignmentModel(MatchRequest request)
    {
        _request = request;
        _rows = [.. request.Stages.SelectMany(stage => stage.Cuts)];
        _served = [.. _rows.Select(_ => new List<IntVar>())];
        _tables = _rows.GroupBy(cut => cut.Material).ToDictionary(group => group.Key, group => new YardTable(request, group.Key, [.. group]));
    }

    /// <summary>What CP-SAT solves.</summary>
    public CpModel Model { get; } = new();

    /// <summary>The best plan so far: a value for each variable, in the order in which they were made.</summary>
    public List<long> Best { get; private set; } = [];

    /// <summary>Unfilled stage by stage, then the spend: what the first tiers minimise.</summary>
    public List<LinearExpr> Tiers { get; } = [];

    /// <summary>The figures of <see cref="Best"/>: those of the tiers, then the value given up.</summary>
    public long[] Figures { get; private set; } = [];

    /// <summary>True where nothing can have value, so that the third tier is 0.</summary>
    public bool NothingValued => _valued.Count == 0;

    /// <summary>True where the tables of the third tier are not too many to be solved within so many seconds.</summary>
    public bool TablesInReach(double seconds) => _valued.Sum(span => (long)span.Costs.Length) <= Math.Min(MostTableEntries, seconds * EntriesASecond);

    /// <summary>Everything but the tables of the third tier; false where it got late.</summary>
    public bool Build(Func<bool> late)
    {
        var hand = ByHand.Plan(_request);
        foreach (var span in hand.Spans.Where(span => span.Piece is { } piece && _tables.ContainsKey(piece.Material)))
        {
            AddSpan(span.Piece, null, span.Span.Length.Units, span);
            if (late()) return false;
        }

        foreach (var price in _request.Buy ? _request.Prices.All.Where(price => _tables.ContainsKey(price.Material)) : [])
        {
            var boards = hand.Spans.Where(span => span.Price is { } paid && paid.Material.Equals(price.Material)).ToArray();
            var paidFor = boards.Where(board => board.Price == price).ToArray();
            var most = (long)_rows.Where(row => MayServe(null, price, row, price.Length.Units)).Sum(row => row.Count);
            if (price.Limit is { } limit) most = Math.Min(most, limit);
            if (hand.Unfilled.Sum() == 0 && price.Price.Cents > 0) most = Math.Min(most, boards.Sum(board => board.Price!.Price.Cents) / price.Price.Cents);
            BoolVar? before = null;
            for (var i = 0; i < most; i++)
            {
                var used = AddSpan(null, price, price.Length.Units, paidFor.ElementAtOrDefault(i));
                if (before is not null) Model.AddImplication(used, before);
                before = used;
                if (late()) return false;
            }
        }

        AddTiers();
        Figures = [.. hand.Unfilled, hand.Spend, hand.GivenUp];
        return true;
    }

    /// <summary>The third tier. Its tables come into the model only when its turn has come: they are most of its size.</summary>
    public LinearExpr AddGivenUp()
    {
        var all = new List<LinearExpr>();
        foreach (var span in _valued)
        {
            var load = Whole(0, span.Costs.Length - 1, span.LoadIn(Best));
            Model.Add(load == span.Load);
            var cost = Whole(span.Costs.Min(), span.Costs.Max(), span.Costs[span.LoadIn(Best)]);
            Model.AddElement(load, span.Costs, cost);
            all.Add(cost + span.Before * LinearExpr.Sum(span.Whole));
        }

        return LinearExpr.Sum(all);
    }

    /// <summary>Takes what was found where it is better than the best so far, tier by tier.</summary>
    public void Take(CpSolver solver)
    {
        List<long> found = [.. solver.Response!.Solution];
        long[] figures = [.. Tiers.Take(_request.Stages.Count + 1).Select(tier => solver.Value(tier)), _valued.Sum(span => span.GivenUpIn(found))];
        foreach (var (mine, old) in figures.Zip(Figures))
        {
            if (mine > old) return;
            if (mine == old) continue;
            (Best, Figures) = (found, figures);
            return;
        }
    }

    private BoolVar AddSpan(Piece? piece, StorePrice? price, long length, HandSpan? start)
    {
        var table = _tables[piece?.Material ?? price!.Material];
        var capacity = (length + table.Kerf) / table.Grid;
        var used = Yes(start?.Cuts.Count > 0);
        var (made, weights, whole) = (new List<IntVar>(), new List<long>(), new List<BoolVar>());
        for (var r = 0; r < _rows.Length; r++)
        {
            if (!MayServe(piece, price, _rows[r], length)) continue;
            weights.Add((_rows[r].Shortest.Units + table.Kerf) / table.Grid);
            made.Add(Whole(0, Math.Min(_rows[r].Count, capacity / weights[^1]), start?.Cuts.GetValueOrDefault(_rows[r]) ?? 0));
            _served[r].Add(made[^1]);
            if (_rows[r].Shortest.Units == length || length > _rows[r].Longest.Units) continue;
            whole.Add(Yes(false));
            _served[r].Add(whole[^1]);
        }

        var load = LinearExpr.WeightedSum(made, weights);
        Model.Add(whole.Count == 0 ? load <= capacity * used : load + capacity * LinearExpr.Sum(whole) <= capacity * used);
        if (price is not null) _spend.Add(used * price.Price.Cents);
        var costs = table.GivenUp(piece, price, length, capacity);
        if (costs.Any(cost => cost != 0)) _valued.Add(new Valued([.. made], [.. weights], [.. whole], costs, table.Before(piece, length)));
        return used;
    }

    private void AddTiers()
    {
        var left = _request.Stages.ToDictionary(stage => stage.Name, _ => new List<IntVar>());
        for (var r = 0; r < _rows.Length; r++)
        {
            var unfilled = Whole(0, _rows[r].Count, _rows[r].Count - _served[r].Sum(made => Best[made.Index]));
            left[_rows[r].Stage].Add(unfilled);
            Model.Add(LinearExpr.Sum([.. _served[r], unfilled]) == _rows[r].Count);
        }

        Tiers.AddRange(_request.Stages.Select(stage => LinearExpr.Sum(left[stage.Name])));
        Tiers.Add(LinearExpr.Sum(_spend));
    }

    private IntVar Whole(long least, long most, long start)
    {
        Best.Add(start);
        return Model.NewIntVar(least, most, "");
    }

    private BoolVar Yes(bool start)
    {
        Best.Add(start ? 1 : 0);
        return Model.NewBoolVar("");
    }

    private bool MayServe(Piece? piece, StorePrice? price, RequiredCut cut, long length) => cut.Shortest.Units <= length && (piece is not null
        ? _request.Settings.Rules.Allows(piece, cut)
        : price!.Material.Equals(cut.Material) && _request.Settings.Rules.Allows(Condition.Sound, true, price.Treated, cut.Use, cut.Treated));

    // A span whose filling may give up value: what fills it, by how many steps, what takes it whole, what each filling costs.
    private sealed record Valued(IntVar[] Made, long[] Weights, BoolVar[] Whole, long[] Costs, long Before)
    {
        public LinearExpr Load => LinearExpr.WeightedSum(Made, Weights);

        public long LoadIn(List<long> values) => Made.Zip(Weights).Sum(one => one.Second * values[one.First.Index]);

        public long GivenUpIn(List<long> values) => Costs[LoadIn(values)] + Before * Whole.Sum(one => values[one.Index]);
    }
}
