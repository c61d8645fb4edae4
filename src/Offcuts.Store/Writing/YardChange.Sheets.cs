using Offcuts.Core.Faults;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;

namespace Offcuts.Store;

/// <content>System sheets and the walls of stages. A sheet is kept as its own text, checked by reading it back.</content>
public sealed partial class YardChange
{
    private List<SheetRow> Systems => [.. Database.Rows<SheetRow>("system_sheets")];

    private List<WallRow> WallRows => [.. Database.Rows<WallRow>("wall_sheets")];

    /// <summary>
    /// Adds a system sheet, or puts it in the place of the one of that name, in whatever case. Where its numbers change, what still waits
    /// in the plans of its walls is given up. Faults: those of <see cref="SystemRules"/>, and another sheet's name.
    /// </summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="instead">Name of the sheet whose place it takes, where that had another; its walls follow.</param>
    public void SetSystem(SystemSheet sheet, string? instead = null)
    {
        var rules = SystemRules.Check(sheet);
        if (Refused(rules.Ok ? [] : rules.Faults)) return;
        var row = Systems.Find(row => Same(row.Name, instead ?? sheet.Name));
        if (Refused([.. Taken("system sheet", instead, sheet.Name, row?.Id, Systems.Find(other => Same(other.Name, sheet.Name))?.Id, WallFaults.NoSuchSystem)])) return;
        var text = SystemText.Write(sheet);
        if (row is null)
        {
            Database.Number("system_sheet_add", ("name", sheet.Name), ("sheet", text));
            return;
        }

        var before = SystemText.Read(row.Sheet).Value;
        var sameNumbers = SystemText.SameButName(before, sheet);
        Database.Run("system_sheet_set", ("name", sheet.Name), ("sheet", text), ("id", row.Id));
        foreach (var wall in WallRows.Where(wall => wall.System == row.Id))
        {
            if (!sameNumbers) DropWallPlan(wall.Name);
            if (row.Name != sheet.Name)
                Database.Run("wall_sheet_set", ("stage", wall.StageId), ("name", wall.Name), ("system", row.Id), ("sheet", WallText.Write(WallText.Read(wall.Sheet).Value with { System = sheet.Name })), ("id", wall.Id));
        }
    }

    /// <summary>Removes a system sheet of which no wall is built.</summary>
    public void RemoveSystem(string name)
    {
        if (Systems.Find(row => Same(row.Name, name)) is not { } row) _faults.Add(WallFaults.NoSuchSystem(name));
        else if (WallRows.Find(wall => wall.System == row.Id) is { } wall) _faults.Add(WallFaults.SystemInUse(row.Name, wall.Name));
        else Database.Run("system_sheet_remove", ("id", row.Id));
    }

    /// <summary>
    /// Adds a wall to a stage, or puts it in the place of the one of that name, in whatever case and stage. Its system sheet must be
    /// there. Whether it can be built is for the caller to ask, who lays it out; what its file could not say is refused. Unless only its name
    /// or its notes are others, what still waits in its plan is given up.
    /// </summary>
    /// <param name="wall">The wall.</param>
    /// <param name="instead">Name of the wall whose place it takes, where that had another; what it put among the needs of its stage follows, in kept plans too.</param>
    public void SetWall(StageWall wall, string? instead = null)
    {
        if (Existing(wall.Stage) is not { } stage) return;
        if (Systems.Find(row => Same(row.Name, wall.Sheet.System)) is not { } system)
        {
            _faults.Add(WallFaults.NoSuchSystem(wall.Sheet.System));
            return;
        }

        var faults = new List<Fault>();
        SheetNames.CheckWall(faults, wall.Sheet.Name);
        var text = WallText.Write(wall.Sheet);
        if (faults.Count == 0 && WallText.Read(text) is { Ok: false } unread) faults.AddRange(unread.Faults);
        var row = WallRows.Find(row => Same(row.Name, instead ?? wall.Sheet.Name));
        faults.AddRange(Taken("wall", instead, wall.Sheet.Name, row?.Id, WallRows.Find(other => Same(other.Name, wall.Sheet.Name))?.Id, WallFaults.NoSuchWall));
        if (Refused(faults)) return;
        if (row is null)
        {
            Database.Number("wall_sheet_add", ("stage", stage.Id), ("name", wall.Sheet.Name), ("system", system.Id), ("sheet", text));
            return;
        }

        var before = WallText.Read(row.Sheet).Value;
        if (!WallText.SameButName(before, wall.Sheet) || row.StageId != stage.Id) DropWallPlan(row.Name);
        Database.Run("wall_sheet_set", ("stage", stage.Id), ("name", wall.Sheet.Name), ("system", system.Id), ("sheet", text), ("id", row.Id));
        if (row.Name != wall.Sheet.Name) RenameNeeds(row.Stage, row.Name, wall.Sheet.Name);
    }

    /// <summary>Removes a wall with what still waits in its plan. What it put among the needs of its stage stays there.</summary>
    public void RemoveWall(string name)
    {
        if (WallRows.Find(row => Same(row.Name, name)) is not { } row)
        {
            _faults.Add(WallFaults.NoSuchWall(name));
            return;
        }

        ForgetFilling(row);
        Database.Run("wall_sheet_remove", ("id", row.Id));
    }

    /// <summary>Keeps how a wall is filled, in the place of what was kept of it before, and gives the number of its plan.</summary>
    public int KeepWallPlan(string wall, RunPlan plan)
    {
        var id = KeepPlan(plan.AsPlan());
        if (WallRows.Find(row => Same(row.Name, wall)) is not { } row)
        {
            _faults.Add(WallFaults.NoSuchWall(wall));
            return id;
        }

        DropWallPlan(wall);
        Database.Run("wall_plan_add", ("wall", row.Id), ("plan", id), ("laying", LayingText.Write(plan)));
        return id;
    }

    /// <summary>
    /// Goes on with how a wall is filled in another form, under the same number of its plan: pieces stand where they stood, those that
    /// were put aside while it is carried out behind them. A fault where no filling of it is kept.
    /// </summary>
    /// <param name="wall">Name of the wall.</param>
    /// <param name="plan">The filling, with no fewer pieces than before.</param>
    /// <param name="steps">How far pieces have come, by their number from 0, where that is otherwise than it stands; new ones wait.</param>
    public void GoOnWithWallPlan(string wall, RunPlan plan, IReadOnlyDictionary<int, PlanStep> steps)
    {
        var row = Database.Rows<WallPlanRow>("wall_plans").FirstOrDefault(row => Same(row.Wall, wall));
        if (row is null) _faults.Add(FillFaults.NothingKept(wall));
        if (row is null || Kept(row.Plan) is not { } kept) return;
        if (plan.Pieces.Count < kept.Steps.Count) throw new ArgumentException("pieces of a plan never become fewer", nameof(plan));
        Database.Run("plan_set_document", ("document", PlanText.Write(plan.AsPlan())), ("id", row.Plan));
        for (var i = kept.Steps.Count; i < plan.Pieces.Count; i++) Database.Run("plan_step_add", ("plan", row.Plan), ("piece", i));
        foreach (var (piece, step) in steps) SetStep(row.Plan, piece, step);
        Database.Run("wall_plan_set", ("laying", LayingText.Write(plan)), ("id", row.Id));
    }

    /// <summary>
    /// Gives up what still waits in the plan of a wall, where there is one, and forgets how the wall was to be filled. Courses for which all was cut
    /// stay known: they wait to be stacked.
    /// </summary>
    public void DropWallPlan(string wall)
    {
        foreach (var row in Database.Rows<WallPlanRow>("wall_plans").Where(row => Same(row.Wall, wall)).ToArray())
        {
            if (Kept(row.Plan) is { } kept)
            {
                RememberCut(row.Wall, kept);
                DropRest(kept);
            }

            Database.Run("wall_plan_remove", ("id", row.Id));
        }
    }

    private void RememberCut(string wall, KeptPlan steps)
    {
        if (_reader.WallPlans().Find(plan => plan.PlanId == steps.Id) is not { } filling) return;
        var there = _reader.StackedCourses().Where(course => Same(course.Wall, wall)).ToArray();
        foreach (var course in filling.Cut(steps).Where(course => !there.Any(course.IsSame)).ToArray()) Stack(course);
    }

    /// <summary>Remembers that a course of a wall stands, or that it is cut and waits to be stacked. A fault where it stands already.</summary>
    public void Stack(StackedCourse course)
    {
        if (WallRows.Find(row => Same(row.Name, course.Wall)) is not { } row)
        {
            _faults.Add(WallFaults.NoSuchWall(course.Wall));
            return;
        }

        var (joints, pieces) = (LayingText.Write(course.Joints), LayingText.Write(course.Pieces));
        if (_reader.StackedCourses().Find(course.IsSame) is not { } there)
            Database.Run("wall_course_add", ("wall", row.Id), ("run", course.Run), ("course", course.Course), ("joints", joints), ("pieces", pieces), ("only_cut", course.OnlyCut));
        else if (there.OnlyCut && !course.OnlyCut)
            Database.Run("wall_course_stands", ("wall", row.Id), ("run", course.Run), ("course", course.Course), ("joints", joints), ("pieces", pieces));
        else _faults.Add(RunFaults.StandsAlready(course.Run, course.Course));
    }

    private void ForgetFilling(WallRow wall)
    {
        DropWallPlan(wall.Name);
        Database.Run("wall_courses_remove", ("wall", wall.Id));
    }

    // What takes another's place must find it there, and no third thing may have its name.
    private static IEnumerable<Fault> Taken(string what, string? instead, string name, long? place, long? named, Func<string, Fault> none)
    {
        if (instead is not null && place is null) yield return none(instead);
        else if (named is not null && named != place) yield return WallFaults.NameTaken(what, name);
    }

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
