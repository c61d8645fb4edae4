using Offcuts.Core.Faults;
using Offcuts.Core.Walls;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>
/// What is lost of a filling that is given up altogether: courses that are cut whole stay known and wait to be stacked, but pieces of begun ones lie there
/// and are in no list. They are named with where they were meant for, so that nobody cuts them twice.
/// </summary>
internal sealed class BegunAndGivenUp(YardFile yard)
{
    /// <summary>Said behind what gave the filling up, looked up before it is; empty where no course is begun.</summary>
    public string Told(StageWall wall)
    {
        var fill = new FillWall(yard);
        if (fill.KeptOf(wall) is not { } kept || yard.Plan(kept.PlanId) is not { } steps || !new ChangeWalls(yard).Lay(wall.Sheet).TryGet(out var laid)) return "";
        if (BegunFilling.Of(yard, laid.Runs.Concat(laid.FootingRuns), kept, steps, fill.StandingOrCut(wall)) is not { } begun) return "";
        var unit = yard.Settings().Unit;
        var pieces = begun.Courses.Select(course => $"{course.Laid.Run}, course {course.Laid.Course}: {string.Join(" and ", course.Cut.Select(one => $"{(one.To - one.From).ToText(unit)} from {one.From.ToText(unit)} on"))}");
        return $"; ! cut already for courses that are not whole, and in no list any more: {string.Join("; ", pieces)}; catalogue what of it is to be used, by its length and first pattern line";
    }

    /// <summary>How the wall is filled again, behind what gave its filling up.</summary>
    public static string Again(StageWall wall) => $"; fill the wall again with: offcuts wall fill {ShellWord.Of(wall.Sheet.Name)} --keep";
}
