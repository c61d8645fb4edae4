using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Store;
using Offcuts.Store.Interchange;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>System sheets of the yard: taken in, found, dropped.</summary>
public sealed class ChangeSystems(YardFile yard, LongWork? work = null)
{
    /// <summary>Every sheet of the yard, and the invented one that ships where the yard has none of its name.</summary>
    public IReadOnlyList<SystemSheet> All()
    {
        var kept = yard.Systems();
        return kept.Any(sheet => Same(sheet.Name, SystemSheet.Generic.Name)) ? kept : [.. kept, SystemSheet.Generic];
    }

    /// <summary>Which panels are whole by these sheets and by what can be bought.</summary>
    public WholePanels WholePanels() => Core.Walls.WholePanels.Of(All(), yard.Prices());

    /// <summary>The sheet of a name, in either case; or why there is none.</summary>
    public Result<SystemSheet> Find(string name) =>
        All().FirstOrDefault(sheet => Same(sheet.Name, name.Trim())) is { } found ? found : WallFaults.NoSuchSystem(name, All().Select(sheet => sheet.Name));

    /// <summary>
    /// Takes a sheet in from a file; one of that name is replaced only where <paramref name="replace"/> says so, and only where every
    /// wall of it could still be built.
    /// </summary>
    /// <param name="file">The sheet.</param>
    /// <param name="fileName">How the file is called in faults.</param>
    /// <param name="replace">True where one of that name may be replaced.</param>
    /// <param name="giveUp">False where that is refused while it would give up how a wall is filled, as it is kept.</param>
    public Result<string> Import(Stream file, string fileName, bool replace = false, bool giveUp = true)
    {
        var read = SheetFile.ReadSystem(file, fileName);
        return read.TryGet(out var sheet) ? Set(sheet, replace, giveUp) : Result<string>.Fail(read.Faults);
    }

    /// <summary>The same for a sheet that was typed.</summary>
    public Result<string> Set(SystemSheet sheet, bool replace = false, bool giveUp = true)
    {
        var seen = yard.ChangeNumber;
        var there = yard.Systems().Any(known => Same(known.Name, sheet.Name));
        if (there && !replace) return WallFaults.SystemExists(sheet.Name);
        var broken = Broken(sheet, yard.Walls().Where(wall => Same(wall.Sheet.System, sheet.Name)), yard.Settings().Unit);
        if (broken.Count > 0) return Result<string>.Fail(broken);
        KeptWallPlan[] lost = yard.Systems().FirstOrDefault(known => Same(known.Name, sheet.Name)) is { } before && !SystemText.SameButName(before, sheet)
            ? [.. yard.Walls().Where(wall => Same(wall.Sheet.System, sheet.Name)).SelectMany(wall => Kept(yard, wall.Sheet.Name))]
            : [];
        if (lost.Length > 0 && !giveUp) return Result<string>.Fail([.. lost.Select(plan => WallFaults.GivesUpFilling(plan.Wall, plan.PlanId))]);
        var otherwise = StandOtherwise(sheet, sheet.Name) + GivenUp(lost);
        var begun = Begun(sheet, sheet.Name);
        var takenBack = begun.TakenBack(work ?? LongWork.Unheard);
        return yard.ChangeSince(seen, $"{(there ? "replaced" : "took in")} the system {sheet.Name}", change =>
        {
            change.SetSystem(sheet);
            begun.ComeBack(change, takenBack);
        }).Then<string>(entry => entry.What + otherwise + begun.Told);
    }

    /// <summary>How a wall is filled, as it is kept and as far as something of it waits: one or none.</summary>
    internal static IEnumerable<KeptWallPlan> Kept(YardFile yard, string wall) => yard.WallPlans().Where(plan => Same(plan.Wall, wall) && yard.Plan(plan.PlanId)?.Open is true);

    /// <summary>Said behind what was done: which fillings it gave up.</summary>
    internal static string GivenUp(IReadOnlyCollection<KeptWallPlan> lost) =>
        lost.Count == 0 ? "" : $"; given up: {string.Join(", ", lost.Select(plan => $"how {plan.Wall} is filled (plan {plan.PlanId})"))}";

    /// <summary>
    /// Saves a sheet that was typed over the one that was opened, where every wall of it can still be built; its name may be another now, and its walls
    /// then name it so. Refused where somebody else has changed the sheet since it was opened. Faults stand at their lines.
    /// </summary>
    public Result<string> Save(SheetEdit edit)
    {
        var seen = yard.ChangeNumber;
        var read = SystemText.Read(edit.Text);
        if (!read.TryGet(out var sheet)) return Result<string>.Fail(read.Faults);
        var kept = yard.Systems();
        SystemSheet? before = null;
        if (edit.Of is { } of)
        {
            before = All().FirstOrDefault(known => Same(known.Name, of));
            if (before is null || SystemText.Write(before) != edit.Opened) return WallFaults.SheetChangedMeanwhile("system sheet", of);
            // The one that ships is put in the yard by its first edit; under another name it is a sheet of its own.
            if (kept.All(known => !Same(known.Name, of))) before = null;
        }

        if (before is null && kept.Any(known => Same(known.Name, sheet.Name))) return WallFaults.NameTaken("system sheet", sheet.Name) with { Line = LineOfName(edit.Text) };
        var broken = before is null ? [] : Broken(sheet, yard.Walls().Where(wall => Same(wall.Sheet.System, before.Name)), yard.Settings().Unit);
        if (broken.Count > 0) return Result<string>.Fail(broken);
        var told = before is null ? $"took in the system {sheet.Name}"
            : before.Name == sheet.Name ? $"edited the system {sheet.Name}"
            : $"edited the system {before.Name}, which is named {sheet.Name} now";
        var otherwise = before is null ? "" : StandOtherwise(sheet, before.Name);
        var begun = before is null ? new BegunAndGivenUp(yard) : Begun(sheet, before.Name);
        var takenBack = begun.TakenBack(work ?? LongWork.Unheard);
        return yard.ChangeSince(seen, told, change =>
        {
            change.SetSystem(sheet, before?.Name);
            begun.ComeBack(change, takenBack);
        }).Then<string>(entry => entry.What + otherwise + begun.Told);
    }

    // What lies there of fillings of its walls that the sheet gives up.
    private BegunAndGivenUp Begun(SystemSheet sheet, string named) =>
        new(yard, [.. yard.Walls().Where(wall => Same(wall.Sheet.System, named) && LaidWall.Of(wall.Sheet, sheet, yard.Settings().Unit).TryGet(out var now) && new StandsOtherwise(yard).GivesUp(wall, now))]);

    // Of every wall of the system, what stands and would lie otherwise by its sheet as it is to be.
    private string StandOtherwise(SystemSheet sheet, string named) => string.Concat(
        yard.Walls().Where(wall => Same(wall.Sheet.System, named)).Select(wall => LaidWall.Of(wall.Sheet, sheet, yard.Settings().Unit).TryGet(out var now) ? new StandsOtherwise(yard).Told(wall, now) : ""));

    /// <summary>Why these walls could not be built of a sheet, whatever name they call it by.</summary>
    internal static IReadOnlyList<Fault> Broken(SystemSheet sheet, IEnumerable<StageWall> walls, LengthUnit unit) =>
    [
        .. walls.SelectMany(wall => LaidWall.Of(wall.Sheet with { System = sheet.Name }, sheet, unit).Faults.Select(fault => WallFaults.SystemBreaksWall(wall.Sheet.Name, fault.Sentence))),
    ];

    /// <summary>Drops a sheet of which no wall is built.</summary>
    public Result<string> Drop(string name) =>
        Same(name.Trim(), SystemSheet.Generic.Name) && yard.Systems().All(known => !Same(known.Name, name.Trim()))
            ? WallFaults.ShippedSystem(SystemSheet.Generic.Name)
            : yard.Change($"dropped the system {name.Trim()}", change => change.RemoveSystem(name.Trim())).Then<string>(entry => entry.What);

    private static int LineOfName(string text) => Array.FindIndex(text.Split('\n'), line => SheetFact.Of(SheetFacts.OfSystem, line)?.Name == "system") + 1;

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
