namespace Offcuts.Matching.Methods;

/// <summary>How much work a decision over a pool may take.</summary>
/// <param name="Copies">Most copies that are counted.</param>
/// <param name="States">Most states of the counting.</param>
/// <param name="Tries">Most tries of the counting.</param>
/// <param name="Nodes">Most nodes of the search.</param>
/// <param name="First">Most work of the first try of clause learning, about in seconds; none at all where that is 0.</param>
/// <param name="Later">Work of its later tries, about in seconds: together they take at most half as much again.</param>
internal readonly record struct PoolWork(int Copies, int States, long Tries, int Nodes, double First = 0, double Later = 0)
{
    /// <summary>So many times as much search and clause learning.</summary>
    public PoolWork Times(int more) => this with { Nodes = more * Nodes, First = more * First, Later = more * Later };
}

/// <summary>
/// A tier over a complete list of its patterns, by <see cref="CountProgram"/> where the copies are few, else by <see cref="PoolSearch"/>:
/// the one tells spans that are alike in effect together, the other knows the relaxation. Where the relaxation does not decide within a few nodes, <see cref="SatMaster"/>
/// takes what is left of the list; what it leaves open, the search goes on with. Says so where all give up.
/// </summary>
internal static class PoolDecision
{
    // So many show whether the relaxation and its cuts decide.
    private const int FewNodes = 6;

    // How long one way takes differs a hundredfold from list to list, and not alike for all: some tries one after the other mostly end sooner than any one of them alone.
    private static readonly (Func<double, Effort, string> Way, double Share)[] Later =
        [(SatSettings.Unprobed, 0.125), (SatSettings.NearRelaxation, 0.125), (SatSettings.FromBelow, 0.125), (SatSettings.Unprobed, 0.5), (SatSettings.InTurn, 0.6)];

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

    /// <summary>Decides over all patterns that a plan of at most this cost can have, where they are few; else nothing is found and nothing closed.</summary>
    /// <param name="tier">Rows and costs.</param>
    /// <param name="relaxation">Tells how dear patterns may be.</param>
    /// <param name="most">Only plans of at most this cost are looked for.</param>
    /// <param name="few">So many patterns are few.</param>
    /// <param name="work">How much work.</param>
    /// <param name="effort">Limit.</param>
    public static IntegerOutcome OverAll(Tier tier, Relaxation relaxation, long most, int few, PoolWork work, Effort effort)
    {
        var guide = Guide.Linear(tier, relaxation);
        return PatternEnumeration.All(tier, guide.Limits(most), few, PatternEnumeration.StepsAPattern * few) is { } patterns
            ? Solve(tier, patterns, guide, most, work, effort)
            : new IntegerOutcome(null, false);
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
        var first = work.First > 0 ? Math.Min(work.Nodes, FewNodes) : work.Nodes;
        var search = new PoolSearch(tier, pool, most, first, effort);
        if (search.Run(guide.Bound)) return new IntegerOutcome(search.Best, true);
        if (work.First <= 0) return new IntegerOutcome(search.Best, false);
        var closed = Learnt(SatSettings.InTurn, work.First) || search.GoOn(work.Nodes - first, effort) || (work.Later > 0 && Later.Any(next => Learnt(next.Way, next.Share * work.Later)));
        return new IntegerOutcome(search.Best, closed);

        // Over what the root of the search left of the list. In the last tier the list holds every part of a pattern.
        bool Learnt(Func<double, Effort, string> way, double most)
        {
            var learnt = SatMaster.Solve(tier, search.RootPatterns, search.Most, tier.Goal != Goal.GivenUp, way, most, effort);
            if (learnt.Plan is { } plan) search.Hear(plan);
            return learnt.Closed;
        }
    }
}
