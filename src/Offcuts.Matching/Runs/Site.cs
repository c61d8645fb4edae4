using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>A bar that has been begun: how its cuts are placed, and where the next may start.</summary>
internal sealed class BegunBar(View view)
{
    public View View { get; } = view;

    public List<(Kind Kind, Ends Way, Laid Laid)> Cuts { get; } = [];

    /// <summary>End of its last cut.</summary>
    public long At { get; set; } = -1;
}

/// <summary>What has been laid so far, what has been begun, and what is still whole.</summary>
internal sealed class Site
{
    private const int Tries = 8;

    private readonly WorthTable _worth;
    private readonly Dictionary<int, SortedSet<long>> _joints = [];
    private readonly Dictionary<TieKey, int> _ties = [];
    private readonly int[] _left;
    private readonly bool[] _filled;

    public Site(RunPart part, WorthTable worth, Random random)
    {
        (Part, _worth, Random) = (part, worth, random);
        _left = [.. part.Bars.Select(bar => bar.Count)];
        _filled = new bool[part.Rows.Length];
        foreach (var row in part.Rows.Where(row => row.Stretches.Length == 0)) _filled[row.Index] = true;
    }

    public RunPart Part { get; }

    public StockPrices Prices => _worth.Prices;

    public Random Random { get; }

    /// <summary>Once it is over nothing more is laid; none where all is laid, however long that takes.</summary>
    public Effort? Until { get; set; }

    /// <summary>How often a bar was asked what a piece from it costs, which is most of the work.</summary>
    public long Asked { get; set; }

    /// <summary>Bars in use.</summary>
    public List<BegunBar> Begun { get; } = [];

    /// <summary>The same state as a filling left it.</summary>
    public static Site Of(Filling filling, WorthTable worth, Random random, Effort? until = null)
    {
        var site = new Site(filling.Part, worth, random) { Until = until };
        foreach (var used in filling.Bars)
        {
            var bar = new BegunBar(used.Pattern.View);
            bar.Cuts.AddRange(used.Pattern.Cuts.Zip(used.Laid, (cut, laid) => (cut.Kind, cut.Way, laid)));
            bar.At = used.Pattern.Cuts[^1].X + used.Pattern.Cuts[^1].Kind.Length;
            site.Begun.Add(bar);
            site._left[bar.View.Bar.Index]--;
            foreach (var laid in used.Laid) site.Note(laid, 1);
        }

        Array.Copy(filling.Filled, site._filled, filling.Filled.Length);
        return site;
    }

    /// <summary>How many of a bar are whole.</summary>
    public int Left(Bar bar) => _left[bar.Index];

    /// <summary>What a bar can earn from a place on.</summary>
    public BarWorth Worth(View view) => _worth[view];

    /// <summary>Joints of a row.</summary>
    public IReadOnlyCollection<long> Joints(Row row) => _joints.TryGetValue(row.Index, out var joints) ? joints : [];

    public bool Filled(Row row) => _filled[row.Index];

    /// <summary>True where a joint needs a tie that is not there yet.</summary>
    public bool NeedsTie(Row row, long at) => row.Tie(at) is { } key && !_ties.ContainsKey(key);

    /// <summary>Covers a row where that can be done.</summary>
    public void Lay(Row row, int width)
    {
        if (_filled[row.Index] || Hangs(row)) return;
        var laid = new List<(BegunBar Bar, Laid Laid)>();
        for (var s = 0; s < row.Stretches.Length; s++)
        {
            var steps = RowBeam.Find(this, row, s, width, careful: true) ?? (width == 1 ? null : RowBeam.Find(this, row, s, 8 * width, careful: true))
                ?? RowBeam.Find(this, row, s, width, careful: false);
            if (steps is null)
            {
                Undo(laid);
                return;
            }

            Commit(row, s, steps, laid);
        }

        _filled[row.Index] = true;
    }

    /// <summary>Covers a row; where what lies below it leaves no room for that, lays the row below again too.</summary>
    public void LayFirmly(Row row, int width)
    {
        Lay(row, width);
        for (var tries = 0; tries < Tries && !_filled[row.Index] && row.Below is { } below && _filled[below.Index]; tries++)
        {
            // First the row below, then the two below.
            Row[] again = tries >= 3 && below.Below is { } lowest && _filled[lowest.Index] ? [lowest, below] : [below];
            TakeOut(again);
            foreach (var one in again) Lay(one, 4 * width);
            Lay(row, 4 * width);
        }
    }

    /// <summary>Takes rows out; what else is cut from their bars moves up.</summary>
    public void TakeOut(IReadOnlyCollection<Row> rows)
    {
        foreach (var bar in Begun)
        {
            foreach (var cut in bar.Cuts.Where(cut => rows.Contains(cut.Laid.Row))) Note(cut.Laid, -1);
            if (bar.Cuts.RemoveAll(cut => rows.Contains(cut.Laid.Row)) > 0) Replace(bar);
        }

        DropEmpty();
        foreach (var row in rows) _filled[row.Index] = row.Stretches.Length == 0;
    }

    /// <summary>What has been laid, each bar cut in its best order. What would lie on an open row is taken out.</summary>
    public Filling Filling()
    {
        foreach (var row in Part.Rows.Where(row => _filled[row.Index] && Hangs(row)).OrderBy(row => row.Number).ToArray()) TakeOutAbove(row);
        return new(Part, [.. Begun.Select(Used)], [.. _filled]);
    }

    private bool Hangs(Row row) => row.Stretches.Length > 0 && Part.Under(row) is { } under && !_filled[under.Index];

    private void TakeOutAbove(Row row)
    {
        for (var one = row; one is { Stretches.Length: > 0 } && _filled[one.Index] && Hangs(one); one = one.Above) TakeOut([one]);
    }

    private UsedBar Used(BegunBar bar)
    {
        var best = BarPattern.Of(Part, bar.View, bar.Cuts.Select(cut => (cut.Kind, cut.Way)))!;
        var order = bar.Cuts;
        if (bar.Cuts.Count <= 4)
        {
            foreach (var view in View.Of(bar.View.Bar))
            {
                foreach (var cuts in Orders(bar.Cuts))
                {
                    var pattern = BarPattern.Of(Part, view, cuts.Select(cut => (cut.Kind, cut.Way)));
                    if (pattern is null || (pattern.GivenUp, pattern.Saws).CompareTo((best.GivenUp, best.Saws)) >= 0) continue;
                    (best, order) = (pattern, cuts);
                }
            }
        }

        return new UsedBar(best, [.. order.Select(cut => cut.Laid)]);
    }

    // Every order, and for what may be turned both ways.
    private static IEnumerable<List<(Kind Kind, Ends Way, Laid Laid)>> Orders(List<(Kind Kind, Ends Way, Laid Laid)> cuts)
    {
        if (cuts.Count == 0)
        {
            yield return [];
            yield break;
        }

        foreach (var first in cuts)
        {
            foreach (var rest in Orders([.. cuts.Where(cut => !ReferenceEquals(cut.Laid, first.Laid))]))
            {
                foreach (var way in Cutting.Ways(first.Kind.Ends)) yield return [(first.Kind, way, first.Laid), .. rest];
            }
        }
    }

    private void Commit(Row row, int stretch, List<RowBeam.Step> steps, List<(BegunBar, Laid)> done)
    {
        var opened = new Dictionary<object, BegunBar>(ReferenceEqualityComparer.Instance);
        foreach (var step in steps)
        {
            if (step.Root is not BegunBar bar && !opened.TryGetValue(step.Root, out bar!))
            {
                bar = opened[step.Root] = new BegunBar(step.View);
                Begun.Add(bar);
                _left[bar.View.Bar.Index]--;
            }

            var laid = new Laid(row, stretch, step.To - step.Kind.Length, step.To, step.Kind);
            bar.Cuts.Add((step.Kind, step.Way, laid));
            bar.At = step.At;
            Note(laid, 1);
            done.Add((bar, laid));
        }
    }

    private void Undo(List<(BegunBar Bar, Laid Laid)> done)
    {
        foreach (var (bar, laid) in done)
        {
            Note(laid, -1);
            bar.Cuts.RemoveAll(cut => ReferenceEquals(cut.Laid, laid));
            Replace(bar);
        }

        DropEmpty();
    }

    private void Replace(BegunBar bar)
    {
        bar.At = -1;
        foreach (var (kind, way, _) in bar.Cuts) bar.At = Cutting.Start(bar.View, Part, bar.At, kind.Length, way)!.Value + kind.Length;
    }

    private void DropEmpty()
    {
        foreach (var bar in Begun.Where(bar => bar.Cuts.Count == 0)) _left[bar.View.Bar.Index]++;
        Begun.RemoveAll(bar => bar.Cuts.Count == 0);
    }

    private void Note(Laid laid, int change)
    {
        if (laid.To == laid.Row.Stretches[laid.Stretch].To) return;
        if (!_joints.TryGetValue(laid.Row.Index, out var joints)) _joints[laid.Row.Index] = joints = [];
        if (change > 0) joints.Add(laid.To);
        else joints.Remove(laid.To);
        if (laid.Row.Tie(laid.To) is not { } key) return;
        var count = _ties.GetValueOrDefault(key) + change;
        if (count > 0) _ties[key] = count;
        else _ties.Remove(key);
    }
}

/// <summary>What every bar can earn at given prices, worked out once for all that are alike.</summary>
internal sealed class WorthTable(RunPart part, StockPrices prices)
{
    private readonly Kinds _kinds = new(part);
    private readonly BarWorth?[] _known = new BarWorth?[2 * part.Shapes.Count];

    public StockPrices Prices => prices;

    public BarWorth this[View view] => _known[2 * part.Shapes[view.Bar] + (view.Mirrored ? 1 : 0)] ??= new BarWorth(_kinds, prices, view);
}
