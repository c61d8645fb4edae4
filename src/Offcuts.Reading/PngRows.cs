using System.IO.Compression;
using Offcuts.Core.Faults;

namespace Offcuts.Reading;

/// <summary>
/// A PNG picture that is not interlaced, unpacked row by row into shades of grey, so that its colours never stand in memory all at once: 48
/// megapixels in colour would be 144 MB and more, twice. Filters and kinds of colour by ISO/IEC 15948, 9 and 11; see-through parts count as
/// what lies there. Grey by the weights of ITU-R BT.601 in 256ths.
/// </summary>
internal sealed class PngRows
{
    private readonly int _width;
    private readonly int _bits;
    private readonly int _samples;
    private readonly byte[]? _palette;
    private readonly int _step;

    /// <summary>What a picture is made of.</summary>
    /// <param name="width">Pixels in a row.</param>
    /// <param name="bits">Bits of a sample: 1, 2, 4, 8 or 16.</param>
    /// <param name="samples">Samples of a pixel: 1 to 4; the colours come first.</param>
    /// <param name="palette">Three bytes for each colour that a sample is the number of; none where samples are colours themselves.</param>
    public PngRows(int width, int bits, int samples, byte[]? palette)
    {
        (_width, _bits, _samples, _palette) = (width, bits, samples, palette);
        _step = Math.Max(1, bits * samples / 8);
    }

    /// <summary>The picture, or why it can't be read: fewer rows than it should have, more of them, or a filter that there is not.</summary>
    /// <param name="height">Rows.</param>
    /// <param name="packed">What its rows are packed in.</param>
    public Result<GreyPicture> Grey(int height, Stream packed)
    {
        var grey = new byte[(long)_width * height];
        var length = (int)(((long)_width * _samples * _bits + 7) / 8);
        var (row, above) = (new byte[1 + length], new byte[1 + length]);
        try
        {
            using var unpacking = new ZLibStream(packed, CompressionMode.Decompress);
            for (var y = 0; y < height; y++)
            {
                if (unpacking.ReadAtLeast(row, row.Length, throwOnEndOfStream: false) < row.Length) return CountFaults.PictureBroken();
                if (!Unfiltered(row, above)) return CountFaults.PictureBroken();
                Write(row.AsSpan(1), grey.AsSpan(y * _width, _width));
                (row, above) = (above, row);
            }

            return unpacking.ReadByte() < 0 ? new GreyPicture(_width, height, grey) : CountFaults.PictureSwells();
        }
        catch (InvalidDataException)
        {
            return CountFaults.PictureBroken();
        }
    }

    // Each byte is told by what it differs from the one before it, above it or both; in the first byte stands by which.
    private bool Unfiltered(byte[] row, byte[] above)
    {
        for (var i = 1; i < row.Length; i++)
        {
            var (left, up, both) = i > _step ? (row[i - _step], above[i], above[i - _step]) : ((byte)0, above[i], (byte)0);
            row[i] += row[0] switch
            {
                0 => 0,
                1 => left,
                2 => up,
                3 => (byte)((left + up) / 2),
                4 => Nearest(left, up, both),
                _ => 0,
            };
        }

        return row[0] <= 4;
    }

    // Of the three, that which is nearest to left + up - both (Paeth).
    private static byte Nearest(byte left, byte up, byte both)
    {
        var (ofLeft, ofUp, ofBoth) = (Math.Abs(up - both), Math.Abs(left - both), Math.Abs(left + up - 2 * both));
        return ofLeft <= ofUp && ofLeft <= ofBoth ? left : ofUp <= ofBoth ? up : both;
    }

    private void Write(ReadOnlySpan<byte> row, Span<byte> grey)
    {
        for (var x = 0; x < grey.Length; x++)
        {
            var first = Sample(row, x * _samples);
            if (_palette is { } palette) grey[x] = 3 * first + 2 < palette.Length ? Shade(palette[3 * first], palette[3 * first + 1], palette[3 * first + 2]) : (byte)0;
            else grey[x] = _samples < 3 ? Bright(first) : Shade(first, Sample(row, x * _samples + 1), Sample(row, x * _samples + 2));
        }
    }

    // Of 16 bits, the upper eight.
    private int Sample(ReadOnlySpan<byte> row, int number) => _bits switch
    {
        8 => row[number],
        16 => row[2 * number],
        _ => row[number * _bits / 8] >> (8 - _bits - number * _bits % 8) & ((1 << _bits) - 1),
    };

    private byte Bright(int sample) => (byte)(_bits < 8 ? sample * 255 / ((1 << _bits) - 1) : sample);

    private static byte Shade(int red, int green, int blue) => (byte)((red * 77 + green * 150 + blue * 29) >> 8);
}
