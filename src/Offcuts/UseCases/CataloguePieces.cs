using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>One typed line, understood.</summary>
/// <param name="Label">The blank label it was typed for; none where new codes are drawn.</param>
/// <param name="Batch">What it says.</param>
public sealed record TypedBatch(Code Label, CatalogueBatch Batch)
{
    /// <summary>What it is all of.</summary>
    public Material Material => Batch.Bin?.Hardware ?? Batch.Pieces[0].Material;

    /// <summary>Where it is to lie; empty where that is not said.</summary>
    public string Place => Batch.Bin?.Place ?? Batch.Pieces[0].Place;

    /// <summary>The reading in plain words, shown before it is saved.</summary>
    public string ReadBack(LengthUnit unit) => (Label.IsNone ? "" : $"{Label}: ") + Batch.ReadBack(unit);
}

/// <summary>What was catalogued.</summary>
/// <param name="Pieces">The new pieces.</param>
/// <param name="Bins">Bins that are new or hold more than before.</param>
/// <param name="ToPrint">How many labels wait because of it; none for labels printed before.</param>
/// <param name="What">It all, in a few words.</param>
public sealed record Catalogued(IReadOnlyList<Piece> Pieces, IReadOnlyList<Bin> Bins, int ToPrint, string What);

/// <summary>Catalogues what comes off a form, a line a batch; all lines or none.</summary>
public sealed class CataloguePieces(YardFile yard)
{
    /// <summary>
    /// Understands the lines without saving. A line may begin with the code of a blank label; it then makes one piece or bin.
    /// </summary>
    public Result<IReadOnlyList<TypedBatch>> Read(IReadOnlyList<string> lines)
    {
        if (lines.Count == 0) return CommandFaults.NothingTyped(yard.Settings().Unit);
        var (unit, panels) = (yard.Settings().Unit, new ChangeSystems(yard).WholePanels());
        var faults = new List<Fault>();
        var batches = new List<TypedBatch>();
        for (var i = 0; i < lines.Count; i++)
        {
            var read = ReadLine(lines[i], unit, panels);
            if (read.TryGet(out var batch)) batches.Add(batch);
            else faults.AddRange(read.Faults.Select(fault => lines.Count > 1 ? fault with { File = "line", Line = i + 1 } : fault));
        }

        return faults.Count > 0 ? Result<IReadOnlyList<TypedBatch>>.Fail(faults) : Result<IReadOnlyList<TypedBatch>>.Of(batches);
    }

    /// <summary>Understands one line.</summary>
    /// <param name="line">As typed.</param>
    /// <param name="unit">The unit of bare numbers.</param>
    /// <param name="panels">Which panels are whole, so that their first pattern line need not be said.</param>
    public static Result<TypedBatch> ReadLine(string line, LengthUnit unit, WholePanels panels)
    {
        var (label, length) = LabelAtLineStart.Find(line);
        if (label is { Ok: false } wrong) return Result<TypedBatch>.Fail(wrong.Faults);
        var code = label?.Value ?? default;
        var read = CatalogueLine.Read(line[length..], unit);
        if (!read.TryGet(out var batch)) return Result<TypedBatch>.Fail([.. read.Faults.Select(fault => fault.Shift(length))]);
        if (!code.IsNone && batch.Pieces.Count > 1) return CommandFaults.OneLabelOnePiece();
        return new TypedBatch(code, batch.NoFirstLine ? batch : batch with { Pieces = [.. batch.Pieces.Select(panels.Lined)] });
    }

    /// <summary>Names in these lines that nothing in the yard has yet, each once.</summary>
    public IReadOnlyList<NewName> NewNames(IReadOnlyList<TypedBatch> batches) => yard.Names().NewAmong(batches.Select(batch => batch.Material));

    /// <summary>Places in these lines that are new and written nearly like a known one, each once. They are told, and never in the way.</summary>
    public IReadOnlyList<NewPlace> NewPlaces(IReadOnlyList<TypedBatch> batches) =>
        batches.Any(batch => batch.Place.Length > 0) ? NewPlace.Among(batches.Select(batch => batch.Place), yard.PlaceNames()) : [];

    /// <summary>Sizes in these lines that are more likely a slip than meant, each once.</summary>
    public IReadOnlyList<OddSize> OddSizes(IReadOnlyList<TypedBatch> batches)
    {
        var settings = yard.Settings();
        return [.. batches.SelectMany(batch => OddSize.Among(batch.Batch, settings)).Distinct()];
    }

    /// <summary>Saves what was understood as one change; a line with a blank label uses that, every other draws new codes.</summary>
    /// <param name="batches">What was understood.</param>
    /// <param name="newNames">True where somebody said that names nothing has yet are meant; else they are refused.</param>
    /// <param name="oddSizes">True where somebody said that unusual sizes are meant; else they are refused.</param>
    public Result<Catalogued> Save(IReadOnlyList<TypedBatch> batches, bool newNames = false, bool oddSizes = false) =>
        // What others catalogue at the same moment takes nothing from it: it waits for its turn.
        yard.Insist(() => SaveOnce(batches, newNames, oddSizes));

    private Result<Catalogued> SaveOnce(IReadOnlyList<TypedBatch> batches, bool newNames, bool oddSizes)
    {
        var seen = yard.ChangeNumber;
        var twice = batches.Where(batch => !batch.Label.IsNone).GroupBy(batch => batch.Label).Where(group => group.Count() > 1).ToArray();
        if (twice.Length > 0) return Result<Catalogued>.Fail([.. twice.Select(group => YardFaults.TwoWithOneCode(group.Key.ToString()))]);
        var blanks = yard.BlankCodes().ToHashSet();
        var foreign = batches.Where(batch => !batch.Label.IsNone && !blanks.Contains(batch.Label) && IsTaken(batch.Label)).ToArray();
        if (foreign.Length > 0) return Result<Catalogued>.Fail([.. foreign.Select(batch => YardFaults.CodeInUse(batch.Label.ToString()))]);
        if (!newNames && NewNames(batches) is { Count: > 0 } names) return Result<Catalogued>.Fail([.. names.Select(name => Refused(name, batches))]);
        if (!oddSizes && OddSizes(batches) is { Count: > 0 } odd) return Result<Catalogued>.Fail([.. odd.Select(CommandFaults.SizeIsOdd)]);

        var pieces = new List<Piece>();
        var bins = new List<Bin>();
        var unprinted = new List<Code>();
        foreach (var (label, batch) in batches)
        {
            foreach (var draft in batch.Pieces) pieces.Add(draft.ToPiece(Take(label)));
            if (batch.Bin is { } heap) bins.Add(Merged(bins, heap, label, Take));
        }

        var what = Told(pieces, bins);
        var change = yard.ChangeSince(seen, what, work =>
        {
            foreach (var piece in pieces) work.Add(piece);
            foreach (var bin in bins) work.Put(bin);
            work.QueueLabels(unprinted);
        });
        return change.Then<Catalogued>(_ => new Catalogued(pieces, bins, unprinted.Count, what));

        // A label typed with the line is on the piece already, whether this yard printed it or not.
        Code Take(Code label)
        {
            if (!label.IsNone) return label;
            var drawn = yard.NewCode();
            unprinted.Add(drawn);
            return drawn;
        }
    }

    // More of the same at the same place goes into the bin that is there.
    private Bin Merged(List<Bin> sofar, BinDraft heap, Code label, Func<Code, Code> take)
    {
        bool Same(Bin bin) => bin.Hardware.Equals(heap.Hardware) && (heap.Place.Length == 0 || bin.Place == heap.Place);

        Bin More(Bin bin) => bin with
        {
            Quantity = bin.Quantity + heap.Quantity,
            Note = heap.Note.Length == 0 ? bin.Note : bin.Note.Length == 0 ? heap.Note : $"{bin.Note}; {heap.Note}",
        };

        var here = sofar.FindIndex(Same);
        if (label.IsNone && here >= 0)
        {
            var merged = More(sofar[here]);
            sofar.RemoveAt(here);
            return merged;
        }

        return label.IsNone && yard.Bins().FirstOrDefault(Same) is { } old
            ? More(old)
            : heap.ToBin(take(label));
    }

    // Of several lines, the first that has the name.
    private static Fault Refused(NewName name, IReadOnlyList<TypedBatch> batches)
    {
        var fault = CommandFaults.NameIsNew(name);
        return batches.Count > 1 ? fault with { File = "line", Line = batches.ToList().FindIndex(batch => batch.Material.Equals(name.Material)) + 1 } : fault;
    }

    private bool IsTaken(Code code) => yard.Piece(code) is not null || yard.Bin(code) is not null;

    private static string Told(List<Piece> pieces, List<Bin> bins)
    {
        var parts = new List<string>();
        if (pieces.Count > 0) parts.Add(pieces.Count == 1 ? $"{pieces[0].Code}, {pieces[0].Material}" : Words.Count(pieces.Count, "piece"));
        parts.AddRange(bins.Select(bin => bin.Hardware.Name));
        return "catalogued " + string.Join(", ", parts);
    }
}
