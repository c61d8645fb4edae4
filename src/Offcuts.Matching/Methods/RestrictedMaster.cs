namespace Offcuts.Matching.Methods;

/// <summary>
/// The relaxation of a <see cref="Tier"/> over the patterns known so far, by <see cref="BoundedSimplex"/>: each solve goes on from the
/// last one's basis. Only its duals are used, rounded to whole numbers: nothing is believed because it says so.
/// Demands of which nothing is to be filled have no row. Ends of rows are loosened a little, each differently, against standing still in
/// degenerate corners; values and what they cost are reckoned for the true ones in the end.
/// </summary>
internal sealed class RestrictedMaster
{
    private const double MostNoise = 1e-4;
    private const int MostRaises = 5;
    private const double Raise = 8;
    private const double Unmet = 1e-4;

    private readonly Tier _tier;
    private readonly BoundedSimplex _program = new();
    private readonly Random? _noise;
    private readonly Random? _loosening;
    private readonly List<(double Least, double Most, double Looseness)> _rows = [];
    private readonly List<int> _unmet = [];
    private readonly int[] _demand;
    private readonly int[] _supply;
    private readonly int[] _least;
    private readonly Dictionary<int, int> _left = [];
    private readonly int _spend = -1;
    private readonly int _rips = -1;
    private readonly HashSet<Pattern> _known = [];
    private readonly List<(Pattern Pattern, int Column)> _columns = [];
    private readonly List<(int Row, double Coefficient)> _entries = [];
    private double _dear;
    private int _raises;

    /// <summary>An empty master.</summary>
    /// <param name="tier">Rows and costs.</param>
    /// <param name="artificial">Cost at which a demand may go without a pattern, so that there always is a solution; none where patterns make one.</param>
    /// <param name="noise">Draws what is added to the cost of each pattern, next to nothing, to get another of equally good solutions.</param>
    /// <param name="loosening">Draws by how much rows are loosened: it decides which of many equally good duals come out. Always the same where there is none.</param>
    public RestrictedMaster(Tier tier, double? artificial = null, Random? noise = null, Random? loosening = null)
    {
        (_noise, _loosening, _tier) = (noise, loosening, tier);

        // Where going unmet is only a help to start, its cost is raised until nothing does, but only so often in all: what goes unmet then has no
        // solution over these columns, and the duals, large but not beyond what sums of them hold, prove it.
        _raises = artificial is null ? MostRaises : 0;
        _dear = artificial ?? Diving.Dear(tier);
        _demand = [.. tier.DemandCount.Select((count, d) => tier.Active[d] && count > 0 ? tier.Covering ? AtLeast(count) : Exactly(count) : -1)];
        _supply = [.. tier.SupplyCount.Select(count => count > 0 ? AtMost(count) : -1)];
        _least = [.. tier.SupplyLeast.Select(least => least > 0 ? AtLeast(least) : -1)];
        foreach (var (stage, cap) in tier.LeftCap) _left[stage] = AtMost(cap);
        if (tier.SpendCap is { } spend) _spend = AtMost(Math.Max(0, spend));
        if (tier.RipCap is { } rips) _rips = AtMost(Math.Max(0, rips));

        // A cut need not be left unfilled more often than it is asked for, so that the caps alone limit it.
        for (var d = 0; d < tier.MostLeft.Length; d++)
        {
            if (tier.MostLeft[d] == 0 || _demand[d] < 0) continue;
            _program.AddColumn(tier.LeftCost[d], _left.TryGetValue(tier.Problem.Demands[d].Stage, out var row) ? [(_demand[d], 1), (row, 1)] : [(_demand[d], 1)]);
        }
    }

    /// <summary>The patterns known, in the order in which they came.</summary>
    public IEnumerable<Pattern> Patterns => _columns.Select(column => column.Pattern);

    /// <summary>Cost of the relaxation over the known patterns, after <see cref="Solve"/>.</summary>
    public double Objective
    {
        get
        {
            double sum = 0;
            for (var row = 0; row < _rows.Count; row++) sum += (double.IsInfinity(_rows[row].Least) ? _rows[row].Most : _rows[row].Least) * _program.Dual(row);
            return _noise is null ? sum : sum - _columns.Sum(column => _program.Value(column.Column)) * MostNoise;
        }
    }

    /// <summary>The patterns that the relaxation uses and how often, after <see cref="Solve"/>.</summary>
    public IReadOnlyList<(Pattern Pattern, double Times)> Solution
    {
        get
        {
            Loosen(0);
            _program.Reckon();
            return [.. _columns.Select(column => (column.Pattern, Times: _program.Value(column.Column))).Where(used => used.Times > 0)];
        }
    }

    /// <summary>Adds a pattern; false where it is known already, or where nothing is left to cut it from.</summary>
    public bool Add(Pattern pattern)
    {
        if (_tier.SupplyCount[pattern.Supply] <= 0 || !_known.Add(pattern)) return false;
        _entries.Clear();
        foreach (var take in pattern.Takes)
        {
            if (_demand[take.Demand] >= 0) _entries.Add((_demand[take.Demand], take.Count));
        }

        if (_supply[pattern.Supply] is >= 0 and var supply) _entries.Add((supply, 1));
        if (_least[pattern.Supply] is >= 0 and var least) _entries.Add((least, 1));
        if (pattern.Price > 0 && _spend >= 0) _entries.Add((_spend, pattern.Price));
        if (pattern.Rips > 0 && _rips >= 0) _entries.Add((_rips, pattern.Rips));
        _columns.Add((pattern, _program.AddColumn(_tier.Cost(pattern) + (_noise is null ? 0 : MostNoise * _noise.NextDouble()), [.. _entries])));
        return true;
    }

    /// <summary>Solves the relaxation over the known patterns; none where the solver does not get there, or where it is time to end.</summary>
    public Duals? Solve(Effort effort)
    {
        Loosen(1);
        while (true)
        {
            if (!_program.Solve(new StepLimit(BoundedSimplex.MostSteps, () => effort.Over))) return null;
            if (_raises == 0 || _unmet.Sum(_program.Value) < Unmet) break;
            _raises--;
            _dear *= Raise;
            foreach (var column in _unmet) _program.SetCost(column, _dear);
        }

        return new Duals(
            _tier,
            Of(_demand),
            [.. Of(_supply).Zip(Of(_least), (most, least) => most + least)],
            _left.ToDictionary(pair => pair.Key, pair => _program.Dual(pair.Value)),
            _spend < 0 ? 0 : _program.Dual(_spend),
            _rips < 0 ? 0 : _program.Dual(_rips));
    }

    private int AtMost(double right) => Row(double.NegativeInfinity, right, Looseness());

    private int Exactly(double right) => MayGoUnmet(Row(right, right, 0));

    private int AtLeast(double right) => MayGoUnmet(Row(right, double.PositiveInfinity, Looseness()));

    private int Row(double least, double most, double looseness)
    {
        _rows.Add((least, most, looseness));
        return _program.AddRow(least, most);
    }

    private void Loosen(double times)
    {
        for (var row = 0; row < _rows.Count; row++)
        {
            var (least, most, looseness) = _rows[row];
            _program.SetRow(row, least - times * looseness, most + times * looseness);
        }
    }

    private int MayGoUnmet(int row)
    {
        _unmet.Add(_program.AddColumn(_dear, (row, 1)));
        return row;
    }

    private double Looseness() => 1e-6 * (_loosening is null ? 1 + _rows.Count * 0.6180339887 % 1 : 0.1 + 2 * _loosening.NextDouble());

    private double[] Of(int[] rows) => [.. rows.Select(row => row < 0 ? 0 : _program.Dual(row))];
}
