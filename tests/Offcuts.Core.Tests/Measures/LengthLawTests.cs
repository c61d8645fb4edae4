using CsCheck;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Tests.Measures;

/// <summary>
/// Rules that hold for every length. A failing example prints its seed; set the environment variable CsCheck_Seed to it to see it again.
/// </summary>
public sealed class LengthLawTests
{
    private static readonly Gen<Length> AnyLength = Gen.Long[0, Length.Longest.Units].Select(Length.FromUnits);

    private static readonly Gen<string> AnyText = Gen.OneOf(
        Gen.String,
        Gen.String[Gen.Char["0123456789.'\"-/ xftinmc½″’,~−"], 0, 24]);

    /// <summary>Exact text is read back to the same length.</summary>
    [Fact]
    public void Exact_text_is_read_back_to_the_same_length() =>
        AnyLength.Sample(length => Length.Parse(length.ToString()).Value == length);

    /// <summary>What a tape shows is read back to the same length.</summary>
    [Fact]
    public void A_length_on_a_sixteenth_is_shown_without_rounding_and_read_back() =>
        Gen.Long[0, Length.Longest.Units / 508].Select(sixteenths => Length.FromUnits(sixteenths * 508)).Sample(length =>
            !length.ToText(LengthUnit.Inch).StartsWith('~') && Length.Parse(length.ToText(LengthUnit.Inch)).Value == length);

    /// <summary>What a metric tape shows is read back to the same length.</summary>
    [Fact]
    public void A_length_on_a_tenth_of_a_millimetre_is_shown_without_rounding_and_read_back() =>
        Gen.Long[0, Length.Longest.Units / 32].Select(tenths => Length.FromUnits(tenths * 32)).Sample(length =>
            !length.ToText(LengthUnit.Millimetre).StartsWith('~') && Length.Parse(length.ToText(LengthUnit.Millimetre)).Value == length);

    /// <summary>Rounding goes half up: the shown mark is at most half a step away, and a half goes to the longer.</summary>
    [Theory]
    [InlineData(LengthUnit.Inch, 508)]
    [InlineData(LengthUnit.Millimetre, 32)]
    public void A_rounded_length_is_marked_and_goes_to_the_nearer_mark_half_up(LengthUnit unit, long step) =>
        Gen.Long[0, Length.Longest.Units - step].Select(Length.FromUnits).Sample(length =>
        {
            var shown = length.ToText(unit);
            var off = Length.Parse(shown.TrimStart('~')).Value.Units - length.Units;
            return shown.StartsWith('~') == (off != 0) && 2 * off <= step && 2 * off > -step;
        });

    /// <summary>Any text is read or refused with a column inside it or just behind it.</summary>
    [Fact]
    public void Any_text_is_read_or_refused_with_a_column_in_it() =>
        AnyText.Sample(text =>
        {
            foreach (var bare in new LengthUnit?[] { null, LengthUnit.Inch, LengthUnit.Millimetre })
            {
                var read = Length.Parse(text, bare);
                if (!read.Ok && (read.Fault.Column < 1 || read.Fault.Column > text.Length + 1)) return false;
            }

            return true;
        });

    /// <summary>Spaces around a length change nothing but the column.</summary>
    [Fact]
    public void Spaces_around_change_nothing() =>
        AnyText.Sample(text =>
        {
            var plain = Length.Parse(text);
            var spaced = Length.Parse("  " + text + " ");
            return plain.Ok == spaced.Ok && (!plain.Ok || plain.Value == spaced.Value);
        });

    /// <summary>Adding is free of order and is undone by taking away.</summary>
    [Fact]
    public void Sums_are_exact() =>
        Gen.Select(AnyLength, AnyLength, AnyLength).Sample((a, b, c) =>
            a + b == b + a && a + b + c == a + (b + c) && a + b - b == a && a + Length.Zero == a && a * 3 == a + a + a);

    /// <summary>Order is that of the units, and adding keeps it.</summary>
    [Fact]
    public void Order_is_that_of_the_units_and_adding_keeps_it() =>
        Gen.Select(AnyLength, AnyLength, AnyLength).Sample((a, b, c) =>
            (a < b) == (a.Units < b.Units) && (a <= b) == (a.Units <= b.Units) && (a > b) == (b < a) && (a >= b) == (b <= a)
            && Math.Sign(a.CompareTo(b)) == Math.Sign(a.Units.CompareTo(b.Units))
            && (a < b) == (a + c < b + c)
            && Length.Min(a, b) + Length.Max(a, b) == a + b && Length.Min(a, b) <= Length.Max(a, b));

    /// <summary>Taking at most what there is never goes below nothing.</summary>
    [Fact]
    public void What_is_left_is_never_less_than_nothing() =>
        Gen.Select(AnyLength, AnyLength).Sample((a, b) => a.LessAtMost(b) == (a > b ? a - b : Length.Zero));

    [Fact]
    public void Taking_more_than_there_is_throws()
    {
        var taking = () => Length.Inches(1) - Length.Inches(2);
        taking.Should().Throw<ArgumentOutOfRangeException>();
    }

    [Fact]
    public void A_number_between_the_units_throws_where_a_program_makes_it()
    {
        var making = () => Length.Millimetres(0.001m);
        making.Should().Throw<ArgumentException>();
    }

    [Fact]
    public void The_units_are_what_the_definition_says()
    {
        Length.Inches(1m / 64).Units.Should().Be(127);
        Length.Millimetres(0.1m).Units.Should().Be(32);
        Length.Inches(1).Units.Should().Be(8128);
        Length.Feet(1).Should().Be(Length.Millimetres(304.8m));
        Length.Longest.Should().Be(Length.Feet(1000));
        default(Length).Should().Be(Length.Zero);
        Length.Inches(92.625m).InMillimetres.Should().Be(2352.675m);
        Length.Inches(18).InFeet.Should().Be(1.5m);
        Length.Feet(8).InInches.Should().Be(96m);
    }
}
