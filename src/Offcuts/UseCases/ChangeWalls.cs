using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.Store.Interchange;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>Walls of stages: taken in, found, dropped, and what they ask for entered among the needs of their stage.</summary>
public sealed class ChangeWalls(YardFile yard)
{
    /// <summary>The wall of a name, in either case; or why there is none.</summary>
    public Result<StageWall> Find(string name) =>
        yard.Walls().FirstOrDefault(wall => Same(wall.Sheet.Name, name.Trim())) is { } found ? found : WallFaults.NoSuchWall(name);

    /// <summary>A wall laid out with its system.</summary>
    public Result<LaidWall> Lay(WallSheet sheet) => new ChangeSystems(yard).Find(sheet.System).Then(system => LaidWall.Of(sheet, system));

    /// <summary>
    /// Takes a wall in from a file, for a stage, where it can be built; one of that name is replaced only where
    /// <paramref name="replace"/> says so.
    /// </summary>
    public Result<string> Import(string stage, Stream file, string fileName, bool replace = false)
    {
        var read = SheetFile.ReadWall(file, fileName);
        if (!read.TryGet(out var placed)) return Result<string>.Fail(read.Faults);
        var set = Set(stage, placed.Sheet, replace);
        return set.Ok ? set : Result<string>.Fail([.. set.Faults.Select(fault => fault.About.Length > 0 ? placed.Place(fault, fileName) : fault)]);
    }

    /// <summary>The same for a sheet that was typed. The invented system that ships comes into the yard with the first wall of it.</summary>
    public Result<string> Set(string stage, WallSheet sheet, bool replace = false)
    {
        var seen = yard.ChangeNumber;
        if (yard.Stages().Named(stage) is not { } known) return YardFaults.NoSuchStage(stage);
        var there = yard.Walls().Any(wall => Same(wall.Sheet.Name, sheet.Name));
        if (there && !replace) return WallFaults.WallExists(sheet.Name);
        var laid = Lay(sheet);
        if (!laid.TryGet(out var wall)) return Result<string>.Fail(laid.Faults);
        return yard.ChangeSince(seen, $"{(there ? "replaced" : "took in")} the wall {sheet.Name} of {known.Name}", work =>
        {
            if (yard.Systems().All(system => !Same(system.Name, sheet.System))) work.SetSystem(wall.System);
            work.SetWall(new StageWall(known.Name, sheet));
        }).Then<string>(entry => entry.What);
    }

    /// <summary>Drops a wall. What it put among the needs of its stage stays there until it is dropped too.</summary>
    public Result<string> Drop(string name) =>
        yard.Change($"dropped the wall {name.Trim()}", work => work.RemoveWall(name.Trim())).Then<string>(entry => entry.What);

    /// <summary>
    /// Enters what a wall is cut and counted among the needs of its stage, in the place of what it entered before: bucks, steel, braces,
    /// footing and hardware. Runs of panels and boards are not among them: several pieces fill one. A material whose name is new is
    /// refused unless <paramref name="newNames"/> says that it is meant.
    /// </summary>
    public Result<string> Enter(string name, bool newNames = false)
    {
        var seen = yard.ChangeNumber;
        var found = Find(name);
        if (!found.TryGet(out var wall)) return Result<string>.Fail(found.Faults);
        var laid = Lay(wall.Sheet);
        if (!laid.TryGet(out var standing)) return Result<string>.Fail(laid.Faults);
        var takeoff = Takeoff.Of(standing, wall.Stage);
        var stage = yard.Stages().Named(wall.Stage)!;
        var hardware = takeoff.HardwareNeeds(stage.Name);
        RequiredCut[] cuts = [.. takeoff.Cuts.Select(cut => cut.Cut)];
        if (!newNames)
        {
            var strange = yard.Names().NewAmong([.. cuts.Select(cut => cut.Material), .. hardware.Select(need => (Material)need.Hardware)]);
            if (strange.Count > 0) return Result<string>.Fail([.. strange.Select(CommandFaults.NameIsNew)]);
        }

        bool Other(string need) => !need.StartsWith(Takeoff.NeedPrefix(wall.Sheet.Name), StringComparison.OrdinalIgnoreCase);
        var entered = stage with
        {
            Cuts = [.. stage.Cuts.Where(cut => Other(cut.Name)), .. cuts],
            Hardware = [.. stage.Hardware.Where(need => Other(need.Name)), .. hardware],
        };
        return yard.ChangeSince(seen, $"entered what the wall {wall.Sheet.Name} asks for among the needs of {stage.Name}: {Words.Count(cuts.Length, "cut")} and {Words.Count(hardware.Count, "kind")} of hardware", work => work.SetStage(entered))
            .Then<string>(entry => entry.What);
    }

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
