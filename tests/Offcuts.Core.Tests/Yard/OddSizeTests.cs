using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.Yard;

/// <summary>The limits are common practice or our own choice, as <see cref="OddSize"/> says at each.</summary>
public sealed class OddSizeTests
{
    [Theory]
    [InlineData("2x4 800'", "UNUSUAL: 2x4 800': over 24', the longest that is usually sold")]
    [InlineData("2x4 8m", "UNUSUAL: 2x4 ~26' 2-15/16\": over 24', the longest that is usually sold")]
    [InlineData("2x4 2400", "UNUSUAL: 2x4 200': over 24', the longest that is usually sold")]
    [InlineData("2x4 3", "UNUSUAL: 2x4 3\": under 4\", hardly worth a label")]
    [InlineData("2x5 8'", "UNUSUAL: 2x5: no usual size of lumber")]
    [InlineData("plywood 3/4 96x480", "UNUSUAL: plywood 3/4 8' x 40': over 12', the longest that is usually sold")]
    [InlineData("foam 63x300 48", "UNUSUAL: foam 63x300: larger than any that is usually sold; a name without units is in inches, millimetres are written behind each number, like 63mm")]
    [InlineData("plywood 18 96x48", "UNUSUAL: plywood 18: larger than any that is usually sold; a name without units is in inches, millimetres are written behind each number, like 63mm")]
    public void A_likely_slip_is_told(string line, string told) =>
        Among(line).Select(odd => odd.Told).Should().Equal(told);

    [Theory]
    [InlineData("2x10 11'4, 24', 9'2-1/2")]
    [InlineData("1x3 4 in")]
    [InlineData("5/4x6 16'")]
    [InlineData("6x6 20'")]
    [InlineData("#4 60'")]
    [InlineData("foam 2-1/2x12 8'")]
    [InlineData("foam 63mmx300mm 8'")]
    [InlineData("foam 12x48 8'")]
    [InlineData("plywood 3/4 4x8")]
    [InlineData("plywood 18mm 4x8")]
    public void What_stores_sell_is_not(string line) => Among(line).Should().BeEmpty();

    [Fact]
    public void Each_doubt_is_told_once() =>
        Among("2x4 40', 8', 40' x3").Should().ContainSingle();

    [Theory]
    [InlineData("2x4 8 x12", "UNUSUAL: 2x4 8\": under the keep length of 1'; feet are written 8'")]
    [InlineData("2x6 10, 8'", "UNUSUAL: 2x6 10\": under the keep length of 1'; feet are written 10'")]
    [InlineData("#4 6", "UNUSUAL: #4 6\": under the keep length of 1'; feet are written 6'")]
    [InlineData("foam 2-1/2x12 8, 8", "UNUSUAL: foam 2-1/2x12 8\": under the keep length of 1'; feet are written 8'")]
    public void A_bare_number_that_was_more_likely_meant_in_feet_is_told(string line, string told) =>
        Among(line).Select(odd => odd.Told).Should().Equal(told);

    [Theory]
    [InlineData("2x4 8\" x12")]
    [InlineData("2x4 8 in x12")]
    [InlineData("2x4 10-1/2 x12")]
    [InlineData("2x4 10.5 x12")]
    [InlineData("2x4 12, 16, 24, 92-5/8")]
    [InlineData("plywood 3/4 8x10")]
    public void A_written_unit_a_fraction_and_what_is_worth_keeping_are_not(string line) => Among(line).Should().BeEmpty();

    [Fact]
    public void The_keep_length_of_the_material_decides()
    {
        var settings = YardSettings.Usual with { Keeps = YardSettings.Usual.Keeps.Add("2x4", Length.Inches(6)).Add("2x6", Length.Inches(24)) };

        Among("2x4 8", settings).Should().BeEmpty();
        Among("2x6 16", settings).Single().Why.Should().Be("under the keep length of 2'; feet are written 16'");
        Among("2x6 22", settings).Should().BeEmpty("no board of 22' is commonly sold");
    }

    [Fact]
    public void In_a_yard_of_millimetres_no_bare_number_is_taken_for_feet()
    {
        var settings = YardSettings.Usual with { Unit = LengthUnit.Millimetre };

        Among("2x4 2400", settings).Should().BeEmpty();
        OddSize.Of(CutLine.Read("blocks: 2x4 150 x4", "walls", LengthUnit.Millimetre).Value, settings).Should().BeNull();
    }

    [Theory]
    [InlineData("stakes: 2x4 24 x16 rough", "UNUSUAL: 2x4 24 mm: under 101.6 mm; inches are written 24\"")]
    [InlineData("spacers: 2x4 90..95 x4", "UNUSUAL: 2x4 90 mm: under 101.6 mm; inches are written 90\"")]
    public void In_a_yard_of_millimetres_a_need_that_was_more_likely_meant_in_inches_is_told(string line, string told)
    {
        var settings = YardSettings.Usual with { Unit = LengthUnit.Millimetre };

        OddSize.Of(CutLine.Read(line, "walls", LengthUnit.Millimetre).Value, settings)!.Told.Should().Be(told);
        OddSize.Of(CutLine.Read("spacers: 2x4 90 mm x4", "walls", LengthUnit.Millimetre).Value, settings).Should().BeNull("its unit is written");
    }

    [Theory]
    [InlineData("braces: 2x6 5 x2", "UNUSUAL: 2x6 5\": under the keep length of 1'; feet are written 5'")]
    [InlineData("2x4 8", "UNUSUAL: 2x4 8\": under the keep length of 1'; feet are written 8'")]
    [InlineData("sill: 2x6 8..10 x4", "UNUSUAL: 2x6 8\": under the keep length of 1'; feet are written 8'")]
    [InlineData("spacers: 2x4 3 x4", "UNUSUAL: 2x4 3\": under the keep length of 1'; feet are written 3'")]
    public void So_is_one_in_a_need(string line, string told) => OfNeed(line)!.Told.Should().Be(told);

    [Theory]
    [InlineData("stakes: 2x4 24 x16 rough")]
    [InlineData("cleats: 2x4 10-1/2 x4")]
    [InlineData("blocks: 2x4 5\" x4")]
    [InlineData("blocks: 2x4 8..10\" x4")]
    [InlineData("braces: 2x6 5' x2")]
    [InlineData("panel tie x8")]
    public void Stakes_cleats_and_what_has_its_unit_are_not(string line) => OfNeed(line).Should().BeNull();

    [Fact]
    public void Millimetres_of_foam_without_their_unit_are_doubted_in_a_price_and_in_a_need_too()
    {
        OddSize.Of(Foam("foam 60x300"), LengthUnit.Millimetre)!.Why.Should().Contain("millimetres are written behind each number, like 63mm");
        OddSize.Of(Foam("foam 60mmx300mm"), LengthUnit.Millimetre).Should().BeNull();
        OfNeed("strip: foam 60x300 4' x2")!.What.Should().Be("foam 60x300");
        OfNeed("strip: foam 2-1/2x12 4' x2").Should().BeNull();
    }

    private static StorePrice Foam(string name) => new() { Material = MaterialReader.Read(name).Value, Length = Length.Feet(4), Price = new Money(1100) };

    private static OddSize? OfNeed(string line) => OddSize.Of(CutLine.Read(line, "walls", LengthUnit.Inch).Value, YardSettings.Usual);

    private static IReadOnlyList<OddSize> Among(string line) => Among(line, YardSettings.Usual);

    private static IReadOnlyList<OddSize> Among(string line, YardSettings settings) => OddSize.Among(CatalogueLine.Read(line, settings.Unit).Value, settings);
}
