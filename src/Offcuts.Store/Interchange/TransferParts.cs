using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Interchange;

/// <summary>A hand-over from the fields of its file, checked as anything that comes into a yard, and back.</summary>
internal static class TransferParts
{
    /// <summary>Most pieces in one file.</summary>
    public const int MostPieces = 100_000;

    private const int LongestPast = 300;

    public static TransferJson Json(Transfer transfer) => new()
    {
        Transfer = transfer.Name,
        From = transfer.From,
        To = transfer.Terms.To,
        Day = Values.Day(transfer.Day),
        Kind = Words.Kind[transfer.Terms.Kind],
        PriceCents = transfer.Terms.Price?.Cents,
        DueOn = Values.DayOrNull(transfer.Terms.DueOn),
        Due = transfer.Terms.Due,
        Pieces = [.. transfer.Pieces.Select(Json)],
        Hardware = [.. transfer.Hardware.Select(counted => new TransferHardwareJson { Hardware = counted.Hardware.Name, Unit = counted.Hardware.Unit, Count = counted.Count })],
    };

    /// <summary>The hand-over, or every fault in it. May throw <see cref="FormatException"/> and the like for what no program of ours writes.</summary>
    public static Result<Transfer> Read(TransferJson json)
    {
        var (faults, values) = (new List<Fault>(), new Values());
        if (json.Pieces.Any(piece => piece is null) || json.Hardware.Any(counted => counted is null)) throw new FormatException("each of them is an object");
        if (!Transfers.IsName(json.Transfer)) faults.Add(HandFaults.TransferWrong("transfer", "it is no name of a hand-over"));
        if (json.Pieces.Length + json.Hardware.Length is 0 or > MostPieces) faults.Add(HandFaults.TransferWrong("pieces", $"there are 1 to {MostPieces} of them in one file"));
        var texts = new List<Fault>();
        PieceRules.CheckText(texts, "from", json.From, PieceRules.LongestName);
        faults.AddRange(texts.Select(fault => HandFaults.TransferWrong("from", fault.Sentence)));
        // A price that was not asked for is left out of the file, so that a sale has none here.
        var terms = new Terms(json.To, Words.Kind[json.Kind], json.PriceCents is { } cents ? new Money(cents) : null, Values.DayOrNull(json.DueOn), json.Due);
        faults.AddRange((terms.Kind == HandOverKind.Sale ? terms with { Price = terms.Price ?? Money.Zero } : terms).Faults().Select(fault => HandFaults.TransferWrong("terms", fault.Sentence)));

        var pieces = new List<TransferPiece>();
        var codes = new HashSet<Code>();
        foreach (var piece in json.Pieces)
        {
            if (faults.Count > 20) break;
            var read = Piece(piece, values);
            if (!read.TryGet(out var good))
            {
                faults.AddRange(read.Faults.Select(fault => HandFaults.TransferWrong(piece.Code, fault.Sentence)));
                continue;
            }

            if (!codes.Add(good.Piece.Code)) faults.Add(HandFaults.TransferWrong(good.Piece.Code.ToString(), "it stands twice"));
            if (!good.Piece.CutFrom.IsNone && !codes.Contains(good.Piece.CutFrom)) faults.Add(HandFaults.TransferWrong(good.Piece.Code.ToString(), "what it was cut from does not stand before it"));
            pieces.Add(good);
        }

        var hardware = new List<TransferHardware>();
        foreach (var counted in json.Hardware)
        {
            if (counted.Count is < 1 or > PieceRules.MostInABin) faults.Add(HandFaults.TransferWrong(counted.Hardware, YardFaults.BinCountUnreadable(PieceRules.MostInABin).Sentence));
            else hardware.Add(new TransferHardware(values.Hardware(counted.Hardware, counted.Unit), counted.Count));
        }

        return faults.Count > 0
            ? Result<Transfer>.Fail(faults)
            : new Transfer { Name = json.Transfer, From = json.From, Day = Values.Day(json.Day), Terms = terms, Pieces = pieces, Hardware = hardware };
    }

    private static TransferPieceJson Json(TransferPiece sent)
    {
        var piece = sent.Piece;
        return new TransferPieceJson
        {
            Code = piece.Code.Text,
            Material = piece.Material.Name,
            Length = piece.Length.Units,
            Width = piece.Width.Units,
            Condition = Words.Condition[piece.Condition],
            BadSpots = [.. piece.BadSpots.Select(spot => new[] { spot.Start.Units, spot.End.Units })],
            TrimLeft = piece.TrimLeft.Units,
            TrimRight = piece.TrimRight.Units,
            Treated = piece.Treated,
            TreatedWith = piece.TreatedWith,
            Stamped = piece.Stamped,
            Nails = piece.Nails,
            Concrete = piece.Concrete,
            Oiled = piece.Oiled,
            FromStage = piece.FromStage,
            CutFrom = piece.CutFrom.Text,
            FirstLine = piece.FirstLine?.Units,
            Note = piece.Note.Length > 0 ? piece.Note : null,
            WorthCents = sent.Worth?.Cents,
            LabelWaits = sent.LabelWaits,
            CameBy = sent.CameBy,
            Was = sent.Was.Text,
            Earlier = sent.Earlier.Count > 0 ? [.. sent.Earlier.Select(origin => new[] { origin.Transfer, origin.Was.Text })] : null,
            History = [.. sent.History.Select(past => new[] { Values.Moment(past.At), past.What })],
        };
    }

    private static Result<TransferPiece> Piece(TransferPieceJson json, Values values)
    {
        var code = Code.Parse(json.Code);
        if (!code.Ok) return Result<TransferPiece>.Fail(code.Faults);
        if (json.CameBy.Length > 0 && !Transfers.IsName(json.CameBy)) return new Fault("came_by is no name of a hand-over");
        var history = new List<PastEntry>();
        foreach (var past in json.History)
        {
            if (past is not [not null, not null]) throw new FormatException("an entry is a moment and what was done");
            var faults = new List<Fault>();
            PieceRules.CheckText(faults, "history", past[1], LongestPast);
            if (faults.Count > 0) return Result<TransferPiece>.Fail(faults);
            history.Add(new PastEntry(Values.Moment(past[0]), past[1]));
        }

        var earlier = new List<Origin>();
        foreach (var origin in json.Earlier ?? [])
        {
            if (origin is not [not null, not null] || !Transfers.IsName(origin[0])) throw new FormatException("an earlier hand-over is its name and a code");
            earlier.Add(new Origin(origin[0], Values.Code(origin[1])));
        }

        return PieceRules.Check(new Piece
        {
            Code = code.Value,
            Material = values.Material(json.Material),
            Length = Length.FromUnits(json.Length),
            Width = Length.FromUnits(json.Width),
            Condition = Words.Condition[json.Condition],
            BadSpots = [.. json.BadSpots.Select(spot => spot is [_, _] ? new Span(Length.FromUnits(spot[0]), Length.FromUnits(spot[1])) : throw new FormatException("a bad spot has a start and an end"))],
            TrimLeft = Length.FromUnits(json.TrimLeft),
            TrimRight = Length.FromUnits(json.TrimRight),
            Treated = json.Treated,
            TreatedWith = json.TreatedWith,
            Stamped = json.Stamped,
            Nails = json.Nails,
            Concrete = json.Concrete,
            Oiled = json.Oiled,
            FromStage = json.FromStage,
            CutFrom = Values.Code(json.CutFrom),
            FirstLine = json.FirstLine is { } line ? Length.FromUnits(line) : null,
            Note = json.Note ?? "",
        }).Then<TransferPiece>(piece => new TransferPiece(piece, json.LabelWaits, history)
        {
            CameBy = json.CameBy,
            Was = Values.Code(json.Was),
            Earlier = earlier,
            Worth = json.WorthCents is { } cents ? new Money(cents) : null,
        });
    }
}
