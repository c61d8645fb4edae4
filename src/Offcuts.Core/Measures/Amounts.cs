using System.Globalization;

namespace Offcuts.Core.Measures;

/// <summary>A face area, in square millimetres. <c>default</c> is none.</summary>
public readonly record struct Area(decimal SquareMillimetres)
{
    /// <summary>The face of a rectangle.</summary>
    public static Area Of(Length a, Length b) => new(a.InMillimetres * b.InMillimetres);

    /// <summary>In square feet (1 ft = 304.8 mm exactly).</summary>
    public decimal SquareFeet => SquareMillimetres / (304.8m * 304.8m);

    /// <summary>In square metres.</summary>
    public decimal SquareMetres => SquareMillimetres / 1_000_000m;

    /// <summary>The sum.</summary>
    public static Area operator +(Area a, Area b) => new(a.SquareMillimetres + b.SquareMillimetres);

    /// <summary>The difference; below zero where the second is larger.</summary>
    public static Area operator -(Area a, Area b) => new(a.SquareMillimetres - b.SquareMillimetres);

    /// <summary>To one decimal in square feet, or to two in square metres where the unit is metric: <c>12.5 sq ft</c>, <c>1.16 m2</c>.</summary>
    public string ToText(LengthUnit unit) =>
        unit == LengthUnit.Inch ? ToString() : SquareMetres.ToString("0.00", CultureInfo.InvariantCulture) + " m2";

    /// <summary>To one decimal: <c>12.5 sq ft</c>.</summary>
    public override string ToString() => SquareFeet.ToString("0.0", CultureInfo.InvariantCulture) + " sq ft";
}

/// <summary>A volume, in cubic millimetres. <c>default</c> is none.</summary>
public readonly record struct Volume(decimal CubicMillimetres)
{
    /// <summary>A box.</summary>
    public static Volume Of(Length a, Length b, Length c) => new(a.InMillimetres * b.InMillimetres * c.InMillimetres);

    /// <summary>So many cubic feet.</summary>
    public static Volume OfCubicFeet(decimal feet) => new(feet * 304.8m * 304.8m * 304.8m);

    /// <summary>In cubic feet.</summary>
    public decimal CubicFeet => CubicMillimetres / (304.8m * 304.8m * 304.8m);

    /// <summary>In cubic yards, of 27 cubic feet.</summary>
    public decimal CubicYards => CubicFeet / 27m;

    /// <summary>In cubic metres.</summary>
    public decimal CubicMetres => CubicMillimetres / 1_000_000_000m;

    /// <summary>The sum.</summary>
    public static Volume operator +(Volume a, Volume b) => new(a.CubicMillimetres + b.CubicMillimetres);

    /// <summary>
    /// To two or three decimals in cubic feet, or to three or four in cubic metres where the unit is metric: <c>5.333 cu ft</c>,
    /// <c>0.28 cu ft</c>, <c>0.151 m3</c>. What is there but too little for that is said to be under the last decimal.
    /// </summary>
    public string ToText(LengthUnit unit) => unit == LengthUnit.Inch ? Text(CubicFeet, 0.001m, "0.00#", "cu ft") : Text(CubicMetres, 0.0001m, "0.000#", "m3");

    private static string Text(decimal amount, decimal least, string format, string unit) =>
        amount > 0 && amount < least
            ? $"under {least.ToString(CultureInfo.InvariantCulture)} {unit}"
            : $"{amount.ToString(format, CultureInfo.InvariantCulture)} {unit}";
}

/// <summary>A weight, in pounds. <c>default</c> is none.</summary>
public readonly record struct Weight(decimal Pounds)
{
    /// <summary>In kilograms (1 lb = 0.45359237 kg exactly).</summary>
    public decimal Kilograms => Pounds * 0.45359237m;

    /// <summary>The sum.</summary>
    public static Weight operator +(Weight a, Weight b) => new(a.Pounds + b.Pounds);

    /// <summary>The difference; below zero where the second is larger.</summary>
    public static Weight operator -(Weight a, Weight b) => new(a.Pounds - b.Pounds);

    /// <summary>To one decimal in pounds, or in kilograms where the unit is metric: <c>31.2 lb</c>, <c>14.2 kg</c>.</summary>
    public string ToText(LengthUnit unit) =>
        unit == LengthUnit.Inch ? ToString() : Kilograms.ToString("0.0", CultureInfo.InvariantCulture) + " kg";

    /// <summary>To one decimal: <c>31.2 lb</c>.</summary>
    public override string ToString() => Pounds.ToString("0.0", CultureInfo.InvariantCulture) + " lb";
}

/// <summary>Board feet: the trade's measure of lumber, by nominal section. <c>default</c> is none.</summary>
public readonly record struct BoardFeet(decimal Value)
{
    /// <summary>The sum.</summary>
    public static BoardFeet operator +(BoardFeet a, BoardFeet b) => new(a.Value + b.Value);

    /// <summary>The difference; below zero where the second is larger.</summary>
    public static BoardFeet operator -(BoardFeet a, BoardFeet b) => new(a.Value - b.Value);

    /// <summary>To one decimal: <c>26.7 bd ft</c>.</summary>
    public override string ToString() => Value.ToString("0.0", CultureInfo.InvariantCulture) + " bd ft";
}
