using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.Store.Interchange;

namespace Offcuts.UseCases;

/// <summary>So many out of one bin.</summary>
/// <param name="Bin">The bin's code.</param>
/// <param name="Count">How many; 1 or more.</param>
public sealed record Counted(Code Bin, int Count);

/// <summary>What a hand-over file carries beside what it must.</summary>
/// <param name="Path">Where it is written; none where no file is wanted.</param>
/// <param name="From">Who hands over; may be empty.</param>
/// <param name="Notes">True where notes go along.</param>
/// <param name="Prices">True where prices go along.</param>
public sealed record FileWish(string? Path, string From = "", bool Notes = false, bool Prices = false)
{
    /// <summary>No file.</summary>
    public static FileWish None { get; } = new((string?)null);
}

/// <summary>What is to go, and on what terms.</summary>
/// <param name="Pieces">Codes of pieces.</param>
/// <param name="Counted">Counted things.</param>
/// <param name="Terms">To whom, and as what.</param>
/// <param name="File">The file for the other side.</param>
public sealed record HandWish(IReadOnlyList<Code> Pieces, IReadOnlyList<Counted> Counted, Terms Terms, FileWish File);

/// <summary>What went.</summary>
/// <param name="Id">The number of the hand-over.</param>
/// <param name="What">It in a few words.</param>
/// <param name="Remark">What is odd about it and was done all the same; empty where nothing is.</param>
public sealed record HandedOver(int Id, string What, string Remark = "");

/// <summary>Hands pieces and counted things over to another build: one change of the yard, with its file where one is wanted.</summary>
public sealed class HandOverPieces(YardFile yard)
{
    /// <summary>
    /// Hands over. What is not free is refused with the reason, unless nothing is known of what is free because somebody said that it goes all the
    /// same. A bundle goes by its code, with all that is in it. The file is written while the change is still open: where it can't be written, nothing has gone.
    /// </summary>
    /// <param name="wish">What, to whom, on what terms.</param>
    /// <param name="free">What is free; none where that is not asked.</param>
    public Result<HandedOver> Do(HandWish wish, WhatIsFree? free)
    {
        var seen = free?.Seen ?? yard.ChangeNumber;
        var faults = wish.Terms.Faults().ToList();
        PieceRules.CheckText(faults, "name", wish.File.From, PieceRules.LongestName);
        if (wish.Pieces.Count + wish.Counted.Count == 0) faults.Add(HandFaults.NothingToHandOver());
        var pieces = StrappedTogether.Pieces(yard, wish.Pieces).Select(code => Piece(code, free, faults)).OfType<Piece>().ToArray();
        var bins = wish.Counted.GroupBy(one => one.Bin).Select(same => Bin(new Counted(same.Key, same.Sum(one => one.Count)), free, faults)).OfType<(Bin Bin, int Count)>().ToArray();
        if (faults.Count > 0) return Result<HandedOver>.Fail(faults);

        var (prices, settings) = (yard.Prices(), yard.Settings());
        HandOverItem[] items =
        [
            .. pieces.Select(piece => new HandOverItem(piece.Code) { Worth = PieceWorth.Of(piece, prices, settings), WeightThousandthsLb = LoadWeight.Of(piece, settings.Species) ?? 0 }),
            .. bins.Select(one => new HandOverItem(one.Bin.Code, one.Count) { Worth = (prices.Of(one.Bin.Hardware)?.Price ?? Money.Zero) * one.Count, WeightThousandthsLb = 0 }),
        ];
        var worth = items.Aggregate(Money.Zero, (sum, item) => sum + item.Worth!.Value);
        var weight = items.Sum(item => item.WeightThousandthsLb!.Value);
        var name = YardFile.NewTransfer();
        var waiting = yard.LabelQueue().ToHashSet();
        var what = $"{Verb(wish.Terms.Kind)} {Told(pieces, bins)} to {wish.Terms.To}";
        List<string> remarks = [.. NotOurs(pieces, wish.Terms.To), .. new PlannedFrom(yard, pieces.Select(piece => piece.Code)).Missed()];
        var id = 0;
        return yard.ChangeSince(seen, what, work =>
        {
            foreach (var piece in pieces) work.Update(piece with { State = PieceState.HandedOver, ReservedFor = "" });
            foreach (var (bin, count) in bins) work.Put(bin with { Quantity = bin.Quantity - count });
            id = work.AddHandOver(name, wish.Terms, worth, weight, items);
            if (id > 0 && work.Faults.Count == 0 && wish.File.Path is { } path) WriteFile(yard.HandOvers().First(one => one.Id == id), wish.File, waiting);
        }).Then<HandedOver>(entry =>
        {
            if (wish.Terms.DueOn is { } due && due < DateOnly.FromDateTime(entry.At.DateTime)) remarks.Add($"due {due:yyyy-MM-dd}: that day is over already, so it is late from now on");
            return new HandedOver(id, entry.What, string.Join("; ", remarks));
        });
    }

    /// <summary>Writes the file of a hand-over once more; what was in the first is in it again.</summary>
    public Result<string> WriteAgain(int id, FileWish file)
    {
        if (yard.HandOvers().FirstOrDefault(one => one.Id == id) is not { } gone) return HandFaults.NoSuchHandOver(id);
        var faults = new List<Fault>();
        PieceRules.CheckText(faults, "name", file.From, PieceRules.LongestName);
        if (faults.Count > 0) return Result<string>.Fail(faults);
        WriteFile(gone, file, yard.WentUnlabelled(id).ToHashSet());
        return $"wrote {file.Path}";
    }

    /// <summary>The other side has it, by its receipt or by its word.</summary>
    /// <param name="receipt">As typed.</param>
    public Result<string> Confirm(string receipt)
    {
        var read = Transfers.ReadReceipt(receipt);
        if (!read.TryGet(out var text)) return Result<string>.Fail(read.Faults);
        return yard.HandOvers().FirstOrDefault(one => Transfers.Receipt(one.Transfer) == text) is { } gone ? Confirmed(gone, "by its receipt") : HandFaults.NoHandOverOf(text);
    }

    /// <summary>The other side has it, as somebody says who has no receipt.</summary>
    public Result<string> ConfirmByWord(int id) =>
        yard.HandOvers().FirstOrDefault(one => one.Id == id) is { } gone ? Confirmed(gone, "by word") : HandFaults.NoSuchHandOver(id);

    /// <summary>
    /// What was lent is back: pieces, and counted things by the code of their bin. A piece that is on hand already only ends its loan; one that
    /// was used or cut up since is refused.
    /// </summary>
    /// <param name="pieces">Codes of pieces.</param>
    /// <param name="counted">Counted things.</param>
    /// <param name="place">Where they lie now; as before where nothing is said.</param>
    /// <param name="only">The number of the one loan that they are back from; any where nothing is said.</param>
    public Result<string> Back(IReadOnlyList<Code> pieces, IReadOnlyList<Counted> counted, string? place, int? only = null)
    {
        var seen = yard.ChangeNumber;
        var faults = new List<Fault>();
        var there = place is null ? null : PieceRules.PlaceIn(place);
        var back = LoansAway.Shared(yard.HandOvers(), only, pieces, counted, faults, code => yard.Piece(code) is { OnHand: false } piece ? new ComingHome(yard).Refusal(piece) : null);
        if (back.Count == 0 && faults.Count == 0) faults.Add(YardFaults.NothingNamed());
        if (faults.Count > 0) return Result<string>.Fail(faults);
        var number = back.Sum(one => one.Count);
        return yard.ChangeSince(seen, $"{Words.Count(number, "thing")} back from {string.Join(", ", back.Select(one => one.Gone.Terms.To).Distinct())}", work =>
        {
            foreach (var (gone, item, count) in back)
            {
                work.SetBack(gone.Id, item.Code, item.Back + count);
                if (yard.Piece(item.Code) is { } piece) work.Update(piece with { State = piece.OnHand ? piece.State : PieceState.InYard, Place = there ?? piece.Place });
                else if (yard.Bin(item.Code) is { } bin) work.Put(bin with { Quantity = bin.Quantity + count });
            }
        }).Then<string>(entry => entry.What);
    }

    /// <summary>Gifts, loans and sales by their word.</summary>
    public static string Verb(HandOverKind kind) => kind switch
    {
        HandOverKind.Gift => "gave",
        HandOverKind.Loan => "lent",
        _ => "sold",
    };

    private Result<string> Confirmed(HandOver gone, string how) => gone.ConfirmedOn is { } on
        ? HandFaults.ConfirmedAlready(gone.Id, on)
        : yard.Change($"hand-over {gone.Id} to {gone.Terms.To} is confirmed {how}", work => work.ConfirmHandOver(gone.Id)).Then<string>(entry => entry.What);

    private Piece? Piece(Code code, WhatIsFree? free, List<Fault> faults)
    {
        if (yard.Piece(code) is not { } piece)
        {
            faults.Add(YardFaults.NoSuchCode(code.ToString()));
            return null;
        }

        if (!piece.OnHand) faults.Add(new Fault($"{code}: {YardFaults.NotOnHand().Sentence}"));
        else if (free?.Pieces.FirstOrDefault(one => one.Piece.Code == code) is { IsFree: false } stays) faults.Add(HandFaults.NotFree(code.ToString(), stays.Why));
        return piece;
    }

    private (Bin Bin, int Count)? Bin(Counted counted, WhatIsFree? free, List<Fault> faults)
    {
        if (yard.Bin(counted.Bin) is not { } bin)
        {
            faults.Add(YardFaults.NoSuchCode(counted.Bin.ToString()));
            return null;
        }

        var most = free?.Bins.FirstOrDefault(one => one.Bin.Code == bin.Code)?.Free ?? bin.Quantity;
        if (counted.Count < 1) faults.Add(HandFaults.CountUnreadable());
        else if (MakeLoads.TooMany(bin, counted.Count) is { } tooMany) faults.Add(tooMany);
        else if (counted.Count > most) faults.Add(HandFaults.BinHolds(bin.Hardware.Name, counted.Count, most));
        return (bin, counted.Count);
    }

    // What is borrowed may be handed on, but not without a word, unless it goes back to whom it came from.
    private IEnumerable<string> NotOurs(Piece[] pieces, string to) =>
        from one in Borrowed.In(yard)
        where !string.Equals(one.From, to, StringComparison.OrdinalIgnoreCase)
        let lent = one.Here.Select(piece => piece.Code).Intersect(pieces.Select(piece => piece.Code)).ToArray()
        where lent.Length > 0
        select $"{(lent.Length == 1 ? $"{lent[0]} is" : $"{lent.Length} of these pieces are")} borrowed from {one.From}{Borrowed.Until(one.Loan.Terms)}";

    private static string Told(Piece[] pieces, (Bin Bin, int Count)[] bins)
    {
        var parts = new List<string>();
        if (pieces.Length > 0) parts.Add(pieces.Length == 1 ? $"{pieces[0].Code}, {pieces[0].Material}" : Words.Count(pieces.Length, "piece"));
        parts.AddRange(bins.Select(one => $"{one.Count} {one.Bin.Hardware.Name}"));
        return string.Join(" and ", parts);
    }

    private void WriteFile(HandOver gone, FileWish file, IReadOnlySet<Code> waiting)
    {
        var bytes = TransferFile.Write(Of(gone, file, waiting));
        WholeFile.Write(file.Path!, stream => stream.Write(bytes));
    }

    // What it was cut from stands first, and is named only where it goes along.
    private Transfer Of(HandOver gone, FileWish file, IReadOnlySet<Code> waiting)
    {
        var (prices, settings) = (yard.Prices(), yard.Settings());
        var codes = gone.Items.Select(item => item.Code).ToHashSet();
        var pieces = gone.Items.Select(item => yard.Piece(item.Code)).OfType<Piece>().OrderBy(piece => yard.Family(piece.Code)!.InOrder().TakeWhile(member => member.Piece.Code != piece.Code).Count());
        return new Transfer
        {
            Name = gone.Transfer,
            From = file.From,
            Day = gone.Day,
            Terms = file.Prices ? gone.Terms : gone.Terms with { Price = null },
            Pieces =
            [
                .. pieces.Select(piece => new TransferPiece(
                    piece with { State = PieceState.InYard, ReservedFor = "", Place = "", Note = file.Notes ? piece.Note : "", CutFrom = codes.Contains(piece.CutFrom) ? piece.CutFrom : default },
                    waiting.Contains(piece.Code),
                    [.. (yard.Brought(piece.Code)?.History ?? []).Concat(yard.PastOf(piece.Code, gone.Id)).OrderBy(past => past.At).TakeLast(1000)])
                {
                    CameBy = yard.Brought(piece.Code)?.Transfer ?? "",
                    Was = yard.Brought(piece.Code)?.Was ?? default,
                    Earlier = yard.Brought(piece.Code)?.Earlier ?? [],
                    Worth = file.Prices ? PieceWorth.Of(piece, prices, settings) : null,
                }),
            ],
            Hardware = [.. gone.Items.Select(item => (Bin: yard.Bin(item.Code), item.Count)).Where(one => one.Bin is not null).Select(one => new TransferHardware(one.Bin!.Hardware, one.Count))],
        };
    }
}
