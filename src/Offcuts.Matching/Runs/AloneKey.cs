namespace Offcuts.Matching.Runs;

/// <summary>
/// What of the pieces laid in a row alone matters to what can still be laid and to the ties: how many intervals, which odd ends and where the
/// pieces there end, and how many pieces make each step from line to line, counted round from tie to tie. (Those that make none, from a tie to
/// a tie or from any line to one like it, lie on whatever line there is.)
/// </summary>
/// <param name="Bits">Intervals in 10 bits, odd ends in 2, where they end in 4 each, then 4 bits for each step.</param>
/// <param name="Odd">How many pieces make a step.</param>
internal sealed record AloneKey(ulong Bits, int Odd)
{
    /// <summary>Nothing laid yet.</summary>
    public static readonly AloneKey None = new(0, 0);

    /// <summary>No more pieces of one step than this.</summary>
    public const int Most = 15;

    private const int Places = 12;
    private const int Steps = 20;

    /// <summary>4 x intervals + ends.</summary>
    public int Sum => (int)(4 * (Bits & 1023) + (Bits >> 10 & 3));

    /// <summary>Where the pieces at the ends end.</summary>
    public (int Left, int Right) Ends => ((int)(Bits >> Places & 15), (int)(Bits >> Places + 4 & 15));

    /// <summary>How many pieces make a step; of 1 and more.</summary>
    public int Count(int step) => (int)(Bits >> Steps + 4 * (step - 1) & 15);

    /// <summary>The steps alone, on a walk from a line on.</summary>
    public AloneKey From(int line) => new(Bits >> Steps << Steps | (uint)line, Odd);

    /// <summary>The same with one that makes this step less.</summary>
    public AloneKey Without(int step) => new(Bits - One(step), Odd - 1);

    /// <summary>The same with a piece more; none where there are too many of its step.</summary>
    public AloneKey? And(AlonePiece piece)
    {
        var bits = Bits + (ulong)piece.Intervals + ((ulong)piece.End << 10);
        if (piece.End > 0) return new AloneKey(bits + ((ulong)piece.Step << Places + 4 * (piece.End - 1)), Odd);
        if (piece.Step == 0) return new AloneKey(bits, Odd);
        return Odd == Most ? null : new AloneKey(bits + One(piece.Step), Odd + 1);
    }

    /// <summary>Both together, which have no odd end in common; none where there are too many pieces that make a step.</summary>
    public AloneKey? And(AloneKey other) => Odd + other.Odd > Most ? null : new AloneKey(Bits + other.Bits, Odd + other.Odd);

    private static ulong One(int step) => 1UL << Steps + 4 * (step - 1);
}

/// <summary>
/// In which order pieces meet on most ties. Joints are the lines at which pieces end, counted round from tie to tie, and the order of the
/// pieces is free, so this is a longest walk by dynamic programming over what is left to be laid:
/// <code>
/// most(at, left) = (1 where at is a tie) + max over steps in left of  most(at + step, left less one of it)
/// </code>
/// Pieces that make no step all lie at a tie where the walk comes to one.
/// </summary>
/// <param name="round">Lines from one tie to the next.</param>
internal sealed class AloneOrder(int round)
{
    private readonly Dictionary<AloneKey, int> _known = [];

    /// <summary>Most lines on a tie that a walk from one line over all steps comes to, the first and the last among them.</summary>
    /// <param name="at">Where it begins.</param>
    /// <param name="left">The steps.</param>
    public int Most(int at, AloneKey left)
    {
        var name = left.From(at);
        if (_known.TryGetValue(name, out var known)) return known;
        var most = 0;
        for (var step = 1; step < round; step++)
        {
            if (left.Count(step) > 0) most = Math.Max(most, Most((at + step) % round, left.Without(step)));
        }

        return _known[name] = most + (at == 0 ? 1 : 0);
    }

    /// <summary>The steps of such a walk; 0 once, where pieces that make none are to lie.</summary>
    public IEnumerable<int> Walk(int at, AloneKey left)
    {
        var touches = Most(at, left) > 0;
        for (var waiting = true; ;)
        {
            if (waiting && (at == 0 || !touches))
            {
                yield return 0;
                waiting = false;
            }

            if (left.Odd == 0) yield break;
            var (here, rest) = (at, left);
            var step = Enumerable.Range(1, round - 1).Where(one => rest.Count(one) > 0).MaxBy(one => Most((here + one) % round, rest.Without(one)));
            (at, left) = ((at + step) % round, left.Without(step));
            yield return step;
        }
    }
}
