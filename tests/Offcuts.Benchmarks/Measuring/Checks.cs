namespace Offcuts.Benchmarks.Measuring;

/// <summary>
/// What must hold whatever is measured. A bound is never above what is known to be reachable, a value never below what is known to
/// be impossible: against what is known by construction, and between the contenders, of which each one's plan is a witness against
/// the others' bounds. A tier is compared where both stand equal in every tier before it, as the bounds are meant.
/// </summary>
internal static class Checks
{
    /// <summary>Every violation, in a sentence.</summary>
    public static IEnumerable<string> Violations(IReadOnlyList<(Contender Contender, Outcome Outcome)> outcomes)
    {
        // Each of them drew the same instance.
        var (name, known) = (outcomes[0].Outcome.Instance, outcomes[0].Outcome.Known);
        foreach (var (who, outcome) in outcomes.Where(one => one.Outcome.HasPlan))
        {
            var filled = outcome.Unfilled.Sum(stage => stage.Value) == 0;
            if (known is not null && outcome.Spend.Bound > known.Best && filled)
                yield return $"{name}: {who} claims that no plan is below {outcome.Spend.Bound}, but {known.Best} is known";
            if (known is not null && outcome.Spend.Value < known.Bound && filled)
                yield return $"{name}: {who} says that it reaches {outcome.Spend.Value}, but nothing below {known.Bound} is possible";
            if (known is not null && !filled && outcome.Unfilled.Any(stage => stage.Bound > 0))
                yield return $"{name}: {who} claims that something must stay unfilled, but all can be filled";
            foreach (var (other, witness) in outcomes.Where(one => one.Contender != who && one.Outcome.HasPlan))
            {
                var (mine, theirs) = (Tiers(outcome), Tiers(witness));
                for (var t = 0; t < Math.Min(mine.Length, theirs.Length); t++)
                {
                    if (mine[t].Bound > theirs[t].Value)
                        yield return $"{name}: {who} claims that no plan is below {mine[t].Bound} in figure {t + 1}, but {other} reaches {theirs[t].Value}";
                    if (mine[t].Value != theirs[t].Value) break;
                }
            }
        }
    }

    private static Reached[] Tiers(Outcome outcome) =>
        [.. outcome.Unfilled, outcome.Spend, .. outcome.GivenUp is { } given ? [given] : Array.Empty<Reached>()];
}
