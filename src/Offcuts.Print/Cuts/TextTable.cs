using System.Text;

namespace Offcuts.Print;

/// <summary>A column of a text table.</summary>
/// <param name="Head">Its heading.</param>
/// <param name="Width">Its columns on the terminal.</param>
/// <param name="Right">Whether it is set to the right.</param>
internal sealed record TextColumn(string Head, int Width, bool Right = false);

/// <summary>Rows under headings; a cell that is too wide goes on below in its own column, so that nothing is lost and no column moves.</summary>
internal sealed class TextTable(int indent, params TextColumn[] columns)
{
    private const int Gap = 2;

    public string Head() => Line([.. columns.Select(column => column.Head)]);

    public IEnumerable<string> Row(params string[] cells)
    {
        var wrapped = cells.Select((cell, i) => TextColumns.Wrap(cell, columns[i].Width)).ToArray();
        for (var line = 0; line < wrapped.Max(lines => lines.Count); line++)
            yield return Line([.. wrapped.Select(lines => line < lines.Count ? lines[line] : "")]);
    }

    private string Line(string[] cells)
    {
        var line = new StringBuilder(new string(' ', indent));
        for (var i = 0; i < cells.Length; i++)
        {
            if (i > 0) line.Append(' ', Gap);
            line.Append(columns[i].Right ? TextColumns.FillLeft(cells[i], columns[i].Width) : TextColumns.Fill(cells[i], columns[i].Width));
        }

        return line.ToString().TrimEnd();
    }
}
