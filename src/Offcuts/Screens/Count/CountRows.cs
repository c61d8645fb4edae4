using Offcuts.Core.Faults;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>The count as text.</summary>
internal static class CountRows
{
    private const int Bar = 30;

    /// <summary>The columns of the places.</summary>
    public static IReadOnlyList<(string Heading, int Width)> Columns(int width) => [("Place", width >= 100 ? 40 : 24), ("Counted", 14), ("Pieces", 8), ("Bins", 6), ("Label", 0)];

    public static string Cell(CountState state, int row, int column)
    {
        var place = state.Yard.CountedPlaces[row];
        return TextRules.Harmless(column switch
        {
            0 => place.Name,
            1 => SeePlaces.Counted(place.CountedOn, state.Yard.Today),
            2 => $"{place.Pieces}",
            3 => $"{place.Bins}",
            _ => place.Code.ToString(),
        });
    }

    /// <summary>What the line asks for, or how far reading is.</summary>
    public static IReadOnlyList<Row> Reading(CountState state, int width)
    {
        if (state.Reading is { } reading)
        {
            var (done, of) = state.Progress is { } progress ? (progress.Done, progress.Of) : (0, 0);
            var full = of == 0 ? 0 : Bar * done / of;
            var far = of == 0 ? "" : $"  {done} of {of}";
            return [Row.Of(new Ink($"[{new string('#', full)}{new string('.', Bar - full)}]{far}  ", Tone.Strong), new Ink(TextRules.Harmless(reading.Path), Tone.Soft))];
        }

        var (path, at) = CountModel.Read(state.Line.Text);
        if (path.Length > 0) return [.. Row.Wrapped($"Enter reads the labels in {path}{(at.Length > 0 ? $", all seen at {at}" : ", each where its folder or a place's label in the picture says")}", width, Tone.Soft, indent: 2)];
        return [.. Row.Wrapped("Where pictures of labels or a scanner's file are, then @ and the place: ~/photos @north rack. A place's label in the picture, or the folder's name, may say it instead", width, Tone.Soft)];
    }

    /// <summary>The columns of the labels.</summary>
    public static IReadOnlyList<(string Heading, int Width)> LabelColumns { get; } = [("Label", 10), ("", 8), ("On what", 0)];

    public static string LabelCell(CountState state, int row, int column)
    {
        var label = state.Labels[row];
        return TextRules.Harmless(column switch
        {
            0 => label.Code.ToString(),
            1 => label.Kind switch { LabelKind.Waits => "waits", LabelKind.Bundle => "bundle", LabelKind.Blank => "blank", _ => "place" },
            _ => label.Kind == LabelKind.Blank ? "nothing yet" : label.What,
        });
    }

    /// <summary>A label as it will be printed.</summary>
    public static IReadOnlyList<Row> Preview(CountState state) => [.. state.Preview.Skip(state.Top).Select(line => Row.Of(line, Tone.Plain))];

    /// <summary>What is shown below.</summary>
    public static Row Heading(CountState state)
    {
        if (state.Preview.Count > 0) return Row.Of(new Ink($"{state.Previewed} on {state.Layout}", Tone.Strong), new Ink(", to scale; Tab for other paper", Tone.Soft));
        if (state.OnLabels && state.Counted is null)
            return state.Labels.Count == 0
                ? Row.Of("No label waits, and there is no bundle, no blank and no label of a place", Tone.Soft)
                : Row.Of(new Ink($"{Words.Count(state.Yard.Queue.Count, "label")} to print", Tone.Strong), new Ink($", {Words.Count(state.Yard.Blanks.Count, "blank")}, {Words.Count(state.Yard.Bundles.Count(bundle => bundle.IsWhole), "bundle")}; Strip prints them", Tone.Soft));
        var partly = state.Partly ? "; no place counted whole" : "";
        if (state.Counted is { } count)
            return Row.Of(new Ink($"Not accepted yet: {count.Moved.Count + count.BinsMoved.Count} elsewhere, {count.Missing.Count} missing, {count.ComeBack.Count()} back", Tone.Caution), new Ink(partly, Tone.Soft));
        return state.Yard.CountedPlaces.Count == 0
            ? Row.Of("Nothing has a place yet; @PLACE on a catalogue line says where things lie", Tone.Soft)
            : Row.Of(new Ink($"{Words.Count(state.Yard.CountedPlaces.Count, "place")}", Tone.Strong), new Ink($", the one not counted for longest first{partly}", Tone.Soft));
    }

    /// <summary>The lines of a count.</summary>
    public static IReadOnlyList<Row> Counted(CountState state, int width) =>
        [.. state.Lines.Skip(state.Chosen).SelectMany(line => Row.Wrapped(line, width, line.StartsWith(' ') ? Tone.Plain : Tone.Strong, indent: 4))];
}
