namespace Offcuts.Print.Tests;

public sealed class LetteringTests
{
    [Theory]
    [InlineData("éüñřł", "éüñřł")]
    [InlineData("e\u0301 u\u0308 n\u0303 r\u030c A\u030a s\u0327", "é ü ñ ř Å ş")]
    [InlineData("\u0301a", "□\u0301a")]
    [InlineData("木", "□")]
    [InlineData("🪵", "□")]
    [InlineData("a\tb", "a\\u0009b")]
    [InlineData("a\u00a0b\u00adc", "a b c")]
    public void Text_is_made_printable(string text, string printable)
    {
        Lettering.Printable(text).Should().Be(printable);
    }

    [Fact]
    public void Half_a_pair_of_characters_is_shown_by_its_number()
    {
        Lettering.Printable("a\ud800b").Should().Be("a\\ud800b");
    }

    [Fact]
    public void A_cut_text_fits_and_is_the_longest_that_does()
    {
        const string text = "behindtheoldhenhouse";
        var cut = Lettering.Cut(text, 10, bold: false, 70);

        cut.Should().EndWith("…");
        Lettering.Width(cut, 10, bold: false).Should().BeLessThanOrEqualTo(70);
        var longer = text[..cut.Length] + "…";
        Lettering.Width(longer, 10, bold: false).Should().BeGreaterThan(70);
        Lettering.Cut("short", 10, bold: false, 70).Should().Be("short");
    }

    [Fact]
    public void Lines_fit_and_lose_nothing()
    {
        var lines = Lettering.Wrap("short words and anextraordinarilylongone", 10, bold: true, 60);

        lines.Should().OnlyContain(line => Lettering.Width(line, 10, true) <= 60);
        string.Concat(lines).Replace(" ", "").Should().Be("shortwordsandanextraordinarilylongone");
    }

    [Fact]
    public void A_block_shrinks_before_it_is_cut()
    {
        var shrunk = TextBlock.Fit(["north", "rack"], " ", bold: false, ideal: 12, least: 6, width: 40, mostLines: 1);
        var cut = TextBlock.Fit(["north", "rack", "behind", "the", "henhouse"], " ", bold: false, ideal: 12, least: 6, width: 40, mostLines: 1);

        shrunk.Lines.Should().Equal("north rack");
        shrunk.Size.Should().BeInRange(6, 12);
        cut.Size.Should().Be(6);
        cut.Lines.Single().Should().StartWith("north rack").And.EndWith("…");
    }

    [Fact]
    public void A_block_takes_more_lines_before_it_shrinks_much()
    {
        var block = TextBlock.Fit(["NAILS", "TREATED", "OILED"], " · ", bold: true, ideal: 10, least: 6, width: 70, mostLines: 3);

        block.Size.Should().Be(10);
        block.Lines.Should().Equal("NAILS", "TREATED", "OILED");
    }
}
