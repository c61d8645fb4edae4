using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Yard;
using Offcuts.Print;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>The yard's place as text.</summary>
internal static class YardRows
{
    // Counting those that are shown must not keep a key waiting.
    private const int MostLookedFor = 2000;

    /// <summary>Letters of the marks column.</summary>
    public const string MarksLegend = "T treated  S stamped  N nails in  C concrete on  O oiled  B bad spots  R reserved";

    /// <summary>From this width of the list on the place has a column of its own; below it, it stands beside the list.</summary>
    public const int WideFrom = 60;

    private const string MarkSign = "*";

    /// <summary>The columns of the list; the last takes what is left of the width. The one it is ordered by has an arrow; while something is marked, its sign stands before all.</summary>
    public static IReadOnlyList<(string Heading, int Width)> Columns(YardState state, int width)
    {
        var any = state.Marked.Count > 0;
        (string Heading, int Width, YardOrder Order)[] columns = width >= WideFrom
            ? [("Code", 8, YardOrder.Code), ("Material", any ? 14 : 16, YardOrder.Material), ("Length", 13, YardOrder.Length), ("Is", 11, YardOrder.Condition), ("Marks", 7, YardOrder.Marks), ("Place", 0, YardOrder.Place)]
            : [("Code", 8, YardOrder.Code), ("Material", any ? 11 : 13, YardOrder.Material), ("Length", 13, YardOrder.Length), ("Is", 5, YardOrder.Condition), ("Mark", 0, YardOrder.Marks)];
        return [.. any ? [("", 1)] : Array.Empty<(string, int)>(), .. columns.Select(column => (column.Order == state.Order ? $"{column.Heading} {(state.Turned ? "↑" : "↓")}" : column.Heading, column.Width))];
    }

    /// <summary>One cell of the list, for only those that are on the screen.</summary>
    public static string Cell(YardState state, int row, int column, bool wide)
    {
        var entry = state.Yard.Entries[state.Shown[row]];
        if (state.Marked.Count > 0 && column-- == 0) return state.Marked.Contains(entry.Code) ? MarkSign : "";
        var text = column switch
        {
            0 => entry.Code.ToString(),
            1 => entry.Material.Name,
            2 => entry.Piece is { } piece ? piece.Length.ToText(state.Yard.Unit) : $"x{entry.Bin!.Quantity}",
            3 => entry.Piece is { } one ? Standing(one, wide) : "",
            4 => entry.Piece is { } marked ? Marks(marked) : "",
            _ => entry.Place,
        };
        return TextRules.Harmless(text);
    }

    /// <summary>What the line was understood as, and how much it finds.</summary>
    public static IReadOnlyList<Row> Reading(YardState state, int width)
    {
        var found = $"{Number(state.Shown.Count)} of {Number(state.Ordered.Count)}{(state.Gone ? " with those that are gone" : "")}";
        var longer = LineExamples.AndLonger(state.Yard.Unit);
        var what = state.Query.ReadBack(state.Yard.Unit);
        var asked = what.Length == 0
            ? Row.Of(new Ink($"{found}.  ", Tone.Strong), new Ink($"Type words, 2x4, {longer.Typed} for {longer.Means}, @place; or scan a label", Tone.Soft))
            : Row.Of(new Ink($"{found}:  ", Tone.Strong), new Ink(what));
        return state.Marked.Count == 0 ? [asked] : [asked, Marked(state, width)];
    }

    private static Row Marked(YardState state, int width)
    {
        var shown = state.Marked.Count > MostLookedFor ? state.Marked.Count : state.Shown.Count(i => state.Marked.Contains(state.Yard.Entries[i].Code));
        var hidden = state.Marked.Count - shown;
        var away = hidden == 0 ? "" : $" ({Number(hidden)} not shown here)";
        return Row.Of(TextColumns.Cut($"{MarkSign} {state.MarkedTold}{away}", width), Tone.Strong);
    }

    /// <summary>Below the question where something is to be put: the places that are known and that the answer may become; a new one is called so.</summary>
    public static IReadOnlyList<Row> Places(YardState state, string written, int width)
    {
        const int most = 6;
        var typed = PieceRules.PlaceIn(written);
        var exact = state.Yard.Places.Contains(typed);
        var near = state.Yard.Places.Where(place => typed.Length == 0 || state.Line.Marked || place.Contains(typed, StringComparison.OrdinalIgnoreCase)).Take(most).ToArray();
        var meant = exact ? null : NewPlace.Of(typed, state.Yard.PlaceNames);
        var known = near.Length > 0 ? $"known places: {string.Join(", ", near)}" : "no known place is written like this";
        return
        [
            .. typed.Length == 0 ? [] : Row.Wrapped(exact ? $"✓ {typed}" : meant is null ? $"✓ {typed}, a new place" : $"! {meant.Told}", width, exact ? Tone.Good : Tone.Caution, indent: 2),
            .. Row.Wrapped(known, width, Tone.Soft, indent: 2),
        ];
    }

    // A code with a slip in it is told as such: it fits nothing, and it is not that the piece is gone.
    private static string NothingThere(YardState state) =>
        state.Yard.Entries.Count == 0 ? "The yard is empty. Begin on Strip."
        : LabelAtLineStart.Find(state.Line.Text).Code is not { } code ? "Nothing fits this."
        : code.Ok ? $"Nothing here has the code {code.Value}."
        : $"Nothing fits this: {code.Fault.Sentence}.";

    /// <summary>The chosen one, beside the list: facts, then its QR symbol and history as far as they fit.</summary>
    public static IReadOnlyList<Row> Side(YardState state, int width, int height)
    {
        if (state.Entry is not { } entry) return [.. Row.Wrapped(NothingThere(state), width, Tone.Soft)];
        var rows = Facts(entry, state.Yard.Settings, width).ToList();
        var roomForSymbol = height - rows.Count >= QrRows.Lines + 1 && width >= QrRows.Columns;
        if (roomForSymbol)
        {
            rows.Add(Row.Blank);
            rows.AddRange(QrRows.Of(entry.Code));
        }

        rows.AddRange(Card(state, width));
        if (rows.Count > height) rows = [.. rows.Take(Math.Max(0, height - 1)), Row.Of("Enter: all of it, and its QR", Tone.Soft)];
        return rows;
    }

    /// <summary>The chosen one alone: its QR symbol large enough to scan off the screen, everything known beside it.</summary>
    public static IReadOnlyList<Row> Closer(YardState state, int width)
    {
        if (state.Entry is not { } entry) return [];
        var room = Math.Max(10, width - QrRows.Columns - 2);
        Row[] marked = state.Marked.Contains(entry.Code) ? [Row.Of($"{MarkSign} marked", Tone.Strong)] : [];
        Row[] text = [.. marked, .. Facts(entry, state.Yard.Settings, room), .. Card(state, room)];
        return [.. QrRows.Beside(entry.Code, text)];
    }

    private static IEnumerable<Row> Facts(YardEntry entry, YardSettings settings, int width)
    {
        var lines = entry.Piece is { } piece ? Details.Of(piece, settings) : Details.Of(entry.Bin!);
        var first = true;
        foreach (var line in lines)
        {
            foreach (var row in Row.Wrapped(line, width, first ? Tone.Strong : Tone.Plain, indent: 2)) yield return row;
            first = false;
        }

        if (entry.Piece is not { } one) yield break;
        foreach (var applied in Cautions.ForPieces([one]))
            foreach (var row in Row.Wrapped($"! {applied.Caution}", width, Tone.Caution, indent: 2)) yield return row;
    }

    private static IEnumerable<Row> Card(YardState state, int width)
    {
        if (state.Card is not { } card) yield break;
        if (card.Family.Count > 1)
        {
            yield return Row.Blank;
            yield return Row.Of("Family", Tone.Strong);
            foreach (var line in card.Family) yield return Row.Of(TextColumns.Cut(TextRules.Harmless(line), width), Tone.Plain);
        }

        yield return Row.Blank;
        yield return Row.Of("History", Tone.Strong);
        foreach (var line in card.History)
            foreach (var row in Row.Wrapped(line, width, Tone.Plain, indent: 2)) yield return row;
    }

    private static string Standing(Piece piece, bool wide) =>
        piece.State is PieceState.InYard or PieceState.Reserved ? Words.Of(piece.Condition)
        : wide ? Words.Of(piece.State)
        : piece.State switch
        {
            PieceState.Used => "used",
            PieceState.HandedOver => "given",
            PieceState.Scrapped => "scrap",
            _ => "gone?",
        };

    /// <summary>What matters of a piece, a letter each.</summary>
    public static string Marks(Piece piece) => string.Concat(
        piece.Treated ? "T" : "",
        piece.Stamped ? "S" : "",
        piece.Nails ? "N" : "",
        piece.Concrete ? "C" : "",
        piece.Oiled ? "O" : "",
        piece.BadSpots.Count > 0 ? "B" : "",
        piece.State == PieceState.Reserved ? "R" : "");

    private static string Number(int number) => number.ToString("#,0", CultureInfo.InvariantCulture);
}
