namespace Offcuts.Matching.Runs;

/// <summary>A bar seen from the end from which its cuts are placed: lengths count from there.</summary>
/// <param name="Bar">The bar.</param>
/// <param name="Mirrored">True where they are placed from its right end.</param>
internal readonly record struct View(Bar Bar, bool Mirrored)
{
    /// <summary>From that end to the first line; none where it is not known.</summary>
    public long? LineIn(long interval) =>
        Bar.Line is not { } line ? null : Mirrored ? RunPart.Modulo(Bar.Length - line, interval) : line;

    /// <summary>Both ways of looking at a bar.</summary>
    public static View[] Of(Bar bar) => [new(bar, false), new(bar, true)];
}

/// <summary>
/// The geometry of cutting one bar, in one place. Cuts are placed from one end, each as near to the one before as kerf k and its lines
/// allow. With <c>at</c> the end of the cut before (0 at the start), and <c>x</c> the start of the next:
/// <code>
/// first cut     x >= 0          trim  max(0, x - k)           saw 1 where x > 0
/// a later one   x >= at + k     trim  max(0, x - at - 2k)     saw 1 where x = at + k, else 2
/// after all     rest  max(0, u - at - k)                      saw 1 where at &lt; u
/// </code>
/// Trims and the rest are remainders, kept from the keep length up. An end lies on a line of the bar where that is asked:
/// x = line (mod i) for a left end, x + l = line (mod i) for a right end.
/// </summary>
internal static class Cutting
{
    /// <summary>Where a cut would start, or none where it does not fit.</summary>
    /// <param name="view">The bar.</param>
    /// <param name="part">Kerf and interval.</param>
    /// <param name="at">End of the cut before; -1 at the start.</param>
    /// <param name="length">Of the cut.</param>
    /// <param name="ends">As the bar lies: <see cref="Ends.One"/> has been decided before.</param>
    public static long? Start(View view, RunPart part, long at, long length, Ends ends)
    {
        var x = at < 0 ? 0 : at + part.Kerf;
        if (ends != Ends.Free)
        {
            if (view.LineIn(part.Interval) is not { } line) return null;
            var right = view.Mirrored ? ends == Ends.Left : ends == Ends.Right;
            x += RunPart.Modulo(line - (right ? x + length : x), part.Interval);
        }

        return x + length <= view.Bar.Length ? x : null;
    }

    /// <summary>The ways in which a kind can lie in a bar.</summary>
    public static Ends[] Ways(Ends ends) => AllWays[(int)ends];

    private static readonly Ends[][] AllWays =
        [.. Enum.GetValues<Ends>().Select(ends => ends == Ends.One ? (Ends[])[Ends.Left, Ends.Right] : [ends])];

    /// <summary>Trim before a cut, in units, and how often the saw goes through for it and for the cut before.</summary>
    public static (long Left, int Saws) Before(long at, long x, long kerf)
    {
        if (at < 0) return (Math.Max(0, x - kerf), x > 0 ? 1 : 0);
        return x == at + kerf ? (0, 1) : (Math.Max(0, x - at - 2 * kerf), 2);
    }

    /// <summary>What is left after the last cut, and the saw cut for it.</summary>
    public static (long Left, int Saws) After(long at, long length, long kerf) => (Math.Max(0, length - at - kerf), at < length ? 1 : 0);
}

/// <summary>One cut of a bar: where it starts, seen from the view's end, and which of its ends lie on lines as the bar lies.</summary>
internal readonly record struct BarCut(Kind Kind, long X, Ends Way);

/// <summary>All cuts of one bar, in the order from the view's end, and what that costs.</summary>
internal sealed record BarPattern(View View, BarCut[] Cuts, long GivenUp, int Saws)
{
    public Bar Bar => View.Bar;

    public long Price => Bar.Price;

    /// <summary>The pattern of a bar with these cuts, placed one after the other; none where one does not fit.</summary>
    public static BarPattern? Of(RunPart part, View view, IEnumerable<(Kind Kind, Ends Way)> cuts)
    {
        var placed = new List<BarCut>();
        var (at, given, saws) = (-1L, view.Bar.Whole, 0);
        foreach (var (kind, way) in cuts)
        {
            if (Cutting.Start(view, part, at, kind.Length, way) is not { } x) return null;
            var before = Cutting.Before(at, x, part.Kerf);
            given -= view.Bar.Value(before.Left);
            saws += before.Saws;
            placed.Add(new BarCut(kind, x, way));
            at = x + kind.Length;
        }

        var after = Cutting.After(at, view.Bar.Length, part.Kerf);
        return new BarPattern(view, [.. placed], given - view.Bar.Value(after.Left), saws + after.Saws);
    }
}
