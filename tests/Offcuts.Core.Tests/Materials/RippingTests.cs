using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Tests.Materials;

public sealed class RippingTests
{
    private static Material M(string name) => MaterialReader.Read(name).Value;

    // Source: PS 20-20, Table 3, dry. A timber is 5 in and thicker, both ways.
    [Theory]
    [InlineData("2x4", "3 1/2\"")]
    [InlineData("2x8", "7 1/4\"")]
    [InlineData("1x12", "11 1/4\"")]
    [InlineData("4x6", "5 1/2\"")]
    [InlineData("foam 2-1/2x16 II", "16\"")]
    public void Lumber_is_ripped_by_its_dry_width_and_foam_by_its_height(string material, string width) =>
        Ripping.Width(M(material)).Should().Be(Length.Parse(width).Value);

    [Theory]
    [InlineData("6x6")]
    [InlineData("5x8")]
    [InlineData("#4")]
    [InlineData("plywood 3/4")]
    [InlineData("crown moulding")]
    public void Nothing_else_is_ripped(string material) => Ripping.Width(M(material)).Should().BeNull();

    [Theory]
    [InlineData("2x6", "2x4", true)]
    [InlineData("2x4", "2x6", false)]
    [InlineData("2x4", "2x4", false)]
    [InlineData("4x6", "2x4", false)]
    [InlineData("foam 2x16", "foam 2x12", true)]
    [InlineData("foam 2x16 II", "foam 2x12 II", true)]
    [InlineData("foam 2x16 II", "foam 2x12", false)]
    [InlineData("foam 3x16", "foam 2x12", false)]
    [InlineData("6x8", "6x6", false)]
    public void What_is_ripped_is_as_thick_of_the_same_type_and_wider(string from, string into, bool may) =>
        Ripping.May(M(from), M(into)).Should().Be(may);

    [Fact]
    public void The_strip_loses_a_kerf_and_is_never_less_than_nothing()
    {
        Ripping.Strip(M("2x6"), M("2x4"), Length.Inches(0.125m)).Should().Be(Length.Inches(1.875m));
        Ripping.Strip(M("2x6"), M("2x4"), Length.Inches(2)).Should().Be(Length.Zero);
        Ripping.Strip(M("2x6"), M("2x4"), Length.Inches(3)).Should().Be(Length.Zero);
        var ripping = () => Ripping.Strip(M("2x4"), M("2x6"), Length.Zero);
        ripping.Should().Throw<ArgumentException>();
    }

    [Fact]
    public void A_strip_is_the_widest_listed_material_that_is_no_wider()
    {
        Material[] listed = [M("2x2"), M("2x8"), M("2x6"), M("1x6"), M("#4")];

        Ripping.Widest(M("2x12"), Length.Inches(7.625m), listed).Should().Be(M("2x8"));
        Ripping.Widest(M("2x12"), Length.Inches(7.25m), listed).Should().Be(M("2x8"));
        Ripping.Widest(M("2x12"), Length.Inches(7), listed).Should().Be(M("2x6"));
        Ripping.Widest(M("2x6"), Length.Inches(1.375m), listed).Should().BeNull();
    }
}
