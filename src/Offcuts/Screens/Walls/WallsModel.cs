using Offcuts.Core.Faults;
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
        switch (intent)
        {
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
            case Intent.Enter when state.Line.Ask is Ask.Write:
                return Answered(state, state.Line.Text.Trim());
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
        switch (news)
        {
            case News.Fresh(var yard):
                return new(Taken(state, yard));
            case News.WallOpened(var card):
                return new(Within(state with { Card = card, Faults = [] }));
            case News.Refused(Errand.OpenWall, var faults):
                return new(state with { Card = null, Faults = faults });
            case News.Matching(var progress):
                return new(state.Filling ? state with { Progress = progress } : state);
            case News.WallFilled(var wall, var laid):
                return new(state with { Filling = false, Progress = null, Found = laid, FoundFor = (wall, state.Yard.Change), Page = state.Page == WallPage.Fits ? WallPage.Elevation : state.Page, Top = 0 });
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

    // The chosen wall stays chosen wherever it now stands.
    private static WallsState Taken(WallsState state, YardSnapshot yard)
    {
        var name = state.Wall?.Sheet.Name;
        var at = yard.Walls.TakeWhile(wall => wall.Sheet.Name != name).Count();
        return Read(state with { Yard = yard, Chosen = at < yard.Walls.Count ? at : Math.Clamp(state.Chosen, 0, Math.Max(0, yard.Walls.Count - 1)) });
    }

    private static WallsState Moved(WallsState state, int by)
    {
        if (!state.OnPage)
        {
            var chosen = Math.Clamp(state.Chosen + by, 0, Math.Max(0, state.Yard.Walls.Count - 1));
            return chosen == state.Chosen ? state : Read(state with { Chosen = chosen, Top = 0, Figure = 0, Opened = [], Faults = [] });
        }

        return state.Page == WallPage.Takeoff
            ? Within(state with { Figure = (int)Math.Clamp((long)state.Figure + by, 0, int.MaxValue / 2) })
            : state with { Top = (int)Math.Clamp((long)state.Top + by, 0, int.MaxValue / 2) };
    }

    private static WallsState Within(WallsState state) =>
        state with { Figure = Math.Clamp(state.Figure, 0, Math.Max(0, (state.Shown?.Figures.Count ?? 0) - 1)) };

    private static WallsState Read(WallsState state) =>
        state with
        {
            Reading = state.Line.Ask is not null || state.Line.Text.Trim().Length == 0
                ? null
                : (Result<OneOffNeed>?)FitLine.Read(state.Line.Text, state.Yard.Unit, state.Shown?.Laid.System, state.Wall?.Stage ?? ""),
        };

    private static Turn<WallsState> Entered(WallsState state)
    {
        if (Read(state).Reading is { } reading)
            return reading.TryGet(out var need)
                ? new(state, new Errand.FindFit(need), Notice.None)
                : new(state with { Tried = true }, Notice: new Notice("nothing looked for: put right what is marked, then Enter again", Tone.Fault));
        if (state.Page != WallPage.Takeoff || state.Shown is not { } card) return new(state with { OnPage = !state.OnPage });
        if (!state.OnPage) return new(state with { OnPage = true });
        if (state.Figure >= card.Figures.Count || card.Figures[state.Figure].MadeOf.Count == 0) return new(state);
        return new(state with { Opened = state.Opened.Contains(state.Figure) ? state.Opened.Remove(state.Figure) : state.Opened.Add(state.Figure) });
    }

    private static Turn<WallsState> Wanted(WallsState state, Want want)
    {
        if (state.Wall is not { } wall) return new(state, Notice: new Notice(WallsRows.NoWall));
        return want switch
        {
            Want.Elevation => new(Turned(state, WallPage.Elevation)),
            Want.Counts => new(Turned(state, WallPage.Takeoff)),
            Want.Staging => new(Turned(state, WallPage.Staging)),
            Want.Fill => new(state with { Filling = true, Progress = null }, new Errand.FillWall(wall.Sheet.Name, state.Buy), Notice.None),
            Want.Buying => new(state with { Buy = !state.Buy }, Notice: new Notice(state.Buy ? "nothing may be bought; ^R fills again" : "buying is allowed; ^R fills again")),
            Want.Sheet => new(state with { Line = state.Line.Open(WallsAsks.Sheet(wall), $"{wall.Sheet.Name}.pdf") }),
            _ => new(state),
        };
    }

    private static WallsState Turned(WallsState state, WallPage page) => state with { Page = page, OnPage = true, Top = 0 };

    private static Turn<WallsState> Answered(WallsState state, string text)
    {
        if (state.Wall is not { } wall) return new(state with { Line = state.Line.Close() });
        return text.Length > 0
            ? new(state with { Line = state.Line.Close() }, new Errand.PrintWall(wall.Sheet.Name, state.Laying, text))
            : new(state, Notice: new Notice("write the name of a PDF file", Tone.Fault));
    }
}
