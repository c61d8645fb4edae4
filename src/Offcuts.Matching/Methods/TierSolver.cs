namespace Offcuts.Matching.Methods;

/// <summary>What solving a tier gave.</summary>
/// <param name="Plan">The best plan found.</param>
/// <param name="Bound">No plan that keeps the rows of the tier is below it.</param>
/// <param name="Relaxation">The relaxation, or none where it was not needed.</param>
internal sealed record TierOutcome(MaterialPlan Plan, long Bound, Relaxation? Relaxation);

/// <summary>
/// Solves one tier: column generation for the bound, an integer master over the patterns it met for a plan, then all patterns
/// within the gap and the integer master over those for the proof.
/// </summary>
internal static class TierSolver
{
    private const int MostStates = 1 << 20;
    private const int MostCounted = 40_000;
    private const int Dives = 3;
    private const double QuickWork = 1;
    private const int MostNodes = 2_000;

    public static TierOutcome Solve(Tier tier, MaterialPlan incumbent, long trivialBound, bool spendIsLeast, Effort effort)
    {
        if (tier.Value(incumbent) <= trivialBound || effort.Over) return new TierOutcome(incumbent, trivialBound, null);
        var relaxation = ColumnGeneration.Solve(tier, incumbent, [], effort);
        var bound = Math.Max(trivialBound, Bounds.RoundUp(tier, relaxation.Bound));
        var best = incumbent;
        bool Done() => tier.Value(best) <= bound || effort.Over;
        void Take(IntegerOutcome outcome)
        {
            if (outcome.Plan is { } plan && tier.Value(plan) < tier.Value(best)) best = plan;
        }

        if (Done()) return new TierOutcome(best, bound, relaxation);
        for (var avoid = 0; avoid < Dives && !Done(); avoid++)
        {
            var dive = Diving.Dive(tier, relaxation.Patterns, avoid, effort);
            if (dive is not null && tier.Value(dive) < tier.Value(best)) best = dive;
        }

        if (Done()) return new TierOutcome(best, bound, relaxation);
        Take(IntegerMaster.Solve(tier, relaxation.Patterns, best, tier.Value(best) - 1, QuickWork, effort));
        if (Done()) return new TierOutcome(best, bound, relaxation);

        if (CountProgram.States(tier) <= MostStates && (tier.SpendCap is null || spendIsLeast)
            && PatternEnumeration.All(tier, relaxation, tier.Value(best) - 1, MostCounted, 60L * MostCounted) is { } counted && CountProgram.Fits(tier, counted))
        {
            var plan = CountProgram.Best(tier, counted, effort);
            if (effort.Over) return new TierOutcome(best, bound, relaxation);
            if (plan is not null && tier.Value(plan) < tier.Value(best)) best = plan;
            return new TierOutcome(best, tier.Value(best), relaxation);
        }

        while (!Done())
        {
            if (Widest(tier, relaxation, bound, tier.Value(best) - 1) is not { } level) break;
            using var search = new PoolSearch(tier, level.Patterns, level.Most, MostNodes, effort);
            var closed = search.Run(relaxation.Bound);
            if (search.Best is { } plan && tier.Value(plan) < tier.Value(best)) best = plan;
            if (!closed) break;
            bound = search.Best is not null ? tier.Value(best) : Math.Min(tier.Value(best), Bounds.NextAbove(tier, level.Most));
        }

        return new TierOutcome(best, bound, relaxation);
    }

    // The optimum is mostly close to the bound, and patterns multiply with the gap: so first plans of small cost are looked for, or
    // ruled out, among few patterns.
    private static (long Most, IReadOnlyList<Pattern> Patterns)? Widest(Tier tier, Relaxation relaxation, long bound, long most)
    {
        foreach (var limit in (int[])[3_000, 12_000, 40_000, 120_000])
        {
            (long Most, IReadOnlyList<Pattern> Patterns)? widest = null;
            for (var step = (most - bound) / 64; ; step = step == 0 ? 1 : 2 * step)
            {
                var level = Math.Min(most, bound + step);
                if (PatternEnumeration.All(tier, relaxation, level, limit, 60L * limit + 500_000) is not { } patterns) break;
                widest = (level, patterns);
                if (level == most) break;
            }

            if (widest is not null) return widest;
        }

        return null;
    }
}
