using Offcuts.Core.Faults;
using Offcuts.Core.Walls;
using Offcuts.Store;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>
/// What of a wall stands, or is cut, and would lie otherwise by a sheet that was changed since. It was stacked by the sheet as it was: where that says
/// otherwise now, no count knows what is there.
/// </summary>
public sealed class StandsOtherwise(YardFile yard)
{
    /// <summary>Said behind what was done; empty where all that stands lies as the new sheet has it.</summary>
    /// <param name="before">The wall with the sheet and the system that it was built by, as the yard still has them.</param>
    /// <param name="now">The same laid out as it will be.</param>
    public string Told(StageWall before, LaidWall now)
    {
        var standing = new FillWall(yard).StandingOrCut(before);
        var was = new ChangeWalls(yard).Lay(before.Sheet);
        return Otherwise(before, now, standing, was);
    }

    /// <summary>True where the wall as it will be gives up how it is filled; false where it is built as before, under a new name at most.</summary>
    /// <param name="before">The wall with the sheet and the system that it was built by, as the yard still has them.</param>
    /// <param name="now">The same laid out as it will be.</param>
    /// <param name="moved">True where it is to be of another stage.</param>
    internal bool GivesUp(StageWall before, LaidWall now, bool moved = false) => moved || GivesUp(before, now, new ChangeWalls(yard).Lay(before.Sheet));

    private static bool GivesUp(StageWall before, LaidWall now, Result<LaidWall> was) =>
        !WallText.SameButName(before.Sheet, now.Sheet) || !was.TryGet(out var then) || SystemText.Write(then.System with { Name = "" }) != SystemText.Write(now.System with { Name = "" });

    private static string Otherwise(StageWall before, LaidWall now, IReadOnlyList<StackedCourse> standing, Result<LaidWall> was)
    {
        if (standing.Count == 0) return "";
        var off = standing.Count(course => !was.TryGet(out var old) || !Alike(Of(old, course), Of(now, course)));
        var told = off == 0 ? "" : $"; ! {before.Sheet.Name}: {Words.Count(off, "course")} that {(off == 1 ? "stands" : "stand")} or {(off == 1 ? "is" : "are")} cut would lie otherwise by this sheet: what is missing or too much there is in no count";
        return was.TryGet(out var then) && then.System.Stagger != now.System.Stagger
            ? $"{told}; ! {before.Sheet.Name}: {Words.Count(standing.Count, "course")} that {(standing.Count == 1 ? "stands" : "stand")} or {(standing.Count == 1 ? "is" : "are")} cut had a stagger of {then.System.Stagger}: the joints there stay as they are"
            : told;
    }

    /// <summary>Said behind a wall that is dropped; empty where nothing of it stands.</summary>
    public string Forgotten(StageWall dropped) => new FillWall(yard).StandingOrCut(dropped).Count is > 0 and var stood
        ? $"; that {Words.Count(stood, "course")} of it stood or {(stood == 1 ? "was" : "were")} cut is forgotten with it: an undo brings it back"
        : "";

    private static (Run Run, Course Course)? Of(LaidWall laid, StackedCourse stacked) =>
        laid.Runs.Concat(laid.FootingRuns).FirstOrDefault(run => run.Name == stacked.Run) is { } run && run.Courses.FirstOrDefault(course => course.Number == stacked.Course) is { } course
            ? (run, course)
            : null;

    private static bool Alike((Run Run, Course Course)? before, (Run Run, Course Course)? now) =>
        before is var (was, stood) && now is var (run, stands)
        && was.Material.Equals(run.Material) && was.Joints == run.Joints && was.Lines.Equals(run.Lines)
        && stood.Height == stands.Height && stood.Stretches.SequenceEqual(stands.Stretches);
}
