using System.Collections.Immutable;
using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What the place of the stages does: pure.</summary>
internal static class StagesModel
{
    public static StagesState Start(YardSnapshot yard) => Taken(new StagesState { Yard = yard }, yard);

    /// <summary>The next state, and what is asked of the shell.</summary>
    public static Turn<StagesState> Apply(StagesState state, Intent intent)
    {
        if (state.Line.EditedToSave(intent) is { } edit)
        {
            var tried = state.Tried && edit.Line.Text.Length > 0 && intent is not Intent.Recall;
            var typedFor = edit.Line.Text.Length == 0 || edit.Line.Ask is not null ? "" : state.TypedFor.Length > 0 ? state.TypedFor : state.Stage?.Name ?? "";
            return new(Read(state with { Line = edit.Line, Tried = tried, TypedFor = edit.Line.Ask is null ? typedFor : state.TypedFor, Doubted = false }), Notice: edit.Notice);
        }

        switch (intent)
        {
            case Intent.Move(var by):
                return new(Moved(state, by));
            case Intent.Edge(var last):
                return new(Moved(state, last ? int.MaxValue / 2 : int.MinValue / 2));
            case Intent.OtherList:
                return new(state with { OnNeeds = !state.OnNeeds });
            case Intent.Enter when state.Line.Ask is Ask.Write ask:
                return Answered(state, ask.Topic, state.Line.Text.Trim());
            case Intent.Enter when state.Line.Ask is null:
                return Entered(Read(state));
            case Intent.Answer(var letter) when state.Line.Ask is Ask.Choose ask:
                return Chose(state, ask, letter);
            case Intent.Do(var want) when state.Line.Ask is null:
                return Wanted(state, want);
            default:
                return new(state);
        }
    }

    /// <summary>Takes in what the shell tells.</summary>
    public static Turn<StagesState> Hear(StagesState state, News news)
    {
        switch (news)
        {
            case News.Fresh(var yard) fresh:
                var taken = Taken(state, yard);
                return new(Read(fresh.Own && state.About is { } about ? taken with { About = Named(yard, about.Name) ?? about } : taken));
            case News.Done(Errand.AddNeed added, _):
                return EnteredLines.Next(InSight(state, added.Stage, added.Line) with { Line = state.Line.Arrived(), Tried = false, TypedFor = state.Line.Entered.Count > 0 ? added.Stage : "" }, Read, state => Entered(state, queued: true));
            case News.Done(Errand.ReplaceNeed replaced, _):
                return new(InSight(state, replaced.Stage, replaced.Line));
            case News.Refused(Errand.ReplaceNeed refused, _) when Named(state.Yard, refused.Stage) is { } stage:
                return new(Read(Reopened(state, StagesAsks.CorrectNeed(stage, refused.Need), refused.Line, stage) with { Correcting = refused.Need }));
            case News.Done(Errand.AddStage added, _):
                return new(state with { Chosen = Math.Max(0, IndexOf(state.Yard, added.Name)), Need = 0 });
            case News.Refused(Errand.AddNeed, var faults):
                return new(state with { Line = state.Line.Returned(), Reading = Result<CutDraft>.Fail(faults), Tried = true });
            case News.Refused(Errand.AddStage refused, _):
                return new(Reopened(state, StagesAsks.NewStage, $"{refused.Name} {Day(refused.Day)}".Trim(), state.Stage));
            case News.Refused(Errand.RenameStage refused, _) when Named(state.Yard, refused.Stage) is { } stage:
                return new(Reopened(state, StagesAsks.Rename(stage), refused.To, stage));
            case News.Refused(Errand.SetDay refused, _) when Named(state.Yard, refused.Stage) is { } stage:
                return new(Reopened(state, StagesAsks.Day(stage), Day(refused.Day), stage));
            case News.Refused(Errand.MoveStage refused, _) when Named(state.Yard, refused.Stage) is { } stage:
                return new(Reopened(state, StagesAsks.Position(stage, state.Yard.Stages.Count), Number(refused.Position), stage));
            default:
                return new(state);
        }
    }

    /// <summary>The stage of this name is chosen, and the arrows move among its needs.</summary>
    public static StagesState Choose(StagesState state, string name) =>
        IndexOf(state.Yard, name) is >= 0 and var at ? state with { Chosen = at, Need = 0, OnNeeds = state.Yard.Stages[at].Cuts.Count + state.Yard.Stages[at].Hardware.Count > 0 } : state;

    // The chosen stage stays chosen wherever it now stands.
    private static StagesState Taken(StagesState state, YardSnapshot yard)
    {
        var at = state.Stage is { } stage ? IndexOf(yard, stage.Name) : -1;
        var chosen = at >= 0 ? at : Math.Clamp(state.Chosen, 0, Math.Max(0, yard.Stages.Count - 1));
        var next = state with
        {
            Yard = yard,
            Chosen = chosen,
            Lacking = [.. yard.Stages.Select(one => StageNeeds.Lacking(one, yard.Plans))],
            Picked = [.. state.Picked.Where(name => yard.Stages.Any(one => one.Name == name))],
        };
        return next with { Need = Math.Clamp(next.Need, 0, Math.Max(0, next.Needs.Count - 1)) };
    }

    // What was just added or corrected is the chosen need, and so is in view.
    private static StagesState InSight(StagesState state, string stage, string line)
    {
        if (state.Stage?.Name != stage || !CutLine.Read(line, stage, state.Yard.Unit).TryGet(out var draft)) return state;
        var at = state.Needs.ToList().IndexOf(draft.Cut?.Name ?? draft.Hardware!.Name);
        return at < 0 ? state : state with { Need = at };
    }

    private static StagesState Moved(StagesState state, int by)
    {
        if (state.OnNeeds) return state with { Need = Math.Clamp(state.Need + by, 0, Math.Max(0, state.Needs.Count - 1)) };
        var next = state with { Chosen = Math.Clamp(state.Chosen + by, 0, Math.Max(0, state.Yard.Stages.Count - 1)), Need = 0 };
        return Read(next with { TypedFor = next.TypedFor.Length > 0 ? next.Stage?.Name ?? "" : "" });
    }

    private static StagesState Read(StagesState state)
    {
        if (state.Line.Ask is not (null or Ask.Write { Topic: Topic.CorrectNeed }) || state.Line.Text.Trim().Length == 0) return state with { Reading = null, NewName = null, Odd = null };
        var reading = CutLine.Read(state.Line.Text, state.Stage?.Name ?? "", state.Yard.Unit);
        return reading.TryGet(out var draft)
            ? state with { Reading = reading, NewName = state.Yard.Names.NewAmong([draft.Material]).FirstOrDefault(), Odd = OddSize.Of(draft, state.Yard.Settings) }
            : state with { Reading = reading, NewName = null, Odd = null };
    }

    // What was entered while a line before it was on its way goes to the stage that was meant then, whichever is chosen since.
    private static Turn<StagesState> Entered(StagesState state, bool queued = false)
    {
        if (state.Line.Sent.Length > 0) return new(Read(state with { Line = state.Line.EnterNext() }), Notice: state.Line.Changed);
        if (state.Reading is not { } reading) return new(state);
        if (((queued ? Named(state.Yard, state.TypedFor) : null) ?? state.Stage) is not { } stage) return new(state, Notice: new Notice("enter a stage first (^K); the line stays as it is", Tone.Fault));
        if (state.TypedFor.Length > 0 && state.TypedFor != stage.Name)
            return new(state with { TypedFor = stage.Name }, Notice: new Notice($"{(Named(state.Yard, state.TypedFor) is null ? $"{state.TypedFor} is not there any more under that name" : $"this was entered for {state.TypedFor}")}; Enter once more adds this to {stage.Name}", Tone.Caution));
        var meant = new Errand.AddNeed(stage.Name, state.Line.Text, NewNames: true, OddSizes: true);
        if (state.NewName is { } name) return new(Opened(state, NewNameAsk.Of(name, state.Line.Text, meant)));
        if (state.Odd is { } odd) return new(Opened(state, NewNameAsk.Of(odd, meant)));
        return reading.Ok
            ? new(state with { Line = state.Line.Send() }, new Errand.AddNeed(stage.Name, state.Line.Text), Notice.None)
            : new(state with { Tried = true }, Notice: new Notice("not saved: put right what is marked, then Enter again", Tone.Fault));
    }

    private static Turn<StagesState> Wanted(StagesState state, Want want)
    {
        if (want == Want.NewStage) return new(Opened(state, StagesAsks.NewStage));
        if (want == Want.Match) return new(state, new Errand.Match(new MatchWish([.. state.Yard.Stages.Select(one => one.Name).Where(state.Picked.Contains)])));
        if (state.Stage is not { } stage) return new(state, Notice: new Notice("no stage is entered yet; ^K enters one"));
        return want switch
        {
            Want.SetDay => new(Opened(state, StagesAsks.Day(stage), Day(stage.Date))),
            Want.Rename when state.OnNeeds && state.Needs.Count > 0 => Correcting(state, stage),
            Want.Rename when state.OnNeeds => new(state, Notice: new Notice($"{stage.Name} needs nothing yet that could be corrected; Tab leads back to the stages")),
            Want.Rename => new(Opened(state, StagesAsks.Rename(stage), stage.Name)),
            Want.SetOrder => new(Opened(state, StagesAsks.Position(stage, state.Yard.Stages.Count), Number(state.Chosen + 1))),
            Want.FreePieces when state.Reserved.Count == 0 => new(state, Notice: new Notice($"nothing is reserved for {stage.Name}")),
            Want.FreePieces => new(Opened(state, StagesAsks.Free(stage, state.Reserved))),
            Want.PickStage => new(state with { Picked = state.Picked.Contains(stage.Name) ? state.Picked.Remove(stage.Name) : state.Picked.Add(stage.Name) }),
            Want.TakeOff when state.OnNeeds && state.Needs.Count > 0 => new(Opened(state, StagesAsks.DropNeed(stage, state.Needs[state.Need]))),
            Want.TakeOff when !state.OnNeeds => new(Opened(state, StagesAsks.Remove(stage, ChangeStages.WithStage(state.Yard.Plans, stage.Name)))),
            _ => new(state),
        };
    }

    private static Turn<StagesState> Correcting(StagesState state, Stage stage)
    {
        var line = state.Need < stage.Cuts.Count ? CutLine.Write(stage.Cuts[state.Need], state.Yard.Unit) : CutLine.Write(stage.Hardware[state.Need - stage.Cuts.Count]);
        var need = state.Needs[state.Need];
        return new(Read(Reopened(state, StagesAsks.CorrectNeed(stage, need), line, stage) with { Correcting = need, Doubted = false }), Notice: Notice.None);
    }

    private static Turn<StagesState> Corrected(StagesState state, StagesState closed, Stage stage, string text)
    {
        var asked = Read(state);
        if (asked.Reading is not { } reading) return new(state, Notice: new Notice("write what the need should be, or Esc leaves it as it was", Tone.Fault));
        if (!reading.Ok) return new(asked with { Tried = true }, Notice: new Notice("not saved: put right what is marked, then Enter again", Tone.Fault));
        if (!state.Doubted && (asked.NewName is not null || asked.Odd is not null)) return new(asked with { Doubted = true }, Notice: new Notice("! that looks like a slip; Enter once more saves it so", Tone.Caution));
        return new(closed with { Tried = false, Doubted = false }, new Errand.ReplaceNeed(stage.Name, state.Correcting, text), Notice.None);
    }

    private static Turn<StagesState> Answered(StagesState state, Topic topic, string text)
    {
        var closed = Read(state with { Line = state.Line.Close() });
        if (topic != Topic.StageName && Overtaken(state, topic) is { } overtaken) return overtaken;
        switch (topic)
        {
            case Topic.StageName:
                var (name, day) = NameAndDay(text);
                if (day is null && LooksLikeDay(name)) return new(state, Notice: new Notice(CommandFaults.DayUnreadable(name.Split(' ')[^1]).Sentence, Tone.Fault));
                return name.Length == 0
                    ? new(state, Notice: new Notice(YardFaults.StageWithoutName().Sentence, Tone.Fault))
                    : new(closed, new Errand.AddStage(name, day));
            case Topic.CorrectNeed when state.About is { } stage:
                return Corrected(state, closed, stage, text);
            case Topic.StageNewName when state.About is { } stage:
                return new(closed, text == stage.Name ? null : new Errand.RenameStage(stage.Name, text));
            case Topic.StageDay when state.About is { } stage:
                if (text.Length == 0) return new(closed, new Errand.SetDay(stage.Name, null));
                return ReadDay(text) is { } date
                    ? new(closed, new Errand.SetDay(stage.Name, date))
                    : new(state, Notice: new Notice(CommandFaults.DayUnreadable(text).Sentence, Tone.Fault));
            case Topic.StagePosition when state.About is { } stage:
                return int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var position)
                    ? new(closed, new Errand.MoveStage(stage.Name, position))
                    : new(state, Notice: new Notice($"write its place as a number from 1 to {state.Yard.Stages.Count}", Tone.Fault));
            default:
                return new(closed);
        }
    }

    // The stage is gone, or what is answered about it was changed by another program while it was asked: that is said before anything is done.
    private static Turn<StagesState>? Overtaken(StagesState state, Topic topic)
    {
        if (state.About is not { } asked) return null;
        var at = IndexOf(state.Yard, asked.Name);
        if (at < 0)
            return new(Read(state with { Line = state.Line.Close() }), Notice: new Notice($"the stage {asked.Name} is not there any more under that name; nothing was changed", Tone.Fault));
        var now = state.Yard.Stages[at];
        if (topic == Topic.CorrectNeed && Line(now, state) is { } other && other != Line(asked, state))
            return new(state with { About = now }, Notice: new Notice($"another program changed {state.Correcting} of {now.Name} meanwhile: {other}; Enter once more saves yours", Tone.Caution));
        if (topic != Topic.StageDay || now.Date == asked.Date) return null;
        return new(state with { About = now }, Notice: new Notice($"another program set the day of {now.Name} to {(now.Date is null ? "none" : Day(now.Date))} meanwhile; Enter once more sets yours", Tone.Caution));
    }

    // The need that is corrected as a line says it; none where it is not there.
    private static string? Line(Stage stage, StagesState state) =>
        stage.Cuts.FirstOrDefault(cut => cut.Name == state.Correcting) is { } cut ? CutLine.Write(cut, state.Yard.Unit)
        : stage.Hardware.FirstOrDefault(need => need.Name == state.Correcting) is { } need ? CutLine.Write(need)
        : null;

    private static Turn<StagesState> Chose(StagesState state, Ask.Choose ask, char letter) =>
        ask.Of(letter) is { } choice
            ? new(Read(state with { Line = state.Line.Chose(choice) }), choice.Errand)
            : new(state);

    private static StagesState Reopened(StagesState state, Ask ask, string written, Stage? about) => state with { Line = state.Line.Reopen(ask, written), About = about };

    private static StagesState Opened(StagesState state, Ask ask, string given = "") => state with { Line = state.Line.Open(ask, given), About = state.Stage };

    // "stem wall 2026-05-31": a day at the end is the day it begins.
    private static (string Name, DateOnly? Day) NameAndDay(string text)
    {
        var space = text.LastIndexOf(' ');
        return space > 0 && ReadDay(text[(space + 1)..]) is { } day ? (text[..space].Trim(), day) : (text, null);
    }

    private static bool LooksLikeDay(string name) =>
        name.Split(' ')[^1] is { Length: >= 8 and <= 10 } last && last.Count(c => c == '-') == 2 && last.All(c => c == '-' || char.IsAsciiDigit(c));

    private static DateOnly? ReadDay(string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;

    private static string Day(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "";

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static Stage? Named(YardSnapshot yard, string name) => IndexOf(yard, name) is >= 0 and var at ? yard.Stages[at] : null;

    private static int IndexOf(YardSnapshot yard, string name)
    {
        for (var i = 0; i < yard.Stages.Count; i++)
            if (yard.Stages[i].Name == name) return i;
        return -1;
    }
}
