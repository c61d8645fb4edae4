namespace Offcuts.Matching.Runs;

/// <summary>
/// What pieces of each kind earn, and what stock costs, in multiples of 1/<see cref="Scale"/> cent. Whole numbers, whatever proposed them.
/// </summary>
internal sealed class StockPrices(RunPart part)
{
    /// <summary>Parts of a cent.</summary>
    public const long Scale = 1 << 24;

    /// <summary>No piece earns more, so that all the cuts of a bar together stay a number.</summary>
    public const long MostEarned = 1L << 58;

    /// <summary>For each interval of a piece on the pattern.</summary>
    public long Interval { get; init; }

    /// <summary>For the odd end beyond the last whole interval, by its length and which end lies on the pattern.</summary>
    public Dictionary<Kind, long> Odd { get; init; } = [];

    /// <summary>For a piece alone in its stretch, by its length.</summary>
    public Dictionary<long, long> Alone { get; init; } = [];

    /// <summary>For each unit of length where pieces are cut anywhere.</summary>
    public long Unit { get; init; }

    /// <summary>For each kind by itself, where prices are known so closely; the others are then not asked.</summary>
    public IReadOnlyDictionary<Kind, long>? ByKind { get; init; }

    /// <summary>Cost of a cent spent.</summary>
    public long Spend { get; init; }

    /// <summary>Cost of a cent of yard value given up.</summary>
    public long GivenUp { get; init; }

    /// <summary>Of prices by kind for spend and value in one sum, those for the spend alone: where to begin, no more.</summary>
    public StockPrices OfSpend => ByKind is null ? this
        : new StockPrices(part) { ByKind = ByKind.ToDictionary(one => one.Key, one => one.Value / CentSpent), Spend = Scale };

    /// <summary>In one sum with the value given up, a cent spent counts so often.</summary>
    public const long CentSpent = 8;

    /// <summary>What a piece earns.</summary>
    public long Of(Kind kind)
    {
        if (ByKind is not null) return ByKind.GetValueOrDefault(kind);
        if (kind.Ends == Ends.Free) return Math.Max(Alone.GetValueOrDefault(kind.Length), Unit * kind.Length);
        var (whole, odd) = Math.DivRem(kind.Length, part.Interval);
        return Interval * whole + (odd == 0 ? 0 : Odd.GetValueOrDefault(new Kind(odd, kind.Ends)));
    }

    /// <summary>What opening a bar costs, before what is kept of it is counted.</summary>
    public long Opening(Bar bar) => Spend * bar.Price + GivenUp * bar.Whole;
}

/// <summary>
/// The most that a bar can still earn from a place on, by dynamic programming over places:
/// <code>
/// best(at) = max( kept(rest after at),  max over kinds of  kept(trim before it) + earned + best(its end) )
/// </code>
/// Pieces between two lines, pieces with one odd end, pieces alone in a stretch; where pieces are cut anywhere, one piece as long as is
/// good. Its cost is places times intervals times odd ends; a bar has few of each.
/// </summary>
internal sealed class BarWorth
{
    private readonly Kinds _kinds;
    private readonly StockPrices _prices;
    private readonly View _view;
    private readonly Dictionary<long, (long Worth, Kind? Kind, Ends Way)> _known = [];

    public BarWorth(Kinds kinds, StockPrices prices, View view) => (_kinds, _prices, _view) = (kinds, prices, view);

    /// <summary>The most a whole bar earns less what it costs to open it; it has to be cut at least once.</summary>
    public long Whole => Best(-1).Worth - _prices.Opening(_view.Bar);

    /// <summary>The most from the end of a cut on; a remainder counts what it is worth kept.</summary>
    public long From(long at) => Best(at).Worth;

    /// <summary>The cuts that earn <see cref="Whole"/>.</summary>
    public IEnumerable<(Kind Kind, Ends Way)> Cuts()
    {
        var at = -1L;
        while (Best(at) is { Kind: { } kind } best)
        {
            yield return (kind, best.Way);
            at = Cutting.Start(_view, _kinds.Part, at, kind.Length, best.Way)!.Value + kind.Length;
        }
    }

    private (long Worth, Kind? Kind, Ends Way) Best(long at)
    {
        if (_known.TryGetValue(at, out var known)) return known;
        (long Worth, Kind? Kind, Ends Way) best = at < 0 ? (long.MinValue / 4, null, default)
            : (Kept(Cutting.After(at, _view.Bar.Length, _kinds.Part.Kerf).Left), null, default);
        foreach (var (kind, way) in _kinds.From(_view, at))
        {
            var (residue, step) = kind.Ends == Ends.Free ? (kind.Length, 0) : (kind.Length, _kinds.Part.Interval);
            for (var length = residue; Cutting.Start(_view, _kinds.Part, at, length, way) is { } x; length += step)
            {
                var one = new Kind(length, kind.Ends);
                var worth = Kept(Cutting.Before(at, x, _kinds.Part.Kerf).Left) + _prices.Of(one) + Best(x + length).Worth;
                if (worth > best.Worth) best = (worth, one, way);
                if (step == 0) break;
            }
        }

        _known[at] = best;
        return best;
    }

    // Where a piece may have any length, what is best lies at a bend of the value but for the rounding to cents: one cent covers that.
    private long Kept(long length) => _prices.GivenUp * (_view.Bar.Value(length) + (_kinds.AnyLength && length > 0 ? 1 : 0));
}

/// <summary>The kinds of pieces that the rows of a part ask for, by their shortest lengths.</summary>
internal sealed class Kinds
{
    private readonly List<(Kind Shortest, Ends Way)> _stepped = [];
    private readonly long _leastFree;

    public Kinds(RunPart part)
    {
        Part = part;
        var pattern = part.Rows.Where(row => row.OnPattern).ToArray();
        if (pattern.Length > 0) Add(0, Ends.Both, pattern.Min(row => row.Shortest));
        foreach (var row in pattern)
        {
            foreach (var stretch in row.Stretches)
            {
                var need = StretchNeed.Of(row, stretch, part);
                foreach (var odd in need.Odd) Add(odd.Length, odd.Ends, row.Shortest);
                if (need.Alone) Alone.Add(stretch.Length);
            }
        }

        var open = part.Rows.Where(row => !row.OnPattern && row.Stretches.Length > 0).ToArray();
        AnyLength = open.Length > 0;
        _leastFree = open.Select(row => row.LeastPiece).DefaultIfEmpty().Min();
    }

    public RunPart Part { get; }

    /// <summary>Lengths of stretches that one piece may cover.</summary>
    public SortedSet<long> Alone { get; } = [];

    /// <summary>True where pieces are cut anywhere.</summary>
    public bool AnyLength { get; }

    /// <summary>What can be cut next: the shortest of each kind, which goes on by whole intervals, or single lengths.</summary>
    public IEnumerable<(Kind Kind, Ends Way)> From(View view, long at)
    {
        foreach (var one in _stepped) yield return one;
        foreach (var length in Alone) yield return (new Kind(length, Ends.Free), Ends.Free);
        if (!AnyLength) yield break;
        var room = view.Bar.Length - (at < 0 ? 0 : at + Part.Kerf);
        foreach (var length in view.Bar.Bends.Select(bend => room - Part.Kerf - bend).Append(room).Append(_leastFree).Distinct())
        {
            if (length >= _leastFree && length <= room) yield return (new Kind(length, Ends.Free), Ends.Free);
        }
    }

    private void Add(long odd, Ends ends, long shortest)
    {
        var least = odd + Math.Max(odd == 0 ? 1 : 0, (shortest - odd + Part.Interval - 1) / Part.Interval) * Part.Interval;
        foreach (var way in Cutting.Ways(ends))
        {
            var known = _stepped.FindIndex(one => one.Way == way && one.Shortest.Ends == ends && one.Shortest.Length % Part.Interval == odd);
            if (known < 0) _stepped.Add((new Kind(least, ends), way));
            else if (least < _stepped[known].Shortest.Length) _stepped[known] = (new Kind(least, ends), way);
        }
    }
}

/// <summary>What a stretch needs, whatever pieces it is made of.</summary>
/// <param name="Intervals">Whole intervals between its first and its last line; -1 where no line lies on it.</param>
/// <param name="Odd">Its odd ends.</param>
/// <param name="Alone">True where one bar may cover it.</param>
/// <param name="Length">Its length, where pieces are cut anywhere; else 0.</param>
internal sealed record StretchNeed(long Intervals, Kind[] Odd, bool Alone, long Length)
{
    public static StretchNeed Of(Row row, Stretch stretch, RunPart part)
    {
        if (!row.OnPattern) return new StretchNeed(0, [], false, stretch.Length);
        var alone = stretch.Length <= part.LongestBar;
        var (first, last) = (row.LineFrom(stretch.From), row.LineTo(stretch.To));
        if (last < first) return new StretchNeed(-1, [], alone, 0);
        var odd = new List<Kind>();
        if (first > stretch.From) odd.Add(new Kind(first - stretch.From, row.Of.Reversible ? Ends.One : Ends.Right));
        if (last < stretch.To) odd.Add(new Kind(stretch.To - last, row.Of.Reversible ? Ends.One : Ends.Left));
        return new StretchNeed((last - first) / row.Interval, [.. odd], alone, 0);
    }
}
