using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>The catalogue line's place as text.</summary>
internal static class StripRows
{
    private const int MostLast = 200;

    public static IReadOnlyList<(string Heading, int Width)> Columns(int width) =>
        [("Code", 8), ("Label", 7), ("Material", width >= 100 ? 20 : 14), ("Length", 14), ("Marks and place", 0)];

    /// <summary>Column of the line under which a fault is pointed at, from 0; none where there is nothing to point at.</summary>
    public static int? FaultAt(StripState state) =>
        (state.Line.Ask is null || state.Corrected is not null) && state.Reading is { Ok: false } wrong && wrong.Fault.Column > 0 && (state.Tried || state.Line.Text.TrimEnd().Length >= wrong.Fault.Column)
            ? wrong.Fault.Column - 1
            : null;

    /// <summary>What was understood, or what is wrong and where.</summary>
    public static IReadOnlyList<Row> Reading(StripState state, int width) => state is { Detached: true, Line.Ask: null } && state.Line.Text.Length > 0
        ? [.. Understood(state, width), .. Row.Wrapped("! what this was to correct is not there any more: Enter catalogues it anew, Esc twice clears it", width, Tone.Caution, indent: 2)]
        : Understood(state, width);

    private static IReadOnlyList<Row> Understood(StripState state, int width)
    {
        if (state.Reading is not { } reading)
            return [.. Row.Wrapped($"One line a batch: material, lengths, count, then plain words: {LineExamples.Batch(state.Yard.Unit)}", width, Tone.Soft)];
        var only = StripModel.OnlyCode(state.Line.Text);
        if (!only.IsNone && state.Corrected is null)
            return [Row.Of(state.Yard.Find(only) is { } there ? $"{only} hangs on a {there.Material} already" : $"label {only}: type what it hangs on behind it", Tone.Soft)];
        if (reading.TryGet(out var batch))
            return
            [
                .. Row.Wrapped($"✓ {batch.ReadBack(state.Yard.Unit)}", width, Tone.Good, indent: 2),
                .. NewNameAsk.Rows(state.NewName, width),
                .. state.Odd.SelectMany(odd => NewNameAsk.Rows(odd, width)),
                .. state.NewPlace is { } place ? Row.Wrapped($"! {place.Told}", width, Tone.Caution, indent: 2) : [],
            ];
        return [.. reading.Faults.SelectMany(fault => Row.Wrapped(state.Tried ? $"✗ {fault}" : $"… {fault}", width, state.Tried ? Tone.Fault : Tone.Soft, indent: 2))];
    }

    /// <summary>
    /// What was understood, in letters to be read from the pile; while nothing is understood yet, the end of what is typed. Nothing on an empty line, where it has
    /// no room, or where it can't be drawn.
    /// </summary>
    public static IReadOnlyList<Row> Large(StripState state, int width, bool roomy)
    {
        var typed = state.Line.Text.Trim();
        if (!roomy || state.Reading is not { } reading || typed.Length == 0) return [];
        var fit = LargeLetters.Fit(width);
        var understood = reading.TryGet(out var batch);
        var text = understood ? InShort(batch!, state.Yard) : typed[Math.Max(0, typed.Length - fit)..];
        return [.. LargeLetters.Of(text, width).Select(line => Row.Of(line, understood ? Tone.Strong : Tone.Soft))];
    }

    // Sizes alike are counted, as they are typed: 2x4 8' x6 9'2-1/2".
    private static string InShort(TypedBatch batch, YardSnapshot yard)
    {
        if (batch.Batch.Bin is { } bin) return $"{bin.Quantity.ToString(CultureInfo.InvariantCulture)} {bin.Hardware.Name}";
        var sizes = batch.Batch.Pieces.GroupBy(piece => (piece.Length, piece.Width)).Select(alike =>
            $"{Short(alike.Key.Length)}{(alike.Key.Width.IsZero ? "" : $"×{Short(alike.Key.Width)}")}{(alike.Count() > 1 ? $" x{alike.Count().ToString(CultureInfo.InvariantCulture)}" : "")}");
        return $"{batch.Material.Name} {string.Join(' ', sizes)}";

        string Short(Core.Measures.Length length) => length.ToText(yard.Unit).Replace(" ", "", StringComparison.Ordinal);
    }

    /// <summary>The last pieces that came in, newest first, or what waits to be printed, first printed first; as places in the yard's list.</summary>
    public static IReadOnlyList<int> Last(StripState state)
    {
        if (state.OnQueue && state.Corrected is null) return [.. state.Yard.QueueOrder.Take(MostLast).Where(state.Yard.Index.ContainsKey).Select(code => state.Yard.Index[code])];
        var last = new List<int>();
        for (var i = state.Yard.Entries.Count - 1; i >= 0 && last.Count < MostLast; i--)
            if (state.Yard.Entries[i].Piece is { OnHand: true }) last.Add(i);
        return last;
    }

    /// <summary>Where among the last ones the first piece of the line that is being corrected stands; none where none is, or it is no piece.</summary>
    public static int CorrectedAt(StripState state, IReadOnlyList<int> last)
    {
        if (state.Corrected is not { } line || !state.Yard.Index.TryGetValue(line.Codes[^1], out var entry)) return -1;
        for (var i = 0; i < last.Count; i++)
            if (last[i] == entry) return i;
        return -1;
    }

    public static string Cell(YardSnapshot yard, YardEntry entry, int column) => TextRules.Harmless(column switch
    {
        0 => entry.Code.ToString(),
        1 => yard.Queue.Contains(entry.Code) ? "waits" : "",
        2 => entry.Material.Name,
        3 => entry.Piece is { } sized ? Words.Size(sized, yard.Unit) : $"{entry.Bin!.Quantity.ToString(CultureInfo.InvariantCulture)} in a bin",
        _ => (entry.Piece is { } piece ? Words.Marks(piece) + Words.Line(piece, yard.Unit) : "") + (entry.Place.Length > 0 ? $" @{entry.Place}" : ""),
    });

    /// <summary>How many labels wait.</summary>
    public static Row Labels(StripState state)
    {
        var waiting = state.Yard.Queue.Count;
        var blanks = state.Yard.Blanks.Count;
        return Row.Of(
            new Ink(waiting switch { 0 => "No label waits", 1 => "1 label waits to be printed", _ => $"{waiting.ToString(CultureInfo.InvariantCulture)} labels wait to be printed" }, waiting > 0 ? Tone.Strong : Tone.Soft),
            new Ink(state.OnQueue && waiting > 0 ? ", in this order" : ""),
            new Ink(blanks > 0 ? $"; {blanks.ToString(CultureInfo.InvariantCulture)} blank ones are still to be tied on" : "", Tone.Soft));
    }

    /// <summary>
    /// What to mind: what the line being typed calls for first, then what goes with stripping a form. As many whole cautions as
    /// fit, never fewer than one; the help has them all.
    /// </summary>
    public static IReadOnlyList<Row> Mind(StripState state, int width, int height)
    {
        var all = Called(state).Concat(Cautions.WhenStripping).Distinct().ToArray();
        var rows = new List<Row>();
        var shown = 0;
        foreach (var caution in all)
        {
            var lines = Row.Wrapped($"! {caution}", width, Tone.Caution, indent: 2).ToArray();
            if (shown > 0 && rows.Count + lines.Length + 1 > height) break;
            rows.AddRange(lines);
            shown++;
        }

        rows.Add(Row.Of((shown < all.Length ? $"F1 has {all.Length - shown} more to mind. " : "") + Cautions.Closing, Tone.Soft));
        return rows;
    }

    private static IEnumerable<Caution> Called(StripState state) =>
        state.Reading is { } reading && reading.TryGet(out var typed)
            ? Cautions.ForPieces(typed.Batch.Pieces.Select(draft => draft.ToPiece(default))).Select(applied => applied.Caution)
            : [];
}
