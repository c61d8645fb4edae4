using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.Yard;

/// <summary>An example that is typed after means what it seems to mean, in either unit.</summary>
public sealed class LineExamplesTests
{
    [Theory]
    [InlineData(LengthUnit.Inch, "14-1/2\"")]
    [InlineData(LengthUnit.Millimetre, "370 mm")]
    public void Blocking_is_as_long_as_the_space_between_studs(LengthUnit unit, string length)
    {
        CutLine.Read(LineExamples.Need(unit), "walls", unit).Value.Cut!.Shortest.Should().Be(Length.Parse(length, unit).Value);
    }

    [Theory]
    [InlineData(LengthUnit.Inch, "24\"")]
    [InlineData(LengthUnit.Millimetre, "600 mm")]
    public void Stakes_are_long_enough_to_be_driven(LengthUnit unit, string length)
    {
        CutLine.Read(LineExamples.FirstNeed(unit), "forms", unit).Value.Cut!.Shortest.Should().Be(Length.Parse(length, unit).Value);
    }

    [Theory]
    [InlineData(LengthUnit.Inch, "8'")]
    [InlineData(LengthUnit.Millimetre, "2400 mm")]
    public void A_price_names_a_store_length(LengthUnit unit, string length)
    {
        PriceLine.Read(LineExamples.Price(unit), unit).Value.Length.Should().Be(Length.Parse(length, unit).Value);
    }

    [Theory]
    [InlineData(LengthUnit.Inch, "write a line like blocking: 2x4 14-1/2 x12 rough")]
    [InlineData(LengthUnit.Millimetre, "write a line like blocking: 2x4 370 x12 rough")]
    public void Who_wrote_nothing_is_shown_a_line_of_their_own_unit(LengthUnit unit, string told)
    {
        CutLine.Read("", "walls", unit).Fault.Sentence.Should().EndWith(told);
    }
}
