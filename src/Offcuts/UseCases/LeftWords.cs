using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>What is left of a piece that was not cut as planned, as a person types it: see <see cref="LeftPiece.Read"/>.</summary>
public static class LeftWords
{
    /// <summary>
    /// Everything that is left, or every fault. A word that says something of a length may stand alone behind it. A bare whole number that looks like
    /// feet is refused and not asked about: who means inches needs one sign more.
    /// </summary>
    /// <param name="texts">As typed, one or several of them for a length.</param>
    /// <param name="of">What the piece is of; what stands before a length is that one's.</param>
    /// <param name="settings">The unit of bare numbers, and the keep lengths.</param>
    public static Result<IReadOnlyList<LeftPiece>> Read(IEnumerable<string> texts, Material of, YardSettings settings)
    {
        var faults = new List<Fault>();
        var left = new List<LeftPiece>();
        foreach (var text in Joined(texts))
        {
            var read = LeftPiece.Read(text, settings.Unit);
            if (read.TryGet(out var one))
            {
                left.Add(one);
                if (IsBareWhole(text, one.Length) && OddSize.LikeFeet(one.Narrower ?? of, one.Length, settings) is { } odd) faults.Add(PlanFaults.LeftLikeFeet(odd, one.Length));
            }
            else faults.AddRange(read.Faults.Select(fault => new Fault($"{TextRules.Harmless(text)}: {fault.Sentence}")));
        }

        return faults.Count > 0 ? Result<IReadOnlyList<LeftPiece>>.Fail(faults) : left;
    }

    // Behind 4 a unit may stand apart from it: 4 in.
    private static bool IsBareWhole(string text, Length length) =>
        Words(text).TakeWhile(word => !LeftPiece.IsMark(word)).LastOrDefault() is { } word && int.TryParse(word.TrimEnd(','), NumberStyles.None, CultureInfo.InvariantCulture, out var inches) && Length.Inches(inches) == length;

    // A shell parts 40 bad 10..14 and 20 line 0 into words, and a line is parted at commas: 40 bad 10..14, 20..24.
    private static List<string> Joined(IEnumerable<string> texts)
    {
        var joined = new List<string>();
        foreach (var text in texts.Select(text => text.Trim()))
        {
            if (joined.Count > 0 && IsRange(text) && Words(joined[^1]).Contains("bad", StringComparer.OrdinalIgnoreCase) && !joined[^1].EndsWith(" bad", StringComparison.OrdinalIgnoreCase)) joined[^1] = $"{joined[^1].TrimEnd(',')}, {text}";
            else if (joined.Count > 0 && (LeftPiece.IsMark(text.Split(' ')[0]) || Words(joined[^1]).LastOrDefault() is { } last && (Is(last, "bad") || Is(last, "line")))) joined[^1] += $" {text}";
            else joined.Add(text);
        }

        return joined;
    }

    // From and to before any word that says something of a length: 20..24, not 30 bad 2..4.
    private static bool IsRange(string text) => Words(text).TakeWhile(word => !LeftPiece.IsMark(word)).Any(word => word.Contains("..", StringComparison.Ordinal) || word.Contains('…') || word.Equals("to", StringComparison.OrdinalIgnoreCase));

    private static bool Is(string word, string other) => word.Equals(other, StringComparison.OrdinalIgnoreCase);

    private static string[] Words(string text) => text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
}
