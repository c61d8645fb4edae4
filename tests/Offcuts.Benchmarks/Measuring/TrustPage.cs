namespace Offcuts.Benchmarks.Measuring;

/// <summary>Pages with a part for each command that makes one, put in place of what stood there; first of all the one that shows how far the yard file was tried.</summary>
internal static class TrustPage
{
    /// <summary>Its name.</summary>
    public const string Name = "TRUST.md";

    /// <summary>Puts a part in its place, between its two marks.</summary>
    /// <param name="part">Name of the part.</param>
    /// <param name="lines">What it says now.</param>
    /// <param name="page">The page.</param>
    public static void Put(string part, IEnumerable<string> lines, string page = Name)
    {
        var path = Pages.PathOf(page);
        var text = File.ReadAllText(path).ReplaceLineEndings("\n");
        var (begin, end) = ($"<!-- {part} -->\n", $"<!-- end of {part} -->");
        var start = text.IndexOf(begin, StringComparison.Ordinal);
        var stop = text.IndexOf(end, StringComparison.Ordinal);
        if (start < 0 || stop < start) throw new InvalidOperationException($"{page} has no part {part}");
        File.WriteAllText(path, text[..(start + begin.Length)] + string.Join('\n', lines) + "\n" + text[stop..]);
    }
}
