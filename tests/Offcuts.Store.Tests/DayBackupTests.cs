namespace Offcuts.Store.Tests;

/// <summary>The backup of a day: when it is copied and checked, and what becomes of a copy that was left.</summary>
public sealed class DayBackupTests : IDisposable
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

    public void Dispose() => _folder.Dispose();

    private YardFile Open() => YardFile.Open(Path, _clock, Patience);

    private void Add(int number)
    {
        using var yard = Open();
        yard.Do(change => change.Add(Yards.Board(number)));
        yard.BackupTrouble.Should().BeNull();
    }
}
