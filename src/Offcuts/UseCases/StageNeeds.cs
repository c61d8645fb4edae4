using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>What of a stage's needs is met already, by the plans that were carried out.</summary>
public static class StageNeeds
{
    /// <summary>The stage with only what it still lacks: each need less what was really cut or counted out for it.</summary>
    public static Stage Lacking(Stage stage, IReadOnlyList<KeptPlan> plans) => stage with
    {
        Cuts =
        [
            .. stage.Cuts
                .Select(cut => cut with { Count = cut.Count - Made(plans, cut) })
                .Where(cut => cut.Count > 0),
        ],
        Hardware =
        [
            .. stage.Hardware
                .Select(need => need with { Count = need.Count - CountedOut(plans, need) })
                .Where(need => need.Count > 0),
        ],
    };

    /// <summary>The stage with only what it lacks and no open plan is to make or count out either.</summary>
    /// <param name="stage">The stage.</param>
    /// <param name="plans">All plans of the yard.</param>
    /// <param name="now">
    /// The piece of a code as it is by now: what hangs on one that is gone or can't be cut as planned any more is not planned. Without it every
    /// piece counts that waits.
    /// </param>
    public static Stage Unplanned(Stage stage, IReadOnlyList<KeptPlan> plans, Func<Code, Piece?>? now = null)
    {
        var lacking = Lacking(stage, plans);
        KeptPlan[] open = [.. plans.Where(plan => plan.Open)];
        PlannedPiece[] waiting = [.. open.SelectMany(plan => plan.Plan.Pieces.Zip(plan.Steps).Where(piece => piece.Second.State == StepState.Waiting).Select(piece => piece.First))
            .Where(piece => now is null || piece.Source is not { } source || PlanToday.Trouble(piece, now(source.Code)) is null)];
        return lacking with
        {
            Cuts = [.. lacking.Cuts.Select(cut => cut with { Count = cut.Count - waiting.Sum(piece => piece.Cuts.Count(made => Meets(cut, piece.MaterialOf(made), made))) }).Where(cut => cut.Count > 0)],
            Hardware = [.. lacking.Hardware.Select(need => need with { Count = need.Count - InPlans(open.Where(plan => plan.HardwareWaits), need) }).Where(need => need.Count > 0)],
        };
    }

    /// <summary>
    /// Cuts that still wait in a plan though their stages ask for them no more: the need was taken off, is of another length or material by now, or
    /// is met. None of a wall's filling, which fills runs and no needs.
    /// </summary>
    /// <param name="plan">The plan.</param>
    /// <param name="stages">All stages.</param>
    /// <param name="plans">All plans of the yard.</param>
    public static IReadOnlyList<PlannedCut> NotAsked(KeptPlan plan, IReadOnlyList<Stage> stages, IReadOnlyList<KeptPlan> plans)
    {
        if (!plan.Open || plan.Plan.Pieces.Any(piece => piece.LineSpacing is not null)) return [];
        RequiredCut[] needs = [.. stages.Where(stage => plan.Plan.Stages.Contains(stage.Name)).SelectMany(stage => Lacking(stage, plans).Cuts)];
        var left = needs.Select(need => need.Count).ToArray();
        var none = new List<PlannedCut>();
        foreach (var piece in plan.Plan.Pieces.Where((_, i) => plan.Steps[i].State == StepState.Waiting))
        {
            foreach (var cut in piece.Cuts)
            {
                var at = Array.FindIndex(needs, need => Meets(need, piece.MaterialOf(cut), cut));
                if (at < 0 || left[at]-- <= 0) none.Add(cut);
            }
        }

        return none;
    }

    /// <summary>The stage of a name, in either case; null where there is none.</summary>
    public static Stage? Named(this IEnumerable<Stage> stages, string name) =>
        stages.FirstOrDefault(stage => string.Equals(stage.Name, name.Trim(), StringComparison.OrdinalIgnoreCase));

    /// <summary>No stage has this name; those that are there are told.</summary>
    public static Fault NoneNamed(this IEnumerable<Stage> stages, string name) => YardFaults.NoSuchStage(name.Trim(), [.. stages.Select(stage => stage.Name)]);

    /// <summary>How many cuts were really made for this need.</summary>
    public static int Made(IReadOnlyList<KeptPlan> plans, RequiredCut need) =>
        plans.SelectMany(plan => plan.PiecesCut).Sum(piece => piece.Cuts.Count(made => Meets(need, piece.MaterialOf(made), made)));

    /// <summary>True where a cut that was made meets this need: same stage and name, and still the material and length it asks for.</summary>
    public static bool Meets(RequiredCut need, Material material, PlannedCut made) =>
        made.Stage == need.Stage && made.Cut == need.Name && material.Equals(need.Material)
        && need.Shortest <= made.Length && made.Length <= need.Longest;

    private static int CountedOut(IReadOnlyList<KeptPlan> plans, HardwareNeed need) =>
        InPlans(plans.Where(plan => plan.HardwareDone), need);

    private static int InPlans(IEnumerable<KeptPlan> plans, HardwareNeed need) =>
        plans.SelectMany(plan => plan.Plan.Hardware)
            .Where(fill => fill.Need.Stage == need.Stage && fill.Need.Name == need.Name && fill.Need.Hardware.Equals(need.Hardware))
            .Sum(fill => fill.FromYard + fill.ToBuy);
}
