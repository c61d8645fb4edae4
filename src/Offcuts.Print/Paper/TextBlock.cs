namespace Offcuts.Print;

/// <summary>A text broken into lines of one size that each fit a width.</summary>
/// <param name="Lines">The lines, top to bottom; none for an empty text.</param>
/// <param name="Size">Their size in points.</param>
/// <param name="Bold">Whether they are bold.</param>
internal sealed record TextBlock(IReadOnlyList<string> Lines, double Size, bool Bold)
{
    /// <summary>Height of all lines.</summary>
    public double Height => Lines.Count * Size * Lettering.LineHeight;

    /// <summary>
    /// The text as large as it fits: on one line while that costs at most a quarter of its size, then on as many lines as are
    /// allowed; shrunk down to the least size, then cut with a mark.
    /// </summary>
    /// <param name="parts">What may not be broken: words, or marks.</param>
    /// <param name="joint">What stands between two parts on one line.</param>
    /// <param name="bold">Whether it is bold.</param>
    /// <param name="ideal">The size wanted.</param>
    /// <param name="least">The smallest size allowed.</param>
    /// <param name="width">The width of the place.</param>
    /// <param name="mostLines">How many lines are allowed; 1 or more.</param>
    public static TextBlock Fit(IReadOnlyList<string> parts, string joint, bool bold, double ideal, double least, double width, int mostLines)
    {
        if (parts.Count == 0) return new TextBlock([], ideal, bold);
        ideal = Math.Max(ideal, least);
        var whole = string.Join(joint, parts);
        var alone = Math.Min(ideal, ideal * width / Lettering.Width(whole, ideal, bold));
        if (alone >= Math.Max(least, mostLines == 1 ? 0 : 0.75 * ideal)) return new TextBlock([whole], Math.Floor(alone * 20) / 20, bold);

        for (var size = ideal; size > least; size = Math.Max(least, size - 0.25))
        {
            var lines = Break(parts, joint, size, bold, width);
            if (lines.Count <= mostLines && lines.All(line => Lettering.Width(line, size, bold) <= width)) return new TextBlock(lines, size, bold);
        }

        return new TextBlock(CutLines(Break(parts, joint, least, bold, width), joint, least, bold, width, mostLines), least, bold);
    }

    private static List<string> Break(IReadOnlyList<string> parts, string joint, double size, bool bold, double width)
    {
        var lines = new List<string> { parts[0] };
        foreach (var part in parts.Skip(1))
        {
            var longer = lines[^1] + joint + part;
            if (Lettering.Width(longer, size, bold) <= width) lines[^1] = longer;
            else lines.Add(part);
        }

        return lines;
    }

    private static List<string> CutLines(List<string> lines, string joint, double size, bool bold, double width, int mostLines)
    {
        var kept = lines.Take(mostLines).Select(line => Lettering.Cut(line, size, bold, width)).ToList();
        if (lines.Count <= mostLines) return kept;

        // What follows goes on the last line, so that the mark stands exactly where the text was cut.
        kept[^1] = Lettering.Cut(string.Join(joint, lines.Skip(mostLines - 1)), size, bold, width);
        return kept;
    }
}
