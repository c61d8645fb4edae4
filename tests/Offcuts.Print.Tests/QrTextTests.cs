namespace Offcuts.Print.Tests;

public sealed class QrTextTests
{
    private static readonly Core.Yard.Code Code = Invented.Code("C99MFXY");

    [Fact]
    public void Half_blocks_turned_back_into_a_picture_read()
    {
        var dark = QrText.HalfBlocks(Code)
            .SelectMany(line => new[] { line.Select(c => c is '█' or '▀').ToArray(), [.. line.Select(c => c is '█' or '▄')] })
            .ToArray();

        Picture.OfModules(dark, 5).Read().Should().Be("OFFCUTS:C99MFXY");
    }

    [Fact]
    public void Half_blocks_are_fifteen_lines_of_twenty_nine_with_a_quiet_zone_of_four_modules()
    {
        var lines = QrText.HalfBlocks(Code);

        lines.Should().HaveCount(15).And.OnlyContain(line => line.Length == 29);
        lines.Take(2).Concat(lines.TakeLast(2)).Should().OnlyContain(line => line.Trim().Length == 0, "two lines are four modules");
        lines.Should().OnlyContain(line => line.StartsWith("    ") && line.EndsWith("    "));
        lines[2][4..11].Should().Be("█▀▀▀▀▀█", "the finder begins after the quiet zone");
    }

    [Fact]
    public void The_coloured_form_brings_black_on_white_and_ends_it_on_each_line()
    {
        var plain = QrText.HalfBlocks(Code);

        QrText.ColouredHalfBlocks(Code).Should().Equal(plain.Select(line => $"\u001b[38;5;16;48;5;231m{line}\u001b[0m"));
    }

    [Fact]
    public void The_ascii_form_turned_back_into_a_picture_reads()
    {
        var lines = QrText.Ascii(Code);

        lines.Should().HaveCount(29).And.OnlyContain(line => line.Length == 58 && line.All(c => c == ' ' || c == '#'));
        var dark = lines.Select(line => Enumerable.Range(0, 29).Select(i => line[2 * i] == '#').ToArray()).ToArray();
        Picture.OfModules(dark, 5).Read().Should().Be("OFFCUTS:C99MFXY");
    }

    [Fact]
    public void The_coloured_ascii_form_paints_the_same_modules_with_blanks()
    {
        var painted = QrText.ColouredAscii(Code).Select(Painted).ToArray();

        painted.Should().OnlyContain(line => line.Length == 58);
        painted.Should().Equal(QrText.Ascii(Code));
    }

    // What a terminal would show: '#' where the ground is black.
    private static string Painted(string line)
    {
        var shown = "";
        var black = false;
        for (var i = 0; i < line.Length; i++)
        {
            if (line[i] != '\u001b')
            {
                line[i].Should().Be(' ');
                shown += black ? '#' : ' ';
                continue;
            }

            var end = line.IndexOf('m', i);
            black = line[i..(end + 1)] == "\u001b[48;5;16m";
            i = end;
        }

        return shown;
    }
}
