namespace Offcuts.Core.Yard;

/// <summary>
/// How people are told a piece's condition and marks, and a cut's use, wherever a sentence or a screen does. Files have words of
/// their own, which stay as they are whatever is said here.
/// </summary>
public static class MarkWords
{
    /// <summary>A condition in a word: <c>fair</c>.</summary>
    public static string Of(Condition condition) => condition.ToString().ToLowerInvariant();

    /// <summary>A use in a word: <c>nonstructural</c>.</summary>
    public static string Of(Use use) => use.ToString().ToLowerInvariant();

    /// <summary>What clings to a piece or is on it, in the order in which it is told; nothing of what is not so.</summary>
    public static IEnumerable<string> OnIt(bool nails, bool concrete, bool oiled, bool stamped)
    {
        if (nails) yield return "nails in";
        if (concrete) yield return "concrete on";
        if (oiled) yield return "oiled";
        if (stamped) yield return "stamped";
    }
}
