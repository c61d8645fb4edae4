using Microsoft.Data.Sqlite;
using Offcuts.Core.Yard;
using Offcuts.Screens;

namespace Offcuts.Tests.Screens;

/// <summary>Two programs on one yard: what is typed or asked here while the other changes the same is told before it is done, and nothing typed is lost.</summary>
[Collection(OnScreen.Name)]
public sealed class MeanwhileTests
{
    [Fact]
    public void A_price_that_was_set_by_another_program_is_not_written_over_unasked()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F8", "Ctrl+E");
            var line = run.Lines[2];
            run.Folder.Must("price", "set", "2x4 8' 4.44");
            run.Tick();
            run.Lines[2].Should().Be(line, "nothing typed is lost");

            run.Press("Enter").Shell.State.Notice.Text.Should().Contain("another program set 2x4 8' to $4.44 meanwhile; Enter once more puts yours in its place");
            run.Yard.Prices().All.Should().Contain(price => price.Price.Cents == 444);
            run.Press("Enter");
            run.Yard.Prices().All.Should().NotContain(price => price.Price.Cents == 444);
        });
    }

    [Fact]
    public void A_setting_that_was_set_by_another_program_is_told_too()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F9").Type("keep 2x4 18");
            run.Folder.Must("settings", "keep", "2x4", "20\"");
            run.Tick();
            run.Press("Enter").Shell.State.Notice.Text.Should().Contain("meanwhile; Enter once more sets yours");
            run.Lines[2].Should().Be("set    keep 2x4 18");
            run.Yard.Settings().Keep(Core.Materials.MaterialReader.Read("2x4").Value).Should().Be(Core.Measures.Length.Inches(20));
            run.Press("Enter");
            run.Yard.Settings().Keep(Core.Materials.MaterialReader.Read("2x4").Value).Should().Be(Core.Measures.Length.Inches(18));
        });
    }

    [Fact]
    public void A_stage_that_another_program_took_away_leaves_the_answer_to_no_other()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F4", "Ctrl+D").Press("Ctrl+U").Type("2026-07-01");
            run.Folder.Must("stage", "remove", "footing forms");
            run.Tick();
            run.Press("Enter").Shell.State.Notice.Text.Should().Contain("the stage footing forms is not there any more under that name; nothing was changed");
            run.Yard.Stages().Single().Date.Should().BeNull("the stage that stands in its place now was not meant");
        });
    }

    [Fact]
    public void A_day_that_another_program_set_is_told_before_another_takes_its_place()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F4", "Ctrl+D").Press("Ctrl+U").Type("2026-07-01");
            run.Folder.Must("stage", "date", "footing forms", "2026-08-08");
            run.Tick();
            run.Press("Enter").Shell.State.Notice.Text.Should().Contain("another program set the day of footing forms to 2026-08-08 meanwhile; Enter once more sets yours");
            run.Lines[2].Should().Be("day    2026-07-01");
            run.Press("Enter");
            run.Yard.Stages()[0].Date.Should().Be(new DateOnly(2026, 7, 1));
        });
    }

    [Fact]
    public void A_need_that_is_typed_for_a_stage_that_is_gone_goes_to_no_other_unasked()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F4").Type("cleat: 2x4 14 x6 rough");
            run.Folder.Must("stage", "remove", "footing forms");
            run.Tick();
            run.Press("Enter").Shell.State.Notice.Text.Should().Contain("footing forms is not there any more under that name; Enter once more adds this to stem wall");
            run.Yard.Stages().Single().Cuts.Should().HaveCount(2);
            run.Press("Enter");
            run.Yard.Stages().Single().Cuts.Should().HaveCount(3);
        });
    }

    [Fact]
    public void A_piece_that_another_program_moved_is_told_before_it_is_moved_again()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            var code = KnownYard.Codes[0];
            run.Press("Ctrl+T", "Ctrl+U").Type("trailer");
            run.Folder.Must("change", code.Text, "--place", "barn");
            run.Tick();
            run.Press("Enter").Shell.State.Notice.Text.Should().Contain($"changed meanwhile: {code} is in the yard at barn now");
            run.Yard.Piece(code)!.Place.Should().Be("barn");
            run.Lines[2].Should().Be("put at trailer");
            run.Press("Enter");
            run.Yard.Piece(code)!.Place.Should().Be("trailer");
        });
    }

    [Fact]
    public void An_answer_by_a_letter_is_held_back_once_too()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            var code = KnownYard.Codes[0];
            run.Press("Ctrl+E");
            run.Folder.Must("reserve", "stem wall", code.Text);
            run.Tick();
            run.Type("s").Shell.State.Notice.Text.Should().StartWith($"changed meanwhile: {code} is reserved for stem wall");
            run.Yard.Piece(code)!.State.Should().Be(PieceState.Reserved);
            run.Type("s");
            run.Yard.Piece(code)!.State.Should().Be(PieceState.Scrapped);
        });
    }

    [Fact]
    public void What_another_program_did_is_not_taken_back_before_it_was_seen()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("Ctrl+E", "s");
            run.Folder.Must("change", KnownYard.Codes[1].Text, "--place", "barn");
            run.Press("Ctrl+Z").Shell.State.Notice.Text.Should().Be($"another program changed the yard meanwhile: {run.Yard.History(1)[0].What}; nothing was taken back, the same key again goes by that");
            run.Yard.Piece(KnownYard.Codes[1])!.Place.Should().Be("barn");
            run.Press("Ctrl+Z");
            run.Yard.Piece(KnownYard.Codes[1])!.Place.Should().Be("north rack", "it was seen by then");
            run.Press("Ctrl+Z");
            run.Yard.Piece(KnownYard.Codes[0])!.State.Should().Be(PieceState.InYard);
        });
    }

    [Fact]
    public void What_was_done_here_is_taken_back_as_fast_as_keys_are_pressed()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Hands.Holding = true;
            run.Press("F3").Type("2x4 8'").Press("Enter", "F2", "Ctrl+E", "s", "Ctrl+Z", "Ctrl+Z", "Ctrl+Y");
            run.LetGo();
            run.Yard.Pieces().Should().HaveCount(9);
            run.Yard.Piece(KnownYard.Codes[0])!.State.Should().Be(PieceState.InYard);
        });
    }

    [Fact]
    public void What_was_taken_back_here_is_not_said_to_be_another_program_s()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F8").Type("2x4 8' 4.44").Press("Enter").Type("2x4 8' 5.55").Press("Ctrl+Z", "y");
            run.Lines[2].Should().Be("price  2x4 8' 5.55");
            run.Press("Enter");
            run.Yard.Prices().All.Should().Contain(price => price.Price.Cents == 555, "nobody else set it");
        });
    }

    [Fact]
    public void What_another_program_set_holds_back_no_other_price()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F8").Type("2x4 8' 5.55");
            run.Folder.Must("price", "set", "2x4 8' 4.44");
            run.Tick();
            run.Press([.. Enumerable.Repeat("Backspace", "8' 5.55".Length)]).Type("10' 6.66").Press("Enter");
            run.Yard.Prices().All.Should().Contain(price => price.Price.Cents == 666);
        });
    }

    [Fact]
    public void A_refused_answer_stands_again_about_the_stage_that_was_asked_about()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Hands.Holding = true;
            run.Press("F4", "Ctrl+E").Press("Ctrl+U").Type("stem wall").Press("Enter", "Down");
            run.Shell.State.Stages.Stage!.Name.Should().Be("stem wall");
            run.LetGo();
            run.Text.Should().Contain("What is footing forms to be called?");
            run.Press("Ctrl+U").Type("footings").Press("Enter");
            run.Yard.Stages().Select(stage => stage.Name).Should().Equal("footings", "stem wall");

            using var other = new SqliteConnection($"Data Source={run.Folder.YardPath};Pooling=False");
            other.Open();
            using var hold = other.CreateCommand();
            hold.CommandText = "BEGIN EXCLUSIVE";
            hold.ExecuteNonQuery();
            run.Press("Ctrl+O", "Ctrl+U").Type("1").Press("Enter").Lines[2].Should().Be("place  1", "a refused place in the order stands to be put right");
            run.Press("Esc", "Esc", "Ctrl+D", "Ctrl+U").Type("2026-07-01").Press("Enter").Lines[2].Should().Be("day    2026-07-01");
        });
    }
}
