using Offcuts.Core.Faults;
using Offcuts.Core.Walls;
using Offcuts.Store;
using Offcuts.Store.Interchange;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>System sheets of the yard: taken in, found, dropped.</summary>
public sealed class ChangeSystems(YardFile yard)
{
    /// <summary>Every sheet of the yard, and the invented one that ships where the yard has none of its name.</summary>
    public IReadOnlyList<SystemSheet> All()
    {
        var kept = yard.Systems();
        return kept.Any(sheet => Same(sheet.Name, SystemSheet.Generic.Name)) ? kept : [.. kept, SystemSheet.Generic];
    }

    /// <summary>The sheet of a name, in either case; or why there is none.</summary>
    public Result<SystemSheet> Find(string name) =>
        All().FirstOrDefault(sheet => Same(sheet.Name, name.Trim())) is { } found ? found : WallFaults.NoSuchSystem(name);

    /// <summary>
    /// Takes a sheet in from a file; one of that name is replaced only where <paramref name="replace"/> says so, and only where every
    /// wall of it could still be built.
    /// </summary>
    public Result<string> Import(Stream file, string fileName, bool replace = false)
    {
        var read = SheetFile.ReadSystem(file, fileName);
        return read.TryGet(out var sheet) ? Set(sheet, replace) : Result<string>.Fail(read.Faults);
    }

    /// <summary>The same for a sheet that was typed.</summary>
    public Result<string> Set(SystemSheet sheet, bool replace = false)
    {
        var seen = yard.ChangeNumber;
        var there = yard.Systems().Any(known => Same(known.Name, sheet.Name));
        if (there && !replace) return WallFaults.SystemExists(sheet.Name);
        var broken = yard.Walls()
            .Where(wall => Same(wall.Sheet.System, sheet.Name))
            .SelectMany(wall => LaidWall.Of(wall.Sheet, sheet).Faults.Select(fault => WallFaults.SystemBreaksWall(wall.Sheet.Name, fault.Sentence)))
            .ToArray();
        if (broken.Length > 0) return Result<string>.Fail(broken);
        return yard.ChangeSince(seen, $"{(there ? "replaced" : "took in")} the system {sheet.Name}", work => work.SetSystem(sheet)).Then<string>(entry => entry.What);
    }

    /// <summary>Drops a sheet of which no wall is built.</summary>
    public Result<string> Drop(string name) =>
        yard.Change($"dropped the system {name.Trim()}", work => work.RemoveSystem(name.Trim())).Then<string>(entry => entry.What);

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
