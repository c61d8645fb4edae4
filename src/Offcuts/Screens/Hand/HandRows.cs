using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Print;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>The hand-over's place as text.</summary>
internal static class HandRows
{
    /// <summary>From this width on marks and place have columns.</summary>
    public const int WideFrom = 100;

    /// <summary>The columns of the list.</summary>
    public static IReadOnlyList<(string Heading, int Width)> Columns(int width) => width >= WideFrom
        ? [("", 1), ("Code", 8), ("Material", 20), ("Length", 16), ("Worth", 9), ("Marks", 20), ("Place", 14), ("Goes, or why it stays", 0)]
        : [("", 1), ("Code", 8), ("Material", 14), ("Length", 12), ("Worth", 8), ("Goes, or why it stays", 0)];

    public static string Cell(HandState state, int row, int column, bool wide)
    {
        var entry = state.Shown[row];
        var settings = state.Yard.Settings;
        var which = wide || column < 5 ? column : 7;
        return TextRules.Harmless(which switch
        {
            0 => state.Marked.Contains(entry.Code) ? "*" : "",
            1 => entry.Code.ToString(),
            2 => entry.Piece?.Piece.Material.Name ?? entry.Bin!.Bin.Hardware.Name,
            3 => entry.Piece is { } piece ? Words.Size(piece.Piece, settings.Unit) : $"{entry.Bin!.Free} of {entry.Bin.Bin.Quantity}",
            4 => (entry.Piece?.Worth ?? entry.Bin!.Worth).ToText(settings.CurrencySign),
            5 => entry.Piece is { } marked ? Words.Marks(marked.Piece, settings.Unit) : "",
            6 => entry.Piece?.Piece.Place ?? entry.Bin!.Bin.Place,
            _ => entry.MayGo ? state.Marked.Contains(entry.Code) ? "goes" : "free" : entry.Piece?.Why ?? entry.Bin!.Why,
        });
    }

    /// <summary>What stands below the typed line: how much is free and how sure that is.</summary>
    public static IReadOnlyList<Row> Reading(HandState state, int width)
    {
        if (state.Working.Length > 0)
            return [Row.Of(new Ink($"{state.Working}{(state.Sofar.Length > 0 ? $": {state.Sofar}" : "")} …  ", Tone.Strong), new Ink("Esc takes what is found by then", Tone.Soft))];
        if (state.Free is not { } free)
            return [.. Row.Wrapped("What can go to a relative's build: ^R looks what no stage of yours needs, all stages planned together", width, Tone.Soft)];
        var rows = new List<Row>();
        if (state.Stale) rows.AddRange(Row.Wrapped("! The yard has changed since this was looked up; ^R looks again", width, Tone.Caution, indent: 2));
        var lines = FreeText.Answer(free, state.Yard.Settings).ToArray();
        rows.AddRange(Row.Wrapped(lines[0], width, Tone.Strong, indent: 2));
        foreach (var line in lines.Skip(1).Take(3)) rows.AddRange(Row.Wrapped(line, width, free.Proven ? Tone.Good : Tone.Caution, indent: 2).Take(3));
        return rows;
    }

    /// <summary>Which page is shown, and what is marked.</summary>
    public static Row Heading(HandState state)
    {
        var (pieces, counted) = HandModel.Going(state);
        var marked = pieces.Count + counted.Count == 0 ? "" : $"  marked: {Words.Count(pieces.Count, "piece")}{(counted.Count > 0 ? $", {Words.Count(counted.Sum(one => one.Count), "counted thing")}" : "")}";
        return state.Page switch
        {
            HandPage.Free => Row.Of(new Ink("What may go and what stays", Tone.Strong), new Ink(marked, Tone.Good)),
            HandPage.Theirs => Row.Of(new Ink("What serves their needs", Tone.Strong), new Ink(marked, Tone.Good)),
            HandPage.Loads => Row.Of(new Ink("Loads", Tone.Strong), new Ink(state.Loads is { } loads ? $"  {loads.TripsText}" : "", Tone.Good)),
            _ => Row.Of(new Ink("What went", Tone.Strong), new Ink((state.Yard.HandOvers.Count == 0 ? "  nothing yet" : $"  {Words.Count(state.Yard.HandOvers.Count, "hand-over")}, the newest first") + (state.Yard.Borrowed.Count == 0 ? "" : "; below, what is borrowed"), Tone.Soft)),
        };
    }

    /// <summary>The parts of the pages that are read: loads, or what went.</summary>
    public static IReadOnlyList<IReadOnlyList<Row>> Parts(HandState state, int width) => state.Page switch
    {
        HandPage.Loads => Loads(state, width),
        HandPage.Theirs => [.. state.Serves.Select((line, i) => (IReadOnlyList<Row>)[.. Row.Wrapped(line, width, line.StartsWith(' ') ? Tone.Plain : Tone.Strong, indent: 4).Select(row => i == state.Chosen ? row.Marked(width) : row)])],
        _ => Gone(state, width),
    };

    private static List<IReadOnlyList<Row>> Loads(HandState state, int width)
    {
        var unit = state.Yard.Unit;
        if (state.Loads is not { } loads)
        {
            var beds = state.Yard.Beds.Count == 0 ? "No bed or trailer is described yet: ^B" : $"Beds: {string.Join("; ", state.Yard.Beds.Select(bed => BedText.Line(bed, unit)))}";
            return [[.. Row.Wrapped(beds, width), .. Row.Wrapped("Mark what is to go, then ^L makes up the loads", width, Tone.Soft)]];
        }

        var parts = new List<IReadOnlyList<Row>>();
        for (var i = 0; i < loads.Loads.Count; i++)
        {
            var load = loads.Loads[i];
            var head = Row.Wrapped($"Load {i + 1} on {load.Bed.Name}: {load.Filled(unit)}, in this order", width, Tone.Strong, indent: 2);
            parts.Add([.. i == state.Chosen ? head.Select(row => row.Marked(width)) : head, .. load.Things.Select(thing => Row.Of(TextColumns.Cut(new Ink($"  {LoadText.Named(thing)}  {thing.WeightText(unit)}{(thing.Place.Length > 0 ? $"  @{thing.Place}" : "")}").Text, width), Tone.Plain))]);
        }

        Row[] Part(Row[] rows) => parts.Count == state.Chosen && rows.Length > 0 ? [rows[0].Marked(width), .. rows[1..]] : rows;
        parts.Add(Part([.. loads.Unmeasured.Count == 0 ? [] : Row.Wrapped($"! {loads.UnmeasuredText}", width, Tone.Caution, indent: 2), .. loads.Left.SelectMany(left => Row.Wrapped($"! Not loaded: {LoadText.Named(left.Thing)}: {left.Why}", width, Tone.Caution, indent: 2))]));
        parts.Add(Part([.. loads.Sources.SelectMany(source => Row.Wrapped($"Weight: {source}", width, Tone.Soft, indent: 2)), .. Row.Wrapped(LoadLists.WeightsAre, width, Tone.Soft, indent: 2)]));
        parts.Add(Part([.. LoadText.Mind(loads).SelectMany(caution => Row.Wrapped(caution, width, Tone.Caution, indent: 2)), Row.Of(Cautions.Closing, Tone.Soft)]));
        return parts;
    }

    private static List<IReadOnlyList<Row>> Gone(HandState state, int width)
    {
        var parts = new List<IReadOnlyList<Row>>();
        foreach (var one in state.Yard.HandOvers.Reverse())
        {
            var late = one.IsLate(state.Yard.Today);
            var head = Row.Wrapped(HandOverText.Line(one, state.Yard.Settings, state.Yard.Today), width, late ? Tone.Caution : Tone.Plain, indent: 3).ToArray();
            if (parts.Count != state.Chosen)
            {
                parts.Add(head);
                continue;
            }

            parts.Add([.. head.Select(row => row.Marked(width)), .. one.Items.Take(20).Select(item => Row.Of(TextColumns.Cut(new Ink(Item(state, item)).Text, width), Tone.Soft))]);
        }

        parts.AddRange(state.Yard.Borrowed.Reverse().Select(one => (Row[])[.. one.Lines(state.Yard.Today, state.Yard.Unit).SelectMany(line => Row.Wrapped(line, width, Tone.Soft, indent: 3))]));
        return parts;
    }

    private static string Item(HandState state, HandOverItem item)
    {
        var back = HandOverText.Became(item);
        return state.Yard.Find(item.Code) is { } there
            ? $"   {item.Code}  {(there.Piece is { } piece ? $"{piece.Material}  {Words.Size(piece, state.Yard.Unit)}" : $"{item.Count} {there.Material}")}{back}"
            : $"   {item.Code}{back}";
    }
}
