using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What the settings' place does: pure.</summary>
internal static class SettingsModel
{
    public static SettingsState Start(YardSnapshot yard) => new() { Yard = yard };

    /// <summary>The next state, and what is asked of the shell.</summary>
    public static Turn<SettingsState> Apply(SettingsState state, Intent intent)
    {
        if (state.Line.EditedToSave(intent) is { } edit)
        {
            var tried = state.Tried && edit.Line.Text.Length > 0 && intent is not Intent.Recall;
            return new(Read(state with { Line = edit.Line, Tried = tried }), Notice: edit.Notice);
        }

        switch (intent)
        {
            case Intent.Move(var by):
                return new(state with { Chosen = Within(state.Yard, state.Chosen + by) });
            case Intent.Edge(var last):
                return new(state with { Chosen = last ? Within(state.Yard, int.MaxValue) : 0 });
            case Intent.Enter when state.Line.Ask is null:
                return Entered(Read(state));
            case Intent.Answer(var letter) when state.Line.Ask is Ask.Choose ask && ask.Of(letter) is { } choice:
                return new(Read(state with { Line = state.Line.Chose(choice) }), choice.Errand);
            case Intent.Do(Want.ChangeLine) when state.Line.Ask is null:
                return Changing(state);
            case Intent.Do(Want.TakeOff) when state.Line.Ask is null && state.Setting is { } setting:
                return setting.BackToUsual is { } back
                    ? new(state with { Line = state.Line.Open(new Ask.Choose($"Take back \"{setting.Text}\"? {SettingWords.Then(back)}", [new Choice('y', "take it back", new Errand.SetSetting(back))])) })
                    : new(state, Notice: new Notice($"\"{setting.Text}\" is always set to something; ^E puts it on the line to be changed"));
            default:
                return new(state);
        }
    }

    /// <summary>Takes in what the shell tells.</summary>
    public static Turn<SettingsState> Hear(SettingsState state, News news)
    {
        switch (news)
        {
            case News.Fresh(var yard) fresh:
                return new(Read(Taken(state, yard, fresh.Own)));
            case News.Done(Errand.SetSetting, _) when state.Line.Sent.Length > 0:
                return new(Read(state with { Line = state.Line.Arrived(), Tried = false }));
            case News.Refused(Errand.SetSetting, var faults) when state.Line.Sent.Length > 0:
                return new(state with { Line = state.Line.Returned(), Reading = Result<YardSettings>.Fail(faults), Tried = true });
            default:
                return new(state);
        }
    }

    // The line that was set just now is chosen; else the chosen one stays, wherever it now stands.
    private static SettingsState Taken(SettingsState state, YardSnapshot yard, bool own)
    {
        var lines = yard.SettingLines.ToList();
        var fresh = state.Line.Sent.Length > 0 ? lines.FindIndex(line => !state.Yard.SettingLines.Contains(line)) : -1;
        var at = fresh >= 0 ? fresh : lines.FindIndex(line => line == state.Setting);
        return state with { Yard = yard, Chosen = at >= 0 ? at : Within(yard, state.Chosen), Overtaken = own ? state.Overtaken : Overtaken(state, yard) };
    }

    // Two lines are about the same where their first words are: kerf, keep, use.
    private static string Overtaken(SettingsState state, YardSnapshot yard)
    {
        var typed = state.Line.Text.Trim();
        if (state.Line.Sent.Length > 0 || typed.Length == 0 || state.Line.Ask is not null) return state.Overtaken;
        var word = typed.Split(' ')[0];
        var changed = yard.SettingLines.Select(line => line.Text).Except(state.Yard.SettingLines.Select(line => line.Text)).FirstOrDefault(line => line.Split(' ')[0] == word);
        return changed is null ? state.Overtaken : $"another program set \"{changed}\" meanwhile; Enter once more sets yours";
    }

    private static SettingsState Read(SettingsState state)
    {
        if (state.Line.Ask is not null) return state;
        if (state.Line.Text.Trim().Length == 0) return state with { Reading = null, Overtaken = "" };
        return state with { Reading = ChangeSettings.Read(state.Yard.Settings, state.Line.Text) };
    }

    private static Turn<SettingsState> Entered(SettingsState state)
    {
        if (state.Line.Sent.Length > 0) return new(state);
        if (state.Reading is not { } reading) return Changing(state);
        if (state.Overtaken.Length > 0) return new(state with { Overtaken = "" }, Notice: new Notice(state.Overtaken, Tone.Caution));
        return reading.Ok
            ? new(state with { Line = state.Line.Send() }, new Errand.SetSetting(state.Line.Text.Trim()), Notice.None)
            : new(state with { Tried = true }, Notice: new Notice("not set: put it right, then Enter again", Tone.Fault));
    }

    private static Turn<SettingsState> Changing(SettingsState state)
    {
        if (state.Setting is not { } setting) return new(state);
        return state.Line.Text.Trim().Length > 0 && state.Line.Text != setting.Text
            ? new(state, Notice: new Notice("a line is being typed; Enter sets it, Esc twice clears it", Tone.Fault))
            : new(Read(state with { Line = state.Line.Offered(setting.Text), Tried = false }));
    }

    private static int Within(YardSnapshot yard, int at) => Math.Clamp(at, 0, Math.Max(0, yard.SettingLines.Count - 1));
}
