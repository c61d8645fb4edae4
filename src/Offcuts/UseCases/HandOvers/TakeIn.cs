using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.Store.Interchange;

namespace Offcuts.UseCases;

/// <summary>What was taken in.</summary>
/// <param name="What">It in a few words.</param>
/// <param name="Receipt">What the other side confirms it with.</param>
/// <param name="Renamed">Pieces whose code was another thing's here: their code there, and their new one, whose label waits.</param>
/// <param name="CameHome">Pieces that this yard had lent: their code, and the one they had over there; where that is another, its label waits.</param>
/// <param name="Stayed">Pieces that went from here and are not away, so that nothing was changed of them; each with what it is here.</param>
/// <param name="ToPrint">How many labels wait because of it.</param>
/// <param name="Again">True where it had been taken in before, so that nothing changed.</param>
public sealed record TakenInTold(string What, string Receipt, IReadOnlyList<(Code Was, Code Now)> Renamed, IReadOnlyList<(Code Code, Code There)> CameHome, IReadOnlyList<(Code Code, string Is)> Stayed, int ToPrint, bool Again);

/// <summary>Takes a hand-over of another yard in, by its file: one change, all or nothing; a second time it changes nothing.</summary>
public sealed class TakeIn(YardFile yard)
{
    /// <summary>Takes it in.</summary>
    /// <param name="file">The file.</param>
    /// <param name="place">Where everything lies now; may be empty.</param>
    public Result<TakenInTold> From(Stream file, string place)
    {
        var there = PieceRules.PlaceIn(place);
        var faults = new List<Fault>();
        PieceRules.CheckText(faults, "place", there, PieceRules.LongestName);
        if (faults.Count > 0) return Result<TakenInTold>.Fail(faults);
        return TransferFile.Read(file).Then(transfer => Of(transfer, there));
    }

    private Result<TakenInTold> Of(Transfer transfer, string place)
    {
        var seen = yard.ChangeNumber;
        var receipt = Transfers.Receipt(transfer.Name);
        if (yard.TakenIn(transfer.Name) is { } before)
            return new TakenInTold($"this was taken in on {before.Day:yyyy-MM-dd} already; nothing was changed", receipt, [], [], [], 0, Again: true);
        var gone = yard.HandOvers();
        if (gone.FirstOrDefault(one => one.Transfer == transfer.Name) is { } ours) return HandFaults.OwnTransfer(ours.Id);
        if (yard.EverWent(transfer.Name).Count > 0) return HandFaults.OwnTransferTakenBack();

        var names = new Dictionary<Code, Code>();
        var (lent, coming) = (new Lent(yard, gone), new ComingHome(yard));
        var (renamed, home, unprinted) = (new List<(Code, Code)>(), new Dictionary<Code, TransferPiece>(), new List<Code>());
        var stayed = new List<(Code, string)>();
        var added = new List<(TransferPiece Sent, Piece Piece)>();
        foreach (var sent in transfer.Pieces)
        {
            if (lent.Here(sent) is { } own && !home.ContainsKey(own.Code))
            {
                names[sent.Piece.Code] = own.Code;
                var comes = !own.OnHand && coming.Refusal(own) is null;
                if (comes) home.Add(own.Code, sent);
                else stayed.Add((own.Code, Words.Of(own.State)));
                if ((comes || own.OnHand) && (sent.LabelWaits || sent.Piece.Code != own.Code)) unprinted.Add(own.Code);
                continue;
            }

            var code = sent.Piece.Code;
            if (yard.CodeIsTaken(code, transfer.Name))
            {
                code = yard.NewCode();
                renamed.Add((sent.Piece.Code, code));
                unprinted.Add(code);
            }
            else if (sent.LabelWaits) unprinted.Add(code);

            names[sent.Piece.Code] = code;
            added.Add((sent, sent.Piece with { Code = code, CutFrom = names.GetValueOrDefault(sent.Piece.CutFrom), Place = place }));
        }

        var who = transfer.From.Length > 0 ? transfer.From : Borrowed.Nobody;
        var what = $"took in {Told(transfer)} from {who}{Borrowed.Until(transfer.Terms)}";
        var change = yard.ChangeSince(seen, what, work =>
        {
            work.AddTakenIn(transfer.Name, transfer.Terms with { To = transfer.From, Price = null });
            foreach (var (code, sent) in home)
            {
                ComesHome(work, code, sent.Piece, place);
                if (lent.Loan(code, sent) is { } of) work.SetBack(of.Id, code, 1);
                work.SetBrought(Brought(code, transfer.Name, sent));
            }

            foreach (var (sent, piece) in added)
            {
                work.Add(piece);
                work.SetBrought(Brought(piece.Code, transfer.Name, sent));
            }

            foreach (var counted in transfer.Hardware)
            {
                var bin = yard.Bins().FirstOrDefault(one => one.Hardware.Equals(counted.Hardware) && (place.Length == 0 || one.Place == place));
                var put = work.Put(bin is null ? new Bin(default, counted.Hardware, counted.Count, place) : bin with { Quantity = bin.Quantity + counted.Count });
                if (bin is null) unprinted.Add(put);
            }

            work.QueueLabels(unprinted);
        });
        return change.Then<TakenInTold>(_ => new TakenInTold(what, receipt, renamed, [.. home.Select(one => (one.Key, one.Value.Piece.Code))], stayed, unprinted.Count, Again: false));
    }

    // As it comes back: shorter perhaps, or worn. What it was cut from and its note are this yard's own.
    private void ComesHome(YardChange work, Code code, Piece sent, string place)
    {
        var own = yard.Piece(code)!;
        work.Update(sent with { Code = code, CutFrom = own.CutFrom, FromStage = own.FromStage, Note = own.Note, Place = place.Length > 0 ? place : own.Place });
    }

    // What was done elsewhere is kept of every time it came. What this yard had sent along itself stands in its own history already, as do its own hand-overs.
    private Brought Brought(Code code, string transfer, TransferPiece sent)
    {
        var before = yard.Brought(code);
        var known = (before?.History ?? []).Concat(yard.PastOf(code, 0)).ToHashSet();
        var earlier = (before is null ? [] : before.Earlier.Append(new Origin(before.Transfer, before.Was))).Concat(sent.Origins).Distinct().Where(origin => yard.EverWent(origin.Transfer).Count == 0);
        return new Brought(code, transfer, sent.Piece.Code, [.. (before?.History ?? []).Concat(sent.History.Where(past => !known.Contains(past))).OrderBy(past => past.At)]) { Earlier = [.. earlier] };
    }

    private static string Told(Transfer transfer)
    {
        var parts = new List<string>();
        if (transfer.Pieces.Count > 0) parts.Add(Words.Count(transfer.Pieces.Count, "piece"));
        parts.AddRange(transfer.Hardware.Select(counted => $"{counted.Count} {counted.Hardware.Name}"));
        return string.Join(" and ", parts);
    }
}
