using System.Globalization;

namespace Offcuts.UseCases;

/// <summary>What matters today, as lines of text.</summary>
public static class TodayText
{
    /// <summary>The day, then each matter: when, what, what it is made of, and the command that deals with it.</summary>
    public static IEnumerable<string> Lines(IReadOnlyList<Matter> matters, DateOnly today)
    {
        const int column = 15;
        yield return Heading(today);
        if (matters.All(matter => matter.Kind == MatterKind.LastChange)) yield return Nothing;
        foreach (var matter in matters)
        {
            yield return "";
            yield return $"{(matter.Pressing ? "! " : "")}{matter.When(today)}".PadRight(column - 1) + " " + matter.What;
            foreach (var line in matter.About) yield return new string(' ', column + 2) + line;
            yield return new string(' ', column) + matter.Command;
        }
    }

    /// <summary>The day in words.</summary>
    public static string Heading(DateOnly today) => today.ToString("dddd yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>Where nothing waits.</summary>
    public const string Nothing = "Nothing waits today: every stage has what it needs, and no label, order or board asks for a hand.";
}
