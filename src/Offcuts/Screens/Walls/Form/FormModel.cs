using System.Collections.Immutable;
using Offcuts.Core.Walls;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What the form of a sheet does: pure.</summary>
internal static class FormModel
{
    /// <summary>The place with this form open.</summary>
    public static WallsState Open(WallsState state, SheetForm form) =>
        state with { Form = Read(form, state.Yard), Line = state.Line.Close().Typed(form.Line), OnPage = true, Tried = false, Reading = null };

    /// <summary>The next state, and what is asked of the shell.</summary>
    public static Turn<WallsState> Apply(WallsState state, SheetForm form, Intent intent)
    {
        if (state.Line.Ask is Ask.Choose ask)
            return intent switch
            {
                Intent.Answer(var letter) when ask.Of(letter) is { } choice => Chose(state with { Line = state.Line.Close() }, form, choice),
                Intent.Escape => new(state with { Form = form with { Over = null }, Line = state.Line.Close() }, Notice: Notice.None),
                _ => new(state),
            };
        switch (intent)
        {
            case Intent.Type(var text):
                return new(Put(state, form.Typed(text)));
            case Intent.Paste(var lines):
                return new(Put(state, Pasted(form, lines)), Notice: new Notice($"{lines.Count} lines pasted"));
            case Intent.Move(var by):
                return new(Put(state, form.ChooseLine((int)Math.Clamp((long)form.At + by, 0, int.MaxValue))));
            case Intent.Edge(var last):
                return new(Put(state, form.ChooseLine(last ? int.MaxValue : 0)));
            case Intent.Recall(var step):
                return new(Put(state, form.Shifted(step)));
            case Intent.Enter:
                return new(Put(state, form.At < form.Lines.Count - 1 ? form.ChooseLine(form.At + 1) : form.Line.Trim().Length == 0 ? form : form.Inserted(form.Lines.Count, [""])));
            case Intent.OtherList:
                return NextFault(state, form);
            case Intent.Escape:
                return form.Changed ? new(state with { Line = state.Line.Open(FormAsks.Leave(form)) }) : new(Closed(state), Notice: Notice.None);
            case Intent.Do(var want):
                return Wanted(state, form, want);
            default:
                return new(state);
        }
    }

    /// <summary>Takes in what the shell tells.</summary>
    public static WallsState Hear(WallsState state, SheetForm form, News news) => news switch
    {
        News.Fresh => state with { Form = Read(form, state.Yard) },
        News.Done(Errand.SaveSheet saved, _) => Saved(state, form with { Saving = null }, saved.Edit),
        News.Refused(Errand.SaveSheet, _) when Other(form, state.Yard) is { Stale: true } other && state.Line.Ask is null => state with { Form = form with { Saving = null }, Line = state.Line.Open(FormAsks.Stale(form, other.Text is null)) },
        News.Refused(Errand.SaveSheet, _) => state with { Form = form with { Saving = null, Tried = true } },
        _ => state,
    };

    /// <summary>The sheet that was opened as the yard has it now, and whether that is another than was opened.</summary>
    public static (bool Stale, string? Text) Other(SheetForm form, YardSnapshot yard)
    {
        if (form.Of is not { } of) return (false, null);
        var text = form.Kind == SheetKind.Wall
            ? yard.Walls.FirstOrDefault(wall => Same(wall.Sheet.Name, of)) is { } wall ? WallText.Write(wall.Sheet) : null
            : yard.Systems.FirstOrDefault(system => Same(system.Name, of)) is { } system ? SystemText.Write(system) : null;
        return (text != form.Opened, text);
    }

    private static Turn<WallsState> Wanted(WallsState state, SheetForm form, Want want)
    {
        switch (want)
        {
            case Want.AddLine:
                return new(state with { Line = state.Line.Open(FormAsks.Add(form, state.Yard.Unit)) });
            case Want.DoubleLine:
                return new(Put(state, form.Inserted(form.Block(form.At).To, FormAdds.Double(form))));
            case Want.DropLine:
                var (from, to) = form.Block(form.At);
                return new(Put(state, form.Dropped()), Notice: new Notice(to - from > 1 ? $"dropped the leg with {Words.Count(to - from - 1, "line")} below it; ^Z brings it back" : "dropped; ^Z brings it back"));
            case Want.StepBack:
                return form.Undone() is var back && ReferenceEquals(back, form) ? new(state, Notice: new Notice("nothing to take back in the form")) : new(Put(state, back));
            case Want.StepAhead:
                return form.Redone() is var ahead && ReferenceEquals(ahead, form) ? new(state, Notice: new Notice("nothing to do again in the form")) : new(Put(state, ahead));
            case Want.Keep:
                return Save(state, form with { Over = null }, asked: false);
            case Want.SaveAnyway:
                return Save(state, form, asked: true);
            case Want.SaveOver:
                return Save(state, form with { Over = Other(form, state.Yard).Text ?? "" }, asked: false);
            case Want.TakeOther when Other(form, state.Yard).Text is { } text:
                ImmutableList<string> lines = [.. text.TrimEnd('\n').Split('\n')];
                return new(Put(state, form.Replaced(lines, 0) with { Opened = text, Start = lines }), Notice: new Notice("this is the other one; ^Z brings yours back"));
            case Want.LeaveForm:
                return new(Closed(state), Notice: Notice.None);
            default:
                return new(state);
        }
    }

    private static Turn<WallsState> Chose(WallsState state, SheetForm form, Choice choice)
    {
        if (choice.Want is { } want) return Wanted(state, form, want);
        if (choice.Add is not { } add) return new(state);
        var lines = add.Also is { } also ? form.Lines.SetItem(also.Line, also.Text) : form.Lines;
        return new(Put(state, form.Replaced(lines.InsertRange(add.Where, add.Lines), add.Where)));
    }

    private static Turn<WallsState> Save(WallsState state, SheetForm form, bool asked)
    {
        if (form.Saving == form.Edit) return new(state);
        if (form.Reading.Faults.Count > 0)
        {
            var first = form.Reading.Faults[0];
            var marked = (first.Line > 0 ? form.ChooseLine(first.Line - 1) : form) with { Tried = true };
            return new(Put(state, marked), Notice: new Notice("not saved: put right what is marked, then ^K again", Tone.Fault));
        }

        // Backing out of what is asked next takes the answer back that it may be written over another's.
        var (meant, over) = (form, false);
        if (Other(form, state.Yard) is { Stale: true } other)
        {
            over = form.Over == (other.Text ?? "");
            if (!over) return new(state with { Form = form with { Over = null }, Line = state.Line.Open(FormAsks.Stale(form, other.Text is null)) });
            meant = form with { Of = other.Text is null ? null : form.Of, Opened = other.Text ?? "", Over = null };
        }

        if (!over && !form.Changed && form.Of is not null) return new(Closed(state), Notice: new Notice("nothing was changed"));
        if (!asked && GivenUp(state.Yard, meant) is { Length: > 0 } lost) return new(state with { Form = form, Line = state.Line.Open(FormAsks.GiveUp(lost)) });
        return new(state with { Form = meant with { Saving = meant.Edit } }, new Errand.SaveSheet(meant.Kind, meant.Stage, meant.Edit), Notice.None);
    }

    // What a wall that is built otherwise loses; its name and its notes change nothing.
    private static string GivenUp(YardSnapshot yard, SheetForm form)
    {
        if (form.Of is not { } of) return "";
        StageWall[] walls = [.. yard.Walls.Where(wall => Same(form.Kind == SheetKind.Wall ? wall.Sheet.Name : wall.Sheet.System, of) && !SameButName(form))];
        var lost = walls.Where(wall => yard.WallPlans.Any(plan => Same(plan.Wall, wall.Sheet.Name))).Select(wall => $"How {wall.Sheet.Name} was to be filled is given up");
        var stand = walls.Select(wall => (wall.Sheet.Name, Count: yard.Stacked.Count(course => Same(course.Wall, wall.Sheet.Name)))).Where(one => one.Count > 0)
            .Select(one => $"{Words.Count(one.Count, "course")} of {one.Name} {(one.Count == 1 ? "is" : "are")} stacked or cut by the old sheet: look whether the new one still fits them");
        return string.Join(". ", lost.Concat(stand));
    }

    private static bool SameButName(SheetForm form) => form.Kind == SheetKind.Wall
        ? WallText.SameButName(WallText.Read(form.Opened).Value, WallText.Read(form.Text).Value)
        : SystemText.SameButName(SystemText.Read(form.Opened).Value, SystemText.Read(form.Text).Value);

    // What was typed while it was being saved stays, over the sheet as it is saved.
    private static WallsState Saved(WallsState state, SheetForm form, SheetEdit edit)
    {
        var (name, written) = Written(form.Kind, edit.Text);
        if (form.Text != edit.Text)
        {
            // The yard that is shown may be the one from before; what was saved is in the file.
            return state with { Form = form with { Of = name, Opened = written, Start = [.. edit.Text.TrimEnd('\n').Split('\n')] } };
        }

        return WallsModel.Choose(Closed(state), new(form.Kind, name));
    }

    // The name in a sheet that can be read, and the sheet as the yard writes it.
    private static (string Name, string Text) Written(SheetKind kind, string text)
    {
        if (kind == SheetKind.Wall) return WallText.Read(text).Value is var wall ? (wall.Name, WallText.Write(wall)) : default;
        return SystemText.Read(text).Value is var system ? (system.Name, SystemText.Write(system)) : default;
    }

    private static WallsState Closed(WallsState state) => state with { Form = null, Line = state.Line.Close().Typed(""), Reading = null };

    private static Turn<WallsState> NextFault(WallsState state, SheetForm form)
    {
        int[] wrong = [.. form.Reading.Faults.Select(fault => fault.Line - 1).Where(line => line >= 0).Distinct().Order()];
        if (wrong.Length == 0) return new(state, Notice: new Notice(form.Reading.Faults.Count == 0 ? "nothing is wrong" : form.Reading.Faults[0].Sentence, form.Reading.Faults.Count == 0 ? Tone.Good : Tone.Fault));
        var next = wrong.FirstOrDefault(line => line > form.At, wrong[0]);
        return new(Put(state, form.ChooseLine(next) with { Tried = true }));
    }

    // Behind what the chosen line holds already; each further line is one of its own.
    private static SheetForm Pasted(SheetForm form, IReadOnlyList<string> lines) =>
        form.Replaced(form.Lines.SetItem(form.At, form.Line + lines[0]).InsertRange(form.At + 1, lines.Skip(1)), form.At + lines.Count - 1);

    private static WallsState Put(WallsState state, SheetForm form) =>
        state with { Form = ReferenceEquals(form.Lines, state.Form?.Lines) ? form : Read(form, state.Yard), Line = state.Line.Typed(form.Line) };

    private static SheetForm Read(SheetForm form, YardSnapshot yard) => form with
    {
        Reading = form.Kind == SheetKind.Wall
            ? SheetReading.OfWall(form.Text, yard.Systems, yard.Unit)
            : SheetReading.OfSystem(form.Text, form.Of, yard.Walls, yard.Unit),
    };

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
