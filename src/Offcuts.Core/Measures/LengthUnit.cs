namespace Offcuts.Core.Measures;

/// <summary>The unit in which a person reads and types bare numbers.</summary>
public enum LengthUnit
{
    /// <summary>Feet, inches and sixteenths; a bare number is inches.</summary>
    Inch,

    /// <summary>Millimetres.</summary>
    Millimetre,
}
