using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Tests.Materials;

public sealed class QuantityTests
{
    private static Material Of(string name) => MaterialReader.Read(name).Value;

    // Source of the rule: PS 20-20 section 2.2 (nominal inches x nominal feet x feet); the four examples follow it.
    [Theory]
    [InlineData("2x4", 8, 16, 3)]
    [InlineData("2x10", 16, 80, 3)]
    [InlineData("1x12", 10, 10, 1)]
    [InlineData("2x8", 12, 16, 1)]
    public void Board_feet_follow_PS_20_20(string name, int feet, int top, int bottom) =>
        Math.Round(Quantities.BoardFeetOf(Of(name), Length.Feet(feet))!.Value.Value, 10)
            .Should().Be(Math.Round((decimal)top / bottom, 10));

    // US Navy Engineering Aid manual, Board Measure: lumber under 1 in thick counts as 1 in. No nominal size is under 1 in, so a
    // 1-in board marks the edge of the rule: 1 x 6/12 x 10.
    [Fact]
    public void A_board_of_one_inch_counts_its_inch() =>
        Quantities.BoardFeetOf(Of("1x6"), Length.Feet(10))!.Value.Value.Should().Be(5m);

    [Theory]
    [InlineData("#4")]
    [InlineData("foam 2x12")]
    [InlineData("plywood 3/4")]
    [InlineData("moulding")]
    public void Only_lumber_has_board_feet(string name) => Quantities.BoardFeetOf(Of(name), Length.Feet(8)).Should().BeNull();

    // NDS Supplement formula with the G of NDS Table 12.3.3A (from memory, sure), spruce-pine-fir at 19 %: 29.10 lb/ft3;
    // a dressed 2x4 of it is 1.061 lb/ft (computed: 1.5 x 3.5 / 144 x 29.10).
    [Fact]
    public void A_spruce_pine_fir_2x4_weighs_1_061_lb_a_foot_computed() =>
        Math.Round(Quantities.WeightOf(Of("2x4"), Length.Feet(1), Species.Find("spruce-pine-fir")!)!.Value.Pounds, 3).Should().Be(1.061m);

    // ASTM C578: type II is at least 1.35 lb/ft3; 4 ft x 8 ft x 2 in of it is 5-1/3 ft3 and weighs 7.20 lb (computed).
    [Fact]
    public void A_four_by_eight_of_type_II_foam_two_inches_thick_weighs_7_20_lb_computed() =>
        Math.Round(Quantities.WeightOf(Of("foam 2x48 II"), Length.Feet(8), Species.Usual)!.Value.Pounds, 2).Should().Be(7.20m);

    // Voluntary Product Standard PS 1, rule of thumb: 3 lb/ft2 for each inch; a 4x8 of 3/4 in is 32 x 3/4 x 3 = 72 lb.
    [Fact]
    public void Plywood_weighs_three_pounds_a_square_foot_for_each_inch()
    {
        Quantities.PlywoodPoundsPerSquareFootInch.Should().Be(3m);
        Quantities.WeightOf(Of("plywood 3/4"), Length.Feet(8), Species.Usual, Length.Feet(4))!.Value.Pounds.Should().Be(72m);
    }

    // NAHB Research Center, 1995: loose solid sawn wood 267 lb/yd3.
    [Fact]
    public void Loose_wood_in_a_skip_is_267_lb_a_cubic_yard() => Quantities.LooseWoodPoundsPerCubicYard.Should().Be(267m);

    [Fact]
    public void A_bar_weighs_its_foot_weight_times_its_feet() =>
        Quantities.WeightOf(Of("#4"), Length.Feet(20), Species.Usual)!.Value.Pounds.Should().Be(13.36m, "0.668 x 20, ASTM A615 Table 1");

    [Theory]
    [InlineData("foam 2x48")]
    [InlineData("osb 7/16")]
    [InlineData("moulding")]
    public void An_unknown_weight_is_none_and_never_a_guess(string name) =>
        Quantities.WeightOf(Of(name), Length.Feet(8), Species.Usual, Length.Feet(4)).Should().BeNull();

    // Dressed 2x4 is 1-1/2 x 3-1/2 dry (PS 20-20 Table 3); #4 is 0.20 in2 (ASTM A615 Table 1).
    [Theory]
    [InlineData("2x4", 63.0)]
    [InlineData("#4", 2.4)]
    [InlineData("foam 2x12", 288.0)]
    [InlineData("plywood 3/4", 432.0)]
    public void The_volume_of_a_foot_is_section_times_length(string name, double cubicInches) =>
        Math.Round(Quantities.VolumeOf(Of(name), Length.Feet(1), Length.Feet(4))!.Value.CubicMillimetres / (25.4m * 25.4m * 25.4m), 6)
            .Should().Be((decimal)cubicInches);

    [Theory]
    [InlineData("2x4", 42.0)]
    [InlineData("foam 2x12", 144.0)]
    [InlineData("plywood 3/4", 576.0)]
    public void The_face_of_a_foot_is_width_times_length(string name, double squareInches) =>
        Math.Round(Quantities.FaceAreaOf(Of(name), Length.Feet(1), Length.Feet(4))!.Value.SquareMillimetres / (25.4m * 25.4m), 6)
            .Should().Be((decimal)squareInches);

    [Theory]
    [InlineData("#4")]
    [InlineData("moulding")]
    public void What_has_no_face_has_none(string name) => Quantities.FaceAreaOf(Of(name), Length.Feet(1)).Should().BeNull();
}
