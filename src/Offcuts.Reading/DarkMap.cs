namespace Offcuts.Reading;

/// <summary>
/// Which pixels are dark where they are: each is held against the mean of its surroundings, so that a shadow over half of a label does
/// no harm.
/// </summary>
internal sealed class DarkMap
{
    /// <summary>A finder pattern of modules up to eight pixels wide fits into a window that reaches so far; wider ones are found in a smaller picture.</summary>
    public const int Wide = 28;

    /// <summary>For small labels on the edge of a shadow: only what lies nearer to the edge than this is misjudged.</summary>
    public const int Narrow = 13;

    // Darker than 93 % of the mean: a flat surface with its noise stays light.
    private const int Share = 93;

    private readonly bool[] _dark;

    private DarkMap(int width, int height, bool[] dark) => (Width, Height, _dark) = (width, height, dark);

    public int Width { get; }

    public int Height { get; }

    public bool this[int x, int y] => _dark[y * Width + x];

    /// <summary>One row.</summary>
    public ReadOnlySpan<bool> Row(int y) => _dark.AsSpan(y * Width, Width);

    /// <summary>The map of a picture, by the mean of what lies within so many pixels; it slides along the rows over sums of its columns.</summary>
    public static DarkMap Of(GreyPicture picture, int radius)
    {
        var (width, height, pixels) = (picture.Width, picture.Height, picture.Pixels);
        var dark = new bool[width * height];
        var columns = new int[width];
        for (var y = 0; y < Math.Min(radius, height); y++) AddRow(y, 1);
        for (var y = 0; y < height; y++)
        {
            if (y + radius < height) AddRow(y + radius, 1);
            if (y - radius - 1 >= 0) AddRow(y - radius - 1, -1);
            var rows = Math.Min(y + radius, height - 1) - Math.Max(y - radius, 0) + 1;
            Mark(y, rows);
        }

        return new DarkMap(width, height, dark);

        void AddRow(int y, int sign)
        {
            var row = pixels.AsSpan(y * width, width);
            if (sign > 0) for (var x = 0; x < row.Length; x++) columns[x] += row[x];
            else for (var x = 0; x < row.Length; x++) columns[x] -= row[x];
        }

        void Mark(int y, int rows)
        {
            var row = pixels.AsSpan(y * width, width);
            var marks = dark.AsSpan(y * width, width);
            long sum = 0;
            for (var x = 0; x < Math.Min(radius, width); x++) sum += columns[x];
            for (var x = 0; x < width; x++)
            {
                if (x + radius < width) sum += columns[x + radius];
                if (x - radius - 1 >= 0) sum -= columns[x - radius - 1];
                var count = (Math.Min(x + radius, width - 1) - Math.Max(x - radius, 0) + 1) * rows;
                marks[x] = row[x] * 100L * count < sum * Share;
            }
        }
    }
}
