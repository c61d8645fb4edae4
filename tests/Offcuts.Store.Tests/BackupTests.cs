using Offcuts.Core.Yard;

namespace Offcuts.Store.Tests;

/// <summary>Backups: how many stay, what is none, whose they are, and what is told where none can be made.</summary>
public sealed class BackupTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    private readonly TemporaryFolder _folder = new();
    private readonly StandingClock _clock = new();

    private string Path => _folder["yard.offcuts"];

    private Backups Backups => new(Path);

    private DateOnly Today => DateOnly.FromDateTime(_clock.Now.DateTime);

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

    public void Dispose() => _folder.Dispose();

    private YardFile Open() => YardFile.Open(Path, _clock, Patience);

    private void Add(int number)
    {
        using var yard = Open();
        yard.Do(change => change.Add(Yards.Board(number)));
        yard.BackupTrouble.Should().BeNull();
    }
}
