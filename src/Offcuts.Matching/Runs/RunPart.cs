using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Runs;

/// <summary>The runs of one material: rows to be covered, bars to cover them from. All in units.</summary>
internal sealed class RunPart
{
    private long? _longest;
    private HashSet<long>? _bought;
    private BarShapes? _shapes;
    private PriceSums? _sums;

    public required Material Material { get; init; }

    public required Row[] Rows { get; init; }

    public required Bar[] Bars { get; init; }

    /// <summary>Which of the bars are alike.</summary>
    public BarShapes Shapes => _shapes ??= new BarShapes(Bars);

    public required long Kerf { get; init; }

    /// <summary>From line to line on the stock; 1 where nothing is joined on the stock's own pattern.</summary>
    public required long Interval { get; init; }

    /// <summary>Course numbers from the bottom up.</summary>
    public required int[] Levels { get; init; }

    /// <summary>True where more could be bought if it had a price.</summary>
    public bool Unpriced { get; init; }

    /// <summary>True where stock is limited: nothing is laid on a row that stays open then, for nobody could stack it there.</summary>
    public bool Rests { get; init; }

    /// <summary>The row that has to be covered before this one can be; none where there is no such row.</summary>
    public Row? Under(Row row) => Rests && row.Below is { Stretches.Length: > 0 } below ? below : null;

    public long LongestBar => _longest ??= Bars.Length == 0 ? 0 : Bars.Max(bar => bar.Length);

    /// <summary>Lengths that are bought: a piece so long needs no saw.</summary>
    public IReadOnlySet<long> BoughtLengths => _bought ??= [.. Bars.Where(bar => bar.Bought is not null).Select(bar => bar.Length)];

    /// <summary>True where joints may lie off the lines, so that places of joints cannot be listed.</summary>
    public bool Open => Rows.Any(row => row.Of.Joints == JointRule.Anywhere);

    /// <summary>The least sum of prices that is not below a bound of the spend.</summary>
    public long NextSpend(long bound) => (_sums ??= new PriceSums(Bars.Select(bar => bar.Price).Where(price => price > 0))).Next(bound);

    public static long Modulo(long value, long by) => (value % by + by) % by;

    public static RunPart Of(RunProblem problem, Material material)
    {
        var rows = new List<Row>();
        for (var r = 0; r < problem.Runs.Count; r++)
        {
            if (problem.Runs[r].Material.Equals(material)) rows.AddRange(RowsOf(problem.Runs[r], r));
        }

        for (var i = 0; i < rows.Count; i++) rows[i].Index = i;
        var interval = problem.PatternOf(material)?.Units ?? 1;
        var bars = BarsOf(problem, material, rows, interval);
        for (var i = 0; i < bars.Length; i++) bars[i].Index = i;
        return new RunPart
        {
            Material = material,
            Rows = [.. rows],
            Bars = bars,
            Kerf = problem.Settings.Kerf(material).Units,
            Interval = interval,
            Levels = [.. rows.Select(row => row.Number).Distinct().Order()],
            Unpriced = problem.Buy && problem.Prices.Of(material).Count == 0,
            Rests = !bars.Any(bar => bar.Bought is { Limit: null }),
        };
    }

    /// <summary>These rows alone, to be covered from the same bars; and which row each of them was here.</summary>
    /// <param name="kept">Which rows.</param>
    public (RunPart Part, Row[] Origin) Only(bool[] kept)
    {
        var rows = Copies(kept);
        return (new RunPart
        {
            Material = Material,
            Rows = [.. rows.Values],
            Bars = Bars,
            Kerf = Kerf,
            Interval = Interval,
            Levels = [.. rows.Keys.Select(row => row.Number).Distinct().Order()],
            Unpriced = Unpriced,
            Rests = Rests,
        }, [.. rows.Keys]);
    }

    private Dictionary<Row, Row> Copies(bool[] filled)
    {
        var rows = new Dictionary<Row, Row>();
        foreach (var row in Rows.Where(row => filled[row.Index]))
        {
            var copy = rows[row] = new Row
            {
                Run = row.Run,
                Course = row.Course,
                Of = row.Of,
                Number = row.Number,
                Low = row.Low,
                Stretches = row.Stretches,
                Gaps = [],
                Index = rows.Count,
                Below = row.Below is { } below && rows.TryGetValue(below, out var copied) ? copied : null,
            };
            if (copy.Below is { } under) under.Above = copy;
        }

        return rows;
    }

    /// <summary>These rows, to be covered from new pieces without limits of the store.</summary>
    public RunPart FromStore(bool[] filled, IReadOnlyList<StorePrice> prices)
    {
        var rows = Copies(filled);
        var pieces = rows.Keys.Sum(row => row.MostPieces);
        return new RunPart
        {
            Material = Material,
            Rows = [.. rows.Values],
            Bars = [.. prices.Select((price, p) => new Bar
            {
                Piece = -1, Bought = price, Start = 0, Length = price.Length.Units, Line = 0, Count = (int)Math.Min(1_000_000, pieces),
                Value = _ => 0, MostKept = 0, Bends = [price.Length.Units], Index = p,
            })],
            Kerf = Kerf,
            Interval = Interval,
            Levels = [.. rows.Keys.Select(row => row.Number).Distinct().Order()],
        };
    }

    private static IEnumerable<Row> RowsOf(Run run, int number)
    {
        Row? below = null;
        var full = run.Material is FoamPanel panel ? panel.Height : Ripping.Width(run.Material) ?? run.Courses.Select(course => course.Height).DefaultIfEmpty().Max();
        for (var c = 0; c < run.Courses.Count; c++)
        {
            var course = run.Courses[c];
            var fits = course.Stretches.ToLookup(stretch => stretch.Length >= run.ShortestPiece);
            var row = new Row
            {
                Run = number,
                Course = c,
                Of = run,
                Number = course.Number,
                Low = course.Height < full,
                Stretches = [.. fits[true].Select(stretch => new Stretch(stretch.Start.Units, stretch.End.Units))],
                Gaps = [.. fits[false].Select(stretch => stretch.Length.Units)],
                Below = below is not null && !run.Parted(below.Number, course.Number) ? below : null,
            };
            if (row.Below is { } under) under.Above = row;
            below = row;
            yield return row;
        }
    }

    private static Bar[] BarsOf(RunProblem problem, Material material, List<Row> rows, long interval)
    {
        var shortest = rows.Select(row => row.LeastPiece).DefaultIfEmpty(1).Min();
        var bars = new List<Bar>();
        // One for all that are valued alike, so that what was looked up once is known.
        var worths = new Dictionary<int, Worth>();
        for (var p = 0; p < problem.Pieces.Count; p++)
        {
            var piece = problem.Pieces[p];
            if (!piece.Material.Equals(material) || !problem.Allows(piece)) continue;
            var alike = 2 * (int)piece.Condition + (piece.Treated ? 1 : 0);
            if (!worths.TryGetValue(alike, out var worth)) worths[alike] = worth = new Worth(problem, material, piece.Condition, piece.Treated);
            bars.AddRange(piece.Spans().Select(span => new Bar
            {
                Piece = p,
                Start = span.Start.Units,
                Length = span.Length.Units,
                Line = piece.FirstLine is { } line ? Modulo(line.Units - span.Start.Units, interval) : null,
                Count = 1,
                Value = worth.Of,
                MostKept = worth.Most(span.Length.Units, shortest),
                Bends = worth.Bends,
            }));
        }

        var pieces = rows.Sum(row => row.MostPieces);
        foreach (var price in problem.Buy ? problem.Prices.Of(material) : [])
        {
            var worth = new Worth(problem, material, Condition.Sound, price.Treated);
            bars.Add(new Bar
            {
                Piece = -1,
                Bought = price,
                Start = 0,
                Length = price.Length.Units,
                Line = 0,
                Count = (int)Math.Min(price.Limit ?? int.MaxValue, Math.Min(1_000_000, pieces)),
                Value = worth.Of,
                MostKept = worth.Most(price.Length.Units, shortest),
                Bends = worth.Bends,
            });
        }

        return [.. bars.Where(bar => bar.Count > 0)];
    }

    // The yard value by length, each looked up once.
    private sealed class Worth(RunProblem problem, Material material, Condition condition, bool treated)
    {
        private readonly Length _keep = problem.Settings.Keep(material);
        private readonly IReadOnlyList<StorePrice> _prices = problem.Prices.ForValue(material, treated);
        private readonly Dictionary<long, long> _known = [];

        public long[] Bends => [_keep.Units, .. _prices.Select(price => price.Length.Units)];

        public long Of(long length)
        {
            if (length < _keep.Units || length <= 0) return 0;
            if (!_known.TryGetValue(length, out var value))
                _known[length] = value = YardValue.Of(Length.FromUnits(length), condition, _prices, _keep).Cents;
            return value;
        }

        // The value per length is nowhere above that of the dearest store length; each remainder may be rounded up by half a cent.
        public long Most(long length, long shortest)
        {
            var rate = _prices.Select(price => (decimal)price.Price.Cents / price.Length.Units).DefaultIfEmpty().Max() * YardValue.Tenths(condition) / 10;
            var count = 2 + length / Math.Max(shortest, 1);
            return (long)Math.Ceiling(rate * length) + count;
        }
    }
}
