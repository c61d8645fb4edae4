using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>A place with what lies there.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Code">What its label says; none where it has no label.</param>
/// <param name="CountedOn">The day it was last counted; null where it never was.</param>
/// <param name="Pieces">Pieces on hand there.</param>
/// <param name="Bins">Bins there.</param>
public sealed record PlaceInShort(string Name, Code Code, DateOnly? CountedOn, int Pieces, int Bins);

/// <summary>Every place of the yard in the order in which to count them: one that never was first, then by the day, oldest first.</summary>
public static class SeePlaces
{
    /// <summary>Places that have a label, were counted, or have something lying there.</summary>
    public static IReadOnlyList<PlaceInShort> Of(YardFile yard) => Of(yard.Places(), yard.Pieces(), yard.Bins());

    /// <summary>The same of what was read already.</summary>
    public static IReadOnlyList<PlaceInShort> Of(IReadOnlyList<YardPlace> places, IReadOnlyList<Piece> pieces, IReadOnlyList<Bin> bins)
    {
        var known = places.ToDictionary(place => place.Name, StringComparer.OrdinalIgnoreCase);
        var pieceCount = Counts(pieces.Where(piece => piece.OnHand).Select(piece => piece.Place));
        var binCount = Counts(bins.Select(bin => bin.Place));
        return
        [
            .. known.Keys.Concat(pieceCount.Keys).Concat(binCount.Keys).Distinct(StringComparer.OrdinalIgnoreCase)
                .Select(name => new PlaceInShort(
                    known.TryGetValue(name, out var place) ? place.Name : name, place?.Code ?? default, place?.CountedOn, pieceCount.GetValueOrDefault(name), binCount.GetValueOrDefault(name)))
                .OrderBy(place => place.CountedOn ?? DateOnly.MinValue).ThenBy(place => place.Name, StringComparer.OrdinalIgnoreCase),
        ];
    }

    /// <summary>When a place was counted, in words.</summary>
    public static string Counted(DateOnly? on, DateOnly today) => on is not { } day ? "never" : (today.DayNumber - day.DayNumber) switch
    {
        <= 0 => "today",
        1 => "yesterday",
        var days => $"{days} days ago",
    };

    private static Dictionary<string, int> Counts(IEnumerable<string> places)
    {
        var counts = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        foreach (var place in places.Where(place => place.Length > 0)) counts[place] = counts.GetValueOrDefault(place) + 1;
        return counts;
    }
}
