using Offcuts.Core.Measures;

namespace Offcuts.UseCases;

/// <summary>Whether lengths can have come of stretches, the saw left aside: each length lies within one stretch.</summary>
internal static class StretchFit
{
    // So many lengths are decided exactly; of more only the sum is looked at. No board gives as many worth a label.
    private const int MostExact = 16;

    /// <summary>True where they can.</summary>
    public static bool Fits(IReadOnlyList<Length> stretches, IReadOnlyList<Length> lengths)
    {
        if (lengths.Sum(length => length.Units) > stretches.Sum(stretch => stretch.Units)) return false;
        return lengths.Count > MostExact || Placed([.. stretches.Select(stretch => stretch.Units)], [.. lengths.Select(length => length.Units).OrderDescending()], 0);
    }

    // The longest first, in each stretch with room; stretches with equal room are one and the same.
    private static bool Placed(long[] room, long[] lengths, int next)
    {
        if (next == lengths.Length) return true;
        for (var i = 0; i < room.Length; i++)
        {
            if (room[i] < lengths[next] || Array.IndexOf(room, room[i]) < i) continue;
            room[i] -= lengths[next];
            if (Placed(room, lengths, next + 1)) return true;
            room[i] += lengths[next];
        }

        return false;
    }
}
