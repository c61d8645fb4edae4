using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Savings;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Store;

/// <content>Everything that is read, as it stands at that moment.</content>
public sealed partial class YardFile
{
    /// <summary>Pieces in the yard's own order, the order of entry.</summary>
    /// <param name="onHandOnly">False for those too that are used, gone or missing.</param>
    /// <param name="stop">Ends the reading of a large yard; <see cref="OperationCanceledException"/> is thrown then.</param>
    /// <param name="told">Hears how many were read, after each.</param>
    public IReadOnlyList<Piece> Pieces(bool onHandOnly = true, CancellationToken stop = default, Action<int>? told = null) => Guard(() => _reader.Pieces(onHandOnly, stop, told));

    /// <summary>The piece of a code, whatever its state, or null.</summary>
    public Piece? Piece(Code code) => Guard(() => _reader.Piece(code));

    /// <summary>The bin of a code, or null.</summary>
    public Bin? Bin(Code code) => Guard(() => _reader.Bin(code));

    /// <summary>Every bin, in the order of entry.</summary>
    public IReadOnlyList<Bin> Bins() => Guard<IReadOnlyList<Bin>>(() => [.. _reader.Bins().Select(known => known.Bin)]);

    /// <summary>Every stage with its needs, in the order of the work.</summary>
    public IReadOnlyList<Stage> Stages() => Guard(() => _reader.Stages());

    /// <summary>Every system sheet, in the order of entry.</summary>
    public IReadOnlyList<SystemSheet> Systems() => Guard(() => _reader.Systems());

    /// <summary>Every wall, in the order of the work.</summary>
    public IReadOnlyList<StageWall> Walls() => Guard(() => _reader.Walls());

    /// <summary>How walls are filled, as it is kept, in the order of the work; a wall has one such plan at most.</summary>
    public IReadOnlyList<KeptWallPlan> WallPlans() => Guard(() => _reader.WallPlans());

    /// <summary>Courses of walls that stand, wall by wall and from the bottom up.</summary>
    public IReadOnlyList<StackedCourse> StackedCourses() => Guard(() => _reader.StackedCourses());

    /// <summary>Every name of a material that a piece, gone or not, a bin, a price or a stage has, and what the sheets of systems count out.</summary>
    /// <param name="ofSystems">False to leave those sheets out, where it is a sheet's own names that are looked at.</param>
    public KnownNames Names(bool ofSystems = true) =>
        Guard(() => new KnownNames(ofSystems ? [.. _reader.Materials(), .. _reader.Systems().SelectMany(system => system.Counted)] : _reader.Materials()));

    /// <summary>Everything that can be bought.</summary>
    public PriceBook Prices() => Guard(() => _reader.PriceBook());

    /// <summary>What the user has set.</summary>
    public YardSettings Settings() => Guard(() => _reader.Settings());

    /// <summary>Codes that were printed before their piece exists and that nothing has taken yet, in the order of issue.</summary>
    public IReadOnlyList<Code> BlankCodes() => Guard(() => _reader.Codes("blanks"));

    /// <summary>Codes whose label waits to be printed, in the order in which they queued.</summary>
    public IReadOnlyList<Code> LabelQueue() => Guard(() => _reader.Codes("label_queue"));

    /// <summary>The same with the moment when each was printed.</summary>
    public IReadOnlyList<UnusedLabel> UnusedLabels() => Guard(() => _reader.UnusedLabels());

    /// <summary>Labels that are void: no code of theirs is ever taken.</summary>
    public IReadOnlyList<Code> VoidCodes() => Guard(() => _reader.Codes("void_codes"));

    /// <summary>Places that have a label or were counted, in the order of entry. Pieces may name others.</summary>
    public IReadOnlyList<YardPlace> Places() => Guard(() => _reader.Places());

    /// <summary>Names of every place that has a label, was counted, or has something lying there.</summary>
    public IReadOnlyList<string> PlaceNames() => Guard(() => _reader.PlaceNames());

    /// <summary>Every bundle, opened or not, in the order of entry.</summary>
    public IReadOnlyList<Bundle> Bundles() => Guard(() => _reader.Bundles());

    /// <summary>What every printer must be corrected by, by name.</summary>
    public IReadOnlyList<PrinterOffset> Printers() => Guard(() => _reader.Printers());

    /// <summary>The latest entries of the history, newest first.</summary>
    /// <param name="most">How many at most.</param>
    public IReadOnlyList<HistoryEntry> History(int most = 100) => Guard(() => _reader.History("history", new { most }));

    /// <summary>Every entry that touched a piece, a bin or a label, newest first.</summary>
    public IReadOnlyList<HistoryEntry> HistoryOf(Code code) => Guard(() => _reader.History("history_of", new { code = code.Text }));

    /// <summary>The entry that <see cref="Undo"/> would take back, told as the change that it is or does again; or null.</summary>
    public HistoryEntry? NextToUndo() => Guard(() => _reader.History("history_to_undo").FirstOrDefault());

    /// <summary>Why <see cref="Undo"/> would refuse to take that entry back; null where it would not, or where there is none.</summary>
    public Fault? WhyNoUndo() => Guard(() => _reader.History("history_to_undo").FirstOrDefault() is { } next ? Barred(next) : null);

    /// <summary>When these pieces and bins were entered; a code of nothing is left out.</summary>
    public IReadOnlyDictionary<Code, DateTimeOffset> Entered(IEnumerable<Code> codes) => Guard(() => _reader.Entered(codes));

    /// <summary>The whole family of a piece, from the first piece it all was cut from; null where no piece has the code.</summary>
    public FamilyTree? Family(Code code) => Guard(() => _reader.Family(code));

    /// <summary>Every kept plan, oldest first.</summary>
    public IReadOnlyList<KeptPlan> Plans() => Guard(() => _reader.Plans());

    /// <summary>One kept plan, or null.</summary>
    public KeptPlan? Plan(int id) => Guard(() => _reader.Plan(id));

    /// <summary>What was saved, oldest first.</summary>
    public IReadOnlyList<LedgerLine> Ledger() => Guard(() => _reader.Ledger());

    /// <summary>Every bed or trailer, in the order of entry.</summary>
    public IReadOnlyList<Bed> Beds() => Guard(() => _reader.Beds());

    /// <summary>Everything that went to other builds, oldest first.</summary>
    public IReadOnlyList<HandOver> HandOvers() => Guard(() => _reader.HandOvers());

    /// <summary>Every hand-over of another yard that was taken in, oldest first.</summary>
    public IReadOnlyList<TakenIn> TakenIn() => Guard(() => _reader.TakenIn("taken_in_all"));

    /// <summary>The hand-over of this name that was taken in, or null.</summary>
    public TakenIn? TakenIn(string transfer) => Guard(() => _reader.TakenIn("taken_in", new { transfer }).FirstOrDefault());

    /// <summary>What a piece brought along from another yard, or null.</summary>
    public Brought? Brought(Code code) => Guard(() => _reader.Brought(code));

    /// <summary>What was done to a piece before a hand-over, oldest first, what was taken back left out.</summary>
    public IReadOnlyList<PastEntry> PastOf(Code code, int handOver) => Guard<IReadOnlyList<PastEntry>>(() =>
    {
        var entry = handOver == 0 ? long.MaxValue : Database.Number("hand_over_entry", ("id", handOver));
        return [.. _reader.History("history_of", new { code = code.Text }).Where(past => past is { Undone: false, Undoes: 0 } && past.Number < entry).Reverse().Select(past => new PastEntry(past.At, past.What))];
    });

    /// <summary>What ever went from here by the hand-over of this name, also where it was taken back; nothing where it never was this yard's.</summary>
    public IReadOnlyList<Code> EverWent(string transfer) => Guard(() => _reader.Codes("hand_over_ever", new { transfer }));

    /// <summary>Every piece that came from another yard, on hand or not; none that was catalogued here first and only came home.</summary>
    public IReadOnlyList<Piece> PiecesFromElsewhere() => Guard(_reader.PiecesFromElsewhere);

    /// <summary>The names of the hand-overs by which each piece came into this yard, in the order they were taken in.</summary>
    public ILookup<Code, string> Arrivals() => Guard(_reader.Arrivals);

    /// <summary>What went by a hand-over while its label still waited to be printed.</summary>
    public IReadOnlyList<Code> WentUnlabelled(int handOver) => Guard(() =>
        _reader.Codes("hand_over_unlabelled", new { entry = Database.Number("hand_over_entry", ("id", handOver)) }));

    /// <summary>True where a code is another thing's here, or ever was, so that a piece of this hand-over can't keep it.</summary>
    public bool CodeIsTaken(Code code, string transfer) =>
        Guard(() => Database.Number("code_was_issued_elsewhere", ("code", code.Text), ("transfer", transfer)) == 1);

    /// <summary>The number of the last entry of the history; another one than before means that the yard has changed. Cheap.</summary>
    public long ChangeNumber => Guard(() => Database.Number("history_last_number"));
}
