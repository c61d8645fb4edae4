using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Matching;

/// <summary>
/// Foam of the yard that a cut may not have because its type is another one than the cut's, or is not known. It is never matched,
/// since the type says how strong it is; but whoever entered one with its type and the other without should be told.
/// </summary>
internal static class NearFoams
{
    /// <summary>True for two foams as thick and as high as each other that differ in type.</summary>
    public static bool Are(Material one, Material other) =>
        one is FoamPanel a && other is FoamPanel b && a.Thickness == b.Thickness && a.Height == b.Height && !a.Equals(b);

    /// <summary>What would serve the cut but for its type, said behind the reason why it stays unfilled; nothing where nothing would.</summary>
    public static string Behind(Problem problem, RequiredCut cut, IReadOnlyList<PlannedPiece> planned) =>
        string.Concat(Of(problem, [cut], planned).Select(near => $"; {PlanReasons.NearFoam(near.Pieces, near.There)}"));

    /// <summary>What would serve cuts for which new foam is bought.</summary>
    public static IReadOnlyList<NearFoam> Bought(Problem problem, IReadOnlyList<PlannedPiece> pieces)
    {
        var bought = pieces.Where(piece => piece.Bought is not null).SelectMany(piece => piece.Cuts).Where(cut => cut.Rip is null)
            .Select(cut => (cut.Stage, cut.Cut)).ToHashSet();
        return
        [
            .. problem.Stages.SelectMany(stage => stage.Cuts).Where(cut => cut.Material is FoamPanel && bought.Contains((cut.Stage, cut.Name)))
                .GroupBy(cut => cut.Material).OrderBy(group => group.Key).SelectMany(group => Of(problem, [.. group], pieces)),
        ];
    }

    // All of one foam: a piece counts where one of these cuts would come out of it. What the plan uses already or was asked to leave alone
    // is no advice.
    private static IEnumerable<NearFoam> Of(Problem problem, IReadOnlyList<RequiredCut> cuts, IReadOnlyList<PlannedPiece> planned) => problem.Pieces
        .Where(piece => Are(piece.Material, cuts[0].Material) && !planned.Any(used => piece.Equals(used.Source)) && cuts.Any(cut =>
            Verdict.Of(piece with { Material = cut.Material }, cut, problem.Settings) is null
            && !problem.Wishes.Spares.Any(spare => spare.Forbids(piece.Code, cut.Stage, cut.Name))))
        .GroupBy(piece => piece.Material).OrderBy(group => group.Key)
        .Select(group => new NearFoam(cuts[0].Material.Name, group.Key.Name, group.Count()));
}
