using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.HandOvers;

/// <summary>
/// A bed or trailer as the user describes it. Weights are whole thousandths of a pound and volumes whole thousandths of a cubic foot, so
/// that sums are exact.
/// </summary>
/// <param name="Name">The user's name for it.</param>
/// <param name="Longest">The longest piece that may lie on it; over 0.</param>
/// <param name="WeightThousandthsLb">The most it may carry; over 0.</param>
/// <param name="VolumeThousandthsCuFt">The most that fits on it by solid volume, where the user said so; over 0.</param>
public sealed record Bed(string Name, Length Longest, long WeightThousandthsLb, long? VolumeThousandthsCuFt)
{
    /// <summary>The most that is believed of either figure.</summary>
    public const long Largest = 1_000_000_000;

    /// <summary>The weight it may carry.</summary>
    public Weight Weight => new(WeightThousandthsLb / 1000m);

    /// <summary>The volume that fits, where it is known.</summary>
    public Volume? Volume => VolumeThousandthsCuFt is { } thousandths ? Measures.Volume.OfCubicFeet(thousandths / 1000m) : null;

    /// <summary>Every fault in it.</summary>
    public IReadOnlyList<Fault> Faults()
    {
        var faults = new List<Fault>();
        if (Name.Length == 0) faults.Add(HandFaults.BedWithoutName());
        PieceRules.CheckText(faults, "name", Name, PieceRules.LongestName);
        if (Longest.IsZero || WeightThousandthsLb is < 1 or > Largest || VolumeThousandthsCuFt is < 1 or > Largest) faults.Add(HandFaults.BedFigure());
        return faults;
    }
}
