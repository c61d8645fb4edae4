using Offcuts.Core.Measures;

namespace Offcuts.Core.HandOvers;

/// <summary>How much of one material always stays in the yard: a length in all, or a number of pieces or counted things; the other one is 0.</summary>
/// <param name="Length">Usable length, all pieces together.</param>
/// <param name="Count">Pieces, or counted things.</param>
public readonly record struct KeepBack(Length Length, int Count)
{
    /// <summary>The most that can be asked to stay by count.</summary>
    public const int Most = 100_000;
}
