using Offcuts.Core.Yard;
using Offcuts.Print;
using StbImageWriteSharp;

namespace Offcuts.Reading.Tests;

/// <summary>
/// A photograph that no camera took: labels on a grained ground, drawn by arithmetic from a seed, so that the same one comes about
/// everywhere. It shows what a reader has to bear, not what a certain phone does; nothing here was measured on a camera.
/// </summary>
public sealed class Photo
{
    private readonly float[] _shades;
    private readonly Random _chance;

    public Photo(int width, int height, int seed)
    {
        (Width, Height, _chance) = (width, height, new Random(seed));
        _shades = new float[width * height];
        var (tilt, wave, knots) = (_chance.NextDouble() * 0.2, 0.05 + _chance.NextDouble() * 0.1, 3 + _chance.NextDouble() * 3);
        for (var y = 0; y < height; y++)
            for (var x = 0; x < width; x++)
            {
                var grain = Math.Sin(y * wave + Math.Sin(x * 0.004) * knots + x * tilt * 0.05);
                _shades[y * width + x] = (float)(135 + 30 * grain + 12 * Math.Sin(y * 0.9 + x * 0.013));
            }
    }

    public int Width { get; }

    public int Height { get; }

    /// <summary>A code that depends on the number alone.</summary>
    public static Code CodeNumber(int number) => Code.Draw(new Random(number).Next);

    /// <summary>Labels in rows, each turned, tilted and lit a little otherwise.</summary>
    public static (Photo Photo, Code[] Codes) Rack(int seed, int width, int height, double module, int columns, int rows)
    {
        var chance = new Random(seed);
        var photo = new Photo(width, height, seed);
        var codes = new List<Code>();
        for (var row = 0; row < rows; row++)
            for (var column = 0; column < columns; column++)
            {
                codes.Add(CodeNumber(seed * 1000 + codes.Count));
                photo.Stick(
                    codes[^1],
                    (column + 0.35) * width / columns,
                    (row + 0.5) * height / rows,
                    module * (0.85 + chance.NextDouble() * 0.3),
                    chance.NextDouble() * 24 - 12 + (chance.Next(6) == 0 ? 180 : 0),
                    chance.NextDouble() * 30 - 15);
            }

        photo.Lit(0.65, 1.05, 0.4).Blurred(1).Noisy(5);
        return (photo, [.. codes]);
    }

    /// <summary>
    /// Sticks a label on: its symbol and, right of it, dark strokes where the words stand.
    /// </summary>
    /// <param name="code">What it says.</param>
    /// <param name="x">Its middle, in pixels.</param>
    /// <param name="y">Its middle, in pixels.</param>
    /// <param name="module">Pixels of a module.</param>
    /// <param name="turn">Degrees it is turned by.</param>
    /// <param name="tilt">Degrees it leans away from the camera, which is 80 modules away.</param>
    /// <param name="dirt">What dirt covers, in modules from the symbol's top left corner; nothing where left out.</param>
    public Photo Stick(Code code, double x, double y, double module, double turn = 0, double tilt = 0, Dirt dirt = default)
    {
        var symbol = QrSymbol.Of(code);
        return Stick((column, row) => symbol[row, column], QrSymbol.Size, x, y, module, turn, tilt, dirt);
    }

    /// <summary>The same for a symbol of another kind: true where column and row are dark.</summary>
    public Photo Stick(Func<int, int, bool> dark, int size, double x, double y, double module, double turn = 0, double tilt = 0, Dirt dirt = default)
    {
        var (cosine, sine) = (Math.Cos(turn * Math.PI / 180), Math.Sin(turn * Math.PI / 180));
        var (lean, rise) = (Math.Cos(tilt * Math.PI / 180), Math.Sin(tilt * Math.PI / 180));
        const double Away = 80;
        var half = size / 2.0 + 4;
        var reach = (int)((half * 3 + 4) * module * 1.4);
        for (var py = Math.Max(0, (int)y - reach); py < Math.Min(Height, (int)y + reach); py++)
            for (var px = Math.Max(0, (int)x - reach); px < Math.Min(Width, (int)x + reach); px++)
            {
                var (sum, hits) = (0.0, 0);
                for (var sub = 0; sub < 9; sub++)
                {
                    var (sx, sy) = ((px + (sub % 3 + 0.5) / 3 - x) / module, (py + (sub / 3 + 0.5) / 3 - y) / module);
                    var (tx, ty) = (sx * cosine + sy * sine, -sx * sine + sy * cosine);
                    var v = ty * Away / (lean * Away - ty * rise);
                    var u = tx * (Away + v * rise) / Away;
                    if (Shade(u, v) is not { } shade) continue;
                    sum += shade;
                    hits++;
                }

                if (hits > 0) _shades[py * Width + px] = (float)((sum + _shades[py * Width + px] * (9 - hits)) / 9);
            }

        return this;

        double? Shade(double u, double v)
        {
            if (v < -half || v > half || u < -half || u > half * 2.6) return null;
            var (column, row) = ((int)Math.Floor(u + size / 2.0), (int)Math.Floor(v + size / 2.0));
            if (dirt.Covers(u + size / 2.0, v + size / 2.0)) return 95;
            if (column >= 0 && column < size && row >= 0 && row < size) return dark(column, row) ? 28 : 232;
            if (u > half + 1 && u < half * 2.4 && Math.Abs(v) < half - 3) return ((int)Math.Floor(v / 2.5) & 1) == 0 && ((int)Math.Floor(u * 0.8) % 3) != 0 ? 40 : 232;
            return 232;
        }
    }

    /// <summary>Light that falls off to one side, and a shadow with a sharp edge across the picture.</summary>
    public Photo Lit(double left, double right, double shadow)
    {
        for (var y = 0; y < Height; y++)
            for (var x = 0; x < Width; x++)
            {
                var light = left + (right - left) * x / Width;
                if (x + y * 0.7 > Width * 0.6) light *= 1 - shadow;
                _shades[y * Width + x] *= (float)light;
            }

        return this;
    }

    /// <summary>Out of focus: three boxes one after the other, near to a bell curve of this many pixels.</summary>
    public Photo Blurred(double sigma)
    {
        var radius = (int)Math.Round((Math.Sqrt(4 * sigma * sigma + 1) - 1) / 2);
        for (var pass = 0; pass < 3 && radius > 0; pass++)
        {
            Box(radius, Width, Height, 1, Width);
            Box(radius, Height, Width, Width, 1);
        }

        return this;
    }

    /// <summary>The noise of a sensor, up to so many shades either way.</summary>
    public Photo Noisy(int shades)
    {
        for (var i = 0; i < _shades.Length; i++) _shades[i] += _chance.Next(-shades, shades + 1);
        return this;
    }

    /// <summary>As a JPEG file.</summary>
    public byte[] Jpeg(int quality = 85)
    {
        using var stream = new MemoryStream();
        new ImageWriter().WriteJpg(Colours(), Width, Height, ColorComponents.RedGreenBlue, stream, quality);
        return stream.ToArray();
    }

    /// <summary>As a PNG file.</summary>
    public byte[] Png()
    {
        using var stream = new MemoryStream();
        new ImageWriter().WritePng(Colours(), Width, Height, ColorComponents.RedGreenBlue, stream);
        return stream.ToArray();
    }

    /// <summary>As it is.</summary>
    public GreyPicture Grey() => new(Width, Height, [.. _shades.Select(shade => (byte)Math.Clamp(shade, 0, 255))]);

    private byte[] Colours()
    {
        var colours = new byte[_shades.Length * 3];
        for (var i = 0; i < _shades.Length; i++)
            for (var colour = 0; colour < 3; colour++) colours[3 * i + colour] = (byte)Math.Clamp(_shades[i] - 8 * colour, 0, 255);
        return colours;
    }

    private void Box(int radius, int along, int across, int step, int next)
    {
        var line = new float[along];
        for (var i = 0; i < across; i++)
        {
            for (var j = 0; j < along; j++) line[j] = _shades[i * next + j * step];
            double sum = 0;
            for (var j = -radius; j <= radius; j++) sum += line[Math.Clamp(j, 0, along - 1)];
            for (var j = 0; j < along; j++)
            {
                _shades[i * next + j * step] = (float)(sum / (2 * radius + 1));
                sum += line[Math.Min(j + radius + 1, along - 1)] - line[Math.Max(j - radius, 0)];
            }
        }
    }
}

/// <summary>A rectangle of dirt on a symbol, in modules from its top left corner.</summary>
public readonly record struct Dirt(double X, double Y, double Width, double Height)
{
    public bool Covers(double x, double y) => x >= X && y >= Y && x < X + Width && y < Y + Height;
}
