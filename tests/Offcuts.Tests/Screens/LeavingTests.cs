using Microsoft.Data.Sqlite;
using Offcuts.Core.Yard;
using Offcuts.Screens;

namespace Offcuts.Tests.Screens;

/// <summary>Leaving while something is still being saved: nothing is lost, and nothing is refused in silence.</summary>
[Collection(OnScreen.Name)]
public sealed class LeavingTests
{
    private const string Asked = "What you did is still being saved: the screen closes once it is";

    [Fact]
    public void The_screen_closes_by_itself_once_what_was_done_is_saved()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Hands.Holding = true;
            run.Press("F3").Type("2x4 8'").Press("Enter", "Ctrl+Q");
            run.HasLeft.Should().BeFalse();
            run.Text.Should().Contain(Asked);
            run.LetGo().HasLeft.Should().BeTrue();
            run.Yard.Pieces().Should().HaveCount(9);
        });
    }

    [Fact]
    public void It_stays_where_that_is_refused()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Hands.Holding = true;
            run.Press("F3").Type("2x4 8'").Press("Enter", "Ctrl+Q");
            WhileHeld(run, () => run.LetGo());
            run.HasLeft.Should().BeFalse();
            run.Text.Should().NotContain(Asked).And.Contain("is in use by another program");
            run.Lines[2].Should().Be("strip  2x4 8'");
        });
    }

    [Fact]
    public void Leaving_says_a_word_at_once_takes_nothing_more_and_closes_once_all_is_through()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Hands.Holding = true;
            run.Press("Ctrl+Q").HasLeft.Should().BeFalse("the yard's own thread is still at something");
            run.Text.Should().Contain("Leaving; what is under way in the yard is finished first");
            var text = run.Text;
            run.Press("F4", "Ctrl+E", "s", "Esc", "Ctrl+Q").Type("2x4").Tick().Text.Should().Be(text, "nothing more is taken in");
            run.LetGo().HasLeft.Should().BeTrue();
            run.Yard.Piece(KnownYard.Codes[0])!.State.Should().Be(PieceState.InYard);
        });
    }

    [Fact]
    public void What_is_refused_after_the_screen_was_left_is_told_then()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Hands.Holding = true;
            run.Press("Ctrl+E", "s", "Ctrl+Q");
            run.Text.Should().Contain(Asked);
            run.Press("y").HasLeft.Should().BeFalse();
            run.Text.Should().Contain("Leaving; what is under way in the yard is finished first");

            WhileHeld(run, run.Hands.Release);
            run.HasLeft.Should().BeTrue("whatever comes of it");
            run.Shell.Unheard().Should().ContainSingle().Which.Sentence.Should().StartWith("refused after the screen was left, marking as scrapped: ").And.Contain("is in use by another program");
            run.Yard.Piece(KnownYard.Codes[0])!.State.Should().Be(PieceState.InYard);
        });
    }

    [Fact]
    public void What_was_refused_before_everybody_s_eyes_is_not_told_again()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            WhileHeld(run, () => run.Press("Ctrl+E", "s"));
            run.Text.Should().Contain("is in use by another program");
            run.Shell.Unheard().Should().BeEmpty();
            run.Press("Ctrl+Q").HasLeft.Should().BeTrue();
        });
    }

    private static void WhileHeld(ScreenRun run, Action part)
    {
        using var other = new SqliteConnection($"Data Source={run.Folder.YardPath};Pooling=False");
        other.Open();
        using var hold = other.CreateCommand();
        hold.CommandText = "BEGIN EXCLUSIVE";
        hold.ExecuteNonQuery();
        part();
    }
}
