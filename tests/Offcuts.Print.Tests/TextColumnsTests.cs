using CsCheck;

namespace Offcuts.Print.Tests;

public sealed class TextColumnsTests
{
    [Theory]
    [InlineData("", 0)]
    [InlineData("2x10", 4)]
    [InlineData("Jiří", 4)]
    [InlineData("Jir\u030ci\u0301", 4)]
    [InlineData("木", 2)]
    [InlineData("木 shed", 7)]
    public void A_wide_letter_takes_two_columns_and_a_joining_accent_none(string text, int width)
    {
        TextColumns.Width(text).Should().Be(width);
    }

    [Theory]
    [InlineData("rack", 6, "rack  ")]
    [InlineData("rack", 4, "rack")]
    [InlineData("north rack", 6, "north…")]
    [InlineData("木木木", 4, "木… ")]
    [InlineData("木木", 4, "木木")]
    public void A_text_fills_its_column_or_is_cut_with_a_mark(string text, int width, string filled)
    {
        TextColumns.Fill(text, width).Should().Be(filled);
    }

    [Fact]
    public void A_figure_stands_to_the_right()
    {
        TextColumns.FillLeft("12", 5).Should().Be("   12");
    }

    [Fact]
    public void Lines_break_between_words_and_inside_one_only_where_it_is_too_wide()
    {
        TextColumns.Wrap("pull the nails and scrape", 10).Should().Equal("pull the", "nails and", "scrape");
        TextColumns.Wrap("abcdefgh ij", 5).Should().Equal("abcde", "fgh", "ij");
        TextColumns.Wrap("木木木", 5).Should().Equal("木木", "木");
        TextColumns.Wrap("", 5).Should().Equal("");
    }

    [Fact]
    public void No_wrapped_line_is_too_wide_and_no_letter_is_lost()
    {
        Gen.Select(Gen.String[Gen.Char["ab cé木\u0301 "], 0, 80], Gen.Int[2, 20]).Sample((text, width) =>
        {
            var lines = TextColumns.Wrap(text, width);

            lines.Should().OnlyContain(line => TextColumns.Width(line) <= width);
            string.Concat(lines).Replace(" ", "").Should().Be(text.Replace(" ", ""));
        });
    }

    [Fact]
    public void One_column_holds_the_mark_of_a_cut_and_no_more()
    {
        TextColumns.Cut("oak", 1).Should().Be("…");
        TextColumns.Fill("oak", 1).Should().Be("…");
        TextColumns.Cut("oak", 0).Should().Be("");
    }
}
