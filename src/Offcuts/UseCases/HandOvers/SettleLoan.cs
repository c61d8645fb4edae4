using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>What of a loan does not come back as it went.</summary>
/// <param name="Pieces">Codes of pieces.</param>
/// <param name="Counted">Counted things.</param>
/// <param name="Instead">What came in the place of the one piece: a line as it is catalogued, or the code of a piece on hand; none where nothing did.</param>
public sealed record SettleWish(IReadOnlyList<Code> Pieces, IReadOnlyList<Counted> Counted, IReadOnlyList<string> Instead);

/// <summary>What was settled.</summary>
/// <param name="What">It in a few words.</param>
/// <param name="Added">Pieces that were catalogued with it; their labels wait.</param>
public sealed record Settled(string What, IReadOnlyList<Piece> Added);

/// <summary>
/// Ends a loan of something that does not come back as it went: it was cut up, used or lost over there. What came in its place is catalogued with it,
/// as cut from it where it is of the same material and no longer. One change, which undo takes back.
/// </summary>
public sealed class SettleLoan(YardFile yard)
{
    /// <summary>Settles.</summary>
    /// <param name="wish">What, and what came in its place.</param>
    /// <param name="place">Where what came lies, where its line does not say so; may be empty.</param>
    /// <param name="only">The number of the one loan; any where nothing is said.</param>
    /// <param name="newNames">True where names that nothing has yet are meant.</param>
    /// <param name="oddSizes">True where unusual sizes are meant.</param>
    public Result<Settled> Do(SettleWish wish, string place = "", int? only = null, bool newNames = false, bool oddSizes = false)
    {
        var seen = yard.ChangeNumber;
        var faults = new List<Fault>();
        var there = PieceRules.PlaceIn(place);
        PieceRules.CheckText(faults, "place", there, PieceRules.LongestName);
        var ends = LoansAway.Shared(yard.HandOvers(), only, wish.Pieces, wish.Counted, faults);
        if (ends.Count == 0 && faults.Count == 0) faults.Add(YardFaults.NothingNamed());
        if (wish.Instead.Count > 0 && (ends.Count != 1 || wish.Counted.Count > 0) && faults.Count == 0) faults.Add(HandFaults.InsteadOfOne());
        if (faults.Count > 0) return Result<Settled>.Fail(faults);

        var came = Came(wish.Instead, yard.Piece(ends[0].Item.Code), there, newNames, oddSizes);
        if (!came.TryGet(out var instead)) return Result<Settled>.Fail(came.Faults);
        var settledAs = Words([.. instead.Known, .. instead.New]);
        var what = $"settled {Told(ends)} with {string.Join(", ", ends.Select(one => one.Gone.Terms.To).Distinct())}: {(settledAs.Length > 0 ? $"in its place {settledAs}" : "not coming back")}";
        return yard.ChangeSince(seen, what, work =>
        {
            foreach (var (gone, item, count) in ends)
                work.SetSettled(gone.Id, item.Code, item.Settled + count, settledAs.Length > 0 ? settledAs : item.SettledAs);
            foreach (var piece in instead.New) work.Add(piece);
            work.QueueLabels([.. instead.New.Where(piece => !instead.Labelled.Contains(piece.Code)).Select(piece => piece.Code)]);
        }).Then<Settled>(entry => new Settled(entry.What, instead.New));
    }

    /// <summary>What of it looks like a slip, as it is said where somebody may just say it once more; nothing where nothing does.</summary>
    public IReadOnlyList<Fault> Slips(SettleWish wish)
    {
        var (catalogue, unit) = (new CataloguePieces(yard), yard.Settings().Unit);
        TypedBatch[] batches = [.. wish.Instead.Where(one => !Code.Parse(one.Trim()).Ok).Select(one => CataloguePieces.ReadLine(one, unit, WholePanels.None)).Where(read => read.Ok).Select(read => read.Value)];
        return [.. catalogue.NewNames(batches).Select(HandFaults.NameLikeSlip), .. catalogue.OddSizes(batches).Select(HandFaults.SizeLikeSlip)];
    }

    private Result<(IReadOnlyList<Piece> Known, IReadOnlyList<Piece> New, IReadOnlySet<Code> Labelled)> Came(IReadOnlyList<string> typed, Piece? gone, string place, bool newNames, bool oddSizes)
    {
        var (known, added, labelled, faults) = (new List<Piece>(), new List<Piece>(), new HashSet<Code>(), new List<Fault>());
        var (catalogue, unit) = (new CataloguePieces(yard), yard.Settings().Unit);
        var panels = new ChangeSystems(yard).WholePanels();
        // What of it is catalogued already takes of its length too.
        var left = gone is null ? 0 : gone.Length.Units - yard.Family(gone.Code)!.InOrder().Where(member => member.Piece.CutFrom == gone.Code).Sum(member => member.Piece.Length.Units);
        foreach (var one in typed)
        {
            if (Code.Parse(one.Trim()).TryGet(out var code) && yard.Piece(code) is { } there)
            {
                if (there.OnHand) known.Add(there);
                else faults.Add(new Fault($"{code}: {YardFaults.NotOnHand().Sentence}"));
                continue;
            }

            var read = CataloguePieces.ReadLine(one, unit, panels);
            if (!read.TryGet(out var batch)) faults.AddRange(read.Faults);
            else if (batch.Batch.Bin is { } bin) faults.Add(HandFaults.InsteadCounted(bin.Hardware.Name));
            else if (!newNames && catalogue.NewNames([batch]) is { Count: > 0 } names) faults.AddRange(names.Select(CommandFaults.NameIsNew));
            else if (!oddSizes && catalogue.OddSizes([batch]) is { Count: > 0 } odd) faults.AddRange(odd.Select(CommandFaults.SizeIsOdd));
            else if (!batch.Label.IsNone && (yard.Piece(batch.Label) is not null || yard.Bin(batch.Label) is not null)) faults.Add(YardFaults.CodeInUse(batch.Label.ToString()));
            else
            {
                if (!batch.Label.IsNone) labelled.Add(batch.Label);
                foreach (var draft in batch.Batch.Pieces)
                {
                    var piece = draft.ToPiece(batch.Label.IsNone ? yard.NewCode() : batch.Label);
                    if (piece.Place.Length == 0) piece = piece with { Place = place };
                    if (gone is not null && piece.Material.Equals(gone.Material) && piece.Width == gone.Width && piece.Length.Units <= left)
                    {
                        piece = piece with { CutFrom = gone.Code };
                        left -= piece.Length.Units;
                    }

                    added.Add(piece);
                }
            }
        }

        return faults.Count > 0 ? Result<(IReadOnlyList<Piece>, IReadOnlyList<Piece>, IReadOnlySet<Code>)>.Fail(faults) : (known, added, labelled);
    }

    private string Words(IReadOnlyList<Piece> pieces)
    {
        var unit = yard.Settings().Unit;
        var text = string.Join(", ", pieces.Select(piece => $"{piece.Code} {piece.Material} {UseCases.Words.Size(piece, unit)}"));
        return text.Length <= HandOverItem.LongestSettledAs ? text : UseCases.Words.Count(pieces.Count, "piece");
    }

    private string Told(List<(HandOver Gone, HandOverItem Item, int Count)> ends)
    {
        var pieces = ends.Where(one => yard.Bin(one.Item.Code) is null).Select(one => one.Item.Code).ToArray();
        var parts = new List<string>();
        if (pieces.Length > 0) parts.Add(pieces.Length == 1 ? pieces[0].ToString() : UseCases.Words.Count(pieces.Length, "piece"));
        parts.AddRange(ends.GroupBy(one => one.Item.Code).Where(same => yard.Bin(same.Key) is not null).Select(same => $"{same.Sum(one => one.Count)} {yard.Bin(same.Key)!.Hardware.Name}"));
        return string.Join(" and ", parts);
    }
}
