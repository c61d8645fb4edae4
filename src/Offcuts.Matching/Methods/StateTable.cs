namespace Offcuts.Matching.Methods;

/// <summary>
/// The states after one span of a <see cref="CountProgram"/>: for each the least that it costs, and by what it was reached so.
/// Open addressing with linear probing; a state keeps the number under which it came in. Benchmark: the class yard-25, where
/// looking states up is most of the time, and the library's dictionary takes twice as long.
/// </summary>
internal sealed class StateTable
{
    private const int FirstBits = 12;
    private const int MostExpected = 1 << 20;
    private const ulong Spread = 0x9E3779B97F4A7C15; // 2^64 over the golden ratio: Knuth, The Art of Computer Programming 3, 6.4.

    private readonly List<ulong> _keys = [];
    private readonly List<long> _costs = [];
    private readonly List<CountTies>? _ties;
    private readonly List<int> _from = [];
    private readonly List<int> _by = [];
    private int _bits;
    private (ulong Key, int Number)[] _slots;

    private StateTable(bool ties, int expected)
    {
        _ties = ties ? [] : null;
        _bits = Math.Max(FirstBits, 33 - int.LeadingZeroCount(Math.Min(expected, MostExpected)));
        _slots = Emptied(_bits);
    }

    /// <summary>Before the first span: nothing is filled and nothing paid.</summary>
    /// <param name="ties">True where the fourth tier decides between ways of one cost.</param>
    public static StateTable Start(bool ties)
    {
        var start = new StateTable(ties, 1);
        start.Reach(0, 0, -1, -1);
        return start;
    }

    /// <summary>An empty table for the span after this one.</summary>
    /// <param name="expected">About how many states there will be.</param>
    public StateTable Next(int expected) => new(_ties is not null, expected);

    /// <summary>The first of these states.</summary>
    /// <param name="kept">Tells by number which.</param>
    /// <param name="most">No more than this.</param>
    public StateTable Where(Func<int, bool> kept, int most)
    {
        var some = Next(most);
        for (var i = 0; i < Count && some.Count < most; i++)
        {
            if (kept(i)) some.Reach(_keys[i], _costs[i], _from[i], _by[i], _ties?[i] ?? default);
        }

        return some;
    }

    /// <summary>How many there are.</summary>
    public int Count => _keys.Count;

    /// <summary>The states in the order in which they came.</summary>
    public List<ulong> Keys => _keys;

    /// <summary>What each costs.</summary>
    public List<long> Costs => _costs;

    /// <summary>What each is in the fourth tier, where that is asked for.</summary>
    public List<CountTies> Ties => _ties!;

    /// <summary>Number of the state before it.</summary>
    public int[] From => [.. _from];

    /// <summary>What was done there.</summary>
    public int[] By => [.. _by];

    /// <summary>A way to a state; kept if it is new or cheaper than the ways before.</summary>
    /// <param name="key">The state.</param>
    /// <param name="cost">What this way costs.</param>
    /// <param name="from">Number of the state before it.</param>
    /// <param name="by">What was done there.</param>
    /// <param name="ties">What it is in the fourth tier, where that is asked for.</param>
    public void Reach(ulong key, long cost, int from, int by, CountTies ties = default)
    {
        var at = Slot(key);
        if (_slots[at].Number is var number and >= 0)
        {
            if (cost > _costs[number] || (cost == _costs[number] && (_ties is null || ties.CompareTo(_ties[number]) >= 0))) return;
            (_costs[number], _from[number], _by[number]) = (cost, from, by);
            if (_ties is not null) _ties[number] = ties;
            return;
        }

        _slots[at] = (key, _keys.Count);
        _keys.Add(key);
        _costs.Add(cost);
        _from.Add(from);
        _by.Add(by);
        _ties?.Add(ties);
        if (2 * _keys.Count > _slots.Length) Grow();
    }

    private static (ulong Key, int Number)[] Emptied(int bits)
    {
        var slots = new (ulong Key, int Number)[1 << bits];
        Array.Fill(slots, (0UL, -1));
        return slots;
    }

    // Where the state is, or the empty slot where it belongs.
    private int Slot(ulong key)
    {
        var at = (int)((key * Spread) >> (64 - _bits));
        while (_slots[at].Number >= 0 && _slots[at].Key != key) at = (at + 1) & (_slots.Length - 1);
        return at;
    }

    private void Grow()
    {
        _slots = Emptied(++_bits);
        for (var number = 0; number < _keys.Count; number++) _slots[Slot(_keys[number])] = (_keys[number], number);
    }
}
