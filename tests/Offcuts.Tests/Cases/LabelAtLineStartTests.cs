using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Tests.Cases;

public sealed class LabelAtLineStartTests
{
    // Codes drawn with a counting source, so that the examples are the same on every run.
    private static readonly Code Label = Code.Draw(new Random(7).Next);

    [Theory]
    [InlineData("{0} 2x4 8'")]
    [InlineData("  {0}: 2x4 8'")]
    [InlineData("OFFCUTS:{1} 2x4 8'")]
    [InlineData("{2} 2x4 8'")]
    [InlineData("{1}")]
    public void A_code_at_the_start_is_taken_off(string form)
    {
        var line = string.Format(System.Globalization.CultureInfo.InvariantCulture, form, Label, Label.Text, Label.Text.ToLowerInvariant());

        var (code, end) = LabelAtLineStart.Find(line);

        code!.Value.Value.Should().Be(Label);
        line[end..].Should().Be(line.Contains("2x4") ? "2x4 8'" : "");
    }

    [Theory]
    [InlineData("2x4 2476")]
    [InlineData("2X4 2400")]
    [InlineData("2x10 11'4, 11'4")]
    [InlineData("#4 20' x3")]
    [InlineData("foam 2-1/2x12 36")]
    [InlineData("panel tie x140")]
    [InlineData("bracket x12")]
    [InlineData("12 corner bracket")]
    public void A_line_that_begins_with_what_it_is_has_no_label(string line) =>
        LabelAtLineStart.Find(line).Code.Should().BeNull();

    [Fact]
    public void No_length_of_four_digits_behind_a_section_is_taken_for_a_code()
    {
        foreach (var section in new[] { "2x4", "2x6", "2x8", "1x4", "4x4" })
            for (var length = 1000; length < 10_000; length++)
                LabelAtLineStart.Find($"{section} {length}").Code.Should().BeNull($"{section} {length} is a board");
    }

    [Fact]
    public void A_code_with_a_slip_in_it_never_turns_into_the_name_of_a_thing()
    {
        var right = Label.Text;
        var wrong = right[..6] + Code.Alphabet.First(letter => letter != right[6]);
        string[] slips = [wrong, wrong.ToLowerInvariant(), $"{wrong[..3]} {wrong[3..]}", right[..6], right + "A", "OFFCUTS:" + right[..5]];

        foreach (var slip in slips)
            LabelAtLineStart.Find($"{slip} 2x4 8'").Code!.Value.Ok.Should().BeFalse($"{slip} is no code");
    }
}
