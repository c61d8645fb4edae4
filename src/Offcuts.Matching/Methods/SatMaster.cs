using Google.OrTools.Sat;

namespace Offcuts.Matching.Methods;

/// <summary>
/// The integer master by CP-SAT of OR-Tools: clause learning over the linear relaxation. It works in whole numbers throughout, so that what it rules out is ruled out exactly.
/// Where many patterns are nearly alike it often ends at once where branch and bound goes on and on. One worker and a limit in counted work, so that it takes the same way every time.
/// </summary>
internal static class SatMaster
{
    /// <summary>More patterns than this are not taken in: a model of them takes longer to be written than most are solved in.</summary>
    public const int MostPatterns = IntegerMaster.MostPatterns;

    /// <summary>Solves. Closed only where the plan costs what its columns do: what goes beyond the copies asked for is dropped, and that can make it dearer.</summary>
    /// <param name="tier">Rows and costs.</param>
    /// <param name="patterns">The columns.</param>
    /// <param name="most">Only plans that cost at most this are looked for.</param>
    /// <param name="covering">
    /// True where columns may fill more than asked for. In the last tier that must not be where something is to be ruled out or proven: a surplus cut alone on a bought piece
    /// stands for that piece's value, which is gone with the cut. There every part of a pattern is a column of its own, and the copies can be filled exactly.
    /// </param>
    /// <param name="way">How the solver goes about it: one of <see cref="SatSettings"/>.</param>
    /// <param name="work">Most work, in the solver's own count: about seconds.</param>
    /// <param name="effort">Limit in time.</param>
    public static IntegerOutcome Solve(Tier tier, IReadOnlyList<Pattern> patterns, long most, bool covering, Func<double, Effort, string> way, double work, Effort effort)
    {
        if (effort.Over || patterns.Count > MostPatterns) return new IntegerOutcome(null, false);
        var model = new CpModel();
        var uses = patterns.Select(pattern => model.NewIntVar(0, tier.MostUses(pattern, covering), "")).ToArray();
        var (cost, _) = SatRows.Add(model, tier, patterns, uses, covering);
        model.Add(cost <= most);
        model.Minimize(cost);
        var solver = new CpSolver { StringParameters = way(work, effort) };
        using var registration = effort.Cancel.Register(solver.StopSearch);
        // Stopped before it has begun, the solver would not hear of it.
        if (effort.Over) return new IntegerOutcome(null, false);
        var status = solver.Solve(model);
        if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible)) return new IntegerOutcome(null, status == CpSolverStatus.Infeasible);
        var times = uses.Select(solver.Value).ToArray();
        var plan = IntegerMaster.Trimmed(tier, patterns.Select((pattern, p) => (pattern, (int)times[p])));
        if (!tier.Accepts(plan) || tier.Value(plan) > most) return new IntegerOutcome(null, false);
        return new IntegerOutcome(plan, status == CpSolverStatus.Optimal && tier.Value(plan) == (long)Math.Round(solver.ObjectiveValue));
    }
}
