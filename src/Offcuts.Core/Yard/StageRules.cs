using Offcuts.Core.Faults;
using Offcuts.Core.Materials;

namespace Offcuts.Core.Yard;

/// <summary>What no stage can be, asked before it enters a yard.</summary>
public static class StageRules
{
    /// <summary>The stage with its name on each of its needs, or every fault in it.</summary>
    public static Result<Stage> Check(Stage stage)
    {
        var faults = NameFaults(stage.Name);
        foreach (var cut in stage.Cuts)
        {
            CheckNeed(faults, stage.Name, cut.Name);
            if (cut.Material is Hardware) faults.Add(YardFaults.PieceOfHardware(cut.Material.Name));
            if (cut.Shortest.IsZero) faults.Add(MeasureFaults.LengthZero(0));
            if (cut.Longest < cut.Shortest) faults.Add(YardFaults.CutRangeBackwards());
            if (cut.Count < 1) faults.Add(YardFaults.CountUnreadable());
        }

        foreach (var need in stage.Hardware)
        {
            CheckNeed(faults, stage.Name, need.Name);
            if (need.Count < 1) faults.Add(YardFaults.CountUnreadable());
        }

        var names = stage.Cuts.Select(cut => cut.Name).Concat(stage.Hardware.Select(need => need.Name));
        faults.AddRange(names.GroupBy(name => name).Where(same => same.Count() > 1).Select(same => StoreFaults.NeedTwice(same.Key, stage.Name)));
        if (faults.Count > 0) return Result<Stage>.Fail(faults);
        return stage with
        {
            Cuts = [.. stage.Cuts.Select(cut => cut with { Stage = stage.Name })],
            Hardware = [.. stage.Hardware.Select(need => need with { Stage = stage.Name })],
        };
    }

    /// <summary>Every fault in the name of a stage.</summary>
    public static List<Fault> NameFaults(string name)
    {
        var faults = new List<Fault>();
        if (string.IsNullOrWhiteSpace(name)) faults.Add(YardFaults.StageWithoutName());
        PieceRules.CheckText(faults, "stage", name, PieceRules.LongestName);
        return faults;
    }

    private static void CheckNeed(List<Fault> faults, string stage, string name)
    {
        if (string.IsNullOrWhiteSpace(name)) faults.Add(StoreFaults.NeedWithoutName(stage));
        PieceRules.CheckText(faults, "cut", name, PieceRules.LongestName);
    }
}
