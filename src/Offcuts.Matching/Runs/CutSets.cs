namespace Offcuts.Matching.Runs;

/// <summary>What a bar of one shape gives, whatever the order: its kinds, and the best order found to cut them in. One object stands for it wherever it is asked.</summary>
internal sealed class CutSet
{
    private readonly Dictionary<Kind, CutSet?> _with = [];
    private readonly Dictionary<Kind, CutSet?> _without = [];
    private readonly CutSets _sets;

    public CutSet(CutSets sets, int shape, Kind[] kinds, BarPattern? pattern)
    {
        (_sets, Shape, Kinds, Pattern) = (sets, shape, kinds, pattern);
        var kerf = sets.Part.Kerf;
        Room = sets.Part.Shapes.All[shape].First.Length - kinds.Sum(kind => kind.Length + kerf);
    }

    /// <summary>Number of the bars' shape.</summary>
    public int Shape { get; }

    /// <summary>The kinds in order.</summary>
    public Kind[] Kinds { get; }

    /// <summary>How they are cut from the first bar of the shape; none where nothing is cut.</summary>
    public BarPattern? Pattern { get; }

    /// <summary>No piece that is longer than this can be cut beside them.</summary>
    public long Room { get; }

    public long Price => Pattern?.Price ?? 0;

    public long GivenUp => Pattern?.GivenUp ?? 0;

    public int Saws => Pattern?.Saws ?? 0;

    /// <summary>The same with one more piece; none where it does not fit.</summary>
    public CutSet? With(Kind kind)
    {
        if (kind.Length > Room) return null;
        return _with.TryGetValue(kind, out var known) ? known : _with[kind] = _sets.Of(Shape, [.. Kinds.Append(kind).Order()], Pattern, kind);
    }

    /// <summary>The same without one of its pieces.</summary>
    public CutSet? Without(Kind kind)
    {
        if (_without.TryGetValue(kind, out var known)) return known;
        var rest = Kinds.ToList();
        rest.Remove(kind);
        return _without[kind] = _sets.Of(Shape, [.. rest], Pattern, null);
    }
}

/// <summary>
/// The sets of pieces that bars can give, each worked out once: up to four pieces in every order, from both ends and either way round; of more, in the order of the set that it
/// comes from, with what is new at the end.
/// </summary>
/// <param name="part">Bars, kerf and interval.</param>
internal sealed class CutSets(RunPart part)
{
    private const int EveryOrder = 4;
    private const int Many = 100_000;

    private readonly Dictionary<string, CutSet?> _known = [];

    public RunPart Part => part;

    /// <summary>True where so many are known, some 100 MB of them, that it is better to begin anew.</summary>
    public bool Full => _known.Count >= Many;

    /// <summary>A whole bar.</summary>
    public CutSet Empty(int shape) => Known(shape, [], () => null)!;

    /// <summary>What a pattern gives, in the best order known: its own, where that is of more pieces than are tried in every one.</summary>
    public CutSet Of(BarPattern pattern)
    {
        var (shape, first) = (part.Shapes[pattern.Bar], pattern with { View = pattern.View with { Bar = part.Shapes.All[part.Shapes[pattern.Bar]].First } });
        Kind[] kinds = [.. pattern.Cuts.Select(cut => cut.Kind).Order()];
        // It may have been looked for in vain from another one.
        return Known(shape, kinds, () => (kinds.Length <= EveryOrder ? Best(shape, kinds) : null) ?? first) ?? (_known[NameOf(shape, kinds)] = new CutSet(this, shape, kinds, first));
    }

    /// <summary>A set made of another by one piece more or less; none where it can't be cut.</summary>
    public CutSet? Of(int shape, Kind[] kinds, BarPattern? before, Kind? more)
    {
        if (kinds.Length == 0) return Empty(shape);
        return Known(shape, kinds, () => kinds.Length <= EveryOrder ? Best(shape, kinds) : Next(kinds, before!, more));
    }

    private CutSet? Known(int shape, Kind[] kinds, Func<BarPattern?> pattern)
    {
        var name = NameOf(shape, kinds);
        if (_known.TryGetValue(name, out var known)) return known;
        var made = pattern();
        return _known[name] = made is null && kinds.Length > 0 ? null : new CutSet(this, shape, kinds, made);
    }

    private static string NameOf(int shape, Kind[] kinds) => $"{shape}:{string.Join(',', kinds.Select(kind => $"{kind.Length}.{(int)kind.Ends}"))}";

    private BarPattern? Best(int shape, Kind[] kinds)
    {
        BarPattern? best = null;
        foreach (var view in View.Of(part.Shapes.All[shape].First))
        {
            foreach (var cuts in Orders(kinds))
            {
                if (BarPattern.Of(part, view, cuts) is { } one && (best is null || (one.GivenUp, one.Saws).CompareTo((best.GivenUp, best.Saws)) < 0)) best = one;
            }
        }

        return best;
    }

    private BarPattern? Next(Kind[] kinds, BarPattern before, Kind? more)
    {
        var cuts = before.Cuts.Select(cut => (cut.Kind, cut.Way)).ToList();
        if (more is { } kind) return Cutting.Ways(kind.Ends).Select(way => BarPattern.Of(part, before.View, cuts.Append((kind, way)))).OfType<BarPattern>().MinBy(one => (one.GivenUp, one.Saws));
        foreach (var gone in before.Cuts.Select(cut => cut.Kind).Order().Except(kinds).Take(1).ToArray()) cuts.RemoveAt(cuts.FindIndex(cut => cut.Kind == gone));
        // One of several that are alike: whichever.
        for (var c = cuts.Count - 1; c >= 0 && cuts.Count > kinds.Length; c--)
        {
            if (cuts.Count(cut => cut.Kind == cuts[c].Kind) > kinds.Count(one => one == cuts[c].Kind)) cuts.RemoveAt(c);
        }

        return BarPattern.Of(part, before.View, cuts);
    }

    // Every order, alike pieces told apart by nothing, and for what may be turned both ways.
    private static IEnumerable<List<(Kind Kind, Ends Way)>> Orders(Kind[] kinds)
    {
        if (kinds.Length == 0) yield return [];
        for (var k = 0; k < kinds.Length; k++)
        {
            if (Array.IndexOf(kinds, kinds[k]) < k) continue;
            foreach (var rest in Orders([.. kinds[..k], .. kinds[(k + 1)..]]))
            {
                foreach (var way in Cutting.Ways(kinds[k].Ends)) yield return [(kinds[k], way), .. rest];
            }
        }
    }
}
