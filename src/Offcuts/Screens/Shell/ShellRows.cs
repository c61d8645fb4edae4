using System.Globalization;
using Offcuts.Core.Yard;
using Offcuts.Print;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What stands around every place, as text.</summary>
internal static class ShellRows
{
    /// <summary>Least size that all places fit in.</summary>
    public const int LeastWidth = 60;

    /// <inheritdoc cref="LeastWidth"/>
    public const int LeastHeight = 20;

    /// <summary>Where the typed line begins, behind the word for it.</summary>
    public const int LineLeft = 7;

    private const int MostReading = 9;
    private const int WideHead = 104;
    private const int FullHead = 132;
    private const int NamedHead = 79;

    // Today has the key F10, the others those of their order: the head shows the keys as they stand on the keyboard.
    private static readonly (Place Place, string Key)[] Places =
    [
        (Place.Today, "F10"), (Place.Yard, "F2"), (Place.Strip, "F3"), (Place.Stages, "F4"), (Place.Plan, "F5"), (Place.Walls, "F6"),
        (Place.Ledger, "F7"), (Place.Prices, "F8"), (Place.Settings, "F9"),
        (Place.Count, "F11"), (Place.Hand, "F12"),
    ];

    /// <summary>
    /// The places with their keys, the one that is shown between brackets; where there is room, how many labels wait and which yard it
    /// is. Where the names do not fit, the keys alone, and the name of the place that is shown.
    /// </summary>
    public static Row Head(ShellState state, int width)
    {
        var parts = HeadParts(state, width);
        var inks = parts.Select(part => part.Ink).ToList();
        var waiting = state.Snapshot.Queue.Count;
        var labels = state.BackingUp ? "checking today's backup" : waiting == 0 ? "" : waiting == 1 ? "1 label waits" : $"{waiting.ToString("#,0", CultureInfo.InvariantCulture)} labels wait";
        var room = width - Row.Of([.. inks]).Width - 1;
        if (room < 8) return new Row(inks);
        var both = new Ink(labels.Length == 0 ? state.Snapshot.Name : $"{labels}  {state.Snapshot.Name}").Text;
        var shown = TextColumns.Cut(TextColumns.Width(both) <= room || labels.Length == 0 ? both : labels, room);
        inks.Add(new Ink(new string(' ', room - TextColumns.Width(shown) + 1) + shown, Tone.Soft));
        return new Row(inks);
    }

    /// <summary>The place that is named at a column of the head; none where none is.</summary>
    public static Place? PlaceAt(ShellState state, int width, int column)
    {
        var at = 0;
        foreach (var (ink, place) in HeadParts(state, width))
        {
            at += TextColumns.Width(ink.Text);
            if (column < at) return place;
        }

        return null;
    }

    private static List<(Ink Ink, Place? Place)> HeadParts(ShellState state, int width)
    {
        var wide = width >= WideHead;
        var parts = new List<(Ink Ink, Place? Place)> { (new(wide ? "Offcuts " : "F", Tone.Strong), null) };
        foreach (var (place, key) in Places)
        {
            var here = place == state.Place;

            // Where not all of them fit, the last ones are shown while they are the place; the help names their keys.
            if (width < FullHead && !here && place is (Place.Count or Place.Hand)) continue;
            parts.Add((new Ink($" {(wide ? key : key[1..])}", Tone.Soft), place));
            if (here) parts.Add((new Ink($"[{place.ToString().ToUpperInvariant()}]", Tone.Chosen), place));
            else if (width >= NamedHead && state.Place is not (Place.Count or Place.Hand) || wide) parts.Add((new Ink(wide ? $" {place} " : $" {place}"), place));
        }

        return parts;
    }

    /// <summary>A tape measure across the screen, a figure every eight columns.</summary>
    public static Row Tape(int width)
    {
        var tape = new char[Math.Max(0, width)];
        for (var i = 0; i < tape.Length; i++) tape[i] = i % 8 == 0 ? '┴' : i % 4 == 0 ? '┬' : '─';
        return Row.Of(new string(tape), Tone.Soft);
    }

    /// <summary>The word before the typed line.</summary>
    public static string Label(ShellState state) => state.Line.Ask is Ask.Write ask
        ? ask.Label
        : state.Place switch
        {
            Place.Today or Place.Yard or Place.Hand => "find",
            Place.Ledger => "stage",
            Place.Prices => "price",
            Place.Settings => "set",
            Place.Count => "count",
            Place.Strip => "strip",
            Place.Stages => "need",
            Place.Walls => state.Walls.Form is null ? "fits" : "line",
            _ => "piece",
        };

    /// <summary>Column of the typed line that a fault points at, from 0.</summary>
    public static int? FaultAt(ShellState state) => state.Place switch
    {
        Place.Strip => StripRows.FaultAt(state.Strip),
        Place.Stages => StagesRows.FaultAt(state.Stages),
        Place.Walls => WallsRows.FaultAt(state.Walls),
        Place.Prices => PricesRows.FaultAt(state.Prices),
        _ => null,
    };

    /// <summary>What stands below the typed line: what is to be written there, else what the line says so far.</summary>
    public static IReadOnlyList<Row> Reading(ShellState state, int width)
    {
        if (state.Unread)
            return [Row.Of(new Ink($"Reading the yard …{(state.Working is { Done: > 0 } sofar ? $" {Grouped(sofar.Done)} pieces" : "")}  ", Tone.Strong), new Ink("what you type meanwhile is taken up then", Tone.Soft))];
        if (state.Line.Ask is Ask.Write write)
        {
            var rows = Row.Wrapped(write.Question, width, Tone.Strong).ToList();
            if (state.Jump is not null) return [.. rows, .. ShellJump.Reading(state, width)];
            if (state.Plan.Happened is { } happened && state.Place == Place.Plan && state.Plan.Piece is { } piece)
                rows.AddRange(happened.TryGet(out var read)
                    ? Row.Wrapped("✓ " + HappenedLine.ReadBack(read, piece, state.Snapshot.Unit), width, Tone.Good, indent: 2)
                    : Row.Wrapped("… " + happened.Fault.Sentence, width, Tone.Soft, indent: 2));
            if (write.Topic == Topic.Correct) rows.AddRange(StripRows.Reading(state.Strip, width));
            if (write.Topic == Topic.CorrectNeed) rows.AddRange(StagesRows.Reading(state.Stages, width));
            if (state.Place == Place.Yard && write.Topic == Topic.PutAt) rows.AddRange(YardRows.Places(state.Yard, state.Line.Text, width));
            if (state.Place == Place.Yard && write.Topic == Topic.Strap) rows.AddRange(YardRows.Places(state.Yard, YardActs.Strapped(state.Line.Text).At, width));
            if (state.Place == Place.Walls && state.Walls.Stacking is { } stacking)
                rows.AddRange(stacking.TryGet(out var wish)
                    ? Row.Wrapped($"✓ {WallsAsks.Told(wish)}", width, Tone.Good, indent: 2)
                    : Row.Wrapped("… " + stacking.Fault.Sentence, width, Tone.Soft, indent: 2));
            return rows;
        }

        return state.Place switch
        {
            Place.Today => TodayRows.Reading(state.Today, width),
            Place.Ledger => LedgerRows.Reading(state.Ledger, width),
            Place.Prices => PricesRows.Reading(state.Prices, width),
            Place.Settings => SettingsRows.Reading(state.Settings, width),
            Place.Hand => HandRows.Reading(state.Hand, width),
            Place.Count => CountRows.Reading(state.Count, width),
            Place.Yard => YardRows.Reading(state.Yard, width),
            Place.Strip => StripRows.Reading(state.Strip, width),
            Place.Stages => StagesRows.Reading(state.Stages, width),
            Place.Walls => WallsRows.Reading(state.Walls, width),
            _ => PlanRows.Head(state.Plan, width),
        };
    }

    /// <summary>The same as it stands on the screen: under a pointer to what is wrong with the line, as many lines as are needed and never fewer than two, so that the list below does not jump at every key.</summary>
    public static IReadOnlyList<Row> Read(ShellState state, int width, int height, int scrolled)
    {
        const int least = 2;
        var rows = new List<Row>();
        if (FaultAt(state) is { } at) rows.Add(Pointer(state.Line.Text, at, width, scrolled));
        rows.AddRange(Reading(state, width).Take(Math.Min(MostReading, height / 3)));
        while (rows.Count < least) rows.Add(Row.Blank);
        return rows;
    }

    private static Row Pointer(string text, int at, int width, int scrolled)
    {
        var before = text[..Math.Min(at, text.Length)];
        var starts = StringInfo.ParseCombiningCharacters(text);
        var gone = scrolled < starts.Length ? text[..starts[scrolled]] : text;
        var column = LineLeft + Math.Max(0, TextColumns.Width(before) - TextColumns.Width(gone)) + Math.Max(0, at - text.Length);
        return Row.Of(new string(' ', Math.Min(column, width - 1)) + "^", Tone.Fault);
    }

    /// <summary>What stands in a window that is too small for anything else.</summary>
    public static IReadOnlyList<Row> Small(ShellState state, int width, int height)
    {
        var asked = state.Ask is { } ask
            ? Row.Wrapped($"{ask.Question} {string.Join(", ", ask.Choices.Select(choice => $"{choice.Letter} {choice.Says}"))}, Esc back", Math.Max(2, width), Tone.Strong)
            : [];
        return [.. asked, .. Row.Wrapped($"Offcuts needs {LeastWidth} columns and {LeastHeight} lines; this window has {width} and {height}. Make it larger: nothing typed is lost.", Math.Max(2, width))];
    }

    /// <summary>What was said last; while a letter answers a question, the question, right above its answers.</summary>
    public static IReadOnlyList<Row> Said(ShellState state, int width) => ShellKeys.Asking(state) is { } ask
        ? [.. Row.Wrapped(ask.Question, width, Tone.Strong)]
        : state is { Working: { } work, Unread: false } ? [.. state.Leaving ? Told(state.Notice, width) : [], Working(work, state, width)]
        : Told(state.Notice, width);

    // A sentence is read to its end, where that takes no more than some lines.
    private static IReadOnlyList<Row> Told(Notice notice, int width)
    {
        const int most = 3;
        var rows = Row.Wrapped(notice.Text, width, notice.Tone).ToArray();
        return rows.Length is > 0 and <= most ? rows : [.. rows.Take(most - 1), Row.Of(TextColumns.Cut(new Ink(string.Join(' ', rows.Skip(most - 1).Select(row => row.Text))).Text, width), notice.Tone)];
    }

    // A bar, so that it is seen from the pile that it moves; and the figures, since a bar alone tells little.
    private static Row Working(WorkProgress work, ShellState state, int width)
    {
        const int most = 20;
        var room = work.Of > 0 ? Math.Min(most, width / 5) : 0;
        var full = work.Of > 0 ? (int)((long)room * work.Done / work.Of) : 0;
        var bar = room > 0 ? $"[{new string('=', full)}{new string('.', room - full)}] " : "";
        var sofar = work.Of > 0 ? $": {Grouped(work.Done)} of {Grouped(work.Of)}" : work.Done > 0 ? $": {Grouped(work.Done)}" : " …";
        var told = $"{bar}{work.What}{sofar}";
        return Row.Of(new Ink(TextColumns.Cut(told + Stops(state, width - TextColumns.Width(told)), width), Tone.Strong));
    }

    // What an earlier act saved stays, and this one may be saved by the time the key is heard: no more is promised than that.
    private static string Stops(ShellState state, int room)
    {
        const string brief = "; Esc stops it", whole = brief + " while it is not saved";
        return !state.MayStop ? "" : room >= whole.Length ? whole : brief;
    }

    private static string Grouped(int number) => number.ToString("#,0", CultureInfo.InvariantCulture);

    /// <summary>The keys that work now, as many lines as they need.</summary>
    public static IReadOnlyList<Row> Foot(ShellState state, int width) =>
        [.. FootKeys(state, width).Select(line => new Row([.. line.SelectMany(key => (Ink[])[new(Shown(key.Shown, state), Tone.Strong), new($" {key.Says}  ", Tone.Soft)])]))];

    /// <summary>The key that is named at a point of the foot; none where none is.</summary>
    public static KeyUse? KeyAt(ShellState state, int width, int line, int column)
    {
        var lines = FootKeys(state, width);
        if (line < 0 || line >= lines.Count) return null;
        var at = 0;
        foreach (var key in lines[line])
        {
            var wide = FootWidth(state, key);
            if (column >= at && column < at + wide) return key;
            at += wide + FootGap;
        }

        return null;
    }

    private static List<List<KeyUse>> FootKeys(ShellState state, int width)
    {
        var lines = new List<List<KeyUse>> { new() };
        var taken = 0;
        foreach (var key in ShellKeys.Now(state).Where(key => key.Says.Length > 0))
        {
            var wide = FootWidth(state, key);
            if (taken + wide > width && lines[^1].Count > 0)
            {
                lines.Add([]);
                taken = 0;
            }

            lines[^1].Add(key);
            taken += wide + FootGap;
        }

        return lines;
    }

    private const int FootGap = 2;

    private static int FootWidth(ShellState state, KeyUse key) => TextColumns.Width(Shown(key.Shown, state)) + 1 + TextColumns.Width(new Ink(key.Says).Text);

    /// <summary>A key as it is shown: an arrow in plain letters would read as Ctrl.</summary>
    public static string Shown(string chord, ShellState state) =>
        state.Ascii ? chord.Replace("↑", "Up", StringComparison.Ordinal).Replace("↓", "Down", StringComparison.Ordinal) : chord;
}
