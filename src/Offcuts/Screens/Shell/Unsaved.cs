namespace Offcuts.Screens;

/// <summary>A text that somebody typed and that is not saved.</summary>
/// <param name="Where">The line or the sheet it stands on, in a few words.</param>
/// <param name="Text">It, as it was typed.</param>
internal sealed record TypedText(string Where, string Text);

/// <summary>Everything on the screen that somebody typed and that is not saved: what a failure of the program would lose. Pure.</summary>
internal static class Unsaved
{
    /// <summary>All of it, place by place; what is on its way to be saved too, since nobody knows whether it got there.</summary>
    public static IReadOnlyList<TypedText> Of(ShellState state)
    {
        var all = new List<TypedText>();
        (string, EntryLine)[] lines =
        [
            ("the strip line", state.Strip.Line),
            ("the line of the stages", state.Stages.Line),
            ("the line of the plan", state.Plan.Line),
            ("the line of the prices", state.Prices.Line),
            ("the line of the settings", state.Settings.Line),
            ("the line of the count", state.Count.Line),
            ("the line of the hand-over", state.Hand.Line),
        ];
        // Behind an answer at the yard's line stands what narrows the list, which is no text to be saved.
        if (state.Yard.Line.Answer is { Length: > 0 } answer) all.Add(new TypedText("the line of the yard", answer));
        foreach (var (where, line) in lines) all.AddRange(line.Typed().Select(text => new TypedText(where, text)));
        if (state.Walls.Form is { Changed: true } form) all.Add(new TypedText($"the sheet{(form.Of is { } of ? $" of {of}" : " of the walls")}", form.Text.TrimEnd('\n')));
        else if (state.Walls.Form is null) all.AddRange(state.Walls.Line.Typed().Select(text => new TypedText("the line of the walls", text)));
        return all;
    }
}
