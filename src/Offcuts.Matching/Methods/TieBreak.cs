namespace Offcuts.Matching.Methods;

/// <summary>Chooses the spans that a plan's patterns lie on.</summary>
internal static class TieBreak
{
    public static MaterialOutcome Place(MaterialOutcome outcome, Relaxation? relaxation, Effort effort)
    {
        _ = relaxation;
        _ = effort;
        return outcome with { Placed = Greedy(outcome.Plan) };
    }

    private static List<(Pattern, SpanPlace?)> Greedy(MaterialPlan plan)
    {
        var placed = new List<(Pattern, SpanPlace?)>();
        foreach (var group in plan.Uses.GroupBy(use => use.Pattern.Supply))
        {
            var places = new Queue<SpanPlace>(plan.Problem.Supplies[group.Key].Places);
            foreach (var (pattern, times) in group)
            {
                for (var i = 0; i < times; i++) placed.Add((pattern, pattern.Price > 0 || plan.Problem.Supplies[group.Key].Bought is not null ? null : places.Dequeue()));
            }
        }

        return placed;
    }
}
