namespace Offcuts.Core.Faults;

/// <summary>A name as one word of a command that a person copies into a shell.</summary>
public static class ShellWord
{
    // What no shell takes for anything else, wherever it stands in a word.
    private const string Plain = "-_./";

    // What a shell still reads between double quotes; a backslash only before another one, or before the closing quote.
    private const string ReadInQuotes = "\"$`!";

    /// <summary>
    /// The name as it is where it is letters and figures, else between double quotes, which every usual shell knows. Where it has what a shell
    /// still reads between those, it stands between apostrophes as POSIX has them (Shell Command Language, 2.2 Quoting, from memory). What
    /// could steer a terminal is shown without harm.
    /// </summary>
    public static string Of(string name)
    {
        var shown = TextRules.Harmless(name);
        if (shown.Length > 0 && shown.All(character => char.IsLetterOrDigit(character) || Plain.Contains(character))) return shown;
        var read = shown.Any(ReadInQuotes.Contains) || shown.Contains(@"\\", StringComparison.Ordinal) || shown.EndsWith('\\');
        return read ? $"'{shown.Replace("'", "'\\''", StringComparison.Ordinal)}'" : $"\"{shown}\"";
    }
}
