using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Interchange;

/// <summary>Makes stages of the rows of a cuts file.</summary>
internal sealed class CutsReader(NameCheck names)
{
    private const int MostOfOne = 100_000;

    private readonly List<StageRows> _stages = [];
    private readonly Dictionary<string, StageRows> _byName = new(StringComparer.Ordinal);

    /// <summary>Everything taken so far.</summary>
    public IReadOnlyList<Stage> ToStages() =>
        [.. _stages.Select(rows => new Stage(rows.Name, rows.Date, rows.Cuts, rows.Hardware))];

    /// <summary>Takes one row: hardware where it has no length, else a cut.</summary>
    public void Take(CsvRow row)
    {
        var (stage, name) = (row.NeededName("stage"), row.NeededName("cut"));
        var counted = row.Empty("length");
        var material = row.Material("material", counted, "each", names);
        if (row.Empty("qty")) row.Refuse("qty", FileFaults.CellEmpty());
        var count = row.Whole("qty", 1, MostOfOne) ?? 0;
        var use = row.OneOf("use", CellWords.Use, YardFaults.UseUnknown, Use.Nonstructural);
        var treated = row.OneOf("treated", CellWords.Treated, YardFaults.TreatedUnknown);
        var rip = row.YesNo("rip");
        var rows = Rows(row, stage);
        if (name.Length > 0 && !rows.Lines.TryAdd(name, row.Line)) row.Refuse("cut", FileFaults.NeedTwice(name, stage, rows.Lines[name]));
        if (material is Sheet) row.Refuse("material", YardFaults.SheetNotMatched());
        else if (counted && material is Hardware or null) TakeHardware(row, rows, new HardwareNeed(stage, name, (material as Hardware)!, count), treated, rip);
        else TakeCut(row, rows, new RequiredCut
        {
            Stage = stage,
            Name = name,
            Material = material!,
            Shortest = default,
            Longest = default,
            Count = count,
            Use = use,
            Treated = treated,
            Rip = rip,
        });
    }

    private static void TakeHardware(CsvRow row, StageRows rows, HardwareNeed need, TreatedWish treated, bool rip)
    {
        if (!row.Empty("longest")) row.Refuse("longest", YardFaults.CutLengthForHardware());
        if (treated != TreatedWish.Any) row.Refuse("treated", FileFaults.TreatedHardware());
        if (rip) row.Refuse("rip", YardFaults.NeverRipped(need.Hardware?.Name ?? "hardware"));
        if (row.Good) rows.Hardware.Add(need);
    }

    private static void TakeCut(CsvRow row, StageRows rows, RequiredCut cut)
    {
        var shortest = row.NeededLength("length");
        var longest = row.Empty("longest") ? shortest : row.NeededLength("longest");
        if (cut.Rip && cut.Material is { } material && Ripping.Width(material) is null) row.Refuse("rip", YardFaults.NeverRipped(material.Name));
        if (!row.Good) return;
        if (longest < shortest) row.Refuse("longest", YardFaults.CutRangeBackwards());
        else rows.Cuts.Add(cut with { Shortest = shortest, Longest = longest });
    }

    // The stage's rows so far. The date may stand in any of them, but not two dates.
    private StageRows Rows(CsvRow row, string name)
    {
        if (!_byName.TryGetValue(name, out var rows))
        {
            rows = new StageRows(name);
            _byName.Add(name, rows);
            _stages.Add(rows);
        }

        if (row.Day("date") is not { } date) return rows;
        if (rows.Date is null) (rows.Date, rows.DateLine) = (date, row.Line);
        else if (rows.Date != date) row.Refuse("date", FileFaults.StageHasOtherDate(rows.DateLine));
        return rows;
    }

    private sealed class StageRows(string name)
    {
        public string Name => name;

        public DateOnly? Date { get; set; }

        public int DateLine { get; set; }

        // The line of each need by its name, which stands once in a stage: everything that is said of a need names it.
        public Dictionary<string, int> Lines { get; } = new(StringComparer.Ordinal);

        public List<RequiredCut> Cuts { get; } = [];

        public List<HardwareNeed> Hardware { get; } = [];
    }
}
