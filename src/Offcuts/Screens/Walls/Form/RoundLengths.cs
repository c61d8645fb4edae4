using System.Globalization;
using System.Text.RegularExpressions;
using Offcuts.Core.Measures;

namespace Offcuts.Screens;

/// <summary>
/// Round lengths that a sheet is begun with, to be changed: feet and inches where lengths are written so, and where they are written in millimetres
/// 300 for a foot and 25 for an inch, as the trade rounds them (common practice), so that 8' is offered as 2400 mm.
/// </summary>
internal static partial class RoundLengths
{
    private const int MillimetresAFoot = 300, MillimetresAnInch = 25;

    /// <summary>So many feet and inches.</summary>
    public static Length Of(LengthUnit unit, int feet, int inches) =>
        unit == LengthUnit.Inch ? Length.Feet(feet) + Length.Inches(inches) : Length.Millimetres(feet * MillimetresAFoot + inches * MillimetresAnInch);

    /// <summary>Lines of a sheet with their whole feet and inches written in this unit.</summary>
    public static string In(LengthUnit unit, string lines) => unit == LengthUnit.Inch ? lines
        : FeetOrInches().Replace(lines, found => LengthText.In(unit, found.Value.EndsWith('\'') ? Of(unit, Number(found), 0) : Of(unit, 0, Number(found))));

    private static int Number(Match found) => int.Parse(found.Groups[1].Value, CultureInfo.InvariantCulture);

    // A number alone before its sign: 2-1/2" and 6' 8" are no such lengths, and no line is begun with one.
    [GeneratedRegex("(?<![0-9'/.-] ?)\\b([0-9]{1,3})['\"](?! [0-9]+(-[0-9]+/[0-9]+)?\")")]
    private static partial Regex FeetOrInches();
}
