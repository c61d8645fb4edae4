using System.Globalization;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using PdfSharp.Drawing;

namespace Offcuts.Print;

/// <summary>
/// A page that proves a printer: rules across and down, to be held against a real one, and the outlines of all labels of a layout, to be
/// held against a sheet of them before a window.
/// </summary>
public static class RulerPage
{
    private static readonly XPen Thin = new(XColors.Black, 0.3);

    /// <summary>The page as a PDF. The same call gives the same bytes.</summary>
    /// <param name="layout">Whose paper and labels.</param>
    /// <param name="printed">The day of the print.</param>
    /// <param name="offset">What the printer is corrected by already; nothing where left out.</param>
    public static byte[] Pdf(LabelLayout layout, DateOnly printed, PrinterOffset? offset = null)
    {
        using var paper = new PaperFile("Offcuts ruler page", printed);
        using (var graphics = paper.AddPage(PaperFile.Points(layout.PageWidth), PaperFile.Points(layout.PageHeight)))
        {
            LabelSheet.Move(graphics, offset);
            for (var i = 0; i < layout.PerPage; i++)
            {
                var place = layout.PlaceOf(i);
                graphics.DrawRectangle(Thin, PaperFile.Points(place.X), PaperFile.Points(place.Y), PaperFile.Points(place.Width), PaperFile.Points(place.Height));
            }

            Rules(graphics, layout);
        }

        return paper.ToBytes();
    }

    /// <summary>How long the rule across is: whole centimetres within the page.</summary>
    public static int AcrossMillimetres(LabelLayout layout) => Whole(layout.PageWidth);

    /// <summary>How long the rule down is, as the other one.</summary>
    public static int DownMillimetres(LabelLayout layout) => Whole(layout.PageHeight);

    // Ten millimetres stay free on each side: few printers print up to the edge.
    private static int Whole(Length side) => Math.Max(10, ((int)side.InMillimetres - 20) / 10 * 10);

    private static void Rules(XGraphics graphics, LabelLayout layout)
    {
        var (across, down) = (AcrossMillimetres(layout), DownMillimetres(layout));
        var (x, y) = (Points(((double)layout.PageWidth.InMillimetres - across) / 2), Points(((double)layout.PageHeight.InMillimetres - down) / 2));
        var wide = layout.PageWidth >= Length.Millimetres(150);
        var (middleX, middleY) = (wide ? x + Points(15) : PaperFile.Points(layout.PageWidth) / 2, PaperFile.Points(layout.PageHeight) / 2);
        graphics.DrawLine(Thin, x, middleY, x + Points(across), middleY);
        graphics.DrawLine(Thin, middleX, y, middleX, y + Points(down));
        for (var at = 0; at <= across; at++) graphics.DrawLine(Thin, x + Points(at), middleY, x + Points(at), middleY - Tick(at));
        for (var at = 0; at <= down; at++) graphics.DrawLine(Thin, middleX, y + Points(at), middleX + Tick(at), y + Points(at));
        var font = Lettering.Font(LabelSetting.LeastSmall, bold: false);
        for (var at = 0; at <= across; at += 10) graphics.DrawString(Number(at), font, XBrushes.Black, x + Points(at) + 1, middleY + LabelSetting.LeastSmall);
        for (var at = 0; at <= down; at += 10) graphics.DrawString(Number(at), font, XBrushes.Black, middleX - 11, y + Points(at) - 1);
        if (!wide) return;
        string[] says =
        [
            $"This rule is {Number(across)} mm long from its first to its last line, the one down {Number(down)} mm. Lay a real one on them:",
            "where they differ, print at 100 %, without fitting to the page.",
            "Then hold this page and an empty sheet of labels before a window. Where all outlines lie off by the same, tell the printer's",
            $"name and what to move by: offcuts label printer NAME --right 1.5mm --down=-1mm     ({layout.Name})",
        ];
        var words = Lettering.Font(LabelSetting.LeastSmall + 3, bold: false);
        for (var i = 0; i < says.Length; i++) graphics.DrawString(says[i], words, XBrushes.Black, middleX + 22, middleY + 22 + i * 11);
    }

    private static double Tick(int millimetre) => millimetre % 10 == 0 ? 10 : millimetre % 5 == 0 ? 7 : 4;

    private static double Points(double millimetres) => millimetres * 72 / 25.4;

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
