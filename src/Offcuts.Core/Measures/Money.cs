using System.Globalization;
using Offcuts.Core.Faults;

namespace Offcuts.Core.Measures;

/// <summary>A whole number of cents; may be negative (a saving can turn out a loss). <c>default</c> is nothing.</summary>
public readonly record struct Money(long Cents) : IComparable<Money>
{
    /// <summary>No money.</summary>
    public static Money Zero => default;

    /// <summary>The largest price that is believed: 10 million.</summary>
    public static Money Largest => new(1_000_000_000);

    /// <summary>Reads a price: <c>12</c>, <c>12.5</c>, <c>12.50</c>, <c>$12.50</c>, <c>1,250.00</c>. Refuses negatives and more than two decimals.</summary>
    public static Result<Money> Parse(string text)
    {
        var trimmed = text.Trim().TrimStart('$', '€', '£').Trim();
        if (trimmed.StartsWith('-')) return MeasureFaults.MoneyNegative(1);
        if (!decimal.TryParse(trimmed, NumberStyles.AllowDecimalPoint | NumberStyles.AllowThousands, CultureInfo.InvariantCulture, out var amount)
            || decimal.Round(amount, 2) != amount)
            return MeasureFaults.MoneyUnreadable(1);
        return amount * 100 > Largest.Cents ? MeasureFaults.MoneyAbsurd(1) : new Money((long)(amount * 100));
    }

    /// <summary>With two decimals and no sign of currency: <c>12.50</c>, <c>-3.00</c>.</summary>
    public override string ToString() => (Cents / 100m).ToString("0.00", CultureInfo.InvariantCulture);

    /// <summary>With a currency sign before it: <c>$12.50</c>, <c>-$3.00</c>.</summary>
    public string ToText(string sign) => Cents < 0 ? $"-{sign}{new Money(-Cents)}" : $"{sign}{this}";

    /// <summary>A share of it, in thousandths of a percent, rounded half up: tax on a price.</summary>
    public Money Share(int thousandthsOfPercent) =>
        new((long)Math.Floor((decimal)Cents * thousandthsOfPercent / 100_000m + 0.5m));

    /// <inheritdoc/>
    public int CompareTo(Money other) => Cents.CompareTo(other.Cents);

    /// <summary>The sum.</summary>
    public static Money operator +(Money a, Money b) => new(checked(a.Cents + b.Cents));

    /// <summary>The difference.</summary>
    public static Money operator -(Money a, Money b) => new(checked(a.Cents - b.Cents));

    /// <summary>So many times.</summary>
    public static Money operator *(Money a, int count) => new(checked(a.Cents * count));

    /// <summary>Less than.</summary>
    public static bool operator <(Money a, Money b) => a.Cents < b.Cents;

    /// <summary>More than.</summary>
    public static bool operator >(Money a, Money b) => a.Cents > b.Cents;
}
