using CsCheck;
using Offcuts.Core.Faults;

namespace Offcuts.Core.Tests.Faults;

public sealed class TextRulesTests
{
    [Theory]
    [InlineData('\u0000')]
    [InlineData('\u0007')]
    [InlineData('\n')]
    [InlineData('\u001b')]
    [InlineData('\u007f')]
    [InlineData('\u009b')]
    [InlineData('\u2028')]
    [InlineData('\u2029')]
    [InlineData('\u200e')]
    [InlineData('\u202e')]
    [InlineData('\u2067')]
    [InlineData('\u061c')]
    [InlineData('\u200b')]
    [InlineData('\u2060')]
    [InlineData('\ufeff')]
    public void What_could_steer_a_terminal_or_hide_text_is_a_control(char character) => TextRules.IsControl(character).Should().BeTrue();

    [Theory]
    [InlineData('a')]
    [InlineData('é')]
    [InlineData('½')]
    [InlineData('″')]
    [InlineData(' ')]
    [InlineData('\u00a0')]
    [InlineData('\u200d')]
    [InlineData('木')]
    public void What_people_write_is_not(char character) => TextRules.IsControl(character).Should().BeFalse();

    [Fact]
    public void A_control_is_shown_by_its_number_and_all_else_as_it_is()
    {
        TextRules.Harmless("rack\u001b[31m é 🪵").Should().Be("rack\\u001b[31m é 🪵");
        TextRules.Harmless("a\ud83e").Should().Be("a\\ud83e");
        TextRules.Harmless("plain").Should().Be("plain");
    }

    [Fact]
    public void The_first_refused_character_is_found_and_a_whole_pair_is_none()
    {
        TextRules.FirstRefused("ab\u001b").Should().Be(2);
        TextRules.FirstRefused("🪵a\udeb5").Should().Be(3);
        TextRules.FirstRefused("🪵 é").Should().Be(-1);
        TextRules.FirstRefused("").Should().Be(-1);
    }

    /// <summary>What is shown holds nothing refused and is at most six times as long; what holds nothing refused is shown as it is.</summary>
    [Fact]
    public void Any_text_is_shown_without_harm() =>
        Gen.String[Gen.Char, 0, 30].Sample(text =>
        {
            var shown = TextRules.Harmless(text);
            return TextRules.FirstRefused(shown) == -1 && shown.Length <= 6 * text.Length
                && (TextRules.FirstRefused(text) >= 0 || shown == text);
        });

    // U+202E turns what follows it round: "exe.png" with it in front reads "gnp.exe".
    [Fact]
    public void Json_tells_what_would_steer_a_terminal_by_its_number_and_means_the_same()
    {
        const string Json = "{\n  \"note\": \"\u202egnp.exe \\\\ \u009b31m\"\n}";

        var harmless = TextRules.HarmlessJson(Json);

        harmless.Should().Be("{\n  \"note\": \"\\u202egnp.exe \\\\ \\u009b31m\"\n}");
        System.Text.Json.JsonDocument.Parse(harmless).RootElement.GetProperty("note").GetString().Should().Be("\u202egnp.exe \\ \u009b31m");
    }
}
