using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using ZXing;
using ZXing.Common;
using ZXing.Multi.QrCode;
using ZXing.QrCode;

namespace Offcuts.Print.Tests;

/// <summary>A grey picture, white to begin with: what a camera would see of a print. One byte a pixel, 0 black, 255 white.</summary>
internal sealed class Picture
{
    private readonly double[] _light;

    public Picture(int width, int height)
    {
        (Width, Height) = (width, height);
        _light = new double[width * height];
        Array.Fill(_light, 1);
    }

    public int Width { get; }

    public int Height { get; }

    /// <summary>
    /// A page of a PDF as it prints: every filled path exactly by area (all of ours are made of upright rectangles that do not
    /// overlap), and a grey box for every letter, so that a reader has something to be misled by.
    /// </summary>
    public static Picture OfPage(byte[] pdf, int page, double dpi = 150)
    {
        using var document = PdfDocument.Open(pdf);
        var read = document.GetPage(page);
        var scale = dpi / 72;
        var picture = new Picture((int)Math.Round(read.Width * scale), (int)Math.Round(read.Height * scale));
        foreach (var path in read.Paths.Where(path => path.IsFilled))
            foreach (var subpath in path)
            {
                var box = subpath.GetBoundingRectangle()!.Value;
                picture.Darken(box.Left * scale, (read.Height - box.Top) * scale, box.Width * scale, box.Height * scale, 1);
            }

        foreach (var letter in read.Letters.Select(letter => letter.BoundingBox))
            picture.Darken(letter.Left * scale, (read.Height - letter.Top) * scale, letter.Width * scale, letter.Height * scale, 0.6);
        return picture;
    }

    /// <summary>Lines of text turned into squares: each character is as many wide and high as given, dark where told.</summary>
    public static Picture OfModules(IReadOnlyList<IReadOnlyList<bool>> dark, int size)
    {
        var picture = new Picture(dark[0].Count * size, dark.Count * size);
        for (var row = 0; row < dark.Count; row++)
            for (var column = 0; column < dark[row].Count; column++)
                if (dark[row][column]) picture.Darken(column * size, row * size, size, size, 1);
        return picture;
    }

    public void Darken(double x, double y, double width, double height, double by)
    {
        for (var row = Math.Max(0, (int)y); row < Math.Min(Height, y + height); row++)
            for (var column = Math.Max(0, (int)x); column < Math.Min(Width, x + width); column++)
                this[column, row] = Math.Max(0, this[column, row] - by * Share(column, x, width) * Share(row, y, height));
    }

    /// <summary>In half its size: each pixel the mean of four.</summary>
    public Picture Halved()
    {
        var half = new Picture(Width / 2, Height / 2);
        for (var row = 0; row < half.Height; row++)
            for (var column = 0; column < half.Width; column++)
                half[column, row] = (this[2 * column, 2 * row] + this[2 * column + 1, 2 * row] + this[2 * column, 2 * row + 1] + this[2 * column + 1, 2 * row + 1]) / 4;
        return half;
    }

    /// <summary>Takes the ink off a rectangle.</summary>
    public void Lighten(double x, double y, double width, double height)
    {
        for (var row = Math.Max(0, (int)y); row < Math.Min(Height, y + height); row++)
            for (var column = Math.Max(0, (int)x); column < Math.Min(Width, x + width); column++)
            {
                var share = Share(column, x, width) * Share(row, y, height);
                this[column, row] = this[column, row] * (1 - share) + share;
            }
    }

    /// <summary>As a PGM file, which other programs read.</summary>
    public byte[] Pgm() => [.. System.Text.Encoding.ASCII.GetBytes($"P5\n{Width} {Height}\n255\n"), .. _light.Select(light => (byte)Math.Round(light * 255))];

    public void Whiten(int x, int y, int width, int height)
    {
        for (var row = y; row < y + height; row++)
            for (var column = x; column < x + width; column++)
                this[column, row] = 1;
    }

    public Picture Crop(double x, double y, double width, double height)
    {
        var crop = new Picture((int)width, (int)height);
        for (var row = 0; row < crop.Height; row++)
            for (var column = 0; column < crop.Width; column++)
                crop[column, row] = this[(int)x + column, (int)y + row];
        return crop;
    }

    /// <summary>Turned about its middle on white paper large enough to hold it, each pixel mixed of the four it comes from.</summary>
    public Picture Turned(double degrees)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        var side = (int)Math.Ceiling(Math.Sqrt((double)Width * Width + (double)Height * Height));
        var turned = new Picture(side, side);
        for (var row = 0; row < side; row++)
            for (var column = 0; column < side; column++)
            {
                var (dx, dy) = (column - side / 2.0, row - side / 2.0);
                turned[column, row] = Mixed(cos * dx + sin * dy + Width / 2.0, cos * dy - sin * dx + Height / 2.0);
            }

        return turned;
    }

    /// <summary>Out of focus: every pixel the mean of the square around it, done three times, which comes close to a Gaussian.</summary>
    public Picture Blurred(int reach, int times = 3)
    {
        var from = this;
        for (var i = 0; i < times; i++) from = from.Mean(reach, 0).Mean(0, reach);
        return from;
    }

    /// <summary>
    /// The text of the one QR code in it, or none. The reader for one code is misled by about one upright symbol in 300, whose
    /// data happens to look like a finder; the reader for many finds those too.
    /// </summary>
    public string? Read() => Decode()?.Text ?? ReadAll().SingleOrDefault();

    /// <summary>What the reader found, or none.</summary>
    public Result? Decode() =>
        new QRCodeReader().decode(Bitmap(), new Dictionary<DecodeHintType, object> { [DecodeHintType.TRY_HARDER] = true });

    /// <summary>The texts of all QR codes in it.</summary>
    public IReadOnlyList<string> ReadAll() =>
        [.. (new QRCodeMultiReader().decodeMultiple(Bitmap(), new Dictionary<DecodeHintType, object> { [DecodeHintType.TRY_HARDER] = true }) ?? []).Select(result => result.Text)];

    private double this[int x, int y]
    {
        get => _light[y * Width + x];
        set => _light[y * Width + x] = value;
    }

    private BinaryBitmap Bitmap() => new(new HybridBinarizer(new RGBLuminanceSource(
        [.. _light.Select(light => (byte)Math.Round(light * 255))], Width, Height, RGBLuminanceSource.BitmapFormat.Gray8)));

    private static double Share(int pixel, double start, double length) =>
        Math.Max(0, Math.Min(pixel + 1, start + length) - Math.Max(pixel, start));

    private double Mixed(double x, double y)
    {
        var (left, top) = ((int)Math.Floor(x), (int)Math.Floor(y));
        var (right, below) = (x - left, y - top);
        return (At(left, top) * (1 - right) + At(left + 1, top) * right) * (1 - below)
            + (At(left, top + 1) * (1 - right) + At(left + 1, top + 1) * right) * below;
    }

    private double At(int x, int y) => x >= 0 && x < Width && y >= 0 && y < Height ? this[x, y] : 1;

    private Picture Mean(int reachX, int reachY)
    {
        var mean = new Picture(Width, Height);
        var share = 1.0 / ((2 * reachX + 1) * (2 * reachY + 1));
        for (var row = 0; row < Height; row++)
            for (var column = 0; column < Width; column++)
            {
                var sum = 0.0;
                for (var y = row - reachY; y <= row + reachY; y++)
                    for (var x = column - reachX; x <= column + reachX; x++)
                        sum += x >= 0 && x < Width && y >= 0 && y < Height ? _light[y * Width + x] : 1;
                mean._light[row * Width + column] = sum * share;
            }

        return mean;
    }
}
