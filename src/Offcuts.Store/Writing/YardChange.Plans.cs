using Offcuts.Core.Faults;
using Offcuts.Core.Plans;

namespace Offcuts.Store;

/// <content>Kept plans.</content>
public sealed partial class YardChange
{
    /// <summary>Keeps a plan with all its pieces waiting, and gives its number, which no other plan of this yard ever has.</summary>
    public int KeepPlan(Plan plan)
    {
        var id = (int)Database.Number("plan_add", ("made_on", Values.Day(_yard.Today)), ("document", PlanText.Write(plan)));
        for (var i = 0; i < plan.Pieces.Count; i++) Database.Run("plan_step_add", ("plan", id), ("piece", i));
        return id;
    }

    /// <summary>Sets how far one piece of a plan has come. A fault where the plan or the piece is not there.</summary>
    /// <param name="planId">The plan.</param>
    /// <param name="pieceIndex">Which of the plan's pieces, from 0.</param>
    /// <param name="step">How far it has come, and for what was done otherwise, what was really cut.</param>
    public void SetStep(int planId, int pieceIndex, PlanStep step)
    {
        if (step.State == StepState.DoneOtherwise != step.Actual is not null)
            throw new ArgumentException("what was done otherwise says what was cut, and only that", nameof(step));
        if (Kept(planId) is not { } kept) return;
        if (pieceIndex < 0 || pieceIndex >= kept.Steps.Count) _faults.Add(StoreFaults.NoSuchPlannedPiece(planId, pieceIndex + 1));
        else WriteStep(planId, pieceIndex, step);
    }

    /// <summary>Gives pieces of a plan up that still wait, since what they were to be cut from was let go. A fault where the plan is not there.</summary>
    /// <param name="planId">The plan.</param>
    /// <param name="pieces">Which of its pieces, from 0.</param>
    public void LetGo(int planId, IReadOnlyCollection<int> pieces)
    {
        if (Kept(planId) is not { } kept) return;
        foreach (var piece in pieces) SetStep(planId, piece, PlanStep.Dropped);
        SetDocument(planId, kept.Plan with { LetGo = [.. kept.Plan.LetGo.Union(pieces).Order()] });
    }

    /// <summary>Marks the hardware of a plan as counted out.</summary>
    public void HardwareDone(int planId)
    {
        if (Kept(planId) is not null) Database.Run("plan_set_hardware", ("hardware", "done"), ("id", planId));
    }

    /// <summary>Gives up whatever of a plan still waits, hardware too; what was done under it stays.</summary>
    public void DropRest(KeptPlan plan)
    {
        if (Kept(plan.Id) is not { } kept) return;
        for (var i = 0; i < kept.Steps.Count; i++)
            if (kept.Steps[i].State == StepState.Waiting) WriteStep(kept.Id, i, PlanStep.Dropped);
        // What was let go before is given up with the rest: nobody is to match it again for this plan.
        if (kept.Plan.LetGo.Count > 0) SetDocument(kept.Id, kept.Plan with { LetGo = [] });
        if (!kept.HardwareDone) Database.Run("plan_set_hardware", ("hardware", "dropped"), ("id", kept.Id));
    }

    private void SetDocument(int id, Plan plan) => Database.Run("plan_set_document", ("document", PlanText.Write(plan)), ("id", id));

    private KeptPlan? Kept(int id)
    {
        var kept = _reader.Plan(id);
        if (kept is null) _faults.Add(StoreFaults.NoSuchPlan(id));
        return kept;
    }

    private void WriteStep(int plan, int index, PlanStep step) => Database.Run(
        "plan_step_set",
        ("state", Words.Step[step.State]),
        ("actual", step.Actual is { } actual ? PlanText.Write(actual) : null),
        ("plan", plan),
        ("piece", index));

    private void RenameStageInPlans(string name, string to)
    {
        foreach (var kept in _reader.Plans())
        {
            if (Mentions(kept.Plan, name)) Database.Run("plan_set_document", ("document", PlanText.Write(Renamed(kept.Plan, name, to))), ("id", kept.Id));
            for (var i = 0; i < kept.Steps.Count; i++)
                if (kept.Steps[i].Actual is { } actual && Mentions(actual, name)) WriteStep(kept.Id, i, kept.Steps[i] with { Actual = Renamed(actual, name, to) });
        }
    }

    private void RenameNeedsInPlans(string stage, Func<string, string> now)
    {
        foreach (var kept in _reader.Plans())
        {
            var renamed = Renamed(kept.Plan, stage, now);
            if (PlanText.Write(renamed) is var text && text != PlanText.Write(kept.Plan)) Database.Run("plan_set_document", ("document", text), ("id", kept.Id));
            for (var i = 0; i < kept.Steps.Count; i++)
                if (kept.Steps[i].Actual is { } actual && actual.Cuts.Any(cut => cut.Stage == stage && now(cut.Cut) != cut.Cut)) WriteStep(kept.Id, i, kept.Steps[i] with { Actual = Renamed(actual, stage, now) });
        }
    }

    private static Plan Renamed(Plan plan, string stage, Func<string, string> now)
    {
        string Now(string of, string need) => of == stage ? now(need) : need;
        return plan with
        {
            Pieces = [.. plan.Pieces.Select(piece => Renamed(piece, stage, now))],
            Hardware = [.. plan.Hardware.Select(fill => fill with { Need = fill.Need with { Name = Now(fill.Need.Stage, fill.Need.Name) } })],
            Unfilled = [.. plan.Unfilled.Select(need => need with { Cut = Now(need.Stage, need.Cut) })],
            Wishes = new Wishes(
                [.. plan.Wishes.Pins.Select(pin => pin with { Cut = Now(pin.Stage, pin.Cut) })],
                [.. plan.Wishes.Spares.Select(spare => spare.Wholly ? spare : spare with { Cut = Now(spare.Stage, spare.Cut) })]),
        };
    }

    private static PlannedPiece Renamed(PlannedPiece piece, string stage, Func<string, string> now) =>
        piece with { Cuts = [.. piece.Cuts.Select(cut => cut.Stage == stage ? cut with { Cut = now(cut.Cut) } : cut)] };

    private static bool Mentions(Plan plan, string name) => plan.Stages.Contains(name) || plan.Pieces.Any(piece => Mentions(piece, name));

    private static bool Mentions(PlannedPiece piece, string name) =>
        piece.Cuts.Any(cut => cut.Stage == name) || piece.Source?.ReservedFor == name || piece.Source?.FromStage == name;

    private static Plan Renamed(Plan plan, string name, string to)
    {
        string Now(string stage) => stage == name ? to : stage;
        return plan with
        {
            Stages = [.. plan.Stages.Select(Now)],
            Pieces = [.. plan.Pieces.Select(piece => Renamed(piece, name, to))],
            Hardware = [.. plan.Hardware.Select(fill => fill with { Need = fill.Need with { Stage = Now(fill.Need.Stage) } })],
            Unfilled = [.. plan.Unfilled.Select(need => need with { Stage = Now(need.Stage) })],
            Wishes = new Wishes(
                [.. plan.Wishes.Pins.Select(pin => pin with { Stage = Now(pin.Stage) })],
                [.. plan.Wishes.Spares.Select(spare => spare with { Stage = Now(spare.Stage) })]),
        };
    }

    private static PlannedPiece Renamed(PlannedPiece piece, string name, string to) => piece with
    {
        Cuts = [.. piece.Cuts.Select(cut => cut.Stage == name ? cut with { Stage = to } : cut)],
        Source = piece.Source is { } source
            ? source with
            {
                FromStage = source.FromStage == name ? to : source.FromStage,
                ReservedFor = source.ReservedFor == name ? to : source.ReservedFor,
            }
            : null,
    };
}
