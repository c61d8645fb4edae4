using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;

namespace Offcuts.Walls;

/// <summary>Regular ties, and what the system sheet asks for at corners, tees, ends and in courses.</summary>
internal static class HardwareCounts
{
    public static IReadOnlyList<HardwareTakeoff> Of(LaidWall wall) => Of(wall, (_, _) => true);

    /// <summary>The same of some courses only. What is at a corner or a tee counts where the course of either leg is to be counted.</summary>
    /// <param name="wall">The wall.</param>
    /// <param name="counts">Whether a course of a leg is to be counted.</param>
    public static IReadOnlyList<HardwareTakeoff> Of(LaidWall wall, Func<string, int, bool> counts)
    {
        var found = new List<(Hardware Hardware, List<CountLine> Lines)> { (wall.System.Tie, Ties(wall, counts)) };
        void Add(IReadOnlyList<Fitting> fittings, IEnumerable<(string Place, string[] Legs)> places)
        {
            foreach (var fitting in fittings)
            {
                var known = found.Find(one => one.Hardware.Equals(fitting.Hardware));
                if (known.Hardware is null) found.Add(known = (fitting.Hardware, []));
                known.Lines.AddRange(
                    from place in places
                    let courses = wall.Layers.Count(layer => place.Legs.Any(leg => counts(leg, layer.Number)))
                    where courses > 0
                    select new CountLine($"{place.Place}: {fitting.Count} in each of {Courses(courses)}", (long)fitting.Count * courses));
            }
        }

        Add(wall.System.AtCorner, wall.Corners().Select(corner => ($"corner of {corner.Leg} and {corner.Next}", new[] { corner.Leg, corner.Next })));
        Add(wall.System.AtTee, wall.Foam.Legs.SelectMany(leg => leg.Tees.Select(tee => ($"tee of {tee.Branch} on {leg.Name}", new[] { tee.Branch, leg.Name }))));
        Add(wall.System.AtEnd, wall.Foam.Legs.SelectMany(leg => FreeEnds(leg).Select(end => (end, new[] { leg.Name }))));
        Add(wall.System.AtCourse, wall.Foam.Legs.Select(leg => ($"leg {leg.Name}", new[] { leg.Name })));
        return [.. found.Select(one => new HardwareTakeoff(one.Hardware, new Count(one.Lines))).Where((one, i) => i == 0 || one.Count.Figure > 0)];
    }

    private static IEnumerable<string> FreeEnds(FrameLeg leg)
    {
        if (leg.Start == LegEnd.Free) yield return $"free start of {leg.Name}";
        if (leg.End == LegEnd.Free) yield return $"free end of {leg.Name}";
    }

    // Courses of a leg in which both rows cover the same are told in one line.
    private static List<CountLine> Ties(LaidWall wall, Func<string, int, bool> counts) =>
    [
        .. from leg in wall.Foam.Legs
           from same in wall.Layers.Where(layer => counts(leg.Name, layer.Number))
               .Select(layer => (layer.Number, Both: wall.RowsOf(leg, layer).Both().ToArray()))
               .GroupBy(course => string.Join(' ', course.Both))
           let courses = same.Select(course => course.Number).ToArray()
           let both = same.First().Both
           let each = both.Sum(stretch => Rows.Places(stretch.From, stretch.To, wall.System.TieSpacing.Units))
           select new CountLine(
               $"leg {leg.Name}, {(courses.Length == 1 ? "course" : "courses")} {Places.Numbers(courses)}: {each} each, every {wall.Told(wall.System.TieSpacing)} from the leg's start where both faces stand ({Where(wall, both)})",
               each * courses.Length),
    ];

    private static string Where(LaidWall wall, IEnumerable<(long From, long To)> both) => string.Join(", ", both.Select(stretch => $"{wall.Place(stretch.From)} to {wall.Place(stretch.To)}"));

    private static string Courses(int count) => count == 1 ? "1 course" : $"{count} courses";
}
