using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// Searches a part of which stock is limited: the rows that it may reach for are laid first, then the others as far as it goes; and pairs and rows are laid again by turns.
/// </summary>
internal static class LimitedSearch
{
    private const int Rounds = 30;
    private const int MostFruitless = 20;
    private const int MostTurns = 2;
    private const double OfTurns = 0.8;

    /// <summary>The best filling found and its bounds.</summary>
    /// <param name="part">The part, in which everything that can be had is limited; joints on lines only.</param>
    /// <param name="exact">What was found so far, or none.</param>
    /// <param name="effort">Limit.</param>
    /// <param name="better">Told whenever a figure gets better or a bound closer.</param>
    public static PartOutcome Of(RunPart part, Filling? exact, Effort effort, Action<PartOutcome> better)
    {
        using var bottom = BottomUp.Begin(part, effort.Share(0.4));
        var (worth, search) = (new WorthTable(part, bottom.Prices), new LayingSearch(part, bottom.Prices));
        var filling = bottom.First is { } first ? PartDecision.Completed(first, worth, effort) : exact ?? search.First(effort.Share(0.3));
        if (exact is not null && exact.CompareTo(filling) < 0) filling = exact;
        better(new PartOutcome(filling, TrivialBounds.Of(part, filling)));
        // What a shorter time falls back on is tried in a longer one too: which of both lays more can't be known beforehand.
        if (bottom.First is not null && filling.Filled.Contains(false) && !effort.Over && search.First(effort.Share(0.2)) is var other && other.CompareTo(filling) < 0) better(new PartOutcome(filling = other, TrivialBounds.Of(part, filling)));
        var known = new KnownBounds(part, null, bottom.Prices, filling, effort.Share(0.2));
        better(known.Of(filling));
        var endless = double.IsInfinity(effort.Seconds);
        var forTurns = effort.Share(OfTurns);
        for (var fruitless = 0; fruitless < (endless ? MostTurns : int.MaxValue) && !forTurns.Over && !known.Of(filling).Proven; fruitless++)
        {
            var before = filling;
            var turn = forTurns.Share(0.2);
            for (var n = 0; n < MostFruitless && !turn.Over; n++)
            {
                if (bottom.Change(turn) is { } next && PartDecision.Completed(next, worth, turn) is var laid && laid.CompareTo(filling) < 0) better(known.Of(filling = laid));
            }

            filling = search.Improve(filling, known.Of, forTurns.Share(0.2), one => better(known.Of(one)), Rounds, seed: fruitless);
            if (filling.CompareTo(before) < 0) fruitless = -1;
        }

        filling = Reshaping.Improve(filling, known.Of, effort.Share(0.4), one => better(known.Of(one)));
        var outcome = PartDecision.Decided(part, known, filling, effort.Share(0.4));
        return outcome.Proven ? outcome : PartDecision.Last(part, known, outcome, effort);
    }
}
