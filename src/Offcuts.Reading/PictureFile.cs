using System.Buffers.Binary;
using System.IO.Compression;
using System.Runtime.InteropServices;
using Offcuts.Core.Faults;
using StbImageSharp;

namespace Offcuts.Reading;

/// <summary>A picture in shades of grey, row by row from the top left: 0 is black.</summary>
/// <param name="Width">Pixels in a row.</param>
/// <param name="Height">Rows.</param>
/// <param name="Pixels">Width times height shades.</param>
public sealed record GreyPicture(int Width, int Height, byte[] Pixels);

/// <summary>
/// A JPEG or PNG file as a camera or a phone writes it. What it costs to decode is bounded before anything is decoded: by its bytes, by
/// the size that its first part tells, by the memory that takes, by the number of its scans, and a PNG by what really comes out of it.
/// </summary>
public static class PictureFile
{
    /// <summary>Most bytes of a file, in millions. A JPEG of 48 megapixels has about 25. Our own limit.</summary>
    public const int MostMegabytes = 64;

    /// <summary>Most pixels, in millions: what the cameras of today's phones give.</summary>
    public const int MostMegapixels = 48;

    /// <summary>
    /// Most bytes that decoding may take beside the file itself, in millions. An ordinary JPEG of 48 megapixels takes 120, a progressive one
    /// 264. Our own limit: with the largest file and what goes with it, a count stays below 500.
    /// </summary>
    public const int MostWorkingMegabytes = 350;

    // An ordinary progressive JPEG has about ten scans; each costs a walk over the whole picture.
    private const int MostScans = 100;

    private static readonly byte[] PngBegins = [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>True where the first bytes (eight are enough) are those of a JPEG or PNG file.</summary>
    public static bool IsPicture(ReadOnlySpan<byte> first) => first is [0xFF, 0xD8, 0xFF, ..] || first.StartsWith(PngBegins);

    /// <summary>True where the first bytes (twelve are enough) are those of another picture that phones make.</summary>
    public static bool IsPhonesOther(ReadOnlySpan<byte> first) =>
        first.Length >= 12 && first[4..8].SequenceEqual("ftyp"u8)
        && (first[8..12].SequenceEqual("heic"u8) || first[8..12].SequenceEqual("heix"u8) || first[8..12].SequenceEqual("mif1"u8) || first[8..12].SequenceEqual("msf1"u8) || first[8..12].SequenceEqual("avif"u8));

    /// <summary>How many bytes decoding takes beside the file itself, by what its first part says, or why it is not decoded.</summary>
    public static Result<long> WorkingBytes(ReadOnlyMemory<byte> file) => Examined(file).Then<long>(seen => seen.Working);

    /// <summary>The picture, or why it can't be read.</summary>
    public static Result<GreyPicture> Decode(ReadOnlyMemory<byte> file)
    {
        var examined = Examined(file);
        if (!examined.TryGet(out var seen)) return Result<GreyPicture>.Fail(examined.Faults);
        if (seen.Rows is { } rows) return rows.Grey(seen.Height, new MemoryStream(Joined(seen.Packed)));
        try
        {
            using var stream = Stream(file[..seen.Length]);
            var decoded = ImageResult.FromStream(stream, ColorComponents.Grey);
            return decoded is { Data: { } pixels } && pixels.Length >= (long)decoded.Width * decoded.Height
                ? new GreyPicture(decoded.Width, decoded.Height, pixels)
                : CountFaults.PictureBroken();
        }
        catch (OutOfMemoryException)
        {
            return CountFaults.PictureNoMemory();
        }
        catch (Exception)
        {
            // The decoder tells a broken file by whatever exception it meets.
            return CountFaults.PictureBroken();
        }
    }

    // Over the file's own bytes where they are an array's, so that nothing is held twice.
    private static MemoryStream Stream(ReadOnlyMemory<byte> bytes) => MemoryMarshal.TryGetArray(bytes, out var part) && part.Array is { } whole
        ? new MemoryStream(whole, part.Offset, part.Count, writable: false)
        : new MemoryStream(bytes.ToArray(), writable: false);

    private static Result<Seen> Examined(ReadOnlyMemory<byte> file)
    {
        var bytes = file.Span;
        if (bytes.Length > MostMegabytes * 1_000_000L) return CountFaults.PictureTooManyBytes(MostMegabytes);
        if (IsPhonesOther(bytes)) return CountFaults.PictureKindOfPhone();
        if (!IsPicture(bytes)) return CountFaults.PictureKind();
        return bytes[0] == 0xFF ? Jpeg(bytes) : Png(file);
    }

    private static Result<Seen> Bounded(long width, long height, int length, Func<long> working) => width <= 0 || height <= 0
        ? CountFaults.PictureHeader()
        : width > MostMegapixels * 1_000_000L / height
            ? CountFaults.PictureTooLarge(width, height, MostMegapixels)
            : working() is var most && most > MostWorkingMegabytes * 1_000_000L
                ? CountFaults.PictureTooHeavy(MostWorkingMegabytes)
                : new Seen((int)width, (int)height, length, most);

    // Walks over the markers to the end of the image (ITU-T T.81, annex B); what a phone hangs on behind it is left out.
    private static Result<Seen> Jpeg(ReadOnlySpan<byte> bytes)
    {
        Result<Seen>? size = null;
        var (at, scans) = (2, 0);
        while (true)
        {
            while (at + 1 < bytes.Length && bytes[at] == 0xFF && bytes[at + 1] == 0xFF) at++;
            if (at + 3 >= bytes.Length && !(at + 1 < bytes.Length && bytes[at + 1] == 0xD9)) return Early();
            if (bytes[at] != 0xFF) return CountFaults.PictureBroken();
            var marker = bytes[at + 1];
            at += 2;
            if (marker == 0xD9) return size is { Ok: true } whole ? whole.Value with { Length = at } : CountFaults.PictureHeader();
            if (marker is 0x01 or (>= 0xD0 and <= 0xD8)) continue;
            var length = BinaryPrimitives.ReadUInt16BigEndian(bytes[at..]);
            if (length < 2) return CountFaults.PictureBroken();
            if (marker is 0xC0 or 0xC1 or 0xC2)
            {
                if (at + length > bytes.Length) return Early();
                size = Frame(bytes.Slice(at, length), progressive: marker == 0xC2);
                if (size is { Ok: false } refused) return refused;
            }
            else if (marker is >= 0xC3 and <= 0xCF and not 0xC4 and not 0xC8 and not 0xCC) return CountFaults.PictureJpegKind();

            at += length;
            if (marker != 0xDA) continue;
            if (++scans > MostScans) return CountFaults.PictureJpegKind();
            at = AfterScan(bytes, at);
        }

        // What is cut off before it tells its size is as broken as what is cut off later, but the size is refused first.
        Result<Seen> Early() => size is null ? CountFaults.PictureHeader() : CountFaults.PictureEndsEarly();
    }

    // A frame's header (T.81, B.2.2): its size, and of each component how densely it is sampled. The decoder keeps a byte for each sample, in
    // whole blocks, and two more for its coefficient where the scans come one over the other; and it gives a byte for each pixel.
    private static Result<Seen> Frame(ReadOnlySpan<byte> header, bool progressive)
    {
        if (header.Length < 8 || header[7] is 0 or > 4 || header.Length != 8 + 3 * header[7]) return CountFaults.PictureBroken();
        var (height, width) = (BinaryPrimitives.ReadUInt16BigEndian(header[3..]), BinaryPrimitives.ReadUInt16BigEndian(header[5..]));
        var (across, down, blocks) = (1, 1, 0L);
        for (var i = 8; i < header.Length; i += 3)
        {
            var (h, v) = (header[i + 1] >> 4, header[i + 1] & 15);
            if (h is 0 or > 4 || v is 0 or > 4) return CountFaults.PictureBroken();
            (across, down, blocks) = (Math.Max(across, h), Math.Max(down, v), blocks + h * v);
        }

        return Bounded(width, height, 0, () => Parts(width, 8 * across) * Parts(height, 8 * down) * blocks * 64 * (progressive ? 3 : 1) + (long)width * height);
        static long Parts(long all, int one) => (all + one - 1) / one;
    }

    // Behind FF in a scan stands 0 where FF itself is meant, or a restart marker; everything else ends the scan.
    private static int AfterScan(ReadOnlySpan<byte> bytes, int at)
    {
        while (at < bytes.Length)
        {
            var next = bytes[at..].IndexOf((byte)0xFF);
            if (next < 0 || at + next + 1 >= bytes.Length) return bytes.Length;
            at += next;
            if (bytes[at + 1] is not (0 or 0xFF or (>= 0xD0 and <= 0xD7))) return at;
            at += bytes[at + 1] == 0xFF ? 1 : 2;
        }

        return at;
    }

    // Chunk by chunk (ISO/IEC 15948); what the pixels unpack to is counted before anything is decoded.
    private static Result<Seen> Png(ReadOnlyMemory<byte> file)
    {
        var bytes = file.Span;
        if (bytes.Length < 33 || !bytes[12..16].SequenceEqual("IHDR"u8)) return CountFaults.PictureHeader();
        var (width, height) = (BinaryPrimitives.ReadUInt32BigEndian(bytes[16..]), BinaryPrimitives.ReadUInt32BigEndian(bytes[20..]));
        var (bits, colour, interlaced, packedBytes) = (bytes[24], bytes[25], bytes[28] == 1, bytes.Length);
        if (Samples(colour) is not { } samples || bits is not (1 or 2 or 4 or 8 or 16) || bytes[28] > 1) return CountFaults.PictureHeader();

        // What is packed is gathered first. One that is not interlaced is read row by row; of another all stands there once unpacked and once
        // unfiltered, its largest part, which is half of it, a third time, and the store of what is packed doubles.
        var size = Bounded(width, height, packedBytes, () => interlaced
            ? (long)width * height * samples * (Math.Max((int)bits, 8) / 8) * 5 / 2 + 2L * packedBytes
            : (long)width * height + packedBytes);
        if (!size.TryGet(out var seen)) return size;
        var packed = new List<ReadOnlyMemory<byte>>();
        byte[]? palette = null;
        var ended = false;
        for (var at = 8; !ended;)
        {
            if (at + 12 > bytes.Length) return CountFaults.PictureEndsEarly();
            var length = BinaryPrimitives.ReadUInt32BigEndian(bytes[at..]);
            if (length > bytes.Length - at - 12) return CountFaults.PictureEndsEarly();
            var kind = bytes[(at + 4)..(at + 8)];
            if (kind.SequenceEqual("IDAT"u8)) packed.Add(file.Slice(at + 8, (int)length));
            if (kind.SequenceEqual("PLTE"u8)) palette = bytes.Slice(at + 8, (int)length).ToArray();
            ended = kind.SequenceEqual("IEND"u8);
            at += (int)length + 12;
        }

        if (!interlaced)
        {
            if (packed.Count == 0 || (colour == 3 && palette is null)) return CountFaults.PictureBroken();
            return seen with { Rows = new PngRows(seen.Width, bits, samples, colour == 3 ? palette : null), Packed = packed };
        }

        // A row has a byte for its filter; an interlaced picture has seven smaller ones with rows and rounded bytes of their own.
        var most = ((long)width * samples * bits / 8 + 2) * height + 14L * height + width;
        return Unpacked(packed, most) is { } fault ? fault : size;
    }

    private static int? Samples(byte colour) => colour switch { 0 or 3 => 1, 2 => 3, 4 => 2, 6 => 4, _ => null };

    private static byte[] Joined(IReadOnlyList<ReadOnlyMemory<byte>> packed)
    {
        var joined = new byte[packed.Sum(part => part.Length)];
        var at = 0;
        foreach (var part in packed)
        {
            part.Span.CopyTo(joined.AsSpan(at));
            at += part.Length;
        }

        return joined;
    }

    private static Fault? Unpacked(List<ReadOnlyMemory<byte>> packed, long most)
    {
        try
        {
            using var unpacking = new ZLibStream(new MemoryStream(Joined(packed)), CompressionMode.Decompress);
            var buffer = new byte[1 << 16];
            long count = 0;
            while (unpacking.Read(buffer) is > 0 and var read)
                if ((count += read) > most) return CountFaults.PictureSwells();
            return count == 0 ? CountFaults.PictureBroken() : null;
        }
        catch (InvalidDataException)
        {
            return CountFaults.PictureBroken();
        }
    }

    // Rows and what they are packed in: of a PNG that is read row by row.
    private sealed record Seen(int Width, int Height, int Length, long Working)
    {
        public PngRows? Rows { get; init; }

        public IReadOnlyList<ReadOnlyMemory<byte>> Packed { get; init; } = [];
    }
}
