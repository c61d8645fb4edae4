using Google.OrTools.Sat;
using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>The rows of a tier as clause learning sees them. A row too many would rule out a plan that there is, and with it the best one.</summary>
public sealed class SatRowsTests
{
    // Uses drawn by chance, few of which keep the rows; the rows are told here from the definition of a tier.
    [Fact]
    public void Uses_keep_the_rows_of_a_model_exactly_where_they_keep_those_of_the_tier_and_cost_the_same()
    {
        var (kept, broken) = (new HashSet<Goal>(), new HashSet<Goal>());
        foreach (var (drawn, i) in DrawnTier.Some(8_000, 60).Select((drawn, i) => (drawn, i)))
        {
            var random = new Random(i);
            var tier = random.Next(3) > 0 ? drawn.Tier : drawn.Tier.Within([.. drawn.Tier.SupplyCount.Select(count => Math.Min(count, random.Next(2)))], drawn.Tier.SupplyCount);
            for (var draw = 0; draw < 4; draw++)
            {
                if (drawn.Filled(random) is not { } filled) continue;
                var uses = filled.Select(use => (use.Pattern, Times: Math.Max(0, (int)use.Times + (random.Next(4) == 0 ? random.Next(-1, 2) : 0)))).ToArray();
                var covering = random.Next(2) == 0;
                var cost = Cost(tier, uses, covering);

                Solved(tier, uses, covering).Should().Be(cost, $"of {drawn.Name}, draw {draw}");
                (cost is null ? broken : kept).Add(tier.Goal);
            }
        }

        kept.Should().BeEquivalentTo([Goal.Fill, Goal.Spend, Goal.Rips, Goal.GivenUp]);
        broken.Should().BeEquivalentTo(kept);
    }

    private static long? Solved(Tier tier, (Pattern Pattern, int Times)[] uses, bool covering)
    {
        var model = new CpModel();
        var (cost, _) = SatRows.Add(model, tier, [.. uses.Select(use => use.Pattern)], [.. uses.Select(use => model.NewIntVar(use.Times, use.Times, ""))], covering);
        model.Minimize(cost);
        using var solver = new CpSolver { StringParameters = "num_workers:1" };
        return solver.Solve(model) == CpSolverStatus.Optimal ? (long)Math.Round(solver.ObjectiveValue) : null;
    }

    // None where a row is not kept.
    private static long? Cost(Tier tier, (Pattern Pattern, int Times)[] uses, bool covering)
    {
        long Sum(Func<Pattern, long> figure) => uses.Sum(use => use.Times * figure(use.Pattern));
        for (var s = 0; s < tier.SupplyCount.Length; s++)
        {
            var used = Sum(pattern => pattern.Supply == s ? 1 : 0);
            if (used < tier.SupplyLeast[s] || used > tier.SupplyCount[s]) return null;
        }

        if (Sum(pattern => pattern.Price) > tier.SpendCap || Sum(pattern => pattern.Rips) > tier.RipCap) return null;
        var (cost, left) = (Sum(tier.Cost), tier.LeftCap.Keys.ToDictionary(stage => stage, _ => 0L));
        for (var d = 0; d < tier.DemandCount.Length; d++)
        {
            if (!tier.Active[d]) continue;
            var open = tier.DemandCount[d] - Sum(pattern => pattern.Takes.Where(take => take.Demand == d).Sum(take => take.Count));
            if (open > tier.MostLeft[d] || (open < 0 && !covering)) return null;
            cost += Math.Max(0, open) * tier.LeftCost[d];
            if (left.ContainsKey(tier.Problem.Demands[d].Stage)) left[tier.Problem.Demands[d].Stage] += Math.Max(0, open);
        }

        return left.Any(stage => stage.Value > tier.LeftCap[stage.Key]) ? null : cost;
    }
}
