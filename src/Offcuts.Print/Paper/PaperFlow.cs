using PdfSharp.Drawing;

namespace Offcuts.Print;

/// <summary>A column of a table on paper.</summary>
/// <param name="Head">Its heading.</param>
/// <param name="Width">Its width in points, the gap to the next column included.</param>
/// <param name="Right">Whether it is set to the right.</param>
internal sealed record PaperColumn(string Head, double Width, bool Right = false);

/// <summary>Text and drawings set one below the other, on as many pages as they take. All measures in points.</summary>
internal sealed class PaperFlow : IDisposable
{
    public const double Margin = 43;

    private const double Foot = 24;
    private const double CellGap = 6;

    private readonly PaperFile _paper;
    private readonly double _pageWidth;
    private readonly double _pageHeight;
    private XGraphics _graphics;
    private (IReadOnlyList<PaperColumn> Columns, double Size, double Indent, int Page)? _heads;

    public PaperFlow(PaperFile paper, double pageWidth, double pageHeight)
    {
        (_paper, _pageWidth, _pageHeight) = (paper, pageWidth, pageHeight);
        _graphics = paper.AddPage(pageWidth, pageHeight);
        Y = Margin;
    }

    /// <summary>Where the next line begins, from the top of the page.</summary>
    public double Y { get; private set; }

    /// <summary>Width between the margins.</summary>
    public double Width => _pageWidth - 2 * Margin;

    /// <summary>Height between the margins, the line at the foot left out.</summary>
    public double PageHeight => Bottom - Margin;

    public XGraphics Graphics => _graphics;

    private double Bottom => _pageHeight - Margin - Foot;

    /// <summary>Begins a new page where less than so much is left; nothing higher than a page is ever kept together.</summary>
    public void Need(double height)
    {
        if (Y + Math.Min(height, Bottom - Margin) > Bottom) NewPage();
    }

    public void Space(double height) => Y += height;

    /// <summary>A text in as many lines as it takes.</summary>
    public void Paragraph(string text, double size, bool bold = false, double indent = 0)
    {
        foreach (var line in Lettering.Wrap(Lettering.Printable(text), size, bold, Width - indent))
        {
            Need(size * Lettering.LineHeight);
            _graphics.DrawString(line, Lettering.Font(size, bold), XBrushes.Black, Margin + indent, Y + size * Lettering.Ascent);
            Y += size * Lettering.LineHeight;
        }
    }

    /// <summary>The headings of a table; its rows set them again on each page that they go on to.</summary>
    public void Heads(IReadOnlyList<PaperColumn> columns, double size, double indent = 0)
    {
        _heads = null;
        Row(columns, [.. columns.Select(column => column.Head)], size, indent, bold: true);
        _graphics.DrawLine(new XPen(XColors.Black, 0.4), Margin + indent, Y, Margin + indent + columns.Sum(column => column.Width) - CellGap, Y);
        Y += 1.5;
        _heads = (columns, size, indent, _paper.Pages);
    }

    /// <summary>A row of cells; one that is too wide goes on below in its own column.</summary>
    public void Row(IReadOnlyList<PaperColumn> columns, IReadOnlyList<string> cells, double size, double indent = 0, bool bold = false)
    {
        var wrapped = cells.Select((cell, i) => Lettering.Wrap(Lettering.Printable(cell), size, bold, columns[i].Width - CellGap)).ToArray();
        var high = wrapped.Max(lines => lines.Count);
        Need(high * size * Lettering.LineHeight);
        if (_heads is { } heads && ReferenceEquals(heads.Columns, columns) && heads.Page != _paper.Pages) Heads(heads.Columns, heads.Size, heads.Indent);
        for (var line = 0; line < high; line++)
        {
            Need(size * Lettering.LineHeight);
            var x = Margin + indent;
            for (var i = 0; i < columns.Count; i++)
            {
                if (line < wrapped[i].Count && wrapped[i][line].Length > 0) DrawCell(wrapped[i][line], columns[i], x, size, bold);
                x += columns[i].Width;
            }

            Y += size * Lettering.LineHeight;
        }
    }

    /// <summary>Ends the pages: a line at the foot of each, with its number.</summary>
    public void Finish(string foot)
    {
        _graphics.Dispose();
        const double size = 7.5;
        for (var page = 1; page <= _paper.Pages; page++)
        {
            using var graphics = _paper.Again(page);
            var number = $"page {page} of {_paper.Pages}";
            var y = _pageHeight - Margin;
            var right = Lettering.Width(number, size, bold: false);
            graphics.DrawString(Lettering.Cut(Lettering.Printable(foot), size, bold: false, Width - right - 20), Lettering.Font(size, bold: false), XBrushes.Black, Margin, y);
            graphics.DrawString(number, Lettering.Font(size, bold: false), XBrushes.Black, _pageWidth - Margin - right, y);
        }
    }

    public void Dispose() => _graphics.Dispose();

    private void DrawCell(string text, PaperColumn column, double x, double size, bool bold)
    {
        var left = column.Right ? x + column.Width - CellGap - Lettering.Width(text, size, bold) : x;
        _graphics.DrawString(text, Lettering.Font(size, bold), XBrushes.Black, left, Y + size * Lettering.Ascent);
    }

    private void NewPage()
    {
        _graphics.Dispose();
        _graphics = _paper.AddPage(_pageWidth, _pageHeight);
        Y = Margin;
    }
}
