using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>The fast value where a number of floating point alone would not do.</summary>
public sealed class ValueCurveTests
{
    // Of 100 in at 2.00 times an odd number, an odd number of twentieths is worth an odd number of half cents: 2.00 x (5/100)^2 is half a cent.
    [Fact]
    public void On_the_half_cent_it_is_rounded_up_as_the_exact_sum_is()
    {
        var below = 0;
        for (var price = 200L; price < 40_000; price += 400)
        {
            StorePrice[] book = [Price("100\"", price)];
            var curve = new ValueCurve(Condition.Sound, book, Length.Zero);
            for (var twentieths = 1; twentieths < 20; twentieths += 2)
            {
                var length = Length.Inches(5 * twentieths);
                var halves = price / 200 * twentieths * twentieths;

                curve.At(length.Units).Should().Be((halves + 1) / 2, $"{halves} half cents");
                curve.At(length.Units).Should().Be(YardValue.Of(length, Condition.Sound, book, Length.Zero).Cents);
                if (price * (length.Units / (double)L("100\"").Units) * (length.Units / (double)L("100\"").Units) < halves / 2.0) below++;
            }
        }

        below.Should().BePositive("else numbers of floating point would do");
    }
}
