using CsCheck;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Tests.Measures;

public sealed class MoneyTests
{
    [Theory]
    [InlineData("12", 1200)]
    [InlineData("12.5", 1250)]
    [InlineData("12.50", 1250)]
    [InlineData("12.", 1200)]
    [InlineData(".5", 50)]
    [InlineData("0", 0)]
    [InlineData("$12.50", 1250)]
    [InlineData("$ 12.50", 1250)]
    [InlineData("€3", 300)]
    [InlineData(" 1,250.00 ", 125_000)]
    [InlineData("1,234,567.89", 123_456_789)]
    [InlineData("10000000", 1_000_000_000)]
    public void A_price_is_read_to_the_cent(string text, long cents) => Money.Parse(text).Value.Cents.Should().Be(cents);

    [Theory]
    [InlineData("", 1, "an amount of money is written like 12.50, without more than two decimals")]
    [InlineData("free", 1, "an amount of money is written like 12.50, without more than two decimals")]
    [InlineData("  12.505", 3, "an amount of money is written like 12.50, without more than two decimals")]
    [InlineData("1.250", 1, "an amount of money is written like 12.50, without more than two decimals")]
    [InlineData("12,50", 1, "an amount of money is written like 12.50, without more than two decimals")]
    [InlineData("1,2,3", 1, "an amount of money is written like 12.50, without more than two decimals")]
    [InlineData("$$5", 1, "an amount of money is written like 12.50, without more than two decimals")]
    [InlineData("1e3", 1, "an amount of money is written like 12.50, without more than two decimals")]
    [InlineData("12\n", 1, null)]
    [InlineData("-3", 1, "a price can't be negative")]
    [InlineData("-$3", 1, "a price can't be negative")]
    [InlineData("$-3", 1, "a price can't be negative")]
    [InlineData("10000000.01", 1, "this is more than 10 million; check the amount")]
    [InlineData("999999999999999999999999", 1, "this is more than 10 million; check the amount")]
    public void What_is_no_price_is_refused(string text, int column, string? sentence)
    {
        var read = Money.Parse(text);
        if (sentence is null)
        {
            read.Value.Cents.Should().Be(1200, "a line's end around a price is a space like any other");
            return;
        }

        read.Fault.Sentence.Should().Be(sentence);
        read.Fault.Column.Should().Be(column);
    }

    [Theory]
    [InlineData(1250, "12.50", "$12.50")]
    [InlineData(5, "0.05", "$0.05")]
    [InlineData(0, "0.00", "$0.00")]
    [InlineData(-300, "-3.00", "-$3.00")]
    public void Money_is_written_with_two_decimals_and_the_sign_before_the_currency(long cents, string plain, string signed)
    {
        new Money(cents).ToString().Should().Be(plain);
        new Money(cents).ToText("$").Should().Be(signed);
    }

    [Theory]
    [InlineData(1000, 8250, 83)]
    [InlineData(999, 8250, 82)]
    [InlineData(10, 5000, 1)]
    [InlineData(9, 5000, 0)]
    [InlineData(-10, 5000, 0)]
    [InlineData(398, 0, 0)]
    public void A_share_is_rounded_half_up_to_the_cent(long cents, int thousandths, long share) =>
        new Money(cents).Share(thousandths).Cents.Should().Be(share);

    /// <summary>What is written is read back.</summary>
    [Fact]
    public void Written_money_is_read_back() =>
        Gen.Long[0, Money.Largest.Cents].Sample(cents => Money.Parse(new Money(cents).ToString()).Value.Cents == cents);

    /// <summary>Any text is read or refused.</summary>
    [Fact]
    public void Any_text_is_read_or_refused() =>
        Gen.OneOf(Gen.String, Gen.String[Gen.Char["0123456789.,$€-− "], 0, 12]).Sample(text =>
        {
            var read = Money.Parse(text);
            return read.Ok ? read.Value.Cents is >= 0 and <= 1_000_000_000 : read.Fault.Column <= text.Length + 1;
        });

    [Fact]
    public void Money_adds_up_and_compares()
    {
        var (a, b) = (new Money(250), new Money(100));
        (a + b).Cents.Should().Be(350);
        (b - a).Cents.Should().Be(-150);
        (a * 3).Cents.Should().Be(750);
        (a > b).Should().BeTrue();
        (a < b).Should().BeFalse();
        a.CompareTo(b).Should().BePositive();
    }
}
