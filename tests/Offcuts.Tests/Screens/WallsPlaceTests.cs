namespace Offcuts.Tests.Screens;

/// <summary>The place of the walls with its real keys.</summary>
[Collection(OnScreen.Name)]
public sealed class WallsPlaceTests
{
    public static TheoryData<int, int> Sizes => new() { { 80, 24 }, { 120, 40 } };

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_elevation(int width, int height) => Check("walls-elevation", width, height, run => run.Press("F6"));

    [Theory]
    [MemberData(nameof(Sizes))]
    public void A_figure_of_the_takeoff_opened(int width, int height) => Check("walls-takeoff", width, height, run => run.Press("F6", "Ctrl+T", "Down", "Enter"));

    [Theory]
    [MemberData(nameof(Sizes))]
    public void What_fits_a_place(int width, int height) => Check("walls-fits", width, height, run => run.Press("F6").Type("19-1/2\" joint right").Press("Enter"));

    [Fact]
    public void An_offcut_for_a_short_corner_run_is_found()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F6").Type("19-1/2\" joint right");
            run.Lines[3].Should().Be("✓ foam 2-1/2x12, 1' 7-1/2\", nonstructural; its right end on a pattern line,");
            run.Lines[4].Should().Be("  the left one free; Enter finds what fits");

            run.Press("Enter");
            run.Text.Should().Contain("[WHAT FITS]");
            var first = run.Lines.SkipWhile(line => !line.StartsWith("What fits", StringComparison.Ordinal)).Skip(2).First();
            first.Should().StartWith($"{KnownYard.Codes[2]}, 1' 7-1/2\" sound at tarp: as it is; nothing is left", "its first line lies at 1-1/2 in, so its far end, 18 in on, is on a line");
            run.Lines[2].Should().StartWith("fits   19-1/2\" joint right", "the place stays on the line, to be put right or asked again");
        }, KnownWall.Fill);
    }

    [Fact]
    public void A_place_that_cannot_be_read_says_where_and_looks_for_nothing()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F6").Type("19-1/2\" joint middle").Press("Enter");
            run.Lines[3].Should().Be("               ^");
            run.Lines[4].Should().Be("✗ column 9: say at which end the joint is: joint left, joint right or joint");
            run.Text.Should().NotContain("[WHAT FITS]").And.Contain("nothing looked for");
        }, KnownWall.Fill);
    }

    [Fact]
    public void The_page_scrolls_to_its_end_and_no_further()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F6", "Tab");
            var top = run.Text;
            run.Press("Ctrl+End");
            run.Text.Should().Contain("Local code and licensed practice decide.");
            var end = run.Text;
            run.Press("Down", "PageDown").Text.Should().Be(end);
            run.Press("Up").Text.Should().NotBe(end, "one line up is seen at once");
            run.Press("Ctrl+Home").Text.Should().Be(top);
        }, KnownWall.Fill);
    }

    [Fact]
    public void A_figure_opens_and_closes_with_one_key()
    {
        ScreenRun.On(120, 40, run =>
        {
            run.Press("F6", "Ctrl+T").Text.Should().NotContain("leg A, courses");
            run.Press("Down", "Enter").Text.Should().Contain("- panel tie").And.Contain("leg A, ");
            run.Press("Enter").Text.Should().Contain("+ panel tie").And.NotContain("leg A, ");
        }, KnownWall.Fill);
    }

    [Fact]
    public void The_rows_are_written_as_a_pdf()
    {
        ScreenRun.On(80, 24, run =>
        {
            var file = Path.Combine(run.Folder.Folder, "shed-rows.pdf");
            run.Press("F6", "Ctrl+L").Text.Should().Contain("Which PDF file is the sheet of shed written to?");
            run.Press([.. Enumerable.Repeat("Backspace", "shed.pdf".Length)]).Type(file).Press("Enter");
            run.Text.Should().Contain("Wrote ");
            File.ReadAllBytes(file).AsSpan(0, 5).ToArray().Should().Equal("%PDF-"u8.ToArray());
        }, KnownWall.Fill);
    }

    [Fact]
    public void A_yard_without_walls_says_how_to_get_one()
    {
        ScreenRun.OnKnownYard(80, 24, run => run.Press("F6").Text.Should().Contain("No wall yet; write its sheet, then: offcuts wall import STAGE FILE"));
    }

    [Fact]
    public void A_wall_that_another_program_takes_in_appears()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F6").Text.Should().NotContain("garden");
            using (var other = Store.YardFile.Open(run.Folder.YardPath, run.Folder.Clock))
                new UseCases.ChangeWalls(other).Import("walls", new MemoryStream(System.Text.Encoding.UTF8.GetBytes(KnownWall.Sheet.Replace("wall             shed", "wall             garden"))), "garden.txt").Ok.Should().BeTrue();
            run.Tick().Text.Should().Contain("garden");
        }, KnownWall.Fill);
    }

    private static void Check(string name, int width, int height, Action<ScreenRun> keys) => ScreenRun.On(width, height, run =>
    {
        keys(run);
        run.Lines.Should().OnlyContain(line => Print.TextColumns.Width(line) <= width);
        Golden.Check($"{name}-{width}x{height}", run.Text);
    }, KnownWall.Fill);
}
