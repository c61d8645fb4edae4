using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// The tiers after the spend, once every row that can be covered lies: a few pieces beside each other, or of two rows, are taken up and others laid there, each cut from where it costs
/// least of all that is begun or free. So joints are moved, pieces change places, short ones become a long one, and a long one is parted. What costs a little more is taken now and then,
/// ever less of it; then only what is as good or better, tier by tier; and so again from the best.
/// Source: simulated annealing, Kirkpatrick, Gelatt and Vecchi 1983; threshold accepting, Dueck and Scheuer 1990 (both from memory). Cost: some ten microseconds a change.
/// It proves nothing. Where no time ends it, it ends after a counted number of changes.
/// </summary>
internal sealed class Reshaping
{
    private const int ChangesBetweenLooks = 64;
    private const int ChangesOfPiece = 300;
    private const int MostChangesOfPiece = 20_000;
    private const int MostFruitless = 2;
    private const double OfTurn = 0.5;
    private const double OfDescent = 0.3;

    // In cents of value: what is taken on at first, and what later tiers weigh beside the value meanwhile.
    private const double Warm = 3;
    private const double Cool = 0.5;
    private const double Cold = 0.3;
    private const double Tie = 6;
    private const double Joint = 4;
    private const double Saw = 1;
    private const double Money = 1000;

    private CutSets _sets;
    private readonly Func<Filling, PartOutcome> _bounds;
    private readonly Action<Filling> _better;
    private readonly Random _random = new(13);
    private Filling _best;
    private LooseLaying _laying;

    private Reshaping(Filling filling, CutSets sets, Func<Filling, PartOutcome> bounds, Action<Filling> better)
    {
        (_best, _sets, _bounds, _better) = (filling, sets, bounds, better);
        _laying = new LooseLaying(filling, sets);
    }

    /// <summary>The best of many changes of a filling; never worse.</summary>
    /// <param name="filling">Where to begin.</param>
    /// <param name="bounds">What is known of a filling: once it is proven the search ends.</param>
    /// <param name="effort">Limit.</param>
    /// <param name="better">Told of each better one that a turn comes to.</param>
    public static Filling Improve(Filling filling, Func<Filling, PartOutcome> bounds, Effort effort, Action<Filling> better)
    {
        if (filling.Part.Open || filling.Bars.Count == 0 || bounds(filling).Proven) return filling;
        var search = new Reshaping(filling, new CutSets(filling.Part), bounds, better);
        search.Run(effort);
        return search._best;
    }

    private void Run(Effort effort)
    {
        var pieces = _laying.Lanes.Sum(lane => lane.Pieces.Count);
        var turn = (long)pieces * (double.IsInfinity(effort.Seconds) ? ChangesOfPiece : MostChangesOfPiece);
        // What only becomes better is looked for first: it is soon at its end.
        Turn(turn / 2, effort.Share(OfDescent / 2), warm: 0);
        var warmth = Warm;
        for (var fruitless = 0; fruitless < MostFruitless && !effort.Over && !_bounds(_best).Proven; fruitless++)
        {
            var before = _best;
            Turn(turn, effort.Share(OfTurn), warmth);
            Turn(turn / 2, effort.Share(OfDescent), warm: 0);
            warmth = Math.Max(Cool, warmth / 2);
            if (!ReferenceEquals(before, _best)) fruitless = -1;
        }
    }

    // So many changes, or as many as there is time for, from the best on; the warmth falls with what is used of either.
    private void Turn(long changes, Effort effort, double warm)
    {
        var given = effort.Seconds;
        if (_sets.Full) _sets = new CutSets(_best.Part);
        _laying = new LooseLaying(_best, _sets);
        var (least, kept) = (_laying.Figures, (Filling?)null);
        var degree = warm;
        for (var n = 0L; n < changes; n++)
        {
            if (n % ChangesBetweenLooks == 0)
            {
                if (effort.Over || _sets.Full) break;
                var used = Math.Max((double)n / changes, double.IsInfinity(given) ? 0 : 1 - effort.Seconds / given);
                degree = warm * Math.Pow(Cold / Warm, used);
            }

            if (Drawn() is not { } windows || _laying.Try(windows) is not { } change) continue;
            if (warm > 0 ? !Taken(change, degree) : change.CompareTo(default) > 0) continue;
            // What is the best so far is kept when it is left.
            if (change.CompareTo(default) > 0 && _laying.Figures.CompareTo(least) < 0) (least, kept) = (_laying.Figures, _laying.Filling());
            _laying.Lay(windows, change);
        }

        if (_laying.Figures.CompareTo(least) < 0) kept = _laying.Filling();
        if (kept is null || kept.CompareTo(_best) >= 0) return;
        _better(_best = kept);
    }

    private bool Taken(in LaterFigures change, double degree)
    {
        var cost = Money * change.Spend + change.GivenUp + Tie * change.Ties + Joint * change.Joints + Saw * change.Saws;
        return cost <= 0 || _random.NextDouble() < Math.Exp(-cost / degree);
    }

    private Window[]? Drawn() => _random.Next(4) == 0 ? Exchange() : Reshaped() is { } window ? [window] : null;

    // One to four pieces of a lane in another order, often with a joint moved, two joined or one parted.
    private Window? Reshaped()
    {
        var lane = _laying.Lanes[_random.Next(_laying.Lanes.Length)];
        var count = Math.Min(lane.Pieces.Count, 1 + _random.Next(4));
        var first = _random.Next(lane.Pieces.Count - count + 1);
        var lengths = lane.Pieces.GetRange(first, count).Select(piece => piece.To - piece.From).ToList();
        var step = lane.Row.Interval;
        switch (_random.Next(6))
        {
            case 0 when count > 1:
                var joined = _random.Next(count - 1);
                lengths[joined] += lengths[joined + 1];
                lengths.RemoveAt(joined + 1);
                break;
            case 1:
                var parted = _random.Next(count);
                var off = Off(lengths[parted], step);
                if (off == 0) return null;
                lengths.Insert(parted, off);
                lengths[parted + 1] -= off;
                break;
        }

        if (_random.Next(2) == 0) _random.Shuffle(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(lengths));
        if (lengths.Count > 1 && _random.Next(3) > 0) Shift(lengths, step);
        var window = new Window(lane, first, count, [.. lengths]);
        return lengths.Count == count && lengths.SequenceEqual(lane.Pieces.GetRange(first, count).Select(piece => piece.To - piece.From)) ? null : window;
    }

    private long Off(long length, long step) => length <= step ? 0 : step * (1 + _random.NextInt64((length - 1) / step));

    private void Shift(List<long> lengths, long step)
    {
        var (a, b) = (_random.Next(lengths.Count), _random.Next(lengths.Count - 1));
        if (b >= a) b++;
        var by = _random.Next(3) == 0 ? step : Off(lengths[a], step);
        lengths[a] -= by;
        lengths[b] += by;
    }

    // A piece of one lane for one of another, what their lengths differ by being given to a neighbour of each.
    private Window[]? Exchange()
    {
        var lanes = _laying.Lanes;
        var (one, other) = (lanes[_random.Next(lanes.Length)], lanes[_random.Next(lanes.Length)]);
        if (one == other || Pair(one) is not { } first || Pair(other) is not { } second) return null;
        var (x, n) = (Length(one, first), Length(one, first + 1));
        var (y, m) = (Length(other, second), Length(other, second + 1));
        if (_random.Next(2) == 0) (x, n) = (n, x);
        if (_random.Next(2) == 0) (y, m) = (m, y);
        if (x == y) return null;
        return Given(one, first, y, x + n - y) is { } a && Given(other, second, x, y + m - x) is { } b ? [a, b] : null;
    }

    private int? Pair(Lane lane) => lane.Pieces.Count < 2 ? null : _random.Next(lane.Pieces.Count - 1);

    private static long Length(Lane lane, int piece) => lane.Pieces[piece].To - lane.Pieces[piece].From;

    private Window? Given(Lane lane, int first, long length, long rest)
    {
        if (rest < 0) return null;
        return new Window(lane, first, 2, rest == 0 ? [length] : _random.Next(2) == 0 ? [length, rest] : [rest, length]);
    }
}
