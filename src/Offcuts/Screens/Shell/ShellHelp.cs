using Offcuts.Core.Yard;
using Offcuts.Print;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>The help: what the place that is shown is for, and every key that works there.</summary>
internal static class ShellHelp
{
    /// <summary>What can be done at the place that is shown.</summary>
    public static IReadOnlyList<Row> Of(ShellState state, int width)
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

    private static IEnumerable<Row> Explained(ShellState state, KeyUse key, int width)
    {
        const int column = 14;
        var lines = TextColumns.Wrap(key.About, Math.Max(2, width - column)).ToArray();
        for (var i = 0; i < lines.Length; i++)
            yield return Row.Of(new Ink(TextColumns.Fill(i == 0 ? ShellRows.Shown(key.AllShown, state) : "", column), Tone.Strong), new Ink(lines[i]));
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
