using Offcuts.Core.Faults;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Print;
using Offcuts.Store;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>A wall of the yard as it stands, ready to be drawn.</summary>
public sealed class SeeWall(YardFile yard)
{
    /// <summary>The wall of a name, or why it can't be drawn.</summary>
    /// <param name="name">The name, in either case.</param>
    /// <param name="plan">How its runs are filled; none takes what is kept of it.</param>
    public Result<WallPicture> Of(string name, RunPlan? plan = null) => new ChangeWalls(yard).Laid(name).Then<WallPicture>(wall => Of(wall.Kept, wall.Laid, plan));

    /// <summary>The same of a wall that is laid out already.</summary>
    internal WallPicture Of(StageWall kept, LaidWall laid, RunPlan? plan = null)
    {
        var fill = new FillWall(yard);
        var steps = plan is null && fill.KeptOf(kept) is { } there ? yard.Plan(there.PlanId) : null;
        return DrawWall.Of(kept, laid, plan ?? fill.StillHolds(kept), fill.StandingOrCut(kept)) with { Steps = steps?.Steps.All(step => step.State == StepState.Waiting) is false ? steps : null };
    }

    /// <summary>
    /// The sheet of a wall as a PDF: where its runs are filled the whole cut sheet with the rows behind it, else the rows alone.
    /// </summary>
    /// <param name="name">The name, in either case.</param>
    /// <param name="plan">How its runs are filled; none takes what is kept of it.</param>
    /// <param name="today">Day of the print.</param>
    /// <param name="steps">How far the pieces of that filling have come; none where all of it is to be cut.</param>
    public Result<byte[]> Pdf(string name, RunPlan? plan, DateOnly today, KeptPlan? steps = null) =>
        Of(name, plan).Then<byte[]>(picture => Pdf(plan is null ? picture : picture with { Steps = steps }, today));

    /// <summary>The same of a picture of one of its walls.</summary>
    public byte[] Pdf(WallPicture picture, DateOnly today)
    {
        if (picture.Plan is not { } plan) return WallSheetPdf.Write(picture, SheetOptions.For(yard, today));
        var steps = picture.Steps is null ? null : picture.Steps with { Plan = plan.AsPlan() };
        var options = (steps is null ? SheetOptions.For(yard, today) : SheetOptions.For(yard, steps, today)) with { Title = $"Wall {picture.Wall}", Wall = picture, Filled = SheetOptions.OnSheet(yard, picture.Wall, plan) };
        if (steps is null) return CutSheet.Pdf(plan.AsPlan(), options);
        var kept = yard.Plan(steps.Id)?.Steps.Count == steps.Steps.Count;
        return CutSheet.Pdf(steps, kept ? options : options with { Note = $"Found and not kept yet: once it is kept, it goes on with plan {steps.Id}." });
    }

    /// <summary>True where a row is one of this leg, or of its footing; in either case.</summary>
    public static bool IsOf(WallRow row, string leg) =>
        string.Equals(row.Run.Leg, leg.Trim(), StringComparison.OrdinalIgnoreCase) || string.Equals(row.Run.Leg, $"{leg.Trim()} footing", StringComparison.OrdinalIgnoreCase);
}
