using Google.OrTools.Sat;

namespace Offcuts.Matching.Methods;

/// <summary>The rows of a <see cref="Tier"/> over a list of patterns, as CP-SAT of OR-Tools takes them: whole numbers throughout, so that nothing has to be loosened.</summary>
internal static class SatRows
{
    /// <summary>Adds them to a model.</summary>
    /// <param name="model">The model.</param>
    /// <param name="tier">The tier.</param>
    /// <param name="patterns">The columns.</param>
    /// <param name="uses">How often each pattern is used.</param>
    /// <param name="covering">True where a demand may be filled more often than asked.</param>
    /// <returns>What a plan costs in the tier, and how many of each supply it uses.</returns>
    public static (LinearExprBuilder Cost, LinearExprBuilder[] Supply) Add(CpModel model, Tier tier, IReadOnlyList<Pattern> patterns, IReadOnlyList<IntVar> uses, bool covering)
    {
        LinearExprBuilder Sum() => LinearExpr.NewBuilder();
        var (cost, spend, rips) = (Sum(), Sum(), Sum());
        var demand = tier.DemandCount.Select(_ => Sum()).ToArray();
        var supply = tier.SupplyCount.Select(_ => Sum()).ToArray();
        var left = tier.LeftCap.Keys.ToDictionary(stage => stage, _ => Sum());
        for (var p = 0; p < patterns.Count; p++)
        {
            var pattern = patterns[p];
            foreach (var take in pattern.Takes) demand[take.Demand].AddTerm(uses[p], take.Count);
            supply[pattern.Supply].AddTerm(uses[p], 1);
            if (tier.Cost(pattern) is not 0 and var own) cost.AddTerm(uses[p], own);
            if (pattern.Price > 0) spend.AddTerm(uses[p], pattern.Price);
            if (pattern.Rips > 0) rips.AddTerm(uses[p], pattern.Rips);
        }

        for (var d = 0; d < demand.Length; d++)
        {
            if (!tier.Active[d]) continue;
            if (tier.MostLeft[d] > 0)
            {
                var unfilled = model.NewIntVar(0, tier.MostLeft[d], "");
                demand[d].AddTerm(unfilled, 1);
                cost.AddTerm(unfilled, tier.LeftCost[d]);
                if (left.TryGetValue(tier.Problem.Demands[d].Stage, out var ofStage)) ofStage.AddTerm(unfilled, 1);
            }

            model.AddLinearConstraint(demand[d], tier.DemandCount[d], covering ? int.MaxValue : tier.DemandCount[d]);
        }

        foreach (var (stage, row) in left) model.Add(row <= tier.LeftCap[stage]);
        for (var s = 0; s < supply.Length; s++) model.AddLinearConstraint(supply[s], tier.SupplyLeast[s], tier.SupplyCount[s]);
        if (tier.SpendCap is { } most) model.Add(spend <= most);
        if (tier.RipCap is { } mostRips) model.Add(rips <= mostRips);
        return (cost, supply);
    }
}
