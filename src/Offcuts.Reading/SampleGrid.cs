using ZXing.Common;

namespace Offcuts.Reading;

/// <summary>The 21 x 21 modules of a symbol, each looked up in the picture where the corners of the symbol say it is.</summary>
internal sealed class SampleGrid
{
    private const int Size = 21;

    private SampleGrid(BitMatrix bits, double faults) => (Bits, PatternFaults) = (bits, faults);

    /// <summary>True for a dark module.</summary>
    public BitMatrix Bits { get; }

    /// <summary>What share of the modules of the finder patterns that can be seen is not as it must be; 1 where fewer than two can be seen.</summary>
    public double PatternFaults { get; }

    /// <summary>
    /// Reads the modules; null where the symbol reaches out of the picture. The fourth corner is moved by so many modules along the
    /// sides from where a parallelogram has it.
    /// </summary>
    public static SampleGrid? Of(GreyPicture picture, Finder corner, Finder right, Finder down, double moveRight, double moveDown)
    {
        var (ux, uy) = ((right.X - corner.X) / 14, (right.Y - corner.Y) / 14);
        var (vx, vy) = ((down.X - corner.X) / 14, (down.Y - corner.Y) / 14);
        var (fourthX, fourthY) = (right.X + down.X - corner.X + moveRight * ux + moveDown * vx, right.Y + down.Y - corner.Y + moveRight * uy + moveDown * vy);
        var map = PerspectiveTransform.quadrilateralToQuadrilateral(
            3.5f, 3.5f, 17.5f, 3.5f, 17.5f, 17.5f, 3.5f, 17.5f,
            (float)corner.X, (float)corner.Y, (float)right.X, (float)right.Y, (float)fourthX, (float)fourthY, (float)down.X, (float)down.Y);
        var places = new float[Size * Size * 2];
        for (var i = 0; i < Size * Size; i++) (places[2 * i], places[2 * i + 1]) = (i % Size + 0.5f, i / Size + 0.5f);
        map.transformPoints(places);
        var spread = Math.Max(0, (int)(Math.Sqrt(ux * ux + uy * uy) / 5));
        var shades = new double[Size * Size];
        for (var i = 0; i < shades.Length; i++)
        {
            if (Shade(picture, places[2 * i], places[2 * i + 1], spread) is not { } shade) return null;
            shades[i] = shade;
        }

        return Decide(shades);
    }

    private static double? Shade(GreyPicture picture, float x, float y, int spread)
    {
        // The middle of the first pixel is half a pixel from the edge.
        var (atX, atY) = (x - 0.5, y - 0.5);
        if (!(atX >= spread && atY >= spread && atX < picture.Width - 1 - spread && atY < picture.Height - 1 - spread)) return null;
        var (left, top) = ((int)atX, (int)atY);
        var (across, along) = (atX - left, atY - top);
        double sum = 0;
        for (var j = -spread; j <= spread; j++)
            for (var i = -spread; i <= spread; i++)
            {
                var at = (top + j) * picture.Width + left + i;
                sum += (picture.Pixels[at] * (1 - across) + picture.Pixels[at + 1] * across) * (1 - along)
                    + (picture.Pixels[at + picture.Width] * (1 - across) + picture.Pixels[at + picture.Width + 1] * across) * along;
            }

        return sum / ((2 * spread + 1) * (2 * spread + 1));
    }

    // Between dark and light lies a plane through what the three finder patterns tell of the light at their corners; of one that is covered
    // the others are believed.
    private static SampleGrid Decide(double[] shades)
    {
        ReadOnlySpan<Patch> patches = [Patch.Of(shades, 0, 0), Patch.Of(shades, 14, 0), Patch.Of(shades, 0, 14)];
        var best = Math.Max(patches[0].Contrast, Math.Max(patches[1].Contrast, patches[2].Contrast));
        var (sum, seen) = (0.0, 0);
        foreach (var patch in patches)
            if (patch.Contrast > best * Patch.LeastContrast) (sum, seen) = (sum + patch.Middle, seen + 1);
        Span<double> middles = stackalloc double[3];
        for (var i = 0; i < 3; i++) middles[i] = patches[i].Contrast > best * Patch.LeastContrast ? patches[i].Middle : sum / seen;
        var bits = new BitMatrix(Size, Size);
        for (var y = 0; y < Size; y++)
            for (var x = 0; x < Size; x++)
                bits[x, y] = shades[y * Size + x] < middles[0] + (middles[1] - middles[0]) * (x - 3) / 14 + (middles[2] - middles[0]) * (y - 3) / 14;
        var faults = 0;
        foreach (var patch in patches)
            if (patch.Contrast > best * Patch.LeastContrast) faults += patch.Faults(bits);
        return new SampleGrid(bits, seen < 2 ? 1 : faults / (49.0 * seen));
    }

    private static bool IsDark(int x, int y) => x is 0 or 6 || y is 0 or 6 || (x is >= 2 and <= 4 && y is >= 2 and <= 4);

    /// <summary>One finder pattern as it was sampled.</summary>
    private readonly record struct Patch(int Left, int Top, double Dark, double Light)
    {
        /// <summary>A pattern with less than this share of the best one's contrast is covered.</summary>
        public const double LeastContrast = 0.35;

        public double Contrast => Light - Dark;

        public double Middle => (Light + Dark) / 2;

        public static Patch Of(double[] shades, int left, int top)
        {
            var (dark, light, darks, lights) = (0.0, 0.0, 0, 0);
            for (var y = 0; y < 7; y++)
                for (var x = 0; x < 7; x++)
                {
                    var shade = shades[(top + y) * Size + left + x];
                    if (IsDark(x, y)) (dark, darks) = (dark + shade, darks + 1);
                    else (light, lights) = (light + shade, lights + 1);
                }

            return new Patch(left, top, dark / darks, light / lights);
        }

        public int Faults(BitMatrix bits)
        {
            var faults = 0;
            for (var y = 0; y < 7; y++)
                for (var x = 0; x < 7; x++)
                    if (bits[Left + x, Top + y] != IsDark(x, y)) faults++;
            return faults;
        }
    }
}
