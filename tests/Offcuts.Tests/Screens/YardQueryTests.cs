using Offcuts.Core.Measures;
using Offcuts.Screens;

namespace Offcuts.Tests.Screens;

/// <summary>What the typed line of the yard asks for.</summary>
public sealed class YardQueryTests
{
    private static readonly YardSnapshot Yard = new() { Materials = new HashSet<string> { "2x4", "2x10", "foam 2-1/2x12" } };

    [Theory]
    [InlineData("", "")]
    [InlineData("2x4", "2x4")]
    [InlineData("2X10 nails", "2x10, \"nails\"")]
    [InlineData("2x1", "\"2x1\"")]
    [InlineData("foam 2-1/2x12", "foam 2-1/2x12")]
    [InlineData("8'+", "8' or longer")]
    [InlineData("2x4 7' 8-5/8+ fair", "2x4, 7' 8-5/8\" or longer, fair")]
    [InlineData("Poor fairground", "poor, \"fairground\"")]
    [InlineData("40+", "3' 4\" or longer")]
    [InlineData("2x4 @north rack", "2x4, at \"north rack\"")]
    [InlineData("+", "\"+\"")]
    [InlineData("x+", "\"x+\"")]
    public void A_line_is_read_word_by_word(string line, string read) =>
        YardQuery.Read(line, Yard).ReadBack(LengthUnit.Inch).Should().Be(read);

    [Fact]
    public void A_line_that_is_a_code_is_that_code_however_it_is_written()
    {
        var code = KnownYard.Codes[0];
        foreach (var line in new[] { code.Text, code.ToString(), code.QrText, $" {code.Text.ToLowerInvariant()} " })
            YardQuery.Read(line, Yard).Code.Should().Be(code);
        YardQuery.Read(code.Text + " 2x4", Yard).Code.IsNone.Should().BeTrue();
    }

    [Fact]
    public void A_code_that_a_scanner_types_behind_other_words_is_that_code()
    {
        var code = KnownYard.Codes[0];
        foreach (var line in new[] { $"2x10 {code.QrText}", $"2x10{code.QrText}", $"nails @north {code.QrText.ToLowerInvariant()} ", $"{KnownYard.Codes[1].QrText}{code.QrText}" })
            YardQuery.Read(line, Yard).Code.Should().Be(code, line);
        var slip = code.QrText[..^1] + (code.QrText[^1] == '2' ? '3' : '2');
        YardQuery.Read($"2x10 {slip}", Yard).Code.IsNone.Should().BeTrue("its check character does not fit");
    }

    [Fact]
    public void A_last_word_is_a_code_only_where_the_yard_knows_it()
    {
        var code = KnownYard.Codes[0];
        YardQuery.Read($"2x10 {code.Text}", Yard).Code.IsNone.Should().BeTrue();
        var known = Yard with { Blanks = new HashSet<Core.Yard.Code> { code } };
        YardQuery.Read($"2x10 {code.Text}", known).Code.Should().Be(code);
        YardQuery.Read($"2x10 {code}", known).Code.Should().Be(code, "in its two groups, as on the label");
        YardQuery.Read($"{code.Text} 2x10", known).Code.IsNone.Should().BeTrue("only the last words");
    }
}
