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
/// What <see cref="PieceCutting"/> measures its solver by, which may be ended too early or lack a way: every way of cutting as often as the linear program has it, rounded down; of what is lacking then as much
/// as ways give that waste next to nothing; and the rest first fit, the longest pieces first, into new bars. Or the same without regard to the linear program. It comes to some bars more than need be, where a solver that was ended
/// may have bought one for every piece. Cost: a look at all ways for each that is taken, and one at all begun bars for each piece of the rest. It proves nothing.
/// </summary>
internal sealed class PlainCutting
{
    // A way that costs more for the length it gives than a new bar that is wasted by so much leaves its pieces to the first fit.
    private const double Wasteful = 1.02;

    private readonly KindTable _table;
    private readonly List<CutWay> _ways;
    private readonly List<long> _uses;
    private readonly long[] _asked;
    private readonly long[] _stock;

    private PlainCutting(KindTable table, List<CutWay> ways)
    {
        (_table, _ways, _uses) = (table, ways, [.. new long[ways.Count]]);
        (_asked, _stock) = (new long[table.Kinds.Count], [.. table.Part.Shapes.All.Select(alike => alike.Count)]);
    }

    /// <summary>How often each way is cut; none where stock does not reach.</summary>
    /// <param name="table">Kinds and bars.</param>
    /// <param name="ways">Ways of cutting; those found here are added.</param>
    /// <param name="asked">How many pieces of each kind.</param>
    /// <param name="shared">True to begin with what the linear program has.</param>
    public static long[]? Of(KindTable table, List<CutWay> ways, IEnumerable<(int Kind, int Count)> asked, bool shared)
    {
        var cutting = new PlainCutting(table, ways);
        foreach (var (kind, count) in asked) cutting._asked[kind] = count;
        for (var w = 0; shared && w < ways.Count; w++) cutting.Take(w, (long)Math.Floor(ways[w].Share + 1e-6));
        var fresh = table.Part.Bars.Where(bar => bar.Bought is { Limit: null } && bar.Price > 0).MinBy(bar => (double)bar.Price / bar.Length);
        cutting.TakeWays(fresh is null ? double.PositiveInfinity : Wasteful * StockPrices.CentSpent * fresh.Price / fresh.Length);
        if (fresh is not null) cutting.FirstFit(fresh);
        return cutting.TakeWays(double.PositiveInfinity) ? [.. cutting._uses] : null;
    }

    private void Take(int way, long times)
    {
        var bar = ShapeOf(way);
        times = Math.Min(times, _stock[bar]);
        _uses[way] += times;
        _stock[bar] -= times;
        foreach (var (kind, count) in _ways[way].Counted) _asked[kind] = Math.Max(0, _asked[kind] - times * count);
    }

    private int ShapeOf(int way) => _table.Part.Shapes[_ways[way].Cut.Bar];

    // As far as they cost no more for a length; true where nothing is asked for any more.
    private bool TakeWays(double most)
    {
        while (Array.Exists(_asked, left => left > 0))
        {
            if (Best(most) is not { } best) return false;
            Take(best, Math.Max(1, _ways[best].Counted.Min(one => _asked[one.Kind] / one.Count)));
        }

        return true;
    }

    // The least cost for a length that is asked for; among equals the most of it.
    private int? Best(double mostCost)
    {
        var (best, most, least) = ((int?)null, 0L, mostCost);
        for (var w = 0; w < _ways.Count; w++)
        {
            if (_stock[ShapeOf(w)] == 0) continue;
            var useful = 0L;
            foreach (var (kind, count) in _ways[w].Counted) useful += Math.Min(count, _asked[kind]) * _table.Kinds[kind].Length;
            if (useful == 0) continue;
            var cost = (double)_ways[w].Cost / useful;
            if (cost < least || (cost == least && useful > most)) (best, most, least) = (w, useful, cost);
        }

        return best;
    }

    private void FirstFit(Bar bar)
    {
        var begun = new List<(BarPattern Cut, List<int> Kinds, long Left)>();
        foreach (var kind in Enumerable.Range(0, _asked.Length).Where(kind => _asked[kind] > 0).OrderByDescending(kind => _table.Kinds[kind].Length))
        {
            for (var n = 0; _asked[kind] > 0; n++)
            {
                if (n > begun.Count) break;
                if (n < begun.Count && begun[n].Left < _table.Kinds[kind].Length) continue;
                if (With(bar, n < begun.Count ? begun[n].Cut.Cuts : [], _table.Kinds[kind]) is not { } more) continue;
                if (n == begun.Count) begun.Add((more, [], 0));
                begun[n].Kinds.Add(kind);
                begun[n] = (more, begun[n].Kinds, bar.Length - more.Cuts[^1].X - more.Cuts[^1].Kind.Length - _table.Part.Kerf);
                _asked[kind]--;
                // The same bar may take another one.
                n--;
            }
        }

        foreach (var (cut, kinds, _) in begun)
        {
            _ways.Add(new CutWay(cut, [.. kinds], 0));
            _uses.Add(1);
        }
    }

    private BarPattern? With(Bar bar, BarCut[] cuts, Kind kind) => Cutting.Ways(kind.Ends)
        .Select(way => BarPattern.Of(_table.Part, new View(bar, false), cuts.Select(cut => (cut.Kind, cut.Way)).Append((kind, way)))).FirstOrDefault(one => one is not null);
}
