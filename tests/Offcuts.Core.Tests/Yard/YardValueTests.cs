using System.Numerics;
using CsCheck;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.Yard;

/// <summary>The formula is that of the matching definition; all prices are our own invention.</summary>
public sealed class YardValueTests
{
    private static readonly Material TwoByFour = MaterialReader.Read("2x4").Value;

    // 8 ft at 4.00, 10 ft at 5.50, 12 ft at 6.00, given out of order.
    private static readonly StorePrice[] Prices = [At(120, 550), At(96, 400), At(144, 600)];

    private static StorePrice At(decimal inches, long cents) =>
        new() { Material = TwoByFour, Length = Length.Inches(inches), Price = new Money(cents) };

    private static long Value(decimal inches, Condition condition = Condition.Sound, StorePrice[]? prices = null) =>
        YardValue.Of(Length.Inches(inches), condition, prices ?? Prices, keep: Length.Inches(12)).Cents;

    [Theory]
    [InlineData(96, 400)] // s1 itself: p1
    [InlineData(48, 100)] // half of s1: 400 x 1/4
    [InlineData(24, 25)] // 400 x 1/16
    [InlineData(12, 6)] // the keep length itself: 400 x 1/64 = 6.25
    [InlineData(11.984375, 0)] // 1/64 in below the keep length
    [InlineData(108, 475)] // half way from 400 to 550
    [InlineData(120, 550)]
    [InlineData(132, 575)] // half way from 550 to 600
    [InlineData(144, 600)] // sm itself: pm
    [InlineData(168, 700)] // above: 600 x 14/12
    public void A_sound_length_is_worth_what_the_formula_says(double inches, long cents) => Value((decimal)inches).Should().Be(cents);

    [Theory]
    [InlineData(96, Condition.Fair, 280)]
    [InlineData(96, Condition.Poor, 160)]
    [InlineData(24, Condition.Fair, 18)] // 17.5 goes up
    [InlineData(12, Condition.Poor, 3)] // 6.25 x 0.4 = 2.5 goes up; rounding 6.25 first would have given 2
    [InlineData(12, Condition.Fair, 4)] // 4.375
    public void Condition_discounts_and_the_cent_is_rounded_half_up_once(double inches, Condition condition, long cents) =>
        Value((decimal)inches, condition).Should().Be(cents);

    [Fact]
    public void A_longer_length_may_be_cheaper_and_the_value_follows_the_line_down()
    {
        StorePrice[] odd = [At(96, 400), At(120, 300)];
        Value(108, prices: odd).Should().Be(350);
        Value(126, prices: odd).Should().Be(315, "300 x 126/120");
    }

    [Fact]
    public void Without_a_price_nothing_has_a_value() => Value(96, prices: []).Should().Be(0);

    [Fact]
    public void A_price_without_a_length_values_nothing() => Value(96, prices: [At(0, 500)]).Should().Be(0);

    [Fact]
    public void Nothing_is_worth_nothing_even_without_a_keep_length() =>
        YardValue.Of(Length.Zero, Condition.Sound, Prices, keep: Length.Zero).Cents.Should().Be(0);

    [Fact]
    public void A_long_piece_is_worth_more_whole_than_in_parts() =>
        (2 * Value(48)).Should().BeLessThan(Value(96), "that is why the plan reaches for the short piece first");

    private static readonly Gen<StorePrice[]> AnyPrices =
        Gen.Select(Gen.Long[1, Length.Longest.Units], Gen.Long[0, Money.Largest.Cents])
            .Select(pair => new StorePrice { Material = TwoByFour, Length = Length.FromUnits(pair.Item1), Price = new Money(pair.Item2) })
            .Array[1, 6]
            .Where(prices => prices.DistinctBy(price => price.Length).Count() == prices.Length);

    /// <summary>Never negative, and to the cent what the definition gives with whole numbers of any size.</summary>
    [Fact]
    public void The_value_is_exact_and_never_negative() =>
        Gen.Select(Gen.Long[0, Length.Longest.Units], AnyPrices, Gen.Enum<Condition>(), Gen.Long[0, 500_000]).Sample((units, prices, condition, keep) =>
        {
            var value = YardValue.Of(Length.FromUnits(units), condition, prices, Length.FromUnits(keep)).Cents;
            return value >= 0 && value == Again(units, prices, condition, keep);
        });

    // The definition once more, with rationals of unlimited size and another order of steps.
    private static BigInteger Again(long length, StorePrice[] prices, Condition condition, long keep)
    {
        if (length < keep || length == 0) return 0;
        var points = prices.Select(price => (S: new BigInteger(price.Length.Units), P: new BigInteger(price.Price.Cents))).OrderBy(point => point.S).ToList();
        var l = new BigInteger(length);
        BigInteger top, bottom;
        if (l <= points[0].S) (top, bottom) = (points[0].P * l * l, points[0].S * points[0].S);
        else if (l >= points[^1].S) (top, bottom) = (points[^1].P * l, points[^1].S);
        else
        {
            var right = points.First(point => point.S >= l);
            var left = points.Last(point => point.S < l);
            (top, bottom) = (left.P * (right.S - l) + right.P * (l - left.S), right.S - left.S);
        }

        var factor = condition switch { Condition.Sound => (1, 1), Condition.Fair => (7, 10), _ => (2, 5) };
        (top, bottom) = (top * factor.Item1, bottom * factor.Item2);
        var floor = BigInteger.DivRem(top, bottom, out var rest);
        return 2 * rest >= bottom ? floor + 1 : floor;
    }
}
