using Offcuts.Matching;
using Offcuts.UseCases;

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

    [Theory]
    [MemberData(nameof(Sizes))]
    public void A_filled_wall(int width, int height) => Check("walls-filled", width, height, run => run.Press("F6", "Ctrl+R"), KnownWall.FillProven);

    [Theory]
    [MemberData(nameof(Sizes))]
    public void What_goes_where(int width, int height) => Check("walls-staging", width, height, run => run.Press("F6", "Ctrl+R", "Ctrl+D"), KnownWall.FillProven);

    [Fact]
    public void A_wall_is_filled_drawn_staged_and_printed()
    {
        ScreenRun.On(120, 40, run =>
        {
            run.Press("F6", "Ctrl+R");
            run.Text.Should().Contain("Found ").And.Contain("fills every course");
            run.Text.Should().MatchRegex("│ +N[0-9]+A +4' +│", "new pieces stand blank in the rows").And.MatchRegex("░ S[0-9]+A ", "and those of the yard shaded");

            run.Press("Ctrl+D").Text.Should().Contain("What goes to which leg").And.Contain("to leg A");
            var file = Path.Combine(run.Folder.Folder, "shed-cuts.pdf");
            run.Press("Ctrl+L").Press([.. Enumerable.Repeat("Backspace", "shed.pdf".Length)]).Type(file).Press("Enter");
            File.ReadAllBytes(file).Length.Should().BeGreaterThan(20_000);
        }, KnownWall.FillSmall);
    }

    [Fact]
    public void What_a_wall_is_cut_and_counted_is_entered_among_the_needs_of_its_stage()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F6", "Ctrl+W").Text.Should().Contain("s enter its cuts in its stage");
            run.Type("s").Text.Should().Contain("Enter what shed is cut and counted among the needs of walls").And.Contain("New names").And.Contain("corner bracket");
            run.Press("Esc");
            run.Yard.Stages().Named("walls")!.Hardware.Should().BeEmpty("nothing is entered until it is said so");

            run.Press("Ctrl+W").Type("s").Type("y").Text.Should().Contain("Entered what the wall shed asks for among the needs of walls");
            run.Yard.Stages().Named("walls")!.Hardware.Select(need => need.Name).Should().Equal("shed / panel tie", "shed / corner bracket", "shed / end bracket");
            run.Press("Ctrl+W").Type("s").Text.Should().NotContain("New names", "the stage has them now").And.Contain("y enter it");
        }, KnownWall.Fill);
    }

    [Fact]
    public void A_filling_that_needs_other_ties_than_were_entered_is_told_with_the_keys_that_enter_them_again()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F6", "Ctrl+W").Type("s").Type("y").Text.Should().NotContain("have changed since they were entered").And.NotContain("not entered, since", "a screen has no room for it");
            run.Press("Ctrl+R", "Ctrl+K").Type("y").Text.Should().Contain("! needs in walls have changed since they were entered: panel tie 21, now ");
            run.Press("Ctrl+W").Type("s").Type("y").Text.Should().NotContain("have changed since they were entered");
        }, KnownWall.FillSmall);
    }

    [Fact]
    public void A_wall_that_may_buy_nothing_says_what_stays_open()
    {
        ScreenRun.On(120, 40, run =>
        {
            run.Press("F6", "Ctrl+S", "Ctrl+R").Text.Should().MatchRegex("leaves [0-9]+ courses open, 0 new for ").And.Contain("?");
        }, KnownWall.FillSmall);
    }

    [Fact]
    public void Filling_is_shown_while_it_runs_and_Esc_stops_it()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F6");
            run.Hands.Holding = true;
            run.Press("Ctrl+R").Text.Should().Contain("Filling shed …").And.Contain("Esc stop filling");
            run.Press("Ctrl+R").Text.Should().Contain("a match runs already; Esc stops it");
            run.Press("Ctrl+S").Text.Should().Contain("shed is being filled; Esc stops that, then ^S changes it").And.Contain("Filling shed …", "it goes on as it was begun");
            run.Press("Ctrl+K").Text.Should().Contain("shed is being filled; Esc stops that with the best so far, then ^K keeps it");
            run.Press("Esc").Text.Should().Contain("stopping; the best laying so far is taken");
            run.LetGo().Text.Should().NotContain("Filling shed").And.Contain("Found ");
        }, KnownWall.FillSmall);
    }

    [Fact]
    public void A_yard_that_has_changed_since_is_told()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F6", "Ctrl+R").Text.Should().NotContain("has changed since");
            run.Yard.Change("another change", work => work.QueueLabels([KnownYard.Codes[0]])).Ok.Should().BeTrue();
            run.Tick().Text.Should().Contain("the yard has changed since it was filled: ^R fills again");
        }, KnownWall.FillSmall);
    }

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
    public void Without_a_wall_a_place_is_sought_by_the_pattern_of_the_only_system()
    {
        ScreenRun.On(120, 24, run =>
        {
            run.Press("F6").Type("19-1/2\" joint right");
            run.Text.Should().Contain("✓ foam 2-1/2x12, 1' 7-1/2\", nonstructural; its right end on a pattern line");
            run.Press("Enter").Text.Should().Contain("What fits foam 2-1/2x12").And.Contain(", 4' sound");
            run.Press("Ctrl+U").Type("2x4 14 joint left").Press("Enter").Text.Should().Contain("✗ column 8: only foam has pattern lines, so that no end of 2x4 lies at a joint; leave joint away");
        }, yard => new CataloguePieces(yard).Save(new CataloguePieces(yard).Read(["foam 2-1/2x12 4' @bay"]).Value, newNames: true).Ok.Should().BeTrue());
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
    public void A_filling_is_kept_and_its_courses_are_stacked_and_taken_back()
    {
        ScreenRun.On(120, 40, run =>
        {
            run.Press("F6", "Ctrl+O").Text.Should().Contain("no laying of shed is kept that could be stacked; ^R finds one, ^K keeps it");
            run.Press("Ctrl+K").Text.Should().Contain("nothing to keep yet; ^R fills shed");
            run.Press("Ctrl+R").Text.Should().Contain("not kept").And.Contain("^K keeps it");
            run.Press("Ctrl+O").Text.Should().Contain("keep the laying first (^K); then it can be stacked");
            run.Press("Ctrl+K").Text.Should().Contain("Keep how shed is filled, to be cut and stacked? It fills every course");
            run.Press("Esc");
            run.Yard.WallPlans().Should().BeEmpty();
            run.Press("Ctrl+K").Type("y");
            run.Text.Should().Contain("Kept how shed is filled, as plan 1. ^O says what is stacked").And.Contain("shed: 0 of 4 courses stand, all faces counted; to cut yet by plan 1: 4 pieces of the yard, 7 new. On hand:").And.Contain("short by 7");
            run.Text.Should().MatchRegex("░ S[0-9]+A ", "what is kept is drawn");
            run.Press("Ctrl+K").Text.Should().Contain("how shed is filled is kept as plan 1 already");

            // A wrong answer stays on the line; the right one is asked about once more before it is done.
            run.Press("Ctrl+O").Lines[2].Should().Be("course 1");
            run.Press("Backspace").Type("top").Text.Should().Contain("… \"top\" is no course");
            run.Press("Enter").Text.Should().Contain("\"top\" is no course");
            run.Press("Backspace", "Backspace", "Backspace").Type("2").Press("Enter").Text.Should().Contain("A outside, course 2: the course below it does not stand yet");
            run.Lines[2].Should().Be("course 2", "what was typed stays");
            run.Press("Backspace").Type("1");
            run.Text.Should().Contain("✓ courses 1, every leg and face".Replace("courses", "course"));
            run.Press("Enter").Text.Should().Contain("Is it stacked: course 1, every leg and face of shed?");
            run.Press("Esc");
            run.Yard.StackedCourses().Should().BeEmpty();
            run.Press("Ctrl+O", "Enter").Type("y").Text.Should().Contain("2 courses stacked").And.Contain("2 courses stay kept").And.Contain("shed: 2 of 4 courses stand, all faces counted; to cut yet by plan 1: ");
            run.Yard.StackedCourses().Should().HaveCount(2);

            run.Press("Ctrl+Z").Text.Should().Contain("shed: 0 of 4 courses stand, all faces counted; to cut yet by plan 1");
            run.Yard.StackedCourses().Should().BeEmpty();
        }, KnownWall.FillSmall);
    }

    [Fact]
    public void A_wall_that_is_filled_again_says_which_begun_courses_keep_what_is_cut()
    {
        ScreenRun.On(120, 40, run =>
        {
            run.Press("F6", "Ctrl+R", "Ctrl+K").Type("y");
            var course = run.Yard.WallPlans().Single().Plan.Courses.Single(course => course is { Run: "A outside", Course: 2 });
            var (cut, spoilt) = (course.Pieces[0].Piece, course.Pieces.Last(one => one.Piece != course.Pieces[0].Piece).Piece);
            void Cut(int piece, WhatHappened? otherwise) => new CarryOut(run.Yard, new DateOnly(2026, 6, 1), MatchLimits.None).Do(1, [new CutAct(piece, otherwise)], hardware: false).Ok.Should().BeTrue();
            Cut(cut, null);
            Cut(spoilt, new WhatHappened([], []));
            run.Tick().Text.Should().Contain("1 course lacks a piece, so fill it again");
            run.Press("F5").Text.Should().Contain("^R on Walls (F6) fills the wall again").And.NotContain("^R matches the rest again");
            run.Press("F6");

            run.Press("Ctrl+R").Text.Should().MatchRegex("begun courses? keeps? what is cut").And.Contain("not kept");
            run.Press("Ctrl+D").Text.Should().Contain("begun, and laid as it was planned: A outside, course 2:").And.Contain("what it lacked is to be cut");
            run.Press("Ctrl+K").Text.Should().Contain("It goes on under the number of the one that is kept");
            run.Type("y").Text.Should().Contain("Kept how shed is filled, as plan 1");
            run.Yard.WallPlans().Single().PlanId.Should().Be(1);
        }, KnownWall.FillSmall);
    }

    [Fact]
    public void The_rest_stays_kept_and_is_stacked_until_the_wall_stands()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F6", "Ctrl+R", "Ctrl+K").Type("y").Press("Ctrl+O", "Enter").Type("y");
            run.Press("Ctrl+O").Lines[2].Should().Be("course 2", "the lowest that is laid and does not stand");
            run.Press("Enter").Type("y").Text.Should().Contain("the wall stands").And.Contain("shed: all 4 courses stand, all faces counted");
            run.Press("Ctrl+R").Text.Should().Contain("every course of the wall shed stands already");
            run.Press("Ctrl+O").Text.Should().Contain("every course of the wall shed stands already: nothing is left to stack");
        }, KnownWall.FillSmall);
    }

    [Fact]
    public void A_filling_that_is_not_kept_is_asked_about_before_leaving()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F6", "Ctrl+R", "Ctrl+Q").Text.Should().Contain("How shed is filled is not kept");
            run.HasLeft.Should().BeFalse();
        }, KnownWall.FillSmall);
    }

    [Fact]
    public void A_yard_without_walls_says_how_to_get_one()
    {
        ScreenRun.OnKnownYard(80, 24, run => run.Press("F6").Text.Should().Contain("No wall yet; ^W writes its sheet, or take one in: offcuts wall import STAGE FILE"));
    }

    [Fact]
    public void The_page_of_the_systems_is_left_as_it_was_come_to_also_without_a_wall()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F6", "Ctrl+B").Text.Should().Contain("[SYSTEMS]");
            run.Press("Ctrl+B").Text.Should().Contain("[ELEVATION]");
            run.Press("Ctrl+B", "Ctrl+T").Text.Should().NotContain("[SYSTEMS]");
        });
    }

    [Fact]
    public void A_course_that_the_wall_does_not_have_is_told_while_it_is_typed()
    {
        ScreenRun.On(120, 40, run =>
        {
            run.Press("F6", "Ctrl+R", "Ctrl+K").Type("y");
            run.Press("Ctrl+O", "Ctrl+U").Type("99");
            run.Text.Should().Contain("has no course 99 there").And.NotContain("✓ course 99");
            run.Press("Ctrl+U").Type("1 leg Q").Text.Should().Contain("the wall shed has no leg Q; it has A");
            run.Press("Ctrl+U").Type("2").Text.Should().Contain("course 2: the course below it does not stand yet").And.NotContain("✓ course 2");
            run.Press("Ctrl+U").Type("1-2").Text.Should().Contain("✓ courses 1, 2");
            run.Press("Ctrl+U").Type("1").Text.Should().Contain("✓ course 1");
        }, KnownWall.FillSmall);
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

    private static void Check(string name, int width, int height, Action<ScreenRun> keys, Action<Store.YardFile>? yard = null) => ScreenRun.On(width, height, run =>
    {
        keys(run);
        run.Lines.Should().OnlyContain(line => Print.TextColumns.Width(line) <= width);
        Golden.Check($"{name}-{width}x{height}", run.Text);
    }, yard ?? KnownWall.Fill);
}
