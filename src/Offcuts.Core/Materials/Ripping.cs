using Offcuts.Core.Measures;

namespace Offcuts.Core.Materials;

/// <summary>
/// Sawing lengthwise: what may be ripped out of what, and what is left beside it. Lumber goes by its dry dressed width
/// (PS 20-20 Table 3), green wood too, since it shrinks to that; foam by its height.
/// </summary>
public static class Ripping
{
    // A timber is not ripped.
    private const decimal ThinnestTimber = 5m;

    /// <summary>What a rip changes: the width of lumber under 5 in thick, the height of foam. None for what is never ripped.</summary>
    public static Length? Width(Material material) => material switch
    {
        Lumber lumber when lumber.Thickness.Nominal < ThinnestTimber => lumber.Width.Dry,
        FoamPanel foam => foam.Height,
        _ => null,
    };

    /// <summary>True where <paramref name="into"/> may be ripped out of <paramref name="from"/>: the same thickness (of foam the same type too), and wider.</summary>
    public static bool May(Material from, Material into) =>
        Alike(from, into) && Width(from) > Width(into);

    /// <summary>
    /// How wide a strip is left beside <paramref name="into"/>: the difference of the widths less a kerf, zero where less than a kerf
    /// is left. Throws where it may not be ripped.
    /// </summary>
    public static Length Strip(Material from, Material into, Length kerf) => May(from, into)
        ? (Width(from)!.Value - Width(into)!.Value).LessAtMost(kerf)
        : throw new ArgumentException($"{into} is not ripped out of {from}", nameof(into));

    /// <summary>The widest of the listed materials that a strip can be: as thick as the board, of the same type, and no wider than the strip. None where it can be none.</summary>
    public static Material? Widest(Material from, Length strip, IEnumerable<Material> listed) =>
        listed.Where(material => Alike(from, material) && Width(material) <= strip).MaxBy(Width);

    private static bool Alike(Material a, Material b) => (a, b) switch
    {
        (Lumber one, Lumber other) => one.Thickness.Nominal == other.Thickness.Nominal && one.Thickness.Nominal < ThinnestTimber,
        (FoamPanel one, FoamPanel other) => one.Thickness == other.Thickness && Equals(one.Type, other.Type),
        _ => false,
    };
}
