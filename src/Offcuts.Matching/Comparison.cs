using Offcuts.Core.Plans;

namespace Offcuts.Matching;

/// <summary>What a plan of a comparison is the best at.</summary>
public enum Aim
{
    /// <summary>The best by the tiers as they are.</summary>
    Best,

    /// <summary>The fewest saw cuts at the same fill and spend.</summary>
    FewestSawCuts,

    /// <summary>The best that buys nothing.</summary>
    NothingBought,
}

/// <summary>One plan of a comparison.</summary>
/// <param name="Aim">What it is the best at.</param>
/// <param name="Plan">The plan.</param>
public sealed record Rival(Aim Aim, Plan Plan);

/// <summary>Several plans for one problem, side by side, so that a person can pick.</summary>
public static class Comparison
{
    /// <summary>
    /// The best plan, the one with the fewest saw cuts at the same fill and spend, and, where buying is allowed, the best that buys
    /// nothing. The time is shared out evenly among them.
    /// </summary>
    public static IReadOnlyList<Rival> Of(Problem problem, MatchLimits limits)
    {
        var each = limits with { Time = limits.Time / (problem.Buy ? 3 : 2) };
        Plan Best(Func<MatchRequest, MatchRequest> change) => Matcher.Match(problem.Changed(change).Value, each);
        var best = Best(request => request with { Order = TierOrder.ValueFirst });
        var rivals = new List<Rival>
        {
            new(Aim.Best, best),
            new(Aim.FewestSawCuts, FewerSaws(best, Best(request => request with { Order = TierOrder.SawCutsFirst }))),
        };
        if (problem.Buy) rivals.Add(new Rival(Aim.NothingBought, Best(request => request with { Buy = false })));
        return rivals;
    }

    /// <summary>The better of two plans for the fewest saw cuts: where a limit of time ended the second match early, the first may be ahead in what the second is for.</summary>
    internal static Plan FewerSaws(Plan first, Plan second)
    {
        for (var s = 0; s < first.Tiers.UnfilledByStage.Count; s++)
        {
            var order = first.Tiers.UnfilledByStage[s].Value.CompareTo(second.Tiers.UnfilledByStage[s].Value);
            if (order != 0) return order < 0 ? first : second;
        }

        var (a, b) = (first.Tiers, second.Tiers);
        var (ripsA, ripsB) = (a.Rips?.Value ?? 0, b.Rips?.Value ?? 0);
        return (a.Spend.Value, ripsA, a.SawCuts, a.ValueGivenUp.Value).CompareTo((b.Spend.Value, ripsB, b.SawCuts, b.ValueGivenUp.Value)) <= 0 ? first : second;
    }
}
