using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Runs;

namespace Offcuts.Benchmarks.Contenders;

/// <summary>
/// First fit, course by course, as a careful person lays a wall: from the bottom up and from left to right, the longest offcut that can lie
/// there, cut back to the next line where a joint would be too near to one below; a new piece where no offcut will do; the shortest piece
/// that reaches the end. Where that leads nowhere the person takes the last piece up again, a counted number of times. What is cut off
/// goes back on the heap. Written apart from the filler.
/// </summary>
internal sealed class WallByHand
{
    private const int MostSteps = 20_000;
    private const int MostTries = 12;

    private readonly RunRequest _wall;
    private readonly List<Rest> _heap = [];
    private readonly Dictionary<StorePrice, int> _bought = [];
    private int _steps;

    private WallByHand(RunRequest wall) => _wall = wall;

    /// <summary>Courses left unfilled, by number from the bottom up; cents spent; cents of yard value given up.</summary>
    public static (long[] Unfilled, long Spend, long GivenUp) Fill(RunRequest wall)
    {
        var hand = new WallByHand(wall);
        foreach (var piece in wall.Pieces)
        {
            foreach (var span in piece.Spans()) hand._heap.Add(new Rest(piece.Material, span.Length.Units, piece.FirstLine is { } line ? line.Units - span.Start.Units : null, piece.Condition));
        }

        var whole = hand._heap.ToArray();
        var open = new SortedDictionary<int, long>();
        var joints = new Dictionary<(Run, int), long[]>();
        foreach (var (run, index) in wall.Runs.SelectMany(run => run.Courses.Select((course, c) => (run, c))).OrderBy(one => one.run.Courses[one.c].Number))
        {
            var course = run.Courses[index];
            open.TryAdd(course.Number, 0);
            var below = joints.GetValueOrDefault((run, index - 1), []);
            var laid = course.Stretches.Select(stretch => hand.Lay(run, stretch, below)).ToArray();
            if (laid.Any(one => one is null)) open[course.Number]++;
            joints[(run, index)] = [.. laid.OfType<long[]>().SelectMany(one => one)];
        }

        long Value(Rest rest) => YardValue.Of(Length.FromUnits(rest.Length), rest.Condition, [.. wall.Prices.All.Where(price => price.Material.Equals(rest.Material))], wall.Settings.KeepElsewhere).Cents;
        var given = whole.Sum(Value) - hand._heap.Sum(Value);
        return ([.. open.Values], hand._bought.Sum(one => one.Key.Price.Cents * one.Value), given);
    }

    // A stretch of stock on the heap; two that are alike are told apart.
    private sealed class Rest(Material material, long length, long? line, Condition condition)
    {
        public Material Material => material;

        public long Length => length;

        public long? Line => line;

        public Condition Condition => condition;
    }

    private long[]? Lay(Run run, Span stretch, long[] below)
    {
        if (stretch.Length < run.ShortestPiece) return null;
        _steps = MostSteps;
        var pieces = new List<(Rest From, long At, long Length, StorePrice? Price)>();
        if (!Next(run, stretch, stretch.Start.Units, below, pieces, [])) return null;
        long at = stretch.Start.Units;
        var joints = new List<long>();
        foreach (var (from, start, length, price) in pieces)
        {
            if (price is not null) _bought[price] = _bought.GetValueOrDefault(price) + 1;
            _heap.Remove(from);
            Back(from, 0, start - Kerf);
            Back(from, start + length + Kerf, from.Length);
            at += length;
            if (at < stretch.End.Units) joints.Add(at);
        }

        return [.. joints];
    }

    private long Kerf => _wall.Settings.KerfElsewhere.Units;

    private void Back(Rest from, long start, long end)
    {
        if (end - start >= _wall.Settings.KeepElsewhere.Units && end > start) _heap.Add(new Rest(from.Material, end - start, from.Line - start, from.Condition));
    }

    private bool Next(Run run, Span stretch, long at, long[] below, List<(Rest, long, long, StorePrice?)> pieces, HashSet<Rest> taken)
    {
        if (at == stretch.End.Units) return true;
        var first = at == stretch.Start.Units;
        var tries = 0;
        foreach (var (rest, price) in Offers(run.Material, taken, stretch.End.Units - at))
        {
            foreach (var length in Lengths(run, stretch, at, below, rest.Length))
            {
                if (--_steps < 0 || tries > MostTries) return false;
                if (Place(run, rest, length, !first, at + length < stretch.End.Units) is not { } start) continue;
                tries++;
                pieces.Add((rest, start, length, price));
                taken.Add(rest);
                if (Next(run, stretch, at + length, below, pieces, taken)) return true;
                taken.Remove(rest);
                pieces.RemoveAt(pieces.Count - 1);
            }
        }

        return false;
    }

    // What reaches the end first, the shortest of it; then the longest. New pieces come last.
    private IEnumerable<(Rest From, StorePrice? Price)> Offers(Material material, HashSet<Rest> taken, long left)
    {
        var heap = _heap.Where(rest => rest.Material.Equals(material) && !taken.Contains(rest)).DistinctBy(rest => (rest.Length, rest.Line, rest.Condition)).ToArray();
        foreach (var rest in heap.Where(rest => rest.Length >= left).OrderBy(rest => rest.Length)) yield return (rest, null);
        foreach (var rest in heap.Where(rest => rest.Length < left).OrderByDescending(rest => rest.Length)) yield return (rest, null);
        var store = _wall.Prices.All.Where(price => _wall.Buy && price.Material.Equals(material)).OrderBy(price => price.Length).ToArray();
        foreach (var price in store.Where(price => price.Length.Units >= left)) yield return (New(price), price);
        foreach (var price in store.Where(price => price.Length.Units < left).Reverse()) yield return (New(price), price);
    }

    private static Rest New(StorePrice price) => new(price.Material, price.Length.Units, 0, Condition.Sound);

    private static IEnumerable<long> Lengths(Run run, Span stretch, long at, long[] below, long longest)
    {
        var end = stretch.End.Units;
        if (end - at <= longest)
        {
            yield return end - at;
            yield break;
        }

        var shortest = run.ShortestPiece.Units;
        var last = Math.Min(at + longest, end - shortest);
        var line = last - (((last - run.Lines.FirstTie.Units) % run.Lines.Interval.Units) + run.Lines.Interval.Units) % run.Lines.Interval.Units;
        if (run.Joints == JointRule.Anywhere && longest >= shortest && at + longest <= end - shortest) yield return longest;
        for (var joint = line; joint >= at + shortest && joint > at; joint -= run.Lines.Interval.Units)
        {
            if (below.All(other => Math.Abs(other - joint) >= run.Stagger.Units)) yield return joint - at;
        }
    }

    // As near to an end of what it is cut from as its lines allow, the left one first.
    private static long? Place(Run run, Rest rest, long length, bool left, bool right)
    {
        if (run.Joints != JointRule.OnPattern || (!left && !right)) return length <= rest.Length ? 0 : null;
        if (rest.Line is not { } line) return null;
        var interval = run.Lines.Interval.Units;
        long Off(long start, bool byLeft) => ((line - (byLeft ? start : start + length)) % interval + interval) % interval;
        foreach (var (l, r) in run.Reversible && left != right ? new[] { (left, right), (right, left) } : [(left, right)])
        {
            if (l && r && length % interval != 0) return null;
            var start = Off(0, l);
            if (start + length <= rest.Length) return start;
            start = rest.Length - length;
            if (start >= 0 && Off(start, l) is var off && (off == 0 ? start : start + off - interval) is >= 0 and var back) return back;
        }

        return null;
    }
}
