using Offcuts.Core.Plans;
using Offcuts.Matching.Methods;

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
    /// nothing. The time is shared out evenly among them. Once it is cancelled nothing more is begun, and those that were not are left out.
    /// </summary>
    public static IReadOnlyList<Rival> Of(Problem problem, MatchLimits limits)
    {
        var each = limits with { Time = limits.Time / (problem.Buy ? 3 : 2) };
        Plan Best(Func<MatchRequest, MatchRequest> change) => Matcher.Match(problem.Changed(change).Value, each);
        var best = Best(request => request with { Order = TierOrder.ValueFirst });
        if (limits.Cancel.IsCancellationRequested) return [new(Aim.Best, best)];
        var fewest = Best(request => request with { Order = TierOrder.SawCutsFirst });
        var nothing = problem.Buy && !limits.Cancel.IsCancellationRequested ? Best(request => request with { Buy = false }) : null;
        var first = OrFewest(problem, best, fewest);
        var ahead = !ReferenceEquals(first, best);
        best = nothing is null ? first : OrWithoutBuying(problem, first, nothing);
        var rivals = new List<Rival> { new(Aim.Best, best), new(Aim.FewestSawCuts, ahead && ReferenceEquals(first, best) ? fewest : FewerSaws(best, fewest)) };
        if (nothing is not null) rivals.Add(new Rival(Aim.NothingBought, nothing));
        return rivals;
    }

    /// <summary>
    /// The better of the best plan that was found and the one with the fewest saw cuts, which is a plan of the same problem: where time ended the first
    /// match early, the second may fill more, spend less or give up less.
    /// </summary>
    internal static Plan OrFewest(Problem problem, Plan best, Plan fewest)
    {
        if (Score.Compare(fewest.Tiers, best.Tiers, TierOrder.ValueFirst) >= 0) return best;

        // Up to the rips both orders ask the same, so that the second's bounds hold, and the first's too where all before is the same. What is given up was
        // reckoned at its saw cuts; the first's bound holds where all before it is proven the same, else what no plan goes below.
        var (then, now) = (best.Tiers, fewest.Tiers);
        var filled = then.UnfilledByStage.Select(stage => stage.Value).SequenceEqual(now.UnfilledByStage.Select(stage => stage.Value));
        var spent = filled && then.Spend.Value == now.Spend.Value;
        var same = spent && then.Unfilled.Proven && then.Spend.Proven && then.Rips is not { Proven: false } && then.Rips?.Value == now.Rips?.Value;
        var least = same ? then.ValueGivenUp.Bound : Part.Of(problem).SelectMany(part => part.First().Outcomes).Sum(outcome => outcome.LeastGivenUp);
        var taken = fewest with
        {
            Tiers = now with
            {
                Unfilled = filled ? Closer(now.Unfilled, then.Unfilled) : now.Unfilled,
                UnfilledByStage = filled ? [.. now.UnfilledByStage.Zip(then.UnfilledByStage, Closer)] : now.UnfilledByStage,
                Spend = filled ? Closer(now.Spend, then.Spend) : now.Spend,
                Rips = spent && now.Rips is { } few ? Closer(few, then.Rips!.Value) : now.Rips,
                ValueGivenUp = now.ValueGivenUp with { Bound = least },
                SawCutsBound = null,
            },
        };
        var faults = PlanChecker.Faults(problem.Changed(request => request with { Order = TierOrder.ValueFirst }).Value, taken);
        return faults.Count == 0 ? taken : throw new InvalidOperationException("a plan with the fewest saw cuts is no plan: " + string.Join("; ", faults));
    }

    private static Figure Closer(Figure figure, Figure other) => figure with { Bound = Math.Max(figure.Bound, other.Bound) };

    /// <summary>
    /// The better of the best plan that was found and the best that buys nothing, which is a plan of the same problem: where time ended the first match
    /// early, the second may be ahead. Both fill everything; where anything is given away no bound of a plan that buys nothing holds for those that buy.
    /// </summary>
    internal static Plan OrWithoutBuying(Problem problem, Plan best, Plan nothing)
    {
        if (best.Unfilled.Count > 0 || nothing.Unfilled.Count > 0 || problem.Prices.All.Any(price => price.Price.Cents <= 0)) return best;
        if (Score.Compare(nothing.Tiers, best.Tiers, TierOrder.ValueFirst) >= 0) return best;

        // With the same spend the bounds are those of the first; below it, a plan of no spend buys nothing, so that the second's hold.
        var (then, now) = (best.Tiers, nothing.Tiers);
        var same = then.Spend.Value == now.Spend.Value;
        var rips = now.Rips is { } few ? few with { Bound = same ? then.Rips!.Value.Bound : few.Bound } : (Figure?)null;
        var taken = nothing with
        {
            Buys = best.Buys,
            Tiers = now with
            {
                Unfilled = now.Unfilled with { Bound = then.Unfilled.Bound },
                UnfilledByStage = [.. now.UnfilledByStage.Zip(then.UnfilledByStage, (one, other) => one with { Bound = other.Bound })],
                Spend = now.Spend with { Bound = then.Spend.Bound },
                Rips = rips,
                ValueGivenUp = now.ValueGivenUp with { Bound = same && then.Rips?.Value == now.Rips?.Value ? Math.Max(then.ValueGivenUp.Bound, now.ValueGivenUp.Bound) : now.ValueGivenUp.Bound },
            },
        };
        var faults = PlanChecker.Faults(problem.Changed(request => request with { Order = TierOrder.ValueFirst }).Value, taken);
        return faults.Count == 0 ? taken : throw new InvalidOperationException("a plan that buys nothing is no plan: " + string.Join("; ", faults));
    }

    /// <summary>The better of two plans for the fewest saw cuts: where a limit of time ended the second match early, the first may be ahead in what the second is for.</summary>
    internal static Plan FewerSaws(Plan first, Plan second) =>
        Score.Compare(first.Tiers, second.Tiers, TierOrder.SawCutsFirst) <= 0 ? first with { Tiers = first.Tiers with { SawCutsBound = SawCutsBound(first.Tiers, second.Tiers) } } : second;

    // How few saw cuts any plan takes was reckoned for the second's fill, spend and rips: of another plan's nothing is known.
    private static int SawCutsBound(Tiers first, Tiers second) =>
        first.UnfilledByStage.Zip(second.UnfilledByStage).All(stage => stage.First.Value == stage.Second.Value) && first.Spend.Value == second.Spend.Value && first.Rips?.Value == second.Rips?.Value
            ? Math.Min(first.SawCuts, second.SawCutsBound ?? 0)
            : 0;
}
