using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>One way to lay a row: its arcs from left to right, and what they are cut from. One object stands for it wherever rows of one shape lie so.</summary>
internal sealed class RowLayout
{
    public RowLayout(RowGraph row, int[] arcs) : this(arcs, [.. arcs.Select(arc => row.Kind[arc])], [.. arcs.Where(arc => row.Joint[row.To[arc]]).Select(arc => row.At[row.To[arc]])])
    {
    }

    private RowLayout(int[] arcs, int[] kinds, long[] joints) => (Arcs, Kinds, Joints) = (arcs, kinds, joints);

    /// <summary>Numbers of its arcs in the graph of its row or stretch.</summary>
    public int[] Arcs { get; }

    /// <summary>Their kinds.</summary>
    public int[] Kinds { get; }

    /// <summary>Where pieces meet.</summary>
    public long[] Joints { get; }

    /// <summary>A whole row of its stretches from left to right, each with the number of its first arc in the row.</summary>
    public static RowLayout Of(IEnumerable<(RowLayout Layout, int FirstArc)> stretches)
    {
        var all = stretches.ToArray();
        return new RowLayout([.. all.SelectMany(one => one.Layout.Arcs.Select(arc => one.FirstArc + arc))], [.. all.SelectMany(one => one.Layout.Kinds)], [.. all.SelectMany(one => one.Layout.Joints)]);
    }
}

/// <summary>
/// Every way to lay two neighbouring rows, each once, where there are not many: depth-first over the pairs of places of <see cref="CoursePairs"/>, and only over
/// those from which both rows can be ended. How many there are is counted first, from the right, so that nothing is listed in vain. Cost: as a price
/// of the pair, and what is listed.
/// </summary>
internal sealed class PairLayouts
{
    private readonly CoursePair _pair;
    private readonly Effort _effort;
    private readonly RowGraph _upper;
    private readonly int _most;
    private readonly int[] _ways;
    private readonly List<int> _lowerArcs = [];
    private readonly List<int> _upperArcs = [];
    private readonly Dictionary<(int Shape, string Arcs), RowLayout> _known;
    private readonly List<(RowLayout, RowLayout)> _found = [];

    private PairLayouts(CoursePair pair, int most, Dictionary<(int Shape, string Arcs), RowLayout> known, Effort effort)
    {
        (_pair, _upper, _most, _known, _effort) = (pair, pair.Upper!, most, known, effort);
        _ways = new int[pair.Lower.Count * _upper.Count];
    }

    /// <summary>The pairs of layouts that keep the stagger; none where there are more than so many, or where time ran out.</summary>
    /// <param name="pair">Two rows with a stagger between them, nothing barred.</param>
    /// <param name="most">Most pairs.</param>
    /// <param name="known">Layouts by shape of the row and what they are; what is new is added.</param>
    /// <param name="effort">Limit, asked at every place of the lower row.</param>
    public static IReadOnlyList<(RowLayout Lower, RowLayout Upper)>? Of(CoursePair pair, int most, Dictionary<(int Shape, string Arcs), RowLayout> known, Effort effort)
    {
        var layouts = new PairLayouts(pair, most, known, effort);
        if (!layouts.Count()) return null;
        layouts.Extend(0, 0);
        return effort.Over ? null : layouts._found;
    }

    // From the right: in how many ways both rows can be ended from a pair of places; false where there are too many from the beginning, or time ran out.
    private bool Count()
    {
        var b = _upper.Count;
        _ways[^1] = 1;
        for (var i = _pair.Lower.Count - 1; i >= 0; i--)
        {
            if (_effort.Over) return false;
            for (var j = b - 1; j >= 0; j--)
            {
                if (i * b + j < _ways.Length - 1) _ways[i * b + j] = (int)Math.Min(Ways(i, j), _most + 1L);
            }
        }

        return _ways[0] <= _most;
    }

    // As in CoursePairs: the row that stands farther left goes on, and its new joint keeps its distance from where the other one stands. Counting is most of the work.
    private long Ways(int i, int j)
    {
        var (from, b, ways) = (From(i, j), _upper.Count, 0L);
        for (var arc = from.Row.First[from.At]; arc < from.Row.First[from.At + 1]; arc++)
        {
            if (from.Keeps(arc, _pair.Stagger)) ways += _ways[from.Lower ? from.Row.To[arc] * b + j : i * b + from.Row.To[arc]];
        }

        return ways;
    }

    // Which row goes on from which place, and where the other one stands with a joint.
    private readonly record struct Step(bool Lower, RowGraph Row, int At, long? Beside)
    {
        public bool Keeps(int arc, long stagger) => Beside is not { } beside || !Row.Joint[Row.To[arc]] || Math.Abs(Row.At[Row.To[arc]] - beside) >= stagger;
    }

    private Step From(int i, int j) => _pair.LowerGoesOn(i, j)
        ? new Step(true, _pair.Lower, i, _upper.Joint[j] ? _upper.At[j] : null)
        : new Step(false, _upper, j, _pair.Lower.Joint[i] ? _pair.Lower.At[i] : null);

    private void Extend(int i, int j)
    {
        var b = _upper.Count;
        if (i * b + j == _ways.Length - 1) Keep();
        var from = From(i, j);
        for (var arc = from.Row.First[from.At]; arc < from.Row.First[from.At + 1]; arc++)
        {
            var to = from.Row.To[arc];
            var (k, l) = from.Lower ? (to, j) : (i, to);
            if (!from.Keeps(arc, _pair.Stagger) || _ways[k * b + l] == 0 || _effort.Over) continue;
            var arcs = from.Lower ? _lowerArcs : _upperArcs;
            arcs.Add(arc);
            Extend(k, l);
            arcs.RemoveAt(arcs.Count - 1);
        }
    }

    // What a row has left behind at an opening was not seen on the way.
    private void Keep()
    {
        var (lower, upper) = (Known(_pair.Lower, _lowerArcs), Known(_upper, _upperArcs));
        if (CoursePair.Keeps(lower.Joints, upper.Joints, _pair.Stagger)) _found.Add((lower, upper));
    }

    private RowLayout Known(RowGraph row, List<int> arcs)
    {
        int[] pieces = [.. arcs.Where(arc => row.Kind[arc] >= 0)];
        var name = (row.Shape, string.Join(',', pieces));
        return _known.TryGetValue(name, out var layout) ? layout : _known[name] = new RowLayout(row, pieces);
    }
}
