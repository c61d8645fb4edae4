using System.Security.Cryptography;
using Microsoft.Data.Sqlite;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Tests;

/// <summary>What opens, what is refused, and that what is refused stays as it is.</summary>
public sealed class OpeningTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private string Path => _folder["yard.offcuts"];

    [Fact]
    public void A_missing_yard_is_made_with_its_folders_and_the_usual_settings()
    {
        var deep = System.IO.Path.Combine(_folder.Path, "a", "b", "yard.offcuts");

        using var yard = Yards.Open(deep);

        yard.Path.Should().Be(deep);
        yard.Pieces().Should().BeEmpty();
        yard.History().Should().BeEmpty();
        yard.ChangeNumber.Should().Be(0);
        yard.Settings().Should().BeEquivalentTo(YardSettings.Usual);
    }

    [Fact]
    public void A_yard_that_nothing_was_saved_in_is_no_file()
    {
        using (var yard = Yards.Open(Path))
        {
            yard.Refusals(change => change.AddStage(new Stage("", null, [], []))).Should().ContainSingle();
            yard.Stages().Should().BeEmpty();
            Directory.GetFileSystemEntries(_folder.Path).Should().BeEmpty();

            yard.Do(change => change.Add(Yards.Board(1)));
            yard.Pieces().Should().ContainSingle();
        }

        Yards.Ask(Path, "SELECT count(*) FROM piece").Should().Be(1L);
    }

    [Fact]
    public void A_yard_that_another_program_made_meanwhile_is_the_one_that_is_read_and_changed()
    {
        using var first = Yards.Open(Path);
        first.Pieces().Should().BeEmpty();
        using (var second = Yards.Open(Path)) second.Do(change => change.Add(Yards.Board(1)));

        first.ChangeNumber.Should().Be(1);
        first.ChangeSince(0, "add a board", change => change.Add(Yards.Board(2))).Fault.Sentence.Should().StartWith("another program changed the yard");
        first.Do(change => change.Add(Yards.Board(2)));
        first.Pieces().Should().HaveCount(2);
    }

    [Fact]
    public void An_empty_file_is_a_yard_with_nothing_in_it()
    {
        File.WriteAllBytes(Path, []);

        using var yard = Yards.Open(Path);

        yard.Pieces().Should().BeEmpty();
    }

    [Fact]
    public void The_file_tells_what_it_is_and_nothing_lies_beside_it()
    {
        using (var yard = Yards.Open(Path)) yard.Do(change => change.Add(Yards.Board(1)));

        Yards.Ask(Path, "PRAGMA application_id").Should().Be(0x4F464354L);
        Yards.Ask(Path, "PRAGMA user_version").Should().Be(14L);
        Yards.Ask(Path, "PRAGMA journal_mode").Should().Be("delete");
        Yards.Ask(Path, "PRAGMA integrity_check").Should().Be("ok");
        Directory.GetFiles(_folder.Path).Should().Equal(Path);
    }

    [Fact]
    public void A_yard_whose_table_has_a_column_by_another_name_is_damaged_and_no_failure_of_the_program()
    {
        using (var yard = Yards.Open(Path)) yard.Do(change => change.Add(Yards.Board(1)));
        Yards.ByHand(Path, "PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = replace(sql, 'wall   INTEGER', 'wbll   INTEGER') WHERE name = 'wall_plan'");

        ((Action)(() => Yards.Open(Path).WallPlans())).Should().Throw<YardUnavailableException>().Which.Reason.Should().Be(UnavailableReason.Damaged);
    }

    [Fact]
    public void A_yard_is_written_through_to_the_disk_with_its_rules_on()
    {
        using var yard = Yards.Open(Path);

        long Asked(string pragma)
        {
            using var command = yard.Database.Connection.CreateCommand();
            command.CommandText = $"PRAGMA {pragma}";
            return (long)command.ExecuteScalar()!;
        }

        Asked("synchronous").Should().Be(3, "3 is EXTRA");
        Asked("foreign_keys").Should().Be(1);
        Asked("busy_timeout").Should().Be(1000);
        YardFile.UsualPatience.Should().Be(TimeSpan.FromSeconds(5));
    }

    [Fact]
    public void A_copy_made_while_nobody_writes_is_a_whole_yard()
    {
        using var yard = Yards.Open(Path);
        yard.Do(change => change.Add(Yards.Board(1)));

        File.Copy(Path, _folder["copy"]);

        using var copy = Yards.Open(_folder["copy"]);
        copy.Dump().Should().Be(yard.Dump());
    }

    [Fact]
    public void A_yard_of_a_newer_version_is_refused_and_left_untouched()
    {
        using (var yard = Yards.Open(Path)) yard.Do(change => change.Add(Yards.Board(1)));
        Yards.ByHand(Path, "PRAGMA user_version = 15");

        Refused(UnavailableReason.NewerVersion)
            .Should().Be($"{Path} is of version 15, written by a newer Offcuts than this one, which knows versions up to 14; it was left as it is");
    }

    [Fact]
    public void A_text_file_is_refused_and_left_untouched()
    {
        File.WriteAllText(Path, string.Concat(Enumerable.Repeat("code,material,length\n", 200)));

        Refused(UnavailableReason.NotAYard).Should().Be($"{Path} is no yard: its first bytes are those of some other file; it was left as it is");
    }

    [Fact]
    public void A_short_text_file_is_refused_and_left_untouched()
    {
        File.WriteAllText(Path, "2x4");

        Refused(UnavailableReason.NotAYard);
    }

    [Fact]
    public void The_database_of_another_program_is_refused_and_left_untouched()
    {
        Yards.ByHand(Path, "CREATE TABLE other (x); INSERT INTO other VALUES (1)");

        Refused(UnavailableReason.NotAYard).Should().Be($"{Path} is no yard: it is a database of some other program; it was left as it is");
    }

    [Fact]
    public void A_yard_cut_short_is_refused_and_left_untouched()
    {
        FilledYard();
        using (var file = File.OpenWrite(Path)) file.SetLength(file.Length / 2);

        Refused(UnavailableReason.Damaged);
    }

    [Fact]
    public void A_yard_with_a_spoilt_page_is_refused_and_left_untouched()
    {
        FilledYard();
        using (var file = File.OpenWrite(Path))
        {
            file.Position = file.Length - 3 * 4096;
            file.Write(new byte[4096]);
        }

        Refused(UnavailableReason.Damaged).Should().StartWith($"{Path} is damaged (").And.EndWith(") and was left as it is; offcuts check tells more, offcuts restore goes back to a backup");
    }

    [Fact]
    public void A_yard_whose_words_were_spoilt_by_hand_is_called_damaged_when_read()
    {
        FilledYard();
        Yards.ByHand(Path, "PRAGMA ignore_check_constraints = ON; DROP TRIGGER piece_changed; UPDATE piece SET state = 'flown away' WHERE id = 1");

        using var yard = Yards.Open(Path);

        yard.Invoking(open => open.Pieces(onHandOnly: false)).Should().Throw<YardUnavailableException>()
            .Which.Message.Should().Contain("\"flown away\" is no PieceState");
    }

    [Fact]
    public void A_folder_is_no_file()
    {
        Directory.CreateDirectory(Path);

        var open = () => Yards.Open(Path);

        open.Should().Throw<YardUnavailableException>().Where(refused => refused.Reason == UnavailableReason.Unreadable)
            .WithMessage($"{Path} can't be opened: it is a folder");
    }

    [Fact]
    public void A_yard_below_a_file_can_not_be_made()
    {
        File.WriteAllText(_folder["file"], "");

        var open = () => Yards.Open(System.IO.Path.Combine(_folder["file"], "yard.offcuts"));

        open.Should().Throw<YardUnavailableException>().Where(refused => refused.Reason == UnavailableReason.Unreadable);
    }

    [Fact]
    public void A_yard_marked_read_only_is_refused_and_left_untouched()
    {
        FilledYard();
        File.SetAttributes(Path, FileAttributes.ReadOnly);

        Refused(UnavailableReason.ReadOnly).Should().Be($"{Path} or its folder may only be read, not written; nothing was changed");
        File.SetAttributes(Path, FileAttributes.Normal);
    }

    [UnixFact]
    public void A_yard_that_somebody_else_may_only_read_is_refused()
    {
        FilledYard();
        Unix.Allow(_folder.Path, "755");
        Unix.Allow(Path, Environment.IsPrivilegedProcess ? "644" : "444");

        Refusal(() => Unix.AsNobody(() => Yards.Open(Path))).Reason.Should().Be(UnavailableReason.ReadOnly);
    }

    [UnixFact]
    public void A_yard_that_may_not_be_read_is_refused()
    {
        FilledYard();
        Unix.Allow(_folder.Path, "755");
        Unix.Allow(Path, "000");

        Refusal(() => Unix.AsNobody(() => Yards.Open(Path))).Reason.Should().Be(UnavailableReason.Unreadable);
        Unix.Allow(Path, "644");
    }

    [UnixFact]
    public void A_change_in_a_folder_that_may_not_be_written_is_refused_and_loses_nothing()
    {
        FilledYard();
        var before = Hash();
        Unix.Allow(Path, "666");
        Unix.Allow(_folder.Path, "555");

        var refusal = Refusal(() => Unix.AsNobody(() =>
        {
            var yard = Yards.Open(Path);
            yard.Change("add a board", change => change.Add(Yards.Board(999)));
            return yard;
        }));

        Unix.Allow(_folder.Path, "755");
        refusal.Reason.Should().Be(UnavailableReason.ReadOnly);
        Hash().Should().Be(before);
    }

    [Fact]
    public void A_yard_that_another_program_keeps_locked_is_refused_once_patience_ends()
    {
        FilledYard();
        using var other = Holding("BEGIN EXCLUSIVE");

        Refusal(() => Yards.Open(Path)).Message.Should().Be($"{Path} is in use by another program; nothing was changed, try again in a moment");
    }

    [Fact]
    public void A_change_against_a_lock_is_refused_and_goes_through_later()
    {
        FilledYard();
        using var yard = Yards.Open(Path);
        var before = yard.Dump();

        using (Holding("BEGIN IMMEDIATE"))
        {
            Refusal(() => yard.Change("add a board", change => change.Add(Yards.Board(999)))).Reason.Should().Be(UnavailableReason.Locked);
            yard.Dump().Should().Be(before);
        }

        yard.Do(change => change.Add(Yards.Board(999)));
        yard.Piece(Yards.CodeNumber(999)).Should().NotBeNull();
    }

    // Simulated: the database is told that it may not grow, and then answers as it does on a full disk.
    [Fact]
    public void A_change_for_which_there_is_no_room_is_refused_whole_and_the_yard_stays_whole()
    {
        FilledYard();
        using var yard = Yards.Open(Path);
        var before = yard.Dump();
        yard.Database.Execute("PRAGMA max_page_count = 1");

        var refusal = Refusal(() => yard.Change("add many", change =>
        {
            for (var i = 0; i < 1000; i++) change.Add(Yards.Board(1000 + i));
        }));

        refusal.Reason.Should().Be(UnavailableReason.DiskFull);
        refusal.Message.Should().Be($"there is no room left to save in {Path}; nothing of this change was saved, all that was saved before is still there");
        yard.Dump().Should().Be(before);
        yard.Database.Execute("PRAGMA max_page_count = 1000000");
        yard.Do(change => change.Add(Yards.Board(999)));
        yard.Dispose();
        Yards.Ask(Path, "PRAGMA integrity_check").Should().Be("ok");
    }

    [Fact]
    public void A_change_cut_off_by_a_power_failure_is_rolled_back_by_the_next_who_opens()
    {
        FilledYard();
        var torn = _folder["torn"];
        string before;
        using (var yard = Yards.Open(Path))
        {
            before = yard.Dump();
            // A cache of ten pages makes the database write into the file long before the change is whole.
            yard.Database.Execute("PRAGMA cache_size = 10");
            yard.Do(change =>
            {
                for (var i = 0; i < 500; i++) change.Add(Yards.Board(1000 + i));
                File.Copy(Path, torn);
                File.Copy(Path + "-journal", torn + "-journal");
            });
        }

        using var reopened = Yards.Open(torn);

        reopened.Dump().Should().Be(before);
        File.Exists(torn + "-journal").Should().BeFalse();
    }

    public void Dispose() => _folder.Dispose();

    private void FilledYard()
    {
        using var yard = Yards.Open(Path);
        yard.Do(change =>
        {
            for (var i = 0; i < 100; i++) change.Add(Yards.Board(i));
        });
    }

    private SqliteConnection Holding(string sql)
    {
        var other = new SqliteConnection($"Data Source={Path};Pooling=False");
        other.Open();
        using var command = other.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
        return other;
    }

    private string Refused(UnavailableReason reason)
    {
        var before = Hash();
        var files = Directory.GetFiles(_folder.Path);
        var refusal = Refusal(() => Yards.Open(Path));
        refusal.Reason.Should().Be(reason);
        refusal.YardPath.Should().Be(Path);
        Hash().Should().Be(before);
        Directory.GetFiles(_folder.Path).Should().Equal(files);
        return refusal.Message;
    }

    private string Hash() => Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(Path)));

    private static YardUnavailableException Refusal<T>(Func<T> work)
    {
        var act = () => work();
        return act.Should().Throw<YardUnavailableException>().Which;
    }
}
