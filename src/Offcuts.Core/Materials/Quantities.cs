using Offcuts.Core.Measures;

namespace Offcuts.Core.Materials;

/// <summary>
/// How much there is in a length of a material. What a material's name does not tell (the weight of a stick, the type of a
/// foam) gives null, never a guess.
/// </summary>
public static class Quantities
{
    /// <summary>
    /// Weight of a square foot of plywood for each inch of thickness, in pounds. Source: a rule of thumb under Voluntary
    /// Product Standard PS 1; listed 4x8 sheets run up to 15 % from it.
    /// </summary>
    public const decimal PlywoodPoundsPerSquareFootInch = 3m;

    /// <summary>Loose solid sawn wood in a skip, in pounds per cubic yard. Source: NAHB Research Center, 1995; others say 300 and 400.</summary>
    public const decimal LooseWoodPoundsPerCubicYard = 267m;

    /// <summary>
    /// Board feet: nominal thickness in inches x nominal width in feet x length in feet, thickness under 1 in counting as 1 in.
    /// Null for what is not lumber.
    /// </summary>
    /// <remarks>Source: PS 20-20 section 2.2; thin boards: US Navy Engineering Aid manual, Board Measure.</remarks>
    public static BoardFeet? BoardFeetOf(Material material, Length length) =>
        material is Lumber lumber
            ? new BoardFeet(Math.Max(1m, lumber.Thickness.Nominal) * lumber.Width.Nominal / 12m * length.InFeet)
            : null;

    /// <summary>
    /// The wide face: dressed dry width x length of lumber (PS 20-20 Table 3), height x length of a panel, both sides of a sheet
    /// multiplied. Null for bars, sticks and hardware.
    /// </summary>
    public static Area? FaceAreaOf(Material material, Length length, Length width = default) => material switch
    {
        Lumber lumber => Area.Of(lumber.Width.Dry, length),
        FoamPanel foam => Area.Of(foam.Height, length),
        Sheet => Area.Of(width, length),
        _ => null,
    };

    /// <summary>
    /// Solid volume: dressed dry section x length of lumber (PS 20-20 Table 3), nominal area x length of a bar (ASTM A615 Table 1),
    /// thickness x height x length of a panel, thickness x both sides of a sheet. Null for sticks and hardware.
    /// </summary>
    public static Volume? VolumeOf(Material material, Length length, Length width = default) => material switch
    {
        Lumber lumber => Volume.Of(lumber.Thickness.Dry, lumber.Width.Dry, length),
        Rebar bar => new Volume(bar.Size.AreaSquareInches * 25.4m * 25.4m * length.InMillimetres),
        FoamPanel foam => Volume.Of(foam.Thickness, foam.Height, length),
        Sheet sheet => Volume.Of(sheet.Thickness, width, length),
        _ => null,
    };

    /// <summary>
    /// Weight: lumber by its dressed volume and the density of its species at 19 % moisture (NDS Supplement formula); a bar by its
    /// weight per foot (ASTM A615 Table 1); foam by the least density of its type (ASTM C578), null where the type is unknown;
    /// plywood by <see cref="PlywoodPoundsPerSquareFootInch"/>. Null for other sheets, sticks and hardware.
    /// </summary>
    public static Weight? WeightOf(Material material, Length length, Species species, Length width = default) => material switch
    {
        Lumber => new Weight(VolumeOf(material, length)!.Value.CubicFeet * species.PoundsPerCubicFoot()),
        Rebar bar => new Weight(bar.Size.PoundsPerFoot * length.InFeet),
        FoamPanel { Type: { } type } => new Weight(VolumeOf(material, length)!.Value.CubicFeet * type.PoundsPerCubicFoot),
        Sheet { Kind: "plywood" } sheet => new Weight(Area.Of(width, length).SquareFeet * sheet.Thickness.InInches * PlywoodPoundsPerSquareFootInch),
        _ => null,
    };
}
