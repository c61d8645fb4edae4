using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Screens;

namespace Offcuts.Tests.Screens;

[Collection(OnScreen.Name)]
public sealed class StoryTests
{
    [Fact]
    public void Boards_are_catalogued_as_a_form_comes_off()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3").Type("2x10 11'4, 9'2-1/2 fiar nails @north");
            run.Lines[2].Should().Be("strip  2x10 11'4, 9'2-1/2 fiar nails @north");
            run.Lines[3].Should().Be("                          ^", "the mistake begins at the 20th character of the line");
            run.Lines[4].Should().Be("… column 20: \"fiar\" means nothing here; fair is the nearest word that does");

            run.Press("Enter");
            run.Lines[4].Should().StartWith("✗ column 20");
            run.Lines[2].Should().Be("strip  2x10 11'4, 9'2-1/2 fiar nails @north", "nothing typed is lost");
            run.Yard.Pieces().Should().BeEmpty();

            run.Press("Esc");
            run.Lines[2].Should().Be("strip  2x10 11'4, 9'2-1/2 fiar nails @north", "one Esc clears nothing");
            run.Press([.. Enumerable.Repeat("Backspace", "iar nails @north".Length)]).Type("air nails @north");
            run.Lines[3].Should().Be("✓ 2 boards 2x10: 11' 4\", 9' 2-1/2\"; fair; nails in; at north; 34.2 bd ft");

            run.Press("Enter");
            run.Lines[2].Should().Be("strip");
            var pieces = run.Yard.Pieces();
            pieces.Select(piece => piece.Length).Should().Equal(Length.Inches(136), Length.Inches(110.5m));
            pieces.Should().OnlyContain(piece => piece.Condition == Condition.Fair && piece.Nails && piece.Place == "north");
            run.Yard.LabelQueue().Should().Equal(pieces.Select(piece => piece.Code));
            run.Text.Should().Contain(pieces[1].Code.ToString()).And.Contain("2 labels wait to be printed");
        });
    }

    [Fact]
    public void A_name_that_nothing_has_yet_is_asked_about_and_may_be_the_nearest_one()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F3").Type("panel tei x12 @shed");
            run.Lines[3].Should().Be("✓ hardware: 12 of panel tei; at shed");
            run.Lines[4].Should().Be("! NEW NAME \"panel tei\": no piece, price, stage or system has it yet; panel tie");
            run.Lines[5].Should().Be("  is the nearest that is known");

            run.Press("Enter");
            run.Yard.Bins().Single().Quantity.Should().Be(40, "nothing is saved before the question is answered");
            run.Text.Should().Contain("Is it meant?").And.Contain("y save it as new").And.Contain("n it is panel tie");

            run.Press("n");
            run.Lines[2].Should().Be("strip  panel tie x12 @shed", "the line is put right, not saved");
            run.Press("Enter");
            run.Yard.Bins().Single().Quantity.Should().Be(52);
        });
    }

    [Fact]
    public void A_size_that_looks_like_a_slip_is_asked_about_before_it_is_saved()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            var before = run.Yard.Pieces().Count;
            run.Press("F3").Type("2x4 2400");
            run.Lines[4].Should().Be("! UNUSUAL: 2x4 200': over 24', the longest that is usually sold");

            run.Press("Enter");
            run.Text.Should().Contain("2x4 200' is unusual").And.Contain("y save it so");
            run.Yard.Pieces().Should().HaveCount(before);
            run.Press("y");
            run.Yard.Pieces().Should().HaveCount(before + 1);
        });
    }

    [Fact]
    public void A_new_name_that_is_meant_is_saved_and_known_from_then_on()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3").Type("corner bracket x8").Press("Enter");
            run.Text.Should().Contain("y save it as new").And.NotContain("it is ");
            run.Press("y");
            run.Yard.Bins().Single().Hardware.Name.Should().Be("corner bracket");
            run.Lines[2].Should().Be("strip");

            run.Type("corner bracket x4").Press("Enter");
            run.Yard.Bins().Single().Quantity.Should().Be(12, "no question is asked any more");
        });
    }

    [Fact]
    public void A_need_of_a_name_that_nothing_has_is_asked_about_too()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F4").Type("wires: foundation wire x5");
            run.Text.Should().Contain("! NEW NAME \"foundation wire\"");
            run.Press("Enter", "Esc");
            run.Yard.Stages()[0].Hardware.Should().ContainSingle();
            run.Lines[2].Should().Be("need   wires: foundation wire x5", "Esc goes back to the line");

            run.Press("Enter", "y");
            run.Yard.Stages()[0].Hardware[1].Hardware.Name.Should().Be("foundation wire");
            run.Lines[2].Should().Be("need");
        });
    }

    [Fact]
    public void What_was_taken_back_is_done_again_by_a_key_until_something_new_is_done()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3").Type("2x4 8'").Press("Enter").Type("2x6 9'").Press("Enter");
            run.Press("Ctrl+Z");
            run.Yard.Pieces().Should().ContainSingle();

            run.Press("Ctrl+Y");
            run.Yard.Pieces().Select(piece => piece.Material.Name).Should().Equal("2x4", "2x6");
            run.Text.Should().Contain("Did again: catalogued");

            run.Press("Ctrl+Z").Type("2x8 10'").Press("Enter").Type("2x").Press("Ctrl+Y");
            run.Text.Should().Contain("What stands on the line stays; do again what was taken back last?");
            run.Press("y");
            run.Text.Should().Contain("there is nothing to do again");
            run.Lines[2].Should().Be("strip  2x");
            run.Yard.Pieces().Select(piece => piece.Material.Name).Should().Equal("2x4", "2x8");
        });
    }

    [Fact]
    public void A_scanned_blank_label_waits_for_the_rest_of_its_line()
    {
        ScreenRun.On(80, 24, run =>
        {
            var blank = run.Yard.BlankCodes()[0];
            run.Press("F3").Scan(blank);
            run.Lines[2].Should().Be($"strip  {blank}");
            run.Yard.Pieces().Should().BeEmpty();

            run.Type("2x4 8' stamped").Press("Enter");

            run.Yard.Piece(blank)!.Length.Should().Be(Length.Feet(8));
            run.Yard.LabelQueue().Should().BeEmpty("that label is printed already");
        }, yard => yard.Change("print blanks", work => work.IssueBlanks(3)));
    }

    [Fact]
    public void A_number_goes_to_its_piece_and_says_what_Enter_would_do_there()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F5", "Ctrl+R").Type("2").Press("Enter");
            run.Text.Should().Contain($"Piece 2, {KnownYard.Codes[2]}: ^K keeps the plan, then it can be cut");
            run.Press("Ctrl+K").Type("2").Press("Enter");
            run.Text.Should().Contain($"Piece 2, {KnownYard.Codes[2]}: Enter says that it is cut");
            run.Press("Enter", "y").Type("2").Press("Enter");
            run.Text.Should().Contain($"Piece 2, {KnownYard.Codes[2]}: it waits no more");
            run.Yard.Plans().Single().Steps.Count(step => step.State == Offcuts.Core.Plans.StepState.Done).Should().Be(1);
        });
    }

    [Fact]
    public void Several_lines_pasted_where_one_goes_are_refused_and_that_is_said()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F2").Type("2x4").Paste("2x6\n2x8\n");
            run.Text.Should().Contain("2 lines were pasted, but one line goes here: none was taken").And.Contain("2x4");
            run.Press("F5").Paste("1\n2\n3\n");
            run.Text.Should().Contain("3 lines were pasted, but one line goes here: none was taken");
        });
    }

    [Fact]
    public void Pasted_lines_come_up_one_after_the_other()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3").Paste("2x4 8'\n2x6 9'\r\n2x8 10'\n");
            run.Lines[2].Should().Be("strip  2x4 8'");
            run.Press("Enter");
            run.Lines[2].Should().Be("strip  2x6 9'");
            run.Press("Enter", "Enter");
            run.Yard.Pieces().Select(piece => piece.Material.Name).Should().Equal("2x4", "2x6", "2x8");
        });
    }

    [Fact]
    public void The_line_saved_before_comes_back_and_what_was_being_typed_after_it()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3").Type("2x4 8'").Press("Enter").Type("2x6").Press("Up");
            run.Lines[2].Should().Be("strip  2x4 8'");
            run.Press("Down");
            run.Lines[2].Should().Be("strip  2x6");
        });
    }

    [Fact]
    public void The_yard_is_narrowed_as_one_types()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Lines[3].Should().StartWith("9 of 9.");
            run.Type("2x4 9'+");
            run.Lines[3].Should().Be("2 of 9:  2x4, 9' or longer");
            run.Text.Should().Contain(KnownYard.Codes[1].ToString()).And.Contain(KnownYard.Codes[3].ToString()).And.NotContain(KnownYard.Codes[0].ToString());
            run.Type(" bad");
            run.Lines[3].Should().StartWith("1 of 9:");
            run.Type("ger");
            run.Lines[3].Should().StartWith("0 of 9:");
            run.Press("Esc", "Esc");
            run.Lines[3].Should().StartWith("9 of 9.");
        });
    }

    [Fact]
    public void A_scanned_label_shows_its_piece()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Scan(KnownYard.Codes[7]);
            run.Text.Should().Contain($"{KnownYard.Codes[7]} foam 2-1/2x12").And.Contain("first pattern line 2\" from the marked end");
            run.Scan(KnownYard.Codes[4]);
            run.Text.Should().Contain($"{KnownYard.Codes[4]} 2x10 12'");
        });
    }

    [Fact]
    public void A_label_scanned_behind_other_words_opens_its_piece_too()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Type("2x10 ").Scan(KnownYard.Codes[7]);
            run.Lines[2].Should().Be("find", "the line is ready for the next scan");
            run.Text.Should().Contain($"{KnownYard.Codes[7]} foam 2-1/2x12").And.Contain("first pattern line 2\" from the marked end");
            run.Type("north").Scan(KnownYard.Codes[4]);
            run.Text.Should().Contain($"{KnownYard.Codes[4]} 2x10 12'", "no gap is needed before what the scanner types");
            run.Press("Esc").Type($"rack {KnownYard.Codes[0]}");
            run.Lines[3].Should().Be($"1 of 9:  code {KnownYard.Codes[0]}", "a typed code as it stands on the label");
            run.Press("Enter");
            run.Text.Should().Contain($"{KnownYard.Codes[0]} 2x4 8'");
        });
    }

    [Fact]
    public void A_label_of_a_piece_that_is_gone_opens_that_piece_and_no_other()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Scan(KnownYard.Codes[4]).Press("Ctrl+E").Type("s").Press("Esc");
            run.Lines[3].Should().StartWith("8 of 8.");
            run.Scan(KnownYard.Codes[4]);
            run.Text.Should().Contain($"{KnownYard.Codes[4]} 2x10 12'").And.Contain("9 of 9 with those that are gone");
        });
    }

    [Fact]
    public void A_piece_is_marked_reserved_and_freed_by_keys_and_each_is_taken_back()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            var code = KnownYard.Codes[0];
            run.Press("Ctrl+E").Type("s");
            run.Yard.Piece(code)!.State.Should().Be(PieceState.Scrapped);
            run.Lines[3].Should().StartWith("8 of 8.");
            run.Press("Ctrl+Z");
            run.Yard.Piece(code)!.State.Should().Be(PieceState.InYard);
            run.Text.Should().Contain("Took back: marked as scrapped");

            run.Press("Up", "Ctrl+R").Type("2");
            run.Yard.Piece(code)!.ReservedFor.Should().Be("stem wall");
            run.Press("Ctrl+R");
            run.Yard.Piece(code)!.State.Should().Be(PieceState.InYard);
        });
    }

    [Fact]
    public void A_stage_is_entered_matched_kept_cut_and_written_to_the_ledger()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3").Type("2x4 8' sound @rack").Press("Enter").Type("2x4 5' @rack").Press("Enter");
            run.Press("F4", "Ctrl+K").Type("footing forms 2026-06-15").Press("Enter");
            run.Text.Should().Contain("footing forms needs  begins 2026-06-15");
            run.Type("stakes: 2x4 24 x2 rough");
            run.Lines[3].Should().Be("✓ footing forms: stakes: 2 of 2x4, 2'; rough; treated or not");
            run.Press("Enter").Type("brace: 2x4 7' bracing").Press("Enter");
            run.Yard.Stages().Single().Cuts.Should().HaveCount(2);

            run.Press("Ctrl+R");
            run.Lines[0].Should().Contain("[PLAN]");
            run.Text.Should().Contain("Found, not kept yet: footing forms  proven best").And.Contain("fills everything");
            run.Press("Ctrl+K");
            run.Text.Should().Contain("Plan 1 of 2026-06-01, 2 of 2 wait");

            run.Press("Enter").Type("y");
            run.Text.Should().Contain("✓ footing forms: saved $0.00, 1 piece used, 4.7 bd ft");
            run.Press("Ctrl+O").Type("y");
            run.Text.Should().Contain("Plan 1 of 2026-06-01, all done");
            run.Yard.Ledger().Sum(line => line.PiecesUsed).Should().Be(2);
            run.Yard.Plans().Single().Open.Should().BeFalse();

            run.Press("Ctrl+Z");
            run.Yard.Ledger().Sum(line => line.PiecesUsed).Should().Be(1, "the second carrying out is taken back whole");
        });
    }

    [Fact]
    public void What_really_happened_is_entered_by_the_letters_of_the_bar()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F4").Type("short: 2x4 24 x3 rough").Press("Enter", "Ctrl+R", "Ctrl+K", "Ctrl+E");
            run.Lines[2].Should().Be("really A B C left 1' 11-5/8\"", "3 cuts of 24 in and 3 kerfs of 1/8 in leave 23-5/8 in of 96");
            run.Press([.. Enumerable.Repeat("Backspace", run.Shell.State.Plan.Line.Text.Length)]).Type("A left 3'");
            run.Lines[5].Should().Be("✓ right: A short; not made: B short, C short; back to the yard: 3'; the rest");
            run.Press("Enter");

            run.Yard.Plans().Single().PiecesCut.Single().Cuts.Should().HaveCount(1);
            run.Yard.Pieces().Single().Length.Should().Be(Length.Feet(3));
            run.Text.Should().Contain("[~]");
        }, yard =>
        {
            KnownYardPiece(yard, "2x4 8' sound");
            new UseCases.ChangeStages(yard).Add("forms", null);
        });
    }

    [Fact]
    public void A_change_by_another_program_appears()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Lines[3].Should().StartWith("9 of 9.");
            run.Folder.Must("add", "2x6 7'");
            run.Tick();
            run.Lines[3].Should().StartWith("10 of 10.");
            run.Text.Should().Contain("another program changed the yard: catalogued");
        });
    }

    [Fact]
    public void Esc_never_leaves_and_leaving_asks_where_something_would_be_lost()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("Esc", "Esc", "Esc");
            run.HasLeft.Should().BeFalse();
            run.Press("F3").Type("2x4 8'").Press("F2", "Ctrl+Q");
            run.Text.Should().Contain("Leave all the same? The strip line is not saved");
            run.Press("Esc");
            run.HasLeft.Should().BeFalse();
            run.Press("F3");
            run.Lines[2].Should().Be("strip  2x4 8'", "another place keeps its line");
            run.Press("Ctrl+Q").Type("y");
            run.HasLeft.Should().BeTrue();
        });
    }

    [Fact]
    public void Enter_twice_saves_once()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3").Type("2x4 8'");
            run.Hands.Holding = true;
            run.Press("Enter", "Enter").Type(" 2x6 9'");
            run.Hands.Release();
            run.Yard.Pieces().Should().HaveCount(1);
            run.Press("F2", "F3");
            run.Lines[2].Should().Be("strip  2x6 9'", "what was typed ahead stays");
        });
    }

    [Fact]
    public void A_label_scanned_while_the_line_before_is_being_saved_keeps_its_code_apart()
    {
        ScreenRun.On(80, 24, run =>
        {
            var blank = run.Yard.BlankCodes()[0];
            run.Press("F3").Type("2x4 8'");
            run.Hands.Holding = true;
            run.Press("Enter").Scan(blank).Type("2x6 9'");
            run.Hands.Release();
            run.Press("Enter");
            run.Yard.Pieces().Should().HaveCount(2);
            run.Yard.Piece(blank)!.Length.Should().Be(Length.Feet(9));
        }, yard => yard.Change("print blanks", work => work.IssueBlanks(1)));
    }

    private static void KnownYardPiece(Store.YardFile yard, string line)
    {
        var catalogue = new UseCases.CataloguePieces(yard);
        catalogue.Save(catalogue.Read([$"{KnownYard.Codes[0]} {line}"]).Value).Ok.Should().BeTrue();
    }
}
