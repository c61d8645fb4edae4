namespace Offcuts.Matching.Methods;

/// <summary>How much work a decision over a pool may take.</summary>
/// <param name="Copies">Most copies that are counted.</param>
/// <param name="States">Most states of the counting.</param>
/// <param name="Tries">Most tries of the counting.</param>
/// <param name="Nodes">Most nodes of the search.</param>
internal readonly record struct PoolWork(int Copies, int States, long Tries, int Nodes);

/// <summary>
/// A tier over a complete list of its patterns, by <see cref="CountProgram"/> where the copies are few, else by <see cref="PoolSearch"/>:
/// the one tells spans that are alike in effect together, the other knows the relaxation. Says so where both give up.
/// </summary>
internal static class PoolDecision
{
    private static readonly (SpanOrder Order, int Share)[] Tried = [(SpanOrder.FewPatternsFirst, 8), (SpanOrder.ManyPatternsFirst, 8), (SpanOrder.FewPatternsFirst, 1)];

    /// <summary>Decides.</summary>
    /// <param name="tier">Rows and costs.</param>
    /// <param name="pool">All patterns of all plans that cost at most <paramref name="most"/>.</param>
    /// <param name="guide">What the list was made with.</param>
    /// <param name="most">Only plans of at most this cost are looked for.</param>
    /// <param name="work">How much work.</param>
    /// <param name="effort">Limit.</param>
    public static IntegerOutcome Solve(Tier tier, IReadOnlyList<Pattern> pool, Guide guide, long most, PoolWork work, Effort effort)
    {
        // What is bought is bought again and again, which multiplies the states of the counting and not the nodes of the search.
        if (tier.Goal == Goal.GivenUp) return Counted(tier, pool, guide, most, work, effort) ?? Searched(tier, pool, guide, most, work, effort);
        var searched = Searched(tier, pool, guide, most, work, effort);
        return searched.Closed ? searched : Counted(tier, pool, guide, most, work, effort) ?? searched;
    }

    // None where it does not come to its end.
    private static IntegerOutcome? Counted(Tier tier, IReadOnlyList<Pattern> pool, Guide guide, long most, PoolWork work, Effort effort)
    {
        if (tier.Copies > work.Copies) return null;

        // The states can differ a hundredfold with the order, and which is better shows only in the counting.
        foreach (var (order, share) in Tried)
        {
            var counted = CountProgram.Solve(tier, pool, guide, most, work.States / share, work.Tries / share, effort, order);
            if (counted.Closed) return counted;
        }

        return null;
    }

    private static IntegerOutcome Searched(Tier tier, IReadOnlyList<Pattern> pool, Guide guide, long most, PoolWork work, Effort effort)
    {
        using var search = new PoolSearch(tier, pool, most, work.Nodes, effort);
        var closed = search.Run(guide.Bound);
        return new IntegerOutcome(search.Best, closed);
    }
}
