using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Tests.Cases;

/// <summary>A line that was saved wrong is put right as if it had been typed right at first.</summary>
public sealed class CorrectLineTests
{
    [Fact]
    public void Pieces_keep_their_codes_and_what_was_said_wrong_is_right()
    {
        On(yard =>
        {
            var line = Saved(yard, "2x10 11'4, 9' fair nails @north");
            var right = Correct(yard, line, "2x10 11'4, 9'2-1/2 sound nails @north");

            right.Told.Should().Be("corrected 2 pieces");
            yard.Pieces().Select(piece => (piece.Code, piece.Length, piece.Condition)).Should().Equal(
                (line.Codes[0], Length.Inches(136), Condition.Sound),
                (line.Codes[1], Length.Inches(110.5m), Condition.Sound));
            yard.LabelQueue().Should().Equal(line.Codes);
            yard.Undo().Ok.Should().BeTrue();
            yard.Pieces().Should().OnlyContain(piece => piece.Condition == Condition.Fair, "it is one change");
        });
    }

    [Fact]
    public void A_label_that_says_another_size_now_waits_again_and_no_other()
    {
        On(yard =>
        {
            var line = Saved(yard, "2x10 11'4, 9' @north");
            yard.Change("printed", work => work.LabelsPrinted(line.Codes));
            Correct(yard, line, "2x10 11'4, 8' fair @north");
            yard.LabelQueue().Should().Equal(line.Codes[1]);
        });
    }

    [Fact]
    public void A_label_that_was_tied_on_before_is_not_printed_again()
    {
        On(yard =>
        {
            yard.Change("print blanks", work => work.IssueBlanks(2));
            var (blank, other) = (yard.BlankCodes()[0], yard.BlankCodes()[1]);
            var line = Saved(yard, $"{blank} 2x4 8'");
            line.Text.Should().Be("2x4 8'");
            Correct(yard, line, "2x4 7'").Line.Codes.Should().Equal(blank);
            yard.LabelQueue().Should().BeEmpty();
            Refused(yard, line, $"{other} 2x4 7'").Should().Be($"the label of what is corrected stays: it is {blank}; to hang it on something else, take the line back");
        });
    }

    [Fact]
    public void What_is_said_alike_keeps_its_label_wherever_it_stands()
    {
        On(yard =>
        {
            var line = Saved(yard, "2x4 12', 9', 8'");
            var right = Correct(yard, line, "2x4 12', 8'");
            right.Told.Should().Be($"marked as missing: {line.Codes[1]}, 2x4");
            right.Line.Codes.Should().Equal(line.Codes[0], line.Codes[2]);
            yard.Piece(line.Codes[1])!.State.Should().Be(PieceState.Missing, "what had a code never vanishes");
            yard.Pieces().Select(piece => piece.Length).Should().Equal(Length.Feet(12), Length.Feet(8));
        });
    }

    [Fact]
    public void More_pieces_get_codes_of_their_own()
    {
        On(yard =>
        {
            var line = Saved(yard, "2x4 8' x2");
            var right = Correct(yard, line, "2x4 8' x3");
            right.Told.Should().StartWith("catalogued ");
            right.Line.Codes.Should().HaveCount(3).And.StartWith(line.Codes);
            yard.LabelQueue().Should().HaveCount(3);
            Correct(yard, right.Line, "2x4 8' x3 fair").Told.Should().Be("corrected 3 pieces", "a line can be corrected again");
        });
    }

    [Fact]
    public void What_was_done_since_stays_where_the_two_lines_agree()
    {
        On(yard =>
        {
            var line = Saved(yard, "2x4 8' @north");
            new ChangePieces(yard).PutAt(line.Codes, "trailer").Ok.Should().BeTrue();
            new ChangeStages(yard).Add("walls", null).Ok.Should().BeTrue();
            new ChangePieces(yard).Reserve(line.Codes, "walls").Ok.Should().BeTrue();
            Correct(yard, line, "2x4 7' @north");
            var piece = yard.Pieces().Single();
            (piece.Length, piece.Place, piece.ReservedFor).Should().Be((Length.Feet(7), "trailer", "walls"));
        });
    }

    [Fact]
    public void What_was_changed_since_and_is_corrected_too_is_refused_by_name()
    {
        On(yard =>
        {
            var line = Saved(yard, "2x4 8' @north");
            new ChangePieces(yard).PutAt(line.Codes, "trailer").Ok.Should().BeTrue();
            Refused(yard, line, "2x4 7' @south").Should().Be($"{line.Codes[0]}: its place was changed since this line was saved; see it with its code, then correct the line or that");
            yard.Pieces().Single().Length.Should().Be(Length.Feet(8), "nothing of it is saved");
        });
    }

    [Fact]
    public void What_is_gone_is_not_corrected()
    {
        On(yard =>
        {
            var line = Saved(yard, "2x4 8'");
            new ChangePieces(yard).Mark(line.Codes, PieceState.Scrapped).Ok.Should().BeTrue();
            Refused(yard, line, "2x4 7'").Should().Be($"{line.Codes[0]} is not in the yard any more, so its line is not corrected");
        });
    }

    [Fact]
    public void A_count_is_put_right_by_what_it_was_off_by()
    {
        On(yard =>
        {
            Saved(yard, "panel tie x40 @shed");
            var line = Saved(yard, "panel tie x12 @shed");
            Correct(yard, line, "panel tie x21 @shed").Told.Should().Be("corrected panel tie: 61");
            yard.Bins().Single().Quantity.Should().Be(61);
            Refused(yard, line, "2x4 8'").Should().Be("a line of pieces can't become counted things by being corrected, nor the other way round; take the line back and type it anew");
        });
    }

    [Fact]
    public void A_line_that_stands_so_already_changes_nothing()
    {
        On(yard =>
        {
            var line = Saved(yard, "2x4 8'");
            var before = yard.ChangeNumber;
            Correct(yard, line, "2x4  8'").Told.Should().Be("nothing to correct: it stands so already");
            yard.ChangeNumber.Should().Be(before);
        });
    }

    [Fact]
    public void A_line_with_its_own_label_keeps_that_where_it_was_corrected_to_the_same()
    {
        On(yard =>
        {
            yard.Change("print blanks", work => work.IssueBlanks(1));
            var line = Saved(yard, $"{yard.BlankCodes()[0]} 2x4 8'");
            var same = Correct(yard, line, "2x4  8'").Line;
            Correct(yard, same, "2x4 7'").Told.Should().StartWith("corrected ");
            yard.LabelQueue().Should().BeEmpty("the label that was tied on is still there");
        });
    }

    [Fact]
    public void Counted_things_that_stand_so_already_make_no_entry_of_the_history()
    {
        On(yard =>
        {
            var line = Saved(yard, "panel tie x40 @shed");
            var before = yard.ChangeNumber;
            Correct(yard, line, "panel tie  x40 @shed").Told.Should().Be("nothing to correct: it stands so already");
            yard.ChangeNumber.Should().Be(before);
        });
    }

    private static void On(Action<YardFile> part)
    {
        using var folder = new TryYard();
        using var yard = YardFile.Open(folder.YardPath, folder.Clock);
        part(yard);
    }

    private static SavedLine Saved(YardFile yard, string text)
    {
        var said = CataloguePieces.ReadLine(text, LengthUnit.Inch, WholePanels.None).Value;
        return SavedLine.Of(text, said, new CataloguePieces(yard).Save([said], newNames: true).Value);
    }

    private static (SavedLine Line, string Told) Correct(YardFile yard, SavedLine line, string text) =>
        new CorrectLine(yard).Do(line, text, CataloguePieces.ReadLine(text, LengthUnit.Inch, WholePanels.None).Value).Value;

    private static string Refused(YardFile yard, SavedLine line, string text) =>
        new CorrectLine(yard).Do(line, text, CataloguePieces.ReadLine(text, LengthUnit.Inch, WholePanels.None).Value).Fault.Sentence;
}
