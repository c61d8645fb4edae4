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
    public void A_likely_slip_is_told(string line, string told) =>
        Among(line).Select(odd => odd.Told).Should().Equal(told);

    [Theory]
    [InlineData("2x10 11'4, 24', 9'2-1/2")]
    [InlineData("1x3 4 in")]
    [InlineData("5/4x6 16'")]
    [InlineData("6x6 20'")]
    [InlineData("#4 60'")]
    [InlineData("foam 2-1/2x12 8'")]
    [InlineData("plywood 3/4 4x8")]
    public void What_stores_sell_is_not(string line) => Among(line).Should().BeEmpty();

    [Fact]
    public void Each_doubt_is_told_once() =>
        Among("2x4 40', 8', 40' x3").Should().ContainSingle();

    private static IReadOnlyList<OddSize> Among(string line) => OddSize.Among(CatalogueLine.Read(line, LengthUnit.Inch).Value.Pieces, LengthUnit.Inch);
}
