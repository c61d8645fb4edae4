namespace Offcuts.Matching.Loads;

/// <summary>One thing to be driven. Figures are whole, so that sums are exact.</summary>
/// <param name="Length">How long it is, in units of <see cref="Core.Measures.Length"/>; 0 or more.</param>
/// <param name="Weight">What it weighs, in thousandths of a pound; 0 or more.</param>
/// <param name="Volume">Its solid volume, in thousandths of a cubic foot; 0 where it is not known.</param>
public readonly record struct LoadItem(long Length, long Weight, long Volume);

/// <summary>What carries it.</summary>
/// <param name="Longest">The longest thing it takes, in the units of items.</param>
/// <param name="Weight">The most it carries.</param>
/// <param name="Volume">The most that fits by solid volume; none where that is not asked.</param>
public readonly record struct LoadBed(long Longest, long Weight, long? Volume)
{
    /// <summary>Why it does not take a thing alone.</summary>
    public LoadTrouble Trouble(LoadItem item) =>
        item.Length > Longest ? LoadTrouble.TooLong : item.Weight > Weight ? LoadTrouble.TooHeavy : item.Volume > Volume ? LoadTrouble.TooBulky : LoadTrouble.None;
}

/// <summary>Why a thing goes on no bed.</summary>
public enum LoadTrouble
{
    /// <summary>It goes.</summary>
    None,

    /// <summary>It is longer than any bed takes.</summary>
    TooLong,

    /// <summary>It is heavier than any bed long enough carries.</summary>
    TooHeavy,

    /// <summary>It is larger than what fits on any bed that would carry it.</summary>
    TooBulky,
}

/// <summary>One trip.</summary>
/// <param name="Bed">Which bed, from 0.</param>
/// <param name="Items">What is on it, by its number from 0.</param>
public sealed record Load(int Bed, IReadOnlyList<int> Items);

/// <summary>What is driven in which trip.</summary>
/// <param name="Loads">The trips.</param>
/// <param name="Left">Things that go on no bed, with why.</param>
/// <param name="Trips">How many trips, and a number below which none can do.</param>
public sealed record LoadPlan(IReadOnlyList<Load> Loads, IReadOnlyList<(int Item, LoadTrouble Why)> Left, Core.Plans.Figure Trips);
