using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Savings;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.Store.Interchange;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>A wall of the yard, laid out with its system.</summary>
/// <param name="Kept">The wall and its stage.</param>
/// <param name="Laid">The wall laid out.</param>
public sealed record LaidStageWall(StageWall Kept, LaidWall Laid);

/// <summary>What a wall has entered among the needs of its stage.</summary>
/// <param name="What">What was entered, in a sentence.</param>
/// <param name="InPlace">How many counted things of courses that stand are not asked for.</param>
/// <param name="NotEntered">What was not, and what fills it.</param>
public sealed record WallEntered(string What, int InPlace, string NotEntered)
{
    /// <summary>What was entered and what of courses that stand was not, short enough for a screen.</summary>
    public string InShort => What + (InPlace > 0 ? $"; {InPlace} counted things of courses that stand are not asked for, and bins that they came from still count them until told how many are left" : "");

    /// <summary>All of it.</summary>
    public override string ToString() => $"{InShort}; {NotEntered}";
}

/// <summary>Walls of stages: taken in, edited, found, dropped, and what they ask for entered among the needs of their stage.</summary>
public sealed class ChangeWalls(YardFile yard, LongWork? work = null)
{
    /// <summary>The wall of a name, in either case; or why there is none.</summary>
    public Result<StageWall> Find(string name) =>
        yard.Walls().FirstOrDefault(wall => Same(wall.Sheet.Name, name.Trim())) is { } found ? found : WallFaults.NoSuchWall(name, yard.Walls().Select(wall => wall.Sheet.Name));

    /// <summary>A wall laid out with its system.</summary>
    public Result<LaidWall> Lay(WallSheet sheet) => new ChangeSystems(yard).Find(sheet.System).Then(system => LaidWall.Of(sheet, system, yard.Settings().Unit));

    /// <summary>The wall of a name, in either case, laid out with its system; or why there is none, or why it can't be built.</summary>
    public Result<LaidStageWall> Laid(string name) => Find(name).Then(kept => Lay(kept.Sheet).Then<LaidStageWall>(laid => new LaidStageWall(kept, laid)));

    /// <summary>
    /// Takes a wall in from a file, for a stage, where it can be built; one of that name is replaced only where
    /// <paramref name="replace"/> says so.
    /// </summary>
    /// <param name="stage">Name of the stage.</param>
    /// <param name="file">The sheet.</param>
    /// <param name="fileName">How the file is called in faults.</param>
    /// <param name="replace">True where one of that name may be replaced.</param>
    /// <param name="giveUp">False where that is refused while it would give up how the wall is filled, as it is kept.</param>
    public Result<string> Import(string stage, Stream file, string fileName, bool replace = false, bool giveUp = true) => Take(stage, file, fileName, replace, giveUp).Then<string>(taken => taken.Told);

    /// <summary>The same with what there is to look at where it is laid out as its sheet says, a sentence each.</summary>
    public Result<(string Told, IReadOnlyList<string> ToLookAt)> Take(string stage, Stream file, string fileName, bool replace = false, bool giveUp = true)
    {
        var read = SheetFile.ReadWall(file, fileName);
        if (!read.TryGet(out var placed)) return Result<(string, IReadOnlyList<string>)>.Fail(read.Faults);
        var set = Set(stage, placed.Sheet, replace, giveUp);
        return set.TryGet(out var told) ? (told, Lay(placed.Sheet).Value.ToLookAt) : Result<(string, IReadOnlyList<string>)>.Fail(set.Faults.All(fault => fault.About.Length == 0) ? set.Faults : placed.Place(set.Faults, fileName));
    }

    /// <summary>The same for a sheet that was typed. The invented system that ships comes into the yard with the first wall of it.</summary>
    public Result<string> Set(string stage, WallSheet sheet, bool replace = false, bool giveUp = true)
    {
        var seen = yard.ChangeNumber;
        if (yard.Stages().Named(stage) is not { } known) return YardFaults.NoSuchStage(stage);
        var before = yard.Walls().FirstOrDefault(wall => Same(wall.Sheet.Name, sheet.Name));
        var there = before is not null;
        if (there && !replace) return WallFaults.WallExists(sheet.Name);
        var laid = Lay(sheet);
        if (!laid.TryGet(out var wall)) return Result<string>.Fail(laid.Faults);
        KeptWallPlan[] lost = before is not null && (!WallText.SameButName(before.Sheet, sheet) || before.Stage != known.Name) ? [.. ChangeSystems.Kept(yard, sheet.Name)] : [];
        if (lost.Length > 0 && !giveUp) return WallFaults.GivesUpFilling(lost[0].Wall, lost[0].PlanId);
        var otherwise = before is null ? "" : new StandsOtherwise(yard).Told(before, wall) + ChangeSystems.GivenUp(lost);
        var begun = new BegunAndGivenUp(yard, before is not null && new StandsOtherwise(yard).GivesUp(before, wall, moved: before.Stage != known.Name) ? [before] : []);
        var takenBack = TakenBack(begun);
        return yard.ChangeSince(seen, $"{(there ? "replaced" : "took in")} the wall {sheet.Name} of {known.Name}", change =>
        {
            AddSystem(change, wall);
            change.SetWall(new StageWall(known.Name, sheet));
            begun.ComeBack(change, takenBack);
        }).Then<string>(entry => entry.What + otherwise + begun.Told);
    }

    /// <summary>
    /// Saves a sheet that was typed over the one that was opened, where the wall can be built; its name may be another now, and takes what is kept of the
    /// wall along. A new one joins the stage. Refused where somebody else has changed the sheet since it was opened. Faults stand at their lines.
    /// </summary>
    /// <param name="stage">Name of the stage of a new wall; the other stays in its own.</param>
    /// <param name="edit">What was typed.</param>
    public Result<string> Save(string stage, SheetEdit edit)
    {
        var seen = yard.ChangeNumber;
        var read = WallText.ReadPlaced(edit.Text);
        if (!read.TryGet(out var placed)) return Result<string>.Fail(read.Faults);
        var sheet = placed.Sheet;
        StageWall? before = null;
        if (edit.Of is { } of)
        {
            before = yard.Walls().FirstOrDefault(wall => Same(wall.Sheet.Name, of));
            if (before is null || WallText.Write(before.Sheet) != edit.Opened) return WallFaults.SheetChangedMeanwhile("wall", of);
        }
        else if (yard.Stages().Named(stage) is null) return YardFaults.NoSuchStage(stage);

        var laid = Lay(sheet);
        if (!laid.TryGet(out var wall)) return Result<string>.Fail(placed.Place(laid.Faults, ""));
        var into = before?.Stage ?? yard.Stages().Named(stage)!.Name;
        var told = before is null ? $"took in the wall {sheet.Name} of {into}"
            : before.Sheet.Name == sheet.Name ? $"edited the wall {sheet.Name} of {into}"
            : $"edited the wall {before.Sheet.Name} of {into}, which is named {sheet.Name} now";
        if (before is null && yard.Walls().Any(other => Same(other.Sheet.Name, sheet.Name))) return placed.Place(WallFaults.NameTaken("wall", sheet.Name) with { About = "wall" }, "");
        var otherwise = before is null ? "" : new StandsOtherwise(yard).Told(before, wall);
        var begun = new BegunAndGivenUp(yard, before is not null && new StandsOtherwise(yard).GivesUp(before, wall) ? [before] : []);
        var takenBack = TakenBack(begun);
        return yard.ChangeSince(seen, told, change =>
        {
            AddSystem(change, wall);
            change.SetWall(new StageWall(into, sheet), before?.Sheet.Name);
            begun.ComeBack(change, takenBack);
        }).Then<string>(entry => entry.What + otherwise + begun.Told);
    }

    /// <summary>Builds a wall in another stage. How it was to be filled is given up; what it put among the needs of its stage stays there.</summary>
    public Result<string> Move(string name, string stage)
    {
        var seen = yard.ChangeNumber;
        if (yard.Stages().Named(stage) is not { } known) return YardFaults.NoSuchStage(stage);
        StageWall[] moves = Find(name).TryGet(out var moved) && !Same(moved.Stage, known.Name) ? [moved] : [];
        var again = string.Concat(moves.Where(wall => new FillWall(yard).KeptOf(wall) is not null).Select(BegunAndGivenUp.Again));
        var begun = new BegunAndGivenUp(yard, moves);
        var takenBack = TakenBack(begun);
        return Find(name)
            .Then(kept => yard.ChangeSince(seen, $"moved the wall {kept.Sheet.Name} from {kept.Stage} to {known.Name}", change =>
            {
                change.SetWall(kept with { Stage = known.Name });
                begun.ComeBack(change, takenBack);
            }))
            .Then<string>(entry => entry.What + begun.Told + again);
    }

    /// <summary>Drops a wall. What it put among the needs of its stage stays there until it is dropped too.</summary>
    public Result<string> Drop(string name)
    {
        var forgotten = Find(name).TryGet(out var kept) ? new StandsOtherwise(yard).Forgotten(kept) : "";
        var begun = new BegunAndGivenUp(yard, kept is null ? [] : [kept]);
        var takenBack = TakenBack(begun);
        return yard.Change($"dropped the wall {name.Trim()}", change =>
        {
            change.RemoveWall(name.Trim());
            begun.ComeBack(change, takenBack);
        }).Then<string>(entry => entry.What + forgotten + begun.Told);
    }

    /// <summary>
    /// Enters what a wall is cut and counted among the needs of its stage, in the place of what it entered before: bucks, steel, braces,
    /// footing and hardware. Runs of panels and boards are not among them: several pieces fill one. A material whose name is new is
    /// refused unless <paramref name="newNames"/> says that it is meant.
    /// </summary>
    public Result<WallEntered> Enter(string name, bool newNames = false) => Enter(name, _ => newNames);

    /// <summary>The same where only these new names are meant.</summary>
    public Result<WallEntered> Enter(string name, Func<NewName, bool> meant)
    {
        var seen = yard.ChangeNumber;
        var found = Laid(name);
        if (!found.TryGet(out var there)) return Result<WallEntered>.Fail(found.Faults);
        var wall = there.Kept;
        var taken = new TakeOffWall(yard).Of(wall.Sheet.Name).Value;
        var stage = yard.Stages().Named(wall.Stage)!;
        var hardware = taken.Needs;
        RequiredCut[] cuts = [.. taken.Takeoff.Cuts.Select(cut => cut.Cut)];
        NewName[] strange = [.. NewNames(taken).Where(one => !meant(one))];
        if (strange.Length > 0) return Result<WallEntered>.Fail([.. strange.Select(CommandFaults.NameIsNew)]);

        bool Other(string need) => !need.StartsWith(Takeoff.NeedPrefix(wall.Sheet.Name), StringComparison.OrdinalIgnoreCase);
        var entered = stage with
        {
            Cuts = [.. stage.Cuts.Where(cut => Other(cut.Name)), .. cuts],
            Hardware = [.. stage.Hardware.Where(need => Other(need.Name)), .. hardware],
        };
        return yard.ChangeSince(seen, $"entered what the wall {wall.Sheet.Name} asks for among the needs of {stage.Name}: {Words.Count(cuts.Length, "cut")} and {Words.Count(hardware.Count, "kind")} of hardware", change => change.SetStage(entered))
            .Then<WallEntered>(entry => new WallEntered(entry.What, taken.InPlace, NotEntered(there.Laid)));
    }

    /// <summary>Names of materials that the yard does not have yet among what the wall of a name would enter.</summary>
    public Result<IReadOnlyList<NewName>> NewNames(string name) => new TakeOffWall(yard).Of(name).Then(taken => Result<IReadOnlyList<NewName>>.Of(NewNames(taken)));

    private IReadOnlyList<NewName> NewNames(WallTakenOff taken) =>
        yard.Names(ofSystems: false).NewAmong([.. taken.Takeoff.Cuts.Select(cut => cut.Cut.Material), .. taken.Needs.Select(need => (Material)need.Hardware)]);

    private static string NotEntered(LaidWall wall)
    {
        var laid = wall.Runs.Concat(wall.FootingRuns).GroupBy(run => run.Material).Select(runs => $"{runs.Key} ({Words.Count(runs.Count(), "run")})");
        return $"not entered, since several pieces fill a run: {string.Join(", ", laid)}; fill those with: offcuts wall fill {ShellWord.Of(wall.Sheet.Name)}";
    }

    private IReadOnlyList<LedgerLine> TakenBack(BegunAndGivenUp begun) => begun.TakenBack(work ?? LongWork.Unheard);

    // The invented system that ships comes into the yard with the first wall of it.
    private void AddSystem(YardChange change, LaidWall wall)
    {
        if (yard.Systems().All(system => !Same(system.Name, wall.System.Name))) change.SetSystem(wall.System);
    }

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
