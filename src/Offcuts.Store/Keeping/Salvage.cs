using System.Text;
using System.Text.Json;
using Dapper;
using Microsoft.Data.Sqlite;
using Offcuts.Core.Faults;

namespace Offcuts.Store;

/// <summary>What was saved from a damaged file.</summary>
/// <param name="Yard">The new yard with every row that a yard can hold.</param>
/// <param name="Rows">How many rows are in it.</param>
/// <param name="FromHistory">How many of them could only be read from the history.</param>
/// <param name="LeftOut">How many rows could be read but fit no yard; they stand in the tables beside it.</param>
/// <param name="Unread">What could not be read.</param>
public sealed record Salvaged(string Yard, long Rows, long FromHistory, long LeftOut, IReadOnlyList<Fault> Unread);

/// <summary>
/// Saves all that is readable from a damaged yard, into a folder that is new or empty: each table as a CSV file as it stands
/// (<c>tables/piece.csv</c>), and a new yard (<c>saved.offcuts</c>) of what fits one. A row that can't be read is taken from the history, where
/// that still has it. The damaged file is only read. The new yard begins a history of its own; the old one is among the tables.
/// </summary>
public sealed class Salvage
{
    // Between the rows that can be read from either end; beyond that nobody's yard goes.
    private const long MostLookedFor = 2_000_000;

    private readonly SqliteConnection _from;
    private readonly Dictionary<string, SortedDictionary<long, Dictionary<string, object?>>> _read = [];
    private readonly List<Fault> _unread = [];
    private readonly HashSet<string> _torn = [];
    private long _fromHistory;

    private Salvage(SqliteConnection from) => _from = from;

    /// <summary>Does it.</summary>
    public static Result<Salvaged> From(string path, string folder, TimeProvider clock, TimeSpan patience)
    {
        if (Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any()) return KeepFaults.FolderNotEmpty(folder);
        try
        {
            using var settled = SettledFile.Of(path, Path.GetDirectoryName(Path.GetFullPath(folder)), patience);
            using var connection = YardCopy.Connect(settled.Path, SqliteOpenMode.ReadOnly, patience);
            connection.Execute("PRAGMA cell_size_check = OFF");
            // So that a damaged line in the list of tables hides that one table and not all (the file is open to be read only).
            connection.Execute("PRAGMA writable_schema = ON");
            var salvage = new Salvage(connection);
            salvage.ReadAll();
            if (salvage._read.Values.All(rows => rows.Count == 0)) return KeepFaults.CanNotSave(path, "nothing in it can be read");
            PrivateFile.Folder(folder);
            salvage.WriteTables(Path.Combine(folder, "tables"));
            return salvage.WriteYard(Path.Combine(folder, "saved.offcuts"), clock, patience);
        }
        catch (SqliteException error)
        {
            return KeepFaults.CanNotSave(path, error.Message);
        }
    }

    private void ReadAll()
    {
        foreach (var (table, _) in TableText.All) _read[table] = ReadTable(table);
        foreach (var (table, rows) in LastImages())
        {
            foreach (var (id, row) in rows)
            {
                // Only what the damage took: what a yard that can be read lacks was taken out by somebody.
                if (!_torn.Contains(table) || !_read[table].TryAdd(id, row)) continue;
                _fromHistory++;
            }
        }
    }

    private SortedDictionary<long, Dictionary<string, object?>> ReadTable(string table)
    {
        var rows = new SortedDictionary<long, Dictionary<string, object?>>();
        var key = TableText.KeyOf(table);
        if (Take(TableText.Forward(table), rows, key)) return rows;
        _torn.Add(table);
        var last = rows.Count > 0 ? rows.Keys.Last() : 0;
        Take(TableText.Backward(table), rows, key);
        var above = rows.Keys.Where(id => id > last).DefaultIfEmpty(last).Min();
        var missing = 0L;
        for (var id = last + 1; id < above && id - last < MostLookedFor; id++)
            if (!TakeOne(table, id, rows, key)) missing++;
        if (rows.Count == 0) _unread.Add(KeepFaults.TableUnread(table));
        else if (missing > 0) _unread.Add(KeepFaults.RowsUnread(table, missing));
        return rows;
    }

    // True where it came to the end.
    private bool Take(string sql, SortedDictionary<long, Dictionary<string, object?>> rows, string key)
    {
        try
        {
            using var reader = _from.ExecuteReader(sql);
            while (reader.Read())
            {
                var row = Row(reader);
                if (row.GetValueOrDefault(key) is long id && !rows.TryAdd(id, row) && rows.Count > 0 && sql.EndsWith("DESC", StringComparison.Ordinal)) return true;
            }

            return true;
        }
        catch (SqliteException)
        {
            return false;
        }
    }

    private bool TakeOne(string table, long id, SortedDictionary<long, Dictionary<string, object?>> rows, string key)
    {
        try
        {
            using var reader = _from.ExecuteReader(TableText.One(table), new { id });
            if (!reader.Read()) return true;
            var row = Row(reader);
            if (row.GetValueOrDefault(key) is long there) rows.TryAdd(there, row);
            return true;
        }
        catch (SqliteException)
        {
            return false;
        }
    }

    private static Dictionary<string, object?> Row(System.Data.IDataReader reader)
    {
        var row = new Dictionary<string, object?>();
        for (var i = 0; i < reader.FieldCount; i++) row[reader.GetName(i)] = reader.IsDBNull(i) ? null : reader.GetValue(i);
        return row;
    }

    private Dictionary<string, Dictionary<long, Dictionary<string, object?>>> LastImages()
    {
        var last = TableText.Tracked.ToDictionary(table => table, _ => new Dictionary<long, Dictionary<string, object?>>());
        foreach (var change in _read["change"].Values)
        {
            if (change["table_name"] is not string table || !last.TryGetValue(table, out var rows) || change["row_id"] is not long id) continue;
            if (change["after"] is not string after) rows.Remove(id);
            else if (Image(after) is { } row) rows[id] = row;
        }

        return last;
    }

    private static Dictionary<string, object?>? Image(string text)
    {
        try
        {
            using var json = JsonDocument.Parse(text);
            return json.RootElement.EnumerateObject().ToDictionary(one => one.Name, one => one.Value.ValueKind switch
            {
                JsonValueKind.Number => one.Value.TryGetInt64(out var number) ? (object?)number : one.Value.GetRawText(),
                JsonValueKind.String => one.Value.GetString(),
                _ => null,
            });
        }
        catch (Exception error) when (error is JsonException or InvalidOperationException or ArgumentException)
        {
            return null;
        }
    }

    private void WriteTables(string folder)
    {
        PrivateFile.Folder(folder);
        foreach (var (table, rows) in _read)
        {
            if (rows.Count == 0) continue;
            var columns = rows.Values.SelectMany(row => row.Keys).Distinct().ToArray();
            using var writer = new StreamWriter(PrivateFile.New(Path.Combine(folder, table + ".csv")), new UTF8Encoding(false));
            Interchange.RawTable.Write(writer, columns, rows.Values.Select(row => columns.Select(column => row.GetValueOrDefault(column))));
        }
    }

    private Result<Salvaged> WriteYard(string path, TimeProvider clock, TimeSpan patience)
    {
        using var yard = YardFile.Open(path, clock, patience);
        var (saved, leftOut) = (0L, 0L);
        var done = yard.Change("saved from a damaged file", _ =>
        {
            foreach (var table in TableText.Tracked)
            {
                var known = yard.Database.Rows<string>("columns", new { table }).ToHashSet();
                var waiting = _read[table].Values.ToList();
                int before;
                do
                {
                    // A piece may stand before the one it was cut from, so what is refused is tried again while anything goes in.
                    before = waiting.Count;
                    waiting.RemoveAll(row => Put(yard.Database, table, row, known));
                    saved += before - waiting.Count;
                }
                while (waiting.Count > 0 && waiting.Count < before);

                // What can't say where it comes from is still there.
                var orphans = waiting.RemoveAll(row => row.Remove("cut_from") && Put(yard.Database, table, row, known));
                (saved, leftOut) = (saved + orphans, leftOut + waiting.Count);
            }
        });
        return done.Then<Salvaged>(_ => new Salvaged(path, saved, _fromHistory, leftOut, _unread));
    }

    private static bool Put(Database database, string table, Dictionary<string, object?> row, HashSet<string> known)
    {
        try
        {
            var columns = row.Keys.Where(known.Contains).Order(StringComparer.Ordinal).ToArray();
            return database.RunText(TableText.Put(table, columns, known), [.. columns.Select((column, i) => ($"v{i}", row[column]))]) == 1;
        }
        catch (SqliteException)
        {
            return false;
        }
    }
}
