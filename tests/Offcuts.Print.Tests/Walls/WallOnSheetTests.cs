using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Print.Tests;

/// <summary>What a cut sheet says of the wall that its plan fills. Wall, pieces and counts are our own invention.</summary>
public sealed class WallOnSheetTests
{
    private static readonly Material Foam = Invented.Material("foam 2-1/2x12 II");

    // Five whole panels that no saw touches, two of the yard, and one that is sawn in two.
    private static Plan Plan => Invented.Plan with
    {
        Pieces =
        [
            Whole("A outside, course 1, piece 1"), Whole("A outside, course 1, piece 2"), Whole("A outside, course 1, piece 3"), Whole("A outside, course 2, piece 5"), Whole("B inside, course 1, piece 1"),
            Of("RKDHKXJ", "B inside, course 1, piece 2"), Of("43HTX4K", "B inside, course 2, piece 1"),
            Whole("B inside, course 2, piece 2") with
            {
                Cuts =
                [
                    Cut("B inside, course 2, piece 2", 0, 24) with { Rip = new PlannedRip(Foam, Invented.In(3), Invented.In(9), Invented.Material("foam 2-1/2x9 II")) },
                    Cut("B inside, course 3, piece 1", 24, 24),
                ],
                SawCuts = 2,
            },
        ],
        Hardware = [],
        Unfilled = [],
    };

    private static CutSheetOptions Options => Invented.Options with
    {
        Filled = new WallOnSheet(
            "garage",
            [new NotchedPart(7, 1, Invented.In(6), Invented.In(20), new Notch("B", 3, "hatch", new Span(Length.Zero, Invented.In(14)), Length.Zero, Invented.In(4))) { OutLength = Invented.In(13.875m), OutHeight = Invented.In(7.875m), KeptAs = Invented.Material("foam 2-1/2x7-7/8 II") }],
            [new WallHardware("panel tie", 149, 60), new WallHardware("corner bracket", 48, 48)]),
    };

    private static string Flat(string text) => string.Join(' ', text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

    [Fact]
    public void Whole_panels_alike_are_told_together_and_fetched_by_their_count()
    {
        var text = Flat(CutSheet.Text(Plan, Options));

        text.Should().Contain("5 new foam 2-1/2x12 II 4' used as they are")
            .And.Contain("1 to 5: 5 of foam 2-1/2x12 II, 4', new No saw cut: they are used as they are. A outside, course 1, pieces 1 to 3 (bench) A outside, course 2, piece 5 (bench) B inside, course 1, piece 1 (bench)")
            .And.Contain("6, 7: 2 of foam 2-1/2x12 II, 4' No saw cut: they are used as they are. 6: RKD HKXJ, at invented loft: B inside, course 1, piece 2 (bench) 7: 43H TX4K, at invented loft: B inside, course 2, piece 1 (bench)")
            .And.Contain("8: new, foam 2-1/2x12 II, 4'").And.NotContain("1: new,");
        CutSheet.Text(Plan, Options).Split('\n').Should().OnlyContain(line => TextColumns.Width(line) <= 80);
    }

    [Fact]
    public void What_is_cut_to_height_is_told_with_what_becomes_of_the_strip()
    {
        var text = Flat(CutSheet.Text(Plan, Options));

        text.Should().Contain("8 new foam 2-1/2x12 II 4' to be cut to height")
            .And.Contain("2 saw cuts, 1 of them lengthwise, and a part of it is cut to height, see below.")
            .And.Contain("Cut to height: " + HeightRows.Lead)
            .And.Contain("8 new A 3\" 9\" keep 2' as foam 2-1/2x9 II, new label")
            .And.Contain("Cut to height in part: " + HeightRows.PartLead)
            .And.Contain("8 new B 6\" to 1' 8\" 4\" over it keep 1' 1-7/8\" as (hatch) foam 2-1/2x7-7/8 II, new label").And.NotContain(" Rip: ");
    }

    [Fact]
    public void What_is_counted_of_the_wall_is_told_though_the_plan_makes_pieces_alone()
    {
        var text = Flat(CutSheet.Text(Plan, Options));

        text.Should().Contain("4. Hardware ----------- What the wall garage still takes, ties with those that joints ask for. It is counted out with what else its stage needs, not by this plan; it is put there with: offcuts wall enter garage")
            .And.Contain("149 60 89").And.Contain("48 48 0").And.NotContain("None.");
        CutSheet.Text(Plan, Invented.Options).Should().Contain("  None.\n");
    }

    [Fact]
    public void The_printed_sheet_says_the_same()
    {
        var printed = string.Join(' ', PrintedPage.Of(CutSheet.Pdf(Plan, Options)).Select(page => page.Text)).Replace('\n', ' ');

        printed.Should().Contain("1 to 5: 5 of foam 2-1/2x12 II, 4', new").And.Contain("Cut to height in part").And.Contain("What the wall garage still takes").And.Contain("keep 2' as foam 2-1/2x9 II, new label");
    }

    [Fact]
    public void A_piece_to_be_cleaned_first_is_drawn_by_itself()
    {
        var nailed = Plan with { Pieces = [Of("RKDHKXJ", "top"), Of("43HTX4K", "bottom") with { Source = Source("43HTX4K") with { Concrete = true } }] };

        Flat(CutSheet.Text(nailed, Invented.Options)).Should().Contain("2: 43H TX4K").And.Contain("scrape off the concrete").And.NotContain("they are used");
    }

    private static PlannedPiece Whole(string name) => new()
    {
        Bought = new StorePrice { Material = Foam, Length = Invented.In(48), Price = new Money(1450), Date = Invented.Day },
        Cuts = [Cut(name, 0, 48)],
        Remainders = [],
        SawCuts = 0,
    };

    private static PlannedPiece Of(string code, string name) => new() { Source = Source(code), Cuts = [Cut(name, 0, 48)], Remainders = [], SawCuts = 0 };

    private static Piece Source(string code) => new() { Code = Invented.Code(code), Material = Foam, Length = Invented.In(48), FirstLine = Length.Zero, Place = "invented loft" };

    private static PlannedCut Cut(string name, decimal start, decimal length) => new("bench", name, Invented.In(start), Invented.In(length), Use.Nonstructural);
}
