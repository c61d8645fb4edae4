using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>The questions of the plan's place.</summary>
internal static class PlanAsks
{
    public static Ask Cut(KeptPlan kept, int index, PlannedPiece piece) => new Ask.Choose(
        $"{(piece.Source is { } source ? source.Code.ToString() : $"The bought {piece.Material}")} is cut: as the plan says?{(piece.Source is { Nails: true } ? " By the yard nails are still in it" : "")}",
        [
            new('y', "as planned", new Errand.CarryOut(kept.Id, [new CutAct(index)], Hardware: false)),
            new('o', "it went otherwise", Want: Want.CutOtherwise),
            .. piece.Source is { OnHand: true } there ? [new Choice('n', "not found", new Errand.Mark([there.Code], PieceState.Missing))] : (Choice[])[],
        ]);

    public static Ask All(KeptPlan kept)
    {
        var waiting = Enumerable.Range(0, kept.Steps.Count).Where(i => kept.Steps[i].State == StepState.Waiting).Select(i => new CutAct(i)).ToArray();
        var hardware = !kept.HardwareDone && kept.Plan.Hardware.Count > 0;
        var what = waiting.Length == 1 ? "The 1 piece that waits is" : $"All {waiting.Length} pieces that wait are";
        return new Ask.Choose(
            $"{what} cut as the plan says{(hardware ? ", and the hardware is counted out" : "")}?",
            [new('y', "yes, all of it", new Errand.CarryOut(kept.Id, waiting, hardware)), .. Stages(kept)]);
    }

    /// <summary>Whether what waits is given up.</summary>
    /// <param name="kept">The plan.</param>
    /// <param name="wall">The wall that it fills; none where it fills none.</param>
    public static Ask GiveUp(KeptPlan kept, string? wall)
    {
        var waiting = kept.Count(StepState.Waiting);
        var hardware = kept.HardwareWaits && kept.Plan.Hardware.Any(fill => fill.FromYard + fill.ToBuy > 0);
        string[] waits = [.. waiting > 0 ? [waiting == 1 ? "1 piece" : $"{waiting} pieces"] : (string[])[], .. hardware ? ["its hardware"] : (string[])[]];
        var fills = wall is null ? "" : $", and no filling of {wall} is kept any more";
        return new Ask.Choose($"Give up what waits in plan {kept.Id}: {string.Join(" and ", waits)}? What of it lies in the yard is free again; what is cut stays done{fills}", [new('y', "give it up", new Errand.DropPlan(kept.Id))]);
    }

    // One stage at a time: what the plan relies on for the others is then reserved for them.
    private static IEnumerable<Choice> Stages(KeptPlan kept)
    {
        var stages = kept.Plan.Stages.Select(stage => (Stage: stage, Acts: CutActs.OfStage(kept, stage))).Where(one => one.Acts.Count > 0).ToArray();
        return stages.Length < 2
            ? []
            : stages.Take(9).Select((one, i) => new Choice((char)('1' + i), $"only {one.Stage} ({one.Acts.Count})", new Errand.CarryOut(kept.Id, one.Acts, Hardware: false)));
    }

    public static Ask Hardware(KeptPlan kept) => new Ask.Choose(
        "The hardware of this plan is counted out of its bins?",
        [new('y', "yes", new Errand.CarryOut(kept.Id, [], Hardware: true))]);

    public static Ask Happened(int index, PlannedPiece piece) => new Ask.Write(
        $"{index + 1}, {piece.Source?.Code.ToString() ?? $"a bought {piece.Material}"}: " + (piece.LineSpacing is null
            ? "which cuts came out right, by letter or name, and which lengths are left to keep? Like: A C left 40, 22-1/2; or none"
            : "which cuts came out right, by letter or name, and which lengths are left to keep, each with where its first pattern line is? Like: A left 40 line 0, 22-1/2; or none"),
        Topic.Happened,
        "really");

    public static Ask Sheet(KeptPlan kept) =>
        new Ask.Write($"Write the cut sheet of plan {kept.Id} to which PDF file?", Topic.SheetFile, "file");
}
