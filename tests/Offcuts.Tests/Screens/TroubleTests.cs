using Microsoft.Data.Sqlite;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Matching;
using Offcuts.Screens;
using Offcuts.UseCases;

namespace Offcuts.Tests.Screens;

/// <summary>When the world does not go along.</summary>
[Collection(OnScreen.Name)]
public sealed class TroubleTests
{
    [Fact]
    public void A_yard_that_another_program_holds_is_told_and_the_line_stays()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3").Type("2x4 8'");
            using (var other = new SqliteConnection($"Data Source={run.Folder.YardPath};Pooling=False"))
            {
                other.Open();
                using var hold = other.CreateCommand();
                hold.CommandText = "BEGIN EXCLUSIVE";
                hold.ExecuteNonQuery();
                run.Press("Enter");
            }

            run.Text.Should().Contain("is in use by another program");
            run.Lines[2].Should().Be("strip  2x4 8'");
            run.Press("Enter");
            run.Yard.Pieces().Should().HaveCount(1);
            run.Lines[2].Should().Be("strip");
        });
    }

    [Fact]
    public void A_refusal_is_not_covered_by_what_is_told_of_the_backup_which_is_told_once_a_day()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            File.WriteAllText(run.Yard.Path + ".backups", "no folder can be made here");
            run.Press("F3").Type("2x4 8'");
            using (var other = new SqliteConnection($"Data Source={run.Folder.YardPath};Pooling=False"))
            {
                other.Open();
                using var hold = other.CreateCommand();
                hold.CommandText = "BEGIN IMMEDIATE";
                hold.ExecuteNonQuery();
                run.Press("Enter");
            }

            run.Yard.BackupTrouble.Should().NotBeNull("no backup could be made");
            run.Shell.State.Notice.Text.Should().Contain("is in use by another program").And.NotContain("what you do is saved all the same");
            run.Lines[2].Should().Be("strip  2x4 8'");

            run.Press("Enter").Shell.State.Notice.Text.Should().StartWith("no backup was made today: ").And.EndWith("what you do is saved all the same");
            run.Yard.Pieces().Should().HaveCount(9);
            run.Type("2x4 9'").Press("Enter").Shell.State.Notice.Text.Should().StartWith("Catalogued ", "it is told once a day");

            run.Folder.Clock.Pass(TimeSpan.FromDays(1));
            run.Type("2x4 7'").Press("Enter").Shell.State.Notice.Text.Should().StartWith("no backup was made today: ", "another day has another backup");
        });
    }

    [Fact]
    public void A_file_that_is_there_is_never_written_over_and_its_name_can_be_put_right()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            var there = run.Folder.FileOf("labels.pdf", "mine");
            run.Press("Ctrl+L", "F3", "Ctrl+L");
            run.Press([.. Enumerable.Repeat("Backspace", run.Shell.State.Strip.Line.Text.Length)]).Type(there).Press("Enter");
            run.Text.Should().Contain("is there already").And.Contain("labels-2.pdf is free");
            File.ReadAllText(there).Should().Be("mine");
            run.Shell.State.Strip.Line.Text.Should().Be(there, "the name stands there to be changed");

            run.Press([.. Enumerable.Repeat("Backspace", "labels.pdf".Length)]).Type("more.pdf").Press("Enter");
            File.ReadAllBytes(Path.Combine(run.Folder.Folder, "more.pdf")).Should().StartWith("%PDF"u8.ToArray());
            run.Yard.LabelQueue().Should().BeEmpty();
        });
    }

    [Fact]
    public void The_label_of_a_piece_that_is_gone_is_not_queued_and_the_reason_is_told()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Yard.Change("scrapped", work => work.Update(run.Yard.Piece(KnownYard.Codes[0])! with { State = Core.Yard.PieceState.Scrapped })).Ok.Should().BeTrue();
            run.Tick().Press("Ctrl+K", "Ctrl+Home", "Ctrl+L");
            run.Text.Should().Contain($"{KnownYard.Codes[0]} is scrapped: only what lies in the yard needs a label");
            run.Yard.LabelQueue().Should().NotContain(KnownYard.Codes[0]);
        });
    }

    [Fact]
    public void A_stage_name_that_is_taken_comes_back_to_be_changed()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F4").Type("cleat: 2x4 14").Press("Ctrl+K").Type("stem wall").Press("Enter");
            run.Text.Should().Contain("there is a stage named stem wall already");
            run.Lines[2].Should().Be("stage  stem wall");
            run.Type(" two").Press("Enter");
            run.Yard.Stages().Select(stage => stage.Name).Should().Equal("footing forms", "stem wall", "stem wall two");
            run.Lines[2].Should().Be("need   cleat: 2x4 14", "the need that was being typed is still there");
        });
    }

    [Fact]
    public void A_day_that_is_none_is_not_taken_for_a_part_of_the_name()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F4", "Ctrl+K").Type("walls 2026-06-31").Press("Enter");
            run.Text.Should().Contain("\"2026-06-31\" is no day");
            run.Lines[2].Should().Be("stage  walls 2026-06-31");
            run.Press("Backspace").Type("0").Press("Enter");
            run.Yard.Stages().Single().Date.Should().Be(new DateOnly(2026, 6, 30));
        });
    }

    [Fact]
    public void A_match_runs_beside_everything_else_shows_its_best_and_is_stopped_by_Esc()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F4");
            run.Hands.Holding = true;
            run.Press("Ctrl+R");
            run.Lines[3].Should().Be("Matching everything that is lacking …");
            var plan = PlanModel.Hear(run.Shell.State.Plan, new News.Matching(new MatchProgress("2x4", new Figure(3, 1), new Figure(1250, 398), new Figure(0, 0)))).State;
            PlanRows.Head(plan, 100)[1].Text.Should().Be("0 s, so far: 3 unfilled (at best 1), spends $12.50 (at best $3.98)");
            var ripping = plan with { Progress = plan.Progress!.Value with { Rips = new Figure(2, 1) } };
            PlanRows.Head(ripping, 100)[1].Text.Should().Be("0 s, so far: 3 unfilled (at best 1), spends $12.50 (at best $3.98), 2 ripped (at best 1)");

            run.Press("F3").Type("2x4 8'");
            run.Lines[2].Should().Be("strip  2x4 8'", "typing goes on meanwhile");
            run.Press("F5", "Ctrl+R");
            run.Text.Should().Contain("a match runs already; Esc stops it");
            run.Press("Esc");
            run.Text.Should().Contain("stopping; the best plan so far is taken");
            run.Hands.Release();
            run.Press("F5");
            run.Text.Should().Contain("Found, not kept yet: footing forms, stem wall");
        });
    }

    [Fact]
    public void A_match_that_was_not_proven_says_what_ended_it()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F4", "Ctrl+R");
            var proven = run.Shell.State.Plan.Found!;
            var open = proven with { Tiers = proven.Tiers with { Spend = new Figure(proven.Tiers.Spend.Value, proven.Tiers.Spend.Value - 1) } };
            string Told(Plan plan, MatchEnd end) => ShellModel.Hear(run.Shell.State, new News.Matched(plan) { End = end }).Notice!.Text;

            Told(open, MatchEnd.TimeLimit).Should().StartWith("Ended by time with the best so far; a better one may exist").And.EndWith("; ^K keeps it");
            Told(open, MatchEnd.Stopped).Should().StartWith("Stopped with the best so far; a better one may exist");
            Told(open, MatchEnd.ByItself).Should().StartWith("Found a plan; a better one may exist");
            Told(proven, MatchEnd.ByItself).Should().StartWith("Found the best there is");
        });
    }

    [Fact]
    public void A_found_plan_says_when_the_yard_has_changed_since()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F4", "Ctrl+R").Press("F3").Type("2x4 8'").Press("Enter", "F5");
            run.Text.Should().Contain("the yard has changed since this plan was found: ^R matches again");
        });
    }

    [Fact]
    public void A_cut_that_takes_more_than_the_piece_had_comes_back_to_be_changed()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F4", "Ctrl+R", "Ctrl+K", "Ctrl+E");
            run.Press([.. Enumerable.Repeat("Backspace", run.Shell.State.Plan.Line.Text.Length)]).Type("A left 10'").Press("Enter");
            run.Text.Should().Contain("that is more than the piece had");
            run.Lines[2].Should().Be("really A left 10'");
            run.Yard.Piece(KnownYard.Codes[1])!.OnHand.Should().BeTrue();
        });
    }

    [Fact]
    public void What_a_wrong_code_is_told_by_each_place()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Scan(KnownYard.Codes[20]);
            run.Text.Should().Contain($"nothing in this yard has the code {KnownYard.Codes[20]}");
            run.Press("Esc", "Esc", "F3").Scan(KnownYard.Codes[4]);
            run.Text.Should().Contain($"{KnownYard.Codes[4]} hangs on a 2x10 already");
            run.Yard.Piece(KnownYard.Codes[4])!.Length.Should().Be(Length.Feet(12));
            run.Press("F4", "Ctrl+R").Type(KnownYard.Codes[4].Text).Press("Enter");
            run.Text.Should().Contain("is no piece of this plan");
        });
    }

    [Fact]
    public void Without_a_terminal_one_line_says_so_and_nothing_hangs()
    {
        using var folder = new TryYard();
        var told = folder.RunProcess(null, "--yard", folder.YardPath);
        told.Status.Should().Be(2);
        told.Error.Should().Be("the full screen needs a terminal to draw on; see what else there is with: offcuts --help\n");
        told.Out.Should().BeEmpty();
    }
}
