using Offcuts.Core.Faults;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Store;

/// <content>Stages and what they need.</content>
public sealed partial class YardChange
{
    private List<StageRow>? _stages;

    private List<StageRow> Stages => _stages ??= [.. Database.Rows<StageRow>("stages")];

    /// <summary>Adds a stage at the end. Faults: those of <see cref="StageRules"/>, and a name that is there, in whatever case.</summary>
    public void AddStage(Stage stage)
    {
        var rules = StageRules.Check(stage);
        var faults = rules.Ok ? [] : rules.Faults.ToList();
        if (StageId(stage.Name) is not null) faults.Add(YardFaults.StageExists(stage.Name));
        if (Refused(faults)) return;

        var id = Database.Number("stage_add", ("name", stage.Name), ("begins_on", Values.DayOrNull(stage.Date)));
        _stages = null;
        WriteNeeds(id, rules.Value);
    }

    /// <summary>Sets day, cuts and hardware of the stage of that name.</summary>
    public void SetStage(Stage stage)
    {
        if (Existing(stage.Name) is not { } row) return;
        var rules = StageRules.Check(stage with { Name = row.Name });
        if (Refused(rules.Ok ? [] : rules.Faults)) return;

        Database.Run("stage_set", ("begins_on", Values.DayOrNull(stage.Date)), ("id", row.Id));
        RemoveNeeds(row.Id);
        WriteNeeds(row.Id, rules.Value);
    }

    /// <summary>Gives a stage another name. Reserved pieces, pieces that came off it, kept plans and the ledger follow.</summary>
    public void RenameStage(string name, string to)
    {
        if (Existing(name) is not { } row) return;
        var faults = StageRules.NameFaults(to);
        if (StageId(to) is { } other && other != row.Id) faults.Add(YardFaults.StageExists(to));
        if (Refused(faults)) return;

        Database.Run("stage_rename", ("name", to), ("id", row.Id));
        Database.Run("pieces_rename_stage", ("name", to), ("old", row.Name));
        Database.Run("ledger_rename_stage", ("name", to), ("old", row.Name));
        RenameStageInPlans(row.Name, to);
        _stages = null;
    }

    /// <summary>Puts a stage at a place in the order, 1 for the first.</summary>
    public void MoveStage(string name, int position)
    {
        if (Existing(name) is not { } row) return;
        if (position < 1 || position > Stages.Count)
        {
            _faults.Add(StoreFaults.StagePosition(Stages.Count));
            return;
        }

        var order = Stages.Where(stage => stage.Id != row.Id).ToList();
        order.Insert(position - 1, row);
        Order(order);
    }

    /// <summary>Removes a stage with its needs and walls. Pieces that were reserved for it become free.</summary>
    public void RemoveStage(string name)
    {
        if (Existing(name) is not { } row) return;
        Database.Run("stage_free_pieces", ("id", row.Id));
        RemoveNeeds(row.Id);
        foreach (var wall in WallRows.Where(wall => wall.StageId == row.Id)) ForgetFilling(wall);
        Database.Run("wall_sheets_remove", ("stage", row.Id));
        Database.Run("stage_remove", ("id", row.Id));
        Order([.. Stages.Where(stage => stage.Id != row.Id)]);
    }

    // What a wall entered among the needs of its stage, and what kept plans say of it, follows the wall to its new name.
    private void RenameNeeds(string stage, string wall, string name)
    {
        var (from, to) = (SheetNames.NeedPrefix(wall), SheetNames.NeedPrefix(name));
        string Now(string need) => need.StartsWith(from, StringComparison.OrdinalIgnoreCase) ? to + need[from.Length..] : need;
        if (_reader.Stages().Find(one => one.Name == stage) is { } known)
        {
            string[] needs = [.. known.Cuts.Select(cut => cut.Name), .. known.Hardware.Select(need => need.Name)];
            string[] own = [.. needs.Where(need => Now(need) != need)];
            if (own.Length > 0 && needs.Except(own).FirstOrDefault(need => need.StartsWith(to, StringComparison.OrdinalIgnoreCase)) is { } left)
            {
                _faults.Add(WallFaults.NeedsStillThere(name, stage, left));
                return;
            }

            if (own.Length > 0) SetStage(known with { Cuts = [.. known.Cuts.Select(cut => cut with { Name = Now(cut.Name) })], Hardware = [.. known.Hardware.Select(need => need with { Name = Now(need.Name) })] });
        }

        RenameNeedsInPlans(stage, Now);
    }

    private long? StageId(string name) => Find(name)?.Id;

    private StageRow? Find(string name) => Stages.Find(stage => string.Equals(stage.Name, name, StringComparison.OrdinalIgnoreCase));

    private StageRow? Existing(string name)
    {
        var row = Find(name);
        if (row is null) _faults.Add(YardFaults.NoSuchStage(name));
        return row;
    }

    private void Order(IReadOnlyList<StageRow> order)
    {
        for (var i = 0; i < order.Count; i++) Database.Run("stage_place", ("position", i + 1), ("id", order[i].Id));
        _stages = null;
    }

    private void RemoveNeeds(long stage)
    {
        Database.Run("required_cuts_remove", ("stage", stage));
        Database.Run("hardware_needs_remove", ("stage", stage));
    }

    private void WriteNeeds(long stage, Stage needs)
    {
        for (var i = 0; i < needs.Cuts.Count; i++)
        {
            var cut = needs.Cuts[i];
            Database.Run(
                "required_cut_add",
                ("stage", stage),
                ("position", i + 1),
                ("name", cut.Name),
                ("material", cut.Material.Name),
                ("shortest", cut.Shortest.Units),
                ("longest", cut.Longest.Units),
                ("count", cut.Count),
                ("use", Words.Use[cut.Use]),
                ("treated", Words.Treated[cut.Treated]),
                ("rip", cut.Rip));
        }

        for (var i = 0; i < needs.Hardware.Count; i++)
        {
            var need = needs.Hardware[i];
            Database.Run(
                "hardware_need_add",
                ("stage", stage),
                ("position", i + 1),
                ("name", need.Name),
                ("hardware", need.Hardware.Name),
                ("unit", need.Hardware.Unit),
                ("count", need.Count));
        }
    }
}
