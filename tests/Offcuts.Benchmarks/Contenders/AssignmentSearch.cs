using System.Diagnostics;
using Google.OrTools.Sat;
using Offcuts.Benchmarks.Measuring;

namespace Offcuts.Benchmarks.Contenders;

/// <summary>
/// Solves the assignment model one tier after the other, with the figures of those before as rows, each from the best plan so far;
/// a tier may take half of the time that is left, the last one all of it. The third is the last where its tables can be read in the time that is
/// left to it. All cores are used.
/// </summary>
internal static class AssignmentSearch
{
    /// <summary>What it reaches on one instance within so many seconds, building the model included.</summary>
    public static Outcome Run(Instance instance, double seconds)
    {
        var watch = Stopwatch.StartNew();
        var model = new AssignmentModel(instance.Request);
        if (!model.Build(() => watch.Elapsed.TotalSeconds > seconds))
            return Outcome.Nothing(instance, watch.Elapsed.TotalSeconds, "the model was not built within its limit");

        var stages = instance.Request.Stages.Count;
        var bounds = new long?[stages + 2];
        if (model.NothingValued) bounds[^1] = 0;
        var leftOut = false;
        for (var t = 0; t <= stages + 1 && seconds - watch.Elapsed.TotalSeconds > 0.02; t++)
        {
            if (t > stages && !Third(1))
            {
                leftOut = !model.NothingValued;
                break;
            }

            var last = t > stages || (t == stages && !Third(0.5));
            var tier = t <= stages ? model.Tiers[t] : model.AddGivenUp();
            var left = Math.Max(0.01, seconds - watch.Elapsed.TotalSeconds);
            bounds[t] = Minimise(model, tier, last ? left : left / 2);
            // A count and a price are never below 0, whatever the solver had time to say.
            if (t <= stages) bounds[t] = Math.Max(0, bounds[t] ?? 0);
            model.Model.Add(tier <= model.Figures[t]);
        }

        return new Outcome(
            instance.Name, [.. Enumerable.Range(0, stages).Select(At)], At(stages), At(stages + 1),
            watch.Elapsed.TotalSeconds, null, null, 0, !leftOut ? "" : "too many table entries for its third tier in its time");

        // Whether the third tier can be solved in that share of what is left.
        bool Third(double share) => !model.NothingValued && model.TablesInReach((seconds - watch.Elapsed.TotalSeconds) * share);
        Reached At(int t) => new(model.Figures[t], bounds[t]);
    }

    // The bound of a tier, or none.
    private static long? Minimise(AssignmentModel model, LinearExpr tier, double seconds)
    {
        model.Model.Minimize(tier);
        var hint = new PartialVariableAssignment();
        hint.Vars.AddRange(Enumerable.Range(0, model.Best.Count));
        hint.Values.AddRange(model.Best);
        model.Model.Model.SolutionHint = hint;
        using var solver = new CpSolver { StringParameters = FormattableString.Invariant($"random_seed:7 max_time_in_seconds:{seconds} num_workers:{Environment.ProcessorCount}") };
        var status = solver.Solve(model.Model);
        if (status is CpSolverStatus.Infeasible or CpSolverStatus.ModelInvalid) throw new InvalidOperationException($"the model holds at least the plan that it starts from: {status}");
        if (status is CpSolverStatus.Optimal or CpSolverStatus.Feasible) model.Take(solver);
        return status switch
        {
            CpSolverStatus.Optimal => (long)Math.Round(solver.ObjectiveValue),
            CpSolverStatus.Feasible => (long)Math.Ceiling(solver.BestObjectiveBound - 1e-6),
            _ => null,
        };
    }
}
