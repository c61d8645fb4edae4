using System.Collections.Immutable;
using Offcuts.Core.Faults;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>
/// Correcting a line that was saved already, without leaving the place: pure. What stands on the line meanwhile waits, and comes back.
/// </summary>
internal static class StripCorrecting
{
    private const int MostKept = 200;

    /// <summary>Opens the line that was saved last.</summary>
    public static Turn<StripState> Begun(StripState state) => state.Saved.Count == 0
        ? new(state, Notice: new Notice("no line was saved here since Offcuts was opened; ^F and a code shows a piece"))
        : state.Line.Sent.Length > 0
            ? new(state, Notice: new Notice("the line is being saved; correct it then"))
            : new(Opened(state, 0), Notice: Notice.None);

    /// <summary>The next state while a line is corrected.</summary>
    public static Turn<StripState> Apply(StripState state, Intent intent)
    {
        switch (intent)
        {
            case Intent.Recall(var step):
                return Other(state, step);
            case Intent.Paste(var lines):
                return new(state, Notice: new Notice($"{lines.Count} lines were pasted, but one line is corrected: none was taken", Tone.Fault));
            case Intent.Enter:
                return Entered(StripModel.Read(state));
            case Intent.Type or Intent.Escape when state.Line.Edited(intent) is { } edit:
                var next = state with { Line = edit.Line, Doubted = false, Tried = state.Tried && edit.Line.Ask is not null, Correcting = edit.Line.Ask is null ? null : state.Correcting };
                return new(StripModel.Read(next), Notice: edit.Notice);
            default:
                return new(state);
        }
    }

    /// <summary>
    /// The yard was read again: lines whose pieces are not there any more, because they were taken back, can't be corrected. What was typed to correct
    /// one stays on the line.
    /// </summary>
    public static StripState Taken(StripState state, YardSnapshot yard)
    {
        var line = state.Corrected;
        var saved = state.Saved.RemoveAll(one => one.Codes.All(code => yard.Find(code) is null));
        var next = state with { Yard = yard, Saved = saved };
        if (line is null) return next;
        var at = saved.IndexOf(line);
        if (at >= 0) return next with { Correcting = saved.Count - 1 - at };
        var gone = next with { Correcting = null, Doubted = false, Tried = false };
        return state.HoldsCorrection ? gone with { Line = state.Line.CloseKeeping(), Detached = true } : gone with { Line = state.Line.Close() };
    }

    /// <summary>One more line that can be corrected.</summary>
    public static ImmutableList<SavedLine> Kept(ImmutableList<SavedLine> saved, SavedLine line)
    {
        var more = saved.Add(line);
        return more.Count > MostKept ? more.RemoveAt(0) : more;
    }

    /// <summary>What was refused stands to be put right.</summary>
    public static StripState Reopened(StripState state, Errand.Correct refused, IReadOnlyList<Fault> faults)
    {
        var at = state.Saved.IndexOf(refused.Line);
        if (at < 0 || state.Line.Ask is not null) return StripModel.Read(state with { Line = state.Line.PutBack(refused.Text), Detached = state.Line.Text.Trim().Length == 0 });
        var back = state.Saved.Count - 1 - at;
        return state with { Correcting = back, Line = state.Line.Reopen(StripAsks.Correct(refused.Line, back), refused.Text), Reading = Result<TypedBatch>.Fail(faults), Tried = true };
    }

    private static StripState Opened(StripState state, int back)
    {
        var line = state.Saved[^(back + 1)];
        var next = state with { Correcting = back, Doubted = false, Tried = false, Line = state.Line.Reopen(StripAsks.Correct(line, back), line.Text) };
        return StripModel.Read(next);
    }

    private static Turn<StripState> Other(StripState state, int step)
    {
        var back = Math.Clamp(state.Correcting!.Value - step, 0, state.Saved.Count - 1);
        if (state.Line.Text != state.Corrected!.Text) return new(state, Notice: new Notice("this line is changed: Enter corrects it, Esc leaves it as it was; then the other"));
        return back == state.Correcting ? new(state, Notice: new Notice(step < 0 ? "that is the first line saved since Offcuts was opened" : "that is the line saved last")) : new(Opened(state, back), Notice: Notice.None);
    }

    private static Turn<StripState> Entered(StripState state)
    {
        var line = state.Corrected!;
        if (state.Reading is not { } reading) return new(state, Notice: new Notice("write what the line should say, or Esc leaves it as it was", Tone.Fault));
        if (!reading.TryGet(out var batch)) return new(state with { Tried = true }, Notice: new Notice("not saved: put right what is marked, then Enter again", Tone.Fault));
        if (!state.Doubted && (state.NewName is not null || state.Odd.Count > 0))
            return new(state with { Doubted = true }, Notice: new Notice("! that looks like a slip; Enter once more saves it so", Tone.Caution));
        var text = state.Line.Text;
        var closed = state with { Line = state.Line.Close(), Correcting = null, Doubted = false, Tried = false };
        return new(StripModel.Read(closed), new Errand.Correct(line, text, batch), Notice.None);
    }
}
