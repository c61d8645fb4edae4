using System.Collections.Immutable;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Yard;

/// <summary>What the user has set for a yard. Immutable; <see cref="Usual"/> is a new yard's.</summary>
public sealed record YardSettings
{
    /// <summary>1/8 in: what an ordinary circular-saw blade takes. Common practice.</summary>
    public static Length UsualKerf { get; } = Length.Inches(0.125m);

    /// <summary>12 in: the shortest remainder worth a label where the user has not said. Our own choice.</summary>
    public static Length UsualKeep { get; } = Length.Inches(12);

    /// <summary>
    /// 60 days: how long foam lies in the sun before it is pointed at where the user has not said. From memory, as what is commonly
    /// allowed; no source was found, and the paper of the panel's maker decides.
    /// </summary>
    public const int UsualFoamDays = 60;

    /// <summary>The longest time that can be set.</summary>
    public const int MostFoamDays = 3650;

    /// <summary>A new yard's settings: inches, 1/8 in kerf, 12 in keep length, no tax.</summary>
    public static YardSettings Usual { get; } = new();

    /// <summary>Unit of prints and of bare numbers.</summary>
    public LengthUnit Unit { get; init; }

    /// <summary>Sign before an amount of money.</summary>
    public string CurrencySign { get; init; } = "$";

    /// <summary>Sales tax in thousandths of a percent (8.25 % is 8250).</summary>
    public int TaxThousandthsOfPercent { get; init; }

    /// <summary>Kerf of families that differ from <see cref="KerfElsewhere"/>: a sheared bar and a knifed panel lose nothing.</summary>
    public ImmutableSortedDictionary<MaterialFamily, Length> Kerfs { get; init; } = ImmutableSortedDictionary<MaterialFamily, Length>.Empty;

    /// <summary>Keep length of materials (by name) that differ from <see cref="KeepElsewhere"/>.</summary>
    public ImmutableSortedDictionary<string, Length> Keeps { get; init; } = ImmutableSortedDictionary.Create<string, Length>(StringComparer.OrdinalIgnoreCase);

    /// <summary>Which pieces may serve which use.</summary>
    public UseRules Rules { get; init; } = UseRules.Usual;

    /// <summary>The softwood by which lumber is weighed.</summary>
    public Species Species { get; init; } = Species.Usual;

    /// <summary>Kerf of every family that <see cref="Kerfs"/> does not name.</summary>
    public Length KerfElsewhere { get; init; } = UsualKerf;

    /// <summary>Keep length of every material that <see cref="Keeps"/> does not name.</summary>
    public Length KeepElsewhere { get; init; } = UsualKeep;

    /// <summary>Days after which foam that lies in the sun is pointed at; 0 to 3650, and 0 is never.</summary>
    public int FoamDays { get; init; } = UsualFoamDays;

    /// <summary>Places where the sun does not come, as the user names them, in either case.</summary>
    public ImmutableSortedSet<string> Covered { get; init; } = ImmutableSortedSet.Create<string>(StringComparer.OrdinalIgnoreCase);

    /// <summary>How much of a material (by name) always stays in the yard when something is handed over.</summary>
    public ImmutableSortedDictionary<string, KeepBack> KeepBacks { get; init; } = ImmutableSortedDictionary.Create<string, KeepBack>(StringComparer.OrdinalIgnoreCase);

    /// <summary>What one saw cut destroys in this material.</summary>
    public Length Kerf(Material material) => Kerfs.GetValueOrDefault(material.Family, KerfElsewhere);

    /// <summary>The shortest remainder of this material worth a label.</summary>
    public Length Keep(Material material) => Keeps.GetValueOrDefault(material.Name, KeepElsewhere);
}
