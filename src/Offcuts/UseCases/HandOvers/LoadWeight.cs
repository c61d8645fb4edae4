using Offcuts.Core.Materials;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>Weights and volumes in whole thousandths, rounded up, so that sums are exact and no load is told lighter than it is.</summary>
public static class LoadWeight
{
    /// <summary>Weight of a piece in thousandths of a pound; none where nothing tells it. Source: <see cref="Quantities.WeightOf"/>.</summary>
    public static long? Of(Piece piece, Species species) =>
        Quantities.WeightOf(piece.Material, piece.Length, species, piece.Width) is { } weight ? (long)Math.Ceiling(weight.Pounds * 1000m) : null;

    /// <summary>Solid volume of a piece in thousandths of a cubic foot; none where nothing tells it. Source: <see cref="Quantities.VolumeOf"/>.</summary>
    public static long? VolumeOf(Piece piece) =>
        Quantities.VolumeOf(piece.Material, piece.Length, piece.Width) is { } volume ? (long)Math.Ceiling(volume.CubicFeet * 1000m) : null;

    /// <summary>Where the weight of a material is from, in words; empty where nothing tells it.</summary>
    public static string Source(Material material, Species species) => material switch
    {
        Lumber => $"lumber dressed, {species.Name} at 19 % moisture (density by the NDS Supplement, sections by PS 20-20)",
        Rebar => "bars by ASTM A615 Table 1",
        FoamPanel { Type: not null } => "foam by the least density of its type (ASTM C578): it may weigh more",
        Sheet { Kind: "plywood" } => "plywood by 3 lb a square foot and inch, a rule of thumb that is up to 15 % off",
        _ => "",
    };
}
