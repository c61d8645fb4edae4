using System.Globalization;

namespace Offcuts.Core.Measures;

/// <summary>How a length is written: exactly for files, and as a tape shows it for people.</summary>
public static class LengthText
{
    private const long PerSixtyFourth = Length.PerInch / 64;
    private const long PerSixteenth = Length.PerInch / 16;
    private const long PerTenthMillimetre = Length.PerMillimetre / 10;

    /// <summary>
    /// Inches with a fraction down to 1/64 (<c>92-5/8"</c>) where that is exact, else millimetres with up to six decimals.
    /// Reading it back gives the same length.
    /// </summary>
    public static string Exact(Length length) =>
        length.Units % PerSixtyFourth == 0
            ? Inches(length.Units / PerSixtyFourth, 64)
            : Millimetres(length.InMillimetres);

    /// <summary>
    /// Feet, inches and sixteenths (<c>7' 8-5/8"</c>) or millimetres with at most one decimal.
    /// A length between two marks goes to the nearer, half up, with <c>~</c> before it.
    /// </summary>
    public static string Rounded(Length length, LengthUnit unit)
    {
        var step = unit == LengthUnit.Inch ? PerSixteenth : PerTenthMillimetre;
        var steps = (length.Units + step / 2) / step;
        var mark = steps * step == length.Units ? "" : "~";
        return mark + (unit == LengthUnit.Inch ? FeetInches(steps) : Millimetres(steps / 10m));
    }

    /// <summary>As a tape of this unit shows it: in inches by <see cref="Faithful"/>, in millimetres in them alone, whatever the length.</summary>
    public static string OnTape(Length length, LengthUnit unit) => unit == LengthUnit.Inch ? Faithful(length, unit) : In(unit, length);

    /// <summary>As a tape shows it where that is exact, else as <see cref="Exact"/> writes it: nothing is rounded.</summary>
    public static string Faithful(Length length, LengthUnit unit) =>
        Rounded(length, unit) is var text && text.StartsWith('~') ? Exact(length) : text;

    /// <summary>
    /// In this unit alone, whatever the length: exact wherever the unit can say it (down to 1/64 in; any length in millimetres), else to the nearer
    /// 1/16 in with <c>~</c> before it; what that leaves nothing of is <c>under 1/16"</c>.
    /// </summary>
    public static string In(LengthUnit unit, Length length)
    {
        if (unit == LengthUnit.Millimetre) return Millimetres(length.InMillimetres);
        if (length.Units % PerSixtyFourth == 0) return FeetInches(length.Units / PerSixtyFourth, 64);
        return length.Units < PerSixteenth / 2 ? "under 1/16\"" : Rounded(length, unit);
    }

    private static string FeetInches(long parts, long perInch = 16)
    {
        var feet = parts / (12 * perInch);
        var rest = parts % (12 * perInch);
        if (feet == 0) return Inches(rest, perInch);
        return rest == 0 ? $"{feet}'" : $"{feet}' {Inches(rest, perInch)}";
    }

    private static string Inches(long parts, long perInch)
    {
        var whole = parts / perInch;
        var over = parts % perInch;
        if (over == 0) return $"{whole}\"";
        while (over % 2 == 0) (over, perInch) = (over / 2, perInch / 2);
        return whole == 0 ? $"{over}/{perInch}\"" : $"{whole}-{over}/{perInch}\"";
    }

    private static string Millimetres(decimal millimetres) =>
        millimetres.ToString("0.######", CultureInfo.InvariantCulture) + " mm";
}
