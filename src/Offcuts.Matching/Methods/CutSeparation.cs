namespace Offcuts.Matching.Methods;

/// <summary>
/// Looks for <see cref="RankOneCut"/>s that a fractional solution breaks: among all choices of up to three rows with 1/2
/// (<see cref="HalfCuts"/>), then among sums of many rows; and where neither gives any, among four and five demand rows with 1/3.
/// </summary>
internal static class CutSeparation
{
    /// <summary>Less than this is not worth a row.</summary>
    public const double LeastViolation = 0.02;

    private const int MostAtOnce = 20;
    private const int MostRowsFive = 20;

    /// <summary>The cuts broken most, those in <paramref name="seen"/> left out.</summary>
    public static IReadOnlyList<RankOneCut> Violated(
        Tier tier, IReadOnlyList<(Pattern Pattern, double Times)> solution, double[] unfilled, HashSet<string> seen)
    {
        var halves = new HalfCuts(tier, solution, unfilled);
        var found = Chosen(halves.OfFewRows(), seen);
        if (found.Count == 0) found = Chosen(halves.OfManyRows(), seen);
        return found.Count > 0 ? found : Chosen(Thirds(tier, solution, unfilled), seen);
    }

    private static List<RankOneCut> Chosen(IEnumerable<(RankOneCut Cut, double Violation)> found, HashSet<string> seen) =>
        [.. found.OrderByDescending(cut => Math.Round(cut.Violation, 6)).ThenBy(cut => cut.Cut.Rows.Length + cut.Cut.Supplies.Length).ThenBy(cut => cut.Cut.Key, StringComparer.Ordinal)
            .Where(cut => seen.Add(cut.Cut.Key)).Take(MostAtOnce).Select(cut => cut.Cut)];

    private static List<(RankOneCut Cut, double Violation)> Thirds(Tier tier, IReadOnlyList<(Pattern Pattern, double Times)> solution, double[] unfilled)
    {
        var loose = solution.Where(column => Math.Abs(column.Times - Math.Round(column.Times)) > 1e-6).SelectMany(column => column.Pattern.Takes).Select(take => take.Demand);
        var rows = loose.Distinct().Order().ToArray();
        if (rows.Length > MostRowsFive) return [];
        var search = new Search(tier, rows, solution, unfilled);
        search.Over(4);
        search.Over(5);
        return search.Found;
    }

    private sealed class Search
    {
        private const int Denominator = 3;

        private readonly Tier _tier;
        private readonly int[] _rows;
        private readonly double[] _unfilled;
        private readonly int[][] _counts;
        private readonly double[] _times;
        private int[] _chosen = [];
        private int[] _multiplier = [];

        public Search(Tier tier, int[] rows, IReadOnlyList<(Pattern Pattern, double Times)> solution, double[] unfilled)
        {
            (_tier, _rows, _unfilled) = (tier, rows, unfilled);
            _times = [.. solution.Select(column => column.Times)];
            _counts = [.. solution.Select(column =>
            {
                var counts = new int[rows.Length];
                foreach (var take in column.Pattern.Takes)
                {
                    var at = Array.IndexOf(rows, take.Demand);
                    if (at >= 0) counts[at] = take.Count;
                }

                return counts;
            })];
        }

        public List<(RankOneCut Cut, double Violation)> Found { get; } = [];

        public void Over(int size)
        {
            (_chosen, _multiplier) = (new int[size], new int[size]);
            Choose(0, 0);
        }

        private void Choose(int depth, int from)
        {
            if (depth < _chosen.Length)
            {
                for (var i = from; i < _rows.Length; i++)
                {
                    _chosen[depth] = i;
                    Choose(depth + 1, i + 1);
                }

                return;
            }

            // Four rows are only of use with one of them counted double.
            for (var heavy = 0; heavy < (_chosen.Length == 4 ? 4 : 1); heavy++)
            {
                Array.Fill(_multiplier, 1);
                if (_chosen.Length == 4) _multiplier[heavy] = 2;
                Test();
            }
        }

        private void Test()
        {
            long right = 0;
            for (var i = 0; i < _chosen.Length; i++) right += (long)_multiplier[i] * _tier.DemandCount[_rows[_chosen[i]]];
            if (right % Denominator == 0) return;
            var least = (right + Denominator - 1) / Denominator;
            double sum = 0;
            for (var i = 0; i < _chosen.Length; i++) sum += _unfilled[_rows[_chosen[i]]];
            for (var c = 0; c < _counts.Length; c++)
            {
                var weight = 0;
                for (var i = 0; i < _chosen.Length; i++) weight += _multiplier[i] * _counts[c][_chosen[i]];
                sum += _times[c] * ((weight + Denominator - 1) / Denominator);
                if (sum > least - LeastViolation) return;
            }

            Found.Add((new RankOneCut(_tier, [.. _chosen.Select(i => _rows[i])], (int[])_multiplier.Clone(), Denominator), least - sum));
        }
    }
}
