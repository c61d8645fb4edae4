namespace Offcuts.Matching;

/// <summary>
/// Which amounts are sums of prices, each taken any number of times. The table of sums is made as far as it is asked for and then kept: whoever looks for
/// the best plan asks thousands of times, and mostly for amounts that lie close together.
/// </summary>
internal sealed class PriceSums
{
    // A longer table is not worth while; beyond it only what all prices share is known of sums.
    private const long Longest = 1 << 22;

    private readonly long _divisor;
    private readonly long[] _steps;
    private readonly Lock _door = new();
    private bool[] _reached = [true];

    /// <summary>Of these prices in cents, all above 0.</summary>
    public PriceSums(IEnumerable<long> prices)
    {
        long[] different = [.. prices.Distinct()];
        _divisor = different.Aggregate(0L, Bounds.Gcd);
        _steps = [.. different.Select(price => price / _divisor)];
    }

    /// <summary>The least sum in cents that is not below <paramref name="least"/>.</summary>
    public long Next(long least)
    {
        if (least <= 0) return 0;
        if (_steps.Length == 0) return least;
        var from = (least + _divisor - 1) / _divisor;
        // Some sum of the cheapest price lies in every stretch of its length.
        var last = from + _steps.Min();
        if (last > Longest) return from * _divisor;
        var reached = UpTo(last);
        while (!reached[from]) from++;
        return from * _divisor;
    }

    private bool[] UpTo(long last)
    {
        lock (_door)
        {
            if (last < _reached.Length) return _reached;
            var reached = new bool[Math.Max(last, Math.Min(2L * _reached.Length, Longest)) + 1];
            _reached.CopyTo(reached, 0);
            for (var i = _reached.Length; i < reached.Length; i++) reached[i] = FromBelow(reached, i);
            return _reached = reached;
        }
    }

    private bool FromBelow(bool[] reached, int sum)
    {
        foreach (var step in _steps)
        {
            if (step <= sum && reached[sum - step]) return true;
        }

        return false;
    }
}
