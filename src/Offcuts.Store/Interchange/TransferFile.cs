using System.Buffers.Binary;
using System.IO.Compression;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;

namespace Offcuts.Store.Interchange;

/// <summary>
/// A hand-over file: JSON in gzip (RFC 1952), an object of three: <c>offcuts_hand_over</c>, the number of its schema; <c>sha256</c>, the
/// SHA-256 of the bytes of the value of <c>content</c> as they stand; and <c>content</c>. Read whole or not at all. The hash tells
/// what was damaged or altered on the way; it is no signature.
/// </summary>
public static class TransferFile
{
    /// <summary>The newest schema that is read. It is written only where something needs it, so that an older program reads what it can: 2 where a piece names hand-overs before its last.</summary>
    public const int Schema = 2;

    /// <summary>Most bytes of a file as it lies on the disk.</summary>
    public const int MostPacked = 20_000_000;

    /// <summary>Most bytes it may unpack to, in millions; reading stops there, so that a small file can't fill the memory.</summary>
    public const int MostMegabytes = 64;

    // What stands at the beginning of every file: gzip, deflate, no name, no time, no system, so that equal content makes equal files.
    private static readonly byte[] Head = [0x1F, 0x8B, 8, 0, 0, 0, 0, 0, 0, 255];

    internal static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        AllowDuplicateProperties = false,
        MaxDepth = 16,
    };

    /// <summary>The file of a hand-over. The same hand-over makes the same bytes.</summary>
    public static byte[] Write(Transfer transfer)
    {
        var content = JsonSerializer.SerializeToUtf8Bytes(TransferParts.Json(transfer), Options);
        using var plain = new MemoryStream();
        var schema = transfer.Pieces.Any(piece => piece.Earlier.Count > 0) ? Schema : 1;
        plain.Write(System.Text.Encoding.ASCII.GetBytes($"{{\"offcuts_hand_over\":{schema},\"sha256\":\"{Hash(content)}\",\"content\":"));
        plain.Write(content);
        plain.WriteByte((byte)'}');
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Optimal, leaveOpen: true)) gzip.Write(plain.ToArray());
        var bytes = packed.ToArray();
        Head.CopyTo(bytes, 0);
        return bytes;
    }

    /// <summary>What a file tells, or why it is refused: foreign, cut short, damaged, altered, too large, of a newer schema, or with something in it that can't be.</summary>
    /// <param name="file">Read to its end, left open.</param>
    public static Result<Transfer> Read(Stream file)
    {
        var packed = UpTo(file, MostPacked + 1);
        if (packed.Length > MostPacked) return HandFaults.TransferTooLarge(MostMegabytes);
        if (packed.Length < Head.Length) return HandFaults.TransferForeign();
        if (!packed.AsSpan(0, Head.Length).SequenceEqual(Head)) return HandFaults.TransferForeign();
        byte[] plain;
        try
        {
            using var gzip = new GZipStream(new MemoryStream(packed), CompressionMode.Decompress);
            plain = UpTo(gzip, MostMegabytes * 1_000_000 + 1);
        }
        catch (InvalidDataException)
        {
            return HandFaults.TransferDamaged();
        }

        if (plain.Length > MostMegabytes * 1_000_000) return HandFaults.TransferTooLarge(MostMegabytes);
        // The last four bytes of gzip tell how long what it holds is: cut short or with something behind it, they don't.
        if (BinaryPrimitives.ReadUInt32LittleEndian(packed.AsSpan(^4)) != plain.Length) return HandFaults.TransferDamaged();
        return Open(plain);
    }

    private static Result<Transfer> Open(byte[] plain)
    {
        JsonDocument document;
        try
        {
            document = JsonDocument.Parse(plain, new JsonDocumentOptions { MaxDepth = Options.MaxDepth + 1, AllowDuplicateProperties = false });
        }
        // Half of a broken pair in a name is found by reading the name, which is no fault of the syntax.
        catch (Exception error) when (error is JsonException or InvalidOperationException)
        {
            return HandFaults.TransferForeign();
        }

        using (document)
        {
            var root = document.RootElement;
            if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("offcuts_hand_over", out var schema) || schema.ValueKind != JsonValueKind.Number || !schema.TryGetInt32(out var number))
                return HandFaults.TransferForeign();
            if (number > Schema) return HandFaults.TransferNewer(number, Schema);
            if (number < 1 || !root.TryGetProperty("sha256", out var hash) || hash.ValueKind != JsonValueKind.String || !root.TryGetProperty("content", out var content) || root.GetPropertyCount() != 3)
                return HandFaults.TransferForeign();
            var bytes = JsonMarshal.GetRawUtf8Value(content);
            if (!JsonMarshal.GetRawUtf8Value(hash).SequenceEqual(System.Text.Encoding.ASCII.GetBytes($"\"{Hash(bytes)}\""))) return HandFaults.TransferAltered();
            try
            {
                return TransferParts.Read(JsonSerializer.Deserialize<TransferJson>(bytes, Options) ?? throw new FormatException("the content is an object"));
            }
            catch (Exception error) when (error is JsonException or FormatException or ArgumentException or OverflowException or IndexOutOfRangeException)
            {
                return HandFaults.TransferWrong("its content", "it is not as its schema says");
            }
        }
    }

    private static string Hash(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    private static byte[] UpTo(Stream stream, int most)
    {
        using var kept = new MemoryStream();
        var buffer = new byte[81_920];
        int read;
        while (kept.Length < most && (read = stream.Read(buffer, 0, (int)Math.Min(buffer.Length, most - kept.Length))) > 0) kept.Write(buffer, 0, read);
        return kept.ToArray();
    }
}
