using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Walls;

/// <summary>What no system can be, asked by every way into the program.</summary>
public static class SystemRules
{
    /// <summary>A smaller interval is taken for a slip: a wall would have more lines than anybody could mark.</summary>
    public static Length SmallestInterval { get; } = Length.Inches(0.25m);

    /// <summary>The sheet itself, or every fault in it.</summary>
    public static Result<SystemSheet> Check(SystemSheet sheet) =>
        Faults(sheet).Select(found => found.Fault).ToArray() is { Length: > 0 } faults ? Result<SystemSheet>.Fail(faults) : sheet;

    /// <summary>Every fault with the fact it is about, as the sheet's file calls it, and with which of the lines that tell it, from 0.</summary>
    internal static IEnumerable<(string Fact, int Nth, Fault Fault)> Faults(SystemSheet sheet) =>
    [
        .. Names("system", 0, faults => SheetNames.Check(faults, "system", sheet.Name, SheetNames.LongestSystem)),
        .. PanelFaults(sheet).Concat(LayingFaults(sheet)).Concat(CleatFaults(sheet.Cleat)).Select(found => (found.Fact, 0, found.Fault)),
        .. Names("tie", 0, faults => SheetNames.Check(faults, "tie", sheet.Tie.Name, SheetNames.LongestHardware)),
        .. FittingFaults("corner", "at a corner", sheet.AtCorner),
        .. FittingFaults("tee", "at a tee", sheet.AtTee),
        .. FittingFaults("end", "at an end", sheet.AtEnd),
        .. FittingFaults("course", "in a course", sheet.AtCourse),
        .. sheet.Notes.Count > SheetNames.MostNotes
            ? Names("note", SheetNames.MostNotes, faults => SheetNames.CheckNotes(faults, sheet.Notes))
            : sheet.Notes.SelectMany((note, i) => Names("note", i, faults => SheetNames.CheckNotes(faults, [note]))),
    ];

    private static IEnumerable<(string Fact, Fault Fault)> PanelFaults(SystemSheet sheet)
    {
        if (sheet.PanelLength.IsZero) yield return ("panel length", WallFaults.NoLength("panel length"));
        if (sheet.PanelHeight.IsZero) yield return ("panel height", WallFaults.NoLength("panel height"));
        if (sheet.Thickness.IsZero) yield return ("panel thickness", WallFaults.NoLength("panel thickness"));
        if (sheet.TieSpacing.IsZero) yield return ("tie spacing", WallFaults.NoLength("tie spacing"));
        if (sheet.Interval.IsZero)
        {
            yield return ("interval", WallFaults.NoLength("interval"));
            yield break;
        }

        if (sheet.Interval < SmallestInterval) yield return ("interval", WallFaults.IntervalTooSmall(SmallestInterval));
        if (sheet.TieSpacing.Units % sheet.Interval.Units != 0) yield return ("interval", WallFaults.IntervalAndTies(sheet.Interval, sheet.TieSpacing));
        if (sheet.PanelLength.Units % sheet.Interval.Units != 0) yield return ("interval", WallFaults.IntervalAndPanel(sheet.Interval, sheet.PanelLength));
    }

    private static IEnumerable<(string Fact, Fault Fault)> LayingFaults(SystemSheet sheet)
    {
        if (sheet.ShortestPiece > sheet.PanelLength) yield return ("shortest piece", WallFaults.ShortestOverPanel(sheet.ShortestPiece, sheet.PanelLength));
        if (sheet.Stagger.Units > sheet.PanelLength.Units / 2) yield return ("stagger", WallFaults.StaggerOverHalf(sheet.Stagger, sheet.PanelLength));
    }

    // What stands twice is told where it stands again.
    private static IEnumerable<(string Fact, int Nth, Fault Fault)> FittingFaults(string fact, string place, IReadOnlyList<Fitting> fittings)
    {
        var seen = new HashSet<Hardware>();
        foreach (var (nth, fitting) in fittings.Index())
        {
            foreach (var found in Names(fact, nth, faults => SheetNames.Check(faults, "hardware", fitting.Hardware.Name, SheetNames.LongestHardware))) yield return found;
            if (fitting.Count is < 1 or > 1000) yield return (fact, nth, WallFaults.FittingCount(fitting.Hardware.Name));
            if (!seen.Add(fitting.Hardware)) yield return (fact, nth, WallFaults.FittingTwice(fitting.Hardware.Name, place));
        }
    }

    private static IEnumerable<(string Fact, Fault Fault)> CleatFaults(Cleat? cleat)
    {
        if (cleat is null) yield break;
        if (cleat.Length.IsZero) yield return ("cleat", WallFaults.NoLength("length of a cleat"));
        if (!WallWords.IsCut(cleat.Material)) yield return ("cleat", WallFaults.NotCut(cleat.Material.Name, "cleats"));
    }

    private static IEnumerable<(string Fact, int Nth, Fault Fault)> Names(string fact, int nth, Action<List<Fault>> check)
    {
        var faults = new List<Fault>();
        check(faults);
        return faults.Select(fault => (fact, nth, fault));
    }
}
