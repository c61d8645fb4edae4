using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>
/// What open plans are still to cut from certain pieces. Who lets a piece go that was reserved means that anything may have it: what
/// was planned from it is given up in the same change, or the next match would keep the piece for it in silence. How a wall
/// is filled stays kept, and is told.
/// </summary>
internal sealed class PlannedFrom
{
    private readonly (KeptPlan Plan, int Step)[] _waiting;
    private readonly (int Plan, string Wall)[] _walls;

    /// <summary>By what the yard keeps.</summary>
    public PlannedFrom(YardFile yard, IEnumerable<Code> pieces)
    {
        var codes = pieces.ToHashSet();
        var walls = yard.WallPlans().ToDictionary(wall => wall.PlanId, wall => wall.Wall);
        var waiting = yard.Plans()
            .SelectMany(plan => plan.Plan.Pieces.Select((piece, i) => (Plan: plan, Step: i, piece.Source)))
            .Where(each => each.Source is { } source && codes.Contains(source.Code) && each.Plan.Steps[each.Step].State == StepState.Waiting)
            .ToArray();
        _waiting = [.. waiting.Where(each => !walls.ContainsKey(each.Plan.Id)).Select(each => (each.Plan, each.Step))];
        _walls = [.. waiting.Where(each => walls.ContainsKey(each.Plan.Id)).Select(each => (each.Plan.Id, walls[each.Plan.Id])).Distinct()];
    }

    /// <summary>Gives it up.</summary>
    public void GiveUp(YardChange work)
    {
        foreach (var plan in _waiting.GroupBy(each => each.Plan.Id)) work.LetGo(plan.Key, [.. plan.Select(each => each.Step)]);
    }

    /// <summary>What is given up and what stays, as the end of a sentence; empty where no plan has any of the pieces.</summary>
    public string Told() => string.Concat(
        _waiting.GroupBy(each => each.Plan.Id).Select(plan => $"; given up of plan {plan.Key}: {CutText.Lacking(plan.SelectMany(each => each.Plan.Plan.Pieces[each.Step].Cuts))}")
            .Concat(_walls.Select(wall => $"; it waits in plan {wall.Plan} still, which fills {wall.Wall}")));

    /// <summary>What can't be cut any more since the pieces are gone, a clause for each plan; none where no plan has any of them.</summary>
    public IEnumerable<string> Missed() =>
        _waiting.GroupBy(each => each.Plan.Id).Select(plan => $"plan {plan.Key} counted on {string.Join(", ", plan.Select(each => each.Plan.Plan.Pieces[each.Step].Source!.Code).Distinct())} for {CutText.Lacking(plan.SelectMany(each => each.Plan.Plan.Pieces[each.Step].Cuts))}: match the rest again")
            .Concat(_walls.Select(wall => $"plan {wall.Plan}, which fills {wall.Wall}, counted on what is gone: fill the rest again"));
}
