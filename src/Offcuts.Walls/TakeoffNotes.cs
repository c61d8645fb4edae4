using Offcuts.Core.Measures;
using Offcuts.Core.Walls;

namespace Offcuts.Walls;

/// <summary>What was taken for granted in a takeoff, and what a person has to look at.</summary>
internal static class TakeoffNotes
{
    private const string RegularTies = "Ties are the regular ones; a plan of the panels adds one at each joint that has none.";

    /// <summary>The same notes where joints are counted that have no regular tie.</summary>
    public static IReadOnlyList<string> WithJoints(IReadOnlyList<string> notes) =>
        [.. notes.Select(note => note == RegularTies ? "Ties are the regular ones, and one at each joint without one in courses that stand or are planned." : note)];

    public static IReadOnlyList<string> Of(LaidWall wall) =>
    [
        .. OutsideTaken(wall),
        .. wall.ToLookAt,
        .. Cut(wall),
        RegularTies,
        .. wall.Sheet.Steel is null ? (string[])[] : ["Bars at corners, hooks, dowels, and bars around openings are as drawn; add them to the stage."],
        .. wall.Sheet.Steel is { Cover.IsZero: true } ? (string[])["No cover is given for the bars, so that they are counted from end to end of the core; a line that begins with cover takes it off."] : [],
        .. wall.Foam.Legs.Any(leg => leg.Start == LegEnd.Free || leg.End == LegEnd.Free) ? (string[])["What closes the core at a free end is as drawn; it is not counted."] : [],
    ];

    private static IEnumerable<string> OutsideTaken(LaidWall wall) =>
        from leg in wall.Legs
        where leg.Leg.Outside is null && leg.Start is LegEnd.Free
        select $"Lengths are taken as measured on the {WallWords.Of(leg.Outside)}, walking from the start of leg {leg.Leg.Name}.";

    private static IEnumerable<string> Cut(LaidWall wall)
    {
        if (wall.Layers[^1] is var last && last.Top - last.Bottom < wall.System.PanelHeight.Units)
            yield return $"Course {last.Number} is ripped to {wall.Told(Length.FromUnits(last.Top - last.Bottom))}.";
        foreach (var notch in wall.Notches)
        {
            var left = string.Join(" and ", ((string[])[notch.Below.IsZero ? "" : $"{wall.Told(notch.Below)} under it", notch.Above.IsZero ? "" : $"{wall.Told(notch.Above)} over it"]).Where(part => part.Length > 0));
            yield return $"Leg {notch.Leg}, course {notch.Course}: cut to height at {notch.Opening}, {left}.";
        }
    }
}
