using Offcuts.Core.Faults;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Walls;

/// <summary>What no system can be, asked by every way into the program.</summary>
public static class SystemRules
{
    /// <summary>A smaller interval is taken for a slip: a wall would have more lines than anybody could mark.</summary>
    public static Length SmallestInterval { get; } = Length.Inches(0.25m);

    /// <summary>The sheet itself, or every fault in it.</summary>
    public static Result<SystemSheet> Check(SystemSheet sheet)
    {
        var faults = new List<Fault>();
        SheetNames.Check(faults, "system", sheet.Name, SheetNames.LongestSystem);
        CheckPanel(faults, sheet);
        if (sheet.ShortestPiece > sheet.PanelLength) faults.Add(WallFaults.ShortestOverPanel(sheet.ShortestPiece, sheet.PanelLength));
        if (sheet.Stagger.Units > sheet.PanelLength.Units / 2) faults.Add(WallFaults.StaggerOverHalf(sheet.Stagger, sheet.PanelLength));
        SheetNames.Check(faults, "tie", sheet.Tie.Name, SheetNames.LongestSystem);
        CheckFittings(faults, "at a corner", sheet.AtCorner);
        CheckFittings(faults, "at a tee", sheet.AtTee);
        CheckFittings(faults, "at an end", sheet.AtEnd);
        CheckFittings(faults, "in a course", sheet.AtCourse);
        if (sheet.Cleat is { } cleat)
        {
            if (cleat.Length.IsZero) faults.Add(WallFaults.NoLength("length of a cleat"));
            if (!WallWords.IsCut(cleat.Material)) faults.Add(WallFaults.NotCut(cleat.Material.Name, "cleats"));
        }

        SheetNames.CheckNotes(faults, sheet.Notes);
        return faults.Count > 0 ? Result<SystemSheet>.Fail(faults) : sheet;
    }

    private static void CheckPanel(List<Fault> faults, SystemSheet sheet)
    {
        if (sheet.PanelLength.IsZero) faults.Add(WallFaults.NoLength("panel length"));
        if (sheet.PanelHeight.IsZero) faults.Add(WallFaults.NoLength("panel height"));
        if (sheet.Thickness.IsZero) faults.Add(WallFaults.NoLength("panel thickness"));
        if (sheet.TieSpacing.IsZero) faults.Add(WallFaults.NoLength("tie spacing"));
        if (sheet.Interval.IsZero)
        {
            faults.Add(WallFaults.NoLength("interval"));
            return;
        }

        if (sheet.Interval < SmallestInterval) faults.Add(WallFaults.IntervalTooSmall(SmallestInterval));
        if (sheet.TieSpacing.Units % sheet.Interval.Units != 0) faults.Add(WallFaults.IntervalAndTies(sheet.Interval, sheet.TieSpacing));
        if (sheet.PanelLength.Units % sheet.Interval.Units != 0) faults.Add(WallFaults.IntervalAndPanel(sheet.Interval, sheet.PanelLength));
    }

    private static void CheckFittings(List<Fault> faults, string place, IReadOnlyList<Fitting> fittings)
    {
        foreach (var fitting in fittings)
        {
            SheetNames.Check(faults, "hardware", fitting.Hardware.Name, SheetNames.LongestSystem);
            if (fitting.Count is < 1 or > 1000) faults.Add(WallFaults.FittingCount(fitting.Hardware.Name));
        }

        foreach (var twice in fittings.GroupBy(fitting => fitting.Hardware).Where(same => same.Count() > 1))
            faults.Add(WallFaults.FittingTwice(twice.Key.Name, place));
    }
}
