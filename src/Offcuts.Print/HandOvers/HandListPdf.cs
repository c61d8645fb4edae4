using System.Globalization;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Print;

/// <summary>What goes to another build, on paper.</summary>
/// <param name="Title">What stands over it.</param>
/// <param name="Lines">To whom, on what terms, with which receipt to be asked for.</param>
/// <param name="Things">Everything that goes.</param>
/// <param name="Loads">How it is driven; none where that was not asked.</param>
/// <param name="Cautions">What to mind in handling it, where no load says so.</param>
public sealed record HandList(string Title, IReadOnlyList<string> Lines, IReadOnlyList<ListedThing> Things, LoadLists? Loads, IReadOnlyList<AppliedCaution> Cautions);

/// <summary>The hand-over list: every code to tick off, each load in its order, weights with where they are from, and the cautions.</summary>
public static class HandListPdf
{
    private const double Body = 9;
    private const double Small = 8;
    private const string Box = "[  ]";

    /// <summary>The list as a PDF: Letter where the unit is the inch, else A4. The same call gives the same bytes.</summary>
    public static byte[] Write(HandList list, LengthUnit unit, DateOnly printed)
    {
        using var paper = new PaperFile(list.Title, printed);
        using var flow = unit == LengthUnit.Inch
            ? new PaperFlow(paper, 612, 792)
            : new PaperFlow(paper, PaperFile.Points(Length.Millimetres(210)), PaperFile.Points(Length.Millimetres(297)));
        flow.Paragraph(list.Title, 16, bold: true);
        foreach (var line in list.Lines) flow.Paragraph(line, Body);
        Things(flow, $"What goes: {Count(list.Things.Count)}", list.Things, unit);
        if (list.Loads is { } loads) Loads(flow, loads, unit);
        Mind(flow, list);
        flow.Finish($"{list.Title}. Printed {printed.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}.");
        return paper.ToBytes();
    }

    private static void Loads(PaperFlow flow, LoadLists loads, LengthUnit unit)
    {
        for (var i = 0; i < loads.Loads.Count; i++)
        {
            var load = loads.Loads[i];
            Things(flow, $"Load {i + 1} of {loads.Loads.Count} on {load.Bed.Name}: {load.Filled(unit)}, put on in this order", load.Things, unit);
        }

        if (loads.Left.Count > 0) Section(flow, "On no load");
        foreach (var (thing, why) in loads.Left) flow.Paragraph($"{thing.Code}  {thing.What}  {thing.Size}: {why}", Body);
        Section(flow, $"{char.ToUpperInvariant(loads.TripsText[0])}{loads.TripsText[1..]}");
        if (loads.Unmeasured.Count > 0) flow.Paragraph(loads.UnmeasuredText, Body);
        foreach (var source in loads.Sources) flow.Paragraph($"Weight: {source}", Small);
        flow.Paragraph(LoadLists.WeightsAre, Small);
    }

    private static void Things(PaperFlow flow, string title, IReadOnlyList<ListedThing> things, LengthUnit unit)
    {
        Section(flow, title);
        PaperColumn[] columns = [new("", 24), new("code", 62), new("what", 110), new("length", 66, Right: true), new("weight", 56, Right: true), new("lies at", 80), new("marks", flow.Width - 398)];
        flow.Heads(columns, Small);
        foreach (var thing in things)
            flow.Row(columns, [Box, thing.Code.ToString(), thing.What, thing.Size, thing.WeightText(unit), thing.Place, thing.Marks], Small);
    }

    private static void Mind(PaperFlow flow, HandList list)
    {
        var all = list.Cautions.Concat(list.Loads?.Loads.SelectMany(load => load.Cautions) ?? []).GroupBy(applied => applied.Caution).ToArray();
        if (all.Length == 0) return;
        Section(flow, "Cautions");
        foreach (var same in all)
        {
            flow.Need(3 * Body * Lettering.LineHeight);
            flow.Paragraph($"{same.Key.Topic}: {string.Join("; ", same.Select(applied => applied.Because).Distinct())}. {same.Key}", Body);
            flow.Space(2);
        }

        flow.Paragraph(Core.Yard.Cautions.Closing, Body, bold: true);
    }

    private static void Section(PaperFlow flow, string title)
    {
        flow.Need(70);
        flow.Space(10);
        flow.Paragraph(title, 12, bold: true);
        flow.Space(2);
    }

    private static string Count(int things) => things == 1 ? "1 thing" : $"{things} things";
}
