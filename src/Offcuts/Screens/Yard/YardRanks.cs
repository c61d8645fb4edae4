using Offcuts.Core.Yard;

namespace Offcuts.Screens;

/// <summary>
/// What the list of the yard is ordered by, as numbers: where each entry's code, material, length, condition, marks and place stand among those of all. Made
/// once for a reading of the yard, so that a hundred thousand are put into another order within a key's time.
/// </summary>
internal sealed class YardRanks
{
    // Two numbers and the place in the yard's list stand in one key; a yard of more than this many would not be ordered right.
    private const int Bits = 20;

    private readonly int[] _code;
    private readonly int[] _material;
    private readonly int[] _length;
    private readonly int[] _condition;
    private readonly int[] _marks;
    private readonly int[] _place;

    /// <summary>Of these entries; at most 2^20.</summary>
    public YardRanks(IReadOnlyList<YardEntry> entries)
    {
        _code = Of(entries, entry => entry.Code.Text, StringComparer.Ordinal);
        _material = Of(entries, entry => entry.Material, Comparer<Core.Materials.Material>.Default);
        // Longest first; bins, which have none, last.
        _length = Of(entries, entry => -(entry.Piece?.Length.Units ?? 0), Comparer<long>.Default);
        _condition = Of(entries, entry => entry.Piece is not { } piece ? 99 : (piece.OnHand ? 0 : 10 + (int)piece.State) + (int)piece.Condition, Comparer<int>.Default);
        // Those with most marks first, those without last.
        _marks = Of(entries, entry => entry.Piece is { } piece ? YardRows.Marks(piece) : "", Comparer<string>.Create(ByMarks));
        _place = Of(entries, entry => entry.Place, Comparer<string>.Create(ByPlace));
    }

    /// <summary>These entries in this order, and in the yard's own where it makes no difference.</summary>
    /// <param name="entries">Places in the yard's list, in its order.</param>
    /// <param name="order">By what.</param>
    /// <param name="turned">True for the other way round.</param>
    public int[] Ordered(int[] entries, YardOrder order, bool turned)
    {
        if (order == YardOrder.Entry)
        {
            if (turned) Array.Reverse(entries);
            return entries;
        }

        var (first, second) = order switch
        {
            YardOrder.Code => (_code, _code),
            YardOrder.Material => (_material, _length),
            YardOrder.Length => (_length, _material),
            YardOrder.Condition => (_condition, _material),
            YardOrder.Marks => (_marks, _material),
            _ => (_place, _material),
        };
        const long last = (1L << Bits) - 1;
        var keys = Array.ConvertAll(entries, i => ((turned ? last - first[i] : first[i]) << (2 * Bits)) | ((long)second[i] << Bits) | (long)i);
        Array.Sort(keys);
        return Array.ConvertAll(keys, key => (int)(key & last));
    }

    private static int[] Of<T>(IReadOnlyList<YardEntry> entries, Func<YardEntry, T> of, IComparer<T> comparer)
        where T : notnull
    {
        var values = entries.Select(of).ToArray();
        var sorted = values.Distinct().ToArray();
        Array.Sort(sorted, comparer);
        var ranks = new Dictionary<T, int>();
        for (var i = 0; i < sorted.Length; i++) ranks[sorted[i]] = i;
        return Array.ConvertAll(values, value => ranks[value]);
    }

    private static int ByMarks(string one, string other) =>
        one.Length != other.Length ? other.Length.CompareTo(one.Length) : string.CompareOrdinal(one, other);

    private static int ByPlace(string one, string other) =>
        StringComparer.OrdinalIgnoreCase.Compare(one, other) is var order && order != 0 ? order : string.CompareOrdinal(one, other);
}
