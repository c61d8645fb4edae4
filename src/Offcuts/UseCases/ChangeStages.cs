using Offcuts.Core.Faults;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.Store.Interchange;

namespace Offcuts.UseCases;

/// <summary>Every change of the stages and their needs. Each is one change of the yard and tells in a line what it did.</summary>
public sealed class ChangeStages(YardFile yard)
{
    // How the yard stood before anything was read for the change at hand.
    private long _seen;

    /// <summary>Adds an empty stage at the end.</summary>
    public Result<string> Add(string name, DateOnly? date)
    {
        if (name.Length == 0) return YardFaults.StageWithoutName();
        if (Find(name) is not null) return YardFaults.StageExists(name);
        return Change($"added stage {name}", work => work.AddStage(new Stage(name, date, [], [])));
    }

    /// <summary>How lines of needs are understood, for a person to see; lines that can't be read are left out.</summary>
    public IEnumerable<string> Understood(string stage, IEnumerable<string> lines)
    {
        var unit = yard.Settings().Unit;
        return lines.Select(line => CutLine.Read(line, stage, unit)).Where(read => read.Ok).Select(read => read.Value.ReadBack(unit));
    }

    /// <summary>
    /// Adds needs, one a line, all or none. A need of a name that is there already is refused, and so is a material whose name is
    /// new, unless <paramref name="newNames"/> says that it is meant, and a bare number that was more likely meant in feet, unless
    /// <paramref name="oddSizes"/> does.
    /// </summary>
    public Result<string> AddNeeds(string name, IReadOnlyList<string> lines, bool newNames = false, bool oddSizes = false)
    {
        if (Find(name) is not { } stage) return yard.Stages().NoneNamed(name);
        if (lines.Count == 0) return YardFaults.NoNeedGiven(yard.Settings().Unit);
        var settings = yard.Settings();
        var faults = new List<Fault>();
        var cuts = stage.Cuts.ToList();
        var hardware = stage.Hardware.ToList();
        var known = newNames ? null : yard.Names();
        for (var i = 0; i < lines.Count; i++)
        {
            var read = CutLine.Read(lines[i], stage.Name, settings.Unit);
            if (!read.TryGet(out var draft))
            {
                faults.AddRange(read.Faults.Select(InLine));
                continue;
            }

            if (known is not null) faults.AddRange(known.NewAmong([draft.Material]).Select(CommandFaults.NameIsNew).Select(InLine));
            if (!oddSizes && OddSize.Of(draft, settings) is { } odd) faults.Add(InLine(CommandFaults.SizeIsOdd(odd)));
            Fault InLine(Fault fault) => lines.Count > 1 ? fault with { Line = i + 1, File = "line" } : fault;

            var taken = draft.Cut?.Name ?? draft.Hardware!.Name;
            if (cuts.Any(cut => cut.Name == taken) || hardware.Any(need => need.Name == taken)) faults.Add(YardFaults.NeedExists(taken, stage.Name));
            else if (draft.Cut is { } cut) cuts.Add(cut);
            else hardware.Add(draft.Hardware!);
        }

        if (faults.Count > 0) return Result<string>.Fail(faults);
        return Change($"added {Words.Count(lines.Count, "need")} to {stage.Name}", work => work.SetStage(stage with { Cuts = cuts, Hardware = hardware }));
    }

    /// <summary>
    /// Puts another need in the place of one, as a line says it. The name may change, but not to that of another need. Names that are new and lengths
    /// that look like a slip are taken as they stand: who corrects has seen them.
    /// </summary>
    public Result<string> ReplaceNeed(string name, string need, string line)
    {
        if (Find(name) is not { } stage) return yard.Stages().NoneNamed(name);
        var (cuts, hardware) = (stage.Cuts.ToList(), stage.Hardware.ToList());
        var (cutAt, countedAt) = (cuts.FindIndex(cut => cut.Name == need), hardware.FindIndex(one => one.Name == need));
        if (cutAt < 0 && countedAt < 0) return YardFaults.NoSuchNeed(need, stage.Name);
        var read = CutLine.Read(line, stage.Name, yard.Settings().Unit);
        if (!read.TryGet(out var draft)) return Result<string>.Fail(read.Faults);
        var taken = draft.Cut?.Name ?? draft.Hardware!.Name;
        if (taken != need && (cuts.Any(cut => cut.Name == taken) || hardware.Any(one => one.Name == taken))) return YardFaults.NeedExists(taken, stage.Name);
        if (draft.Cut is { } said) Put(cuts, cutAt, said);
        else if (cutAt >= 0) cuts.RemoveAt(cutAt);
        // A line does not say by what unit a thing is counted: that stays.
        if (draft.Hardware is { } counted) Put(hardware, countedAt, countedAt >= 0 && hardware[countedAt].Hardware.Name == counted.Hardware.Name ? counted with { Hardware = hardware[countedAt].Hardware } : counted);
        else if (countedAt >= 0) hardware.RemoveAt(countedAt);
        return Change($"corrected {need} of {stage.Name}", work => work.SetStage(stage with { Cuts = cuts, Hardware = hardware }));

        static void Put<T>(List<T> list, int at, T one)
        {
            if (at < 0) list.Add(one);
            else list[at] = one;
        }
    }

    /// <summary>Takes one need off a stage.</summary>
    public Result<string> DropNeed(string name, string need)
    {
        if (Find(name) is not { } stage) return yard.Stages().NoneNamed(name);
        var left = stage with
        {
            Cuts = [.. stage.Cuts.Where(cut => cut.Name != need)],
            Hardware = [.. stage.Hardware.Where(one => one.Name != need)],
        };
        if (left.Cuts.Count == stage.Cuts.Count && left.Hardware.Count == stage.Hardware.Count) return YardFaults.NoSuchNeed(need, stage.Name);
        return Change($"took {need} off {stage.Name}", work => work.SetStage(left));
    }

    /// <summary>Sets or clears the day it begins.</summary>
    public Result<string> SetDate(string name, DateOnly? date) =>
        Find(name) is { } stage
            ? Change($"set the day of {stage.Name}", work => work.SetStage(stage with { Date = date }))
            : yard.Stages().NoneNamed(name);

    /// <summary>Puts a stage at a place in the order, 1 for the first.</summary>
    public Result<string> Move(string name, int position)
    {
        if (Find(name) is not { } stage) return yard.Stages().NoneNamed(name);
        var to = Math.Clamp(position, 1, yard.Stages().Count);
        return Change($"moved {stage.Name} to place {to}", work => work.MoveStage(stage.Name, to));
    }

    /// <summary>Gives a stage another name; pieces reserved for it follow.</summary>
    public Result<string> Rename(string name, string to)
    {
        if (Find(name) is not { } stage) return yard.Stages().NoneNamed(name);
        if (to.Length == 0) return YardFaults.StageWithoutName();
        if (Find(to) is { } other && other.Name != stage.Name) return YardFaults.StageExists(to);
        return Change($"renamed {stage.Name} to {to}", work => work.RenameStage(stage.Name, to));
    }

    /// <summary>Removes a stage; pieces reserved for it become free, and what waits in its open plans is given up, which is told with what other stages lose by it.</summary>
    public Result<string> Remove(string name)
    {
        if (Find(name) is not { } stage) return yard.Stages().NoneNamed(name);
        var open = WithStage(yard.Plans(), stage.Name);
        string[] lost = [.. PlanKept.Told(open, yard.Stages().Where(other => other.Name != stage.Name), yard.Settings().Unit)];
        return Change($"removed stage {stage.Name}", work =>
        {
            // Else its open plans would go on holding their pieces for nobody.
            foreach (var plan in open) work.DropRest(plan);
            work.RemoveStage(stage.Name);
        }).Then<string>(told => told + string.Concat(lost.Select(one => $"; {one}")));
    }

    /// <summary>The plans that wait with something for a stage, and are given up with it.</summary>
    public static KeptPlan[] WithStage(IEnumerable<KeptPlan> plans, string stage) => [.. plans.Where(plan => plan.Open && plan.Plan.Stages.Contains(stage))];

    /// <summary>Adds stages from a cuts file, as above; a name that is new is refused in its row unless it is meant.</summary>
    public Result<string> Import(Stream file, string fileName, bool newNames) =>
        CutsFile.Read(file, fileName, known: newNames ? null : yard.Names()).Then(stages => stages.Count == 0 ? FileFaults.NoRows().At(fileName, 1) : Import(stages));

    /// <summary>Adds stages from a file, all or none. A stage that is there already gets the new needs added.</summary>
    public Result<string> Import(IReadOnlyList<Stage> stages)
    {
        _seen = yard.ChangeNumber;
        var faults = new List<Fault>();
        foreach (var stage in stages)
        {
            if (Find(stage.Name) is not { } old) continue;
            var names = old.Cuts.Select(cut => cut.Name).Concat(old.Hardware.Select(need => need.Name)).ToHashSet();
            faults.AddRange(stage.Cuts.Select(cut => cut.Name).Concat(stage.Hardware.Select(need => need.Name)).Where(names.Contains).Select(name => YardFaults.NeedExists(name, stage.Name)));
        }

        if (faults.Count > 0) return Result<string>.Fail(faults);
        var count = stages.Sum(stage => stage.Cuts.Count + stage.Hardware.Count);
        return Change($"imported {Words.Count(count, "need")} of {Words.Count(stages.Count, "stage")}", work =>
        {
            foreach (var stage in stages)
            {
                if (Find(stage.Name) is { } old)
                    work.SetStage(old with { Date = stage.Date ?? old.Date, Cuts = [.. old.Cuts, .. stage.Cuts], Hardware = [.. old.Hardware, .. stage.Hardware] });
                else work.AddStage(stage);
            }
        });
    }

    // Every change begins by finding its stage.
    private Stage? Find(string name)
    {
        _seen = yard.ChangeNumber;
        return yard.Stages().Named(name);
    }

    private Result<string> Change(string what, Action<YardChange> work) =>
        yard.ChangeSince(_seen, what, work).Then<string>(entry => entry.What);
}
