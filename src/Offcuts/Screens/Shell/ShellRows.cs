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
            if (state.Place == Place.Yard && write.Topic == Topic.PutAt) rows.AddRange(YardRows.Places(state.Yard, width));
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

    /// <summary>What was said last; while a letter answers a question, the question, right above its answers.</summary>
    public static IReadOnlyList<Row> Said(ShellState state, int width) => ShellKeys.Asking(state) is { } ask
        ? [.. Row.Wrapped(ask.Question, width, Tone.Strong)]
        : state is { Working: { } work, Unread: false } ? [Working(work, state, width)]
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
        return Row.Of(new Ink(TextColumns.Cut($"{bar}{work.What}{sofar}{(state.MayStop ? "; Esc stops it and nothing of it is saved" : "")}", width), Tone.Strong));
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

    /// <summary>What can be done at the place that is shown.</summary>
    public static IReadOnlyList<Row> Help(ShellState state, int width)
    {
        var rows = new List<Row>();
        foreach (var line in state is { Place: Place.Walls, Walls.Form: not null } ? AboutForm : About(state.Place)) rows.AddRange(Row.Wrapped(line, width));
        rows.Add(Row.Blank);
        rows.Add(Row.Of("Keys here", Tone.Strong));
        rows.AddRange(ShellKeys.OfPlace(state).SelectMany(key => Explained(state, key, width)));
        rows.Add(Row.Blank);
        rows.Add(Row.Of("Keys everywhere", Tone.Strong));
        rows.AddRange(ShellKeys.Beside(state).SelectMany(key => Explained(state, key, width)));
        rows.AddRange(Explained(state, new KeyUse("Esc", "", new Intent.Escape(), "One step back; on a line that holds something, a second press clears it"), width));
        rows.AddRange(Explained(state, ShellKeys.Clear, width));
        if (state.Place == Place.Strip)
        {
            rows.Add(Row.Blank);
            rows.Add(Row.Of("Mind", Tone.Caution));
            rows.AddRange(Cautions.All.SelectMany(caution => Row.Wrapped($"! {caution}", width, Tone.Caution, indent: 2)));
            rows.Add(Row.Of(Cautions.Closing, Tone.Soft));
        }

        return rows;
    }

    // An arrow in plain letters would read as Ctrl.
    private static string Shown(string chord, ShellState state) =>
        state.Ascii ? chord.Replace("↑", "Up", StringComparison.Ordinal).Replace("↓", "Down", StringComparison.Ordinal) : chord;

    private static IEnumerable<Row> Explained(ShellState state, KeyUse key, int width)
    {
        const int column = 14;
        var lines = TextColumns.Wrap(key.About, Math.Max(2, width - column)).ToArray();
        for (var i = 0; i < lines.Length; i++)
            yield return Row.Of(new Ink(TextColumns.Fill(i == 0 ? Shown(key.AllShown, state) : "", column), Tone.Strong), new Ink(lines[i]));
    }

    private static readonly string[] AboutForm =
    [
        "A sheet is written line by line, as in its file: a word, then what is said of it. The line that is chosen stands above, to be changed; below it stands what was understood or what is wrong, and what such a line may hold. Words in capitals are yours to say; of words with | between them one is meant.",
        "Every length has its unit: 4', 2-1/2\", 11' 4-1/2\", 1200 mm. What belongs to a leg stands below it. Nothing is saved before ^K.",
    ];

    private static string[] About(Place place) => place switch
    {
        Place.Today =>
        [
            "What matters now, in the order in which it is asked: orders that are late, the stage in hand and what it lacks, plans that wait to be cut, what to order by which day, labels, foam that has lain in the sun, boards with nails in, and what was done last.",
            "The stage in hand is the first in the order of the work that still lacks something. A line begins with ! where it presses. Enter goes to where the chosen one is dealt with. Words or a code typed here are looked for in the yard.",
        ],
        Place.Ledger =>
        [
            "What was saved by what was done, by stage or along time, never mixed with what is only planned: that stands below, apart, plan by plan. What each figure is measured against stands at the end of the page.",
            $"By stage: {LedgerBars.StageLegend}. Over time: {LedgerBars.TimeLegend}. The steps are days, weeks, months, quarters or years, the finest of which there are at most {LedgerState.MostSteps}.",
        ],
        Place.Prices =>
        [
            "One price a line: material, store length and price, then in any order: lead and the days from order to delivery, limit and how many can be had, treated, from and the supplier. A counted thing has no length: panel tie 0.62.",
            "The price of the same material, length and treatment is replaced. It is dated today; over 90 days later it is marked OLD wherever it is used.",
        ],
        Place.Settings =>
        [
            "Each line sets what it says, in the words of the command offcuts settings. Another kerf for a family: kerf foam 0. Another keep length for a material: keep 2x4 18. A place the sun does not come to: cover the barn.",
            "Nothing that is catalogued, planned or booked is changed by a setting; what is matched and printed from then on goes by it.",
        ],
        Place.Count =>
        [
            "Walk the yard, take pictures of the labels with a phone, copy them over and write where they are. Many labels may be in one picture, turned, tilted or half in the shade. A scanner's text file does as well. Where each was seen is said by a place's label in the same picture, by @ and the place on the line, or by the folder's name.",
            "What is not seen at a place that was counted is missing, unless ^T says that no place was counted whole. Nothing is changed before ^K, and ^Z takes it back. The places not counted for longest stand first.",
        ],
        Place.Hand =>
        [
            "What can go to a relative's build. A piece is free where the best plan of everything that is lacking, all stages together and then the walls, leaves it alone: without all that is free together no stage gets worse in what is filled and what is spent. What is reserved, waits in a plan, is pinned or kept back stays; the reason stands behind it.",
            "Mark what is to go, make up loads for your beds, hand it over as a gift, a loan or a sale. Their Offcuts takes the file in with the codes that are on the labels. Undo takes it back until they confirm it.",
            "A load's weight is reckoned, not weighed. How it is tied down and what the road asks is for the law where you drive.",
        ],
        Place.Yard =>
        [
            "What you type narrows the list at once: words or parts of words, a material (2x4), a length and longer (8'+), sound, fair or poor, a place (@north rack). A scanner types the code of a label and Enter: that shows its piece, whatever stands on the line before it.",
            "Mark several with Tab, or all that are shown with ^W, and what you do next is done to all of them at once, as one change that one ^Z takes back. What is marked stays so when you type something else.",
            $"Marks: {YardRows.MarksLegend}.",
        ],
        Place.Strip =>
        [
            "One line a batch, in this order: material, lengths, a count where it is one length (x6); then plain words in any order: sound, fair, poor, nails, concrete, oiled, stamped, treated (treated: ACQ), bad 30..36, trim 1/2; 2, line 2, @place, from: stage; note: takes the rest of the line. A panel's type stands behind its size: foam 2-1/2x12 II.",
            "A bare number is in your unit. What was understood stands under the line; nothing is saved before Enter. Scan a blank label first and its code begins the line.",
            "A line that was saved wrong is put right with ^E: the one saved last, or ↑ to one before it. Its pieces keep their codes and labels; a piece too many is missing from then on.",
        ],
        Place.Stages =>
        [
            "A line a need: name: material length xCOUNT use. The name may be left out. 8'..8'2 is a range: cut to the first, or a whole piece up to the second. Use is structural, nonstructural, bracing or rough; treated or untreated may follow, and rip where a wider board or a taller panel may be sawn to it. Counted things: panel tie x40.",
            "An earlier stage is never left short to serve a later one.",
        ],
        Place.Walls =>
        [
            "Each row of a leg is drawn as somebody sees it who stands before it. What the signs mean stands below the last row.",
            "Type a place to find what fits it: 1' 7-1/2\" joint right is a stretch whose right end meets another panel, so that it must lie on a pattern line; joint left and joint both likewise. Without a material it is the wall's own panel; a use may stand behind: 2x4 14-1/2 rough. The piece that loses least comes first.",
            "Once a wall is filled, ^K keeps that, and ^O says which courses are stacked: their cuts are booked, what is left of the pieces comes back to the yard, and the rest is filled again from what is really left.",
            "Walls blow out. Bracing, steel, how high and how fast is poured are for the drawings, the local code and a licensed person to decide.",
        ],
        _ =>
        [
            "Each piece is a bar to scale, the marked end at the left. " + PieceBar.Legend.Replace("   ", ", ", StringComparison.Ordinal) + ".",
            "[ ] waits, [x] is cut as planned, [~] went otherwise, [-] was given up. Type or scan a code to go to its piece.",
        ],
    };
}
