using Offcuts.Core.Faults;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>The settings' place as text: each in the words by which it is set, the chosen one explained.</summary>
internal static class SettingsRows
{
    /// <summary>What the line would change, or what is wrong with it.</summary>
    public static IReadOnlyList<Row> Reading(SettingsState state, int width)
    {
        if (state.Reading is not { } reading)
            return [.. Row.Wrapped("Each line below sets what it says. Type one anew, like kerf foam 0, keep 2x4 18 or cover the barn; or Enter to change the chosen one", width, Tone.Soft)];
        if (!reading.TryGet(out var settings))
            return [.. reading.Faults.SelectMany(fault => Row.Wrapped(state.Tried ? $"✗ {fault}" : $"… {fault}", width, state.Tried ? Tone.Fault : Tone.Soft, indent: 2))];
        var now = ChangeSettings.Lines(settings).ToArray();
        string[] before = [.. state.Yard.SettingLines.Select(line => line.Text)];
        string[] fresh = [.. now.Except(before)];
        string[] gone = [.. before.Except(now)];
        var said = (fresh.Length, gone.Length) switch
        {
            (0, 0) => "that is set already",
            (0, _) => $"no more: {string.Join("; ", gone)}",
            (_, 0) => string.Join("; ", fresh),
            (1, 1) => $"{fresh[0]}, instead of {gone[0]}",
            _ => $"{fresh[0]}; what else is set is written so too",
        };
        return [.. Row.Wrapped($"✓ {said}", width, Tone.Good, indent: 2)];
    }

    /// <summary>The settings, each a part of the page.</summary>
    public static IReadOnlyList<IReadOnlyList<Row>> Parts(SettingsState state, int width) =>
        [.. state.Yard.SettingLines.Select((line, i) => Part(state, line.Text, i, width))];

    private static List<Row> Part(SettingsState state, string line, int at, int width)
    {
        var rows = new List<Row>();
        var group = SettingWords.Group(line, at == 0 ? "" : state.Yard.SettingLines[at - 1].Text);
        if (group.Length > 0) rows.Add(Row.Of(group, Tone.Soft));
        var row = Row.Of($"  {TextRules.Harmless(line)}", Tone.Plain);
        rows.Add(at == state.Chosen ? row.Marked(width) : row);
        if (at == state.Chosen) rows.AddRange(Row.Wrapped($"      {SettingWords.About(line)}", width));
        return rows;
    }
}
