using System.Globalization;
using Offcuts.Core.Measures;

namespace Offcuts.Print;

/// <summary>A part of a row in characters: two lines a course, pieces above and ties below, and a rule under all.</summary>
internal sealed class ElevationCanvas(DrawnRow row, Length from, Length to, int cells, int margin, ElevationOptions options)
{
    private const int LeastBetweenFigures = 9;

    private readonly Signs _signs = Signs.Of(options.Ascii);

    public IEnumerable<string> Lines()
    {
        foreach (var course in row.Courses.Reverse())
        {
            var number = course.Number.ToString(CultureInfo.InvariantCulture).PadLeft(margin - 2) + (course.Stacked ? "s " : course.Cut ? "c " : "  ");
            yield return (number + Pieces(course)).TrimEnd();
            yield return (new string(' ', margin) + Ties(course)).TrimEnd();
        }

        yield return (new string(' ', margin) + Rule()).TrimEnd();
    }

    private string Pieces(DrawnCourse course)
    {
        var line = new string[cells + 1];
        Array.Fill(line, " ");
        var seen = course.Patches.Where(patch => patch.To > from && patch.From < to).ToArray();
        foreach (var patch in seen)
        {
            var (left, right) = Ends(patch);
            for (var cell = left + 1; cell < right; cell++) line[cell] = Fill(patch.Kind).ToString();
            Write(line, patch, left + 1, right - left - 1);
        }

        foreach (var patch in seen)
        {
            if (patch.From >= from) line[Column(patch.From)] = _signs.Joint.ToString();
            if (patch.To <= to) line[Column(patch.To)] = _signs.Joint.ToString();
        }

        return string.Concat(line);
    }

    private char Fill(PatchKind kind) => kind switch
    {
        PatchKind.Salvaged => _signs.Salvaged,
        PatchKind.Opening => _signs.Opening,
        PatchKind.Gap => _signs.Gap,
        PatchKind.Empty => _signs.Empty,
        PatchKind.Unfilled => '?',
        _ => ' ',
    };

    // A letter that takes two columns stands in the first of them, and the second is left empty.
    private static void Write(string[] line, Patch patch, int start, int room)
    {
        if (patch.Labels.FirstOrDefault(label => TextColumns.Width(label) <= room) is not { } label)
        {
            if (patch.Kind != PatchKind.Opening || room < 2 || patch.Labels.Count == 0) return;
            label = TextColumns.Cut(patch.Labels[0], room);
        }

        var wide = TextColumns.Width(label);
        if (wide + 2 <= room) (label, wide) = ($" {label} ", wide + 2);
        var at = start + (room - wide) / 2;
        var letters = StringInfo.GetTextElementEnumerator(label);
        while (letters.MoveNext())
        {
            var letter = letters.GetTextElement();
            var columns = TextColumns.Width(letter);
            if (columns == 0) continue;
            line[at] = letter;
            for (var rest = 1; rest < columns; rest++) line[at + rest] = "";
            at += columns;
        }
    }

    private string Ties(DrawnCourse course)
    {
        var line = new char[cells + 1];
        Array.Fill(line, ' ');
        foreach (var notch in course.Notches.Where(notch => notch.Where.End > from && notch.Where.Start < to))
        {
            var (a, b) = (Column(Length.Max(from, notch.Where.Start)), Column(Length.Min(to, notch.Where.End)));
            line.AsSpan(Math.Min(a, b)..(Math.Max(a, b) + 1)).Fill('~');
        }

        // What is rarer is drawn last, so that it is never hidden.
        foreach (var tie in course.Ties.Where(tie => tie.At >= from && tie.At <= to).OrderBy(tie => tie.Kind))
            line[Column(tie.At)] = tie.Kind switch
            {
                TieKind.Regular => _signs.Tie,
                TieKind.OnJoint => _signs.TieOnJoint,
                TieKind.Extra => '*',
                _ => '^',
            };
        return new string(line);
    }

    private string Rule()
    {
        var line = new char[cells + 1];
        Array.Fill(line, ' ');
        var step = Step();
        var taken = new List<(int From, int To)>();
        for (var at = row.Row.LegStart; at <= to; at += step)
        {
            if (at < from) continue;
            var text = (at - row.Row.LegStart).ToText(options.Unit);
            var start = Math.Clamp(Column(at) - (row.Row.StartAtRight ? text.Length - 1 : 0), 0, line.Length - text.Length);
            if (taken.Any(one => start <= one.To + 1 && start + text.Length >= one.From)) continue;
            taken.Add((start, start + text.Length));
            text.CopyTo(line.AsSpan(start));
        }

        return new string(line);
    }

    // The least round step whose figures have room.
    private Length Step()
    {
        Length[] steps = options.Unit == LengthUnit.Inch
            ? [Length.Feet(1), Length.Feet(2), Length.Feet(4), Length.Feet(8)]
            : [Length.Millimetres(250), Length.Millimetres(500), Length.Millimetres(1000), Length.Millimetres(2000)];
        foreach (var step in steps)
            if (step.Units * cells / (to - from).Units >= LeastBetweenFigures) return step;
        return steps[^1];
    }

    private (int Left, int Right) Ends(Patch patch)
    {
        var (a, b) = (patch.From < from ? Beyond(-1) : Column(patch.From), patch.To > to ? Beyond(1) : Column(patch.To));
        return (Math.Min(a, b), Math.Max(a, b));
    }

    // A piece that goes on in another part fills up to the edge, and no joint is drawn there.
    private int Beyond(int side) => side < 0 != row.Row.StartAtRight ? -1 : cells + 1;

    private int Column(Length at)
    {
        var column = (int)((2 * (at - from).Units * cells + (to - from).Units) / (2 * (to - from).Units));
        return row.Row.StartAtRight ? cells - column : column;
    }
}
