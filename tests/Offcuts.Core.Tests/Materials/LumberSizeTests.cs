using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Tests.Materials;

public sealed class LumberSizeTests
{
    // Source of every row: American Softwood Lumber Standard, NIST Voluntary Product Standard PS 20-20, Table 3.
    [Theory]
    [InlineData("1", "3/4", "25/32")]
    [InlineData("1-1/4", "1", "1-1/32")]
    [InlineData("1-1/2", "1-1/4", "1-9/32")]
    [InlineData("2", "1-1/2", "1-9/16")]
    [InlineData("2-1/2", "2", "2-1/16")]
    [InlineData("3", "2-1/2", "2-9/16")]
    [InlineData("4", "3-1/2", "3-9/16")]
    [InlineData("5", "4-1/2", "4-5/8")]
    [InlineData("6", "5-1/2", "5-5/8")]
    [InlineData("8", "7-1/4", "7-1/2")]
    [InlineData("10", "9-1/4", "9-1/2")]
    [InlineData("12", "11-1/4", "11-1/2")]
    [InlineData("14", "13-1/4", "13-1/2")]
    [InlineData("16", "15-1/4", "15-1/2")]
    public void Dressed_sizes_are_those_of_PS_20_20_Table_3(string nominal, string dry, string green)
    {
        var row = NominalSize.All.Single(size => size.Text == nominal);
        row.Nominal.Should().Be(Length.Parse(nominal, LengthUnit.Inch).Value.InInches);
        row.Dry.Should().Be(Length.Parse(dry, LengthUnit.Inch).Value);
        row.Green.Should().Be(Length.Parse(green, LengthUnit.Inch).Value);
    }

    [Fact]
    public void The_table_has_no_other_rows() => NominalSize.All.Should().HaveCount(14);

    // NDS Supplement Table 1A, from memory, fairly sure: timbers, 5 in and thicker both ways, are 1/2 in under nominal when green.
    [Theory]
    [InlineData("6x6", "5-1/2", "5-1/2")]
    [InlineData("5x5", "4-1/2", "4-1/2")]
    [InlineData("8x10", "7-1/2", "9-1/2")]
    [InlineData("6x12", "5-1/2", "11-1/2")]
    public void A_green_timber_is_half_an_inch_under_nominal_from_memory(string name, string thickness, string width)
    {
        var timber = (Lumber)MaterialReader.Read(name).Value;
        timber.IsTimber.Should().BeTrue();
        timber.GreenThickness.Should().Be(Length.Parse(thickness, LengthUnit.Inch).Value);
        timber.GreenWidth.Should().Be(Length.Parse(width, LengthUnit.Inch).Value);
    }

    // PS 20-20 Table 3: a 4x6 is no timber, for it is under 5 in one way.
    [Theory]
    [InlineData("4x6", "3-9/16", "5-5/8")]
    [InlineData("2x4", "1-9/16", "3-9/16")]
    public void What_is_under_five_inches_one_way_keeps_the_table(string name, string thickness, string width)
    {
        var lumber = (Lumber)MaterialReader.Read(name).Value;
        lumber.IsTimber.Should().BeFalse();
        lumber.GreenThickness.Should().Be(Length.Parse(thickness, LengthUnit.Inch).Value);
        lumber.GreenWidth.Should().Be(Length.Parse(width, LengthUnit.Inch).Value);
    }
}
