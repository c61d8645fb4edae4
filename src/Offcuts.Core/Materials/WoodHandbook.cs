namespace Offcuts.Core.Materials;

/// <summary>
/// Density of wood by the Wood Handbook. Its specific gravity is taken at the wood's own moisture; that of <see cref="Species"/>
/// (the NDS) is oven-dry. The two must never be mixed, which is why this stands apart and takes no <see cref="Species"/>.
/// </summary>
/// <remarks>Source: Wood Handbook, USDA Forest Products Laboratory, FPL-GTR-190, chapter 4.</remarks>
public static class WoodHandbook
{
    /// <summary>Density of water in kg/m3.</summary>
    public const decimal Water = 1000m;

    /// <summary>Density in kg/m3: that of water x G x (1 + m/100).</summary>
    /// <param name="gravityAtMoisture">G, by the weight oven-dry and the volume at that moisture.</param>
    /// <param name="moisturePercent">m, moisture content in percent of the oven-dry weight.</param>
    public static decimal KilogramsPerCubicMetre(decimal gravityAtMoisture, decimal moisturePercent) =>
        Water * gravityAtMoisture * (1m + moisturePercent / 100m);

    /// <summary>The same in lb/ft3 (1 ft = 0.3048 m and 1 lb = 0.45359237 kg, both exact).</summary>
    public static decimal PoundsPerCubicFoot(decimal gravityAtMoisture, decimal moisturePercent) =>
        KilogramsPerCubicMetre(gravityAtMoisture, moisturePercent) * (0.3048m * 0.3048m * 0.3048m) / 0.45359237m;
}
