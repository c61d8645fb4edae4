using Offcuts.Core.Yard;

namespace Offcuts.Store.Tests;

/// <summary>What a check finds, each fault put in by hand behind the file's own rules; and what is saved from a damaged file.</summary>
public sealed class CheckTests : IDisposable
{
    private const string Anyhow = "PRAGMA foreign_keys = OFF; PRAGMA ignore_check_constraints = ON;";
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    private readonly TemporaryFolder _folder = new();

    public CheckTests()
    {
        using var yard = Yards.Open(Path);
        yard.Do(Samples.Everything);
    }

    private string Path => _folder["yard.offcuts"];

    public static TheoryData<string, string> Wrongs => new()
    {
        { "DROP TRIGGER piece_added", "the file's own rule piece_added is gone" },
        { "DROP TRIGGER history_stays; CREATE TRIGGER history_stays BEFORE DELETE ON history BEGIN SELECT 1; END", "the file's own rule history_stays was changed" },
        { "CREATE TABLE more (id INTEGER PRIMARY KEY)", "the file has a part that is none of ours: more" },
        { "DROP TRIGGER piece_changed; UPDATE piece SET place = 'elsewhere' WHERE id = 1", "row 1 of piece is not as the history left it: place is another" },
        { "DROP TRIGGER ledger_changed; UPDATE ledger SET all_new_cents = 99 WHERE id = 1", "row 1 of ledger is not as the history left it: all_new_cents is another" },
        { "DROP TRIGGER ledger_removed; DELETE FROM ledger WHERE id = 1", "row 1 of ledger is gone, but the history has it" },
        { "DROP TRIGGER bin_added; INSERT INTO bin (code, hardware, quantity) VALUES ('2222222', 'nail', 1)", "row 2 of bin is there, but the history knows nothing of it" },
        { "DROP TRIGGER bin_added; INSERT INTO bin (code, hardware, quantity) VALUES ('2222222', 'nail', 1)", "the code 2222222 has a wrong check character" },
        { "DROP TRIGGER bin_changed; UPDATE bin SET quantity = -1", "bin {bin} holds less than nothing" },
        { "DROP TRIGGER bin_code_stays; DROP TRIGGER bin_changed; UPDATE bin SET code = (SELECT code FROM piece WHERE id = 1)", "the code {long} belongs to two things" },
        { "DROP TRIGGER piece_family_when_changed; DROP TRIGGER piece_changed; UPDATE piece SET length_320ths_mm = 300000 WHERE id = 1", "more was cut from {long} than there is of it" },
        { "DROP TRIGGER piece_is_not_its_own_ancestor; DROP TRIGGER piece_family_when_changed; DROP TRIGGER piece_changed; UPDATE piece SET cut_from = (SELECT code FROM piece WHERE id = 2) WHERE id = 1", "{long} is cut from itself" },
        { "DROP TRIGGER piece_changed; UPDATE piece SET reserved_for = NULL WHERE state = 'reserved'", "{rest} is reserved, but for no stage, or is not reserved and kept for one" },
        { "DROP TRIGGER piece_changed; UPDATE piece SET reserved_for = 99 WHERE state = 'reserved'", "row 2 of piece speaks of something in stage that is not there" },
        { "DROP TRIGGER label_queue_added; INSERT INTO label_queue (code) VALUES ('2222222')", "a label waits for 2222222, which nothing has" },
        { "INSERT INTO open_entry VALUES (1, 1)", "a change was left open" },
        { "INSERT INTO history VALUES (2, '2026-11-25T08:00:00', 'x', NULL), (3, '2026-11-25T08:00:00', 'x', NULL); DROP TRIGGER history_stays; DELETE FROM history WHERE number = 2", "entry 2 of the history is missing" },
        { "INSERT INTO change (entry, table_name, row_id, before) VALUES (9, 'piece', 77, '{}')", "what entry 9 of the history did is there, but not the entry" },
        { "DROP TRIGGER plan_step_removed; DELETE FROM plan_step WHERE id = 1", "plan 1 has another number of steps than of pieces" },
        { "DROP TRIGGER piece_changed; UPDATE piece SET state = 'flown away' WHERE id = 3", "the pieces can't be understood: \"flown away\" is no PieceState" },
        { "DROP TRIGGER setting_changed; UPDATE setting SET species = 'oak', specific_gravity = 'heavy'", "the settings can't be understood: " },
    };

    [Fact]
    public void A_whole_yard_is_called_whole()
    {
        var found = YardCheck.Of(Path, Patience);

        found.Wrong.Select(fault => fault.Sentence).Should().BeEmpty();
        (found.Version, found.Pieces, found.Entries, found.Old).Should().Be((Migration.All.Count, 3, 1, false));
    }

    [Theory]
    [MemberData(nameof(Wrongs))]
    public void What_is_wrong_is_named_and_the_file_left_as_it_is(string sql, string sentence)
    {
        Yards.ByHand(Path, Anyhow + sql);
        var before = File.ReadAllBytes(Path);

        var found = YardCheck.Of(Path, Patience).Wrong.Select(fault => fault.Sentence).ToArray();

        var wanted = sentence.Replace("{long}", Samples.Long.Text, StringComparison.Ordinal).Replace("{rest}", Samples.Rest.Text, StringComparison.Ordinal).Replace("{bin}", Samples.Bin.Text, StringComparison.Ordinal);
        found.Should().Contain(one => one.StartsWith(wanted, StringComparison.Ordinal));
        File.ReadAllBytes(Path).Should().Equal(before);
    }

    [Fact]
    public void Undone_and_changed_rows_are_as_the_history_left_them()
    {
        using (var yard = Yards.Open(Path))
        {
            yard.Do(change => change.Update(Samples.LongBoard with { Place = "south rack" }));
            yard.Do(change => change.Put(new Bin(Samples.Bin, Yards.Hardware("snap tie", "box"), 1)));
            yard.Undo().Ok.Should().BeTrue();
            yard.Undo().Ok.Should().BeTrue();
            yard.Redo().Ok.Should().BeTrue();
        }

        YardCheck.Of(Path, Patience).Wrong.Should().BeEmpty();
    }

    [Theory]
    [MemberData(nameof(MigrationTests.Released), MemberType = typeof(MigrationTests))]
    public void A_yard_of_every_version_is_whole_before_and_after_it_is_brought_to_this_one(string file)
    {
        var path = _folder["old.offcuts"];
        Yards.ByHand(path, "PRAGMA foreign_keys = OFF;" + File.ReadAllText(System.IO.Path.Combine(AppContext.BaseDirectory, "Released", file)));
        YardCheck.Of(path, Patience).Wrong.Should().BeEmpty();

        Yards.Open(path).Dispose();

        YardCheck.Of(path, Patience).Wrong.Select(fault => fault.Sentence).Should().BeEmpty();
    }

    [Fact]
    public void What_can_be_saved_of_a_whole_yard_is_everything()
    {
        var saved = Salvage.From(Path, _folder["saved"], Yards.Clock, Patience).Value;

        (saved.LeftOut, saved.FromHistory, saved.Unread.Count).Should().Be((0, 0, 0));
        using var was = Yards.Open(Path);
        using var now = Yards.Open(saved.Yard);
        now.Dump().Should().Be(was.Dump());
        YardCheck.Of(saved.Yard, Patience).Wrong.Should().BeEmpty();
        File.ReadAllText(System.IO.Path.Combine(_folder["saved"], "tables", "piece.csv")).Should().StartWith("id,code,material,").And.Contain(Samples.Long.Text);
    }

    [Fact]
    public void Of_a_yard_with_spoilt_pages_all_that_is_readable_is_saved_and_lost_rows_come_from_the_history()
    {
        var path = _folder["large.offcuts"];
        using (var yard = Yards.Open(path))
        {
            for (var batch = 0; batch < 4; batch++) yard.Do(change =>
            {
                for (var i = 0; i < 500; i++) change.Add(Yards.Board(batch * 500 + i) with { Note = new string('n', 100) });
            });
        }

        // The pages that hold the rows of pieces, as the database itself tells them; every third is spoilt.
        var pages = PagesOf(path, "piece");
        pages.Should().HaveCountGreaterThan(20);
        using (var file = File.OpenWrite(path))
        {
            foreach (var page in pages.Where((_, i) => i % 3 == 1))
            {
                file.Position = (page - 1) * 4096;
                file.Write(new byte[4096]);
            }
        }

        YardCheck.Of(path, Patience).Wrong[0].Sentence.Should().StartWith("the database says: ");
        var saved = Salvage.From(path, _folder["saved"], Yards.Clock, Patience).Value;

        saved.FromHistory.Should().BeGreaterThan(100);
        using var now = Yards.Open(saved.Yard);
        now.Pieces().Select(piece => piece.Code).Should().BeEquivalentTo(Enumerable.Range(0, 2000).Select(Yards.CodeNumber));
        YardCheck.Of(saved.Yard, Patience).Wrong.Should().BeEmpty();
    }

    [Fact]
    public void Where_the_list_of_tables_is_damaged_that_is_said_once_and_the_pieces_are_saved_from_the_history()
    {
        Code[] codes;
        using (var yard = Yards.Open(Path)) codes = [.. yard.Pieces().Select(piece => piece.Code)];
        Yards.ByHand(Path, "PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = 'CREATE TABLE piece (id' WHERE name = 'piece'");

        YardCheck.Of(Path, Patience).Wrong.Should().ContainSingle().Which.Sentence.Should().StartWith("the database says: ").And.Contain("malformed database schema (piece)");

        var saved = Salvage.From(Path, _folder["saved"], Yards.Clock, Patience).Value;
        using var now = Yards.Open(saved.Yard);
        now.Pieces().Select(piece => piece.Code).Should().BeEquivalentTo(codes);
        now.Stages().Should().NotBeEmpty();
    }

    [Fact]
    public void All_is_saved_of_a_yard_in_which_a_change_was_cut_off_and_the_yard_stays_as_it_lies()
    {
        var killed = _folder["killed.offcuts"];
        HotJournal.Leave(Path, killed);
        HotJournal.Lies(killed).Should().BeTrue();
        var (file, journal) = (File.ReadAllBytes(killed), File.ReadAllBytes(killed + "-journal"));

        var saved = Salvage.From(killed, _folder["saved"], Yards.Clock, Patience).Value;

        (saved.LeftOut, saved.FromHistory, saved.Unread.Count).Should().Be((0, 0, 0));
        using var was = Yards.Open(Path);
        using (var now = Yards.Open(saved.Yard)) now.Dump().Should().Be(was.Dump());
        File.ReadAllBytes(killed).Should().Equal(file);
        File.ReadAllBytes(killed + "-journal").Should().Equal(journal);
        Directory.GetFileSystemEntries(_folder.Path).Should().BeEquivalentTo(Path, Path + ".backups", killed, killed + "-journal", _folder["saved"]);
    }

    [Fact]
    public void Saving_goes_into_no_folder_that_holds_something_and_nothing_is_made_of_nothing()
    {
        Directory.CreateDirectory(_folder["full"]);
        File.WriteAllText(System.IO.Path.Combine(_folder["full"], "mine"), "");
        File.WriteAllText(_folder["text"], "text");

        Salvage.From(Path, _folder["full"], Yards.Clock, Patience).Fault.Sentence.Should().EndWith("holds something already; name a folder that is new or empty");
        Salvage.From(_folder["text"], _folder["none"], Yards.Clock, Patience).Ok.Should().BeFalse();
        Directory.Exists(_folder["none"]).Should().BeFalse();
    }

    public void Dispose() => _folder.Dispose();

    // The leaves of a table's tree: found by reading each page's kind (13 is a leaf of a table, by SQLite's page on its file format) and
    // asking which of them the tree of the table holds.
    private static List<long> PagesOf(string path, string table)
    {
        var root = (long)Yards.Ask(path, $"SELECT rootpage FROM sqlite_schema WHERE name = '{table}'")!;
        var bytes = File.ReadAllBytes(path);
        var leaves = new List<long>();
        Visit(root);
        return leaves;

        void Visit(long page)
        {
            var at = (int)(page - 1) * 4096;
            if (bytes[at] == 13)
            {
                leaves.Add(page);
                return;
            }

            for (var i = 0; i < bytes[at + 3] * 256 + bytes[at + 4]; i++)
            {
                var cell = at + bytes[at + 12 + 2 * i] * 256 + bytes[at + 13 + 2 * i];
                Visit(Number(cell));
            }

            Visit(Number(at + 8));
        }

        long Number(int at) => (long)System.Buffers.Binary.BinaryPrimitives.ReadUInt32BigEndian(bytes.AsSpan(at, 4));
    }
}
