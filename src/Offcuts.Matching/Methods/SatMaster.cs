using Google.OrTools.Sat;

namespace Offcuts.Matching.Methods;

/// <summary>
/// The integer master by CP-SAT of OR-Tools: clause learning over the linear relaxation. It works in whole numbers throughout, so that what it rules out is ruled out exactly.
/// Where many patterns are nearly alike it often ends at once where branch and bound goes on and on. One worker and a limit in counted work, so that it takes the same way every time.
/// </summary>
internal static class SatMaster
{
    /// <summary>Solves.</summary>
    /// <param name="tier">Rows and costs.</param>
    /// <param name="patterns">The columns.</param>
    /// <param name="most">Only plans that cost at most this are looked for.</param>
    /// <param name="settings">How the solver goes about it: one of <see cref="SatSettings"/>.</param>
    /// <param name="effort">Limit in time.</param>
    public static IntegerOutcome Solve(Tier tier, IReadOnlyList<Pattern> patterns, long most, string settings, Effort effort)
    {
        if (effort.Over) return new IntegerOutcome(null, false);
        var model = new CpModel();
        var uses = patterns.Select(pattern => model.NewIntVar(0, tier.MostUses(pattern), "")).ToArray();
        var cost = SatRows.Add(model, tier, patterns, uses, tier.Covering);
        model.Add(cost <= most);
        model.Minimize(cost);
        var solver = new CpSolver { StringParameters = settings };
        using var registration = effort.Cancel.Register(solver.StopSearch);
        var status = solver.Solve(model);
        if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible)) return new IntegerOutcome(null, status == CpSolverStatus.Infeasible);
        var plan = IntegerMaster.Trimmed(tier, patterns.Select((pattern, p) => (pattern, (int)solver.Value(uses[p]))));
        return tier.Accepts(plan) && tier.Value(plan) <= most
            ? new IntegerOutcome(plan, status == CpSolverStatus.Optimal)
            : throw new InvalidOperationException("a plan of the solver does not keep the rows it was given");
    }
}
