using System.Numerics;
using Offcuts.Core.Faults;

namespace Offcuts.Core.Measures;

/// <summary>
/// An exact length: a whole number of 1/320 mm, the coarsest unit in which 1/64 in (127) and 0.1 mm (32) are both whole.
/// Never negative, at most <see cref="Longest"/>. <c>default</c> is zero. Sums are exact; taking more than there is throws.
/// </summary>
public readonly record struct Length : IComparable<Length>, IComparisonOperators<Length, Length, bool>
{
    /// <summary>Units in one millimetre.</summary>
    public const long PerMillimetre = 320;

    /// <summary>Units in one inch: 25.4 x 320.</summary>
    public const long PerInch = 8128;

    /// <summary>Units in one foot.</summary>
    public const long PerFoot = 12 * PerInch;

    private Length(long units) => Units = units;

    /// <summary>The length in 1/320 mm.</summary>
    public long Units { get; }

    /// <summary>No length.</summary>
    public static Length Zero => default;

    /// <summary>1000 ft. Longer is taken for a slip of the unit.</summary>
    public static Length Longest => new(1000 * PerFoot);

    /// <summary>A length of so many 1/320 mm. Throws where it is negative or over a million metres (a sum gone wrong).</summary>
    public static Length FromUnits(long units) =>
        units is < 0 or > 320_000_000_000 ? throw new ArgumentOutOfRangeException(nameof(units), units, "no such length") : new(units);

    /// <summary>Inches, exact: throws where the number is no whole number of units.</summary>
    public static Length Inches(decimal inches) => FromExact(inches * PerInch);

    /// <summary>Feet, exact: throws where the number is no whole number of units.</summary>
    public static Length Feet(decimal feet) => FromExact(feet * PerFoot);

    /// <summary>Millimetres, exact: throws where the number is no whole number of units.</summary>
    public static Length Millimetres(decimal millimetres) => FromExact(millimetres * PerMillimetre);

    /// <summary>The length in millimetres, exact (at most six decimals).</summary>
    public decimal InMillimetres => (decimal)Units / PerMillimetre;

    /// <summary>The length in inches, to 28 digits.</summary>
    public decimal InInches => (decimal)Units / PerInch;

    /// <summary>The length in feet, to 28 digits.</summary>
    public decimal InFeet => (decimal)Units / PerFoot;

    /// <summary>True for no length at all.</summary>
    public bool IsZero => Units == 0;

    /// <summary>What is left when <paramref name="taken"/> is gone, never less than nothing.</summary>
    public Length LessAtMost(Length taken) => new(Math.Max(0, Units - taken.Units));

    /// <summary>The shorter of two.</summary>
    public static Length Min(Length a, Length b) => a.Units <= b.Units ? a : b;

    /// <summary>The longer of two.</summary>
    public static Length Max(Length a, Length b) => a.Units >= b.Units ? a : b;

    /// <summary>Reads a length as people write it; see <see cref="LengthReader"/> for the forms.</summary>
    /// <param name="text">The whole text must be one length.</param>
    /// <param name="bare">The unit of a number without one; none refuses a bare number.</param>
    public static Result<Length> Parse(string text, LengthUnit? bare = null) => LengthReader.ReadAll(text, bare);

    /// <summary>Exact text in inches where the length is a whole number of 1/64 in, else in millimetres. <see cref="Parse"/> reads it back to the same length.</summary>
    public override string ToString() => LengthText.Exact(this);

    /// <summary>Text for a person, in their unit; marked with <c>~</c> where it had to be rounded. See <see cref="LengthText"/>.</summary>
    public string ToText(LengthUnit unit) => LengthText.Rounded(this, unit);

    /// <inheritdoc/>
    public int CompareTo(Length other) => Units.CompareTo(other.Units);

    /// <summary>Laid end to end.</summary>
    public static Length operator +(Length a, Length b) => FromUnits(a.Units + b.Units);

    /// <summary>The rest. Throws where <paramref name="b"/> is longer.</summary>
    public static Length operator -(Length a, Length b) => FromUnits(a.Units - b.Units);

    /// <summary>So many of the same.</summary>
    public static Length operator *(Length a, int count) => FromUnits(checked(a.Units * count));

    /// <summary>Shorter than.</summary>
    public static bool operator <(Length a, Length b) => a.Units < b.Units;

    /// <summary>Longer than.</summary>
    public static bool operator >(Length a, Length b) => a.Units > b.Units;

    /// <summary>Not longer than.</summary>
    public static bool operator <=(Length a, Length b) => a.Units <= b.Units;

    /// <summary>Not shorter than.</summary>
    public static bool operator >=(Length a, Length b) => a.Units >= b.Units;

    private static Length FromExact(decimal units) =>
        units == decimal.Truncate(units)
            ? FromUnits((long)units)
            : throw new ArgumentException($"{units} is no whole number of 1/320 mm", nameof(units));
}
