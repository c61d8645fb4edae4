using System.Security.Cryptography;
using System.Text;
using Offcuts.Core.Faults;
using Offcuts.Core.Yard;

namespace Offcuts.Core.HandOvers;

/// <summary>
/// The name by which two yards know one hand-over, and the receipt by which the one that took it in says so. A receipt proves that
/// somebody had the file; it is no signature.
/// </summary>
public static class Transfers
{
    /// <summary>How many characters of <see cref="Code.Alphabet"/> a name has: one in about 10^22 is drawn twice.</summary>
    public const int Length = 16;

    /// <summary>Draws a name.</summary>
    /// <param name="draw">A number from 0 up to, not including, its argument, by chance.</param>
    public static string Draw(Func<int, int> draw) => string.Create(Length, draw, static (span, next) =>
    {
        for (var i = 0; i < span.Length; i++) span[i] = Code.Alphabet[next(Code.Alphabet.Length)];
    });

    /// <summary>True for what may be such a name.</summary>
    public static bool IsName(string text) => text.Length == Length && text.All(Code.Alphabet.Contains);

    /// <summary>The receipt of a hand-over: an R and seven characters with a check character, made of its name by SHA-256.</summary>
    public static string Receipt(string transfer)
    {
        var (bytes, at) = (SHA256.HashData(Encoding.ASCII.GetBytes("receipt 0 " + transfer)), 0);
        var code = Code.Draw(most =>
        {
            if (at == bytes.Length) (bytes, at) = (SHA256.HashData(bytes), 0);
            return bytes[at++] % most;
        });
        return $"R-{code.Text[..3]}-{code.Text[3..]}";
    }

    /// <summary>A receipt as typed, in either case, with gaps or dashes, as it is written; or why it is none.</summary>
    public static Result<string> ReadReceipt(string typed)
    {
        var text = typed.Trim().ToUpperInvariant();
        if (text.Length < 2 || text[0] != 'R') return HandFaults.ReceiptUnreadable();
        var read = Code.Parse(text[1..]);
        return read.TryGet(out var code) ? $"R-{code.Text[..3]}-{code.Text[3..]}" : HandFaults.ReceiptUnreadable();
    }
}
