using System.Globalization;

namespace Offcuts.Core.Measures;

/// <summary>A face area, in square millimetres. <c>default</c> is none.</summary>
public readonly record struct Area(decimal SquareMillimetres)
{
    /// <summary>The face of a rectangle.</summary>
    public static Area Of(Length a, Length b) => new(a.InMillimetres * b.InMillimetres);

    /// <summary>In square feet (1 ft = 304.8 mm exactly).</summary>
    public decimal SquareFeet => SquareMillimetres / (304.8m * 304.8m);

    /// <summary>The sum.</summary>
    public static Area operator +(Area a, Area b) => new(a.SquareMillimetres + b.SquareMillimetres);

    /// <summary>To one decimal: <c>12.5 sq ft</c>.</summary>
    public override string ToString() => SquareFeet.ToString("0.0", CultureInfo.InvariantCulture) + " sq ft";
}

/// <summary>A volume, in cubic millimetres. <c>default</c> is none.</summary>
public readonly record struct Volume(decimal CubicMillimetres)
{
    /// <summary>A box.</summary>
    public static Volume Of(Length a, Length b, Length c) => new(a.InMillimetres * b.InMillimetres * c.InMillimetres);

    /// <summary>In cubic feet.</summary>
    public decimal CubicFeet => CubicMillimetres / (304.8m * 304.8m * 304.8m);

    /// <summary>The sum.</summary>
    public static Volume operator +(Volume a, Volume b) => new(a.CubicMillimetres + b.CubicMillimetres);
}

/// <summary>A weight, in pounds. <c>default</c> is none.</summary>
public readonly record struct Weight(decimal Pounds)
{
    /// <summary>In kilograms (1 lb = 0.45359237 kg exactly).</summary>
    public decimal Kilograms => Pounds * 0.45359237m;

    /// <summary>The sum.</summary>
    public static Weight operator +(Weight a, Weight b) => new(a.Pounds + b.Pounds);

    /// <summary>To one decimal: <c>31.2 lb</c>.</summary>
    public override string ToString() => Pounds.ToString("0.0", CultureInfo.InvariantCulture) + " lb";
}

/// <summary>Board feet: the trade's measure of lumber, by nominal section. <c>default</c> is none.</summary>
public readonly record struct BoardFeet(decimal Value)
{
    /// <summary>The sum.</summary>
    public static BoardFeet operator +(BoardFeet a, BoardFeet b) => new(a.Value + b.Value);

    /// <summary>To one decimal: <c>26.7 bd ft</c>.</summary>
    public override string ToString() => Value.ToString("0.0", CultureInfo.InvariantCulture) + " bd ft";
}
