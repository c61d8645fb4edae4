using System.Text;
using Offcuts.Core.Walls;
using Offcuts.Screens;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Tests.Screens;

/// <summary>Sheets of walls and systems written on the screen, with its real keys.</summary>
[Collection(OnScreen.Name)]
public sealed class SheetFormTests
{
    public static TheoryData<int, int> Sizes => new() { { 80, 24 }, { 120, 40 } };

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_sheet_of_a_wall(int width, int height) => Check("sheet-wall", width, height, run => run.Press("F6", "Ctrl+W").Type("e").Press([.. Enumerable.Repeat("Down", 6)]));

    [Theory]
    [MemberData(nameof(Sizes))]
    public void A_line_that_is_wrong(int width, int height) => Check("sheet-fault", width, height, run =>
        run.Press("F6", "Ctrl+W").Type("e").Press([.. Enumerable.Repeat("Down", 5)]).Press([.. Enumerable.Repeat("Backspace", 4)]).Type("round").Press("Down", "Down").Press("Backspace", "Backspace").Type("20'"));

    [Theory]
    [MemberData(nameof(Sizes))]
    public void What_can_be_added(int width, int height) => Check("sheet-add", width, height, run => run.Press("F6", "Ctrl+W").Type("e").Press("Ctrl+O"));

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_sheet_of_a_system(int width, int height) => Check("sheet-system", width, height, run => run.Press("F6", "Ctrl+B", "Enter", "Down", "Down", "Down", "Down"));

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_systems(int width, int height) => Check("systems", width, height, run => run.Press("F6", "Ctrl+B"));

    [Fact]
    public void A_new_wall_is_written_from_nothing_with_a_corner_a_tee_a_door_and_a_window()
    {
        ScreenRun.On(120, 40, run =>
        {
            run.Press("F6", "Ctrl+W").Type("n");
            run.Text.Should().Contain("A new wall of walls: 6 lines").And.Contain("✓ 1 leg, 8 courses;", "what is given holds at once");
            Clear(run, "new wall").Type("barn");

            // From the last line: a second leg, on which the first then turns, and its openings.
            run.Press("Ctrl+End", "Ctrl+O").Type("l");
            run.Text.Should().Contain("leg A: 12' left").And.Contain("leg B: 8' end").And.Contain("✓ 2 legs, 8 courses;");
            run.Press("Ctrl+O").Type("d").Press("Ctrl+O").Type("w");
            run.Text.Should().Contain("  opening door: at 2' wide 3' high 6' 8\" sill 0\"").And.Contain("  opening window: at 7' wide 3' high 3' sill 3'").And.Contain("✗", "the window sticks out of a leg of 8 ft");
            run.Text.Should().Contain("sticks out");
            run.Press("Ctrl+X").Text.Should().NotContain("opening window", "the window is dropped");
            run.Press("Ctrl+O").Type("t");
            run.Text.Should().Contain("leg C: 8' end").And.Contain("  starts at 6' inside of B", "clear of the door").And.Contain("✓ 3 legs, 8 courses;");

            run.Press("Ctrl+K").Text.Should().Contain("Took in the wall barn of walls").And.Contain("barn                 3     8'");
            var wall = run.Yard.Walls().Single(one => one.Sheet.Name == "barn").Sheet;
            wall.Legs.Select(leg => (leg.Name, leg.Turn, Openings: leg.Openings.Count, Tee: leg.Start is not null)).Should().Equal(("A", Turn.Left, 0, false), ("B", Turn.End, 1, false), ("C", Turn.End, 0, true));

            run.Press("Ctrl+Z").Text.Should().NotContain("barn                 3", "the whole sheet is one entry of the history");
            run.Yard.Walls().Should().HaveCount(1);
        }, KnownWall.Fill);
    }

    [Fact]
    public void In_a_yard_of_millimetres_a_wall_is_offered_in_round_ones()
    {
        ScreenRun.On(120, 40, run =>
        {
            run.Press("F6", "Ctrl+W").Type("n").Text.Should().Contain("height           2400 mm").And.Contain("core             150 mm").And.Contain("leg A: 3600 mm end").And.Contain("✓ 1 leg, 8 courses;");
            run.Press("Ctrl+End", "Ctrl+O").Type("d").Text.Should().Contain("  opening door: at 600 mm wide 900 mm high 2000 mm sill 0 mm");
            run.Press("Ctrl+O").Type("s").Text.Should().Contain("horizontal bars  every 400 mm lap 600 mm of #4").And.Contain("longest bar      6000 mm").And.NotContain("✗");
        }, yard =>
        {
            KnownWall.Fill(yard);
            new ChangeSettings(yard).Set("unit mm").Ok.Should().BeTrue();
        });
    }

    [Fact]
    public void A_sheet_that_is_being_saved_is_not_saved_a_second_time()
    {
        ScreenRun.On(120, 40, run =>
        {
            run.Press("F6", "Ctrl+W").Type("n");
            run.Hands.Holding = true;
            run.Press("Ctrl+K", "Ctrl+K");
            run.LetGo().Text.Should().Contain("Took in the wall new wall of walls").And.NotContain("there is a wall named");
        }, KnownWall.Fill);
    }

    [Fact]
    public void What_is_understood_stands_beside_each_line_and_under_the_chosen_one()
    {
        ScreenRun.On(120, 40, run =>
        {
            // 12 ft outside; the wall turns left, so its outside is at the right and the corner an outside one. Course 1: the first leg runs by,
            // the whole 12 ft outside; inside - W + t = 11 - 2-1/2 = 8-1/2 in less: 11 ft 3-1/2 in (table of the corners).
            run.Press("F6", "Ctrl+W").Type("e").Press([.. Enumerable.Repeat("Down", 5)]);
            run.Lines[3].Should().Be("✓ course 1: outside 9', inside 8' 3-1/2\"; outside corner at its end", "the door takes its 3 ft out of both");
            run.Lines[4].Should().StartWith("leg NAME: LENGTH left|right|end: length of its outside foam face");
            run.Text.Should().MatchRegex("4  core +6\" +11\" thick with both faces").And.MatchRegex("opening door: .* door, 2' to 5' along; takes courses 1 to 3");
        }, KnownWall.Fill);
    }

    [Fact]
    public void A_fault_stands_at_its_line_and_column_while_the_line_is_typed_and_Tab_goes_from_fault_to_fault()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F6", "Ctrl+W").Type("e").Press([.. Enumerable.Repeat("Down", 5)]);
            run.Press([.. Enumerable.Repeat("Backspace", "left".Length)]).Type("round");
            run.Lines[2].Should().Be("line   leg A: 12' round");
            run.Lines[3].Should().Be("                  ^");
            run.Lines[4].Should().StartWith("… column 12: \"round\" is none of left, right or end");

            run.Press("Down");
            run.Text.Should().Contain("✗ 6  leg A: 12' round", "the line keeps its mark").And.Contain("column 12: \"round\" is none of left, right or end");
            run.Press("Ctrl+End", "Tab").Lines[2].Should().Be("line   leg A: 12' round");
            run.Press("Ctrl+K").Text.Should().Contain("not saved: put right what is marked, then ^K again");
            run.Yard.Walls().Single().Sheet.Legs[0].Turn.Should().Be(Turn.Left);
        }, KnownWall.Fill);
    }

    [Fact]
    public void Escape_loses_nothing_that_was_typed_without_asking()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F6", "Ctrl+W").Type("e").Press("Down", "Down").Type("0").Press("Esc");
            run.Text.Should().Contain("Leave the sheet of shed? What was typed is not saved").And.Contain("d drop what was typed");
            run.Press("Esc").Text.Should().Contain("line   height           4'0", "a second Esc only takes the question away");
            run.Press("Ctrl+Q").Text.Should().Contain("The sheet of shed is not saved");
            run.Press("Esc").Press("F2", "F6").Text.Should().Contain("line   height           4'0", "another place leaves it as it is");

            run.Press("Esc").Type("d").Text.Should().NotContain("line   height");
            run.Yard.Walls().Single().Sheet.Height.Should().Be(Core.Measures.Length.Feet(4));
            run.Press("Ctrl+W").Type("e").Press("Esc").Text.Should().Contain("[ELEVATION]", "with nothing changed nothing is asked");
        }, KnownWall.Fill);
    }

    [Fact]
    public void Every_step_in_the_form_is_taken_back_and_done_again_and_the_yard_is_left_alone()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F6", "Ctrl+W").Type("e").Press([.. Enumerable.Repeat("Down", 5)]);
            var begin = run.Text;
            run.Type("xyz").Press("Ctrl+X", "Ctrl+O").Type("a");
            run.Text.Should().NotContain("leg A").And.Contain("allowance        5 %");
            run.Press("Ctrl+Z").Text.Should().NotContain("allowance");
            run.Press("Ctrl+Z").Text.Should().Contain("leg A: 12' leftxyz").And.Contain("opening door", "the leg came back with all below it");
            run.Press("Ctrl+Z").Text.Should().Contain("leg A: 12' left").And.NotContain("leftxyz", "letters typed one after the other are one step");
            run.Text.Should().Be(begin);
            run.Press("Ctrl+Z").Text.Should().Contain("nothing to take back in the form");

            run.Press("Ctrl+Y", "Ctrl+Y", "Ctrl+Y").Text.Should().Contain("allowance        5 %").And.NotContain("leg A");
            run.Yard.History(1).Single().What.Should().Be("took in the wall shed of walls");
        }, KnownWall.Fill);
    }

    [Fact]
    public void A_sheet_that_another_program_changed_meanwhile_is_told_and_neither_is_lost()
    {
        ScreenRun.On(120, 40, run =>
        {
            run.Press("F6", "Ctrl+W").Type("e").Press("Down", "Down").Type(" 6\"");
            Elsewhere(run, KnownWall.Sheet.Replace("core             6\"", "core             8\""));
            run.Tick().Text.Should().Contain("! shed was changed by another program meanwhile").And.Contain("line   height           4' 6\"");

            run.Press("Ctrl+K").Text.Should().Contain("Another program has changed shed since it was opened here").And.Contain("o take up the other");
            run.Type("o").Text.Should().Contain("core             8\"").And.Contain("height           4'");
            run.Press("Ctrl+Z").Text.Should().Contain("height           4' 6\"").And.Contain("core             6\"", "what was typed is one step away");
            run.Press("Ctrl+K").Text.Should().Contain("Edited the wall shed of walls");
            run.Yard.Walls().Single().Sheet.CoreWidth.Should().Be(Core.Measures.Length.Inches(6), "somebody chose it with the other before them");
        }, KnownWall.Fill);
    }

    [Fact]
    public void A_sheet_that_was_dropped_meanwhile_can_be_saved_as_a_new_one()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F6", "Ctrl+W").Type("e").Press("Down", "Down").Type(" 6\"");
            using (var other = YardFile.Open(run.Folder.YardPath, run.Folder.Clock)) new ChangeWalls(other).Drop("shed").Ok.Should().BeTrue();
            run.Press("Ctrl+K").Text.Should().Contain("Another program has dropped shed since it was opened here");
            run.Type("s").Text.Should().Contain("Took in the wall shed of walls");
        }, KnownWall.Fill);
    }

    [Fact]
    public void A_wall_is_renamed_and_the_old_name_is_gone_with_its_needs_and_what_was_made_for_them()
    {
        ScreenRun.On(80, 24, run =>
        {
            new ChangeWalls(run.Yard).Enter("shed", newNames: true).Ok.Should().BeTrue();
            run.Tick().Press("F6", "Ctrl+W").Type("r");
            Clear(run, "shed").Type("barn").Press("Enter").Text.Should().Contain("Edited the wall shed of walls, which is named barn now");
            run.Yard.Walls().Select(wall => wall.Sheet.Name).Should().Equal("barn");
            run.Yard.Stages().Single().Hardware.Should().OnlyContain(need => need.Name.StartsWith("barn / ")).And.NotBeEmpty();
            run.Press("Ctrl+Z");
            run.Yard.Walls().Select(wall => wall.Sheet.Name).Should().Equal("shed");
            run.Yard.Stages().Single().Hardware.Should().OnlyContain(need => need.Name.StartsWith("shed / "));
        }, KnownWall.Fill);
    }

    [Fact]
    public void A_name_that_another_wall_has_is_refused_at_its_line_and_nothing_is_lost()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F6", "Ctrl+W").Type("c").Lines[2].Should().Be("line   wall             shed 2");
            Clear(run, " 2").Press("Ctrl+K").Text.Should().Contain("there is a wall named shed already; give this one another name");
            run.Lines[2].Should().Be("line   wall             shed");
            run.Type("s").Press("Ctrl+K").Text.Should().Contain("Took in the wall sheds of walls");
        }, KnownWall.Fill);
    }

    [Fact]
    public void A_wall_is_dropped_after_a_question_and_brought_back_by_undo()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F6", "Ctrl+W").Type("d").Text.Should().Contain("Drop the wall shed?");
            run.Press("Esc");
            run.Yard.Walls().Should().HaveCount(1);
            run.Press("Ctrl+W").Type("dy").Text.Should().Contain("No wall yet; ^W writes its sheet");
            run.Press("Ctrl+Z").Text.Should().Contain("A outside: foam 2-1/2x12, 12' long");
        }, KnownWall.Fill);
    }

    [Fact]
    public void A_wall_is_moved_to_another_stage()
    {
        ScreenRun.On(80, 24, run =>
        {
            new ChangeStages(run.Yard).Add("annex", null).Ok.Should().BeTrue();
            run.Tick().Press("F6", "Ctrl+W").Type("m");
            Clear(run, "walls").Type("nowhere").Press("Enter").Text.Should().Contain("there is no stage");
            Clear(run, "nowhere").Type("ANNEX").Press("Enter").Text.Should().Contain("Moved the wall shed from walls to annex");
            run.Yard.Walls().Single().Stage.Should().Be("annex");
        }, KnownWall.Fill);
    }

    [Fact]
    public void A_system_is_copied_edited_and_refused_where_its_walls_could_not_be_built()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F6", "Ctrl+B", "Ctrl+W").Type("c").Lines[2].Should().Be("line   system           generic, invented 2");
            Clear(run, "generic, invented 2").Type("ours").Press("Ctrl+K").Text.Should().Contain("Took in the system ours");

            run.Press("Ctrl+Home", "Enter").Lines[2].Should().Be("line   system           generic, invented");
            run.Press("Down", "Down", "Down", "Down");
            run.Lines[2].Should().Be("line   interval         2\"");
            Clear(run, "2\"").Type("5\"");
            run.Lines[4].Should().StartWith("… column 1: the interval of 5\" does not divide the tie spacing of 12\"");
            // With foam 5 ft thick a wall is 10 ft 6 in thick; no leg of 8 ft has room for such a corner.
            Clear(run, "5\"").Type("2\"").Press("Up");
            run.Lines[2].Should().Be("line   panel thickness  2-1/2\"");
            Clear(run, "2-1/2\"").Type("5'");
            run.Text.Should().Contain("then the wall shed could not be built");
            run.Press("Ctrl+K").Text.Should().Contain("not saved: put right what is marked");
            run.Press("Esc").Type("d");
            run.Yard.Systems().Select(system => system.Name).Should().Equal("generic, invented", "ours");
        }, KnownWall.Fill);
    }

    [Fact]
    public void A_system_is_renamed_with_its_walls_and_dropped_only_where_no_wall_is_built_of_it()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F6", "Ctrl+B", "Ctrl+W").Type("dy").Text.Should().Contain("the wall shed is built of generic, invented; drop the wall first");
            run.Press("Ctrl+W").Type("r");
            Clear(run, "generic, invented").Type("ours").Press("Enter").Text.Should().Contain("Edited the system generic, invented, which is named ours now");
            run.Yard.Walls().Single().Sheet.System.Should().Be("ours");
            run.Yard.Systems().Select(system => system.Name).Should().Equal("ours");
            run.Press("Ctrl+End", "Ctrl+W").Type("dy").Text.Should().Contain("is the invented sheet that ships");
        }, KnownWall.Fill);
    }

    [Fact]
    public void Pasted_lines_come_in_below_each_other_and_the_yard_without_walls_begins_with_a_paste()
    {
        ScreenRun.On(80, 24, run =>
        {
            new ChangeStages(run.Yard).Add("walls", null).Ok.Should().BeTrue();
            run.Tick().Press("F6", "Ctrl+W").Type("n").Press("Ctrl+X", "Ctrl+X", "Ctrl+X", "Ctrl+X", "Ctrl+X", "Ctrl+X");
            run.Text.Should().Contain("Nothing stands here. A line begins with one of: wall, system");
            run.Paste(KnownWall.Sheet.TrimEnd()).Text.Should().Contain("✓ 2 legs, 4 courses;");
            run.Press("Ctrl+Z").Text.Should().Contain("Nothing stands here");
            run.Press("Ctrl+Y", "Ctrl+K").Text.Should().Contain("Took in the wall shed of walls");
        });
    }

    [Fact]
    public void Without_a_stage_no_wall_is_begun()
    {
        ScreenRun.On(80, 24, run => run.Press("F6", "Ctrl+W").Type("n").Text.Should().Contain("a wall is built in a stage; enter one first (F4, ^K)"));
    }

    [Fact]
    public void Legs_change_places_with_all_that_stands_below_them_and_a_doubled_one_has_names_of_its_own()
    {
        ScreenRun.On(120, 40, run =>
        {
            run.Press("F6", "Ctrl+W").Type("e").Press("Ctrl+End", "Ctrl+Up");
            InOrder(run, "leg B: 8' end", "leg A: 12' left", "opening door", "opening window");
            run.Press("Ctrl+Down");
            InOrder(run, "leg A: 12' left", "opening door", "opening window", "leg B: 8' end");
            run.Press("Ctrl+Up", "Down", "Ctrl+D");
            InOrder(run, "leg B: 8' end", "leg A: 12' left", "opening door:", "opening window:", "leg C: 12' left", "opening door 2:", "opening window 2:");
        }, KnownWall.Fill);
    }

    [Fact]
    public void An_edit_that_gives_up_a_kept_filling_says_so_first_and_one_of_its_notes_does_not()
    {
        ScreenRun.On(120, 40, run =>
        {
            run.Press("F6", "Ctrl+R", "Ctrl+K").Type("y").Text.Should().Contain("Kept how shed is filled, as plan 1");
            run.Press("Ctrl+W").Type("e").Press("Ctrl+O").Type("n").Press("Ctrl+K").Text.Should().Contain("Edited the wall shed");
            run.Yard.WallPlans().Should().HaveCount(1, "a note changes nothing of the wall");
            run.Press("Ctrl+W").Type("e").Press("Down", "Down").Press("Backspace", "Backspace").Type("3'").Press("Ctrl+K");
            run.Text.Should().Contain("Save it? How shed was to be filled is given up");
            run.Press("Esc");
            run.Yard.WallPlans().Should().HaveCount(1);
            run.Press("Ctrl+K").Type("y").Text.Should().Contain("Edited the wall shed");
            run.Yard.WallPlans().Should().BeEmpty();
        }, KnownWall.FillSmall);
    }

    [Fact]
    public void A_sheet_saved_over_anothers_still_says_first_that_a_kept_filling_is_given_up()
    {
        ScreenRun.On(120, 40, run =>
        {
            run.Press("F6", "Ctrl+R", "Ctrl+K").Type("y");
            run.Press("Ctrl+W").Type("e").Press("Down", "Down").Press("Backspace", "Backspace").Type("3'");
            using (var other = YardFile.Open(run.Folder.YardPath, run.Folder.Clock))
            {
                var shed = other.Walls().Single().Sheet;
                new ChangeWalls(other).Set("walls", shed with { Notes = ["by another"] }, replace: true).Ok.Should().BeTrue();
            }

            run.Tick().Press("Ctrl+K").Text.Should().Contain("Another program has changed shed since it was opened here");
            run.Type("s").Text.Should().Contain("Save it? How shed was to be filled is given up");
            run.Yard.WallPlans().Should().HaveCount(1);
            run.Press("Esc").Press("Ctrl+K").Text.Should().Contain("Another program has changed shed since it was opened here", "whoever backs out has not written over anything");
            run.Type("s").Type("y").Text.Should().Contain("Edited the wall shed");
            run.Yard.WallPlans().Should().BeEmpty();
            run.Yard.Walls().Single().Sheet.Should().Match<WallSheet>(sheet => sheet.Height == Core.Measures.Length.Feet(3) && sheet.Notes.Count == 0);
        }, KnownWall.FillSmall);
    }

    [Theory]
    [InlineData("r")]
    [InlineData("m")]
    [InlineData("")]
    public void An_answer_never_goes_to_another_sheet_than_the_one_that_was_asked_about(string asked)
    {
        ScreenRun.On(120, 40, run =>
        {
            KnownWall.Another(run.Yard, "arbour");
            new ChangeStages(run.Yard).Add("annex", null).Ok.Should().BeTrue();
            run.Tick().Press("F6", "Ctrl+W").Text.Should().Contain("The sheet of the wall shed");
            if (asked.Length > 0) Clear(run.Type(asked), asked == "r" ? "shed" : "walls");
            using (var other = YardFile.Open(run.Folder.YardPath, run.Folder.Clock)) new ChangeWalls(other).Drop("shed").Ok.Should().BeTrue();
            run.Tick();
            if (asked.Length > 0) run.Type("annex").Press("Enter");
            else run.Type("r");

            run.Text.Should().Contain("the wall shed is gone: another program has dropped or renamed it since it was asked about; nothing is changed");
            run.Yard.Walls().Select(wall => (wall.Sheet.Name, wall.Stage)).Should().Equal(("arbour", "walls"));
        }, KnownWall.Fill);
    }

    [Fact]
    public void The_chosen_system_stays_chosen_where_one_before_it_is_dropped()
    {
        ScreenRun.On(120, 40, run =>
        {
            foreach (var name in new[] { "spare", "blocks", "last" }) run.Yard.Change("took in one", work => work.SetSystem(SystemSheet.Generic with { Name = name })).Ok.Should().BeTrue();
            run.Tick().Press("F6", "Ctrl+B", "Down", "Down", "Ctrl+W").Text.Should().Contain("The sheet of the system blocks");
            run.Type("r");
            using (var other = YardFile.Open(run.Folder.YardPath, run.Folder.Clock)) new ChangeSystems(other).Drop("spare").Ok.Should().BeTrue();
            run.Tick();
            Clear(run, "blocks").Type("ours").Press("Enter").Text.Should().Contain("Edited the system blocks, which is named ours now");
            run.Press("Ctrl+W").Text.Should().Contain("The sheet of the system ours");
        }, KnownWall.Fill);
    }

    [Fact]
    public void What_is_typed_on_while_a_new_sheet_is_saved_is_saved_over_it_next()
    {
        ScreenRun.On(120, 40, run =>
        {
            run.Press("F6", "Ctrl+W").Type("n");
            var saved = run.Shell.State.Walls.Form!.Edit;
            run.Type("s");
            var state = run.Shell.State.Walls;

            // The news comes while the yard that is shown is still the one from before.
            var heard = FormModel.Hear(state, state.Form!, new News.Done(new Errand.SaveSheet(SheetKind.Wall, "walls", saved), "took it in"));

            heard.Form!.Edit.Should().Be(new SheetEdit(state.Form!.Text, "new wall", WallText.Write(WallText.Read(saved.Text).Value)));
        }, KnownWall.Fill);
    }

    private static void InOrder(ScreenRun run, params string[] parts)
    {
        var sheet = string.Join('\n', run.Lines.SkipWhile(line => !line.StartsWith('▸')));
        var places = parts.Select(part => sheet.IndexOf(part, StringComparison.Ordinal)).ToArray();
        places.Should().BeInAscendingOrder($"{string.Join(", then ", parts)} stand so in\n{sheet}").And.OnlyContain(place => place >= 0);
    }

    private static ScreenRun Clear(ScreenRun run, string text) => run.Press([.. Enumerable.Repeat("Backspace", text.Length)]);

    private static void Elsewhere(ScreenRun run, string sheet)
    {
        using var other = YardFile.Open(run.Folder.YardPath, run.Folder.Clock);
        new ChangeWalls(other).Import("walls", new MemoryStream(Encoding.UTF8.GetBytes(sheet)), "shed.txt", replace: true).Ok.Should().BeTrue();
    }

    private static void Check(string name, int width, int height, Action<ScreenRun> keys) => ScreenRun.On(width, height, run =>
    {
        keys(run);
        run.Lines.Should().OnlyContain(line => Print.TextColumns.Width(line) <= width);
        Golden.Check($"{name}-{width}x{height}", run.Text);
    }, KnownWall.Fill);
}
