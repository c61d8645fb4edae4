using Microsoft.Data.Sqlite;

namespace Offcuts.Store.Tests;

/// <summary>What the file refuses by itself, whoever writes to it.</summary>
public sealed class SchemaTests : IDisposable
{
    private const string Open = "INSERT INTO history (number, at, what) VALUES (1 + (SELECT max(number) FROM history), '2026-11-25T08:00:00', 'by hand'); INSERT INTO open_entry SELECT 1, max(number) FROM history;";

    private readonly TemporaryFolder _folder = new();

    public SchemaTests()
    {
        using var yard = Yards.Open(Path);
        yard.Do(change => Samples.Everything(change));
    }

    private string Path => _folder["yard.offcuts"];

    public static TheoryData<string, string> BadRows => new()
    {
        { "INSERT INTO piece (code, material, length_320ths_mm) VALUES ('2222222', '2x4', 0)", "CHECK" },
        { "INSERT INTO piece (code, material, length_320ths_mm) VALUES ('2222222', '2x4', -8128)", "CHECK" },
        { "INSERT INTO piece (code, material, length_320ths_mm) VALUES ('2222222', '2x4', 10.5)", "cannot store REAL value in INTEGER column" },
        { "INSERT INTO piece (code, material, length_320ths_mm) VALUES ('2222222', '2x4', 'long')", "cannot store TEXT value in INTEGER column" },
        { "INSERT INTO piece (code, material, length_320ths_mm) VALUES ('22222', '2x4', 8128)", "CHECK" },
        { "INSERT INTO piece (code, material, length_320ths_mm) VALUES ('222222O', '2x4', 8128)", "CHECK" },
        { "INSERT INTO piece (code, material, length_320ths_mm) VALUES ('2222222', '', 8128)", "CHECK" },
        { "INSERT INTO piece (code, material, length_320ths_mm, condition) VALUES ('2222222', '2x4', 8128, 'rotten')", "CHECK" },
        { "INSERT INTO piece (code, material, length_320ths_mm, state) VALUES ('2222222', '2x4', 8128, 'lost')", "CHECK" },
        { "INSERT INTO piece (code, material, length_320ths_mm, nails) VALUES ('2222222', '2x4', 8128, 2)", "CHECK" },
        { "INSERT INTO piece (code, material, length_320ths_mm, state) VALUES ('2222222', '2x4', 8128, 'reserved')", "CHECK" },
        { "INSERT INTO piece (code, material, length_320ths_mm, reserved_for) VALUES ('2222222', '2x4', 8128, 1)", "CHECK" },
        { "INSERT INTO piece (code, material, length_320ths_mm, state, reserved_for) VALUES ('2222222', '2x4', 8128, 'reserved', 99)", "FOREIGN KEY" },
        { "INSERT INTO piece (code, material, length_320ths_mm, cut_from) VALUES ('2222222', '2x4', 8128, '3333333')", "FOREIGN KEY" },
        { "INSERT INTO piece (code, material, length_320ths_mm, cut_from) VALUES ('2222222', '2x4', 8128, '2222222')", "CHECK" },
        { "INSERT INTO piece (code, material, length_320ths_mm, trim_left_320ths_mm, trim_right_320ths_mm) VALUES ('2222222', '2x4', 100, 50, 50)", "CHECK" },
        { "INSERT INTO piece (code, material, length_320ths_mm, first_line_320ths_mm) VALUES ('2222222', '2x4', 100, 101)", "CHECK" },
        { "INSERT INTO piece (code, material, length_320ths_mm, bad_spots_320ths_mm) VALUES ('2222222', '2x4', 100, 'knot')", "malformed JSON" },
        { "INSERT INTO piece (code, material, length_320ths_mm, bad_spots_320ths_mm) VALUES ('2222222', '2x4', 100, '[[50,101]]')", "a bad spot lies inside its piece" },
        { "INSERT INTO piece (code, material, length_320ths_mm, bad_spots_320ths_mm) VALUES ('2222222', '2x4', 100, '[[50,50]]')", "a bad spot lies inside its piece" },
        { "INSERT INTO piece (code, material, length_320ths_mm, bad_spots_320ths_mm) VALUES ('2222222', '2x4', 100, '[[50]]')", "a bad spot lies inside its piece" },
        { "INSERT INTO piece (code, material, length_320ths_mm, bad_spots_320ths_mm) VALUES ('2222222', '2x4', 100, '[7]')", "a bad spot lies inside its piece" },
        { "INSERT INTO piece (code, material, length_320ths_mm) SELECT code, '2x4', 8128 FROM bin", "belongs to a bin or a blank label" },
        { "INSERT INTO piece (code, material, length_320ths_mm) SELECT code, '2x4', 8128 FROM blank", "belongs to a bin or a blank label" },
        { "INSERT INTO piece (code, material, length_320ths_mm) SELECT code, '2x4', 8128 FROM piece", "UNIQUE" },
        { "INSERT INTO bin (code, hardware, quantity) SELECT code, 'tie', 1 FROM piece", "belongs to a piece or a blank label" },
        { "INSERT INTO blank (code) SELECT code FROM piece", "belongs to a piece or a bin" },
        { "INSERT INTO piece (code, material, length_320ths_mm, cut_from) SELECT '2222222', material, length_320ths_mm + 1, code FROM piece WHERE id = 1", "more was cut from a piece than there is of it" },
        { "UPDATE piece SET length_320ths_mm = 300000 WHERE id = 1", "more was cut from a piece than there is of it" },
        { "UPDATE piece SET cut_from = (SELECT code FROM piece WHERE cut_from IS NOT NULL) WHERE id = 1", "can not be cut from itself" },
        { "UPDATE piece SET code = '2222222' WHERE id = 1", "a piece keeps its code" },
        { "DELETE FROM piece", "a piece is never removed" },
        { "DELETE FROM setting", "the settings stay" },
        { "INSERT INTO setting SELECT 2, unit, currency_sign, 0, 0, 0, species, specific_gravity, foam_days, covered_places FROM setting", "CHECK" },
        { "DELETE FROM use_rule", "each use keeps its rule" },
        { "DELETE FROM stage", "FOREIGN KEY" },
        { "INSERT INTO stage (position, name) SELECT 9, upper(name) FROM stage", "UNIQUE" },
        { "UPDATE stage SET begins_on = '2026-02-30'", "CHECK" },
        { "UPDATE required_cut SET longest_320ths_mm = shortest_320ths_mm - 1", "CHECK" },
        { "UPDATE required_cut SET count = 0", "CHECK" },
        { "UPDATE hardware_need SET stage = 99", "FOREIGN KEY" },
        { "UPDATE bin SET quantity = -1", "CHECK" },
        { "UPDATE price SET cents = -1", "CHECK" },
        { "UPDATE price SET length_320ths_mm = 0 WHERE counted = 0", "CHECK" },
        { "UPDATE price SET seen_on = 'yesterday'", "CHECK" },
        { "INSERT INTO price (material, counted, length_320ths_mm, treated, cents) SELECT upper(material), 0, length_320ths_mm, treated, 1 FROM price WHERE counted = 0", "UNIQUE" },
        { "UPDATE plan SET document = '{'", "CHECK" },
        { "UPDATE plan_step SET state = 'done otherwise', actual = NULL", "CHECK" },
        { "INSERT INTO plan_step (plan, piece, state) VALUES (99, 0, 'waiting')", "FOREIGN KEY" },
        { "UPDATE ledger SET board_feet = 'many'", "CHECK" },
        { "UPDATE ledger SET weight_pounds = '1-2'", "CHECK" },
        { "UPDATE ledger SET wood_weight_pounds = '--1'", "CHECK" },
        { "UPDATE ledger SET panel_square_mm = '-'", "CHECK" },
        { "UPDATE ledger SET hardware_used = -1", "CHECK" },
        { "INSERT INTO system_sheet (name, sheet) VALUES ('mine', 'panel length 4')", "CHECK" },
        { "INSERT INTO system_sheet (name, sheet) VALUES ('', 'system mine')", "CHECK" },
        { "INSERT INTO wall_sheet (stage, name, system, sheet) VALUES (1, 'mine', 99, 'wall mine')", "FOREIGN KEY" },
        { "INSERT INTO wall_plan (wall, plan, laying) VALUES (99, 99, '{}')", "FOREIGN KEY" },
        { "INSERT INTO wall_plan (wall, plan, laying) VALUES (1, 1, 'laid')", "CHECK" },
        { "INSERT INTO wall_course (wall, run, course, joints_320ths_mm) VALUES (99, 'A outside', 1, '[]')", "FOREIGN KEY" },
        { "INSERT INTO wall_course (wall, run, course, joints_320ths_mm) VALUES (1, 'A outside', 0, '[]')", "CHECK" },
        { "INSERT INTO system_sheet (name, sheet) VALUES ('mine', 'system mine'), ('MINE', 'system mine')", "UNIQUE" },
        { "INSERT INTO place (name, code) SELECT 'shed', code FROM piece WHERE id = 1", "belongs to something else" },
        { "INSERT INTO place (name, code) VALUES ('shed', NULL); UPDATE place SET code = (SELECT code FROM blank)", "belongs to something else" },
        { "INSERT INTO place (name) VALUES ('shed'), ('SHED')", "UNIQUE" },
        { "INSERT INTO place (name, counted_on) VALUES ('shed', 'yesterday')", "CHECK" },
        { "INSERT INTO place (name, code) VALUES ('shed', '2222222'); INSERT INTO blank (code) VALUES ('2222222')", "belongs to a place, a bundle or a void label" },
        { "INSERT INTO bundle (code) SELECT code FROM bin", "belongs to something else" },
        { "INSERT INTO bundle (code) VALUES ('2222222'); UPDATE bundle SET code = '3333333'", "a bundle keeps its code" },
        { "INSERT INTO bundle_piece (bundle, piece) SELECT 99, code FROM piece WHERE id = 1", "FOREIGN KEY" },
        { "INSERT INTO void_code (code, was, voided_on) SELECT code, 'blank', '2026-11-25' FROM blank", "belongs to something else" },
        { "INSERT INTO void_code (code, was, voided_on) VALUES ('2222222', 'piece', '2026-11-25')", "CHECK" },
        { "INSERT INTO printer (name, right_320ths_mm, down_320ths_mm) VALUES ('kitchen', 6401, 0)", "CHECK" },
        { "INSERT INTO keep_back (material, length_320ths_mm, count) VALUES ('2x4', 8128, 2)", "CHECK" },
        { "INSERT INTO keep_back (material) VALUES ('2x4')", "CHECK" },
        { "INSERT INTO bed (name, longest_320ths_mm, weight_thousandths_lb) VALUES ('trailer', 0, 1)", "CHECK" },
        { "INSERT INTO hand_over (transfer, day, kind, to_whom, worth_cents, weight_thousandths_lb) VALUES ('2222222222222222', '2026-11-25', 'sale', 'Ann', 0, 0)", "CHECK" },
        { "INSERT INTO hand_over (transfer, day, kind, to_whom, due_on, worth_cents, weight_thousandths_lb) VALUES ('2222222222222222', '2026-11-25', 'gift', 'Ann', '2026-12-01', 0, 0)", "CHECK" },
        { "INSERT INTO hand_over_item (hand_over, code, count) VALUES (99, '2222222', 1)", "FOREIGN KEY" },
        { "UPDATE hand_over_item SET back = 1, settled = 3 WHERE count = 3", "CHECK" },
        { "INSERT INTO taken_in (transfer, day, from_whom, kind) VALUES ('short', '2026-11-25', 'Ann', 'gift')", "CHECK" },
        { "INSERT INTO brought (code, transfer, was, history) VALUES ('2222222', '2222222222222222', '2222222', '{}')", "CHECK" },
        { "DELETE FROM history", "the history is never changed" },
        { "UPDATE history SET what = 'nothing'", "the history is never changed" },
        { "REPLACE INTO history (number, at, what) VALUES (1, '2026-11-25T08:00:00', 'nothing')", "the history is never changed" },
        { "INSERT INTO history (number, at, what) VALUES (90, '2026-11-25T08:00:00', 'later')", "numbered without a gap" },
        { "DELETE FROM change", "the history is never changed" },
        { "UPDATE change SET before = NULL", "the history is never changed" },
        { "REPLACE INTO change SELECT * FROM change", "the history is never changed" },
    };

    [Theory]
    [MemberData(nameof(BadRows))]
    public void A_row_that_can_not_be_is_refused(string sql, string because)
    {
        var write = () => Yards.ByHand(Path, Open + sql);

        write.Should().Throw<SqliteException>().Which.Message.Should().Contain(because);
    }

    [Theory]
    [InlineData("UPDATE piece SET place = 'elsewhere'")]
    [InlineData("INSERT INTO blank (code) VALUES ('2222222')")]
    [InlineData("DELETE FROM label_queue")]
    [InlineData("UPDATE bin SET quantity = 9")]
    [InlineData("UPDATE setting SET unit = 'millimetre'")]
    public void Nothing_changes_without_an_open_entry_of_the_history(string sql)
    {
        var write = () => Yards.ByHand(Path, sql);

        write.Should().Throw<SqliteException>().Which.Message.Should().Contain("NOT NULL constraint failed: change.entry");
    }

    [Fact]
    public void A_change_by_hand_under_an_entry_of_its_own_is_taken_back_like_any_other()
    {
        using var yard = Yards.Open(Path);
        var before = yard.Dump();

        Yards.ByHand(Path, Open + "UPDATE piece SET place = 'elsewhere'; DELETE FROM open_entry;");

        yard.Pieces().Should().OnlyContain(piece => piece.Place == "elsewhere");
        yard.Undo().Value.What.Should().Be("took back: by hand");
        yard.Dump().Should().Be(before);
    }

    [Fact]
    public void The_pages_example_of_a_change_by_hand_works_and_can_be_taken_back()
    {
        using var yard = Yards.Open(Path);
        yard.Do(change => change.Update(Samples.FoamPanel with { Place = "shed" }));
        var page = File.ReadAllText(System.IO.Path.Combine(AppContext.BaseDirectory, "Pages", "yard-file.md"));
        var example = page[page.IndexOf("BEGIN IMMEDIATE;", StringComparison.Ordinal)..];

        Yards.ByHand(Path, example[..example.IndexOf("```", StringComparison.Ordinal)]);

        yard.Piece(Samples.Panel)!.Place.Should().Be("barn");
        yard.History(most: 1).Single().What.Should().Be("by hand: the shed is called barn now");
        yard.Undo().Ok.Should().BeTrue();
        yard.Piece(Samples.Panel)!.Place.Should().Be("shed");
    }

    [Fact]
    public void The_page_names_every_table_and_every_view()
    {
        using var yard = Yards.Open(Path);
        var page = File.ReadAllText(System.IO.Path.Combine(AppContext.BaseDirectory, "Pages", "yard-file.md"));

        Column(yard, "SELECT '`' || name || '`' FROM sqlite_schema WHERE type IN ('table', 'view') AND name NOT LIKE 'sqlite_%' AND name <> 'piece_overcut'")
            .Should().OnlyContain(name => page.Contains(name));
        page.Should().Contain(YardOpening.ApplicationId.ToString(System.Globalization.CultureInfo.InvariantCulture));
    }

    [Fact]
    public void Every_table_is_watched_in_all_its_columns()
    {
        using var yard = Yards.Open(Path);
        var tables = Column(yard, "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'");

        tables.Except(["history", "change", "open_entry"]).Should().BeEquivalentTo(Yards.Tracked);
        foreach (var table in Yards.Tracked)
        {
            var columns = Column(yard, $"SELECT name FROM pragma_table_info('{table}')");
            Trigger(yard, table + "_added").Should().ContainAll(columns.Select(column => $"'{column}', NEW.{column}"));
            Trigger(yard, table + "_removed").Should().ContainAll(columns.Select(column => $"'{column}', OLD.{column}"));
            Trigger(yard, table + "_changed").Should().ContainAll(columns.Select(column => $"'{column}', NEW.{column}"))
                .And.ContainAll(columns.Select(column => $"'{column}', OLD.{column}"));
        }
    }

    [Fact]
    public void Every_table_is_strict()
    {
        using var yard = Yards.Open(Path);

        Column(yard, "SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND strict = 0 AND name NOT LIKE 'sqlite_%'").Should().BeEmpty();
    }

    // json_valid(NULL) is 0 in older versions of SQLite, whose integrity_check would then tell of faults that are none.
    [Fact]
    public void A_column_of_JSON_that_may_be_empty_says_so_in_its_rule()
    {
        using var yard = Yards.Open(Path);

        var checkedColumns = Column(yard, """
            SELECT sql || char(0) || column_info.name
            FROM sqlite_schema AS t JOIN pragma_table_info(t.name) AS column_info
            WHERE t.type = 'table' AND "notnull" = 0 AND t.sql LIKE '%json_valid(' || column_info.name || ')%'
            """).Select(found => found.Split('\0')).ToArray();

        checkedColumns.Should().HaveCountGreaterThanOrEqualTo(3);
        foreach (var found in checkedColumns) found[0].Should().Contain($"{found[1]} IS NULL OR json_valid({found[1]})");
    }

    [Fact]
    public void Every_query_fits_the_tables()
    {
        using var yard = Yards.Open(Path);
        foreach (var name in QueryText.Names)
        {
            using var command = yard.Database.Connection.CreateCommand();
            command.CommandText = "EXPLAIN " + QueryText.Of(name);
            foreach (var parameter in System.Text.RegularExpressions.Regex.Matches(command.CommandText, @":\w+").Select(match => match.Value).Distinct())
                command.Parameters.AddWithValue(parameter, DBNull.Value);

            command.Invoking(query => query.ExecuteScalar()).Should().NotThrow(name);
        }
    }

    [Fact]
    public void The_views_show_the_yard_in_inches_and_by_name()
    {
        Yards.Ask(Path, "SELECT length_in || ' ' || reserved_for FROM yard_pieces WHERE reserved_for IS NOT NULL").Should().Be("40.0 walls");
        Yards.Ask(Path, "SELECT start_in || '..' || end_in FROM yard_bad_spots").Should().Be("30.0..36.0");
        Yards.Ask(Path, "SELECT name || ' ' || shortest_in || '..' || longest_in || ' x ' || count FROM stage_needs WHERE name = 'stud'").Should().Be("stud 92.625..93.0 x 12");
        Yards.Ask(Path, "SELECT price || ' ' || length_in FROM price_list WHERE material = '2x4'").Should().Be("4.25 96.0");
        Yards.Ask(Path, "SELECT group_concat(cut || ' at ' || start_in, ', ') FROM plan_cut WHERE code IS NOT NULL").Should().Be("stud at 0.5");
        Yards.Ask(Path, "SELECT count || ' ' || cost FROM plan_shopping").Should().Be("1 4.25");
        Yards.Ask(Path, "SELECT saved || ' ' || weight_pounds FROM ledger_by_stage WHERE stage = 'walls'").Should().Be("8.25 12.5");
        Yards.Ask(Path, "SELECT what FROM history_list").Should().Be("changed the yard");
    }

    public void Dispose() => _folder.Dispose();

    private static List<string> Column(YardFile yard, string sql)
    {
        using var command = yard.Database.Connection.CreateCommand();
        command.CommandText = sql;
        using var reader = command.ExecuteReader();
        var found = new List<string>();
        while (reader.Read()) found.Add(reader.GetString(0));
        return found;
    }

    private static string Trigger(YardFile yard, string name) => string.Join(' ', Column(yard, $"SELECT sql FROM sqlite_schema WHERE name = '{name}'").Single().Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
