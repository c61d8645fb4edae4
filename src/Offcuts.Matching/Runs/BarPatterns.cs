using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// Every set of laid pieces that one bar can give, each once, with the order and the end from which it is cut that give up least value and
/// then take the fewest saw cuts. That choice can be made here because the tiers between value and saw cuts, ties and joints, do not
/// depend on it. Depth-first over the order of cuts; its cost is the number of orders, so it gives up
/// above a number of steps or of patterns, and once time is over.
/// </summary>
internal sealed class BarPatterns
{
    // So many steps take well below a millisecond.
    private const int StepsBetweenLooks = 4096;

    private readonly RunPart _part;
    private readonly Kind[] _kinds;
    private readonly int[] _most;
    private readonly Dictionary<string, BarPattern> _best = [];
    private readonly int[] _count;
    private readonly List<BarCut> _cuts = [];
    private readonly Worthwhile? _worthwhile;
    private View _view;
    private BarWorth? _worth;
    private long _least;
    private readonly Room _room;
    private long _steps;
    private bool _tooMany;

    private BarPatterns(RunPart part, Kind[] kinds, int[] most, Room room, Worthwhile? worthwhile) =>
        (_part, _kinds, _most, _count, _room, _steps, _worthwhile) = (part, kinds, most, new int[kinds.Length], room, room.Steps, worthwhile);

    /// <summary>How much may still be listed.</summary>
    /// <param name="Steps">Steps that may be made.</param>
    /// <param name="Patterns">Patterns that may be kept.</param>
    /// <param name="Effort">Limit.</param>
    internal readonly record struct Room(long Steps, int Patterns, Effort Effort);

    /// <summary>The patterns of a bar and the steps that are left; none where there are too many, or time was over before all were listed.</summary>
    /// <param name="part">Kerf and interval.</param>
    /// <param name="bar">The bar.</param>
    /// <param name="kinds">What may be asked of it.</param>
    /// <param name="most">How many of each kind at most.</param>
    /// <param name="room">How much may still be listed.</param>
    /// <param name="worthwhile">Which patterns can be left out; none where all are listed.</param>
    public static (IReadOnlyList<BarPattern> Patterns, long Steps)? Of(RunPart part, Bar bar, Kind[] kinds, int[] most, Room room, Worthwhile? worthwhile = null)
    {
        var patterns = new BarPatterns(part, kinds, most, room, worthwhile);
        patterns._least = worthwhile?.Least(bar) ?? 0;
        foreach (var view in View.Of(bar))
        {
            patterns._view = view;
            patterns._worth = worthwhile?.Worth[view];
            if (patterns._worth is { } worth && worth.Whole < patterns._least) continue;
            patterns.Extend(-1, bar.Whole, 0, -worthwhile?.Worth.Prices.Opening(bar) ?? 0);
        }

        if (patterns._tooMany) return null;
        return ([.. patterns._best.OrderBy(entry => entry.Key, StringComparer.Ordinal).Select(entry => entry.Value)], patterns._steps);
    }

    // Earned: at the prices, what the cuts and trims so far bring less what opening the bar costs.
    private void Extend(long at, long given, int saws, long earned)
    {
        if (_cuts.Count > 0) Keep(at, given, saws, earned);
        for (var k = 0; k < _kinds.Length && !_tooMany; k++)
        {
            if (_count[k] == _most[k] || _kinds[k].Length > _view.Bar.Length - Math.Max(0, at)) continue;
            foreach (var way in Cutting.Ways(_kinds[k].Ends))
            {
                if (Cutting.Start(_view, _part, at, _kinds[k].Length, way) is not { } x) continue;
                if (_tooMany |= --_steps < 0 || (_steps % StepsBetweenLooks == 0 && _room.Effort.Over)) return;
                var before = Cutting.Before(at, x, _part.Kerf);
                var (end, kept) = (x + _kinds[k].Length, _view.Bar.Value(before.Left));
                var next = earned + (_worthwhile is { } one ? one.Worth.Prices.Of(_kinds[k]) + one.Worth.Prices.GivenUp * kept : 0);
                if (_worth is not null && next + _worth.From(end) < _least) continue;
                _count[k]++;
                _cuts.Add(new BarCut(_kinds[k], x, way));
                Extend(end, given - kept, saws + before.Saws, next);
                _cuts.RemoveAt(_cuts.Count - 1);
                _count[k]--;
            }
        }
    }

    private void Keep(long at, long given, int saws, long earned)
    {
        var after = Cutting.After(at, _view.Bar.Length, _part.Kerf);
        if (_worthwhile is { } one && earned + one.Worth.Prices.GivenUp * _view.Bar.Value(after.Left) < _least) return;
        given -= _view.Bar.Value(after.Left);
        saws += after.Saws;
        var key = string.Create(_count.Length, _count, (text, count) =>
        {
            for (var k = 0; k < count.Length; k++) text[k] = (char)count[k];
        });
        if (!_best.TryGetValue(key, out var known)) _tooMany |= _best.Count >= _room.Patterns;
        else if (known.GivenUp < given || (known.GivenUp == given && known.Saws <= saws)) return;
        if (_tooMany) return;
        _best[key] = new BarPattern(_view, [.. _cuts], given, saws);
    }
}
