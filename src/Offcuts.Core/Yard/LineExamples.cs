using Offcuts.Core.Measures;

namespace Offcuts.Core.Yard;

/// <summary>
/// A line of each kind as somebody would type it in a yard of this unit. A bare number is in the yard's unit, so that an example of
/// inches, typed after in a yard of millimetres, would ask for blocking of 14.5 mm.
/// </summary>
public static class LineExamples
{
    /// <summary>Boards of a form.</summary>
    public static string Batch(LengthUnit unit) => In(unit, "2x10 11'4, 11'4, 9'2-1/2 fair nails @north rack", "2x10 3450, 3450, 2810 fair nails @north rack");

    /// <summary>What a stage needs.</summary>
    public static string Need(LengthUnit unit) => In(unit, "blocking: 2x4 14-1/2 x12 rough", "blocking: 2x4 370 x12 rough");

    /// <summary>The first need of a first stage.</summary>
    public static string FirstNeed(LengthUnit unit) => In(unit, "stakes: 2x4 24 x16 rough", "stakes: 2x4 600 x16 rough");

    /// <summary>A store length, as a price names it.</summary>
    public static string StoreLength(LengthUnit unit) => In(unit, "2x4 8'", "2x4 2400");

    /// <summary>What a store length costs.</summary>
    public static string Price(LengthUnit unit) => $"{StoreLength(unit)} 3.98 lead 2";

    /// <summary>A place that something is to fit.</summary>
    public static string Fit(LengthUnit unit) => In(unit, "2x4 14-1/2 rough", "2x4 370 rough");

    /// <summary>What is left of a piece that was cut.</summary>
    public static string Left(LengthUnit unit) => In(unit, "40 bad 10..14", "1000 bad 250..350");

    /// <summary>A length and longer, as the yard is searched for it, and what that says.</summary>
    public static (string Typed, string Means) AndLonger(LengthUnit unit) => unit == LengthUnit.Inch ? ("8'+", "8' or longer") : ("2400+", "2400 mm or longer");

    private static string In(LengthUnit unit, string inches, string millimetres) => unit == LengthUnit.Inch ? inches : millimetres;
}
