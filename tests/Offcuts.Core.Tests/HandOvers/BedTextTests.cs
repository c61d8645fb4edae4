using Offcuts.Core.HandOvers;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Tests.HandOvers;

/// <summary>A bed as it is typed. Every bed here is invented.</summary>
public sealed class BedTextTests
{
    [Theory]
    [InlineData("utility trailer: 10' 1200 lb 80 cu ft", "utility trailer: 10' 1200 lb 80 cu ft")]
    [InlineData("pickup: 6' 6\", 1500 lbs", "pickup: 6' 6\" 1500 lb")]
    [InlineData("cart:2.4 m 1500.5kg 2 m3", "cart: ~7' 10-1/2\" 3308 lb 70.6 cu ft")]
    public void A_bed_is_read_as_people_write_it(string typed, string line)
    {
        BedText.Line(BedText.Read(typed).Value, LengthUnit.Inch).Should().Be(line);
    }

    [Fact]
    public void Pounds_and_cubic_feet_are_exact_and_kilograms_never_become_more()
    {
        BedText.Read("trailer: 10' 1200 lb 80 cu ft").Value.Should().Be(new Bed("trailer", Length.Feet(10), 1_200_000, 80_000));

        // 500 kg are 1102.3113.. lb (1 lb is 0.45359237 kg exactly); 1 m3 is 35.3146.. cu ft.
        BedText.Read("trailer: 3 m 500 kg 1 m3").Value.Should().Be(new Bed("trailer", Length.Millimetres(3000), 1_102_311, 35_314));
        BedText.Line(BedText.Read("trailer: 3 m 500 kg 1 m3").Value, LengthUnit.Millimetre).Should().Be("trailer: 3000 mm 500 kg 1 m3");
    }

    [Theory]
    [InlineData("trailer")]
    [InlineData("trailer: 10' 1200")]
    [InlineData("trailer: 1200 lb")]
    [InlineData(": 10' 1200 lb")]
    [InlineData("trailer: 10 1200 lb")]
    [InlineData("trailer: 10' 1200 lb 80")]
    [InlineData("trailer: 10' 1.2.3 lb")]
    public void What_can_not_be_read_says_how_a_bed_is_written(string typed) =>
        BedText.Read(typed).Fault.Sentence.Should().Be("write a bed like: trailer: 10' 1200 lb 80 cu ft (the longest piece, the weight it may carry, and, if you know it, how much fits); or in mm, kg and m3");

    [Fact]
    public void A_bed_that_carries_nothing_is_refused() =>
        BedText.Read("trailer: 10' 0 lb").Fault.Sentence.Should().Be("a bed has a longest piece and a weight it may carry, both over 0; its volume may be left out");

    [Theory]
    [InlineData("0.1 lb", 100)]
    [InlineData("18kg", 39_684)]
    [InlineData("18", null)]
    [InlineData("0 lb", null)]
    public void A_weight_is_read_and_rounded_up(string typed, int? thousandths) => BedText.ReadWeight(typed).Should().Be(thousandths);
}
