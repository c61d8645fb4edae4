using Offcuts.Core.Faults;
using Offcuts.Core.Plans;
using Offcuts.Matching;
using Offcuts.Print;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>Lines that are read and put away again: an explanation, a table.</summary>
/// <param name="Lines">The lines; one that begins with two spaces belongs to the one above.</param>
/// <param name="Order">How it orders the plan, where it is the plan's pieces or cuts in another order.</param>
internal sealed record Aside(IReadOnlyList<string> Lines, PlanOrder? Order = null);

/// <summary>How a plan is read: its own page goes by piece.</summary>
internal enum PlanOrder
{
    /// <summary>What is fetched from each place, and bought.</summary>
    ByPlace,

    /// <summary>What each cut of each stage comes from.</summary>
    ByCut,

    /// <summary>The wall that the plan fills, row by row as it stands; only where it fills one.</summary>
    Elevation,
}

/// <summary>A plan on the screen: one that was just found, or one that the yard keeps.</summary>
internal sealed record PlanState
{
    public required YardSnapshot Yard { get; init; }

    public EntryLine Line { get; init; } = new();

    /// <summary>The plan that was found and is not kept yet.</summary>
    public Plan? Found { get; init; }

    /// <summary>The yard's change number when it was found: a later one means that it may no longer hold.</summary>
    public long FoundAt { get; init; }

    /// <summary>The yard's change number when the last match began.</summary>
    public long BegunAt { get; init; }

    /// <summary>What was meant when it was matched.</summary>
    public MatchWish? FoundWith { get; init; }

    /// <summary>Number of the kept plan that is shown where none was found; 0 for none.</summary>
    public int KeptId { get; init; }

    /// <summary>What was matched last, or is being matched.</summary>
    public MatchWish Wish { get; init; } = new([]);

    /// <summary>True while a match runs.</summary>
    public bool Matching { get; init; }

    /// <summary>How far it has come.</summary>
    public MatchProgress? Progress { get; init; }

    /// <summary>For how many seconds it has run when that was told.</summary>
    public int Seconds { get; init; }

    /// <summary>What stands in place of the page for a while.</summary>
    public Aside? Aside { get; init; }

    /// <summary>The wall that the kept plan fills, as it is drawn; nothing before that was looked up.</summary>
    public WallPicture? Picture { get; init; }

    /// <summary>The plan whose wall was asked for last, and the yard's change number then.</summary>
    public (int Plan, long Change) Drawn { get; init; } = (0, -1);

    /// <summary>True where that was refused.</summary>
    public bool DrawRefused { get; init; }

    /// <summary>The wall that the kept plan fills; nothing where it fills none.</summary>
    public string? Wall => Kept is { } kept ? Yard.WallPlans.FirstOrDefault(wall => wall.PlanId == kept.Id)?.Wall : null;

    /// <summary>First line of it that is shown.</summary>
    public int AsideTop { get; init; }

    /// <summary>Which of the page's parts is chosen, by its number and wherever it stands: the plan's pieces first, then what stands below them.</summary>
    public int Chosen { get; init; }

    /// <summary>What the written answer about a cut that went otherwise says so far.</summary>
    public Result<WhatHappened>? Happened { get; init; }

    /// <summary>What the last carrying out added to the ledger.</summary>
    public IReadOnlyList<string> Ledger { get; init; } = [];

    /// <summary>The kept plan that is shown, with its pieces as they are by now, or nothing.</summary>
    public KeptPlan? Kept => Found is null ? Yard.PlansNow.FirstOrDefault(plan => plan.Id == KeptId) : null;

    /// <summary>The plan that is shown, or nothing.</summary>
    public Plan? Plan => Found ?? Kept?.Plan;

    /// <summary>False where the next match takes from the yard alone: as was said here, else as the plan that is shown.</summary>
    public bool Buys => Wish.Buy ?? Plan?.Buys ?? true;

    /// <summary>Why a piece of the plan that is shown can't be cut as planned any more; null where it can, or is done.</summary>
    public string? Trouble(int piece) =>
        Step(piece) == StepState.Waiting && Plan!.Pieces[piece] is { Source: { } source } planned ? PlanToday.Trouble(planned, Yard.PieceNow(source.Code)) : null;

    /// <summary>The pieces of the plan that is shown which can't be cut as planned any more, each with the reason.</summary>
    public IEnumerable<string> Troubles => Plan is not { } plan ? [] : Enumerable.Range(0, plan.Pieces.Count)
        .Select(i => (Piece: plan.Pieces[i], Why: Trouble(i))).Where(each => each.Why is not null).Select(each => $"{each.Piece.Source!.Code} ({each.Why})");

    /// <summary>The chosen piece of the plan, or nothing.</summary>
    public PlannedPiece? Piece => Plan is { } plan && Chosen < plan.Pieces.Count ? plan.Pieces[Chosen] : null;

    /// <summary>How far a piece has come.</summary>
    public StepState Step(int piece) => Kept?.Steps[piece].State ?? StepState.Waiting;
}
