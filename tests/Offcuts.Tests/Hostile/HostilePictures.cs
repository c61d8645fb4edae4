using System.Buffers.Binary;
using System.IO.Compression;
using Offcuts.Reading.Tests;
using QRCoder;

namespace Offcuts.Tests.Hostile;

/// <summary>
/// Pictures that mean harm, drawn from a grammar: JPEG by its markers (ITU-T T.81) and PNG by its chunks (ISO/IEC 15948), with sizes, tables and lengths that
/// no camera writes; right ones with bytes turned; right ones with symbols of a stranger in them. The same seed gives the same bytes.
/// </summary>
internal sealed class HostilePictures(Random random, HostileText text)
{
    private static readonly byte[] Jpeg = Right().Jpeg();

    private static readonly byte[] Png = Right().Png();

    private static readonly int[] Sizes = [0, 1, 2, 7, 8, 9, 63, 200, 255, 1000, 4000, 8000, 32767, 32768, 65535];

    /// <summary>A file of a picture.</summary>
    public byte[] Draw() => random.Next(6) switch
    {
        0 => text.Altered(Jpeg),
        1 => text.Altered(Png),
        2 => JpegByMarkers(),
        3 => PngByChunks(),
        4 => CutShort(random.Next(2) == 0 ? Jpeg : Png),
        _ => Strangers(),
    };

    private static Photo Right() => new Photo(260, 200, 1).Stick(Photo.CodeNumber(1), 90, 100, 4, turn: 5);

    private byte[] CutShort(byte[] file) => file[..random.Next(file.Length)];

    // A right picture; what the symbols in it say is the stranger's.
    private byte[] Strangers()
    {
        var photo = new Photo(420, 320, random.Next());
        for (var i = 1 + random.Next(2); i > 0; i--)
        {
            var said = random.Next(2) == 0 ? text.Harm() : text.Code();
            said = said.Length > 200 ? said[..200] : said.Length == 0 ? "x" : said;
            using var generator = new QRCodeGenerator();
            using var data = generator.CreateQrCode(said, QRCodeGenerator.ECCLevel.L);
            var rows = data.ModuleMatrix;
            const int Quiet = 4;
            photo.Stick((column, row) => rows[row + Quiet][column + Quiet], rows.Count - 2 * Quiet, 100 + 200 * (i - 1), 150, 3, turn: random.Next(-20, 20));
        }

        return random.Next(2) == 0 ? photo.Jpeg() : photo.Png();
    }

    private byte[] JpegByMarkers()
    {
        var file = new List<byte> { 0xFF, 0xD8 };
        if (random.Next(8) == 0) file.Add(0xFF);
        for (var i = random.Next(3); i > 0; i--) Tables(file);
        Frame(file);
        for (var i = random.Next(4); i > 0; i--) Tables(file);
        var scans = random.Next(12) == 0 ? 90 + random.Next(40) : random.Next(4);
        for (var i = 0; i < scans; i++)
        {
            Scan(file);
            if (random.Next(6) == 0) Tables(file);
            if (random.Next(12) == 0) Frame(file);
        }

        if (random.Next(5) > 0) file.AddRange([0xFF, 0xD9]);
        if (random.Next(6) == 0) file.AddRange(Noise(random.Next(3000)));
        return [.. file];
    }

    private void Frame(List<byte> file)
    {
        var parts = random.Next(8) == 0 ? random.Next(256) : One([1, 3, 3, 4]);
        var body = new List<byte> { (byte)One([8, 8, 8, 12, 0, 255]) };
        body.AddRange(Two(Size()));
        body.AddRange(Two(Size()));
        body.Add((byte)parts);
        for (var i = 0; i < parts && i < 10; i++) body.AddRange([(byte)(random.Next(6) == 0 ? random.Next(256) : i + 1), (byte)One([0x11, 0x22, 0x21, 0x12, 0x44, 0x41, 0, 0x1F, 0xFF]), (byte)One([0, 1, 2, 3, 4, 255])]);
        Segment(file, (byte)One([0xC0, 0xC0, 0xC1, 0xC2, 0xC2, 0xC3, 0xC5, 0xC9, 0xCA]), [.. body]);
    }

    // Tables of quantisation and of codes, restart intervals, and what applications hang on.
    private void Tables(List<byte> file)
    {
        switch (random.Next(6))
        {
            case 0:
                Segment(file, 0xDB, [(byte)One([0, 1, 2, 3, 0x10, 0x13, 4, 0xFF]), .. Noise(One([64, 64, 128, 63, 0]))]);
                break;
            case 1 or 2:
                // How many codes there are of each length, which may be more than fit, then as many values or fewer.
                var counts = Enumerable.Range(0, 16).Select(_ => (byte)(random.Next(3) == 0 ? random.Next(random.Next(4) == 0 ? 256 : 6) : 0)).ToArray();
                var values = counts.Sum(count => count);
                Segment(file, 0xC4, [(byte)One([0, 1, 0x10, 0x11, 2, 0x20, 0xFF]), .. counts, .. Noise(random.Next(4) == 0 ? random.Next(300) : Math.Min(values, 60_000))]);
                break;
            case 3:
                Segment(file, 0xDD, Two(One([0, 1, 8, 65535])));
                break;
            case 4:
                Segment(file, (byte)(0xE0 + random.Next(16)), [.. System.Text.Encoding.UTF8.GetBytes("Exif\0\0" + text.Harm()).Take(60_000)]);
                break;
            default:
                Segment(file, (byte)random.Next(256), Noise(random.Next(40)));
                break;
        }
    }

    private void Scan(List<byte> file)
    {
        var parts = random.Next(8) == 0 ? random.Next(8) : One([1, 3]);
        Segment(file, 0xDA, [(byte)parts, .. Enumerable.Range(1, parts).SelectMany(i => (byte[])[(byte)i, (byte)One([0, 0x11, 0x01, 0x33, 0xFF])]), (byte)One([0, 1, 63, 64]), (byte)One([63, 0, 5, 64, 255]), (byte)One([0, 0x10, 0x21, 0xFF])]);
        foreach (var letter in Noise(random.Next(random.Next(5) == 0 ? 60_000 : 400)))
        {
            file.Add(letter);
            if (letter == 0xFF) file.Add((byte)(random.Next(20) == 0 ? random.Next(256) : 0));
        }
    }

    private void Segment(List<byte> file, byte marker, byte[] body)
    {
        file.AddRange([0xFF, marker]);
        file.AddRange(Two(random.Next(12) == 0 ? random.Next(65_536) : body.Length + 2));
        file.AddRange(body);
    }

    private byte[] PngByChunks()
    {
        var file = new List<byte> { 0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A };
        var (width, height) = (Size(), Size());
        var (bits, colour) = (One([8, 8, 1, 2, 4, 16, 3, 0]), One([0, 2, 2, 3, 4, 6, 1, 7]));
        Chunk(file, "IHDR", [.. Four(width), .. Four(height), (byte)bits, (byte)colour, (byte)One([0, 0, 0, 1]), (byte)One([0, 0, 0, 1]), (byte)One([0, 0, 1, 2])]);
        for (var i = random.Next(4); i > 0; i--)
            Chunk(file, One(["PLTE", "tRNS", "gAMA", "iCCP", "tEXt", "zTXt", "IHDR", "CgBI", "acTL", "\0\0\0\0"]), random.Next(2) == 0 ? Noise(random.Next(900)) : System.Text.Encoding.UTF8.GetBytes(text.Harm()));

        // As many bytes as the size asks for, or fewer, or more; a few million at most.
        var right = Math.Min(4_000_000, ((long)Math.Min(width, 70_000) * Math.Max(bits, 1) * One([1, 3, 4]) / 8 + 1) * Math.Min(height, 70_000));
        var pixels = new byte[random.Next(4) switch { 0 => random.Next(1000), 1 => Math.Min(8_000_000, right * 2 + 100), _ => right }];
        if (random.Next(2) == 0) random.NextBytes(pixels.AsSpan(0, Math.Min(pixels.Length, 5000)));
        using var packed = new MemoryStream();
        using (var packing = new ZLibStream(packed, CompressionLevel.Fastest, leaveOpen: true)) packing.Write(pixels);
        var bytes = random.Next(5) == 0 ? text.Altered(packed.ToArray()) : packed.ToArray();
        for (var (at, parts) = (0, 1 + random.Next(3)); parts > 0; parts--)
        {
            var end = parts == 1 ? bytes.Length : at + random.Next(bytes.Length - at + 1);
            Chunk(file, "IDAT", bytes[at..end]);
            at = end;
        }

        if (random.Next(5) > 0) Chunk(file, "IEND", []);
        return [.. file];
    }

    private void Chunk(List<byte> file, string kind, byte[] content)
    {
        var body = System.Text.Encoding.Latin1.GetBytes(kind).Concat(content).ToArray();
        file.AddRange(random.Next(15) == 0 ? Four(One([0, 0x7FFFFFFF, -1, random.Next()])) : Four(content.Length));
        file.AddRange(body);
        file.AddRange(random.Next(10) == 0 ? Noise(4) : Four((int)Crc(body)));
    }

    // CRC-32 as PNG wants it (ISO/IEC 15948, annex D).
    private static uint Crc(byte[] bytes)
    {
        var crc = uint.MaxValue;
        foreach (var letter in bytes)
        {
            crc ^= letter;
            for (var bit = 0; bit < 8; bit++) crc = (crc & 1) == 1 ? (crc >> 1) ^ 0xEDB88320 : crc >> 1;
        }

        return ~crc;
    }

    private int Size() => random.Next(4) == 0 ? One(Sizes) : 1 + random.Next(300);

    private byte[] Noise(int count)
    {
        var noise = new byte[count];
        random.NextBytes(noise);
        return noise;
    }

    private static byte[] Two(int number) => [(byte)(number >> 8), (byte)number];

    private static byte[] Four(int number)
    {
        var bytes = new byte[4];
        BinaryPrimitives.WriteInt32BigEndian(bytes, number);
        return bytes;
    }

    private T One<T>(T[] of) => of[random.Next(of.Length)];
}
