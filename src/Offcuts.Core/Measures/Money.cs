using System.Globalization;
using System.Text.RegularExpressions;
using Offcuts.Core.Faults;

namespace Offcuts.Core.Measures;

/// <summary>A whole number of cents; may be negative (a saving can turn out a loss). <c>default</c> is nothing.</summary>
public readonly partial record struct Money(long Cents) : IComparable<Money>
{
    /// <summary>No money.</summary>
    public static Money Zero => default;

    /// <summary>The largest price that is believed: 10 million.</summary>
    public static Money Largest => new(1_000_000_000);

    /// <summary>
    /// Reads a price: <c>12</c>, <c>12.5</c>, <c>12.50</c>, <c>$12.50</c>, <c>1,250.00</c>. Refuses negatives, more than two
    /// decimals, and a comma that parts no thousands, since <c>12,50</c> read as 1250 would be a costly slip.
    /// </summary>
    public static Result<Money> Parse(string text)
    {
        var column = text.Length - text.TrimStart().Length + 1;
        var match = Written().Match(text);
        if (!match.Success) return MeasureFaults.MoneyUnreadable(column);
        if (match.Groups["minus"].Success) return MeasureFaults.MoneyNegative(column);
        var figures = match.Groups["figures"].Value.Replace(",", "", StringComparison.Ordinal);
        var believable = decimal.TryParse(figures, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var amount)
            && amount * 100 <= Largest.Cents;
        return believable ? new Money((long)(amount * 100)) : MeasureFaults.MoneyAbsurd(column);
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

    [GeneratedRegex(@"^\s*(?:(?<minus>[-−])?\s?[$€£]?|[$€£]\s?(?<minus>[-−]))\s?(?<figures>(?:\d{1,3}(?:,\d{3})+|\d{1,24})(?:\.\d{0,2})?|\.\d{1,2})\s*\z", RegexOptions.CultureInvariant)]
    private static partial Regex Written();
}
