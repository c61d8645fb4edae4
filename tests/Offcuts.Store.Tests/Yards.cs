using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Tests;

/// <summary>A folder of its own for one test, gone afterwards.</summary>
public sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("offcuts-store-").FullName;

    public string this[string name] => System.IO.Path.Combine(Path, name);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}

/// <summary>A clock that stands still until it is told to go on.</summary>
public sealed class StandingClock : TimeProvider
{
    public DateTimeOffset Now { get; set; } = new(2026, 11, 25, 7, 30, 0, TimeSpan.Zero);

    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    public override DateTimeOffset GetUtcNow() => Now;
}

/// <summary>What tests are made of. Every piece, price and stage here is our own invention.</summary>
public static class Yards
{
    public static readonly StandingClock Clock = new();

    public static YardFile Open(string path) => YardFile.Open(path, Clock, TimeSpan.FromSeconds(1));

    public static Material Material(string name) => MaterialReader.Read(name).Value;

    public static Hardware Hardware(string name, string unit = "each") => (Hardware)MaterialReader.ReadCounted(name, unit).Value;

    public static Code Code(string text) => Core.Yard.Code.Parse(text).Value;

    public static Length In(decimal inches) => Length.Inches(inches);

    /// <summary>A code that depends on the number alone.</summary>
    public static Code CodeNumber(int number)
    {
        var random = new Random(number);
        return Core.Yard.Code.Draw(random.Next);
    }

    public static Piece Board(int number, string material = "2x4", decimal inches = 96) =>
        new() { Code = CodeNumber(number), Material = Material(material), Length = In(inches) };

    /// <summary>Adds without a fault, or fails the test.</summary>
    public static HistoryEntry Do(this YardFile yard, Action<YardChange> work, string what = "changed the yard")
    {
        var result = yard.Change(what, work);
        result.Faults.Select(fault => fault.Sentence).Should().BeEmpty();
        return result.Value;
    }

    /// <summary>The sentences that keep a change from being made.</summary>
    public static string[] Refusals(this YardFile yard, Action<YardChange> work) =>
        [.. yard.Change("tried to change the yard", work).Faults.Select(fault => fault.Sentence)];

    /// <summary>Every row of every table of the yard, the history aside: two equal dumps are two equal yards.</summary>
    public static string Dump(this YardFile yard)
    {
        var lines = new List<string>();
        foreach (var table in Tracked)
        {
            using var command = yard.Database.Connection.CreateCommand();
            command.CommandText = $"SELECT * FROM {table} ORDER BY id";
            using var reader = command.ExecuteReader();
            while (reader.Read())
                lines.Add($"{table}: " + string.Join("|", Enumerable.Range(0, reader.FieldCount).Select(i => reader.IsDBNull(i) ? "null" : $"{reader.GetName(i)}={reader.GetValue(i)}")));
        }

        return string.Join('\n', lines);
    }

    public static readonly string[] Tracked =
    [
        "stage", "required_cut", "hardware_need", "piece", "bin", "blank", "label_queue", "price", "setting", "kerf", "keep",
        "use_rule", "plan", "plan_step", "ledger", "system_sheet", "wall_sheet", "wall_plan", "wall_course",
        "place", "bundle", "bundle_piece", "void_code", "printer",
        "keep_back", "bed", "hand_over", "hand_over_item", "taken_in", "brought",
    ];

    /// <summary>Runs SQL on a file by a connection of its own, as a person with a database program would.</summary>
    public static void ByHand(string path, string sql)
    {
        using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false }.ToString());
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "PRAGMA foreign_keys = ON;" + sql;
        command.ExecuteNonQuery();
    }

    /// <summary>The first value that SQL gives on a file, by a connection of its own.</summary>
    public static object? Ask(string path, string sql)
    {
        using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false, Mode = SqliteOpenMode.ReadOnly }.ToString());
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar();
    }
}
