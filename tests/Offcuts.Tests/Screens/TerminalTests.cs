using System.Text.RegularExpressions;
using Offcuts.Screens;

namespace Offcuts.Tests.Screens;

/// <summary>Whatever the terminal is and does.</summary>
[Collection(OnScreen.Name)]
public sealed partial class TerminalTests
{
    [Fact]
    public void A_resize_at_any_moment_keeps_what_is_shown_and_typed()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F3").Type("2x4 8' fair");
            foreach (var (width, height) in new[] { (120, 40), (61, 20), (200, 60), (80, 24) })
            {
                run.Resize(width, height);
                run.Lines[2].Should().Be("strip  2x4 8' fair");
                run.Lines.Should().HaveCount(height);
                run.Lines[1].Should().HaveLength(width);
                run.Lines[^1].Should().Contain("leave", "the keys stand at the foot of every size");
            }
        });
    }

    [Theory]
    [InlineData(59, 24)]
    [InlineData(80, 19)]
    [InlineData(10, 5)]
    [InlineData(1, 1)]
    public void A_window_that_is_too_small_gets_a_sentence_and_loses_nothing(int width, int height)
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3").Type("2x4 8'");
            run.Resize(width, height);
            run.Type("x").Press("Enter");
            run.Text.Should().NotContain("strip").And.StartWith("Offcuts needs"[..Math.Min(width, 7)]);
            run.Resize(80, 24);
            run.Lines[2].Should().Be("strip  2x4 8'");
            run.Yard.Pieces().Should().BeEmpty();
            run.Type(" x2");
            run.Lines[2].Should().Be("strip  2x4 8' x2");
        });
    }

    [Fact]
    public void The_help_scrolls_to_its_end_and_back_and_no_further()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3", "F1");
            var first = run.Text;
            run.Press([.. Enumerable.Repeat("PageDown", 30)]);
            run.Text.Should().Contain("Local code and licensed practice decide.").And.NotBe(first);
            run.Press("PageUp", "PageUp", "PageUp", "PageUp", "PageUp", "PageUp");
            run.Text.Should().Be(first);
            run.Type("x").Press("Esc");
            run.Lines[2].Should().Be("strip", "what is pressed in the help types nothing");
        });
    }

    [Fact]
    public void Without_colour_no_colour_is_sent_at_any_place()
    {
        ScreenRun.OnKnownYard(120, 40, run =>
        {
            foreach (var keys in new[] { new[] { "F2" }, ["F3"], ["F4"], ["Ctrl+R"], ["Ctrl+End"], ["F1"], ["Esc", "F2", "Enter"], ["Ctrl+E"], ["Esc", "F10"], ["F7"], ["F8"], ["F9"], ["Ctrl+F"] })
            {
                run.Press(keys);
                Colours().Matches(run.Ansi).Should().BeEmpty($"no colour after {string.Join(' ', keys)}");
            }
        }, colour: false);
    }

    [Fact]
    public void With_colour_only_the_sixteen_are_used()
    {
        ScreenRun.OnKnownYard(120, 40, run =>
        {
            Colours().IsMatch(run.Ansi).Should().BeTrue("the symbol is dark on light");
            run.Ansi.Should().NotContain("8;2;").And.NotContain("8;5;");
        });
    }

    [Fact]
    public void Wide_and_accented_letters_move_no_column()
    {
        ScreenRun.OnKnownYard(120, 40, run =>
        {
            var plain = run.Lines.Single(line => line.StartsWith(KnownYard.Codes[0].ToString(), StringComparison.Ordinal));
            run.Press("F3").Type("板材の梁 3 m fair @naïve étage").Press("Enter", "y").Press("F2", "Ctrl+End");
            var wide = run.Lines.Single(line => line.Contains("板材の梁  ", StringComparison.Ordinal));
            Columns(wide, "fair").Should().Be(Columns(plain, "sound"));
            wide.Should().Contain("naïve étage");
        });
    }

    [Fact]
    public void An_escape_character_in_a_text_is_shown_and_not_sent()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F4", "Ctrl+K").Paste("wall\u001b[2Jx").Press("Enter");
            run.Ansi.Should().NotContain("\u001b[2Jx");
            run.Type("Footing").Press("Enter");
            run.Text.Should().NotContain("\u001b");
        });
    }

    [Fact]
    public void A_filter_looks_in_the_lines_made_before_and_makes_no_text_anew()
    {
        var tie = (Core.Materials.Hardware)Core.Materials.MaterialReader.ReadCounted("tie").Value;
        var entries = Enumerable.Range(0, 1000).Select(row => new YardEntry(null, new Core.Yard.Bin(default, tie, row), row % 2 == 0 ? "made before" : "something else"));
        var state = YardModel.Start(new YardSnapshot { Entries = [.. entries] });

        YardModel.Apply(state, new Intent.Type("before")).State.Shown.Should().HaveCount(500, "the word stands in the lines and nowhere else");
    }

    private static int Columns(string line, string word) => Print.TextColumns.Width(line[..line.IndexOf(word, StringComparison.Ordinal)]);

    [GeneratedRegex("\u001b\\[(?:[0-9;]*;)?(?:3[0-8]|4[0-8]|9[0-7]|10[0-7])(?:;[0-9;]*)?m")]
    private static partial Regex Colours();
}
