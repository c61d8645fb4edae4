namespace Offcuts.Screens;

/// <summary>
/// A key and what it does at a place. Declared once: the binding, the line at the foot and the help all come from it.
/// </summary>
/// <param name="Chords">The keys that do it, the one that is shown first: <c>Ctrl+L</c>, <c>F1</c>, <c>Up</c>.</param>
/// <param name="Says">What it does, in a word or two; empty keeps it off the foot.</param>
/// <param name="Means">What it means.</param>
/// <param name="About">What it does, in a sentence, for the help.</param>
internal sealed record KeyUse(IReadOnlyList<string> Chords, string Says, Intent Means, string About)
{
    public KeyUse(string chord, string says, Intent means, string about)
        : this([chord], says, means, about)
    {
    }

    /// <summary>The first chord as it is shown.</summary>
    public string Shown => Show(Chords[0]);

    /// <summary>All of its chords as they are shown.</summary>
    public string AllShown => string.Join(" or ", Chords.Select(Show));

    private static string Show(string chord) => chord switch
    {
        "Up" => "↑",
        "Down" => "↓",
        "PageUp" => "PgUp",
        "PageDown" => "PgDn",
        _ => chord.Replace("Ctrl+", "^", StringComparison.Ordinal),
    };
}
