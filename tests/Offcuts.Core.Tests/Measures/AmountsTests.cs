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
    public void A_pound_is_0_45359237_kilograms_exactly()
    {
        new Weight(100m).Kilograms.Should().Be(45.359237m);
        (new Weight(1.25m) + new Weight(2m)).ToString().Should().Be("3.3 lb");
    }

    [Fact]
    public void Board_feet_add_up() => (new BoardFeet(26.5m) + new BoardFeet(0.17m)).ToString().Should().Be("26.7 bd ft");
}
