namespace Offcuts.Matching.Runs;

/// <summary>
/// A row alone, of one stretch: the question of the tailgate, which offcuts fit this corner. Decided in every tier by counting, in some
/// milliseconds and without any solver. The order of the pieces matters to the ties alone, so spend and value are decided over sums of
/// intervals n and odd ends e, bar after bar:
/// <code>
/// left(b, n, e) = min( left(b + 1, n, e),  min over what b gives  price + given up + left(b + 1, n + its intervals, e + its ends) )
/// </code>
/// and the tiers after them over the ways through that table that cost exactly its least, told apart by <see cref="AloneKey"/>: first those with
/// few pieces that make a step round from tie to tie, since at least half of their ends are extra ties, then with more of them, until the
/// fewest ties are certain. A piece that covers the stretch by itself stands beside that.
/// Source: dynamic programming for the knapsack, Bellman 1957 (from memory). It gives up above a number of steps.
/// </summary>
internal sealed class AloneFill
{
    private const long MostSteps = 2_000_000;
    private const long MostSums = 20_000_000;
    private const int Nothing = -1;

    private readonly AloneRow _row;
    private readonly List<Stage> _stages = [];
    private readonly long _range;
    private readonly int _goal;
    private long[][] _left = [];
    private long _steps = MostSteps;

    private AloneFill(AloneRow row, long range)
    {
        (_row, _range, _goal) = (row, range, 4 * Math.Max(0, row.Intervals) + 3);
        // Where no line lies on the stretch nothing can be joined: one piece covers it or none does.
        if (row.Intervals < 0) return;
        var shapes = new List<AloneCuts>();
        foreach (var bar in row.Part.Bars)
        {
            if (shapes.Find(one => one.Like(bar)) is not { } shape) shapes.Add(shape = new AloneCuts(row, bar));
            if (shape.Sums.Length == 0) continue;
            // Each that is used gives a piece, so where there are as many as pieces there is always another one.
            var endless = bar.Count >= row.Row.MostPieces;
            for (var copy = 0; copy < (endless ? 1 : bar.Count); copy++) _stages.Add(new Stage(bar, shape, endless));
        }
    }

    // One bar, or one that can be had again and again.
    private sealed record Stage(Bar Bar, AloneCuts Cuts, bool Endless);

    // What has been laid by the bars so far: the fewest pieces and saw cuts for what matters, and how.
    private sealed record Label(AloneKey Key, int Cost, Stage? Stage, AloneWay? Way, Label? Before);

    /// <summary>The best filling, proven in every tier; none where the part is no such row, or too large for it.</summary>
    /// <param name="part">The part.</param>
    public static Filling? Solve(RunPart part)
    {
        if (Begin(part) is not { } fill) return null;
        var (alone, money) = (fill.ByOne(), fill.Least());
        if (alone.Filling is not null && alone.Money <= money) return alone.Filling;
        return money >= AloneCuts.Never ? Filling.Empty(part) : fill.ByMany();
    }

    /// <summary>The least spend for covering the row; none as for <see cref="Solve"/>, or where it can't be covered.</summary>
    /// <param name="part">The part.</param>
    public static long? LeastSpend(RunPart part)
    {
        if (Begin(part) is not { } fill) return null;
        var money = Math.Min(fill.ByOne().Money, fill.Least());
        // The value given up lies within half a range of 0.
        return money >= AloneCuts.Never ? null : (money + fill._range / 2) / fill._range;
    }

    private static AloneFill? Begin(RunPart part)
    {
        if (AloneRow.Of(part) is not { } row) return null;
        // Spend and value in one number: a cent spent counts more than all value. Whether that is too large is seen in floating point.
        var (range, sums) = (1L, 0L);
        var (width, price) = (1.0, 1.0);
        foreach (var bar in part.Bars)
        {
            var count = Math.Min(bar.Count, row.Row.MostPieces);
            range += 2 * count * (bar.Whole + bar.MostKept);
            width += 2.0 * count * ((double)bar.Whole + bar.MostKept);
            price += (double)count * bar.Price;
            var most = 2 + Math.Min(row.Intervals, bar.Length / row.Row.Interval);
            sums += (bar.Count >= row.Row.MostPieces ? 1 : count) * 16 * (row.Intervals + 2L) * most + 32 * most * most;
        }

        return sums > MostSums || width * price >= AloneCuts.Never / 4.0 ? null : new AloneFill(row, range);
    }

    // The cheapest piece that covers the stretch by itself has no joint, so nothing as cheap is better.
    private (long Money, Filling? Filling) ByOne()
    {
        var piece = new Kind(_row.Stretch.Length, Ends.Free);
        BarPattern? best = null;
        foreach (var bar in _row.Part.Bars)
        {
            foreach (var view in View.Of(bar))
            {
                if (BarPattern.Of(_row.Part, view, [(piece, Ends.Free)]) is not { } one) continue;
                if (best is null || Money(one) < Money(best) || (Money(one) == Money(best) && one.Saws < best.Saws)) best = one;
            }
        }

        if (best is null) return (AloneCuts.Never, null);
        var laid = new Laid(_row.Row, 0, _row.Stretch.From, _row.Stretch.To, piece);
        return (Money(best), new Filling(_row.Part, [new UsedBar(best, [laid])], [true]));
    }

    private long Money(BarPattern pattern) => pattern.Price * _range + pattern.GivenUp;

    // What it costs at least to go on from every sum, bar by bar from the last one back.
    private long Least()
    {
        _left = [.. Enumerable.Range(0, _stages.Count + 1).Select(_ => new long[_goal + 1])];
        Array.Fill(_left[^1], AloneCuts.Never);
        _left[^1][_goal] = 0;
        for (var s = _stages.Count - 1; s >= 0; s--)
        {
            var (stage, here, next) = (_stages[s], _left[s], _left[s + 1]);
            var price = stage.Bar.Price * _range;
            for (var sum = _goal; sum >= 0; sum--)
            {
                var best = next[sum];
                foreach (var more in stage.Cuts.Sums)
                {
                    if (Sum(sum, more) is not (>= 0 and var to)) continue;
                    var rest = stage.Endless ? here[to] : next[to];
                    if (rest < AloneCuts.Never) best = Math.Min(best, price + stage.Cuts.Least[more] + rest);
                }

                here[sum] = best;
            }
        }

        return _row.Intervals < 0 ? AloneCuts.Never : _left[0][_row.Begun];
    }

    private int Sum(int sum, int more) => (sum & more & 3) != 0 || sum + more > _goal ? Nothing : sum + more;

    private Filling? ByMany()
    {
        // Ends that are no joints may lie on any line, and spare half a piece each.
        var spared = (Free(1, _row.Stretch.From) ? 1 : 0) + (Free(2, _row.Stretch.To) ? 1 : 0);
        var order = new AloneOrder(_row.Round);
        for (var ties = 0; ; ties++)
        {
            // Beyond what a key can tell apart some rows with so many extra ties would go unseen, and among those the best may be.
            if (2 * ties + spared > AloneKey.Most || Laid(2 * ties + spared) is not { } labels) return null;
            var (best, fewest) = ((Label?)null, int.MaxValue);
            foreach (var label in labels)
            {
                var needed = Ties(order, label);
                if (needed < fewest || (needed == fewest && label.Cost < best!.Cost)) (best, fewest) = (label, needed);
            }

            if (best is not null && fewest <= ties) return Written(order, best, fewest);
        }
    }

    private bool Free(int end, long place) => (_row.Begun & end) != 0 && _row.At(place) != 0;

    // Everything that can be laid at the least cost with no more than so many pieces that make a step.
    private IReadOnlyCollection<Label>? Laid(int mostOdd)
    {
        var first = new Label(new AloneKey((ulong)_row.Begun << 10, 0), 0, null, null, null);
        var here = new Dictionary<AloneKey, Label> { [first.Key] = first };
        for (var s = 0; s < _stages.Count; s++)
        {
            var (stage, left, after) = (_stages[s], _left[s], _stages[s].Endless ? _left[s] : _left[s + 1]);
            var wanted = Wanted(stage, here.Values, left, after);
            var ways = wanted.Contains(true) ? stage.Cuts.Ways(wanted, mostOdd, ref _steps) : [];
            if (ways is null) return null;
            var next = new Dictionary<AloneKey, Label>();
            var waiting = new Queue<Label>(here.Values);
            while (waiting.TryDequeue(out var label))
            {
                // One that was found again with less goes on from there.
                if (left[label.Key.Sum] == _left[s + 1][label.Key.Sum]) Keep(next, label);
                foreach (var way in ways)
                {
                    if (--_steps < 0) return null;
                    if (Sum(label.Key.Sum, way.Key.Sum) is not (>= 0 and var to) || after[to] >= AloneCuts.Never) continue;
                    if (left[label.Key.Sum] != stage.Bar.Price * _range + stage.Cuts.Least[way.Key.Sum] + after[to]) continue;
                    if (label.Key.And(way.Key) is not { } key || key.Odd > mostOdd) continue;
                    var one = new Label(key, label.Cost + way.Cost, stage, way, label);
                    if (!stage.Endless) Keep(next, one);
                    else if (Keep(here, one)) waiting.Enqueue(one);
                }
            }

            here = next;
        }

        return here.Values;
    }

    private static bool Keep(Dictionary<AloneKey, Label> known, Label label)
    {
        if (known.TryGetValue(label.Key, out var other) && other.Cost <= label.Cost) return false;
        known[label.Key] = label;
        return true;
    }

    // Sums of a bar that lie on a way of the least cost from what has been laid.
    private bool[] Wanted(Stage stage, IEnumerable<Label> labels, long[] left, long[] after)
    {
        var wanted = new bool[stage.Cuts.Least.Length];
        var todo = new Queue<int>(labels.Select(label => label.Key.Sum).Distinct());
        var seen = todo.ToHashSet();
        while (todo.TryDequeue(out var sum))
        {
            foreach (var more in stage.Cuts.Sums)
            {
                if (Sum(sum, more) is not (>= 0 and var to) || after[to] >= AloneCuts.Never) continue;
                if (left[sum] != stage.Bar.Price * _range + stage.Cuts.Least[more] + after[to]) continue;
                wanted[more] = true;
                if (stage.Endless && seen.Add(to)) todo.Enqueue(to);
            }
        }

        return wanted;
    }

    private int Ties(AloneOrder order, Label label)
    {
        var (from, to) = (From(label.Key), To(label.Key));
        var pieces = label.Cost / AloneWay.OnePiece;
        var odd = label.Key.Odd + (_row.Begun & 1 ^ 1) + (_row.Begun >> 1 ^ 1);
        var onTies = order.Most(from, label.Key);
        if (onTies > 0) onTies += pieces - odd;
        onTies -= ((_row.Begun & 1) != 0 && from == 0 ? 1 : 0) + ((_row.Begun & 2) != 0 && to == 0 ? 1 : 0);
        return pieces - 1 - onTies;
    }

    // Where the pieces between lines begin and end.
    private int From(AloneKey key) => (_row.Begun & 1) != 0 ? _row.At(_row.Stretch.From) : key.Ends.Left;

    private int To(AloneKey key) => (_row.Begun & 2) != 0 ? _row.At(_row.Stretch.To) : key.Ends.Right;

    private Filling Written(AloneOrder order, Label label, int ties)
    {
        var used = new List<(BarPattern Pattern, AlonePiece[] Pieces)>();
        for (var one = label; one.Way is not null; one = one.Before!)
        {
            var cuts = new List<AloneWay>();
            for (var way = one.Way; way is not null; way = way.Before) cuts.Insert(0, way);
            used.Insert(0, (BarPattern.Of(_row.Part, one.Way.View with { Bar = one.Stage!.Bar }, cuts.Select(cut => (cut.Piece!.Kind, cut.Turned)))!, [.. cuts.Select(cut => cut.Piece!)]));
        }

        var places = Places(order, label.Key, [.. used.SelectMany(bar => bar.Pieces)]);
        var filling = new Filling(_row.Part, [.. used.Select(bar => new UsedBar(bar.Pattern, [.. bar.Pieces.Select(piece => places[piece].Dequeue())]))], [true]);
        var (pieces, saws) = Math.DivRem(label.Cost, AloneWay.OnePiece);
        long[] said = [_left[0][_row.Begun], ties, pieces - 1, saws + (_row.Row.Low ? pieces : 0)];
        var level = _row.Part.Levels.Length;
        long[] found = [filling.Figures[level] * _range + filling.Figures[level + 1], .. filling.Figures[(level + 2)..]];
        return said.SequenceEqual(found) ? filling : throw new InvalidOperationException($"counted were {string.Join(' ', said)}, but laid are {string.Join(' ', found)}");
    }

    // The odd end on the left, what makes a step in the order that meets most ties with what makes none at a tie, the odd end on the right.
    private Dictionary<AlonePiece, Queue<Laid>> Places(AloneOrder order, AloneKey key, AlonePiece[] pieces)
    {
        var row = new List<AlonePiece>(pieces.Where(piece => piece.End == 1));
        var between = pieces.Where(piece => piece.End == 0).GroupBy(piece => piece.Step).ToDictionary(group => group.Key, group => new Queue<AlonePiece>(group));
        foreach (var step in order.Walk(From(key), key))
        {
            if (!between.TryGetValue(step, out var those)) continue;
            for (var count = step == 0 ? those.Count : 1; count > 0; count--) row.Add(those.Dequeue());
        }

        row.AddRange(pieces.Where(piece => piece.End == 2));
        var (places, at) = (new Dictionary<AlonePiece, Queue<Laid>>(), _row.Stretch.From);
        foreach (var piece in row)
        {
            if (!places.TryGetValue(piece, out var queue)) places[piece] = queue = new Queue<Laid>();
            queue.Enqueue(new Laid(_row.Row, 0, at, at + piece.Kind.Length, piece.Kind));
            at += piece.Kind.Length;
        }

        return places;
    }
}
