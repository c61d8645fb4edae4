using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using PdfSharp.Drawing;

namespace Offcuts.Print;

/// <summary>Labels on paper: a PDF that is true to size when printed at 100 %.</summary>
public static class LabelSheet
{
    /// <summary>A PDF of these labels, in order, on as many pages as they take. The same call gives the same bytes.</summary>
    /// <param name="layout">Where they go.</param>
    /// <param name="labels">What they say; refused where there are none.</param>
    /// <param name="printed">The day of the print.</param>
    /// <param name="startAt">The first place of a part-used sheet that is free, from 1; refused outside the sheet.</param>
    /// <param name="offset">What the printer must be corrected by; nothing where left out.</param>
    public static Result<byte[]> Pdf(LabelLayout layout, IReadOnlyList<LabelContent> labels, DateOnly printed, int startAt = 1, PrinterOffset? offset = null)
    {
        if (labels.Count == 0) return PrintFaults.NothingToPrint();
        if (startAt < 1 || startAt > layout.PerPage) return PrintFaults.StartOutsideSheet(startAt, layout.PerPage);

        using var paper = new PaperFile("Offcuts labels", printed);
        var pages = layout.PagesFor(labels.Count, startAt);
        for (var page = 0; page < pages; page++)
        {
            using var graphics = paper.AddPage(PaperFile.Points(layout.PageWidth), PaperFile.Points(layout.PageHeight));
            Move(graphics, offset);
            for (var place = 0; place < layout.PerPage; place++)
            {
                var label = page * layout.PerPage + place - (startAt - 1);
                if (label >= 0 && label < labels.Count) Draw(graphics, layout, layout.PlaceOf(place), labels[label]);
            }

            DrawFoot(graphics, layout, page + 1, pages);
        }

        return paper.ToBytes();
    }

    /// <summary>Moves all that is drawn from here on by what a printer is off by.</summary>
    internal static void Move(XGraphics graphics, PrinterOffset? offset)
    {
        if (offset is { } off && (off.RightUnits, off.DownUnits) != (0, 0))
            graphics.TranslateTransform(off.RightUnits * 72.0 / Length.PerInch, off.DownUnits * 72.0 / Length.PerInch);
    }

    private static void Draw(XGraphics graphics, LabelLayout layout, LabelPlace place, LabelContent label)
    {
        var (qrX, qrY) = LabelSetting.QrCorner(layout);
        DrawSymbol(graphics, QrSymbol.Of(label.Code), place.X + qrX, place.Y + qrY, layout.Module);

        var (left, top) = (PaperFile.Points(place.X), PaperFile.Points(place.Y));
        if (!layout.Pin.IsZero) DrawPin(graphics, layout, left, top);
        var setting = LabelSetting.Of(layout, label);
        foreach (var line in setting.Lines)
            graphics.DrawString(line.Text, Lettering.Font(line.Size, line.Bold), XBrushes.Black, left + line.X, top + line.Baseline);
        foreach (var line in setting.WriteLines)
        {
            graphics.DrawLine(new XPen(XColors.Black, 0.5), left + line.X, top + line.Y, left + line.X + line.Width, top + line.Y);
            graphics.DrawString(
                line.Caption, Lettering.Font(LabelSetting.LeastSmall, bold: false), XBrushes.Black,
                left + line.X, top + line.Y + LabelSetting.LeastSmall * Lettering.Ascent);
        }
    }

    // A ring and a cross where the pin goes through.
    private static void DrawPin(XGraphics graphics, LabelLayout layout, double left, double top)
    {
        var middle = PaperFile.Points(layout.Inset) + PaperFile.Points(layout.Pin) / 2;
        var (x, y) = layout.TextBeside ? (left + middle, top + PaperFile.Points(layout.LabelHeight) / 2) : (left + PaperFile.Points(layout.LabelWidth) / 2, top + middle);
        var pen = new XPen(XColors.Black, 0.5);
        var ring = Math.Min(6, PaperFile.Points(layout.Pin) / 3);
        graphics.DrawEllipse(pen, x - ring, y - ring, 2 * ring, 2 * ring);
        graphics.DrawLine(pen, x - ring / 2, y, x + ring / 2, y);
        graphics.DrawLine(pen, x, y - ring / 2, x, y + ring / 2);
    }

    // One path for the whole symbol: neighbouring rectangles that are filled one by one can show a hairline between them.
    private static void DrawSymbol(XGraphics graphics, QrSymbol symbol, Length x, Length y, Length module)
    {
        var path = new XGraphicsPath { FillMode = XFillMode.Winding };
        foreach (var block in symbol.Blocks())
        {
            path.AddRectangle(
                PaperFile.Points(x + module * (block.Column + QrSymbol.QuietZone)),
                PaperFile.Points(y + module * (block.Row + QrSymbol.QuietZone)),
                PaperFile.Points(module * block.Width),
                PaperFile.Points(module * block.Height));
        }

        graphics.DrawPath(XBrushes.Black, path);
    }

    // Where a sheet has a foot below its labels, a measured line tells whether the printer kept to size.
    private static void DrawFoot(XGraphics graphics, LabelLayout layout, int page, int pages)
    {
        var free = layout.PageHeight - layout.Top - layout.StepDown * (layout.Rows - 1) - layout.LabelHeight;
        if (free < Length.Millimetres(10) || layout.PageWidth < Length.Millimetres(150)) return;

        var x = PaperFile.Points(Length.Millimetres(15));
        var y = PaperFile.Points(layout.PageHeight) - PaperFile.Points(free) + 10;
        var ruler = PaperFile.Points(Length.Millimetres(50));
        var pen = new XPen(XColors.Black, 0.5);
        graphics.DrawLine(pen, x, y, x + ruler, y);
        graphics.DrawLine(pen, x, y - 2, x, y + 2);
        graphics.DrawLine(pen, x + ruler, y - 2, x + ruler, y + 2);
        graphics.DrawString(
            $"50 mm: if this line is not, print at 100 %, without fitting to the page.  {layout.Name}, page {page} of {pages}",
            Lettering.Font(LabelSetting.LeastSmall + 1, bold: false), XBrushes.Black, x + ruler + 6, y + 2);
    }
}
