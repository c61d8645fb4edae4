namespace Offcuts.Benchmarks.Measuring;

/// <summary>The page that shows how far the yard file was tried: a part for each command that makes one, put in place of what stood there.</summary>
internal static class TrustPage
{
    /// <summary>Its name.</summary>
    public const string Name = "TRUST.md";

    /// <summary>Puts a part in its place, between its two marks.</summary>
    public static void Put(string part, IEnumerable<string> lines)
    {
        var path = Pages.PathOf(Name);
        var text = File.ReadAllText(path).ReplaceLineEndings("\n");
        var (begin, end) = ($"<!-- {part} -->\n", $"<!-- end of {part} -->");
        var start = text.IndexOf(begin, StringComparison.Ordinal);
        var stop = text.IndexOf(end, StringComparison.Ordinal);
        if (start < 0 || stop < start) throw new InvalidOperationException($"{Name} has no part {part}");
        File.WriteAllText(path, text[..(start + begin.Length)] + string.Join('\n', lines) + "\n" + text[stop..]);
    }
}
