using Google.OrTools.LinearSolver;

namespace Offcuts.Matching.Methods;

/// <summary>What the integer master found.</summary>
/// <param name="Plan">The best plan, or none where none was found.</param>
/// <param name="Closed">True where nothing better can be made of these patterns (or nothing at all within the cutoff).</param>
internal readonly record struct IntegerOutcome(MaterialPlan? Plan, bool Closed);

/// <summary>
/// A <see cref="Tier"/> in whole numbers over a given set of patterns, by two general solvers that share no code: HiGHS, and where that finds
/// nothing better, SCIP must find nothing either (both by OR-Tools), for which it may take more nodes. They work with floating-point numbers, to about a millionth. So that no
/// such error can hide a plan, every row is loosened by far more than that, and by less than what tells two whole numbers apart: the plans
/// are the same, and what a solver calls impossible is so by a wide margin. A plan is taken only after it was added up in whole numbers.
/// Limits are nodes, so that it takes the same way every time. HiGHS does not look at the time while it prepares: over some ten thousand
/// patterns that can take most of a minute, so that so many are not given to it. Where only a plan is looked for, clause learning has a short try before them.
/// </summary>
internal static class IntegerMaster
{
    /// <summary>More patterns than this are not taken in.</summary>
    public const int MostPatterns = 12_000;

    private const double LooseCopies = 0.01;
    private const double LooseCents = 0.49;
    private const int NodesOfSecond = 20;
    private const double ShareOfHighs = 0.4;
    private const double WorkToFind = 0.3;
    private const double WorkToImprove = 0.6;

    /// <summary>Solves.</summary>
    /// <param name="tier">Rows and costs.</param>
    /// <param name="patterns">The columns.</param>
    /// <param name="most">Only plans that cost at most this are looked for.</param>
    /// <param name="nodes">Most nodes of each solver.</param>
    /// <param name="effort">Limit in time.</param>
    public static IntegerOutcome Solve(Tier tier, IReadOnlyList<Pattern> patterns, long most, int nodes, Effort effort)
    {
        if (effort.Over || patterns.Count > MostPatterns) return new IntegerOutcome(null, false);
        if (patterns.Count == 0) return Nothing(tier, most);
        var first = ByHighs(tier, patterns, most, nodes, effort);
        if (!first.Closed || effort.Over) return first with { Closed = false };
        var better = first.Plan is { } plan ? tier.Value(plan) - 1 : most;
        var second = Solved(tier, patterns, better, "SCIP", FormattableString.Invariant($"limits/nodes = {NodesOfSecond * nodes}"), effort);
        return second.Plan is null ? first with { Closed = second.Closed } : second with { Closed = false };
    }

    /// <summary>Only a plan is looked for, by <see cref="SatMaster"/>, and where that finds none in little work by HiGHS; in the last tier not by that.</summary>
    public static MaterialPlan? Found(Tier tier, IReadOnlyList<Pattern> patterns, long most, int nodes, Effort effort)
    {
        if (effort.Over || patterns.Count is 0 or > MostPatterns) return null;
        var found = Learnt(most, SatSettings.InTurn, WorkToFind);
        if (found.Closed) return found.Plan;
        if (found.Plan is { } plan) return Learnt(tier.Value(plan) - 1, SatSettings.NearRelaxation, WorkToImprove).Plan ?? plan;

        // In the last tier it took most of the time there is and found next to nothing.
        return tier.Goal == Goal.GivenUp ? null : ByHighs(tier, patterns, most, nodes, effort).Plan;

        IntegerOutcome Learnt(long atMost, Func<double, Effort, string> way, double work) => SatMaster.Solve(tier, patterns, atMost, tier.Covering, way, work, effort);
    }

    // It does not stop before its limits, so it gets a share of the time only. Its gaps are settings of its own.
    private static IntegerOutcome ByHighs(Tier tier, IReadOnlyList<Pattern> patterns, long most, int nodes, Effort effort) => Solved(
        tier, patterns, most, "HIGHS",
        FormattableString.Invariant($"output_flag=false,parallel=off,mip_rel_gap=0,mip_abs_gap=0,mip_max_nodes={nodes}"), effort.Share(ShareOfHighs));

    // Without patterns there is one plan.
    private static IntegerOutcome Nothing(Tier tier, long most)
    {
        var plan = new MaterialPlan(tier.Problem, []);
        return new IntegerOutcome(tier.Accepts(plan) && tier.Value(plan) <= most ? plan : null, true);
    }

    private static IntegerOutcome Solved(Tier tier, IReadOnlyList<Pattern> patterns, long most, string by, string settings, Effort effort)
    {
        using var solver = Solver.CreateSolver(by) ?? throw new InvalidOperationException($"the solver {by} is missing");
        using var parameters = new MPSolverParameters();
        parameters.SetDoubleParam(MPSolverParameters.DoubleParam.RELATIVE_MIP_GAP, 0);
        solver.SetSolverSpecificParametersAsString(settings);
        if (!double.IsInfinity(effort.Seconds)) solver.SetTimeLimit(1 + (long)(1000 * effort.Seconds));
        var uses = Modelled(tier, patterns, most, solver);
        using var registration = effort.Cancel.Register(() => solver.InterruptSolve());
        var status = solver.Solve(parameters);
        if (status is not (Solver.ResultStatus.OPTIMAL or Solver.ResultStatus.FEASIBLE)) return new IntegerOutcome(null, status == Solver.ResultStatus.INFEASIBLE);
        var plan = Trimmed(tier, patterns.Select((pattern, p) => (pattern, (int)Math.Round(uses[p].SolutionValue()))));
        return tier.Accepts(plan) && tier.Value(plan) <= most ? new IntegerOutcome(plan, status == Solver.ResultStatus.OPTIMAL) : new IntegerOutcome(null, false);
    }

    private static Variable[] Modelled(Tier tier, IReadOnlyList<Pattern> patterns, long most, Solver solver)
    {
        Constraint AtMost(double right, double loose) => solver.MakeConstraint(double.NegativeInfinity, right + loose);
        var problem = tier.Problem;
        var cost = AtMost(most, LooseCents);
        var spend = tier.SpendCap is { } cap ? AtMost(cap, LooseCents) : null;
        var rips = tier.RipCap is { } ripCap ? AtMost(ripCap, LooseCopies) : null;
        var left = tier.LeftCap.ToDictionary(pair => pair.Key, pair => AtMost(pair.Value, LooseCopies));
        var supply = tier.SupplyCount.Select((count, s) => solver.MakeConstraint(tier.SupplyLeast[s] - LooseCopies, count + LooseCopies)).ToArray();
        var demand = tier.DemandCount.Select((count, d) => tier.Active[d]
            ? solver.MakeConstraint(count - LooseCopies, tier.Covering ? double.PositiveInfinity : count + LooseCopies)
            : null).ToArray();

        Variable Counted(int times, double costs)
        {
            var variable = solver.MakeIntVar(0, times, "");
            cost.SetCoefficient(variable, costs);
            solver.Objective().SetCoefficient(variable, costs);
            return variable;
        }

        var uses = new Variable[patterns.Count];
        for (var p = 0; p < uses.Length; p++)
        {
            var pattern = patterns[p];
            uses[p] = Counted(tier.MostUses(pattern, tier.Covering), tier.Cost(pattern));
            foreach (var take in pattern.Takes) demand[take.Demand]?.SetCoefficient(uses[p], take.Count);
            supply[pattern.Supply].SetCoefficient(uses[p], 1);
            spend?.SetCoefficient(uses[p], pattern.Price);
            rips?.SetCoefficient(uses[p], pattern.Rips);
        }

        for (var d = 0; d < demand.Length; d++)
        {
            if (demand[d] is not { } row || tier.MostLeft[d] == 0) continue;
            var unfilled = Counted(tier.MostLeft[d], tier.LeftCost[d]);
            row.SetCoefficient(unfilled, 1);
            left.GetValueOrDefault(problem.Demands[d].Stage)?.SetCoefficient(unfilled, 1);
        }

        solver.Objective().SetMinimization();
        return uses;
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
}
