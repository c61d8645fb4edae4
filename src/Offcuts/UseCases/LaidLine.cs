using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>One piece of a course as somebody laid it.</summary>
/// <param name="Code">The yard's piece it is of; none where it is new.</param>
/// <param name="Length">How long it lies there; none for all of it, as far as it has room.</param>
public sealed record LaidThere(Code Code, Length? Length)
{
    /// <summary>True for the piece that was cut for this place: it lies there as the kept filling has it.</summary>
    public bool AsCut { get; init; }
}

/// <summary>
/// What lies in a course that was stacked otherwise than planned, as a person types it, from the leg's start on: what each piece is of, and its length
/// where it is not all of it: <c>new, new 1' 6", HNE WPH3 2'</c>. Each <c>new</c> is a new piece; <c>cut</c> is the piece that was cut for its place.
/// </summary>
public static class LaidLine
{
    private const string NewWord = "new";
    private const string CutWord = "cut";

    /// <summary>What it says, or the fault with its column.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="unit">Unit of bare numbers.</param>
    /// <param name="from">At which column of a longer line it begins, from 0.</param>
    public static Result<IReadOnlyList<LaidThere>> Read(string text, LengthUnit unit, int from = 0)
    {
        var laid = new List<LaidThere>();
        foreach (var part in text.Split(','))
        {
            var read = Item(part.Trim(), unit);
            if (!read.TryGet(out var one)) return read.Fault with { Column = from + 1 + part.Length - part.TrimStart().Length };
            laid.Add(one);
            from += part.Length + 1;
        }

        return laid;
    }

    /// <summary>The line that says this, exactly.</summary>
    public static string Write(IEnumerable<LaidThere> laid) =>
        string.Join(", ", laid.Select(one => (one.AsCut ? CutWord : one.Code.IsNone ? NewWord : one.Code.ToString()) + (one.Length is { } length ? $" {LengthText.Faithful(length, LengthUnit.Inch)}" : "")));

    private static Result<LaidThere> Item(string text, LengthUnit unit)
    {
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words.Length == 0) return FillFaults.LaidUnreadable(text);
        if (words[0].Equals(CutWord, StringComparison.OrdinalIgnoreCase)) return words.Length == 1 ? new LaidThere(default, null) { AsCut = true } : FillFaults.LaidCutWhole();
        var (code, taken) = IsNew(words) ? (default, 1)
            : Code.Parse(words[0]).TryGet(out var one) ? (one, 1)
            : words.Length > 1 && Code.Parse(words[0] + words[1]).TryGet(out var two) ? (two, 2)
            : (default(Code), 0);
        if (taken == 0) return FillFaults.LaidUnreadable(text);
        return words.Length == taken ? new LaidThere(code, null) : LengthReader.ReadAll(string.Join(' ', words[taken..]), unit).Then<LaidThere>(length => new LaidThere(code, length));
    }

    // A label may begin like the word (NEW ADFM): it is meant where the two groups are a code and the second says no length.
    private static bool IsNew(string[] words) =>
        words[0].Equals(NewWord, StringComparison.OrdinalIgnoreCase)
        && (words.Length == 1 || words[1].All(char.IsAsciiDigit) || !Code.Parse(words[0] + words[1]).Ok);
}
