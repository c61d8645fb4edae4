using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using UglyToad.PdfPig;

namespace Offcuts.Print.Tests;

/// <summary>Layouts for foam, board ends, bins and bundles; the ruler page; what a printer is off by; the preview.</summary>
public sealed class OtherLayoutTests
{
    private static LabelContent Bin { get; } = Invented.OtherLabels[2];

    [Fact]
    public void A_tag_for_a_board_s_end_is_no_wider_than_its_edge()
    {
        var layout = LabelLayout.Find("lumber-end").Value;

        // A dressed 2-by board is 1-1/2 in thick (American Softwood Lumber Standard PS 20, table 3).
        layout.LabelHeight.Should().Be(Length.Inches(1.5m));
        layout.Module.Should().BeGreaterThanOrEqualTo(LabelLayout.GoodModule);
    }

    [Fact]
    public void Nothing_but_its_mark_is_printed_on_the_strip_that_the_pin_goes_through()
    {
        var layout = LabelLayout.Find("foam-pinned").Value;
        var pdf = LabelSheet.Pdf(layout, [Invented.OtherLabels[1]], Invented.Day).Value;

        using var document = PdfDocument.Open(pdf);
        var page = document.GetPage(1);
        var strip = (double)(layout.Pin + layout.Inset).InInches * 72;
        page.Letters.Should().OnlyContain(letter => letter.BoundingBox.Left > strip);
        page.Paths.Where(path => path.IsFilled).SelectMany(path => path).Select(path => path.GetBoundingRectangle()!.Value.Left).Should().OnlyContain(left => left > strip);
        page.Paths.Where(path => !path.IsFilled).Should().HaveCount(3, "a ring and a cross");
    }

    [Fact]
    public void The_label_of_a_bin_has_lines_for_counts_and_days_and_that_of_a_piece_has_none()
    {
        var layout = LabelLayout.Find("bin-8").Value;
        string Words(LabelContent label)
        {
            using var document = PdfDocument.Open(LabelSheet.Pdf(layout, [label], Invented.Day).Value);
            return string.Join(' ', document.GetPage(1).GetWords().Select(word => word.Text));
        }

        Words(Bin).Should().Contain("count day count day count day");
        Words(Invented.OtherLabels[0]).Should().NotContain("count");
    }

    [Fact]
    public void The_label_of_a_bundle_says_what_is_in_it_and_that_of_a_place_its_name()
    {
        using var document = PdfDocument.Open(LabelSheet.Pdf(LabelLayout.Find("bundle-6x4").Value, [.. Invented.OtherLabels.Skip(3)], Invented.Day).Value);
        var words = document.GetPages().Select(page => string.Join(' ', page.GetWords().Select(word => word.Text))).ToArray();

        words[0].Should().Contain("43H TX4K").And.Contain("studs, invented west wall").And.Contain("3 pieces").And.Contain("3 x 2x4").And.Contain("invented trailer");
        words[1].Should().Contain("HNC F4YW").And.Contain("invented north rack").And.Contain("place");
    }

    [Fact]
    public void A_print_is_moved_by_what_its_printer_is_off_by()
    {
        var layout = LabelLayout.Find("letter-10").Value;
        var offset = new PrinterOffset("kitchen", Length.Millimetres(1.5m).Units, -Length.Millimetres(1).Units);

        var (plain, moved) = (FirstModule(LabelSheet.Pdf(layout, [Bin], Invented.Day).Value), FirstModule(LabelSheet.Pdf(layout, [Bin], Invented.Day, offset: offset).Value));

        (moved.Left - plain.Left).Should().BeApproximately(1.5 * 72 / 25.4, 0.01);
        (moved.Top - plain.Top).Should().BeApproximately(1 * 72 / 25.4, 0.01, "up is up in a PDF");
        LabelSheet.Pdf(layout, [Bin], Invented.Day, offset: PrinterOffset.None).Value.Should().Equal(LabelSheet.Pdf(layout, [Bin], Invented.Day).Value);
    }

    [Theory]
    [InlineData("letter-10", 190, 250)]
    [InlineData("a4-14", 190, 270)]
    [InlineData("roll-4x2", 80, 30)]
    public void The_rules_of_the_ruler_page_are_as_long_as_they_say(string name, int across, int down)
    {
        var layout = LabelLayout.Find(name).Value;
        using var document = PdfDocument.Open(RulerPage.Pdf(layout, Invented.Day));
        var lines = document.GetPage(1).Paths.SelectMany(path => path).Select(path => path.GetBoundingRectangle()).OfType<UglyToad.PdfPig.Core.PdfRectangle>().ToArray();

        RulerPage.AcrossMillimetres(layout).Should().Be(across);
        RulerPage.DownMillimetres(layout).Should().Be(down);
        lines.Should().Contain(line => Math.Abs(line.Width - across * 72 / 25.4) < 0.01 && line.Height < 0.01);
        lines.Should().Contain(line => Math.Abs(line.Height - down * 72 / 25.4) < 0.01 && line.Width < 0.01);
        lines.Count(line => Math.Abs(line.Width - (double)layout.LabelWidth.InInches * 72) < 0.01 && Math.Abs(line.Height - (double)layout.LabelHeight.InInches * 72) < 0.01).Should().Be(layout.PerPage);
    }

    [Fact]
    public void The_preview_shows_a_label_to_scale_in_letters()
    {
        Golden.Compare("label-preview.txt", string.Join('\n', LabelPreview.Lines(LabelLayout.Find("lumber-end").Value, Invented.OtherLabels[0])) + "\n");
    }

    [Fact]
    public void The_preview_of_a_bin_shows_where_counts_are_written_in_plain_letters_too()
    {
        Golden.Compare("label-preview-ascii.txt", string.Join('\n', LabelPreview.Lines(LabelLayout.Find("bin-8").Value, Bin, ascii: true)) + "\n");
    }

    [Theory]
    [InlineData("\"pin\": \"3 in\"", "a QR module would be 0 mm wide; to be read off rough wood it needs 0.5 mm or more")]
    [InlineData("\"pin\": 7", "pin is a text in quotes")]
    [InlineData("\"counts\": \"yes\"", "counts is true or false")]
    public void What_a_layout_says_of_pins_and_counts_is_checked(string field, string sentence)
    {
        var read = LabelLayout.Read($$"""{ "name": "mine", "about": "mine", "label": { "width": "3 in", "height": "2 in" }, "inset": "1/8 in", {{field}} }""");

        read.Faults.Select(fault => fault.Sentence).Should().Equal(sentence);
    }

    private static UglyToad.PdfPig.Core.PdfRectangle FirstModule(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        return document.GetPage(1).Paths.First(path => path.IsFilled).First().GetBoundingRectangle()!.Value;
    }
}
