using Microsoft.Data.Sqlite;

namespace Offcuts.Tests.Commands;

/// <summary>What the program says no to, with which status, and what it leaves untouched.</summary>
public sealed class RefusalTests : IDisposable
{
    private readonly TryYard _yard = new();

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void A_yard_that_is_no_yard_ends_with_status_3_and_is_left_as_it_was()
    {
        File.WriteAllText(_yard.YardPath, "This is a letter, not a yard.\n");

        var told = _yard.Run("list");

        told.Status.Should().Be(3);
        told.Out.Should().BeEmpty();
        told.Error.Should().Contain(_yard.YardPath).And.NotContain("   at ");
        File.ReadAllText(_yard.YardPath).Should().Be("This is a letter, not a yard.\n");
    }

    [Fact]
    public void A_yard_from_a_newer_version_ends_with_status_3_and_is_left_as_it_was()
    {
        _yard.Must("add", "2x4 8'");
        using (var database = new SqliteConnection($"Data Source={_yard.YardPath};Pooling=False"))
        {
            database.Open();
            using var command = database.CreateCommand();
            command.CommandText = "PRAGMA user_version = 9999";
            command.ExecuteNonQuery();
        }

        var before = File.ReadAllBytes(_yard.YardPath);

        var told = _yard.Run("add", "2x4 8'");

        told.Status.Should().Be(3);
        told.Error.Should().Contain("newer");
        File.ReadAllBytes(_yard.YardPath).Should().Equal(before);
    }

    [Fact]
    public void A_folder_in_place_of_the_yard_ends_with_status_3()
    {
        Directory.CreateDirectory(_yard.YardPath);

        _yard.Run("list").Status.Should().Be(3);
    }

    [Fact]
    public void A_command_that_is_none_ends_with_status_2()
    {
        var told = _yard.Run("lisst");

        told.Status.Should().Be(2);
        told.Error.Should().Contain("lisst").And.Contain("see: offcuts --help");
    }

    [Theory]
    [InlineData("offcuts has no command \"lisst\"; list is the nearest; see: offcuts --help", "lisst")]
    [InlineData("offcuts has no command \"wal\"; wall is the nearest; see: offcuts --help", "wal", "list")]
    [InlineData("offcuts price has no command \"add\"; there are: list, set, remove, import, export; see: offcuts price --help", "price", "add", "2x4 8' 3.98")]
    [InlineData("offcuts label needs one of its commands: list, print, blank, layouts, check, preview, ruler, printer, unused, void; see: offcuts label --help", "label")]
    [InlineData("offcuts reserve needs <stage> and <codes> behind it; see: offcuts reserve --help", "reserve")]
    [InlineData("offcuts undo takes no \"twice\"; see: offcuts undo --help", "undo", "twice")]
    [InlineData("there is no option --matrial here; see: offcuts list --help", "list", "--matrial", "2x4")]
    [InlineData("there is no option --out here; see: offcuts label print --help", "label", "print", "--out", "labels.pdf")]
    [InlineData("\"gone\" is none of: used, scrapped, handed-over, missing, back; see: offcuts mark --help", "mark", "gone", "K7F3MXX")]
    [InlineData("--most: \"many\" is no whole number; see: offcuts history --help", "history", "--most", "many")]
    [InlineData("--take: \"two\" is no whole number; see: offcuts plan --help", "plan", "--compare", "--take", "two")]
    [InlineData("--time: \"soon\" is no number; see: offcuts plan --help", "plan", "--time", "soon")]
    public void What_the_command_line_does_not_understand_is_one_line_that_says_what_would_be_right(string line, params string[] arguments)
    {
        var told = _yard.Run(arguments);

        told.Status.Should().Be(2);
        told.Out.Should().BeEmpty();
        told.Error.Should().Be(line + "\n");
    }

    [Theory]
    [InlineData("b: 2x4 30 structual\n          ^\ncolumn 11: \"structual\" means nothing here; structural is the nearest word that does\n", "stage", "need", "walls", "b: 2x4 30 structual")]
    [InlineData("2x4 8' -3\n       ^\ncolumn 8: a price can't be negative\n", "price", "set", "2x4 8' -3")]
    [InlineData("there is no stage named wall; there is: walls\n", "stage", "show", "wall")]
    [InlineData("plan 1 counts no hardware out\n", "cut", "1", "--hardware")]
    [InlineData("the plan has no piece 9\n", "cut", "1", "--piece", "9")]
    [InlineData("no more of \"studs\" is planned on this piece; planned on it: 2 x block\n", "cut", "1", "--piece", "1", "--made", "studs")]
    [InlineData("--kerf: a length can't be negative\n", "plan", "--cuts", "cuts.csv", "--kerf", "-1in")]
    public void What_a_command_can_not_do_says_why_and_changes_nothing(string error, params string[] arguments)
    {
        _yard.Must("add", "2x4 8'");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "block: 2x4 30 x2");
        _yard.Must("plan", "--save");
        var before = _yard.Must("history").Out;

        var told = _yard.Run(arguments);

        told.Status.Should().Be(2);
        told.Error.Should().Be(error);
        _yard.Must("history").Out.Should().Be(before);
    }

    [Theory]
    [InlineData("code,material,length\n", "import")]
    [InlineData("stage,cut,material,length,qty\n", "stage", "import")]
    [InlineData("material,length,price\n", "price", "import")]
    public void A_file_without_a_row_is_refused(string text, params string[] command)
    {
        var told = _yard.Run([.. command, _yard.FileOf("empty.csv", text)]);

        told.Status.Should().Be(2);
        told.Error.Should().Be("empty.csv:1: no row stands below the header, so there is nothing to take over\n");
        File.Exists(_yard.YardPath).Should().BeFalse("nothing was saved");
    }

    [Fact]
    public void A_folder_is_no_file_and_a_file_no_folder()
    {
        _yard.Must("add", "2x4 8'");
        var file = _yard.FileOf("a.txt", "");

        _yard.Run("import", _yard.Folder).Error.Should().Be($"{_yard.Folder} is a folder; name a file\n");
        _yard.Run("export", _yard.Folder).Error.Should().Be($"{_yard.Folder} is a folder; name a file\n");
        _yard.Run("demo", "--into", file).Error.Should().Be($"{file} is a file; name a folder\n");
    }

    [Fact]
    public void An_option_that_is_none_is_not_taken_for_a_word()
    {
        var told = _yard.Run("list", "--matrial", "2x4");

        told.Status.Should().Be(2);
        told.Error.Should().Contain("there is no option --matrial here");
    }

    [Fact]
    public void A_file_that_is_not_there_ends_with_status_2()
    {
        var told = _yard.Run("import", Path.Combine(_yard.Folder, "nothing.csv"));

        told.Status.Should().Be(2);
        told.Error.Should().Be($"there is no file {Path.Combine(_yard.Folder, "nothing.csv")}\n");
    }

    [Fact]
    public void A_csv_that_is_not_utf8_is_refused()
    {
        var path = Path.Combine(_yard.Folder, "latin.csv");
        File.WriteAllBytes(path, [.. "code,material,length,place\n,2x4,8',caf"u8, 0xE9, .. "\n"u8]);

        var told = _yard.Run("import", path);

        told.Status.Should().Be(2);
        told.Error.Should().StartWith("latin.csv:2: ").And.Contain("UTF-8");
    }

    [Fact]
    public void Two_pieces_with_one_code_are_refused_with_their_lines()
    {
        _yard.Must("label", "blank", "1", Path.Combine(_yard.Folder, "b.pdf"));
        var code = YardCommandTests.Code(_yard, 0, "blank-codes");
        var file = _yard.FileOf("stock.csv", $"code,material,length\n{code},2x4,8'\n{code},2x4,9'\n");

        var told = _yard.Run("import", file);

        told.Status.Should().Be(2);
        told.Error.Should().StartWith("stock.csv:3: ").And.Contain("line 2");
    }

    [Theory]
    [InlineData("2x4 0")]
    [InlineData("2x4 -8'")]
    [InlineData("2x4 5000'")]
    [InlineData("2x4 8' bad 90..100")]
    [InlineData("2x7 8'")]
    [InlineData("2x4")]
    [InlineData("2x4 8' x0")]
    [InlineData("2x4 8' x5000")]
    public void Pieces_that_cannot_be_are_refused(string line)
    {
        var told = _yard.Run("add", line);

        told.Status.Should().Be(2);
        told.Error.Should().Contain("column ");
        File.Exists(_yard.YardPath).Should().BeFalse("nothing was saved");
    }

    [Fact]
    public void A_cut_longer_than_anything_is_unfilled_with_a_reason()
    {
        _yard.Must("add", "2x4 8'");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "ridge: 2x4 40'");

        var told = _yard.Run("plan");

        told.Status.Should().Be(1);
        told.Out.Should().Contain("1 x ridge (walls): ");
    }

    [Fact]
    public void A_stage_is_found_by_its_name_in_either_case_and_never_made_twice()
    {
        _yard.Must("stage", "new", "Walls");

        _yard.Must("stage", "need", "walls", "stud: 2x4 8'").Lines[^1].Should().Be("Added 1 need to Walls");
        _yard.Run("stage", "new", "WALLS").Error.Should().Be("there is a stage named WALLS already\n");
    }

    [Fact]
    public void A_label_file_that_cannot_be_written_loses_no_label()
    {
        _yard.Must("add", "2x4 8' x2");

        var told = _yard.Run("label", "print", Path.Combine(_yard.Folder, "no-such-folder", "labels.pdf"));

        told.Status.Should().Be(2);
        told.Error.Should().NotContain("   at ");
        _yard.Must("label", "list").Lines[^1].Should().StartWith("2 labels to print");
    }

    [Fact]
    public void Undo_with_nothing_to_take_back_says_so()
    {
        var told = _yard.Run("undo");

        told.Status.Should().Be(2);
        told.Error.Should().NotBeEmpty();
    }
}
