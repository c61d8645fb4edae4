using System.Buffers.Binary;
using System.Reflection;

namespace Offcuts.Print;

/// <summary>One shipped font file: its bytes, and which characters it has a glyph for.</summary>
/// <remarks>The character map is read as the OpenType specification lays it down, table <c>cmap</c>, formats 4 and 12.</remarks>
internal sealed class FontFile
{
    private readonly HashSet<int> _covered;

    private FontFile(byte[] bytes) => (Bytes, _covered) = (bytes, Covered(bytes));

    public byte[] Bytes { get; }

    public static FontFile Load(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream($"fonts/{name}.ttf")!;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return new FontFile(bytes);
    }

    public bool Has(int codePoint) => _covered.Contains(codePoint);

    private static HashSet<int> Covered(ReadOnlySpan<byte> font)
    {
        var map = Table(font, "cmap");
        var covered = new HashSet<int>();
        var subtables = U16(font, map + 2);
        for (var i = 0; i < subtables; i++)
        {
            var subtable = map + (int)U32(font, map + 4 + 8 * i + 4);
            if (U16(font, map + 4 + 8 * i) != 3) continue;
            if (U16(font, subtable) == 4) AddFormat4(font, subtable, covered);
            if (U16(font, subtable) == 12) AddFormat12(font, subtable, covered);
        }

        return covered;
    }

    private static int Table(ReadOnlySpan<byte> font, string tag)
    {
        for (var i = 0; i < U16(font, 4); i++)
        {
            var record = 12 + 16 * i;
            if (font[record] == tag[0] && font[record + 1] == tag[1] && font[record + 2] == tag[2] && font[record + 3] == tag[3])
                return (int)U32(font, record + 8);
        }

        throw new InvalidDataException($"the font has no {tag} table");
    }

    private static void AddFormat4(ReadOnlySpan<byte> font, int at, HashSet<int> covered)
    {
        var segments = U16(font, at + 6) / 2;
        var (ends, starts) = (at + 14, at + 16 + 2 * segments);
        var (deltas, offsets) = (starts + 2 * segments, starts + 4 * segments);
        for (var s = 0; s < segments; s++)
        {
            var (start, end) = (U16(font, starts + 2 * s), U16(font, ends + 2 * s));
            var (delta, offset) = (U16(font, deltas + 2 * s), U16(font, offsets + 2 * s));
            for (var c = start; c <= end && c != 0xFFFF; c++)
            {
                var glyph = offset == 0 ? c + delta : U16(font, offsets + 2 * s + offset + 2 * (c - start));
                if ((glyph & 0xFFFF) != 0) covered.Add(c);
            }
        }
    }

    private static void AddFormat12(ReadOnlySpan<byte> font, int at, HashSet<int> covered)
    {
        for (var group = 0; group < U32(font, at + 12); group++)
        {
            var record = at + 16 + 12 * group;
            for (var c = U32(font, record); c <= U32(font, record + 4); c++) covered.Add((int)c);
        }
    }

    private static int U16(ReadOnlySpan<byte> font, int at) => BinaryPrimitives.ReadUInt16BigEndian(font[at..]);

    private static uint U32(ReadOnlySpan<byte> font, int at) => BinaryPrimitives.ReadUInt32BigEndian(font[at..]);
}
