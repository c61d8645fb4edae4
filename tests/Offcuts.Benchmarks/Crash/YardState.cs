using System.Text;
using Microsoft.Data.Sqlite;
using Offcuts.Store;

namespace Offcuts.Benchmarks.Crash;

/// <summary>Everything that a yard's file holds, row by row, as a connection of its own reads it.</summary>
/// <param name="Version">The version of the file.</param>
/// <param name="Entries">How many entries the history has.</param>
/// <param name="Rows">Every other row: its table and number, and what it holds.</param>
internal sealed record YardState(long Version, long Entries, IReadOnlyDictionary<string, string> Rows)
{
    /// <summary>Pieces it holds, gone or not.</summary>
    public int Pieces => Rows.Keys.Count(key => key.StartsWith("piece ", StringComparison.Ordinal));

    /// <summary>Reads it.</summary>
    public static YardState Of(string path)
    {
        using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Mode = SqliteOpenMode.ReadWrite, Pooling = false }.ToString());
        connection.Open();
        var rows = new Dictionary<string, string>();
        var version = (long)Ask(connection, "PRAGMA user_version");
        if (version == 0) return new YardState(0, 0, rows);
        foreach (var table in TableText.Tracked)
        {
            if ((long)Ask(connection, "SELECT count(*) FROM sqlite_schema WHERE type = 'table' AND name = '" + table + "'") == 0) continue;
            using var command = connection.CreateCommand();
            command.CommandText = TableText.Forward(table);
            using var reader = command.ExecuteReader();
            while (reader.Read())
            {
                var row = new StringBuilder();
                for (var i = 0; i < reader.FieldCount; i++) row.Append(reader.IsDBNull(i) ? "null" : reader.GetValue(i)).Append('|');
                rows[$"{table} {reader.GetInt64(0)}"] = row.ToString();
            }
        }

        return new YardState(version, (long)Ask(connection, "SELECT count(*) FROM history"), rows);
    }

    /// <summary>The first row that is in one and not the same in the other, or null.</summary>
    public string? Difference(YardState other) =>
        Lacks(other) ?? other.Rows.Keys.FirstOrDefault(key => !Rows.ContainsKey(key));

    /// <summary>The first row of this one that the other does not have just so, or null.</summary>
    public string? Lacks(YardState other) =>
        Rows.FirstOrDefault(row => !other.Rows.TryGetValue(row.Key, out var there) || there != row.Value).Key;

    private static object Ask(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar()!;
    }
}
