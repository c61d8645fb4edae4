namespace Offcuts.Matching.Methods;

/// <summary>
/// Which labels of <see cref="PricingKnapsack"/> can still become the best of any span. Cuts come in the order of what they earn for
/// their weight, e; so a label of weight w that has earned v becomes at most
/// <code>
/// v + e (c - w)     in a span of capacity c, with e of the next cut
/// </code>
/// and is of no use where that is below what is known to be reached, in every span that holds it: v - e w &lt; min over those spans (reached - e c).
/// Source: the linear relaxation of the knapsack problem, Dantzig, 1957. Computed in floating point, with a margin far above its error.
/// </summary>
internal sealed class KnapsackBound
{
    private const double Margin = 1e-9;

    private readonly long[] _capacities;
    private readonly long[] _reached;
    private readonly (long Capacity, double Least)[] _least;

    /// <summary>A bound that knows what taking the cuts greedily gives.</summary>
    /// <param name="spans">Capacities of the spans, and what is known to be reached in each.</param>
    /// <param name="cuts">Weight, what one earns, and how many, those that earn most for their weight first.</param>
    public KnapsackBound(IEnumerable<(long Capacity, long Known)> spans, IReadOnlyList<(long Weight, long Dual, int Count)> cuts)
    {
        var alike = spans.GroupBy(span => span.Capacity, span => span.Known).OrderBy(group => group.Key).ToArray();
        _capacities = [.. alike.Select(group => group.Key)];
        _reached = new long[_capacities.Length];
        _least = new (long, double)[_capacities.Length];
        for (var c = 0; c < _capacities.Length; c++)
        {
            var left = _capacities[c];
            foreach (var (weight, dual, count) in cuts)
            {
                var taken = Math.Min(count, left / weight);
                left -= taken * weight;
                _reached[c] += taken * dual;
            }

            _reached[c] = Math.Max(_reached[c], alike[c].Max());
        }
    }

    /// <summary>Takes note of a set of cuts that can be had; sets come in the order of their weights.</summary>
    /// <param name="at">Where the last call ended; 0 at first.</param>
    /// <param name="weight">Weight of the set.</param>
    /// <param name="before">The most that a lighter set earns.</param>
    public int Passed(int at, long weight, long before)
    {
        for (; at < _capacities.Length && _capacities[at] < weight; at++) _reached[at] = Math.Max(_reached[at], before);
        return at;
    }

    /// <summary>Of each capacity, the least first: a label that it holds and those before do not is of no use where v - e w is below this.</summary>
    /// <param name="earning">e: what the next cut earns for its weight.</param>
    public (long Capacity, double Least)[] Least(double earning)
    {
        var least = double.PositiveInfinity;
        for (var c = _capacities.Length - 1; c >= 0; c--)
        {
            least = Math.Min(least, _reached[c] - earning * _capacities[c] - Margin * (_reached[c] + earning * _capacities[c]) - 1);
            _least[c] = (_capacities[c], least);
        }

        return _least;
    }
}
