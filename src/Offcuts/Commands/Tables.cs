using Offcuts.Core.Faults;
using Spectre.Console;

namespace Offcuts.Commands;

/// <summary>Columns on standard output: as wide as the terminal, or as the text where nobody reads along.</summary>
internal static class Tables
{
    private const int PipeWidth = 400;

    // No cell of ours is as long; one of a yard that somebody altered may be, and setting it in a column would take seconds.
    private const int LongestCell = 1000;

    /// <summary>Writes rows under headings. A heading that begins with <c>&gt;</c> sets its column to the right.</summary>
    public static void Write(Surroundings world, IReadOnlyList<string> headings, IEnumerable<IReadOnlyList<string>> rows)
    {
        var table = new Table { Border = TableBorder.None, ShowHeaders = headings.Any(heading => heading.Trim('>').Length > 0) };
        foreach (var heading in headings)
        {
            var right = heading.StartsWith('>');
            var column = new TableColumn(Markup.Escape(heading.TrimStart('>'))) { Alignment = right ? Justify.Right : Justify.Left };
            table.AddColumn(column.PadLeft(0).PadRight(2));
        }

        foreach (var row in rows) table.AddRow([.. row.Select(cell => Markup.Escape(TextRules.Harmless(cell.Length <= LongestCell ? cell : cell[..LongestCell] + "…")))]);
        Console(world).Write(table);
    }

    private static IAnsiConsole Console(Surroundings world)
    {
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new AnsiConsoleOutput(world.Out),
            Ansi = AnsiSupport.No,
            ColorSystem = ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
        });
        console.Profile.Width = world.OutIsTerminal ? world.Width : PipeWidth;
        return console;
    }
}
