using Offcuts.Core.Yard;

namespace Offcuts.Print.Tests;

public sealed class WallSheetPdfTests
{
    private static readonly byte[] Pdf = WallSheetPdf.Write(InventedWall.Picture, Invented.Options);

    [Fact]
    public void Every_row_every_sign_and_every_caution_is_on_it()
    {
        var text = Text(Pdf);

        foreach (var row in InventedWall.Picture.Rows) text.Should().Contain(row.Run.Name);
        text.Should().Contain("S5A RKD HKXJ").And.Contain("window").And.Contain("door").And.Contain("What to cut first");
        foreach (var caution in Cautions.ForWall(steel: true)) text.Should().Contain(caution.Topic).And.Contain(caution.Source);
    }

    [Fact]
    public void A_cut_sheet_of_a_walls_plan_ends_with_its_rows()
    {
        Text(CutSheet.Pdf(InventedWall.Plan.AsPlan(), Invented.Options with { Wall = InventedWall.Picture }))
            .Should().Contain("8. Wall garage, row by row").And.Contain("What to cut first").And.Contain("A inside");
        Text(CutSheet.Pdf(InventedWall.Plan.AsPlan(), Invented.Options)).Should().NotContain("row by row");
    }

    [Fact]
    public void The_same_wall_gives_the_same_bytes() => WallSheetPdf.Write(InventedWall.Picture, Invented.Options).Should().Equal(Pdf);

    [Fact]
    public void Nothing_is_printed_beyond_the_page()
    {
        foreach (var page in PrintedPage.Of(Pdf))
            page.Lines.Should().OnlyContain(line => line.Left >= 0 && line.Baseline >= 0 && line.Baseline <= page.Height);
    }

    [Fact]
    public void Where_the_pieces_go_has_headings_as_what_to_cut_first_has() =>
        PrintedPage.Of(Pdf).SelectMany(page => page.Lines).Count(line => line.Text.Contains("cut: row and course")).Should().Be(2);

    [Fact]
    public void A_wall_without_a_plan_is_drawn_too() =>
        Text(WallSheetPdf.Write(InventedWall.Picture with { Plan = null }, Invented.Options)).Should().Contain("A outside").And.NotContain("What to cut first");

    [Fact]
    public void A_stretch_that_nothing_can_fill_stands_on_the_sheet_and_the_drawing()
    {
        var picture = InventedWall.Picture with { Never = ["A outside, course 1: nothing can be laid in 2\""] };

        Text(WallSheetPdf.Write(picture, Invented.Options)).Should().Contain("! A outside, course 1: nothing can be laid in 2\".");
        Text(CutSheet.Pdf(InventedWall.Plan.AsPlan(), Invented.Options with { Wall = picture })).Should().Contain("! A outside, course 1: nothing can be laid in 2\".");
        Elevation.Text(picture, new ElevationOptions()).Should().Contain("! A outside, course 1: nothing can be laid in 2\".\n");
        Text(Pdf).Should().NotContain("nothing can be laid");
    }

    private static string Text(byte[] pdf) => string.Join(' ', PrintedPage.Of(pdf).SelectMany(page => page.Lines).Select(line => line.Text));
}
