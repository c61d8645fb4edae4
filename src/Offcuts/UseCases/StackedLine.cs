using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;

namespace Offcuts.UseCases;

/// <summary>
/// Which courses are stacked, as a person types it: numbers and ranges, with <c>course</c> before them or without, then a leg, with <c>leg</c> before it or without, and a face where it is not all of them: <c>1, 2</c>,
/// <c>1-3 leg A inside</c>, <c>1 B</c>. Behind a colon stands what lies in one course of one face, where it was laid otherwise than planned.
/// </summary>
public static class StackedLine
{
    private const string LegWord = "leg";

    // More courses than any wall has.
    private const int Most = 1000;

    /// <summary>What it says of a wall, or the fault with its column.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="wall">Name of the wall.</param>
    /// <param name="unit">Unit of bare lengths.</param>
    public static Result<StackedWish> Read(string text, string wall, LengthUnit unit = LengthUnit.Inch)
    {
        var colon = text.IndexOf(':', StringComparison.Ordinal);
        if (colon < 0) return Courses(text, wall);
        return Courses(text[..colon], wall).Then(wish => wish.Courses.Count > 1 || wish.Leg is null || wish.Face is null
            ? FillFaults.LaidOneCourse()
            : LaidLine.Read(text[(colon + 1)..], unit, colon + 1).Then<StackedWish>(laid => wish with { Laid = laid }));
    }

    private static Result<StackedWish> Courses(string text, string wall)
    {
        var courses = new SortedSet<int>();
        Face? face = null;
        string? leg = null;
        var at = 0;
        while (Word(text, ref at) is { } word)
        {
            if (word.Text.ToLowerInvariant() is "course" or "courses") continue;
            if (FaceOf(word.Text) is { } said) face = said;
            else if (word.Text.Equals(LegWord, StringComparison.OrdinalIgnoreCase))
            {
                (leg, var behind) = LegAndFace(text[at..]);
                face = behind ?? face;
                if (leg.Length == 0) return FillFaults.LegMissing() with { Column = word.Column };
                at = text.Length;
            }
            else if (courses.Count > 0 && !char.IsAsciiDigit(word.Text[0]))
            {
                // The drawing names a leg by its letter alone, and so does who reads it off: 1 B.
                (leg, var behind) = LegAndFace(text[(word.Column - 1)..]);
                face = behind ?? face;
                at = text.Length;
            }
            else if (Range(word.Text) is not { } range) return FillFaults.StackedUnreadable(word.Text) with { Column = word.Column };
            else courses.UnionWith(Enumerable.Range(range.From, range.To - range.From + 1));
        }

        return courses.Count == 0 ? FillFaults.CourseMissing() : new StackedWish(wall, [.. courses], leg, face);
    }

    // A leg's name may hold spaces, so that a face is taken for one only behind it.
    private static (string Leg, Face? Face) LegAndFace(string text)
    {
        var leg = text.Trim();
        var last = leg[(leg.LastIndexOf(' ') + 1)..];
        return leg != last && FaceOf(last) is { } face ? (leg[..^last.Length].TrimEnd(), face) : (leg, null);
    }

    /// <summary>The line that says this.</summary>
    public static string Write(StackedWish wish) =>
        string.Join(", ", wish.Courses) + (wish.Leg is { } leg ? $" {LegWord} {leg}" : "") + (wish.Face is { } face ? $" {WallWords.Of(face)}" : "") + (wish.Laid is { } laid ? $": {LaidLine.Write(laid)}" : "");

    private static (string Text, int Column)? Word(string text, ref int at)
    {
        while (at < text.Length && text[at] is ' ' or ',') at++;
        var from = at;
        while (at < text.Length && text[at] is not (' ' or ',')) at++;
        return at > from ? (text[from..at], from + 1) : null;
    }

    private static Face? FaceOf(string word) => word.ToLowerInvariant() switch { "outside" => Face.Outside, "inside" => Face.Inside, _ => null };

    private static (int From, int To)? Range(string word)
    {
        var parts = word.Split('-');
        var numbers = parts.Select(part => int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number is > 0 and < Most ? number : 0).ToArray();
        return numbers.Length is 1 or 2 && numbers.All(number => number > 0) && numbers[0] <= numbers[^1] ? (numbers[0], numbers[^1]) : null;
    }
}
