using System.Globalization;
using System.Security.Cryptography;

namespace Offcuts.Store.Tests;

/// <summary>
/// Released/version_N.sql holds a yard as version N of the file left it, written out as SQL and never changed once N is
/// released. Every later version must bring each of them to the same yard.
/// </summary>
public sealed class MigrationTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    private readonly TemporaryFolder _folder = new();

    private string Path => _folder["yard.offcuts"];

    public static TheoryData<string> Released => [.. ReleasedFiles.Select(file => System.IO.Path.GetFileName(file))];

    private static string ReleasedFolder => System.IO.Path.Combine(AppContext.BaseDirectory, "Released");

    private static string[] ReleasedFiles => Directory.GetFiles(ReleasedFolder, "version_*.sql");

    [Fact]
    public void Every_version_has_a_yard_to_be_migrated_from()
    {
        ReleasedFiles.Select(file => int.Parse(System.IO.Path.GetFileNameWithoutExtension(file)[8..], CultureInfo.InvariantCulture)).Order()
            .Should().Equal(Migration.All.Select(step => step.Version));
        Migration.All.Select(step => step.Version).Should().Equal(Enumerable.Range(1, Migration.All.Count));
    }

    [Theory]
    [MemberData(nameof(Released))]
    public void A_yard_of_an_earlier_version_becomes_the_same_as_a_new_one_with_what_it_held(string file)
    {
        Make(file);

        using var yard = Yards.Open(Path);
        using var fresh = Yards.Open(_folder["fresh"]);

        Schema(yard).Should().Be(Schema(fresh));
        yard.Dump().Should().Be(File.ReadAllText(System.IO.Path.Combine(ReleasedFolder, "yard.txt")).TrimEnd());
        Yards.Ask(Path, "PRAGMA integrity_check").Should().Be("ok");
        Yards.Ask(Path, "SELECT count(*) FROM pragma_foreign_key_check").Should().Be(0L);
    }

    [Theory]
    [MemberData(nameof(Released))]
    public void A_yard_of_an_earlier_version_can_be_undone_down_to_nothing(string file)
    {
        Make(file);
        using var yard = Yards.Open(Path);
        using var fresh = Yards.Open(_folder["fresh"]);

        while (yard.NextToUndo() is not null) yard.Undo().Ok.Should().BeTrue();

        yard.Dump().Should().Be(fresh.Dump());
    }

    [Fact]
    public void A_migration_makes_a_backup_of_the_yard_as_it_was_first()
    {
        var before = Made();

        using (var yard = YardFile.Open(Path, Yards.Clock, Patience, WithNextStep("ALTER TABLE piece ADD COLUMN colour TEXT NOT NULL DEFAULT ''")))
            yard.Piece(Yards.CodeNumber(1)).Should().NotBeNull();

        Yards.Ask(Path, "PRAGMA user_version").Should().Be((long)Migration.All.Count + 1);
        var backup = new Backups(Path).All().First(one => one.Kind == BackupKind.Upgrade);
        using (var old = Yards.Open(backup.Path)) old.Dump().Should().Be(before);
        Directory.GetFiles(_folder.Path).Should().Equal(Path);
    }

    [Fact]
    public void Without_a_backup_there_is_no_migration()
    {
        Made();
        var before = Hash(Path);
        var folder = new Backups(Path).Folder;
        Directory.Delete(folder, recursive: true);
        File.WriteAllText(folder, "in the way");

        var open = () => YardFile.Open(Path, Yards.Clock, Patience, WithNextStep("CREATE TABLE more (id INTEGER PRIMARY KEY)"));

        open.Should().Throw<YardUnavailableException>()
            .WithMessage($"{Path} is of an older version and was left so, since no backup of it could be made first: the disk of {folder} does not answer as it should");
        Hash(Path).Should().Be(before);
    }

    [Fact]
    public void A_migration_that_fails_half_way_changes_nothing()
    {
        Made();
        var before = Hash(Path);

        var open = () => YardFile.Open(Path, Yards.Clock, Patience, WithNextStep("CREATE TABLE more (id INTEGER PRIMARY KEY); INSERT INTO no_such_table VALUES (1)"));

        // To whoever opens it, tables that a step does not find are those of no yard; what the step stumbled over stands within.
        open.Should().Throw<YardUnavailableException>().WithInnerException<Microsoft.Data.Sqlite.SqliteException>().WithMessage("*no_such_table*");
        Hash(Path).Should().Be(before);
        using var yard = Yards.Open(Path);
        yard.Piece(Yards.CodeNumber(1)).Should().NotBeNull();
    }

    [Fact]
    public void A_program_that_has_a_yard_open_writes_no_more_once_a_newer_one_has_migrated_it()
    {
        using var old = Yards.Open(Path);
        old.Do(change => change.Add(Yards.Board(1)));
        YardFile.Open(Path, Yards.Clock, Patience, WithNextStep("CREATE TABLE more (id INTEGER PRIMARY KEY)")).Dispose();

        var write = () => old.Change("add a board", change => change.Add(Yards.Board(2)));

        write.Should().Throw<YardUnavailableException>().Which.Reason.Should().Be(UnavailableReason.NewerVersion);
        Yards.Ask(Path, "SELECT count(*) FROM history").Should().Be(1L);
    }

    [Fact]
    public void An_entry_from_before_a_migration_can_be_taken_back_after_it()
    {
        Made();
        using var yard = YardFile.Open(Path, Yards.Clock, Patience, WithNextStep("ALTER TABLE piece ADD COLUMN colour TEXT NOT NULL DEFAULT 'grey'"));

        yard.Undo().Value.What.Should().Be("took back: changed the yard");

        yard.Piece(Yards.CodeNumber(1))!.Place.Should().Be("");
    }

    public void Dispose() => _folder.Dispose();

    private void Make(string file)
    {
        Yards.ByHand(Path, "PRAGMA foreign_keys = OFF;" + File.ReadAllText(System.IO.Path.Combine(ReleasedFolder, file)));
    }

    private string Made()
    {
        using var yard = Yards.Open(Path);
        yard.Do(change => change.Add(Yards.Board(1)));
        yard.Do(change => change.Update(Yards.Board(1) with { Place = "north rack" }));
        return yard.Dump();
    }

    private static Migration[] WithNextStep(string sql) => [.. Migration.All, new Migration(Migration.All.Count + 1, sql)];

    private static string Hash(string path) => Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(path)));

    private static string Schema(YardFile yard)
    {
        using var command = yard.Database.Connection.CreateCommand();
        command.CommandText = "SELECT coalesce(group_concat(type || ' ' || name || ' ' || coalesce(sql, ''), char(10) ORDER BY type, name), '') FROM sqlite_schema";
        return (string)command.ExecuteScalar()!;
    }
}
