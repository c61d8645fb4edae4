using Google.OrTools.Sat;

namespace Offcuts.Matching.Methods;

/// <summary>What the integer master found.</summary>
/// <param name="Plan">The best plan, or none where none was found.</param>
/// <param name="Closed">True where nothing better can be made of these patterns (or nothing at all within the cutoff).</param>
internal readonly record struct IntegerOutcome(MaterialPlan? Plan, bool Closed);

/// <summary>
/// A <see cref="Tier"/> in whole numbers over a given set of patterns, solved by CP-SAT of OR-Tools with one worker, a fixed seed
/// and a limit in its own deterministic units, so that it takes the same way every time. All its numbers are whole.
/// </summary>
internal static class IntegerMaster
{
    /// <summary>Solves.</summary>
    /// <param name="tier">Rows and costs.</param>
    /// <param name="patterns">The columns.</param>
    /// <param name="hint">A plan to start from, or none.</param>
    /// <param name="most">Only plans that cost at most this are looked for.</param>
    /// <param name="work">Limit in deterministic units, about seconds.</param>
    /// <param name="effort">Limit in time.</param>
    public static IntegerOutcome Solve(Tier tier, IReadOnlyList<Pattern> patterns, MaterialPlan? hint, long most, double work, Effort effort)
    {
        if (effort.Over) return new IntegerOutcome(null, false);
        var problem = tier.Problem;
        var model = new CpModel();
        var uses = new IntVar[patterns.Count];
        var demand = problem.Demands.Select(_ => LinearExpr.NewBuilder()).ToArray();
        var supply = problem.Supplies.Select(_ => LinearExpr.NewBuilder()).ToArray();
        var spend = LinearExpr.NewBuilder();
        var rips = LinearExpr.NewBuilder();
        var cost = LinearExpr.NewBuilder();
        var hinted = hint?.Uses.ToDictionary(use => use.Pattern, use => use.Times) ?? [];
        for (var p = 0; p < patterns.Count; p++)
        {
            var pattern = patterns[p];
            var times = Math.Min(tier.SupplyCount[pattern.Supply], pattern.Takes.Min(take => Most(tier, take)));
            uses[p] = model.NewIntVar(0, times, "");
            foreach (var take in pattern.Takes) demand[take.Demand].AddTerm(uses[p], take.Count);
            supply[pattern.Supply].AddTerm(uses[p], 1);
            if (pattern.Price > 0) spend.AddTerm(uses[p], pattern.Price);
            if (pattern.Rips > 0) rips.AddTerm(uses[p], pattern.Rips);
            if (tier.Goal != Goal.Spend && tier.Cost(pattern) != 0) cost.AddTerm(uses[p], tier.Cost(pattern));
            if (hint is not null) model.AddHint(uses[p], hinted.GetValueOrDefault(pattern));
        }

        AddRows(tier, model, demand, supply, spend, cost);
        if (tier.RipCap is { } ripCap) model.Add(rips <= ripCap);
        model.Add(cost <= most);
        model.Minimize(cost);

        var (first, closed) = Solved(Parameters(work, effort));
        if (!closed) return new IntegerOutcome(first, false);

        // That nothing is better is believed once it is found without presolve too: OR-Tools 9.15 was seen to call a worse plan the best with it.
        if (first is not null) model.Add(cost <= tier.Value(first) - 1);
        var (second, confirmed) = Solved(Parameters(work, effort) + " cp_model_presolve:false");
        return new IntegerOutcome(second ?? first, confirmed);

        (MaterialPlan? Plan, bool Closed) Solved(string parameters)
        {
            var solver = new CpSolver { StringParameters = parameters };
            using var registration = effort.Cancel.Register(solver.StopSearch);
            var status = solver.Solve(model);
            if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible)) return (null, status == CpSolverStatus.Infeasible);
            return (Trimmed(tier, patterns.Select((pattern, p) => (pattern, (int)solver.Value(uses[p])))), status == CpSolverStatus.Optimal);
        }
    }

    /// <summary>One worker, a fixed seed, a limit in counted work.</summary>
    public static string Parameters(double work, Effort effort)
    {
        var parameters = FormattableString.Invariant($"num_workers:1 random_seed:1 linearization_level:2 catch_sigint_signal:false max_deterministic_time:{work}");
        return double.IsInfinity(effort.Seconds) ? parameters : parameters + FormattableString.Invariant($" max_time_in_seconds:{effort.Seconds}");
    }

    private static void AddRows(Tier tier, CpModel model, LinearExprBuilder[] demand, LinearExprBuilder[] supply, LinearExprBuilder spend, LinearExprBuilder cost)
    {
        var problem = tier.Problem;
        var left = new Dictionary<int, LinearExprBuilder>();
        for (var d = 0; d < problem.Demands.Count; d++)
        {
            if (!tier.Active[d]) continue;
            if (tier.MostLeft[d] > 0)
            {
                var unfilled = model.NewIntVar(0, tier.MostLeft[d], "");
                demand[d].AddTerm(unfilled, 1);
                if (tier.LeftCost[d] != 0) cost.AddTerm(unfilled, tier.LeftCost[d]);
                if (tier.LeftCap.ContainsKey(problem.Demands[d].Stage))
                {
                    if (!left.TryGetValue(problem.Demands[d].Stage, out var row)) left[problem.Demands[d].Stage] = row = LinearExpr.NewBuilder();
                    row.AddTerm(unfilled, 1);
                }
            }

            if (tier.Covering) model.Add(demand[d] >= tier.DemandCount[d]);
            else model.Add(demand[d] == tier.DemandCount[d]);
        }

        foreach (var (stage, row) in left) model.Add(row <= tier.LeftCap[stage]);
        for (var s = 0; s < problem.Supplies.Count; s++)
        {
            var used = model.NewIntVar(0, tier.SupplyCount[s], "");
            model.Add(supply[s] == used);
            if (tier.Goal == Goal.Spend && problem.Supplies[s].Price > 0) cost.AddTerm(used, problem.Supplies[s].Price);
        }

        if (tier.SpendCap is { } cap) model.Add(spend <= cap);
    }

    /// <summary>A plan of these patterns without the cuts that are filled more often than asked.</summary>
    public static MaterialPlan Trimmed(Tier tier, IEnumerable<(Pattern Pattern, int Times)> uses)
    {
        var problem = tier.Problem;
        var surplus = tier.DemandCount.Select(count => -count).ToArray();
        var all = uses.Where(use => use.Times > 0).ToArray();
        foreach (var (pattern, times) in all)
            foreach (var take in pattern.Takes) surplus[take.Demand] += take.Count * times;

        var kept = new List<(Pattern, int)>();
        foreach (var (pattern, times) in all.OrderByDescending(use => use.Pattern.Price).ThenBy(use => use.Pattern, Comparer<Pattern>.Create(Pattern.Compare)))
        {
            for (var i = 0; i < times; i++)
            {
                if (!pattern.Takes.Any(take => surplus[take.Demand] > 0))
                {
                    kept.Add((pattern, times - i));
                    break;
                }

                var takes = new List<Take>();
                foreach (var take in pattern.Takes)
                {
                    var dropped = Math.Min(take.Count, Math.Max(0, surplus[take.Demand]));
                    surplus[take.Demand] -= dropped;
                    if (take.Count > dropped) takes.Add(take with { Count = take.Count - dropped });
                }

                if (takes.Count > 0) kept.Add((new Pattern(problem, pattern.Supply, takes, pattern.Whole), 1));
            }
        }

        return new MaterialPlan(problem, kept);
    }

    private static int Most(Tier tier, Take take)
    {
        var count = tier.DemandCount[take.Demand];
        return tier.Covering ? (count + take.Count - 1) / take.Count : count / take.Count;
    }
}
