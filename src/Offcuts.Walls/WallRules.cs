using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;

namespace Offcuts.Walls;

/// <summary>What a wall sheet can't be before anybody looks where its legs stand: names, amounts, what follows what.</summary>
internal static class WallRules
{
    /// <summary>Most legs of a wall.</summary>
    public const int MostLegs = 200;

    /// <summary>Most openings of one leg.</summary>
    public const int MostOpenings = 50;

    /// <summary>Most courses of a wall.</summary>
    public const int MostCourses = 200;

    /// <summary>No spacing of bars, braces or stakes is under this.</summary>
    public static Length SmallestSpacing { get; } = Length.Inches(2);

    /// <summary>The highest wall. With the longest, the closest bars and the longest laps, every sum of lengths stays a length.</summary>
    public static Length Highest { get; } = Length.Feet(100);

    /// <summary>All legs of a wall together.</summary>
    public static Length Longest { get; } = Length.Feet(1000);

    /// <summary>Every fault of the sheet by itself.</summary>
    public static List<Fault> Faults(WallSheet wall, SystemSheet system)
    {
        var faults = new List<Fault>();
        SheetNames.CheckWall(faults, wall.Name);
        SheetNames.Check(faults, "system", wall.System, SheetNames.LongestSystem);
        SheetNames.CheckNotes(faults, wall.Notes);
        if (!string.Equals(wall.System, system.Name, StringComparison.OrdinalIgnoreCase)) faults.Add(WallFaults.SystemOther(wall.System, system.Name));
        if (wall.Height.IsZero) faults.Add(WallFaults.NoLength("height of the wall", "height"));
        if (wall.CoreWidth.IsZero) faults.Add(WallFaults.NoLength("core", "core"));
        if (wall.Height.Units > MostCourses * system.PanelHeight.Units) faults.Add(WallFaults.TooMany("courses", MostCourses) with { About = "height" });
        if (wall.Height > Highest) faults.Add(WallFaults.TooHigh(Highest));
        if (wall.Legs.Sum(leg => leg.Length.Units) > Longest.Units) faults.Add(WallFaults.TooLong(Longest));
        if (wall.AllowancePermille is < 0 or > 1000) faults.Add(WallFaults.AllowanceOutside());
        CheckNames(faults, wall);
        if (wall.Legs.Count > 0) CheckOrder(faults, wall);
        CheckParts(faults, wall);
        return faults;
    }

    private static void CheckNames(List<Fault> faults, WallSheet wall)
    {
        if (wall.Legs.Count == 0) faults.Add(WallFaults.NoLegs());
        if (wall.Legs.Count > MostLegs) faults.Add(WallFaults.TooMany("legs", MostLegs));
        foreach (var leg in wall.Legs)
        {
            SheetNames.Check(faults, "leg", leg.Name);
            if (leg.Length.IsZero) faults.Add(WallFaults.NoLength($"length of leg {FileFaults.Shown(leg.Name)}", $"leg {leg.Name}"));
            if (leg.Openings.Count > MostOpenings) faults.Add(WallFaults.TooMany("openings in one leg", MostOpenings) with { About = $"leg {leg.Name}" });
            foreach (var opening in leg.Openings)
            {
                SheetNames.Check(faults, "opening", opening.Name);
                if (opening.Width.IsZero) faults.Add(WallFaults.NoLength($"width of the opening {FileFaults.Shown(opening.Name)}", $"opening {opening.Name}"));
                if (opening.Height.IsZero) faults.Add(WallFaults.NoLength($"height of the opening {FileFaults.Shown(opening.Name)}", $"opening {opening.Name}"));
            }
        }

        Twice(faults, "leg", wall.Legs.Select(leg => leg.Name));
        Twice(faults, "opening", wall.Legs.SelectMany(leg => leg.Openings).Select(opening => opening.Name));
    }

    private static void Twice(List<Fault> faults, string what, IEnumerable<string> names) =>
        faults.AddRange(names.GroupBy(name => name, StringComparer.OrdinalIgnoreCase).Where(same => same.Count() > 1).Select(same => WallFaults.NameTwice(what, same.Key)));

    private static void CheckOrder(List<Fault> faults, WallSheet wall)
    {
        if (wall.Legs[0].Start is not null) faults.Add(WallFaults.FirstLegStarts(wall.Legs[0].Name));
        var closes = wall.Legs.TakeWhile((leg, i) => i == 0 || leg.Start is null).Last();
        for (var i = 0; i < wall.Legs.Count; i++)
        {
            var leg = wall.Legs[i];
            var follows = i + 1 < wall.Legs.Count && wall.Legs[i + 1].Start is null ? wall.Legs[i + 1] : null;
            if (follows is not null && leg.Turn == Turn.End) faults.Add(WallFaults.EndInTheMiddle(leg.Name, follows.Name));
            if (follows is null && leg.Turn != Turn.End && !(wall.Closed && ReferenceEquals(leg, closes))) faults.Add(WallFaults.NoTurnAtLast(leg.Name));
            if (follows is null && leg.Turn == Turn.End && wall.Closed && ReferenceEquals(leg, closes)) faults.Add(WallFaults.ClosedButEnds(leg.Name));
            if (leg.Outside is not null && i > 0 && leg.Start is null) faults.Add(WallFaults.OutsideInTheMiddle(leg.Name));
            if (leg.Finish is not null && leg.Turn != Turn.End) faults.Add(WallFaults.FinishWithTurn(leg.Name));
            foreach (var junction in new[] { leg.Start, leg.Finish }.OfType<Junction>())
            {
                if (Same(junction.Leg, leg.Name)) faults.Add(WallFaults.TeeOnItself(leg.Name));
                else if (!wall.Legs.Any(other => Same(other.Name, junction.Leg))) faults.Add(WallFaults.TeeOnNoLeg(leg.Name, junction.Leg));
            }
        }
    }

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);

    private static void CheckParts(List<Fault> faults, WallSheet wall)
    {
        if (wall.Steel is { } steel)
        {
            if (steel.LongestBar.IsZero) faults.Add(WallFaults.NoLength("longest bar", "longest bar"));
            if (2 * steel.Cover.Units >= Math.Min(wall.Height.Units, wall.Legs.Select(leg => leg.Length.Units).DefaultIfEmpty(long.MaxValue).Min())) faults.Add(WallFaults.CoverTooMuch(steel.Cover));
            if (steel is { Horizontal: null, Vertical: null }) faults.Add(WallFaults.SteelWithoutBars());
            CheckBars(faults, steel, steel.Horizontal, "horizontal bars");
            CheckBars(faults, steel, steel.Vertical, "vertical bars");
        }

        if (wall.Bucks is { } bucks)
        {
            if (bucks.Width.IsZero) faults.Add(WallFaults.NoLength("width of the bucks", "bucks"));
            if (bucks.Width > bucks.Lumber.GreenWidth) faults.Add(WallFaults.BuckTooNarrow(bucks.Lumber.Name, bucks.Lumber.GreenWidth, bucks.Width));
            foreach (var leg in wall.Legs)
                foreach (var opening in leg.Openings.Where(opening => opening.Height.Units <= BuckCuts.Boards(opening) * bucks.Lumber.Thickness.Dry.Units))
                    faults.Add(WallFaults.OpeningTooFlat(opening.Name, leg.Name));
        }

        if (wall.Braces is { } braces)
        {
            CheckSpacing(faults, braces.Spacing, "braces");
            CheckCut(faults, braces.Material, "braces");
            if (braces.Rise.IsZero) faults.Add(WallFaults.NoLength("rise of the braces", "braces"));
            if (braces.Run.IsZero) faults.Add(WallFaults.NoLength("run of the braces", "braces"));
            if (braces.Rise > wall.Height) faults.Add(WallFaults.KickerTooHigh(braces.Rise, wall.Height));
        }

        if (wall.Footing is not { } footing) return;
        CheckSpacing(faults, footing.Spacing, "stakes");
        CheckCut(faults, footing.Stake, "stakes");
        CheckCut(faults, footing.Spreader, "spreaders");
        if (footing.StakeLength.IsZero) faults.Add(WallFaults.NoLength("length of the stakes", "stakes"));
    }

    private static void CheckBars(List<Fault> faults, Steel steel, Bars? bars, string what)
    {
        if (bars is null) return;
        CheckSpacing(faults, bars.Spacing, what);
        if (2 * bars.Overlap.Units > steel.LongestBar.Units) faults.Add(WallFaults.BarLapTooLong(bars.Bar.Name, bars.Overlap, steel.LongestBar, what));
    }

    private static void CheckSpacing(List<Fault> faults, Length spacing, string what)
    {
        if (spacing < SmallestSpacing) faults.Add(spacing.IsZero ? WallFaults.NoLength($"spacing of the {what}", what) : WallFaults.TooSmall($"spacing of the {what}", SmallestSpacing, what));
    }

    private static void CheckCut(List<Fault> faults, Material material, string what)
    {
        if (!WallWords.IsCut(material)) faults.Add(WallFaults.NotCut(material.Name, what) with { About = what });
    }
}
