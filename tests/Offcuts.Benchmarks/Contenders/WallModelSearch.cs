using System.Diagnostics;
using Google.OrTools.Sat;
using Offcuts.Benchmarks.Measuring;
using Offcuts.Core.Walls;
using Offcuts.Matching.Runs;
using Offcuts.Matching.Tests.Runs;

namespace Offcuts.Benchmarks.Contenders;

/// <summary>
/// Solves the plain model of runs (<see cref="RunModel"/>) one tier after the other, with the figures of those before as rows; a tier may
/// take half of the time that is left, the last one all of it. All cores are used. Where joints may lie anywhere there is no such model.
/// </summary>
internal static class WallModelSearch
{
    /// <summary>What it reaches on one wall within so many seconds, building the model included.</summary>
    public static Outcome Run(Instance instance, RunRequest wall, double seconds)
    {
        if (wall.Runs.Select(run => run.Material).Distinct().Count() > 1) return Outcome.Nothing(instance, 0, "it lays one material alone");
        var watch = Stopwatch.StartNew();
        var problem = RunProblem.Create(wall).Value;
        if (problem.Runs.Any(run => run.Joints == JointRule.Anywhere)) return Outcome.Nothing(instance, 0, "its joints lie on lines");
        if (RunModel.Of(problem, () => watch.Elapsed.TotalSeconds > seconds) is not { } model)
            return Outcome.Nothing(instance, watch.Elapsed.TotalSeconds, "the model was not built within its limit");
        var figures = new List<Reached>();
        PartialVariableAssignment? last = null;
        for (var t = 0; t < model.Levels + 2; t++)
        {
            var left = seconds - watch.Elapsed.TotalSeconds;
            if (left < 0.02) break;
            model.Model.Minimize(model.Tiers[t]);
            if (last is not null) model.Model.Model.SolutionHint = last;
            var share = FormattableString.Invariant($"{(t == model.Levels + 1 ? left : left / 2)}");
            using var solver = new CpSolver { StringParameters = $"random_seed:7 max_time_in_seconds:{share} num_workers:{Environment.ProcessorCount}" };
            var status = solver.Solve(model.Model);
            if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible)) break;
            var value = (long)Math.Round(solver.ObjectiveValue);
            figures.Add(new Reached(value, status == CpSolverStatus.Optimal ? value : (long)Math.Ceiling(solver.BestObjectiveBound - 1e-6)));
            last = new PartialVariableAssignment();
            last.Vars.AddRange(Enumerable.Range(0, solver.Response!.Solution.Count));
            last.Values.AddRange(solver.Response.Solution);
            model.Model.Add(model.Tiers[t] <= value);
        }

        var took = watch.Elapsed.TotalSeconds;
        if (figures.Count <= model.Levels) return Outcome.Nothing(instance, took, "it reached no plan with a spend");
        return new Outcome(
            instance.Name, [.. figures.Take(model.Levels)], figures[model.Levels], figures.Count > model.Levels + 1 ? figures[^1] : null, took, null, null, 0, "");
    }
}
