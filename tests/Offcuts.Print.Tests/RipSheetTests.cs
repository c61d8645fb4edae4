using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Print.Tests;

/// <summary>What is sawn lengthwise stands apart on the sheet. The pieces are invented; widths are those of PS 20-20 Table 3, dry.</summary>
public sealed class RipSheetTests
{
    private static PlannedRip To(string into, decimal width, decimal strip, string? kept) =>
        new(Invented.Material(into), Invented.In(width), Invented.In(strip), kept is null ? null : Invented.Material(kept));

    private static string Flat(string text) => string.Join(' ', text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

    // A 2x8 with two nailers whose strips become 2x4, a crosscut and a nailer whose strip is too short to keep; and a knifed panel.
    private static Plan Plan => Invented.Plan with
    {
        Tiers = Invented.Plan.Tiers with { Rips = new Figure(4, 3) },
        Pieces =
        [
            new PlannedPiece
            {
                Source = Invented.Waler with { Material = Invented.Material("2x8"), BadSpots = [], TrimLeft = Length.Zero, TrimRight = Length.Zero, FirstLine = null },
                Cuts =
                [
                    new PlannedCut("bench", "nailer", Invented.In(0), Invented.In(36), Use.Nonstructural) { Rip = To("2x4", 3.5m, 3.625m, "2x4") },
                    new PlannedCut("bench", "nailer", Invented.In(36.125m), Invented.In(36), Use.Nonstructural) { Rip = To("2x4", 3.5m, 3.625m, "2x4") },
                    new PlannedCut("bench", "shelf", Invented.In(72.25m), Invented.In(24), Use.Nonstructural),
                    new PlannedCut("bench", "cleat", Invented.In(96.375m), Invented.In(10), Use.Nonstructural) { Rip = To("2x4", 3.5m, 3.625m, null) },
                ],
                Remainders = [new PlannedRemainder(Invented.In(106.5m), Invented.In(29.5m), Kept: true)],
                SawCuts = 9,
            },
            new PlannedPiece
            {
                Source = Invented.Panel with { Material = Invented.Material("foam 2-1/2x16 II"), Length = Invented.In(48), FirstLine = null },
                Cuts = [new PlannedCut("bench", "course", Invented.In(0), Invented.In(48), Use.Nonstructural) { Rip = To("foam 2-1/2x12 II", 12, 4, "foam 2-1/2x4 II") }],
                Remainders = [],
                SawCuts = 1,
            },
        ],
    };

    [Fact]
    public void Rips_are_listed_apart_with_piece_width_and_strip()
    {
        var text = CutSheet.Text(Plan, Invented.Options);
        var (from, to) = (text.IndexOf("  Rip:\n", StringComparison.Ordinal), text.IndexOf("\n\n3. Buy", StringComparison.Ordinal));

        text[from..to].Should().Be("""
              Rip:
                Each is sawn lengthwise out of its stretch above. Cut that off first, so
                that the board keeps its full width elsewhere; stretches side by side that
                are ripped alike are parted last. What is ripped has no grade until it is
                graded anew (common practice).
                 no.  code      cuts      to width        strip      the strip becomes
                   1  C99 MFXY  A B       3-1/2" (2x4)    3-5/8"     rip to 3-1/2", keep 2
                                                                     of 3' as 2x4, new
                                                                     labels
                   1  C99 MFXY  D         3-1/2" (2x4)    3-5/8"     scrap
                   2  RKD HKXJ  A         1' (foam        4"         keep 4' as foam 2-1/2x4
                                          2-1/2x12 II)               II, new label
            """);
    }

    [Fact]
    public void The_pick_list_the_rows_and_the_notes_say_it_too()
    {
        var text = Flat(CutSheet.Text(Plan, Invented.Options));

        text.Should().Contain("A 0\" 3' 3' nailer, ripped bench")
            .And.Contain("9 saw cuts, 5 of them lengthwise.")
            .And.Contain("1 saw cut, lengthwise.")
            .And.Contain("Ripped out of wider pieces: 4 cuts (not proven: no plan gets below 3 cuts).")
            .And.Contain("1 C99 MFXY 2x8 11' 4\" pull the nails and scrape off the concrete; to be ripped")
            .And.Contain("2 RKD HKXJ foam 2-1/2x16 II 4' to be ripped");
        PlanInShort.Of(Plan, YardSettings.Usual).Should().Contain("Rips 4 cuts out of wider pieces.").And.Contain(line => line.Contains("at best 3 cuts would be ripped"));
    }

    // Foam is knifed, so the caution speaks of the board alone.
    [Fact]
    public void The_caution_stands_on_the_sheet_with_its_source()
    {
        Flat(CutSheet.Text(Plan, Invented.Options)).Should().Contain("RIPPING: these are ripped: C99 MFXY. Sawn lengthwise")
            .And.Contain("[29 CFR 1910.213(c)(1)-(3); standing aside, push stick, short wood and nails: common practice]");
        CutSheet.Text(Invented.Plan, Invented.Options).Should().NotContain("RIPPING").And.NotContain("Rip:").And.NotContain("Ripped");
    }

    [Fact]
    public void No_line_is_wider_than_80_columns() =>
        CutSheet.Text(Plan, Invented.Options).Split('\n').Should().OnlyContain(line => TextColumns.Width(line) <= 80);

    [Fact]
    public void The_printed_sheet_says_what_the_text_says()
    {
        var pages = PrintedPage.Of(CutSheet.Pdf(Plan, Invented.Options));
        var printed = string.Join("\n", pages.Select(page => page.Text)).Replace('\n', ' ');

        foreach (var words in (string[])["Rip Each is sawn lengthwise", "no. code cuts to width strip the strip becomes", "A B 3-1/2\" (2x4) 3-5/8\" rip to 3-1/2\", keep 2 of 3' as 2x4, new labels", "D 3-1/2\" (2x4) 3-5/8\" scrap", "Ripped out of wider pieces: 4 cuts"])
            printed.Should().Contain(words);
        foreach (var page in pages)
        {
            page.Lines.Should().OnlyContain(line => line.Left >= 0 && line.Right <= page.Width);
            for (var i = 0; i < page.Lines.Count; i++)
                for (var j = i + 1; j < page.Lines.Count; j++) page.Lines[i].Overlaps(page.Lines[j]).Should().BeFalse($"{page.Lines[i].Text} / {page.Lines[j].Text}");
        }
    }
}
