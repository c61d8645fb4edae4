using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Walls;

/// <summary>A stretch of foam in which nothing can be laid, whatever lies in the yard or is bought.</summary>
/// <param name="Run">Name of the run.</param>
/// <param name="Courses">The courses in which it is so.</param>
/// <param name="Stretch">Where, on the axis of the leg's runs.</param>
/// <param name="Says">Where it is, why nothing can be laid there, and what would change that: one sentence.</param>
public sealed record Unfillable(string Run, IReadOnlyList<int> Courses, Span Stretch, string Says)
{
    /// <summary>All such stretches of a wall, run by run.</summary>
    public static IReadOnlyList<Unfillable> Of(LaidWall wall) =>
    [
        .. from run in wall.Runs.Select((run, i) => (Run: run, Leg: wall.Legs[i / 2]))
           from same in run.Run.Courses.SelectMany(course => course.Stretches.Select(stretch => (course.Number, Stretch: stretch))).GroupBy(one => one.Stretch)
           let why = Why(wall, run.Run, same.Key)
           where why is not null
           let courses = same.Select(one => one.Number).ToArray()
           select new Unfillable(run.Run.Name, courses, same.Key, $"{run.Run.Name}, {(courses.Length == 1 ? "course" : "courses")} {Places.Numbers(courses)}, from {wall.Place(run.Leg, same.Key.Start)} to {wall.Place(run.Leg, same.Key.End)} of the leg: {why}"),
    ];

    private static string? Why(LaidWall wall, Run run, Span stretch)
    {
        if (stretch.Length < run.ShortestPiece)
            return $"nothing can be laid in {wall.Told(stretch.Length)}, whatever lies in the yard, since no piece is shorter than {wall.Told(run.ShortestPiece)}. Another place for what stands beside it changes that, or a piece cut and held by hand, which is yours to decide";
        return run.Joints == JointRule.OnPattern && !Reaches(run, stretch, wall.System.PanelLength.Units)
            ? $"no row of panels of {wall.Told(wall.System.PanelLength)} at most covers {wall.Told(stretch.Length)} with joints on the lines and no piece shorter than {wall.Told(run.ShortestPiece)}. Another place for what stands beside it changes that"
            : null;
    }

    // From line to line, no step shorter than the shortest piece or longer than a panel: the stagger is left out.
    private static bool Reaches(Run run, Span stretch, long most)
    {
        var (start, end, least, step) = (stretch.Start.Units, stretch.End.Units, run.ShortestPiece.Units, run.Lines.Interval.Units);
        var first = start + run.Lines.ToLine(stretch.Start).Units;
        var reached = new List<long> { start };
        for (var line = first; line < end && end - reached[^1] > most; line += step)
        {
            if (line > start && Within(reached, line, least, most)) reached.Add(line);
        }

        return Within(reached, end, least, most);
    }

    // Reached places come in order: only the last few are no farther than a panel.
    private static bool Within(List<long> reached, long at, long least, long most)
    {
        for (var i = reached.Count - 1; i >= 0 && at - reached[i] <= most; i--)
            if (at - reached[i] >= least) return true;
        return false;
    }
}
