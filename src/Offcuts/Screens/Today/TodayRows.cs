using Offcuts.Core.Faults;
using Offcuts.Print;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>The day's place as text: a line a matter, when before it and where to deal with it behind; the chosen one opened.</summary>
internal static class TodayRows
{
    private const int WhenColumn = 14;
    private const int WhereColumn = 9;
    private const int MostAbout = 9;

    /// <summary>What stands below the typed line: the day, the yard, and what typing does.</summary>
    public static IReadOnlyList<Row> Reading(TodayState state, int width)
    {
        var day = $"{TodayText.Heading(state.Yard.Today)}  ";
        if (state.Line.Text.Trim().Length > 0) return [Row.Of(new Ink(day, Tone.Strong), new Ink("Enter looks for this in the yard"))];
        if (state.Yard.Matters.Count > 0 && state.Yard.Matters[0].Kind == MatterKind.BeginYard)
            return [.. Row.Wrapped($"{day}This yard is empty. What to do first stands here; Enter goes there", width, Tone.Strong)];
        var yard = new Ink(state.Yard.Name).Text;
        return [Row.Of(new Ink(day, Tone.Strong), new Ink(TextColumns.Cut($"{yard}. Type or scan to look in the yard", Math.Max(0, width - day.Length)), Tone.Soft))];
    }

    /// <summary>The matters, each a part of the page.</summary>
    public static IReadOnlyList<IReadOnlyList<Row>> Parts(TodayState state, int width)
    {
        var matters = state.Yard.Matters;
        if (matters.All(matter => matter.Kind == MatterKind.LastChange) && !state.Yard.Unread)
            return [.. matters.Select((matter, i) => Part(state, matter, i, width)), [Row.Blank, .. Row.Wrapped(TodayText.Nothing, width, Tone.Good)]];
        return [.. matters.Select((matter, i) => Part(state, matter, i, width))];
    }

    private static List<Row> Part(TodayState state, Matter matter, int at, int width)
    {
        var chosen = at == state.Chosen;
        var room = Math.Max(10, width - WhenColumn - WhereColumn);
        var what = TextColumns.Wrap(TextRules.Harmless(matter.What), room);
        var when = (matter.Pressing ? "! " : "  ") + matter.When(state.Yard.Today);
        var where = matter is { Kind: MatterKind.LastChange, Stands: false } ? "^Z" : TodayModel.Where(matter).Where.ToString();
        var rows = new List<Row>();
        for (var i = 0; i < what.Count; i++)
        {
            var row = Row.Of(
                new Ink(TextColumns.Fill(i == 0 ? when : "", WhenColumn), matter.Pressing ? Tone.Caution : Tone.Strong),
                new Ink(TextColumns.Fill(what[i], room), matter.Kind == MatterKind.LastChange ? Tone.Soft : Tone.Plain),
                new Ink(i == 0 ? $" {where}" : "", Tone.Soft));
            rows.Add(chosen ? row.Marked(width) : row);
        }

        if (chosen) rows.AddRange(About(matter, width));
        return rows;
    }

    private static IEnumerable<Row> About(Matter matter, int width)
    {
        var lead = new string(' ', WhenColumn);
        var rows = matter.About.SelectMany(line => Row.Wrapped(lead + line, width, Tone.Plain, indent: 2)).ToArray();
        foreach (var row in rows.Take(rows.Length > MostAbout ? MostAbout - 1 : MostAbout)) yield return row;
        if (rows.Length > MostAbout) yield return Row.Of($"{lead}and {rows.Length - MostAbout + 1} lines more: Enter goes to all of it", Tone.Soft);
    }
}
