namespace Offcuts.Reading;

/// <summary>What may be a finder pattern: a corner of a QR symbol.</summary>
/// <param name="X">Its middle.</param>
/// <param name="Y">Its middle.</param>
/// <param name="Module">About how wide a module is along rows and columns: up to 1.4 times its side where the symbol is turned.</param>
internal readonly record struct Finder(double X, double Y, double Module);

/// <summary>
/// Finds finder patterns in a dark map: dark, light, dark, light, dark as 1:1:3:1:1 along a row and, through the middle of it, along the
/// column. Source of the proportions: ISO/IEC 18004, 6.3.3.1. They hold for a line through the middle however the symbol is turned.
/// </summary>
internal static class FinderSearch
{
    // Modules narrower than this are mush.
    private const double LeastModule = 1.4;

    /// <summary>The patterns found in a picture, each once.</summary>
    public static List<Finder> In(GreyPicture picture)
    {
        var found = new FinderGrid();
        var runs = new int[5];
        foreach (var radius in (int[])[DarkMap.Wide, DarkMap.Narrow])
        {
            var map = DarkMap.Of(picture, radius);
            for (var y = 1; y < map.Height; y += 2) ScanRow(map, y, runs, found);
        }

        return found.All();
    }

    private static void ScanRow(DarkMap map, int y, int[] runs, FinderGrid found)
    {
        var row = map.Row(y);
        Array.Clear(runs);
        var (at, dark) = (0, false);
        // How many of the runs are full, from their end on.
        var full = 0;
        while (at < row.Length)
        {
            var next = row[at..].IndexOf(!dark);
            var end = next < 0 ? row.Length : at + next;
            Array.Copy(runs, 1, runs, 0, 4);
            runs[4] = end - at;
            full++;
            if (dark && full >= 5 && Fits(runs, out var module)) Check(map, end - runs[4] - runs[3] - runs[2] / 2.0, y, module, found);
            (at, dark) = (end, !dark);
        }
    }

    private static void Check(DarkMap map, double x, int y, double module, FinderGrid found)
    {
        if (Across(map, (int)x, y, 0, 1) is not { } down || down.Module > module * 2.2 || module > down.Module * 2.2) return;
        var middle = (int)Math.Round(down.Middle);
        if (Across(map, (int)x, middle, 1, 0) is not { } along) return;
        found.Add(new Finder(along.Middle, down.Middle, (along.Module + down.Module) / 2));
    }

    // The five runs along a line through a dark pixel: where the middle one has its middle, and how wide a module is.
    private static (double Middle, double Module)? Across(DarkMap map, int x, int y, int dx, int dy)
    {
        if (!Inside(map, x, y) || !map[x, y]) return null;
        Span<int> runs = stackalloc int[5];
        var back = Walk(map, x - dx, y - dy, -dx, -dy, runs, 2, -1);
        var on = Walk(map, x, y, dx, dy, runs, 2, 1);
        if (!back || !on || !Fits(runs, out var module)) return null;
        var start = (dx == 1 ? x : y) - Count(map, x - dx, y - dy, -dx, -dy);
        return (start + runs[2] / 2.0, module);
    }

    private static int Count(DarkMap map, int x, int y, int dx, int dy)
    {
        var count = 0;
        while (Inside(map, x, y) && map[x, y]) (x, y, count) = (x + dx, y + dy, count + 1);
        return count;
    }

    // Counts dark, light, dark from a pixel on, into the runs from the middle one outwards.
    private static bool Walk(DarkMap map, int x, int y, int dx, int dy, Span<int> runs, int run, int step)
    {
        var dark = true;
        for (var steps = 0; steps < 3; steps++, run += step, dark = !dark)
        {
            var count = 0;
            while (Inside(map, x, y) && map[x, y] == dark) (x, y, count) = (x + dx, y + dy, count + 1);
            if (count == 0 && steps > 0) return false;
            runs[run] += count;
        }

        return true;
    }

    private static bool Inside(DarkMap map, int x, int y) => x >= 0 && y >= 0 && x < map.Width && y < map.Height;

    private static bool Fits(ReadOnlySpan<int> runs, out double module)
    {
        var total = runs[0] + runs[1] + runs[2] + runs[3] + runs[4];
        module = total / 7.0;
        if (module < LeastModule) return false;
        // Half a module either way, and a pixel for what the edge of one is worth.
        var slack = module / 2 + 0.7;
        return Math.Abs(runs[0] - module) < slack && Math.Abs(runs[1] - module) < slack && Math.Abs(runs[3] - module) < slack
            && Math.Abs(runs[4] - module) < slack && Math.Abs(runs[2] - 3 * module) < 2 * slack;
    }

    /// <summary>What was found so far, by squares of the picture, so that the same pattern met in many rows is one.</summary>
    private sealed class FinderGrid
    {
        private const int Square = 16;
        private readonly Dictionary<(int, int), List<int>> _squares = [];
        private readonly List<(double X, double Y, double Module, int Count)> _all = [];

        public void Add(Finder finder)
        {
            var (column, row) = ((int)finder.X / Square, (int)finder.Y / Square);
            for (var i = column - 1; i <= column + 1; i++)
                for (var j = row - 1; j <= row + 1; j++)
                    if (_squares.TryGetValue((i, j), out var there) && there.FindIndex(index => Same(_all[index], finder)) is >= 0 and var same)
                    {
                        var old = _all[there[same]];
                        var count = old.Count + 1;
                        _all[there[same]] = ((old.X * old.Count + finder.X) / count, (old.Y * old.Count + finder.Y) / count, (old.Module * old.Count + finder.Module) / count, count);
                        return;
                    }

            if (!_squares.TryGetValue((column, row), out var square)) _squares.Add((column, row), square = []);
            square.Add(_all.Count);
            _all.Add((finder.X, finder.Y, finder.Module, 1));
        }

        public List<Finder> All() => [.. _all.Select(one => new Finder(one.X, one.Y, one.Module))];

        private static bool Same((double X, double Y, double Module, int Count) one, Finder other) =>
            Math.Abs(one.X - other.X) < other.Module * 2 && Math.Abs(one.Y - other.Y) < other.Module * 2 && one.Module < other.Module * 1.8 && other.Module < one.Module * 1.8;
    }
}
