using Offcuts.Core.Measures;

namespace Offcuts.Tests.Screens;

/// <summary>A mistake some lines ago is put right at the catalogue line, without leaving it.</summary>
[Collection(OnScreen.Name)]
public sealed class StripCorrectingTests
{
    [Fact]
    public void A_mistake_two_lines_ago_is_corrected_and_what_was_being_typed_comes_back()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3").Type("2x4 8'").Press("Enter").Type("2x6 9'").Press("Enter").Type("2x8 10'").Press("Enter").Type("2x10 11");
            var codes = run.Yard.Pieces().Select(piece => piece.Code).ToArray();
            run.Press("Ctrl+E");
            run.Lines[2].Should().Be("right  2x8 10'");
            run.Text.Should().Contain($"Correct the line saved last: {codes[2]}");

            run.Press("Up", "Ctrl+E");
            run.Lines[2].Should().Be("right  2x4 8'", "the same key goes on to the line before");
            run.Press("Up").Text.Should().Contain("that is the first line saved since Offcuts was opened");
            run.Press("Backspace", "Backspace").Type("7'6").Text.Should().Contain("✓ 1 board 2x4: 7' 6\"");
            run.Press("Up").Text.Should().Contain("this line is changed: Enter corrects it, Esc leaves it as it was; then the other");
            run.Press("Enter").Text.Should().Contain($"Corrected {codes[0]}, 2x4");

            run.Lines[2].Should().Be("strip  2x10 11");
            run.Yard.Pieces().Select(piece => (piece.Code, piece.Length)).Should().Equal((codes[0], Length.Inches(90)), (codes[1], Length.Feet(9)), (codes[2], Length.Feet(10)));
            run.Press("Esc", "Esc", "Ctrl+Z");
            run.Yard.Pieces()[0].Length.Should().Be(Length.Feet(8), "undo takes the correction back");
        });
    }

    [Fact]
    public void Esc_asks_before_a_correction_is_lost_and_leaves_the_line_as_it_was()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3").Type("2x4 8'").Press("Enter", "Ctrl+E").Type(" fair").Press("Esc");
            run.Lines[2].Should().Be("right  2x4 8' fair");
            run.Press("Esc");
            run.Lines[2].Should().Be("strip");
            run.Yard.Pieces().Single().Condition.Should().Be(Core.Yard.Condition.Sound);
        });
    }

    [Fact]
    public void A_wrong_correction_is_pointed_at_and_a_doubtful_one_needs_Enter_twice()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3").Type("2x4 8'").Press("Enter", "Ctrl+E").Type(" fiar").Press("Enter");
            run.Lines[3].Should().Be("              ^");
            run.Text.Should().Contain("✗ column 8: \"fiar\" means nothing here");
            run.Press("Ctrl+U").Type("2x4 2400").Press("Enter");
            run.Text.Should().Contain("! that looks like a slip; Enter once more saves it so");
            run.Yard.Pieces().Single().Length.Should().Be(Length.Feet(8));
            run.Press("Enter");
            run.Yard.Pieces().Single().Length.Should().Be(Length.Feet(200));
        });
    }

    [Fact]
    public void What_another_program_changed_meanwhile_is_told_and_neither_is_lost()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3").Type("2x4 8' @north").Press("Enter", "Ctrl+E");
            run.Press([.. Enumerable.Repeat("Backspace", 5)]).Type("south");
            run.Folder.Must("change", run.Yard.Pieces().Single().Code.Text, "--place", "trailer");
            run.Press("Enter").Text.Should().Contain("its place was changed since this line was saved");
            run.Lines[2].Should().Be("right  2x4 8' @south", "what was typed stands to be put right");
            run.Yard.Pieces().Single().Place.Should().Be("trailer");
        });
    }

    [Fact]
    public void A_line_that_was_taken_back_is_not_there_to_be_corrected()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3", "Ctrl+E").Text.Should().Contain("no line was saved here since Offcuts was opened");
            run.Type("2x4 8'").Press("Enter", "Ctrl+Z", "Ctrl+E").Text.Should().Contain("no line was saved here since Offcuts was opened");
        });
    }

    [Fact]
    public void What_waits_to_be_printed_is_listed_in_its_order_and_back()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3").Type("2x4 8'").Press("Enter").Type("2x6 9'").Press("Enter").Type("panel tie x40 @shed").Press("Enter", "y");
            string[] Listed() => [.. run.Lines.SkipWhile(line => !line.StartsWith("Code", StringComparison.Ordinal)).Skip(1).Take(3)];
            Listed()[0].Should().Contain("2x6", "the last piece stands first");

            run.Press("Tab").Text.Should().Contain("3 labels wait to be printed, in this order").And.Contain("Tab last pieces");
            Listed().Select(line => line[17..20]).Should().Equal("2x4", "2x6", "pan");
            Listed()[2].Should().Contain("40 in a bin").And.Contain("@shed");

            run.Type("2x8 7'").Press("Tab").Text.Should().Contain("strip  2x8 7'").And.Contain("Tab print queue");
        });
    }

    [Fact]
    public void Leaving_asks_while_a_correction_is_typed()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3").Type("2x4 8'").Press("Enter", "Ctrl+E").Type(" fair").Press("Ctrl+Q");
            run.Text.Should().Contain("Leave all the same? What is corrected at the strip line is not saved");
            run.Press("Esc").HasLeft.Should().BeFalse();
            run.Lines[2].Should().Be("right  2x4 8' fair");
            run.Press("Esc", "Esc", "Ctrl+E", "Ctrl+Q").HasLeft.Should().BeTrue("a line that was only looked at loses nothing");
        });
    }

    [Fact]
    public void What_was_typed_to_correct_a_line_stays_where_undo_takes_that_line_back()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3").Type("2x4 8'").Press("Enter").Type("2x6 4'").Press("Ctrl+E").Type(" fair @north").Press("Ctrl+Z", "y");
            run.Yard.Pieces().Should().BeEmpty();
            run.Lines[2].Should().Be("strip  2x4 8' fair @north");
            run.Text.Should().Contain("! what this was to correct is not there any more: Enter catalogues it anew");

            run.Press("Enter");
            run.Yard.Pieces().Single().Place.Should().Be("north");
            run.Lines[2].Should().Be("strip  2x6 4'", "what stood there before comes up after it");
            run.Text.Should().NotContain("what this was to correct");
        });
    }

    [Fact]
    public void The_same_where_another_program_takes_it_back()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3").Type("2x4 8'").Press("Enter", "Ctrl+E").Type(" fair");
            run.Folder.Must("undo");
            run.Tick().Lines[2].Should().Be("strip  2x4 8' fair");
            run.Text.Should().Contain("! what this was to correct is not there any more");
        });
    }

    [Fact]
    public void A_correction_on_its_way_whose_line_is_gone_by_then_stands_on_the_line()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3").Type("2x4 8'").Press("Enter", "Ctrl+E").Type(" fair");
            run.Folder.Must("undo");
            run.Press("Enter").Lines[2].Should().Be("strip  2x4 8' fair");
            run.Yard.Pieces().Should().BeEmpty();
        });
    }
}
