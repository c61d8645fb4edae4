using Offcuts.Core.Measures;

namespace Offcuts.Core.Tests.Measures;

public sealed class AmountsTests
{
    [Fact]
    public void An_area_is_its_sides_multiplied()
    {
        var area = Area.Of(Length.Feet(4), Length.Feet(8));
        area.SquareFeet.Should().Be(32m);
        (area + area).ToString().Should().Be("64.0 sq ft");
    }

    [Fact]
    public void A_volume_is_its_three_sides_multiplied()
    {
        var volume = Volume.Of(Length.Feet(4), Length.Feet(8), Length.Inches(2));
        Math.Round(volume.CubicFeet, 6).Should().Be(5.333333m, "4 x 8 x 1/6");
        Math.Round((volume + volume).CubicFeet, 6).Should().Be(10.666667m);
    }

    [Fact]
    public void Amounts_are_told_in_the_users_unit()
    {
        var sheet = Area.Of(Length.Feet(4), Length.Feet(8));
        sheet.ToText(LengthUnit.Inch).Should().Be("32.0 sq ft");
        sheet.ToText(LengthUnit.Millimetre).Should().Be("2.97 m2", "32 x 0.09290304");
        var panel = Volume.Of(Length.Feet(4), Length.Feet(8), Length.Inches(2));
        panel.ToText(LengthUnit.Inch).Should().Be("5.333 cu ft");
        panel.ToText(LengthUnit.Millimetre).Should().Be("0.151 m3", "16/3 x 0.028316846592");
        new Weight(7.2m).ToText(LengthUnit.Inch).Should().Be("7.2 lb");
        new Weight(7.2m).ToText(LengthUnit.Millimetre).Should().Be("3.3 kg", "7.2 x 0.45359237");
    }

    [Fact]
    public void A_short_thin_bar_is_never_told_to_be_nothing()
    {
        // #4, 0.20 in2 by ASTM A615 Table 1, 12 in: 2.4 in3.
        var bar = new Volume(0.20m * 25.4m * 25.4m * 304.8m);
        bar.ToText(LengthUnit.Inch).Should().Be("0.001 cu ft");
        bar.ToText(LengthUnit.Millimetre).Should().Be("under 0.0001 m3");
    }

    [Fact]
    public void A_pound_is_0_45359237_kilograms_exactly()
    {
        new Weight(100m).Kilograms.Should().Be(45.359237m);
        (new Weight(1.25m) + new Weight(2m)).ToString().Should().Be("3.3 lb");
    }

    [Fact]
    public void Board_feet_add_up() => (new BoardFeet(26.5m) + new BoardFeet(0.17m)).ToString().Should().Be("26.7 bd ft");
}
