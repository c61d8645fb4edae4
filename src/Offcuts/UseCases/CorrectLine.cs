using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>A line that was saved, as it can be corrected.</summary>
/// <param name="Text">What was typed, without the label before it.</param>
/// <param name="Said">How it was understood.</param>
/// <param name="Codes">The codes of its pieces, one for each that it says, or of its bin.</param>
public sealed record SavedLine(string Text, TypedBatch Said, IReadOnlyList<Code> Codes)
{
    /// <summary>The line of what was just catalogued.</summary>
    public static SavedLine Of(string text, TypedBatch said, Catalogued saved) =>
        new(LabelAtLineStart.Behind(text), said, saved.Bins.Count > 0 ? [saved.Bins[0].Code] : [.. saved.Pieces.Select(piece => piece.Code)]);

    /// <summary>The codes in a few words.</summary>
    public string Named => Codes.Count <= MostNamed ? string.Join(", ", Codes) : $"{string.Join(", ", Codes.Take(MostNamed))} and {Codes.Count - MostNamed} more";

    private const int MostNamed = 3;
}

/// <summary>
/// Corrects what a line catalogued, as if it had been typed right at first: what the two lines say alike stays as it is by now, so that nothing that was
/// done since is lost.
/// </summary>
public sealed class CorrectLine(YardFile yard)
{
    /// <summary>
    /// One change of the yard. Pieces keep their codes; more of them get new ones, and those that are too many are missing from then on, since nothing
    /// that had a code ever vanishes. Labels with another material or size wait to be printed again, but for one that was on the piece before it was
    /// catalogued. Faults: a piece that is gone, one whose same part was changed since, another kind of thing, those of <see cref="PieceRules"/>.
    /// </summary>
    /// <param name="line">What was saved.</param>
    /// <param name="text">What it should have been.</param>
    /// <param name="said">How that is understood.</param>
    public Result<(SavedLine Line, string Told)> Do(SavedLine line, string text, TypedBatch said)
    {
        var seen = yard.ChangeNumber;
        if (!said.Label.IsNone && said.Label != line.Codes[0]) return YardFaults.LineLabelStays(line.Codes[0].ToString());
        if (said.Batch.Bin is null != line.Said.Batch.Bin is null) return YardFaults.LineOfAnotherKind();
        return said.Batch.Bin is { } heap ? Bin(line, text, said, heap, seen) : Pieces(line, text, said, seen);
    }

    private Result<(SavedLine Line, string Told)> Pieces(SavedLine line, string text, TypedBatch said, long seen)
    {
        var codes = Paired(line, said.Batch.Pieces);
        var faults = new List<Fault>();
        var (changed, more, reprint) = (new List<Piece>(), new List<Piece>(), new List<Code>());
        for (var i = 0; i < codes.Length; i++)
        {
            var draft = said.Batch.Pieces[i];
            if (codes[i].IsNone)
            {
                codes[i] = yard.NewCode();
                more.Add(draft.ToPiece(codes[i]));
                reprint.Add(codes[i]);
                continue;
            }

            var was = line.Said.Batch.Pieces[IndexOf(line.Codes, codes[i])];
            if (yard.Piece(codes[i]) is not { OnHand: true } now) faults.Add(YardFaults.CorrectedGone(codes[i].ToString()));
            else if (Merge.Of(now, was, draft) is var merged && !merged.TryGet(out var right)) faults.AddRange(merged.Faults);
            else if (right != now)
            {
                changed.Add(right);
                if (line.Said.Label.IsNone && (!right.Material.Equals(now.Material) || right.Length != now.Length || right.Width != now.Width)) reprint.Add(right.Code);
            }
        }

        Piece[] missing = [.. line.Codes.Except(codes).Select(yard.Piece).OfType<Piece>().Where(piece => piece.OnHand).Select(piece => piece with { State = PieceState.Missing, ReservedFor = "" })];
        if (faults.Count > 0) return Result<(SavedLine, string)>.Fail(faults);
        var told = Told(changed, more, missing);
        if (told.Length == 0) return Unchanged(line, text, said);
        return yard.ChangeSince(seen, told, work =>
        {
            foreach (var piece in changed.Concat(missing)) work.Update(piece);
            foreach (var piece in more) work.Add(piece);
            work.QueueLabels(reprint);
        }).Then<(SavedLine, string)>(entry => (new SavedLine(LabelAtLineStart.Behind(text), said with { Label = line.Said.Label }, codes), entry.What));
    }

    // What is said alike keeps its code, wherever it now stands in the line; then the others in their order; none is left for what is more.
    private static Code[] Paired(SavedLine line, IReadOnlyList<PieceDraft> said)
    {
        var codes = new Code[said.Count];
        var left = Enumerable.Range(0, line.Codes.Count).ToList();
        for (var i = 0; i < said.Count; i++)
        {
            var alike = left.FindIndex(at => (line.Said.Batch.Pieces[at].Length, line.Said.Batch.Pieces[at].Width) == (said[i].Length, said[i].Width));
            if (alike < 0) continue;
            codes[i] = line.Codes[left[alike]];
            left.RemoveAt(alike);
        }

        for (var i = 0; i < said.Count && left.Count > 0; i++)
        {
            if (!codes[i].IsNone) continue;
            codes[i] = line.Codes[left[0]];
            left.RemoveAt(0);
        }

        return codes;
    }

    private Result<(SavedLine Line, string Told)> Bin(SavedLine line, string text, TypedBatch said, BinDraft heap, long seen)
    {
        var was = line.Said.Batch.Bin!;
        if (!was.Hardware.Equals(heap.Hardware)) return YardFaults.LineOfAnotherKind();
        if (yard.Bin(line.Codes[0]) is not { } now) return YardFaults.CorrectedGone(line.Codes[0].ToString());
        var count = now.Quantity + heap.Quantity - was.Quantity;
        if (count < 0) return StoreFaults.NotEnoughHardware(now.Hardware.Name, was.Quantity - heap.Quantity, now.Quantity);
        var right = now with
        {
            Quantity = count,
            Place = heap.Place == was.Place ? now.Place : heap.Place,
            Note = heap.Note == was.Note ? now.Note : heap.Note,
        };
        if (right == now) return Unchanged(line, text, said);
        return yard.ChangeSince(seen, $"corrected {right.Hardware.Name}: {right.Quantity}", work => work.Put(right))
            .Then<(SavedLine, string)>(entry => (line with { Text = LabelAtLineStart.Behind(text), Said = said with { Label = line.Said.Label } }, entry.What));
    }

    // The yard stands so already; the label that the line began with is still the one on the piece.
    private static (SavedLine Line, string Told) Unchanged(SavedLine line, string text, TypedBatch said) =>
        (line with { Text = LabelAtLineStart.Behind(text), Said = said with { Label = line.Said.Label } }, "nothing to correct: it stands so already");

    private static string Told(List<Piece> changed, List<Piece> more, Piece[] missing)
    {
        string Some(IReadOnlyList<Piece> pieces) => pieces.Count == 1 ? $"{pieces[0].Code}, {pieces[0].Material}" : Words.Count(pieces.Count, "piece");
        var parts = new List<string>();
        if (changed.Count > 0) parts.Add($"corrected {Some(changed)}");
        if (more.Count > 0) parts.Add($"catalogued {Some(more)}");
        if (missing.Length > 0) parts.Add($"marked as missing: {Some(missing)}");
        return string.Join("; ", parts);
    }

    private static int IndexOf(IReadOnlyList<Code> codes, Code code)
    {
        for (var i = 0; i < codes.Count; i++)
            if (codes[i] == code) return i;
        return -1;
    }

    // What a piece is by now, what was said of it, and what should have been said: part by part.
    private static class Merge
    {
        public static Result<Piece> Of(Piece now, PieceDraft was, PieceDraft said)
        {
            var faults = new List<Fault>();
            var right = now with
            {
                Material = Pick(was.Material, said.Material, now.Material, "material"),
                Length = Pick(was.Length, said.Length, now.Length, "length"),
                Width = Pick(was.Width, said.Width, now.Width, "width"),
                Condition = Pick(was.Condition, said.Condition, now.Condition, "condition"),
                BadSpots = was.BadSpots.SequenceEqual(said.BadSpots) ? now.BadSpots : was.BadSpots.SequenceEqual(now.BadSpots) || said.BadSpots.SequenceEqual(now.BadSpots) ? said.BadSpots : Refused(now.BadSpots, "bad spots"),
                TrimLeft = Pick(was.TrimLeft, said.TrimLeft, now.TrimLeft, "trim"),
                TrimRight = Pick(was.TrimRight, said.TrimRight, now.TrimRight, "trim"),
                Treated = Pick(was.Treated, said.Treated, now.Treated, "treatment"),
                TreatedWith = Pick(was.TreatedWith, said.TreatedWith, now.TreatedWith, "treatment"),
                Stamped = Pick(was.Stamped, said.Stamped, now.Stamped, "stamp"),
                Nails = Pick(was.Nails, said.Nails, now.Nails, "mark of nails"),
                Concrete = Pick(was.Concrete, said.Concrete, now.Concrete, "mark of concrete"),
                Oiled = Pick(was.Oiled, said.Oiled, now.Oiled, "mark of oil"),
                Place = Pick(was.Place, said.Place, now.Place, "place"),
                FromStage = Pick(was.FromStage, said.FromStage, now.FromStage, "stage"),
                FirstLine = Pick(was.FirstLine, said.FirstLine, now.FirstLine, "pattern line"),
                Note = Pick(was.Note, said.Note, now.Note, "note"),
            };
            return faults.Count > 0 ? Result<Piece>.Fail(faults) : right;

            T Pick<T>(T before, T after, T there, string what)
            {
                if (Equals(before, after)) return there;
                return Equals(before, there) || Equals(after, there) ? after : Refused(there, what);
            }

            T Refused<T>(T there, string what)
            {
                faults.Add(YardFaults.CorrectedMeanwhile(now.Code.ToString(), what));
                return there;
            }
        }
    }
}
