using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Print;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>The place of the walls as text.</summary>
internal static class WallsRows
{
    public const string NoWall = "no wall yet; ^W writes its sheet, or take one in: offcuts wall import STAGE FILE";

    private static readonly (WallPage Page, string Name)[] Pages =
        [(WallPage.Elevation, "elevation"), (WallPage.Takeoff, "takeoff"), (WallPage.Staging, "what goes where"), (WallPage.Fits, "what fits"), (WallPage.Systems, "systems")];

    /// <summary>The columns of the walls.</summary>
    public static IReadOnlyList<(string Heading, int Width)> Columns { get; } =
        [("Wall", 20), ("Legs", 5), ("Height", 11), ("Core", 9), ("Stage", 0)];

    /// <summary>How many walls are shown at once: no more than there are, and no more than a quarter of the lines.</summary>
    public static int WallLines(int walls, int lines) => Math.Clamp(walls, 1, Math.Max(1, lines / 4));

    public static string Cell(WallsState state, int row, int column)
    {
        var (sheet, unit) = (state.Yard.Walls[row].Sheet, state.Yard.Unit);
        return TextRules.Harmless(column switch
        {
            0 => sheet.Name,
            1 => sheet.Legs.Count.ToString(CultureInfo.InvariantCulture),
            2 => sheet.Height.ToText(unit),
            3 => sheet.CoreWidth.ToText(unit),
            _ => state.Yard.Walls[row].Stage,
        });
    }

    /// <summary>Column of the line under which a fault is pointed at, from 0.</summary>
    public static int? FaultAt(WallsState state) =>
        state.Form is { } form ? state.Line.Ask is null ? FormRows.FaultAt(form) : null
        : state.Line.Ask is Ask.Write { Topic: Topic.Stacked } ? state.Stacking is { Ok: false } unread && unread.Fault.Column > 0 ? unread.Fault.Column - 1 : null
        : state.Line.Ask is null && state.Reading is { Ok: false } wrong && wrong.Fault.Column > 0 && (state.Tried || state.Line.Text.TrimEnd().Length >= wrong.Fault.Column)
            ? wrong.Fault.Column - 1
            : null;

    /// <summary>What is looked for; while nothing is, whether what is on hand will do for the chosen wall.</summary>
    public static IReadOnlyList<Row> Reading(WallsState state, int width)
    {
        if (state.Form is { } form) return FormRows.Reading(form, state.Yard, width);
        if (state.Reading is { } reading)
            return reading.TryGet(out var need)
                ? [.. Row.Wrapped($"✓ {FitText.Of(need, state.Yard.Unit)}; Enter finds what fits", width, Tone.Good, indent: 2)]
                : [.. reading.Faults.SelectMany(fault => Row.Wrapped(state.Tried ? $"✗ {fault}" : $"… {fault}", width, state.Tried ? Tone.Fault : Tone.Soft, indent: 2))];
        if (state.Filling) return [.. Progress(state, width)];
        if (state.Page == WallPage.Systems && state.ChosenSystem is { } system)
            return [.. Row.Wrapped($"{system.Name}: Enter edits its sheet; ^W: copy, rename, drop", width, indent: 2), Row.Of("Its numbers are to be from your own supplier's paper", Tone.Soft)];
        if (state.Wall is not { } wall) return [.. Row.Wrapped(Capital(NoWall), width, Tone.Soft)];
        if (state.Faults.Count > 0) return [.. Row.Wrapped($"✗ {state.Faults[0]}", width, Tone.Fault, indent: 2)];
        if (state.Shown is not { } card) return [Row.Of($"Reckoning {wall.Sheet.Name} …", Tone.Soft)];
        if (state.FoundHere is { Plan: var laying } found)
            return
            [
                .. Row.Wrapped($"{wall.Sheet.Name}: {LayText.InShort(found, state.Yard.Settings.CurrencySign)}; not kept", width, laying.Courses.Any(course => course.Unfilled) ? Tone.Caution : Tone.Plain, indent: 2),
                .. StillTakes.Better(found, state.Yard.Settings.CurrencySign).SelectMany(line => Row.Wrapped(line, width, Tone.Caution, indent: 2)),
                .. LayingFacts.Unlined(found.Unlined).SelectMany(line => Row.Wrapped(line, width, Tone.Caution, indent: 2)),
                .. state.FoundAt == state.Yard.Change ? Array.Empty<Row>() : [Row.Of("the yard has changed since it was filled: ^R fills again", Tone.Caution)],
            ];
        var changed = card.Changed.SelectMany(line => Row.Wrapped(line, width, Tone.Caution, indent: 2));
        if (card.Left.Count > 0) return [.. card.Left.Select((line, i) => (Line: line, First: i == 0)).SelectMany(one => Row.Wrapped(one.First ? $"{wall.Sheet.Name}: {one.Line}" : one.Line, width, one.Line.StartsWith('!') ? Tone.Caution : Tone.Plain, indent: 2)), .. changed];
        var stock = card.Short == 0 ? new Ink("nothing is known to be short", Tone.Good) : new Ink($"{Words.Count(card.Short, "material")} short", Tone.Caution);
        return
        [
            Row.Of(new Ink($"{wall.Sheet.Name}: ", Tone.Strong), new Ink($"{Words.Count(card.Laid.Legs.Count, "leg")}, {Words.Count(card.Laid.Courses, "course")}; "), stock),
            .. Row.Wrapped(card.Stock.Count > 0 ? card.Stock[0] : "", width, Tone.Soft, indent: 2).Take(2),
            .. changed,
        ];
    }

    private static IEnumerable<Row> Progress(WallsState state, int width)
    {
        yield return Row.Of($"Filling {state.Wall?.Sheet.Name}{(state.Buys ? "" : ", buying nothing")} …{(state.Seconds > 0 ? $" {state.Seconds} s" : "")}", Tone.Strong);
        if (state.Progress is not { } sofar) yield break;
        foreach (var row in Row.Wrapped(ProgressText.OfWall(sofar, state.Yard.Settings.CurrencySign), width, indent: 2)) yield return row;
    }

    /// <summary>The pages, the one that is shown between brackets.</summary>
    public static Row Heading(WallsState state) => new([.. HeadingParts(state).Select(part => part.Ink)]);

    private static List<(Ink Ink, WallPage? Page)> HeadingParts(WallsState state)
    {
        var parts = new List<(Ink, WallPage?)> { (new(state.OnPage ? "▸" : " ", Tone.Strong), null) };
        foreach (var (page, name) in Pages)
        {
            if (page == WallPage.Fits && state.Fits is null) continue;
            parts.Add((page == state.Page ? new Ink($"[{name.ToUpperInvariant()}]", Tone.Strong) : new Ink($" {name} ", Tone.Soft), page));
        }

        return parts;
    }

    /// <summary>What opens the page that is named at a column of the heading; nothing where none is.</summary>
    public static Want? PageAt(WallsState state, int column)
    {
        var at = 0;
        foreach (var (ink, page) in HeadingParts(state))
        {
            at += TextColumns.Width(ink.Text);
            if (column >= at) continue;
            return page switch
            {
                WallPage.Elevation => Want.Elevation,
                WallPage.Takeoff => Want.Counts,
                WallPage.Staging => Want.Staging,
                WallPage.Systems => Want.Systems,
                _ => null,
            };
        }

        return null;
    }

    /// <summary>The page that is shown. Where one of its lines can be chosen, the rows of the chosen one are told too, so that they stay in sight, and the row each begins at.</summary>
    public static (IReadOnlyList<Row> Rows, int ChosenFrom, int ChosenTo, IReadOnlyList<int> Starts) Page(WallsState state, int width)
    {
        if (state.Page == WallPage.Systems) return Systems(state, width);
        if (state.Page == WallPage.Fits && state.Fits is { } fits) return ([.. Fits(state, fits, width)], 0, 0, []);
        if (state.Shown is not { } card) return ([], 0, 0, []);
        return state.Page switch
        {
            WallPage.Takeoff => Takeoff(state, card, width),
            WallPage.Staging => ([.. Staging(state, width)], 0, 0, []),
            _ => ([.. Elevation(state, card, width)], 0, 0, []),
        };
    }

    private static IEnumerable<Row> Elevation(WallsState state, WallCard card, int width)
    {
        foreach (var row in Drawn(state.Picture!, state.Yard.Unit, width)) yield return row;
        yield return Row.Blank;
        foreach (var row in Mind(card, width)) yield return row;
    }

    /// <summary>The rows of a wall drawn, how each is laid below it, and what the signs mean.</summary>
    public static IEnumerable<Row> Drawn(WallPicture picture, LengthUnit unit, int width)
    {
        var options = new ElevationOptions { Width = Math.Max(ElevationOptions.LeastWidth, width), Unit = unit };
        foreach (var row in picture.Rows)
        {
            foreach (var line in Print.Elevation.Row(picture, row, options)) yield return Row.Of(line, Tone.Plain);
            if (picture.SaysLaying)
                foreach (var line in Print.Elevation.Laying(picture, row, options)) yield return Row.Of(line, Tone.Soft);
            yield return Row.Blank;
        }

        foreach (var line in Print.Elevation.Legend(options)) yield return Row.Of(line, Tone.Soft);
    }

    private static (IReadOnlyList<Row> Rows, int From, int To, IReadOnlyList<int> Starts) Takeoff(WallsState state, WallCard card, int width)
    {
        var (rows, starts) = (new List<Row>(), new List<int>());
        var (from, to) = (0, 0);
        for (var i = 0; i < card.Figures.Count; i++)
        {
            var (figure, opened) = (card.Figures[i], state.Opened.Contains(i));
            var mark = figure.MadeOf.Count == 0 ? "  " : opened ? "- " : "+ ";
            starts.Add(rows.Count);
            if (i == state.Figure) from = rows.Count;
            var lines = Row.Wrapped(mark + figure.Says, width, indent: 4).ToArray();
            rows.AddRange(i == state.Figure && state.OnPage ? lines.Select(line => line.Marked(width)) : lines);
            if (opened)
                foreach (var line in figure.MadeOf) rows.AddRange(Row.Wrapped("      " + line, width, Tone.Soft, indent: 2));
            if (i == state.Figure) to = rows.Count;
        }

        rows.Add(Row.Blank);
        rows.Add(Row.Of("Still needed, and on hand", Tone.Strong));
        foreach (var line in card.Stock) rows.AddRange(Row.Wrapped("  " + line, width, indent: 2));
        rows.Add(Row.Blank);
        rows.AddRange(Mind(card, width));
        if (state.Figure == card.Figures.Count - 1) to = rows.Count;
        return (rows, from, to, starts);
    }

    private static IEnumerable<Row> Staging(WallsState state, int width)
    {
        const int least = 60;
        if ((state.FoundHere ?? state.Shown?.Kept) is not { } laying)
            return Row.Wrapped("Nothing is laid out yet: ^R fills the wall. Then this page says which pieces go to which leg, by the place where they lie, and what to cut first.", width, Tone.Soft);
        return LayText.Lines(laying, state.Yard.Settings).SelectMany(line => Row.Wrapped(line, width, indent: 2)).Append(Row.Blank).Concat(StagingList.Of(state.Picture!, state.Yard.Unit).Text(Math.Max(least, width)).TrimEnd('\n').Split('\n')
            .Select(line => Row.Of(line, line.StartsWith(' ') ? Tone.Plain : Tone.Strong)));
    }

    private static (IReadOnlyList<Row> Rows, int From, int To, IReadOnlyList<int> Starts) Systems(WallsState state, int width)
    {
        var rows = new List<Row>();
        for (var i = 0; i < state.Yard.Systems.Count; i++)
        {
            var (system, unit) = (state.Yard.Systems[i], state.Yard.Unit);
            var walls = state.Yard.Walls.Where(wall => string.Equals(wall.Sheet.System, system.Name, StringComparison.OrdinalIgnoreCase)).Select(wall => wall.Sheet.Name).ToArray();
            var row = Row.Of(Print.TextColumns.Cut(TextRules.Harmless($"{system.Name}: {system.Panel} of {system.PanelLength.ToText(unit)}; {(walls.Length == 0 ? "no wall yet" : string.Join(", ", walls))}"), width), Tone.Plain);
            rows.Add(i == state.System && state.OnPage ? row.Marked(width) : row);
        }

        rows.Add(Row.Blank);
        if (state.ChosenSystem is { } chosen) rows.AddRange(SystemText.Write(chosen).TrimEnd('\n').Split('\n').Select(line => Row.Of(Print.TextColumns.Cut(line, width), Tone.Soft)));
        return (rows, state.System, state.System + 1, [.. Enumerable.Range(0, state.Yard.Systems.Count + 1)]);
    }

    private static IEnumerable<Row> Fits(WallsState state, FitsFound fits, int width)
    {
        foreach (var row in Row.Wrapped($"What fits {FitText.Of(fits.Need, state.Yard.Unit)}", width, Tone.Strong)) yield return row;
        if (fits.Candidates.Count == 0)
            foreach (var row in Row.Wrapped("Nothing on hand: no free piece of it is long enough with its ends where they must be, or its condition does not serve this use.", width, Tone.Caution)) yield return row;
        foreach (var (line, _) in FitText.Lines(fits.Candidates, state.Yard.Unit, code => code.ToString(), all: true))
            foreach (var row in Row.Wrapped(line, width, indent: 4)) yield return row;
        foreach (var line in LayingFacts.Unlined(fits.Unlined))
            foreach (var row in Row.Wrapped(line, width, Tone.Caution, indent: 2)) yield return row;
    }

    private static IEnumerable<Row> Mind(WallCard card, int width) =>
        card.Mind.SelectMany(line => Row.Wrapped(line, width, line.StartsWith('!') ? Tone.Caution : Tone.Soft, indent: 2));

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
