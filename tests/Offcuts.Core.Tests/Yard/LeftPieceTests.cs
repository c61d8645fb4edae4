using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.Yard;

public sealed class LeftPieceTests
{
    [Fact]
    public void A_length_alone_says_nothing_of_bad_spots() =>
        LeftPiece.Read("22-1/2", LengthUnit.Inch).Value.Should().Be(new LeftPiece(Length.Inches(22.5m)));

    [Theory]
    [InlineData("40 bad 10..14, 20..end", "3' 4\" bad 10\"..1' 2\" bad 1' 8\"..3' 4\"")]
    [InlineData("40 clean", "3' 4\" clean")]
    [InlineData("2x4 48 poor bad 0..3", "2x4 4' bad 0\"..3\" poor")]
    [InlineData("40", "3' 4\"")]
    [InlineData("20 line 0", "1' 8\" line 0\"")]
    [InlineData("20 line 1-1/2 fair bad 3..4", "1' 8\" bad 3\"..4\" line 1-1/2\" fair")]
    public void What_is_read_is_written_so_that_it_is_read_again(string typed, string written)
    {
        var read = LeftPiece.Read(typed, LengthUnit.Inch).Value;
        read.ToText(LengthUnit.Inch).Should().Be(written);
        LeftPiece.Read(written, LengthUnit.Inch).Value.ToText(LengthUnit.Inch).Should().Be(written);
    }

    [Theory]
    [InlineData("40 bad 38..44", 8, "the bad spot ends at 44\", but the piece is only 40\" long")]
    [InlineData("40 clean bad 3..4", 10, "a length is either clean or bad somewhere, not both")]
    [InlineData("40 nails", 4, "\"nails\" means nothing here")]
    [InlineData("20 line 21", 4, "the first pattern line lies outside the piece")]
    [InlineData("20 line 0 line 1", 11, "the first pattern line is given already")]
    [InlineData("20 line", 8, "a length is missing here; write it like 7' 8-5/8\", 92.5\" or 2400 mm")]
    [InlineData("2x4", 4, "a length is missing here; write it like 7' 8-5/8\", 92.5\" or 2400 mm")]
    [InlineData("0", 1, "a length of 0 is nothing to build with")]
    public void What_cannot_be_is_refused_at_its_column(string typed, int column, string sentence)
    {
        var fault = LeftPiece.Read(typed, LengthUnit.Inch).Faults[0];
        (fault.Column, fault.Sentence).Should().Be((column, sentence));
    }

    [Fact]
    public void The_longest_good_stretch_lies_between_bad_spots()
    {
        LeftPiece.Read("40 bad 5..10, 30..32", LengthUnit.Inch).Value.LongestGood().Should().Be(Length.Inches(20));
        LeftPiece.Read("40 bad 0..end", LengthUnit.Inch).Value.LongestGood().Should().Be(Length.Zero);
        LeftPiece.Read("40 clean", LengthUnit.Inch).Value.LongestGood().Should().Be(Length.Inches(40));
    }
}
