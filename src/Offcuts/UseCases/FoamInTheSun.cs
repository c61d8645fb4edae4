using Offcuts.Core.Materials;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>Foam that has lain at one open place for longer than it should.</summary>
/// <param name="Place">The place, as the user names it; empty where none is known.</param>
/// <param name="Pieces">The pieces, the one that has lain longest first.</param>
/// <param name="Since">The day on which the first of them was entered.</param>
public sealed record FoamInTheSun(string Place, IReadOnlyList<Piece> Pieces, DateOnly Since)
{
    /// <summary>The pieces whose day of entry is asked for: all foam, since what is there may have been cut from what is gone.</summary>
    public static IEnumerable<Code> Asked(IEnumerable<Piece> pieces) =>
        pieces.Where(piece => piece.Material is FoamPanel).Select(piece => piece.Code);

    /// <summary>
    /// Foam on hand, by place, that was entered so many days ago as the settings say, or is cut from such foam, and lies at no place
    /// that is set as being under cover. The place of the longest time comes first.
    /// </summary>
    /// <remarks>
    /// The yard knows when a piece was entered and where it lies now, and no more: time that it lay under cover elsewhere before
    /// counts too. That is the careful reading.
    /// </remarks>
    public static IReadOnlyList<FoamInTheSun> Of(TodayFacts facts)
    {
        var settings = facts.Settings;
        if (settings.FoamDays == 0) return [];
        var foam = facts.Pieces.Where(piece => piece.Material is FoamPanel).ToDictionary(piece => piece.Code);
        return
        [
            .. foam.Values
                .Where(piece => piece.OnHand && !settings.Covered.Contains(piece.Place))
                .Select(piece => (Piece: piece, Since: LyingSince(piece, foam, facts)))
                .Where(piece => piece.Since is { } since && facts.Today.DayNumber - since.DayNumber >= settings.FoamDays)
                .GroupBy(piece => piece.Piece.Place, StringComparer.OrdinalIgnoreCase)
                .Select(group => group.OrderBy(piece => piece.Since).ToArray())
                .Select(group => new FoamInTheSun(group[0].Piece.Place, [.. group.Select(piece => piece.Piece)], group[0].Since!.Value))
                .OrderBy(group => group.Since).ThenBy(group => group.Place, StringComparer.OrdinalIgnoreCase),
        ];
    }

    // The earliest day on which the piece, or what it was cut from, was entered.
    private static DateOnly? LyingSince(Piece piece, Dictionary<Code, Piece> foam, TodayFacts facts)
    {
        DateOnly? first = null;
        var at = piece;
        while (true)
        {
            if (facts.Entered.TryGetValue(at.Code, out var entered) && DateOnly.FromDateTime(entered.DateTime) is var day && (first is null || day < first)) first = day;
            if (at.CutFrom.IsNone || !foam.TryGetValue(at.CutFrom, out var parent)) return first;
            at = parent;
        }
    }
}
