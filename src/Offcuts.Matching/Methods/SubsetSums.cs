namespace Offcuts.Matching.Methods;

/// <summary>
/// Which lengths cuts of some lengths and numbers add up to, and those of them from each on: one set of bits for each, bit k for length k.
/// Source: sums as shifted bits, common practice.
/// </summary>
internal sealed class SubsetSums
{
    private readonly int[] _weights;
    private readonly int _words;
    private readonly ulong[] _bits;

    /// <summary>Sums of at most <paramref name="most"/>, none counted yet.</summary>
    /// <param name="weights">Lengths, positive.</param>
    /// <param name="most">The longest sum that is asked for.</param>
    public SubsetSums(int[] weights, int most)
    {
        (_weights, _words) = (weights, Words(most));
        _bits = new ulong[_words * (weights.Length + 1)];
    }

    /// <summary>Words of bits for sums from 0 to <paramref name="most"/>.</summary>
    public static int Words(int most) => (most >> 6) + 1;

    /// <summary>Counts anew, with so many of each length, from one length on.</summary>
    /// <returns>How many words that took.</returns>
    public long Count(int[] left, int from)
    {
        var work = (long)_words;
        var after = _bits.AsSpan(_weights.Length * _words, _words);
        after.Clear();
        after[0] = 1;
        for (var i = _weights.Length - 1; i >= from; i--)
        {
            var here = _bits.AsSpan(i * _words, _words);
            after.CopyTo(here);
            var copies = Math.Min(left[i], (_words * 64 - 1) / _weights[i]);
            for (var copy = 0; copy < copies; copy++) OrShifted(here, _weights[i]);
            work += (copies + 1L) * _words;
            after = here;
        }

        return work;
    }

    /// <summary>True where cuts from one length on have some sum within these, both ends included.</summary>
    /// <param name="from">The first length that may take part: not before the one that was counted from.</param>
    /// <param name="least">The least sum; below 0 is as 0.</param>
    /// <param name="most">The largest sum, no more than was provided for.</param>
    public bool Any(int from, int least, int most)
    {
        var bits = _bits.AsSpan(from * _words, _words);
        for (var at = Math.Max(0, least); at <= most; at = (at | 63) + 1)
        {
            var word = bits[at >> 6] & ulong.MaxValue << (at & 63);
            if (at >> 6 == most >> 6) word &= ulong.MaxValue >> (63 - (most & 63));
            if (word != 0) return true;
        }

        return false;
    }

    private static void OrShifted(Span<ulong> bits, int by)
    {
        var (whole, part) = (by >> 6, by & 63);
        for (var to = bits.Length - 1; to >= whole; to--)
        {
            var word = bits[to - whole] << part;
            if (part > 0 && to > whole) word |= bits[to - whole - 1] >> (64 - part);
            bits[to] |= word;
        }
    }
}
