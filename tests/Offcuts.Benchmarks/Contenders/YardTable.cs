using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Matching;

namespace Offcuts.Benchmarks.Contenders;

/// <summary>Value given up by how much of a span is filled, for the assignment model; in steps that divide every cut with its kerf.</summary>
internal sealed class YardTable(MatchRequest request, Material material, IReadOnlyList<RequiredCut> cuts)
{
    private readonly Dictionary<(long, Condition, bool, bool), long[]> _made = [];

    /// <summary>What one saw cut destroys, in units.</summary>
    public long Kerf { get; } = request.Settings.Kerf(material).Units;

    /// <summary>The greatest step, in units, that every cut with its kerf is a whole number of.</summary>
    public long Grid { get; } = cuts.Select(cut => cut.Shortest.Units + request.Settings.Kerf(material).Units).Aggregate(GreatestDivisor);

    /// <summary>Cents that a span of the yard is worth before it is cut; a bought one counts for nothing here.</summary>
    public long Before(Piece? piece, long length) => piece is null ? 0 : Value(piece.Condition, piece.Treated, length);

    /// <summary>Cents given up where so many steps of a span are filled, from none to all.</summary>
    public long[] GivenUp(Piece? piece, StorePrice? price, long length, long capacity)
    {
        var (condition, treated) = (piece?.Condition ?? Condition.Sound, piece?.Treated ?? price!.Treated);
        var key = (length, condition, treated, piece is null);
        if (_made.TryGetValue(key, out var known)) return known;
        var before = Before(piece, length);
        return _made[key] = [0, .. Enumerable.Range(1, (int)capacity).Select(step => before - Value(condition, treated, length - step * Grid))];
    }

    private long Value(Condition condition, bool treated, long length) => length <= 0 ? 0 : YardValue.Of(
        Length.FromUnits(length), condition, request.Prices.ForValue(material, treated), request.Settings.Keep(material)).Cents;

    private static long GreatestDivisor(long a, long b) => b == 0 ? a : GreatestDivisor(b, a % b);
}
