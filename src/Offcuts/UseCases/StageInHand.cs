using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>A wall of which courses are still to be stacked.</summary>
/// <param name="Wall">The wall.</param>
/// <param name="Standing">Courses that stand, all faces counted.</param>
/// <param name="Courses">All of them; 0 where the wall can't be built as its sheet stands.</param>
/// <param name="Filled">True where it is kept how the rest is filled.</param>
public sealed record WallInHand(StageWall Wall, int Standing, int Courses, bool Filled);

/// <summary>The stage that is worked on now: the first, in the order of the work, that still lacks something.</summary>
/// <param name="Stage">The stage.</param>
/// <param name="Lacking">What it still lacks.</param>
/// <param name="Unplanned">What of that no open plan is to make or count out either.</param>
/// <param name="Walls">Its walls that do not stand yet.</param>
public sealed record StageInHand(Stage Stage, Stage Lacking, Stage Unplanned, IReadOnlyList<WallInHand> Walls)
{
    /// <summary>How many cuts and counted things it needs.</summary>
    public int All => Count(Stage);

    /// <summary>How many of them are still to be made or counted out.</summary>
    public int Left => Count(Lacking);

    /// <summary>How many of those an open plan is to make.</summary>
    public int Planned => Left - Count(Unplanned);

    /// <summary>The stage, or nothing where no stage lacks anything.</summary>
    public static StageInHand? Of(TodayFacts facts)
    {
        var pieces = facts.Pieces.ToDictionary(piece => piece.Code);
        foreach (var stage in facts.Stages)
        {
            var lacking = StageNeeds.Lacking(stage, facts.Plans);
            WallInHand[] walls = [.. facts.Walls.Where(wall => wall.Stage == stage.Name).Select(wall => Standing(wall, facts)).Where(wall => wall.Courses == 0 || wall.Standing < wall.Courses)];
            if (Count(lacking) > 0 || walls.Length > 0) return new StageInHand(stage, lacking, StageNeeds.Unplanned(stage, facts.Plans, pieces.GetValueOrDefault), walls);
        }

        return null;
    }

    /// <summary>What is missing, need by need.</summary>
    public IEnumerable<string> Missing(IReadOnlyList<Bin> bins, LengthUnit unit)
    {
        foreach (var cut in Lacking.Cuts)
        {
            var all = Stage.Cuts.First(one => one.Name == cut.Name).Count;
            var length = cut.Longest > cut.Shortest ? $"{cut.Shortest.ToText(unit)} to {cut.Longest.ToText(unit)}" : cut.Shortest.ToText(unit);
            yield return $"{cut.Name}: {cut.Count} of {all}, {cut.Material} {length}{PlannedWords(cut.Count, Unplanned.Cuts.FirstOrDefault(one => one.Name == cut.Name)?.Count ?? 0)}";
        }

        foreach (var need in Lacking.Hardware)
        {
            var all = Stage.Hardware.First(one => one.Name == need.Name).Count;
            var there = bins.Where(bin => bin.Hardware.Equals(need.Hardware)).Sum(bin => bin.Quantity);
            var said = $"{need.Name}: {need.Count} of {all}{(need.Name == need.Hardware.Name ? "" : $", {need.Hardware}")}";
            yield return $"{said}, {there} in the bins{(there < need.Count ? $", {need.Count - there} short" : "")}{PlannedWords(need.Count, Unplanned.Hardware.FirstOrDefault(one => one.Name == need.Name)?.Count ?? 0)}";
        }
    }

    private static string PlannedWords(int left, int unplanned) =>
        unplanned == 0 ? "; planned" : unplanned == left ? "; not planned yet" : $"; {left - unplanned} planned";

    private static WallInHand Standing(StageWall wall, TodayFacts facts)
    {
        var system = facts.Systems.FirstOrDefault(one => Same(one.Name, wall.Sheet.System));
        var courses = system is not null && LaidWall.Of(wall.Sheet, system, facts.Settings.Unit).TryGet(out var laid)
            ? laid.Runs.Concat(laid.FootingRuns).Sum(run => run.Courses.Count(course => course.Stretches.Count > 0))
            : 0;
        return new WallInHand(
            wall,
            facts.Stacked.Count(course => !course.OnlyCut && Same(course.Wall, wall.Sheet.Name)),
            courses,
            facts.WallPlans.Any(plan => Same(plan.Wall, wall.Sheet.Name)));
    }

    private static int Count(Stage stage) => stage.Cuts.Sum(cut => cut.Count) + stage.Hardware.Sum(need => need.Count);

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
