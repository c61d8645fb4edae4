using System.Numerics;
using Offcuts.Core.Faults;

namespace Offcuts.Core.Measures;

/// <summary>
/// Reads lengths as people write them: <c>96"</c>, <c>8'</c>, <c>7' 8-5/8"</c>, <c>8 ft 3 1/2</c>, <c>8'3.5</c>,
/// <c>0-11 5/8</c> (feet-inches), <c>92 5/8 in</c>, <c>92.625"</c>, <c>2400 mm</c>, <c>240 cm</c>, <c>2.4 m</c>;
/// straight, curly or doubled quotes and prime marks alike. A zero needs no unit.
/// </summary>
/// <remarks>
/// The value is gathered as an exact ratio of whole numbers and refused where it is no whole number of units;
/// nothing is ever rounded on the way in.
/// </remarks>
public static class LengthReader
{
    // More in a row is absurd or inexact anyway, and a long run must not cost time.
    private const int MostDigits = 18;

    private enum Mark
    {
        None,
        Foot,
        Inch,
        Millimetre,
        Centimetre,
        Metre,
    }

    /// <summary>Reads the whole of <paramref name="text"/> as one length.</summary>
    public static Result<Length> ReadAll(string text, LengthUnit? bare)
    {
        var start = SkipSpace(text, 0);
        var read = Read(text, start, bare);
        if (!read.TryGet(out var found)) return Result<Length>.Fail(read.Faults);
        var rest = SkipSpace(text, found.End);
        if (rest == text.Length) return found.Length;
        var word = WordAt(text, rest);
        return word.Length > 0 && found.Bare ? MeasureFaults.UnitUnknown(word, rest + 1) : MeasureFaults.LengthLeftover(rest + 1);
    }

    /// <summary>
    /// Reads one length that begins at <paramref name="start"/> and says where it ends, so that more text may follow it.
    /// </summary>
    public static Result<FoundLength> Read(string text, int start, LengthUnit? bare)
    {
        var at = SkipSpace(text, start);
        if (at < text.Length && text[at] is '-' or '−' && at + 1 < text.Length
            && (char.IsAsciiDigit(text[at + 1]) || IsPointedNumber(text, at + 1) || IsVulgarFraction(text[at + 1])))
            return MeasureFaults.LengthNegative(at + 1);

        var first = ReadNumber(text, at);
        if (!first.TryGet(out var number)) return Result<FoundLength>.Fail(first.Faults);

        if (number.Whole && IsDashedInches(text, number.End))
            return ReadDashedInches(text, at, number);

        var (mark, end) = ReadMark(text, number.End);
        if (mark == Mark.Foot) return ReadInchesAfterFeet(text, at, number, end);
        if (mark != Mark.None) return Make(number.Value * UnitsOf(mark), at, end, bare: false);
        if (bare is { } unit)
            return Make(number.Value * UnitsOf(unit == LengthUnit.Inch ? Mark.Inch : Mark.Millimetre), at, number.End, bare: true);
        if (number.Value.IsZero) return new FoundLength(Length.Zero, number.End, Bare: true);
        var word = WordAt(text, SkipSpace(text, number.End));
        return word.Length > 0
            ? MeasureFaults.UnitUnknown(word, SkipSpace(text, number.End) + 1)
            : MeasureFaults.UnitMissing(at + 1);
    }

    // "8-3 1/2": feet, a dash, inches. Told from "8-1/2" by the absence of a bar straight after the second number.
    private static bool IsDashedInches(string text, int at)
    {
        if (at >= text.Length || text[at] != '-') return false;
        var end = DigitsEnd(text, at + 1);
        return end > at + 1 && (end == text.Length || text[end] != '/');
    }

    private static Result<FoundLength> ReadDashedInches(string text, int start, Number feet)
    {
        var read = ReadNumber(text, feet.End + 1);
        if (!read.TryGet(out var inches)) return Result<FoundLength>.Fail(read.Faults);
        var (mark, end) = ReadMark(text, inches.End);
        if (mark is not (Mark.None or Mark.Inch)) return MeasureFaults.LengthLeftover(inches.End + 1);
        if (inches.Value >= Ratio.Of(12)) return MeasureFaults.InchesOverTwelve(feet.End + 2);
        return Make(feet.Value * Length.PerFoot + inches.Value * Length.PerInch, start, mark == Mark.None ? inches.End : end, bare: false);
    }

    // A number after the feet belongs to them unless a unit of its own says otherwise ("8' 2400 mm" is two lengths).
    private static Result<FoundLength> ReadInchesAfterFeet(string text, int start, Number feet, int end)
    {
        var alone = Make(feet.Value * Length.PerFoot, start, end, bare: false);
        var at = SkipSpace(text, end);
        if (at < text.Length && text[at] == '-') at = SkipSpace(text, at + 1);
        if (at >= text.Length || !(char.IsAsciiDigit(text[at]) || IsPointedNumber(text, at) || IsVulgarFraction(text[at]))) return alone;
        var read = ReadNumber(text, at);
        if (!read.TryGet(out var inches)) return Result<FoundLength>.Fail(read.Faults);
        var (mark, inchEnd) = ReadMark(text, inches.End);
        if (mark is not (Mark.None or Mark.Inch)) return alone;
        if (inches.Value >= Ratio.Of(12)) return MeasureFaults.InchesOverTwelve(at + 1);
        return Make(feet.Value * Length.PerFoot + inches.Value * Length.PerInch, start, mark == Mark.None ? inches.End : inchEnd, bare: false);
    }

    private static Result<FoundLength> Make(Ratio units, int start, int end, bool bare)
    {
        if (units > Ratio.Of(Length.Longest.Units)) return MeasureFaults.LengthAbsurd(start + 1);
        return units.IsWhole
            ? new FoundLength(Length.FromUnits((long)units.Top), end, bare)
            : MeasureFaults.LengthNotExact(start + 1);
    }

    // A whole or decimal number, a fraction, or a whole number and a fraction (8 1/2, 8-1/2, 8½).
    private static Result<Number> ReadNumber(string text, int start)
    {
        var digits = DigitsEnd(text, start);
        if (digits - start > MostDigits) return MeasureFaults.LengthAbsurd(start + 1);
        if (digits == start && start < text.Length && VulgarFraction(text[start]) is { } lone)
            return new Number(lone, start + 1, Whole: false);

        var decimals = digits < text.Length && text[digits] == '.' ? DigitsEnd(text, digits + 1) : digits;
        if (decimals - digits > MostDigits) return MeasureFaults.LengthNotExact(start + 1);
        if (decimals > digits + 1) return new Number(Ratio.Decimal(text[start..digits], text[(digits + 1)..decimals]), decimals, Whole: false);
        if (digits == start) return MeasureFaults.LengthMissing(start + 1);

        var whole = Ratio.Of(BigInteger.Parse(text[start..digits]));
        if (digits < text.Length && text[digits] == '/') return ReadFraction(text, start, Ratio.Of(0));

        if (digits < text.Length)
        {
            var next = text[digits] == '-' ? digits + 1 : SkipSpace(text, digits);
            if (next < text.Length && VulgarFraction(text[next]) is { } vulgar) return new Number(whole + vulgar, next + 1, Whole: false);
            var top = DigitsEnd(text, next);
            if (next > digits && top > next && top < text.Length && text[top] == '/') return ReadFraction(text, next, whole);
        }

        return new Number(whole, digits, Whole: true);
    }

    private static Result<Number> ReadFraction(string text, int start, Ratio whole)
    {
        var bar = DigitsEnd(text, start);
        var end = DigitsEnd(text, bar + 1);
        if (end == bar + 1) return MeasureFaults.FractionBroken(start + 1);
        if (Math.Max(bar - start, end - bar) > MostDigits) return MeasureFaults.LengthNotExact(start + 1);
        var bottom = BigInteger.Parse(text[(bar + 1)..end]);
        if (bottom.IsZero) return MeasureFaults.FractionBroken(start + 1);
        var top = BigInteger.Parse(text[start..bar]);
        // 3 17/16 is more likely a slip of one digit than meant, and a tape has no such mark.
        if (top >= bottom) return MeasureFaults.FractionNotBelowOne(start + 1);
        return new Number(whole + new Ratio(top, bottom), end, Whole: false);
    }

    private static (Mark Mark, int End) ReadMark(string text, int start)
    {
        var at = SkipSpace(text, start);
        if (at >= text.Length) return (Mark.None, start);
        if (text[at] is '\'' or '’' or '‘' or '′')
        {
            var doubled = at + 1 < text.Length && text[at + 1] is '\'' or '’' or '‘' or '′';
            return doubled ? (Mark.Inch, at + 2) : (Mark.Foot, at + 1);
        }

        if (text[at] is '"' or '”' or '“' or '″') return (Mark.Inch, at + 1);
        var word = WordAt(text, at);
        var mark = word.ToLowerInvariant() switch
        {
            "ft" or "foot" or "feet" => Mark.Foot,
            "in" or "inch" or "inches" => Mark.Inch,
            "mm" => Mark.Millimetre,
            "cm" => Mark.Centimetre,
            "m" => Mark.Metre,
            _ => Mark.None,
        };
        if (mark == Mark.None) return (Mark.None, start);
        var end = at + word.Length;
        var stopped = end < text.Length && text[end] == '.' && (end + 1 == text.Length || text[end + 1] != '.');
        return (mark, stopped ? end + 1 : end);
    }

    private static long UnitsOf(Mark mark) => mark switch
    {
        Mark.Foot => Length.PerFoot,
        Mark.Inch => Length.PerInch,
        Mark.Millimetre => Length.PerMillimetre,
        Mark.Centimetre => 10 * Length.PerMillimetre,
        Mark.Metre => 1000 * Length.PerMillimetre,
        _ => throw new ArgumentOutOfRangeException(nameof(mark)),
    };

    /// <summary>True for a fraction that is one character: <c>½</c>.</summary>
    internal static bool IsVulgarFraction(char character) => VulgarFraction(character) is not null;

    private static bool IsPointedNumber(string text, int at) =>
        text[at] == '.' && at + 1 < text.Length && char.IsAsciiDigit(text[at + 1]);

    private static Ratio? VulgarFraction(char character) => character switch
    {
        '½' => new Ratio(1, 2),
        '¼' => new Ratio(1, 4),
        '¾' => new Ratio(3, 4),
        '⅛' => new Ratio(1, 8),
        '⅜' => new Ratio(3, 8),
        '⅝' => new Ratio(5, 8),
        '⅞' => new Ratio(7, 8),
        _ => null,
    };

    private static int DigitsEnd(string text, int start)
    {
        var at = start;
        while (at < text.Length && char.IsAsciiDigit(text[at])) at++;
        return at;
    }

    private static int SkipSpace(string text, int at)
    {
        while (at < text.Length && (text[at] == ' ' || text[at] == '\u00a0' || text[at] == '\t')) at++;
        return at;
    }

    private static string WordAt(string text, int start)
    {
        var at = start;
        while (at < text.Length && char.IsLetter(text[at])) at++;
        return text[start..at];
    }

    private readonly record struct Number(Ratio Value, int End, bool Whole);

    // Just enough of exact fractions to gather a length.
    private readonly record struct Ratio(BigInteger Top, BigInteger Bottom)
    {
        public bool IsZero => Top.IsZero;

        public bool IsWhole => Bottom.IsOne;

        public static Ratio Of(BigInteger whole) => new(whole, BigInteger.One);

        public static Ratio Decimal(string whole, string decimals) =>
            Reduced(BigInteger.Parse("0" + whole + decimals), BigInteger.Pow(10, decimals.Length));

        public static Ratio operator +(Ratio a, Ratio b) => Reduced(a.Top * b.Bottom + b.Top * a.Bottom, a.Bottom * b.Bottom);

        public static Ratio operator *(Ratio a, long factor) => Reduced(a.Top * factor, a.Bottom);

        public static bool operator >(Ratio a, Ratio b) => a.Top * b.Bottom > b.Top * a.Bottom;

        public static bool operator <(Ratio a, Ratio b) => b > a;

        public static bool operator >=(Ratio a, Ratio b) => !(b > a);

        public static bool operator <=(Ratio a, Ratio b) => !(a > b);

        private static Ratio Reduced(BigInteger top, BigInteger bottom)
        {
            var common = BigInteger.GreatestCommonDivisor(top, bottom);
            return common.IsZero ? new(top, bottom) : new(top / common, bottom / common);
        }
    }
}

/// <summary>A length found in a longer text.</summary>
/// <param name="Length">Its value.</param>
/// <param name="End">Index of the first character after it.</param>
/// <param name="Bare">True where no unit was written.</param>
public readonly record struct FoundLength(Length Length, int End, bool Bare);
