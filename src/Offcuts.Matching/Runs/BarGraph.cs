using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// A bar as a graph, cut from one of its ends: where a cut may end, and by which cut one gets from such a place to the next. The most it
/// earns is then a longest path.
/// </summary>
internal sealed class BarGraph
{
    private readonly long[] _rest;
    private readonly int[] _first;
    private readonly (int To, int Kind, long Trim, Ends Way)[] _arcs;

    private BarGraph(long[] rest, int[] first, (int To, int Kind, long Trim, Ends Way)[] arcs) => (_rest, _first, _arcs) = (rest, first, arcs);

    /// <summary>Arcs and places.</summary>
    public int Size => _arcs.Length + _rest.Length;

    /// <summary>
    /// The graph of a bar seen from one end; none where it has more than so many arcs and places, or where time runs out before it is drawn.
    /// Where lengths have no step in common every sum of them is a place, and there may be very many.
    /// </summary>
    public static BarGraph? Of(KindTable table, View view, int most, Effort effort)
    {
        var (part, kerf) = (table.Part, table.Part.Kerf);
        var ends = new SortedSet<long> { -1 };
        var found = new SortedDictionary<long, List<(long To, int Kind, long Trim, Ends Way)>>();
        while (ends.Count > 0)
        {
            if (effort.Over) return null;
            var at = ends.Min;
            ends.Remove(at);
            var arcs = found[at] = [];
            for (var k = 0; k < table.Kinds.Count; k++)
            {
                foreach (var way in Cutting.Ways(table.Kinds[k].Ends))
                {
                    if (Cutting.Start(view, part, at, table.Kinds[k].Length, way) is not { } x) continue;
                    var to = x + table.Kinds[k].Length;
                    arcs.Add((to, k, Cutting.Before(at, x, kerf).Left, way));
                    if (!found.ContainsKey(to)) ends.Add(to);
                }
            }

            if ((most -= arcs.Count + 1) < 0) return null;
        }

        var number = found.Keys.Select((at, n) => (at, n)).ToDictionary(one => one.at, one => one.n);
        long[] rest = [.. found.Keys.Select(at => at < 0 ? 0 : Cutting.After(at, view.Bar.Length, kerf).Left)];
        var first = new int[found.Count + 1];
        var all = new List<(int, int, long, Ends)>();
        foreach (var (at, arcs) in found)
        {
            all.AddRange(arcs.Select(arc => (number[arc.To], arc.Kind, arc.Trim, arc.Way)));
            first[number[at] + 1] = all.Count;
        }

        return new BarGraph(rest, first, [.. all]);
    }

    /// <summary>
    /// The most that one bar of this shape earns at prices of kinds and of a cent kept, cut at least once, and its cuts in order; none where
    /// no cut fits.
    /// </summary>
    public (long Most, (int Kind, Ends Way)[] Cuts)? Best(Bar bar, long[] prices, long cent)
    {
        var most = new long[_rest.Length];
        var next = new int[_rest.Length];
        for (var n = _rest.Length - 1; n >= 0; n--)
        {
            var (best, by) = (n == 0 ? long.MinValue : cent * bar.Value(_rest[n]), -1);
            for (var a = _first[n]; a < _first[n + 1]; a++)
            {
                var arc = _arcs[a];
                var worth = most[arc.To] + prices[arc.Kind];
                if (cent > 0 && arc.Trim > 0) worth += cent * bar.Value(arc.Trim);
                if (worth > best) (best, by) = (worth, a);
            }

            (most[n], next[n]) = (best, by);
        }

        if (next[0] < 0) return null;
        var cuts = new List<(int, Ends)>();
        for (var n = 0; next[n] >= 0; n = _arcs[next[n]].To) cuts.Add((_arcs[next[n]].Kind, _arcs[next[n]].Way));
        return (most[0], [.. cuts]);
    }
}
