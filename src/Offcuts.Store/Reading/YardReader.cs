using System.Collections.Immutable;
using System.Data;
using System.Text.Json;
using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Savings;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Store;

/// <summary>
/// Makes what the yard holds out of rows. What takes more than one query is read in one snapshot. Rows that nobody but a person
/// or a fault of the disk can have written make a damaged yard.
/// </summary>
internal sealed class YardReader(Database database, string path)
{
    private readonly Values _values = new();

    public List<Piece> Pieces(bool onHandOnly, CancellationToken stop = default, Action<int>? told = null) => Pieces(onHandOnly ? "pieces_on_hand" : "pieces_all", stop: stop, told: told);

    public Piece? Piece(Code code) => Sound(() => database.Row<PieceRow>("piece", new { code = code.Text }) is { } row ? Piece(row) : null);

    public List<Piece> CutFrom(Code code) => Pieces("pieces_of_parent", new { code = code.Text });

    public FamilyTree? Family(Code code) =>
        Pieces("piece_family", new { code = code.Text }) is { Count: > 0 } members ? FamilyTree.Of(members) : null;

    public List<(long Id, Bin Bin)> Bins() => Sound<List<(long, Bin)>>(() => [.. database.Rows<BinRow>("bins").Select(row => (row.Id, Bin(row)))]);

    public Bin? Bin(Code code) => Sound(() => database.Row<BinRow>("bin", new { code = code.Text }) is { } row ? Bin(row) : null);

    public List<Code> Codes(string query, object? parameters = null) => Sound<List<Code>>(() => [.. database.Rows<string>(query, parameters).Select(Values.Code)]);

    public List<Stage> Stages() => Snapshot<List<Stage>>(() =>
    {
        var cuts = database.Rows<CutRow>("required_cuts").ToLookup(row => row.Stage);
        var needs = database.Rows<NeedRow>("hardware_needs").ToLookup(row => row.Stage);
        return
        [
            .. database.Rows<StageRow>("stages").Select(row => new Stage(
                row.Name,
                Values.DayOrNull(row.BeginsOn),
                [.. cuts[row.Id].Select(cut => Cut(row.Name, cut))],
                [.. needs[row.Id].Select(need => new HardwareNeed(row.Name, need.Name, _values.Hardware(need.Hardware, need.Unit), need.Count))])),
        ];
    });

    public List<(long Id, StorePrice Price)> Prices() =>
        Sound<List<(long, StorePrice)>>(() => [.. database.Rows<PriceRow>("prices").Select(row => (row.Id, Price(row)))]);

    public List<Material> Materials() => Sound<List<Material>>(() =>
        [.. database.Rows<MaterialRow>("materials").Select(row => row.Counted ? _values.Hardware(row.Material, row.Unit) : _values.Material(row.Material))]);

    public PriceBook PriceBook() => Sound(() => new PriceBook(Prices().Select(known => known.Price)));

    public YardSettings Settings() => Snapshot(() =>
    {
        var row = database.Row<SettingRow>("setting") ?? throw new FormatException("the settings are gone");
        return new YardSettings
        {
            Unit = Words.Unit[row.Unit],
            CurrencySign = row.CurrencySign,
            TaxThousandthsOfPercent = row.TaxThousandthsOfPercent,
            KerfElsewhere = Length.FromUnits(row.Kerf320thsMm),
            KeepElsewhere = Length.FromUnits(row.Keep320thsMm),
            Species = Species(row),
            FoamDays = row.FoamDays,
            Covered = (JsonSerializer.Deserialize<string[]>(row.CoveredPlaces) ?? []).ToImmutableSortedSet(StringComparer.OrdinalIgnoreCase),
            Kerfs = database.Rows<KerfRow>("kerfs").ToImmutableSortedDictionary(kerf => Words.Family[kerf.Family], kerf => Length.FromUnits(kerf.Kerf320thsMm)),
            Keeps = database.Rows<KeepRow>("keeps")
                .ToImmutableSortedDictionary(keep => keep.Material, keep => Length.FromUnits(keep.Keep320thsMm), StringComparer.OrdinalIgnoreCase),
            KeepBacks = database.Rows<KeepBackRow>("keep_backs")
                .ToImmutableSortedDictionary(stays => stays.Material, stays => new KeepBack(Length.FromUnits(stays.Length320thsMm), stays.Count), StringComparer.OrdinalIgnoreCase),
            Rules = new UseRules(database.Rows<UseRuleRow>("use_rules")
                .Select(rule => new UseRule(Words.Use[rule.Use], Words.Condition[rule.WorstCondition], rule.NeedsStamp))),
        };
    });

    public List<KeptPlan> Plans() => Snapshot<List<KeptPlan>>(() =>
    {
        var steps = database.Rows<StepRow>("plan_steps").ToLookup(row => row.Plan);
        return [.. database.Rows<PlanRow>("plans").Select(row => Plan(row, steps[row.Id]))];
    });

    public KeptPlan? Plan(int id) => Snapshot(() =>
        database.Row<PlanRow>("plan", new { id }) is { } row ? Plan(row, database.Rows<StepRow>("plan_steps_of", new { plan = id })) : null);

    public List<LedgerLine> Ledger() => Sound<List<LedgerLine>>(() =>
    [
        .. database.Rows<LedgerRow>("ledger").Select(row => new LedgerLine
        {
            Day = Values.Day(row.Day),
            Stage = row.Stage,
            PlanId = row.Plan ?? 0,
            AllNew = new Money(row.AllNewCents),
            Spent = new Money(row.SpentCents),
            BoardFeet = new BoardFeet(Values.Decimal(row.BoardFeet)),
            PanelFace = new Area(Values.Decimal(row.PanelSquareMm)),
            Weight = new Weight(Values.Decimal(row.WeightPounds)),
            WoodWeight = new Weight(Values.Decimal(row.WoodWeightPounds)),
            PiecesUsed = row.PiecesUsed,
            HardwareUsed = row.HardwareUsed,
        }),
    ]);

    public List<Bed> Beds() => Sound<List<Bed>>(() =>
        [.. database.Rows<BedRow>("beds").Select(row => new Bed(row.Name, Length.FromUnits(row.Longest320thsMm), row.WeightThousandthsLb, row.VolumeThousandthsCuFt))]);

    public List<HandOver> HandOvers() => Snapshot<List<HandOver>>(() =>
    {
        var items = database.Rows<HandOverItemRow>("hand_over_items").ToLookup(row => row.HandOver);
        return
        [
            .. database.Rows<HandOverRow>("hand_overs").Select(row => new HandOver(
                (int)row.Id,
                row.Transfer,
                Values.Day(row.Day),
                new Terms(row.ToWhom, Words.Kind[row.Kind], row.PriceCents is { } cents ? new Money(cents) : null, Values.DayOrNull(row.DueOn), row.Due),
                new Money(row.WorthCents),
                row.WeightThousandthsLb,
                Values.DayOrNull(row.ConfirmedOn),
                [.. items[row.Id].Select(Read)])),
        ];
    });

    private static HandOverItem Read(HandOverItemRow item) => new(Values.Code(item.Code), item.Count, item.Back, item.Settled, item.SettledAs)
    {
        Worth = item.WorthCents is { } worth ? new Money(worth) : null,
        WeightThousandthsLb = item.WeightThousandthsLb,
    };

    public List<TakenIn> TakenIn(string query, object? parameters = null) => Sound<List<TakenIn>>(() =>
    [
        .. database.Rows<TakenInRow>(query, parameters).Select(row =>
            new TakenIn(row.Transfer, Values.Day(row.Day), new Terms(row.FromWhom, Words.Kind[row.Kind], null, Values.DayOrNull(row.DueOn), row.Due))),
    ]);

    public Brought? Brought(Code code) => Sound(() => database.Row<BroughtRow>("brought", new { code = code.Text }) is { } row
        ? new Brought(
            code,
            row.Transfer,
            Values.Code(row.Was),
            [.. (JsonSerializer.Deserialize<string[][]>(row.History) ?? []).Select(past => new PastEntry(Values.Moment(past[0]), past[1]))])
        {
            Earlier = [.. (JsonSerializer.Deserialize<string[][]>(row.Earlier) ?? []).Select(origin => new Origin(origin[0], Values.Code(origin[1])))],
        }
        : null);

    public List<Piece> PiecesFromElsewhere() => Pieces("pieces_from_elsewhere");

    public ILookup<Code, string> Arrivals() => Sound(() => database.Rows<ArrivalRow>("arrivals").ToLookup(row => Values.Code(row.Code), row => row.Transfer));

    public List<SystemSheet> Systems() => Sound<List<SystemSheet>>(() => [.. database.Rows<SheetRow>("system_sheets").Select(row => Read(SystemText.Read(row.Sheet), row.Name))]);

    public List<StageWall> Walls() =>
        Sound<List<StageWall>>(() => [.. database.Rows<WallRow>("wall_sheets").Select(row => new StageWall(row.Stage, Read(WallText.Read(row.Sheet), row.Name)))]);

    public List<KeptWallPlan> WallPlans() => Snapshot<List<KeptWallPlan>>(() =>
        [.. database.Rows<WallPlanRow>("wall_plans").Select(row => new KeptWallPlan(row.Wall, row.Plan, LayingText.Read(row.Laying, Plan(row.Plan)!.Plan)))]);

    public List<StackedCourse> StackedCourses() => Sound<List<StackedCourse>>(() =>
        [.. database.Rows<WallCourseRow>("wall_courses").Select(row => new StackedCourse(row.Wall, row.Run, row.Course, LayingText.ReadLengths(row.Joints320thsMm)) { Pieces = LayingText.ReadPieces(row.Pieces), OnlyCut = row.OnlyCut })]);

    public List<HistoryEntry> History(string query, object? parameters = null) =>
        Sound<List<HistoryEntry>>(() => [.. database.Rows<HistoryRow>(query, parameters).Select(Entry)]);

    public Dictionary<Code, DateTimeOffset> Entered(IEnumerable<Code> codes) => Sound(() =>
        database.Rows<EnteredRow>("codes_entered", new { codes = JsonSerializer.Serialize(codes.Select(code => code.Text)) })
            .ToDictionary(row => Values.Code(row.Code), row => Values.Moment(row.At)));

    public List<YardPlace> Places() => Sound<List<YardPlace>>(() =>
        [.. database.Rows<PlaceRow>("places").Select(row => new YardPlace(row.Name, Values.Code(row.Code), Values.DayOrNull(row.CountedOn)))]);

    public List<string> PlaceNames() => Sound<List<string>>(() => [.. database.Rows<string>("place_names")]);

    public List<Bundle> Bundles() => Snapshot<List<Bundle>>(() =>
    {
        var pieces = database.Rows<BundlePieceRow>("bundle_pieces").ToLookup(row => row.Bundle, row => Values.Code(row.Piece));
        return [.. database.Rows<BundleRow>("bundles").Select(row => new Bundle(Values.Code(row.Code), row.Name, row.Place, [.. pieces[row.Id]], Values.DayOrNull(row.OpenedOn)))];
    });

    public List<UnusedLabel> UnusedLabels() => Sound<List<UnusedLabel>>(() =>
        [.. database.Rows<EnteredRow>("blanks_printed").Select(row => new UnusedLabel(Values.Code(row.Code), Values.Moment(row.At)))]);

    public List<PrinterOffset> Printers() => Sound<List<PrinterOffset>>(() =>
        [.. database.Rows<PrinterRow>("printers").Select(row => new PrinterOffset(row.Name, row.Right320thsMm, row.Down320thsMm))]);

    private List<Piece> Pieces(string query, object? parameters = null, CancellationToken stop = default, Action<int>? told = null) => Sound(() =>
    {
        var pieces = new List<Piece>();
        foreach (var row in database.RowByRow<PieceRow>(query, parameters))
        {
            stop.ThrowIfCancellationRequested();
            pieces.Add(Piece(row));
            told?.Invoke(pieces.Count);
        }

        return pieces;
    });

    private Bin Bin(BinRow row) => new(Values.Code(row.Code), _values.Hardware(row.Hardware, row.Unit), row.Quantity, row.Place, row.Note);

    private Piece Piece(PieceRow row) => new()
    {
        Code = Values.Code(row.Code),
        Material = _values.Material(row.Material),
        Length = Length.FromUnits(row.Length320thsMm),
        Width = Length.FromUnits(row.Width320thsMm),
        Condition = Words.Condition[row.Condition],
        BadSpots = Values.Spans(row.BadSpots320thsMm),
        TrimLeft = Length.FromUnits(row.TrimLeft320thsMm),
        TrimRight = Length.FromUnits(row.TrimRight320thsMm),
        Treated = row.Treated,
        TreatedWith = row.TreatedWith,
        Stamped = row.Stamped,
        Nails = row.Nails,
        Concrete = row.Concrete,
        Oiled = row.Oiled,
        Place = row.Place,
        FromStage = row.FromStage,
        CutFrom = Values.Code(row.CutFrom),
        FirstLine = row.FirstLine320thsMm is { } line ? Length.FromUnits(line) : null,
        Note = row.Note,
        State = Words.State[row.State],
        ReservedFor = row.ReservedName ?? "",
    };

    private RequiredCut Cut(string stage, CutRow row) => new()
    {
        Stage = stage,
        Name = row.Name,
        Material = _values.Material(row.Material),
        Shortest = Length.FromUnits(row.Shortest320thsMm),
        Longest = Length.FromUnits(row.Longest320thsMm),
        Count = row.Count,
        Use = Words.Use[row.Use],
        Treated = Words.Treated[row.Treated],
        Rip = row.Rip,
    };

    private StorePrice Price(PriceRow row) => new()
    {
        Material = row.Counted ? _values.Hardware(row.Material, row.Unit) : _values.Material(row.Material),
        Length = Length.FromUnits(row.Length320thsMm),
        Treated = row.Treated,
        Price = new Money(row.Cents),
        LeadDays = row.LeadDays,
        Limit = row.MostAvailable,
        Supplier = row.Supplier,
        Date = Values.DayOrNull(row.SeenOn),
    };

    private static Species Species(SettingRow row)
    {
        var gravity = Values.Decimal(row.SpecificGravity);
        return Core.Materials.Species.Find(row.Species) is { } known && known.SpecificGravity == gravity ? known : new Species(row.Species, gravity);
    }

    private KeptPlan Plan(PlanRow row, IEnumerable<StepRow> steps) => new(
        row.Id,
        Values.Day(row.MadeOn),
        PlanText.ReadPlan(row.Document, _values),
        [.. steps.Select(step => new PlanStep(Words.Step[step.State], step.Actual is { } actual ? PlanText.ReadPiece(actual, _values) : null))],
        HardwareDone: row.Hardware == "done",
        HardwareDropped: row.Hardware == "dropped");

    // The file's own rule keeps it to 300 letters; one altered by hand may hold a book.
    private static HistoryEntry Entry(HistoryRow row) => new(row.Number, Values.Moment(row.At), row.What.Length > 300 ? row.What[..300] : row.What, row.Undoes ?? 0, row.Undone);

    private static T Read<T>(Result<T> sheet, string name) => sheet.Ok ? sheet.Value : throw new FormatException($"the sheet {name}: {sheet.Fault}");

    private T Snapshot<T>(Func<T> read) => Sound(() => database.Snapshot(read));

    private T Sound<T>(Func<T> read)
    {
        try
        {
            return read();
        }
        catch (Exception error) when (error is FormatException or ArgumentException or IndexOutOfRangeException or OverflowException or DataException or JsonException)
        {
            throw YardUnavailableException.Damaged(path, error.Message, error);
        }
    }
}
