namespace Offcuts.Matching.Runs;

/// <summary>
/// A filling taken apart so far that some pieces beside each other can be replaced by others in little time: which stay, which bars are begun and what else can be cut from them,
/// where joints and ties lie. Which rows are covered never changes.
/// </summary>
internal sealed class LooseLaying
{
    private readonly Filling _filling;
    private readonly CutSets _sets;
    private readonly Lane[][] _ofRow;
    private readonly Dictionary<TieKey, int> _ties = [];
    private readonly Dictionary<CutSet, List<LooseBar>> _begun = [];
    private readonly long[] _left;
    private readonly List<(LooseBar Bar, CutSet Set)> _changed = [];
    private readonly List<(LoosePiece Piece, LooseBar Bar)> _cut = [];

    /// <param name="filling">Where to begin.</param>
    /// <param name="sets">What bars can give.</param>
    public LooseLaying(Filling filling, CutSets sets)
    {
        (_filling, _sets) = (filling, sets);
        var part = filling.Part;
        _left = [.. part.Shapes.All.Select(alike => alike.Count)];
        _ofRow = [.. part.Rows.Select(row => row.Stretches.Select((_, s) => new Lane(row, s, [])).ToArray())];
        foreach (var used in filling.Bars)
        {
            var bar = new LooseBar(sets.Of(used.Pattern));
            _left[bar.Set.Shape]--;
            Note(bar);
            foreach (var one in used.Laid) _ofRow[one.Row.Index][one.Stretch].Pieces.Add(new LoosePiece(one.From, one.To, one.Kind, bar));
        }

        foreach (var lane in _ofRow.SelectMany(lanes => lanes)) lane.Pieces.Sort((a, b) => a.From.CompareTo(b.From));
        Lanes = [.. _ofRow.SelectMany(lanes => lanes).Where(lane => lane.Pieces.Count > 0)];
        foreach (var lane in Lanes)
        {
            foreach (var key in lane.Pieces.SkipLast(1).Select(piece => lane.Row.Tie(piece.To)).OfType<TieKey>()) _ties[key] = _ties.GetValueOrDefault(key) + 1;
        }

        // Of bars that give the same in another order, which may not be the filling's own.
        Figures = LaterFigures.Of(Filling());
    }

    /// <summary>The stretches that are covered.</summary>
    public Lane[] Lanes { get; }

    /// <summary>The figures as it lies.</summary>
    public LaterFigures Figures { get; private set; }

    /// <summary>
    /// By how much the figures would change if other pieces lay in these windows, each cut from where it costs least; none where they can't lie so. The windows are
    /// of different lanes, or apart from each other.
    /// </summary>
    public LaterFigures? Try(Window[] windows)
    {
        foreach (var window in windows)
        {
            if (!Lies(window, windows)) return null;
        }

        return Cut(windows) is { } cost ? cost + Ties(windows) : null;
    }

    /// <summary>Lays what was tried last.</summary>
    public void Lay(Window[] windows, LaterFigures change)
    {
        foreach (var window in windows) CountTies(window, +1, Gone(window), Come(window));
        foreach (var (bar, set) in _changed)
        {
            if (bar.Set.Kinds.Length > 0) Forget(bar);
            if (bar.Set.Kinds.Length == 0) _left[set.Shape]--;
            bar.Set = set;
            if (set.Kinds.Length > 0) Note(bar);
            else _left[set.Shape]++;
        }

        // From the right, so that places in a lane stay what they are.
        foreach (var window in windows.OrderByDescending(window => window.First))
        {
            var cut = windows.TakeWhile(one => one != window).Sum(one => one.Lengths.Length);
            window.Lane.Pieces.RemoveRange(window.First, window.Count);
            window.Lane.Pieces.InsertRange(window.First, _cut.GetRange(cut, window.Lengths.Length).Select(one => one.Piece with { Bar = one.Bar }));
        }

        Figures += change;
    }

    /// <summary>The same as a filling.</summary>
    public Filling Filling()
    {
        var part = _filling.Part;
        var laid = new Dictionary<LooseBar, List<Laid>>(ReferenceEqualityComparer.Instance);
        foreach (var lane in Lanes)
        {
            foreach (var piece in lane.Pieces)
            {
                if (!laid.TryGetValue(piece.Bar, out var own)) laid[piece.Bar] = own = [];
                own.Add(new Laid(lane.Row, lane.Stretch, piece.From, piece.To, piece.Kind));
            }
        }

        var taken = new int[part.Bars.Length];
        var used = new List<UsedBar>();
        foreach (var (bar, pieces) in laid)
        {
            var own = part.Shapes.All[bar.Set.Shape].Bars.First(one => taken[one.Index] < one.Count);
            taken[own.Index]++;
            var pattern = bar.Set.Pattern!;
            var order = new List<Laid>();
            foreach (var cut in pattern.Cuts)
            {
                var piece = pieces.FindIndex(one => one.Kind == cut.Kind);
                order.Add(pieces[piece]);
                pieces.RemoveAt(piece);
            }

            used.Add(new UsedBar(pattern with { View = pattern.View with { Bar = own } }, [.. order]));
        }

        return new Filling(part, used, [.. _filling.Filled]);
    }

    private void Note(LooseBar bar)
    {
        if (!_begun.TryGetValue(bar.Set, out var alike)) _begun[bar.Set] = alike = [];
        alike.Add(bar);
    }

    private void Forget(LooseBar bar)
    {
        var alike = _begun[bar.Set];
        alike.Remove(bar);
        if (alike.Count == 0) _begun.Remove(bar.Set);
    }

    private bool Lies(in Window window, Window[] all)
    {
        var (row, at, to) = (window.Lane.Row, window.From, window.Lane.Pieces[window.First + window.Count - 1].To);
        for (var n = 0; n < window.Lengths.Length; n++)
        {
            var next = at + window.Lengths[n];
            if (window.Lengths[n] < row.Shortest) return false;
            if (n < window.Lengths.Length - 1 && (next >= to || !row.IsLine(next) || Barred(row, next, all))) return false;
            at = next;
        }

        return at == to;
    }

    private bool Barred(Row row, long at, Window[] all)
    {
        if (row.Stagger == 0) return false;
        foreach (var standing in row.Standing)
        {
            if (Math.Abs(standing - at) < row.Stagger) return true;
        }

        return (row.Below is { } below && Near(below, at, row.Stagger, all)) || (row.Above is { } above && Near(above, at, row.Stagger, all));
    }

    private bool Near(Row row, long at, long stagger, Window[] all)
    {
        foreach (var lane in _ofRow[row.Index])
        {
            for (var p = 0; p < lane.Pieces.Count - 1; p++)
            {
                if (Math.Abs(lane.Pieces[p].To - at) < stagger && !Within(all, lane, p)) return true;
            }
        }

        foreach (var window in all)
        {
            if (window.Lane.Row != row) continue;
            var joint = window.From;
            for (var n = 0; n < window.Lengths.Length - 1; n++)
            {
                if (Math.Abs((joint += window.Lengths[n]) - at) < stagger) return true;
            }
        }

        return false;
    }

    // True where the joint at the right of a piece is inside of a window.
    private static bool Within(Window[] all, Lane lane, int piece)
    {
        foreach (var window in all)
        {
            if (window.Lane == lane && piece >= window.First && piece < window.First + window.Count - 1) return true;
        }

        return false;
    }

    // Where each new piece is cut from, the longest first, and what all of it costs.
    private LaterFigures? Cut(Window[] windows)
    {
        _changed.Clear();
        _cut.Clear();
        var cost = default(LaterFigures);
        foreach (var window in windows)
        {
            for (var p = window.First; p < window.First + window.Count; p++)
            {
                var piece = window.Lane.Pieces[p];
                if (SetOf(piece.Bar).Without(piece.Kind) is not { } rest) return null;
                cost += Change(piece.Bar, rest);
            }

            var low = window.Lane.Row.Low ? window.Lengths.Length - window.Count : 0;
            cost += new LaterFigures(0, 0, 0, window.Lengths.Length - window.Count, low);
            var at = window.From;
            foreach (var length in window.Lengths)
            {
                var kind = window.Lane.Row.KindOf(window.Lane.Row.Stretches[window.Lane.Stretch], at, at + length);
                _cut.Add((new LoosePiece(at, at + length, kind, null!), null!));
                at += length;
            }
        }

        Span<int> order = stackalloc int[_cut.Count];
        for (var n = 0; n < order.Length; n++) order[n] = n;
        order.Sort((a, b) => _cut[b].Piece.Kind.CompareTo(_cut[a].Piece.Kind));
        foreach (var n in order)
        {
            if (Source(_cut[n].Piece.Kind) is not var (bar, set)) return null;
            _cut[n] = (_cut[n].Piece, bar);
            cost += Change(bar, set);
        }

        return cost;
    }

    private CutSet SetOf(LooseBar bar)
    {
        foreach (var (changed, set) in _changed)
        {
            if (changed == bar) return set;
        }

        return bar.Set;
    }

    private LaterFigures Change(LooseBar bar, CutSet set)
    {
        var old = bar.Set;
        var n = _changed.FindIndex(one => one.Bar == bar);
        if (n < 0) _changed.Add((bar, set));
        else (old, _changed[n]) = (_changed[n].Set, (bar, set));
        return Between(old, set);
    }

    private static LaterFigures Between(CutSet old, CutSet set) => new(set.Price - old.Price, set.GivenUp - old.GivenUp, 0, 0, set.Saws - old.Saws);

    private (LooseBar Bar, CutSet Set)? Source(Kind kind)
    {
        (LooseBar? Bar, CutSet? From, CutSet? Set) best = default;
        LaterFigures least = default;
        foreach (var (bar, set) in _changed) Look(bar, set);
        foreach (var (set, bars) in _begun)
        {
            if (set.Room < kind.Length) continue;
            if (bars.Find(bar => !_changed.Exists(one => one.Bar == bar)) is { } bar) Look(bar, set);
        }

        for (var shape = 0; shape < _left.Length; shape++)
        {
            if (_left[shape] - Opened(shape) > 0) Look(null, _sets.Empty(shape));
        }

        return best.Set is null ? null : (best.Bar ?? new LooseBar(best.From!), best.Set);

        void Look(LooseBar? bar, CutSet from)
        {
            if (from.With(kind) is not { } set) return;
            var cost = Between(from, set);
            if (best.Set is not null && cost.CompareTo(least) >= 0) return;
            (best, least) = ((bar, from, set), cost);
        }
    }

    private int Opened(int shape)
    {
        var opened = 0;
        foreach (var (bar, _) in _changed)
        {
            if (bar.Set.Shape == shape && bar.Set.Kinds.Length == 0) opened++;
        }

        return opened;
    }

    private static long[] Gone(in Window window)
    {
        var joints = new long[window.Count - 1];
        for (var p = 0; p < joints.Length; p++) joints[p] = window.Lane.Pieces[window.First + p].To;
        return joints;
    }

    private static long[] Come(in Window window)
    {
        var joints = new long[window.Lengths.Length - 1];
        var at = window.From;
        for (var n = 0; n < joints.Length; n++) joints[n] = at += window.Lengths[n];
        return joints;
    }

    // Counted, and put back.
    private LaterFigures Ties(Window[] windows)
    {
        var before = _ties.Count;
        foreach (var window in windows) CountTies(window, +1, Gone(window), Come(window));
        var change = _ties.Count - before;
        foreach (var window in windows) CountTies(window, +1, Come(window), Gone(window));
        return new LaterFigures(0, 0, change, 0, 0);
    }

    private void CountTies(in Window window, int by, long[] gone, long[] come)
    {
        foreach (var at in gone) Count(window.Lane.Row, at, -by);
        foreach (var at in come) Count(window.Lane.Row, at, by);
    }

    private void Count(Row row, long at, int by)
    {
        if (row.Tie(at) is not { } key) return;
        var count = _ties.GetValueOrDefault(key) + by;
        if (count == 0) _ties.Remove(key);
        else _ties[key] = count;
    }
}
