using Offcuts.Core.Faults;
using Offcuts.Core.Measures;

namespace Offcuts.Print;

/// <summary>
/// The rows of a wall drawn in characters: courses from the top down, joints, ties, openings, each piece with its letter, number and
/// code where there is room. To scale along the row; a row too long for the width goes on in parts. Nothing hangs on colour.
/// </summary>
public static class Elevation
{
    // A column of a terminal is about half as wide as it is high: at 6 in a column a course of 1 ft stands in proportion.
    private static readonly Length MostAColumn = Length.Inches(6);

    /// <summary>Every row with what is laid in each course, the legend and the cautions. No line is wider than asked for; lines end with <c>\n</c>.</summary>
    public static string Text(WallPicture picture, ElevationOptions options)
    {
        var lines = new List<string>();
        lines.AddRange(Wrapped($"Wall {TextRules.Harmless(picture.Wall)} of {TextRules.Harmless(picture.Stage)}", options));
        lines.AddRange(Legend(options));
        foreach (var row in picture.Rows)
        {
            lines.Add("");
            lines.AddRange(Row(picture, row, options));
            if (!picture.SaysLaying) continue;
            lines.Add("");
            lines.AddRange(Laying(picture, row, options));
        }

        lines.Add("");
        foreach (var never in picture.Never) lines.AddRange(Wrapped($"! {TextRules.Harmless(never)}.", options));
        foreach (var caution in Core.Yard.Cautions.ForWall(picture.Steel)) lines.AddRange(Wrapped("! " + caution, options));
        lines.AddRange(Wrapped(Core.Yard.Cautions.Closing, options));
        return string.Concat(lines.Select(line => (options.Ascii ? Plain(line) : line).TrimEnd() + "\n"));
    }

    /// <summary>One row: its title, the drawing in as many parts as the width asks for, a rule below each.</summary>
    public static IReadOnlyList<string> Row(WallPicture picture, WallRow row, ElevationOptions options)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(options.Width, ElevationOptions.LeastWidth);
        var drawn = DrawnRow.Of(picture, row, options.Unit, options.CodeText);
        var lines = Wrapped(drawn.Title, options).ToList();
        if (drawn.Blank) return [.. lines, "nothing to lay"];
        var margin = drawn.Courses.Max(course => course.Number.ToString(System.Globalization.CultureInfo.InvariantCulture).Length) + 2;
        var cells = options.Width - margin - 1;
        var parts = Parts(drawn, cells);
        for (var part = 0; part < parts.Count; part++)
        {
            if (parts.Count > 1) lines.Add($"part {part + 1} of {parts.Count}, from the left: {drawn.Place(parts[part].From)} to {drawn.Place(parts[part].To)}");
            lines.AddRange(new ElevationCanvas(drawn, parts[part].From, parts[part].To, cells, margin, options).Lines());
        }

        return lines;
    }

    /// <summary>What is laid in each course of a row, from the bottom up and from left to right as it is seen.</summary>
    public static IReadOnlyList<string> Laying(WallPicture picture, WallRow row, ElevationOptions options)
    {
        var drawn = DrawnRow.Of(picture, row, options.Unit, options.CodeText);
        return [.. LayingLines(drawn).SelectMany(line => Wrapped(line, options, indent: 4))];
    }

    /// <summary>The same, a line a course.</summary>
    internal static IEnumerable<string> LayingLines(DrawnRow drawn)
    {
        foreach (var course in drawn.Courses)
        {
            var laid = drawn.Row.StartAtRight ? course.Laid.Reverse() : course.Laid;
            var said = course.Laid.Count > 0
                ? string.Join(", ", laid.Select(piece => piece.Text))
                : course.Patches.Select(patch => patch.Kind).FirstOrDefault(kind => kind is PatchKind.Unfilled or PatchKind.Empty, PatchKind.Gap) switch
                {
                    PatchKind.Unfilled => "nothing",
                    PatchKind.Empty => "not planned yet",
                    _ => "nothing to lay",
                };
            var reason = course.Reason is { } why ? $"; unfilled: {TextRules.Harmless(why)}" : "";
            yield return $"course {course.Number}{(course.Stacked ? ", stacked" : course.Cut ? ", cut, waits to be stacked" : "")}: {said}{reason}";
        }
    }

    /// <summary>What the characters mean.</summary>
    public static IReadOnlyList<string> Legend(ElevationOptions options)
    {
        var signs = Signs.Of(options.Ascii);
        return
        [
            .. Wrapped($"N and blank: new; S and {signs.Salvaged}{signs.Salvaged}: from the yard; number and letter as on the cut sheet, none where the course stands. {signs.Joint} joint or end, {signs.Opening}{signs.Opening} opening, {signs.Gap}{signs.Gap} core of a leg that meets this one, ?? unfilled, {signs.Empty}{signs.Empty} not planned yet.", options),
            .. Wrapped($"Below each course: {signs.Tie} tie (a stake at a footing), {signs.TieOnJoint} one on a joint, * extra tie for a joint of either row, ^ cleat, ~~ cut to height there. After a course's number s: it is stacked, c: all of it is cut and waits for that. The rule is measured from the leg's start on its outside face where the title says nothing else.", options),
        ];
    }

    // Parts of the same length, from the left as the row is seen.
    private static List<(Length From, Length To)> Parts(DrawnRow drawn, int cells)
    {
        var (whole, most) = ((drawn.To - drawn.From).Units, MostAColumn.Units * cells);
        var count = (whole + most - 1) / most;
        var parts = Enumerable.Range(0, (int)count).Select(i => (
            From: drawn.From + Length.FromUnits(whole * i / count),
            To: drawn.From + Length.FromUnits(whole * (i + 1) / count))).ToList();
        if (drawn.Row.StartAtRight) parts.Reverse();
        return parts;
    }

    private static IEnumerable<string> Wrapped(string text, ElevationOptions options, int indent = 0)
    {
        var lines = TextColumns.Wrap(text, options.Width - indent);
        return lines.Select((line, i) => i == 0 ? line : new string(' ', indent) + line);
    }

    private static string Plain(string line) => line.All(char.IsAscii) ? line : string.Concat(line.EnumerateRunes().Select(rune => rune.IsAscii ? rune.ToString() : new string('?', TextColumns.Width(rune.ToString()))));
}

/// <summary>The characters of an elevation.</summary>
internal sealed record Signs(char Joint, char Salvaged, char Opening, char Gap, char Empty, char Tie, char TieOnJoint)
{
    private static readonly Signs Ascii = new('|', ':', '/', '#', '-', '.', '+');
    private static readonly Signs Lines = new('│', '░', '╱', '█', '─', '·', '┴');

    public static Signs Of(bool ascii) => ascii ? Ascii : Lines;
}
