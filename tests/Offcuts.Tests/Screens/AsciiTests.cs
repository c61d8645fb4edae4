using Offcuts.Screens;

namespace Offcuts.Tests.Screens;

/// <summary>The screen where lines can't be drawn.</summary>
[Collection(OnScreen.Name)]
public sealed class AsciiTests
{
    [Theory]
    [InlineData("1", "C.UTF-8", true)]
    [InlineData("yes", "C.UTF-8", true)]
    [InlineData("0", "C", false)]
    [InlineData("no", "", false)]
    [InlineData("", "C.UTF-8", false)]
    [InlineData(null, "de_CH.utf8", false)]
    [InlineData(null, "de_CH.ISO-8859-1", true)]
    [InlineData(null, "C", true)]
    [InlineData(null, null, true)]
    public void What_is_said_decides_else_the_locale(string? said, string? language, bool ascii)
    {
        using var folder = new TryYard();
        folder.Set("OFFCUTS_ASCII", said);
        folder.Set("LANG", language);
        folder.World(TextWriter.Null, TextWriter.Null).Ascii.Should().Be(ascii);
    }

    [Fact]
    public void The_first_variable_of_the_locale_that_says_anything_decides()
    {
        using var folder = new TryYard();
        folder.Set("LC_CTYPE", "C");
        folder.World(TextWriter.Null, TextWriter.Null).Ascii.Should().BeTrue("LC_CTYPE comes before LANG");
        folder.Set("LC_ALL", "en_US.UTF-8");
        folder.World(TextWriter.Null, TextWriter.Null).Ascii.Should().BeFalse("LC_ALL comes before both");
    }

    [Theory]
    [InlineData("┴───┬✓ ✗ … ▸", "+---++ x ~ >")]
    [InlineData("naïve étage à Žilina", "naive etage a Zilina")]
    [InlineData("板材 x", "???? x")]
    [InlineData("€12.50 ½ ß", "E12.50 ? ?")]
    [InlineData("│░╱█─·┴", "|:/#-.+")]
    [InlineData("e\u0301 Łódź ✓ “x”", "e Lodz + \"x\"")]
    public void Every_text_keeps_its_columns(string text, string plain)
    {
        PlainLetters.Of(text).Should().Be(plain);
        Print.TextColumns.Width(plain).Should().Be(Print.TextColumns.Width(text));
    }

    [Fact]
    public void No_place_draws_anything_but_ascii()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F3").Type("2x4 8'1 @etage").Press("Enter");
            foreach (var keys in new[] { new[] { "F10" }, ["F2"], ["Enter"], ["F3"], ["F4"], ["Ctrl+R"], ["F6"], ["F7"], ["F8"], ["F9"], ["F1"], ["Esc", "Ctrl+F"] })
            {
                run.Press(keys);
                run.Text.Where(c => c != '\n' && !char.IsAscii(c)).Should().BeEmpty($"after {string.Join(' ', keys)}");
            }

            run.Press("Esc", "F3");
            run.Text.Should().Contain("Up earlier line", "an arrow in plain letters would read as Ctrl");
            run.Press("F2");
            run.Text.Should().Contain("No symbol in plain letters:").And.Contain("offcuts show CODE draws it");
        }, ascii: true);
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void Today_in_plain_letters(int width, int height) =>
        ScreenRun.OnKnownYard(width, height, run => Golden.Check($"today-ascii-{width}x{height}", run.Press("F10").Text), ascii: true);
}
