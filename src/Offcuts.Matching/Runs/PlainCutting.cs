namespace Offcuts.Matching.Runs;

/// <summary>A way to cut a bar that pieces may be cut by.</summary>
/// <param name="Cut">Bar and cuts.</param>
/// <param name="Kinds">Numbers of the kinds it gives.</param>
/// <param name="Share">How often the linear program has it, in parts of bars; 0 where it does not know it.</param>
internal sealed record CutWay(BarPattern Cut, int[] Kinds, double Share)
{
    /// <summary>The kinds, each with how many of it.</summary>
    public (int Kind, int Count)[] Counted { get; } = [.. Kinds.CountBy(kind => kind).Select(one => (one.Key, one.Value))];

    /// <summary>Spend and value in one sum, as the linear program has it.</summary>
    public long Cost => Math.Max(0, StockPrices.CentSpent * Cut.Price + Cut.GivenUp);
}

/// <summary>
/// What <see cref="PieceCutting"/> falls back on where its solver is ended too early: every way of cutting as often as the linear program has it, rounded down, and what is lacking then by the
/// ways that cost least for the length that is still asked for. It comes to a bar or two more than need be, where a solver that was ended may have bought one for every piece.
/// Cost: a look at all ways for each that is taken. It proves nothing.
/// </summary>
internal sealed class PlainCutting
{
    private readonly IReadOnlyList<CutWay> _ways;
    private readonly long[] _uses;
    private readonly long[] _asked;
    private readonly long[] _stock;
    private readonly long[] _lengths;

    private PlainCutting(KindTable table, IReadOnlyList<CutWay> ways)
    {
        (_ways, _uses, _asked) = (ways, new long[ways.Count], new long[table.Kinds.Count]);
        (_stock, _lengths) = ([.. table.Part.Bars.Select(bar => (long)bar.Count)], [.. table.Kinds.Select(kind => kind.Length)]);
    }

    /// <summary>How often each way is cut; none where stock does not reach.</summary>
    /// <param name="table">Kinds and bars.</param>
    /// <param name="ways">Ways of cutting.</param>
    /// <param name="asked">How many pieces of each kind.</param>
    public static long[]? Of(KindTable table, IReadOnlyList<CutWay> ways, IEnumerable<(int Kind, int Count)> asked)
    {
        var cutting = new PlainCutting(table, ways);
        foreach (var (kind, count) in asked) cutting._asked[kind] = count;
        for (var w = 0; w < ways.Count; w++) cutting.Take(w, (long)Math.Floor(ways[w].Share + 1e-6));
        while (Array.Exists(cutting._asked, left => left > 0))
        {
            if (cutting.Best() is not { } best) return null;
            cutting.Take(best, Math.Max(1, cutting._ways[best].Counted.Min(one => cutting._asked[one.Kind] / one.Count)));
        }

        return cutting._uses;
    }

    private void Take(int way, long times)
    {
        var bar = _ways[way].Cut.Bar.Index;
        times = Math.Min(times, _stock[bar]);
        _uses[way] += times;
        _stock[bar] -= times;
        foreach (var (kind, count) in _ways[way].Counted) _asked[kind] = Math.Max(0, _asked[kind] - times * count);
    }

    // The least cost for a length that is asked for; among equals the most of it.
    private int? Best()
    {
        var (best, most, least) = ((int?)null, 0L, 0.0);
        for (var w = 0; w < _ways.Count; w++)
        {
            if (_stock[_ways[w].Cut.Bar.Index] == 0) continue;
            var useful = 0L;
            foreach (var (kind, count) in _ways[w].Counted) useful += Math.Min(count, _asked[kind]) * _lengths[kind];
            if (useful == 0) continue;
            var cost = (double)_ways[w].Cost / useful;
            if (best is null || cost < least || (cost == least && useful > most)) (best, most, least) = (w, useful, cost);
        }

        return best;
    }
}
