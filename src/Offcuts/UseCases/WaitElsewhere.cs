using Offcuts.Core.Faults;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>
/// Pieces that might serve a cut but wait in kept plans for something else, so that no match of the cut may have them. An explanation names them,
/// with the way out.
/// </summary>
public static class WaitElsewhere
{
    private const int MostNamed = 8;

    /// <summary>As lines for people; a line that begins with two spaces belongs to the one above. None where no such piece waits.</summary>
    /// <param name="yard">The yard.</param>
    /// <param name="problem">What was matched.</param>
    /// <param name="cut">The cut that is explained.</param>
    public static IReadOnlyList<string> Lines(YardFile yard, Problem problem, RequiredCut cut)
    {
        var had = problem.Pieces.Select(piece => piece.Code).ToHashSet();
        var unit = problem.Settings.Unit;
        var walls = yard.WallPlans().ToDictionary(wall => wall.PlanId, wall => wall.Wall);
        var waiting = yard.Plans().Where(plan => plan.Open)
            .SelectMany(plan => plan.Plan.Pieces.Zip(plan.Steps).Where(each => each.Second.State == StepState.Waiting && each.First.Source is not null).Select(each => (Plan: plan, Piece: each.First)))
            .Where(each => !had.Contains(each.Piece.Source!.Code) && yard.Piece(each.Piece.Source!.Code) is { } now && Serves(now, each.Plan, cut, problem.Settings))
            .DistinctBy(each => each.Piece.Source!.Code).ToArray();
        if (waiting.Length == 0) return [];
        var stages = problem.Stages.Select(stage => stage.Name).ToArray();
        var lines = new List<string> { "Long enough, but waits in another plan" };
        foreach (var (plan, piece) in waiting.Take(MostNamed))
            lines.Add($"  {piece.Source!.Code} {(piece.Source.Material.Equals(cut.Material) ? "" : $"{piece.Source.Material} ")}{piece.Source.Length.ToText(unit)}: waits in plan {plan.Id} for {string.Join(", ", piece.Cuts.Select(one => $"{one.Cut} ({one.Stage})").Distinct())}");
        if (waiting.Length > MostNamed) lines.Add($"  and {waiting.Length - MostNamed} more");
        foreach (var plan in waiting.Select(each => each.Plan).DistinctBy(plan => plan.Id))
        {
            if (walls.TryGetValue(plan.Id, out var wall))
            {
                lines.Add($"  to have them, fill the wall {TextRules.Harmless(wall)} otherwise, or give plan {plan.Id}, which fills it, up: offcuts drop {plan.Id}");
                continue;
            }

            var together = yard.Stages().Select(stage => stage.Name).Where(name => stages.Contains(name) || plan.Plan.Stages.Contains(name));
            lines.Add($"  to have them, plan all its stages together: offcuts plan {string.Join(' ', together.Select(ShellWord.Of))}, or give plan {plan.Id} up: offcuts drop {plan.Id}");
        }

        return lines;
    }

    // What is reserved for a stage of the plan it waits in would be had with that plan's stages.
    private static bool Serves(Piece piece, KeptPlan plan, RequiredCut cut, YardSettings settings) =>
        Verdict.Of(piece.State == PieceState.Reserved && plan.Plan.Stages.Contains(piece.ReservedFor) ? piece with { State = PieceState.InYard, ReservedFor = "" } : piece, cut, settings) is null;
}
