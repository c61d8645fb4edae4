namespace Offcuts.Core.Materials;

/// <summary>One type of expanded polystyrene: the least its standard asks of it.</summary>
/// <param name="Name">Roman numeral of the type.</param>
/// <param name="PoundsPerCubicFoot">Least density in lb/ft3. Source: ASTM C578.</param>
/// <param name="CompressivePsi">Least compressive resistance in psi. Source: ASTM C578.</param>
/// <param name="RPerInch">
/// Thermal resistance per inch at 75 F. Source: ASTM C578 for types I and II; the others are from memory, VIII and IX with
/// confidence, XI and XIV with some doubt, so the maker's sheet goes before them.
/// </param>
public sealed record EpsType(string Name, decimal PoundsPerCubicFoot, decimal CompressivePsi, decimal RPerInch)
{
    /// <summary>Every type, light to heavy.</summary>
    public static IReadOnlyList<EpsType> All { get; } =
    [
        new("XI", 0.70m, 5m, 3.1m),
        new("I", 0.90m, 10m, 3.6m),
        new("VIII", 1.15m, 13m, 3.8m),
        new("II", 1.35m, 15m, 4.0m),
        new("IX", 1.80m, 25m, 4.2m),
        new("XIV", 2.40m, 40m, 4.2m),
    ];

    /// <summary>The type of a numeral in either case, or none.</summary>
    public static EpsType? Find(string name) =>
        All.FirstOrDefault(type => string.Equals(type.Name, name, StringComparison.OrdinalIgnoreCase));
}
