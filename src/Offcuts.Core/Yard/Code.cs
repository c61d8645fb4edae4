using Offcuts.Core.Faults;
using Offcuts.Core.Materials;

namespace Offcuts.Core.Yard;

/// <summary>
/// What a label says: six characters drawn by chance and an ISO/IEC 7064 MOD 37,36 check character, all seven from
/// <see cref="Alphabet"/>. Written in two groups (<c>K7F 3MXX</c>). <c>default</c> is no code and prints empty.
/// </summary>
public readonly record struct Code : IComparable<Code>
{
    /// <summary>Digits and letters of which none looks like another: of each pair of look-alikes at most one is in.</summary>
    public const string Alphabet = "2345679ACDEFHJKMNPRTVWXY";

    /// <summary>What stands before the code in a QR symbol.</summary>
    public const string QrPrefix = "OFFCUTS:";

    /// <summary>Characters drawn by chance, before the check character.</summary>
    public const int BodyLength = 6;

    private readonly string? _text;

    private Code(string text) => _text = text;

    /// <summary>The seven characters without a gap.</summary>
    public string Text => _text ?? "";

    /// <summary>The text of its QR symbol: 15 characters of QR's alphanumeric set, so version 1 holds it at level Q.</summary>
    public string QrText => QrPrefix + Text;

    /// <summary>True for <c>default</c>.</summary>
    public bool IsNone => _text is null;

    /// <summary>
    /// Draws a code. Draws again while the check character would be one that looks like another, or the code in its two groups
    /// would begin like a section of lumber (<c>2X4 2476</c>) or like <c>new</c>, which a typed line can't tell from one.
    /// </summary>
    /// <param name="draw">A number from 0 up to, not including, its argument, by chance.</param>
    public static Code Draw(Func<int, int> draw)
    {
        while (true)
        {
            var body = string.Create(BodyLength, draw, static (span, next) =>
            {
                for (var i = 0; i < span.Length; i++) span[i] = Alphabet[next(Alphabet.Length)];
            });
            var check = CheckCharacter.Of(body);
            if (!Alphabet.Contains(check)) continue;
            var code = new Code(body + check);
            if (!body.StartsWith("NEW", StringComparison.Ordinal) && MaterialReader.ReadStart(code.ToString()) is null) return code;
        }
    }

    /// <summary>
    /// Reads a code as typed or scanned: either case, with gaps or dashes, with or without <see cref="QrPrefix"/>.
    /// Refuses a wrong length, a character no code has, and a check character that does not fit.
    /// </summary>
    public static Result<Code> Parse(string text)
    {
        var typed = text.Trim();
        var skipped = text.Length - text.TrimStart().Length;
        if (typed.StartsWith(QrPrefix, StringComparison.OrdinalIgnoreCase))
        {
            typed = typed[QrPrefix.Length..];
            skipped += QrPrefix.Length;
        }

        var kept = new System.Text.StringBuilder();
        for (var i = 0; i < typed.Length; i++)
        {
            if (typed[i] is ' ' or '-') continue;
            var upper = char.ToUpperInvariant(typed[i]);
            if (!Alphabet.Contains(upper)) return MeasureFaults.CodeCharacter(typed[i], skipped + i + 1);
            kept.Append(upper);
        }

        var all = kept.ToString();
        if (all.Length != BodyLength + 1) return MeasureFaults.CodeLength();
        return CheckCharacter.Fits(all) ? new Code(all) : MeasureFaults.CodeCheck();
    }

    /// <summary>Two groups, as on the label.</summary>
    public override string ToString() => _text is null ? "" : $"{_text[..3]} {_text[3..]}";

    /// <inheritdoc/>
    public int CompareTo(Code other) => string.CompareOrdinal(Text, other.Text);
}
