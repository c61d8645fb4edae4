using System.Diagnostics;
using Offcuts.Core.Faults;

namespace Offcuts.Store.Tests;

/// <summary>Going back to a backup: what is put in place, what is kept, and what is refused.</summary>
public sealed class RestoringTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    private readonly TemporaryFolder _folder = new();
    private readonly StandingClock _clock = new();

    private string Path => _folder["yard.offcuts"];

    private Backups Backups => new(Path);

    private DateOnly Today => DateOnly.FromDateTime(_clock.Now.DateTime);

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
