using Offcuts.Core.Measures;

namespace Offcuts.Core.Materials;

/// <summary>One row of the standard's table of softwood lumber: a nominal size and what it measures when dressed.</summary>
/// <remarks>Source: American Softwood Lumber Standard, NIST Voluntary Product Standard PS 20-20, Table 3.</remarks>
public sealed class NominalSize
{
    private static readonly NominalSize[] Table =
    [
        new("1", 1m, 0.75m, 0.78125m),
        new("1-1/4", 1.25m, 1m, 1.03125m),
        new("1-1/2", 1.5m, 1.25m, 1.28125m),
        new("2", 2m, 1.5m, 1.5625m),
        new("2-1/2", 2.5m, 2m, 2.0625m),
        new("3", 3m, 2.5m, 2.5625m),
        new("4", 4m, 3.5m, 3.5625m),
        new("5", 5m, 4.5m, 4.625m),
        new("6", 6m, 5.5m, 5.625m),
        new("8", 8m, 7.25m, 7.5m),
        new("10", 10m, 9.25m, 9.5m),
        new("12", 12m, 11.25m, 11.5m),
        new("14", 14m, 13.25m, 13.5m),
        new("16", 16m, 15.25m, 15.5m),
    ];

    private NominalSize(string text, decimal nominal, decimal dry, decimal green) =>
        (Text, Nominal, Dry, Green) = (text, nominal, Length.Inches(dry), Length.Inches(green));

    /// <summary>As written: <c>2</c>, <c>1-1/4</c>.</summary>
    public string Text { get; }

    /// <summary>Nominal inches: a name, not a measure.</summary>
    public decimal Nominal { get; }

    /// <summary>What it measures dressed and dry.</summary>
    public Length Dry { get; }

    /// <summary>What it measures dressed and green. Timbers differ: ask <see cref="Lumber.GreenWidth"/>.</summary>
    public Length Green { get; }

    /// <summary>Every row, small to large.</summary>
    public static IReadOnlyList<NominalSize> All => Table;

    /// <summary>The row of a nominal size, or none.</summary>
    public static NominalSize? Find(decimal nominal) => Array.Find(Table, row => row.Nominal == nominal);
}
