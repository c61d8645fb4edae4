namespace Offcuts.Core.Materials;

/// <summary>One row of the standard's table of reinforcing bars.</summary>
/// <param name="Number">Bar number.</param>
/// <param name="Metric">The metric designation of the same bar.</param>
/// <param name="DiameterInches">Nominal diameter in inches.</param>
/// <param name="AreaSquareInches">Nominal cross-section in square inches.</param>
/// <param name="PoundsPerFoot">Nominal weight in pounds per foot.</param>
/// <param name="KilogramsPerMetre">Nominal mass in kilograms per metre.</param>
/// <remarks>Source: ASTM A615/A615M, Table 1.</remarks>
public sealed record BarSize(int Number, int Metric, decimal DiameterInches, decimal AreaSquareInches, decimal PoundsPerFoot, decimal KilogramsPerMetre)
{
    /// <summary>Every row, small to large.</summary>
    public static IReadOnlyList<BarSize> All { get; } =
    [
        new(3, 10, 0.375m, 0.11m, 0.376m, 0.560m),
        new(4, 13, 0.500m, 0.20m, 0.668m, 0.994m),
        new(5, 16, 0.625m, 0.31m, 1.043m, 1.552m),
        new(6, 19, 0.750m, 0.44m, 1.502m, 2.235m),
        new(7, 22, 0.875m, 0.60m, 2.044m, 3.042m),
        new(8, 25, 1.000m, 0.79m, 2.670m, 3.973m),
        new(9, 29, 1.128m, 1.00m, 3.400m, 5.060m),
        new(10, 32, 1.270m, 1.27m, 4.303m, 6.404m),
        new(11, 36, 1.410m, 1.56m, 5.313m, 7.907m),
    ];

    /// <summary>The row of a bar number, or none.</summary>
    public static BarSize? Find(int number) => All.FirstOrDefault(row => row.Number == number);
}
