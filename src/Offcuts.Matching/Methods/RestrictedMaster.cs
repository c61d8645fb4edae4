namespace Offcuts.Matching.Methods;

/// <summary>
/// The relaxation of a <see cref="Tier"/> over the patterns known so far, by <see cref="RevisedSimplex"/>: each solve goes on from the
/// last one's basis. Only its duals are used, rounded to whole numbers: nothing is believed because it says so.
/// Demands of which nothing is to be filled have no row.
/// </summary>
internal sealed class RestrictedMaster
{
    private const double MostNoise = 1e-4;

    private readonly Tier _tier;
    private readonly RevisedSimplex _program;
    private readonly bool _whole;
    private readonly Random? _noise;
    private readonly int[] _demand;
    private readonly int[] _supply;
    private readonly int[] _least;
    private readonly Dictionary<int, int> _left = [];
    private readonly int _spend = -1;
    private readonly int _rips = -1;
    private readonly HashSet<Pattern> _known = [];
    private readonly List<Pattern?> _columns = [];

    /// <summary>An empty master.</summary>
    /// <param name="tier">Rows and costs.</param>
    /// <param name="artificial">Cost at which a demand may go without a pattern, so that there always is a solution; none where patterns make one.</param>
    /// <param name="noise">Draws what is added to the cost of each pattern, next to nothing, to get another of equally good solutions.</param>
    /// <param name="loosening">As for <see cref="RevisedSimplex"/>.</param>
    public RestrictedMaster(Tier tier, double? artificial = null, Random? noise = null, Random? loosening = null)
    {
        _noise = noise;
        _tier = tier;
        _whole = artificial is null;
        var rows = new List<(RowKind, double)>();
        int Row(RowKind kind, double right)
        {
            rows.Add((kind, right));
            return rows.Count - 1;
        }

        _demand = [.. tier.DemandCount.Select((count, d) => tier.Active[d] && count > 0 ? Row(tier.Covering ? RowKind.AtLeast : RowKind.Exactly, count) : -1)];
        _supply = [.. tier.SupplyCount.Select(count => count > 0 ? Row(RowKind.AtMost, count) : -1)];
        _least = [.. tier.SupplyLeast.Select(least => least > 0 ? Row(RowKind.AtLeast, least) : -1)];
        foreach (var (stage, cap) in tier.LeftCap) _left[stage] = Row(RowKind.AtMost, cap);
        if (tier.SpendCap is { } spend) _spend = Row(RowKind.AtMost, Math.Max(0, spend));
        if (tier.RipCap is { } rips) _rips = Row(RowKind.AtMost, Math.Max(0, rips));
        _program = new RevisedSimplex(rows, artificial ?? Diving.Dear(tier), loosening);

        // A cut need not be left unfilled more often than it is asked for, so that the caps alone limit it.
        for (var d = 0; d < tier.MostLeft.Length; d++)
        {
            if (tier.MostLeft[d] == 0 || _demand[d] < 0) continue;
            _program.Add(tier.LeftCost[d], _left.TryGetValue(tier.Problem.Demands[d].Stage, out var row) ? [(_demand[d], 1), (row, 1)] : [(_demand[d], 1)]);
            _columns.Add(null);
        }
    }

    /// <summary>The patterns known, in the order in which they came.</summary>
    public IEnumerable<Pattern> Patterns => _columns.OfType<Pattern>();

    /// <summary>Cost of the relaxation over the known patterns, after <see cref="Solve"/>.</summary>
    public double Objective => _noise is null ? _program.Objective : _program.Objective - _program.Solution.Sum(at => at.Value) * MostNoise;

    /// <summary>The patterns that the relaxation uses and how often, after <see cref="Solve"/>.</summary>
    public IEnumerable<(Pattern Pattern, double Times)> Solution =>
        _program.Solution.Where(at => _columns[at.Column] is not null).Select(at => (_columns[at.Column]!, at.Value));

    /// <summary>Adds a pattern; false where it is known already, or where nothing is left to cut it from.</summary>
    public bool Add(Pattern pattern)
    {
        if (_tier.SupplyCount[pattern.Supply] <= 0 || !_known.Add(pattern)) return false;
        Span<(int, double)> entries = stackalloc (int, double)[pattern.Takes.Length + 4];
        var count = 0;
        foreach (var take in pattern.Takes)
        {
            if (_demand[take.Demand] >= 0) entries[count++] = (_demand[take.Demand], take.Count);
        }

        if (_supply[pattern.Supply] is >= 0 and var supply) entries[count++] = (supply, 1);
        if (_least[pattern.Supply] is >= 0 and var least) entries[count++] = (least, 1);
        if (pattern.Price > 0 && _spend >= 0) entries[count++] = (_spend, pattern.Price);
        if (pattern.Rips > 0 && _rips >= 0) entries[count++] = (_rips, pattern.Rips);
        _program.Add(_tier.Cost(pattern) + (_noise is null ? 0 : MostNoise * _noise.NextDouble()), entries[..count]);
        _columns.Add(pattern);
        return true;
    }

    /// <summary>Solves the relaxation over the known patterns; none where the solver does not get there.</summary>
    public Duals? Solve()
    {
        if (!_program.Solve(_whole)) return null;
        var duals = _program.Duals;
        return new Duals(
            _tier,
            Of(_demand, duals),
            [.. Of(_supply, duals).Zip(Of(_least, duals), (most, least) => most + least)],
            _left.ToDictionary(pair => pair.Key, pair => _program.Duals[pair.Value]),
            _spend < 0 ? 0 : duals[_spend],
            _rips < 0 ? 0 : duals[_rips]);
    }

    private static double[] Of(int[] rows, ReadOnlySpan<double> duals)
    {
        var values = new double[rows.Length];
        for (var i = 0; i < rows.Length; i++) values[i] = rows[i] < 0 ? 0 : duals[rows[i]];
        return values;
    }
}
