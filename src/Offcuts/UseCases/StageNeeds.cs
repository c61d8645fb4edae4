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
                .Select(cut => cut with { Count = cut.Count - Made(plans, stage.Name, cut.Name) })
                .Where(cut => cut.Count > 0),
        ],
        Hardware =
        [
            .. stage.Hardware
                .Select(need => need with { Count = need.Count - CountedOut(plans, need) })
                .Where(need => need.Count > 0),
        ],
    };

    /// <summary>The stage of a name, in either case; null where there is none.</summary>
    public static Stage? Named(this IEnumerable<Stage> stages, string name) =>
        stages.FirstOrDefault(stage => string.Equals(stage.Name, name.Trim(), StringComparison.OrdinalIgnoreCase));

    /// <summary>How many cuts of this name were really made for the stage.</summary>
    public static int Made(IReadOnlyList<KeptPlan> plans, string stage, string cut) =>
        plans.SelectMany(plan => plan.PiecesCut)
            .SelectMany(piece => piece.Cuts)
            .Count(made => made.Stage == stage && made.Cut == cut);

    private static int CountedOut(IReadOnlyList<KeptPlan> plans, HardwareNeed need) =>
        plans.Where(plan => plan.HardwareDone)
            .SelectMany(plan => plan.Plan.Hardware)
            .Where(fill => fill.Need.Stage == need.Stage && fill.Need.Name == need.Name)
            .Sum(fill => fill.FromYard + fill.ToBuy);
}
