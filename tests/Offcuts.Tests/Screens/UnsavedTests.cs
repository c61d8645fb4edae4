using Offcuts.Screens;

namespace Offcuts.Tests.Screens;

/// <summary>What a failure of the program would lose of what was typed.</summary>
[Collection(OnScreen.Name)]
public sealed class UnsavedTests
{
    [Fact]
    public void Every_line_that_holds_something_is_in_it_and_nothing_else()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            Unsaved.Of(run.Shell.State).Should().BeEmpty();
            run.Press("F3").Type("2x4 8'").Paste(" nails\n2x6 9'").Press("F4").Type("waler 2x4 6'").Press("F8").Type("2x4");
            Unsaved.Of(run.Shell.State).Should().Equal(
                new TypedText("the strip line", "2x4 8' nails"), new TypedText("the strip line", "2x6 9'"),
                new TypedText("the line of the stages", "waler 2x4 6'"), new TypedText("the line of the prices", "2x4"));
        });
    }

    [Fact]
    public void A_sheet_that_was_changed_is_in_it_whole()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F6", "Ctrl+W").Type("e");
            Unsaved.Of(run.Shell.State).Should().BeEmpty("nothing was changed yet");
            run.Type(" x");
            Unsaved.Of(run.Shell.State).Should().ContainSingle().Which.Should().Match<TypedText>(typed => typed.Where == "the sheet of shed" && typed.Text.Contains("leg B: 8' end"));
        }, KnownWall.Fill);
    }

    [Fact]
    public void An_answer_that_is_being_written_and_what_stood_before_it_are_in_it()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F4").Type("waler").Press("Ctrl+K").Type("garage");
            Unsaved.Of(run.Shell.State).Select(typed => typed.Text).Should().Equal("garage", "waler");
        });
    }

    [Fact]
    public void Where_pieces_are_put_is_in_it_but_not_what_narrows_the_yard_s_list()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Type("2x4");
            Unsaved.Of(run.Shell.State).Should().BeEmpty("what is looked for is no text that could be lost");
            run.Press("Ctrl+T");
            Unsaved.Of(run.Shell.State).Should().BeEmpty("the answer was only offered");
            run.Type("loft");
            Unsaved.Of(run.Shell.State).Should().Equal(new TypedText("the line of the yard", "loft"));
        });
    }
}
