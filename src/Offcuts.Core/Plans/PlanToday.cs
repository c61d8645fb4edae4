using Offcuts.Core.Yard;

namespace Offcuts.Core.Plans;

/// <summary>
/// A kept plan as the yard is by now. It was kept with its pieces as they were when it was matched; who fetches and saws them has to know
/// where they lie today, whether nails are in them, and which of them are gone.
/// </summary>
public static class PlanToday
{
    /// <summary>
    /// The plan with what still waits as it is by now: its place, what has to be cleaned off it, how sound it is and what is noted of it. A piece that can't be
    /// cut as planned any more (<see cref="Trouble"/>) and what is cut already stay as they were.
    /// </summary>
    /// <param name="kept">The plan.</param>
    /// <param name="now">The piece of a code as it is by now, gone or not; none where there is no such piece.</param>
    public static KeptPlan Of(KeptPlan kept, Func<Code, Piece?> now) => kept with
    {
        Plan = kept.Plan with
        {
            Pieces = [.. kept.Plan.Pieces.Select((planned, i) =>
                kept.Steps[i].State == StepState.Waiting && planned.Source is { } then && now(then.Code) is { } there && there.StillServesAs(then)
                    ? planned with { Source = Now(then, there) }
                    : planned)],
        },
    };

    /// <summary>Why a piece can't be cut as it was planned any more, in a few words; null where it can, and where it is bought.</summary>
    /// <param name="planned">The piece as it was planned.</param>
    /// <param name="now">The same by now; none where it is not known any more.</param>
    public static string? Trouble(PlannedPiece planned, Piece? now) => planned.Source is not { } then ? null : now switch
    {
        null => "not in the yard",
        { State: PieceState.Missing } => "missing",
        { State: PieceState.Scrapped } => "scrapped",
        { State: PieceState.Used } => "used",
        { State: PieceState.HandedOver } => "handed over",
        _ => now.StillServesAs(then) ? null : "changed since",
    };

    /// <summary>The pieces that still wait in a plan and can't be cut as planned any more, by their place in it, each with the reason.</summary>
    public static IEnumerable<(int Index, string Why)> Troubles(KeptPlan kept, Func<Code, Piece?> now) =>
        kept.Plan.Pieces.Select((piece, i) => (Index: i, Why: kept.Steps[i].State == StepState.Waiting && piece.Source is { } source ? Trouble(piece, now(source.Code)) : null))
            .Where(each => each.Why is not null).Select(each => (each.Index, each.Why!));

    // Whether it is reserved, and for what, stays as the plan knew it: that says who reserved it.
    private static Piece Now(Piece then, Piece there) => then with
    {
        Place = there.Place,
        Nails = there.Nails,
        Concrete = there.Concrete,
        Oiled = there.Oiled,
        Condition = there.Condition,
        Stamped = there.Stamped,
        TreatedWith = there.TreatedWith,
        Note = there.Note,
    };
}
