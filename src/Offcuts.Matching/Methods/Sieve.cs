using System.Runtime.Intrinsics;

namespace Offcuts.Matching.Methods;

/// <summary>
/// The choices of one span of a <see cref="CountProgram"/>, laid out so that four at a time are held against a state: nearly all of them
/// take a cut that is filled already or leave more than the other spans can hold, and those are passed over here.
/// Benchmark: the class yard-25, where this is most of the time.
/// </summary>
internal sealed class Sieve
{
    private readonly long[] _net;
    private readonly ulong[] _single;
    private readonly long[] _weight;

    /// <summary>Sorted by what they cost beyond what their cuts would cost anyway.</summary>
    /// <param name="choices">By choice: that cost, one bit for each of its cuts of which there is only one, and how long it is.</param>
    public Sieve(IReadOnlyCollection<(long Net, ulong Single, long Weight)> choices)
    {
        _net = [.. choices.Select(choice => choice.Net)];
        _single = [.. choices.Select(choice => choice.Single)];
        _weight = [.. choices.Select(choice => choice.Weight)];
    }

    /// <summary>How many of them, from the first on, cost at most so much.</summary>
    public int Affordable(long most)
    {
        var (low, high) = (0, _net.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (_net[middle] <= most) low = middle + 1;
            else high = middle;
        }

        return low;
    }

    /// <summary>The first from here on that takes none of the cuts filled and is long enough; <paramref name="end"/> where there is none.</summary>
    /// <param name="start">Where to begin.</param>
    /// <param name="end">Where to stop.</param>
    /// <param name="filled">The cuts that are filled, a bit each.</param>
    /// <param name="least">How long it must be.</param>
    public int Next(int start, int end, ulong filled, long least)
    {
        var (key, shortest) = (Vector256.Create(filled), Vector256.Create(least));
        for (; start + Vector256<ulong>.Count <= end; start += Vector256<ulong>.Count)
        {
            var free = Vector256.Equals(Vector256.LoadUnsafe(ref _single[start]) & key, Vector256<ulong>.Zero);
            var enough = Vector256.GreaterThanOrEqual(Vector256.LoadUnsafe(ref _weight[start]), shortest);
            var fit = (free.AsInt64() & enough).ExtractMostSignificantBits();
            if (fit != 0) return start + int.TrailingZeroCount((int)fit);
        }

        while (start < end && ((_single[start] & filled) != 0 || _weight[start] < least)) start++;
        return start;
    }
}
