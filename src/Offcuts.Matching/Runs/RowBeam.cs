using Offcuts.Core.Walls;

namespace Offcuts.Matching.Runs;

/// <summary>
/// One stretch, from left to right: at each place where a joint may lie, the few cheapest ways of having come there. A piece costs what its
/// bar loses by it beyond what the piece earns (both at the prices of the relaxation), and a little for a tie and a joint, so that they
/// decide among equals. Careful, it keeps what the row above will need: joints nearer to each other than twice the stagger bar a zone
/// above them, which some bar must be long enough to span.
/// </summary>
internal sealed class RowBeam
{
    private const int SourcesOfKind = 5;
    private const int OffersOfKind = 3 * SourcesOfKind;
    private const long TieCost = 12 * StockPrices.Scale;
    private const long JointCost = 2 * StockPrices.Scale;

    private readonly Site _site;
    private readonly Row _row;
    private readonly Stretch _stretch;
    private readonly bool _careful;
    private readonly Dictionary<(int Shape, bool Mirrored, long At), Source> _sources = [];
    private readonly Dictionary<Kind, List<Step>> _offers = [];
    private readonly long[] _barred;

    private RowBeam(Site site, Row row, int stretch, bool careful)
    {
        (_site, _row, _stretch) = (site, row, row.Stretches[stretch]);
        _careful = careful && row.Stagger > 0 && row.Above is { } above && !site.Filled(above);
        _barred = row.Stagger == 0 ? [] : [.. Neighbours().SelectMany(site.Joints).Concat(row.Standing).Order()];
        foreach (var bar in site.Begun.Where(bar => bar.View.Bar.Length - bar.At - site.Part.Kerf >= row.Shortest)) Add(bar, bar.View, bar.At);
        foreach (var bar in site.Part.Bars.Where(bar => site.Left(bar) > 0))
        {
            foreach (var view in View.Of(bar)) Add(bar, view, -1);
        }
    }

    // Bars that are alike and cut as far: what one of them offers, each of them does.
    private sealed record Source(View View, long At, List<(object Root, View View)> Roots);

    private void Add(object root, View view, long at)
    {
        var key = (_site.Part.Shapes[view.Bar], view.Mirrored, at);
        if (!_sources.TryGetValue(key, out var source)) source = _sources[key] = new Source(view, at, []);
        if (source.Roots.Count < OffersOfKind) source.Roots.Add((root, view));
    }

    /// <summary>One piece of a way.</summary>
    /// <param name="Root">A begun bar, or for a whole one what tells it from others: the yard's bar, or the step that opens a bought one.</param>
    /// <param name="View">The bar and from which end.</param>
    /// <param name="At">End of the cut on it.</param>
    /// <param name="Kind">What is cut.</param>
    /// <param name="Way">Which of its ends lies on lines of the bar.</param>
    /// <param name="To">Its right end in the row.</param>
    /// <param name="Cost">What it costs.</param>
    public sealed record Step(object Root, View View, long At, Kind Kind, Ends Way, long To, long Cost);

    private sealed record Way(Way? Before, Step? Last, long At, long Cost, long ZoneFrom, long Joint);

    /// <summary>The pieces from left to right, or none where no row of them was found.</summary>
    public static List<Step>? Find(Site site, Row row, int stretch, int width, bool careful) => new RowBeam(site, row, stretch, careful).Run(width);

    private IEnumerable<Row> Neighbours()
    {
        if (_row.Below is { } below) yield return below;
        if (_row.Above is { } above) yield return above;
    }

    private List<Step>? Run(int width)
    {
        var ways = new SortedDictionary<long, List<Way>> { [_stretch.From] = [new Way(null, null, _stretch.From, 0, long.MinValue, long.MinValue)] };
        while (ways.Count > 0 && _site.Until is not { Over: true })
        {
            var (at, here) = ways.First();
            if (at == _stretch.To) return Steps(here.MinBy(way => way.Cost)!);
            ways.Remove(at);
            long[] landings = [.. Landings(at)];
            foreach (var way in here) Extend(way, landings, ways, width);
        }

        return null;
    }

    private void Extend(Way way, long[] landings, SortedDictionary<long, List<Way>> ways, int width)
    {
        var changed = Changed(way);
        foreach (var to in landings)
        {
            var zone = Zone(way, to);
            if (zone is null) continue;
            var kind = _row.KindOf(_stretch, way.At, to);
            var cost = way.Cost + (to == _stretch.To ? 0 : JointCost + (_site.NeedsTie(_row, to) ? TieCost : 0));
            if (!ways.TryGetValue(to, out var there)) there = [];
            var taken = 0;
            foreach (var step in Offers(kind))
            {
                // The cheapest come first: what is too dear for this place is followed by what is dearer still.
                if (taken > SourcesOfKind || (there.Count == width && cost + step.Cost >= there[^1].Cost)) break;
                if (Cut(changed, step.Root) || !Available(way, step)) continue;
                taken++;
                // A step that opens a bought bar is told from another by itself.
                var fresh = step.Root is Bar { Bought: not null } ? step with { To = to, Root = new object() } : step with { To = to };
                Keep(there, new Way(way, fresh, to, cost + step.Cost + Noise(), zone.Value.From, zone.Value.Joint), width);
            }

            foreach (var (root, view, at) in changed)
            {
                if (taken > SourcesOfKind) break;
                if (Offer(root, view, at, kind) is not { } step) continue;
                taken++;
                Keep(there, new Way(way, step with { To = to }, to, cost + step.Cost + Noise(), zone.Value.From, zone.Value.Joint), width);
            }

            if (there.Count > 0) ways[to] = there;
        }
    }

    private static bool Cut(List<(object Root, View View, long At)> changed, object root)
    {
        foreach (var one in changed)
        {
            if (ReferenceEquals(one.Root, root)) return true;
        }

        return false;
    }

    private long Noise() => _site.Random.NextInt64(StockPrices.Scale);

    private static void Keep(List<Way> here, Way way, int width)
    {
        if (here.Count == width && here[^1].Cost <= way.Cost) return;
        var place = here.Count;
        while (place > 0 && here[place - 1].Cost > way.Cost) place--;
        here.Insert(place, way);
        if (here.Count > width) here.RemoveAt(width);
    }

    // Bars that this way has cut already, as they are now.
    private static List<(object Root, View View, long At)> Changed(Way way)
    {
        var changed = new List<(object, View, long)>();
        for (var one = way; one.Last is { } last; one = one.Before!)
        {
            if (!Cut(changed, last.Root)) changed.Add((last.Root, last.View, last.At));
        }

        return changed;
    }

    private bool Available(Way way, Step step)
    {
        if (step.Root is not Bar { Bought: not null } bar || _site.Left(bar) > 64) return true;
        var opened = new HashSet<object>(ReferenceEqualityComparer.Instance);
        for (var one = way; one.Last is { } last; one = one.Before!)
        {
            if (last.View.Bar == bar && last.Root is not BegunBar) opened.Add(last.Root);
        }

        return opened.Count < _site.Left(bar);
    }

    private IEnumerable<long> Landings(long at)
    {
        var longest = Math.Min(_stretch.To, at + _site.Part.LongestBar);
        var places = new SortedSet<long>();
        for (var line = _row.LineFrom(at + _row.Shortest); line <= longest && line + _row.Shortest <= _stretch.To; line += _row.Interval) places.Add(line);
        if (_row.Of.Joints == JointRule.Anywhere)
        {
            foreach (var source in _sources.Values)
            {
                var whole = at + source.View.Bar.Length - (source.At < 0 ? 0 : source.At + _site.Part.Kerf);
                if (whole - at >= _row.Shortest && whole + _row.Shortest <= _stretch.To) places.Add(whole);
            }
        }

        if (_stretch.To <= longest && _stretch.To - at >= _row.Shortest) places.Add(_stretch.To);
        return places.Where(place => place == _stretch.To || !Barred(place));
    }

    private bool Barred(long at)
    {
        var low = Array.BinarySearch(_barred, at - _row.Stagger + 1);
        if (low < 0) low = ~low;
        return low < _barred.Length && _barred[low] < at + _row.Stagger;
    }

    // The zone above the last joints in which the row above can have none, with its new joint; none where no bar spans it.
    private (long From, long Joint)? Zone(Way way, long to)
    {
        if (!_careful) return (0, 0);
        var end = to == _stretch.To;
        if (end && way.Joint == long.MinValue) return (way.ZoneFrom, way.Joint);
        var from = way.Joint != long.MinValue && to - way.Joint < 2 * _row.Stagger && !end ? way.ZoneFrom : to - _row.Stagger;
        if (from < _stretch.From + _row.Shortest) from = _stretch.From;
        var upTo = to + _row.Stagger;
        if (end)
        {
            (from, upTo) = (way.ZoneFrom, way.Joint + _row.Stagger);
            if (upTo > _stretch.To - _row.Shortest) upTo = _stretch.To;
        }
        else if (upTo > _stretch.To - _row.Shortest) upTo = _stretch.To;

        if (_row.Of.Joints != JointRule.Anywhere)
        {
            if (from > _stretch.From) from = Math.Max(_stretch.From, _row.LineTo(from));
            if (upTo < _stretch.To) upTo = Math.Min(_stretch.To, _row.LineFrom(upTo));
        }

        return upTo - from <= _site.Part.LongestBar ? (from, end ? way.Joint : to) : null;
    }

    private List<Step> Offers(Kind kind)
    {
        if (_offers.TryGetValue(kind, out var offers)) return offers;
        var all = new List<(Step Step, Source Source)>();
        foreach (var source in _sources.Values)
        {
            if (Offer(source.Roots[0].Root, source.View, source.At, kind) is { } step) all.Add((step with { Cost = step.Cost + Noise() }, source));
        }

        _offers[kind] = offers = [];
        foreach (var (step, source) in all.OrderBy(one => one.Step.Cost))
        {
            foreach (var (root, view) in source.Roots)
            {
                if (!offers.Exists(one => ReferenceEquals(one.Root, root))) offers.Add(step with { Root = root, View = view });
                if (offers.Count == OffersOfKind) return offers;
            }
        }

        return offers;
    }

    // What is left of a bar may find no use any more: what has been begun goes first.
    private static long Later(long worth) => worth - worth / 8;

    // Where stock is limited a whole bar has a price of its own: what it could earn elsewhere. Without it, a little of every bar would seem
    // to cost less than the whole of a few.
    private long Opening(View view, BarWorth worth) =>
        _site.Part.Rests ? Math.Max(_site.Prices.Opening(view.Bar), worth.From(-1)) : _site.Prices.Opening(view.Bar);

    private Step? Offer(object root, View view, long at, Kind kind)
    {
        if (kind.Length > view.Bar.Length - Math.Max(at, 0)) return null;
        _site.Asked++;
        var worth = _site.Worth(view);
        Step? best = null;
        foreach (var way in Cutting.Ways(kind.Ends))
        {
            if (Cutting.Start(view, _site.Part, at, kind.Length, way) is not { } x) continue;
            var before = at < 0 ? Opening(view, worth) : Later(worth.From(at));
            var kept = _site.Prices.GivenUp * view.Bar.Value(Cutting.Before(at, x, _site.Part.Kerf).Left);
            var cost = before - kept - Later(worth.From(x + kind.Length)) - _site.Prices.Of(kind);
            if (best is null || cost < best.Cost) best = new Step(root, view, x + kind.Length, kind, way, 0, cost);
        }

        return best;
    }

    private static List<Step> Steps(Way way)
    {
        var steps = new List<Step>();
        for (var one = way; one.Last is { } last; one = one.Before!) steps.Add(last);
        steps.Reverse();
        return steps;
    }
}
