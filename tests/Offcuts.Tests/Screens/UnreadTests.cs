using Offcuts.Core.Yard;
using Offcuts.Screens;

namespace Offcuts.Tests.Screens;

/// <summary>The screen between its first drawing and the yard's being read.</summary>
[Collection(OnScreen.Name)]
public sealed class UnreadTests
{
    [Fact]
    public void The_screen_is_drawn_before_the_yard_is_read_and_says_so()
    {
        ScreenRun.BeforeKnownYardIsRead(80, 24, run =>
        {
            run.Lines[0].Should().Contain("[TODAY]");
            run.Lines[3].Should().Be("Reading the yard …  what you type meanwhile is taken up then");
            run.Lines[^1].Should().Be("^Q leave", "no other key does anything yet");
            run.Text.Should().NotContain("empty").And.NotContain("2x4", "nothing is said of a yard that was not read");

            run.LetGo();

            run.Lines[3].Should().Be("Monday 2026-06-01  yard.offcuts. Type or scan to look in the yard");
            run.Press("F2");
            run.Lines[3].Should().StartWith("9 of 9.");
            run.Text.Should().Contain("History", "the first piece is looked up as soon as it is there");
        });
    }

    [Fact]
    public void Keys_and_pasted_text_wait_for_the_yard_in_their_order()
    {
        ScreenRun.BeforeKnownYardIsRead(80, 24, run =>
        {
            run.Press("F3").Type("2x4 7'1").Paste(" fair").Press("Enter").Type("next");
            run.Yard.Pieces().Should().HaveCount(8, "nothing is saved yet");
            run.Resize(100, 30);

            run.LetGo();

            run.Yard.Pieces().Should().HaveCount(9);
            run.Yard.Pieces()[^1].Condition.Should().Be(Condition.Fair);
            run.Lines[2].Should().Be("strip  next");
        });
    }

    [Fact]
    public void A_label_scanned_before_the_yard_is_read_opens_its_piece_then()
    {
        ScreenRun.BeforeKnownYardIsRead(80, 24, run =>
        {
            run.Scan(KnownYard.Codes[3]);
            run.Text.Should().NotContain("nothing in this yard has the code");
            run.LetGo();
            run.Shell.State.Yard.Closer.Should().BeTrue();
            run.Text.Should().Contain(KnownYard.Codes[3].ToString());
        });
    }

    [Fact]
    public void A_yard_that_nobody_will_look_at_any_more_is_not_read_to_its_end()
    {
        ScreenRun.BeforeKnownYardIsRead(80, 24, run =>
        {
            run.Press("Ctrl+Q");
            run.Shell.Stop();
            run.LetGo();

            run.Shell.State.Unread.Should().BeTrue();
            run.Yard.Pieces().Should().HaveCount(8, "the file is in order and can be read by whoever comes next");
        });
    }

    [Fact]
    public void Leaving_before_the_yard_is_read_needs_no_waiting()
    {
        ScreenRun.BeforeKnownYardIsRead(80, 24, run =>
        {
            run.Press("Ctrl+Q").Text.Should().Contain("Leaving; what is under way in the yard is finished first");
            run.LetGo().HasLeft.Should().BeTrue();
            run.Shell.State.Unread.Should().BeTrue("reading was given up, not finished");
        });
    }

    [Fact]
    public void A_reading_that_arrives_after_leaving_changes_nothing_and_no_key_is_carried_out_any_more()
    {
        ScreenRun.BeforeKnownYardIsRead(80, 24, run =>
        {
            run.Hands.Slow = true;
            run.LetGo();
            run.Press("Ctrl+Q", "F3").Type("2x4 7'1").Paste("x\ny").Press("Enter", "Esc", "Ctrl+Z");
            run.HasLeft.Should().BeFalse();

            run.Hands.Arrive();

            run.Press().HasLeft.Should().BeTrue();
            run.Text.Should().Contain("Leaving; what is under way in the yard is finished first");
            run.Shell.State.Leaving.Should().BeTrue();
            run.Shell.State.Place.Should().Be(Place.Today);
            run.Yard.Pieces().Should().HaveCount(8);
        });
    }

    [Fact]
    public void Leaving_waits_behind_what_was_typed_and_asks_for_it()
    {
        ScreenRun.BeforeKnownYardIsRead(80, 24, run =>
        {
            run.Press("F3").Type("2x4 7'1").Press("Ctrl+Q");
            run.HasLeft.Should().BeFalse();
            run.LetGo();
            run.HasLeft.Should().BeFalse();
            run.Text.Should().Contain("Leave all the same? The strip line is not saved");
        });
    }

    [Fact]
    public void The_screen_opens_on_today_before_and_after_the_yard_is_read()
    {
        var unread = ShellModel.Start(new YardSnapshot { Unread = true });
        unread.Place.Should().Be(Place.Today);
        ShellModel.Hear(unread, new News.Fresh(new YardSnapshot())).State.Place.Should().Be(Place.Today);
    }
}
