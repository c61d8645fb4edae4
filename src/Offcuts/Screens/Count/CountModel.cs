using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What the place does where the yard is counted: pure.</summary>
internal static class CountModel
{
    public static CountState Start(YardSnapshot yard) => new() { Yard = yard, Labels = LabelEntry.Of(yard) };

    /// <summary>The next state, and what is asked of the shell.</summary>
    public static Turn<CountState> Apply(CountState state, Intent intent)
    {
        if (state.Preview.Count > 0 && Previewing(state, intent) is { } shown) return shown;
        if (intent is Intent.Escape && state.Reading is not null && state.Line.Ask is null) return new(state, new Errand.StopMatch());
        if (intent is not Intent.Paste && state.Line.EditedToSave(intent) is { } edit) return new(state with { Line = edit.Line }, Notice: edit.Notice);
        switch (intent)
        {
            case Intent.Move(var by):
                return new(state with { Chosen = Within(state, state.Chosen + by) });
            case Intent.Edge(var last):
                return new(state with { Chosen = last ? Within(state, int.MaxValue) : 0 });
            case Intent.OtherList when state.Counted is null && state.Line.Ask is null:
                return new(state with { OnLabels = !state.OnLabels, Chosen = 0 });
            case Intent.Enter when state.Line.Ask is null && state.Label is { } label && state.Line.Text.Trim().Length == 0:
                return new(state, new Errand.PreviewLabel(label.Code, state.Layout));
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

    /// <summary>Shows the labels with one of them chosen.</summary>
    public static CountState Choose(CountState state, Code code) => state.Counted is not null || state.Line.Ask is not null
        ? state
        : state with { OnLabels = true, Preview = [], Chosen = Math.Max(0, state.Labels.ToList().FindIndex(label => label.Code == code && label.Kind != LabelKind.Waits)) };

    /// <summary>Takes in what the shell tells.</summary>
    public static Turn<CountState> Hear(CountState state, News news)
    {
        switch (news)
        {
            case News.Fresh(var yard):
                var next = state with { Yard = yard, Labels = ReferenceEquals(yard, state.Yard) ? state.Labels : LabelEntry.Of(yard) };
                return new(next with { Chosen = Within(next, next.Chosen) });
            case News.Counting(var progress):
                return new(state with { Progress = progress });
            case News.Counted(var count):
                return new(state with { Reading = null, Progress = null, Counted = count, Chosen = 0, Preview = [], Lines = [.. CountText.Lines(count, state.Yard.Unit)], Line = state.Line.Sent.Length > 0 ? state.Line.Arrived() : state.Line });
            case News.Previewed(var code, var layout, var lines):
                return new(state with { Previewed = code, Layout = layout, Preview = lines, Top = 0, OnLabels = true });
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
                    ? new(state, Notice: new Notice(count.Seen + count.BinsSeen == 0 ? "there is nothing to accept: no label of this yard was seen" : "there is nothing to accept: nothing that was seen lies elsewhere or is back, and no place counts as counted"))
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
            case Want.QueueLabel when state.Label is { Kind: not LabelKind.Blank } label:
                return new(state, label.Kind == LabelKind.Place ? new Errand.LabelPlace(label.What) : new Errand.QueueLabels([label.Code]));
            case Want.Void when state.Label is { } spoiled:
                return new(state with { Line = state.Line.Open(new Ask.Choose($"Make the label {spoiled.Code} void? It is on paper perhaps, and never taken again", [new Choice('y', "void", new Errand.VoidLabel(spoiled.Code))])) });
            case Want.OpenBundle when state.Label is { Kind: LabelKind.Bundle } bundle:
                return new(state with { Line = state.Line.Open(new Ask.Choose($"Open the bundle {bundle.Code}, {bundle.What}? Its pieces lie by themselves then, and their labels wait", [new Choice('y', "open", new Errand.OpenBundle(bundle.Code))])) });
            case Want.OpenBundle or Want.Void:
                return new(state, Notice: new Notice("choose a label first: Tab shows them"));
            case Want.TakeOff when state.Counted is not null:
                return new(Without(state), Notice: new Notice("the count is let go; nothing was changed by it"));
            default:
                return new(state);
        }
    }

    // While a label is looked at: on through the layouts, or back.
    private static Turn<CountState>? Previewing(CountState state, Intent intent)
    {
        switch (intent)
        {
            case Intent.Escape or Intent.Enter:
                return new(state with { Preview = [], Top = 0 });
            case Intent.Move(var by):
                return new(state with { Top = Math.Clamp(state.Top + by, 0, state.Preview.Count - 1) });
            case Intent.Edge(var last):
                return new(state with { Top = last ? state.Preview.Count - 1 : 0 });
            case Intent.OtherList:
                string[] names = [.. PrintLabels.Layouts().Select(layout => layout[0])];
                return new(state, new Errand.PreviewLabel(state.Previewed, names[(Array.IndexOf(names, state.Layout) + 1) % names.Length]));
            case Intent.Do:
                return new(state, Notice: new Notice("a label is looked at; Esc goes back"));
            default:
                return null;
        }
    }

    private static CountState Without(CountState state) => state with { Counted = null, Lines = [], Chosen = 0 };

    private static int Within(CountState state, int at) => Math.Clamp(at, 0, Math.Max(0, state.Count - 1));
}
