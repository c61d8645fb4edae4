using Offcuts.Core.Yard;
using Offcuts.Screens;
using Offcuts.UseCases;

namespace Offcuts.Tests.Screens;

/// <summary>How the stages and their needs share the screen.</summary>
[Collection(OnScreen.Name)]
public sealed class StagesPlaceTests
{
    [Theory]
    [InlineData(0, 10, 1)]
    [InlineData(2, 10, 2)]
    [InlineData(5, 10, 5)]
    [InlineData(30, 10, 5)]
    [InlineData(30, 7, 3)]
    [InlineData(4, 1, 1)]
    [InlineData(4, -3, 1)]
    public void The_stages_above_take_what_they_need_and_half_of_the_lines_at_most(int stages, int lines, int shown)
    {
        StagesRows.StageLines(stages, lines).Should().Be(shown);
    }

    [Fact]
    public void At_eighty_columns_names_lengths_lacks_and_uses_stand_whole()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F4");
            run.Text.Should().Contain("north wall, second lift").And.Contain("header blocking");
            Line(run, "header blocking").Should().Be("  header blocking  foam 2-1/2x12 7' 8-5/8\" to 7' 9\"  12 of 12   nonstructural");
        }, yard => Fill(yard, stages: 1));
    }

    [Fact]
    public void Without_a_stage_the_whole_of_the_advice_is_read()
    {
        ScreenRun.On(60, 20, run => string.Join(' ', run.Press("F4").Lines[3..5]).Should()
            .Be("No stage is entered yet: ^K enters the first. Then type what it needs, a line a cut"));
    }

    [Fact]
    public void The_chosen_stage_and_its_needs_are_always_in_sight()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F4");
            for (var i = 0; i < 11; i++) run.Press("Down");
            run.Text.Should().Contain("north wall, second lift 11").And.Contain("▸", "the list that moves is marked");
            Line(run, "needs").Should().StartWith("  north wall, second lift 11 needs");
            run.Press("Tab", "Ctrl+End");
            run.Text.Should().Contain("need 14", "the last of its needs");

            run.Resize(60, 20);
            run.Text.Should().Contain("north wall, second lift 11 needs").And.Contain("need 14");
        }, yard => Fill(yard, stages: 12));
    }

    [Fact]
    public void A_bare_five_that_was_meant_in_feet_is_asked_about_before_it_is_added()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F4").Type("braces: 2x6 5 x2");
            run.Text.Should().Contain("! UNUSUAL: 2x6 5\": under the keep length of 1'; feet are written 5'");
            run.Press("Enter");
            run.Text.Should().Contain("2x6 5\" is unusual: under the keep length of 1'; feet are written 5'. Is it\nmeant?");
            run.Press("Esc");
            run.Yard.Stages().Single().Cuts.Should().NotContain(cut => cut.Name == "braces");

            run.Press("Enter", "y");
            run.Yard.Stages().Single().Cuts.Single(cut => cut.Name == "braces").Shortest.Should().Be(Core.Measures.Length.Inches(5));
        }, yard => Fill(yard, stages: 1));
    }

    [Fact]
    public void A_need_that_was_just_added_is_in_view_and_what_is_not_is_counted()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F4");
            Line(run, " needs").Should().MatchRegex("^  north wall, second lift needs  no day set  [0-9]+ more below$");
            run.Text.Should().NotContain("last one");

            run.Type("last one: 2x4 30 x2").Press("Enter");
            Line(run, "last one").Should().StartWith("  last one         2x4           2' 6\"");
            Line(run, " needs").Should().MatchRegex("^  north wall, second lift needs  no day set  [0-9]+ more above$");
        }, yard => Fill(yard, stages: 1));
    }

    [Fact]
    public void A_need_is_corrected_on_the_line_and_stays_where_it_stood()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F4", "Tab", "Down", "Ctrl+E");
            run.Lines[2].Should().Be("right  need 1: 2x4 2' x4 rough");
            run.Press("Esc", "Ctrl+E", "Ctrl+U").Type("need 1: 2x4 3 x4 rough").Press("Enter");
            run.Text.Should().Contain("! that looks like a slip; Enter once more saves it so");
            run.Press("Ctrl+U").Type("need 2: 2x4 3' x4 rough").Press("Enter");
            run.Text.Should().Contain("need 2");
            run.Yard.Stages().Single().Cuts[1].Shortest.Should().Be(Core.Measures.Length.Feet(2), "another need has that name");
            run.Lines[2].Should().StartWith("right", "what was typed stands to be put right");

            run.Press("Ctrl+U").Type("pegs: 2x4 3' x5 bracing treated").Press("Enter");
            var cut = run.Yard.Stages().Single().Cuts[1];
            (cut.Name, cut.Shortest, cut.Count, cut.Use, cut.Treated).Should().Be(("pegs", Core.Measures.Length.Feet(3), 5, Use.Bracing, TreatedWish.Yes));
            run.Press("Ctrl+Z");
            run.Yard.Stages().Single().Cuts[1].Name.Should().Be("need 1");
        }, yard => Fill(yard, stages: 1));
    }

    [Fact]
    public void A_need_that_another_program_changed_meanwhile_is_told_before_another_takes_its_place()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F4", "Tab", "Down", "Ctrl+E", "Ctrl+U").Type("need 1: 2x4 3' x4 rough");
            run.Folder.Must("stage", "drop", "north wall, second lift", "need 1");
            run.Folder.Must("stage", "need", "north wall, second lift", "need 1: 2x4 5' x9 rough");
            run.Tick();

            run.Press("Enter").Shell.State.Notice.Text.Should().Be("another program changed need 1 of north wall, second lift meanwhile: need 1: 2x4 5' x9 rough; Enter once more saves yours");
            run.Yard.Stages().Single().Cuts.Single(cut => cut.Name == "need 1").Count.Should().Be(9, "nothing is saved yet");

            run.Press("Enter");
            run.Yard.Stages().Single().Cuts.Single(cut => cut.Name == "need 1").Shortest.Should().Be(Core.Measures.Length.Feet(3));
        }, yard => Fill(yard, stages: 1));
    }

    private static string Line(ScreenRun run, string word) => run.Lines.First(line => line.Contains(word, StringComparison.Ordinal) && !line.Contains("a line a cut", StringComparison.Ordinal));

    private static void Fill(Store.YardFile yard, int stages)
    {
        var change = new ChangeStages(yard);
        for (var i = 0; i < stages; i++)
        {
            var name = i == 0 ? "north wall, second lift" : $"north wall, second lift {i}";
            change.Add(name, null).Ok.Should().BeTrue();
            string[] needs = ["header blocking: foam 2-1/2x12 7'8-5/8..7'9 x12 nonstructural", .. Enumerable.Range(1, 14).Select(n => $"need {n}: 2x4 24 x4 rough")];
            change.AddNeeds(name, needs, newNames: true).Ok.Should().BeTrue();
        }
    }

    [Fact]
    public void Before_a_stage_is_removed_it_is_said_what_is_given_up_with_it()
    {
        ScreenRun.OnKnownYard(120, 40, run =>
        {
            run.Press("F4", "Ctrl+X").Text.Should().Contain("Pieces reserved for it become free").And.NotContain("given up");
            run.Press("Esc", "F5", "Ctrl+R", "Ctrl+K", "F4", "Ctrl+X");
            string.Join(' ', run.Lines).Should().Contain("and what waits in plan 1 is given up, for stem wall too");
            run.Type("y").Text.Should().Contain("what waited in plan 1 is given up");
        }, at: Place.Stages);
    }
}
