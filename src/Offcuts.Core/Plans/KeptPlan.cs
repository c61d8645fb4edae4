using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Plans;

/// <summary>How far one piece of a kept plan has come.</summary>
public enum StepState
{
    /// <summary>Not yet cut.</summary>
    Waiting,

    /// <summary>Cut as planned.</summary>
    Done,

    /// <summary>Cut, but not as planned.</summary>
    DoneOtherwise,

    /// <summary>Given up, because the rest was matched again or its piece was let go.</summary>
    Dropped,
}

/// <summary>One piece of a kept plan: how far it has come, and what was really cut where that differs.</summary>
/// <param name="State">How far it has come.</param>
/// <param name="Actual">
/// For <see cref="StepState.DoneOtherwise"/> the cuts and remainders that really came of the piece (no cuts where it was
/// spoilt); null in every other state.
/// </param>
public sealed record PlanStep(StepState State, PlannedPiece? Actual = null)
{
    /// <summary>Not yet cut.</summary>
    public static PlanStep Waiting { get; } = new(StepState.Waiting);

    /// <summary>Cut as planned.</summary>
    public static PlanStep Done { get; } = new(StepState.Done);

    /// <summary>Given up.</summary>
    public static PlanStep Dropped { get; } = new(StepState.Dropped);
}

/// <summary>A plan that the yard keeps, with how far each of its pieces has come.</summary>
/// <param name="Id">Its number in the yard, from 1.</param>
/// <param name="Made">The day it was made.</param>
/// <param name="Plan">The plan.</param>
/// <param name="Steps">One step for each of the plan's pieces, in their order.</param>
/// <param name="HardwareDone">True once the hardware has been counted out.</param>
/// <param name="HardwareDropped">True where counting it out was given up, because the rest was matched again.</param>
public sealed record KeptPlan(int Id, DateOnly Made, Plan Plan, IReadOnlyList<PlanStep> Steps, bool HardwareDone, bool HardwareDropped = false)
{
    /// <summary>True while something of it waits to be done.</summary>
    public bool Open => Steps.Any(step => step.State == StepState.Waiting)
        || (HardwareWaits && Plan.Hardware.Any(fill => fill.FromYard + fill.ToBuy > 0));

    /// <summary>True while the hardware is neither counted out nor given up.</summary>
    public bool HardwareWaits => !HardwareDone && !HardwareDropped;

    /// <summary>True where nothing of it waits and something of it, a piece or the hardware, was given up.</summary>
    public bool GivenUp => !Open && (HardwareDropped || Steps.Any(step => step.State == StepState.Dropped));

    /// <summary>
    /// True where some of it was given up because the rest was matched again or dropped, or is of a wall's filling: what was let go piece by piece is marked, and told by itself.
    /// </summary>
    public bool RestGivenUp => Steps.Where((step, piece) => step.State == StepState.Dropped && !WasLetGo(piece)).Any();

    /// <summary>
    /// The piece of this code, by its number from 0; none where the plan has none. Where a wall was filled again one piece can stand in several rows: the
    /// one that waits is meant, else the last.
    /// </summary>
    public int? PieceOf(Code code)
    {
        int[] rows = [.. Enumerable.Range(0, Plan.Pieces.Count).Where(piece => Plan.Pieces[piece].Source?.Code == code)];
        return rows.Length == 0 ? null : rows.Where(piece => Steps[piece].State == StepState.Waiting).Append(rows[^1]).First();
    }

    /// <summary>How many of its pieces are in this state.</summary>
    public int Count(StepState state) => Steps.Count(step => step.State == state);

    /// <summary>What of it is still to be bought, without tax: new pieces that wait to be cut, and hardware that is neither counted out nor given up.</summary>
    public Money ToBuyYet => Plan.Pieces.Where((_, piece) => Steps[piece].State == StepState.Waiting).Select(piece => piece.Bought?.Price ?? Money.Zero)
        .Concat(HardwareWaits ? Plan.Hardware.Select(fill => fill.ToBuy > 0 ? fill.Price : Money.Zero) : [])
        .Aggregate(Money.Zero, (sum, price) => sum + price);

    /// <summary>Cuts that did not come of their pieces and are lacking; none once the rest was matched again.</summary>
    public IReadOnlyList<PlannedCut> NotMade => RestGivenUp ? [] : [.. Enumerable.Range(0, Steps.Count).SelectMany(NotMadeOf)];

    /// <summary>Cuts whose pieces were let go: nothing is planned for them here any more. None once the rest was matched again.</summary>
    public IReadOnlyList<PlannedCut> LetGo => RestGivenUp ? [] : [.. Enumerable.Range(0, Steps.Count).Where(WasLetGo).SelectMany(piece => Plan.Pieces[piece].Cuts)];

    /// <summary>True where a piece, by its number from 0, is given up since what it was to be cut from was let go.</summary>
    public bool WasLetGo(int piece) => Steps[piece].State == StepState.Dropped && Plan.LetGo.Contains(piece);

    /// <summary>Cuts that were planned on one piece, by its number from 0, and did not come of it.</summary>
    public IEnumerable<PlannedCut> NotMadeOf(int piece)
    {
        if (Steps[piece].Actual is not { } actual) return [];
        var made = actual.Cuts.GroupBy(cut => (cut.Stage, cut.Cut)).ToDictionary(same => same.Key, same => same.Count());
        return Plan.Pieces[piece].Cuts.GroupBy(cut => (cut.Stage, cut.Cut)).SelectMany(same => same.Skip(made.GetValueOrDefault(same.Key)));
    }

    /// <summary>The pieces that were really cut under this plan, as they were cut.</summary>
    public IEnumerable<PlannedPiece> PiecesCut =>
        Plan.Pieces.Zip(Steps, (planned, step) => step.State switch
        {
            StepState.Done => planned,
            StepState.DoneOtherwise => step.Actual,
            _ => null,
        }).OfType<PlannedPiece>();
}
