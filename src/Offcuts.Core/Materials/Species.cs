namespace Offcuts.Core.Materials;

/// <summary>A group of softwoods sold as one, with what a cubic foot of it weighs at 19 % moisture.</summary>
/// <param name="Name">As it stands in the grade mark.</param>
/// <param name="SpecificGravity">
/// Oven-dry weight and volume. Source: National Design Specification for Wood Construction, Table 12.3.3A, from memory, sure.
/// </param>
public sealed record Species(string Name, decimal SpecificGravity)
{
    /// <summary>The groups sold for framing and forms.</summary>
    public static IReadOnlyList<Species> All { get; } =
    [
        new("spruce-pine-fir", 0.42m),
        new("hem-fir", 0.43m),
        new("douglas fir-larch", 0.50m),
        new("southern pine", 0.55m),
    ];

    /// <summary>What is taken where the user has said nothing.</summary>
    public static Species Usual => All[0];

    /// <summary>The group of a name in either case, or none.</summary>
    public static Species? Find(string name) =>
        All.FirstOrDefault(species => string.Equals(species.Name, name, StringComparison.OrdinalIgnoreCase));

    /// <summary>
    /// Density in lb/ft3 at a moisture content in percent: 62.4 x G / (1 + 0.009 G m) x (1 + m/100), G oven-dry.
    /// </summary>
    /// <remarks>Source: the density formula of the NDS Supplement. Its G is oven-dry; the Wood Handbook's is not: never mixed here.</remarks>
    public decimal PoundsPerCubicFoot(decimal moisturePercent = 19m) =>
        62.4m * SpecificGravity / (1m + 0.009m * SpecificGravity * moisturePercent) * (1m + moisturePercent / 100m);
}
