using Offcuts.Screens;

namespace Offcuts.Tests.Screens;

/// <summary>The one typed line: nothing typed is ever lost without asking.</summary>
public sealed class EntryLineTests
{
    private static readonly Ask Day = new Ask.Write("Which day?", Topic.StageDay, "day");

    private static readonly Ask Sure = new Ask.Choose("Sure?", [new Choice('y', "yes")]);

    [Fact]
    public void Esc_clears_only_at_the_second_press_and_the_line_can_be_brought_back()
    {
        var typed = new EntryLine().Typed("2x4 8'");
        var (once, said) = typed.Escape();
        once.Text.Should().Be("2x4 8'");
        said!.Text.Should().Be("Esc once more clears the line");
        var (twice, _) = once.Escape();
        twice.Text.Should().BeEmpty();
        twice.Recall(-1).Text.Should().Be("2x4 8'");
    }

    [Fact]
    public void Only_a_line_that_is_saved_brings_back_earlier_ones_and_takes_several()
    {
        var line = new EntryLine().Typed("2x4 8'").Cleared();
        line.Edited(new Intent.Recall(-1)).Should().BeNull();
        line.Edited(new Intent.Paste(["a", "b"])).Should().BeNull();
        line.EditedToSave(new Intent.Recall(-1))!.Value.Line.Text.Should().Be("2x4 8'");
        line.Open(Day).EditedToSave(new Intent.Recall(-1)).Should().BeNull("an answer has no earlier ones");
        var (pasted, said) = line.EditedToSave(new Intent.Paste(["a", "b"]))!.Value;
        (pasted.Text, pasted.Waiting.Single(), said!.Text).Should().Be(("a", "b", "2 lines pasted: Enter saves this one, then the next comes up"));
        line.EditedToSave(new Intent.Type("x"))!.Value.Line.Text.Should().Be("x");
        line.EditedToSave(new Intent.Enter()).Should().BeNull();
    }

    [Fact]
    public void A_letter_answers_in_either_case_and_another_is_no_answer()
    {
        var ask = (Ask.Choose)Sure;
        ask.Of('y')!.Says.Should().Be("yes");
        ask.Of('Y').Should().BeSameAs(ask.Of('y'));
        ask.Of('n').Should().BeNull();
    }

    [Fact]
    public void Typing_between_two_presses_of_Esc_asks_again() =>
        new EntryLine().Typed("2x4").Escape().Line.Typed("2x4 8").Escape().Line.Text.Should().Be("2x4 8");

    [Fact]
    public void A_question_gives_back_what_was_typed_before_it()
    {
        var asked = new EntryLine().Typed("2x4 8'").Open(Day, "2026-06-01");
        asked.Text.Should().Be("2026-06-01");
        asked.Escape().Line.Text.Should().Be("2x4 8'", "an answer that was only offered needs no second press");
        asked.Typed("2026-07").Escape().Line.Text.Should().Be("2026-07", "a typed answer does");
        asked.Typed("2026-07").Escape().Line.Escape().Line.Text.Should().Be("2x4 8'");
        asked.Close().Text.Should().Be("2x4 8'");
    }

    [Fact]
    public void One_question_after_another_still_gives_back_the_line()
    {
        var second = new EntryLine().Typed("2x4 8'").Open(Sure).Open(Day);
        second.Close().Text.Should().Be("2x4 8'");
    }

    [Fact]
    public void What_was_sent_leaves_the_line_when_it_arrives_and_what_was_typed_behind_it_stays()
    {
        new EntryLine().Typed("2x4 8'").Send().Arrived().Text.Should().BeEmpty();
        new EntryLine().Typed("2x4 8'").Send().Typed("2x4 8' 2x6").Arrived().Text.Should().Be("2x6");
        new EntryLine().Typed("2x4 8'").Send().Typed("2x4").Arrived().Text.Should().Be("2x4", "a line that was changed meanwhile is another line");
        new EntryLine().Typed("2x4 8'").Send().Returned().Text.Should().Be("2x4 8'");
    }

    [Fact]
    public void Lines_that_are_entered_while_one_is_on_its_way_go_one_after_the_other_and_run_not_together()
    {
        var entered = new EntryLine().Typed("a").Send().Typed("ab").EnterNext().Typed("ac").EnterNext().Typed("ad");
        entered.Typed().Should().Equal("ad", "b", "c");

        var (line, since) = entered.Arrived().TakeEntered()!.Value;
        (line.Text, since).Should().Be(("b", "d"));
        var sent = line.Send().Followed(since);
        (sent.Text, sent.Sent).Should().Be(("bd", "b"));
        var last = sent.Arrived().TakeEntered()!.Value;
        last.Line.Send().Followed(last.Since).Arrived().Text.Should().Be("d");
    }

    [Fact]
    public void Where_one_of_them_is_refused_it_stands_to_be_put_right_and_the_others_wait_their_turn()
    {
        var refused = new EntryLine().Typed("a").Send().Typed("ab").EnterNext().Typed("ac").Returned();

        (refused.Text, refused.Sent).Should().Be(("a", ""));
        refused.Waiting.Should().Equal("b", "c");
        new EntryLine().Typed("a").Send().Typed("a ").EnterNext().Text.Should().Be("a ", "nothing is typed behind it");
    }

    [Fact]
    public void Esc_drops_the_lines_that_were_entered_and_wait_to_be_saved_and_they_can_be_brought_back()
    {
        var (once, said) = new EntryLine().Typed("a").Send().Typed("ab").EnterNext().Typed("ac").EnterNext().Escape();
        said!.Text.Should().Be("Esc once more clears the line and drops the 2 that wait to be saved");
        once.Entered.Should().Equal("b", "c");

        var arrived = once.Escape().Line.Arrived();

        arrived.TakeEntered().Should().BeNull();
        arrived.Text.Should().BeEmpty();
        arrived.Past.Should().Contain(["b", "c"]);
    }

    [Fact]
    public void A_line_on_its_way_with_a_letter_taken_back_is_not_entered_as_another_one()
    {
        var changed = new EntryLine().Typed("2x4 8'").Send().Typed("2x4 8");
        changed.EnterNext().Entered.Should().BeEmpty();
        changed.Changed!.Text.Should().StartWith("the line is being saved as it was entered");
        changed.EnterNext().Arrived().Text.Should().Be("2x4 8");

        var other = changed.Typed("").Typed("2x6 8'");
        other.Changed.Should().BeNull("on a line that was emptied stands another");
        other.EnterNext().Entered.Should().Equal("2x6 8'");
    }

    [Fact]
    public void Pasted_lines_wait_their_turn()
    {
        var pasted = new EntryLine().Pasted(["a", "b", "c"]);
        pasted.Text.Should().Be("a");
        var next = pasted.Send().Arrived();
        next.Text.Should().Be("b");
        next.Escape().Line.Escape().Line.Text.Should().Be("c", "one that is not wanted makes room for the next");
        next.Holds.Should().BeTrue();
    }

    [Fact]
    public void An_answer_that_is_only_offered_is_marked_until_something_else_stands_there()
    {
        var offered = new EntryLine().Typed("2x4 8'").Open(Day, "2026-06-01");
        offered.Marked.Should().BeTrue();
        offered.Typed("2").Marked.Should().BeFalse();
        offered.Close().Marked.Should().BeFalse();
        new EntryLine().Open(Day).Marked.Should().BeFalse("there is nothing to mark");
        new EntryLine().Typed("2x4 8'").Open(Sure).Marked.Should().BeFalse("a letter answers");
        new EntryLine().Reopen(Day, "2026-13-01").Marked.Should().BeFalse("what a person wrote is there to be put right");
    }

    [Fact]
    public void Earlier_lines_come_back_newest_first_and_the_draft_after_the_last()
    {
        var line = new EntryLine().Typed("a").Send().Arrived().Typed("b").Send().Arrived().Typed("draft");
        line.Recall(-1).Text.Should().Be("b");
        line.Recall(-1).Recall(-1).Text.Should().Be("a");
        line.Recall(-1).Recall(-1).Recall(-1).Text.Should().Be("a");
        line.Recall(-1).Recall(1).Text.Should().Be("draft");
    }
}
