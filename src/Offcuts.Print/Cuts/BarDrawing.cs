using Offcuts.Core.Measures;
using PdfSharp.Drawing;

namespace Offcuts.Print;

/// <summary>
/// Draws a piece's bar on paper, to scale, told apart without colour: cuts white with their letter, what the saw takes black, bad
/// spots crossed, trims ruled upright, scrap grey, kept remainders with a heavy frame, what is left as it is with a broken one.
/// </summary>
internal static class BarDrawing
{
    public const double Height = 20;

    private const double LetterSize = 8;

    // A kerf is 0.2 pt or so at this scale: drawn no thinner than this, or it would pass for a frame.
    private const double LeastKerf = 1.6;

    public static void Draw(XGraphics graphics, PieceBar bar, IReadOnlyList<StretchRow> rows, double x, double y, double perUnit)
    {
        var row = 0;
        foreach (var stretch in bar.Stretches)
        {
            var (left, width) = (x + stretch.Start.Units * perUnit, stretch.Length.Units * perUnit);
            var box = new XRect(left, y, width, Height);
            switch (stretch.Kind)
            {
                case StretchKind.Kerf:
                    graphics.DrawRectangle(XBrushes.Black, left, y, Math.Max(width, LeastKerf), Height);
                    continue;
                case StretchKind.Bad:
                    Cross(graphics, box);
                    break;
                case StretchKind.Trim:
                    for (var at = left + 2; at < left + width; at += 2) graphics.DrawLine(Pen(0.3), at, y, at, y + Height);
                    break;
                case StretchKind.Scrap:
                    graphics.DrawRectangle(new XSolidBrush(XColor.FromGrayScale(0.8)), box);
                    break;
                default:
                    break;
            }

            var pen = stretch.Kind switch
            {
                StretchKind.Kept => Pen(1.6),
                StretchKind.Untouched => new XPen(XColors.Black, 0.6) { DashStyle = XDashStyle.Dash },
                _ => Pen(0.6),
            };
            graphics.DrawRectangle(pen, box);
            Caption(graphics, stretch, rows[row++], box);
        }
    }

    private static void Caption(XGraphics graphics, Stretch stretch, StretchRow row, XRect box)
    {
        string[] captions = stretch.Kind switch
        {
            StretchKind.Cut => [$"{row.Sign}  {row.Length}", row.Sign],
            StretchKind.Kept => [$"keep {row.Length}", "keep"],
            StretchKind.Scrap => ["scrap"],
            StretchKind.Untouched => [$"leave {row.Length}", "leave"],
            _ => [],
        };
        foreach (var caption in captions.Select(Lettering.Printable))
        {
            var width = Lettering.Width(caption, LetterSize, bold: true);
            if (width > box.Width - 3) continue;
            graphics.DrawString(
                caption, Lettering.Font(LetterSize, bold: true), XBrushes.Black,
                box.X + (box.Width - width) / 2, box.Y + (Height + LetterSize * 0.73) / 2);
            return;
        }
    }

    // Slanting lines, each cut off where the box ends.
    private static void Cross(XGraphics graphics, XRect box)
    {
        for (var at = 4 - box.Height; at < box.Width; at += 4)
        {
            var (from, to) = (Math.Max(0, at), Math.Min(box.Width, at + box.Height));
            graphics.DrawLine(Pen(0.3), box.X + from, box.Y + from - at, box.X + to, box.Y + to - at);
            graphics.DrawLine(Pen(0.3), box.X + from, box.Bottom - (from - at), box.X + to, box.Bottom - (to - at));
        }
    }

    private static XPen Pen(double width) => new(XColors.Black, width);
}
