using ZXing.QrCode.Internal;

namespace Offcuts.Reading;

/// <summary>
/// Puts finder patterns together to symbols of 21 modules (version 1, as labels have) and reads them. Two patterns are enough: where the
/// third is covered it is taken to be where a square symbol has it.
/// </summary>
internal sealed class SymbolSearch(GreyPicture picture, CancellationToken stop)
{
    // From the middle of one finder pattern to that of the next: 14 modules of 21.
    private const double Apart = 14;

    // Partners looked at for one pattern, and readings tried in one picture, at most: what looks like a hundred patterns is gravel.
    private const int MostPartners = 10;
    private const int MostTries = 6000;

    // Share of the modules of finder patterns that may be wrong before anything else is looked at.
    private const double MostPatternFaults = 0.25;

    private readonly Decoder _decoder = new();
    private int _tries;

    /// <summary>Every symbol that can be read, with where it is.</summary>
    public List<(string Text, double X, double Y)> Read(List<Finder> finders)
    {
        var read = new List<(string Text, double X, double Y)>();
        var used = new bool[finders.Count];
        var grid = finders.Select((finder, index) => (finder, index)).ToLookup(one => Cell(one.finder));
        foreach (var complete in (bool[])[true, false])
            for (var i = 0; i < finders.Count; i++)
            {
                stop.ThrowIfCancellationRequested();
                if (used[i]) continue;
                var partners = Partners(finders, grid, used, i);
                foreach (var (shape, members) in complete ? Triples(finders, i, partners) : Pairs(finders, i, partners))
                {
                    if (members.Any(member => used[member])) continue;
                    if (_tries >= MostTries) return read;
                    if (Text(shape) is not { } text) continue;
                    foreach (var member in members) used[member] = true;
                    read.Add((text, (shape.Right.X + shape.Down.X) / 2, (shape.Right.Y + shape.Down.Y) / 2));
                    break;
                }
            }

        return read;
    }

    private const int CellSize = 128;

    private static (int, int) Cell(Finder finder) => ((int)finder.X / CellSize, (int)finder.Y / CellSize);

    private static List<int> Partners(List<Finder> finders, ILookup<(int, int), (Finder finder, int index)> grid, bool[] used, int of)
    {
        var one = finders[of];
        var (column, row) = Cell(one);
        var reach = (int)(one.Module * 24 / CellSize) + 1;
        var near = new List<(double Distance, int Index)>();
        for (var i = column - reach; i <= column + reach; i++)
            for (var j = row - reach; j <= row + reach; j++)
                foreach (var (other, index) in grid[(i, j)])
                {
                    if (index == of || used[index] || other.Module > one.Module * 1.7 || one.Module > other.Module * 1.7) continue;
                    var distance = Distance(one, other) / ((one.Module + other.Module) / 2);
                    if (distance is > 7 and < 24) near.Add((distance, index));
                }

        return [.. near.OrderBy(partner => partner.Distance).Take(MostPartners).Select(partner => partner.Index)];
    }

    // This pattern as the corner between two others; what is nearest to a square comes first.
    private static IEnumerable<(Shape Shape, int[] Members)> Triples(List<Finder> finders, int corner, List<int> partners)
    {
        var found = new List<(double Bend, Shape Shape, int[] Members)>();
        foreach (var b in partners)
            foreach (var c in partners)
            {
                var shape = new Shape(finders[corner], finders[b], finders[c]);
                if (b == c || shape.Bend is not { } bend || bend > 0.75) continue;
                found.Add((bend, shape, [corner, b, c]));
            }

        return found.OrderBy(one => one.Bend).Take(8).Select(one => (one.Shape, one.Members));
    }

    // Two patterns alone: side by side, one above the other, or across from each other.
    private static IEnumerable<(Shape Shape, int[] Members)> Pairs(List<Finder> finders, int first, List<int> partners)
    {
        foreach (var second in partners.Where(second => second > first))
        {
            var (p, q) = (finders[first], finders[second]);
            foreach (var (from, to) in ((Finder, Finder)[])[(p, q), (q, p)])
            {
                var (dx, dy) = (to.X - from.X, to.Y - from.Y);
                yield return (new Shape(from, to, Guess(from.X - dy, from.Y + dx, p)), [first, second]);
                yield return (new Shape(from, Guess(from.X + dy, from.Y - dx, p), to), [first, second]);
                yield return (new Shape(Guess(from.X + (dx + dy) / 2, from.Y + (dy - dx) / 2, p), to, from), [first, second]);
            }
        }
    }

    private static Finder Guess(double x, double y, Finder like) => like with { X = x, Y = y };

    private string? Text(Shape shape)
    {
        // The fourth corner is where a parallelogram has it, unless the label lies tilted to the camera: then it is looked for about there.
        foreach (var (right, down) in Shifts)
        {
            _tries++;
            var grid = SampleGrid.Of(picture, shape.Corner, shape.Right, shape.Down, right, down);
            if (grid is null) return null;
            if (right == 0 && down == 0 && grid.PatternFaults > MostPatternFaults) return null;
            if (Decoded(grid) is { Length: > 0 } text) return text;
            if (_tries >= MostTries) return null;
        }

        return null;
    }

    private string? Decoded(SampleGrid grid)
    {
        try
        {
            return _decoder.decode(grid.Bits, null)?.Text;
        }
        catch (Exception error) when (LabelPicture.LosesItsWay(error))
        {
            return null;
        }
    }

    // In modules, the nearest first.
    private static readonly (double Right, double Down)[] Shifts =
    [
        .. from right in (double[])[0, -0.7, 0.7, -1.4, 1.4, -2.4, 2.4]
           from down in (double[])[0, -0.7, 0.7, -1.4, 1.4, -2.4, 2.4]
           orderby right * right + down * down
           select (right, down),
    ];

    private static double Distance(Finder a, Finder b) => Math.Sqrt((a.X - b.X) * (a.X - b.X) + (a.Y - b.Y) * (a.Y - b.Y));

    /// <summary>Three corners of a symbol: top left, top right, bottom left, as it is printed.</summary>
    private readonly record struct Shape(Finder Corner, Finder Right, Finder Down)
    {
        /// <summary>How far from square it is, 0 for a square; null where no print of a square looks so, or it is seen from behind.</summary>
        public double? Bend
        {
            get
            {
                var (ax, ay) = (Right.X - Corner.X, Right.Y - Corner.Y);
                var (bx, by) = (Down.X - Corner.X, Down.Y - Corner.Y);
                var (a, b) = (Math.Sqrt(ax * ax + ay * ay), Math.Sqrt(bx * bx + by * by));
                var sine = (ax * by - ay * bx) / (a * b);
                if (sine < 0.6) return null;
                var module = (Corner.Module + Right.Module + Down.Module) / 3;
                if (a < Apart * module * 0.5 || b < Apart * module * 0.5) return null;
                return Math.Abs(Math.Log(a / b)) + Math.Abs((ax * bx + ay * by) / (a * b));
            }
        }
    }
}
