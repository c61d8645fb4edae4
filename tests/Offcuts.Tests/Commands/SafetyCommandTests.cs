using Microsoft.Data.Sqlite;

namespace Offcuts.Tests.Commands;

/// <summary>Backups, going back and checking, as a person types them.</summary>
public sealed class SafetyCommandTests : IDisposable
{
    private readonly TryYard _yard = new();

    public void Dispose() => _yard.Dispose();

    private string Folder => _yard.YardPath + ".backups";

    [Fact]
    public void A_backup_is_made_listed_and_gone_back_to()
    {
        _yard.Must("add", "2x4 8'");
        _yard.Must("backup").Out.Should().Be($"Backup 1 is made and checked: {Folder}/0001-2026-06-01-by-hand.offcuts\n");
        _yard.Must("add", "2x4 9'");

        var listed = _yard.Must("backup", "--list").Lines;
        listed[0].Should().Match("No  Day*Size  Made*");
        listed[1].Should().Match(" 2  2026-06-01  * before the first change of the day*");
        listed[2].Should().Match(" 1  2026-06-01  * asked for*");

        _yard.Must("restore", "1").Out.Should().Be($"The yard is as it was in {Folder}/0001-2026-06-01-by-hand.offcuts; what was there before is kept as backup 3\n");
        _yard.Must("list").Lines[^1].Should().Be("1 piece, 0 bins");
        _yard.Must("restore", "3");
        _yard.Must("list").Lines[^1].Should().Be("2 pieces, 0 bins");
    }

    [Fact]
    public void A_backup_goes_into_a_file_of_ones_own_but_over_none()
    {
        _yard.Must("add", "2x4 8'");
        var file = Path.Combine(_yard.Folder, "stick.offcuts");

        _yard.Must("backup", file).Out.Should().Be($"Backup is made and checked: {file}\n");

        var again = _yard.Run("backup", file);
        (again.Status, again.Error).Should().Be((2, $"{file} is there already; a backup is never written over anything\n"));
        _yard.Must("backup", "--list").Out.Should().Be("No backup yet; the first change of tomorrow makes one, and offcuts backup makes one now.\n");
        _yard.Must("restore", file);
    }

    [Fact]
    public void Going_back_is_asked_about_where_a_person_types()
    {
        _yard.Must("add", "2x4 8'");
        _yard.Must("backup");

        _yard.AtTerminal("\n", "restore", "1").Out.Should().EndWith("[y/N] Nothing done.\n");
        _yard.AtTerminal("y\n", "restore", "1").Out.Should().Contain("The yard is as it was in ");
    }

    [Theory]
    [InlineData("there is no backup and no file \"77\"; offcuts backup --list shows what there is\n", "restore", "77")]
    [InlineData("say which: the number of a backup, or a file; offcuts backup --list shows what there is\n", "restore")]
    public void What_can_not_be_gone_back_to_is_refused(string sentence, params string[] command)
    {
        _yard.Must("add", "2x4 8'");

        var told = _yard.Run(command);

        (told.Status, told.Error).Should().Be((2, sentence));
    }

    [Fact]
    public void Without_a_yard_there_is_nothing_to_back_up()
    {
        var told = _yard.Run("backup");

        (told.Status, told.Error).Should().Be((2, $"there is no yard at {_yard.YardPath} to make a backup of\n"));
        Directory.GetFileSystemEntries(_yard.Folder).Should().BeEmpty();
    }

    [Fact]
    public void A_whole_yard_is_called_whole_and_a_spoilt_one_is_told_and_saved()
    {
        _yard.Must("add", "2x4 8', 9'");
        _yard.Must("check").Out.Should().Be("Whole: 2 pieces, gone or not, and 1 entry of history, each row as the history left it.\n");
        _yard.Must("backup");
        ByHand("DROP TRIGGER piece_changed; UPDATE piece SET place = 'elsewhere' WHERE id = 1");

        var told = _yard.Run("check");
        told.Status.Should().Be(3);
        told.Lines.Should().Equal(
            "the file's own rule piece_changed is gone",
            "row 1 of piece is not as the history left it: place is another",
            "2 things wrong. offcuts check --save FOLDER saves all that can be read; offcuts restore 1 goes back to the backup of 2026-06-01");
        _yard.Run("check", "--json").Out.Should().Contain("\"whole\": false").And.Contain("row 1 of piece");

        var folder = Path.Combine(_yard.Folder, "rescued");
        _yard.Must("check", "--save", folder).Out.Should().StartWith("Saved ").And.EndWith($"rows into {folder}/saved.offcuts\n");
        _yard.Must("restore", Path.Combine(folder, "saved.offcuts"));
        _yard.Must("check").Out.Should().StartWith("Whole: 2 pieces");
        _yard.Must("list").Out.Should().Contain("elsewhere");
    }

    [Fact]
    public void A_backup_that_could_not_be_made_is_told_beside_what_was_saved()
    {
        _yard.Must("add", "2x4 8'");
        File.WriteAllText(Folder, "in the way");

        var told = _yard.Run("add", "2x4 9'");

        told.Status.Should().Be(0);
        told.Error.Should().Be($"no backup was made today: the disk of {Folder} does not answer as it should; what you do is saved all the same\n");
        _yard.Must("list").Lines[^1].Should().Be("2 pieces, 0 bins");
    }

    private void ByHand(string sql)
    {
        using var connection = new SqliteConnection($"Data Source={_yard.YardPath};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    [Fact]
    public void A_yard_in_a_folder_of_the_network_is_told_to_be_one()
    {
        _yard.Must("add", "2x4 8'");
        Store.YardLocation.IsOnNetwork(_yard.YardPath, _ => DriveType.Network).Should().BeTrue();
        Store.YardLocation.IsOnNetwork(Path.Combine(_yard.Folder, "not", "there"), _ => DriveType.Fixed).Should().BeFalse();
        Store.YardLocation.IsOnNetwork(@"\\server\share\yard.offcuts", _ => throw new ArgumentException("no drive")).Should().BeTrue();
        Store.YardLocation.IsOnNetwork(@"\\?\UNC\server\share\yard.offcuts").Should().BeTrue();
        Store.YardLocation.IsOnNetwork(@"\\?\C:\yard.offcuts", _ => DriveType.Fixed).Should().BeFalse();
        var check = new UseCases.CheckYard(_yard.YardPath, _yard.Clock, onNetwork: true);

        check.Told(check.Check()).Last().Should().Be(
            $"{_yard.YardPath} lies in a folder of the network: where its locks don't hold, two programs at once can spoil it; work in it from one machine at a time, and keep backups on a disk of your own with: offcuts backup FILE");
    }
}
