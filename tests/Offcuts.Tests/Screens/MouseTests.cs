using Offcuts.Screens;
using Terminal.Gui.Input;

namespace Offcuts.Tests.Screens;

/// <summary>The mouse means what a key means, and nothing more; nothing needs it.</summary>
[Collection(OnScreen.Name)]
public sealed class MouseTests
{
    [Fact]
    public void A_place_is_opened_by_its_name_in_the_head()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Click(run.Lines[0].IndexOf("Stages", StringComparison.Ordinal), 0);
            run.Shell.State.Place.Should().Be(Place.Stages);
            run.Click(run.Lines[0].IndexOf("10 ", StringComparison.Ordinal), 0);
            run.Shell.State.Place.Should().Be(Place.Today);
        });
    }

    [Fact]
    public void A_row_is_chosen_by_a_click_and_opened_by_two()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            var line = run.LineOf(KnownYard.Codes[3].ToString());
            run.Click(2, line);
            run.Shell.State.Yard.Code.Should().Be(KnownYard.Codes[3]);
            run.Shell.State.Yard.Closer.Should().BeFalse();
            run.DoubleClick(2, run.LineOf(KnownYard.Codes[4].ToString()));
            run.Shell.State.Yard.Code.Should().Be(KnownYard.Codes[4]);
            run.Shell.State.Yard.Closer.Should().BeTrue();
        });
    }

    [Fact]
    public void A_key_at_the_foot_is_pressed_by_a_click_and_so_is_an_answer()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.ClickOn("^E used");
            run.Text.Should().Contain("What is it now?");
            run.Click(2, run.LineOf(KnownYard.Codes[4].ToString()));
            run.Shell.State.Yard.Code.Should().Be(KnownYard.Codes[0], "while something is asked the list stands still");
            run.ClickOn("s scrapped");
            run.Yard.Piece(KnownYard.Codes[0])!.State.Should().Be(Core.Yard.PieceState.Scrapped);
            run.ClickOn("^Z undo");
            run.Yard.Piece(KnownYard.Codes[0])!.State.Should().Be(Core.Yard.PieceState.InYard);
        });
    }

    [Fact]
    public void The_wheel_goes_through_the_list_and_the_help()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Wheel(down: true);
            run.Shell.State.Yard.Chosen.Should().Be(3);
            run.Wheel(down: false);
            run.Shell.State.Yard.Chosen.Should().Be(0);
            run.Press("F1");
            var first = run.Text;
            run.Wheel(down: true).Text.Should().NotBe(first);
            run.Wheel(down: false).Text.Should().Be(first);
        });
    }

    [Fact]
    public void The_other_list_of_the_stages_is_chosen_in_by_a_click()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F4").Click(4, run.LineOf("stem wall"));
            run.Shell.State.Stages.Stage!.Name.Should().Be("stem wall");
            run.Click(4, run.LineOf("waler"));
            run.Shell.State.Stages.OnNeeds.Should().BeTrue();
            run.Shell.State.Stages.Needs[run.Shell.State.Stages.Need].Should().Be("waler");
        });
    }

    [Fact]
    public void A_line_of_a_sheet_is_gone_to_by_a_click()
    {
        ScreenRun.On(120, 40, run =>
        {
            run.Press("F6", "Ctrl+W").Type("e");
            run.ClickOn("height ").Lines[2].Should().Contain("height").And.Contain("4'");
            run.Shell.State.Walls.Form!.At.Should().Be(2);
            run.ClickOn("leg B:").Shell.State.Walls.Form!.Line.Should().StartWith("leg B:");
            run.Click(4, run.LineOf("leg B:") + 2).Shell.State.Walls.Form!.Line.Should().StartWith("leg B:", "below the last line is none");
        }, KnownWall.Fill);
    }

    [Fact]
    public void A_page_of_a_wall_is_opened_by_its_name_and_a_figure_chosen_by_a_click()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F6");
            run.ClickOn(" takeoff ").Shell.State.Walls.Page.Should().Be(WallPage.Takeoff);
            var heading = run.LineOf("[TAKEOFF]");
            run.Click(4, heading + 2);
            run.Shell.State.Walls.Figure.Should().Be(1, run.Text);
            run.Shell.State.Walls.OnPage.Should().BeTrue();
            run.ClickOn(" elevation ").Shell.State.Walls.Page.Should().Be(WallPage.Elevation);
        }, KnownWall.Fill);
    }

    [Fact]
    public void A_click_on_nothing_does_nothing_and_keeps_what_is_typed()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F3").Type("2x4 8'");
            var text = run.Text;
            run.Click(40, 1).Click(79, 23).Click(40, 17).DoubleClick(10, 10);
            run.Text.Should().Be(text);
            run.Yard.Pieces().Should().HaveCount(8, "two clicks save no line");
            run.Resize(50, 15).Click(5, 5).Resize(80, 24);
            run.Lines[2].Should().Be("strip  2x4 8'");
        });
    }

    [Fact]
    public void Another_button_on_the_typed_line_opens_nothing()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F3").Type("2x4 8'");
            var text = run.Text;
            run.Mouse(MouseFlags.RightButtonPressed, 10, 2).Mouse(MouseFlags.RightButtonReleased, 10, 2).Mouse(MouseFlags.RightButtonClicked, 10, 2).Text.Should().Be(text);
            run.Type(" x2").Lines[2].Should().Be("strip  2x4 8' x2");
            run.Mouse(MouseFlags.LeftButtonPressed, 7, 2).Mouse(MouseFlags.LeftButtonReleased, 7, 2).Mouse(MouseFlags.LeftButtonClicked, 7, 2);
            run.Cursor.Should().Be(0, "the left button sets the cursor");
        });
    }
}
