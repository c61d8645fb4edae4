using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>The place of the stages as text.</summary>
internal static class StagesRows
{
    /// <summary>From this width on the needs show every column whole, usual lengths and uses at least.</summary>
    public const int NeedsWideFrom = 76;

    /// <summary>The columns of the stages; above the needs there is room for the day.</summary>
    public static IReadOnlyList<(string Heading, int Width)> StageColumns(bool above) => above
        ? [("", 1), ("Lacks", 10), ("Begins", 11), ("Stage", 0)]
        : [("", 1), ("Lacks", 10), ("Stage", 0)];

    /// <summary>The columns of the needs.</summary>
    public static IReadOnlyList<(string Heading, int Width)> NeedColumns(int width) => width >= NeedsWideFrom
        ? [("Need", 16), ("Material", 13), ("Length", 19), ("Lacks", 10), ("For", 0)]
        : [("Need", 12), ("Material", 9), ("Length", 13), ("Lacks", 9), ("For", 0)];

    /// <summary>
    /// How many stages are shown above the needs: no more than there are, and no more than half of the lines, so that nothing jumps as
    /// another is chosen.
    /// </summary>
    /// <param name="stages">How many there are.</param>
    /// <param name="lines">Lines for stages and needs together.</param>
    public static int StageLines(int stages, int lines) => Math.Clamp(stages, 1, Math.Max(1, lines / 2));

    public static string StageCell(StagesState state, int row, int column, bool above)
    {
        var stage = state.Yard.Stages[row];
        return TextRules.Harmless(column switch
        {
            0 => state.Picked.Contains(stage.Name) ? "*" : "",
            1 => Lacks(Count(state.Lacking[row]), Count(stage)),
            2 when above => stage.Date is { } day ? Day(day) : "no day set",
            _ => stage.Name,
        });
    }

    public static string NeedCell(StagesState state, int row, int column)
    {
        var stage = state.Stage!;
        var lacking = state.Lacking[state.Chosen];
        if (row < stage.Cuts.Count)
        {
            var cut = stage.Cuts[row];
            return TextRules.Harmless(column switch
            {
                0 => cut.Name,
                1 => cut.Material.Name,
                2 => Lengths(state, cut),
                3 => Lacks(lacking.Cuts.FirstOrDefault(left => left.Name == cut.Name)?.Count ?? 0, cut.Count),
                _ => Words.Of(cut),
            });
        }

        var need = stage.Hardware[row - stage.Cuts.Count];
        return TextRules.Harmless(column switch
        {
            0 => need.Name,
            1 => need.Hardware.Name,
            3 => Lacks(lacking.Hardware.FirstOrDefault(left => left.Name == need.Name)?.Count ?? 0, need.Count),
            _ => "",
        });
    }

    /// <summary>Column of the line under which a fault is pointed at, from 0.</summary>
    public static int? FaultAt(StagesState state) =>
        state.Line.Ask is null && state.Reading is { Ok: false } wrong && wrong.Fault.Column > 0 && (state.Tried || state.Line.Text.TrimEnd().Length >= wrong.Fault.Column)
            ? wrong.Fault.Column - 1
            : null;

    /// <summary>What was understood, or what is wrong and where.</summary>
    public static IReadOnlyList<Row> Reading(StagesState state, int width)
    {
        if (state.Stage is not { } stage) return [.. Row.Wrapped("No stage is entered yet: ^K enters the first. Then type what it needs, a line a cut", width, Tone.Soft)];
        if (state.Reading is not { } reading)
            return [.. Row.Wrapped($"What {stage.Name} needs, a line a cut: {LineExamples.Need(state.Yard.Unit)}; or a counted thing: panel tie x40", width, Tone.Soft)];
        if (reading.TryGet(out var draft)) return [.. Row.Wrapped($"✓ {stage.Name}: {draft.ReadBack(state.Yard.Unit)}", width, Tone.Good, indent: 2), .. NewNameAsk.Rows(state.NewName, width), .. NewNameAsk.Rows(state.Odd, width)];
        return [.. reading.Faults.SelectMany(fault => Row.Wrapped(state.Tried ? $"✗ {fault}" : $"… {fault}", width, state.Tried ? Tone.Fault : Tone.Soft, indent: 2))];
    }

    /// <summary>What the list beside the stages shows.</summary>
    /// <param name="state">The place.</param>
    /// <param name="above">Needs above what is in view.</param>
    /// <param name="below">Needs below it.</param>
    public static Row NeedsHeading(StagesState state, int above, int below) => state.Stage is { } stage
        ? Row.Of(
            new Ink($"{(state.OnNeeds ? "▸ " : "  ")}{stage.Name} needs", Tone.Strong),
            new Ink(stage.Date is { } day ? $"  begins {Day(day)}" : "  no day set", Tone.Soft),
            new Ink(state.Reserved is { Count: > 0 } reserved ? $"  {Words.Count(reserved.Count, "piece")} reserved" : "", Tone.Soft),
            new Ink((above, below) switch
            {
                (0, 0) => "",
                (0, _) => $"  {below} more below",
                (_, 0) => $"  {above} more above",
                _ => $"  {above} more above, {below} below",
            }))
        : Row.Blank;

    /// <summary>What the list of the stages shows.</summary>
    public static Row StagesHeading(StagesState state) => Row.Of(
        new Ink($"{(state.OnNeeds ? "  " : "▸ ")}Stages in order", Tone.Strong),
        new Ink(state.Picked.Count > 0 ? $"   * {state.Picked.Count} to match" : "", Tone.Soft));

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Lengths(StagesState state, RequiredCut cut)
    {
        var unit = state.Yard.Unit;
        return cut.Longest > cut.Shortest ? $"{cut.Shortest.ToText(unit)} to {cut.Longest.ToText(unit)}" : cut.Shortest.ToText(unit);
    }

    private static string Lacks(int lacking, int all) => lacking == 0 ? (all == 0 ? "-" : "all made") : $"{lacking} of {all}";

    private static int Count(Stage stage) => stage.Cuts.Sum(cut => cut.Count) + stage.Hardware.Sum(need => need.Count);
}
