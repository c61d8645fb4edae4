using Offcuts.Core.Faults;
using Offcuts.Core.Walls;

namespace Offcuts.Store;

/// <content>System sheets and the walls of stages. A sheet is kept as its own text, checked by reading it back.</content>
public sealed partial class YardChange
{
    private List<SheetRow> Systems => [.. Database.Rows<SheetRow>("system_sheets")];

    private List<WallRow> WallRows => [.. Database.Rows<WallRow>("wall_sheets")];

    /// <summary>Adds a system sheet, or puts it in the place of the one of that name, in whatever case. Faults: those of <see cref="SystemRules"/>.</summary>
    public void SetSystem(SystemSheet sheet)
    {
        var rules = SystemRules.Check(sheet);
        if (Refused(rules.Ok ? [] : rules.Faults)) return;
        if (Systems.Find(row => Same(row.Name, sheet.Name)) is { } row)
            Database.Run("system_sheet_set", ("name", sheet.Name), ("sheet", SystemText.Write(sheet)), ("id", row.Id));
        else Database.Number("system_sheet_add", ("name", sheet.Name), ("sheet", SystemText.Write(sheet)));
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
    /// there. Whether it can be built is for the caller to ask, who lays it out; what its file could not say is refused.
    /// </summary>
    public void SetWall(StageWall wall)
    {
        if (Existing(wall.Stage) is not { } stage) return;
        if (Systems.Find(row => Same(row.Name, wall.Sheet.System)) is not { } system)
        {
            _faults.Add(WallFaults.NoSuchSystem(wall.Sheet.System));
            return;
        }

        var faults = new List<Fault>();
        SheetNames.Check(faults, "wall", wall.Sheet.Name);
        var text = WallText.Write(wall.Sheet);
        if (faults.Count == 0 && WallText.Read(text) is { Ok: false } unread) faults.AddRange(unread.Faults);
        if (Refused(faults)) return;
        if (WallRows.Find(row => Same(row.Name, wall.Sheet.Name)) is { } row)
            Database.Run("wall_sheet_set", ("stage", stage.Id), ("name", wall.Sheet.Name), ("system", system.Id), ("sheet", text), ("id", row.Id));
        else Database.Number("wall_sheet_add", ("stage", stage.Id), ("name", wall.Sheet.Name), ("system", system.Id), ("sheet", text));
    }

    /// <summary>Removes a wall. What it put among the needs of its stage stays there.</summary>
    public void RemoveWall(string name)
    {
        if (WallRows.Find(row => Same(row.Name, name)) is { } row) Database.Run("wall_sheet_remove", ("id", row.Id));
        else _faults.Add(WallFaults.NoSuchWall(name));
    }

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
