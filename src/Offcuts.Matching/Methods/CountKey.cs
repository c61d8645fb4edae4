namespace Offcuts.Matching.Methods;

/// <summary>
/// How a state of a <see cref="CountProgram"/> lies in 64 bits: how many of each demand are filled, how many cuts are ripped, what is
/// spent, and whether the piece in hand is carried already.
/// </summary>
internal sealed class CountKey
{
    private readonly Tier _tier;
    private readonly int[] _offset;
    private readonly ulong[] _mask;
    private readonly int _ripOffset;
    private readonly ulong _ripMask;
    private readonly int _spendOffset;
    private readonly int _spendEnd;
    private readonly long _spendUnit = 1;

    /// <summary>The layout for the plans of a pool.</summary>
    /// <param name="tier">What is asked for.</param>
    /// <param name="pool">The patterns.</param>
    /// <param name="carried">True where it matters whether a piece is carried already.</param>
    public CountKey(Tier tier, IReadOnlyList<Pattern> pool, bool carried)
    {
        _tier = tier;
        Demands = [.. Enumerable.Range(0, tier.DemandCount.Length).Where(d => tier.Active[d] && tier.DemandCount[d] > 0)];
        (_offset, _mask) = (new int[tier.DemandCount.Length], new ulong[tier.DemandCount.Length]);
        var bits = 0;
        foreach (var d in Demands)
        {
            (_offset[d], _mask[d]) = (bits, (1UL << Width(tier.DemandCount[d])) - 1);
            bits += Width(tier.DemandCount[d]);
        }

        // Two patterns that are each within the cap never add up to more than its double.
        (_ripOffset, _ripMask) = (bits, (1UL << Width(2L * (tier.RipCap ?? 0))) - 1);
        bits += Width(2L * (tier.RipCap ?? 0));
        if (carried) Carried = 1UL << bits++;
        _spendOffset = bits;
        if (tier.SpendCap is > 0)
        {
            _spendUnit = pool.Select(pattern => pattern.Price).Where(price => price > 0).Aggregate(0L, Bounds.Gcd);
            if (_spendUnit > 0) bits += Width(tier.SpendCap.Value / _spendUnit);
        }

        // One bit stays free, so that adding what is too dear can't be lost before it is seen to be.
        (_spendEnd, Holds) = (bits, bits <= 63);
    }

    /// <summary>False where 64 bits are too few.</summary>
    public bool Holds { get; }

    /// <summary>The demands of which something is asked for.</summary>
    public int[] Demands { get; }

    /// <summary>The bit that says that the piece in hand is carried already; none where that does not matter.</summary>
    public ulong Carried { get; }

    /// <summary>How many of a demand are filled.</summary>
    public int Filled(ulong key, int demand) => (int)((key >> _offset[demand]) & _mask[demand]);

    /// <summary>What so many cuts of a demand add to a state.</summary>
    public ulong Adds(Take take) => (ulong)take.Count << _offset[take.Demand];

    /// <summary>What a pattern adds to a state.</summary>
    public ulong Adds(Pattern pattern)
    {
        ulong adds = 0;
        foreach (var take in pattern.Takes) adds += Adds(take);
        if (_tier.RipCap > 0) adds += (ulong)pattern.Rips << _ripOffset;
        if (_spendOffset < _spendEnd) adds += (ulong)(pattern.Price / _spendUnit) << _spendOffset;
        return adds;
    }

    /// <summary>The same without the demands and the rips.</summary>
    public ulong SpendOf(ulong adds) => _spendOffset < _spendEnd ? adds >> _spendOffset << _spendOffset : 0;

    /// <summary>True where what is added leaves the rips and the spend within what they may be, and no such demand too often filled.</summary>
    /// <param name="key">The state.</param>
    /// <param name="adds">What is added.</param>
    /// <param name="takes">Demands of which there are several.</param>
    public bool Fits(ulong key, ulong adds, Take[] takes)
    {
        foreach (var take in takes)
        {
            if (Filled(key, take.Demand) + take.Count > _tier.DemandCount[take.Demand]) return false;
        }

        if (_tier.RipCap > 0 && (long)(((key + adds) >> _ripOffset) & _ripMask) > _tier.RipCap) return false;
        return Affords(key + adds);
    }

    /// <summary>True where no more is spent than may be.</summary>
    public bool Affords(ulong key) => _spendOffset == _spendEnd || (long)(key >> _spendOffset) * _spendUnit <= _tier.SpendCap;

    private static int Width(long most) => 64 - (int)long.LeadingZeroCount(most);
}
