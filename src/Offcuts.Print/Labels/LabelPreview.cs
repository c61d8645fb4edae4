using Offcuts.Core.Measures;

namespace Offcuts.Print;

/// <summary>A label as lines of text, to scale: a character is a module wide and two high, as the QR symbol's half blocks are.</summary>
public static class LabelPreview
{
    /// <summary>
    /// The label in a frame: its symbol where it will be, its words where they begin. Words that are narrower on paper than here end in
    /// <c>…</c>.
    /// </summary>
    /// <param name="layout">The layout.</param>
    /// <param name="content">What it says.</param>
    /// <param name="ascii">True for letters alone: <c>#</c> where the symbol is dark.</param>
    public static IReadOnlyList<string> Lines(LabelLayout layout, LabelContent content, bool ascii = false)
    {
        var module = PaperFile.Points(layout.Module);
        var (width, height) = ((int)Math.Round(PaperFile.Points(layout.LabelWidth) / module), (int)Math.Round(PaperFile.Points(layout.LabelHeight) / module / 2));
        var canvas = new char[height][];
        for (var row = 0; row < height; row++) canvas[row] = [.. Enumerable.Repeat(' ', width)];
        var setting = LabelSetting.Of(layout, content);
        foreach (var line in setting.WriteLines) Put(canvas, line.X / module, line.Y / module / 2, line.Caption.PadRight(Math.Max(0, (int)(line.Width / module)), '_'));
        foreach (var line in setting.Lines) Put(canvas, line.X / module, (line.Baseline - line.Size * 0.3) / module / 2, line.Text);
        var (qrX, qrY) = LabelSetting.QrCorner(layout);
        var (left, top) = ((int)Math.Round(PaperFile.Points(qrX) / module), (int)Math.Round(PaperFile.Points(qrY) / module / 2));
        var symbol = QrText.HalfBlocks(content.Code);
        for (var row = 0; row < symbol.Count; row++)
            if (top + row < height) for (var column = 0; column < symbol[row].Length && left + column < width; column++) canvas[top + row][left + column] = ascii && symbol[row][column] != ' ' ? '#' : symbol[row][column];
        var (corner, across, down) = ascii ? ("++++", '-', '|') : ("┌┐└┘", '─', '│');
        return
        [
            corner[0] + new string(across, width) + corner[1],
            .. canvas.Select(row => down + new string(row) + down),
            corner[2] + new string(across, width) + corner[3],
        ];
    }

    private static void Put(char[][] canvas, double x, double y, string text)
    {
        var (row, column) = ((int)y, (int)x);
        if (row < 0 || row >= canvas.Length) return;

        // Where another line stands on the row already, the next one is free more often than not.
        if (row + 1 < canvas.Length && canvas[row].Skip(column).Any(letter => letter != ' ')) row++;
        for (var i = 0; i < text.Length && column + i < canvas[row].Length; i++)
            canvas[row][column + i] = i + 1 < text.Length && column + i + 1 == canvas[row].Length ? '…' : text[i];
    }
}
