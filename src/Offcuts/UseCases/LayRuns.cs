using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Matching.Runs;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>
/// Fills the runs of a wall, those of its footing too, from what is free and what can be bought: pieces that an open plan waits to cut are
/// left to it. Form boards are laid for rough use.
/// </summary>
public sealed class LayRuns(YardFile yard)
{
    /// <summary>The best laying within the limits, or why there can be none.</summary>
    public Result<RunPlan> Of(string wall, bool buy, MatchLimits limits) => Problem(wall, buy).Then<RunPlan>(problem => RunFiller.Fill(problem, limits));

    /// <summary>The problem that is meant, or why there is none.</summary>
    public Result<RunProblem> Problem(string wall, bool buy)
    {
        var walls = new ChangeWalls(yard);
        return walls.Find(wall).Then(kept => walls.Lay(kept.Sheet).Then(laid =>
        {
            var plans = yard.Plans();
            var promised = new Promised(plans.Where(plan => plan.Open)).Pieces;
            var held = new LookAhead(plans, yard.Stages()).Held([kept.Stage]);
            return RunProblem.Create(new RunRequest
            {
                Stage = kept.Stage,
                Runs = [.. laid.Runs, .. laid.FootingRuns],
                Pieces = [.. yard.Pieces().Where(piece => !promised.Contains(piece.Code) && !held.Contains(piece.Code))],
                Prices = yard.Prices(),
                Settings = yard.Settings(),
                Buy = buy,
                Uses = laid.FootingRuns.Select(run => run.Material).Distinct().ToDictionary(material => material, _ => Use.Rough),
            });
        }));
    }
}
