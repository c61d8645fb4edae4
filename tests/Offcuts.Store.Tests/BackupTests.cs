using System.Diagnostics;
using Offcuts.Core.Faults;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Tests;

/// <summary>Backups: when they are made, that each is whole, how many stay, and going back to one.</summary>
public sealed class BackupTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    private readonly TemporaryFolder _folder = new();
    private readonly StandingClock _clock = new();

    private string Path => _folder["yard.offcuts"];

    private Backups Backups => new(Path);

    private DateOnly Today => DateOnly.FromDateTime(_clock.Now.DateTime);

    [Fact]
    public void The_first_change_of_a_day_finds_a_backup_of_the_day_before_and_the_next_makes_none()
    {
        Add(1);
        Add(2);
        string yesterday;
        using (var yard = Open()) yesterday = yard.Dump();
        _clock.Now += TimeSpan.FromDays(1);

        Add(3);
        Add(4);

        Backups.All().Select(one => (one.Number, one.Day, one.Kind)).Should().Equal((2, Today, BackupKind.Daily), (1, Today.AddDays(-1), BackupKind.Daily));
        using var backup = Yards.Open(Backups.All()[0].Path);
        backup.Dump().Should().Be(yesterday);
    }

    [Fact]
    public void Where_nobody_is_to_wait_the_copy_of_before_the_change_is_checked_afterwards()
    {
        Add(1);
        string before;
        using (var look = Open()) before = look.Dump();
        using var yard = Open();
        yard.FinishesBackupLater = true;

        yard.Do(change => change.Add(Yards.Board(2)));
        yard.HasUnfinishedBackup.Should().BeTrue();
        Backups.All().Should().BeEmpty("it is not checked yet");
        yard.Do(change => change.Add(Yards.Board(3)));
        Directory.GetFiles(Backups.Folder).Should().ContainSingle("the next change makes no second copy").Which.Should().EndWith(".part");
        yard.FinishBackup();

        yard.HasUnfinishedBackup.Should().BeFalse();
        yard.BackupTrouble.Should().BeNull();
        Directory.GetFiles(Backups.Folder).Should().Equal(Backups.All().Single().Path);
        using var backup = Yards.Open(Backups.All().Single().Path);
        backup.Dump().Should().Be(before);
    }

    [Fact]
    public void Closing_the_yard_finishes_the_backup()
    {
        Add(1);
        using (var yard = Open())
        {
            yard.FinishesBackupLater = true;
            yard.Do(change => change.Add(Yards.Board(2)));
        }

        Backups.All().Should().ContainSingle();
    }

    [Fact]
    public void A_copy_that_is_not_whole_becomes_no_backup_is_told_and_made_anew_ten_minutes_later()
    {
        Add(1);
        using var yard = Open();
        yard.FinishesBackupLater = true;
        yard.Do(change => change.Add(Yards.Board(2)));
        var part = Directory.GetFiles(Backups.Folder).Single();
        using (var stream = File.OpenWrite(part)) stream.SetLength(stream.Length / 2);

        yard.FinishBackup();

        yard.BackupTrouble!.Sentence.Should().StartWith("no backup was made today: ");
        Directory.GetFiles(Backups.Folder).Should().BeEmpty();
        _clock.Now += TimeSpan.FromMinutes(11);
        yard.Do(change => change.Add(Yards.Board(3)));
        yard.FinishBackup();
        yard.BackupTrouble.Should().BeNull();
        Backups.All().Should().ContainSingle();
    }

    [Fact]
    public void Looking_makes_no_backup()
    {
        Add(1);
        _clock.Now += TimeSpan.FromDays(1);

        using (var yard = Open()) yard.Pieces().Should().ContainSingle();

        Backups.All().Should().BeEmpty();
    }

    [Fact]
    public void A_screen_that_is_open_over_midnight_makes_the_backup_of_the_new_day()
    {
        Add(1);
        using var yard = Open();
        yard.Do(change => change.Add(Yards.Board(2)));
        _clock.Now += TimeSpan.FromDays(1);

        yard.Do(change => change.Add(Yards.Board(3)));

        Backups.All().Should().HaveCount(2);
    }

    [Fact]
    public void A_copy_that_is_checked_after_midnight_is_the_backup_of_its_own_day_only()
    {
        Add(1);
        using var yard = Open();
        yard.FinishesBackupLater = true;
        yard.Do(change => change.Add(Yards.Board(2)));
        _clock.Now += TimeSpan.FromDays(1);
        yard.FinishBackup();

        yard.Do(change => change.Add(Yards.Board(3)));
        yard.FinishBackup();

        Backups.All().Select(one => one.Day).Should().Equal(Today, Today.AddDays(-1));
    }

    [Fact]
    public void What_a_program_copied_before_the_first_change_and_was_killed_before_it_checked_is_taken_over()
    {
        Add(1);
        string before;
        using (var look = Open()) before = look.Dump();
        // The yard of a program that was killed is left open here: what it copied lies there, and no backup.
        using var killed = Open();
        killed.FinishesBackupLater = true;
        killed.Do(change => change.Add(Yards.Board(2)));
        Backups.All().Should().BeEmpty();

        Add(3);

        using (var backup = Yards.Open(Backups.All().Single().Path)) backup.Dump().Should().Be(before);
        killed.FinishBackup();
        killed.BackupTrouble.Should().BeNull("another program has made it");
        Directory.GetFiles(Backups.Folder).Should().Equal(Backups.All().Single().Path);
    }

    [Fact]
    public void A_copy_is_dropped_where_the_day_has_its_backup_by_the_time_it_is_checked()
    {
        Add(1);
        using var yard = Open();
        yard.FinishesBackupLater = true;
        yard.Do(change => change.Add(Yards.Board(2)));
        Backups.Make(BackupKind.Daily, Today, Patience).Ok.Should().BeTrue();

        yard.FinishBackup();

        yard.BackupTrouble.Should().BeNull();
        Directory.GetFiles(Backups.Folder).Should().Equal(Backups.All().Single().Path);
    }

    [Fact]
    public void What_was_left_and_is_no_yard_is_not_taken_over()
    {
        Add(1);
        Directory.CreateDirectory(Backups.Folder);
        File.WriteAllText(System.IO.Path.Combine(Backups.Folder, $".{Today:yyyy-MM-dd}.abc.part"), "half");

        Add(2);

        using var backup = Yards.Open(Backups.All().Single().Path);
        backup.Pieces().Should().ContainSingle();
    }

    [Fact]
    public void The_last_ten_of_each_kind_are_kept()
    {
        Add(0);
        for (var day = 1; day <= 14; day++)
        {
            _clock.Now += TimeSpan.FromDays(1);
            Add(day);
            if (day % 4 == 0) Backups.Make(BackupKind.ByHand, Today, Patience).Ok.Should().BeTrue();
        }

        var kept = Backups.All();
        kept.Count(one => one.Kind == BackupKind.Daily).Should().Be(10);
        kept.Count(one => one.Kind == BackupKind.ByHand).Should().Be(3);
        kept.Where(one => one.Kind == BackupKind.Daily).Min(one => one.Day).Should().Be(Today.AddDays(-9));
        kept.Select(one => one.Number).Should().OnlyHaveUniqueItems().And.BeInDescendingOrder();
    }

    [Fact]
    public void A_clock_set_back_makes_another_backup_and_drops_no_newer_one()
    {
        Add(1);
        Add(2);
        _clock.Now -= TimeSpan.FromDays(400);

        Add(3);
        Add(4);

        Backups.All().Select(one => (one.Number, one.Day)).Should().Equal((2, Today), (1, Today.AddDays(400)));
        using var yard = Open();
        yard.History().Select(entry => entry.Number).Should().Equal(4, 3, 2, 1);
    }

    [Fact]
    public void A_backup_that_can_not_be_made_holds_up_no_change_and_is_told()
    {
        Add(1);
        File.WriteAllText(Backups.Folder, "in the way");

        using var yard = Open();
        yard.Do(change => change.Add(Yards.Board(2)));

        yard.BackupTrouble!.Sentence.Should().Be($"no backup was made today: the disk of {Backups.Folder} does not answer as it should; what you do is saved all the same");
        yard.Piece(Yards.CodeNumber(2)).Should().NotBeNull();
    }

    [Fact]
    public void A_backup_that_could_not_be_made_is_tried_again_ten_minutes_later_and_not_at_each_change()
    {
        Add(1);
        File.WriteAllText(Backups.Folder, "in the way");
        using var yard = Open();
        yard.Do(change => change.Add(Yards.Board(2)));
        File.Delete(Backups.Folder);

        _clock.Now += TimeSpan.FromMinutes(9);
        yard.Do(change => change.Add(Yards.Board(3)));
        yard.BackupTrouble.Should().NotBeNull();
        Backups.All().Should().BeEmpty();

        _clock.Now += TimeSpan.FromMinutes(1);
        yard.Do(change => change.Add(Yards.Board(4)));
        yard.BackupTrouble.Should().BeNull();
        using var backup = Yards.Open(Backups.All().Single().Path);
        backup.Pieces().Select(piece => piece.Code).Should().Equal(Yards.CodeNumber(1), Yards.CodeNumber(2), Yards.CodeNumber(3));
    }

    [Fact]
    public void A_file_of_another_name_is_no_backup_and_what_a_killed_program_left_is_cleared()
    {
        Add(1);
        Directory.CreateDirectory(Backups.Folder);
        File.WriteAllText(System.IO.Path.Combine(Backups.Folder, "notes.txt"), "mine");
        var left = System.IO.Path.Combine(Backups.Folder, ".abc.part");
        File.WriteAllText(left, "half");
        File.SetLastWriteTimeUtc(left, DateTime.UtcNow.AddHours(-2));

        Add(2);

        Directory.GetFiles(Backups.Folder).Select(System.IO.Path.GetFileName).Should().BeEquivalentTo("notes.txt", "0001-2026-11-25-daily.offcuts");
    }

    [UnixFact]
    public void A_yard_and_its_backups_are_the_users_own()
    {
        Add(1);
        Add(2);

        const UnixFileMode file = UnixFileMode.UserRead | UnixFileMode.UserWrite;
#pragma warning disable CA1416 // Only run on Unix.
        File.GetUnixFileMode(Path).Should().Be(file);
        File.GetUnixFileMode(Backups.All()[0].Path).Should().Be(file);
        File.GetUnixFileMode(Backups.Folder).Should().Be(file | UnixFileMode.UserExecute);
#pragma warning restore CA1416
    }

    [Fact]
    public void Going_back_puts_the_backup_in_place_and_keeps_what_was_there()
    {
        Add(1);
        Add(2);
        Add(3);
        string present;
        using (var yard = Open()) present = yard.Dump();

        var restored = new Restoring(Path, Patience).From(Backups.All()[0].Path, Today).Value;

        using (var yard = Open()) yard.Pieces().Select(piece => piece.Code).Should().Equal(Yards.CodeNumber(1));
        restored.KeptAs!.Kind.Should().Be(BackupKind.Restore);
        using var kept = Yards.Open(restored.KeptAs.Path);
        kept.Dump().Should().Be(present);
        Directory.GetFiles(_folder.Path).Should().Equal(Path);
    }

    [Fact]
    public void Going_back_works_where_the_yard_is_damaged_or_gone()
    {
        Add(1);
        Add(2);
        var backup = Backups.All()[0].Path;
        File.WriteAllText(Path, "this is no database any more");

        var restored = new Restoring(Path, Patience).From(backup, Today).Value;

        File.ReadAllText(restored.KeptAs!.Path).Should().Be("this is no database any more");
        using (var yard = Open()) yard.Pieces().Should().ContainSingle();

        File.Delete(Path);
        new Restoring(Path, Patience).From(backup, Today).Value.KeptAs.Should().BeNull();
        using (var yard = Open()) yard.Pieces().Should().ContainSingle();
    }

    [Fact]
    public void The_journal_of_a_yard_that_is_lost_is_laid_aside_and_not_put_over_the_one_that_comes()
    {
        Add(1);
        var backup = Backups.Make(BackupKind.ByHand, Today, Patience).Value.Path;
        var killed = _folder["killed.offcuts"];
        HotJournal.Leave(Path, killed);
        var journal = File.ReadAllBytes(killed + "-journal");
        File.Delete(killed);

        new Restoring(killed, Patience).From(backup, Today).Value.KeptAs.Should().BeNull();

        File.Exists(killed + "-journal").Should().BeFalse();
        File.ReadAllBytes(killed + ".lost-journal-1").Should().Equal(journal);
        using (var yard = YardFile.Open(killed, _clock, Patience)) yard.Pieces().Select(piece => piece.Code).Should().Equal(Yards.CodeNumber(1));
        YardCheck.Of(killed, Patience).Wrong.Should().BeEmpty();
    }

    [Fact]
    public void A_yard_in_which_a_change_was_cut_off_is_backed_up_as_it_was_before_that_change()
    {
        Add(1);
        var (killed, twin) = (_folder["killed.offcuts"], _folder["twin.offcuts"]);
        HotJournal.Leave(Path, killed);
        File.Copy(killed, twin);
        File.Copy(killed + "-journal", twin + "-journal");
        HotJournal.Lies(killed).Should().BeTrue();

        var made = new Backups(killed).Make(BackupKind.ByHand, Today, Patience).Value.Path;
        var copied = Backups.CopyTo(twin, _folder["copy.offcuts"], Patience).Value;

        Dump(made).Should().Be(Dump(Path));
        Dump(copied).Should().Be(Dump(Path));
    }

    [Fact]
    public void A_file_in_which_a_change_was_cut_off_is_gone_back_to_as_it_was_before_and_stays_as_it_lies()
    {
        Add(1);
        var killed = _folder["killed.offcuts"];
        HotJournal.Leave(Path, killed);
        var before = Dump(Path);
        var (file, journal) = (File.ReadAllBytes(killed), File.ReadAllBytes(killed + "-journal"));
        using (var yard = Open()) yard.Undo().Ok.Should().BeTrue();
        Dump(Path).Should().NotBe(before);

        new Restoring(Path, Patience).From(killed, Today).Ok.Should().BeTrue();

        Dump(Path).Should().Be(before);
        File.ReadAllBytes(killed).Should().Equal(file);
        File.ReadAllBytes(killed + "-journal").Should().Equal(journal);
        Directory.GetFiles(_folder.Path).Should().BeEquivalentTo(Path, killed, killed + "-journal");
    }

    [Fact]
    public void What_is_no_whole_yard_is_not_gone_back_to()
    {
        Add(1);
        Add(2);
        File.WriteAllText(_folder["text"], "text");
        var torn = _folder["torn"];
        File.Copy(Backups.All()[0].Path, torn);
        using (var file = File.OpenWrite(torn)) file.SetLength(file.Length / 2);
        var before = File.ReadAllBytes(Path);

        Refusal(_folder["text"]).Should().StartWith($"{_folder["text"]} is not gone back to: ").And.EndWith("; the yard is as it was");
        Refusal(torn).Should().StartWith($"{torn} is not gone back to: ");
        Refusal(Path).Should().Be($"{Path} is the yard itself");
        File.ReadAllBytes(Path).Should().Equal(before);
        Directory.GetFiles(_folder.Path).Should().BeEquivalentTo(Path, torn, _folder["text"]);

        string Refusal(string source) => new Restoring(Path, Patience).From(source, Today).Fault.Sentence;
    }

    [Fact]
    public void Whoever_has_the_yard_open_while_it_is_gone_back_saves_nothing_and_is_told()
    {
        Add(1);
        Add(2);
        using var open = Open();
        open.Pieces().Should().HaveCount(2);

        new Restoring(Path, Patience).From(Backups.All()[0].Path, Today).Ok.Should().BeTrue();

        var change = () => open.Change("add a board", work => work.Add(Yards.Board(3)));
        change.Should().Throw<YardUnavailableException>().Where(moved => moved.Reason == UnavailableReason.Moved)
            .WithMessage($"{Path} was put elsewhere, removed or replaced while it was open; nothing of this change was saved: open the yard anew");
        using var yard = Open();
        yard.Pieces().Should().ContainSingle();
    }

    [UnixFact]
    public void A_yard_that_was_removed_or_put_elsewhere_while_it_was_open_takes_no_change()
    {
        Add(1);
        using var open = Open();
        open.Pieces().Should().ContainSingle();
        File.Move(Path, _folder["elsewhere"]);

        var change = () => open.Change("add a board", work => work.Add(Yards.Board(2)));

        change.Should().Throw<YardUnavailableException>().Which.Reason.Should().Be(UnavailableReason.Moved);
        File.Exists(Path).Should().BeFalse();
        using var moved = Yards.Open(_folder["elsewhere"]);
        moved.Pieces().Should().ContainSingle();
    }

    [Fact]
    public void A_yard_that_is_being_saved_is_not_gone_back_from()
    {
        Add(1);
        Add(2);
        using var other = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={Path};Pooling=False");
        other.Open();
        using var command = other.CreateCommand();
        command.CommandText = "BEGIN IMMEDIATE";
        command.ExecuteNonQuery();

        var back = () => new Restoring(Path, TimeSpan.FromMilliseconds(200)).From(Backups.All()[0].Path, Today);

        back.Should().Throw<YardUnavailableException>().Which.Reason.Should().Be(UnavailableReason.Locked);
    }

    [UnixFact]
    public void Keeping_a_yard_aside_as_it_lies_does_not_let_go_of_it()
    {
        Add(1);
        using var held = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={Path};Pooling=False");
        held.Open();
        using var command = held.CreateCommand();
        command.CommandText = "BEGIN IMMEDIATE";
        command.ExecuteNonQuery();
        if (TakenByAnother() is not { } free) return;
        free.Should().BeFalse();

        var kept = Backups.KeepAside(Today, out var reading);

        TakenByAnother().Should().BeFalse();
        reading.Dispose();
        using var aside = Yards.Open(kept.Value.Path);
        aside.Pieces().Should().ContainSingle();
    }

    public void Dispose() => _folder.Dispose();

    private YardFile Open() => YardFile.Open(Path, _clock, Patience);

    private void Add(int number)
    {
        using var yard = Open();
        yard.Do(change => change.Add(Yards.Board(number)));
        yard.BackupTrouble.Should().BeNull();
    }

    private static string Dump(string path)
    {
        using var yard = Yards.Open(path);
        return yard.Dump();
    }

    // Whether another program, sqlite3, could begin a change of the yard; null where there is none.
    private bool? TakenByAnother()
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo("sqlite3", [Path, "BEGIN IMMEDIATE"]) { RedirectStandardError = true })!;
            var error = process.StandardError.ReadToEnd();
            process.WaitForExit();
            if (process.ExitCode != 0) error.Should().Contain("database is locked");
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }
}
