using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>
/// What plans of several stages rely on for later ones. While such a plan is carried out stage by stage, or one of its stages is
/// planned anew, the pieces it counts on for the other stages are reserved, each for the first stage it was to serve. A reservation
/// made so gives way where all the stages that the piece was to serve are planned together again.
/// </summary>
public sealed class LookAhead
{
    private readonly IReadOnlyList<KeptPlan> _plans;
    private readonly HashSet<string> _lacking;

    /// <summary>By the plans of a yard, oldest first, and its stages.</summary>
    public LookAhead(IReadOnlyList<KeptPlan> plans, IReadOnlyList<Stage> stages)
    {
        _plans = plans;
        _lacking = [.. stages.Select(stage => StageNeeds.Lacking(stage, plans)).Where(stage => stage.Cuts.Count > 0).Select(stage => stage.Name)];
    }

    /// <summary>The first stage that a piece of a plan serves, in the plan's order.</summary>
    public static string StageOf(Plan plan, PlannedPiece piece) => plan.Stages.First(stage => piece.Cuts.Any(cut => cut.Stage == stage));

    /// <summary>The yard pieces that wait in a plan for stages other than these, each with the first stage it serves.</summary>
    /// <param name="kept">The plan.</param>
    /// <param name="stages">Stages that are worked on now.</param>
    public IEnumerable<(Code Piece, string Stage)> ReliedOn(KeptPlan kept, IReadOnlyCollection<string> stages) =>
        from each in kept.Plan.Pieces.Zip(kept.Steps, (piece, step) => (Piece: piece, step.State))
        where each.State == StepState.Waiting && each.Piece.Source is not null
        where each.Piece.Cuts.All(cut => !stages.Contains(cut.Stage)) && each.Piece.Cuts.Any(cut => _lacking.Contains(cut.Stage))
        select (each.Piece.Source!.Code, StageOf(kept.Plan, each.Piece));

    /// <summary>The pieces that open plans rely on for stages other than these.</summary>
    public IReadOnlySet<Code> Held(IReadOnlyCollection<string> stages) =>
        _plans.Where(plan => plan.Open).SelectMany(plan => ReliedOn(plan, stages)).Select(relied => relied.Piece).ToHashSet();

    /// <summary>True where a plan made this reservation and every stage the piece was to serve, as far as it lacks anything, is among these.</summary>
    public bool GivesWay(Piece piece, IReadOnlyCollection<string> stages) =>
        Planned(piece) is var (plan, planned)
        && MadeBy(plan, planned, piece)
        && planned.Cuts.Select(cut => cut.Stage).Where(_lacking.Contains).All(stages.Contains);

    /// <summary>The pieces in the yard that this plan has reserved.</summary>
    public IEnumerable<Piece> ReservedBy(KeptPlan kept, IEnumerable<Piece> pieces) =>
        pieces.Where(piece => Planned(piece) is var (plan, planned) && plan.Id == kept.Id && MadeBy(plan, planned, piece));

    /// <summary>Reserves what a plan relies on for other stages than these, as far as it is still free, and tells which pieces.</summary>
    public IReadOnlyList<Piece> Reserve(YardChange work, YardFile yard, KeptPlan kept, IReadOnlyCollection<string> stages, IReadOnlySet<Code> except)
    {
        var reserved = new List<Piece>();
        foreach (var (code, stage) in ReliedOn(kept, stages))
        {
            if (except.Contains(code) || yard.Piece(code) is not { State: PieceState.InYard } piece) continue;
            reserved.Add(piece with { State = PieceState.Reserved, ReservedFor = stage });
            work.Update(reserved[^1]);
        }

        return reserved;
    }

    // The newest plan that has the piece.
    private (KeptPlan Plan, PlannedPiece Piece)? Planned(Piece piece)
    {
        if (piece.State != PieceState.Reserved) return null;
        for (var i = _plans.Count - 1; i >= 0; i--)
        {
            if (_plans[i].Plan.Pieces.FirstOrDefault(planned => planned.Source?.Code == piece.Code) is { } found) return (_plans[i], found);
        }

        return null;
    }

    // It was free when it was planned, and is kept for the stage that the plan would keep it for.
    private static bool MadeBy(KeptPlan kept, PlannedPiece planned, Piece piece) =>
        planned.Source!.State == PieceState.InYard && piece.ReservedFor == StageOf(kept.Plan, planned);
}
