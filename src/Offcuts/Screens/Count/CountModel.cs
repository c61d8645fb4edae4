using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What the place does where the yard is counted: pure.</summary>
internal static class CountModel
{
    public static CountState Start(YardSnapshot yard) => new() { Yard = yard };

    /// <summary>The next state, and what is asked of the shell.</summary>
    public static Turn<CountState> Apply(CountState state, Intent intent)
    {
        if (intent is Intent.Escape && state.Reading is not null && state.Line.Ask is null) return new(state, new Errand.StopMatch());
        if (intent is not Intent.Paste && state.Line.EditedToSave(intent) is { } edit) return new(state with { Line = edit.Line }, Notice: edit.Notice);
        switch (intent)
        {
            case Intent.Move(var by):
                return new(state with { Chosen = Within(state, state.Chosen + by) });
            case Intent.Edge(var last):
                return new(state with { Chosen = last ? Within(state, int.MaxValue) : 0 });
            case Intent.Enter when state.Line.Ask is null:
                return Entered(state);
            case Intent.Answer(var letter) when state.Line.Ask is Ask.Choose ask && ask.Of(letter) is { } choice:
                return new(state with { Line = state.Line.Close() }, choice.Errand);
            case Intent.Do(var want) when state.Line.Ask is null:
                return Wanted(state, want);
            default:
                return new(state);
        }
    }

    /// <summary>Takes in what the shell tells.</summary>
    public static Turn<CountState> Hear(CountState state, News news)
    {
        switch (news)
        {
            case News.Fresh(var yard):
                var next = state with { Yard = yard };
                return new(next with { Chosen = Within(next, next.Chosen) });
            case News.Counting(var progress):
                return new(state with { Progress = progress });
            case News.Counted(var count):
                return new(state with { Reading = null, Progress = null, Counted = count, Chosen = 0, Lines = [.. CountText.Lines(count, state.Yard.Unit)], Line = state.Line.Sent.Length > 0 ? state.Line.Arrived() : state.Line });
            case News.Refused(Errand.CountFiles, _):
                return new(state with { Reading = null, Progress = null, Line = state.Line.Returned() });
            case News.Done(Errand.AcceptCount, _):
                return new(Without(state));
            default:
                return new(state);
        }
    }

    /// <summary>What a line names and where it was seen: <c>~/photos @north rack</c>.</summary>
    public static (string Path, string At) Read(string line)
    {
        var text = line.Trim();
        if (text.StartsWith('@')) return ("", text[1..].Trim());
        var at = text.LastIndexOf(" @", StringComparison.Ordinal);
        return at < 0 ? (text, "") : (text[..at].TrimEnd(), text[(at + 2)..].Trim());
    }

    private static Turn<CountState> Entered(CountState state)
    {
        if (state.Reading is not null) return new(state, Notice: new Notice("pictures are being read; Esc stops it"));
        var (path, at) = Read(state.Line.Text);
        if (path.Length == 0)
        {
            if (at.Length > 0) return new(state, Notice: new Notice("write which pictures before the place, like: ~/photos @north rack", Tone.Fault));
            return state.Place is { } place
                ? new(state with { Line = state.Line.Typed($" @{place.Name}") }, Notice: new Notice("write before it where the pictures are: a folder, a picture, a scanner's file"))
                : new(state);
        }

        var errand = new Errand.CountFiles(path, at, state.Partly);
        return new(state with { Reading = errand, Line = state.Line.Send() }, errand, Notice.None);
    }

    private static Turn<CountState> Wanted(CountState state, Want want)
    {
        switch (want)
        {
            case Want.Keep when state.Counted is { } count:
                var changes = CountText.Changes(count);
                return changes.Length == 0
                    ? new(state, Notice: new Notice("there is nothing to accept: no label of this yard was seen at a place"))
                    : new(state with { Line = state.Line.Open(new Ask.Choose($"Accept the count? {changes}", [new Choice('y', "accept", new Errand.AcceptCount(count))])) });
            case Want.Keep:
                return new(state, Notice: new Notice("nothing is counted yet: write where the pictures are, then Enter"));
            case Want.OtherPage:
                var partly = !state.Partly;
                var told = new Notice(partly ? "no place is taken as counted whole: nothing will be missing" : "places are taken as counted whole: what is not seen there is missing");
                return state.Counted is { } counted && state.Reading is null
                    ? new(state with { Partly = partly }, new Errand.CountAgain(counted, partly), told)
                    : new(state with { Partly = partly }, Notice: told);
            case Want.QueueLabel when state.Place is { } place:
                return new(state, new Errand.LabelPlace(place.Name));
            case Want.TakeOff when state.Counted is not null:
                return new(Without(state), Notice: new Notice("the count is let go; nothing was changed by it"));
            default:
                return new(state);
        }
    }

    private static CountState Without(CountState state) => state with { Counted = null, Lines = [], Chosen = 0 };

    private static int Within(CountState state, int at) => Math.Clamp(at, 0, Math.Max(0, state.Count - 1));
}
