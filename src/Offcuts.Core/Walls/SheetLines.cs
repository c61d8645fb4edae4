using Offcuts.Core.Faults;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Walls;

/// <summary>
/// Splits a sheet into lines that each tell one fact: its name, then what is said of it. Blank lines are passed over; a name is the
/// longest that fits, with single spaces in it.
/// </summary>
internal static class SheetLines
{
    /// <summary>Most lines of a sheet.</summary>
    public const int MostLines = 20_000;

    /// <summary>Longest line.</summary>
    public const int LongestLine = 500;

    /// <summary>Faults listed one by one; the rest are only counted.</summary>
    public const int MostFaults = 1000;

    /// <summary>Hands every line to its reader; adds a fault for each line that tells nothing known, tells something twice, or is missing.</summary>
    public static void Read(string text, IReadOnlyList<SheetFact> facts, List<Fault> faults, Action<SheetLine> read)
    {
        var lines = text.ReplaceLineEndings("\n").TrimStart('\ufeff').Split('\n');
        if (lines.All(string.IsNullOrWhiteSpace))
        {
            faults.Add(WallFaults.SheetEmpty(facts[0].Name) with { Line = 1 });
            return;
        }

        if (lines.Length > MostLines)
        {
            faults.Add(WallFaults.SheetTooLong(MostLines) with { Line = MostLines + 1 });
            return;
        }

        var seen = new Dictionary<string, int>();
        for (var i = 0; i < lines.Length; i++)
        {
            if (Refused(lines[i]) is { } refused)
            {
                faults.Add(refused with { Line = i + 1 });
                continue;
            }

            var line = lines[i].Replace('\t', ' ');
            if (string.IsNullOrWhiteSpace(line)) continue;
            var start = line.Length - line.TrimStart(' ').Length;
            if (SheetFact.Of(facts, line) is not { } fact)
            {
                var words = line[start..].Split("  ", 2)[0].Split(':', 2)[0].TrimEnd();
                if (Named(facts, words) is { } colon)
                {
                    var at = line.IndexOf(':', start) + 1;
                    var fault = colon.Example.Contains(':', StringComparison.Ordinal) ? WallFaults.WordMissing("a name", colon.Example, at) : WallFaults.WordsLeft(":", colon.Example, at);
                    faults.Add(fault with { Line = i + 1 });
                    seen.TryAdd(colon.Name, i + 1);
                    continue;
                }

                faults.Add(WallFaults.FactUnknown(words, Near(facts, words), start + 1) with { Line = i + 1 });
                continue;
            }

            if (!fact.Often && !seen.TryAdd(fact.Name, i + 1)) faults.Add(WallFaults.FactTwice(fact.Name, seen[fact.Name]) with { Line = i + 1, Column = start + 1 });
            else read(new SheetLine(line, i + 1, fact, start + fact.Name.Length, faults));
            if (fact.Often) seen.TryAdd(fact.Name, i + 1);
        }

        faults.AddRange(facts.Where(fact => fact.Needed && !seen.ContainsKey(fact.Name)).Select(fact => WallFaults.FactMissing(fact.Name, fact.Example) with { Line = lines.Length, About = fact.Name }));
    }

    /// <summary>The value where there is no fault, else the faults in the order of the lines, up to a limit.</summary>
    public static Result<T> Or<T>(List<Fault> faults, Func<Result<T>> value)
    {
        if (faults.Count == 0) return value();
        var listed = faults.OrderBy(fault => fault.Line).Take(MostFaults).ToList();
        if (faults.Count > MostFaults) listed.Add(FileFaults.More(faults.Count - MostFaults));
        return Result<T>.Fail(listed);
    }

    private static Fault? Refused(string line)
    {
        if (line.Length > LongestLine) return WallFaults.SheetLineTooLong(LongestLine);
        var refused = TextRules.FirstRefused(line.Replace('\t', ' '));
        return refused >= 0 ? MeasureFaults.TextHasControl(refused + 1) : null;
    }

    // "leg: 28' left" tells of a leg without saying which, and "height: 8'" has a colon too many.
    private static SheetFact? Named(IReadOnlyList<SheetFact> facts, string words) =>
        facts.FirstOrDefault(fact => string.Equals(fact.Name, words, StringComparison.OrdinalIgnoreCase));

    private static string Near(IReadOnlyList<SheetFact> facts, string words)
    {
        var lower = words.ToLowerInvariant();
        return facts.Select(fact => (fact.Name, Slips: Math.Abs(fact.Name.Length - lower.Length) > 3 ? 9 : Slips.Between(fact.Name, lower)))
            .Where(near => near.Slips <= Math.Clamp(near.Name.Length / 3, 1, 3))
            .OrderBy(near => near.Slips).Select(near => near.Name).FirstOrDefault("");
    }
}
