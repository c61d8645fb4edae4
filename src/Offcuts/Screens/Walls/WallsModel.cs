using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Walls;
using Offcuts.Matching.Runs;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What the place of the walls does: pure.</summary>
internal static class WallsModel
{
    public static WallsState Start(YardSnapshot yard) => new() { Yard = yard };

    /// <summary>The next state, and what is asked of the shell.</summary>
    public static Turn<WallsState> Apply(WallsState state, Intent intent)
    {
        if (state.Form is { } form) return FormModel.Apply(state, form, intent);
        switch (intent)
        {
            case Intent.Answer(var letter) when state.Line.Ask is Ask.Choose ask:
                return ask.Of(letter) is not { } choice ? new(state)
                    : choice.Want is { } chosen ? Wanted(state with { Line = state.Line.Close() }, chosen, ask.About)
                    : new(state with { Line = state.Line.Close() }, choice.Errand, Notice.None);
            case Intent.Escape when state.Filling && state.Line.Ask is null && state.Line.Text.Length == 0:
                return new(state, new Errand.StopMatch(), new Notice("stopping; the best laying so far is taken"));
            case Intent.Type or Intent.Escape when state.Line.Edited(intent) is { } edit:
                return new(Read(state with { Line = edit.Line, Tried = state.Tried && edit.Line.Text.Length > 0 }), Notice: edit.Notice);
            case Intent.Move(var by):
                return new(Moved(state, by));
            case Intent.Edge(var last):
                return new(Moved(state, last ? int.MaxValue / 2 : int.MinValue / 2));
            case Intent.OtherList:
                return new(state with { OnPage = !state.OnPage });
            case Intent.Enter when state.Line.Ask is Ask.Write ask:
                return Answered(state, ask, state.Line.Text.Trim());
            case Intent.Enter when state.Line.Ask is null:
                return Entered(state);
            case Intent.Do(var want) when state.Line.Ask is null:
                return Wanted(state, want);
            default:
                return new(state);
        }
    }

    /// <summary>Takes in what the shell tells.</summary>
    public static Turn<WallsState> Hear(WallsState state, News news)
    {
        var heard = Heard(state, news);
        return heard.State.Form is { } form ? heard with { State = FormModel.Hear(heard.State, form, news) } : heard;
    }

    private static Turn<WallsState> Heard(WallsState state, News news)
    {
        switch (news)
        {
            case News.Fresh(var yard):
                return new(Taken(state, yard));
            case News.WallOpened(var card):
                return new(Within(Read(state with { Card = card, Faults = [] })));
            case News.Refused(Errand.PrintWall drawing, _) when state.Form is null && state.Line.Ask is null && state.WallNamed(drawing.Wall) is not null:
                return new(state with { Line = state.Line.Reopen(WallsAsks.Sheet(drawing.Wall), drawing.File) });
            case News.Refused(Errand.OpenWall, var faults):
                return new(state with { Card = null, Faults = faults });
            case News.Matching matching:
                return new(state.Filling ? state with { Progress = matching.Progress, Seconds = matching.Seconds } : state);
            case News.WallFilled(var filled):
                return new(state with { Filling = false, Progress = null, Found = filled, FoundAt = state.Yard.Change, Page = state.Page is WallPage.Fits or WallPage.Systems ? WallPage.Elevation : state.Page, Top = 0 });
            case News.WouldEnter(var name, var strange) when state.Form is null && state.Line.Ask is null && state.WallNamed(name) is { } asked:
                return new(state with { Line = state.Line.Open(WallsAsks.Enter(asked, strange)) });
            case News.WallKept:
                return new(state with { Found = null });
            case News.Stacked:
                return new(state with { Found = null, Top = 0 });
            case News.Refused(Errand.StackWall(var wish), _) when state.Line.Ask is null && state.Line.Text.Length == 0 && state.WallNamed(wish.Wall) is { } here:
                return new(Read(state with { Line = state.Line.Reopen(WallsAsks.Courses(here.Sheet.Name), StackedLine.Write(wish)) }));
            case News.Done(Errand.SaveSheet saved, _) when state.Form is null && NameIn(saved) is { } name:
                return new(Choose(state, new(saved.Kind, name)));
            case News.Refused(Errand.SaveSheet { Edit.Of: { } of } refused, _) when state.Form is null && NameIn(refused) is { } name:
                return new(state with { Line = state.Line.Reopen(FormAsks.Rename(new(refused.Kind, of)), name) });
            case News.Refused(Errand.FillWall, _):
                return new(state with { Filling = false, Progress = null });
            case News.Fitting(var found):
                return new(state with { Fits = found, Page = WallPage.Fits, OnPage = true, Top = 0 });
            default:
                return new(state);
        }
    }

    /// <summary>What must be looked up before the chosen wall can be shown as it is now; nothing where all is there.</summary>
    public static Turn<WallsState> Missing(WallsState state)
    {
        if (state.Wall is not { } wall || state.Asked == (wall.Sheet.Name, state.Yard.Change)) return new(state);
        return new(state with { Asked = (wall.Sheet.Name, state.Yard.Change) }, new Errand.OpenWall(wall.Sheet.Name));
    }

    // The chosen wall and system stay chosen wherever they now stand.
    private static WallsState Taken(WallsState state, YardSnapshot yard)
    {
        var (wallAt, systemAt) = (Place(state.Wall?.Sheet.Name, yard.Walls.Select(wall => wall.Sheet.Name), state.Chosen), Place(state.ChosenSystem?.Name, yard.Systems.Select(system => system.Name), state.System));
        var found = state.Found is { } filled && yard.Walls.Any(wall => wall.Sheet.Name == filled.Kept.Sheet.Name && WallText.Write(wall.Sheet) == WallText.Write(filled.Kept.Sheet)) ? state.Found : null;
        var taken = Read(state with { Yard = yard, Found = found, System = systemAt, Chosen = wallAt, Awaited = null });
        return state.Awaited is { } awaited ? Choose(taken, awaited) with { Awaited = null } : taken;
    }

    // Where the name stands now; where it is gone, the place it had, as far as that is still there.
    private static int Place(string? name, IEnumerable<string> names, int before)
    {
        string[] all = [.. names];
        var at = Array.IndexOf(all, name);
        return at >= 0 ? at : Math.Clamp(before, 0, Math.Max(0, all.Length - 1));
    }

    /// <summary>The sheet of this name is chosen, at once or as soon as the yard that is shown has it.</summary>
    public static WallsState Choose(WallsState state, NamedSheet sheet)
    {
        var wall = sheet.Kind == SheetKind.Wall;
        string[] names = [.. wall ? state.Yard.Walls.Select(one => one.Sheet.Name) : state.Yard.Systems.Select(one => one.Name)];
        var at = Array.FindIndex(names, name => string.Equals(name, sheet.Name, StringComparison.OrdinalIgnoreCase));
        return at < 0 ? state with { Awaited = sheet } : wall ? Chosen(state, at) : state with { System = at };
    }

    /// <summary>Another wall is chosen.</summary>
    public static WallsState Chosen(WallsState state, int at)
    {
        var chosen = Math.Clamp(at, 0, Math.Max(0, state.Yard.Walls.Count - 1));
        return chosen == state.Chosen ? state : Read(state with { Chosen = chosen, Top = 0, Figure = 0, Opened = [], Faults = [] });
    }

    private static WallsState Moved(WallsState state, int by)
    {
        if (!state.OnPage) return Chosen(state, (int)Math.Clamp((long)state.Chosen + by, 0, int.MaxValue));
        if (state.Page == WallPage.Systems) return state with { System = (int)Math.Clamp((long)state.System + by, 0, Math.Max(0, state.Yard.Systems.Count - 1)) };

        return state.Page == WallPage.Takeoff
            ? Within(state with { Figure = (int)Math.Clamp((long)state.Figure + by, 0, int.MaxValue / 2) })
            : state with { Top = (int)Math.Clamp((long)state.Top + by, 0, int.MaxValue / 2) };
    }

    private static WallsState Within(WallsState state) =>
        state with { Figure = Math.Clamp(state.Figure, 0, Math.Max(0, (state.Shown?.Figures.Count ?? 0) - 1)) };

    private static WallsState Read(WallsState state) =>
        state with
        {
            Stacking = state.Line.Ask is Ask.Write { Topic: Topic.Stacked, About: { } about } ? (Result<StackedWish>?)Stacked(state, StackedLine.Read(state.Line.Text, about.Name, state.Yard.Unit)) : null,
            Reading = state.Form is not null || state.Line.Ask is not null || state.Line.Text.Trim().Length == 0
                ? null
                : (Result<OneOffNeed>?)Sought(state),
        };

    // Of the wall that is shown its system counts; without one that which a command would take.
    private static Result<OneOffNeed> Sought(WallsState state)
    {
        var pattern = state.Shown is { } card ? new PatternOf(card.Laid.System) : FitLine.Pattern(state.Line.Text, state.Yard.Unit, state.Yard.Systems);
        return pattern.Then(of => FitLine.Read(state.Line.Text, state.Yard.Unit, of.Sheet, state.Wall?.Stage ?? ""));
    }

    // While the card of the wall is there, also whether it has such courses and they can stand yet.
    private static Result<StackedWish> Stacked(WallsState state, Result<StackedWish> read) =>
        state.Shown is { } card ? read.Then(wish => string.Equals(wish.Wall, card.Name, StringComparison.OrdinalIgnoreCase) ? StackWall.There(card.Laid, wish, card.Picture.Stacked) : wish) : read;

    private static Turn<WallsState> Entered(WallsState state)
    {
        if (Read(state).Reading is { } reading)
            return reading.TryGet(out var need)
                ? new(state, new Errand.FindFit(need), Notice.None)
                : new(state with { Tried = true }, Notice: new Notice("nothing looked for: put right what is marked, then Enter again", Tone.Fault));
        if (state.Page == WallPage.Systems && state.OnPage) return SheetsModel.Wanted(state, Want.EditSheet);
        if (state.Page != WallPage.Takeoff || state.Shown is not { } card) return new(state with { OnPage = !state.OnPage });
        if (!state.OnPage) return new(state with { OnPage = true });
        if (state.Figure >= card.Figures.Count || card.Figures[state.Figure].MadeOf.Count == 0) return new(state);
        return new(state with { Opened = state.Opened.Contains(state.Figure) ? state.Opened.Remove(state.Figure) : state.Opened.Add(state.Figure) });
    }

    private static Turn<WallsState> Wanted(WallsState state, Want want, NamedSheet? about = null)
    {
        if (SheetsModel.IsAbout(want)) return SheetsModel.Wanted(state, want, about);
        if (state.Wall is not { } wall) return new(state.Page == WallPage.Systems ? Turned(state, WallPage.Elevation) : state, Notice: new Notice(WallsRows.NoWall));
        return want switch
        {
            Want.Elevation => new(Turned(state, WallPage.Elevation)),
            Want.Counts => new(Turned(state, WallPage.Takeoff)),
            Want.Staging => new(Turned(state, WallPage.Staging)),
            Want.Fill => new(state with { Filling = true, Progress = null, Seconds = 0 }, new Errand.FillWall(wall.Sheet.Name, state.Buy), Notice.None),
            Want.Keep when state.Filling && state.FoundHere is null => new(state, Notice: new Notice($"{wall.Sheet.Name} is being filled; Esc stops that with the best so far, then ^K keeps it")),
            Want.Keep => state.FoundHere is { } found ? new(state with { Line = state.Line.Open(WallsAsks.Keep(found, state.Shown?.Kept, state.Yard.Settings.CurrencySign)) })
                : new(state, Notice: new Notice(state.Shown?.Kept is { } kept ? $"how {wall.Sheet.Name} is filled is kept as plan {kept.PlanId} already; ^R finds another" : $"nothing to keep yet; ^R fills {wall.Sheet.Name}")),
            Want.Stack => state.Shown is { } card && (card.Kept is not null || card.Picture.Stacked.Any(course => course.OnlyCut)) ? new(Read(state with { Line = state.Line.Open(WallsAsks.Courses(wall.Sheet.Name), LeftToLay.NextCourse(card.Kept, card.Picture.Stacked).ToString(CultureInfo.InvariantCulture)) }))
                : new(state, Notice: state.Shown is { } all && LeftToLay.AllStand(all.Laid, all.Picture.Stacked) ? new Notice($"{FillFaults.AllStands(wall.Sheet.Name).Sentence}: nothing is left to stack")
                    : new Notice(state.FoundHere is null ? $"no laying of {wall.Sheet.Name} is kept that could be stacked; ^R finds one, ^K keeps it" : "keep the laying first (^K); then it can be stacked")),
            Want.Buying when state.Filling => new(state, Notice: new Notice($"{state.Wall.Sheet.Name} is being filled{(state.Buys ? "" : ", buying nothing")}; Esc stops that, then ^S changes it")),
            Want.Buying => new(state with { Said = (wall.Sheet.Name, !state.Buys) }, Notice: new Notice(state.Buys ? "nothing may be bought; ^R fills again" : "buying is allowed; ^R fills again")),
            Want.Sheet => new(state with { Line = state.Line.Open(WallsAsks.Sheet(wall.Sheet.Name), $"{wall.Sheet.Name}.pdf") }),
            _ => new(state),
        };
    }

    // The name that a sheet says it has.
    private static string? NameIn(Errand.SaveSheet sheet) =>
        sheet.Kind == SheetKind.Wall ? WallText.Read(sheet.Edit.Text) is { Ok: true } wall ? wall.Value.Name : null : SystemText.Read(sheet.Edit.Text) is { Ok: true } system ? system.Value.Name : null;

    private static WallsState Turned(WallsState state, WallPage page) => state with { Page = page, OnPage = true, Top = 0 };

    private static Turn<WallsState> Answered(WallsState state, Ask.Write ask, string text)
    {
        if (SheetsModel.Gone(state, ask.About) is { } gone) return new(state with { Line = state.Line.Close() }, Notice: gone);
        if (ask.Topic is Topic.WallStage || ask.About is not { } about) return SheetsModel.StageAnswered(state, text);
        if (ask.Topic is Topic.WallMove or Topic.SheetName) return SheetsModel.Answered(state, ask.Topic, about, text);
        if (ask.Topic == Topic.Stacked)
            return Stacked(state, StackedLine.Read(text, about.Name, state.Yard.Unit)) is var read && read.TryGet(out var wish)
                ? new(Read(state with { Line = state.Line.Close().Open(WallsAsks.Stack(wish)) }), Notice: Notice.None)
                : new(state, Notice: Notice.Of(read.Faults));
        return text.Length > 0
            ? new(state with { Line = state.Line.Close() }, new Errand.PrintWall(about.Name, state.Found is { } found && found.Kept.Sheet.Name == about.Name ? found.Plan : null, text) { Steps = state.Found is { } filled && filled.Kept.Sheet.Name == about.Name ? filled.Steps : null })
            : new(state, Notice: new Notice("write the name of a PDF file", Tone.Fault));
    }
}
