using Offcuts.Core.Measures;
using PdfSharp.Drawing;

namespace Offcuts.Print;

/// <summary>
/// Draws a part of a row on paper, to one scale along and up, told apart without colour: new pieces white, those of the yard ruled
/// aslant, openings crossed, the core of a leg that meets this one black, unfilled stretches grey. Ties are short strokes at the
/// bottom of their course: a thick one under a joint, with a ring where it is an extra one.
/// </summary>
internal sealed class ElevationDrawing
{
    public const string Legend =
        "To scale. White with N: new. Ruled aslant with S: from the yard. Number and letter are those of the cut sheet; a course that stands has none. Crossed: opening. Black: core of a leg that meets this one. "
        + "Grey: unfilled. Dotted: not planned yet. Short strokes: ties, at a footing stakes; a thick one under a joint; a ring: an extra tie for a joint of either row; a square: a cleat. A broken line: an opening or its edge inside a course, cut to height there. "
        + "A black bar beside a course: it is stacked; a hollow one: all of it is cut and waits for that. The rule is measured from the leg's start on its outside face where the title says nothing else.";

    /// <summary>Room beside the drawing for the numbers of the courses.</summary>
    private const double Beside = 20;

    private const double RuleHeight = 14;
    private const double LeastAFoot = 11;
    private const double MostAFoot = 30;
    private const double LetterSize = 6.5;

    private readonly DrawnRow _row;
    private readonly Length _from;
    private readonly Length _to;
    private readonly double _perUnit;

    private ElevationDrawing(DrawnRow row, Length from, Length to, double perUnit) => (_row, _from, _to, _perUnit) = (row, from, to, perUnit);

    /// <summary>Where the part begins and ends, as it is written.</summary>
    public string Stretch => $"{_row.Place(_from)} to {_row.Place(_to)}";

    public double Height => _row.Height.Units * _perUnit + RuleHeight;

    /// <summary>The parts a row takes at a width and a height, from the left as it is seen; all to one scale.</summary>
    public static IReadOnlyList<ElevationDrawing> Parts(DrawnRow row, double width, double height)
    {
        if (row.Blank) return [];
        var (whole, room) = ((row.To - row.From).Units, width - Beside);
        var count = (int)Math.Ceiling(whole * LeastAFoot / Length.PerFoot / room);
        var perUnit = Math.Min(Math.Min(room * count / whole, MostAFoot / Length.PerFoot), (height - RuleHeight) / row.Height.Units);
        var parts = Enumerable.Range(0, count).Select(i => new ElevationDrawing(
            row, row.From + Length.FromUnits(whole * i / count), row.From + Length.FromUnits(whole * (i + 1) / count), perUnit));
        return row.Row.StartAtRight ? [.. parts.Reverse()] : [.. parts];
    }

    public void Draw(XGraphics graphics, double left, double top, LengthUnit unit)
    {
        var x = left + Beside;
        foreach (var course in _row.Courses) Course(graphics, course, x, top + (_row.Height - course.Bottom - course.Height).Units * _perUnit);
        foreach (var hole in _row.Row.Holes.Where(hole => hole.Where.End > _from && hole.Where.Start < _to)) Hole(graphics, hole, x, top);
        Rule(graphics, x, top + _row.Height.Units * _perUnit, unit);
    }

    private void Course(XGraphics graphics, DrawnCourse course, double x, double y)
    {
        var high = course.Height.Units * _perUnit;
        var number = course.Number.ToString(System.Globalization.CultureInfo.InvariantCulture);
        Write(graphics, number, x - 5 - Lettering.Width(number, LetterSize, bold: true), y + (high + LetterSize * 0.73) / 2, bold: true);
        if (course.Stacked) graphics.DrawRectangle(XBrushes.Black, x - Beside, y + 0.5, 3, high - 1);
        else if (course.Cut) graphics.DrawRectangle(new XPen(XColors.Black, 0.6), x - Beside + 0.3, y + 0.8, 2.4, high - 1.6);
        foreach (var patch in course.Patches.Where(patch => patch.To > _from && patch.From < _to))
        {
            var (start, end) = Ends(patch.From, patch.To);
            var box = new XRect(x + start, y, end - start, high);
            Fill(graphics, patch, box);
            Caption(graphics, patch, box);
        }

        foreach (var tie in course.Ties.Where(tie => tie.At >= _from && tie.At <= _to)) Tie(graphics, tie, x + Across(tie.At), y + high, high);
    }

    private static void Fill(XGraphics graphics, Patch patch, XRect box)
    {
        switch (patch.Kind)
        {
            case PatchKind.Opening:
                return;
            case PatchKind.Gap:
                graphics.DrawRectangle(XBrushes.Black, box);
                return;
            case PatchKind.Unfilled:
                graphics.DrawRectangle(new XPen(XColors.Black, 0.5), new XSolidBrush(XColor.FromGrayScale(0.75)), box);
                return;
            case PatchKind.Salvaged:
                Aslant(graphics, box);
                break;
        }

        var pen = new XPen(XColors.Black, 0.6);
        if (patch.Kind == PatchKind.Empty) pen.DashStyle = XDashStyle.Dot;
        graphics.DrawRectangle(pen, box);
    }

    // The longest label that has room, on white so that no ruling runs through it.
    private static void Caption(XGraphics graphics, Patch patch, XRect box)
    {
        if (patch.Kind is PatchKind.Opening) return;
        foreach (var label in patch.Labels.Select(Lettering.Printable))
        {
            var width = Lettering.Width(label, LetterSize, bold: false);
            if (width > box.Width - 3) continue;
            var (x, baseline) = (box.X + (box.Width - width) / 2, box.Y + (box.Height + LetterSize * 0.73) / 2 - 1);
            graphics.DrawRectangle(XBrushes.White, x - 1, baseline - LetterSize * 0.8, width + 2, LetterSize * 1.02);
            Write(graphics, label, x, baseline);
            return;
        }
    }

    private static void Tie(XGraphics graphics, DrawnTie tie, double x, double y, double high)
    {
        var tall = Math.Min(3.2, high / 4);
        switch (tie.Kind)
        {
            case TieKind.Regular:
                graphics.DrawLine(new XPen(XColors.Black, 0.4), x, y, x, y - tall);
                break;
            case TieKind.Cleat:
                graphics.DrawRectangle(XBrushes.Black, x - 1.6, y - 3.2, 3.2, 3.2);
                break;
            default:
                graphics.DrawLine(new XPen(XColors.Black, 1.8), x, y, x, y - tall);
                if (tie.Kind == TieKind.Extra) graphics.DrawEllipse(new XPen(XColors.Black, 0.7), XBrushes.White, x - 2, y - tall - 4, 4, 4);
                break;
        }
    }

    private void Hole(XGraphics graphics, WallHole hole, double x, double top)
    {
        var (start, end) = Ends(hole.Where.Start, hole.Where.End);
        var upper = Math.Min(hole.Top.Units, _row.Height.Units);
        var box = new XRect(x + start, top + (_row.Height.Units - upper) * _perUnit, end - start, (upper - hole.Bottom.Units) * _perUnit);
        var pen = new XPen(XColors.Black, 0.8) { DashStyle = XDashStyle.Dash };
        graphics.DrawRectangle(pen, XBrushes.White, box);
        graphics.DrawLine(new XPen(XColors.Black, 0.3), box.X, box.Y, box.Right, box.Bottom);
        graphics.DrawLine(new XPen(XColors.Black, 0.3), box.X, box.Bottom, box.Right, box.Y);
        var name = Lettering.Cut(Lettering.Printable(hole.Name), LetterSize, bold: true, box.Width - 4);
        var width = Lettering.Width(name, LetterSize, bold: true);
        if (name.Length == 0 || width > box.Width - 2) return;
        var (left, baseline) = (box.X + (box.Width - width) / 2, box.Y + (box.Height + LetterSize * 0.73) / 2);
        graphics.DrawRectangle(XBrushes.White, left - 1, baseline - LetterSize * 0.8, width + 2, LetterSize * 1.05);
        Write(graphics, name, left, baseline, bold: true);
    }

    private void Rule(XGraphics graphics, double x, double y, LengthUnit unit)
    {
        var pen = new XPen(XColors.Black, 0.4);
        var step = unit == LengthUnit.Inch ? Length.Feet(1) : Length.Millimetres(250);
        var marks = 0;
        var free = new List<(double From, double To)>();
        for (var at = _row.Row.LegStart; at <= _to; at += step, marks++)
        {
            if (at < _from) continue;
            var place = x + Across(at);
            graphics.DrawLine(pen, place, y + 1, place, y + (marks % 4 == 0 ? 5 : 3));
            if (marks % 4 != 0) continue;
            var text = (at - _row.Row.LegStart).ToText(unit);
            var width = Lettering.Width(text, LetterSize, bold: false);
            var start = place - width / 2;
            if (free.Any(one => start < one.To + 2 && start + width > one.From - 2)) continue;
            free.Add((start, start + width));
            Write(graphics, text, start, y + 5 + LetterSize);
        }
    }

    // Lines that go up to the right, each cut off where the box ends.
    private static void Aslant(XGraphics graphics, XRect box)
    {
        var pen = new XPen(XColors.Black, 0.25);
        for (var at = 3.5; at < box.Width + box.Height; at += 3.5)
        {
            var (from, to) = (Math.Max(0, at - box.Height), Math.Min(box.Width, at));
            graphics.DrawLine(pen, box.X + from, box.Y + at - from, box.X + to, box.Y + at - to);
        }
    }

    private (double Start, double End) Ends(Length from, Length to)
    {
        var (a, b) = (Across(Length.Max(from, _from)), Across(Length.Min(to, _to)));
        return (Math.Min(a, b), Math.Max(a, b));
    }

    private double Across(Length at) => (_row.Row.StartAtRight ? (_to - at).Units : (at - _from).Units) * _perUnit;

    private static void Write(XGraphics graphics, string text, double x, double baseline, bool bold = false) =>
        graphics.DrawString(text, Lettering.Font(LetterSize, bold), XBrushes.Black, x, baseline);
}
