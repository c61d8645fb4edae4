using Offcuts.Core.Yard;

namespace Offcuts.Tests.Screens;

/// <summary>An answer that is offered is marked, as in a form: the first letter takes its place, unless a key says that it is to be changed.</summary>
[Collection(OnScreen.Name)]
public sealed class OfferedAnswerTests
{
    [Fact]
    public void The_first_letter_takes_the_place_of_the_offered_count()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F3", "Ctrl+K");
            run.Lines[2].Should().Be("count  10");
            run.Type("2");
            run.Lines[2].Should().Be("count  2");
            run.Type("5");
            run.Lines[2].Should().Be("count  25", "only the first letter takes its place");
            run.Press("Enter");
            run.Lines[3].Should().StartWith("Write 25 blank labels to which PDF file?");
        });
    }

    [Theory]
    [InlineData("CursorLeft", "120")]
    [InlineData("End", "102")]
    [InlineData("Home", "210")]
    [InlineData("CursorRight", "102")]
    [InlineData("Backspace", "12")]
    public void A_key_that_moves_or_takes_the_last_letter_keeps_what_was_offered(string key, string then)
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F3", "Ctrl+K");
            run.Raw(key).Type("2");
            run.Lines[2].Should().Be($"count  {then}");
        });
    }

    [Fact]
    public void An_offered_answer_is_taken_whole_by_Enter_and_replaced_by_what_is_pasted()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F3", "Ctrl+K", "Enter");
            run.Lines[3].Should().StartWith("Write 10 blank labels");
            run.Lines[2].Should().StartWith("file   blank-labels-");
            run.Paste("tags.pdf");
            run.Lines[2].Should().Be("file   tags.pdf");
        });
    }

    [Fact]
    public void A_key_clears_an_answer_and_stands_at_the_foot_and_in_the_help()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F3", "Ctrl+L");
            run.Text.Should().NotContain("^U clear", "no label waits, so nothing is asked");
            run.Press("Ctrl+K");
            run.Text.Should().Contain("^U clear");
            run.Press("End").Type("0").Press("Ctrl+U");
            run.Lines[2].Should().Be("count");
            run.Type("7").Press("Enter");
            run.Lines[3].Should().StartWith("Write 7 blank labels");
            run.Press("Esc", "F1", "PageDown", "PageDown", "PageDown");
            run.Text.Should().Contain("Clear the line. An answer that is offered stands marked");
        });
    }

    [Fact]
    public void What_really_came_of_a_piece_is_written_anew_by_the_first_letter()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3").Type("2x4 8' sound").Press("Enter", "F4", "Ctrl+K").Type("forms").Press("Enter");
            run.Type("short: 2x4 24 x3 rough").Press("Enter", "Ctrl+R", "Ctrl+K", "Ctrl+E");
            run.Lines[2].Should().StartWith("really A B C left");
            run.Type("A left 3'");
            run.Lines[2].Should().Be("really A left 3'");
            run.Press("Enter");
            run.Yard.Pieces().Single().Length.Should().Be(Offcuts.Core.Measures.Length.Feet(3));
        });
    }

    [Fact]
    public void A_file_name_that_was_refused_stands_to_be_put_right()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F3", "Ctrl+K", "Enter").Type("/no such folder/a.pdf").Press("Enter");
            run.Lines[2].Should().Be("file   /no such folder/a.pdf");
            run.Type("f");
            run.Lines[2].Should().Be("file   /no such folder/a.pdff", "it was typed by a person: nothing of it goes by one key");
        });
    }
}
