using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Walls;
using Offcuts.Print;

namespace Offcuts.Screens;

/// <summary>The form of a sheet as text.</summary>
internal static class FormRows
{
    // A line and what was understood of it stand side by side where both have room.
    private const int LeastSays = 24;

    /// <summary>Column under which the fault of the chosen line is pointed at, from 0; while it is being written only where it is behind it already.</summary>
    public static int? FaultAt(SheetForm form) =>
        Wrong(form, form.At).FirstOrDefault(fault => fault.Column > 0) is { } fault && (form.Tried || form.Line.TrimEnd().Length >= fault.Column) ? fault.Column - 1 : null;

    /// <summary>The chosen line: what was understood or what is wrong, and what such a line holds.</summary>
    public static IReadOnlyList<Row> Reading(SheetForm form, YardSnapshot yard, int width)
    {
        var rows = new List<Row>();
        if (FormModel.Other(form, yard).Stale) rows.AddRange(Row.Wrapped($"! {form.Of} was changed by another program meanwhile; ^K asks what is done", width, Tone.Caution, indent: 2));
        var wrong = Wrong(form, form.At).ToArray();
        foreach (var fault in wrong) rows.AddRange(Row.Wrapped($"{(form.Tried ? "✗" : "…")} {(fault with { Line = 0 })}", width, form.Tried ? Tone.Fault : Tone.Soft, indent: 2));
        var fact = SheetFact.Of(form.Facts, form.Line);
        if (wrong.Length == 0 && fact is not null) rows.AddRange(Row.Wrapped($"✓ {form.Reading.Says.GetValueOrDefault(form.At + 1, "read")}", width, Tone.Good, indent: 2));
        rows.AddRange(fact is null
            ? Row.Wrapped(Begun(form), width, Tone.Soft, indent: 2)
            : Row.Wrapped($"{fact.Shape}: {fact.Tells}", width, Tone.Soft, indent: 2));
        return rows;
    }

    /// <summary>Which sheet it is, how it stands, and what comes of it as a whole.</summary>
    public static IReadOnlyList<Row> Heading(SheetForm form, int width)
    {
        var what = form.Kind == SheetKind.Wall ? "wall" : "system";
        var of = form.Of is { } name ? $"The sheet of the {what} {name}" : $"A new {what}";
        var stage = form.Stage.Length > 0 ? $" of {form.Stage}" : "";
        var changed = form.Changed ? ", not saved yet" : "";
        var faults = form.Reading.Faults;
        return
        [
            Row.Of(TextColumns.Cut(new Ink($"▸ {of}{stage}: {UseCases.Words.Count(form.Lines.Count, "line")}{changed}").Text, width), Tone.Strong),
            .. faults.Where(fault => fault.Line == 0).SelectMany(fault => Row.Wrapped($"✗ {fault}", width, Tone.Fault, indent: 2)),
            .. faults.Count == 0
                ? (Row[])[.. Row.Wrapped($"✓ {form.Reading.InShort}", width, Tone.Good, indent: 2), .. ToLookAt(form.Reading.ToLookAt, width)]
                : [Row.Of($"{(faults.Count == 1 ? "1 thing is" : $"{faults.Count} things are")} wrong; Tab goes there", Tone.Caution)],
        ];
    }

    // Of many the first is told whole, so that the lines keep their room.
    private static IEnumerable<Row> ToLookAt(IReadOnlyList<string> sentences, int width) =>
        sentences.Take(1).SelectMany(sentence => Row.Wrapped(sentence + (sentences.Count > 1 ? $" And {sentences.Count - 1} more like it." : ""), width, Tone.Caution, indent: 2));

    /// <summary>The lines, each with what is wrong with it below, where the chosen one stands among them, and at which row each begins.</summary>
    public static (IReadOnlyList<Row> Rows, int ChosenFrom, int ChosenTo, IReadOnlyList<int> Starts) Lines(SheetForm form, int width)
    {
        var (rows, starts) = (new List<Row>(), new List<int>());
        var (from, to) = (0, 0);
        var digits = form.Lines.Count.ToString(CultureInfo.InvariantCulture).Length;
        var lead = digits + 4;
        var longest = form.Lines.Max(line => TextColumns.Width(new Ink(line).Text));
        var textWidth = Math.Min(longest, Math.Max(30, width - lead - LeastSays - 2));
        var beside = width - lead - textWidth - 2 >= LeastSays;
        for (var i = 0; i < form.Lines.Count; i++)
        {
            var wrong = Wrong(form, i).ToArray();
            var number = (i + 1).ToString(CultureInfo.InvariantCulture).PadLeft(digits);
            var text = new Ink(form.Lines[i]).Text;
            starts.Add(rows.Count);
            if (i == form.At) from = rows.Count;
            var head = $"{(wrong.Length > 0 ? "✗" : " ")} {number}  ";
            if (beside && wrong.Length == 0 && TextColumns.Width(text) <= textWidth && form.Reading.Says.TryGetValue(i + 1, out var says))
                rows.Add(Marked(form, i, width, new Ink(head, Tone.Soft), new Ink(TextColumns.Fill(text, textWidth)), new Ink("  " + TextColumns.Cut(says, width - lead - textWidth - 2), Tone.Soft)));
            else rows.Add(Marked(form, i, width, new Ink(head, wrong.Length > 0 ? Tone.Fault : Tone.Soft), new Ink(TextColumns.Cut(text, Math.Max(1, width - lead)))));
            if (i != form.At)
                foreach (var fault in wrong) rows.AddRange(Row.Wrapped($"{new string(' ', lead)}{(fault with { Line = 0 })}", width, Tone.Fault, indent: 2));
            if (i == form.At) to = rows.Count;
        }

        return (rows, from, to, starts);
    }

    private static Row Marked(SheetForm form, int line, int width, params Ink[] inks) => line == form.At ? Row.Of(inks).Marked(width) : Row.Of(inks);

    private static IEnumerable<Fault> Wrong(SheetForm form, int line) => form.Reading.Faults.Where(fault => fault.Line == line + 1);

    private static string Begun(SheetForm form)
    {
        string[] begun = [.. SheetFact.Begun(form.Facts, form.Line).Select(fact => fact.Name)];
        return begun.Length == 0 ? "A line begins with one of: " + string.Join(", ", form.Facts.Select(fact => fact.Name))
            : form.Line.Trim().Length == 0 ? $"Nothing stands here. A line begins with one of: {string.Join(", ", begun)}; ^O adds one filled in"
            : $"This may become: {string.Join(", ", begun)}";
    }
}
