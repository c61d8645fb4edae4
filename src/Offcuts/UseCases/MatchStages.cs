using Offcuts.Core.Faults;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>What to match.</summary>
/// <param name="Stages">Names of stages; empty for all. They are planned in the yard's order whatever the order here.</param>
/// <param name="Buy">False where nothing may be bought; where nothing is said, as when these stages were planned last.</param>
public sealed record MatchWish(IReadOnlyList<string> Stages, bool? Buy = null)
{
    /// <summary>Pieces for certain cuts and pieces to be left alone, beside those that the newest plan of a stage keeps.</summary>
    public Wishes Wishes { get; init; } = Wishes.None;

    /// <summary>Pieces of which nothing that the newest plan keeps binds any more.</summary>
    public IReadOnlyList<Code> Released { get; init; } = [];

    /// <summary>What comes first after fill and spend; where nothing is said, what came first when these stages were planned last.</summary>
    public TierOrder? Order { get; init; }
}

/// <summary>
/// Plans what the chosen stages still lack, together, from what is free: pieces that another open plan waits to cut are left
/// to it, and so are those that a plan of these stages relies on for its other stages (<see cref="LookAhead"/>). What was said of single pieces when a stage was planned last still holds, unless it is released.
/// </summary>
public sealed class MatchStages(YardFile yard)
{
    /// <summary>The best plan within the limits, or why there is nothing to plan.</summary>
    public Result<Plan> Match(MatchWish wish, MatchLimits limits) => Problem(wish).Then<Plan>(problem => Matcher.Match(problem, limits));

    /// <summary>The problem that is meant, or why there is nothing to plan.</summary>
    public Result<Problem> Problem(MatchWish wish)
    {
        var plans = yard.Plans();
        var all = yard.Stages();
        foreach (var name in wish.Stages.Where(name => all.Named(name) is null))
            return all.NoneNamed(name);

        var chosen = all.Where(stage => wish.Stages.Count == 0 || wish.Stages.Any(name => all.Named(name) == stage)).ToArray();
        var lacking = chosen
            .Select(stage => StageNeeds.Lacking(stage, plans))
            .Where(stage => stage.Cuts.Count + stage.Hardware.Count > 0)
            .ToArray();
        if (all.Count == 0) return PlanFaults.NoStageYet();
        if (lacking.Length == 0) return PlanFaults.NothingLacking();

        var walls = yard.WallPlans().Select(wall => wall.PlanId).ToHashSet();
        var promised = new Promised(plans.Where(plan => plan.Open && (walls.Contains(plan.Id) || !plan.Plan.Stages.Any(name => lacking.Named(name) is not null))));
        Piece[] free = [.. Free(new LookAhead(plans, all), [.. chosen.Select(stage => stage.Name)]).Where(piece => !promised.Pieces.Contains(piece.Code))];
        var there = free.Select(piece => piece.Code).ToHashSet();
        var elsewhere = yard.Pieces().Select(piece => piece.Code).Where(code => !there.Contains(code)).ToHashSet();
        var bound = wish.Wishes.Pins.Select(pin => pin.Piece).Where(elsewhere.Contains).Distinct().Select(code => PlanFaults.PinOfPromised(code.ToString())).ToArray();
        if (bound.Length > 0) return Result<Problem>.Fail(bound);

        // How a wall is filled says nothing of how the other needs are to be planned: only its pieces know their pattern lines.
        KeptPlan[] ofNeeds = [.. plans.Where(plan => !walls.Contains(plan.Id) && plan.Plan.Pieces.All(piece => piece.LineSpacing is null))];

        // A piece that waits for another plan is left alone anyway.
        var said = wish.Wishes with { Spares = [.. wish.Wishes.Spares.Where(spare => !elsewhere.Contains(spare.Piece))] };
        return Matching.Problem.Create(new MatchRequest
        {
            Pieces = free,
            Bins = promised.Left(yard.Bins()),
            Stages = lacking,
            Prices = yard.Prices(),
            Settings = yard.Settings(),
            Buy = wish.Buy ?? KeptWishes.BuyOf(ofNeeds, lacking),
            Order = wish.Order ?? KeptWishes.OrderOf(ofNeeds, lacking),
            Wishes = KeptWishes.Joined(KeptWishes.Of(ofNeeds, lacking, free).Without(wish.Released), said),
        });
    }

    private IEnumerable<Piece> Free(LookAhead ahead, string[] stages)
    {
        var held = ahead.Held(stages);
        return yard.Pieces()
            .Where(piece => !held.Contains(piece.Code))
            .Select(piece => ahead.GivesWay(piece, stages) ? piece with { State = PieceState.InYard, ReservedFor = "" } : piece);
    }
}
