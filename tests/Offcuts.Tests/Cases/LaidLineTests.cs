using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Tests.Cases;

/// <summary>What somebody says lies in a course: a label that begins like a word of the line is still that label.</summary>
public sealed class LaidLineTests
{
    private static readonly string LikeNew = Code.Alphabet.Select(last => $"NEWAD{last}").First(body => Code.Alphabet.Contains(CheckCharacter.Of(body)));
    private static readonly string Label = $"{LikeNew}{CheckCharacter.Of(LikeNew)}";

    [Theory]
    [InlineData("new", null)]
    [InlineData("new 36\"", 36)]
    [InlineData("new 2223", 2223)]
    public void New_is_a_new_piece(string typed, int? inches)
    {
        var laid = LaidLine.Read(typed, LengthUnit.Inch).Value.Should().ContainSingle().Subject;

        (laid.Code.IsNone, laid.Length).Should().Be((true, inches is { } of ? Length.Inches(of) : (Length?)null));
    }

    [Theory]
    [InlineData("", null)]
    [InlineData(" 36\"", 36)]
    public void A_label_that_begins_like_new_is_that_label_as_it_is_printed(string length, int? inches)
    {
        var code = Code.Parse(Label).Value;

        var laid = LaidLine.Read($"{code}{length}", LengthUnit.Inch).Value.Should().ContainSingle().Subject;

        (laid.Code, laid.Length).Should().Be((code, inches is { } of ? Length.Inches(of) : (Length?)null));
        LaidLine.Read(LaidLine.Write([laid]), LengthUnit.Inch).Value.Should().Equal(laid);
    }
}
