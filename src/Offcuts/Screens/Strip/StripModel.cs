using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What the catalogue line does: pure.</summary>
internal static class StripModel
{
    public static StripState Start(YardSnapshot yard, DateOnly today) => new()
    {
        Yard = yard,
        Paper = new PaperWish(PrintLabels.UsualLayout, 1, $"labels-{today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}.pdf"),
    };

    /// <summary>The next state, and what is asked of the shell.</summary>
    public static Turn<StripState> Apply(StripState state, Intent intent)
    {
        if (state.Corrected is not null) return StripCorrecting.Apply(state, intent);
        if (state.Line.EditedToSave(intent) is { } edit)
        {
            var tried = state.Tried && edit.Line.Text.Length > 0 && intent is not Intent.Recall;
            var detached = state.Detached && (edit.Line.Ask is not null || edit.Line.Text.Length > 0) && intent is not Intent.Recall;
            return new(Read(state with { Line = edit.Line, Tried = tried, Detached = detached }), Notice: edit.Notice);
        }

        switch (intent)
        {
            case Intent.Enter when state.Line.Ask is Ask.Write ask:
                return Answered(state, ask.Topic);
            case Intent.Enter when state.Line.Ask is null:
                return Entered(Read(state));
            case Intent.Answer(var letter) when state.Line.Ask is Ask.Choose ask:
                return Chosen(state, ask, letter);
            case Intent.OtherList when state.Line.Ask is null:
                return new(state with { OnQueue = !state.OnQueue });
            case Intent.Do(Want.Correct) when state.Line.Ask is null:
                return StripCorrecting.Begun(state);
            case Intent.Do(Want.PrintLabels):
                return state.Yard.Queue.Count == 0
                    ? new(state, Notice: new Notice(PrintFaults.NothingWaits().Sentence))
                    : new(state with { Line = state.Line.Open(StripAsks.LabelFile(state.Yard.Queue.Count, state.Paper), state.Paper.File) });
            case Intent.Do(Want.PrintBlanks):
                return new(state with { Line = state.Line.Open(StripAsks.BlankCount, state.Blanks.ToString(CultureInfo.InvariantCulture)) });
            default:
                return new(state);
        }
    }

    /// <summary>Takes in what the shell tells.</summary>
    public static Turn<StripState> Hear(StripState state, News news)
    {
        switch (news)
        {
            case News.Fresh(var yard):
                return new(Read(StripCorrecting.Taken(state, yard)));
            case News.Done(Errand.Catalogue, _) { Line: { } line }:
                return EnteredLines.Next(state with { Line = state.Line.Arrived(), Tried = false, Detached = false, Saved = StripCorrecting.Kept(state.Saved, line) }, Read, Entered);
            case News.Done(Errand.Correct done, _) { Line: { } line }:
                return new(state with { Saved = state.Saved.Contains(done.Line) ? state.Saved.Replace(done.Line, line) : state.Saved });
            case News.Refused(Errand.Correct refused, var faults):
                return new(StripCorrecting.Reopened(state, refused, faults));
            case News.Refused(Errand.Catalogue, var faults):
                return new(state with { Line = state.Line.Returned(), Reading = Result<TypedBatch>.Fail(faults), Tried = true });
            case News.Refused(Errand.PrintLabels refused, _):
                return new(state with { Line = state.Line.Reopen(StripAsks.LabelFile(state.Yard.Queue.Count, state.Paper), refused.Wish.File) });
            case News.Refused(Errand.PrintBlanks refused, _):
                return new(state with { Line = state.Line.Reopen(StripAsks.BlankFile(refused.Count, state.Paper), refused.Wish.File) });
            default:
                return new(state);
        }
    }

    /// <summary>The code a line begins and ends with: a scanned label and nothing more yet.</summary>
    public static Code OnlyCode(string line) => Code.Parse(line.Trim().TrimEnd(':', ',')) is { Ok: true } code ? code.Value : default;

    /// <summary>What the line says so far.</summary>
    public static StripState Read(StripState state)
    {
        var line = state.Line;
        if ((line.Ask is not null && state.Corrected is null) || line.Text.Trim().Length == 0) return state with { Reading = null, NewName = null, Odd = [], NewPlace = null };
        var reading = CataloguePieces.ReadLine(line.Text, state.Yard.Unit, state.Yard.Panels);
        if (!reading.TryGet(out var batch)) return state with { Reading = reading, NewName = null, Odd = [], NewPlace = null };
        return state with
        {
            Reading = reading,
            NewName = state.Yard.Names.NewAmong([batch.Material]).FirstOrDefault(),
            Odd = OddSize.Among(batch.Batch, state.Yard.Settings),
            NewPlace = NewPlace.Of(batch.Place, state.Yard.PlaceNames),
        };
    }

    private static Turn<StripState> Entered(StripState state)
    {
        if (state.Line.Sent.Length > 0) return new(Read(state with { Line = OnlyCode(state.Line.Rest).IsNone ? state.Line.EnterNext() : state.Line.EnterMeanwhile() }), Notice: state.Line.Changed);
        if (state.Reading is not { } reading) return new(state);
        if (OnlyCode(state.Line.Text) is { IsNone: false } code) return Scanned(state, code);
        if (reading.TryGet(out var batch))
        {
            if (Doubted(state, batch) is { } ask) return new(state with { Line = state.Line.Open(ask) });
            return new(state with { Line = state.Line.Send() }, new Errand.Catalogue(batch) { Text = state.Line.Text }, Notice.None);
        }

        return new(state with { Tried = true }, Notice: new Notice("not saved: put right what is marked, then Enter again", Tone.Fault));
    }

    private static Ask? Doubted(StripState state, TypedBatch batch)
    {
        var save = new Errand.Catalogue(batch, NewNames: true, OddSizes: true) { Text = state.Line.Text };
        if (state.NewName is { } name) return NewNameAsk.Of(name, state.Line.Text, save);
        return state.Odd is [var odd, ..] ? NewNameAsk.Of(odd, save) : null;
    }

    // A scanner ends with Enter: the code stays and the line waits for what the label hangs on.
    private static Turn<StripState> Scanned(StripState state, Code code)
    {
        if (state.Yard.Find(code) is { } there)
            return new(state, Notice: new Notice($"{code} hangs on a {there.Material} already; scan another label, or ^F and the scan show it", Tone.Fault));
        var next = Read(state with { Line = state.Line.Typed($"{code} "), Tried = false });
        return new(next, Notice: new Notice($"label {code}: now type what it hangs on, like 2x4 9'1 fair @north", Tone.Good));
    }

    private static Turn<StripState> Answered(StripState state, Topic topic)
    {
        var text = state.Line.Text.Trim();
        switch (topic)
        {
            case Topic.BlankCount:
                if (!int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var count) || count is < 1 or > PrintLabels.MostBlanks)
                    return new(state, Notice: new Notice(PrintFaults.BlanksOutside(PrintLabels.MostBlanks).Sentence, Tone.Fault));
                var next = state with { Blanks = count };
                return new(next with { Line = state.Line.Open(StripAsks.BlankFile(count, state.Paper), "blank-" + state.Paper.File) });
            case Topic.LabelFile or Topic.BlankFile:
                if (ReadPaper(text, state.Paper) is not { } paper) return new(state, Notice: new Notice("write the name of a PDF file, like labels.pdf", Tone.Fault));
                var closed = state with { Line = state.Line.Close(), Paper = topic == Topic.LabelFile ? paper : state.Paper };
                return topic == Topic.LabelFile
                    ? new(Read(closed), new Errand.PrintLabels(paper))
                    : new(Read(closed), new Errand.PrintBlanks(state.Blanks, paper));
            default:
                return new(state);
        }
    }

    private static Turn<StripState> Chosen(StripState state, Ask.Choose ask, char letter) =>
        ask.Of(letter) is { } choice
            ? new(Read(state with { Line = state.Line.Chose(choice) }), choice.Errand)
            : new(state);

    // "labels.pdf", or with the layout and the first free label behind it: "labels.pdf a4-14 5".
    private static PaperWish? ReadPaper(string text, PaperWish usual)
    {
        var end = text.IndexOf(".pdf", StringComparison.OrdinalIgnoreCase);
        if (end < 1) return null;
        var file = text[..(end + 4)].Trim();
        var words = text[(end + 4)..].Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var (layout, start) = (usual.Layout, 1);
        foreach (var word in words)
        {
            if (int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var number)) start = number;
            else layout = word;
        }

        return new PaperWish(layout, start, file);
    }
}
