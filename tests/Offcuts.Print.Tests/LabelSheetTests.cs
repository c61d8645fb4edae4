using CsCheck;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Print.Tests;

public sealed class LabelSheetTests
{
    private static readonly LabelLayout Letter = LabelLayout.Find("letter-10").Value;
    private static readonly LabelLayout SmallRoll = LabelLayout.Find("roll-2x1").Value;

    /// <summary>About the least that a layout may leave for the text, beside and below the symbol.</summary>
    private static readonly LabelLayout[] Tightest =
    [
        LabelLayout.Read("""{ "name": "wide", "about": "least room beside", "label": { "width": "44 mm", "height": "20 mm" }, "inset": "0 mm" }""").Value,
        LabelLayout.Read("""{ "name": "tall", "about": "least room below", "label": { "width": "25 mm", "height": "48 mm" }, "inset": "0 mm" }""").Value,
    ];

    [Theory]
    [InlineData("letter-10", 612, 792)]
    [InlineData("a4-14", 595.2756, 841.8898)]
    [InlineData("roll-4x2", 288, 144)]
    [InlineData("roll-2x1", 144, 72)]
    public void A_page_is_true_to_size(string name, double width, double height)
    {
        // 72 points to the inch of 25.4 mm: 210 mm are 595.2756 pt.
        var page = Print(LabelLayout.Find(name).Value, Invented.Labels).First();

        page.Width.Should().BeApproximately(width, 0.001);
        page.Height.Should().BeApproximately(height, 0.001);
    }

    [Fact]
    public void A_symbol_lies_where_the_layouts_arithmetic_puts_it()
    {
        // Second label of the sheet: 5/32 + 4-3/16 in from the left, 1/2 in from the top. The symbol is 14210/320 mm with its quiet
        // zone, in the middle of 2 in; its first dark module lies 4 modules of 490/320 mm further in, behind 1/8 in of inset.
        var page = Print(Letter, [Invented.Labels[0]], startAt: 2)[0];

        const double point = 72 / 25.4;
        var left = (0.15625 + 4.1875 + 0.125) * 72 + 4 * 490 / 320.0 * point;
        var top = 0.5 * 72 + (50.8 - 14210 / 320.0) / 2 * point + 4 * 490 / 320.0 * point;
        page.Blocks.Min(block => block.Left).Should().BeApproximately(left, 0.01);
        page.Blocks.Min(block => block.Top).Should().BeApproximately(top, 0.01);
        page.Blocks.Max(block => block.Right).Should().BeApproximately(left + 21 * 490 / 320.0 * point, 0.01);
        page.Blocks.Max(block => block.Bottom).Should().BeApproximately(top + 21 * 490 / 320.0 * point, 0.01);
    }

    [Fact]
    public void A_symbol_is_one_path_so_that_no_hairline_shows_between_its_modules()
    {
        var page = Print(SmallRoll, [Invented.Labels[0]])[0];

        page.FilledPaths.Should().Be(1);
        page.Blocks.Should().HaveCount(QrSymbol.Of(Invented.Labels[0].Code).Blocks().Count);
    }

    [Fact]
    public void A_part_used_sheet_begins_at_its_first_free_label()
    {
        var page = Print(Letter, [Invented.Labels[0]], startAt: 10)[0];

        // The tenth is the right one of the last row: 8-1/2 in from the top.
        page.Lines.Single(line => line.Text == "C99 MFXY").Top.Should().BeInRange(8.5 * 72, 10.5 * 72);
        page.Lines.Single(line => line.Text == "C99 MFXY").Left.Should().BeGreaterThan((0.15625 + 4.1875) * 72);
    }

    [Fact]
    public void What_does_not_fit_a_sheet_goes_on_the_next_from_its_first_label()
    {
        var pages = Print(Letter, Invented.Labels, startAt: 10);

        pages.Should().HaveCount(2);
        Codes(pages[0]).Should().Equal("C99 MFXY");
        Codes(pages[1]).Should().HaveCount(9).And.StartWith("6P7 RX46");
        pages[1].Lines.Single(line => line.Text == "6P7 RX46").Top.Should().BeInRange(36, 36 + 144);
    }

    [Fact]
    public void A_roll_has_one_label_a_page()
    {
        Print(SmallRoll, Invented.Labels).Select(page => Codes(page).Single()).Should().Equal(Invented.Labels.Select(label => label.Code.ToString()));
    }

    [Theory]
    [InlineData("letter-10", 0, "a sheet has labels 1 to 10; 0 is none of them")]
    [InlineData("letter-10", 11, "a sheet has labels 1 to 10; 11 is none of them")]
    [InlineData("roll-2x1", 2, "a page has one label; 2 is not it")]
    public void A_start_outside_the_sheet_is_refused(string layout, int startAt, string sentence)
    {
        LabelSheet.Pdf(LabelLayout.Find(layout).Value, Invented.Labels, Invented.Day, startAt).Fault.Sentence.Should().Be(sentence);
    }

    [Fact]
    public void No_label_is_no_print()
    {
        LabelSheet.Pdf(Letter, [], Invented.Day).Fault.Sentence.Should().Be("there is nothing to print");
    }

    [Fact]
    public void The_same_labels_give_the_same_bytes()
    {
        var first = LabelSheet.Pdf(Letter, Invented.Labels, Invented.Day).Value;
        var second = LabelSheet.Pdf(Letter, Invented.Labels, Invented.Day).Value;

        second.SequenceEqual(first).Should().BeTrue();
        LabelSheet.Pdf(Letter, Invented.Labels, Invented.Day.AddDays(1)).Value.SequenceEqual(first).Should().BeFalse("the day of the print is in it");
    }

    [Fact]
    public void The_file_asks_to_be_printed_without_scaling()
    {
        var file = System.Text.Encoding.Latin1.GetString(LabelSheet.Pdf(Letter, Invented.Labels, Invented.Day).Value);

        file.Should().Contain("/PrintScaling/None");
    }

    [Fact]
    public void The_foot_of_a_sheet_bears_a_line_of_50_mm()
    {
        using var document = UglyToad.PdfPig.PdfDocument.Open(LabelSheet.Pdf(Letter, [Invented.Labels[0]], Invented.Day).Value);

        var lines = document.GetPage(1).Paths.Where(path => path.IsStroked).Select(path => path.GetBoundingRectangle()!.Value);
        lines.Max(line => line.Width).Should().BeApproximately(50 * 72 / 25.4, 0.01);
    }

    [Fact]
    public void A_label_says_what_the_piece_is()
    {
        Print(Letter, [LabelContent.Of(Invented.Waler, Invented.Day, LengthUnit.Inch)])[0].Lines.Select(line => line.Text).Take(7).Should().Equal(
            "C99 MFXY", "2x10   11' 4\"", "NAILS · OILED", "CONCRETE · SOUND", "bad 2' 6\" to 3'; trim 1/2\" here", "invented rack", "2026-11-25");
    }

    [Fact]
    public void A_length_stands_in_the_users_unit()
    {
        LabelContent.Of(Invented.Sill, Invented.Day, LengthUnit.Millimetre).Measure.Should().Be("2438.4 mm");
    }

    [Fact]
    public void Marks_come_most_dangerous_first_and_the_condition_last()
    {
        LabelContent.Of(Invented.Crowded, Invented.Day, LengthUnit.Inch).Marks
            .Should().Equal("NAILS", "TREATED", "OILED", "CONCRETE", "STAMPED", "POOR");
        LabelContent.Of(Invented.Sill, Invented.Day, LengthUnit.Inch).Marks.Should().Equal("TREATED ACQ", "STAMPED", "SOUND");
        LabelContent.Of(Invented.Bar, Invented.Day, LengthUnit.Inch).Marks.Should().Equal("SOUND");
    }

    [Fact]
    public void A_sheet_shows_both_sides_and_foam_its_first_line()
    {
        LabelContent.Of(new Piece { Code = Invented.Code("YJ9JVWC"), Material = Invented.Material("plywood 3/4"), Length = Length.Feet(8), Width = Length.Feet(4) }, Invented.Day, LengthUnit.Inch)
            .Measure.Should().Be("8' x 4'");
        LabelContent.Of(Invented.Panel, Invented.Day, LengthUnit.Inch).Details.Should().Equal("first line 3\"");
    }

    [Fact]
    public void A_bin_bears_no_count()
    {
        var lines = Print(Letter, [LabelContent.Of(new Bin(Invented.Code("7YNN53D"), Invented.Hardware("wedge bolt", "box"), 24, "blue drawer"), Invented.Day, LengthUnit.Inch)])[0].Lines;

        lines.Select(line => line.Text).Take(5).Should().Equal("7YN N53D", "wedge bolt", "by the box", "blue drawer", "2026-11-25");
    }

    [Fact]
    public void A_blank_label_has_its_code_and_lines_to_write_on()
    {
        var page = Print(Letter, [LabelContent.Blank(Invented.Code("43HTX4K"))])[0];

        page.Lines.Select(line => line.Text).Take(4).Should().Equal("43H TX4K", "material", "length", "place");
    }

    [Fact]
    public void Accented_letters_come_back_right()
    {
        const string place = "é ü ñ ř ł Ž ß";

        Printed(place).Should().Be(place);
    }

    [Fact]
    public void An_accent_typed_after_its_letter_prints_as_one_letter()
    {
        Printed("Jir\u030ci\u0301 Mu\u0308ller").Should().Be("Jiří Müller");
    }

    [Fact]
    public void A_letter_the_font_lacks_shows_as_a_square()
    {
        Printed("木 shed 🪵").Should().Be("□ shed □");
    }

    [Fact]
    public void A_control_character_shows_harmlessly()
    {
        Printed("rack\u001b[31m\u202e").Should().Be("rack\\u001b[31m\\u202e");
    }

    [Fact]
    public void A_text_that_is_too_long_shrinks_then_is_cut_with_a_mark()
    {
        var small = Print(Letter, [LabelContent.Of(Invented.Stud with { Place = "a place with a name that is longer than two lines of it" }, Invented.Day, LengthUnit.Inch)])[0];
        var large = Print(Letter, [LabelContent.Of(Invented.Stud with { Place = "shed" }, Invented.Day, LengthUnit.Inch)])[0];
        var cut = Print(SmallRoll, [LabelContent.Of(Invented.Crowded, Invented.Day, LengthUnit.Inch)])[0];

        var shrunk = small.Lines.First(line => line.Text.StartsWith("a place"));
        shrunk.Size.Should().BeLessThan(large.Lines.Single(line => line.Text == "shed").Size).And.BeGreaterThanOrEqualTo(6);
        cut.Lines.Single(line => line.Text.StartsWith("Žluť")).Text.Should().EndWith("…");
        cut.Lines.Single(line => line.Text.StartsWith("treated with")).Text.Should().EndWith("…");
        cut.Lines.Should().OnlyContain(line => line.Size >= 6);
    }

    [Fact]
    public void Every_mark_is_whole_on_the_fullest_label_of_every_layout()
    {
        foreach (var layout in LabelLayout.Shipped.Concat(Tightest))
        {
            var text = Print(layout, [LabelContent.Of(Invented.Crowded, Invented.Day, LengthUnit.Inch)])[0].Text;

            text.Should().ContainAll("T9F 3VRJ", "NAILS", "TREATED", "OILED", "CONCRETE", "STAMPED", "POOR", "~11' 10\"");
        }
    }

    [Fact]
    public void Whatever_a_piece_says_stays_on_its_label_and_nothing_overprints()
    {
        var text = Gen.OneOf(
            Gen.String[Gen.Char["abcdefghijklmnopqrstuvwxyz WMJQ éŘłÅ,;:\"'()木\u0301\u001b"], 0, 60],
            Gen.Const(Invented.Crowded.Place),
            Gen.Const(new string('W', 60)),
            Gen.Const(""));
        var piece = Gen.Select(text, text, text, Gen.Int[1, 1 << 9], Gen.Int[1, 4000], (name, place, treated, flags, sixteenths) => new Piece
        {
            Code = Code.Draw(new Random(flags * 4001 + sixteenths).Next),
            Material = MaterialReader.Read(name).TryGet(out var material) ? material : Invented.Material("2x12"),
            Length = Length.Inches(sixteenths / 16m),
            Width = material is Sheet ? Length.Inches(48) : default,
            Place = place,
            TreatedWith = treated,
            Treated = (flags & 1) > 0,
            Nails = (flags & 2) > 0,
            Oiled = (flags & 4) > 0,
            Concrete = (flags & 8) > 0,
            Stamped = (flags & 16) > 0,
            Condition = (Condition)(flags % 3),
            TrimLeft = (flags & 32) > 0 ? Length.Inches(0.03125m) : default,
            BadSpots = (flags & 64) > 0 ? [.. Enumerable.Range(0, 6).Select(i => new Span(Length.Inches(2 * i), Length.Inches(2 * i + 1)))] : [],
        });

        Gen.Select(piece, Gen.Int[0, LabelLayout.Shipped.Count + Tightest.Length - 1]).Sample((each, which) =>
        {
            var layout = LabelLayout.Shipped.Concat(Tightest).ElementAt(which);
            StaysInItsPlace(layout, LabelContent.Of(each, Invented.Day, LengthUnit.Inch));
        }, iter: 50, threads: 1);
    }

    private static void StaysInItsPlace(LabelLayout layout, LabelContent content)
    {
        var page = Print(layout, [content])[0];
        var place = layout.PlaceOf(0);
        var (left, top) = (Points(place.X + layout.Inset), Points(place.Y + layout.Inset));
        var (right, bottom) = (Points(place.X + place.Width) - Points(layout.Inset), Points(place.Y + place.Height) - Points(layout.Inset));
        var quiet = Points(layout.Module) * 4;
        var symbol = new PrintedLine(
            "QR", page.Blocks.Min(block => block.Left) - quiet, page.Blocks.Min(block => block.Top) - quiet,
            page.Blocks.Max(block => block.Right) + quiet, page.Blocks.Max(block => block.Bottom) + quiet, 0, 0);
        var lines = page.Lines.Where(line => !line.Text.StartsWith("50 mm")).ToArray();

        lines[0].Text.Should().Be(content.Code.ToString());
        page.Text.Should().ContainAll(content.Marks.Where(mark => !mark.StartsWith("TREATED ")));
        foreach (var line in lines)
        {
            // A letter's ink may reach a hair beyond its own width.
            line.Left.Should().BeGreaterThan(left - 0.5, line.Text);
            line.Right.Should().BeLessThan(right + 0.5, line.Text);
            line.Top.Should().BeGreaterThan(top - 0.5, line.Text);
            line.Bottom.Should().BeLessThan(bottom + 0.5, line.Text);
            line.Overlaps(symbol).Should().BeFalse($"{line} stays out of the symbol {symbol}");
            lines.Where(other => other != line && other.Overlaps(line)).Should().BeEmpty($"of all of {string.Join("; ", lines.Select(each => each.ToString()))}");
        }
    }

    private static string Printed(string place) =>
        Print(Letter, [LabelContent.Of(Invented.Bar with { Place = place }, Invented.Day, LengthUnit.Inch)])[0].Lines[3].Text;

    private static IEnumerable<string> Codes(PrintedPage page) =>
        page.Lines.Select(line => line.Text).Where(text => text.Length == 8 && Core.Yard.Code.Parse(text).Ok);

    private static IReadOnlyList<PrintedPage> Print(LabelLayout layout, IReadOnlyList<LabelContent> labels, int startAt = 1) =>
        PrintedPage.Of(LabelSheet.Pdf(layout, labels, Invented.Day, startAt).Value);

    private static double Points(Length length) => (double)length.InInches * 72;
}
