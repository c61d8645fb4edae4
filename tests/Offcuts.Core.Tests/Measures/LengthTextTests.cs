using Offcuts.Core.Measures;

namespace Offcuts.Core.Tests.Measures;

public sealed class LengthTextTests
{
    [Theory]
    [InlineData(0, "0\"")]
    [InlineData(127, "1/64\"")]
    [InlineData(752_856, "92-5/8\"")]
    [InlineData(780_288, "96\"")]
    [InlineData(768_000, "2400 mm")]
    [InlineData(32, "0.1 mm")]
    [InlineData(1, "0.003125 mm")]
    [InlineData(159, "0.496875 mm")]
    public void Exact_text_is_inches_to_a_sixty_fourth_else_millimetres(long units, string text) =>
        Length.FromUnits(units).ToString().Should().Be(text);

    [Theory]
    [InlineData(0, "0\"")]
    [InlineData(508, "1/16\"")]
    [InlineData(752_856, "7' 8-5/8\"")]
    [InlineData(780_288, "8'")]
    [InlineData(786_384, "8' 3/4\"")]
    [InlineData(97_536, "1'")]
    [InlineData(127, "~0\"")]
    [InlineData(253, "~0\"")]
    [InlineData(254, "~1/16\"")]
    [InlineData(780_034, "~8'")]
    [InlineData(768_000, "~7' 10-1/2\"")]
    public void A_tape_in_inches_shows_feet_inches_and_sixteenths_half_up(long units, string text) =>
        Length.FromUnits(units).ToText(LengthUnit.Inch).Should().Be(text);

    [Theory]
    [InlineData(768_000, "2400 mm")]
    [InlineData(768_032, "2400.1 mm")]
    [InlineData(752_856, "~2352.7 mm")]
    [InlineData(16, "~0.1 mm")]
    [InlineData(15, "~0 mm")]
    public void A_tape_in_millimetres_shows_tenths_half_up(long units, string text) =>
        Length.FromUnits(units).ToText(LengthUnit.Millimetre).Should().Be(text);

    [Theory]
    [InlineData(LengthUnit.Inch, "8' 4\"", "8' 4\"")]
    [InlineData(LengthUnit.Inch, "100-33/64\"", "8' 4-33/64\"")]
    [InlineData(LengthUnit.Inch, "2400 mm", "~7' 10-1/2\"")]
    [InlineData(LengthUnit.Inch, "0.5 mm", "under 1/16\"")]
    [InlineData(LengthUnit.Millimetre, "8'", "2438.4 mm")]
    [InlineData(LengthUnit.Millimetre, "92-5/8\"", "2352.675 mm")]
    public void Told_in_one_unit_no_length_falls_back_on_the_other(LengthUnit unit, string length, string text) =>
        LengthText.In(unit, Length.Parse(length).Value).Should().Be(text);
}
