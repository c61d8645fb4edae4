using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>A wall, its takeoff and its runs in plain lines, for a terminal and a print alike.</summary>
public static class TakeoffText
{
    /// <summary>The cautions that stand on every wall sheet, and the line that closes them.</summary>
    public static IEnumerable<string> Cautions(bool steel) =>
        [.. Core.Yard.Cautions.ForWall(steel).Select(caution => "! " + caution), Core.Yard.Cautions.Closing];

    /// <summary>What a takeoff says: each figure on a line, and, opened, what it is made of below it.</summary>
    /// <param name="taken">The takeoff.</param>
    /// <param name="unit">The unit lengths are shown in.</param>
    /// <param name="today">The day it is: an order that is late is told so.</param>
    /// <param name="open">True to open every figure.</param>
    public static IEnumerable<string> Lines(WallTakenOff taken, LengthUnit unit, DateOnly today, bool open)
    {
        var takeoff = taken.Takeoff;
        yield return $"Wall {taken.Kept.Sheet.Name} of {taken.Kept.Stage}, built of {takeoff.Wall.System.Name}: {Words.Count(takeoff.Wall.Legs.Count, "leg")}, {Words.Count(takeoff.Wall.Courses, "course")}";
        yield return "";
        foreach (var figure in Figures(taken, unit))
        {
            yield return figure.Says;
            if (open) foreach (var line in figure.MadeOf) yield return "    " + line;
        }

        yield return "";
        yield return "Still needed, and on hand";
        foreach (var line in taken.Left.Lines(unit, today)) yield return "  " + line;
        foreach (var line in Changed(taken, $"offcuts wall enter {ShellWord.Of(taken.Kept.Sheet.Name)}")) yield return "  " + line;
        foreach (var line in taken.Stock) yield return "  " + Of(line, unit, today);
        foreach (var line in taken.LeftOut) yield return "  " + line;
        yield return "";
        foreach (var note in takeoff.Notes) yield return note;
        yield return "";
        foreach (var caution in Cautions(taken.Kept.Sheet.Steel is not null)) yield return caution;
    }

    /// <summary>That the wall would enter its needs otherwise now, and how that is done; nothing where it would not, or where none are entered.</summary>
    public static IEnumerable<string> Changed(WallTakenOff taken, string again)
    {
        const int named = 3;
        if (taken.Changed.Count == 0) yield break;
        var more = taken.Changed.Count > named ? $" and {taken.Changed.Count - named} more" : "";
        yield return $"! needs in {taken.Kept.Stage} have changed since they were entered: {string.Join("; ", taken.Changed.Take(named))}{more}; enter them again: {again}";
    }

    /// <summary>Every figure, with what it is made of.</summary>
    public static IEnumerable<WallFigure> Figures(WallTakenOff taken, LengthUnit unit)
    {
        const int column = 12;
        var takeoff = taken.Takeoff;
        string[] Opened(Count count) => [.. count.Lines.Select(line => $"{Number(line.Figure),column}  {line.What}")];
        foreach (var run in takeoff.Runs)
            yield return new WallFigure(
                $"{run.Material}: {run.Total.ToText(unit)} to lay{(run.AtLeast is { } least ? $", at least {least} of {run.Whole.ToText(unit)}" : "")}",
                [.. run.Lines.Select(line => $"{line.Length.ToText(unit),column}  {line.What}")]);
        foreach (var hardware in takeoff.Hardware)
            yield return new WallFigure($"{hardware.Hardware}: {Number(hardware.Count.Figure)}", Opened(hardware.Count));
        foreach (var cut in takeoff.Cuts)
            yield return new WallFigure(
                $"{cut.Cut.Name[Takeoff.NeedPrefix(taken.Kept.Sheet.Name).Length..]}: {Number(cut.Count.Figure)} of {cut.Cut.Material}, {cut.Cut.Shortest.ToText(unit)}, {Words.Of(cut.Cut)}", Opened(cut.Count));
        foreach (var concrete in takeoff.Concrete)
            yield return new WallFigure(
                $"concrete, {concrete.Name}: {Concrete(concrete.Total)}{(concrete.AllowancePermille > 0 ? $", with {concrete.AllowancePermille / 10m:0.#} % over {Concrete(concrete.Net)}" : "")}",
                [.. concrete.Lines.Select(line => $"{(unit == LengthUnit.Inch ? line.Volume.CubicYards : line.Volume.CubicMetres).ToString("0.000", CultureInfo.InvariantCulture),column}  {(unit == LengthUnit.Inch ? "yd3" : "m3")}: {line.What}")]);
    }

    /// <summary>Every run, course by course: what is to be covered, measured from the start of the run's axis.</summary>
    public static IEnumerable<string> Runs(StageWall kept, LaidWall wall, LengthUnit unit)
    {
        foreach (var leg in wall.Legs.Where(leg => !leg.AxisBefore.IsZero))
            yield return $"Leg {leg.Leg.Name} is measured from {leg.AxisBefore.ToText(unit)} before its start, where its inside begins.";
        foreach (var run in wall.Runs.Concat(wall.FootingRuns))
        {
            yield return $"{run.Name}: {run.Material}, first tie at {run.Lines.FirstTie.ToText(unit)}, lines every {run.Lines.Interval.ToText(unit)}, ties every {run.Lines.TieSpacing.ToText(unit)}";
            foreach (var course in run.Courses)
            {
                var first = course.Stretches.Count == 0 ? "" : $", offset {Offset(run, course.Stretches[0]).ToText(unit)}";
                yield return $"  course {course.Number}, {course.Height.ToText(unit)} high: {(course.Stretches.Count == 0 ? "nothing" : string.Join(", ", course.Stretches.Select(stretch => $"{stretch.Start.ToText(unit)} to {stretch.End.ToText(unit)}")))}{first}";
            }
        }

        foreach (var notch in wall.Notches)
            yield return $"Leg {notch.Leg}, course {notch.Course}: from {notch.Where.Start.ToText(unit)} to {notch.Where.End.ToText(unit)} cut to height at {notch.Opening}, {notch.Below.ToText(unit)} under it and {notch.Above.ToText(unit)} over it";
        yield return "";
        foreach (var caution in Cautions(kept.Sheet.Steel is not null)) yield return caution;
    }

    /// <summary>From the start of a stretch to the first pattern line in it.</summary>
    public static Length Offset(Run run, Span stretch)
    {
        var over = (stretch.Start.Units - run.Lines.FirstTie.Units) % run.Lines.Interval.Units;
        return Length.FromUnits(over > 0 ? run.Lines.Interval.Units - over : -over);
    }

    /// <summary>What is needed of a material and whether it is there: one line.</summary>
    public static string Of(StockLine line, LengthUnit unit, DateOnly today)
    {
        var cut = !line.NeededLength.IsZero;
        var needed = cut ? line.NeededLength.ToText(unit) : Number(line.NeededCount);
        var onHand = line.OnHandCount == 0 ? "none" : !cut ? Number(line.OnHandCount) : $"{line.OnHandLength.ToText(unit)} in {Words.Count((int)line.OnHandCount, "usable length")}";
        var verdict = line.Verdict switch
        {
            StockVerdict.Enough => "enough",
            StockVerdict.PerhapsEnough => cut ? "perhaps enough; a plan tells" : "enough for the regular ones",
            _ => $"short by {(line.AtLeast ? "at least " : "")}{ShortBy(line, unit)}{(line.ShortWithOthers > line.ShortBy ? $" for this wall, by {Number(line.ShortWithOthers)} with those" : "")}",
        } + (line.ByPlan > 0 ? $" by plan {line.ByPlan.ToString(CultureInfo.InvariantCulture)}" : "");
        var other = line.OtherCount == 0 ? "" : $", of which other needs of the stage take {(cut ? line.OtherLength.ToText(unit) : Number(line.OtherCount))}";
        return $"{line.Material}: {needed} needed{(line.AtLeast ? " at least" : "")}, {onHand} on hand{other}: {verdict}{Order(line, today)}";
    }

    private static string ShortBy(StockLine line, LengthUnit unit) =>
        line.NeededLength.IsZero ? Number(line.ShortBy)
        : !line.NewLength.IsZero ? $"{Number(line.ShortBy)} of {line.NewLength.ToText(unit)}"
        : line.NeededLength > line.OnHandLength && line.ShortWithOthers == line.ShortBy ? (line.NeededLength - line.OnHandLength).ToText(unit)
        : Words.Count((int)line.ShortBy, "cut");

    private static string Order(StockLine line, DateOnly today)
    {
        if (line.Verdict != StockVerdict.Short || line.OrderBy is not { } day) return "";
        var written = day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        return day < today ? $"; was to be ordered by {written}, {Words.Count(today.DayNumber - day.DayNumber, "day")} ago" : $"; order by {written}";
    }

    /// <summary>All concrete of a wall in the unit that is ordered by.</summary>
    public static string Concrete(Takeoff takeoff, LengthUnit unit) => unit == LengthUnit.Inch
        ? string.Create(CultureInfo.InvariantCulture, $"{takeoff.Concrete.Sum(one => one.Total.CubicYards):0.00} yd3")
        : string.Create(CultureInfo.InvariantCulture, $"{takeoff.Concrete.Sum(one => one.Total.CubicMetres):0.00} m3");

    private static string Concrete(Volume volume) => string.Create(CultureInfo.InvariantCulture, $"{volume.CubicYards:0.00} yd3 ({volume.CubicMetres:0.00} m3)");

    private static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);
}
