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
    internal static Action<string>? Trace;
    private const int MostPatterns = 150_000;
    private const long MostSteps = 60_000_000;
    private const double QuickWork = 1;
    private const double ProofWork = 30;

    public static TierOutcome Solve(Tier tier, MaterialPlan incumbent, long trivialBound, Effort effort)
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

        Trace?.Invoke($"{tier.Goal} D {tier.Problem.Demands.Count} S {tier.Problem.Supplies.Count}: incumbent {tier.Value(best)} bound {relaxation.Bound / (double)tier.Scale:0.###} -> {bound} pool {relaxation.Patterns.Count}");
        if (Done()) return new TierOutcome(best, bound, relaxation);
        Take(IntegerMaster.Solve(tier, relaxation.Patterns, best, tier.Value(best) - 1, QuickWork, effort));
        if (Done()) return new TierOutcome(best, bound, relaxation);

        Trace?.Invoke($"   quick master: {tier.Value(best)}");
        if (PatternEnumeration.All(tier, relaxation, tier.Value(best) - 1, MostPatterns, MostSteps) is { } patterns)
        {
            Trace?.Invoke($"   enumerated {patterns.Count}");
            var proof = IntegerMaster.Solve(tier, patterns, null, tier.Value(best) - 1, ProofWork, effort);
            Take(proof);
            Trace?.Invoke($"   proof closed {proof.Closed} value {tier.Value(best)}");
            if (proof.Closed) bound = tier.Value(best);
        }

        return new TierOutcome(best, bound, relaxation);
    }
}
