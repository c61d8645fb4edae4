using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>
/// Corrects, moves and takes out what is catalogued already. Each call is one change of the yard, all or nothing.
/// </summary>
/// <param name="yard">The yard.</param>
/// <param name="work">Who hears how far a change of many comes, and may stop it; nothing of it is saved then.</param>
public sealed class ChangePieces(YardFile yard, LongWork? work = null)
{
    private const string Looking = "looking at them";
    private const string Saving = "saving";

    private readonly LongWork _work = work ?? LongWork.Unheard;

    /// <summary>Changes each piece of these codes in the same way; tells what was done in a few words.</summary>
    public Result<string> Each(IReadOnlyList<Code> codes, string what, Func<Piece, Result<Piece>> change) => Each(codes, what, change, (_, _) => { });

    private Result<string> Each(
        IReadOnlyList<Code> codes, string what, Func<Piece, Result<Piece>> change, Action<YardChange, IReadOnlyList<Piece>> also, Func<string>? more = null)
    {
        var seen = yard.ChangeNumber;
        var faults = new List<Fault>();
        var changed = new List<Piece>();
        foreach (var code in _work.Through(Looking, [.. codes.Distinct()]))
        {
            if (yard.Piece(code) is not { } piece)
            {
                faults.Add(yard.Bin(code) is { } bin ? YardFaults.IsABin(code.ToString(), bin.Hardware.Name) : YardFaults.NoSuchCode(code.ToString()));
                continue;
            }

            var made = change(piece).Then(PieceRules.Check);
            if (made.TryGet(out var good)) changed.Add(good);
            else faults.AddRange(made.Faults.Select(fault => fault with { Sentence = $"{code}: {fault.Sentence}" }));
        }

        if (faults.Count > 0) return Result<string>.Fail(faults);
        if (changed.Count == 0) return YardFaults.NothingNamed();
        var told = (changed.Count == 1 ? $"{what} {changed[0].Code}" : $"{what} {Words.Count(changed.Count, "piece")}") + more?.Invoke();
        return yard.ChangeSince(seen, told, work =>
        {
            Update(changed)(work);
            also(work, changed);
        }).Then<string>(entry => entry.What);
    }

    /// <summary>To whom something went that was only marked as handed over.</summary>
    public const string NobodyNamed = "nobody named";

    /// <summary>
    /// Says where pieces are in their life: used, scrapped, handed over, missing, or back in the yard. What is handed over in a hurry is a gift to
    /// nobody named, so that the ledger and the list of what went know of it as of any other; back in the yard, that gift is ended with it unless it was confirmed.
    /// </summary>
    /// <remarks>What plans still counted on what is gone for is told: the rest is to be matched again.</remarks>
    public Result<string> Mark(IReadOnlyList<Code> codes, PieceState state) => state == PieceState.HandedOver
        ? new HandOverPieces(yard).Do(new HandWish(codes, [], new Terms(NobodyNamed, HandOverKind.Gift), FileWish.None), free: null).Then<string>(done => done.What + (done.Remark.Length > 0 ? $"; {done.Remark}" : ""))
        : Each(codes, $"marked as {Words.Of(state)}:", piece => state == PieceState.InYard && new ComingHome(yard).HasChildren(piece)
            ? YardFaults.CutUp()
            : state == PieceState.Scrapped && piece.State == PieceState.Used ? YardFaults.UsedUp()
            : piece with { State = state, ReservedFor = "" }, (change, pieces) =>
        {
            if (state == PieceState.InYard) EndGifts(change, [.. pieces.Select(piece => piece.Code)]);
        }).Then<string>(told => told + (state == PieceState.InYard ? "" : string.Concat(new PlannedFrom(yard, codes).Missed().Select(missed => $"; {missed}"))));

    private void EndGifts(YardChange change, HashSet<Code> codes)
    {
        foreach (var gift in yard.HandOvers().Where(one => one is { ConfirmedOn: null, Terms: { Kind: HandOverKind.Gift, To: NobodyNamed } }))
            foreach (var item in gift.Items.Where(item => codes.Contains(item.Code) && item.Away > 0)) change.SetBack(gift.Id, item.Code, item.Count);
    }

    /// <summary>Keeps pieces for one stage alone.</summary>
    public Result<string> Reserve(IReadOnlyList<Code> codes, string stage)
    {
        if (yard.Stages().Named(stage) is not { } one) return yard.Stages().NoneNamed(stage);
        return Each(codes, $"reserved for {one.Name}:", piece => piece.OnHand
            ? piece with { State = PieceState.Reserved, ReservedFor = one.Name }
            : YardFaults.NotOnHand());
    }

    /// <summary>Lets anything have pieces that were reserved; what open plans were to cut from them is given up (<see cref="PlannedFrom"/>).</summary>
    public Result<string> Free(IReadOnlyList<Code> codes)
    {
        var planned = new PlannedFrom(yard, codes);
        return Each(
            codes,
            "freed",
            piece => piece.State == PieceState.Reserved ? piece with { State = PieceState.InYard, ReservedFor = "" } : YardFaults.NotReserved(),
            (change, _) => planned.GiveUp(change),
            planned.Told);
    }

    /// <summary>Lets anything have all pieces that were reserved for this stage, in the same way.</summary>
    public Result<string> FreeAll(string stage)
    {
        var seen = yard.ChangeNumber;
        if (yard.Stages().Named(stage) is not { } one) return yard.Stages().NoneNamed(stage);
        var reserved = yard.Pieces().Where(piece => piece.State == PieceState.Reserved && piece.ReservedFor == one.Name).ToArray();
        if (reserved.Length == 0) return YardFaults.NothingReserved(one.Name);
        var planned = new PlannedFrom(yard, reserved.Select(piece => piece.Code));
        return yard.ChangeSince(seen, $"freed what was reserved for {one.Name}: {Words.Count(reserved.Length, "piece")}{planned.Told()}", change =>
        {
            Update([.. reserved.Select(piece => piece with { State = PieceState.InYard, ReservedFor = "" })])(change);
            planned.GiveUp(change);
        }).Then<string>(entry => entry.What);
    }

    private Action<YardChange> Update(IReadOnlyList<Piece> pieces) => change =>
    {
        foreach (var piece in _work.Through(Saving, pieces)) change.Update(piece);
    };

    /// <summary>Says how sound pieces are.</summary>
    public Result<string> Judge(IReadOnlyList<Code> codes, Condition condition) =>
        Each(codes, $"judged {Words.Of(condition)}:", piece => piece with { Condition = condition });

    /// <summary>Says where pieces and bins lie now.</summary>
    public Result<string> PutAt(IReadOnlyList<Code> codes, string place)
    {
        var seen = yard.ChangeNumber;
        var there = PieceRules.PlaceIn(place);
        if (there.Length == 0) return YardFaults.PlaceMissing();
        var faults = new List<Fault>();
        var (bins, pieces) = (new List<Bin>(), new List<Piece>());
        foreach (var code in _work.Through(Looking, [.. codes.Distinct()]))
        {
            if (yard.Piece(code) is { } piece) pieces.Add(piece with { Place = there });
            else if (yard.Bin(code) is { } bin) bins.Add(bin);
            else faults.Add(YardFaults.NoSuchCode(code.ToString()));
        }

        PieceRules.CheckText(faults, "place", there, PieceRules.LongestName);
        if (faults.Count > 0) return Result<string>.Fail(faults);
        var told = (pieces.Count, bins.Count) switch
        {
            (0, 0) => "",
            (1, 0) => pieces[0].Code.ToString(),
            (0, 1) => bins[0].Code.ToString(),
            (var some, 0) => Words.Count(some, "piece"),
            (0, var some) => Words.Count(some, "bin"),
            _ => $"{Words.Count(pieces.Count, "piece")} and {Words.Count(bins.Count, "bin")}",
        };
        if (told.Length == 0) return YardFaults.NothingNamed();
        return yard.ChangeSince(seen, $"put {told} at {there}", change =>
        {
            Update(pieces)(change);
            foreach (var bin in bins) change.Put(bin with { Place = there });
        }).Then<string>(entry => entry.What);
    }

    /// <summary>Lets the labels of pieces and bins be printed with the next sheet; one that waits already waits once.</summary>
    public Result<string> QueueLabels(IReadOnlyList<Code> codes)
    {
        var seen = yard.ChangeNumber;
        if (_work.Through(Looking, codes).Select(yard.Piece).FirstOrDefault(piece => piece is { OnHand: false }) is { } gone)
            return YardFaults.GoneNeedsNoLabel(gone.Code.ToString(), Words.Of(gone.State));
        var waiting = yard.LabelQueue().ToHashSet();
        var more = codes.Distinct().Where(code => !waiting.Contains(code)).ToArray();
        if (more.Length == 0) return codes.Count == 0 ? YardFaults.NothingNamed() : YardFaults.LabelsWaitAlready();
        return yard.ChangeSince(seen, more.Length == 1 ? $"queued the label of {more[0]}" : $"queued {Words.Count(more.Length, "label")}", change => change.QueueLabels(_work.Through(Saving, more))).Then<string>(entry => entry.What);
    }

    /// <summary>Sets how many lie in a bin, and where it stands where a place is given.</summary>
    public Result<string> SetBin(Code code, int? quantity, string? place, string? note)
    {
        var seen = yard.ChangeNumber;
        if (yard.Bin(code) is not { } bin) return YardFaults.NoSuchCode(code.ToString());
        return PieceRules.Check(bin with { Quantity = quantity ?? bin.Quantity, Place = place is null ? bin.Place : PieceRules.PlaceIn(place), Note = note ?? bin.Note })
            .Then(good => yard.ChangeSince(seen, $"counted {good.Quantity} of {good.Hardware.Name}", change => change.Put(good)))
            .Then<string>(entry => entry.What);
    }
}
