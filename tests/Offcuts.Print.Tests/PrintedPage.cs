using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Core;

namespace Offcuts.Print.Tests;

/// <summary>A line of print read back: its text and the box its letters fill, in points from the page's top left corner.</summary>
internal sealed record PrintedLine(string Text, double Left, double Top, double Right, double Bottom, double Baseline, double Size)
{
    public bool Overlaps(PrintedLine other) =>
        Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;
}

/// <summary>A page of a PDF read back by an independent reader.</summary>
internal sealed class PrintedPage
{
    private PrintedPage(Page page)
    {
        (Width, Height) = (page.Width, page.Height);
        Lines = [.. page.Letters
            .GroupBy(letter => letter.TextSequence)
            .Select(group => Line([.. group], page.Height))
            .Where(line => line.Text.Trim().Length > 0)];
        Blocks = [.. page.Paths.Where(path => path.IsFilled).SelectMany(path => path.Select(subpath => Flip(subpath.GetBoundingRectangle()!.Value, page.Height)))];
        FilledPaths = page.Paths.Count(path => path.IsFilled);
    }

    public double Width { get; }

    public double Height { get; }

    /// <summary>One entry for each text as it was set.</summary>
    public IReadOnlyList<PrintedLine> Lines { get; }

    /// <summary>Filled rectangles.</summary>
    public IReadOnlyList<(double Left, double Top, double Right, double Bottom)> Blocks { get; }

    public int FilledPaths { get; }

    public string Text => string.Join("\n", Lines.Select(line => line.Text));

    public static IReadOnlyList<PrintedPage> Of(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        return [.. document.GetPages().Select(page => new PrintedPage(page))];
    }

    private static PrintedLine Line(Letter[] letters, double height)
    {
        var inked = letters.Where(letter => letter.Value.Trim().Length > 0).Select(letter => Flip(letter.BoundingBox, height)).ToArray();
        if (inked.Length == 0) return new PrintedLine("", 0, 0, 0, 0, 0, 0);
        return new PrintedLine(
            string.Concat(letters.Select(letter => letter.Value)),
            inked.Min(box => box.Left), inked.Min(box => box.Top), inked.Max(box => box.Right), inked.Max(box => box.Bottom),
            height - letters[0].StartBaseLine.Y, letters[0].PointSize);
    }

    private static (double Left, double Top, double Right, double Bottom) Flip(PdfRectangle box, double height) =>
        (box.Left, height - box.Top, box.Right, height - box.Bottom);
}
