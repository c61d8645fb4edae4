namespace Offcuts.Matching.Runs;

/// <summary>
/// Which bars of a part are alike in all that cutting asks of them: as long, with the same lines, worth the same, bought alike or not at all. What is
/// reckoned for one of them holds for each; a yard of thousands of offcuts has some hundred shapes.
/// </summary>
internal sealed class BarShapes
{
    private readonly int[] _of;

    /// <summary>Numbers the shapes in the order of their first bars.</summary>
    public BarShapes(Bar[] bars)
    {
        _of = new int[bars.Length];
        var known = new Dictionary<(object?, long, long?, Func<long, long>), int>();
        for (var b = 0; b < bars.Length; b++)
        {
            var key = (bars[b].Bought, bars[b].Length, bars[b].Line, bars[b].Value);
            if (!known.TryGetValue(key, out var shape)) known[key] = shape = known.Count;
            _of[b] = shape;
        }

        Count = known.Count;
        All = [.. bars.GroupBy(bar => _of[bar.Index]).OrderBy(shape => shape.Key).Select(shape => new AlikeBars([.. shape]))];
    }

    /// <summary>The bars of each shape, in the order of their numbers.</summary>
    public IReadOnlyList<AlikeBars> All { get; }

    /// <summary>How many shapes there are.</summary>
    public int Count { get; }

    /// <summary>Number of a bar's shape, from 0.</summary>
    public int this[Bar bar] => _of[bar.Index];
}

/// <summary>Bars that are alike: what is cut from one of them might be cut from each.</summary>
/// <param name="Bars">The bars, in their own order.</param>
internal sealed record AlikeBars(Bar[] Bars)
{
    /// <summary>The one that stands for all.</summary>
    public Bar First => Bars[0];

    /// <summary>How many there are in all.</summary>
    public long Count { get; } = Bars.Sum(bar => (long)bar.Count);
}
