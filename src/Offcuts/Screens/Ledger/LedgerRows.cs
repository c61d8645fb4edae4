using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Savings;
using Offcuts.Print;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>The ledger's place as text: what was done above, what is only planned apart from it below, what it is measured against last.</summary>
internal static class LedgerRows
{
    private const int StepColumn = 24;
    private const int FiguresRoom = 8;
    private const int MostActs = 6;

    /// <summary>What the figures of what was done are measured against, a sentence each.</summary>
    public static IReadOnlyList<string> Against { get; } =
    [
        MeasuredAgainst.Done, MeasuredAgainst.Money, MeasuredAgainst.BoardFeet, MeasuredAgainst.PanelFace, MeasuredAgainst.Weight, MeasuredAgainst.Pieces,
        MeasuredAgainst.Skip(Quantities.LooseWoodPoundsPerCubicYard),
    ];

    /// <summary>What stands below the typed line: the sum of what was done, and what it is measured against.</summary>
    public static IReadOnlyList<Row> Reading(LedgerState state, int width)
    {
        var sign = state.Yard.Settings.CurrencySign;
        if (state.Yard.Ledger.Count == 0)
            return [.. Row.Wrapped("Nothing was carried out yet, so nothing is saved yet. What is cut for a kept plan is booked here", width, Tone.Soft)];
        var wanted = state.Line.Text.Trim();
        if (state.Lines.Count == 0) return [Row.Of(TextColumns.Cut(new Ink($"No stage with \"{wanted}\" in its name is in the ledger").Text, width), Tone.Fault)];
        var all = state.Sums.InAll;
        var what = wanted.Length == 0 ? "Done, all stages" : $"Done, stages with \"{wanted}\"";
        return
        [
            .. Row.Wrapped($"{what}: {Saved(all.Saved, sign)} of {all.AllNew.ToText(sign)} all new, {all.Spent.ToText(sign)} spent", width, Tone.Strong, indent: 2),
            Row.Of(TextColumns.Cut("against the same cuts all new at that day's prices. Type part of a stage's name", width), Tone.Soft),
        ];
    }

    /// <summary>What the chosen view shows, and by which scale.</summary>
    public static IReadOnlyList<Row> Heading(LedgerState state, int width)
    {
        if (state.Parts == 0) return [];
        if (!state.OverTime) return [Row.Of(new Ink("By stage  ", Tone.Strong), new Ink(TextColumns.Cut(LedgerBars.StageLegend, width - 10), Tone.Soft))];
        var bars = TimeBars(state, width);
        var lead = new string(' ', StepColumn);
        return
        [
            Row.Of(new Ink($"Over time, {PaceWords(state.Time.Pace)}  ", Tone.Strong), new Ink(LedgerBars.TimeLegend, Tone.Soft)),
            Row.Of(new Ink(lead + bars.Figures(state.Yard.Settings.CurrencySign), Tone.Soft)),
            Row.Of(new Ink("from        saved".PadRight(StepColumn), Tone.Soft), new Ink(bars.Tape(), Tone.Soft)),
        ];
    }

    /// <summary>The parts that can be chosen, then what is planned, then what the figures are measured against.</summary>
    public static IReadOnlyList<IReadOnlyList<Row>> Parts(LedgerState state, int width)
    {
        var parts = new List<IReadOnlyList<Row>>();
        if (state.OverTime)
        {
            var bars = TimeBars(state, width);
            for (var i = 0; i < state.Parts; i++) parts.Add(Step(state, state.Time.Steps[i], bars, i == state.Chosen, width));
        }
        else
        {
            var bars = LedgerBars.For(state.Sums.ByStage.SelectMany(sum => new[] { sum.AllNew, sum.Spent }), width - 2);
            for (var i = 0; i < state.Parts; i++) parts.Add(Stage(state, state.Sums.ByStage[i], bars, i == state.Chosen, width));
        }

        if (Planned(state, width).ToArray() is { Length: > 0 } planned) parts.Add(Chosen(state, parts.Count, planned, 1, width));
        if (HandedOver(state, width).ToArray() is { Length: > 0 } gone) parts.Add(Chosen(state, parts.Count, gone, 1, width));
        if (state.Parts == 0) return parts;
        foreach (var sentence in Against)
        {
            Row[] heading = sentence == Against[0] ? [Row.Blank, Row.Of("What the figures of what was done are measured against", Tone.Strong)] : [];
            parts.Add(Chosen(state, parts.Count, [.. heading, .. Row.Wrapped(sentence, width, Tone.Soft, indent: 2)], heading.Length, width));
        }

        return parts;
    }

    private static IReadOnlyList<Row> Chosen(LedgerState state, int part, Row[] rows, int marked, int width) =>
        part == state.Chosen ? [.. rows[..marked], rows[marked].Marked(width), .. rows[(marked + 1)..]] : rows;

    private static List<Row> Step(LedgerState state, LedgerStep step, LedgerBars bars, bool chosen, int width)
    {
        var sign = state.Yard.Settings.CurrencySign;
        var row = Row.Of(
            new Ink(TextColumns.Fill($"{Day(step.From)}  {(step.Lines.Count == 0 ? "-" : step.Saved.ToText(sign))}", StepColumn - 1) + " "),
            new Ink(bars.Step(step.Before, step.SoFar)));
        var rows = new List<Row> { chosen ? row.Marked(width) : row };
        if (!chosen) return rows;
        var until = step.To == step.From ? "" : $" to {Day(step.To)}";
        rows.AddRange(Row.Wrapped($"  {Day(step.From)}{until}: {(step.Lines.Count == 0 ? "nothing was done" : Saved(step.Saved, sign))}; {step.SoFar.ToText(sign)} saved till then", width, Tone.Plain, indent: 2));
        rows.AddRange(Acts(state, step.Lines, width));
        return rows;
    }

    private static List<Row> Stage(LedgerState state, LedgerSum sum, LedgerBars bars, bool chosen, int width)
    {
        var sign = state.Yard.Settings.CurrencySign;
        var heading = Row.Wrapped($"{sum.Stage}: {Saved(sum.Saved, sign)} of {sum.AllNew.ToText(sign)} all new, {sum.Spent.ToText(sign)} spent", width, Tone.Strong, indent: 2);
        var rows = new List<Row>([.. heading.Select(row => chosen ? row.Marked(width) : row), Row.Of($"  {bars.Stage(sum.AllNew, sum.Spent)}", Tone.Plain)]);
        if (!chosen) return rows;
        rows.AddRange(Row.Wrapped($"  {Words.Count(sum.PiecesUsed, "piece")} used, {sum.BoardFeet}, {sum.PanelFace} of panel, {sum.Weight} kept out of the skip (its wood {sum.SkipCubicYards().ToString("0.0", CultureInfo.InvariantCulture)} cu yd loose), {Words.Count(sum.HardwareUsed, "counted thing")} from the bins", width, Tone.Plain, indent: 2));
        rows.AddRange(Acts(state, state.Acts, width));
        return rows;
    }

    private static IEnumerable<Row> Acts(LedgerState state, IReadOnlyList<LedgerLine> lines, int width)
    {
        var sign = state.Yard.Settings.CurrencySign;
        foreach (var line in lines.Reverse().Take(MostActs))
            foreach (var row in Row.Wrapped($"  {Day(line.Day)} {(line.PlanId == 0 ? "" : $"plan {line.PlanId}, ")}{line.Stage}: {Saved(line.Saved, sign)}, {line.Spent.ToText(sign)} spent, {LedgerText.Used(line)}", width, Tone.Soft, indent: 2))
                yield return row;
        if (lines.Count > MostActs) yield return Row.Of($"  and {Words.Count(lines.Count - MostActs, "act")} before", Tone.Soft);
    }

    // What is planned never stands in a sum with what was done.
    private static IEnumerable<Row> Planned(LedgerState state, int width)
    {
        var open = state.Yard.Plans.Where(plan => plan.Open).ToArray();
        if (open.Length == 0) yield break;
        var sign = state.Yard.Settings.CurrencySign;
        yield return Row.Blank;
        yield return Row.Of(new Ink("Planned, in none of the figures above", Tone.Strong), new Ink("  each plan whole, as it was made", Tone.Soft));
        foreach (var plan in open)
        {
            var savings = plan.Plan.Savings;
            var done = plan.Steps.Count - plan.Count(StepState.Waiting);
            var text = $"plan {plan.Id}, {string.Join(", ", plan.Plan.Stages)}: would save {savings.Saved.ToText(sign)} of {savings.AllNew.ToText(sign)} all new{(savings.AllNewProven ? "" : " or less")}, {savings.Spend.ToText(sign)} to spend; {(done == 0 ? "nothing of it is cut" : $"{done} of {Words.Count(plan.Steps.Count, "piece")} are cut and stand above as far as they were booked")}";
            foreach (var row in Row.Wrapped(text, width, Tone.Plain, indent: 2)) yield return row;
        }
    }

    // What went to other builds was not used here: its own kind, by itself.
    private static IEnumerable<Row> HandedOver(LedgerState state, int width)
    {
        if (state.Yard.HandOvers.Count == 0) yield break;
        yield return Row.Blank;
        yield return Row.Of(new Ink("Handed over, in none of the figures above", Tone.Strong), new Ink("  worth and weight of the day it went", Tone.Soft));
        foreach (var line in HandOverText.Sums(state.Yard.HandOvers, state.Yard.Settings, state.Yard.Today).Skip(1))
            foreach (var row in Row.Wrapped(line, width, Tone.Plain, indent: 2))
                yield return row;
    }

    private static LedgerBars TimeBars(LedgerState state, int width) =>
        LedgerBars.For(state.Time.Steps.SelectMany(step => new[] { step.Before, step.SoFar }), width - StepColumn - FiguresRoom);

    private static string Saved(Money saved, string sign) => saved.Cents < 0 ? $"lost {new Money(-saved.Cents).ToText(sign)}" : $"saved {saved.ToText(sign)}";

    private static string PaceWords(LedgerPace pace) => pace switch
    {
        LedgerPace.Day => "day by day",
        LedgerPace.Week => "week by week",
        LedgerPace.Month => "month by month",
        LedgerPace.Quarter => "by quarters",
        _ => "year by year",
    };

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
