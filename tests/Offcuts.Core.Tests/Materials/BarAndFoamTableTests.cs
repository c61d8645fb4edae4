using Offcuts.Core.Materials;

namespace Offcuts.Core.Tests.Materials;

public sealed class BarAndFoamTableTests
{
    // Source of every row: ASTM A615/A615M, Table 1.
    [Theory]
    [InlineData(3, 10, 0.375, 0.11, 0.376, 0.560)]
    [InlineData(4, 13, 0.500, 0.20, 0.668, 0.994)]
    [InlineData(5, 16, 0.625, 0.31, 1.043, 1.552)]
    [InlineData(6, 19, 0.750, 0.44, 1.502, 2.235)]
    [InlineData(7, 22, 0.875, 0.60, 2.044, 3.042)]
    [InlineData(8, 25, 1.000, 0.79, 2.670, 3.973)]
    [InlineData(9, 29, 1.128, 1.00, 3.400, 5.060)]
    [InlineData(10, 32, 1.270, 1.27, 4.303, 6.404)]
    [InlineData(11, 36, 1.410, 1.56, 5.313, 7.907)]
    public void Bars_are_those_of_ASTM_A615_Table_1(int number, int metric, double diameter, double area, double poundsPerFoot, double kilogramsPerMetre) =>
        BarSize.Find(number).Should().Be(
            new BarSize(number, metric, (decimal)diameter, (decimal)area, (decimal)poundsPerFoot, (decimal)kilogramsPerMetre));

    /// <summary>1 lb/ft = 0.45359237 / 0.3048 kg/m, both exact; each printed figure may be half of its last place off.</summary>
    [Fact]
    public void Pounds_a_foot_and_kilograms_a_metre_say_the_same()
    {
        foreach (var bar in BarSize.All)
            (bar.PoundsPerFoot * 0.45359237m / 0.3048m).Should().BeApproximately(bar.KilogramsPerMetre, 0.0005m + 0.0005m * 1.4882m, "bar #{0}", bar.Number);
    }

    [Fact]
    public void There_is_no_other_bar()
    {
        BarSize.All.Should().HaveCount(9);
        BarSize.Find(2).Should().BeNull();
        BarSize.Find(12).Should().BeNull();
    }

    // ASTM C578: least density and compressive resistance read; R of I and II read, of the others from memory (VIII and IX sure, XI and XIV fair).
    [Theory]
    [InlineData("XI", 0.70, 5, 3.1)]
    [InlineData("I", 0.90, 10, 3.6)]
    [InlineData("VIII", 1.15, 13, 3.8)]
    [InlineData("II", 1.35, 15, 4.0)]
    [InlineData("IX", 1.80, 25, 4.2)]
    [InlineData("XIV", 2.40, 40, 4.2)]
    public void Foam_types_are_those_of_ASTM_C578_with_R_partly_from_memory(string name, double density, double psi, double r) =>
        EpsType.Find(name).Should().Be(new EpsType(name, (decimal)density, (decimal)psi, (decimal)r));

    [Fact]
    public void A_type_is_found_in_either_case_and_an_unknown_one_is_not()
    {
        EpsType.All.Should().HaveCount(6);
        EpsType.Find("ix")!.Name.Should().Be("IX");
        EpsType.Find("III").Should().BeNull();
    }
}
