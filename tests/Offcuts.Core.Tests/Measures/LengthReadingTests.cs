using Offcuts.Core.Measures;

namespace Offcuts.Core.Tests.Measures;

/// <summary>Every written form, with the exact number of 1/320 mm it stands for (1 in = 8128, 1 mm = 320).</summary>
public sealed class LengthReadingTests
{
    [Theory]
    [InlineData("96\"", 780_288)]
    [InlineData("8'", 780_288)]
    [InlineData("7' 8-5/8\"", 752_856)]
    [InlineData("92 5/8 in", 752_856)]
    [InlineData("92.625\"", 752_856)]
    [InlineData("2400 mm", 768_000)]
    [InlineData("2.4 m", 768_000)]
    [InlineData("240 cm", 768_000)]
    public void Every_form_of_the_files_is_read(string text, long units) =>
        Length.Parse(text).Value.Units.Should().Be(units);

    [Theory]
    [InlineData("8 ft 3 1/2", 808_736)]
    [InlineData("8'3.5", 808_736)]
    [InlineData("0-11 5/8", 94_488)]
    [InlineData("8-3 1/2", 808_736)]
    [InlineData("8-3", 804_672)]
    [InlineData("8’ 3½”", 808_736)]
    [InlineData("8′ 3″", 804_672)]
    [InlineData("8' 3''", 804_672)]
    [InlineData("8'3\"", 804_672)]
    [InlineData("7'-8 5/8\"", 752_856)]
    [InlineData("7' - 8-5/8\"", 752_856)]
    [InlineData("8'  3/4\"", 786_384)]
    [InlineData("8'.5", 784_352)]
    [InlineData("5ft", 487_680)]
    [InlineData("5 feet", 487_680)]
    [InlineData("1 foot 1 inch", 105_664)]
    [InlineData("5ft6in", 536_448)]
    [InlineData("5FT 6IN", 536_448)]
    [InlineData("8 ft. 3 in.", 804_672)]
    [InlineData("2400mm", 768_000)]
    [InlineData("  2400 mm  ", 768_000)]
    [InlineData("8'\u00a03\"", 804_672)]
    [InlineData("8'\t3\"", 804_672)]
    [InlineData("3/4\"", 6_096)]
    [InlineData("¾\"", 6_096)]
    [InlineData("5 ¾ in", 46_736)]
    [InlineData(".5\"", 4_064)]
    [InlineData("1/64\"", 127)]
    [InlineData("0.1 mm", 32)]
    [InlineData("1000'", 97_536_000)]
    public void Forms_that_people_write_are_read(string text, long units) =>
        Length.Parse(text).Value.Units.Should().Be(units);

    [Theory]
    [InlineData("14-1/2", LengthUnit.Inch, 117_856)]
    [InlineData("14 1/2", LengthUnit.Inch, 117_856)]
    [InlineData("14.5", LengthUnit.Inch, 117_856)]
    [InlineData("96", LengthUnit.Inch, 780_288)]
    [InlineData("2400", LengthUnit.Millimetre, 768_000)]
    [InlineData("2400.1", LengthUnit.Millimetre, 768_032)]
    public void A_bare_number_takes_the_unit_it_is_given(string text, LengthUnit bare, long units) =>
        Length.Parse(text, bare).Value.Units.Should().Be(units);

    [Theory]
    [InlineData("0")]
    [InlineData("0\"")]
    [InlineData("0.0")]
    public void Nothing_needs_no_unit(string text) => Length.Parse(text).Value.Should().Be(Length.Zero);

    [Theory]
    [InlineData("8' 8' 8'", 2, 780_288)]
    [InlineData("8' 2400 mm", 2, 780_288)]
    [InlineData("8'..9'", 2, 780_288)]
    [InlineData("8 ft..9 ft", 4, 780_288)]
    [InlineData("8' x6", 2, 780_288)]
    [InlineData("8'. 9'", 2, 780_288)]
    [InlineData("8' fair", 2, 780_288)]
    [InlineData("11'4 9'2", 4, 1_105_408)]
    [InlineData("8' 3 9'", 4, 804_672)]
    public void A_length_ends_where_the_next_thing_begins(string text, int end, long units)
    {
        var found = LengthReader.Read(text, 0, null).Value;
        found.Length.Units.Should().Be(units);
        found.End.Should().Be(end);
    }

    [Theory]
    [InlineData("", 1, "a length is missing here; write it like 7' 8-5/8\", 92.5\" or 2400 mm")]
    [InlineData("   ", 4, "a length is missing here; write it like 7' 8-5/8\", 92.5\" or 2400 mm")]
    [InlineData("long", 1, "a length is missing here; write it like 7' 8-5/8\", 92.5\" or 2400 mm")]
    [InlineData("-5\"", 1, "a length can't be negative")]
    [InlineData("  −5\"", 3, "a length can't be negative")]
    [InlineData("-.5\"", 1, "a length can't be negative")]
    [InlineData("96", 1, "a bare number has no unit here; write 96\", 8' or 2400 mm")]
    [InlineData(" 96", 2, "a bare number has no unit here; write 96\", 8' or 2400 mm")]
    [InlineData("96 yd", 4, "\"yd\" is no unit of length; use ft, in, mm, cm or m")]
    [InlineData("8' 12\"", 4, "after feet the inches must stay under 12")]
    [InlineData("8-12", 3, "after feet the inches must stay under 12")]
    [InlineData("8' 3/\"", 4, "this fraction has no whole number below the line")]
    [InlineData("3 17/16\"", 3, "a fraction is less than 1; write the whole part apart, like 3-1/16")]
    [InlineData("8/8\"", 1, "a fraction is less than 1; write the whole part apart, like 3-1/16")]
    [InlineData("8' 3-3/2\"", 6, "a fraction is less than 1; write the whole part apart, like 3-1/16")]
    [InlineData("1/0\"", 1, "this fraction has no whole number below the line")]
    [InlineData("1/3\"", 1, "this falls between the marks: a length is a whole number of 1/64 in or of 0.1 mm, or a sum of both")]
    [InlineData("0.001 mm", 1, "this falls between the marks: a length is a whole number of 1/64 in or of 0.1 mm, or a sum of both")]
    [InlineData("1000' 1\"", 1, "this is longer than 1000 ft; check the unit")]
    [InlineData("99999999999999999999\"", 1, "this is longer than 1000 ft; check the unit")]
    [InlineData("96\" long", 5, "the length ends before this; what follows can't be read")]
    [InlineData("8' 8'", 4, "the length ends before this; what follows can't be read")]
    [InlineData("8'-", 3, "the length ends before this; what follows can't be read")]
    [InlineData("8-3 mm", 4, "the length ends before this; what follows can't be read")]
    public void What_is_no_length_is_refused_with_column_and_reason(string text, int column, string sentence)
    {
        var fault = Length.Parse(text).Fault;
        fault.Sentence.Should().Be(sentence);
        fault.Column.Should().Be(column);
    }

    [Fact]
    public void An_unknown_unit_is_named_where_bare_numbers_are_allowed_too()
    {
        var fault = Length.Parse("96 yd", LengthUnit.Inch).Fault;
        fault.Sentence.Should().Be("\"yd\" is no unit of length; use ft, in, mm, cm or m");
        fault.Column.Should().Be(4);
    }
}
