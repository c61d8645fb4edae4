using Offcuts.Commands;

namespace Offcuts.Tests.Commands;

/// <summary>On a terminal no word is torn at its edge; a file or another program gets each line whole.</summary>
public sealed class TerminalLinesTests : IDisposable
{
    private readonly TryYard _yard = new();

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void A_line_that_fits_stays_as_it_is() =>
        TerminalLines.Of("  2x4   8'   sound", 40).Should().Equal("  2x4   8'   sound");

    [Fact]
    public void What_goes_on_stands_set_in_below_its_line() =>
        TerminalLines.Of("  Pull every nail before stacking. Stack on level, solid sills.", 40).Should().Equal(
            "  Pull every nail before stacking.",
            "    Stack on level, solid sills.");

    [Fact]
    public void Behind_a_first_column_it_goes_on_in_the_second() =>
        TerminalLines.Of("in 21 days     shed roof: 42 of 48 still to make, all of it planned", 40).Should().Equal(
            "in 21 days     shed roof: 42 of 48 still",
            "               to make, all of it",
            "               planned");

    [Fact]
    public void A_word_wider_than_the_window_is_all_that_is_ever_torn() =>
        TerminalLines.Of("wrote " + new string('a', 50), 40).Should().Equal("wrote", "  " + new string('a', 38), "  " + new string('a', 12));

    [Fact]
    public void A_command_breaks_its_lines_on_a_terminal_alone_and_says_the_same()
    {
        var piped = _yard.Must("cautions").Out;

        var read = OnTerminal("cautions");

        piped.Split('\n').Should().Contain(line => line.Length > 80);
        read.Split('\n').Should().OnlyContain(line => line.Length <= 80);
        Words(read).Should().Equal(Words(piped));
    }

    [Fact]
    public void A_sheet_that_is_read_back_is_never_broken()
    {
        var note = "note             " + string.Join(' ', Enumerable.Repeat("supplier", 12));
        var file = Path.Combine(_yard.Folder, "ours.txt");
        File.WriteAllText(file, _yard.Must("system", "show").Out.Replace("generic, invented", "ours", StringComparison.Ordinal) + note + "\n");
        _yard.Must("system", "import", file);

        OnTerminal("system", "show", "ours").Split('\n').Should().Contain(note);
    }

    private string OnTerminal(params string[] arguments)
    {
        var output = new StringWriter { NewLine = "\n" };
        var world = _yard.World(output, TextWriter.Null) with { OutIsTerminal = true, Width = 80 };
        CommandLine.Run([.. arguments, "--yard", _yard.YardPath], world, (_, _) => throw new InvalidOperationException("no screen here")).Should().Be(0);
        return output.ToString();
    }

    private static string[] Words(string text) => text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries);
}
